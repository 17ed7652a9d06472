/* stead-rescue-read.c - a damaged farm, made readable in memory.
 *
 * Invariants:
 *  1. The file is read once, whole, and never written to.
 *  2. No SQL of the file reaches a connection: page 1, where the schema begins, is
 *     made anew, and only our own tables are entered there, at the places where the
 *     file kept them.  The file's own schema is read as rows of a table, not parsed.
 */
#include "config.h"

#include <glib/gstdio.h>
#include <string.h>

#include "store/stead-message.h"
#include "store/stead-rescue-private.h"

/* The layout is that of sqlite.org/fileformat2.html (from memory). */
#define PAGE 4096
#define HEADER 100
#define LEAF_TABLE 0x0d
#define INTERIOR_TABLE 0x05
#define LEAF_INDEX 0x0a
#define INTERIOR_INDEX 0x02

/* A farm's schema has some 400 entries. */
#define SCHEMA_TRIES 20000
#define SCHEMA_ROWS 10000
#define SCHEMA_BYTES (4 << 20)

void
stead_wreck_free (SteadWreck *wreck)
{
  g_clear_pointer (&wreck->db, sqlite3_close);
  g_clear_pointer (&wreck->model, sqlite3_close);
  g_clear_pointer (&wreck->roots, g_hash_table_unref);
  g_free (wreck);
}

/* --- the bytes ---------------------------------------------------------------- */

static void
put_be32 (guint8  *at,
          guint32  value)
{
  for (int i = 0; i < 4; i++)
    at[i] = (guint8) (value >> (24 - 8 * i));
}

/* What is the same in every farm, and what the length of the file tells. */
static void
mend_header (guint8 *bytes,
             gsize   size)
{
  static const guint8 start[24] = { 'S', 'Q', 'L', 'i', 't', 'e', ' ', 'f', 'o', 'r', 'm', 'a', 't', ' ', '3', '\0',
                                    PAGE >> 8, PAGE & 0xff, 1, 1, 0, 64, 32, 32 };

  memcpy (bytes, start, sizeof start);
  put_be32 (bytes + 28, (guint32) (size / PAGE));
  memset (bytes + 32, 0, 8);      /* no free pages: the list of them may be damaged */
  put_be32 (bytes + 44, 4);
  memset (bytes + 52, 0, 4);
  put_be32 (bytes + 56, 1);
  memset (bytes + 64, 0, 4);
  memcpy (bytes + 92, bytes + 24, 4);
}

/* Page 1 names no table. */
static void
empty_schema (guint8 *bytes)
{
  memset (bytes + HEADER, 0, PAGE - HEADER);
  bytes[HEADER] = LEAF_TABLE;
  bytes[HEADER + 5] = PAGE >> 8;   /* the cells begin at the end of the page */
}

/* A cut-off change is taken back first, in a copy of the file and its journal. */
static char *
play_back (const char  *path,
           const char  *journal,
           gsize       *out_size,
           GError     **error)
{
  g_autofree char *folder = g_dir_make_tmp ("steading-XXXXXX", error);
  g_autofree char *copy = folder != NULL ? g_build_filename (folder, "farm", NULL) : NULL;
  g_autofree char *copy_journal = g_strconcat (copy != NULL ? copy : "", "-journal", NULL);
  char *bytes = NULL;
  gsize size;

  if (folder == NULL)
    return NULL;
  if (g_file_get_contents (path, &bytes, &size, error) && g_file_set_contents (copy, bytes, (gssize) size, error))
    {
      g_autofree char *old = NULL;
      gint64 n;

      g_clear_pointer (&bytes, g_free);
      if (g_file_get_contents (journal, &old, &size, NULL) &&
          g_file_set_contents (copy_journal, old, (gssize) size, NULL))
        {
          g_autoptr(sqlite3) db = stead_connection_open_any (copy, TRUE, NULL);

          if (db != NULL && !stead_connection_number (db, "PRAGMA schema_version", &n, NULL))
            g_debug ("the copy cannot be read");
        }
      g_file_get_contents (copy, &bytes, out_size, error);
    }
  g_unlink (copy_journal);
  g_unlink (copy);
  g_rmdir (folder);
  return bytes;
}

/* Whole pages, with room behind them. */
static guint8 *
read_bytes (const char  *path,
            gsize       *out_size,
            GError     **error)
{
  g_autofree char *journal = g_strconcat (path, "-journal", NULL);
  g_autoptr(GError) problem = NULL;
  g_autofree char *bytes = NULL;
  gsize size = 0;
  guint8 *pages;

  if (g_file_test (journal, G_FILE_TEST_IS_REGULAR))
    bytes = play_back (path, journal, &size, &problem);
  else
    g_file_get_contents (path, &bytes, &size, &problem);
  if (bytes == NULL)
    {
      stead_message_set (NULL, g_error_matches (problem, G_FILE_ERROR, G_FILE_ERROR_NOSPC) ? SQLITE_FULL
                               : g_error_matches (problem, G_FILE_ERROR, G_FILE_ERROR_IO) ? SQLITE_IOERR
                               : SQLITE_CANTOPEN, error);
      return NULL;
    }
  *out_size = MAX (1, (size + PAGE - 1) / PAGE) * PAGE;   /* the rest of a page cut short is lost */
  pages = g_malloc0 (*out_size);
  memcpy (pages, bytes, size);
  return pages;
}

static sqlite3 *
open_bytes (const guint8 *bytes,
            gsize         size)
{
  sqlite3 *db = NULL;
  guint8 *copy = sqlite3_malloc64 (size);

  if (copy == NULL || sqlite3_open_v2 (":memory:", &db, SQLITE_OPEN_READWRITE | SQLITE_OPEN_EXRESCODE, NULL) != SQLITE_OK)
    g_error ("out of memory");
  memcpy (copy, bytes, size);
  sqlite3_deserialize (db, "main", copy, (sqlite3_int64) size, (sqlite3_int64) size,
                       SQLITE_DESERIALIZE_FREEONCLOSE | SQLITE_DESERIALIZE_RESIZEABLE);
  sqlite3_db_config (db, SQLITE_DBCONFIG_TRUSTED_SCHEMA, 0, NULL);
  sqlite3_db_config (db, SQLITE_DBCONFIG_ENABLE_VIEW, 0, NULL);
  sqlite3_db_config (db, SQLITE_DBCONFIG_ENABLE_TRIGGER, 0, NULL);
  sqlite3_limit (db, SQLITE_LIMIT_LENGTH, (int) MIN (size, G_MAXINT32));   /* no value is longer than the file */
  /* What of the schema cannot be understood is passed over, not refused. */
  sqlite3_exec (db, "PRAGMA writable_schema = ON; PRAGMA cell_size_check = ON; PRAGMA foreign_keys = OFF", NULL, NULL, NULL);
  return db;
}

/* --- where the tables are ------------------------------------------------------- */

/* A table is ours by its name and the text it was made with. */
static char *
make_key (sqlite3_stmt *stmt)
{
  const char *name = (const char *) sqlite3_column_text (stmt, 1);
  const char *sql = (const char *) sqlite3_column_text (stmt, 4);

  if (name == NULL || sql == NULL || g_strcmp0 ((const char *) sqlite3_column_text (stmt, 0), "table") != 0)
    return NULL;
  return g_strconcat (name, "\n", sql, NULL);
}

/* Of all that the file names: key -> page. */
static gboolean
note_place (sqlite3_stmt *stmt,
            gpointer      data)
{
  char *key = make_key (stmt);

  if (key != NULL)
    g_hash_table_insert (data, key, GINT_TO_POINTER (sqlite3_column_int (stmt, 3)));
  return TRUE;
}

typedef struct
{
  GHashTable *places;   /* as note_place() leaves them; not owned */
  GHashTable *roots;    /* of the tables that one version has: name -> page */
  guint       tables;   /* of that version */
} Match;

static void
match_clear (Match *match)
{
  g_clear_pointer (&match->roots, g_hash_table_unref);
}
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Match, match_clear)

static gboolean
match_table (sqlite3_stmt *stmt,
             gpointer      data)
{
  Match *match = data;
  g_autofree char *key = make_key (stmt);
  gpointer page;

  if (key == NULL)
    return TRUE;
  match->tables++;
  if (g_hash_table_lookup_extended (match->places, key, NULL, &page))
    g_hash_table_insert (match->roots, g_strdup ((const char *) sqlite3_column_text (stmt, 1)), page);
  return TRUE;
}

#define OUR_SCHEMA "sqlite_schema"
#define FOUND_SCHEMA "found"

static void
read_schema (sqlite3       *db,
             const char    *table,
             SteadWreckRow  take,
             gpointer       data)
{
  SteadWreckBudget budget = { SCHEMA_TRIES, SCHEMA_ROWS, SCHEMA_BYTES };

  stead_wreck_read (db, table, "type, name, tbl_name, rootpage, sql", TRUE, SCHEMA_ROWS, &budget, take, data);
}

static sqlite3 *
make_model (const SteadSchema  *schema,
            int                 version,
            GError            **error)
{
  g_autoptr(sqlite3) db = stead_connection_create (NULL, error);

  if (db == NULL || !stead_connection_lay_out (db, schema, 0, version, error))
    return NULL;
  return g_steal_pointer (&db);
}

static gboolean
look_for_version (SteadWreck         *wreck,
                  GHashTable         *places,
                  const SteadSchema  *schema,
                  int                 version,
                  int                *inout_best,
                  GError            **error)
{
  g_autoptr(sqlite3) model = make_model (schema, version, error);
  g_auto(Match) match = { places, NULL, 0 };
  int matches;

  if (model == NULL)
    return FALSE;
  match.roots = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);
  read_schema (model, OUR_SCHEMA, match_table, &match);
  matches = (int) g_hash_table_size (match.roots);
  if (matches <= *inout_best)
    return TRUE;
  *inout_best = matches;
  wreck->version = version;
  wreck->is_complete = (guint) matches == match.tables;
  g_clear_pointer (&wreck->model, sqlite3_close);
  wreck->model = g_steal_pointer (&model);
  g_clear_pointer (&wreck->roots, g_hash_table_unref);
  wreck->roots = g_steal_pointer (&match.roots);
  return TRUE;
}

/* The file with its schema as the rows of a plain table: what began on page 1, behind
 * the header of the file, begins on a page of its own at the end. */
static sqlite3 *
open_schema (const guint8  *bytes,
             gsize          size,
             GError       **error)
{
  g_autofree guint8 *copy = g_malloc (size + PAGE);
  g_autofree char *entry = g_strdup_printf ("INSERT INTO sqlite_schema VALUES ('table', '" FOUND_SCHEMA "', '"
                                            FOUND_SCHEMA "', %" G_GSIZE_FORMAT ", 'CREATE TABLE " FOUND_SCHEMA
                                            " (type, name, tbl_name, rootpage, sql)');"
                                            "PRAGMA writable_schema = RESET; PRAGMA query_only = ON", size / PAGE + 1);
  guint8 *page = copy + size;
  gsize head = 12 + 2 * (gsize) (bytes[HEADER + 3] << 8 | bytes[HEADER + 4]);
  g_autoptr(sqlite3) db = NULL;

  memcpy (copy, bytes, size);
  memcpy (page, bytes, PAGE);
  memmove (page, page + HEADER, MIN (head, PAGE - HEADER));   /* the cells stay where they are */
  mend_header (copy, size + PAGE);
  empty_schema (copy);
  db = open_bytes (copy, size + PAGE);
  return stead_connection_exec (db, entry, error) ? g_steal_pointer (&db) : NULL;
}

/* The present version, if the file has all of its tables; else the one whose tables
 * it names most of, the newest of equals. */
static gboolean
find_tables (SteadWreck         *wreck,
             const guint8       *bytes,
             const SteadSchema  *schema,
             GError            **error)
{
  g_autoptr(sqlite3) found = open_schema (bytes, wreck->size, error);
  g_autoptr(GHashTable) places = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);
  int best = -1;

  if (found == NULL)
    return FALSE;
  read_schema (found, FOUND_SCHEMA, note_place, places);
  for (int version = schema->version; version >= 1 && !wreck->is_complete; version--)
    if (!look_for_version (wreck, places, schema, version, &best, error))
      return FALSE;
  return TRUE;
}

/* A place that another sound farm of the same past has for the table. */
static gboolean
note_place_if_none (sqlite3_stmt *stmt,
                    gpointer      data)
{
  GHashTable *roots = data;
  const char *name = (const char *) sqlite3_column_text (stmt, 1);

  if (g_strcmp0 ((const char *) sqlite3_column_text (stmt, 0), "table") == 0 &&
      name != NULL && !g_hash_table_contains (roots, name))
    g_hash_table_insert (roots, g_strdup (name), GINT_TO_POINTER (sqlite3_column_int (stmt, 3)));
  return TRUE;
}

/* The dated copies are page by page what the farm was, so a table that the damaged
 * schema no longer names is looked for where the newest of them has it; else where
 * a new farm would. */
static void
guess_tables (SteadWreck        *wreck,
              const char        *path,
              const SteadSchema *schema)
{
  g_autoptr(GPtrArray) backups = stead_store_list_backups (path);

  for (guint i = 0; i < backups->len; i++)
    {
      const SteadBackup *backup = backups->pdata[i];
      g_autoptr(sqlite3) db = stead_connection_open (backup->path, FALSE, schema, NULL);
      int version;

      if (db == NULL || !stead_connection_recognize (db, schema, &version, NULL) || version != wreck->version)
        continue;
      read_schema (db, OUR_SCHEMA, note_place_if_none, wreck->roots);
      return;
    }
  read_schema (wreck->model, OUR_SCHEMA, note_place_if_none, wreck->roots);
}

/* A page that does not begin as a table does is none. */
static void
drop_false_places (SteadWreck   *wreck,
                   const guint8 *bytes)
{
  GHashTableIter at;
  gpointer page;

  g_hash_table_iter_init (&at, wreck->roots);
  while (g_hash_table_iter_next (&at, NULL, &page))
    {
      gsize number = (gsize) (guint) GPOINTER_TO_INT (page);
      guint8 kind = number >= 2 && number <= wreck->size / PAGE ? bytes[(number - 1) * PAGE] : 0;

      if (kind != LEAF_TABLE && kind != INTERIOR_TABLE && kind != LEAF_INDEX && kind != INTERIOR_INDEX)
        g_hash_table_iter_remove (&at);
    }
}

/* --- the schema made anew --------------------------------------------------------- */

typedef struct
{
  SteadWreck   *wreck;
  sqlite3_stmt *insert;
} Entry;

static gboolean
enter_table (sqlite3_stmt *stmt,
             gpointer      data)
{
  Entry *entry = data;
  const char *name = (const char *) sqlite3_column_text (stmt, 1);
  gpointer page = g_hash_table_lookup (entry->wreck->roots, name);

  if (page == NULL || g_strcmp0 ((const char *) sqlite3_column_text (stmt, 0), "table") != 0)
    return TRUE;
  sqlite3_bind_text (entry->insert, 1, name, -1, SQLITE_TRANSIENT);
  sqlite3_bind_int (entry->insert, 2, GPOINTER_TO_INT (page));
  sqlite3_bind_value (entry->insert, 3, sqlite3_column_value (stmt, 4));
  sqlite3_step (entry->insert);
  sqlite3_reset (entry->insert);
  return TRUE;
}

static gboolean
make_schema_anew (SteadWreck  *wreck,
                  guint8      *bytes,
                  GError     **error)
{
  g_autoptr(sqlite3_stmt) insert = NULL;
  Entry entry = { .wreck = wreck };
  int rc;

  empty_schema (bytes);
  wreck->db = open_bytes (bytes, wreck->size);
  rc = sqlite3_prepare_v2 (wreck->db, "INSERT INTO sqlite_schema (type, name, tbl_name, rootpage, sql)"
                           " VALUES ('table', ?1, ?1, ?2, ?3)", -1, &insert, NULL);
  if (rc != SQLITE_OK)
    {
      stead_message_set (wreck->db, rc, error);
      return FALSE;
    }
  entry.insert = insert;
  read_schema (wreck->model, OUR_SCHEMA, enter_table, &entry);
  g_clear_pointer (&insert, sqlite3_finalize);
  return stead_connection_exec (wreck->db, "PRAGMA writable_schema = RESET; PRAGMA writable_schema = ON;"
                                "PRAGMA query_only = ON", error);
}

SteadWreck *
stead_wreck_open (const char         *path,
                  const SteadSchema  *schema,
                  GError            **error)
{
  g_autoptr(SteadWreck) wreck = g_new0 (SteadWreck, 1);
  g_autofree guint8 *bytes = read_bytes (path, &wreck->size, error);
  gboolean is_marked;

  if (bytes == NULL)
    return NULL;
  is_marked = memcmp (bytes + 68, "STED", 4) == 0;   /* STEAD_SCHEMA_APPLICATION_ID */
  mend_header (bytes, wreck->size);
  if (!find_tables (wreck, bytes, schema, error))
    return NULL;
  if (is_marked || g_hash_table_size (wreck->roots) > 0)
    guess_tables (wreck, path, schema);
  drop_false_places (wreck, bytes);
  if (!make_schema_anew (wreck, bytes, error))
    return NULL;
  return g_steal_pointer (&wreck);
}
