/* stead-limit-judge.c - a reading against a limit. */
#include "config.h"

#include "core/stead-core-error.h"
#include "core/stead-limit.h"

#include <glib/gi18n-lib.h>
#include <math.h>

/* Digits behind the point that a reading can have; beyond lies binary noise. */
#define GRAINS 1e9

/* Of a grain: more than the noise of a kitchen's temperatures, less than a ninth. */
#define GRAIN_NOISE 0.01

static double
grains (double value)
{
  return nearbyint (value * GRAINS);
}

double
stead_fahrenheit_from_celsius (double temp_c)
{
  /* 155 °F kept as 68.333… °C is no whole number of grains; it comes back as it was read. */
  if (fabs (temp_c * GRAINS - grains (temp_c)) > GRAIN_NOISE)
    return temp_c * 1.8 + 32;
  /* Whole grains times 9 are exact, so only the division rounds, and it rounds
   * to nearest: it can reach a limit only if it is there. */
  return (9 * grains (temp_c) + 160 * GRAINS) / (5 * GRAINS);
}

int
stead_limit_compare (double value,
                     double limit)
{
  double difference = grains (value - limit);

  return difference < 0 ? -1 : difference > 0 ? 1 : 0;
}

/* Units of one kind: value = number x factor + offset in the base of the kind. */
static const struct
{
  const char *unit;
  char        kind;
  double      factor;
  double      offset;
} units[] = {
  { "s", 't', 1, 0 }, { "min", 't', 60, 0 }, { "h", 't', 3600, 0 }, { "d", 't', 86400, 0 },
  { "F", 'T', 1, 0 }, { "C", 'T', 1.8, 32 },
  { "Fdiff", 'D', 1, 0 }, { "Cdiff", 'D', 1.8, 0 },
};

static int
unit_place (const char *unit)
{
  for (gsize i = 0; i < G_N_ELEMENTS (units); i++)
    if (g_str_equal (units[i].unit, unit))
      return (int) i;
  return -1;
}

double
stead_limit_value_in (const SteadLimit *limit,
                      const char       *unit)
{
  int from;
  int to;

  g_return_val_if_fail (limit != NULL && unit != NULL, NAN);
  if (g_str_equal (limit->unit, unit))
    return limit->value;
  from = unit_place (limit->unit);
  to = unit_place (unit);
  if (from < 0 || to < 0 || units[from].kind != units[to].kind)
    return NAN;
  return (limit->value * units[from].factor + units[from].offset - units[to].offset) / units[to].factor;
}

/* The reading and its doubt in the unit of the row. */
static gboolean
read_in_unit (const SteadLimit        *limit,
              const SteadLimitReading *reading,
              SteadJudgement          *out,
              GError                 **error)
{
  double doubt = fabs (reading->error) + fabs (reading->step) / 2;

  if (g_str_equal (reading->unit, limit->unit))
    {
      out->value = reading->value;
      out->doubt = doubt;
      return TRUE;
    }
  if (g_str_equal (reading->unit, "C") && g_str_equal (limit->unit, "F"))
    {
      out->value = stead_fahrenheit_from_celsius (reading->value);
      out->doubt = doubt * 1.8;   /* a difference has no 32 in it */
      return TRUE;
    }
  g_set_error (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_UNIT,
               _("The limit is in “%s”, the reading in “%s”. Enter the reading in the unit of the limit."),
               limit->unit, reading->unit);
  return FALSE;
}

static gboolean
wants_more (SteadLimitDirection direction)
{
  return direction == STEAD_LIMIT_AT_LEAST || direction == STEAD_LIMIT_ABOVE;
}

static double
short_time_s (const SteadLimit *limit,
              double            time_s)
{
  double missing;

  if (!limit->has_time || (limit->time_direction == STEAD_LIMIT_AT_LEAST && limit->time_s == 0))
    return 0;
  if (isnan (time_s))
    return limit->time_direction == STEAD_LIMIT_AT_LEAST ? limit->time_s : HUGE_VAL;
  missing = wants_more (limit->time_direction) ? limit->time_s - time_s : time_s - limit->time_s;
  return stead_limit_compare (missing, 0) > 0 ? missing : 0;
}

static SteadLimitVerdict
verdict_of (const SteadLimit     *limit,
            const SteadJudgement *judgement)
{
  gboolean at_it_passes = limit->direction == STEAD_LIMIT_AT_LEAST
                          || limit->direction == STEAD_LIMIT_AT_MOST;
  int least = at_it_passes ? 0 : 1;

  if (isnan (judgement->value) || judgement->short_s > 0
      || stead_limit_compare (judgement->margin, 0) < least)
    return STEAD_LIMIT_NOT_MET;
  return stead_limit_compare (judgement->margin, judgement->doubt) >= least
         ? STEAD_LIMIT_MET : STEAD_LIMIT_WITHIN_ERROR;
}

gboolean
stead_limit_judge (const SteadLimit        *limit,
                   const SteadLimitReading *reading,
                   SteadJudgement          *out,
                   GError                 **error)
{
  SteadJudgement judgement = { 0 };

  g_return_val_if_fail (limit != NULL && reading != NULL && out != NULL, FALSE);
  g_return_val_if_fail (reading->unit != NULL && limit->direction != STEAD_LIMIT_IS, FALSE);

  if (!read_in_unit (limit, reading, &judgement, error))
    return FALSE;
  judgement.margin = wants_more (limit->direction) ? judgement.value - limit->value
                                                   : limit->value - judgement.value;
  judgement.short_s = short_time_s (limit, reading->time_s);
  judgement.verdict = verdict_of (limit, &judgement);
  *out = judgement;
  return TRUE;
}

/* Which of two judgements of one reading says more: the better verdict; between
 * two failures the step that was reached, the higher one first, then the lowest. */
static gboolean
decides_over (const SteadJudgement *a,
              const SteadJudgement *b)
{
  gboolean a_reached = a->margin >= 0;
  gboolean b_reached = b->margin >= 0;

  if (a->verdict != b->verdict)
    return a->verdict > b->verdict;
  if (a->verdict != STEAD_LIMIT_NOT_MET)
    return a->margin > b->margin;
  if (a_reached != b_reached)
    return a_reached;
  return a_reached ? a->margin < b->margin : a->margin > b->margin;
}

/* Where all must be met: the worse verdict, then the smaller margin. */
static gboolean
fails_more (const SteadJudgement *a,
            const SteadJudgement *b)
{
  return a->verdict != b->verdict ? a->verdict < b->verdict : a->margin < b->margin;
}

gboolean
stead_limit_rows_judge (const GPtrArray          *rows,
                        gboolean                  all,
                        const SteadLimitReading  *reading,
                        SteadJudgement           *out,
                        const SteadLimit        **out_limit,
                        GError                  **error)
{
  const SteadLimit *decided = NULL;

  g_return_val_if_fail (rows != NULL && reading != NULL && out != NULL, FALSE);
  for (guint i = 0; i < rows->len; i++)
    {
      const SteadLimit *row = rows->pdata[i];
      SteadJudgement judgement;

      if (row->direction == STEAD_LIMIT_IS)
        continue;
      if (!stead_limit_judge (row, reading, &judgement, error))
        return FALSE;
      if (decided == NULL || (all ? fails_more (&judgement, out) : decides_over (&judgement, out)))
        {
          decided = row;
          *out = judgement;
        }
    }
  if (decided == NULL)
    {
      g_set_error_literal (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_NONE,
                           _("There is no limit that a reading could be compared with."));
      return FALSE;
    }
  if (out_limit != NULL)
    *out_limit = decided;
  return TRUE;
}

gboolean
stead_limit_table_judge (const SteadLimitTable   *table,
                         const char              *process,
                         const char              *subject,
                         const char              *measure,
                         const SteadLimitFact    *facts,
                         const SteadLimitReading *reading,
                         SteadJudgement          *out,
                         const SteadLimit       **out_limit,
                         GError                 **error)
{
  g_autoptr(GPtrArray) list = NULL;

  g_return_val_if_fail (table != NULL && reading != NULL && out != NULL, FALSE);

  /* For the message if there is none. */
  if (stead_limit_table_find (table, process, subject, measure, facts, error) == NULL)
    return FALSE;
  list = stead_limit_table_list (table, process, subject, measure, facts);
  return stead_limit_rows_judge (list, FALSE, reading, out, out_limit, error);
}
