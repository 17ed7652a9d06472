/* stead-trace-answer.h - "Where did this lot come from, and where is all of it now?" */
#pragma once

#include "answer/stead-words.h"
#include "core/stead-flow.h"
#include "store/stead-trace-repo.h"

G_BEGIN_DECLS

/* One lot of the trace as a row: in + found = used + sold + given + lost + left. */
typedef struct
{
  const SteadTraceLot *lot;
  char *name;       /* "Tomato sauce, K26062-1" */
  char *from;       /* "Lakeside Feed & Seed, March 3", "made by Sauce 4 on March 3" */
  char *in, *found, *used, *sold, *given, *lost, *left;   /* amounts; (nullable): nothing */
  gboolean balances;
} SteadTraceRow;

/* One batch of the trace: who worked on it and what was checked. */
typedef struct
{
  const SteadTraceBatch *batch;
  char *people;     /* (nullable): "Ada B. and Ben C." */
  char *checks;     /* (nullable): "12 water tests, the last on March 1. 1 treatment: salt bath." */
} SteadTraceBatchRow;

typedef struct
{
  SteadTrace          *trace;
  const SteadTraceLot *lot;       /* the one that is asked about */
  GPtrArray           *back;      /* of SteadTraceRow: what went into it, the farthest first */
  GPtrArray           *ahead;     /* of SteadTraceRow: the lot itself and what was made of it */
  GPtrArray           *batches;   /* of SteadTraceBatchRow, both ways */
  GPtrArray           *suppliers; /* of char: who the goods came from, by name */
  SteadFlow           *flow;      /* to be drawn; many of a kind are one */
  gboolean             balances;  /* every row does */
  char                *sentence;  /* markup */
  char                *caution;   /* (nullable): it is in other hands, or does not balance */
} SteadTraceAnswer;

void stead_trace_answer_free (SteadTraceAnswer *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadTraceAnswer, stead_trace_answer_free)

SteadTraceAnswer *stead_trace_answer_new (SteadStore  *store,
                                          gint64       lot_id,
                                          GError     **error) G_GNUC_WARN_UNUSED_RESULT;

/* @base: base units of @unit.  Returns: (transfer full) (nullable): nothing, or less than a milligram */
char *stead_trace_amount (double           base,
                          const SteadUnit *unit) G_GNUC_WARN_UNUSED_RESULT;

/* What is left of each lot: (transfer full) (element-type SteadWhy) */
GPtrArray *stead_trace_answer_whys (const SteadTraceAnswer *self) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
