/* stead-check-list.c - a checklist in memory: its parts belong to it. */
#include "config.h"

#include <math.h>
#include <string.h>

#include "store/stead-check-private.h"

/* Longer than any hold. */
#define LONG_ENOUGH_S 1e9

static void
food_free (gpointer food)
{
  g_free (food);
}

static void
line_free (gpointer data)
{
  SteadListLine *line = data;

  g_ptr_array_unref (line->rows);
  g_ptr_array_unref (line->pots);
  g_ptr_array_unref (line->readings);
  g_free ((gpointer) line->often_limit);
  g_free (line);
}

static void
stop_free (gpointer data)
{
  SteadListStop *stop = data;

  g_free ((gpointer) stop->row);
  g_free (stop);
}

SteadCheckList *
stead_check_list_new (void)
{
  SteadCheckList *list = g_new0 (SteadCheckList, 1);

  list->day = STEAD_DAY_NONE;
  list->signed_at = STEAD_TIME_NONE;
  list->foods = g_ptr_array_new_with_free_func (food_free);
  list->answers = g_ptr_array_new_with_free_func (g_free);
  list->lines = g_ptr_array_new_with_free_func (line_free);
  list->stops = g_ptr_array_new_with_free_func (stop_free);
  list->strings = g_string_chunk_new (1024);
  list->name = "";
  list->edition = "";
  return list;
}

void
stead_check_list_free (SteadCheckList *list)
{
  if (list == NULL)
    return;
  g_ptr_array_unref (list->foods);
  g_ptr_array_unref (list->answers);
  g_ptr_array_unref (list->lines);
  g_ptr_array_unref (list->stops);
  g_string_chunk_free (list->strings);
  g_free (list);
}

const char *
stead_check_list_keep (SteadCheckList *list,
                       const char     *text)
{
  g_return_val_if_fail (list != NULL, NULL);
  return text != NULL ? g_string_chunk_insert_const (list->strings, text) : NULL;
}

SteadListFood *
stead_check_list_add_food (SteadCheckList *list,
                           const char     *name)
{
  SteadListFood *food = g_new0 (SteadListFood, 1);

  g_return_val_if_fail (list != NULL && name != NULL, food);
  food->name = stead_check_list_keep (list, name);
  g_ptr_array_add (list->foods, food);
  return food;
}

void
stead_check_list_add_answer (SteadCheckList *list,
                             int             food,
                             const char     *question,
                             const char     *answer)
{
  SteadListAnswer *row;

  g_return_if_fail (list != NULL && question != NULL && answer != NULL);
  row = g_new0 (SteadListAnswer, 1);
  row->food = food;
  row->question = stead_check_list_keep (list, question);
  row->answer = stead_check_list_keep (list, answer);
  g_ptr_array_add (list->answers, row);
}

SteadListLine *
stead_check_list_add_line (SteadCheckList *list,
                           int             food,
                           const char     *topic)
{
  SteadListLine *line = g_new0 (SteadListLine, 1);

  line->rows = g_ptr_array_new_with_free_func (g_free);
  line->pots = g_ptr_array_new_with_free_func (g_free);
  line->readings = g_ptr_array_new_with_free_func ((GDestroyNotify) stead_shown_free);
  line->food = food;
  line->topic = stead_check_list_keep (list, topic);
  line->stage = line->tool = line->often = line->who = "";
  line->measure = STEAD_MEASURE_DONE;
  line->own_least_c = line->own_most_c = line->own_hold_s = line->every_s = NAN;
  line->due_at = STEAD_TIME_NONE;
  g_ptr_array_add (list->lines, line);
  return line;
}

SteadLimit *
stead_check_limit_copy (SteadCheckList   *list,
                        const SteadLimit *limit)
{
  SteadLimit *copy = g_memdup2 (limit, sizeof *limit);
  const char **texts[] = { &copy->id, &copy->process, &copy->subject, &copy->when, &copy->measure, &copy->word,
                           &copy->unit, &copy->hazard, &copy->source, &copy->where, &copy->version, &copy->status,
                           &copy->note, &copy->replaces };

  for (gsize i = 0; i < G_N_ELEMENTS (texts); i++)
    *texts[i] = stead_check_list_keep (list, *texts[i]);
  return copy;
}

void
stead_check_list_add_row (SteadCheckList   *list,
                          SteadListLine    *line,
                          const SteadLimit *row)
{
  g_return_if_fail (list != NULL && line != NULL && row != NULL);
  g_ptr_array_add (line->rows, stead_check_limit_copy (list, row));
}

void
stead_check_list_set_often (SteadCheckList   *list,
                            SteadListLine    *line,
                            const SteadLimit *row)
{
  g_return_if_fail (list != NULL && line != NULL);
  g_free ((gpointer) line->often_limit);
  line->often_limit = row != NULL ? stead_check_limit_copy (list, row) : NULL;
  line->every_s = row != NULL ? stead_limit_value_in (row, "s") : NAN;
}

SteadListStop *
stead_check_list_add_stop (SteadCheckList   *list,
                           int               food,
                           const char       *kind,
                           const char       *way,
                           const SteadLimit *row)
{
  SteadListStop *stop = g_new0 (SteadListStop, 1);

  stop->food = food;
  stop->kind = stead_check_list_keep (list, kind);
  stop->way = stead_check_list_keep (list, way);
  stop->row = stead_check_limit_copy (list, row);
  stop->settled_at = STEAD_TIME_NONE;
  g_ptr_array_add (list->stops, stop);
  return stop;
}

SteadListLine *
stead_check_list_find_line (const SteadCheckList *list,
                            gint64                line_id)
{
  g_return_val_if_fail (list != NULL, NULL);
  for (guint i = 0; i < list->lines->len; i++)
    if (((SteadListLine *) list->lines->pdata[i])->id == line_id)
      return list->lines->pdata[i];
  return NULL;
}

const SteadShown *
stead_check_list_find_reading (const SteadCheckList *list,
                               gint64                reading_id)
{
  g_return_val_if_fail (list != NULL, NULL);
  for (guint i = 0; i < list->lines->len; i++)
    {
      const SteadListLine *line = list->lines->pdata[i];

      for (guint n = 0; n < line->readings->len; n++)
        if (((const SteadShown *) line->readings->pdata[n])->id == reading_id)
          return line->readings->pdata[n];
    }
  return NULL;
}

/* --- judging ---------------------------------------------------------------------- */

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

/* How far it is off in melting ice, against the row that says how far it may be. */
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
  gboolean met = (isnan (line->own_least_c) || stead_limit_compare (shown->value, line->own_least_c) >= 0) &&
                 (isnan (line->own_most_c) || stead_limit_compare (shown->value, line->own_most_c) <= 0) &&
                 (!(line->own_hold_s > 0) || stead_limit_compare (shown->held_s, line->own_hold_s) >= 0);

  if (met || !is_temperature (line->unit) || out->verdict == STEAD_LIMIT_NOT_MET)
    return;
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
  if (stead_list_line_is_cooling (line) || g_str_equal (line->topic, "sanitizer"))
    return FALSE;
  if (g_str_equal (line->measure, STEAD_MEASURE_DONE))
    {
      *out = (SteadJudgement) { .value = shown->value, .verdict = shown->value > 0 ? STEAD_LIMIT_MET : STEAD_LIMIT_NOT_MET };
      judged = TRUE;
    }
  else if (g_str_equal (line->measure, STEAD_SHOWN_ICE_BATH))
    judged = judge_error (line, stead_fahrenheit_from_celsius (shown->value) - 32, out, &decided);
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
