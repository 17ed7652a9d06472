/* stead-language.h - words in another language than the program's, for a paper that others read. */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* The languages that the program speaks: "en", "es". */
const char * const *stead_language_list (void);

/**
 * stead_language_init:
 *
 * Once, after the folder of the translations is known and before the first thread and the
 * first translated word.  Without it stead_language_enter() may go unheard.
 */
void  stead_language_init  (void);

/**
 * stead_language_enter:
 * @language: one of stead_language_list()
 *
 * From here on all words of the process are in @language, up to stead_language_leave():
 * short, on the main thread, and never across an iteration of the main loop.  What was
 * translated before stays as it is.
 *
 * Returns: (transfer full): what stead_language_leave() takes
 */
char *stead_language_enter (const char *language) G_GNUC_WARN_UNUSED_RESULT;
/* @former: (transfer full) */
void  stead_language_leave (char *former);

G_END_DECLS
