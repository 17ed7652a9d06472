/* stead-check-judge.c - one reading against one line, and what to do if it fails. */
#include "config.h"

#include "core/stead-check-judge.h"

#include <math.h>

/* Longer than any hold: what was hot enough would be met if it was held. */
#define LONG_ENOUGH_S 1e9

/* What a probe in food, water or air can show, °F: outside it a reading is asked about.  Not
 * limits; common practice, no source. */
typedef struct
{
  double low_f, high_f;
  double seldom_low_f, seldom_high_f;   /* outside this it is asked about, if the other scale fits better */
} Plausible;

static const Plausible plausible_hot = { 20, 235, 100, 235 };
static const Plausible plausible_cold = { -60, 120, -60, 68 };
static const Plausible plausible_pot = { 20, 235, 20, 235 };
static const Plausible plausible_ice = { 20, 50, 20, 50 };
static const Plausible plausible_boil = { 170, 220, 170, 220 };
static const Plausible plausible_any = { -60, 400, -60, 400 };

static const Plausible *
plausible_of (SteadCheckLineKind kind)
{
  switch ((int) kind)
    {
    case STEAD_CHECK_LINE_COOK: case STEAD_CHECK_LINE_COOK_MICROWAVE: case STEAD_CHECK_LINE_REHEAT:
    case STEAD_CHECK_LINE_REHEAT_MICROWAVE: case STEAD_CHECK_LINE_HOLD_HOT: case STEAD_CHECK_LINE_CARRY_HOT:
    case STEAD_CHECK_LINE_UTENSILS:
      return &plausible_hot;
    case STEAD_CHECK_LINE_EGGS_COLD: case STEAD_CHECK_LINE_RECEIVE_COLD: case STEAD_CHECK_LINE_THAW_COLD:
    case STEAD_CHECK_LINE_THAW_WATER: case STEAD_CHECK_LINE_HOLD_COLD: case STEAD_CHECK_LINE_CARRY_COLD:
    case STEAD_CHECK_LINE_TIME_DURING:
      return &plausible_cold;
    case STEAD_CHECK_LINE_COOL: case STEAD_CHECK_LINE_CHILL_PREPARED: case STEAD_CHECK_LINE_TIME_START:
      return &plausible_pot;
    case STEAD_CHECK_LINE_THERMOMETER_ICE:
      return &plausible_ice;
    case STEAD_CHECK_LINE_THERMOMETER_BOIL:
      return &plausible_boil;
    default:
      return &plausible_any;
    }
}

static gboolean
is_temperature (const char *unit)
{
  return g_strcmp0 (unit, "F") == 0 || g_strcmp0 (unit, "C") == 0;
}

static double
in_fahrenheit (double      value,
               const char *unit)
{
  return g_str_equal (unit, "C") ? stead_fahrenheit_from_celsius (value) : value;
}

static gboolean
within (double value,
        double low,
        double high)
{
  return value >= low && value <= high;
}

static SteadCheckOdd
odd_of (const SteadCheckLine     *line,
        const SteadCheckReading  *reading,
        const char              **other)
{
  const Plausible *plausible = plausible_of (line->kind);
  gboolean celsius = g_strcmp0 (reading->shown.unit, "C") == 0;
  double typed, turned;

  if (reading->at != STEAD_CHECK_NO_TIME && reading->at > reading->now)
    return STEAD_CHECK_ODD_FUTURE;
  if (reading->began != STEAD_CHECK_NO_TIME && reading->at != STEAD_CHECK_NO_TIME && reading->at < reading->began)
    return STEAD_CHECK_ODD_BEFORE;
  if (!is_temperature (reading->shown.unit) || reading->solution != NULL)
    return STEAD_CHECK_ODD_NO;
  typed = in_fahrenheit (reading->shown.value, celsius ? "C" : "F");
  turned = in_fahrenheit (reading->shown.value, celsius ? "F" : "C");
  if (!within (typed, plausible->low_f, plausible->high_f))
    {
      if (!within (turned, plausible->low_f, plausible->high_f))
        return STEAD_CHECK_ODD_IMPOSSIBLE;
      *other = celsius ? "F" : "C";
      return STEAD_CHECK_ODD_SCALE;
    }
  if (!within (typed, plausible->seldom_low_f, plausible->seldom_high_f)
      && within (turned, plausible->seldom_low_f, plausible->seldom_high_f))
    {
      *other = celsius ? "F" : "C";
      return STEAD_CHECK_ODD_SCALE;
    }
  return STEAD_CHECK_ODD_NO;
}

/* --- what to do ------------------------------------------------------------------------- */

static const char *
correction_subject (const SteadCheckLine *line)
{
  if (g_strcmp0 (line->subject, "raw_shell_eggs") == 0 && line->measure != NULL)
    return "eggs_cold";
  switch ((int) line->kind)
    {
    case STEAD_CHECK_LINE_COOK: case STEAD_CHECK_LINE_COOK_MICROWAVE: case STEAD_CHECK_LINE_STAND:
    case STEAD_CHECK_LINE_REHEAT_STAND:
      return "cook";
    case STEAD_CHECK_LINE_COOL: case STEAD_CHECK_LINE_CHILL_PREPARED: return "cool";
    case STEAD_CHECK_LINE_REHEAT: case STEAD_CHECK_LINE_REHEAT_MICROWAVE: case STEAD_CHECK_LINE_REHEAT_TIME:
      return "reheat";
    case STEAD_CHECK_LINE_HOLD_HOT: case STEAD_CHECK_LINE_CARRY_HOT: return "hold_hot";
    case STEAD_CHECK_LINE_HOLD_COLD: case STEAD_CHECK_LINE_CARRY_COLD: return "hold_cold";
    case STEAD_CHECK_LINE_HOLD_FROZEN: case STEAD_CHECK_LINE_CARRY_FROZEN: return "hold_frozen";
    case STEAD_CHECK_LINE_TIME_START: return "time_start";
    case STEAD_CHECK_LINE_TIME_DURING: case STEAD_CHECK_LINE_TIME_END: return "time_control";
    case STEAD_CHECK_LINE_DATE_MARK: return "date_mark";
    case STEAD_CHECK_LINE_EGGS_COLD: return "eggs_cold";
    case STEAD_CHECK_LINE_EGGS_SOUND: return "receive_eggs";
    case STEAD_CHECK_LINE_RECEIVE_COLD: case STEAD_CHECK_LINE_RECEIVE_FROZEN: return "receive";
    case STEAD_CHECK_LINE_THERMOMETER_ICE: case STEAD_CHECK_LINE_THERMOMETER_BOIL: return "thermometer";
    case STEAD_CHECK_LINE_SANITIZER: case STEAD_CHECK_LINE_SANITIZER_CONTACT: return "sanitizer";
    case STEAD_CHECK_LINE_JAR_PH: case STEAD_CHECK_LINE_JAR_PROCESS: return "jar";
    case STEAD_CHECK_LINE_THAW_COLD: case STEAD_CHECK_LINE_THAW_WATER: case STEAD_CHECK_LINE_THAW_WATER_TIME:
      return "thaw";
    case STEAD_CHECK_LINE_WASH_HAND: case STEAD_CHECK_LINE_WASH_MACHINE: return "warewash";
    default: return "tick";
    }
}

const SteadLimit *
stead_check_correction (const SteadLimitTable   *table,
                        const SteadCheckLine    *line,
                        const SteadCheckReading *reading)
{
  const char *subject;
  const SteadLimit *row;
  SteadLimitFact facts[] = {
    { "elapsed_h", NULL, NAN }, { "temp_f", NULL, NAN }, { "since_good_h", NULL, NAN }, { "reheated", "no", 0 },
    { NULL, NULL, 0 },
  };

  g_return_val_if_fail (table != NULL && line != NULL, NULL);

  subject = correction_subject (line);
  if (reading != NULL)
    {
      facts[0].number = reading->elapsed_h;
      if (is_temperature (reading->shown.unit))
        facts[1].number = in_fahrenheit (reading->shown.value, reading->shown.unit);
      facts[2].number = reading->since_good_h;
      facts[3].word = reading->reheated ? "yes" : "no";
    }
  row = stead_limit_table_find (table, "correct", subject, "action", facts, NULL);
  /* What is heated again and still has time is heated on. */
  if (row == NULL && g_str_equal (subject, "reheat") && reading != NULL && !isnan (reading->elapsed_h))
    row = stead_limit_table_find (table, "correct", "cook", "action", facts, NULL);
  for (guint i = 0; row == NULL && i < stead_limit_table_get_n_rows (table); i++)
    {
      const SteadLimit *last = stead_limit_table_get_row (table, i);

      if (g_str_equal (last->process, "correct") && g_str_equal (last->subject, subject)
          && g_strcmp0 (last->word, "discard") == 0)
        row = last;
    }
  return row;
}

/* --- judging -------------------------------------------------------------------------------- */

/* One row; a hold that was not timed is met if it is held. */
static gboolean
judge_row (const SteadLimit         *row,
           const SteadCheckReading  *reading,
           SteadCheckJudgement      *out,
           GError                  **error)
{
  SteadLimitReading shown = reading->shown;
  SteadJudgement found;
  gboolean untimed = row->has_time && row->time_direction == STEAD_LIMIT_AT_LEAST && isnan (shown.time_s);

  if (untimed)
    shown.time_s = LONG_ENOUGH_S;
  if (!stead_limit_judge (row, &shown, &found, error))
    return FALSE;
  out->row = row;
  out->margin = found.margin;
  out->doubt = found.doubt;
  out->short_s = found.short_s;
  out->hold_s = 0;
  out->outcome = found.verdict == STEAD_LIMIT_NOT_MET ? STEAD_CHECK_NOT_MET
                 : found.verdict == STEAD_LIMIT_WITHIN_ERROR ? STEAD_CHECK_WITHIN_ERROR : STEAD_CHECK_MET;
  if (untimed && out->outcome != STEAD_CHECK_NOT_MET && row->time_s > 0)
    {
      out->outcome = STEAD_CHECK_IF_HELD;
      out->hold_s = row->time_s;
    }
  return TRUE;
}

/* Of two rows of which one is enough: the better outcome; of two that must be held the shorter
 * hold; of two that were reached but held too short the one that lacks least; else the nearer. */
static gboolean
is_better (const SteadCheckJudgement *a,
           const SteadCheckJudgement *b)
{
  if (a->outcome != b->outcome)
    return a->outcome < b->outcome;
  if (a->outcome == STEAD_CHECK_IF_HELD)
    return a->hold_s < b->hold_s;
  if (a->outcome != STEAD_CHECK_NOT_MET)
    return a->margin > b->margin;
  if ((a->margin >= 0) != (b->margin >= 0))
    return a->margin >= 0;
  return a->margin >= 0 ? a->short_s < b->short_s : a->margin > b->margin;
}

static gboolean
judge_rows (const SteadCheckLine     *line,
            const SteadCheckReading  *reading,
            SteadCheckJudgement      *out,
            GError                  **error)
{
  SteadCheckJudgement best = { .row = NULL };

  /* A step that only its recipe limits: judge_own() decides. */
  if (line->rows->len == 0)
    return TRUE;
  for (guint i = 0; i < line->rows->len; i++)
    {
      const SteadLimit *row = line->rows->pdata[i];
      SteadCheckJudgement found = *out;

      if (row->direction == STEAD_LIMIT_IS || !g_str_equal (row->unit, line->unit))
        continue;
      if (!judge_row (row, reading, &found, error))
        return FALSE;
      if (best.row == NULL || (line->all ? is_better (&best, &found) : is_better (&found, &best)))
        best = found;
    }
  g_return_val_if_fail (best.row != NULL, FALSE);
  *out = best;
  return TRUE;
}

/* A mark counts once its time is up; until then it is open. */
static gboolean
judge_cooling (const SteadCheckLine     *line,
               const SteadCheckReading  *reading,
               SteadCheckJudgement      *out,
               GError                  **error)
{
  SteadCheckReading timed = *reading;
  gboolean open = FALSE;

  timed.shown.time_s = reading->elapsed_h * 3600;
  for (guint i = 0; i < line->rows->len; i++)
    {
      const SteadLimit *row = line->rows->pdata[i];

      if (!judge_row (row, &timed, out, error))
        return FALSE;
      /* What it measures is right: when it got there is for the pot's other readings to tell. */
      if (out->margin >= 0 && (i + 1 < line->rows->len || out->outcome != STEAD_CHECK_NOT_MET))
        continue;
      if (timed.shown.time_s <= row->time_s)
        open = TRUE;
      else
        {
          out->outcome = STEAD_CHECK_NOT_MET;
          return TRUE;
        }
    }
  if (open)
    out->outcome = STEAD_CHECK_OPEN;
  return TRUE;
}

static gboolean
judge_thermometer (const SteadLimitTable    *table,
                   const SteadCheckLine     *line,
                   const SteadCheckReading  *reading,
                   SteadCheckJudgement      *out,
                   GError                  **error)
{
  const SteadThermometer thermometer = { line->subject, "food" };
  double true_f = line->kind == STEAD_CHECK_LINE_THERMOMETER_ICE
                  ? stead_ice_point_f (table) : stead_boiling_point_f (table, reading->elevation_ft);
  gboolean good;

  if (!stead_thermometer_judge (table, &thermometer, in_fahrenheit (reading->shown.value, reading->shown.unit), true_f,
                                &out->error_f, &good, error))
    return FALSE;
  out->row = line->rows->len > 1 ? line->rows->pdata[line->kind == STEAD_CHECK_LINE_THERMOMETER_ICE ? 1 : line->rows->len - 1]
                                 : line->rows->pdata[0];
  out->outcome = good ? STEAD_CHECK_MET : STEAD_CHECK_NOT_MET;
  return TRUE;
}

static gboolean
judge_solution (const SteadLimitTable    *table,
                const SteadCheckLine     *line,
                const SteadCheckReading  *reading,
                SteadCheckJudgement      *out,
                GError                  **error)
{
  if (!stead_sanitizer_judge (table, reading->solution, &out->faults, error))
    return FALSE;
  out->row = line->rows->pdata[0];
  out->outcome = out->faults == STEAD_SOLUTION_GOOD ? STEAD_CHECK_MET : STEAD_CHECK_NOT_MET;
  return TRUE;
}

/* A hold of the recipe's own: not timed yet, or too short. */
static void
judge_own_hold (const SteadCheckLine    *line,
                const SteadCheckReading *reading,
                SteadCheckJudgement     *out)
{
  if (!(line->own_hold_s > 0) || reading->shown.time_s >= line->own_hold_s)
    return;
  if (isnan (reading->shown.time_s))
    {
      out->hold_s = MAX (out->outcome == STEAD_CHECK_IF_HELD ? out->hold_s : 0, line->own_hold_s);
      out->outcome = STEAD_CHECK_IF_HELD;
      return;
    }
  out->own = TRUE;
  out->outcome = STEAD_CHECK_NOT_MET;
  out->short_s = line->own_hold_s - reading->shown.time_s;
  out->margin = 0;
}

/* The recipe may ask for more than the table, never for less. */
static void
judge_own (const SteadCheckLine    *line,
           const SteadCheckReading *reading,
           SteadCheckJudgement     *out)
{
  double value_f, below, above;

  if (!is_temperature (reading->shown.unit) || out->outcome == STEAD_CHECK_NOT_MET
      || line->kind == STEAD_CHECK_LINE_COOL || line->kind == STEAD_CHECK_LINE_CHILL_PREPARED)
    return;
  value_f = in_fahrenheit (reading->shown.value, reading->shown.unit);
  below = isnan (line->own_least_c) ? 0 : stead_fahrenheit_from_celsius (line->own_least_c) - value_f;
  above = isnan (line->own_most_c) ? 0 : value_f - stead_fahrenheit_from_celsius (line->own_most_c);
  /* What was typed as 150 °F is kept in °C and comes back with binary noise. */
  if (MAX (below, above) <= 1e-6)
    {
      judge_own_hold (line, reading, out);
      return;
    }
  out->own = TRUE;
  out->outcome = STEAD_CHECK_NOT_MET;
  out->margin = -MAX (below, above);
}

gboolean
stead_check_judge (const SteadLimitTable    *table,
                   const SteadCheckLine     *line,
                   const SteadCheckReading  *reading,
                   SteadCheckJudgement      *out,
                   GError                  **error)
{
  SteadCheckJudgement found = { .error_f = NAN };
  gboolean judged;

  g_return_val_if_fail (table != NULL && line != NULL && reading != NULL && out != NULL, FALSE);
  g_return_val_if_fail (line->measure != NULL && (reading->shown.unit != NULL || reading->solution != NULL), FALSE);

  if (!reading->confirmed)
    found.odd = odd_of (line, reading, &found.other_unit);
  if (found.odd != STEAD_CHECK_ODD_NO)
    {
      *out = found;
      return TRUE;
    }
  if (reading->solution != NULL)
    judged = judge_solution (table, line, reading, &found, error);
  else if (line->kind == STEAD_CHECK_LINE_THERMOMETER_ICE || line->kind == STEAD_CHECK_LINE_THERMOMETER_BOIL)
    judged = judge_thermometer (table, line, reading, &found, error);
  else if (line->kind == STEAD_CHECK_LINE_COOL || line->kind == STEAD_CHECK_LINE_CHILL_PREPARED)
    judged = judge_cooling (line, reading, &found, error);
  else
    judged = judge_rows (line, reading, &found, error);
  if (!judged)
    return FALSE;
  judge_own (line, reading, &found);
  if (found.outcome == STEAD_CHECK_NOT_MET)
    {
      found.correction = stead_check_correction (table, line, reading);
      found.holds_lot = line->food >= 0 || line->kind == STEAD_CHECK_LINE_EGGS_COLD;
    }
  *out = found;
  return TRUE;
}
