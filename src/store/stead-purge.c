/* stead-purge.c - removing for good what the farm knows of people who left. */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <glib/gstdio.h>
#include <string.h>

#include "store/stead-backup.h"
#include "store/stead-copy.h"
#include "store/stead-farm-repo.h"
#include "store/stead-folder-private.h"
#include "store/stead-purge.h"
#include "store/stead-repo-private.h"
#include "store/stead-store-internal.h"

void
stead_purge_person_free (SteadPurgePerson *person)
{
  if (person == NULL)
    return;
  g_free (person->name);
  g_free (person);
}

void
stead_purged_free (SteadPurged *purged)
{
  if (purged == NULL)
    return;
  g_clear_pointer (&purged->copies, g_ptr_array_unref);
  g_free (purged);
}

/* --- who ------------------------------------------------------------------------ */

static gpointer
person_from_row (SteadStmt *stmt)
{
  SteadPurgePerson *person = g_new0 (SteadPurgePerson, 1);

  person->id = sqlite3_column_int64 (stmt, 0);
  person->name = stead_stmt_text (stmt, 1);
  person->left_on = stead_stmt_day (stmt, 2);
  person->keep_until = stead_stmt_day (stmt, 3);
  person->due = sqlite3_column_int (stmt, 4) != 0;
  return person;
}

GPtrArray *
stead_purge_list (SteadStore  *store,
                  GError     **error)
{
  static const char sql[] =
    "SELECT id, name, left_on, keep_until, coalesce (keep_until < ?1, 0) AS due FROM person"
    " WHERE redacted_on IS NULL AND (left_on IS NOT NULL OR keep_until < ?1) ORDER BY due DESC, left_on, name, id";
  g_autoptr(SteadStmt) stmt = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  stmt = stead_store_prepare (store, sql, error);
  if (stmt == NULL)
    return NULL;
  stead_stmt_bind_day (stmt, 1, stead_store_get_today (store));
  return stead_repo_rows (store, stmt, person_from_row, (GDestroyNotify) stead_purge_person_free, error);
}

gboolean
stead_purge_get_keep_until (SteadStore  *store,
                            gint64       person_id,
                            SteadDay    *out_day,
                            GError     **error)
{
  static const char sql[] = "SELECT keep_until FROM person WHERE id = ?1";
  g_autoptr(SteadStmt) stmt = NULL;
  int got;

  g_return_val_if_fail (STEAD_IS_STORE (store) && out_day != NULL, FALSE);
  stmt = stead_store_prepare (store, sql, error);
  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, person_id);
  got = stead_store_step (store, stmt, error);
  if (got < 0)
    return FALSE;
  *out_day = got == 1 ? stead_stmt_day (stmt, 0) : STEAD_DAY_NONE;
  return TRUE;
}

gboolean
stead_purge_set_keep_until (SteadStore  *store,
                            gint64       person_id,
                            SteadDay     day,
                            GError     **error)
{
  static const char sql[] = "UPDATE person SET keep_until = ?2 WHERE id = ?1";
  g_autoptr(SteadStmt) stmt = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store), FALSE);
  g_return_val_if_fail (stead_store_in_action (store), FALSE);
  stmt = stead_store_prepare (store, sql, error);
  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, person_id);
  stead_stmt_bind_day (stmt, 2, day);
  return stead_store_run (store, stmt, error);
}

/* --- what is the person's own ----------------------------------------------------- */

/* Children before parents; each with the person's id. */
static const char * const own_sql[] = {
  "DELETE FROM skill_evidence WHERE try_id IN (SELECT id FROM skill_try WHERE person_id = ?1)",
  "DELETE FROM skill_try WHERE person_id = ?1",
  "DELETE FROM packet_section WHERE packet_id IN (SELECT id FROM packet WHERE person_id = ?1)",
  "DELETE FROM packet WHERE person_id = ?1",
  ("DELETE FROM shot_person WHERE shot_id IN (SELECT id FROM shot WHERE person_id = ?1"
   " OR id IN (SELECT shot_id FROM shot_person WHERE person_id = ?1))"),
  "DELETE FROM shot WHERE person_id = ?1",
  "DELETE FROM reflection WHERE person_id = ?1",
  "DELETE FROM goal WHERE person_id = ?1",
  "DELETE FROM role_held WHERE person_id = ?1",
  "DELETE FROM consent WHERE person_id = ?1",
  "DELETE FROM training WHERE person_id = ?1",
  "DELETE FROM rota_turn WHERE person_id = ?1",
  "DELETE FROM group_member WHERE person_id = ?1",
  "DELETE FROM event_score WHERE person_id = ?1",
  "DELETE FROM event_person WHERE person_id = ?1",
  "DELETE FROM work_timer WHERE person_id = ?1",
};

/* Shots that show the person go with those that are the person's; kept aside first,
 * since who is on them goes before them. */
static const char shown_sql[] = "SELECT group_concat (shot_id, ' ') FROM shot_person WHERE person_id = ?1";

static const char loose_pictures_sql[] =
  "DELETE FROM picture WHERE id = ?1 AND id NOT IN (SELECT picture_id FROM shot)"
  " AND id NOT IN (SELECT picture_id FROM batch_note WHERE picture_id IS NOT NULL)"
  " AND id NOT IN (SELECT picture_id FROM receipt_picture)"
  " AND id NOT IN (SELECT picture_id FROM cash_line WHERE picture_id IS NOT NULL)";

static char *
read_list (SteadStore  *store,
           const char  *sql,
           gint64       id,
           GError     **error)
{
  g_autoptr(SteadStmt) stmt = stead_store_prepare (store, sql, error);
  char *list;

  if (stmt == NULL)
    return NULL;
  sqlite3_bind_int64 (stmt, 1, id);
  if (stead_store_step (store, stmt, error) != 1)
    return NULL;
  list = stead_stmt_text (stmt, 0);
  return list != NULL ? list : g_strdup ("");
}

static gboolean
run_each (SteadStore  *store,
          const char  *sql,
          const char  *ids,
          guint       *rows,
          GError     **error)
{
  g_auto(GStrv) list = g_strsplit (ids, " ", -1);

  for (guint i = 0; list[i] != NULL; i++)
    {
      if (*list[i] == '\0')
        continue;
      if (!stead_repo_run_id (store, sql, g_ascii_strtoll (list[i], NULL, 10), error))
        return FALSE;
      *rows += (guint) sqlite3_changes (store->db);
    }
  return TRUE;
}

static gboolean
remove_own (SteadStore  *store,
            gint64       id,
            guint       *rows,
            GError     **error)
{
  static const char pictures_sql[] =
    "SELECT group_concat (picture_id, ' ') FROM shot WHERE person_id = ?1"
    " OR id IN (SELECT shot_id FROM shot_person WHERE person_id = ?1)";
  g_autofree char *shots = read_list (store, shown_sql, id, error);
  g_autofree char *pictures = shots != NULL ? read_list (store, pictures_sql, id, error) : NULL;

  if (pictures == NULL)
    return FALSE;
  for (gsize i = 0; i < G_N_ELEMENTS (own_sql); i++)
    {
      if (!stead_repo_run_id (store, own_sql[i], id, error))
        return FALSE;
      *rows += (guint) sqlite3_changes (store->db);
    }
  return run_each (store, "DELETE FROM shot WHERE id = ?1", shots, rows, error) &&
         run_each (store, loose_pictures_sql, pictures, rows, error);
}

/* --- the name in texts ---------------------------------------------------------------- */

static gboolean
is_letter_at (const char *at)
{
  return g_unichar_isalnum (g_utf8_get_char (at));
}

/* Returns: (nullable): @text with @name replaced where it stands as words of its own */
static char *
replace_name (const char *text,
              const char *name,
              const char *fresh)
{
  GString *out = NULL;
  const char *from = text;
  const char *found = text;

  while ((found = strstr (found, name)) != NULL)
    {
      const char *end = found + strlen (name);
      const char *before = g_utf8_find_prev_char (text, found);   /* none, too, where bytes are no letters */

      if ((before != NULL && is_letter_at (before)) || (*end != '\0' && is_letter_at (end)))
        {
          found = g_utf8_next_char (found);
          continue;
        }
      if (out == NULL)
        out = g_string_new (NULL);
      g_string_append_len (out, from, found - from);
      g_string_append (out, fresh);
      from = found = end;
    }
  if (out == NULL)
    return NULL;
  g_string_append (out, from);
  return g_string_free (out, FALSE);
}

/* A row that is signed or closed says no; it is counted. */
static void
write_text (sqlite3      *db,
            sqlite3_stmt *update,
            gint64        rowid,
            const char   *text,
            SteadPurged  *purged)
{
  sqlite3_bind_int64 (update, 1, rowid);
  sqlite3_bind_text (update, 2, text, -1, SQLITE_TRANSIENT);
  if (sqlite3_step (update) == SQLITE_DONE)
    purged->texts++;
  else
    purged->left++;
  sqlite3_reset (update);
}

static gboolean
clean_column (SteadStore   *store,
              const char   *table,
              const char   *column,
              const char   *name,
              const char   *fresh,
              SteadPurged  *purged,
              GError      **error)
{
  /* Names of our own schema; see stead-folder-tables.c. */
  g_autofree char *select_sql = g_strdup_printf ("SELECT rowid, \"%s\" FROM \"%s\" WHERE instr (\"%s\", ?1) > 0 ORDER BY rowid",
                                                 column, table, column);
  g_autofree char *update_sql = g_strdup_printf ("UPDATE \"%s\" SET \"%s\" = ?2 WHERE rowid = ?1", table, column);
  g_autoptr(sqlite3_stmt) select = NULL;
  g_autoptr(sqlite3_stmt) update = NULL;
  int rc = sqlite3_prepare_v2 (store->db, select_sql, -1, &select, NULL);

  if (rc == SQLITE_OK)
    rc = sqlite3_prepare_v2 (store->db, update_sql, -1, &update, NULL);
  if (rc == SQLITE_OK)
    rc = sqlite3_bind_text (select, 1, name, -1, SQLITE_STATIC);
  while (rc == SQLITE_OK && (rc = sqlite3_step (select)) == SQLITE_ROW)
    {
      g_autofree char *text = replace_name ((const char *) sqlite3_column_text (select, 1), name, fresh);

      rc = SQLITE_OK;
      if (text != NULL)
        write_text (store->db, update, sqlite3_column_int64 (select, 0), text, purged);
    }
  if (rc == SQLITE_DONE)
    return TRUE;
  stead_store_set_error (store, rc, error);
  return FALSE;
}

/* Texts stand in tables with row ids; those without hold pairs of ids and short words. */
static gboolean
has_rowid (const SteadFolderTable *table)
{
  for (guint i = 0; i < table->columns->len; i++)
    if (g_str_equal (((const SteadFolderColumn *) table->columns->pdata[i])->name, "id"))
      return TRUE;
  return FALSE;
}

static gboolean
clean_texts (SteadStore   *store,
             const char   *name,
             const char   *fresh,
             SteadPurged  *purged,
             GError      **error)
{
  g_autoptr(GPtrArray) tables = stead_folder_tables (store->db, error);

  if (tables == NULL)
    return FALSE;
  for (guint i = 0; i < tables->len; i++)
    {
      const SteadFolderTable *table = tables->pdata[i];

      for (guint at = 0; has_rowid (table) && at < table->columns->len; at++)
        {
          const SteadFolderColumn *column = table->columns->pdata[at];

          if (column->type == STEAD_FOLDER_TEXT &&
              !clean_column (store, table->name, column->name, name, fresh, purged, error))
            return FALSE;
        }
    }
  return TRUE;
}

/* --- the whole -------------------------------------------------------------------------- */

static gboolean
purge_person (SteadStore   *store,
              gint64        id,
              SteadPurged  *purged,
              GError      **error)
{
  static const char name_sql[] = "SELECT name FROM person WHERE id = ?1";
  static const char mark_sql[] = "UPDATE person SET redacted_on = ?2, keep_until = NULL WHERE id = ?1";
  static const char notes_sql[] = "UPDATE work_span SET note = NULL WHERE person_id = ?1 AND checked_on IS NULL";
  g_autofree char *name = read_list (store, name_sql, id, error);
  g_autofree char *fresh = NULL;
  g_autoptr(SteadStmt) mark = NULL;

  if (name == NULL)
    return FALSE;
  if (!remove_own (store, id, &purged->rows, error) || !stead_repo_run_id (store, notes_sql, id, error) ||
      !stead_person_repo_forget (store, id, error))
    return FALSE;
  mark = stead_store_prepare (store, mark_sql, error);
  if (mark == NULL)
    return FALSE;
  sqlite3_bind_int64 (mark, 1, id);
  stead_stmt_bind_day (mark, 2, stead_store_get_today (store));
  if (!stead_store_run (store, mark, error))
    return FALSE;
  fresh = read_list (store, name_sql, id, error);
  purged->people++;
  return fresh != NULL && clean_texts (store, name, fresh, purged, error);
}

SteadPurged *
stead_purge_people (SteadStore    *store,
                    const GArray  *ids,
                    GError       **error)
{
  g_autoptr(SteadPurged) purged = g_new0 (SteadPurged, 1);
  const char *path;

  g_return_val_if_fail (STEAD_IS_STORE (store) && ids != NULL, NULL);
  if (!stead_store_begin (store, _("People who left"), error))
    return NULL;
  for (guint i = 0; i < ids->len; i++)
    if (!purge_person (store, g_array_index (ids, gint64, i), purged, error))
      {
        stead_store_rollback (store);
        return NULL;
      }
  if (!stead_store_commit (store, error))
    return NULL;
  stead_backup_wait (store);
  if (!stead_connection_exec (store->db, "VACUUM", error))
    {
      g_prefix_error (error, "%s ", _("The people were removed, but the file could not be written anew, so traces may be "
                                      "left in it."));
      return NULL;
    }
  path = stead_store_get_path (store);
  purged->copies = path != NULL ? stead_purge_list_copies (path) : g_ptr_array_new_with_free_func (g_free);
  return g_steal_pointer (&purged);
}

/* --- copies ------------------------------------------------------------------------------- */

static int
by_name (gconstpointer a,
         gconstpointer b)
{
  return strcmp (*(const char * const *) a, *(const char * const *) b);
}

GPtrArray *
stead_purge_list_copies (const char *path)
{
  GPtrArray *copies = g_ptr_array_new_with_free_func (g_free);
  g_autoptr(GPtrArray) dated = stead_store_list_backups (path);
  g_autofree char *folder = g_path_get_dirname (path);
  g_autofree char *stem = stead_copy_stem (path);
  g_autofree char *before = g_strconcat (stem, " before ", NULL);
  g_autoptr(GDir) dir = g_dir_open (folder, 0, NULL);
  const char *name;

  for (guint i = 0; i < dated->len; i++)
    g_ptr_array_add (copies, g_strdup (((const SteadBackup *) dated->pdata[i])->path));
  while (dir != NULL && (name = g_dir_read_name (dir)) != NULL)
    if (g_str_has_prefix (name, before) && g_str_has_suffix (name, STEAD_COPY_ENDING))
      g_ptr_array_add (copies, g_build_filename (folder, name, NULL));
  g_ptr_array_sort (copies, by_name);
  return copies;
}

guint
stead_purge_delete_copies (const GPtrArray *copies)
{
  guint left = 0;

  for (guint i = 0; i < copies->len; i++)
    left += g_unlink (copies->pdata[i]) != 0;
  return left;
}
