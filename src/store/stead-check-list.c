/* stead-check-list.c - a checklist in memory: its parts belong to it. */
#include "config.h"

#include <math.h>
#include <string.h>

#include "store/stead-check-private.h"

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
  line->own_least_c = line->own_most_c = line->own_hold_s = line->every_s = line->boils_at_f = NAN;
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
