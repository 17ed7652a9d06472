/* stead-outlook.c - when a goal is reached, and how surely. */
#include "config.h"

#include "core/stead-core-error.h"
#include "core/stead-draw-private.h"
#include "core/stead-outlook.h"
#include "core/stead-round.h"

#include <glib/gi18n-lib.h>
#include <gsl/gsl_cdf.h>
#include <gsl/gsl_randist.h>
#include <math.h>
#include <stdlib.h>
#include <string.h>

#define LARGEST 1e12

/* The stream of the season; events have their own. */
#define SEASON_STREAM G_MAXUINT32

/* A goal missed by less than half a hundredth of a cent is reached. */
#define NOISE_CENTS 0.005

struct _SteadOutlookRun
{
  SteadOutlookEvent *events;     /* by day */
  gsize              n_events;
  guint             *step_of;    /* of each event */
  SteadDay          *days;       /* of each step */
  guint              n_steps;
  double             start_cents;
  double             goal_cents;
  double             together;
  guint32            seed;
  gsize              n_paths;
  double            *fund;       /* after a step, path by path, step by step */
  guint             *reached;    /* of each path: the first step, n_steps for never */
  double            *scratch;    /* bands change the order of what they get */
};

static int
compare_events (const void *a,
                const void *b)
{
  const SteadOutlookEvent *left = a;
  const SteadOutlookEvent *right = b;

  if (left->day != right->day)
    return left->day < right->day ? -1 : 1;
  return (left->stream > right->stream) - (left->stream < right->stream);
}

static gboolean
is_event (const SteadOutlookEvent *event)
{
  return stead_day_is_valid (event->day) && fabs (event->mean_cents) <= LARGEST
         && event->sd_cents >= 0 && event->sd_cents <= LARGEST && event->chance >= 0 && event->chance <= 1;
}

static gboolean
check_outlook (const SteadOutlook  *outlook,
               GError             **error)
{
  gboolean fits = outlook->n_events <= STEAD_OUTLOOK_MOST_EVENTS && fabs (outlook->start_cents) <= LARGEST
                  && fabs (outlook->goal_cents) <= LARGEST && outlook->together >= 0 && outlook->together <= 1;

  for (gsize i = 0; i < outlook->n_events && fits; i++)
    fits = is_event (&outlook->events[i]);
  if (!fits)
    g_set_error_literal (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_RANGE,
                         _("The outlook needs days, sums, and chances of 0 to 100 percent. Check what is planned."));
  return fits;
}

/* Events of one day are one step. */
static void
find_steps (SteadOutlookRun *run)
{
  for (gsize i = 0; i < run->n_events; i++)
    {
      if (run->n_steps == 0 || run->days[run->n_steps - 1] != run->events[i].day)
        run->days[run->n_steps++] = run->events[i].day;
      run->step_of[i] = run->n_steps - 1;
    }
}

SteadOutlookRun *
stead_outlook_run_new (const SteadOutlook  *outlook,
                       gsize                n_paths,
                       guint32              seed,
                       GError             **error)
{
  SteadOutlookRun *run;

  g_return_val_if_fail (outlook != NULL && (outlook->events != NULL || outlook->n_events == 0), NULL);
  g_return_val_if_fail (n_paths > 0 && n_paths <= STEAD_OUTLOOK_MOST_PATHS, NULL);

  if (!check_outlook (outlook, error))
    return NULL;
  run = g_new0 (SteadOutlookRun, 1);
  run->n_events = outlook->n_events;
  run->events = g_memdup2 (outlook->events, outlook->n_events * sizeof *outlook->events);
  run->step_of = g_new0 (guint, outlook->n_events + 1);
  run->days = g_new0 (SteadDay, outlook->n_events + 1);
  run->start_cents = outlook->start_cents;
  run->goal_cents = outlook->goal_cents;
  run->together = outlook->together;
  run->seed = seed;
  run->n_paths = n_paths;
  if (run->n_events > 0)
    qsort (run->events, run->n_events, sizeof *run->events, compare_events);
  find_steps (run);
  run->fund = g_new0 (double, (gsize) run->n_steps * n_paths + 1);
  run->reached = g_new0 (guint, n_paths);
  run->scratch = g_new0 (double, n_paths);
  return run;
}

void
stead_outlook_run_free (SteadOutlookRun *run)
{
  if (run == NULL)
    return;
  g_free (run->events);
  g_free (run->step_of);
  g_free (run->days);
  g_free (run->fund);
  g_free (run->reached);
  g_free (run->scratch);
  g_free (run);
}

guint
stead_outlook_run_get_n_blocks (const SteadOutlookRun *run)
{
  g_return_val_if_fail (run != NULL, 0);
  return (guint) ((run->n_paths + DRAW_BLOCK - 1) / DRAW_BLOCK);
}

/* Two numbers of the stream for every path, whatever the event: so a changed chance or
 * spread leaves its luck as it was. */
static void
draw_event (const SteadOutlookRun   *run,
            const SteadOutlookEvent *event,
            const double            *season,
            double                  *fund,
            gsize                    n,
            gsl_rng                 *rng)
{
  double shared = event->moves_together ? sqrt (run->together) : 0;
  double own = event->moves_together ? sqrt (1 - run->together) : 1;

  for (gsize i = 0; i < n; i++)
    {
      gboolean comes = gsl_rng_uniform (rng) < event->chance;
      double bell = shared * season[i] + own * gsl_ran_gaussian_ziggurat (rng, 1);

      if (comes)
        fund[i] += event->mean_cents + event->sd_cents * bell;
    }
}

static void
mark_reached (SteadOutlookRun *run,
              const double    *fund,
              gsize            first,
              gsize            n,
              guint            step)
{
  for (gsize i = 0; i < n; i++)
    if (run->reached[first + i] == run->n_steps && fund[i] >= run->goal_cents - NOISE_CENTS)
      run->reached[first + i] = step;
}

static void
run_block (SteadOutlookRun *run,
           guint            block,
           gsl_rng         *rng)
{
  double season[DRAW_BLOCK];
  double fund[DRAW_BLOCK];
  gsize first = (gsize) block * DRAW_BLOCK;
  gsize n = MIN (DRAW_BLOCK, run->n_paths - first);

  draw_stream (rng, run->seed, block, SEASON_STREAM);
  for (gsize i = 0; i < n; i++)
    {
      season[i] = gsl_ran_gaussian_ziggurat (rng, 1);
      fund[i] = run->start_cents;
      run->reached[first + i] = run->n_steps;
    }
  for (gsize e = 0; e < run->n_events; e++)
    {
      guint step = run->step_of[e];

      draw_stream (rng, run->seed, block, run->events[e].stream);
      draw_event (run, &run->events[e], season, fund, n, rng);
      if (e + 1 < run->n_events && run->step_of[e + 1] == step)
        continue;
      memcpy (&run->fund[(gsize) step * run->n_paths + first], fund, n * sizeof *fund);
      mark_reached (run, fund, first, n, step);
    }
}

gboolean
stead_outlook_run_blocks (SteadOutlookRun   *run,
                          guint              first,
                          guint              n,
                          SteadOutlookStop   stop,
                          gpointer           stop_data,
                          GError           **error)
{
  gsl_rng *rng;
  gboolean stopped = FALSE;

  g_return_val_if_fail (run != NULL, FALSE);
  g_return_val_if_fail (first <= stead_outlook_run_get_n_blocks (run)
                        && n <= stead_outlook_run_get_n_blocks (run) - first, FALSE);

  rng = gsl_rng_alloc (gsl_rng_taus2);
  for (guint block = first; block < first + n && !stopped; block++)
    {
      stopped = stop != NULL && stop (stop_data);
      if (!stopped)
        run_block (run, block, rng);
    }
  gsl_rng_free (rng);
  if (stopped)
    g_set_error_literal (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_STOPPED, _("Stopped before all draws were made."));
  return !stopped;
}

guint
stead_outlook_run_get_n_steps (const SteadOutlookRun *run)
{
  g_return_val_if_fail (run != NULL, 0);
  return run->n_steps;
}

SteadDay
stead_outlook_run_get_day (const SteadOutlookRun *run,
                           guint                  step)
{
  g_return_val_if_fail (run != NULL && step < run->n_steps, STEAD_DAY_NONE);
  return run->days[step];
}

void
stead_outlook_run_fan (SteadOutlookRun *run,
                       guint            step,
                       double           level,
                       SteadBand       *out)
{
  g_return_if_fail (run != NULL && step < run->n_steps && out != NULL);
  memcpy (run->scratch, &run->fund[(gsize) step * run->n_paths], run->n_paths * sizeof (double));
  stead_band_of_draws (run->scratch, run->n_paths, level, out);
}

double
stead_outlook_run_chance_now (const SteadOutlookRun *run)
{
  g_return_val_if_fail (run != NULL, NAN);
  return run->start_cents >= run->goal_cents - NOISE_CENTS ? 1 : 0;
}

double
stead_outlook_run_chance_by (const SteadOutlookRun *run,
                             guint                  step)
{
  gsize reached = 0;

  g_return_val_if_fail (run != NULL && step < run->n_steps, NAN);

  if (stead_outlook_run_chance_now (run) == 1)
    return 1;
  for (gsize i = 0; i < run->n_paths; i++)
    reached += run->reached[i] <= step;
  return (double) reached / (double) run->n_paths;
}

gboolean
stead_outlook_run_find_day (const SteadOutlookRun *run,
                            double                 surety,
                            guint                 *out_step)
{
  g_return_val_if_fail (run != NULL && out_step != NULL, FALSE);
  g_return_val_if_fail (surety > 0 && surety <= 1, FALSE);

  if (stead_outlook_run_chance_now (run) == 1)
    return FALSE;
  for (guint step = 0; step < run->n_steps; step++)
    if (stead_outlook_run_chance_by (run, step) >= surety - STEAD_ROUND_NOISE)
      {
        *out_step = step;
        return TRUE;
      }
  return FALSE;
}

int
stead_outlook_sales_needed (double missing_cents,
                            double mean_cents,
                            double sd_cents,
                            double together,
                            double surety)
{
  double z;

  g_return_val_if_fail (surety > 0 && surety < 1, -1);

  if (!(fabs (missing_cents) <= LARGEST && fabs (mean_cents) <= LARGEST && sd_cents >= 0 && sd_cents <= LARGEST
        && together >= 0 && together <= 1))
    return -1;
  if (missing_cents <= NOISE_CENTS)
    return 0;
  z = gsl_cdf_ugaussian_Pinv (surety);
  for (int n = 1; n <= STEAD_OUTLOOK_MOST_EVENTS; n++)
    {
      double spread = sd_cents * sqrt (n * (1 - together) + (double) n * n * together);

      if (n * mean_cents - z * spread >= missing_cents - NOISE_CENTS)
        return n;
    }
  return -1;
}
