/* stead-lethality.c - what heat does to germs, as arithmetic. */
#include "config.h"

#include "core/stead-core-error.h"
#include "core/stead-lethality.h"

#include <glib/gi18n-lib.h>
#include <gsl/gsl_fit.h>
#include <math.h>

static double
z_at (const SteadLethality *germ,
      gboolean              below)
{
  return below && germ->z_below != 0 ? germ->z_below : germ->z;
}

double
stead_lethal_rate (const SteadLethality *germ,
                   double                temp)
{
  double z;

  g_return_val_if_fail (germ != NULL, NAN);
  z = z_at (germ, temp < germ->reference);
  return z > 0 ? pow (10, (temp - germ->reference) / z) : NAN;
}

double
stead_lethal_time (const SteadLethality *germ,
                   double                reference_time,
                   double                temp)
{
  return reference_time / stead_lethal_rate (germ, temp);
}

double
stead_lethal_temperature (const SteadLethality *germ,
                          double                reference_time,
                          double                time)
{
  double z;

  g_return_val_if_fail (germ != NULL, NAN);
  z = z_at (germ, time > reference_time);
  if (!(reference_time > 0 && time > 0 && z > 0))
    return NAN;
  return germ->reference + z * log10 (reference_time / time);
}

/* log10 of the times; NULL if one is 0 or less. */
static double *
logs_of (const double *times,
         gsize         n)
{
  g_autofree double *logs = g_new (double, n);

  for (gsize i = 0; i < n; i++)
    {
      if (!(times[i] > 0))
        return NULL;
      logs[i] = log10 (times[i]);
    }
  return g_steal_pointer (&logs);
}

static gboolean
all_same (const double *values,
          gsize         n)
{
  for (gsize i = 1; i < n; i++)
    if (values[i] != values[0])
      return FALSE;
  return TRUE;
}

gboolean
stead_lethality_z (const double  *temps,
                   const double  *times,
                   gsize          n,
                   double        *out_z,
                   GError       **error)
{
  g_autofree double *logs = NULL;
  double start, slope, cov00, cov01, cov11, squares;

  g_return_val_if_fail (temps != NULL && times != NULL && out_z != NULL, FALSE);

  logs = logs_of (times, n);
  if (logs == NULL || all_same (temps, n))
    {
      g_set_error_literal (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_NONE,
                           _("z needs times above 0 at two temperatures or more."));
      return FALSE;
    }
  gsl_fit_linear (temps, 1, logs, 1, n, &start, &slope, &cov00, &cov01, &cov11, &squares);
  if (!(slope < 0))
    {
      g_set_error_literal (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_NONE,
                           _("The times do not get shorter with heat, so there is no z. "
                             "Check that temperatures and times stand in the same order."));
      return FALSE;
    }
  *out_z = -1 / slope;
  return TRUE;
}

double
stead_lethality_sum (const SteadLethality  *germ,
                     const double          *minutes,
                     const double          *temps,
                     gsize                  n,
                     double                *out_sums,
                     GError               **error)
{
  double sum = 0;
  double last = 0;

  g_return_val_if_fail (germ != NULL && ((minutes != NULL && temps != NULL) || n == 0), NAN);

  for (gsize i = 0; i < n; i++)
    {
      double rate = stead_lethal_rate (germ, temps[i]);

      if (i > 0 && !(minutes[i] > minutes[i - 1]))
        {
          g_set_error_literal (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_RANGE,
                               _("The readings must stand in the order of their times."));
          return NAN;
        }
      if (i > 0)
        sum += (minutes[i] - minutes[i - 1]) * (last + rate) / 2;
      if (out_sums != NULL)
        out_sums[i] = sum;
      last = rate;
    }
  return sum;
}

double
stead_lethality_sum_of_rates (double first,
                              double inner,
                              double last,
                              double interval)
{
  return interval * (first / 2 + inner + last / 2);
}

double
stead_lethality_logs (double f,
                      double d)
{
  return d > 0 ? f / d : NAN;
}

gboolean
stead_lethal_study (const SteadLimitTable  *table,
                    const char             *name,
                    SteadLethalStudy       *out,
                    GError                **error)
{
  SteadLethalStudy study = { 0 };
  const SteadLimit *z_below;
  double *places[] = { &study.germ.z, &study.time_min, &study.logs };
  static const char * const measures[] = { "z", "time", "logs" };

  g_return_val_if_fail (table != NULL && name != NULL && out != NULL, FALSE);

  study.source = stead_limit_table_find (table, "germ", name, "reference", NULL, error);
  if (study.source == NULL)
    return FALSE;
  study.unit = study.source->unit;
  study.germ.reference = study.source->value;
  for (gsize i = 0; i < G_N_ELEMENTS (places); i++)
    {
      const SteadLimit *row = stead_limit_table_find (table, "germ", name, measures[i], NULL, error);

      if (row == NULL)
        return FALSE;
      *places[i] = row->value;
    }
  z_below = stead_limit_table_find (table, "germ", name, "z_below", NULL, NULL);
  study.germ.z_below = z_below != NULL ? z_below->value : 0;
  *out = study;
  return TRUE;
}
