/* stead-xlsx.h - rows as a workbook: real numbers, real dates, one sheet. */
#pragma once

#include "answer/stead-log-answer.h"

G_BEGIN_DECLS

/**
 * stead_xlsx_from_log:
 * @log: the rows
 * @author: of the document's properties
 * @error: %STEAD_PAPER_ERROR_WRITE
 *
 * What people typed is only ever written as a text, never as a formula; the sums
 * under the rows are the only formulas.  The dates in the properties are the
 * document's own day, so that the same rows give the same bytes.
 *
 * Returns: (transfer full): the whole file, or %NULL
 */
GBytes *stead_xlsx_from_log (const SteadLogAnswer  *log,
                             const char            *author,
                             GError               **error) G_GNUC_WARN_UNUSED_RESULT;

/* One sheet, and the columns of numbers that a chart beside it shows over the first column. */
typedef struct
{
  const SteadLogAnswer *log;
  int                   charts[2];   /* columns, a chart each; 0: none */
} SteadXlsxSheet;

/* As stead_xlsx_from_log(), with a sheet for each log; @title is the document's. */
GBytes *stead_xlsx_from_sheets (const SteadXlsxSheet  *sheets,
                                gsize                  n_sheets,
                                const char            *title,
                                const char            *author,
                                GError               **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
