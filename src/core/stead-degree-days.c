/* stead-degree-days.c - warmth and cold summed over days. */
#include "config.h"

#include "core/stead-degree-days.h"

#include <math.h>

/* One day of a series, as the sums below walk it. */
typedef double (*DayFunc) (const SteadDayTemps *day,
                           const void          *rule);

/* MAX() and MIN() would turn NAN into a number. */
static double
at_least_0 (double value)
{
  return value < 0 ? 0 : value;
}

double
stead_day_mean_c (double max_c,
                  double min_c)
{
  return max_c >= min_c ? (max_c + min_c) / 2 : NAN;
}

double
stead_degree_day (const SteadDegreeDayRule *rule,
                  double                    max_c,
                  double                    min_c)
{
  g_return_val_if_fail (rule != NULL, NAN);
  g_return_val_if_fail (rule->method == STEAD_DEGREE_DAYS_AVERAGE
                        || rule->upper_c >= rule->base_c, NAN);

  if (!(max_c >= min_c))
    return NAN;
  switch (rule->method)
    {
    case STEAD_DEGREE_DAYS_SUBSTITUTE:
      max_c = CLAMP (max_c, rule->base_c, rule->upper_c);
      min_c = CLAMP (min_c, rule->base_c, rule->upper_c);
      break;
    case STEAD_DEGREE_DAYS_REDUCED_CEILING:
      if (max_c > rule->upper_c)
        max_c = rule->upper_c - (max_c - rule->upper_c);
      break;
    case STEAD_DEGREE_DAYS_AVERAGE:
    default:
      break;
    }
  return at_least_0 ((max_c + min_c) / 2 - rule->base_c);
}

double
stead_degree_day_of_mean (double base_c,
                          double mean_c)
{
  return at_least_0 (mean_c - base_c);
}

double
stead_heating_degree_day (double base_c,
                          double mean_c)
{
  return at_least_0 (base_c - mean_c);
}

static void
sum_days (DayFunc              func,
          const void          *rule,
          const SteadDayTemps *days,
          gsize                n_days,
          SteadDegreeDaySum   *out_sum)
{
  *out_sum = (SteadDegreeDaySum) { 0 };
  for (gsize i = 0; i < n_days; i++)
    {
      double value = func (&days[i], rule);

      if (isnan (value))
        out_sum->n_gaps++;
      else
        {
          out_sum->n_days++;
          out_sum->sum_c += value;
        }
    }
}

static double
growing_day (const SteadDayTemps *day,
             const void          *rule)
{
  return stead_degree_day (rule, day->max_c, day->min_c);
}

void
stead_degree_day_sum (const SteadDegreeDayRule *rule,
                      const SteadDayTemps      *days,
                      gsize                     n_days,
                      SteadDegreeDaySum        *out_sum)
{
  g_return_if_fail (rule != NULL && out_sum != NULL);
  g_return_if_fail (days != NULL || n_days == 0);

  sum_days (growing_day, rule, days, n_days, out_sum);
}

static double
heating_day (const SteadDayTemps *day,
             const void          *base_c)
{
  return stead_heating_degree_day (*(const double *) base_c,
                                   stead_day_mean_c (day->max_c, day->min_c));
}

void
stead_heating_degree_day_sum (double               base_c,
                              const SteadDayTemps *days,
                              gsize                n_days,
                              SteadDegreeDaySum   *out_sum)
{
  g_return_if_fail (out_sum != NULL);
  g_return_if_fail (days != NULL || n_days == 0);

  sum_days (heating_day, &base_c, days, n_days, out_sum);
}
