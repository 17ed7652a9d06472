/* stead-fish-sample.c - some weighed fish, and what they say of all. */
#include "config.h"

#include "core/stead-core-error.h"
#include "core/stead-fish-growth.h"
#include "core/stead-fish-sample.h"

#include <glib/gi18n-lib.h>
#include <gsl/gsl_cdf.h>
#include <gsl/gsl_statistics_double.h>
#include <math.h>

/* The first number that is not above 0, counted from 1; 0 if all are. */
static guint
first_bad (const double *numbers,
           gsize         n)
{
  for (gsize i = 0; i < n; i++)
    if (!(numbers[i] > 0 && isfinite (numbers[i])))
      return (guint) (i + 1);
  return 0;
}

static gboolean
fish_can_be (const double  *weights_g,
             const double  *lengths_cm,
             gsize          n,
             GError       **error)
{
  guint bad = first_bad (weights_g, n);

  if (bad > 0)
    {
      g_set_error (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_RANGE,
                   _("Fish %u needs a weight above 0."), bad);
      return FALSE;
    }
  bad = lengths_cm != NULL ? first_bad (lengths_cm, n) : 0;
  if (bad > 0)
    {
      g_set_error (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_RANGE,
                   _("Fish %u needs a length above 0."), bad);
      return FALSE;
    }
  return TRUE;
}

static double
mean_condition (const double *weights_g,
                const double *lengths_cm,
                gsize         n)
{
  double sum = 0;

  for (gsize i = 0; i < n; i++)
    sum += stead_fish_condition (weights_g[i], lengths_cm[i]);
  return sum / (double) n;
}

gboolean
stead_fish_sample (const double     *weights_g,
                   const double     *lengths_cm,
                   gsize             n,
                   SteadFishSample  *out_sample,
                   GError          **error)
{
  SteadFishSample sample = { .n = n, .sd_g = NAN, .se_g = NAN, .cv_frac = NAN, .condition = NAN };

  g_return_val_if_fail (weights_g != NULL || n == 0, FALSE);
  g_return_val_if_fail (out_sample != NULL, FALSE);

  if (n == 0)
    {
      g_set_error_literal (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_NONE,
                           _("No fish is weighed yet. Weigh about 30."));
      return FALSE;
    }
  if (!fish_can_be (weights_g, lengths_cm, n, error))
    return FALSE;

  sample.mean_g = gsl_stats_mean (weights_g, 1, n);
  if (n > 1)
    {
      sample.sd_g = gsl_stats_sd_m (weights_g, 1, n, sample.mean_g);
      sample.se_g = sample.sd_g / sqrt ((double) n);
      sample.cv_frac = sample.sd_g / sample.mean_g;
    }
  if (lengths_cm != NULL)
    sample.condition = mean_condition (weights_g, lengths_cm, n);
  *out_sample = sample;
  return TRUE;
}

/* Standard deviation of the logarithm of a lognormal weight. */
static double
log_sd (double cv_frac)
{
  return sqrt (log1p (cv_frac * cv_frac));
}

double
stead_fish_share_over (double mean_g,
                       double cv_frac,
                       double sale_g)
{
  double sd = log_sd (cv_frac);

  if (!(mean_g > 0 && cv_frac >= 0 && sale_g > 0))
    return NAN;
  if (sd == 0)
    return mean_g >= sale_g ? 1 : 0;
  return gsl_cdf_ugaussian_Q ((log (sale_g) - log (mean_g) + sd * sd / 2) / sd);
}

double
stead_fish_mean_for_share_g (double cv_frac,
                             double sale_g,
                             double share)
{
  double sd = log_sd (cv_frac);

  if (!(cv_frac >= 0 && sale_g > 0 && share > 0 && share < 1))
    return NAN;
  return sale_g * exp (sd * sd / 2 - sd * gsl_cdf_ugaussian_Qinv (share));
}

gboolean
stead_fish_days_for_share (const SteadFishKind  *fish,
                           double                mean_g,
                           double                cv_frac,
                           double                sale_g,
                           double                share,
                           double                tgc_x100,
                           const double         *temps_c,
                           gsize                 n,
                           double               *out_days,
                           GError              **error)
{
  double target_g = stead_fish_mean_for_share_g (cv_frac, sale_g, share);

  if (isnan (target_g))
    {
      g_set_error_literal (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_RANGE,
                           _("Choose a sale weight above 0, and a share of the fish that is more "
                             "than none and less than all. The spread must not be below 0."));
      return FALSE;
    }
  return stead_fish_days_to (fish, mean_g, target_g, tgc_x100, temps_c, n, out_days, error);
}
