/* stead-fish-move.c - fish that go from one group to another. */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "store/stead-fish-private.h"

void
stead_fish_move_free (SteadFishMove *move)
{
  if (move == NULL)
    return;
  g_free (move->note);
  g_free (move);
}

/* --- reading ---------------------------------------------------------------- */

#define MOVE_COLUMNS "id, day, from_id, to_id, n, mean_g, cost_cents, note, person_id"

static gpointer
move_from_row (SteadStmt *stmt)
{
  SteadFishMove *move = g_new0 (SteadFishMove, 1);

  move->id = sqlite3_column_int64 (stmt, 0);
  move->day = stead_stmt_day (stmt, 1);
  move->from_id = sqlite3_column_int64 (stmt, 2);
  move->to_id = sqlite3_column_int64 (stmt, 3);
  move->n = sqlite3_column_int64 (stmt, 4);
  move->mean_g = sqlite3_column_double (stmt, 5);
  move->cost_cents = sqlite3_column_int64 (stmt, 6);
  move->note = stead_stmt_text (stmt, 7);
  move->person_id = sqlite3_column_int64 (stmt, 8);
  return move;
}

GPtrArray *
stead_fish_repo_moves (SteadStore  *store,
                       gint64       fish_id,
                       GError     **error)
{
  static const char sql[] = "SELECT " MOVE_COLUMNS " FROM fish_move WHERE from_id = ?1 OR to_id = ?1 ORDER BY day, id";

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  return stead_repo_rows_of (store, sql, fish_id, move_from_row, (GDestroyNotify) stead_fish_move_free,
                             error);
}

static SteadFishMove *
get_move (SteadStore  *store,
          gint64       move_id,
          GError     **error)
{
  static const char sql[] = "SELECT " MOVE_COLUMNS " FROM fish_move WHERE id = ?1";

  return stead_repo_row_of (store, sql, move_id, move_from_row, error);
}

/* --- checking --------------------------------------------------------------- */

static gboolean
check_groups (const SteadFish  *from,
              const SteadFish  *to,
              GError          **error)
{
  const SteadFish *over = from->batch.ended_on != STEAD_DAY_NONE ? from
                               : to->batch.ended_on != STEAD_DAY_NONE ? to : NULL;

  if (over != NULL)
    return stead_repo_refuse (error, _("“%s” is over. Fish move between groups that are under way."),
                              over->batch.name);
  if (g_strcmp0 (from->species, to->species) != 0)
    return stead_repo_refuse (error, _("“%s” and “%s” are not one kind of fish. Make a new group for these fish."),
                              from->batch.name, to->batch.name);
  return TRUE;
}

static gboolean
check_amounts (const SteadFishMove  *move,
               GError              **error)
{
  if (!(move->n >= 1 && move->n <= STEAD_FISH_MOST))
    return stead_repo_refuse (error, _("Enter how many fish move: at least 1."));
  if (!(move->mean_g > 0 && move->mean_g <= STEAD_FISH_HEAVIEST_G))
    return stead_repo_refuse (error, _("Enter what one of the fish weighs: more than 0, at most 100 kg (220 lb)."));
  return stead_repo_check_cents (_("Cost that goes along"), move->cost_cents, error) &&
         stead_repo_check_note (move->note, error);
}

/* So many must be there to go, from the day of the move on. */
static gboolean
check_leaving (SteadStore           *store,
               const SteadFish      *from,
               const SteadFishMove  *move,
               GError              **error)
{
  const SteadFishWithout without = { .move_id = move->id };
  gint64 can_go = 0;

  if (!stead_fish_can_go (store, from->batch.id, move->day, &without, &can_go, error))
    return FALSE;
  return move->n <= can_go || stead_fish_refuse_gone (from->batch.name, can_go, move->n, error);
}

/* A move that changes, or is taken back, must leave enough where the fish went; @n: 0, or its new number. */
static gboolean
check_arriving (SteadStore           *store,
                const SteadFish      *to,
                const SteadFishMove  *move,
                gint64                n,
                GError              **error)
{
  const SteadFishWithout without = { .move_id = move->id };
  g_autoptr(GArray) changes = NULL;
  gint64 least;

  if (move->id == 0)
    return TRUE;
  changes = stead_fish_changes (store, to->batch.id, &without, error);
  if (changes == NULL)
    return FALSE;
  stead_fish_changes_add (changes, move->day, n);
  least = stead_fish_changes_least (changes, to->stocked, to->batch.started_on);
  if (least < 0)
    return stead_repo_refuse (error, ngettext ("%d of these fish has died or left “%s” since. "
                                               "Change that entry first.",
                                               "%d of these fish have died or left “%s” since. "
                                               "Change those entries first.", (gulong) -least),
                              (int) -least, to->batch.name);
  return TRUE;
}

/* A move that is changed keeps its two groups: take it back to make another. */
static gboolean
same_groups (SteadStore           *store,
             const SteadFishMove  *move,
             GError              **error)
{
  g_autoptr(SteadFishMove) before = NULL;

  if (move->id == 0)
    return TRUE;
  before = get_move (store, move->id, error);
  if (before == NULL)
    return FALSE;
  g_return_val_if_fail (before->from_id == move->from_id && before->to_id == move->to_id, FALSE);
  return TRUE;
}

/* --- writing ---------------------------------------------------------------- */

static gboolean
write_move (SteadStore     *store,
            SteadFishMove  *move,
            GError        **error)
{
  static const char insert_sql[] = "INSERT INTO fish_move (day, from_id, to_id, n, mean_g, cost_cents, note, person_id)"
                                   " VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8)";
  static const char update_sql[] = "UPDATE fish_move SET day = ?1, from_id = ?2, to_id = ?3, n = ?4, mean_g = ?5,"
                                   " cost_cents = ?6, note = ?7, person_id = ?8 WHERE id = ?9";
  g_autoptr(SteadStmt) stmt = stead_store_prepare (store, move->id == 0 ? insert_sql : update_sql, error);

  if (stmt == NULL)
    return FALSE;
  stead_stmt_bind_day (stmt, 1, move->day);
  sqlite3_bind_int64 (stmt, 2, move->from_id);
  sqlite3_bind_int64 (stmt, 3, move->to_id);
  sqlite3_bind_int64 (stmt, 4, move->n);
  sqlite3_bind_double (stmt, 5, move->mean_g);
  sqlite3_bind_int64 (stmt, 6, move->cost_cents);
  stead_repo_bind_tidy (stmt, 7, move->note);
  stead_stmt_bind_id (stmt, 8, move->person_id);
  if (move->id != 0)
    sqlite3_bind_int64 (stmt, 9, move->id);
  if (!stead_store_run (store, stmt, error))
    return FALSE;
  if (move->id == 0)
    move->id = stead_store_last_id (store);
  return TRUE;
}

/**
 * stead_fish_repo_save_move:
 *
 * An id of 0 inserts and fills in the id.
 */
gboolean
stead_fish_repo_save_move (SteadStore     *store,
                           SteadFishMove  *move,
                           GError        **error)
{
  SteadDay today;
  g_autoptr(SteadFish) from = NULL;
  g_autoptr(SteadFish) to = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store) && move != NULL, FALSE);
  g_return_val_if_fail (stead_store_in_action (store), FALSE);
  if (move->from_id == move->to_id)
    return stead_repo_refuse (error, _("Choose another group for the fish to go to."));
  today = stead_store_get_today (store);
  from = stead_fish_repo_get (store, move->from_id, error);
  to = from != NULL ? stead_fish_repo_get (store, move->to_id, error) : NULL;
  return to != NULL &&
         same_groups (store, move, error) &&
         check_groups (from, to, error) &&
         stead_fish_check_day (&from->batch, move->day, today, error) &&
         stead_fish_check_day (&to->batch, move->day, today, error) &&
         check_amounts (move, error) &&
         check_leaving (store, from, move, error) &&
         check_arriving (store, to, move, move->n, error) &&
         write_move (store, move, error);
}

gboolean
stead_fish_repo_delete_move (SteadStore  *store,
                             gint64       move_id,
                             GError     **error)
{
  static const char sql[] = "DELETE FROM fish_move WHERE id = ?1";
  g_autoptr(SteadFishMove) move = NULL;
  g_autoptr(SteadFish) to = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store), FALSE);
  g_return_val_if_fail (stead_store_in_action (store), FALSE);
  move = get_move (store, move_id, error);
  to = move != NULL ? stead_fish_repo_get (store, move->to_id, error) : NULL;
  return to != NULL &&
         check_arriving (store, to, move, 0, error) &&
         stead_repo_run_id (store, sql, move_id, error);
}
