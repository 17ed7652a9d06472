/* stead-schedule.c - the critical path: when each step of a project must begin. */
#include "config.h"

#include "core/stead-schedule.h"

static int
forward (const SteadScheduleStep *steps,
         gsize                    n,
         SteadScheduleTime       *out)
{
  int end = 0;

  for (gsize i = 0; i < n; i++)
    {
      out[i].earliest = 0;
      for (gsize k = 0; k < steps[i].n_after; k++)
        {
          gsize before = steps[i].after[k];

          out[i].earliest = MAX (out[i].earliest, out[before].earliest + steps[before].days);
        }
      end = MAX (end, out[i].earliest + steps[i].days);
    }
  return end;
}

/* From the end: whoever is waited for is over before the first that waits must begin. */
static void
backward (const SteadScheduleStep *steps,
          gsize                    n,
          int                      end,
          SteadScheduleTime       *out)
{
  for (gsize i = 0; i < n; i++)
    out[i].latest = end - steps[i].days;
  for (gsize i = n; i-- > 0;)
    for (gsize k = 0; k < steps[i].n_after; k++)
      {
        gsize before = steps[i].after[k];

        out[before].latest = MIN (out[before].latest, out[i].latest - steps[before].days);
      }
}

int
stead_schedule (const SteadScheduleStep *steps,
                gsize                    n,
                SteadScheduleTime       *out)
{
  int end;

  g_return_val_if_fail (n == 0 || (steps != NULL && out != NULL), 0);
  for (gsize i = 0; i < n; i++)
    {
      g_return_val_if_fail (steps[i].days >= 0 && steps[i].days <= STEAD_SCHEDULE_MOST_DAYS, 0);
      g_return_val_if_fail (steps[i].n_after <= STEAD_SCHEDULE_MOST_AFTER, 0);
      for (gsize k = 0; k < steps[i].n_after; k++)
        g_return_val_if_fail (steps[i].after[k] < i, 0);
    }
  end = forward (steps, n, out);
  backward (steps, n, end, out);
  return end;
}
