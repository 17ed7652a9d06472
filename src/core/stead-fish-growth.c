/* stead-fish-growth.c - growth of fish by warmth and days. */
#include "config.h"

#include "core/stead-core-error.h"
#include "core/stead-fish-growth.h"
#include "core/stead-round.h"

#include <glib/gi18n-lib.h>
#include <math.h>

/* Growth of the cube root of the weight by one degree-day. */
static double
root_per_degree_day (double tgc_x100)
{
  return tgc_x100 / 100;
}

double
stead_fish_degree_day (const SteadFishKind *fish,
                       double               temp_c)
{
  g_return_val_if_fail (fish != NULL, NAN);

  if (temp_c < fish->growth_min_c)
    return 0;
  return MIN (temp_c, fish->optimum_c);
}

static gboolean
temperature_can_be (double   temp_c,
                    gsize    day,
                    GError **error)
{
  if (temp_c >= STEAD_FISH_LEAST_C && temp_c <= STEAD_FISH_MOST_C)
    return TRUE;
  g_set_error (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_RANGE,
               _("The water of day %u cannot have this temperature. "
                 "It must be from 0 to 45 °C (32 to 113 °F)."), (guint) (day + 1));
  return FALSE;
}

static gboolean
growth_can_be (double   start_g,
               double   tgc_x100,
               GError **error)
{
  if (isfinite (start_g) && start_g > 0 && isfinite (tgc_x100) && tgc_x100 >= 0)
    return TRUE;
  g_set_error_literal (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_RANGE,
                       _("A forecast needs a weight above 0 and a growth coefficient that is "
                         "not below 0. Weigh the fish first."));
  return FALSE;
}

gboolean
stead_fish_degree_days (const SteadFishKind  *fish,
                        const double         *temps_c,
                        gsize                 n,
                        double               *out_sum,
                        GError              **error)
{
  double sum = 0;

  g_return_val_if_fail (fish != NULL, FALSE);
  g_return_val_if_fail (temps_c != NULL || n == 0, FALSE);
  g_return_val_if_fail (out_sum != NULL, FALSE);

  for (gsize day = 0; day < n; day++)
    {
      if (!temperature_can_be (temps_c[day], day, error))
        return FALSE;
      sum += stead_fish_degree_day (fish, temps_c[day]);
    }
  *out_sum = sum;
  return TRUE;
}

double
stead_fish_tgc_x100 (double start_g,
                     double end_g,
                     double degree_days)
{
  if (!(start_g > 0 && end_g > 0 && degree_days > 0))
    return NAN;
  return 100 * (cbrt (end_g) - cbrt (start_g)) / degree_days;
}

double
stead_fish_weight_g (double start_g,
                     double tgc_x100,
                     double degree_days)
{
  double root;

  if (!(start_g > 0 && degree_days >= 0))
    return NAN;
  root = cbrt (start_g) + root_per_degree_day (tgc_x100) * degree_days;
  return pow (MAX (root, 0), 3);
}

double
stead_fish_start_g (double end_g,
                    double tgc_x100,
                    double degree_days)
{
  double root;

  if (!(end_g > 0 && degree_days >= 0))
    return NAN;
  root = cbrt (end_g) - root_per_degree_day (tgc_x100) * degree_days;
  return root > 0 ? pow (root, 3) : NAN;
}

double
stead_fish_degree_days_to (double start_g,
                           double target_g,
                           double tgc_x100)
{
  if (!(start_g > 0 && target_g > 0))
    return NAN;
  if (target_g <= start_g)
    return 0;
  return tgc_x100 > 0 ? (cbrt (target_g) - cbrt (start_g)) / root_per_degree_day (tgc_x100) : NAN;
}

gboolean
stead_fish_forecast (const SteadFishKind  *fish,
                     double                start_g,
                     double                tgc_x100,
                     const double         *temps_c,
                     gsize                 n,
                     double               *out_weights_g,
                     GError              **error)
{
  double sum = 0;

  g_return_val_if_fail (fish != NULL, FALSE);
  g_return_val_if_fail ((temps_c != NULL && out_weights_g != NULL) || n == 0, FALSE);

  /* Every day is looked at before the first number is written. */
  if (!growth_can_be (start_g, tgc_x100, error)
      || !stead_fish_degree_days (fish, temps_c, n, &sum, error))
    return FALSE;
  sum = 0;
  for (gsize day = 0; day < n; day++)
    {
      sum += stead_fish_degree_day (fish, temps_c[day]);
      out_weights_g[day] = stead_fish_weight_g (start_g, tgc_x100, sum);
    }
  return TRUE;
}

gboolean
stead_fish_days_to (const SteadFishKind  *fish,
                    double                start_g,
                    double                target_g,
                    double                tgc_x100,
                    const double         *temps_c,
                    gsize                 n,
                    double               *out_days,
                    GError              **error)
{
  double need;

  g_return_val_if_fail (fish != NULL, FALSE);
  g_return_val_if_fail (temps_c != NULL || n == 0, FALSE);
  g_return_val_if_fail (out_days != NULL, FALSE);

  if (!growth_can_be (start_g, tgc_x100, error))
    return FALSE;
  need = stead_fish_degree_days_to (start_g, target_g, tgc_x100);
  if (need <= 0)
    {
      *out_days = 0;
      return TRUE;
    }
  for (gsize day = 0; day < n; day++)
    {
      double counts;

      if (!temperature_can_be (temps_c[day], day, error))
        return FALSE;
      counts = stead_fish_degree_day (fish, temps_c[day]);
      /* A weight that is reached at the end of a day is not put off by noise. */
      if (counts > 0 && counts * (1 + STEAD_ROUND_NOISE) >= need)
        {
          *out_days = (double) day + MIN (need / counts, 1);
          return TRUE;
        }
      need -= counts;
    }
  g_set_error_literal (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_NONE,
                       _("The fish do not reach this weight in the days looked at. "
                         "Look further ahead, choose a lower weight, or keep the water warmer."));
  return FALSE;
}

double
stead_fish_sgr_pct (double start_g,
                    double end_g,
                    double days)
{
  if (!(start_g > 0 && end_g > 0 && days > 0))
    return NAN;
  return 100 * (log (end_g) - log (start_g)) / days;
}

double
stead_fish_condition (double weight_g,
                      double length_cm)
{
  return weight_g > 0 && length_cm > 0 ? 100 * weight_g / pow (length_cm, 3) : NAN;
}

double
stead_fish_condition_weight_g (double condition,
                               double length_cm)
{
  return condition > 0 && length_cm > 0 ? condition * pow (length_cm, 3) / 100 : NAN;
}

double
stead_fish_condition_length_cm (double condition,
                                double weight_g)
{
  return condition > 0 && weight_g > 0 ? cbrt (100 * weight_g / condition) : NAN;
}
