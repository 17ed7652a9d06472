/* stead-trace-repo.h - one way back, and forward: where a lot came from and where it went.
 *
 * Backward: the batch that made the lot, the lots that it used up to the day it was
 * made, their batches, and so on to the receipts.  Forward: the batches that used
 * it, the lots that they made from that day on, and so on.  What a kitchen made is
 * traced whole, whatever the days.  Each lot and batch is visited once, so a circle in
 * a damaged file ends.
 */
#pragma once

#include "store/stead-batch-repo.h"
#include "store/stead-lot-repo.h"

G_BEGIN_DECLS

typedef struct
{
  gint64           id;
  int              step;         /* batches between it and the traced lot: below 0 backward,
                                    above 0 forward, 0 the lot itself */
  char            *code;
  gint64           item_id;
  char            *item_name;
  SteadItemKind    item_kind;
  const SteadUnit *unit;
  SteadDay         day;          /* received or made */
  SteadDay         best_by;
  gint64           batch_id;     /* that made it; 0: bought or given */
  gint64           receipt_id;   /* 0: made */
  char            *supplier;     /* (nullable) */
  char            *reference;    /* (nullable): number on the paper */
  char            *buyer;        /* (nullable): who bought it */
  gboolean         is_gift;
  char            *place_name;   /* (nullable): where the rest lies */

  /* in + found = used + sold + given + lost + left.  Base units. */
  double           in_base;
  double           found_base;   /* by counts and corrections; below 0: missing */
  double           used_base, sold_base, given_base, lost_base, left_base;
} SteadTraceLot;

typedef struct
{
  gint64         id;
  int            step;           /* as of the lots that it stands closer to the traced lot than */
  char          *name;
  SteadBatchKind kind;
  SteadDay       started_on;
  SteadDay       ended_on;
  gint64         n_people;
  char          *people;         /* (nullable): "Ada B., Ben C.", by name */
  gint64         n_tests;        /* of its water, from its start to its end or the day traced to */
  SteadDay       last_test;
  gint64         n_treatments;
  char          *treatment;      /* (nullable): the last one, what it was */
  gint64         n_steps, n_done;  /* of its run sheet; 0: none */
  double         lost_base;      /* spoiled or tasted before it came into a lot, base units */
} SteadTraceBatch;

/* So much of a lot went into a batch, or came out of one. */
typedef struct
{
  gint64   lot_id;
  gint64   batch_id;
  gboolean is_made;
  double   base;
  SteadDay first, last;
} SteadTraceLink;

typedef struct
{
  gint64     lot_id;
  GPtrArray *lots;       /* of SteadTraceLot: the farthest back first, then by day */
  GPtrArray *batches;    /* of SteadTraceBatch, in the same order */
  GArray    *links;      /* of SteadTraceLink */
  GPtrArray *gone;       /* of SteadMove: sold, given, lost of the lot and those after it, oldest first */
} SteadTrace;

void stead_trace_free (SteadTrace *trace);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadTrace, stead_trace_free)

/**
 * stead_trace_repo_get:
 *
 * Returns: (transfer full): the whole trace, or %NULL with @error, NOT_FOUND if there is no such lot
 */
SteadTrace *stead_trace_repo_get (SteadStore  *store,
                                  gint64       lot_id,
                                  GError     **error) G_GNUC_WARN_UNUSED_RESULT;

/* Returns: (nullable): the lot, the batch of that id in the trace */
const SteadTraceLot   *stead_trace_find_lot   (const SteadTrace *trace,
                                               gint64            id);
const SteadTraceBatch *stead_trace_find_batch (const SteadTrace *trace,
                                               gint64            id);

/* in + found - used - sold - given - lost - left: 0 but for a damaged file. */
double stead_trace_lot_gap (const SteadTraceLot *lot);

/* The id of the lot with that code, case and blanks aside; 0: none; -1 with @error. */
gint64 stead_trace_repo_find_code (SteadStore  *store,
                                   const char  *code,
                                   GError     **error);

G_END_DECLS
