/* stead-folder-tables.c - which tables and columns a farm has, as its schema says.
 *
 * The names that are put into SQL here are those of our own schema, as SQLite lists
 * them: no name comes from a folder or from a person.
 */
#include "config.h"

#include <string.h>

#include "store/stead-folder-private.h"
#include "store/stead-message.h"
#include "store/stead-store-internal.h"

static void
column_free (gpointer data)
{
  SteadFolderColumn *column = data;

  g_free (column->name);
  g_free (column->points_to);
  g_free (column);
}

void
stead_folder_table_free (SteadFolderTable *table)
{
  if (table == NULL)
    return;
  g_free (table->name);
  g_ptr_array_unref (table->columns);
  g_free (table);
}

/* --- what a column holds ------------------------------------------------------ */

static SteadFolderType
whole_type (const char *name)
{
  static const char * const days[] = { "day", "best_by", "wait_until", "keep_until", "purge_from", NULL };

  if (g_strv_contains (days, name) || g_str_has_suffix (name, "_on") || g_str_has_suffix (name, "_day"))
    return STEAD_FOLDER_DAY;
  if (g_str_equal (name, "at") || g_str_has_suffix (name, "_at"))
    return STEAD_FOLDER_MOMENT;
  return STEAD_FOLDER_WHOLE;
}

static SteadFolderType
type_of (const char *name,
         const char *declared)
{
  if (g_str_equal (declared, "INTEGER"))
    return whole_type (name);
  if (g_str_equal (declared, "REAL"))
    return STEAD_FOLDER_NUMBER;
  return g_str_equal (declared, "BLOB") ? STEAD_FOLDER_PICTURE : STEAD_FOLDER_TEXT;
}

static SteadFolderKind
kind_of (const char      *table,
         const char      *name,
         SteadFolderType  type)
{
  static const char * const names[] = { "who", "ordered_by", "phone", "address", "giver", "to_whom", NULL };
  static const char * const notes[] = { "note", "text", "reason", "learned", "result", "brief", "caption", "question",
                                        "ground", "known_by", NULL };

  if (type != STEAD_FOLDER_TEXT)
    return STEAD_FOLDER_PLAIN;
  if (g_strv_contains (names, name) || (g_str_equal (table, "person") && g_str_equal (name, "name")))
    return STEAD_FOLDER_NAME;
  return g_strv_contains (notes, name) ? STEAD_FOLDER_NOTE : STEAD_FOLDER_PLAIN;
}

/* --- reading the schema -------------------------------------------------------- */

static gboolean
finish (sqlite3  *db,
        int       rc,
        GError  **error)
{
  if (rc == SQLITE_DONE)
    return TRUE;
  stead_message_set (db, rc, error);
  return FALSE;
}

static gboolean
read_columns (sqlite3           *db,
              SteadFolderTable  *table,
              GError           **error)
{
  static const char sql[] =
    "SELECT c.name, c.type, c.\"notnull\", c.pk,"
    " (SELECT f.\"table\" FROM pragma_foreign_key_list (?1) f WHERE f.\"from\" = c.name ORDER BY f.id LIMIT 1)"
    " FROM pragma_table_info (?1) c ORDER BY c.cid";
  g_autoptr(sqlite3_stmt) stmt = NULL;
  int rc = sqlite3_prepare_v2 (db, sql, -1, &stmt, NULL);

  if (rc == SQLITE_OK)
    rc = sqlite3_bind_text (stmt, 1, table->name, -1, SQLITE_STATIC);
  while (rc == SQLITE_OK && sqlite3_step (stmt) == SQLITE_ROW)
    {
      SteadFolderColumn *column = g_new0 (SteadFolderColumn, 1);

      column->name = g_strdup ((const char *) sqlite3_column_text (stmt, 0));
      column->type = type_of (column->name, (const char *) sqlite3_column_text (stmt, 1));
      column->kind = kind_of (table->name, column->name, column->type);
      column->needed = sqlite3_column_int (stmt, 2) != 0 || sqlite3_column_int (stmt, 3) != 0;
      column->key = sqlite3_column_int (stmt, 3) != 0;
      column->points_to = g_strdup ((const char *) sqlite3_column_text (stmt, 4));
      g_ptr_array_add (table->columns, column);
    }
  return finish (db, rc == SQLITE_OK ? sqlite3_reset (stmt) == SQLITE_OK ? SQLITE_DONE : sqlite3_errcode (db) : rc, error);
}

static SteadFolderTable *
table_new (const char *name)
{
  SteadFolderTable *table = g_new0 (SteadFolderTable, 1);

  table->name = g_strdup (name);
  table->columns = g_ptr_array_new_with_free_func (column_free);
  return table;
}

/* Steps of undo stay with the file that they belong to. */
GPtrArray *
stead_folder_tables (sqlite3  *db,
                     GError  **error)
{
  static const char sql[] = "SELECT name FROM sqlite_schema WHERE type = 'table' AND name NOT LIKE 'sqlite_%'"
                            " AND name <> 'step' ORDER BY name";
  g_autoptr(GPtrArray) tables = g_ptr_array_new_with_free_func ((GDestroyNotify) stead_folder_table_free);
  g_autoptr(sqlite3_stmt) stmt = NULL;
  int rc = sqlite3_prepare_v2 (db, sql, -1, &stmt, NULL);

  while (rc == SQLITE_OK || rc == SQLITE_ROW)
    {
      rc = sqlite3_step (stmt);
      if (rc == SQLITE_ROW)
        g_ptr_array_add (tables, table_new ((const char *) sqlite3_column_text (stmt, 0)));
    }
  if (!finish (db, rc, error))
    return NULL;
  for (guint i = 0; i < tables->len; i++)
    if (!read_columns (db, tables->pdata[i], error))
      return NULL;
  return g_steal_pointer (&tables);
}

/* --- SQL of a table -------------------------------------------------------------- */

static const SteadFolderColumn *
column_at (const SteadFolderTable *table,
           guint                   at)
{
  return table->columns->pdata[at];
}

static void
add_names (GString                *sql,
           const SteadFolderTable *table,
           gboolean                keys)
{
  const char *before = "";

  for (guint i = 0; i < table->columns->len; i++)
    {
      if (keys && !column_at (table, i)->key)
        continue;
      g_string_append_printf (sql, "%s\"%s\"", before, column_at (table, i)->name);
      before = ", ";
    }
}

static gboolean
has_key (const SteadFolderTable *table)
{
  for (guint i = 0; i < table->columns->len; i++)
    if (column_at (table, i)->key)
      return TRUE;
  return FALSE;
}

char *
stead_folder_select (const SteadFolderTable *table)
{
  GString *sql = g_string_new ("SELECT ");

  add_names (sql, table, FALSE);
  g_string_append_printf (sql, " FROM \"%s\" ORDER BY ", table->name);
  if (has_key (table))
    add_names (sql, table, TRUE);
  else
    g_string_append (sql, "rowid");
  return g_string_free (sql, FALSE);
}

char *
stead_folder_insert (const SteadFolderTable *table)
{
  GString *sql = g_string_new ("INSERT INTO ");

  g_string_append_printf (sql, "\"%s\" (", table->name);
  add_names (sql, table, FALSE);
  g_string_append (sql, ") VALUES (");
  for (guint i = 0; i < table->columns->len; i++)
    g_string_append_printf (sql, "%s?%u", i > 0 ? ", " : "", i + 1);
  g_string_append_c (sql, ')');
  return g_string_free (sql, FALSE);
}

GPtrArray *
stead_folder_list_tables (SteadStore  *store,
                          GError     **error)
{
  g_autoptr(GPtrArray) tables = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  tables = stead_folder_tables (store->db, error);
  for (guint i = 0; tables != NULL && i < tables->len; i++)
    {
      SteadFolderTable *table = tables->pdata[i];
      g_autofree char *sql = g_strdup_printf ("SELECT count (*) FROM \"%s\"", table->name);
      gint64 rows;

      if (!stead_connection_number (store->db, sql, &rows, error))
        return NULL;
      table->rows = (guint) rows;
    }
  return g_steal_pointer (&tables);
}
