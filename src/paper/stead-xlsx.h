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

G_END_DECLS
