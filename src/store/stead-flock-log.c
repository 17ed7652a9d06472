/* stead-flock-log.c - the log of a flock, entry by entry. */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "store/stead-flock-private.h"
#include "store/stead-ledger-private.h"

/* Feed in one entry: so much a hen, or one good load, is the most that is believed. */
#define FEED_MAX_KG_HEN 10.0
#define FEED_MAX_KG 60.0

void
stead_flock_entry_clear (SteadFlockEntry *entry)
{
  g_clear_pointer (&entry->reason, g_free);
  g_clear_pointer (&entry->note, g_free);
}

void
stead_flock_entry_free (SteadFlockEntry *entry)
{
  if (entry == NULL)
    return;
  stead_flock_entry_clear (entry);
  g_free (entry);
}

/* --- reading ---------------------------------------------------------------- */

gpointer
stead_flock_entry_from_row (SteadStmt *stmt)
{
  SteadFlockEntry *entry = g_new0 (SteadFlockEntry, 1);

  entry->id = sqlite3_column_int64 (stmt, 0);
  entry->flock_id = sqlite3_column_int64 (stmt, 1);
  entry->day = stead_stmt_day (stmt, 2);
  entry->eggs = sqlite3_column_type (stmt, 3) == SQLITE_NULL ? STEAD_COUNT_NONE : sqlite3_column_int (stmt, 3);
  entry->cracked = sqlite3_column_int (stmt, 4);
  entry->deaths = sqlite3_column_int (stmt, 5);
  entry->culled = sqlite3_column_int (stmt, 6);
  entry->feed_kg = stead_stmt_real (stmt, 7);
  entry->note = stead_stmt_text (stmt, 8);
  entry->person_id = sqlite3_column_int64 (stmt, 9);
  entry->left_out = sqlite3_column_int (stmt, 10) != 0;
  entry->reason = stead_stmt_text (stmt, 11);
  return entry;
}

SteadFlockEntry *
stead_flock_repo_get_entry (SteadStore  *store,
                            gint64       entry_id,
                            GError     **error)
{
  static const char sql[] = "SELECT " ENTRY_COLUMNS " FROM batch_entry WHERE id = ?1";

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  return stead_repo_row_of (store, sql, entry_id, stead_flock_entry_from_row, error);
}

/* -1 with @error. */
gint64
stead_flock_repo_count_entries (SteadStore  *store,
                                gint64       flock_id,
                                GError     **error)
{
  static const char sql[] = "SELECT count (*) FROM batch_entry WHERE batch_id = ?1";

  g_return_val_if_fail (STEAD_IS_STORE (store), -1);
  return stead_repo_count_id (store, sql, flock_id, error);
}

/* The window is found in the index alone; only its own rows are then read. */
GPtrArray *
stead_flock_repo_page_entries (SteadStore  *store,
                               gint64       flock_id,
                               gint64       offset,
                               gint64       limit,
                               GError     **error)
{
  static const char sql[] =
    "SELECT " ENTRY_COLUMNS " FROM batch_entry WHERE id IN"
    " (SELECT id FROM batch_entry WHERE batch_id = ?1 ORDER BY day DESC, id DESC LIMIT ?3 OFFSET ?2)"
    " ORDER BY day DESC, id DESC";
  g_autoptr(SteadStmt) stmt = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store) && offset >= 0 && limit >= 0, NULL);
  stmt = stead_store_prepare (store, sql, error);
  if (stmt == NULL)
    return NULL;
  sqlite3_bind_int64 (stmt, 1, flock_id);
  sqlite3_bind_int64 (stmt, 2, offset);
  sqlite3_bind_int64 (stmt, 3, limit);
  return stead_repo_rows (store, stmt, stead_flock_entry_from_row, (GDestroyNotify) stead_flock_entry_free, error);
}

GPtrArray *
stead_flock_repo_entries (SteadStore  *store,
                          gint64       flock_id,
                          SteadDay     from,
                          SteadDay     to,
                          GError     **error)
{
  static const char sql[] = "SELECT " ENTRY_COLUMNS " FROM batch_entry"
                            " WHERE batch_id = ?1 AND day BETWEEN ?2 AND ?3 ORDER BY day, id";
  g_autoptr(SteadStmt) stmt = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  stmt = stead_store_prepare (store, sql, error);
  if (stmt == NULL)
    return NULL;
  sqlite3_bind_int64 (stmt, 1, flock_id);
  sqlite3_bind_int (stmt, 2, from);
  sqlite3_bind_int (stmt, 3, to);
  return stead_repo_rows (store, stmt, stead_flock_entry_from_row, (GDestroyNotify) stead_flock_entry_free, error);
}

/* --- the rule of one entry -------------------------------------------------------- */

static gboolean
check_entry_day (const SteadFlockEntry  *entry,
                 const SteadFlock       *flock,
                 SteadDay                today,
                 GError                **error)
{
  g_autofree char *text = NULL;

  if (entry->day == STEAD_DAY_NONE)
    return stead_repo_refuse (error, _("Enter the day."));
  if (entry->day < flock->housed_on)
    {
      text = stead_day_format (flock->housed_on, STEAD_DAY_STYLE_MEDIUM);
      return stead_repo_refuse (error, _("%s moved in on %s. An entry cannot be from before that day."),
                                flock->name, text);
    }
  if (flock->ended_on != STEAD_DAY_NONE && entry->day > flock->ended_on)
    {
      text = stead_day_format (flock->ended_on, STEAD_DAY_STYLE_MEDIUM);
      return stead_repo_refuse (error, _("%s ended on %s. An entry cannot be from after that day."),
                                flock->name, text);
    }
  if (entry->day > today)
    {
      text = stead_day_format (entry->day, STEAD_DAY_STYLE_MEDIUM);
      return stead_repo_refuse (error, _("%s is still to come. Enter a day up to today."), text);
    }
  return TRUE;
}

static gboolean
refuse_eggs (gint64    hens,
             gint64    eggs,
             GError  **error)
{
  return stead_repo_refuse (error, ngettext ("There is %d bird; %d eggs in one day is more than it can lay. "
                                             "Check the number.",
                                             "There are %d birds; %d eggs in one day is more than they can lay. "
                                             "Check the number.", (gulong) hens), (int) hens, (int) eggs);
}

static gboolean
check_eggs (const SteadFlockEntry  *entry,
            gint64                  hens_alive,
            GError                **error)
{
  if (entry->eggs < 0 && entry->eggs != STEAD_COUNT_NONE)
    return stead_repo_refuse (error, _("Eggs cannot be fewer than none. Check the number."));
  if (entry->eggs > 2 * hens_alive)
    return refuse_eggs (hens_alive, entry->eggs, error);
  if (entry->cracked < 0)
    return stead_repo_refuse (error, _("Cracked eggs cannot be fewer than none. Check the number."));
  if (entry->cracked > 0 && entry->eggs == STEAD_COUNT_NONE)
    return stead_repo_refuse (error, _("Enter all eggs of the day, the cracked ones among them."));
  if (entry->eggs != STEAD_COUNT_NONE && entry->cracked > entry->eggs)
    return stead_repo_refuse (error, _("%d eggs are cracked, but only %d were collected. The cracked ones count among them."),
                              entry->cracked, entry->eggs);
  return TRUE;
}

static gboolean
refuse_losses (gint64    hens,
               gint64    lost,
               GError  **error)
{
  return stead_repo_refuse (error, ngettext ("There is only %d bird; %d cannot have died or left. Check the number.",
                                             "There are only %d birds; %d cannot have died or left. Check the number.",
                                             (gulong) hens), (int) hens, (int) lost);
}

static gboolean
check_losses (const SteadFlockEntry  *entry,
              gint64                  hens_alive,
              GError                **error)
{
  gint64 lost = (gint64) entry->deaths + entry->culled;

  if (entry->deaths < 0 || entry->culled < 0)
    return stead_repo_refuse (error, _("Birds lost cannot be fewer than none. Check the number."));
  return lost <= hens_alive || refuse_losses (hens_alive, lost, error);
}

static gboolean
check_feed (const SteadFlockEntry  *entry,
            gint64                  hens_alive,
            GError                **error)
{
  if (isnan (entry->feed_kg))
    return TRUE;
  if (!(entry->feed_kg >= 0))
    return stead_repo_refuse (error, _("Feed cannot be less than nothing. Check the number."));
  if (!(entry->feed_kg <= MAX (FEED_MAX_KG, FEED_MAX_KG_HEN * (double) hens_alive)))
    return stead_repo_refuse (error, ngettext ("That is far more feed than %d bird can eat. Check the number and its unit.",
                                               "That is far more feed than %d birds can eat. Check the number and its unit.",
                                               (gulong) hens_alive), (int) hens_alive);
  return TRUE;
}

static gboolean
something_entered (const SteadFlockEntry *entry)
{
  g_autofree char *note = stead_repo_tidy (entry->note);

  return entry->eggs != STEAD_COUNT_NONE || entry->deaths > 0 || entry->culled > 0 ||
         !isnan (entry->feed_kg) || note != NULL;
}

/**
 * stead_flock_entry_check:
 * @hens_alive: at the start of the entry's day, without those that other entries
 *   of the day lost
 *
 * Returns: %TRUE, or %FALSE with a message for the person
 */
gboolean
stead_flock_entry_check (const SteadFlockEntry  *entry,
                         const SteadFlock       *flock,
                         gint64                  hens_alive,
                         SteadDay                today,
                         GError                **error)
{
  g_return_val_if_fail (entry != NULL && flock != NULL, FALSE);
  if (!check_entry_day (entry, flock, today, error) ||
      !check_eggs (entry, hens_alive, error) ||
      !check_losses (entry, hens_alive, error) ||
      !check_feed (entry, hens_alive, error) ||
      !stead_repo_check_note (entry->note, error) || !stead_repo_check_note (entry->reason, error))
    return FALSE;
  if (!something_entered (entry))
    return stead_repo_refuse (error, _("Nothing is entered. Enter eggs, feed, birds lost, or a note."));
  return TRUE;
}

/* --- the rule beside the other entries ------------------------------------------ */

static gboolean
read_others (SteadStore             *store,
             const SteadFlockEntry  *entry,
             SteadFlockOthers       *others,
             GError                **error)
{
  static const char sql[] =
    "SELECT coalesce (sum (iif (day < ?2, deaths + culled, 0)), 0),"
    " coalesce (sum (iif (day = ?2, deaths + culled, 0)), 0), coalesce (sum (deaths + culled), 0),"
    " (SELECT coalesce (sum (eggs), 0) FROM batch_entry WHERE batch_id = ?1 AND day = ?2 AND id <> ?3)"
    " FROM batch_entry WHERE batch_id = ?1 AND deaths + culled > 0 AND id <> ?3";
  g_autoptr(SteadStmt) stmt = stead_store_prepare (store, sql, error);

  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, entry->flock_id);
  sqlite3_bind_int (stmt, 2, entry->day);
  sqlite3_bind_int64 (stmt, 3, entry->id);
  if (stead_store_step (store, stmt, error) < 0)
    return FALSE;
  others->lost_before = sqlite3_column_int64 (stmt, 0);
  others->lost_day = sqlite3_column_int64 (stmt, 1);
  others->lost_ever = sqlite3_column_int64 (stmt, 2);
  others->eggs_day = sqlite3_column_int64 (stmt, 3);
  return TRUE;
}

static gboolean
check_beside_others (const SteadFlockEntry   *entry,
                     const SteadFlock        *flock,
                     const SteadFlockOthers  *others,
                     SteadDay                 today,
                     GError                 **error)
{
  gint64 lost = (gint64) entry->deaths + entry->culled;
  gint64 alive = flock->birds - others->lost_before;

  if (!stead_flock_entry_check (entry, flock, alive, today, error))
    return FALSE;
  if (entry->eggs > 0 && others->eggs_day + entry->eggs > 2 * alive)
    return refuse_eggs (alive, others->eggs_day + entry->eggs, error);
  /* Also those that later entries took out must have been there. */
  if (lost > 0 && lost + others->lost_ever > flock->birds)
    return refuse_losses (flock->birds - others->lost_ever, lost, error);
  return TRUE;
}

/* --- writing ---------------------------------------------------------------- */

static void
bind_entry (SteadStmt             *stmt,
            const SteadFlockEntry *entry)
{
  sqlite3_bind_int64 (stmt, 1, entry->flock_id);
  stead_stmt_bind_day (stmt, 2, entry->day);
  if (entry->eggs == STEAD_COUNT_NONE)
    sqlite3_bind_null (stmt, 3);
  else
    sqlite3_bind_int (stmt, 3, entry->eggs);
  sqlite3_bind_int (stmt, 4, entry->cracked);
  sqlite3_bind_int (stmt, 5, entry->deaths);
  sqlite3_bind_int (stmt, 6, entry->culled);
  stead_stmt_bind_real (stmt, 7, entry->feed_kg);
  stead_repo_bind_tidy (stmt, 8, entry->note);
  stead_stmt_bind_id (stmt, 9, entry->person_id);
  sqlite3_bind_int (stmt, 10, entry->left_out != FALSE);
  stead_repo_bind_tidy (stmt, 11, entry->reason);
}

gboolean
stead_flock_write_entry (SteadStore              *store,
                         SteadFlockEntry         *entry,
                         const SteadFlock        *flock,
                         const SteadFlockOthers  *others,
                         SteadDay                 today,
                         GError                 **error)
{
  static const char insert_sql[] =
    "INSERT INTO batch_entry (batch_id, day, eggs, cracked, deaths, culled, feed_kg, note, person_id, left_out,"
    " reason) VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9, ?10, ?11)";
  static const char update_sql[] =
    "UPDATE batch_entry SET batch_id = ?1, day = ?2, eggs = ?3, cracked = ?4, deaths = ?5, culled = ?6,"
    " feed_kg = ?7, note = ?8, person_id = ?9, left_out = ?10, reason = ?11 WHERE id = ?12";
  g_autoptr(SteadStmt) stmt = NULL;

  if (!check_beside_others (entry, flock, others, today, error))
    return FALSE;
  stmt = stead_store_prepare (store, entry->id == 0 ? insert_sql : update_sql, error);
  if (stmt == NULL)
    return FALSE;
  bind_entry (stmt, entry);
  if (entry->id != 0)
    sqlite3_bind_int64 (stmt, 12, entry->id);
  if (!stead_store_run (store, stmt, error))
    return FALSE;
  if (entry->id == 0)
    entry->id = stead_store_last_id (store);
  return TRUE;
}

static gboolean
feeds (const SteadFlockEntry *entry)
{
  return entry->feed_kg > 0;
}

/* Only feed that came, went, changed or moved to another day is laid anew. */
static gboolean
settle_entry (SteadStore             *store,
              const SteadFlock       *flock,
              const SteadFlockEntry  *before,
              const SteadFlockEntry  *after,
              GError                **error)
{
  SteadDay from = STEAD_DAY_NONE;

  if (before != NULL && after != NULL && feeds (before) && feeds (after) && before->day == after->day &&
      !(ABS (before->feed_kg - after->feed_kg) > 0))
    return TRUE;
  if (before != NULL && feeds (before))
    from = before->day;
  if (after != NULL && feeds (after))
    from = from == STEAD_DAY_NONE ? after->day : MIN (from, after->day);
  return from == STEAD_DAY_NONE || stead_ledger_settle (store, flock->feed_item_id, from, error);
}

gboolean
stead_flock_repo_save_entry (SteadStore       *store,
                             SteadFlockEntry  *entry,
                             GError          **error)
{
  g_autoptr(SteadFlock) flock = NULL;
  g_autoptr(SteadFlockEntry) before = NULL;
  SteadGivenIds *ids;
  SteadFlockOthers others;

  g_return_val_if_fail (STEAD_IS_STORE (store) && entry != NULL, FALSE);
  g_return_val_if_fail (stead_store_in_action (store), FALSE);
  flock = stead_flock_repo_get (store, entry->flock_id, error);
  if (flock == NULL)
    return FALSE;
  if (entry->id != 0)
    {
      before = stead_flock_repo_get_entry (store, entry->id, error);
      if (before == NULL)
        return FALSE;
      g_return_val_if_fail (before->flock_id == entry->flock_id, FALSE);
    }
  ids = stead_given_ids_new (&entry->id);
  return stead_given_ids_end (ids, read_others (store, entry, &others, error) &&
                                   stead_flock_write_entry (store, entry, flock, &others, stead_store_get_today (store), error) &&
                                   settle_entry (store, flock, before, entry, error));
}

gboolean
stead_flock_repo_delete_entry (SteadStore  *store,
                               gint64       entry_id,
                               GError     **error)
{
  static const char sql[] = "DELETE FROM batch_entry WHERE id = ?1";
  g_autoptr(SteadFlockEntry) before = NULL;
  g_autoptr(SteadFlock) flock = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store), FALSE);
  g_return_val_if_fail (stead_store_in_action (store), FALSE);
  before = stead_flock_repo_get_entry (store, entry_id, error);
  flock = before != NULL ? stead_flock_repo_get (store, before->flock_id, error) : NULL;
  return flock != NULL &&
         stead_repo_run_id (store, sql, entry_id, error) &&
         settle_entry (store, flock, before, NULL, error);
}
