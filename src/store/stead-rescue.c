/* stead-rescue.c - what can still be read of a damaged farm goes into a new farm.
 *
 * Invariants:
 *  1. The new farm appears under its name whole and checked, or not at all.
 *  2. Every row passes the rules of the tables: types, CHECK, UNIQUE.  What
 *     belongs to a row that is lost is let go of, or left out.
 *  3. What is lost is told; nothing is made up in its place.
 */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <glib/gstdio.h>

#include "store/stead-copy.h"
#include "store/stead-message.h"
#include "store/stead-migrate.h"
#include "store/stead-rescue-private.h"
#include "store/stead-rescue.h"
#include "store/stead-store-internal.h"

#define MOST_TRIES 200000
#define MOST_PASSES 40
#define SMALLEST_ROW 8      /* bytes that a row takes in the file, at the least */
#define OVER_AGAIN 4        /* a row may be read from the front and from behind */
#define MOST_AGAIN 1000     /* rows in sequence that are there already */

typedef struct
{
  SteadWreck      *wreck;
  sqlite3         *db;         /* the new farm */
  SteadRescue     *rescue;
  GCancellable    *cancellable;
  SteadWreckBudget budget;

  /* The table under way. */
  sqlite3_stmt    *insert;
  int              n_columns;
  int              n_again;    /* rows in sequence that were there already */
  int              failed;     /* a result that says nothing about the row; SQLITE_OK: none */
} Work;

void
stead_rescue_free (SteadRescue *rescue)
{
  g_ptr_array_unref (rescue->lost);
  g_clear_pointer (&rescue->faults, g_ptr_array_unref);
  g_free (rescue);
}

gboolean
stead_rescue_may_help (const GError *error)
{
  g_return_val_if_fail (error != NULL, FALSE);
  return g_error_matches (error, STEAD_STORE_ERROR, STEAD_STORE_ERROR_DAMAGED) ||
         g_error_matches (error, STEAD_STORE_ERROR, STEAD_STORE_ERROR_NOT_A_FARM);
}

/* --- rows --------------------------------------------------------------------- */

/* A flipped bit in a text may leave what is no text at all. */
static void
bind_text (sqlite3_stmt *insert,
           int           at,
           sqlite3_stmt *stmt,
           int           column)
{
  const char *text = (const char *) sqlite3_column_text (stmt, column);
  int length = sqlite3_column_bytes (stmt, column);

  if (text != NULL && g_utf8_validate (text, length, NULL))
    sqlite3_bind_text (insert, at, text, length, SQLITE_TRANSIENT);
  else
    sqlite3_bind_text (insert, at, g_utf8_make_valid (text != NULL ? text : "", text != NULL ? length : 0), -1, g_free);
}

static gboolean
take_row (sqlite3_stmt *stmt,
          gpointer      data)
{
  Work *work = data;
  int rc;

  for (int i = 0; i < work->n_columns; i++)
    if (sqlite3_column_type (stmt, i) == SQLITE_TEXT)
      bind_text (work->insert, i + 1, stmt, i);
    else
      sqlite3_bind_value (work->insert, i + 1, sqlite3_column_value (stmt, i));
  rc = sqlite3_step (work->insert);
  sqlite3_reset (work->insert);
  work->n_again = rc == SQLITE_CONSTRAINT_PRIMARYKEY ? work->n_again + 1 : 0;
  if (rc == SQLITE_DONE)
    work->rescue->n_rows++;
  else if ((rc & 0xff) == SQLITE_CONSTRAINT || (rc & 0xff) == SQLITE_MISMATCH)
    /* Rows without a number are read twice, from the front and from behind. */
    work->rescue->n_refused += rc != SQLITE_CONSTRAINT_PRIMARYKEY;
  else
    work->failed = rc;
  return work->failed == SQLITE_OK && work->n_again < MOST_AGAIN && !g_cancellable_is_cancelled (work->cancellable);
}

static char *
columns_of (sqlite3    *db,
            const char *table,
            int        *out_n)
{
  g_autofree char *sql = g_strdup_printf ("SELECT name FROM pragma_table_info ('%s') ORDER BY pk = 0, pk, cid", table);
  g_autoptr(sqlite3_stmt) stmt = NULL;
  GString *columns = g_string_new (NULL);

  *out_n = 0;
  sqlite3_prepare_v2 (db, sql, -1, &stmt, NULL);
  while (sqlite3_step (stmt) == SQLITE_ROW)
    g_string_append_printf (columns, "%s\"%s\"", (*out_n)++ > 0 ? ", " : "", sqlite3_column_text (stmt, 0));
  return g_string_free (columns, FALSE);
}

static char *
marks_for (int n)
{
  GString *marks = g_string_new ("?");

  while (--n > 0)
    g_string_append (marks, ", ?");
  return g_string_free (marks, FALSE);
}

/* What the program derives or that speaks of the old file alone. */
static gboolean
is_left_behind (const char *table)
{
  return g_str_equal (table, "step") || g_str_equal (table, "lot_stock") || g_str_has_prefix (table, "sqlite_");
}

static gboolean
fail (Work    *work,
      GError **error)
{
  if (g_cancellable_is_cancelled (work->cancellable))
    stead_message_set (NULL, SQLITE_INTERRUPT, error);
  else
    stead_message_set (NULL, work->failed, error);
  return FALSE;
}

static gboolean
copy_table (Work        *work,
            const char  *table,
            gboolean     has_rowid,
            GError     **error)
{
  g_autofree char *columns = columns_of (work->wreck->model, table, &work->n_columns);
  g_autofree char *marks = marks_for (work->n_columns);
  g_autofree char *sql = g_strdup_printf ("INSERT INTO \"%s\" (%s) VALUES (%s)", table, columns, marks);
  g_autofree char *clear = g_strdup_printf ("DELETE FROM \"%s\"", table);
  g_autoptr(sqlite3_stmt) insert = NULL;
  int rc;

  if (!g_hash_table_contains (work->wreck->roots, table))
    {
      /* Translators: the name of a table in the file. */
      g_ptr_array_add (work->rescue->lost, g_strdup_printf (_("Nothing of “%s” could be found."), table));
      return TRUE;
    }
  rc = sqlite3_prepare_v2 (work->db, sql, -1, &insert, NULL);
  if (rc != SQLITE_OK || !stead_connection_exec (work->db, clear, NULL))
    {
      stead_message_set (work->db, rc != SQLITE_OK ? rc : SQLITE_IOERR, error);
      return FALSE;
    }
  work->insert = insert;
  work->n_again = 0;
  if (!stead_wreck_read (work->wreck->db, table, columns, has_rowid, (gint64) work->wreck->size / SMALLEST_ROW,
                         &work->budget, take_row, work) &&
      work->failed == SQLITE_OK)
    g_ptr_array_add (work->rescue->lost,
                     /* Translators: the name of a table in the file. */
                     g_strdup_printf (_("A part of “%s” could not be read."), table));
  return (work->failed == SQLITE_OK && !g_cancellable_is_cancelled (work->cancellable)) || fail (work, error);
}

static gboolean
copy_tables (Work    *work,
             GError **error)
{
  static const char sql[] = "SELECT name, wr FROM pragma_table_list WHERE schema = 'main' AND type = 'table' ORDER BY name";
  g_autoptr(sqlite3_stmt) stmt = NULL;
  int rc = sqlite3_prepare_v2 (work->wreck->model, sql, -1, &stmt, NULL);

  while (rc == SQLITE_OK && (rc = sqlite3_step (stmt)) == SQLITE_ROW)
    {
      const char *table = (const char *) sqlite3_column_text (stmt, 0);

      rc = SQLITE_OK;
      if (!is_left_behind (table) && !copy_table (work, table, sqlite3_column_int (stmt, 1) == 0, error))
        return FALSE;
    }
  if (rc == SQLITE_DONE)
    return TRUE;
  stead_message_set (work->wreck->model, rc, error);
  return FALSE;
}

/* --- what hangs together --------------------------------------------------------- */

/* No number is given twice, not that of a row which was deleted long ago either. */
static gboolean
note_sequence (sqlite3_stmt *stmt,
               gpointer      data)
{
  Work *work = data;
  g_autoptr(sqlite3_stmt) update = NULL;

  if (sqlite3_column_type (stmt, 0) != SQLITE_TEXT || sqlite3_column_type (stmt, 1) != SQLITE_INTEGER ||
      sqlite3_column_int64 (stmt, 1) >= G_MAXINT32)
    return TRUE;
  sqlite3_prepare_v2 (work->db, "UPDATE sqlite_sequence SET seq = max (seq, ?2) WHERE name = ?1", -1, &update, NULL);
  sqlite3_bind_value (update, 1, sqlite3_column_value (stmt, 0));
  sqlite3_bind_value (update, 2, sqlite3_column_value (stmt, 1));
  sqlite3_step (update);
  return TRUE;
}

static gboolean
count_change (Work        *work,
              const char  *sql,
              gboolean     is_loss,
              guint64     *inout_n,
              GError     **error)
{
  if (!stead_connection_exec (work->db, sql, error))
    return FALSE;
  *inout_n += (guint64) sqlite3_changes64 (work->db);
  if (is_loss)
    work->rescue->n_orphans += (guint64) sqlite3_changes64 (work->db);
  return TRUE;
}

/* Rows of @table whose @column names a row of @parent that is not there. */
static gboolean
mend_reference (Work          *work,
                sqlite3_stmt  *key,
                guint64       *inout_n,
                GError       **error)
{
  const char *table = (const char *) sqlite3_column_text (key, 0);
  const char *column = (const char *) sqlite3_column_text (key, 1);
  const char *parent = (const char *) sqlite3_column_text (key, 2);
  const char *parent_column = (const char *) sqlite3_column_text (key, 3);
  gboolean may_let_go = sqlite3_column_int (key, 4) != 0;
  g_autofree char *lost = g_strdup_printf ("\"%s\" IS NOT NULL AND NOT EXISTS (SELECT 1 FROM \"%s\" AS parent"
                                           " WHERE parent.\"%s\" = \"%s\".\"%s\")",
                                           column, parent, parent_column, table, column);
  g_autofree char *let_go = g_strdup_printf ("UPDATE OR IGNORE \"%s\" SET \"%s\" = NULL WHERE %s", table, column, lost);
  g_autofree char *leave_out = g_strdup_printf ("DELETE FROM \"%s\" WHERE %s", table, lost);

  return (!may_let_go || count_change (work, let_go, FALSE, inout_n, error)) &&
         count_change (work, leave_out, TRUE, inout_n, error);
}

/* A row lets go of what it names where the rules of its table let that be empty: a
 * fact is kept rather than the link to what is lost. */
static gboolean
mend_references (Work    *work,
                 GError **error)
{
  static const char sql[] =
    "SELECT tables.name, key.\"from\", key.\"table\","
    " coalesce (key.\"to\", (SELECT name FROM pragma_table_info (key.\"table\") WHERE pk = 1)),"
    " NOT info.\"notnull\" AND info.pk = 0"
    " FROM pragma_table_list AS tables, pragma_foreign_key_list (tables.name) AS key,"
    "  pragma_table_info (tables.name) AS info"
    " WHERE tables.schema = 'main' AND tables.type = 'table' AND info.name = key.\"from\" ORDER BY tables.name, key.id";

  for (int pass = 0; pass < MOST_PASSES; pass++)
    {
      g_autoptr(sqlite3_stmt) stmt = NULL;
      guint64 n = 0;
      int rc = sqlite3_prepare_v2 (work->wreck->model, sql, -1, &stmt, NULL);

      while (rc == SQLITE_OK && (rc = sqlite3_step (stmt)) == SQLITE_ROW)
        {
          rc = SQLITE_OK;
          if (!mend_reference (work, stmt, &n, error))
            return FALSE;
        }
      if (rc != SQLITE_DONE)
        {
          stead_message_set (work->wreck->model, rc, error);
          return FALSE;
        }
      if (n == 0)
        return TRUE;
    }
  return TRUE;
}

/* What is on hand is the sum of the movements; a farm has one row of settings. */
static gboolean
complete (Work    *work,
          GError **error)
{
  static const char stock[] =
    "DELETE FROM lot_stock; INSERT INTO lot_stock (lot_id, base, cents) SELECT lot.id,"
    " coalesce (sum (movement.quantity_base), 0), coalesce (sum (movement.cost_cents), 0)"
    " FROM lot LEFT JOIN movement ON movement.lot_id = lot.id GROUP BY lot.id;"
    "INSERT OR IGNORE INTO change_count (id, number) VALUES (1, 0)";
  gint64 n;

  if (!stead_connection_exec (work->db, stock, error) ||
      !stead_connection_number (work->db, "SELECT count(*) FROM farm", &n, error))
    return FALSE;
  if (n > 0)
    return TRUE;
  g_ptr_array_add (work->rescue->lost, g_strdup (_("The farm's own settings are lost. Look at them in “Settings”.")));
  return stead_store_insert_farm (work->db, _("Rescued farm"), error);
}

static gboolean
fill (Work               *work,
      const SteadSchema  *schema,
      GError            **error)
{
  g_autofree char *mark = g_strdup_printf ("PRAGMA application_id = %d", STEAD_SCHEMA_APPLICATION_ID);

  /* The part has no readers and is put onto the disk as a whole afterwards. */
  if (!stead_connection_exec (work->db, "PRAGMA journal_mode = MEMORY; PRAGMA synchronous = OFF;"
                              "PRAGMA foreign_keys = OFF; BEGIN", error) ||
      !stead_connection_exec (work->db, mark, error) ||
      !stead_connection_lay_out (work->db, schema, 0, work->wreck->version, error))
    return FALSE;
  sqlite3_db_config (work->db, SQLITE_DBCONFIG_ENABLE_TRIGGER, 0, NULL);
  if (!copy_tables (work, error))
    return FALSE;
  if (work->rescue->n_rows == 0)
    {
      g_set_error_literal (error, STEAD_STORE_ERROR, STEAD_STORE_ERROR_NOT_A_FARM,
                           _("Nothing of a farm could be read in this file."));
      return FALSE;
    }
  stead_wreck_read (work->wreck->db, "sqlite_sequence", "name, seq", TRUE, 1000, &work->budget, note_sequence, work);
  if (!mend_references (work, error) || !complete (work, error) || !stead_connection_exec (work->db, "COMMIT", error))
    return FALSE;
  sqlite3_db_config (work->db, SQLITE_DBCONFIG_ENABLE_TRIGGER, 1, NULL);
  return work->wreck->version == schema->version ||
         stead_migrate (work->db, NULL, schema, work->wreck->version, error);
}

/* --- the new farm ------------------------------------------------------------------ */

static gboolean
fill_part (const char         *part,
           SteadWreck         *wreck,
           SteadRescue        *rescue,
           const SteadSchema  *schema,
           GCancellable       *cancellable,
           GError            **error)
{
  Work work = { .wreck = wreck, .rescue = rescue, .cancellable = cancellable,
                .budget = { MOST_TRIES, (gint64) wreck->size / SMALLEST_ROW * OVER_AGAIN, (gint64) wreck->size * OVER_AGAIN } };
  g_autoptr(sqlite3) db = stead_connection_create (part, error);

  if (db == NULL)
    return FALSE;
  work.db = db;
  return fill (&work, schema, error) &&
         stead_store_verify_connection (db, cancellable, rescue->faults, error);
}

static SteadRescue *
rescue_as (const char         *from,
           const char         *part,
           const SteadSchema  *schema,
           GCancellable       *cancellable,
           GError            **error)
{
  g_autoptr(SteadRescue) rescue = g_new0 (SteadRescue, 1);
  g_autoptr(SteadWreck) wreck = NULL;

  rescue->lost = g_ptr_array_new_with_free_func (g_free);
  rescue->faults = g_ptr_array_new_with_free_func (g_free);
  wreck = stead_wreck_open (from, schema, error);
  if (wreck == NULL || !fill_part (part, wreck, rescue, schema, cancellable, error))
    {
      g_unlink (part);
      return NULL;
    }
  return stead_copy_settle (part, cancellable, error) ? g_steal_pointer (&rescue) : NULL;
}

SteadRescue *
stead_rescue_run (const char    *from,
                  const char    *to,
                  GCancellable  *cancellable,
                  GError       **error)
{
  g_autofree char *part = g_strdup_printf ("%s.%08x.part", to, g_random_int ());
  g_autoptr(SteadRescue) rescue = NULL;

  g_return_val_if_fail (from != NULL && to != NULL, NULL);
  if (!g_file_test (from, G_FILE_TEST_IS_REGULAR))
    {
      g_set_error_literal (error, STEAD_STORE_ERROR, STEAD_STORE_ERROR_NOT_FOUND,
                           _("There is no such file. It may have been moved, renamed or deleted."));
      return NULL;
    }
  if (!stead_connection_claim (to, error))
    return NULL;
  if (stead_connection_claim (part, error))
    rescue = rescue_as (from, part, &stead_schema, cancellable, error);
  if (rescue != NULL && stead_copy_place (part, to, error))
    return g_steal_pointer (&rescue);
  g_unlink (to);
  return NULL;
}
