/* stead-build-fan.c - the fan of a build's money, and how it moves if sales clear more or less. */
#include "config.h"

#include "answer/stead-build-path-private.h"

#include <math.h>

static void
make_fans (SteadBuildPath  *self,
           SteadOutlookRun *run)
{
  SteadBand now = { self->start_cents, self->start_cents, self->start_cents };
  SteadBuildFan first = { self->today, now, now, stead_outlook_run_chance_now (run) };

  g_array_append_val (self->fans, first);
  for (guint i = 0; i < stead_outlook_run_get_n_steps (run); i++)
    {
      SteadBuildFan fan = { .day = stead_outlook_run_get_day (run, i), .chance = stead_outlook_run_chance_by (run, i) };

      stead_outlook_run_fan (run, i, 0.95, &fan.wide);
      stead_outlook_run_fan (run, i, 0.50, &fan.narrow);
      g_array_append_val (self->fans, fan);
    }
  /* What is there stays there: nothing more is planned until the wanted day. */
  if (self->goal_on != STEAD_DAY_NONE)
    {
      SteadBuildFan last = g_array_index (self->fans, SteadBuildFan, self->fans->len - 1);

      if (self->goal_on > last.day)
        {
          last.day = self->goal_on;
          g_array_append_val (self->fans, last);
        }
    }
}

gboolean
stead_build_path_run_fans (SteadBuildPath  *self,
                           gsize            n_paths,
                           GCancellable    *cancellable,
                           GError         **error)
{
  g_autoptr(SteadOutlookRun) run = NULL;

  g_return_val_if_fail (self != NULL && self->fans->len == 0, FALSE);

  run = stead_build_path_simulate (self->events, self->start_cents, self->goal_cents, self->together, n_paths,
                                   cancellable, error);
  if (run == NULL)
    return FALSE;
  make_fans (self, run);
  for (int i = 0; i < STEAD_BUILD_N_SURETIES; i++)
    self->days[i] = stead_build_path_day (run, self->today, stead_build_sureties[i]);
  self->chance_end = stead_build_path_chance (run, G_MAXINT32);
  if (self->goal_on != STEAD_DAY_NONE)
    self->chance_goal = stead_build_path_chance (run, self->goal_on);
  return TRUE;
}

/* --- what if ------------------------------------------------------------------------------ */

SteadBuildPath *
stead_build_path_what_if (const SteadBuildPath *base,
                          double                sales_frac)
{
  SteadBuildPath *self;

  g_return_val_if_fail (base != NULL && sales_frac >= 0, NULL);
  self = stead_build_path_begin ();
  self->start_cents = base->start_cents;
  self->goal_cents = base->goal_cents;
  self->together = base->together;
  self->today = base->today;
  self->goal_on = base->goal_on;
  self->currency = g_strdup (base->currency);
  for (guint i = 0; i < base->events->len; i++)
    {
      SteadOutlookEvent event = g_array_index (base->events, SteadOutlookEvent, i);

      /* What sales bring moves together; a pledge is what it is. */
      if (event.moves_together)
        {
          event.mean_cents *= sales_frac;
          event.sd_cents *= sales_frac;
        }
      g_array_append_val (self->events, event);
    }
  return self;
}

gboolean
stead_build_path_run_dates (SteadBuildPath  *self,
                            gsize            n_paths,
                            GCancellable    *cancellable,
                            GError         **error)
{
  if (!stead_build_path_run_fans (self, n_paths, cancellable, error))
    return FALSE;
  stead_build_path_say_dates (self);
  return TRUE;
}
