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
 * @out: (out): none of a flock that is over
 *
 * Clearly few: below the band that 19 of 20 days lie in, by the curve learned from the
 * days before those seven, and besides fewer than hens that lay at that rate would lay
 * on all but 2.5 in 100 days (binomial, as small flocks give few eggs).  Days marked
 * as left out, and days without eggs entered, do not count.
 */
gboolean stead_flock_low_days (SteadStore        *store,
                               const SteadFlock  *flock,
                               SteadDay           today,
                               SteadFlockLow     *out,
                               GError           **error) G_GNUC_WARN_UNUSED_RESULT;

/* What to look at first, or NULL if all is well: two days on end, or three of seven. */
char *stead_flock_low_caution (const SteadFlockLow *low) G_GNUC_WARN_UNUSED_RESULT;

/* "Nov 28: 10 eggs of 27 hens, 19.3 expected, at least 14.6", a line a day. */
char *stead_flock_low_worked (const SteadFlockLow *low,
                              SteadSpecies         species) G_GNUC_WARN_UNUSED_RESULT;

/* The hen-day rate expected at an age; NAN past the range of the curve. */
double stead_flock_expected_frac (const SteadFlock *flock,
                                  double            age_weeks);

/**
 * stead_flock_forecast:
 * @self: with flock, hens, age and weeks read
 * @today: a complete week ends before it
 *
 * Learns the curve and fills in what lies ahead; an ended flock is not fitted.
 * A log that no curve comes near is told in the note, not by a failure.
 */
gboolean stead_flock_forecast (SteadStore        *store,
                               SteadFlockAnswer  *self,
                               SteadDay           today,
                               GError           **error) G_GNUC_WARN_UNUSED_RESULT;

/* The weeks that stand apart: notes for the chart, and a sentence on them. */
gboolean stead_flock_notes (SteadStore        *store,
                            SteadFlockAnswer  *self,
                            GError           **error) G_GNUC_WARN_UNUSED_RESULT;

/* "Expect 12 to 14 dozen a week until Jan 23.", or NULL */
char *stead_flock_expect_sentence (const SteadFlockAnswer *self,
                                   SteadDay                today) G_GNUC_WARN_UNUSED_RESULT;

/* "12 to 14 dozen", or eggs if they are few */
char *stead_flock_eggs_range (const SteadBand *eggs) G_GNUC_WARN_UNUSED_RESULT;

/* Sentence, in the words for the head of the page. */
char *stead_flock_sentence (const SteadFlockAnswer *self,
                            SteadDay                today) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
