/* stead-label-sheet.c - sheets of blank labels, and where each label lies on them. */
#include "config.h"

#include "core/stead-label-sheet.h"

#include <glib/gi18n-lib.h>

#define IN(inches) ((inches) * 72.0)
#define MM(millimeters) ((millimeters) * 72.0 / 25.4)

static const SteadLabelSheet sheets[] = {
  { "letter-3x10", N_("30 a page, 2 5/8 × 1 in"), FALSE, 3, 10, IN (2.625), IN (1), IN (0.1875), IN (0.5), IN (2.75), IN (1) },
  { "letter-2x10", N_("20 a page, 4 × 1 in"), FALSE, 2, 10, IN (4), IN (1), IN (0.15625), IN (0.5), IN (4.1875), IN (1) },
  { "letter-card", N_("10 cards a page, 3 1/2 × 2 in"), FALSE, 2, 5, IN (3.5), IN (2), IN (0.75), IN (0.5), IN (3.5), IN (2) },
  { "letter-2x5", N_("10 a page, 4 × 2 in"), FALSE, 2, 5, IN (4), IN (2), IN (0.15625), IN (0.5), IN (4.1875), IN (2) },
  { "letter-2x3", N_("6 a page, 4 × 3 1/3 in"), FALSE, 2, 3, IN (4), IN (10.0 / 3), IN (0.15625), IN (0.5), IN (4.1875), IN (10.0 / 3) },
  { "letter-1x2", N_("2 a page, 8 1/2 × 5 1/2 in"), FALSE, 1, 2, IN (8.5), IN (5.5), 0, 0, IN (8.5), IN (5.5) },
  { "a4-3x8", N_("24 a page, 63.5 × 33.9 mm"), TRUE, 3, 8, MM (63.5), MM (33.9), MM (7.2), MM (12.9), MM (66.04), MM (33.9) },
  { "a4-2x7", N_("14 a page, 99.1 × 38.1 mm"), TRUE, 2, 7, MM (99.1), MM (38.1), MM (4.65), MM (15.15), MM (101.6), MM (38.1) },
  { "a4-2x5", N_("10 a page, 99.1 × 57 mm"), TRUE, 2, 5, MM (99.1), MM (57), MM (4.65), MM (6), MM (101.6), MM (57) },
  { "a4-2x4", N_("8 a page, 99.1 × 67.7 mm"), TRUE, 2, 4, MM (99.1), MM (67.7), MM (4.65), MM (13.1), MM (101.6), MM (67.7) },
  { "a4-1x2", N_("2 a page, 210 × 148.5 mm"), TRUE, 1, 2, MM (210), MM (148.5), 0, 0, MM (210), MM (148.5) },
};

const SteadLabelSheet *
stead_label_sheet_list (gsize *n_sheets)
{
  g_return_val_if_fail (n_sheets != NULL, NULL);
  *n_sheets = G_N_ELEMENTS (sheets);
  return sheets;
}

const SteadLabelSheet *
stead_label_sheet_find (const char *id)
{
  for (gsize i = 0; id != NULL && i < G_N_ELEMENTS (sheets); i++)
    if (g_str_equal (sheets[i].id, id))
      return &sheets[i];
  return NULL;
}

const SteadLabelSheet *
stead_label_sheet_default (gboolean metric)
{
  return stead_label_sheet_find (metric ? "a4-2x5" : "letter-2x5");
}

void
stead_label_sheet_place (const SteadLabelSheet *sheet,
                         int                    at,
                         int                   *page,
                         double                *x,
                         double                *y)
{
  int on_page = sheet->columns * sheet->rows;

  g_return_if_fail (at >= 0);
  *page = at / on_page;
  at %= on_page;
  *x = sheet->left + at % sheet->columns * sheet->step_x;
  *y = sheet->top + at / sheet->columns * sheet->step_y;
}

int
stead_label_sheet_pages (const SteadLabelSheet *sheet,
                         int                    first,
                         int                    n)
{
  int on_page = sheet->columns * sheet->rows;

  g_return_val_if_fail (first >= 0 && n >= 0, 0);
  return n == 0 ? 0 : (first % on_page + n + on_page - 1) / on_page;
}
