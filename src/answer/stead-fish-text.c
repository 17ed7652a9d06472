/* stead-fish-text.c - a group of fish in words. */
#include "config.h"

#include "answer/stead-fish-private.h"
#include "answer/stead-fish-text.h"
#include "answer/stead-words-private.h"
#include "core/stead-money.h"

#include <glib/gi18n-lib.h>
#include <math.h>

/* --- units ----------------------------------------------------------------------- */

/* A fish of less is shown in the small unit. */
#define POUND_G 453.59237
#define KILO_G 1000.0

const SteadUnit *
stead_fish_weight_unit (double          weight_g,
                        SteadUnitSystem units)
{
  if (units == STEAD_UNITS_METRIC)
    return stead_unit_by_id (weight_g < KILO_G ? "g" : "kg");
  return stead_unit_by_id (weight_g < POUND_G ? "oz" : "lb");
}

#define NUMBER_PLACES 2

char *
stead_fish_weight_number (double           weight_g,
                          const SteadUnit *unit)
{
  g_return_val_if_fail (unit != NULL, NULL);

  return stead_number_format (stead_quantity_from_base (weight_g / 1000, unit), NUMBER_PLACES);
}

const SteadUnit *
stead_fish_length_unit (SteadUnitSystem units)
{
  return stead_unit_by_id (units == STEAD_UNITS_METRIC ? "cm" : "in");
}

/* --- the chart --------------------------------------------------------------------- */

static char *
percent (double frac)
{
  g_autofree char *number = stead_number_format (frac * 100, 0);

  /* Translators: so many of 100. */
  return g_strdup_printf (_("%s %%"), number);
}

char *
stead_fish_text_mark (const SteadFishAnswer *answer,
                      const SteadGrowthMark *mark)
{
  g_autofree char *day = NULL, *fish = NULL, *mean = NULL, *spread = NULL;
  GString *text;

  g_return_val_if_fail (answer != NULL && mark != NULL, NULL);

  day = stead_day_format (mark->day, STEAD_DAY_STYLE_MEDIUM);
  fish = stead_words_fish (mark->n);
  mean = stead_fish_weight_text (mark->mean_g, answer->farm->units);
  text = g_string_new (NULL);
  /* Translators: a day, "20 fish", a weight. */
  g_string_append_printf (text, _("%s: %s weighed, %s each in the mean."), day, fish, mean);
  if (!isnan (mark->sd_g))
    {
      spread = percent (mark->sd_g / mark->mean_g);
      g_string_append_c (text, ' ');
      /* Translators: "18 %". */
      g_string_append_printf (text, _("Spread: %s."), spread);
    }
  if (mark->left_out || mark->far_off)
    g_string_append_printf (text, " %s", mark->left_out ? _("It is left out.")
                                                        : _("It lies far off the others and counts little."));
  return g_string_free (text, FALSE);
}

char *
stead_fish_text_step (const SteadFishAnswer *answer,
                      const SteadGrowthStep *step)
{
  g_autofree char *day = NULL, *likely = NULL, *low = NULL, *high = NULL;
  SteadUnitSystem units;

  g_return_val_if_fail (answer != NULL && step != NULL, NULL);

  units = answer->farm->units;
  day = stead_day_format (step->day, STEAD_DAY_STYLE_MEDIUM);
  likely = stead_fish_weight_text (step->likely_g, units);
  if (answer->series.today == STEAD_DAY_NONE || step->day < answer->series.today)
    /* Translators: a day, a weight. */
    return g_strdup_printf (_("%s: about %s a fish, by what was learned."), day, likely);
  low = stead_fish_weight_text (step->low_g, units);
  high = stead_fish_weight_text (step->high_g, units);
  /* Translators: a day, a weight, the lowest and the highest weight to expect. */
  return g_strdup_printf (_("%s: about %s a fish expected, %s to %s in 8 of 10 cases."), day, likely, low, high);
}

char *
stead_fish_text_sale_day (const SteadFishAnswer *answer)
{
  g_autofree char *share = NULL, *day = NULL;

  g_return_val_if_fail (answer != NULL, NULL);

  if (answer->sale_day == STEAD_DAY_NONE)
    return NULL;
  share = stead_number_format (answer->group->sale_frac * 100, 0);
  day = stead_day_format (answer->sale_day, STEAD_DAY_STYLE_SHORT);
  /* Translators: over the chart: so many of 100 fish, a day. */
  return g_strdup_printf (_("%s in 100: %s"), share, day);
}

char *
stead_fish_text_range (const SteadBand *mean_g,
                       const SteadUnit *unit)
{
  g_autofree char *low = NULL, *high = NULL;

  g_return_val_if_fail (mean_g != NULL && unit != NULL, NULL);

  if (isnan (mean_g->likely))
    return NULL;
  low = stead_quantity_format (mean_g->low / 1000, unit);
  high = stead_quantity_format (mean_g->high / 1000, unit);
  if (g_str_equal (low, high))
    return g_steal_pointer (&low);
  /* Translators: the lowest and the highest weight of a fish: "15.2 oz to 16 oz". */
  return g_strdup_printf (C_("weight of a fish", "%s to %s"), low, high);
}

/* --- forms and dialogs ----------------------------------------------------------------- */

char *
stead_fish_text_sample (const SteadWeighing *weighing,
                        SteadUnitSystem      units)
{
  double mean_g, condition;
  g_autofree char *fish = NULL, *mean = NULL, *spread = NULL, *factor = NULL;
  GString *text;

  g_return_val_if_fail (weighing != NULL, NULL);

  mean_g = stead_weighing_mean_g (weighing);
  if (weighing->n < 1 || !(mean_g > 0))
    return g_strdup ("");
  fish = stead_words_fish (weighing->n);
  mean = stead_fish_weight_text (mean_g, units);
  text = g_string_new (NULL);
  /* Translators: "20 fish", a weight. */
  g_string_append_printf (text, _("%s, %s each in the mean."), fish, mean);
  if (!isnan (weighing->sd_g))
    {
      spread = percent (weighing->sd_g / mean_g);
      g_string_append_c (text, ' ');
      g_string_append_printf (text, _("Spread: %s."), spread);
    }
  condition = stead_fish_weighing_condition (weighing);
  if (!isnan (condition))
    {
      factor = stead_number_format (condition, 2);
      g_string_append_c (text, ' ');
      /* Translators: a number, such as 1.05; it tells lean fish from stout ones. */
      g_string_append_printf (text, _("Condition factor: %s."), factor);
    }
  return g_string_free (text, FALSE);
}

char *
stead_fish_weighing_name (const SteadWeighing *weighing)
{
  g_autofree char *fish = NULL, *day = NULL;

  g_return_val_if_fail (weighing != NULL, NULL);

  fish = stead_words_fish (weighing->n);
  day = stead_day_format (weighing->day, STEAD_DAY_STYLE_SHORT);
  /* Translators: "20 fish", a day. */
  return g_strdup_printf (_("Weighing of %s on %s"), fish, day);
}

char *
stead_fish_move_name (const SteadFishMove *move)
{
  g_autofree char *fish = NULL, *day = NULL;

  g_return_val_if_fail (move != NULL, NULL);

  fish = stead_words_fish (move->n);
  day = stead_day_format (move->day, STEAD_DAY_STYLE_SHORT);
  /* Translators: "20 fish", a day. */
  return g_strdup_printf (_("%s moved on %s"), fish, day);
}

char *
stead_fish_kind_words (SteadFishSpecies species,
                       SteadUnitSystem  units)
{
  const SteadFishKind *kind = stead_fish_kind (species);
  const SteadUnit *degrees = stead_unit_default (STEAD_DIMENSION_TEMPERATURE, units);
  g_autofree char *low = stead_quantity_format (kind->best_min_c, degrees);
  g_autofree char *high = stead_quantity_format (kind->best_max_c, degrees);
  g_autofree char *stops = stead_quantity_format (kind->growth_min_c, degrees);
  g_autofree char *market = stead_fish_weight_text (kind->market_g, units);

  /* Translators: three temperatures, a weight, and the title of a publication. */
  return g_strdup_printf (_("They do best at %s to %s, hardly grow below %s, and are usually sold from %s (%s). "
                            "These are planning values; your own weighings go first."),
                          low, high, stops, market, stead_source_title (kind->temperature_source));
}

gint64
stead_fish_share_cents (const SteadFishAnswer *answer,
                        gint64                 n)
{
  g_return_val_if_fail (answer != NULL, 0);

  if (answer->alive < 1 || n < 1)
    return 0;
  return stead_money_round ((double) answer->cost_in_cents * MIN (1, (double) n / (double) answer->alive));
}
