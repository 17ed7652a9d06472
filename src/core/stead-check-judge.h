/* stead-check-judge.h - one reading against one line of the plan of checks, and what to do if it fails.
 *
 * A reading that may be mistyped is no reading yet: it is asked about first.
 */
#pragma once

#include "core/stead-check-plan.h"
#include "core/stead-sanitizer.h"

G_BEGIN_DECLS

/* A time that is not known. */
#define STEAD_CHECK_NO_TIME G_MININT64

typedef struct
{
  SteadLimitReading    shown;         /* value and unit as typed: "F", "C", or the line's unit; error and step of the
                                       * instrument; time_s: how long it held or took, NAN */
  gint64               at;            /* seconds since 1970, UTC */
  gint64               now;           /* likewise */
  gint64               began;         /* the step; STEAD_CHECK_NO_TIME */
  double               elapsed_h;     /* since the clock of cooling or heating again started; NAN */
  double               since_good_h;  /* since the last reading of it that was right; NAN: none */
  gboolean             reheated;      /* this pot was heated again once already */
  gboolean             confirmed;     /* the person said: it is as typed */
  double               elevation_ft;  /* for boiling water */
  const SteadSolution *solution;      /* (nullable): of a sanitizer, instead of @shown */
} SteadCheckReading;

typedef enum
{
  STEAD_CHECK_ODD_NO,
  STEAD_CHECK_ODD_FUTURE,       /* later than now */
  STEAD_CHECK_ODD_BEFORE,       /* before the step began */
  STEAD_CHECK_ODD_SCALE,        /* as if typed in the other scale */
  STEAD_CHECK_ODD_IMPOSSIBLE,   /* in neither scale what such food can have */
} SteadCheckOdd;

typedef enum
{
  STEAD_CHECK_MET,
  STEAD_CHECK_WITHIN_ERROR,   /* met, but by less than the instrument can be off */
  STEAD_CHECK_IF_HELD,        /* hot enough, if it stays so for the time of the row */
  STEAD_CHECK_OPEN,           /* cooling: nothing missed yet, not all reached */
  STEAD_CHECK_NOT_MET,
} SteadCheckOutcome;

typedef struct
{
  SteadCheckOdd        odd;           /* if not NO, nothing else is filled in but … */
  const char          *other_unit;    /* … (nullable): the scale that fits */
  SteadCheckOutcome    outcome;
  const SteadLimit    *row;           /* that decided */
  gboolean             own;           /* the table's limit is met, but not the recipe's own */
  double               margin;        /* on the right side by so much, in the unit of the row; below 0: short of it */
  double               doubt;         /* what the instrument can be off, likewise */
  double               short_s;       /* held too short, or took too long, by so much */
  double               hold_s;        /* of IF_HELD: how long it must stay so */
  double               error_f;       /* of a thermometer check: how far off it is, with its sign; NAN */
  SteadSolutionFaults  faults;        /* of a sanitizer */
  const SteadLimit    *correction;    /* (nullable): the row that says what to do now */
  gboolean             holds_lot;     /* what was made is not sold until that is settled */
} SteadCheckJudgement;

/**
 * stead_check_judge:
 * @table: the one that the plan was made with
 * @line: one that is read, not ticked
 * @out: (out): the judgement
 * @error: return location for a #GError in %STEAD_CORE_ERROR
 *
 * Where any row is enough the best one decides; where all count, the worst.  A line
 * without rows is judged by the recipe's own limit alone.
 *
 * Returns: %TRUE, or %FALSE if the reading is in a unit that the line does not have, or a
 *   measurement of the sanitizer is missing
 */
gboolean stead_check_judge (const SteadLimitTable    *table,
                            const SteadCheckLine     *line,
                            const SteadCheckReading  *reading,
                            SteadCheckJudgement      *out,
                            GError                  **error) G_GNUC_WARN_UNUSED_RESULT;

/**
 * stead_check_correction:
 * @line: that was not met, or not ticked
 * @reading: (nullable): what was read
 *
 * The rows of "correct".  Where none fits what is known, the food is thrown away: a
 * history that is unknown is a bad one.
 *
 * Returns: (transfer none) (nullable): the row whose word says what to do
 */
const SteadLimit *stead_check_correction (const SteadLimitTable   *table,
                                          const SteadCheckLine    *line,
                                          const SteadCheckReading *reading);

G_END_DECLS
