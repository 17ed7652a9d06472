/* stead-log-model.h - the log of a batch as a list that loads only what is looked at.
 *
 * Items are SteadRow of what the source gives, newest first.
 */
#pragma once

#include <gio/gio.h>

#include "store/stead-store.h"

G_BEGIN_DECLS

/* Where the entries of one kind of log come from. */
typedef struct
{
  gint64         (*count) (SteadStore *store, gint64 batch_id, GError **error);   /* -1 with @error */
  GPtrArray     *(*page)  (SteadStore *store, gint64 batch_id, gint64 offset, gint64 limit, GError **error);
  gpointer       (*blank) (void);    /* stands in a row that cannot be read just now; its id is 0 */
  GDestroyNotify   free;
} SteadLogSource;

#define STEAD_TYPE_LOG_MODEL (stead_log_model_get_type ())
G_DECLARE_FINAL_TYPE (SteadLogModel, stead_log_model, STEAD, LOG_MODEL, GObject)

/* @source: (transfer none): lives as long as the program */
SteadLogModel *stead_log_model_new  (const SteadLogSource *source);
/* Counts anew and forgets what was loaded; @store NULL empties the list. */
void           stead_log_model_load (SteadLogModel *self,
                                     SteadStore    *store,
                                     gint64         batch_id);

G_END_DECLS
