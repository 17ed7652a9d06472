/* stead-paper.h - documents: made of answers and drawings, the same on screen,
 * on the printer and in a file.
 *
 * Same farm, same day, same bytes: nothing here reads a clock or a random number.
 */
#pragma once

#include <cairo.h>

#include "answer/stead-cost-answer.h"
#include "answer/stead-label-answer.h"
#include "core/stead-breakeven.h"
#include "core/stead-label-sheet.h"
#include "draw/stead-pack-label.h"

G_BEGIN_DECLS

typedef enum
{
  STEAD_FORMAT_PDF = 1 << 0,
  STEAD_FORMAT_PNG = 1 << 1,
  STEAD_FORMAT_SVG = 1 << 2,
  STEAD_FORMAT_CSV = 1 << 3,
  STEAD_FORMAT_XLSX = 1 << 4,
  STEAD_FORMAT_ICS = 1 << 5,
} SteadFormat;

typedef struct
{
  const char  *name;      /* "cost-sheet", "price-page", "break-even-chart", "batch-card", "labels", "flock-log", "cost-lines" */
  const char  *title;     /* untranslated; show with _() */
  const char  *of;        /* (nullable): "product", "batch", "kitchen", "flock", "fish", "lot" */
  SteadFormat  formats;   /* that it can be written in */
} SteadPaperKind;

const SteadPaperKind *stead_paper_list (gsize *n_kinds);
const SteadPaperKind *stead_paper_find (const char *name);   /* (nullable) */

/* More labels than anybody sticks on in a day. */
#define STEAD_LABELS_MAX 2000

/* What labels are printed, and on what. */
typedef struct
{
  SteadLabelKind  kind;
  double          panel_in2;   /* main panel of the pack, square inches; 0: as usual for the kind */
  const char     *sheet;       /* (nullable): id of a sheet of blanks; the default of the farm's paper */
  int             first;       /* blanks that are gone already from the first page */
  int             n;           /* how many; 0: what is left of one page */
} SteadLabelOptions;

typedef struct
{
  SteadPeriod  period;           /* of costs; the log of a flock is always whole */
  gboolean     has_days;         /* the papers of money are of @from to @to, in place of the period */
  SteadDay     from, to;
  gboolean     for_spreadsheet;  /* CSV: the locale's decimals, and ';' between fields where those have a comma */
  double       width, height;    /* of a picture, px; 0: 960 × 540 */
  const SteadCvp *cvp;           /* (nullable): numbers tried out under the handles, for documents of
                                    a price, instead of the farm's own; the advice then tells what differs */
  const SteadLabelOptions *labels;   /* (nullable): of sheets of labels */
} SteadPaperOptions;

#define STEAD_TYPE_PAPER (stead_paper_get_type ())
G_DECLARE_FINAL_TYPE (SteadPaper, stead_paper, STEAD, PAPER, GObject)

/**
 * stead_paper_new:
 * @name: of a kind that can be PDF
 * @of: (nullable): name of the product or batch; the first one if not given
 * @options: (nullable): how
 *
 * Returns: (transfer full): pages that can be drawn; US Letter, or A4 for a metric farm
 */
SteadPaper *stead_paper_new (SteadStore               *store,
                             const char               *name,
                             const char               *of,
                             const SteadPaperOptions  *options,
                             GError                  **error) G_GNUC_WARN_UNUSED_RESULT;

const char *stead_paper_get_title   (SteadPaper *self);
int         stead_paper_get_n_pages (SteadPaper *self);
void        stead_paper_get_size    (SteadPaper *self, double *width_pt, double *height_pt);

/* Draws one page, from 0, in points; the preview, the printer and the PDF all call this. */
void        stead_paper_draw_page   (SteadPaper *self, int page, cairo_t *cr);

/* A tagged PDF with title, author, language, outline and fixed dates; whole or not at all. */
gboolean    stead_paper_save_pdf    (SteadPaper *self, const char *path, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* The words of a label for drawing it; they belong to @answer. */
void        stead_label_words       (const SteadLabelAnswer *answer, SteadPackLabelWords *out);

/* Lays a label out on the blanks of @sheet. Returns: whether it fits in letters as high as the rules ask */
gboolean    stead_label_fit         (const SteadLabelAnswer *answer, const SteadLabelSheet *sheet,
                                     SteadPackLabelLayout *out);

/* (transfer none): the usual blanks, or the next larger ones where the words do not fit on them */
const SteadLabelSheet *stead_label_sheet_for (const SteadLabelAnswer *answer, gboolean metric);

/**
 * stead_paper_write:
 * @path: the ending tells the format
 *
 * Writes any kind in any of its formats; an older file at @path stays whole if it fails.
 */
gboolean    stead_paper_write       (SteadStore               *store,
                                     const char               *name,
                                     const char               *of,
                                     const SteadPaperOptions  *options,
                                     const char               *path,
                                     GError                  **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
