/* stead-event-scores.c - the scores of an event as lines that can be compared. */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "answer/stead-event-scores.h"
#include "answer/stead-words.h"

static void
line_clear (gpointer data)
{
  SteadScoreLine *line = data;

  g_free ((char *) line->name);
  g_free ((SteadScorePoint *) line->points);
}

static void
clear (gpointer data)
{
  SteadEventScores *self = data;

  g_array_unref (self->lines);
  g_free (self->text);
}

SteadEventScores *
stead_event_scores_ref (SteadEventScores *self)
{
  return g_atomic_rc_box_acquire (self);
}

void
stead_event_scores_free (SteadEventScores *self)
{
  if (self != NULL)
    g_atomic_rc_box_release_full (self, clear);
}

/* "Placing, Maya R.", "Written test", "The team" */
static char *
name_of (const SteadEventScore *score)
{
  if (score->part != NULL && score->person_name != NULL)
    /* Translators: a part of an event, who did it: "Placing, Maya R.". */
    return g_strdup_printf (C_("scores", "%1$s, %2$s"), score->part, score->person_name);
  if (score->part != NULL)
    return g_strdup (score->part);
  return g_strdup (score->person_name != NULL ? score->person_name : C_("scores", "The team"));
}

static SteadScoreLine *
line_of (GArray                *lines,
         const SteadEventScore *score)
{
  g_autofree char *name = name_of (score);
  SteadScoreLine fresh = { 0 };

  for (guint i = 0; i < lines->len; i++)
    if (g_str_equal (g_array_index (lines, SteadScoreLine, i).name, name))
      return &g_array_index (lines, SteadScoreLine, i);
  fresh.name = g_steal_pointer (&name);
  g_array_append_val (lines, fresh);
  return &g_array_index (lines, SteadScoreLine, lines->len - 1);
}

static void
add_score (GArray                *lines,
           const SteadEventScore *score)
{
  SteadScoreLine *line = line_of (lines, score);
  SteadScorePoint *points = g_renew (SteadScorePoint, (SteadScorePoint *) line->points, line->n + 1);

  points[line->n++] = (SteadScorePoint) { score->day, score->score / score->out_of, score->is_final };
  line->points = points;
}

static char *
say_line (const SteadScoreLine *line)
{
  g_autofree char *first = stead_words_percent (line->points[0].frac, 0);
  g_autofree char *last = stead_words_percent (line->points[line->n - 1].frac, 0);

  if (line->n == 1)
    /* Translators: "Written test", "81%". */
    return g_strdup_printf (C_("scores", "%1$s: %2$s"), line->name, last);
  /* Translators: "Placing, Maya R.", "61%", "72%". */
  return g_strdup_printf (C_("scores", "%1$s: from %2$s to %3$s"), line->name, first, last);
}

static char *
say (const GArray *lines)
{
  g_autoptr(GString) all = g_string_new (NULL);

  if (lines->len == 0)
    return NULL;
  for (guint i = 0; i < lines->len; i++)
    {
      g_autofree char *one = say_line (&g_array_index (lines, SteadScoreLine, i));

      g_string_append_printf (all, i > 0 ? " · %s" : "%s", one);
    }
  /* Translators: %s is a list: "Placing, Maya R.: from 61% to 72% · Written test: 81%". */
  return g_strdup_printf (_("Share of the points: %s"), all->str);
}

SteadEventScores *
stead_event_scores_new (const GPtrArray *scores,
                        SteadDay         event)
{
  SteadEventScores *self = NULL;

  g_return_val_if_fail (scores != NULL, NULL);
  self = g_atomic_rc_box_new0 (SteadEventScores);
  self->lines = g_array_new (FALSE, FALSE, sizeof (SteadScoreLine));
  g_array_set_clear_func (self->lines, line_clear);
  for (guint i = 0; i < scores->len; i++)
    add_score (self->lines, scores->pdata[i]);
  self->text = say (self->lines);
  if (self->lines->len > STEAD_SCORE_MOST_LINES)
    g_array_remove_range (self->lines, 0, self->lines->len - STEAD_SCORE_MOST_LINES);
  self->series = (SteadScoreSeries) { (const SteadScoreLine *) (gpointer) self->lines->data, (int) self->lines->len, event,
                                      _("percent of the points"), C_("mark in a chart", "the event") };
  return self;
}

char *
stead_event_score_text (const SteadEventScore *score)
{
  g_autofree char *day = stead_day_format (score->day, STEAD_DAY_STYLE_SHORT);
  g_autofree char *name = name_of (score);
  g_autofree char *points = stead_number_format (score->score, 2);
  g_autofree char *out_of = stead_number_format (score->out_of, 2);

  /* Translators: a day, whose score or of which part, points reached, points to win. */
  return g_strdup_printf (C_("scores", "%1$s: %2$s, %3$s of %4$s"), day, name, points, out_of);
}

char *
stead_event_scores_hint (const SteadEventScores *self,
                         int                     i,
                         gsize                   k)
{
  const SteadScoreLine *line = &self->series.lines[i];
  g_autofree char *day = stead_day_format (line->points[k].day, STEAD_DAY_STYLE_SHORT);
  g_autofree char *percent = stead_words_percent (line->points[k].frac, 0);

  /* Translators: whose score or of which part, a day, "72%". */
  return g_strdup_printf (C_("hint in a chart", "%1$s, %2$s: %3$s"), line->name, day, percent);
}
