/* stead-cooling-paper.c - the pots of a checklist that cool: readings, marks and the curve. */
#include "config.h"

#include "answer/stead-check-answer.h"
#include "answer/stead-subject.h"
#include "core/stead-clock.h"
#include "draw/stead-cooling-chart.h"
#include "paper/stead-paper-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#define FIGURE_HEIGHT 220.0
#define FIGURE_TEXT 8.0

#define BLANK STEAD_PAGES_BOX

/* How many readings a pot without any may need. */
#define BLANK_ROWS 8

/* --- the curve ----------------------------------------------------------------------- */

typedef struct
{
  SteadCoolingAnswer *cooling;
  gboolean            celsius;
} Figure;

static void
figure_free (gpointer data)
{
  Figure *figure = data;

  stead_cooling_answer_free (figure->cooling);
  g_free (figure);
}

/* "70 °F by 10:33 AM" */
static char *
mark_text (const SteadCoolingSeries *series,
           const SteadCoolingDue    *due,
           gboolean                  celsius)
{
  int minute = (series->first_of_day + (int) floor (due->due_min + 1e-6)) % (24 * 60);
  g_autofree char *time = stead_minute_format (minute);
  g_autofree char *number = stead_number_format (celsius ? (due->temp_f - 32) / 1.8 : due->temp_f, celsius ? 1 : 0);

  /* Translators: a temperature that must be reached, a time of day. */
  return celsius ? g_strdup_printf (_("%1$s °C by %2$s"), number, time) : g_strdup_printf (_("%1$s °F by %2$s"), number, time);
}

static void
figure_paint (cairo_t  *cr,
              double    width,
              double    height,
              gpointer  data)
{
  const Figure *figure = data;
  const SteadDrawStyle style = { STEAD_SCHEME_PRINT, FIGURE_TEXT, NULL, NULL };
  SteadCoolingWords words = { .unit = figure->celsius ? _("°C in the middle of the pot") : _("°F in the middle of the pot"),
                              .celsius = figure->celsius, .expected = C_("curve", "expected"),
                              .too_warm = C_("chart", "too warm"), .now = C_("chart", "now"),
                              .marks = { "", "" } };
  char *marks[STEAD_COOLING_MARKS] = { NULL };
  SteadCoolingLayout layout;

  for (gsize i = 0; i < figure->cooling->series.n_marks; i++)
    words.marks[i] = marks[i] = mark_text (&figure->cooling->series, &figure->cooling->series.marks[i], figure->celsius);

  stead_cooling_chart_layout (cr, &figure->cooling->series, &words, &style, width, height, &layout);
  stead_cooling_chart_paint (cr, &figure->cooling->series, &words, &style, &layout);
  for (gsize i = 0; i < G_N_ELEMENTS (marks); i++)
    g_free (marks[i]);
}

/* Takes the forecast over. */
static void
add_curve (SteadPages        *pages,
           SteadCheckPotRead *pot,
           gboolean           celsius)
{
  Figure *figure;

  if (pot->cooling == NULL || pot->cooling->kept_readings == NULL || pot->cooling->kept_readings->len < 2)
    return;
  figure = g_new0 (Figure, 1);
  figure->cooling = g_steal_pointer (&pot->cooling);
  figure->celsius = celsius;
  stead_pages_add_figure (pages, FIGURE_HEIGHT, figure_paint, figure, figure_free);
}

/* --- the readings ----------------------------------------------------------------------- */

static void
add_table (SteadPages *pages)
{
  const SteadPagesColumn columns[] = {
    { C_("column of a cooling log", "Time"), STEAD_ALIGN_LEFT, 0.5 },
    { C_("column of a cooling log", "Reading"), STEAD_ALIGN_LEFT, 0.7 },
    { C_("column of a cooling log", "Who"), STEAD_ALIGN_LEFT, 0.4 },
    { C_("column of a cooling log", "What was done"), STEAD_ALIGN_LEFT, 2 },
  };

  stead_pages_add_table (pages, columns, G_N_ELEMENTS (columns));
}

static void
add_readings (SteadPages              *pages,
              const SteadCheckedLine  *line,
              const SteadCheckPotRead *pot)
{
  gint64 pot_id = pot->pot != NULL ? pot->pot->id : 0;
  guint n = 0;

  add_table (pages);
  for (guint i = 0; i < line->reads->len; i++)
    {
      const SteadCheckRead *read = line->reads->pdata[i];
      g_autofree char *value = NULL;

      if (read->shown->pot_id != pot_id)
        continue;
      n++;
      value = read->state == STEAD_READ_CORRECTED ? g_strdup_printf (_("%s (corrected)"), read->value)
                                                  : g_strdup (read->value);
      stead_pages_add_row (pages, STEAD_ROW_PLAIN, STEAD_PAGES_NO_KEY,
                           (const char *[]) { read->time, value, read->who, read->done });
    }
  for (; n < BLANK_ROWS && pot->cooling == NULL; n++)
    stead_pages_add_row (pages, STEAD_ROW_PLAIN, STEAD_PAGES_NO_KEY, (const char *[]) { BLANK, BLANK, BLANK, BLANK });
}

/* --- a pot ---------------------------------------------------------------------------------- */

static void
add_pot (SteadPages             *pages,
         const SteadCheckAnswer *answer,
         const SteadCheckedLine *line,
         SteadCheckPotRead      *pot)
{
  g_autofree char *heading = line->food != NULL && g_strcmp0 (line->food, pot->name) != 0
                             ? g_strdup_printf ("%s, %s", line->food, pot->name) : g_strdup (pot->name);

  stead_pages_add_heading (pages, heading != NULL ? heading : "");
  if (pot->cooling != NULL)
    {
      stead_pages_add_note (pages, pot->cooling->sentence);
      if (pot->cooling->action != NULL)
        stead_pages_add_caution (pages, pot->cooling->action);
      for (guint i = 0; i < pot->cooling->notes->len; i++)
        stead_pages_add_note (pages, pot->cooling->notes->pdata[i]);
    }
  add_readings (pages, line, pot);
  add_curve (pages, pot, answer->farm->units == STEAD_UNITS_METRIC);
}

static void
add_line (SteadPages             *pages,
          const SteadCheckAnswer *answer,
          const SteadCheckedLine *line)
{
  SteadCheckPotRead none = { .name = line->food };

  stead_pages_add_text (pages, line->text);
  stead_pages_add_note (pages, line->source);
  for (guint i = 0; i < line->pots->len; i++)
    add_pot (pages, answer, line, line->pots->pdata[i]);
  if (line->pots->len == 0)
    add_pot (pages, answer, line, &none);
}

SteadPages *
stead_cooling_paper_new (SteadStore               *store,
                         const char               *of,
                         const SteadPaperOptions  *options,
                         GError                  **error)
{
  g_autoptr(SteadImprint) imprint = stead_imprint_new (store, error);
  g_autoptr(SteadCheckAnswer) answer = NULL;
  g_autoptr(SteadPages) pages = NULL;
  g_autofree char *title = NULL;
  g_autofree char *day = NULL;
  guint n = 0;
  gint64 list_id;

  if (imprint == NULL || !stead_subject_checklist (store, of, &list_id, error))
    return NULL;
  answer = stead_check_answer_new (store, list_id, error);
  if (answer == NULL)
    return NULL;
  /* Translators: title of a paper; the name of a checklist. */
  title = g_strdup_printf (_("%s: cooling log"), answer->list->name);
  day = stead_day_format (answer->list->day, STEAD_DAY_STYLE_MEDIUM);
  pages = stead_pages_new (imprint, title, day);
  stead_pages_add_title (pages, title);
  stead_pages_add_lead (pages, _("Probe the middle of the pot. Write down each reading, and whatever is done to cool it faster."));
  stead_pages_add_caution (pages, answer->caution);
  for (guint i = 0; i < answer->lines->len; i++)
    {
      const SteadCheckedLine *line = answer->lines->pdata[i];

      if (!stead_list_line_is_cooling (line->line))
        continue;
      add_line (pages, answer, line);
      n++;
    }
  if (n == 0)
    stead_pages_add_text (pages, _("Nothing on this list has to be cooled."));
  stead_pages_settle (pages);
  return g_steal_pointer (&pages);
}
