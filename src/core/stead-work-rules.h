/* stead-work-rules.h - who may use which tool, by age.
 *
 * The ages are those of the federal rules for employment, kept as policy for class
 * projects; state law and school policy may be stricter, and come first.  Building for a
 * school may not count as farm work (our reading): then the stricter of both lists holds.
 * An advisor decides and the reason is logged.  Nothing here says that work is safe.
 * Source: 29 CFR 570.71 (farm, under 16), 570.72 (student-learners), hazardous occupations
 * orders 5, 14, 16, 17 (non-farm, under 18); the rows are in data/rules/work.csv.
 */
#pragma once

#include "core/stead-limit.h"

G_BEGIN_DECLS

typedef enum
{
  STEAD_WORK_FARM,
  STEAD_WORK_NON_FARM,
  STEAD_WORK_BUILDING,   /* the stricter of both */
} SteadWorkKind;

typedef enum
{
  STEAD_TOOL_ALLOW,
  STEAD_TOOL_ALLOW_SUPERVISED,
  STEAD_TOOL_BLOCK,
} SteadToolFlag;

typedef struct
{
  SteadWorkKind  kind;
  const char    *task;        /* "power_circular_saw": a word of the table */
  double         age_y;       /* full years */
  double         height_ft;   /* of a ladder or scaffold; NAN: not said, the highest */
  double         power_hp;    /* of a tractor, at its take-off; NAN: not said, the strongest */
  gboolean       exemption;   /* the student-learner's agreement is on file */
} SteadToolUse;

/**
 * stead_tool_judge:
 * @rules: with data/rules/work.csv
 * @use: who wants to do what
 * @out_row: (out) (optional) (nullable) (transfer none): the row that set an age; %NULL
 *   if none does
 * @out: (out): the flag
 * @error: return location for a #GError in %STEAD_CORE_ERROR
 *
 * Below the age of the task: blocked, with an exemption allowed under supervision (in
 * non-farm work from 16 on).  Otherwise under 16 allowed under supervision.
 *
 * Returns: %TRUE; or %FALSE with @out left alone for a task that no list knows, or an age
 *   that cannot be
 */
gboolean stead_tool_judge (const SteadLimitTable  *rules,
                           const SteadToolUse     *use,
                           const SteadLimit      **out_row,
                           SteadToolFlag          *out,
                           GError                **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
