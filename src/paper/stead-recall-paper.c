/* stead-recall-paper.c - a recall in one sheet: what is touched, who to call, where all of it is. */
#include "config.h"

#include "answer/stead-recall-answer.h"
#include "answer/stead-subject.h"
#include "paper/stead-paper-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#define BLANK STEAD_PAGES_BOX

static void
add_calls (SteadPages              *pages,
           const SteadRecallAnswer *answer)
{
  const SteadPagesColumn columns[] = {
    { C_("column of a recall report", "Call"), STEAD_ALIGN_LEFT, 0.9 },
    { C_("column of a recall report", "Why"), STEAD_ALIGN_LEFT, 2.1 },
    { C_("column of a recall report", "Called at, by"), STEAD_ALIGN_LEFT, 0.7 },
  };

  stead_pages_add_heading (pages, _("Who has to be called"));
  stead_pages_add_table (pages, columns, G_N_ELEMENTS (columns));
  for (guint i = 0; i < answer->calls->len; i++)
    {
      const SteadRecallCall *call = answer->calls->pdata[i];

      for (guint n = 0; n < call->whys->len; n++)
        stead_pages_add_row (pages, STEAD_ROW_PLAIN, STEAD_PAGES_NO_KEY,
                             (const char *[]) { n == 0 ? call->who : NULL, call->whys->pdata[n], n == 0 ? BLANK : NULL });
    }
}

static void
add_lots (SteadPages              *pages,
          const SteadRecallAnswer *answer)
{
  const SteadPagesColumn columns[] = {
    { C_("column of a recall report", "Lot"), STEAD_ALIGN_LEFT, 1.2 },
    { C_("column of a recall report", "Still here"), STEAD_ALIGN_LEFT, 0.8 },
    { C_("column of a recall report", "Sold or given"), STEAD_ALIGN_RIGHT, 0 },
    { C_("column of a recall report", "Lost"), STEAD_ALIGN_RIGHT, 0 },
    { C_("column of a recall report", "Accounted for"), STEAD_ALIGN_RIGHT, 0 },
    { C_("column of a recall report", "Found"), STEAD_ALIGN_LEFT, 0.5 },
  };

  stead_pages_add_heading (pages, _("What is touched"));
  stead_pages_add_table (pages, columns, G_N_ELEMENTS (columns));
  for (guint i = 0; i < answer->rows->len; i++)
    {
      const SteadRecallRow *row = answer->rows->pdata[i];
      g_autofree char *known = stead_words_percent (floor (row->known_frac * 1000 + 1e-9) / 1000, row->known_frac < 1);
      /* Translators: a lot that may be neither sold nor used. */
      g_autofree char *name = row->is_held ? g_strdup_printf (_("%s (held back)"), row->name) : g_strdup (row->name);

      stead_pages_add_row (pages, row->lot->step == 0 ? STEAD_ROW_TOTAL : STEAD_ROW_PLAIN, STEAD_PAGES_NO_KEY,
                           (const char *[]) { name, row->left, row->out, row->gone, known, BLANK });
    }
  stead_pages_add_note (pages, _("Accounted for: used, sold, given away, lost or still here, of all that came in. What a count "
                                 "missed is not."));
}

static void
add_drill (SteadPages              *pages,
           const SteadRecallAnswer *answer)
{
  const SteadPagesColumn columns[] = { { NULL, STEAD_ALIGN_LEFT, 0 }, { NULL, STEAD_ALIGN_LEFT, 1 },
                                       { NULL, STEAD_ALIGN_LEFT, 0 }, { NULL, STEAD_ALIGN_LEFT, 1 } };
  const char *cells[] = { _("Begun at"), BLANK, _("All found at"), BLANK };

  stead_pages_add_heading (pages, _("The drill"));
  if (answer->drill != NULL && answer->drill->note != NULL)
    stead_pages_add_note (pages, answer->drill->note);
  stead_pages_add_table (pages, columns, G_N_ELEMENTS (columns));
  stead_pages_add_row (pages, STEAD_ROW_PLAIN, STEAD_PAGES_NO_KEY, cells);
}

SteadPages *
stead_recall_paper_new (SteadStore               *store,
                        const char               *of,
                        const SteadPaperOptions  *options,
                        GError                  **error)
{
  g_autoptr(SteadImprint) imprint = stead_imprint_new (store, error);
  g_autoptr(SteadRecallAnswer) answer = NULL;
  g_autoptr(SteadPages) pages = NULL;
  g_autofree char *title = NULL;
  gint64 lot_id;

  if (imprint == NULL || !stead_subject_lot (store, of, &lot_id, error))
    return NULL;
  answer = stead_recall_answer_new (store, lot_id, 0, error);
  if (answer == NULL)
    return NULL;
  /* Translators: title of a paper: a thing, its lot code. */
  title = g_strdup_printf (_("%1$s, lot %2$s: recall report"), answer->trace->lot->item_name, answer->trace->lot->code);
  pages = stead_pages_new (imprint, title, NULL);
  stead_pages_add_title (pages, title);
  stead_pages_add_lead (pages, answer->sentence);
  stead_pages_add_caution (pages, answer->caution);
  add_calls (pages, answer);
  add_lots (pages, answer);
  add_drill (pages, answer);
  stead_pages_settle (pages);
  return g_steal_pointer (&pages);
}
