/* stead-count-repo.h - counts of the store room: what should be there, and what is.
 *
 * Two people count at the end of a day, in one place or everywhere.  A difference
 * gets a reason and becomes a movement "counted"; what agreed is kept as well, so
 * that it can be shown later that it was counted at all.
 */
#pragma once

#include "store/stead-lot-repo.h"

G_BEGIN_DECLS

#define STEAD_COUNT_EVERYWHERE G_GINT64_CONSTANT (-1)   /* for a place */

typedef struct
{
  gint64           lot_id;
  char            *lot_code;
  char            *item_name;
  const SteadUnit *unit;
  char            *place_name;     /* (nullable): where it lies now */
  SteadDay         best_by;
  double           expected_base;  /* by the record, at the end of the day; 0 or more */
  double           counted_base;   /* 0 or more; NAN: not counted (yet), left out when saved */
  char            *reason;         /* (nullable): needed where the two differ */
  gint64           movement_id;    /* that made the record agree; 0: it did.  Read only */
  gint64           cents;          /* that left with what was missing; found goods bring none.  Read only */
} SteadCountLine;

typedef struct
{
  gint64     id;           /* 0: not saved yet */
  SteadDay   day;
  gint64     person_id;    /* who counted */
  gint64     second_id;    /* the second pair of eyes; someone else */
  char      *note;         /* (nullable) */
  GPtrArray *lines;        /* of SteadCountLine, by item name, then oldest first */
} SteadStockCount;

SteadStockCount *stead_stock_count_new  (void) G_GNUC_WARN_UNUSED_RESULT;
void             stead_stock_count_free (SteadStockCount *count);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadStockCount, stead_stock_count_free)

/**
 * stead_count_repo_sheet:
 * @place_id: a place, 0 for what has no place, %STEAD_COUNT_EVERYWHERE for all
 * @day: at the end of which is counted
 *
 * Returns: (transfer full): a count to be filled in, a line for each lot of which
 *   something should be there, or %NULL with @error
 */
SteadStockCount *stead_count_repo_sheet (SteadStore  *store,
                                         gint64       place_id,
                                         SteadDay     day,
                                         GError     **error) G_GNUC_WARN_UNUSED_RESULT;

/**
 * stead_count_repo_save:
 * @count: id 0; what is expected is read anew, so a sheet may be filled in later
 *
 * Refused: fewer than two people, a difference without a reason, a day to come.
 *
 * Returns: %TRUE with id and read-only fields filled in, or %FALSE with @error
 */
gboolean         stead_count_repo_save  (SteadStore       *store,
                                         SteadStockCount  *count,
                                         GError          **error) G_GNUC_WARN_UNUSED_RESULT;

/* Returns: (transfer full) (element-type SteadStockCount): newest first, with their lines */
GPtrArray       *stead_count_repo_list  (SteadStore  *store,
                                         GError     **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
