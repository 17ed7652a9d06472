/* stead-run-paper.c - the run sheet of a kitchen batch, to be filled in by hand or as it was filled in.
 *
 * What is known stands there; the rest is left open, so that a sheet printed before the
 * work is blank and one printed after it is the record.
 */
#include "config.h"

#include "answer/stead-kitchen-answer.h"
#include "answer/stead-recipe-answer.h"
#include "answer/stead-subject.h"
#include "core/stead-sensible.h"
#include "paper/stead-paper-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>

/* Room for a pencil. */
#define BLANK "\n"

/* Empty lines for people that nobody planned. */
#define MORE_PEOPLE 3

static gboolean
is_open (const SteadKitchenAnswer *answer)
{
  return answer->harvest == NULL;
}

static const char *
or_blank (const char *text)
{
  return text != NULL && *text != '\0' ? text : BLANK;
}

static void
add_row (SteadPages         *pages,
         const char * const *cells)
{
  stead_pages_add_row (pages, STEAD_ROW_PLAIN, STEAD_PAGES_NO_KEY, cells);
}

/* Two names with their values beside each other, twice in a row. */
static void
add_pairs (SteadPages *pages)
{
  const SteadPagesColumn columns[] = { { NULL, STEAD_ALIGN_LEFT, 0 }, { NULL, STEAD_ALIGN_LEFT, 1 },
                                       { NULL, STEAD_ALIGN_LEFT, 0 }, { NULL, STEAD_ALIGN_LEFT, 1 } };

  stead_pages_add_table (pages, columns, G_N_ELEMENTS (columns));
}

/* (transfer full) (nullable): "Devon K., Maya R." */
static char *
cooks_of (const SteadKitchenAnswer *answer)
{
  g_autoptr(GPtrArray) names = g_ptr_array_new ();

  for (guint i = 0; i < answer->people->len; i++)
    g_ptr_array_add (names, ((SteadBatchPerson *) answer->people->pdata[i])->name);
  if (names->len == 0)
    return NULL;
  g_ptr_array_add (names, NULL);
  return g_strjoinv (", ", (char **) names->pdata);
}

static void
add_head (SteadPages               *pages,
          const SteadKitchenAnswer *answer)
{
  const SteadKitchen *kitchen = answer->kitchen;
  g_autofree char *day = stead_day_format (kitchen->batch.started_on, STEAD_DAY_STYLE_LONG);
  g_autofree char *wanted = stead_recipe_amount (kitchen->wanted_base, kitchen->item_unit, kitchen->item_name);
  g_autofree char *cooks = cooks_of (answer);
  const char *first[] = { _("Kitchen day"), day, _("Planned"), wanted };
  const char *second[] = { _("Recipe"), kitchen->recipe_name, _("Cooks"), or_blank (cooks) };

  add_pairs (pages);
  add_row (pages, first);
  add_row (pages, second);
}

/* --- ingredients ------------------------------------------------------------------------ */

static gboolean
is_first_of_item (const GPtrArray *parts,
                  guint            at)
{
  const SteadKitchenPart *part = parts->pdata[at];

  for (guint i = 0; i < at; i++)
    if (((const SteadKitchenPart *) parts->pdata[i])->item_id == part->item_id)
      return FALSE;
  return TRUE;
}

/* (transfer full): which lots it came out of, a line each; room to write where none did */
static char *
lots_of (const SteadKitchenAnswer *answer,
         guint                     at)
{
  const SteadKitchenPart *part = answer->kitchen->parts->pdata[at];
  GString *text = g_string_new (NULL);

  for (guint i = 0; is_first_of_item (answer->kitchen->parts, at) && i < answer->taken->len; i++)
    {
      const SteadMove *move = answer->taken->pdata[i];
      g_autofree char *amount = stead_quantity_format (-move->quantity_base, move->unit);

      if (g_strcmp0 (move->item_name, part->item_name) != 0)
        continue;
      if (text->len > 0)
        g_string_append_c (text, '\n');
      /* Translators: the code of a lot, an amount: "R26-7: 3 doz" */
      g_string_append_printf (text, C_("lot and amount", "%s: %s"), move->lot_code, amount);
    }
  if (text->len == 0)
    g_string_append (text, BLANK);
  return g_string_free (text, FALSE);
}

static void
add_parts (SteadPages               *pages,
           const SteadKitchenAnswer *answer)
{
  const SteadPagesColumn columns[] = {
    { _("Amount"), STEAD_ALIGN_RIGHT, 0 },
    { _("Ingredient"), STEAD_ALIGN_LEFT, 1 },
    { _("As bought"), STEAD_ALIGN_RIGHT, 0 },
    { _("Out of which lot"), STEAD_ALIGN_LEFT, 1 },
  };

  stead_pages_add_heading (pages, _("Ingredients"));
  stead_pages_add_table (pages, columns, G_N_ELEMENTS (columns));
  for (guint i = 0; i < answer->kitchen->parts->len; i++)
    {
      const SteadKitchenPart *part = answer->kitchen->parts->pdata[i];
      g_autofree char *amount = stead_sensible_format (part->amount, part->unit);
      g_autofree char *bought = stead_quantity_format (part->need_base, part->item_unit);
      g_autofree char *lots = lots_of (answer, i);
      g_autofree char *name = part->note != NULL ? g_strdup_printf (C_("ingredient", "%s, %s"), part->item_name, part->note)
                                                 : g_strdup (part->item_name);
      const char *cells[] = { amount, name, bought, lots };

      add_row (pages, cells);
    }
}

/* --- steps ---------------------------------------------------------------------------------- */

static char *
clock_of (gint64 at)
{
  g_autoptr(GDateTime) time = at != STEAD_TIME_NONE ? g_date_time_new_from_unix_local (at) : NULL;

  return time != NULL ? g_date_time_format (time, "%H:%M") : NULL;
}

/* What is done, and under it the limit with its source. */
static char *
step_text (const SteadRunLine *line)
{
  GString *text = g_string_new (line->step->text);

  if (line->limit != NULL)
    {
      g_string_append_c (text, '\n');
      g_string_append_printf (text, _("Limit: %s"), line->limit);
    }
  if (line->own != NULL)
    {
      g_string_append_c (text, '\n');
      g_string_append_printf (text, _("This recipe asks for %s"), line->own);
    }
  if (line->source != NULL)
    g_string_append_printf (text, "\n%s", line->source);
  return g_string_free (text, FALSE);
}

/* All readings with their times, what they mean last. */
static char *
reading_text (const SteadKitchenAnswer *answer,
              const SteadRunLine       *line)
{
  GString *text = g_string_new (NULL);

  if (line->measure == NULL)
    return g_string_free (g_string_append (text, "–"), FALSE);
  for (guint i = 0; i < answer->readings->len; i++)
    {
      const SteadShown *shown = answer->readings->pdata[i];
      g_autofree char *clock = clock_of (shown->at);
      g_autofree char *value = stead_run_value_text (shown, answer->farm->units);

      if (shown->step_id != line->step->id)
        continue;
      g_string_append_printf (text, shown->corrected ? _("%s %s (wrong, corrected)") : C_("reading", "%s %s"),
                              clock != NULL ? clock : "", value);
      g_string_append_c (text, '\n');
    }
  if (line->verdict_text != NULL)
    g_string_append (text, line->verdict_text);
  else if (text->len == 0)
    g_string_append (text, BLANK);
  return g_string_free (text, FALSE);
}

static char *
time_text (const SteadRunLine *line)
{
  const SteadKitchenStep *step = line->step;
  g_autofree char *start = clock_of (step->started_at);
  g_autofree char *done = clock_of (step->done_at);

  if (start != NULL && done != NULL && !g_str_equal (start, done))
    return g_strdup_printf ("%s–%s", start, done);
  return g_strdup (done != NULL ? done : start != NULL ? start : BLANK);
}

static void
add_steps (SteadPages               *pages,
           const SteadKitchenAnswer *answer)
{
  const SteadPagesColumn columns[] = {
    { C_("column of a run sheet", "No."), STEAD_ALIGN_RIGHT, 0 },
    { C_("column of a run sheet", "What is done"), STEAD_ALIGN_LEFT, 2.4 },
    { C_("column of a run sheet", "Minutes"), STEAD_ALIGN_RIGHT, 0 },
    { C_("column of a run sheet", "Reading"), STEAD_ALIGN_LEFT, 1.1 },
    { C_("column of a run sheet", "Time"), STEAD_ALIGN_LEFT, 0.7 },
    { C_("column of a run sheet", "Initials"), STEAD_ALIGN_LEFT, 0.6 },
  };

  if (answer->lines->len == 0)
    return;
  stead_pages_add_heading (pages, _("Steps"));
  stead_pages_add_table (pages, columns, G_N_ELEMENTS (columns));
  for (guint i = 0; i < answer->lines->len; i++)
    {
      const SteadRunLine *line = answer->lines->pdata[i];
      g_autofree char *number = stead_number_format (line->number, 0);
      g_autofree char *text = step_text (line);
      g_autofree char *minutes = isnan (line->step->minutes) ? NULL : stead_number_format (line->step->minutes, 1);
      g_autofree char *reading = reading_text (answer, line);
      g_autofree char *time = time_text (line);
      const char *cells[] = { number, text, minutes, reading, time, line->who };

      add_row (pages, cells);
    }
  stead_pages_add_note (pages, _("Write what the instrument shows, not what it should show. Where limits are joined by "
                                 "an or, one of them is enough. Your local rule may ask for more."));
}

/* --- people, and what came out -------------------------------------------------------------- */

static void
add_people (SteadPages               *pages,
            const SteadKitchenAnswer *answer)
{
  const SteadPagesColumn columns[] = {
    { C_("column of a run sheet", "Who worked"), STEAD_ALIGN_LEFT, 1.5 },
    { C_("column of a run sheet", "Minutes of work"), STEAD_ALIGN_RIGHT, 1 },
    { NULL, STEAD_ALIGN_LEFT, 1.5 },
  };
  const char *empty[] = { BLANK, NULL, NULL };

  stead_pages_add_heading (pages, _("People"));
  stead_pages_add_table (pages, columns, G_N_ELEMENTS (columns));
  for (guint i = 0; i < answer->people->len; i++)
    {
      const SteadBatchPerson *person = answer->people->pdata[i];
      g_autofree char *minutes = person->minutes > 0 ? stead_number_format (person->minutes, 0) : NULL;
      const char *cells[] = { person->name, or_blank (minutes), NULL };

      add_row (pages, cells);
    }
  for (int i = 0; is_open (answer) && i < MORE_PEOPLE; i++)
    add_row (pages, empty);
}

/* (transfer full): room to write while the batch is open */
static char *
amount_text (const SteadKitchenAnswer *answer,
             double                    base)
{
  return is_open (answer) ? g_strdup (BLANK) : stead_quantity_format (base, answer->kitchen->item_unit);
}

static void
add_end (SteadPages               *pages,
         const SteadKitchenAnswer *answer)
{
  const SteadHarvest *harvest = answer->harvest;
  gboolean lost = harvest != NULL && harvest->lost_base > 0;
  g_autofree char *good = amount_text (answer, harvest != NULL ? harvest->quantity_base : 0);
  g_autofree char *amount = amount_text (answer, harvest != NULL ? harvest->lost_base : 0);
  /* Translators: an amount that was lost, and why. */
  g_autofree char *spoiled = lost ? g_strdup_printf (C_("lost", "%s: %s"), amount, harvest->reason) : g_strdup (amount);
  g_autofree char *tasted = amount_text (answer, harvest != NULL ? harvest->tasted_base : 0);
  g_autofree char *best_by = harvest != NULL && harvest->best_by != STEAD_DAY_NONE
                             ? stead_day_format (harvest->best_by, STEAD_DAY_STYLE_MEDIUM) : NULL;
  const char *first[] = { _("Good"), good, _("Spoiled, and why"), spoiled };
  const char *second[] = { _("Tasted or kept"), tasted, _("Best by"), or_blank (best_by) };
  const char *third[] = { _("Lot"), or_blank (harvest != NULL ? harvest->lot_code : NULL), _("Checked by"), BLANK };

  stead_pages_add_heading (pages, _("What came out"));
  add_pairs (pages);
  add_row (pages, first);
  add_row (pages, second);
  add_row (pages, third);
  if (answer->cost_text != NULL)
    stead_pages_add_note (pages, answer->cost_text);
}

static SteadPages *
begin (const SteadImprint       *imprint,
       const SteadKitchenAnswer *answer)
{
  g_autofree char *day = stead_day_format (answer->kitchen->batch.started_on, STEAD_DAY_STYLE_MEDIUM);
  /* Translators: title of a paper about one kitchen batch; its name. */
  g_autofree char *title = g_strdup_printf (_("%s: run sheet"), answer->kitchen->batch.name);
  SteadPages *pages = stead_pages_new (imprint, title, day);

  stead_pages_add_title (pages, title);
  stead_pages_add_lead (pages, answer->sentence);
  if (answer->caution != NULL)
    stead_pages_add_caution (pages, answer->caution);
  return pages;
}

SteadPages *
stead_run_paper_new (SteadStore               *store,
                     const char               *of,
                     const SteadPaperOptions  *options,
                     GError                  **error)
{
  g_autoptr(SteadImprint) imprint = stead_imprint_new (store, error);
  g_autoptr(SteadKitchenAnswer) answer = NULL;
  g_autoptr(SteadPages) pages = NULL;
  gint64 batch_id;

  if (imprint == NULL || !stead_subject_kitchen (store, of, &batch_id, error))
    return NULL;
  answer = stead_kitchen_answer_new (store, batch_id, error);
  if (answer == NULL)
    return NULL;
  pages = begin (imprint, answer);
  add_head (pages, answer);
  add_parts (pages, answer);
  add_steps (pages, answer);
  add_people (pages, answer);
  add_end (pages, answer);
  stead_pages_settle (pages);
  return g_steal_pointer (&pages);
}
