/* stead-folder-private.h - what writing and reading a folder share. */
#pragma once

#include "store/stead-connection.h"
#include "store/stead-folder.h"
#include "store/stead-repo-private.h"

G_BEGIN_DECLS

#define STEAD_FOLDER_TABLES "tables"
#define STEAD_FOLDER_PICTURES "pictures"
#define STEAD_FOLDER_MARK "folder.csv"
/* The last id given in each table, so that none is given twice. */
#define STEAD_FOLDER_LAST "last_id"

/* One cell as it was read. */
typedef struct
{
  char  *text;      /* ends in NUL, which is not counted */
  gsize  length;
} SteadFolderCell;

/* Returns: %FALSE to stop, with @error */
typedef gboolean (*SteadFolderRowFunc) (const SteadFolderCell  *cells,
                                        guint                   n_cells,
                                        guint                   line,
                                        gpointer                data,
                                        GError                **error);

/* Tables of the schema that @db holds, without rows; %NULL with @error. */
GPtrArray *stead_folder_tables     (sqlite3 *db, GError **error) G_GNUC_WARN_UNUSED_RESULT;
/* "SELECT a, b FROM t ORDER BY its key". */
char      *stead_folder_select     (const SteadFolderTable *table) G_GNUC_WARN_UNUSED_RESULT;
char      *stead_folder_insert     (const SteadFolderTable *table) G_GNUC_WARN_UNUSED_RESULT;

void       stead_folder_add_text   (GString *line, const char *text, gsize length);
void       stead_folder_add_whole  (GString *line, SteadFolderType type, gint64 value);
void       stead_folder_add_number (GString *line, double value);

/* Returns: %FALSE if the cell is no such value */
gboolean   stead_folder_take_whole  (const SteadFolderCell *cell, SteadFolderType type, gint64 *out);
gboolean   stead_folder_take_number (const SteadFolderCell *cell, double *out);
/* The text in @cell, without the apostrophe that made it harmless. */
const char *stead_folder_take_text  (const SteadFolderCell *cell, gsize *out_length);

/* "pictures/12.jpg" */
char      *stead_folder_picture    (gint64 id) G_GNUC_WARN_UNUSED_RESULT;

/* Hands the rows of a file over, the first line too. @name: for messages */
gboolean   stead_folder_read_rows  (const char         *path,
                                    const char         *name,
                                    SteadFolderRowFunc  func,
                                    gpointer            data,
                                    GError            **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
