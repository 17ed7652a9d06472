/* stead-limit.h - the limits of food safety: a table with citations, and readings judged by it.
 *
 * Invariants:
 *  1. A temperature limit is kept in °F, as the code prints it.  A reading in °C
 *     is converted, never the limit: 135 °F is met by 135.0 and not by 134.9.
 *  2. At the limit passes, unless the row says "above" or "below".  Nothing is
 *     rounded or interpolated before comparing.
 *  3. A row without a citation does not get into a table.
 *  4. A local row may be stricter than the shipped one, never looser.
 *
 * Rows are decision tables: of those that fit, the first one counts.  No file is
 * read here; the shipped tables stand in data/limits.
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

typedef struct _SteadLimitTable SteadLimitTable;

typedef enum
{
  STEAD_LIMIT_AT_LEAST,
  STEAD_LIMIT_AT_MOST,
  STEAD_LIMIT_ABOVE,      /* more than, not at it */
  STEAD_LIMIT_BELOW,      /* less than, not at it */
  STEAD_LIMIT_IS,         /* a figure or a word that nothing is compared with */
} SteadLimitDirection;

/* One row.  It belongs to its table; the strings are never NULL unless said. */
typedef struct
{
  const char          *id;              /* "cook-egg-held-155", one of its kind */
  const char          *process;         /* "cook", "hold_cold", "can_boiling_water" */
  const char          *subject;         /* foods, solutions or instruments, with | between */
  const char          *when;            /* conditions with spaces between: "jar=pint altitude_ft<=1000" */
  const char          *measure;         /* what is measured: "food_temp", "ph" */
  SteadLimitDirection  direction;
  double               value;           /* in @unit; NAN if the limit is a word */
  const char          *word;            /* (nullable): the limit as a word or text */
  const char          *unit;            /* F, Fdiff, Cdiff, s, min, h, d, y, pH, aw, mg/L, in … word, text */
  gboolean             has_time;
  SteadLimitDirection  time_direction;
  double               time_s;          /* the value must hold for, or be reached in; seconds */
  const char          *hazard;          /* "salmonella", "botulism" */
  const char          *source;          /* "FDA Food Code", or "common practice, no source" */
  const char          *where;           /* "§3-401.11(A)(2)" */
  const char          *version;         /* year, or "undated" */
  const char          *status;          /* read, derived, memory, practice; local for a stricter row */
  const char          *note;            /* "" for none */
  const char          *replaces;        /* (nullable): of a local row: what the shipped one cites */
} SteadLimit;

/* Something known about the case.  A list of facts ends with a NULL name. */
typedef struct
{
  const char *name;
  const char *word;      /* NULL: the fact is a number */
  double      number;
} SteadLimitFact;

/**
 * stead_limit_table_new:
 * Returns: (transfer full): an empty table, for the edition of 2022
 */
SteadLimitTable *stead_limit_table_new (void) G_GNUC_WARN_UNUSED_RESULT;

/**
 * stead_limit_table_new_over:
 * @base: must stay as long as the new table does
 *
 * Returns: (transfer full): a table with the rows and the edition of @base.  What is changed
 *   in it leaves @base as it is.
 */
SteadLimitTable *stead_limit_table_new_over (const SteadLimitTable *base) G_GNUC_WARN_UNUSED_RESULT;
void stead_limit_table_free (SteadLimitTable *table);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadLimitTable, stead_limit_table_free)

/**
 * stead_limit_table_add_csv:
 * @name: what to call the text in a message: "cook"
 * @csv: rows with the columns that data/limits/README.md names, in any order
 * @error: return location for a #GError in %STEAD_CORE_ERROR
 *
 * Returns: %TRUE; or %FALSE with the table as it was: a column or a cell is
 *   missing, a number or a condition cannot be read, an id stands there twice
 */
gboolean stead_limit_table_add_csv (SteadLimitTable  *table,
                                    const char       *name,
                                    GBytes           *csv,
                                    GError          **error) G_GNUC_WARN_UNUSED_RESULT;

/**
 * stead_limit_table_set_edition:
 * @edition: 2013, 2017 or 2022: the Food Code that is law where the farm is
 *
 * Stands in wherever the facts do not name an edition.
 */
void stead_limit_table_set_edition (SteadLimitTable *table,
                                    int              edition);

guint stead_limit_table_get_n_rows (const SteadLimitTable *table);

/**
 * stead_limit_table_get_row:
 * @i: below the number of rows
 *
 * Returns: (transfer none): the row in force; a local one in the place of the
 *   shipped one
 */
const SteadLimit *stead_limit_table_get_row (const SteadLimitTable *table,
                                             guint                  i);

/**
 * stead_limit_table_by_id:
 * Returns: (transfer none) (nullable): the row in force with this id
 */
const SteadLimit *stead_limit_table_by_id (const SteadLimitTable *table,
                                           const char            *id);

/**
 * stead_limit_table_find:
 * @process: "can_boiling_water"
 * @subject: "standard_tomato_sauce"
 * @measure: (nullable): "process_time"; %NULL for whatever is measured
 * @facts: (nullable) (array zero-terminated=1): what is known; a condition on
 *   anything else does not hold
 * @error: return location for a #GError in %STEAD_CORE_ERROR
 *
 * Returns: (transfer none) (nullable): the first row that fits; or %NULL with
 *   @error set, which names the fact that is missing, if it is one
 */
const SteadLimit *stead_limit_table_find (const SteadLimitTable  *table,
                                          const char             *process,
                                          const char             *subject,
                                          const char             *measure,
                                          const SteadLimitFact   *facts,
                                          GError                **error) G_GNUC_WARN_UNUSED_RESULT;

/**
 * stead_limit_fits:
 * @facts: (array zero-terminated=1): what is known; a condition on anything else does not hold
 *
 * Returns: whether the conditions of a row, also of one that was kept, hold
 */
gboolean stead_limit_fits (const SteadLimit     *limit,
                           const SteadLimitFact *facts);

/**
 * stead_limit_table_list:
 * Returns: (transfer container) (element-type SteadLimit): all rows that fit, as
 *   for stead_limit_table_find(), in the order of the table; an empty array for none
 */
GPtrArray *stead_limit_table_list (const SteadLimitTable *table,
                                   const char            *process,
                                   const char            *subject,
                                   const char            *measure,
                                   const SteadLimitFact  *facts) G_GNUC_WARN_UNUSED_RESULT;

/**
 * stead_limit_table_step:
 * @value: a reading in the unit of the rows
 *
 * A table of steps, like the hold times of a roast: of the rows that ask for at
 * least some value, the highest one that @value reaches.  Below the first step
 * there is none; between steps nothing is interpolated.
 *
 * Returns: (transfer none) (nullable): the step, or %NULL with @error set
 */
const SteadLimit *stead_limit_table_step (const SteadLimitTable  *table,
                                          const char             *process,
                                          const char             *subject,
                                          const char             *measure,
                                          const SteadLimitFact   *facts,
                                          double                  value,
                                          GError                **error) G_GNUC_WARN_UNUSED_RESULT;

/**
 * stead_limit_table_lowest:
 * Returns: (transfer none) (nullable): the row that asks for the least value, or
 *   %NULL with @error set
 */
const SteadLimit *stead_limit_table_lowest (const SteadLimitTable  *table,
                                            const char             *process,
                                            const char             *subject,
                                            const char             *measure,
                                            const SteadLimitFact   *facts,
                                            GError                **error) G_GNUC_WARN_UNUSED_RESULT;

/**
 * stead_limit_value_in:
 * @unit: s, min, h or d for a span of time; F or C for a temperature; Fdiff or
 *   Cdiff for the difference of two; else the unit of the row
 *
 * Returns: the value of the row in @unit; NAN if it is none
 */
double stead_limit_value_in (const SteadLimit *limit,
                             const char       *unit);

/**
 * stead_fahrenheit_from_celsius:
 *
 * °C x 9/5 + 32, exact: a reading with up to nine digits behind the point lies on
 * the same side of a limit as on paper.  41 °F is 5 °C and no less.
 */
double stead_fahrenheit_from_celsius (double temp_c) G_GNUC_CONST;

/**
 * stead_limit_compare:
 * Returns: -1, 0 or 1 as @value is less than, at, or more than @limit; binary
 *   noise below 1e-9 is no difference
 */
int stead_limit_compare (double value,
                         double limit) G_GNUC_CONST;

/* Judging a reading. */

typedef enum
{
  STEAD_LIMIT_NOT_MET,
  STEAD_LIMIT_WITHIN_ERROR,   /* met, but by less than the instrument can be off */
  STEAD_LIMIT_MET,
} SteadLimitVerdict;

typedef struct
{
  double      value;     /* as the instrument showed it */
  const char *unit;      /* its scale: F or C; else the unit of the row */
  double      error;     /* plus or minus, as stated or found in melting ice; 0: not known */
  double      step;      /* the smallest step that it shows; 0: not known */
  double      time_s;    /* how long it held, or how long it took; NAN: not timed */
} SteadLimitReading;

typedef struct
{
  SteadLimitVerdict verdict;
  double            value;      /* the reading in the unit of the row */
  double            margin;     /* on the right side of the limit by so much; below 0: short of it */
  double            doubt;      /* error and half a step, in the unit of the row */
  double            short_s;    /* seconds that the hold is too short, or the way took too long; 0: none */
} SteadJudgement;

/**
 * stead_limit_judge:
 * @limit: a row that compares (not %STEAD_LIMIT_IS)
 * @reading: what was measured
 * @out: (out): the judgement
 * @error: return location for a #GError in %STEAD_CORE_ERROR
 *
 * Value and time must both be met.  A time that was not taken is not met, unless
 * the row asks for none.
 *
 * Returns: %TRUE, or %FALSE if the reading is in another unit
 */
gboolean stead_limit_judge (const SteadLimit        *limit,
                            const SteadLimitReading *reading,
                            SteadJudgement          *out,
                            GError                 **error) G_GNUC_WARN_UNUSED_RESULT;

/**
 * stead_limit_table_judge:
 * @out_limit: (out) (optional) (transfer none): the row that decided
 *
 * Judges by all rows that fit, where any of them is enough: 155 °F for 17 s, or
 * 150 °F for 60 s.  If none is met, the row nearest to it decides: the step that
 * the temperature reaches, or else the lowest one.
 *
 * Returns: %TRUE, or %FALSE if no row fits or the reading is in another unit
 */
gboolean stead_limit_table_judge (const SteadLimitTable   *table,
                                  const char              *process,
                                  const char              *subject,
                                  const char              *measure,
                                  const SteadLimitFact    *facts,
                                  const SteadLimitReading *reading,
                                  SteadJudgement          *out,
                                  const SteadLimit       **out_limit,
                                  GError                 **error) G_GNUC_WARN_UNUSED_RESULT;

/**
 * stead_limit_rows_judge:
 * @rows: (element-type SteadLimit): those that only state something are passed over
 * @all: whether all must be met; %FALSE: any one is enough
 * @out_limit: (out) (optional) (transfer none): the row that decided
 *
 * As stead_limit_table_judge(), by rows that were kept.  Where all must be met, the
 * one that is met worst decides.
 *
 * Returns: %TRUE, or %FALSE if no row compares or the reading is in another unit
 */
gboolean stead_limit_rows_judge (const GPtrArray          *rows,
                                 gboolean                  all,
                                 const SteadLimitReading  *reading,
                                 SteadJudgement           *out,
                                 const SteadLimit        **out_limit,
                                 GError                  **error) G_GNUC_WARN_UNUSED_RESULT;

/* A stricter local rule. */
typedef struct
{
  const char *id;         /* of the row that it takes the place of */
  double      value;      /* in the unit of the row; NAN: as it was */
  double      time_s;     /* seconds; NAN: as it was */
  const char *source;     /* the local code */
  const char *where;      /* its section */
  const char *version;    /* (nullable): its year */
} SteadLimitLocal;

/**
 * stead_limit_table_add_local:
 * @local: the rule; its strings are copied
 * @error: return location for a #GError in %STEAD_CORE_ERROR
 *
 * Returns: %TRUE; or %FALSE with the table as it was: the rule is looser than the
 *   shipped row, has no source, or the row is no limit that can be moved
 */
gboolean stead_limit_table_add_local (SteadLimitTable        *table,
                                      const SteadLimitLocal  *local,
                                      GError                **error) G_GNUC_WARN_UNUSED_RESULT;

/* Whether stead_limit_table_add_local() would take it, with the same reasons if not. */
gboolean stead_limit_check_local (const SteadLimitTable  *table,
                                  const SteadLimitLocal  *local,
                                  GError                **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
