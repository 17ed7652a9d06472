/* stead-folder-answer.h - "What leaves the farm?" and the folder itself, with a
 * description of each table and column.
 */
#pragma once

#include "store/stead-folder.h"

G_BEGIN_DECLS

/* What leaves when a farm, or a part of it, is written out. */
typedef struct
{
  GPtrArray *tables;      /* (element-type SteadFolderTable): those that are written, with their rows */
  guint      rows;
  guint      people;      /* rows of “person” among them */
  guint      pictures;
  gboolean   whole;       /* can be taken in again */
  char      *sentence;    /* markup: "103 tables with 5,210 rows: 16 people by name, …" */
  char      *warning;     /* (nullable): what is sensitive in it, plain text */
} SteadLeaving;

void stead_leaving_free (SteadLeaving *leaving);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadLeaving, stead_leaving_free)

/**
 * stead_folder_answer_leaving:
 * @options: (nullable): what is left out; %NULL: nothing
 *
 * Returns: (transfer full): what stead_folder_answer_write() would write, or %NULL
 */
SteadLeaving *stead_folder_answer_leaving (SteadStore                *store,
                                           const SteadFolderOptions  *options,
                                           GError                   **error) G_GNUC_WARN_UNUSED_RESULT;

/**
 * stead_folder_answer_write:
 * @path: a folder that is not there yet
 * @options: (nullable): what is left out; “besides” is ignored
 *
 * As stead_folder_write(), with README.md and columns.csv beside the tables.
 */
gboolean      stead_folder_answer_write   (SteadStore                *store,
                                           const char                *path,
                                           const SteadFolderOptions  *options,
                                           GCancellable              *cancellable,
                                           GError                   **error) G_GNUC_WARN_UNUSED_RESULT;

/* Returns: (transfer full): what a column holds, in English, as the file's names are */
char         *stead_folder_answer_meaning (const char               *table,
                                           const SteadFolderColumn  *column) G_GNUC_WARN_UNUSED_RESULT;
/* Returns: (transfer full): "kg", "°C", "smallest unit of the currency"; empty if it has none */
char         *stead_folder_answer_unit    (const char               *table,
                                           const SteadFolderColumn  *column) G_GNUC_WARN_UNUSED_RESULT;
/* Returns: (nullable): what a table holds, in English */
const char   *stead_folder_answer_table   (const char               *table);

G_END_DECLS
