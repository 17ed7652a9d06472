/* stead-rescue-private.h - the damaged file as it is read for a rescue. */
#pragma once

#include "store/stead-connection.h"

G_BEGIN_DECLS

/* A connection to a copy in memory whose schema is ours alone. */
typedef struct
{
  sqlite3    *db;
  sqlite3    *model;         /* an empty farm of the same version */
  int         version;
  gboolean    is_complete;   /* the file names every table of the version */
  GHashTable *roots;         /* of the tables that were found: name -> page */
  gsize       size;          /* bytes of the file */
} SteadWreck;

void stead_wreck_free (SteadWreck *wreck);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadWreck, stead_wreck_free)

SteadWreck *stead_wreck_open (const char         *path,
                              const SteadSchema  *schema,
                              GError            **error) G_GNUC_WARN_UNUSED_RESULT;

/* How much is read before it is clear that a file has no end: trees may run into each
 * other, and long values into themselves, so that the same bytes are read for ever. */
typedef struct
{
  int    tries;      /* how often damage may still be jumped over */
  gint64 rows;       /* that may still be read */
  gint64 bytes;      /* that may still be read in long values */
} SteadWreckBudget;

/* Takes a row of the wreck; %FALSE stops the reading. */
typedef gboolean (*SteadWreckRow) (sqlite3_stmt *stmt, gpointer data);

/**
 * stead_wreck_read:
 * @columns: the table's columns, with commas
 * @has_rowid: whether its rows are numbered
 * @most_rows: of this table
 * @budget: of the whole file; what was used is taken off it
 *
 * Every row that can be read, each once, whatever order the file is in: from the
 * front, from behind, and from between.
 *
 * Returns: %TRUE if no damage was met
 */
gboolean    stead_wreck_read (sqlite3          *db,
                              const char       *table,
                              const char       *columns,
                              gboolean          has_rowid,
                              gint64            most_rows,
                              SteadWreckBudget *budget,
                              SteadWreckRow     take,
                              gpointer          data);

G_END_DECLS
