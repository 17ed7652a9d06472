/* check-lethality.c - the topics on lethal heat. */
#include "check.h"

#include "core/stead-lethality.h"

#include <math.h>

/* Which degrees the row is in: all of them the same. */
static const char *
degrees (CheckRow *row)
{
  return check_has (row, "Tref_F") || check_has (row, "temp_F") ? "F" : "C";
}

static double
in_degrees (CheckRow   *row,
            const char *name)
{
  g_autofree char *full = g_strconcat (name, "_", degrees (row), NULL);

  return check_number (row, full);
}

static SteadLethality
germ (CheckRow *row)
{
  SteadLethality which = { in_degrees (row, "Tref"), in_degrees (row, "z"), 0 };

  which.z_below = check_number_or (row, "z_below_C", which.z);
  return which;
}

static double
rate (CheckRow *row)
{
  SteadLethality which = germ (row);

  return stead_lethal_rate (&which, in_degrees (row, "temp"));
}

static const CheckAsk rate_asks[] = {
  { "lethal_rate", "1", rate },
  { NULL }
};

/* thermal death time */

static double
reference_time (CheckRow *row)
{
  if (check_has (row, "ref_time_min"))
    return check_number (row, "ref_time_min");
  return check_number (row, "ref_D_min") * check_number (row, "log_reduction");
}

static double
death_time (CheckRow *row)
{
  SteadLethality which = germ (row);

  return stead_lethal_time (&which, reference_time (row), in_degrees (row, "temp"));
}

/* The other way round: how hot, and how many tenths. */
static double
death_temp (CheckRow *row)
{
  SteadLethality which = germ (row);

  return stead_lethal_temperature (&which, reference_time (row), check_number (row, "time_min"));
}

static double
death_logs (CheckRow *row)
{
  SteadLethality which = germ (row);

  return stead_lethality_logs (check_number (row, "time_min") * stead_lethal_rate (&which, in_degrees (row, "temp")),
                               check_number (row, "ref_D_min"));
}

static double
death_temp_c (CheckRow *row)
{
  return check_has (row, "Tref_C") ? death_temp (row) : NAN;
}

static double
death_temp_f (CheckRow *row)
{
  return check_has (row, "Tref_F") ? death_temp (row) : NAN;
}

static const CheckAsk death_asks[] = {
  { "time", "min", death_time },
  { "temp", "C", death_temp_c },
  { "temp", "F", death_temp_f },
  { "log_reduction", "1", death_logs },
  { NULL }
};

/* z value */

static double
z_value (CheckRow   *row,
         const char *temps)
{
  g_autoptr(GError) error = NULL;
  gsize n = 0;
  const double *heat = check_list (row, temps, &n);
  const double *times = check_list (row, "time_min", &n);
  double z = NAN;

  if (!stead_lethality_z (heat, times, n, &z, &error))
    return check_answer_none (row, error);
  return z;
}

static double
z_c (CheckRow *row)
{
  return z_value (row, "temp_C");
}

static double
z_f (CheckRow *row)
{
  return z_value (row, "temp_F");
}

static const CheckAsk z_asks[] = {
  { "z_C", "C", z_c },
  { "z_F", "F", z_f },
  { NULL }
};

/* F */

static double
f_trapezoid (CheckRow *row)
{
  SteadLethality which = germ (row);
  g_autoptr(GError) error = NULL;
  g_autofree char *name = g_strconcat ("temp_", degrees (row), NULL);
  gsize n = 0;
  const double *temps = check_list (row, name, &n);
  g_autofree double *minutes = g_new0 (double, n);
  double f;

  for (gsize i = 0; i < n; i++)
    minutes[i] = (double) i * check_number (row, "interval_min");
  f = stead_lethality_sum (&which, minutes, temps, n, NULL, &error);
  return error != NULL ? check_answer_none (row, error) : f;
}

static const CheckAsk trapezoid_asks[] = {
  { "F", "min", f_trapezoid },
  { NULL }
};

static double
f_rates (CheckRow *row)
{
  return stead_lethality_sum_of_rates (check_number (row, "rate_first"), check_number (row, "rate_inner_sum"),
                                       check_number (row, "rate_last"), check_number (row, "interval_min"));
}

static const CheckAsk rates_asks[] = {
  { "F", "min", f_rates },
  { NULL }
};

/* An area is as many minutes as unit areas go into it: the same as a count of D. */
static double
f_area (CheckRow *row)
{
  return stead_lethality_logs (check_number (row, "area_cm2"), check_number (row, "unit_area_cm2"));
}

static const CheckAsk area_asks[] = {
  { "F", "min", f_area },
  { NULL }
};

const CheckTopic check_lethality_topics[] = {
  { "lethal rate", "temp_C Tref_C z_C z_below_C temp_F Tref_F z_F", rate_asks },
  { "thermal death time",
    "temp_C Tref_C z_C z_below_C temp_F Tref_F z_F ref_time_min ref_D_min log_reduction time_min", death_asks },
  { "z value", "temp_C temp_F time_min", z_asks },
  { "F by trapezoid", "temp_C temp_F interval_min Tref_C z_C Tref_F z_F", trapezoid_asks },
  { "F from lethal rates", "rate_first rate_inner_sum rate_last interval_min", rates_asks },
  { "F from graph area", "area_cm2 unit_area_cm2", area_asks },
  { NULL }
};
