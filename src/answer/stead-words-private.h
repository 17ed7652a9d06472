/* stead-words-private.h - what the answers' sentences share among themselves. */
#pragma once

#include "answer/stead-words.h"

G_BEGIN_DECLS

/* The number that a plural is chosen by; for counts that do not fit, or are negative. */
gulong stead_words_plural (gint64 n);

/* As stead_words_units(), with up to @digits after the point. */
char *stead_words_units_exact (SteadPack pack,
                               double    count,
                               int       digits) G_GNUC_WARN_UNUSED_RESULT;

/* Whole sentences, one after the other: adds one (NULL or empty: nothing), and
 * ends with the text, or NULL if there was none. */
void  stead_words_add (GString    *text,
                       const char *sentence);
char *stead_words_end (GString *text) G_GNUC_WARN_UNUSED_RESULT;

/* "Carton", "Carton and Label", "Carton, Label and String" */
char *stead_words_list (const char * const *names) G_GNUC_WARN_UNUSED_RESULT;

/* How long the feed lasts, as a sentence with markup; %NULL if no use of it is known
 * (@days: NAN). */
char *stead_words_feed_lasts (double on_hand_kg,
                              double days) G_GNUC_WARN_UNUSED_RESULT;

/* A measured number with about three digits: "3.91", "45.9", "620". */
char *stead_words_number (double value) G_GNUC_WARN_UNUSED_RESULT;

/* (transfer full) for @title and @worked, copies of the others. */
SteadWhy *stead_why_new (char       *title,
                         const char *formula,
                         char       *worked,
                         const char *source) G_GNUC_WARN_UNUSED_RESULT;

/* @why: (nullable): %NULL copies to %NULL */
SteadWhy *stead_why_copy (const SteadWhy *why) G_GNUC_WARN_UNUSED_RESULT;

/* @why: (nullable) (transfer full): nothing is added of %NULL */
void stead_whys_add (GPtrArray *whys,
                     SteadWhy  *why);

G_END_DECLS
