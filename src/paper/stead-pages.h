/* stead-pages.h - a document as a flow of blocks, settled onto pages and drawn.
 *
 * Invariants:
 *  1. Pages are drawn from what was settled: drawing one twice, in any order, on
 *     any kind of surface gives the same page.
 *  2. A heading never stands alone at the foot of a page, nor the head of some rows,
 *     and a table that goes over to the next page repeats its head.
 *  3. Every block is tagged for what it is, so that a PDF can be read aloud; the
 *     frame of the page is not, for it is no part of the document.
 *  4. The last page does not stand nearly empty where a little less room between
 *     the blocks, or an earlier break, can help.
 *  5. Nothing is told by colour alone; the scheme is that of print.
 */
#pragma once

#include "answer/stead-imprint.h"
#include "answer/stead-words.h"
#include "core/stead-cost.h"
#include "draw/stead-draw.h"

G_BEGIN_DECLS

typedef struct _SteadPages SteadPages;

/**
 * stead_pages_new:
 * @imprint: where the document comes from; copied as far as needed
 * @title: of the document, plain text
 * @period: (nullable): the days that it speaks of, "Dec 3, 2025 to Feb 24, 2026"
 */
SteadPages *stead_pages_new  (const SteadImprint *imprint,
                              const char         *title,
                              const char         *period) G_GNUC_WARN_UNUSED_RESULT;
void        stead_pages_free (SteadPages *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadPages, stead_pages_free)

/* --- blocks, in the order of reading ---------------------------------------- */

/* The head of the document; once, first. */
void stead_pages_add_title   (SteadPages *self, const char *text);
/* The one sentence that says what it all means; markup. */
void stead_pages_add_lead    (SteadPages *self, const char *markup);
void stead_pages_add_heading (SteadPages *self, const char *text);
/* A heading under a heading; not in the outline. */
void stead_pages_add_subheading (SteadPages *self, const char *text);
/* A paragraph; markup. */
void stead_pages_add_text    (SteadPages *self, const char *markup);
/* A paragraph in small soft type; plain. */
void stead_pages_add_note    (SteadPages *self, const char *text);
/* Something to be careful about, beside the figure that it is about; plain. */
void stead_pages_add_caution (SteadPages *self, const char *text);
/* Rule, worked numbers and source, kept together. */
void stead_pages_add_why     (SteadPages *self, const SteadWhy *why);

/* The block added last goes to no other page than the one that follows it. */
void stead_pages_keep_last   (SteadPages *self);

/* Paints into a box from 0, 0 to @width, @height. */
typedef void (*SteadFigurePaint) (cairo_t *cr,
                                  double   width,
                                  double   height,
                                  gpointer data);

/* @height: points; 0: what is left of the page; @data is freed with the document */
void stead_pages_add_figure (SteadPages       *self,
                             double            height,
                             SteadFigurePaint  paint,
                             gpointer          data,
                             GDestroyNotify    destroy);

typedef struct
{
  const char *title;   /* (nullable): no table head if none has one */
  SteadAlign  align;
  double      share;   /* of the width left over; 0: as wide as its widest text */
} SteadPagesColumn;

#define STEAD_PAGES_MAX_COLUMNS 10

typedef enum
{
  STEAD_ROW_PLAIN,
  STEAD_ROW_SOFT,
  STEAD_ROW_TOTAL,   /* bold, a rule over it */
  STEAD_ROW_HEAD,    /* as a total, of the rows under it: never the last on a page */
} SteadRowLook;

#define STEAD_PAGES_NO_KEY (-1)

/* Begins a table; rows go to the table begun last. */
void stead_pages_add_table (SteadPages             *self,
                            const SteadPagesColumn *columns,
                            int                     n_columns);

/* A cell that begins with it is a box to write in, two lines high at least; what follows
 * stands small at its foot: STEAD_PAGES_BOX "°F". */
#define STEAD_PAGES_BOX "\v"

typedef struct _SteadPagesRow SteadPagesRow;

/* @cells: plain texts, one a column, each (nullable); @key: a SteadCostKind whose
 * pattern stands before the first, or STEAD_PAGES_NO_KEY.
 * Returns: (transfer none): the row, which lives as long as the pages */
SteadPagesRow *stead_pages_add_row (SteadPages         *self,
                                    SteadRowLook        look,
                                    int                 key,
                                    const char * const *cells);

/* What a cell says that is known only once all is settled; it takes the room that the row
 * had then: @text is no wider than its column and one line high. */
void stead_pages_row_fill (SteadPagesRow *row,
                           int            column,
                           const char    *text);

/* --- sheets ----------------------------------------------------------------- */

/* Paints page @page, from 0, over all of it. */
typedef void (*SteadSheetPaint) (cairo_t *cr,
                                 int      page,
                                 gpointer data);

/**
 * stead_pages_set_sheet:
 * @width: of the paper, points, whatever the farm's own is
 * @height: of the paper, points
 * @n_pages: 1 or more
 * @data: freed with the document
 *
 * Makes of a document without blocks one of sheets that are painted whole, without
 * a frame: labels.  It is settled then.
 */
void stead_pages_set_sheet (SteadPages      *self,
                            double           width,
                            double           height,
                            int              n_pages,
                            SteadSheetPaint  paint,
                            gpointer         data,
                            GDestroyNotify   destroy);

/* --- pages ------------------------------------------------------------------ */

/* Breaks the flow into pages; call it once, after the last block. */
void        stead_pages_settle  (SteadPages *self);

const char *stead_pages_title   (const SteadPages *self);
/* The tag of the language that the pages were begun in. */
const char *stead_pages_language (const SteadPages *self);
const char *stead_pages_author  (const SteadPages *self);
SteadDay    stead_pages_day     (const SteadPages *self);
int         stead_pages_count   (const SteadPages *self);
void        stead_pages_size    (const SteadPages *self,
                                 double           *width,
                                 double           *height);

/* @page: from 0 */
void        stead_pages_draw    (const SteadPages *self,
                                 int               page,
                                 cairo_t          *cr);

/* The headings and where they stand, for an outline. */
typedef void (*SteadHeadingFunc) (const char *text,
                                  int         page,
                                  double      y,
                                  gpointer    data);

void        stead_pages_headings (const SteadPages *self,
                                  SteadHeadingFunc  func,
                                  gpointer          data);

G_END_DECLS
