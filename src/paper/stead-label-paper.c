/* stead-label-paper.c - a sheet of labels for what is in a lot.
 *
 * A sheet has no frame, no margins and no title of its own: each label lies where
 * the blank one does.
 */
#include "config.h"

#include "answer/stead-label-answer.h"
#include "answer/stead-subject.h"
#include "draw/stead-pack-label.h"
#include "paper/stead-paper-error.h"
#include "paper/stead-paper-private.h"

#include <glib/gi18n-lib.h>

#define POINTS_INCH 72.0

typedef struct
{
  SteadLabelAnswer      *answer;
  const SteadLabelSheet *sheet;
  SteadPackLabelWords    words;    /* of the answer's texts */
  SteadPackLabelLayout   layout;
  int                    first, n;
} Labels;

static void
labels_free (gpointer data)
{
  Labels *labels = data;

  g_clear_pointer (&labels->answer, stead_label_answer_free);
  g_free (labels);
}
G_DEFINE_AUTOPTR_CLEANUP_FUNC (Labels, labels_free)

void
stead_label_words (const SteadLabelAnswer *answer,
                   SteadPackLabelWords    *out)
{
  *out = (SteadPackLabelWords) {
    .text = {
      [STEAD_TAG_NAME] = answer->name, [STEAD_TAG_PRICE] = answer->price,
      [STEAD_TAG_INGREDIENTS] = answer->ingredients, [STEAD_TAG_CONTAINS] = answer->contains,
      [STEAD_TAG_SAFE] = answer->safe, [STEAD_TAG_KEEP] = answer->keep, [STEAD_TAG_DATES] = answer->dates,
      [STEAD_TAG_FARM] = answer->farm, [STEAD_TAG_NET] = answer->net,
      [STEAD_TAG_LOT] = answer->kind == STEAD_LABEL_SHELF ? NULL : answer->lot->code,
    },
    .safe_bold = answer->safe_bold,
  };
}

gboolean
stead_label_fit (const SteadLabelAnswer *answer,
                 const SteadLabelSheet  *sheet,
                 SteadPackLabelLayout   *out)
{
  SteadPackLabelRules rules = { answer->net_letter_in * POINTS_INCH, answer->letter_in * POINTS_INCH };
  cairo_surface_t *surface = cairo_recording_surface_create (CAIRO_CONTENT_COLOR_ALPHA, NULL);
  cairo_t *cr = cairo_create (surface);
  SteadPackLabelWords words;
  gboolean fits;

  stead_label_words (answer, &words);
  fits = stead_pack_label_layout (cr, &words, &rules, sheet->width, sheet->height, out);
  cairo_destroy (cr);
  cairo_surface_destroy (surface);
  return fits;
}

const SteadLabelSheet *
stead_label_sheet_for (const SteadLabelAnswer *answer,
                       gboolean                metric)
{
  const SteadLabelSheet *usual = stead_label_sheet_default (metric);
  SteadPackLabelLayout layout;
  gsize n;
  const SteadLabelSheet *sheets = stead_label_sheet_list (&n);

  g_return_val_if_fail (answer != NULL, usual);
  for (const SteadLabelSheet *sheet = usual; sheet < sheets + n; sheet++)     /* from small to large */
    if (sheet->metric == metric && stead_label_fit (answer, sheet, &layout))
      return sheet;
  return usual;
}

static void
paint_sheet (cairo_t *cr,
             int      page,
             gpointer data)
{
  const Labels *labels = data;

  for (int at = labels->first; at < labels->first + labels->n; at++)
    {
      double x, y;
      int on;

      stead_label_sheet_place (labels->sheet, at, &on, &x, &y);
      if (on != page)
        continue;
      cairo_tag_begin (cr, "P", NULL);
      cairo_save (cr);
      cairo_translate (cr, x, y);
      stead_pack_label_paint (cr, &labels->words, &labels->layout);
      cairo_restore (cr);
      cairo_tag_end (cr, "P");
    }
}

/* Which blanks are used: those of one whole page, where nothing else was asked for. */
static gboolean
choose (Labels                  *labels,
        const SteadPaperOptions *options,
        gboolean                 metric,
        GError                 **error)
{
  const SteadLabelOptions *wish = options != NULL ? options->labels : NULL;
  int on_page;

  labels->sheet = wish != NULL && wish->sheet != NULL ? stead_label_sheet_find (wish->sheet)
                                                      : stead_label_sheet_for (labels->answer, metric);
  g_return_val_if_fail (labels->sheet != NULL, FALSE);
  on_page = labels->sheet->columns * labels->sheet->rows;
  labels->first = wish != NULL ? CLAMP (wish->first, 0, on_page - 1) : 0;
  labels->n = wish != NULL && wish->n > 0 ? MIN (wish->n, STEAD_LABELS_MAX) : on_page - labels->first;
  if (stead_label_fit (labels->answer, labels->sheet, &labels->layout))
    return TRUE;
  g_set_error (error, STEAD_PAPER_ERROR, STEAD_PAPER_ERROR_UNKNOWN,
               _("The words do not fit on a label of this size in letters as high as the law asks. Choose a larger label."));
  return FALSE;
}

SteadPages *
stead_label_paper_new (SteadStore               *store,
                       const char               *of,
                       const SteadPaperOptions  *options,
                       GError                  **error)
{
  g_autoptr(SteadImprint) imprint = stead_imprint_new (store, error);
  g_autoptr(SteadLot) lot = NULL;
  g_autoptr(Labels) labels = g_new0 (Labels, 1);
  g_autofree char *title = NULL;
  gint64 lot_id;
  SteadLabelKind kind;
  SteadPages *pages;
  const SteadLabelSheet *sheet;
  int n_pages;

  if (imprint == NULL || !stead_subject_lot (store, of, &lot_id, error))
    return NULL;
  lot = stead_lot_repo_get (store, lot_id, error);
  if (lot == NULL)
    return NULL;
  if (options != NULL && options->labels != NULL)
    kind = options->labels->kind;
  else if (!stead_label_kind_for (store, lot, &kind, error))
    return NULL;
  labels->answer = stead_label_answer_new (store, lot_id, kind,
                                           options != NULL && options->labels != NULL ? options->labels->panel_in2 : 0, error);
  if (labels->answer == NULL || !choose (labels, options, imprint->metric, error))
    return NULL;
  stead_label_words (labels->answer, &labels->words);
  /* Translators: title of a document; a thing and the code of its lot. */
  title = g_strdup_printf (_("Labels: %s, lot %s"), labels->answer->name, lot->code);
  pages = stead_pages_new (imprint, title, NULL);
  sheet = labels->sheet;
  n_pages = stead_label_sheet_pages (sheet, labels->first, labels->n);
  stead_pages_set_sheet (pages, sheet->metric ? STEAD_A4_WIDTH : STEAD_LETTER_WIDTH,
                         sheet->metric ? STEAD_A4_HEIGHT : STEAD_LETTER_HEIGHT, n_pages, paint_sheet,
                         g_steal_pointer (&labels), labels_free);
  return pages;
}
