/* stead-pdf-language.h - tells a finished PDF what language it is in.
 *
 * cairo 1.16 tags the structure but writes no language, and without one a screen
 * reader guesses the voice.  The PDF is not rewritten: a new catalog is appended
 * with its own cross-reference section, an incremental update as ISO 32000-1
 * section 7.5.6 sets it out, so the pages stay byte for byte what they were.
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/**
 * stead_pdf_set_language:
 * @pdf: a whole PDF with a classic cross-reference table, as cairo writes it up to version 1.4
 * @language: a tag of BCP 47: "en-US"; letters, digits and hyphens alone
 * @error: %STEAD_PAPER_ERROR_WRITE if @pdf is not built like that
 *
 * Also asks viewers to show the document's title instead of the file's name.
 *
 * Returns: (transfer full): the PDF with its language, or %NULL
 */
GBytes *stead_pdf_set_language (GBytes      *pdf,
                                const char  *language,
                                GError     **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
