/* stead-log-kind.h - what makes the log of one kind of batch out of SteadLogView.
 *
 * The view has the table, its buttons and the columns that every log has; a kind adds
 * its own columns, and says how an entry is copied, saved and deleted.  An edited cell
 * becomes a changed copy of its entry, which the farm file checks as it checks a new
 * one; what it refuses is told in the cell.
 */
#pragma once

#include <gtk/gtk.h>

#include "answer/stead-import-answer.h"
#include "app/raise/stead-log-model.h"
#include "app/stead-desk.h"
#include "app/stead-table.h"

G_BEGIN_DECLS

#define STEAD_TYPE_LOG_VIEW (stead_log_view_get_type ())
G_DECLARE_FINAL_TYPE (SteadLogView, stead_log_view, STEAD, LOG_VIEW, GtkWidget)

/* Texts are untranslated. */
typedef struct
{
  SteadLogSource   source;
  gpointer       (*copy)   (gconstpointer entry);
  SteadDeskAct     save;                         /* of an entry */
  gboolean       (*remove) (SteadStore *store, gint64 id, GError **error);
  char          *(*name)   (gconstpointer entry, const SteadFarm *farm);   /* for the undo menu */
  void           (*columns) (SteadLogView *view);   /* between the day and the note */
  /* (nullable): a dialog for one of them, 0 for a new one; then cells are not edited */
  void           (*open)   (GtkWidget *parent, SteadDesk *desk, gint64 batch_id, gint64 id);
  const char      *add_label;                    /* (nullable): of the button for a new one */

  /* What every entry has, by its place in the struct. */
  gsize            id_at, day_at, note_at, person_at, left_out_at;

  SteadImportKind  import;
  const char      *import_label;
  const char      *paper;                        /* that "Save as…" writes */
  const char      *table_label;                  /* what a screen reader calls it */
  const char      *empty;
} SteadLogKind;

extern const SteadLogKind stead_log_flock;
extern const SteadLogKind stead_log_fish;
extern const SteadLogKind stead_log_weighings;

/* --- for the columns of a kind --------------------------------------------------- */

/* The view is the data of @text and @edit. */
void stead_log_view_add_column (SteadLogView   *self,
                                const char     *title,
                                gboolean        numeric,
                                SteadTableText  text,
                                SteadTableEdit  edit);

SteadUnitSystem stead_log_view_units (SteadLogView *self);
/* Saves @entry, a changed copy, as a step with a name. */
gboolean        stead_log_view_save  (SteadLogView *self, gpointer entry, GError **error);

/* An empty cell for zero: the eye finds the few that were lost. (transfer full) */
char    *stead_log_count_text     (gint32 count);
/* An empty cell means @if_empty. */
gboolean stead_log_parse_count    (const char *text, gint32 if_empty, gint32 *out, GError **error);
/* An empty cell means NAN. */
gboolean stead_log_parse_quantity (SteadLogView *self, const char *text, SteadDimension dimension, double *out,
                                   GError **error);
/* NAN is an empty cell. (transfer full) */
char    *stead_log_quantity_text  (SteadLogView *self, double base, SteadDimension dimension);

G_END_DECLS
