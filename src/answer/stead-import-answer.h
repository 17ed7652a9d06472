/* stead-import-answer.h - "What is in this file, and what of it can be taken?"
 *
 * Reads a CSV of a log, of weighings, of receipts, of a bank or of a logger: UTF-8 with or without a mark,
 * UTF-16 with one, else Windows-1252, said aloud; comma, semicolon or tab.
 * libcsv parses, this judges.  Taking it is one action: all good rows or none.
 */
#pragma once

#include <gio/gio.h>

#include "core/stead-calendar.h"
#include "store/stead-store.h"

G_BEGIN_DECLS

typedef enum
{
  STEAD_IMPORT_FLOCK_LOG,   /* date, eggs, cracked, feed, deaths, culled, note, person */
  STEAD_IMPORT_RECEIPTS,    /* date, supplier, item, quantity, cost, gift, best by, reference */
  STEAD_IMPORT_FISH_LOG,    /* date, feed, temperature, deaths, culled, feed left, reason, note, person */
  STEAD_IMPORT_TEMPERATURES,  /* date, temperature or highest and lowest, humidity, light, note, person */
  STEAD_IMPORT_PICKS,       /* date, amount, grade, thrown out, reason, note, person */
  STEAD_IMPORT_WEIGHINGS,   /* date, group, number and total weight; or a row a fish: date, weight, length */
  STEAD_IMPORT_BANK,        /* date, amount or money in and money out, description; of an account */
  STEAD_IMPORT_PEOPLE,      /* name, class year, role, group: a class list */
  STEAD_IMPORT_COOLER,      /* date and time, temperature: a logger in the air of a place */
  STEAD_IMPORT_POT,         /* the same of a logger whose probe stood in a pot that cools */
} SteadImportKind;

typedef enum
{
  STEAD_ROW_TAKE,
  STEAD_ROW_SKIP,     /* blank, or already in the farm */
  STEAD_ROW_WRONG,
} SteadRowState;

typedef struct
{
  guint          line;        /* first line of the row in the file, from 1 */
  SteadRowState  state;
  char         **cells;       /* as they stand in the file */
  char          *understood;  /* what will be recorded, plain; NULL if wrong */
  char          *message;     /* (nullable): why it is skipped or wrong, and what to do */
  int            column;      /* the cell at fault, from 0; -1: the whole row */
  gpointer       fact;        /* private */
} SteadImportRow;

#define STEAD_TYPE_IMPORT (stead_import_get_type ())
G_DECLARE_FINAL_TYPE (SteadImport, stead_import, STEAD, IMPORT, GObject)

/* @name: "flock-log", "receipts", "fish-log", "temperatures", "picks", "weighings", "bank",
 * "people" or "cooler"; a pot has no name of its own */
gboolean stead_import_kind_from_name (const char      *name,
                                      SteadImportKind *out_kind);

/**
 * stead_import_read:
 * @store: the farm; may be one opened by the worker's thread
 * @kind: what the file holds
 * @batch_id: whose log or weighings, or of which account; 0 for the only one, or for receipts
 * @path: the file
 * @order: how to read 03/04; %STEAD_DATE_ORDER_UNKNOWN finds out from the file, and
 *   if it cannot, stead_import_needs_order() is true and every such row is wrong
 * @progress: (nullable): 0 to 1
 *
 * Returns: (transfer full): the preview, even with no good row; %NULL with @error
 *   when the file cannot be read at all (a folder, too large, not a table)
 */
SteadImport *stead_import_read (SteadStore      *store,
                                SteadImportKind  kind,
                                gint64           batch_id,
                                const char      *path,
                                SteadDateOrder   order,
                                GCancellable    *cancellable,
                                void           (*progress) (double share, gpointer data),
                                gpointer         data,
                                GError         **error) G_GNUC_WARN_UNUSED_RESULT;

const char * const   *stead_import_get_header  (SteadImport *self);   /* the file's own column names */
/* (transfer none): what each column was taken for, "" for one that is not used */
const char * const   *stead_import_get_columns (SteadImport *self);
guint                 stead_import_get_n_rows  (SteadImport *self);
const SteadImportRow *stead_import_get_row     (SteadImport *self, guint i);
guint                 stead_import_count       (SteadImport *self, SteadRowState state);
gboolean              stead_import_needs_order (SteadImport *self);
const char           *stead_import_get_sentence (SteadImport *self);  /* markup: "212 rows can be taken, 3 are …" */
const char           *stead_import_get_reading  (SteadImport *self);  /* plain: encoding, separator, date order found */

/* Records every row in state TAKE as one action.  @store: main thread's or a worker's own. */
gboolean stead_import_take (SteadImport   *self,
                            SteadStore    *store,
                            GCancellable  *cancellable,
                            void         (*progress) (double share, gpointer data),
                            gpointer       data,
                            GError       **error) G_GNUC_WARN_UNUSED_RESULT;

/* The wrong rows with their reasons as CSV, to mend and import again. */
gboolean stead_import_save_wrong (SteadImport  *self,
                                  const char   *path,
                                  GError      **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
