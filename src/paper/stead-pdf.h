/* stead-pdf.h - pages as a PDF: tagged, with title, author, language, outline, fixed dates. */
#pragma once

#include "paper/stead-pages.h"

G_BEGIN_DECLS

/**
 * stead_pdf_from_pages:
 * @pages: settled
 * @language: as a tag of BCP 47
 * @error: %STEAD_PAPER_ERROR_WRITE
 *
 * The dates in the file are the document's own day at noon, so that the same
 * pages give the same bytes.
 *
 * Returns: (transfer full): the file, or %NULL
 */
GBytes *stead_pdf_from_pages (const SteadPages  *pages,
                              const char        *language,
                              GError           **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
