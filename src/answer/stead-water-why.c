/* stead-water-why.c - worked formulas of the water answer, with the farm's own numbers. */
#include "config.h"

#include "answer/stead-water-answer.h"
#include "answer/stead-words-private.h"
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

static void
add_trend (const SteadWaterAnswer *self,
           GPtrArray              *whys)
{
  for (int i = 0; i < STEAD_N_WATER_MEASURES; i++)
    if (self->trends[i].meets)
      {
        g_autofree char *sentence = stead_water_answer_trend_sentence (self, (SteadWaterMeasure) i);

        g_ptr_array_add (whys, stead_why_new (
          /* Translators: a measure. */
          g_strdup_printf (_("Where this is going: %s"), stead_water_measure_name ((SteadWaterMeasure) i)),
          _("A straight line through the last tests (at most 6, of the last 35 days), each as exact as a drop kit reads. "
            "It is carried on for no longer than twice the days that it was measured over."),
          g_steal_pointer (&sentence),
          _("weighted least squares; the exactness of the kits is common practice, no source")));
      }
}

GPtrArray *
stead_water_answer_whys (const SteadWaterAnswer *self)
{
  GPtrArray *whys;

  g_return_val_if_fail (self != NULL, NULL);

  whys = g_ptr_array_new_with_free_func ((GDestroyNotify) stead_why_free);
  add_ammonia (self, whys);
  add_oxygen (self, whys);
  add_chloride (self, whys);
  add_feed (self, whys);
  add_trend (self, whys);
  return whys;
}
