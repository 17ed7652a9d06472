/* stead-ripening.c - when a crop will be ripe, by the warmth that it needs. */
#include "config.h"

#include "core/stead-core-error.h"
#include "core/stead-ripening.h"
#include "core/stead-round.h"

#include <glib/gi18n-lib.h>
#include <math.h>

double
stead_ripe_days (double need,
                 double daily)
{
  return need >= 0 && daily > 0 ? need / daily : NAN;
}

/* What the days to come are expected to bring. */
typedef struct
{
  const SteadTypicalYear *normals;  /* NULL: always the same */
  double                  daily_c;
} Coming;

static double
coming_on (const Coming       *coming,
           const SteadRipeLog *log,
           SteadDay            day)
{
  return coming->normals != NULL
         ? stead_typical_year_degree_day (coming->normals, &log->rule, day)
         : coming->daily_c;
}

static double
log_day (const SteadRipeLog *log,
         gsize               i)
{
  return stead_degree_day (&log->rule, log->days[i].max_c, log->days[i].min_c);
}

/* Mean of the last days of the log; NAN if too few of them were read. */
static double
recent_mean (const SteadRipeLog *log)
{
  SteadDegreeDaySum sum;
  gsize n = MIN (log->n_days, STEAD_RIPE_RECENT_DAYS);

  if (n == 0)
    return NAN;
  stead_degree_day_sum (&log->rule, log->days + (log->n_days - n), n, &sum);
  return sum.n_days >= STEAD_RIPE_RECENT_LEAST ? sum.sum_c / (double) sum.n_days : NAN;
}

static gboolean
choose_coming (const SteadRipeLog      *log,
               SteadRipeOutlook         outlook,
               const SteadTypicalYear  *normals,
               Coming                  *out_coming,
               GError                 **error)
{
  double recent_c = recent_mean (log);

  if (normals == NULL && isnan (recent_c))
    {
      g_set_error (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_NONE,
                   _("Nothing says how warm the coming days will be. Read the highest and lowest "
                     "temperature on at least %d of the last %d days, or enter a typical year."),
                   STEAD_RIPE_RECENT_LEAST, STEAD_RIPE_RECENT_DAYS);
      return FALSE;
    }
  if (normals != NULL && (outlook == STEAD_RIPE_BY_NORMALS || isnan (recent_c)))
    *out_coming = (Coming) { normals, NAN };
  else
    *out_coming = (Coming) { NULL, recent_c };
  return TRUE;
}

/* The degree days of each day of the log, its gaps filled. */
static double *
fill_gaps (const SteadRipeLog *log,
           const Coming       *coming)
{
  double *filled = g_new (double, log->n_days + 1);
  gsize next = 0;

  for (gsize i = 0; i < log->n_days; i++)
    {
      double before = i > 0 ? filled[i - 1] : NAN;

      filled[i] = log_day (log, i);
      if (!isnan (filled[i]))
        continue;
      for (next = MAX (next, i + 1); next < log->n_days && isnan (log_day (log, next)); next++)
        ;
      if (next == log->n_days)
        filled[i] = coming_on (coming, log, log->first_day + (SteadDay) i);
      else if (isnan (before))
        filled[i] = log_day (log, next);
      else
        filled[i] = before + (log_day (log, next) - before) / (double) (next - i + 1);
    }
  return filled;
}

/* The first day on which @need_c is reached. */
static SteadDay
day_reached (const SteadRipeLog *log,
             const double       *filled,
             const Coming       *coming,
             double              need_c)
{
  double sum_c = 0;

  for (gsize i = 0; i < log->n_days + STEAD_RIPE_HORIZON_DAYS; i++)
    {
      SteadDay day = log->first_day + (SteadDay) i;

      if (!stead_day_is_valid (day))
        break;
      sum_c += i < log->n_days ? filled[i] : coming_on (coming, log, day);
      if (sum_c >= need_c * (1 - STEAD_ROUND_NOISE))
        return day;
    }
  return STEAD_DAY_NONE;
}

/* The last days that were read, and what they bring in a usual year. */
static gsize
read_recent (const SteadRipeLog *log,
             const Coming       *coming,
             double             *recent,
             double             *usual)
{
  gsize n = 0;

  for (gsize i = log->n_days - MIN (log->n_days, STEAD_RIPE_RECENT_DAYS); i < log->n_days; i++)
    {
      double day_c = log_day (log, i);

      if (isnan (day_c))
        continue;
      recent[n] = day_c;
      usual[n++] = coming_on (coming, log, log->first_day + (SteadDay) i);
    }
  return n;
}

/* The day that lies so many days after the log's end; tomorrow at the soonest. */
static SteadDay
day_after (const SteadRipeLog *log,
           double              days)
{
  double whole = MAX (1, ceil (days * (1 - STEAD_ROUND_NOISE)));

  return whole <= STEAD_RIPE_HORIZON_DAYS ? log->first_day + (SteadDay) log->n_days - 1 + (SteadDay) whole
                                          : STEAD_DAY_NONE;
}

static void
find_band (const SteadRipeLog *log,
           const double       *filled,
           const Coming       *coming,
           const SteadLearned *need,
           SteadRipeDate      *date)
{
  double recent[STEAD_RIPE_RECENT_DAYS], usual[STEAD_RIPE_RECENT_DAYS], ahead[STEAD_RIPE_HORIZON_DAYS];
  SteadLearnDays days = { recent, read_recent (log, coming, recent, usual), NULL, NULL, 0 };
  SteadBand band;
  double so_far = 0;

  for (gsize i = 0; i < log->n_days; i++)
    so_far += filled[i];
  if (coming->normals != NULL)
    {
      SteadDay next = log->first_day + (SteadDay) log->n_days;

      days.usual = usual;
      days.coming = ahead;
      for (; days.n_coming < STEAD_RIPE_HORIZON_DAYS && stead_day_is_valid (next); next++)
        ahead[days.n_coming++] = coming_on (coming, log, next);
    }
  date->early = date->late = STEAD_DAY_NONE;
  /* Days without warmth never make it ripe. */
  if (!stead_learn_days (need, so_far, &days, STEAD_BAND_LEVEL, &band, NULL))
    return;
  date->early = day_after (log, band.low);
  date->late = day_after (log, band.high);
  if (date->day != STEAD_DAY_NONE && date->day >= log->first_day + (SteadDay) log->n_days
      && date->early != STEAD_DAY_NONE)
    date->day = MAX (date->day, date->early);
}

gboolean
stead_ripe_date (const SteadRipeLog      *log,
                 const SteadLearned      *need,
                 SteadRipeOutlook         outlook,
                 const SteadTypicalYear  *normals,
                 SteadRipeDate           *out_date,
                 GError                 **error)
{
  g_autofree double *filled = NULL;
  SteadDegreeDaySum read;
  SteadRipeDate date = { 0 };
  Coming coming;

  g_return_val_if_fail (log != NULL && need != NULL && out_date != NULL, FALSE);
  g_return_val_if_fail (log->days != NULL || log->n_days == 0, FALSE);
  g_return_val_if_fail (stead_day_is_valid (log->first_day + (SteadDay) log->n_days), FALSE);
  g_return_val_if_fail (need->mean > 0 && need->scale > 0 && need->df > 0, FALSE);
  g_return_val_if_fail (normals == NULL || stead_typical_year_is_valid (normals), FALSE);

  if (!choose_coming (log, outlook, normals, &coming, error))
    return FALSE;
  filled = fill_gaps (log, &coming);
  stead_degree_day_sum (&log->rule, log->days, log->n_days, &read);
  date.sum_c = read.sum_c;
  date.n_gaps = read.n_gaps;
  for (gsize i = 0; i < log->n_days; i++)
    if (isnan (log_day (log, i)))
      date.assumed_c += filled[i];
  date.outlook = coming.normals != NULL ? STEAD_RIPE_BY_NORMALS : STEAD_RIPE_BY_RECENT;
  date.coming_c = coming_on (&coming, log, log->first_day + (SteadDay) log->n_days);
  date.day = day_reached (log, filled, &coming, need->mean);
  find_band (log, filled, &coming, need, &date);
  *out_date = date;
  return TRUE;
}
