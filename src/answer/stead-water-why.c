/* stead-water-why.c - worked formulas of the water answer, with the farm's own numbers. */
#include "config.h"

#include "answer/stead-sum-private.h"
#include "answer/stead-tank-text.h"
#include "answer/stead-water-answer.h"
#include "answer/stead-words-private.h"
#include "core/stead-aquaponics.h"
#include "core/stead-nitrogen.h"
#include "core/stead-water.h"

#include <glib/gi18n-lib.h>
#include <math.h>

static const double *
values_of (const SteadWaterAnswer *self)
{
  return self->last != NULL ? self->last->values : NULL;
}

static void
add_ammonia (const SteadWaterAnswer *self,
             GPtrArray              *whys)
{
  const double *values = values_of (self);
  double nh3n = self->lines[STEAD_WATER_NH3N].value;
  g_autofree char *temp = NULL, *ph = NULL, *tan = NULL, *pka = NULL, *share = NULL, *toxic = NULL;

  if (isnan (nh3n))
    return;
  temp = stead_number_format (values[STEAD_READING_TEMPERATURE], 1);
  ph = stead_number_format (values[STEAD_READING_PH], 2);
  tan = stead_number_format (values[STEAD_READING_TAN], 2);
  pka = stead_number_format (stead_water_pka (values[STEAD_READING_TEMPERATURE]), 3);
  share = stead_words_percent (values[STEAD_READING_TAN] > 0 ? nh3n / values[STEAD_READING_TAN] : 0, 2);
  toxic = stead_number_format (nh3n, 4);
  g_ptr_array_add (whys, stead_why_new (
    g_strdup (_("How much of the ammonia is poisonous")),
    _("Share that is un-ionized = 1 ÷ (1 + 10 to the power of (pKa − pH)); pKa = 0.09018 + 2729.92 ÷ (273.15 + °C). "
      "Warmer water and a higher pH make more of it."),
    /* Translators: °C, pKa, pKa, pH, a percentage, total ammonia, a percentage, the result. */
    g_strdup_printf (_("At %s °C pKa is %s. 1 ÷ (1 + 10^(%s − %s)) = %s. %s mg/L × %s = %s mg/L."),
                     temp, pka, pka, ph, share, tan, share, toxic),
    _("Emerson et al. (1975), as in University of Florida FA16, table 1; fresh water, 0 to 40 °C")));
}

static void
add_oxygen (const SteadWaterAnswer *self,
            GPtrArray              *whys)
{
  const double *values = values_of (self);
  double share = self->lines[STEAD_WATER_OXYGEN_SHARE].value;
  double kpa = NAN, most = NAN;
  g_autofree char *pressure = NULL, *holds = NULL, *read = NULL, *percent = NULL, *temp = NULL, *height = NULL;

  if (isnan (share)
      || !stead_water_pressure_kpa (self->scene.elevation_m, &kpa, NULL)
      || !stead_water_oxygen_mgl (values[STEAD_READING_TEMPERATURE], self->scene.salinity_g_kg, kpa, &most, NULL))
    return;
  pressure = stead_number_format (kpa, 1);
  holds = stead_number_format (most, 2);
  read = stead_number_format (values[STEAD_READING_OXYGEN], 2);
  percent = stead_words_percent (share, 0);
  temp = stead_number_format (values[STEAD_READING_TEMPERATURE], 1);
  height = stead_quantity_format (self->scene.elevation_m,
                                  stead_unit_default (STEAD_DIMENSION_LENGTH, self->farm->units));
  g_ptr_array_add (whys, stead_why_new (
    g_strdup (_("How much oxygen the water can hold")),
    _("Water in balance with the air holds less oxygen when it is warm, salty, or high above the sea, where the air is "
      "thinner."),
    /* Translators: a height, a pressure, °C, mg/L held, mg/L read, mg/L held, a percentage. */
    g_strdup_printf (_("At %s above the sea the air presses with %s kPa. At %s °C the water then holds %s mg/L. "
                       "%s ÷ %s = %s."), height, pressure, temp, holds, read, holds, percent),
    _("Benson and Krause, as in Standard Methods and EN 25814; pressure by FAO Irrigation and Drainage Paper 56, "
      "equation 7")));
}

static void
add_chloride (const SteadWaterAnswer *self,
              GPtrArray              *whys)
{
  double nitrite = NAN;
  double chloride = NAN;
  g_autofree char *no2 = NULL, *need = NULL, *cl = NULL, *source = NULL;

  if (stead_water_answer_last_of (self, STEAD_WATER_NITRITE, &nitrite) == NULL
      || stead_water_answer_last_of (self, STEAD_WATER_CHLORIDE, &chloride) == NULL)
    return;
  no2 = stead_number_format (nitrite, 2);
  need = stead_number_format (10 * nitrite, 1);
  cl = stead_number_format (chloride, 0);
  source = stead_water_source_text (STEAD_SOURCE_SRAC_462);
  g_ptr_array_add (whys, stead_why_new (
    g_strdup (_("Why nitrite needs chloride beside it")),
    _("Chloride keeps nitrite from entering the gills, where it turns the blood brown. There should be at least 10 parts "
      "of chloride to 1 of nitrite."),
    /* Translators: nitrite, chloride that is needed, chloride that is there. */
    g_strdup_printf (_("10 × %s mg/L of nitrite = %s mg/L of chloride; the last test of it had %s mg/L."), no2, need, cl),
    source));
}

static void
add_feed (const SteadWaterAnswer *self,
          GPtrArray              *whys)
{
  const SteadWaterBudget *budget = &self->budget;
  g_autofree char *feed = NULL, *protein = NULL, *tan = NULL, *alkalinity = NULL, *low = NULL, *high = NULL;

  if (!(budget->feed_kg_day > 0))
    return;
  feed = stead_words_number (1000 * budget->feed_kg_day);
  protein = stead_words_percent (budget->protein_frac, 0);
  tan = stead_words_number (budget->tan_g_day);
  alkalinity = stead_words_number (budget->alkalinity_g_day);
  low = stead_words_number (budget->filter_min_m2);
  high = stead_words_number (budget->filter_max_m2);
  g_ptr_array_add (whys, stead_why_new (
    g_strdup (_("What the feed does to the water")),
    budget->protein_assumed
    ? _("Ammonia (as N) = feed × protein × 0.092; the protein of the feed is not entered, so 32 in 100 is assumed. "
        "A gram of it uses 7.14 g of alkalinity, and needs filter surface.")
    : _("Ammonia (as N) = feed × protein × 0.092. A gram of it uses 7.14 g of alkalinity, and needs filter surface."),
    /* Translators: grams of feed, protein, grams of ammonia, the same, grams of alkalinity, least and most square meters. */
    g_strdup_printf (_("%s g × %s × 0.092 = %s g a day. %s g × 7.14 = %s g of CaCO₃. The filter needs %s to %s m² of "
                       "surface."), feed, protein, tan, tan, alkalinity, low, high),
    _("0.092 is common practice, no source; alkalinity by stoichiometry; filter surface by SRAC 282, 0.02 to 0.10 g a "
      "square foot and day")));
}

/* What the feed lets rise or keeps, beyond the filter. */
static void
add_nitrate (const SteadWaterAnswer *self,
             GPtrArray              *whys)
{
  const SteadWaterBudget *budget = &self->budget;
  g_autofree char *tan = NULL, *volume = NULL, *rise = NULL;

  if (!(budget->feed_kg_day > 0) || isnan (budget->nitrate_mgl_day) || self->scene.planted)
    return;
  tan = stead_words_number (budget->tan_g_day);
  volume = stead_number_format (round (self->volume_l), 0);
  rise = stead_words_number (budget->nitrate_mgl_day);
  g_ptr_array_add (whys, stead_why_new (
    g_strdup (_("How fast nitrate rises without plants")),
    _("Nitrogen of the ammonia × 4.425, the weight of nitrate by that of its nitrogen × 1,000 ÷ liters of water"),
    /* Translators: grams, liters, mg/L. */
    g_strdup_printf (_("%1$s g × 4.425 × 1,000 ÷ %2$s L = %3$s mg/L a day"), tan, volume, rise),
    _("Stoichiometry. All of it becomes nitrate and no water is changed: the most that it can be.")));
}

static void
add_bed (const SteadWaterAnswer *self,
         GPtrArray              *whys)
{
  const SteadWaterBudget *budget = &self->budget;
  const SteadUnit *area = stead_unit_default (STEAD_DIMENSION_AREA, self->farm->units);
  double min_g_m2, max_g_m2;
  g_autofree char *feed = NULL, *few = NULL, *many = NULL, *least = NULL, *most = NULL;

  if (!(budget->feed_kg_day > 0) || !self->scene.planted)
    return;
  stead_bed_feed_rate (STEAD_BED_FRUITING, &min_g_m2, &max_g_m2);
  feed = stead_words_number (1000 * budget->feed_kg_day);
  few = stead_number_format (min_g_m2, 0);
  many = stead_number_format (max_g_m2, 0);
  least = stead_tank_text_round (budget->bed_min_m2, area);
  most = stead_tank_text_round (budget->bed_max_m2, area);
  g_ptr_array_add (whys, stead_why_new (
    g_strdup (_("Bed that the fish feed supports")),
    _("Feed a day ÷ feed that a square meter of bed needs a day."),
    /* Translators: grams of feed, grams for a m², grams for a m², two areas. */
    g_strdup_printf (_("%1$s g ÷ %3$s g, and ÷ %2$s g for each m²: %4$s to %5$s"), feed, few, many, least, most),
    _("FAO Technical Paper 589, component calculations: 40 to 50 g for leafy, 50 to 80 g for "
      "fruiting plants, with feed of 32 percent protein.")));
}

/* Every measure that is told to rise or fall, then those of which there are tests enough but it is not. */
static void
add_trends (const SteadWaterAnswer *self,
            GPtrArray              *whys)
{
  g_autoptr(GPtrArray) untold = g_ptr_array_new ();
  GString *worked = g_string_new (NULL);

  for (int i = 0; i < STEAD_N_WATER_MEASURES; i++)
    {
      g_autofree char *sentence = NULL;

      if (self->trends[i].fitted && !self->trends[i].told)
        g_ptr_array_add (untold, (char *) stead_water_measure_name ((SteadWaterMeasure) i));
      if (!self->trends[i].told)
        continue;
      sentence = stead_water_answer_trend_sentence (self, (SteadWaterMeasure) i);
      g_string_append_printf (worked, "%s%s", worked->len > 0 ? "\n" : "", sentence);
    }
  if (untold->len > 0)
    {
      g_autofree char *list = NULL;

      g_ptr_array_add (untold, NULL);
      list = stead_words_list ((const char * const *) untold->pdata);
      g_string_append (worked, worked->len > 0 ? "\n" : "");
      /* Translators: a list of measures. */
      g_string_append_printf (worked, _("Up or down cannot be told of: %s."), list);
    }
  if (worked->len == 0)
    {
      g_string_free (worked, TRUE);
      return;
    }
  g_ptr_array_add (whys, stead_why_new (
    g_strdup (_("Where the measures are going")),
    _("A straight line through the last tests (at most 6, of the last 35 days), each as exact as a drop kit reads. "
      "It is carried on for no longer than twice the days that it was measured over. Where its slope may as well be 0, up or "
      "down is not told."),
    g_string_free (worked, FALSE),
    _("weighted least squares; the exactness of the kits is common practice, no source")));
}

/* "Tank A 1,200 gal + Sump 300 gal = 1,500 gal" */
static void
add_volume (const SteadWaterAnswer *self,
            GPtrArray              *whys)
{
  const SteadUnit *unit = stead_unit_default (STEAD_DIMENSION_VOLUME, self->farm->units);
  g_autofree char *all = NULL, *about = NULL;
  GString *sum;

  if (self->tanks == NULL || self->tanks->len == 0 || isnan (self->volume_l))
    return;
  all = stead_quantity_format (self->volume_l, unit);
  about = stead_tank_text_volume (self->volume_l, self->farm->units);
  sum = g_string_new (NULL);
  for (guint i = 0; i < self->tanks->len; i++)
    {
      const SteadTank *tank = self->tanks->pdata[i];
      g_autofree char *volume = stead_quantity_format (tank->volume_l, unit);

      stead_sum_add_named (sum, tank->name, volume);
    }
  stead_sum_end (sum, all);
  if (!g_str_equal (all, about))
    g_string_append_printf (sum, " ≈ %s", about);
  g_ptr_array_add (whys, stead_why_new (
    g_strdup (_("How much water it holds")),
    _("The volumes of its tanks added up, each by its shape and measures. How much goes round in pipes and beds is not in it; "
      "enter the whole volume if you know it."),
    g_string_free (sum, FALSE), _("Common practice, no source.")));
}

static void
add_due (const SteadWaterAnswer *self,
         GPtrArray              *whys)
{
  g_autofree char *last = NULL, *days = NULL, *due = NULL;

  if (self->last == NULL || self->due_on == STEAD_DAY_NONE)
    return;
  last = stead_day_format (self->last->day, STEAD_DAY_STYLE_SHORT);
  days = stead_words_days (self->water->test_days);
  due = stead_day_format (self->due_on, STEAD_DAY_STYLE_SHORT);
  g_ptr_array_add (whys, stead_why_new (
    g_strdup (_("When the next test is due")), _("Day of the last test + days from test to test, as entered for this water."),
    /* Translators: a day, "7 days", a day. */
    g_strdup_printf (_("%1$s + %2$s = %3$s"), last, days, due), _("Common practice, no source.")));
}

GPtrArray *
stead_water_answer_whys (const SteadWaterAnswer *self)
{
  GPtrArray *whys;

  g_return_val_if_fail (self != NULL, NULL);

  whys = stead_whys_new ();
  add_volume (self, whys);
  add_ammonia (self, whys);
  add_oxygen (self, whys);
  add_chloride (self, whys);
  add_feed (self, whys);
  add_nitrate (self, whys);
  add_bed (self, whys);
  add_trends (self, whys);
  add_due (self, whys);
  return whys;
}
