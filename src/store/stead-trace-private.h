/* stead-trace-private.h - a trace on its way: what is found, and what is still to be looked at. */
#pragma once

#include "store/stead-store-private.h"
#include "store/stead-trace-repo.h"

G_BEGIN_DECLS

typedef struct
{
  gint64 id;
  int    step;
} SteadTracePlace;

typedef struct
{
  SteadStore *store;
  SteadTrace *trace;
  GHashTable *lots;      /* gint64 -> SteadTraceLot (unowned) */
  GHashTable *uses;      /* gint64 lot -> GArray of SteadTraceLink: the batches that used it */
  GHashTable *batches;   /* gint64 -> SteadTraceBatch (unowned) */
  GHashTable *bounds;    /* gint64 batch -> the day that was looked up to (backward) or from (forward) */
  GHashTable *links;     /* SteadTraceLink keys -> index in trace->links + 1 */
  GArray     *wait;      /* of SteadTracePlace: lots whose other side is still to be looked at */
  guint       at;        /* the next of them */
} SteadTraceWalk;

/* Each is added once.  A lot comes with what became of it, and waits to be followed. */
gboolean stead_trace_add_lot   (SteadTraceWalk  *walk,
                                gint64           id,
                                int              step,
                                GError         **error) G_GNUC_WARN_UNUSED_RESULT;

/* @step: as of the lots on its far side */
gboolean stead_trace_add_batch (SteadTraceWalk  *walk,
                                gint64           id,
                                int              step,
                                GError         **error) G_GNUC_WARN_UNUSED_RESULT;

/* Amounts that went into a batch from one lot add up. */
void     stead_trace_add_link  (SteadTraceWalk  *walk,
                                SteadTraceLink   link);

G_END_DECLS
