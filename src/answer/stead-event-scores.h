/* stead-event-scores.h - the scores of an event as lines that can be compared.
 *
 * A placing by one person and a written test by the whole team are two things: each part
 * and person has a line of its own.
 */
#pragma once

#include "core/stead-score.h"
#include "store/stead-event-repo.h"

G_BEGIN_DECLS

typedef struct
{
  GArray           *lines;    /* of SteadScoreLine, the first one begun earliest; of many the latest
                               * begun %STEAD_SCORE_MOST_LINES */
  SteadScoreSeries  series;   /* the same lines, as a chart draws them; n 0: no score yet */
  char             *text;     /* (nullable): all of them in words, plain; NULL: no score yet */
} SteadEventScores;

SteadEventScores *stead_event_scores_ref  (SteadEventScores *self) G_GNUC_WARN_UNUSED_RESULT;
/* Lets go of one reference. */
void              stead_event_scores_free (SteadEventScores *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadEventScores, stead_event_scores_free)

/* @scores: (element-type SteadEventScore): by day; @event: the day of the event.
 * Returns: (transfer full) */
SteadEventScores *stead_event_scores_new  (const GPtrArray *scores, SteadDay event) G_GNUC_WARN_UNUSED_RESULT;
/* Of the line @i of the series, its score @k: "Placing, Maya R., Nov 15: 72%" */
char             *stead_event_scores_hint (const SteadEventScores *self, int i, gsize k) G_GNUC_WARN_UNUSED_RESULT;
/* "Nov 15: Placing, Maya R., 36 of 50" */
char             *stead_event_score_text  (const SteadEventScore *score) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
