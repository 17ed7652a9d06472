/* stead-check-verdict.h - "Is this reading right, how sure is that, and what now?" in words. */
#pragma once

#include "answer/stead-check-plan-answer.h"
#include "core/stead-check-judge.h"

G_BEGIN_DECLS

typedef struct
{
  SteadCheckJudgement  judged;
  char                *sentence;    /* plain: "Met by 3 °F.  The limit is at least 155 °F." */
  char                *question;    /* (nullable): about an odd reading; then nothing is judged yet */
  char                *as_typed;    /* (nullable): the answer that confirms it: "It is 74 °F" */
  char                *otherwise;   /* (nullable): the other scale's: "It is 74 °C" */
  char                *correction;  /* (nullable): what to do now */
  char                *correction_source;  /* (nullable) */
} SteadCheckVerdict;

void stead_check_verdict_free (SteadCheckVerdict *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadCheckVerdict, stead_check_verdict_free)

/**
 * stead_check_verdict_new:
 * @plan: holds the line and its table
 * @line: one of its lines, one that is read
 *
 * Returns: (transfer full): the verdict; or %NULL with @error, as stead_check_judge()
 */
SteadCheckVerdict *stead_check_verdict_new (const SteadCheckPlanAnswer  *plan,
                                            const SteadCheckLine        *line,
                                            const SteadCheckReading     *reading,
                                            GError                     **error) G_GNUC_WARN_UNUSED_RESULT;

/**
 * stead_check_correction_text:
 * @correction: a row of "correct"
 *
 * Returns: (transfer full): "Cook it on, and probe again."
 */
char *stead_check_correction_text (const SteadLimit *correction) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
