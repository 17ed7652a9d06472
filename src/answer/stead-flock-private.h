/* stead-flock-private.h - what the flock answer and the due answer share. */
#pragma once

#include "answer/stead-flock-answer.h"

G_BEGIN_DECLS

/* Days over which the present use of a thing is measured. */
#define STEAD_USE_DAYS 14

/* Weeks of lay that a laying curve is good for; beyond, nothing is expected aloud. */
#define STEAD_CURVE_MAX_LAY_WEEKS 80.0

/**
 * stead_flock_low_days:
 * @out_run: (out): complete days on end, up to the last one, with clearly few eggs
 * @out_of_seven: (out): such days among the last seven
 *
 * Clearly few: fewer than a flock that lays as expected would lay on all but
 * 2.5 in 100 days (binomial: hens alive, rate of the curve at that age).  Days
 * marked as left out, and days without eggs entered, do not count.
 */
gboolean stead_flock_low_days (SteadStore        *store,
                               const SteadFlock  *flock,
                               SteadDay           today,
                               int               *out_run,
                               int               *out_of_seven,
                               GError           **error) G_GNUC_WARN_UNUSED_RESULT;

/* What to look at first, or NULL if all is well: two days on end, or three of seven. */
char *stead_flock_low_caution (int run,
                               int of_seven) G_GNUC_WARN_UNUSED_RESULT;

/* The hen-day rate expected at an age; NAN past the range of the curve. */
double stead_flock_expected_frac (const SteadFlock *flock,
                                  double            age_weeks);

/* Sentence, in the words for the head of the page. */
char *stead_flock_sentence (const SteadFlockAnswer *self) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
