/* stead-rescue-walk.c - the rows of a damaged table, over the damage.
 *
 * A row is taken once: in a tree that runs in circles the numbers of the rows do
 * not go on growing, and that ends the walk.  What has no numbers ends with the budget.
 */
#include "config.h"

#include "store/stead-rescue-private.h"

#define STEPS_ONE_BY_ONE 1000
#define LAST_ROW (G_GINT64_CONSTANT (1) << 40)

typedef struct
{
  sqlite3          *db;
  const char       *table;
  const char       *columns;
  gint64            rows_left;
  SteadWreckBudget *budget;
  SteadWreckRow     take;
  gpointer          data;
  gboolean          stopped;
} Walk;

/* How far a walk in one direction came. */
typedef struct
{
  gint64   first, last;
  guint64  n;
  gboolean whole;
} Stretch;

/* Values that are not whole numbers or the like; asking for them reads them. */
static gint64
long_bytes (sqlite3_stmt *stmt)
{
  gint64 n = 0;

  for (int i = 0; i < sqlite3_column_count (stmt); i++)
    if (sqlite3_column_type (stmt, i) == SQLITE_TEXT || sqlite3_column_type (stmt, i) == SQLITE_BLOB)
      n += sqlite3_column_bytes (stmt, i);
  return n;
}

static void
take_row (Walk         *self,
          sqlite3_stmt *stmt)
{
  self->rows_left--;
  self->budget->rows--;
  self->budget->bytes -= long_bytes (stmt);
  self->stopped = self->rows_left < 0 || self->budget->rows < 0 || self->budget->bytes < 0 ||
                  !self->take (stmt, self->data);
}

/* Rows whose number is over @after and under @before; @way: "" or " DESC". */
static Stretch
walk (Walk       *self,
      gint64      after,
      gint64      before,
      const char *way)
{
  /* The number comes last, so that the columns stand where they stand everywhere. */
  g_autofree char *sql = g_strdup_printf ("SELECT %s, rowid FROM \"%s\" NOT INDEXED"
                                          " WHERE rowid > ?1 AND rowid < ?2 ORDER BY rowid%s",
                                          self->columns, self->table, way);
  g_autoptr(sqlite3_stmt) stmt = NULL;
  Stretch stretch = { 0 };
  int rc = sqlite3_prepare_v2 (self->db, sql, -1, &stmt, NULL);

  if (rc != SQLITE_OK)
    return stretch;
  sqlite3_bind_int64 (stmt, 1, after);
  sqlite3_bind_int64 (stmt, 2, before);
  while (!self->stopped && (rc = sqlite3_step (stmt)) == SQLITE_ROW)
    {
      gint64 row = sqlite3_column_int64 (stmt, sqlite3_column_count (stmt) - 1);

      if (row <= after || row >= before)
        return stretch;
      if (*way == '\0')
        after = row;
      else
        before = row;
      take_row (self, stmt);
      if (stretch.n++ == 0)
        stretch.first = row;
      stretch.last = row;
    }
  stretch.whole = rc == SQLITE_DONE;
  return stretch;
}

/* Whether the file gives a row over @after and under @before, and which. */
static int
look_beyond (sqlite3_stmt *stmt,
             gint64        after,
             gint64        before,
             gint64       *out_row)
{
  int rc;

  sqlite3_bind_int64 (stmt, 1, after);
  sqlite3_bind_int64 (stmt, 2, before);
  rc = sqlite3_step (stmt);
  if (rc == SQLITE_ROW)
    *out_row = sqlite3_column_int64 (stmt, 0);
  sqlite3_reset (stmt);
  return rc == SQLITE_ROW && (*out_row <= after || *out_row >= before) ? SQLITE_CORRUPT : rc;
}

/* The first number after damage where rows can be read again; 0: there is none. */
static gint64
find_beyond (Walk   *self,
             gint64  after,
             gint64  before)
{
  g_autofree char *sql = g_strdup_printf ("SELECT rowid FROM \"%s\" NOT INDEXED WHERE rowid > ?1 AND rowid < ?2"
                                          " ORDER BY rowid LIMIT 1", self->table);
  g_autoptr(sqlite3_stmt) stmt = NULL;
  gint64 step = 1;

  if (sqlite3_prepare_v2 (self->db, sql, -1, &stmt, NULL) != SQLITE_OK)
    return 0;
  for (int i = 0; self->budget->tries > 0 && after < before - 1 && after < LAST_ROW; i++)
    {
      gint64 row = 0;
      int rc;

      self->budget->tries--;
      after += step;
      rc = look_beyond (stmt, after, before, &row);
      if (rc == SQLITE_ROW)
        return row;
      if (rc == SQLITE_DONE)
        return 0;
      if (i > STEPS_ONE_BY_ONE)
        step *= 2;
    }
  return 0;
}

static gboolean
walk_numbered (Walk *self)
{
  Stretch front = walk (self, G_MININT64, G_MAXINT64, "");
  gint64 after = front.n > 0 ? front.last : 0;
  gint64 before;
  Stretch back;

  if (front.whole || self->stopped)
    return front.whole;
  back = walk (self, after, G_MAXINT64, " DESC");
  before = back.n > 0 ? back.last : G_MAXINT64;
  while (!self->stopped && !back.whole)
    {
      gint64 row = find_beyond (self, after, before);
      Stretch on;

      if (row == 0)
        return FALSE;
      /* What stands before it and can be reached from it only. */
      walk (self, after, row, " DESC");
      on = walk (self, row - 1, before, "");
      if (on.whole)
        return FALSE;
      after = on.n > 0 ? on.last : row;
    }
  return FALSE;
}

/* Rows without a number: from the front and from behind; the new farm knows what it has. */
static gboolean
walk_keyed (Walk *self)
{
  static const char * const ways[] = { "", " DESC" };

  for (gsize i = 0; i < G_N_ELEMENTS (ways); i++)
    {
      g_auto(GStrv) names = g_strsplit (self->columns, ",", 2);
      g_autofree char *sql = g_strdup_printf ("SELECT %s FROM \"%s\" NOT INDEXED ORDER BY %s%s",
                                              self->columns, self->table, names[0], ways[i]);
      g_autoptr(sqlite3_stmt) stmt = NULL;
      int rc = sqlite3_prepare_v2 (self->db, sql, -1, &stmt, NULL);

      while (rc == SQLITE_OK && !self->stopped && (rc = sqlite3_step (stmt)) == SQLITE_ROW)
        {
          rc = SQLITE_OK;
          take_row (self, stmt);
        }
      if (rc == SQLITE_DONE)
        return i == 0;
    }
  return FALSE;
}

gboolean
stead_wreck_read (sqlite3          *db,
                  const char       *table,
                  const char       *columns,
                  gboolean          has_rowid,
                  gint64            most_rows,
                  SteadWreckBudget *budget,
                  SteadWreckRow     take,
                  gpointer          data)
{
  Walk self = { .db = db, .table = table, .columns = columns, .rows_left = most_rows,
                .budget = budget, .take = take, .data = data };

  return has_rowid ? walk_numbered (&self) : walk_keyed (&self);
}
