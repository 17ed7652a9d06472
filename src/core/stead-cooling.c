/* stead-cooling.c - the law of cooling, the rule, and what readings prove. */
#include "config.h"

#include "core/stead-cooling.h"
#include "core/stead-core-error.h"

#include <glib/gi18n-lib.h>
#include <gsl/gsl_errno.h>
#include <gsl/gsl_roots.h>
#include <math.h>

#define PROBE_NOISE_F 0.5   /* common practice, no source */

double
stead_newton_rate (double start_f,
                   double ambient_f,
                   double minutes,
                   double temp_f)
{
  double share = (start_f - ambient_f) / (temp_f - ambient_f);

  return minutes > 0 && share > 0 && isfinite (share) ? log (share) / minutes : NAN;
}

double
stead_newton_temp (double start_f,
                   double ambient_f,
                   double rate,
                   double minutes)
{
  return ambient_f + (start_f - ambient_f) * exp (-rate * minutes);
}

double
stead_newton_minutes (double start_f,
                      double ambient_f,
                      double rate,
                      double target_f)
{
  double share = (start_f - ambient_f) / (target_f - ambient_f);
  double minutes = share > 0 && isfinite (share) ? log (share) / rate : NAN;

  return isfinite (minutes) && minutes >= 0 ? minutes : NAN;
}

/* The rule */

static gboolean
set_mark (const SteadLimitTable  *table,
          const char             *start,
          const char             *wording,
          const char             *stage,
          SteadCoolingMark       *out,
          GError                **error)
{
  const SteadLimitFact facts[] = { { "rule", wording, 0 }, { "stage", stage, 0 }, { NULL } };
  const SteadLimit *limit = stead_limit_table_find (table, "cool", start, "food_temp", facts, error);

  if (limit == NULL)
    return FALSE;
  out->temp_f = limit->value;
  out->within_min = limit->time_s / 60;
  out->from_previous = FALSE;
  return TRUE;
}

gboolean
stead_cooling_rule (const SteadLimitTable  *table,
                    const char             *start,
                    const char             *wording,
                    SteadCoolingRule       *out,
                    GError                **error)
{
  SteadCoolingRule rule = { .start_f = HUGE_VAL, .n_marks = 1 };
  const SteadLimit *clock;

  g_return_val_if_fail (table != NULL && start != NULL && wording != NULL && out != NULL, FALSE);

  clock = stead_limit_table_find (table, "cool", start, "clock_start", NULL, NULL);
  if (clock == NULL)
    {
      /* Food that never was hot: one mark, and the clock starts with the work. */
      if (!set_mark (table, start, wording, "total", &rule.marks[0], error))
        return FALSE;
      *out = rule;
      return TRUE;
    }
  rule.start_f = clock->value;
  rule.n_marks = 2;
  if (!set_mark (table, start, wording, "stage_1", &rule.marks[0], error))
    return FALSE;
  if (set_mark (table, start, wording, "stage_2", &rule.marks[1], NULL))
    rule.marks[1].from_previous = TRUE;
  else if (!set_mark (table, start, wording, "total", &rule.marks[1], error))
    return FALSE;
  *out = rule;
  return TRUE;
}

SteadCoolingVerdict
stead_cooling_verdict (const SteadCoolingRule *rule,
                       double                  start_min,
                       const double           *at_min)
{
  double from = start_min;

  g_return_val_if_fail (rule != NULL && at_min != NULL, STEAD_COOLING_OPEN);

  for (gsize i = 0; i < rule->n_marks; i++)
    {
      const SteadCoolingMark *mark = &rule->marks[i];

      if (isnan (at_min[i]))
        return STEAD_COOLING_OPEN;
      from = mark->from_previous && i > 0 ? at_min[i - 1] : start_min;
      if (stead_limit_compare (at_min[i] - from, mark->within_min) <= 0)
        continue;
      if (i + 1 < rule->n_marks)
        return STEAD_COOLING_FAIL_STAGE_1;
      return mark->from_previous ? STEAD_COOLING_FAIL_STAGE_2 : STEAD_COOLING_FAIL_TOTAL;
    }
  return STEAD_COOLING_PASS;
}

/* The warmest surroundings */

typedef gsl_root_fsolver RootSolver;

G_DEFINE_AUTOPTR_CLEANUP_FUNC (RootSolver, gsl_root_fsolver_free)

typedef struct
{
  const SteadCoolingRule *rule;
  double                  first_min;
  double                  second_min;
} Timing;

/* Minutes to the second mark beyond the time for it, in surroundings of @ambient_f. */
static double
lateness (double  ambient_f,
          void   *data)
{
  const Timing *timing = data;
  const SteadCoolingRule *rule = timing->rule;
  double rate = stead_newton_rate (rule->start_f, ambient_f, timing->first_min, rule->marks[0].temp_f);

  return stead_newton_minutes (rule->start_f, ambient_f, rate, rule->marks[1].temp_f)
         - timing->second_min;
}

#define COLDEST_F (-460.0)   /* absolute zero: nothing cools slower in relation */

gboolean
stead_cooling_warmest_ambient (const SteadCoolingRule  *rule,
                               double                   first_min,
                               double                   second_min,
                               double                  *out_ambient_f,
                               GError                 **error)
{
  Timing timing = { rule, first_min, second_min };
  gsl_function function = { lateness, &timing };
  g_autoptr(RootSolver) solver = NULL;
  double warmest;

  g_return_val_if_fail (rule != NULL && out_ambient_f != NULL, FALSE);

  warmest = rule->n_marks == 2 ? rule->marks[1].temp_f - 1e-9 : NAN;
  if (!(first_min > 0 && second_min > first_min && lateness (COLDEST_F, &timing) < 0
        && lateness (warmest, &timing) > 0))
    {
      g_set_error_literal (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_NONE,
                           _("No surroundings fit these two times. Check both of them."));
      return FALSE;
    }
  solver = gsl_root_fsolver_alloc (gsl_root_fsolver_brent);
  gsl_root_fsolver_set (solver, &function, COLDEST_F, warmest);
  for (int tries = 0; tries < 200; tries++)
    {
      gsl_root_fsolver_iterate (solver);
      if (gsl_root_test_interval (gsl_root_fsolver_x_lower (solver), gsl_root_fsolver_x_upper (solver),
                                  1e-9, 0) == GSL_SUCCESS)
        break;
    }
  *out_ambient_f = gsl_root_fsolver_root (solver);
  return TRUE;
}

/* Readings */

double
stead_cooling_clock (const SteadCoolingReading *readings,
                     gsize                      n,
                     double                     start_f,
                     double                     ambient_f,
                     gboolean                  *out_known)
{
  gboolean known = FALSE;
  double minute;

  g_return_val_if_fail (readings != NULL && n > 0, NAN);

  minute = readings[0].temp_f > start_f ? readings[n - 1].minute : readings[0].minute;
  if (stead_limit_compare (readings[0].temp_f, start_f) == 0 || isinf (start_f))
    known = TRUE;
  for (gsize i = 1; i < n && !known; i++)
    if (readings[i - 1].temp_f > start_f && readings[i].temp_f <= start_f)
      {
        double span = readings[i].minute - readings[i - 1].minute;
        double rate = stead_newton_rate (readings[i - 1].temp_f, ambient_f, span, readings[i].temp_f);
        double after = stead_newton_minutes (readings[i - 1].temp_f, ambient_f, rate, start_f);

        /* Without a curve the earlier of the two is the safe one. */
        minute = readings[i - 1].minute + (after >= 0 && after <= span ? after : 0);
        known = TRUE;
      }
  if (out_known != NULL)
    *out_known = known;
  return minute;
}

static SteadCoolingMarkState
mark_state (const SteadCoolingMark    *mark,
            const SteadCoolingReading *readings,
            gsize                      n,
            double                     deadline,
            double                    *out_reached)
{
  SteadCoolingMarkState state = STEAD_COOLING_MARK_OPEN;

  *out_reached = NAN;
  for (gsize i = 0; i < n; i++)
    {
      gboolean below = stead_limit_compare (readings[i].temp_f, mark->temp_f) <= 0;
      int late = stead_limit_compare (readings[i].minute, deadline);

      if (below && isnan (*out_reached))
        {
          *out_reached = readings[i].minute;
          if (late <= 0)
            return STEAD_COOLING_MARK_MET;
          return state == STEAD_COOLING_MARK_OPEN ? STEAD_COOLING_MARK_UNPROVEN : state;
        }
      if (!below && late >= 0)
        state = STEAD_COOLING_MARK_MISSED;
    }
  return state;
}

void
stead_cooling_mark_states (const SteadCoolingRule    *rule,
                           const SteadCoolingReading *readings,
                           gsize                      n,
                           double                     clock_min,
                           SteadCoolingMarkState     *out)
{
  double reached = clock_min;

  g_return_if_fail (rule != NULL && (readings != NULL || n == 0) && out != NULL);

  for (gsize i = 0; i < rule->n_marks; i++)
    {
      double from = rule->marks[i].from_previous ? reached : clock_min;

      /* A mark that waits for one that was not reached yet is open. */
      if (isnan (from))
        out[i] = STEAD_COOLING_MARK_OPEN;
      else
        out[i] = mark_state (&rule->marks[i], readings, n, from + rule->marks[i].within_min, &reached);
    }
}

GArray *
stead_cooling_notices (const SteadCoolingReading *readings,
                       gsize                      n,
                       double                     longest_gap_min,
                       double                     noise_f)
{
  GArray *notices = g_array_new (FALSE, FALSE, sizeof (SteadCoolingNotice));

  g_return_val_if_fail (readings != NULL || n == 0, notices);

  for (gsize i = 1; i < n; i++)
    {
      SteadCoolingNotice gap = { STEAD_COOLING_GAP, i };
      SteadCoolingNotice rose = { STEAD_COOLING_ROSE, i };

      if (stead_limit_compare (readings[i].minute - readings[i - 1].minute, longest_gap_min) > 0)
        g_array_append_val (notices, gap);
      /* Two readings differ by sqrt 2 of the noise of one; three of these is no chance. */
      if (readings[i].temp_f - readings[i - 1].temp_f > 3 * G_SQRT2 * noise_f)
        g_array_append_val (notices, rose);
    }
  return notices;
}

double
stead_cooling_noise_f (double step_f)
{
  return hypot (step_f / sqrt (12), PROBE_NOISE_F);
}
