/* stead-label-sheet.h - sheets of blank labels, and where each label lies on them.
 *
 * Sizes are those that stationers commonly sell (common practice, no source):
 * measure a sheet of the packet before the first print, since makers differ by a
 * hair.
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* Lengths in points, 1/72 inch, from the upper left corner of the page. */
typedef struct
{
  const char *id;             /* stable: "letter-2x5" */
  const char *name;           /* untranslated; show with _() */
  gboolean    metric;         /* on A4, not on US Letter */
  int         columns, rows;
  double      width, height;  /* of one label */
  double      left, top;      /* of the first */
  double      step_x, step_y; /* from one to the next */
} SteadLabelSheet;

#define STEAD_LETTER_WIDTH 612.0
#define STEAD_LETTER_HEIGHT 792.0
#define STEAD_A4_WIDTH 595.276
#define STEAD_A4_HEIGHT 841.89

/* Returns: (transfer none) (array length=n_sheets): all sheets, small labels first */
const SteadLabelSheet *stead_label_sheet_list (gsize *n_sheets);

/* Returns: (transfer none) (nullable): the sheet with that id */
const SteadLabelSheet *stead_label_sheet_find (const char *id);

/* Returns: (transfer none): a sheet that holds a carton's label, of the farm's paper */
const SteadLabelSheet *stead_label_sheet_default (gboolean metric);

/**
 * stead_label_sheet_place:
 * @at: which label, from 0, over all pages: along the rows
 * @page: (out): from 0
 * @x: (out): left edge on it
 * @y: (out): upper edge on it
 */
void stead_label_sheet_place (const SteadLabelSheet *sheet,
                              int                    at,
                              int                   *page,
                              double                *x,
                              double                *y);

/**
 * stead_label_sheet_pages:
 * @first: how many labels of the first page are gone already, 0 or more
 * @n: how many are to be printed, 0 or more
 *
 * Returns: how many pages that takes
 */
int stead_label_sheet_pages (const SteadLabelSheet *sheet,
                             int                    first,
                             int                    n);

G_END_DECLS
