/* stead-log-answer.h - "What was written down?", as rows for a spreadsheet.
 *
 * Cells keep their kind: a count stays a count, money stays whole minor units, a
 * day a day.  How they are written is the business of whoever writes them.
 */
#pragma once

#include "answer/stead-cost-answer.h"

G_BEGIN_DECLS

typedef enum
{
  STEAD_CELL_TEXT,
  STEAD_CELL_DAY,
  STEAD_CELL_COUNT,    /* whole */
  STEAD_CELL_NUMBER,   /* with digits after the point */
  STEAD_CELL_MONEY,    /* minor units */
} SteadCellKind;

typedef struct
{
  char          *title;    /* its heading, with the unit: "Feed (lb)" */
  SteadCellKind  kind;
  int            digits;   /* of a number, after the point */
  gboolean       sum;      /* a total under it makes sense */
} SteadLogColumn;

typedef struct
{
  gboolean  filled;   /* %FALSE: nothing was entered, which is not 0 */
  char     *text;
  gint64    whole;    /* day, count or minor units */
  double    number;
} SteadLogCell;

typedef struct
{
  char      *title;     /* "Log of Brown hens" */
  char      *currency;  /* ISO 4217, of the money */
  SteadDay   today;
  SteadDay   from, to;
  GArray    *columns;   /* of SteadLogColumn */
  GPtrArray *rows;      /* of SteadLogCell arrays, each as long as the columns */
} SteadLogAnswer;

void stead_log_answer_free (SteadLogAnswer *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadLogAnswer, stead_log_answer_free)

const SteadLogColumn *stead_log_answer_column (const SteadLogAnswer *self,
                                               guint                 column);
const SteadLogCell   *stead_log_answer_cell   (const SteadLogAnswer *self,
                                               guint                 row,
                                               guint                 column);

/**
 * stead_log_answer_flock:
 * @store: an open farm
 * @flock_id: whose log
 * @error: return location for a #GError
 *
 * The whole log, oldest first, a row an entry; hens are those alive when that
 * day began.
 *
 * Returns: (transfer full): with no row where nothing was entered
 */
SteadLogAnswer *stead_log_answer_flock (SteadStore  *store,
                                        gint64       flock_id,
                                        GError     **error) G_GNUC_WARN_UNUSED_RESULT;

/**
 * stead_log_answer_fish:
 * @fish_id: whose log
 *
 * As stead_log_answer_flock(); fish are those alive when that day began.
 */
SteadLogAnswer *stead_log_answer_fish (SteadStore  *store,
                                       gint64       fish_id,
                                       GError     **error) G_GNUC_WARN_UNUSED_RESULT;

/**
 * stead_log_answer_weighings:
 * @fish_id: whose weighings
 *
 * Oldest first: a row a sample that was weighed in bulk, a row a fish where each was
 * weighed; so an import of them makes the same weighings.
 */
SteadLogAnswer *stead_log_answer_weighings (SteadStore  *store,
                                            gint64       fish_id,
                                            GError     **error) G_GNUC_WARN_UNUSED_RESULT;

/**
 * stead_log_answer_cost:
 * @store: an open farm
 * @cost: the cost of a product over a period
 * @error: return location for a #GError
 *
 * Every entry behind every part of the cost sheet, part by part, unpaid work last;
 * the amounts of one part sum to its total.
 *
 * Returns: (transfer full)
 */
SteadLogAnswer *stead_log_answer_cost (SteadStore             *store,
                                       const SteadCostAnswer  *cost,
                                       GError                **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
