/* stead-check-paper.c - a food-safety checklist on paper, filled in or to be filled in by hand.
 *
 * Each line names its limit, and its source with its version by number; both values of a reading
 * that was corrected are seen.
 */
#include "config.h"

#include "answer/stead-check-answer.h"
#include "answer/stead-subject.h"
#include "paper/stead-paper-private.h"

#include <glib/gi18n-lib.h>

#define BLANK STEAD_PAGES_BOX

static void
add_row (SteadPages         *pages,
         SteadRowLook        look,
         const char * const *cells)
{
  stead_pages_add_row (pages, look, STEAD_PAGES_NO_KEY, cells);
}

/* --- lines ---------------------------------------------------------------------------- */

/* Where limits are from, each named once; lines point to it by its number. */
static guint
source_number (GPtrArray  *sources,
               const char *source)
{
  guint at;

  if (!g_ptr_array_find_with_equal_func (sources, source, g_str_equal, &at))
    {
      g_ptr_array_add (sources, g_strdup (source));
      at = sources->len - 1;
    }
  return at + 1;
}

/* "Cook … (Breakfast bowls) [3]", and what the recipe asks for besides. */
static char *
what_text (const SteadCheckedLine *line,
           GPtrArray              *sources)
{
  g_autofree char *food = line->food != NULL ? g_strdup_printf (" (%s)", line->food) : g_strdup ("");
  g_autofree char *own = line->own != NULL ? g_strdup_printf (" %s", line->own) : g_strdup ("");
  gboolean again = line->line->often_limit != NULL && line->often != NULL;
  g_autofree char *often = again ? g_strdup_printf (" – %s", line->often) : g_strdup ("");

  return g_strdup_printf ("%s%s%s%s [%u]", line->text, food, own, often, source_number (sources, line->source));
}

static void
add_sources (SteadPages      *pages,
             const GPtrArray *sources)
{
  stead_pages_add_heading (pages, _("Where the limits are from"));
  for (guint i = 0; i < sources->len; i++)
    {
      g_autofree char *text = g_strdup_printf ("[%u] %s", i + 1, (const char *) sources->pdata[i]);

      stead_pages_add_note (pages, text);
    }
}

static char *
reading_text (const SteadCheckRead *read)
{
  switch (read->state)
    {
    case STEAD_READ_FAILED:
    case STEAD_READ_HANDLED:
      /* Translators: a reading that did not meet its limit: "140 °F". */
      return g_strdup_printf (_("%s: not met"), read->value);
    case STEAD_READ_CORRECTED:
      /* Translators: a reading beside which a right one stands: "140 °F". */
      return g_strdup_printf (_("%s (corrected)"), read->value);
    case STEAD_READ_UNSURE:
      return g_strdup_printf ("%s ?", read->value);
    case STEAD_READ_MET:
    case STEAD_READ_OPEN:
    default:
      return read->late ? g_strdup_printf (_("%s (after the signing)"), read->value) : g_strdup (read->value);
    }
}

static void
add_read (SteadPages           *pages,
          const char           *what,
          const SteadCheckRead *read)
{
  g_autofree char *value = reading_text (read);
  g_autofree char *at = read->day != NULL ? g_strdup_printf ("%s %s", read->day, read->time) : g_strdup (read->time);
  g_autofree char *time = read->noted != NULL ? g_strdup_printf ("%s (%s)", at, read->noted) : g_strdup (at);
  g_autofree char *done = read->done != NULL ? g_strdup (read->done)
                          : read->state == STEAD_READ_FAILED ? g_strdup (read->todo) : g_strdup (read->shown->note);

  add_row (pages, what != NULL ? STEAD_ROW_PLAIN : STEAD_ROW_SOFT,
           (const char *[]) { what, value, time, read->who, done });
}

static void
add_filled (SteadPages             *pages,
            const SteadCheckedLine *line,
            GPtrArray              *sources)
{
  g_autofree char *what = what_text (line, sources);

  for (guint i = 0; i < line->reads->len; i++)
    add_read (pages, i == 0 ? what : NULL, line->reads->pdata[i]);
  if (line->reads->len == 0)
    add_row (pages, STEAD_ROW_PLAIN, (const char *[]) { what, "–", NULL, NULL, line->state_text });
}

/* In what it is read; a tick for what is only done. */
static char *
box_text (const SteadListLine *line,
          SteadUnitSystem      units)
{
  gboolean warmth = g_strcmp0 (line->unit, "F") == 0 || g_strcmp0 (line->unit, "C") == 0;
  const char *unit = warmth ? stead_unit_symbol (stead_unit_default (STEAD_DIMENSION_TEMPERATURE, units))
                     : line->unit != NULL ? line->unit : "";

  if (g_str_equal (line->measure, STEAD_MEASURE_DONE))
    /* Translators: on paper, beside what is ticked. */
    return g_strdup (C_("checklist on paper", "☐ done"));
  if (stead_list_line_is_mixed (line))
    return g_strconcat (STEAD_PAGES_BOX, g_strcmp0 (line->subject, "quat") == 0 ? "mg/L, mg/L, " : "mg/L, pH, ", unit, NULL);
  if (stead_list_line_is_timed (line))
    {
      /* Translators: on paper, what is written into a box: a unit, and for how long. */
      g_autofree char *timed = g_strdup_printf (C_("checklist on paper", "%s, for how long"), unit);

      return g_strconcat (STEAD_PAGES_BOX, timed, NULL);
    }
  return g_strconcat (STEAD_PAGES_BOX, unit, NULL);
}

/* What is read each so often has more room. */
static void
add_blank (SteadPages             *pages,
           const SteadCheckedLine *line,
           SteadUnitSystem         units,
           GPtrArray              *sources)
{
  g_autofree char *what = what_text (line, sources);
  g_autofree char *box = box_text (line->line, units);
  gboolean again = line->line->often_limit != NULL || g_str_equal (line->line->often, "portion");

  add_row (pages, STEAD_ROW_PLAIN, (const char *[]) { what, box, BLANK, BLANK, BLANK });
  for (int i = 0; again && i < 2; i++)
    add_row (pages, STEAD_ROW_PLAIN, (const char *[]) { NULL, box, BLANK, BLANK, BLANK });
}

static void
add_lines (SteadPages             *pages,
           const SteadCheckAnswer *answer,
           gboolean                blank,
           GPtrArray              *sources)
{
  const SteadPagesColumn columns[] = {
    { C_("column of a checklist", "What is checked, and against what"), STEAD_ALIGN_LEFT, 2.4 },
    { C_("column of a checklist", "Reading"), STEAD_ALIGN_LEFT, 0.8 },
    { C_("column of a checklist", "Time"), STEAD_ALIGN_LEFT, 0.45 },
    { C_("column of a checklist", "Who"), STEAD_ALIGN_LEFT, 0.3 },
    { C_("column of a checklist", "If it was not met: what was done"), STEAD_ALIGN_LEFT, 1.1 },
  };
  const char *stage = NULL;

  stead_pages_add_table (pages, columns, G_N_ELEMENTS (columns));
  for (guint i = 0; i < answer->lines->len; i++)
    {
      const SteadCheckedLine *line = answer->lines->pdata[i];

      if (blank && line->state == STEAD_CHECKED_LEFT_OUT)
        continue;
      if (g_strcmp0 (stage, line->line->stage) != 0)
        {
          stage = line->line->stage;
          add_row (pages, STEAD_ROW_HEAD,
                   (const char *[]) { line->known ? stead_check_stage_name (line->plan.stage) : stage, NULL, NULL, NULL,
                                      NULL });
        }
      if (blank)
        add_blank (pages, line, answer->farm->units, sources);
      else
        add_filled (pages, line, sources);
    }
}

/* --- stops and holds ------------------------------------------------------------------------ */

static void
add_stops (SteadPages             *pages,
           const SteadCheckAnswer *answer)
{
  if (answer->stops->len == 0)
    return;
  stead_pages_add_heading (pages, _("What cannot be sold as planned"));
  for (guint i = 0; i < answer->stops->len; i++)
    {
      const SteadCheckStopRead *stop = answer->stops->pdata[i];
      g_autofree char *why = stop->food != NULL ? g_strdup_printf ("%s: %s", stop->food, stop->text) : g_strdup (stop->text);
      g_autofree char *note = stop->way != NULL ? g_strdup_printf ("%s %s", stop->way, stop->source)
                                                : g_strdup (stop->source);

      stead_pages_add_caution (pages, why);
      stead_pages_add_note (pages, note);
      if (stop->settled != NULL)
        {
          g_autofree char *settled = g_strdup_printf (_("Done instead: %s"), stop->settled);

          stead_pages_add_note (pages, settled);
        }
    }
}

static void
add_holds (SteadPages             *pages,
           const SteadCheckAnswer *answer)
{
  if (answer->holds->len == 0)
    return;
  stead_pages_add_heading (pages, _("What was held back"));
  for (guint i = 0; i < answer->holds->len; i++)
    {
      const SteadHold *hold = answer->holds->pdata[i];
      g_autofree char *text = g_strdup_printf ("%s: %s %s", hold->what, hold->reason,
                                               hold->note != NULL ? hold->note : _("Not settled yet."));

      stead_pages_add_note (pages, text);
    }
}

/* --- the sheet ---------------------------------------------------------------------------------- */

static void
add_signature (SteadPages             *pages,
               const SteadCheckAnswer *answer)
{
  const SteadPagesColumn columns[] = { { NULL, STEAD_ALIGN_LEFT, 0 }, { NULL, STEAD_ALIGN_LEFT, 1 },
                                       { NULL, STEAD_ALIGN_LEFT, 0 }, { NULL, STEAD_ALIGN_LEFT, 1 } };
  const char *cells[] = { _("Person in charge"), BLANK, _("Day and time"), BLANK };

  if (answer->signed_by != NULL)
    {
      stead_pages_add_note (pages, answer->signed_by);
      return;
    }
  stead_pages_add_table (pages, columns, G_N_ELEMENTS (columns));
  add_row (pages, STEAD_ROW_PLAIN, cells);
}

static SteadPages *
begin (const SteadImprint     *imprint,
       const SteadCheckAnswer *answer,
       gboolean                blank)
{
  g_autofree char *day = stead_day_format (answer->list->day, STEAD_DAY_STYLE_MEDIUM);
  /* Translators: title of a paper; the name of a checklist. */
  g_autofree char *title = g_strdup_printf (_("%s: food-safety checklist"), answer->list->name);
  SteadPages *pages = stead_pages_new (imprint, title, day);

  stead_pages_add_title (pages, title);
  if (blank)
    stead_pages_add_lead (pages, _("Write down what the thermometer shows, the time and your initials. If a limit is not met, "
                                   "stop, do what must be done, and write it down."));
  else
    stead_pages_add_lead (pages, answer->sentence);
  stead_pages_add_caution (pages, answer->caution);
  if (answer->stale != NULL)
    stead_pages_add_note (pages, answer->stale);
  return pages;
}

static SteadPages *
make (SteadStore  *store,
      const char  *of,
      gboolean     blank,
      GError     **error)
{
  g_autoptr(SteadImprint) imprint = stead_imprint_new (store, error);
  g_autoptr(SteadCheckAnswer) answer = NULL;
  g_autoptr(GPtrArray) sources = g_ptr_array_new_with_free_func (g_free);
  g_autoptr(SteadPages) pages = NULL;
  gint64 list_id;

  if (imprint == NULL || !stead_subject_checklist (store, of, &list_id, error))
    return NULL;
  answer = stead_check_answer_new (store, list_id, error);
  if (answer == NULL)
    return NULL;
  pages = begin (imprint, answer, blank);
  add_stops (pages, answer);
  add_lines (pages, answer, blank, sources);
  if (!blank)
    add_holds (pages, answer);
  add_signature (pages, answer);
  add_sources (pages, sources);
  stead_pages_settle (pages);
  return g_steal_pointer (&pages);
}

SteadPages *
stead_check_paper_new (SteadStore               *store,
                       const char               *of,
                       const SteadPaperOptions  *options,
                       GError                  **error)
{
  return make (store, of, FALSE, error);
}

SteadPages *
stead_check_paper_new_blank (SteadStore               *store,
                             const char               *of,
                             const SteadPaperOptions  *options,
                             GError                  **error)
{
  return make (store, of, TRUE, error);
}
