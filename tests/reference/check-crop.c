/* check-crop.c - the topics on crops: warmth, plants, fruit set, yield. */
#include "check.h"

#include "core/stead-crop.h"
#include "core/stead-degree-days.h"
#include "core/stead-ripening.h"

#include <math.h>

#define TEMP "F C"

/* degree days */

static const char * const methods[] = { "average", "substitute", "reduced_ceiling", NULL };

/* Only the average can be made of a mean. */
static double
gdd_of_means (CheckRow *row)
{
  gsize n = 0;
  g_autofree double *means = check_base_list (row, "tmean", TEMP, &n);
  double base_c = check_base (row, "base", TEMP);
  double sum = 0;

  if (check_has_base (row, "tmax", TEMP) || check_has_base (row, "tmin", TEMP))
    return check_bad_input (row, "tmean");
  if (check_word (row, "method", methods, 0) != STEAD_DEGREE_DAYS_AVERAGE)
    return check_bad_input (row, "method");
  for (gsize i = 0; i < n; i++)
    sum += stead_degree_day_of_mean (base_c, means[i]);
  return sum;
}

/* Readings that cannot be make no day: the row is then wrong, not a gap. */
static SteadDayTemps *
days_of (CheckRow *row,
         gsize    *out_n)
{
  g_autofree double *max_c = check_base_list (row, "tmax", TEMP, out_n);
  g_autofree double *min_c = check_base_list (row, "tmin", TEMP, out_n);
  SteadDayTemps *days = g_new (SteadDayTemps, *out_n);

  for (gsize i = 0; i < *out_n; i++)
    {
      days[i] = (SteadDayTemps) { max_c[i], min_c[i] };
      if (!(max_c[i] >= min_c[i]))
        check_bad_input (row, "tmin");
    }
  return days;
}

static double
gdd (CheckRow *row)
{
  gsize n = 0;
  g_autofree SteadDayTemps *days = NULL;
  SteadDegreeDayRule rule = { 0 };
  SteadDegreeDaySum sum = { NAN, 0, 0 };

  if (check_has_base (row, "tmean", TEMP))
    return gdd_of_means (row);
  rule.method = (SteadDegreeDayMethod) check_word (row, "method", methods, -1);
  rule.base_c = check_base (row, "base", TEMP);
  if (rule.method != STEAD_DEGREE_DAYS_AVERAGE || check_has_base (row, "upper", TEMP))
    rule.upper_c = check_base (row, "upper", TEMP);
  days = days_of (row, &n);
  if (rule.method != STEAD_DEGREE_DAYS_AVERAGE && !(rule.upper_c >= rule.base_c))
    return check_bad_input (row, "upper");
  stead_degree_day_sum (&rule, days, n, &sum);
  return sum.sum_c;
}

static double
gdd_f (CheckRow *row)
{
  return STEAD_F_DAYS_PER_C_DAY * gdd (row);
}

static const CheckAsk gdd_asks[] = {
  { "gdd_F", "F-days", gdd_f },
  { "gdd_C", "C-days", gdd },
  { NULL }
};

/* days to ripe */

static double
ripe_days (CheckRow *row)
{
  const char *suffix = check_has (row, "need_gdd_C") ? "C" : "F";
  g_autofree char *need = g_strconcat ("need_gdd_", suffix, NULL);
  g_autofree char *daily = g_strconcat ("daily_gdd_", suffix, NULL);

  if (check_has (row, "need_gdd_F") && check_has (row, "need_gdd_C"))
    return check_bad_input (row, "need_gdd_C");
  if (check_has (row, "daily_gdd_F") && check_has (row, "daily_gdd_C"))
    return check_bad_input (row, "daily_gdd_C");
  return stead_ripe_days (check_number (row, need), check_number (row, daily));
}

static const CheckAsk ripe_asks[] = {
  { "time", "d", ripe_days },
  { NULL }
};

/* heating degree days */

static double
hdd (CheckRow *row)
{
  double base_c = check_base (row, "base", TEMP);
  gsize n = 0;
  double sum = 0;
  g_autofree double *means = NULL;
  g_autofree SteadDayTemps *days = NULL;
  SteadDegreeDaySum read = { NAN, 0, 0 };

  if (!check_has_base (row, "tmean", TEMP))
    {
      days = days_of (row, &n);
      stead_heating_degree_day_sum (base_c, days, n, &read);
      return read.sum_c;
    }
  if (check_has_base (row, "tmax", TEMP) || check_has_base (row, "tmin", TEMP))
    return check_bad_input (row, "tmean");
  means = check_base_list (row, "tmean", TEMP, &n);
  for (gsize i = 0; i < n; i++)
    sum += stead_heating_degree_day (base_c, means[i]);
  return sum;
}

static double
hdd_f (CheckRow *row)
{
  return STEAD_F_DAYS_PER_C_DAY * hdd (row);
}

static const CheckAsk hdd_asks[] = {
  { "hdd_F", "F-days", hdd_f },
  { "hdd_C", "C-days", hdd },
  { NULL }
};

/* plant count */

static double
plants_most (CheckRow *row)
{
  static const char * const crops[] = { "leafy", NULL };
  double most = NAN;

  check_word (row, "crop", crops, -1);
  stead_crop_density_range (STEAD_CROP_KIND_LEAFY, NULL, &most);
  return stead_crop_plants (check_base (row, "area", "m2 sqft"), most);
}

static double
plants (CheckRow *row)
{
  return stead_crop_plants (check_base (row, "area", "m2 sqft"),
                            check_number (row, "plants_per_m2"));
}

static const CheckAsk plant_asks[] = {
  { "max_plants", "count", plants_most },
  { "plants", "count", plants },
  { NULL }
};

/* fruit set */

static double
fruit_set (CheckRow *row)
{
  switch (stead_fruit_set (check_base (row, "day_temp", TEMP),
                           check_base (row, "night_temp", TEMP)))
    {
    case STEAD_FRUIT_SET_GOOD:
      return check_answer_word (row, "good");
    case STEAD_FRUIT_SET_POOR:
      return check_answer_word (row, "poor");
    case STEAD_FRUIT_SET_UNSURE:
    default:
      return NAN;
    }
}

static const CheckAsk set_asks[] = {
  { "set", "text", fruit_set },
  { NULL }
};

/* crop yield */

static double
crop_yield (CheckRow *row)
{
  double area_m2 = check_number (row, "plots") * check_base (row, "plot", "sqft m2");

  return stead_crop_tons_per_acre (stead_crop_yield_m2_kg (check_base (row, "harvest", "lb kg"),
                                                           area_m2));
}

static const CheckAsk yield_asks[] = {
  { "yield", "ton/acre", crop_yield },
  { NULL }
};

#define DAY_TEMPS "tmax_F tmin_F tmean_F base_F tmax_C tmin_C tmean_C base_C"

const CheckTopic check_crop_topics[] = {
  { "degree days", "method upper_F upper_C " DAY_TEMPS, gdd_asks },
  { "days to ripe", "need_gdd_F daily_gdd_F need_gdd_C daily_gdd_C", ripe_asks },
  { "heating degree days", DAY_TEMPS, hdd_asks },
  { "plant count", "area_m2 area_sqft crop plants_per_m2", plant_asks },
  { "fruit set", "day_temp_F night_temp_F day_temp_C night_temp_C", set_asks },
  { "crop yield", "harvest_lb harvest_kg plots plot_sqft plot_m2", yield_asks },
  { NULL }
};
