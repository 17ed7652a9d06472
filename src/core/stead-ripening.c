/* stead-ripening.c - when a crop will be ripe, by the warmth that it needs. */
#include "config.h"

#include "core/stead-core-error.h"
#include "core/stead-ripening.h"
#include "core/stead-round.h"

#include <glib/gi18n-lib.h>
#include <math.h>

void
stead_ripe_need (double         start_c,
                 const double  *own_c,
                 gsize          n_own,
                 SteadRipeNeed *out_need)
{
  double need_c = start_c;
  double half_c;
  double squares;

  g_return_if_fail (start_c > 0);
  g_return_if_fail (own_c != NULL || n_own == 0);
  g_return_if_fail (out_need != NULL);

  if (n_own > 0)
    {
      need_c = 0;
      for (gsize i = 0; i < n_own; i++)
        need_c += own_c[i] / (double) n_own;
    }
  half_c = STEAD_RIPE_BAND_FRAC * need_c;
  if (n_own > 0)
    {
      /* 8 of 10 values of a bell curve lie within 1.2816 standard deviations. */
      const double widths = 1.2816;

      squares = (half_c / widths) * (half_c / widths);
      for (gsize i = 0; i < n_own; i++)
        squares += (own_c[i] - need_c) * (own_c[i] - need_c);
      half_c = widths * sqrt (squares / (double) n_own);
    }
  *out_need = (SteadRipeNeed) { need_c, MAX (need_c - half_c, 0), need_c + half_c, n_own };
}

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

gboolean
stead_ripe_date (const SteadRipeLog      *log,
                 const SteadRipeNeed     *need,
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
  g_return_val_if_fail (need->low_c <= need->need_c && need->need_c <= need->high_c, FALSE);
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
  date.early = day_reached (log, filled, &coming, need->low_c);
  date.day = day_reached (log, filled, &coming, need->need_c);
  date.late = day_reached (log, filled, &coming, need->high_c);
  *out_date = date;
  return TRUE;
}
