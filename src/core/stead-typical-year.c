/* stead-typical-year.c - what the weather of a day is like in a usual year. */
#include "config.h"

#include "core/stead-core-error.h"
#include "core/stead-typical-year.h"

#include <glib/gi18n-lib.h>
#include <gsl/gsl_cdf.h>
#include <math.h>

/* Steps of equal chance that stand for the bell curve of days. */
#define N_STRAYS 16

typedef double (*StrayFunc) (double      max_c,
                             double      min_c,
                             const void *rule);

gboolean
stead_typical_year_is_valid (const SteadTypicalYear *year)
{
  g_return_val_if_fail (year != NULL, FALSE);

  for (int month = 0; month < 12; month++)
    if (!isfinite (year->max_c[month]) || !isfinite (year->min_c[month])
        || year->max_c[month] < year->min_c[month])
      return FALSE;
  return isfinite (year->spread_c) && year->spread_c >= 0;
}

static int
days_of_month (int year,
               int month)
{
  return g_date_get_days_in_month ((GDateMonth) month, (GDateYear) year);
}

/* The two months whose middles lie on either side of @day, and the weight of the later. */
static void
months_around (SteadDay  day,
               int      *out_before,
               int      *out_after,
               double   *out_weight)
{
  int year;
  int month;
  int mday;
  int other;
  double middle;
  double distance;

  stead_day_split (day, &year, &month, &mday);
  middle = (days_of_month (year, month) + 1) / 2.0;
  other = mday < middle ? (month + 10) % 12 + 1 : month % 12 + 1;
  /* Between the middles lie half of this month and half of the other. */
  distance = (days_of_month (year, month) + days_of_month (year, other)) / 2.0;
  *out_before = (mday < middle ? other : month) - 1;
  *out_after = (mday < middle ? month : other) - 1;
  *out_weight = mday < middle ? 1 - (middle - mday) / distance : (mday - middle) / distance;
}

/* What the days in the middle of the months must be for the straight lines between
 * them to have the months' means.  Of a month of the line, six eighths come from its
 * own middle and one from that of each neighbor.  Each pass halves at least what is
 * still missing. */
static void
middles_of (const double means[12],
            double       middles[12])
{
  double line[12];

  for (int month = 0; month < 12; month++)
    middles[month] = means[month];
  for (int pass = 0; pass < 40; pass++)
    {
      for (int month = 0; month < 12; month++)
        line[month] = (middles[(month + 11) % 12] + 6 * middles[month]
                       + middles[(month + 1) % 12]) / 8;
      for (int month = 0; month < 12; month++)
        middles[month] += means[month] - line[month];
    }
}

void
stead_typical_year_day (const SteadTypicalYear *year,
                        SteadDay                day,
                        SteadDayTemps          *out_temps)
{
  int before;
  int after;
  double weight;
  double max_c[12];
  double min_c[12];

  g_return_if_fail (year != NULL && out_temps != NULL);
  g_return_if_fail (stead_day_is_valid (day));

  middles_of (year->max_c, max_c);
  middles_of (year->min_c, min_c);
  months_around (day, &before, &after, &weight);
  out_temps->max_c = (1 - weight) * max_c[before] + weight * max_c[after];
  out_temps->min_c = (1 - weight) * min_c[before] + weight * min_c[after];
  /* Only means that jump wildly from month to month can cross. */
  if (out_temps->max_c < out_temps->min_c)
    out_temps->max_c = out_temps->min_c = (out_temps->max_c + out_temps->min_c) / 2;
}

/* How far the day of step @i strays, in standard deviations.  The steps have the
 * bell curve's mean and, by the divisor, its standard deviation. */
static double
stray_of (int i)
{
  static gsize ready = 0;
  static double strays[N_STRAYS];

  if (g_once_init_enter (&ready))
    {
      double squares = 0;

      for (int k = 0; k < N_STRAYS; k++)
        {
          strays[k] = gsl_cdf_ugaussian_Pinv ((k + 0.5) / N_STRAYS);
          squares += strays[k] * strays[k];
        }
      for (int k = 0; k < N_STRAYS; k++)
        strays[k] /= sqrt (squares / N_STRAYS);
      g_once_init_leave (&ready, 1);
    }
  return strays[i];
}

static double
mean_over_strays (const SteadTypicalYear *year,
                  SteadDay                day,
                  StrayFunc               func,
                  const void             *rule)
{
  SteadDayTemps usual;
  double sum = 0;

  stead_typical_year_day (year, day, &usual);
  if (!(year->spread_c > 0))
    return func (usual.max_c, usual.min_c, rule);
  for (int i = 0; i < N_STRAYS; i++)
    {
      double stray_c = year->spread_c * stray_of (i);

      sum += func (usual.max_c + stray_c, usual.min_c + stray_c, rule);
    }
  return sum / N_STRAYS;
}

static double
growing (double      max_c,
         double      min_c,
         const void *rule)
{
  return stead_degree_day (rule, max_c, min_c);
}

double
stead_typical_year_degree_day (const SteadTypicalYear   *year,
                               const SteadDegreeDayRule *rule,
                               SteadDay                  day)
{
  g_return_val_if_fail (year != NULL && rule != NULL, NAN);
  g_return_val_if_fail (stead_day_is_valid (day), NAN);

  return mean_over_strays (year, day, growing, rule);
}

static double
heating (double      max_c,
         double      min_c,
         const void *base_c)
{
  return stead_heating_degree_day (*(const double *) base_c, stead_day_mean_c (max_c, min_c));
}

double
stead_typical_year_heating_degree_day (const SteadTypicalYear *year,
                                       double                  base_c,
                                       SteadDay                day)
{
  g_return_val_if_fail (year != NULL, NAN);
  g_return_val_if_fail (stead_day_is_valid (day), NAN);

  return mean_over_strays (year, day, heating, &base_c);
}

static gboolean
was_read (const SteadDayTemps *day)
{
  return isfinite (day->max_c) && isfinite (day->min_c) && day->max_c >= day->min_c;
}

/* Standard deviation of the days' means about the usual ones of @year. */
static double
spread_about (const SteadTypicalYear *year,
              SteadDay                first_day,
              const SteadDayTemps    *days,
              gsize                   n_days)
{
  double squares = 0;
  gsize n_read = 0;

  for (gsize i = 0; i < n_days; i++)
    {
      SteadDayTemps usual;
      double off_c;

      if (!was_read (&days[i]))
        continue;
      stead_typical_year_day (year, first_day + (SteadDay) i, &usual);
      off_c = stead_day_mean_c (days[i].max_c, days[i].min_c)
              - stead_day_mean_c (usual.max_c, usual.min_c);
      squares += off_c * off_c;
      n_read++;
    }
  return sqrt (squares / (double) n_read);
}

gboolean
stead_typical_year_from_days (SteadDay              first_day,
                              const SteadDayTemps  *days,
                              gsize                 n_days,
                              SteadTypicalYear     *out_year,
                              GError              **error)
{
  SteadTypicalYear year = { 0 };
  int n_read[12] = { 0 };

  g_return_val_if_fail (days != NULL || n_days == 0, FALSE);
  g_return_val_if_fail (out_year != NULL, FALSE);

  for (gsize i = 0; i < n_days; i++)
    if (was_read (&days[i]))
      {
        int month;

        stead_day_split (first_day + (SteadDay) i, NULL, &month, NULL);
        year.max_c[month - 1] += days[i].max_c;
        year.min_c[month - 1] += days[i].min_c;
        n_read[month - 1]++;
      }
  for (int month = 0; month < 12; month++)
    {
      if (n_read[month] < STEAD_TYPICAL_MONTH_LEAST_DAYS)
        {
          g_set_error (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_NONE,
                       _("A typical year needs the highest and lowest temperature of at least "
                         "%d days in each month. Enter monthly means until there are enough."),
                       STEAD_TYPICAL_MONTH_LEAST_DAYS);
          return FALSE;
        }
      year.max_c[month] /= n_read[month];
      year.min_c[month] /= n_read[month];
    }
  year.spread_c = spread_about (&year, first_day, days, n_days);
  *out_year = year;
  return TRUE;
}
