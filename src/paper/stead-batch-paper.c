/* stead-batch-paper.c - the card of a batch: one paper from its first day to its review. */
#include "config.h"

#include "answer/stead-batch-card.h"
#include "answer/stead-subject.h"
#include "paper/stead-paper-private.h"
#include "paper/stead-picture-figure.h"

#include <glib/gi18n-lib.h>

#define PICTURE_HEIGHT 180.0

/* --- tables ------------------------------------------------------------------------- */

#define LEAST_SHARE 8
#define MOST_SHARE 40

/* A table of figures has columns of one width; else its texts share, by their longest,
 * what the figures leave. */
static gboolean
is_of_figures (const SteadCardTable *table)
{
  for (int i = 1; i < table->n_columns; i++)
    if (!table->is_figure[i])
      return FALSE;
  return TRUE;
}

static double
share_of (const SteadCardTable *table,
          int                   column)
{
  long longest = LEAST_SHARE;

  if (is_of_figures (table))
    return column == 0 ? 1.6 : 1;
  if (table->is_figure[column])
    return 0;
  for (guint i = 0; i < table->rows->len; i++)
    {
      const char *cell = ((const SteadCardRow *) table->rows->pdata[i])->cells[column];

      longest = MAX (longest, cell != NULL ? g_utf8_strlen (cell, -1) : 0);
    }
  return (double) MIN (longest, MOST_SHARE);
}

static void
add_table (SteadPages           *pages,
           const SteadCardTable *table)
{
  SteadPagesColumn columns[STEAD_CARD_COLUMNS];

  for (int i = 0; i < table->n_columns; i++)
    columns[i] = (SteadPagesColumn) { table->titles[i], table->is_figure[i] ? STEAD_ALIGN_RIGHT : STEAD_ALIGN_LEFT,
                                      share_of (table, i) };
  stead_pages_add_table (pages, columns, table->n_columns);
  for (guint i = 0; i < table->rows->len; i++)
    {
      const SteadCardRow *row = table->rows->pdata[i];
      gboolean total = table->has_total && i + 1 == table->rows->len;
      const char *cells[STEAD_CARD_COLUMNS];

      for (int column = 0; column < table->n_columns; column++)
        cells[column] = row->cells[column] != NULL ? row->cells[column] : "–";
      stead_pages_add_row (pages, total ? STEAD_ROW_TOTAL : STEAD_ROW_PLAIN, STEAD_PAGES_NO_KEY, cells);
    }
}

/* A part of the card that there is nothing of has no heading either. */
static void
add_part (SteadPages           *pages,
          const char           *heading,
          const SteadCardTable *table)
{
  if (table->rows->len == 0)
    return;
  stead_pages_add_heading (pages, heading);
  add_table (pages, table);
}

/* Better and worse than planned bear a sign, for color is none on paper. */
static char *
toned (const SteadBatchRow *row)
{
  if (row->end == NULL)
    return g_strdup ("–");
  if (row->tone == STEAD_TONE_PLAIN)
    return g_strdup (row->end);
  return g_strconcat (row->tone == STEAD_TONE_GOOD ? "▲ " : "▼ ", row->end, NULL);
}

/* Without a plan there is no column for it. */
static void
add_plan_row (SteadPages          *pages,
              const SteadBatchRow *row,
              gboolean             has_plan)
{
  g_autofree char *end = toned (row);
  const char *cells[4] = { row->what };
  int n = 1;

  if (has_plan)
    cells[n++] = row->planned != NULL ? row->planned : "–";
  cells[n++] = row->actual != NULL ? row->actual : "–";
  cells[n++] = end;
  stead_pages_add_row (pages, STEAD_ROW_PLAIN, STEAD_PAGES_NO_KEY, cells);
}

static void
add_plan (SteadPages             *pages,
          const SteadBatchAnswer *batch)
{
  SteadPagesColumn columns[4] = { { "", STEAD_ALIGN_LEFT, 1.2 } };
  int n = 1;

  if (batch->has_plan)
    columns[n++] = (SteadPagesColumn) { C_("column of a plan", "Planned"), STEAD_ALIGN_RIGHT, 1 };
  columns[n++] = (SteadPagesColumn) { batch->is_over ? C_("column of a plan", "Came") : C_("column of a plan", "So far"),
                                      STEAD_ALIGN_RIGHT, 1 };
  columns[n++] = (SteadPagesColumn) { stead_batch_answer_end_title (batch), STEAD_ALIGN_RIGHT, 1 };
  stead_pages_add_heading (pages, batch->has_plan ? _("Plan beside what came") : _("What it gave"));
  stead_pages_add_table (pages, columns, batch->has_plan || !batch->is_over ? n : n - 1);
  for (guint i = 0; i < batch->rows->len; i++)
    add_plan_row (pages, batch->rows->pdata[i], batch->has_plan);
  stead_pages_add_note (pages, batch->has_plan ? _("▲ better than planned, ▼ worse. What is not known has a dash.")
                                               : _("There is no plan to hold it against. What is not known has a dash."));
}

/* --- text ----------------------------------------------------------------------------- */

static void
add_review (SteadPages             *pages,
            const SteadBatchAnswer *batch)
{
  if (batch->review->len == 0)
    return;
  stead_pages_add_heading (pages, _("Why it came out so"));
  for (guint i = 0; i < batch->review->len; i++)
    stead_pages_add_text (pages, batch->review->pdata[i]);
}

static void
add_treatments (SteadPages           *pages,
                const SteadBatchCard *card)
{
  if (card->treatments->rows->len == 0)
    return;
  add_part (pages, _("Treatments"), card->treatments);
  stead_pages_add_note (pages, _("Give no medicine without a veterinarian. The days to wait are the veterinarian's and "
                                 "the label's; this card only keeps them."));
}

/* The lines of a note; the last one keeps to the picture under it. */
static void
add_lines (SteadPages *pages,
           const char *text,
           gboolean    keep)
{
  g_auto(GStrv) lines = g_strsplit (text, "\n", -1);

  for (int i = 0; lines[i] != NULL; i++)
    {
      g_autofree char *markup = g_markup_escape_text (lines[i], -1);

      if (*markup != '\0')
        stead_pages_add_text (pages, markup);
    }
  if (keep)
    stead_pages_keep_last (pages);
}

static void
add_note (SteadPages          *pages,
          const SteadCardNote *note)
{
  stead_pages_add_subheading (pages, note->day);
  if (note->text != NULL)
    add_lines (pages, note->text, note->jpeg != NULL);
  if (note->jpeg != NULL && !stead_picture_figure_add (pages, note->jpeg, PICTURE_HEIGHT))
    stead_pages_add_note (pages, _("The picture of this day cannot be read any more."));
}

static void
add_notes (SteadPages           *pages,
           const SteadBatchCard *card)
{
  if (card->notes->len == 0)
    return;
  stead_pages_add_heading (pages, _("Notes and pictures"));
  for (guint i = 0; i < card->notes->len; i++)
    add_note (pages, card->notes->pdata[i]);
}

static SteadPages *
begin (const SteadImprint   *imprint,
       const SteadBatchCard *card)
{
  const SteadBatchAnswer *batch = card->batch;
  g_autofree char *from = stead_day_format (batch->money.from, STEAD_DAY_STYLE_MEDIUM);
  g_autofree char *to = stead_day_format (batch->money.to, STEAD_DAY_STYLE_MEDIUM);
  /* Translators: the first and the last day of a period. */
  g_autofree char *period = g_strdup_printf (_("%s to %s"), from, to);
  /* Translators: title of a paper about one batch; its name. */
  g_autofree char *title = g_strdup_printf (_("%s: batch card"), batch->money.batch->name);
  SteadPages *pages = stead_pages_new (imprint, title, period);

  stead_pages_add_title (pages, title);
  stead_pages_add_lead (pages, batch->sentence);
  if (batch->caution != NULL)
    stead_pages_add_caution (pages, batch->caution);
  return pages;
}

SteadPages *
stead_batch_paper_new (SteadStore               *store,
                       const char               *of,
                       const SteadPaperOptions  *options,
                       GError                  **error)
{
  g_autoptr(SteadImprint) imprint = stead_imprint_new (store, error);
  g_autoptr(SteadBatchCard) card = NULL;
  g_autoptr(SteadPages) pages = NULL;
  gint64 batch_id;

  if (imprint == NULL || !stead_subject_batch (store, of, &batch_id, error))
    return NULL;
  card = stead_batch_card_new (store, batch_id, error);
  if (card == NULL)
    return NULL;
  pages = begin (imprint, card);
  add_part (pages, _("What it is"), card->facts);
  add_review (pages, card->batch);
  add_plan (pages, card->batch);
  add_part (pages, card->batch->is_over ? _("What it cost") : _("Cost so far, and to finish it"), card->costs);
  add_part (pages, _("Harvests"), card->harvests);
  add_part (pages, _("Losses, by reason"), card->losses);
  add_treatments (pages, card);
  add_notes (pages, card);
  add_part (pages, _("The log by week"), card->weeks);
  if (card->batch->why != NULL)
    {
      stead_pages_add_heading (pages, _("How it is worked out"));
      stead_pages_add_why (pages, card->batch->why);
    }
  stead_pages_settle (pages);
  return g_steal_pointer (&pages);
}
