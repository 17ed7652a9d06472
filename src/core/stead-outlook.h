/* stead-outlook.h - when a goal is reached, and how surely.
 *
 * Money comes on days: sale days whose result varies, pledges that may not come, sums
 * that are sure, and what is paid out.  Good and bad seasons move the sale days
 * together: leaving this out makes the spread look too small.  Grants for something
 * else are no part of it.
 *
 * The same seed gives the same figures on every machine, whatever the number of
 * threads; and an event more or less leaves the luck of all others as it was.
 */
#pragma once

#include "core/stead-band.h"
#include "core/stead-calendar.h"

G_BEGIN_DECLS

#define STEAD_OUTLOOK_MOST_EVENTS 2000
#define STEAD_OUTLOOK_MOST_PATHS 100000

/* Money of one day. */
typedef struct
{
  SteadDay day;
  double   mean_cents;     /* if it comes; below 0: paid out */
  double   sd_cents;       /* 0: a fixed sum */
  double   chance;         /* that it comes at all, 0 to 1 */
  gboolean moves_together; /* with the season, as sale days do */
  guint32  stream;         /* a number of its own, as its id in the farm file */
} SteadOutlookEvent;

typedef struct
{
  const SteadOutlookEvent *events;   /* (array length=n_events): in any order */
  gsize                    n_events;
  double                   start_cents;   /* there already */
  double                   goal_cents;
  double                   together;      /* share of the spread that is the season's, 0 to 1 */
} SteadOutlook;

/* TRUE when the work is to stop; g_cancellable_is_cancelled() fits. */
typedef gboolean (*SteadOutlookStop) (gpointer data);

typedef struct _SteadOutlookRun SteadOutlookRun;

/**
 * stead_outlook_run_new:
 * @outlook: what may come; copied
 * @n_paths: 1 to %STEAD_OUTLOOK_MOST_PATHS
 * @seed: any number
 * @error: return location for a #GError in %STEAD_CORE_ERROR
 *
 * Returns: (transfer full): room for the paths, still empty; %NULL for a number that
 *   cannot be
 */
SteadOutlookRun *stead_outlook_run_new (const SteadOutlook  *outlook,
                                        gsize                n_paths,
                                        guint32              seed,
                                        GError             **error) G_GNUC_WARN_UNUSED_RESULT;

void stead_outlook_run_free (SteadOutlookRun *run);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadOutlookRun, stead_outlook_run_free)

/**
 * stead_outlook_run_get_n_blocks:
 * Returns: parts of the work
 */
guint stead_outlook_run_get_n_blocks (const SteadOutlookRun *run);

/**
 * stead_outlook_run_blocks:
 * @first: first block
 * @n: how many
 * @stop: (nullable): asked before every block
 * @stop_data: for @stop
 * @error: return location for a #GError in %STEAD_CORE_ERROR
 *
 * Threads may run different blocks at the same time.
 *
 * Returns: %TRUE, or %FALSE if it was stopped
 */
gboolean stead_outlook_run_blocks (SteadOutlookRun   *run,
                                   guint              first,
                                   guint              n,
                                   SteadOutlookStop   stop,
                                   gpointer           stop_data,
                                   GError           **error) G_GNUC_WARN_UNUSED_RESULT;

/**
 * stead_outlook_run_get_n_steps:
 * Returns: days on which money may come
 */
guint stead_outlook_run_get_n_steps (const SteadOutlookRun *run);

/**
 * stead_outlook_run_get_day:
 * Returns: the day of a step; steps are in the order of days
 */
SteadDay stead_outlook_run_get_day (const SteadOutlookRun *run,
                                    guint                  step);

/**
 * stead_outlook_run_fan: the fund after the step, cents: a band of the fan chart
 * stead_outlook_run_chance_by: chance that the goal was reached by the step, 0 to 1;
 *   what is reached stays reached
 * stead_outlook_run_chance_now: chance that the goal is reached without a single event
 *
 * After all blocks were run.
 */
void stead_outlook_run_fan (SteadOutlookRun *run,
                            guint            step,
                            double           level,
                            SteadBand       *out);
double stead_outlook_run_chance_by (const SteadOutlookRun *run,
                                    guint                  step);
double stead_outlook_run_chance_now (const SteadOutlookRun *run);

/**
 * stead_outlook_run_find_day:
 * @surety: wanted, above 0 to 1
 * @out_step: (out): the first step by which the chance is that high
 *
 * Returns: %TRUE; %FALSE with @out_step left alone if it never is, or is so already
 *   before the first step
 */
gboolean stead_outlook_run_find_day (const SteadOutlookRun *run,
                                     double                 surety,
                                     guint                 *out_step);

/**
 * stead_outlook_sales_needed:
 * @missing_cents: goal less what is there
 * @mean_cents: of one sale day
 * @sd_cents: of one sale day, 0 or more
 * @together: as in #SteadOutlook
 * @surety: wanted, above 0 and below 1
 *
 * The plan backwards, in closed form: of n days the mean is n x mean and the variance
 * sd² (n (1 - together) + n² together).
 *
 * Returns: the least number of sale days that reach it so surely; -1 if none up to
 *   %STEAD_OUTLOOK_MOST_EVENTS does
 */
int stead_outlook_sales_needed (double missing_cents,
                                double mean_cents,
                                double sd_cents,
                                double together,
                                double surety);

G_END_DECLS
