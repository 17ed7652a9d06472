/* stead-csv.h - rows as comma-separated values, RFC 4180.
 *
 * Lines end in CR LF; a field with a separator, a quote, CR or LF is quoted, and
 * a quote in it doubled; a mark (BOM) stands first, since common spreadsheets
 * need it to see UTF-8 (from memory).  A text that a spreadsheet would take for a
 * formula (it begins with = + - @, a tab, CR or LF) gets an apostrophe before it
 * and is quoted, as OWASP's page on CSV injection advises; numbers are written
 * from numbers and left alone.
 */
#pragma once

#include "answer/stead-log-answer.h"

G_BEGIN_DECLS

/**
 * stead_csv_from_log:
 * @log: the rows
 * @for_spreadsheet: numbers with the locale's decimal sign, and where that is a
 *   comma, a semicolon between the fields; else always point and comma
 *
 * Days are written as 2026-03-03 either way: no reader mistakes them.
 *
 * Returns: (transfer full): the whole file
 */
GBytes *stead_csv_from_log (const SteadLogAnswer *log,
                            gboolean              for_spreadsheet) G_GNUC_WARN_UNUSED_RESULT;

/* Adds one text to a line, quoted and made safe as it needs. */
void stead_csv_add_text (GString    *line,
                         const char *text,
                         char        separator);

G_END_DECLS
