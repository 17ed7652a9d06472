/* stead-cooling-fit.c - which readings belong to one curve, and what its curves say. */
#include "config.h"

#include "core/stead-cooling-private.h"
#include "core/stead-core-error.h"

#include <glib/gi18n-lib.h>
#include <gsl/gsl_cdf.h>
#include <math.h>

#define LEAST_READINGS 3
#define PARAMETERS 3

/* Readings that scatter more than this chance allows are not of one curve with
 * the noise that was stated. */
#define SCATTER_CHANCE 0.01
/* How much better two curves must do than one, in units of the Bayesian
 * information criterion: 6 to 10 is strong evidence (Kass and Raftery 1995,
 * Bayes factors, J. Am. Stat. Assoc. 90:773-795; from memory). */
#define JUMP_EVIDENCE 6

/* Jumps and scatter */

static gsize
after_last_change (const SteadCoolingReading *readings,
                   gsize                      n)
{
  gsize first = 0;

  for (gsize i = 1; i < n; i++)
    if (readings[i].changed)
      first = i;
  return first;
}

/* Where one curve ends and another begins, if two explain the readings so much
 * better than one with more noise; 0 for nowhere. */
static gsize
find_jump (const SteadCoolingReading *readings,
           gsize                      n,
           const SteadCoolingSetting *setting,
           double                     misfit)
{
  double count = (double) n;
  double one = count * log (MAX (1, misfit / count)) + count + (PARAMETERS + 1) * log (count);
  double least = HUGE_VAL;
  gsize at = 0;

  for (gsize i = LEAST_READINGS; i + LEAST_READINGS <= n; i++)
    {
      double two = cooling_least_misfit (readings, i, setting)
                   + cooling_least_misfit (readings + i, n - i, setting)
                   + (2 * PARAMETERS + 1) * log (count);

      if (two < least)
        {
          least = two;
          at = i;
        }
    }
  return one - least > JUMP_EVIDENCE ? at : 0;
}

static gboolean
scatters (double misfit,
          gsize  n)
{
  return n > PARAMETERS
         && gsl_cdf_chisq_Q (misfit, (double) (n - PARAMETERS)) < SCATTER_CHANCE;
}

/* Which readings belong to the curve of now, and their noise. */
static void
settle (const SteadCoolingReading *readings,
        gsize                      n,
        const SteadCoolingSetting *setting,
        SteadCoolingFigures       *figures)
{
  double misfit = cooling_least_misfit (readings + figures->first, n - figures->first, setting);

  figures->noise_f = setting->noise_f;
  if (scatters (misfit, n - figures->first))
    {
      gsize jump = find_jump (readings + figures->first, n - figures->first, setting, misfit);

      figures->jumped = jump > 0;
      figures->first += jump;
      if (jump > 0)
        misfit = cooling_least_misfit (readings + figures->first, n - figures->first, setting);
    }
  figures->scattered = scatters (misfit, n - figures->first);
  if (figures->scattered)
    figures->noise_f *= sqrt (misfit / (double) (n - figures->first - PARAMETERS));
}

/* Refusals */

static gboolean
check_order (const SteadCoolingReading  *readings,
             gsize                       n,
             GError                    **error)
{
  for (gsize i = 0; i < n; i++)
    if (!isfinite (readings[i].temp_f) || !isfinite (readings[i].minute)
        || (i > 0 && readings[i].minute <= readings[i - 1].minute))
      {
        g_set_error_literal (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_RANGE,
                             _("The readings must stand in the order of their times."));
        return FALSE;
      }
  return TRUE;
}

static gboolean
check_readings (const SteadCoolingReading  *readings,
                gsize                       n,
                const SteadCoolingSetting  *setting,
                GError                    **error)
{
  if (n < LEAST_READINGS)
    {
      g_set_error_literal (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_NONE,
                           _("A forecast needs three readings since the pot was last moved or split."));
      return FALSE;
    }
  if (readings[0].temp_f - readings[n - 1].temp_f < 3 * setting->noise_f)
    {
      g_set_error_literal (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_NONE,
                           _("The readings do not fall, so nothing can be foretold. "
                             "Check that the pot is cooling and that the probe is in its middle."));
      return FALSE;
    }
  if (readings[n - 1].temp_f <= setting->ambient_low_f)
    {
      g_set_error_literal (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_RANGE,
                           _("The food is colder than its surroundings are said to be. "
                             "Check how cold the cooler is."));
      return FALSE;
    }
  return TRUE;
}

/* What the curves say */

static void
take_band (const SteadCoolingFit *fit,
           gsize                  offset,
           double                *low,
           double                *middle,
           double                *high)
{
  g_autoptr(GArray) values = g_array_new (FALSE, FALSE, sizeof (Weighed));

  for (guint i = 0; i < fit->curves->len; i++)
    {
      const CoolingCurve *curve = &g_array_index (fit->curves, CoolingCurve, i);
      Weighed value = { G_STRUCT_MEMBER (double, curve, offset), curve->weight };

      g_array_append_val (values, value);
    }
  cooling_sort (values);
  *low = cooling_quantile (values, 0.1);
  *middle = cooling_quantile (values, 0.5);
  *high = cooling_quantile (values, 0.9);
}

SteadCoolingFit *
stead_cooling_fit (const SteadCoolingReading  *readings,
                   gsize                       n,
                   const SteadCoolingSetting  *setting,
                   GError                    **error)
{
  g_autoptr(SteadCoolingFit) fit = NULL;
  SteadCoolingFigures figures = { 0 };
  SteadCoolingSetting narrowed;

  g_return_val_if_fail ((readings != NULL || n == 0) && setting != NULL, NULL);
  g_return_val_if_fail (setting->noise_f > 0 && setting->ambient_low_f < setting->ambient_high_f, NULL);

  figures.first = after_last_change (readings, n);
  if (!check_order (readings, n, error)
      || !check_readings (readings + figures.first, n - figures.first, setting, error))
    return NULL;
  /* Food does not cool below its surroundings. */
  narrowed = *setting;
  narrowed.ambient_high_f = MIN (setting->ambient_high_f, readings[n - 1].temp_f + 3 * setting->noise_f);
  settle (readings, n, &narrowed, &figures);

  fit = g_new0 (SteadCoolingFit, 1);
  fit->start_min = readings[figures.first].minute;
  fit->past = g_array_new (FALSE, FALSE, sizeof (SteadCoolingReading));
  g_array_append_vals (fit->past, readings, (guint) figures.first + 1);
  narrowed.noise_f = figures.noise_f;
  fit->curves = cooling_weigh_curves (readings + figures.first, n - figures.first, &narrowed);
  take_band (fit, G_STRUCT_OFFSET (CoolingCurve, rate), &figures.rate_low, &figures.rate, &figures.rate_high);
  take_band (fit, G_STRUCT_OFFSET (CoolingCurve, ambient_f), &figures.ambient_low_f, &figures.ambient_f,
             &figures.ambient_high_f);
  fit->figures = figures;
  return g_steal_pointer (&fit);
}

void
stead_cooling_fit_free (SteadCoolingFit *fit)
{
  if (fit == NULL)
    return;
  g_clear_pointer (&fit->curves, g_array_unref);
  g_clear_pointer (&fit->past, g_array_unref);
  g_free (fit);
}

const SteadCoolingFigures *
stead_cooling_fit_figures (const SteadCoolingFit *fit)
{
  g_return_val_if_fail (fit != NULL, NULL);
  return &fit->figures;
}
