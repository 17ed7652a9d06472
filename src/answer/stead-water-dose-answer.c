/* stead-water-dose-answer.c - "What must go into this water, or out of it?" */
#include "config.h"

#include "answer/stead-answer-error.h"
#include "answer/stead-tank-text.h"
#include "answer/stead-water-dose-answer.h"
#include "answer/stead-words-private.h"
#include "core/stead-water.h"

#include <glib/gi18n-lib.h>
#include <math.h>

/* Alkalinity that is raised at once, mg/L (common practice, no source). */
#define RAISE_A_DAY_MGL 30.0

/* Share of the water that is changed at once: 20 to 30 in 100 (common practice). */
#define CHANGE_AT_ONCE_FRAC 0.25

/* Alkalinity that a filter is kept with, and where a change of nitrate leads. */
#define ALKALINITY_TARGET_MGL 100.0

void
stead_water_dose_free (SteadWaterDose *dose)
{
  if (dose == NULL)
    return;
  g_free (dose->sentence);
  g_free (dose->caution);
  stead_why_free (dose->why);
  g_free (dose);
}

static double
start_target (const SteadWaterAnswer *water,
              SteadWaterMeasure       measure)
{
  SteadWaterBand band;

  stead_water_band (water->scene.sharers, measure, &band);
  return band.max / 2;
}

void
stead_water_dose_start (const SteadWaterAnswer *water,
                        SteadDoseSheet          sheet,
                        SteadWaterMeasure       measure,
                        SteadDoseNumbers       *out)
{
  static const SteadWaterMeasure of_sheet[] = { STEAD_WATER_ALKALINITY, STEAD_WATER_NITRITE };
  const SteadWaterTest *test;

  g_return_if_fail (water != NULL && out != NULL);

  *out = (SteadDoseNumbers) { .volume_l = water->volume_l, .now = NAN, .target = NAN, .beside = NAN,
                              .day = STEAD_DAY_NONE };
  test = stead_water_answer_last_of (water, sheet == STEAD_DOSE_CHANGE ? measure : of_sheet[sheet], &out->now);
  if (test != NULL)
    out->day = test->day;
  if (sheet == STEAD_DOSE_BASE)
    out->target = ALKALINITY_TARGET_MGL;
  else if (sheet == STEAD_DOSE_SALT)
    out->beside = isnan (water->scene.chloride_mgl) ? 0 : water->scene.chloride_mgl;
  else
    {
      out->target = start_target (water, measure);
      out->beside = 0;
    }
}

/* --- what all sheets share ---------------------------------------------------------- */

static gboolean
refuse (GError     **error,
        const char  *message)
{
  g_set_error_literal (error, STEAD_ANSWER_ERROR, STEAD_ANSWER_ERROR_INPUT, message);
  return FALSE;
}

static gboolean
check_volume (const SteadDoseNumbers  *numbers,
              GError                 **error)
{
  return numbers->volume_l > 0
         || refuse (error, _("Enter how much water there is. It can be kept with the water or its tanks."));
}

static gboolean
check_reading (SteadWaterMeasure   measure,
               double              value,
               const char         *missing,
               GError            **error)
{
  g_autofree char *message = NULL;

  if (isnan (value))
    return refuse (error, missing);
  if (stead_water_reason (measure, value) == STEAD_WATER_POSSIBLE)
    return TRUE;
  /* Translators: a measure of water, such as "Alkalinity". */
  message = g_strdup_printf (_("%s: no water has so much or so little. Check the number."),
                             stead_water_measure_name (measure));
  return refuse (error, message);
}

/* "850 g (1.9 lb)": scales show grams, sacks show pounds. */
static char *
mass_text (double           g,
           SteadUnitSystem  units)
{
  g_autofree char *metric = stead_quantity_format (g / 1000, stead_unit_by_id (g < 1000 ? "g" : "kg"));
  g_autofree char *us = NULL;

  if (units == STEAD_UNITS_METRIC)
    return g_steal_pointer (&metric);
  us = stead_quantity_format (g / 1000, stead_unit_by_id (g < 450 ? "oz" : "lb"));
  /* Translators: the same amount in two units: "850 g (1.9 lb)". */
  return g_strdup_printf (C_("amount", "%s (%s)"), metric, us);
}

static SteadWaterDose *
dose_new (double amount)
{
  SteadWaterDose *dose = g_new0 (SteadWaterDose, 1);

  dose->amount = amount;
  dose->frac = NAN;
  dose->parts = 1;
  return dose;
}

/* --- base ------------------------------------------------------------------------------ */

/* What the base does besides: to plants, to skin, to the ammonia that is there. */
static char *
base_caution (const SteadWaterAnswer *water,
              SteadBase               base)
{
  SteadBaseTraits traits = stead_base_traits (base);
  double tan = NAN;
  GString *text = g_string_new (NULL);

  if ((traits & STEAD_BASE_CAUSTIC) != 0)
    stead_words_add (text, _("This base burns skin and eyes and makes the pH jump: gloves, goggles, and an adult. Stir it "
                             "into much water first, never water into it."));
  else
    stead_words_add (text, _("Dust and strong mixtures irritate: gloves and goggles, with an adult."));
  if ((traits & STEAD_BASE_SODIUM) != 0 && water->scene.planted)
    stead_words_add (text, _("Its sodium builds up and harms plants: with beds take turns between potassium and calcium "
                             "bases."));
  if ((traits & STEAD_BASE_SLOW) != 0)
    stead_words_add (text, _("It dissolves slowly and works over days."));
  stead_water_answer_last_of (water, STEAD_WATER_TAN, &tan);
  if (tan > 0)
    stead_words_add (text, _("There was ammonia in the last test, and a higher pH makes more of it poisonous: test it "
                             "again before you add any."));
  return stead_words_end (text);
}

static SteadWhy *
base_why (SteadBase               base,
          const SteadDoseNumbers *numbers,
          double                  raise,
          double                  g)
{
  g_autofree char *volume = stead_number_format (numbers->volume_l, 0);
  g_autofree char *rise = stead_number_format (raise, 1);
  g_autofree char *factor = stead_number_format (stead_base_g_per_caco3 (base), 2);
  g_autofree char *grams = stead_words_number (g);

  return stead_why_new (g_strdup (_("How the dose is worked out")),
                        _("Liters × mg/L to raise ÷ 1,000 × grams of this base that stand for one gram of calcium "
                          "carbonate"),
                        /* Translators: liters, mg/L, a factor, grams. */
                        g_strdup_printf (_("%s L × %s mg/L ÷ 1,000 × %s = %s g"), volume, rise, factor, grams),
                        _("molar masses by equivalents (atomic weights from memory); a farm adviser's buffer table agrees "
                          "within 10 in 100"));
}

static char *
base_sentence (const SteadWaterAnswer *water,
               SteadBase               base,
               const SteadDoseNumbers *numbers,
               const SteadWaterDose   *dose)
{
  SteadUnitSystem units = water->farm->units;
  g_autofree char *amount = mass_text (dose->amount, units);
  g_autofree char *part = mass_text (dose->amount / dose->parts, units);
  g_autofree char *volume = stead_tank_text_volume (numbers->volume_l, units);
  g_autofree char *target = stead_water_value_text (STEAD_WATER_ALKALINITY, numbers->target, units);

  if (dose->parts == 1)
    /* Translators: an amount, a chemical, a volume, mg/L. */
    return g_strdup_printf (_("<b>%s</b> of %s brings %s of water to %s. Weigh twice, dissolve it first, add it slowly, "
                              "and test again."), amount, stead_base_name (base), volume, target);
  /* Translators: an amount, a chemical, a volume, mg/L, days, an amount a day. */
  return g_strdup_printf (_("<b>%s</b> of %s brings %s of water to %s. Give it over %d days, <b>%s a day</b>: weigh twice, "
                            "dissolve it first, and test pH and alkalinity before each part. The pH may move by 0.3 a day "
                            "at most."), amount, stead_base_name (base), volume, target, dose->parts, part);
}

SteadWaterDose *
stead_water_dose_base (const SteadWaterAnswer  *water,
                       SteadBase                base,
                       const SteadDoseNumbers  *numbers,
                       GError                 **error)
{
  SteadWaterDose *dose;
  double raise;

  g_return_val_if_fail (water != NULL && numbers != NULL, NULL);
  g_return_val_if_fail ((guint) base < STEAD_N_BASES, NULL);

  if (!check_volume (numbers, error)
      || !check_reading (STEAD_WATER_ALKALINITY, numbers->now, _("Enter the alkalinity that was measured."), error)
      || !check_reading (STEAD_WATER_ALKALINITY, numbers->target, _("Enter the alkalinity that you want."), error))
    return NULL;
  raise = MAX (0, numbers->target - numbers->now);
  dose = dose_new (stead_base_dose_g (base, numbers->volume_l, raise));
  dose->parts = (int) MAX (1, ceil (raise / RAISE_A_DAY_MGL - 1e-9));
  dose->sentence = raise > 0 ? base_sentence (water, base, numbers, dose)
                             : g_strdup (_("The water already has the alkalinity that you want: add nothing."));
  dose->caution = base_caution (water, base);
  dose->why = base_why (base, numbers, raise, dose->amount);
  return dose;
}

/* --- salt ------------------------------------------------------------------------------ */

static char *
salt_sentence (const SteadWaterAnswer *water,
               const SteadDoseNumbers *numbers,
               double                  g)
{
  SteadUnitSystem units = water->farm->units;
  g_autofree char *amount = mass_text (g, units);
  g_autofree char *volume = stead_tank_text_volume (numbers->volume_l, units);
  g_autofree char *need = stead_water_value_text (
    STEAD_WATER_CHLORIDE, stead_water_chloride_need_mgl (numbers->now, STEAD_WATER_CHLORIDE_RATIO), units);

  /* Translators: an amount, a volume, mg/L. */
  return g_strdup_printf (_("<b>%s</b> of plain salt brings %s of water to %s of chloride, 10 parts to 1 of nitrite. "
                            "Dissolve it first, add it slowly where the water moves, and test again."),
                          amount, volume, need);
}

static SteadWhy *
salt_why (const SteadDoseNumbers *numbers,
          double                  g)
{
  g_autofree char *nitrite = stead_number_format (numbers->now, 2);
  g_autofree char *chloride = stead_number_format (numbers->beside, 0);
  g_autofree char *m3 = stead_number_format (numbers->volume_l / 1000, 2);
  g_autofree char *grams = stead_words_number (g);
  g_autofree char *source = stead_water_source_text (STEAD_SOURCE_SRAC_462);

  return stead_why_new (g_strdup (_("How the dose is worked out")),
                        _("(10 × nitrite − chloride) × cubic meters ÷ 0.607, the share of chloride in salt; never less "
                          "than nothing"),
                        /* Translators: nitrite, chloride, cubic meters, grams. */
                        g_strdup_printf (_("(10 × %s − %s) × %s ÷ 0.607 = %s g"), nitrite, chloride, m3, grams), source);
}

SteadWaterDose *
stead_water_dose_salt (const SteadWaterAnswer  *water,
                       const SteadDoseNumbers  *numbers,
                       GError                 **error)
{
  SteadWaterDose *dose;
  GString *caution;

  g_return_val_if_fail (water != NULL && numbers != NULL, NULL);

  if (!check_volume (numbers, error)
      || !check_reading (STEAD_WATER_NITRITE, numbers->now, _("Enter the nitrite that was measured."), error)
      || !check_reading (STEAD_WATER_CHLORIDE, numbers->beside, _("Enter the chloride that was measured, or 0."), error))
    return NULL;
  dose = dose_new (stead_water_salt_dose_g (numbers->now, STEAD_WATER_CHLORIDE_RATIO, numbers->beside,
                                            numbers->volume_l));
  dose->sentence = dose->amount > 0 ? salt_sentence (water, numbers, dose->amount)
                                    : g_strdup (_("There are 10 parts of chloride to 1 of nitrite already: add no salt."));
  caution = g_string_new (NULL);
  stead_words_add (caution, _("Use plain salt without iodine and without an anti-caking agent such as yellow prussiate of "
                              "soda, which poisons fish."));
  if (water->scene.planted)
    stead_words_add (caution, _("Sodium builds up and harms plants: with beds take calcium or potassium chloride for a "
                                "part."));
  dose->caution = stead_words_end (caution);
  dose->why = salt_why (numbers, dose->amount);
  return dose;
}

/* --- water change ------------------------------------------------------------------------ */

static char *
change_sentence (const SteadWaterAnswer *water,
                 SteadWaterMeasure       measure,
                 const SteadDoseNumbers *numbers,
                 const SteadWaterDose   *dose)
{
  SteadUnitSystem units = water->farm->units;
  g_autofree char *volume = stead_tank_text_volume (dose->amount, units);
  g_autofree char *each = stead_tank_text_volume (numbers->volume_l * CHANGE_AT_ONCE_FRAC, units);
  g_autofree char *percent = stead_words_percent (dose->frac, 0);
  g_autofree char *now = stead_water_value_text (measure, numbers->now, units);
  g_autofree char *target = stead_water_value_text (measure, numbers->target, units);

  if (dose->parts == 1)
    /* Translators: a volume, a percentage, "Nitrate", a reading, a reading. */
    return g_strdup_printf (_("Change <b>%s</b> (%s of the water). %s then goes from %s to %s."), volume, percent,
                            stead_water_measure_name (measure), now, target);
  /* Translators: a volume, a percentage, how many, a volume, "Nitrate", a reading, a reading. */
  return g_strdup_printf (_("It takes <b>%s</b> (%s of the water), which is too much at once. Make <b>%d changes of %s</b>, a "
                            "day apart. %s then goes from %s to %s or less."), volume, percent, dose->parts, each,
                          stead_water_measure_name (measure), now, target);
}

static SteadWhy *
change_why (const SteadDoseNumbers *numbers,
            double                  frac)
{
  g_autofree char *now = stead_number_format (numbers->now, 3);
  g_autofree char *target = stead_number_format (numbers->target, 3);
  g_autofree char *source = stead_number_format (numbers->beside, 3);
  g_autofree char *percent = stead_words_percent (frac, 1);

  return stead_why_new (g_strdup (_("How the share is worked out")),
                        _("(reading now − reading wanted) ÷ (reading now − reading of the water that is added). Several "
                          "changes each take some of the new water out again."),
                        g_strdup_printf ("(%s − %s) ÷ (%s − %s) = %s", now, target, now, source, percent),
                        _("mixing of two waters by their volumes"));
}

SteadWaterDose *
stead_water_dose_change (const SteadWaterAnswer  *water,
                         SteadWaterMeasure        measure,
                         const SteadDoseNumbers  *numbers,
                         GError                 **error)
{
  SteadWaterDose *dose;
  double frac;

  g_return_val_if_fail (water != NULL && numbers != NULL, NULL);

  if (!check_volume (numbers, error)
      || !check_reading (measure, numbers->now, _("Enter the reading that was measured."), error)
      || !check_reading (measure, numbers->target, _("Enter the reading that you want."), error)
      || !check_reading (measure, numbers->beside, _("Enter what the water that you add has of it."), error)
      || !stead_water_change_frac (numbers->now, numbers->target, numbers->beside, &frac, error))
    return NULL;
  dose = dose_new (frac * numbers->volume_l);
  dose->frac = frac;
  if (frac > CHANGE_AT_ONCE_FRAC * 1.2 && frac < 1)
    dose->parts = (int) stead_water_changes (frac, CHANGE_AT_ONCE_FRAC);
  dose->sentence = frac > 0 ? change_sentence (water, measure, numbers, dose)
                            : g_strdup (_("The reading is what you want: change nothing."));
  dose->caution = g_strdup (_("Add water that is as warm and free of chlorine. Let the old water onto soil or into the "
                              "sewer as the local rules say, never into a stream or lake, and never let fish go with it."));
  dose->why = change_why (numbers, frac);
  return dose;
}
