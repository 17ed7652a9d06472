/* stead-folder.h - a farm as a folder that any program can read: a table a file,
 * pictures as pictures.
 *
 * Invariants:
 *  1. A folder appears under its name whole, or not at all; so does a farm made of one.
 *  2. A whole folder that is taken in again gives every row of every table as it was.
 *     The steps of undo alone are not carried.
 *  3. Only the owner may read what is written.
 *
 * Tables are comma-separated values as RFC 4180 has them, UTF-8, with the names of
 * the columns in the first line.  Texts stand in quotes, numbers do not, and what is
 * not known is empty.  Days are written 2026-03-03 and moments 2026-03-03T14:05:00Z.
 * A text that a spreadsheet could take for a formula has an apostrophe before it, and
 * so has one that begins with an apostrophe, and an empty text; reading takes it off.
 */
#pragma once

#include "store/stead-store.h"

G_BEGIN_DECLS

#define STEAD_FOLDER_FORMAT 1

typedef enum
{
  STEAD_FOLDER_WHOLE,     /* a whole number */
  STEAD_FOLDER_NUMBER,
  STEAD_FOLDER_TEXT,
  STEAD_FOLDER_DAY,
  STEAD_FOLDER_MOMENT,
  STEAD_FOLDER_PICTURE,   /* the path of a picture in the folder */
} SteadFolderType;

/* What may be left out of the tables, by what a column holds. */
typedef enum
{
  STEAD_FOLDER_PLAIN,
  STEAD_FOLDER_NAME,      /* names a person, or tells where to find one */
  STEAD_FOLDER_NOTE,      /* what somebody wrote in words of his own */
} SteadFolderKind;

typedef struct
{
  char            *name;
  SteadFolderType  type;
  SteadFolderKind  kind;
  gboolean         needed;      /* never empty */
  gboolean         key;         /* part of what no two rows share */
  char            *points_to;   /* (nullable): the table whose row it names */
} SteadFolderColumn;

typedef struct
{
  char      *name;
  guint      rows;
  GPtrArray *columns;           /* (element-type SteadFolderColumn) */
} SteadFolderTable;

void stead_folder_table_free (SteadFolderTable *table);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadFolderTable, stead_folder_table_free)

/* Returns: (transfer full): what would be written, by name; with the count of rows */
GPtrArray *stead_folder_list_tables (SteadStore  *store,
                                     GError     **error) G_GNUC_WARN_UNUSED_RESULT;

typedef struct
{
  const char * const *tables;   /* (nullable): NULL-terminated; NULL: the whole farm */
  gboolean            names;    /* else “Student 3”, and nothing in the other columns of that kind */
  gboolean            notes;
  gboolean            pictures;
  GHashTable         *besides;  /* (nullable): file name -> GBytes, written beside the tables */
} SteadFolderOptions;

/**
 * stead_folder_write:
 * @store: the farm
 * @path: a folder that is not there yet; the one it stands in is
 * @options: (nullable): what to leave out; %NULL: nothing.  Only a folder with all
 *   can be taken in again
 *
 * Returns: %TRUE, or %FALSE with @error in %STEAD_STORE_ERROR and no folder
 */
gboolean   stead_folder_write       (SteadStore                *store,
                                     const char                *path,
                                     const SteadFolderOptions  *options,
                                     GCancellable              *cancellable,
                                     GError                   **error) G_GNUC_WARN_UNUSED_RESULT;

/**
 * stead_folder_read:
 * @folder: as stead_folder_write() wrote it, perhaps changed by hand since
 * @path: a farm file that is not there yet
 *
 * A file, a line and a column are named with what is wrong in them.
 *
 * Returns: %TRUE, or %FALSE with @error in %STEAD_STORE_ERROR and no farm
 */
gboolean   stead_folder_read        (const char                *folder,
                                     const char                *path,
                                     GCancellable              *cancellable,
                                     GError                   **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
