/* stead-fish-sample-why.c - what a weighing gives, worked out while it is typed. */
#include "config.h"

#include "answer/stead-fish-private.h"
#include "answer/stead-fish-text.h"
#include "answer/stead-sum-private.h"
#include "answer/stead-words-private.h"
#include "core/stead-fish-growth.h"

#include <glib/gi18n-lib.h>
#include <math.h>

/* Of many fish the first are named. */
#define NAMED 12

typedef double (*Figure) (const SteadWeighed *fish, const SteadUnit *unit);

static double
weight_figure (const SteadWeighed *fish,
               const SteadUnit    *unit)
{
  return stead_quantity_from_base (fish->weight_g / 1000, unit);
}

/* NAN: its length was not taken. */
static double
condition_figure (const SteadWeighed *fish,
                  const SteadUnit    *unit)
{
  return fish->length_cm > 0 ? stead_fish_condition (fish->weight_g, fish->length_cm) : NAN;
}

/* "(100 + 140) ÷ 2" of those fish that have the figure */
static char *
mean_terms (const GArray    *single,
            Figure           figure,
            const SteadUnit *unit)
{
  g_autoptr(GString) sum = g_string_new (NULL);
  g_autofree char *count = NULL;
  guint n = 0;

  for (guint i = 0; i < single->len; i++)
    {
      double value = figure (&g_array_index (single, SteadWeighed, i), unit);
      g_autofree char *term = isnan (value) ? NULL : stead_number_format (value, 2);

      if (term == NULL)
        continue;
      if (n++ <= NAMED)
        stead_sum_add_term (sum, n > NAMED ? "…" : term);
    }
  count = stead_number_format (n, 0);
  return g_strdup_printf ("(%s) ÷ %s", sum->str, count);
}

static SteadWhy *
mean_why (const SteadWeighing *weighing,
          SteadUnitSystem      units)
{
  double mean_g = stead_weighing_mean_g (weighing);
  const SteadUnit *unit = stead_fish_weight_unit (mean_g, units);
  g_autofree char *number = stead_number_format ((double) weighing->n, 0);
  g_autofree char *all = NULL, *terms = NULL, *mean = NULL;
  char *worked;

  if (!(weighing->n >= 1) || !(mean_g > 0))
    worked = g_strdup (_("Weigh about 30 fish or a tenth of them, after a day without feed."));
  else
    {
      mean = stead_fish_weight_text (mean_g, units);
      all = stead_quantity_format (weighing->total_kg, unit);
      terms = weighing->single != NULL ? mean_terms (weighing->single, weight_figure, unit)
              : g_strdup_printf ("%s ÷ %s", all, number);
      worked = g_strdup_printf ("%s = %s", terms, mean);
    }
  return stead_why_new (g_strdup (_("Mean weight of a fish")), _("Weight of all that were weighed ÷ number of them."), worked,
                        _("Common practice, no source."));
}

static SteadWhy *
spread_why (const SteadWeighing *weighing,
            SteadUnitSystem      units)
{
  double mean_g = stead_weighing_mean_g (weighing);
  g_autofree char *apart = stead_fish_weight_text (weighing->sd_g, units);
  g_autofree char *mean = stead_fish_weight_text (mean_g, units);
  g_autofree char *spread = stead_words_percent (weighing->sd_g / mean_g, 0);

  return stead_why_new (g_strdup (_("Spread of the sample")),
                        _("Standard deviation of the weights ÷ mean weight. Standard deviation = √(sum of the squared distances "
                          "from the mean ÷ (number of fish − 1))."),
                        g_strdup_printf ("%s ÷ %s = %s", apart, mean, spread),
                        _("Coefficient of variation: common practice, no source."));
}

static SteadWhy *
condition_why (const SteadWeighing *weighing,
               double               condition)
{
  g_autofree char *factor = stead_number_format (condition, 2);
  g_autofree char *terms = NULL, *weight = NULL, *length = NULL;

  if (weighing->single != NULL && weighing->single->len > 0)
    terms = mean_terms (weighing->single, condition_figure, NULL);
  else
    {
      weight = stead_number_format (stead_weighing_mean_g (weighing), 1);
      length = stead_number_format (weighing->length_cm, 1);
      /* Translators: a weight in grams, a length in centimeters. */
      terms = g_strdup_printf (_("100 × %1$s g ÷ (%2$s cm)³"), weight, length);
    }
  return stead_why_new (g_strdup (_("Condition factor")),
                        _("100 × weight in grams ÷ length in centimeters, cubed; of fish measured one by one the mean of their "
                          "factors."),
                        g_strdup_printf ("%s = %s", terms, factor), _("Fulton's condition factor, a river research trust's page."));
}

GPtrArray *
stead_fish_text_sample_whys (const SteadWeighing *weighing,
                             SteadUnitSystem      units)
{
  GPtrArray *whys = stead_whys_new ();
  double condition;

  g_return_val_if_fail (weighing != NULL, whys);

  g_ptr_array_add (whys, mean_why (weighing, units));
  if (!(weighing->n >= 1) || !(stead_weighing_mean_g (weighing) > 0))
    return whys;
  if (!isnan (weighing->sd_g))
    g_ptr_array_add (whys, spread_why (weighing, units));
  condition = stead_fish_weighing_condition (weighing);
  if (!isnan (condition))
    g_ptr_array_add (whys, condition_why (weighing, condition));
  return whys;
}
