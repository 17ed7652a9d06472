/* stead-changeset.c - is a recorded step well formed, and does it fit this farm?
 *
 * The farm may come from a stranger or from a failing disk, and the session
 * extension trusts its input: on bytes of its own form that do not end as they
 * should it can run in circles (seen with 3.40.1, sqlite3changeset_invert), and
 * a table with other columns is skipped without a word.  So each step is read
 * here first, by the grammar at the head of SQLite's ext/session/sqlite3session.c:
 *
 *   table:   'T', varint columns, a byte a column (not 0: in the key), name, 0
 *   change:  operation, indirect, a record (two for an UPDATE: before, after)
 *   record:  a value a column
 *   value:   0 nothing | 1 integer, 8 bytes | 2 real, 8 bytes
 *            | 3 text, varint length, bytes | 4 blob, the same | 5 NULL
 */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#include "store/stead-changeset.h"
#include "store/stead-message.h"

#define MOST_COLUMNS 100
#define VARINT_BYTES 4      /* 28 bits: as much as a value of ours may hold */
#define NUMBER_BYTES 8

enum
{
  VALUE_NOTHING,
  VALUE_INTEGER,
  VALUE_REAL,
  VALUE_TEXT,
  VALUE_BLOB,
  VALUE_NULL,
};

typedef struct
{
  sqlite3      *db;
  const guint8 *at;
  const guint8 *end;
  int           rc;    /* what went wrong beside the bytes */
} Reader;

typedef struct
{
  guint  n;
  guint8 is_key[MOST_COLUMNS];
} Columns;

/* The kind of each value of a record. */
typedef guint8 Record[MOST_COLUMNS];

static gboolean
read_byte (Reader *reader,
           guint8 *out)
{
  if (reader->at == reader->end)
    return FALSE;
  *out = *reader->at++;
  return TRUE;
}

static gboolean
skip (Reader *reader,
      gsize   n)
{
  if ((gsize) (reader->end - reader->at) < n)
    return FALSE;
  reader->at += n;
  return TRUE;
}

static gboolean
read_varint (Reader  *reader,
             guint32 *out)
{
  guint32 value = 0;

  for (int i = 0; i < VARINT_BYTES; i++)
    {
      guint8 byte;

      if (!read_byte (reader, &byte))
        return FALSE;
      value = value << 7 | (byte & 0x7f);
      if ((byte & 0x80) == 0)
        {
          *out = value;
          return TRUE;
        }
    }
  return FALSE;
}

/* The columns of a table as the farm has it. */
static gboolean
look_up (Reader     *reader,
         const char *table,
         Columns    *out)
{
  g_autoptr(sqlite3_stmt) stmt = NULL;
  int rc = sqlite3_prepare_v2 (reader->db, "SELECT pk FROM pragma_table_info (?1) ORDER BY cid", -1, &stmt, NULL);

  out->n = 0;
  if (rc == SQLITE_OK)
    rc = sqlite3_bind_text (stmt, 1, table, -1, SQLITE_STATIC);
  while (rc == SQLITE_OK && (rc = sqlite3_step (stmt)) == SQLITE_ROW && out->n < MOST_COLUMNS)
    {
      out->is_key[out->n++] = sqlite3_column_int (stmt, 0) != 0;
      rc = SQLITE_OK;
    }
  reader->rc = rc == SQLITE_DONE ? SQLITE_OK : rc;
  return reader->rc == SQLITE_OK;
}

static gboolean
read_table (Reader  *reader,
            Columns *out)
{
  const guint8 *keys, *name;
  guint32 n;

  if (!read_varint (reader, &n))
    return FALSE;
  keys = reader->at;
  if (!skip (reader, n))
    return FALSE;
  name = reader->at;
  if (memchr (name, '\0', (gsize) (reader->end - name)) == NULL)
    return FALSE;
  reader->at += strlen ((const char *) name) + 1;
  if (!g_strv_contains (stead_schema_undo_tables, (const char *) name) ||
      !look_up (reader, (const char *) name, out) || out->n != n)
    return FALSE;
  for (guint i = 0; i < n; i++)
    if ((keys[i] != 0) != out->is_key[i])
      return FALSE;
  return TRUE;
}

static gboolean
read_value (Reader *reader,
            guint8 *out_kind)
{
  guint32 length;

  if (!read_byte (reader, out_kind))
    return FALSE;
  switch (*out_kind)
    {
    case VALUE_NOTHING:
    case VALUE_NULL:
      return TRUE;
    case VALUE_INTEGER:
    case VALUE_REAL:
      return skip (reader, NUMBER_BYTES);
    case VALUE_TEXT:
    case VALUE_BLOB:
      return read_varint (reader, &length) && skip (reader, length);
    default:
      return FALSE;
    }
}

static gboolean
read_record (Reader        *reader,
             const Columns *columns,
             Record         out)
{
  for (guint i = 0; i < columns->n; i++)
    if (!read_value (reader, &out[i]))
      return FALSE;
  return TRUE;
}

/* A row that comes or goes is there whole. */
static gboolean
is_whole (const Columns *columns,
          const Record   row)
{
  for (guint i = 0; i < columns->n; i++)
    if (row[i] == VALUE_NOTHING || (columns->is_key[i] && row[i] == VALUE_NULL))
      return FALSE;
  return TRUE;
}

/* A row that changes is named by its key, which stays; what changes was and will be. */
static gboolean
is_update (const Columns *columns,
           const Record   before,
           const Record   after)
{
  for (guint i = 0; i < columns->n; i++)
    {
      gboolean was = before[i] != VALUE_NOTHING;
      gboolean will_be = after[i] != VALUE_NOTHING;

      if (columns->is_key[i] ? !was || will_be || before[i] == VALUE_NULL : was != will_be)
        return FALSE;
    }
  return TRUE;
}

static gboolean
read_change (Reader        *reader,
             const Columns *columns,
             guint8         operation)
{
  Record first, second;
  guint8 indirect;

  if (columns->n == 0 || !read_byte (reader, &indirect) || !read_record (reader, columns, first))
    return FALSE;
  switch (operation)
    {
    case SQLITE_INSERT:
    case SQLITE_DELETE:
      return is_whole (columns, first);
    case SQLITE_UPDATE:
      return read_record (reader, columns, second) && is_update (columns, first, second);
    default:
      return FALSE;
    }
}

static gboolean
read_all (Reader *reader)
{
  Columns columns = { 0 };
  guint8 byte;

  while (read_byte (reader, &byte))
    if (!(byte == 'T' ? read_table (reader, &columns) : read_change (reader, &columns, byte)))
      return FALSE;
  return TRUE;
}

gboolean
stead_changeset_check (sqlite3       *db,
                       const guint8  *bytes,
                       gsize          size,
                       GError       **error)
{
  Reader reader = { db, bytes, bytes + size, SQLITE_OK };

  if (size > 0 && read_all (&reader))
    return TRUE;
  if (reader.rc != SQLITE_OK)
    stead_message_set (db, reader.rc, error);
  else
    g_set_error_literal (error, STEAD_STORE_ERROR, STEAD_STORE_ERROR_INVALID,
                         _("The record of this step cannot be read, so the step stays as it is."));
  return FALSE;
}
