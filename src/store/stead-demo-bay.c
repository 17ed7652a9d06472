/* stead-demo-bay.c - the demo farm's tomatoes, day by day: the house is built, its fuel
 * burned, the crops in it get ripe.
 *
 * Chance comes from a generator of its own, so that what happens here leaves the hens
 * and the fish as they are.
 */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "core/stead-greenhouse.h"
#include "core/stead-money.h"
#include "core/stead-us-units.h"
#include "store/stead-batch-repo.h"
#include "store/stead-demo-bay-private.h"
#include "store/stead-lot-repo.h"

/* Fuel is measured, and laid on the crop that stands there, every so many days. */
#define FUEL_DAYS 14

static void
crop_free (gpointer data)
{
  SteadDemoCrop *crop = data;

  g_free (crop->group);
  g_free (crop);
}

/* --- reading the description --------------------------------------------------- */

/* Twelve temperatures in °F, January first. */
static void
read_year (SteadDemoReader *reader,
           const char      *group,
           const char      *key,
           double          *out_c)
{
  g_auto(GStrv) months = stead_demo_list (reader, group, key);

  if (g_strv_length (months) != 12)
    {
      stead_demo_fault (reader, group, key);
      return;
    }
  for (int i = 0; i < 12; i++)
    out_c[i] = (stead_demo_number_of (reader, months[i]) - 32) / 1.8;
}

static void
read_crops (SteadDemoWriter *writer,
            SteadDemoBay    *bay)
{
  SteadDemoReader *reader = &writer->story->reader;
  g_auto(GStrv) names = stead_demo_groups (reader, "crop");

  for (char **name = names; *name != NULL; name++)
    {
      SteadDemoCrop *crop = g_new0 (SteadDemoCrop, 1);

      crop->group = g_strdup (*name);
      crop->sown_at = stead_demo_days_back (writer, *name, "sown", 0);
      crop->set_out_at = stead_demo_days_back (writer, *name, "set_out", 0);
      crop->ends_at = stead_demo_days_back (writer, *name, "ended", -1);
      crop->plants = (gint64) stead_demo_number (reader, *name, "plants");
      crop->need_c = stead_demo_number (reader, *name, "true_need");
      crop->plant_kg = STEAD_POUND_KG * stead_demo_number (reader, *name, "true_yield_lb");
      crop->pick_days = (int) (7 * stead_demo_number (reader, *name, "pick_weeks"));
      crop->ripe_at = crop->picked_at = -1;
      g_ptr_array_add (bay->crops, crop);
    }
}

static void
read_house (SteadDemoReader *reader,
            SteadGlasshouse *out)
{
  const char *group = "glasshouse";

  *out = (SteadGlasshouse) {
    .cover_m2 = stead_demo_number (reader, group, "cover_m2"),
    .u_w_m2_k = stead_cover_u_w_m2_c (STEAD_COVER_DOUBLE_FILM),
    .volume_m3 = stead_demo_number (reader, group, "volume_m3"),
    .changes_hour = STEAD_AIR_CHANGES_TIGHT,
    .inside_c = stead_demo_number (reader, group, "inside_c"),
    .sun_lift_c = stead_demo_number (reader, group, "sun_lift_c"),
    .fuel = STEAD_FUEL_PROPANE,
    .efficiency_frac = stead_demo_number (reader, group, "efficiency"),
    .fuel_cents = (double) stead_demo_cents (reader, group, "fuel_gallon") / STEAD_GALLON_L,
  };
}

/**
 * stead_demo_bay_new:
 *
 * Returns: (transfer full): the bay before its first day; the reader keeps faults
 */
SteadDemoBay *
stead_demo_bay_new (SteadDemoWriter *writer)
{
  SteadDemoBay *bay = g_new0 (SteadDemoBay, 1);
  SteadDemoReader *reader = &writer->story->reader;

  bay->rng = gsl_rng_alloc (gsl_rng_mt19937);
  gsl_rng_set (bay->rng, 1 + (unsigned long) stead_demo_number (reader, "farm", "seed"));
  bay->crops = g_ptr_array_new_with_free_func (crop_free);
  bay->begins_at = stead_demo_days_back (writer, "glasshouse", "built", 0);
  read_year (reader, "weather", "high", bay->outdoors.max_c);
  read_year (reader, "weather", "low", bay->outdoors.min_c);
  read_year (reader, "glasshouse", "high", bay->inside.max_c);
  read_year (reader, "glasshouse", "low", bay->inside.min_c);
  bay->outdoors.spread_c = 4;
  read_house (reader, &bay->house);
  read_crops (writer, bay);
  return bay;
}

void
stead_demo_bay_free (SteadDemoBay *bay)
{
  if (bay == NULL)
    return;
  gsl_rng_free (bay->rng);
  g_ptr_array_unref (bay->crops);
  g_free (bay);
}

/* --- building ------------------------------------------------------------------- */

static gboolean
write_usual (SteadDemoWriter         *writer,
             gint64                   place,
             const SteadTypicalYear  *year,
             GError                 **error)
{
  SteadUsualYear usual;

  for (int i = 0; i < 12; i++)
    {
      usual.min_c[i] = year->min_c[i];
      usual.max_c[i] = year->max_c[i];
    }
  return stead_climate_repo_set_usual (writer->store, place, &usual, error);
}

static gboolean
write_bay (SteadDemoWriter  *writer,
           gconstpointer     what,
           GError          **error)
{
  SteadDemoBay *bay = writer->bay;
  g_autofree char *place = stead_demo_text (&writer->story->reader, "glasshouse", "place");

  bay->place_id = stead_demo_id_of (writer, "place", place);
  bay->house.place_id = bay->place_id;
  return stead_demo_sound (writer, error) &&
         stead_typical_year_is_valid (&bay->outdoors) && stead_typical_year_is_valid (&bay->inside) &&
         write_usual (writer, 0, &bay->outdoors, error) &&
         write_usual (writer, bay->place_id, &bay->inside, error) &&
         stead_glasshouse_repo_save (writer->store, &bay->house, error);
}

/* --- fuel -------------------------------------------------------------------------------- */

typedef struct
{
  SteadDemoCrop   *crop;
  gint64  item;
  double  liters;
} Burned;

static gboolean
write_fuel (SteadDemoWriter  *writer,
            gconstpointer     what,
            GError          **error)
{
  const Burned *burned = what;

  return stead_lot_repo_use (writer->store, burned->item, burned->crop->id, stead_demo_day_at (writer, writer->at),
                             burned->liters, stead_demo_person_on (writer, writer->at), error);
}

static double
burned_l (SteadDemoWriter *writer)
{
  const SteadGlasshouse *house = &writer->bay->house;
  const SteadGreenhouseSkin skin = { house->cover_m2, house->u_w_m2_k };
  double ua = stead_greenhouse_ua_w_c (&skin, 1) + stead_greenhouse_leak_ua_w_c (house->volume_m3, house->changes_hour);
  double degree_days = 0;

  for (int i = 0; i < FUEL_DAYS; i++)
    degree_days += stead_typical_year_heating_degree_day (&writer->bay->outdoors, house->inside_c - house->sun_lift_c,
                                                          stead_demo_day_at (writer, writer->at - i));
  return stead_fuel_needed (house->fuel, ua * degree_days * 24 / 1000, house->efficiency_frac);
}

/* The first crop that stands in the bay bears it. */
static SteadDemoCrop *
crop_that_bears (SteadDemoWriter *writer)
{
  for (guint i = 0; i < writer->bay->crops->len; i++)
    {
      SteadDemoCrop *crop = writer->bay->crops->pdata[i];

      if (crop->id != 0 && writer->at >= crop->set_out_at && (crop->ends_at < 0 || writer->at < crop->ends_at))
        return crop;
    }
  return NULL;
}

static gboolean
live_fuel (SteadDemoWriter  *writer,
           GError          **error)
{
  g_autofree char *fuel = stead_demo_text (&writer->story->reader, "glasshouse", "fuel");
  Burned burned = { crop_that_bears (writer), stead_demo_id_of (writer, "item", fuel), 0 };

  if ((writer->at - writer->bay->begins_at) % FUEL_DAYS != FUEL_DAYS - 1 || burned.crop == NULL)
    return TRUE;
  burned.liters = round (2 * burned_l (writer) / STEAD_GALLON_L) / 2 * STEAD_GALLON_L;
  if (!(burned.liters > STEAD_GALLON_L))
    return TRUE;
  burned.crop->cost_cents += stead_money_round (burned.liters * writer->bay->house.fuel_cents);
  /* The next two weeks' fuel is there too. */
  return stead_demo_buy_for (writer, fuel, 2 * burned.liters, error) &&
         stead_demo_act (writer, fuel, write_fuel, &burned, error);
}

/* --- the whole ---------------------------------------------------------------------------- */

static gboolean
write_end (SteadDemoWriter  *writer,
           gconstpointer     what,
           GError          **error)
{
  const SteadDemoCrop *crop = what;

  return stead_batch_repo_end (writer->store, crop->id, stead_demo_day_at (writer, writer->at), error);
}

static gboolean
live_crop (SteadDemoWriter      *writer,
           SteadDemoCrop        *crop,
           const SteadDayTemps  *temps,
           GError              **error)
{
  static const SteadDegreeDayRule rule = { STEAD_DEGREE_DAYS_AVERAGE, 10, 30 };
  const char *name = stead_demo_group_name (crop->group);
  gboolean last = writer->at == crop->ends_at;

  if (writer->at == crop->sown_at && !stead_demo_sow (writer, crop, error))
    return FALSE;
  if (crop->id == 0 || writer->at < crop->set_out_at || (crop->ends_at >= 0 && writer->at > crop->ends_at))
    return TRUE;
  crop->sum_c += stead_degree_day (&rule, temps->max_c, temps->min_c);
  if (crop->ripe_at < 0 && crop->sum_c >= crop->need_c)
    crop->ripe_at = writer->at;
  if (!stead_demo_live_sale (writer, crop, error) || (!last && !stead_demo_live_log (writer, crop, error)))
    return FALSE;
  /* Mondays and Thursdays of a week of its own. */
  if (crop->ripe_at >= 0 && (last || (writer->at - crop->ripe_at) % 7 == 0 || (writer->at - crop->ripe_at) % 7 == 3)
      && !stead_demo_live_pick (writer, crop, error))
    return FALSE;
  return !last || stead_demo_act (writer, name, write_end, crop, error);
}

/**
 * stead_demo_live_bay:
 *
 * One day of the house and the crops in it; the house is set up on its first day.
 *
 * Returns: %TRUE, or %FALSE with @error
 */
gboolean
stead_demo_live_bay (SteadDemoWriter  *writer,
                     GError          **error)
{
  SteadDemoBay *bay = writer->bay;
  SteadDayTemps temps;

  if (writer->at < bay->begins_at)
    return TRUE;
  if (bay->place_id == 0 && !stead_demo_act (writer, "bay", write_bay, NULL, error))
    return FALSE;
  temps = stead_demo_live_house (writer);
  if (!stead_demo_live_thermometer (writer, &temps, error) || !live_fuel (writer, error))
    return FALSE;
  for (guint i = 0; i < bay->crops->len; i++)
    if (!live_crop (writer, bay->crops->pdata[i], &temps, error))
      return FALSE;
  return TRUE;
}
