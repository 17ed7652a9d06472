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
  GArray *lines;        /* of SteadScoreLine, the first one begun earliest; of many the latest begun
                         * %STEAD_SCORE_MOST_LINES */
  char   *text;         /* (nullable): all of them in words, plain; NULL: no score yet */
} SteadEventScores;

void stead_event_scores_free (SteadEventScores *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadEventScores, stead_event_scores_free)

/* @scores: (element-type SteadEventScore): by day.  Returns: (transfer full) */
SteadEventScores *stead_event_scores_new (const GPtrArray *scores) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
