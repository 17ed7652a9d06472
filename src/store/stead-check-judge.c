/* stead-check-judge.c - one reading against the limits that its line kept.
 *
 * What belongs together is judged together: the pot that cools by all that was read of
 * it so far, the sanitizer by what was measured of it at one time.
 */
#include "config.h"

#include <math.h>
#include <string.h>

#include "core/stead-cooling.h"
#include "core/stead-us-units.h"
#include "store/stead-check-private.h"

/* Longer than any hold: what was hot enough would be met if it was held. */
#define LONG_ENOUGH_S 1e9

/* About how cold the air around a pot is, °F: only for reading between two readings when the
 * clock began.  Common practice, no source. */
#define ABOUT_AIR_F 38

/* Where the clock of cooked food starts, °F: FDA Food Code 2022, §3-501.14(A).  It is no limit,
 * so a line does not keep it; /answer/check/clock-start holds it against its row. */
#define COOKED_CLOCK_F 135

static gboolean
is_temperature (const char *unit)
{
  return g_strcmp0 (unit, "F") == 0 || g_strcmp0 (unit, "C") == 0;
}

gboolean
stead_list_line_is_cooling (const SteadListLine *line)
{
  g_return_val_if_fail (line != NULL, FALSE);
  return g_str_equal (line->topic, "cool");
}

static SteadLimitReading
reading_of (const SteadListLine   *line,
            const SteadShown      *shown,
            const SteadInstrument *instrument)
{
  SteadLimitReading reading = { .value = shown->value, .unit = line->unit, .time_s = NAN };

  if (is_temperature (line->unit))
    reading.unit = "C";
  if (shown->held_s > 0)
    reading.time_s = shown->held_s;
  if (instrument != NULL)
    {
      reading.error = isnan (instrument->error) ? 0 : instrument->error;
      reading.step = isnan (instrument->step) ? 0 : instrument->step;
    }
  return reading;
}

/* How far it is off in melting ice or in boiling water, against the row that says how far it may be. */
static gboolean
judge_error (const SteadListLine  *line,
             double                off_f,
             SteadJudgement       *out,
             const SteadLimit    **out_limit)
{
  for (guint i = 0; i < line->rows->len; i++)
    {
      const SteadLimit *row = line->rows->pdata[i];
      gboolean in_c = g_str_equal (row->unit, "Cdiff");

      if (row->direction != STEAD_LIMIT_AT_MOST || !g_str_equal (row->measure, "error"))
        continue;
      *out_limit = row;
      *out = (SteadJudgement) { .value = in_c ? fabs (off_f) / 1.8 : fabs (off_f) };
      out->margin = row->value - out->value;
      out->verdict = stead_limit_compare (out->margin, 0) >= 0 ? STEAD_LIMIT_MET : STEAD_LIMIT_NOT_MET;
      return TRUE;
    }
  return FALSE;
}

/* The recipe may ask for more than the tables do. */
static void
judge_own (const SteadListLine *line,
           const SteadShown    *shown,
           SteadJudgement      *out,
           const SteadLimit   **out_limit)
{
  gboolean warm = (isnan (line->own_least_c) || stead_limit_compare (shown->value, line->own_least_c) >= 0) &&
                  (isnan (line->own_most_c) || stead_limit_compare (shown->value, line->own_most_c) <= 0);
  gboolean timed = shown->held_s > 0;

  if (!is_temperature (line->unit) || out->verdict == STEAD_LIMIT_NOT_MET)
    return;
  if (warm && (!(line->own_hold_s > 0) || (timed && stead_limit_compare (shown->held_s, line->own_hold_s) >= 0)))
    return;
  if (warm && !timed)
    {
      out->verdict = STEAD_LIMIT_WITHIN_ERROR;
      out->short_s = MAX (out->short_s, line->own_hold_s);
      return;
    }
  out->verdict = STEAD_LIMIT_NOT_MET;
  *out_limit = NULL;
}

/* Hot enough, and nobody timed it: not missed, and not met before it is. */
static void
judge_untimed (const SteadListLine      *line,
               const GPtrArray          *rows,
               const SteadLimitReading  *reading,
               SteadJudgement           *out,
               const SteadLimit        **out_limit)
{
  SteadLimitReading held = *reading;
  SteadJudgement judgement;
  const SteadLimit *decided;

  held.time_s = LONG_ENOUGH_S;
  if (out->verdict != STEAD_LIMIT_NOT_MET || !isnan (reading->time_s) ||
      !stead_limit_rows_judge (rows, line->needs_all, &held, &judgement, &decided, NULL) ||
      judgement.verdict == STEAD_LIMIT_NOT_MET || decided->time_direction != STEAD_LIMIT_AT_LEAST)
    return;
  *out = judgement;
  out->verdict = STEAD_LIMIT_WITHIN_ERROR;
  out->short_s = decided->time_s;
  *out_limit = decided;
}

/* --- a pot that cools --------------------------------------------------------------- */

/* The marks of the line; where the clock of cooked food starts is the rule's own. */
static gboolean
cooling_rule (const SteadListLine *line,
              SteadCoolingRule    *out)
{
  *out = (SteadCoolingRule) { .start_f = COOKED_CLOCK_F };
  for (guint i = 0; i < line->rows->len && out->n_marks < STEAD_COOLING_MARKS; i++)
    {
      const SteadLimit *row = line->rows->pdata[i];

      if (row->direction != STEAD_LIMIT_AT_MOST || !row->has_time || !g_str_equal (row->unit, "F"))
        continue;
      out->marks[out->n_marks++] = (SteadCoolingMark) {
        .temp_f = row->value, .within_min = row->time_s / 60,
        .from_previous = row->when != NULL && strstr (row->when, "stage=stage_2") != NULL,
      };
    }
  return out->n_marks > 0;
}

/* What was read of the pot of @shown up to it, @shown included; not what it corrects. */
static GArray *
pot_readings (const SteadListLine *line,
              const SteadShown    *shown)
{
  GArray *readings = g_array_new (FALSE, TRUE, sizeof (SteadCoolingReading));
  SteadCoolingReading last = { (double) shown->at / 60, stead_fahrenheit_from_celsius (shown->value), FALSE };

  for (guint i = 0; i < line->readings->len; i++)
    {
      const SteadShown *other = line->readings->pdata[i];
      SteadCoolingReading row = { (double) other->at / 60, stead_fahrenheit_from_celsius (other->value), FALSE };

      if (!other->corrected && other->pot_id == shown->pot_id && other->id != shown->corrects_id && other->at < shown->at)
        g_array_append_val (readings, row);
    }
  g_array_append_val (readings, last);
  return readings;
}

static guint
count_missed (const SteadCoolingRule *rule,
              const GArray           *readings,
              gsize                   n)
{
  const SteadCoolingReading *rows = (const SteadCoolingReading *) (void *) readings->data;
  SteadCoolingMarkState states[STEAD_COOLING_MARKS];
  double clock_min;
  guint missed = 0;

  if (n == 0 || rows[n - 1].temp_f > rule->start_f)
    return 0;
  clock_min = stead_cooling_clock (rows, n, rule->start_f, ABOUT_AIR_F, NULL);
  stead_cooling_mark_states (rule, rows, n, clock_min, states);
  for (gsize i = 0; i < rule->n_marks; i++)
    missed += states[i] == STEAD_COOLING_MARK_MISSED || states[i] == STEAD_COOLING_MARK_UNPROVEN ? 1 : 0;
  return missed;
}

/* The reading that shows that a mark was missed is the one that failed; those after it of the
 * same pot tell nothing new until the next mark is missed too. */
static gboolean
judge_cooling (const SteadListLine  *line,
               const SteadShown     *shown,
               SteadJudgement       *out,
               const SteadLimit    **out_limit)
{
  g_autoptr(GArray) readings = pot_readings (line, shown);
  SteadCoolingRule rule;
  guint missed;

  if (!cooling_rule (line, &rule))
    return FALSE;
  missed = count_missed (&rule, readings, readings->len);
  if (missed <= count_missed (&rule, readings, readings->len - 1))
    return FALSE;
  *out = (SteadJudgement) { .value = stead_fahrenheit_from_celsius (shown->value), .verdict = STEAD_LIMIT_NOT_MET };
  *out_limit = line->rows->pdata[MIN (missed, line->rows->len) - 1];
  return TRUE;
}

/* --- a sanitizer -------------------------------------------------------------------------- */

gboolean
stead_list_line_is_sanitizer (const SteadListLine *line)
{
  g_return_val_if_fail (line != NULL, FALSE);
  return g_str_equal (line->topic, "sanitizer");
}

/* Hot water is measured by its warmth alone. */
gboolean
stead_list_line_is_mixed (const SteadListLine *line)
{
  g_return_val_if_fail (line != NULL, FALSE);
  return stead_list_line_is_sanitizer (line) && g_strcmp0 (line->subject, "hot_water") != 0;
}

gboolean
stead_list_line_is_timed (const SteadListLine *line)
{
  g_return_val_if_fail (line != NULL, FALSE);
  if (line->own_hold_s > 0)
    return TRUE;
  for (guint i = 0; i < line->rows->len; i++)
    {
      const SteadLimit *row = line->rows->pdata[i];

      if (row->has_time && row->time_direction == STEAD_LIMIT_AT_LEAST && g_str_equal (row->measure, line->measure))
        return TRUE;
    }
  return FALSE;
}

void
stead_list_line_solution (const SteadListLine *line,
                          const SteadShown    *shown,
                          SteadSolution       *out)
{
  g_return_if_fail (line != NULL && shown != NULL && out != NULL);

  *out = (SteadSolution) { line->subject, NAN, NAN, NAN, NAN };
  for (guint i = 0; i < line->readings->len; i++)
    {
      const SteadShown *other = line->readings->pdata[i];

      if (other->at != shown->at || other->corrected)
        continue;
      if (g_str_equal (other->kind, "strength"))
        out->strength_mgl = other->value;
      else if (g_str_equal (other->kind, "ph"))
        out->ph = other->value;
      else if (g_str_equal (other->kind, "hardness"))
        out->hardness_mgl = other->value;
      else
        out->temp_f = stead_fahrenheit_from_celsius (other->value);
    }
  if (g_str_equal (shown->kind, line->measure))
    out->temp_f = stead_fahrenheit_from_celsius (shown->value);
}

static double
measured (const SteadSolution *solution,
          const char          *measure)
{
  if (g_str_has_prefix (measure, "strength"))
    return solution->strength_mgl;
  return g_str_equal (measure, "ph") ? solution->ph : g_str_equal (measure, "hardness") ? solution->hardness_mgl
         : solution->temp_f;
}

/* Of chlorine the warmth that its strength and pH need; of the others each measure by itself.
 * The warmth stands for all: it is noted last. */
static gboolean
judge_solution (const SteadListLine  *line,
                const SteadShown     *shown,
                SteadJudgement       *out,
                const SteadLimit    **out_limit)
{
  SteadSolution solution;
  gboolean judged = FALSE, unknown = FALSE;

  if (!g_str_equal (shown->kind, line->measure))
    return FALSE;
  stead_list_line_solution (line, shown, &solution);
  for (guint i = 0; i < line->rows->len; i++)
    {
      const SteadLimit *row = line->rows->pdata[i];
      const SteadLimitFact facts[] = { { "strength_mgl", NULL, solution.strength_mgl }, { "ph", NULL, solution.ph }, { NULL } };
      gboolean warm = g_str_equal (row->unit, "F");
      const SteadLimitReading reading = { measured (&solution, row->measure), row->unit, 0, 0, NAN };
      SteadJudgement found;

      unknown |= isnan (reading.value) && !g_str_equal (row->measure, "hardness");
      if (isnan (reading.value) || row->has_time || !stead_limit_judge (row, &reading, &found, NULL))
        continue;
      if (!line->needs_all && warm && (isnan (solution.strength_mgl) || isnan (solution.ph)))
        return FALSE;
      if (!line->needs_all && !stead_limit_fits (row, facts))
        found.verdict = STEAD_LIMIT_NOT_MET;
      if (judged && (found.verdict == STEAD_LIMIT_NOT_MET) != line->needs_all)
        continue;
      *out = found;
      *out_limit = row;
      judged = TRUE;
    }
  return judged && (!unknown || out->verdict == STEAD_LIMIT_NOT_MET);
}

/* --- any line ---------------------------------------------------------------------------- */

gboolean
stead_list_line_judge (const SteadListLine    *line,
                       const SteadShown       *shown,
                       const SteadInstrument  *instrument,
                       SteadJudgement         *out,
                       const SteadLimit      **out_limit)
{
  SteadLimitReading reading;
  g_autoptr(GPtrArray) rows = g_ptr_array_new ();
  const SteadLimit *decided = NULL;
  gboolean judged;

  g_return_val_if_fail (line != NULL && shown != NULL && out != NULL, FALSE);
  if (stead_list_line_is_cooling (line))
    judged = judge_cooling (line, shown, out, &decided);
  else if (stead_list_line_is_mixed (line) && !g_str_equal (line->measure, STEAD_MEASURE_DONE))
    judged = judge_solution (line, shown, out, &decided);
  else if (g_str_equal (line->measure, STEAD_MEASURE_DONE))
    {
      *out = (SteadJudgement) { .value = shown->value, .verdict = shown->value > 0 ? STEAD_LIMIT_MET : STEAD_LIMIT_NOT_MET };
      judged = TRUE;
    }
  else if (g_str_equal (line->measure, STEAD_SHOWN_ICE_BATH))
    judged = judge_error (line, stead_fahrenheit_from_celsius (shown->value) - 32, out, &decided);
  else if (g_str_equal (line->measure, STEAD_SHOWN_BOILING_WATER))
    judged = !isnan (line->boils_at_f) &&
             judge_error (line, stead_fahrenheit_from_celsius (shown->value) - line->boils_at_f, out, &decided);
  else
    {
      for (guint i = 0; i < line->rows->len; i++)
        if (g_str_equal (((const SteadLimit *) line->rows->pdata[i])->measure, line->measure))
          g_ptr_array_add (rows, line->rows->pdata[i]);
      reading = reading_of (line, shown, instrument);
      judged = reading.unit != NULL && stead_limit_rows_judge (rows, line->needs_all, &reading, out, &decided, NULL);
      if (judged)
        judge_untimed (line, rows, &reading, out, &decided);
      if (judged)
        judge_own (line, shown, out, &decided);
    }
  if (out_limit != NULL)
    *out_limit = decided;
  return judged;
}

/* --- boiling water ----------------------------------------------------------------------------- */

static double
figure_of (const SteadListLine *line,
           const char          *measure)
{
  for (guint i = 0; i < line->rows->len; i++)
    if (g_str_equal (((const SteadLimit *) line->rows->pdata[i])->measure, measure))
      return ((const SteadLimit *) line->rows->pdata[i])->value;
  return NAN;
}

/* By the two rows that the line keeps: at sea level, and less for each 1,000 feet. */
gboolean
stead_check_find_boiling (SteadStore      *store,
                          SteadCheckList  *list,
                          GError         **error)
{
  static const char sql[] = "SELECT coalesce (elevation_m, 0) FROM farm";
  g_autoptr(SteadStmt) stmt = NULL;
  double elevation_ft = 0;
  int found = 0;

  for (guint i = 0; i < list->lines->len; i++)
    {
      SteadListLine *line = list->lines->pdata[i];

      if (!g_str_equal (line->measure, STEAD_SHOWN_BOILING_WATER))
        continue;
      if (stmt == NULL)
        {
          stmt = stead_store_prepare (store, sql, error);
          found = stmt != NULL ? stead_store_step (store, stmt, error) : -1;
          if (found < 0)
            return FALSE;
          elevation_ft = found == 1 ? sqlite3_column_double (stmt, 0) / STEAD_FOOT_M : 0;
        }
      line->boils_at_f = figure_of (line, "sea_level") - figure_of (line, "drop_per_1000_ft") * elevation_ft / 1000;
    }
  return TRUE;
}
