/* stead-greenhouse-answer.c - "What does it cost to keep this bay warm?" */
#include "config.h"

#include "answer/stead-greenhouse-answer.h"

#include "answer/stead-words-private.h"
#include "core/stead-greenhouse.h"
#include "core/stead-money.h"
#include "core/stead-season-heat.h"
#include "core/stead-us-units.h"
#include "core/stead-ventilation.h"
#include "store/stead-place-repo.h"

#include <glib/gi18n-lib.h>
#include <math.h>

/* Changes of air in a minute that cool a greenhouse in summer; the common rule. */
#define COOLING_CHANGES_MIN 1.0

#define CCF_M3 2.8316846592

void
stead_greenhouse_answer_free (SteadGreenhouseAnswer *self)
{
  if (self == NULL)
    return;
  g_clear_pointer (&self->farm, stead_farm_free);
  g_free (self->place);
  g_free (self->house);
  g_free (self->sentence);
  g_free (self);
}

const char *
stead_greenhouse_fuel_unit (SteadFuel       fuel,
                            SteadUnitSystem units)
{
  switch (fuel)
    {
    case STEAD_FUEL_NATURAL_GAS:
      return units == STEAD_UNITS_US ? _("100 cubic feet") : _("m³");
    case STEAD_FUEL_ELECTRICITY:
      return _("kWh");
    case STEAD_FUEL_PROPANE:
    case STEAD_FUEL_OIL:
    default:
      return units == STEAD_UNITS_US ? _("gallon") : _("liter");
    }
}

double
stead_greenhouse_fuel_factor (SteadFuel       fuel,
                              SteadUnitSystem units)
{
  if (units != STEAD_UNITS_US || fuel == STEAD_FUEL_ELECTRICITY)
    return 1;
  return fuel == STEAD_FUEL_NATURAL_GAS ? CCF_M3 : STEAD_GALLON_L;
}

/* --- figures ------------------------------------------------------------------ */

static gboolean
read_place (SteadStore             *store,
            SteadGreenhouseAnswer  *self,
            gint64                  place_id,
            GError                **error)
{
  g_autoptr(GPtrArray) places = stead_place_repo_list (store, error);
  g_autoptr(GError) failed = NULL;

  if (places == NULL)
    return FALSE;
  for (guint i = 0; i < places->len; i++)
    if (((const SteadPlaceFacts *) places->pdata[i])->id == place_id)
      self->place = g_strdup (((const SteadPlaceFacts *) places->pdata[i])->name);
  self->house = stead_glasshouse_repo_get (store, place_id, &failed);
  if (failed != NULL)
    {
      g_propagate_error (error, g_steal_pointer (&failed));
      return FALSE;
    }
  return TRUE;
}

static void
fill_house (SteadGreenhouseAnswer *self)
{
  const SteadGlasshouse *house = self->house;
  const SteadGreenhouseSkin skin = { house->cover_m2, house->u_w_m2_k };
  double leaks = stead_greenhouse_leak_ua_w_c (house->volume_m3, house->changes_hour);

  self->ua_w_c = stead_greenhouse_ua_w_c (&skin, 1) + leaks;
  self->leak_frac = leaks / self->ua_w_c;
  self->base_c = stead_season_base_c (house->inside_c, house->sun_lift_c);
  self->fan_m3_h = stead_fan_flow_volume_m3_h (house->volume_m3, COOLING_CHANGES_MIN);
  self->inlet_m2 = stead_inlet_m2 (self->fan_m3_h, STEAD_INLET_M_S);
}

static void
fill_months (SteadGreenhouseAnswer  *self,
             const SteadTypicalYear *year,
             int                     calendar_year)
{
  const SteadGlasshouse *house = self->house;
  SteadHeatMonth heat[12];

  stead_season_heat_months (self->ua_w_c, self->base_c, year, calendar_year, heat);
  for (int i = 0; i < 12; i++)
    {
      SteadGreenhouseMonth *month = &self->months[i];

      month->hdd_c = heat[i].hdd_c;
      month->heat_kwh = heat[i].heat_kwh;
      month->fuel = stead_fuel_needed (house->fuel, month->heat_kwh, house->efficiency_frac);
      month->cents = stead_fuel_heat_cents (house->fuel, month->heat_kwh, house->efficiency_frac, house->fuel_cents);
      self->all.hdd_c += month->hdd_c;
      self->all.heat_kwh += month->heat_kwh;
      self->all.fuel += month->fuel;
      self->all.cents += month->cents;
      self->coldest_c = fmin (self->coldest_c, year->min_c[i]);
    }
  self->loss_w = stead_greenhouse_loss_w (self->ua_w_c, house->inside_c - self->coldest_c);
  if (!stead_greenhouse_heater_w (self->loss_w, STEAD_HEATER_MARGIN_LEAST, &self->heater_min_w, NULL)
      || !stead_greenhouse_heater_w (self->loss_w, STEAD_HEATER_MARGIN_MOST, &self->heater_max_w, NULL))
    g_assert_not_reached ();
}

static gboolean
read_year (SteadStore             *store,
           SteadGreenhouseAnswer  *self,
           GError                **error)
{
  SteadUsualYear entered;
  SteadTypicalYear year = { .spread_c = 0 };
  int calendar_year, month, mday;

  self->coldest_c = self->loss_w = self->heater_min_w = self->heater_max_w = NAN;
  if (!stead_climate_repo_usual (store, 0, &entered, error))
    return FALSE;
  for (int i = 0; i < 12; i++)
    {
      year.max_c[i] = entered.max_c[i];
      year.min_c[i] = entered.min_c[i];
    }
  self->has_year = stead_typical_year_is_valid (&year);
  stead_day_split (stead_store_get_today (store), &calendar_year, &month, &mday);
  if (self->has_year && self->house != NULL)
    fill_months (self, &year, calendar_year);
  return TRUE;
}

/* --- words -------------------------------------------------------------------- */

/* "2,286 gallons" */
static char *
fuel_text (const SteadGreenhouseAnswer *self,
           double                       amount)
{
  SteadUnitSystem units = self->farm->units;
  double shown = round (amount / stead_greenhouse_fuel_factor (self->house->fuel, units));
  g_autofree char *number = stead_number_format (shown, 0);
  gulong n = stead_words_plural ((gint64) MIN (shown, 1e15));

  if (self->house->fuel == STEAD_FUEL_ELECTRICITY)
    return g_strdup_printf (_("%s kWh"), number);
  if (self->house->fuel == STEAD_FUEL_NATURAL_GAS)
    return units == STEAD_UNITS_US ? g_strdup_printf (_("%s × 100 cubic feet"), number)
                                   : g_strdup_printf (_("%s m³"), number);
  return units == STEAD_UNITS_US
         ? g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "%s gallon", "%s gallons", n), number)
         : g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "%s liter", "%s liters", n), number);
}

static char *
make_sentence (const SteadGreenhouseAnswer *self)
{
  g_autofree char *cost = NULL, *fuel = NULL, *heater = NULL;

  if (self->house == NULL)
    return g_strdup (_("Enter the house: its cover, its air and its heater. Then the cost of heat can be worked out."));
  if (!self->has_year)
    return g_strdup (_("Enter the usual year outdoors: the mean lowest and highest temperature of each month. "
                       "A weather service near you prints them."));
  cost = stead_money_format (stead_money_round (self->all.cents), self->farm->currency);
  fuel = fuel_text (self, self->all.fuel);
  heater = stead_number_format (self->heater_min_w / 1000, 1);
  /* Translators: money, "230 gallons", the fuel's name, kW. */
  return g_strdup_printf (_("In a usual year this house needs heat for about <b>%s</b>: %s (%s). "
                            "The heater should give at least %s kW."),
                          cost, fuel, stead_fuel_name (self->house->fuel), heater);
}

SteadGreenhouseAnswer *
stead_greenhouse_answer_new (SteadStore  *store,
                             gint64       place_id,
                             GError     **error)
{
  g_autoptr(SteadGreenhouseAnswer) self = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);

  self = g_new0 (SteadGreenhouseAnswer, 1);
  self->farm = stead_farm_repo_get (store, error);
  if (self->farm == NULL || !read_place (store, self, place_id, error))
    return NULL;
  if (self->house != NULL)
    fill_house (self);
  if (!read_year (store, self, error))
    return NULL;
  self->sentence = make_sentence (self);
  self->caution = _("Fuel burned in a house takes oxygen and gives carbon monoxide: vent it outdoors and hang up an "
                    "alarm. Keep electricity dry, and follow your local fire and fuel codes.");
  return g_steal_pointer (&self);
}

/* --- whys --------------------------------------------------------------------- */

static SteadWhy *
ua_why (const SteadGreenhouseAnswer *self)
{
  g_autofree char *area = stead_number_format (self->house->cover_m2, 0);
  g_autofree char *u = stead_number_format (self->house->u_w_m2_k, 2);
  g_autofree char *ua = stead_number_format (self->ua_w_c, 0);
  g_autofree char *leaks = stead_words_percent (self->leak_frac, 0);

  return stead_why_new (g_strdup (_("Heat lost for each degree")),
                        _("Cover × heat that it lets through + air × changes an hour × heat that air holds."),
                        /* Translators: m², W, W, a percentage. */
                        g_strdup_printf (_("%s m² × %s W + leaks = %s W for each °C; the leaks are %s of it."),
                                         area, u, ua, leaks),
                        _("A greenhouse maker's how-to on sizing a heating system; heat of air: from memory."));
}

static SteadWhy *
year_why (const SteadGreenhouseAnswer *self)
{
  g_autofree char *ua = stead_number_format (self->ua_w_c, 0);
  g_autofree char *hdd = stead_number_format (self->all.hdd_c, 0);
  g_autofree char *kwh = stead_number_format (self->all.heat_kwh, 0);
  g_autofree char *base = stead_quantity_format (self->base_c, stead_unit_default (STEAD_DIMENSION_TEMPERATURE,
                                                                                    self->farm->units));

  return stead_why_new (g_strdup (_("Heat of a usual year")),
                        _("Heat lost for each degree × 24 hours × heating degree days. These count from what is kept "
                          "in the house less what the sun gives."),
                        /* Translators: W, °C-days, kWh, a temperature. */
                        g_strdup_printf (_("%s W × 24 × %s °C-days ÷ 1,000 = %s kWh. Counted from %s."),
                                         ua, hdd, kwh, base),
                        _("Statistics Netherlands, heating degree days. Monthly means alone: in spring and fall a "
                          "little too low, since cold days hide in them."));
}

/* What a liter, a m³ or a kWh gives when it is burned, by what is needed of it. */
static SteadWhy *
cost_why (const SteadGreenhouseAnswer *self)
{
  const SteadGlasshouse *house = self->house;
  SteadUnitSystem units = self->farm->units;
  double factor = stead_greenhouse_fuel_factor (house->fuel, units);
  g_autofree char *kwh = stead_number_format (self->all.heat_kwh, 0);
  g_autofree char *each = stead_number_format (stead_fuel_content_kwh (house->fuel) * factor, 1);
  g_autofree char *efficiency = stead_words_percent (house->efficiency_frac, 0);
  g_autofree char *fuel = fuel_text (self, self->all.fuel);
  g_autofree char *price = stead_money_format (stead_money_round (house->fuel_cents * factor), self->farm->currency);
  g_autofree char *cost = stead_money_format (stead_money_round (self->all.cents), self->farm->currency);

  return stead_why_new (g_strdup (_("Fuel and what it costs")),
                        _("Heat ÷ (heat in one unit of the fuel × share that the heater makes use of) = fuel. Fuel × its price = "
                          "cost. Each month the same; the months add up to the year."),
                        /* Translators: kWh, kWh in one unit, a percentage, "230 gallons"; the same, a price, "gallon", money. */
                        g_strdup_printf (_("%1$s kWh ÷ (%2$s kWh × %3$s) = %4$s; × %5$s (%6$s) = %7$s."), kwh, each, efficiency,
                                         fuel, price, stead_greenhouse_fuel_unit (house->fuel, units), cost),
                        house->fuel == STEAD_FUEL_ELECTRICITY
                        ? _("Electricity is all heat. The price and the share are as entered for the house.")
                        : _("Heat in a unit of the fuel: worked back from an example of a greenhouse trade paper on heat lost "
                            "through vents. The price and the share are as entered for the house."));
}

static SteadWhy *
heater_why (const SteadGreenhouseAnswer *self)
{
  g_autofree char *loss = stead_number_format (self->loss_w / 1000, 1);
  g_autofree char *least = stead_number_format (self->heater_min_w / 1000, 1);
  g_autofree char *most = stead_number_format (self->heater_max_w / 1000, 1);

  return stead_why_new (g_strdup (_("Size of the heater")),
                        _("Heat lost in a usual night of the coldest month, and 10 to 25 percent over."),
                        /* Translators: kW, kW, kW. */
                        g_strdup_printf (_("%s kW lost: a heater of %s to %s kW."), loss, least, most),
                        _("The margin is common practice, no source. The coldest night of ten years is colder."));
}

static SteadWhy *
fan_why (const SteadGreenhouseAnswer *self)
{
  gboolean us = self->farm->units == STEAD_UNITS_US;
  g_autofree char *flow = stead_number_format (round (us ? self->fan_m3_h / STEAD_M3_H_PER_CFM : self->fan_m3_h), 0);
  g_autofree char *inlet = stead_quantity_format (self->inlet_m2, stead_unit_default (STEAD_DIMENSION_AREA,
                                                                                      self->farm->units));

  return stead_why_new (g_strdup (_("Fans for summer")),
                        _("All the air of the house once a minute; inlets opposite at 350 feet a minute (1.78 m/s)."),
                        /* Translators: a flow, an area. */
                        us ? g_strdup_printf (_("Fans: %s cubic feet a minute. Open inlets: %s."), flow, inlet)
                           : g_strdup_printf (_("Fans: %s m³ an hour. Open inlets: %s."), flow, inlet),
                        _("Ventilation system calculations, a growers' forum. Speed in the inlet: common practice, no "
                          "source. Fans have guards; unplug them before a hand goes near."));
}

GPtrArray *
stead_greenhouse_answer_whys (const SteadGreenhouseAnswer *self)
{
  GPtrArray *whys;

  g_return_val_if_fail (self != NULL, NULL);

  whys = stead_whys_new ();
  if (self->house == NULL)
    return whys;
  g_ptr_array_add (whys, ua_why (self));
  if (self->has_year)
    {
      g_ptr_array_add (whys, year_why (self));
      g_ptr_array_add (whys, cost_why (self));
      g_ptr_array_add (whys, heater_why (self));
    }
  g_ptr_array_add (whys, fan_why (self));
  return whys;
}
