/* stead-trace-private.h - the picture of a trace. */
#pragma once

#include "answer/stead-trace-answer.h"

G_BEGIN_DECLS

/* A column with more cards than this shows those of one kind as one. */
#define STEAD_TRACE_CARDS 7

/* Returns: (transfer full): receipts on the left, what is left of the lots on the right */
SteadFlow *stead_trace_flow_new (const SteadTrace *trace) G_GNUC_WARN_UNUSED_RESULT;

/* "10 sold, 1 lost, 13 left" */
char      *stead_trace_state    (const SteadTraceLot *lot) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
