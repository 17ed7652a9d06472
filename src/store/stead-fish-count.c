/* stead-fish-count.c - how many fish there are, from what came and went.
 *
 * Within a day it is not known what was first.  So a day is taken as a whole: no
 * group is below zero at the end of any day.
 */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "store/stead-fish-private.h"

/* --- the changes of the number ------------------------------------------------ */

GArray *
stead_fish_changes (SteadStore              *store,
                    gint64                   fish_id,
                    const SteadFishWithout  *without,
                    GError                 **error)
{
  static const char sql[] =
    "SELECT day, sum (n) FROM"
    " (SELECT day, -(deaths + culled) AS n FROM batch_entry WHERE batch_id = ?1 AND deaths + culled > 0 AND id <> ?2"
    "  UNION ALL SELECT day, -pieces FROM harvest WHERE batch_id = ?1 AND pieces > 0 AND id <> ?3"
    "  UNION ALL SELECT day, n FROM fish_move WHERE to_id = ?1 AND id <> ?4"
    "  UNION ALL SELECT day, -n FROM fish_move WHERE from_id = ?1 AND id <> ?4)"
    " GROUP BY day ORDER BY day";
  g_autoptr(GArray) changes = g_array_new (FALSE, FALSE, sizeof (SteadFishCount));
  g_autoptr(SteadStmt) stmt = stead_store_prepare (store, sql, error);
  int found;

  if (stmt == NULL)
    return NULL;
  sqlite3_bind_int64 (stmt, 1, fish_id);
  sqlite3_bind_int64 (stmt, 2, without != NULL ? without->entry_id : 0);
  sqlite3_bind_int64 (stmt, 3, without != NULL ? without->harvest_id : 0);
  sqlite3_bind_int64 (stmt, 4, without != NULL ? without->move_id : 0);
  while ((found = stead_store_step (store, stmt, error)) == 1)
    {
      SteadFishCount change = { stead_stmt_day (stmt, 0), sqlite3_column_int64 (stmt, 1) };

      g_array_append_val (changes, change);
    }
  return found == 0 ? g_steal_pointer (&changes) : NULL;
}

void
stead_fish_changes_add (GArray   *changes,
                        SteadDay  day,
                        gint64    n)
{
  SteadFishCount change = { day, n };
  guint at = 0;

  while (at < changes->len && g_array_index (changes, SteadFishCount, at).day < day)
    at++;
  if (at < changes->len && g_array_index (changes, SteadFishCount, at).day == day)
    g_array_index (changes, SteadFishCount, at).n += n;
  else
    g_array_insert_val (changes, at, change);
}

gint64
stead_fish_changes_least (const GArray *changes,
                          gint64        stocked,
                          SteadDay      from)
{
  gint64 number = stocked;
  gint64 least = G_MAXINT64;

  for (guint i = 0; i < changes->len; i++)
    {
      const SteadFishCount *change = &g_array_index (changes, SteadFishCount, i);

      /* As it stood until the day before the change. */
      if (change->day > from)
        least = MIN (least, number);
      number += change->n;
    }
  return MIN (least, number);
}

/* --- for checks ---------------------------------------------------------------- */

static gint64
read_stocked (SteadStore  *store,
              gint64       fish_id,
              GError     **error)
{
  static const char sql[] = "SELECT stocked FROM fish WHERE batch_id = ?1";
  g_autoptr(SteadStmt) stmt = stead_store_prepare (store, sql, error);
  gint64 stocked = -1;

  if (stmt == NULL)
    return -1;
  sqlite3_bind_int64 (stmt, 1, fish_id);
  if (!stead_repo_number (store, stmt, -1, &stocked, error))
    return -1;
  if (stocked < 0)
    stead_repo_missing (error);
  return stocked;
}

gboolean
stead_fish_can_go (SteadStore              *store,
                   gint64                   fish_id,
                   SteadDay                 day,
                   const SteadFishWithout  *without,
                   gint64                  *out_n,
                   GError                 **error)
{
  gint64 stocked = read_stocked (store, fish_id, error);
  g_autoptr(GArray) changes = stocked >= 0 ? stead_fish_changes (store, fish_id, without, error) : NULL;

  if (changes == NULL)
    return FALSE;
  *out_n = MAX (0, stead_fish_changes_least (changes, stocked, day));
  return TRUE;
}

gboolean
stead_fish_on_day (SteadStore  *store,
                   gint64       fish_id,
                   SteadDay     day,
                   gint64      *out_n,
                   GError     **error)
{
  gint64 before = stead_fish_repo_alive (store, fish_id, day, error);
  gint64 after = before >= 0 ? stead_fish_repo_alive (store, fish_id, day + 1, error) : -1;

  if (after < 0)
    return FALSE;
  *out_n = MAX (before, after);
  return TRUE;
}

gboolean
stead_fish_refuse_gone (const char  *group_name,
                        gint64       can_go,
                        gint64       n,
                        GError     **error)
{
  if (can_go == 0)
    return stead_repo_refuse (error, _("No fish are left in “%s” on that day, or later ones are entered as gone "
                                       "already. Check the number and the day."), group_name);
  return stead_repo_refuse (error, ngettext ("“%s” has only %d fish that can go on that day; %d is too many. "
                                             "Check the number and the day.",
                                             "“%s” has only %d fish that can go on that day; %d are too many. "
                                             "Check the number and the day.", (gulong) n),
                            group_name, (int) can_go, (int) n);
}

gboolean
stead_fish_check_day (const SteadBatch  *batch,
                      SteadDay           day,
                      SteadDay           today,
                      GError           **error)
{
  g_autofree char *text = NULL;

  if (day == STEAD_DAY_NONE)
    return stead_repo_refuse (error, _("Enter the day."));
  if (day < batch->started_on)
    {
      text = stead_day_format (batch->started_on, STEAD_DAY_STYLE_MEDIUM);
      return stead_repo_refuse (error, _("%s began on %s. An entry cannot be from before that day."),
                                batch->name, text);
    }
  if (batch->ended_on != STEAD_DAY_NONE && day > batch->ended_on)
    {
      text = stead_day_format (batch->ended_on, STEAD_DAY_STYLE_MEDIUM);
      return stead_repo_refuse (error, _("%s ended on %s. An entry cannot be from after that day."),
                                batch->name, text);
    }
  if (day > today)
    {
      text = stead_day_format (day, STEAD_DAY_STYLE_MEDIUM);
      return stead_repo_refuse (error, _("%s is still to come. Enter a day up to today."), text);
    }
  return TRUE;
}

/* --- the number ------------------------------------------------------------------ */

gint64
stead_fish_repo_alive (SteadStore  *store,
                       gint64       fish_id,
                       SteadDay     day,
                       GError     **error)
{
  static const char sql[] =
    "SELECT f.stocked"
    " - (SELECT coalesce (sum (deaths + culled), 0) FROM batch_entry"
    "     WHERE batch_id = ?1 AND day < ?2 AND deaths + culled > 0)"
    " - (SELECT coalesce (sum (pieces), 0) FROM harvest WHERE batch_id = ?1 AND day < ?2)"
    " + (SELECT coalesce (sum (n), 0) FROM fish_move WHERE to_id = ?1 AND day < ?2)"
    " - (SELECT coalesce (sum (n), 0) FROM fish_move WHERE from_id = ?1 AND day < ?2)"
    " FROM fish f WHERE f.batch_id = ?1";
  g_autoptr(SteadStmt) stmt = NULL;
  gint64 alive = -1;

  g_return_val_if_fail (STEAD_IS_STORE (store), -1);
  stmt = stead_store_prepare (store, sql, error);
  if (stmt == NULL)
    return -1;
  sqlite3_bind_int64 (stmt, 1, fish_id);
  sqlite3_bind_int (stmt, 2, day);
  if (!stead_repo_number (store, stmt, G_MININT64, &alive, error))
    return -1;
  if (alive == G_MININT64)
    {
      stead_repo_missing (error);
      return -1;
    }
  return MAX (0, alive);
}

GArray *
stead_fish_repo_counts (SteadStore  *store,
                        gint64       fish_id,
                        GError     **error)
{
  g_autoptr(SteadFish) group = NULL;
  g_autoptr(GArray) counts = NULL;
  gint64 number;

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  group = stead_fish_repo_get (store, fish_id, error);
  counts = group != NULL ? stead_fish_changes (store, fish_id, NULL, error) : NULL;
  if (counts == NULL)
    return NULL;
  stead_fish_changes_add (counts, group->batch.started_on, 0);
  number = group->stocked;
  for (guint i = 0; i < counts->len; i++)
    {
      SteadFishCount *count = &g_array_index (counts, SteadFishCount, i);

      number += count->n;
      count->n = number;
    }
  return g_steal_pointer (&counts);
}
