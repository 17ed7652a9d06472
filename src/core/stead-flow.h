/* stead-flow.h - things that go from one to the next, from left to right: a trace to be drawn. */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

typedef enum
{
  STEAD_FLOW_CAME,     /* bought or given */
  STEAD_FLOW_MADE,     /* came of a batch */
  STEAD_FLOW_BATCH,
} SteadFlowKind;

typedef struct
{
  int            column;      /* 0 or more, from the left */
  SteadFlowKind  kind;
  char          *title;       /* "Tomato sauce" */
  char          *detail;      /* (nullable): "K26062-1, 24 jars made on Mar 3" */
  char          *state;       /* (nullable): "10 sold, 13 left" */
  gboolean       is_subject;  /* the one that the trace is about */
  double         left_frac;   /* of it that is still there, 0 to 1; NAN: not told */
  guint          n;           /* so many are drawn as one; 1 or more */
} SteadFlowNode;

typedef struct
{
  guint from, to;             /* nodes; from a column to one farther right */
} SteadFlowLink;

typedef struct
{
  GArray *nodes;              /* of SteadFlowNode, by column, in the order in which they stand */
  GArray *links;              /* of SteadFlowLink, each pair once */
  int     n_columns;
} SteadFlow;

SteadFlow *stead_flow_new  (void) G_GNUC_WARN_UNUSED_RESULT;
void       stead_flow_free (SteadFlow *flow);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadFlow, stead_flow_free)

/* Takes the texts of @node over; returns its number. */
guint      stead_flow_add  (SteadFlow     *flow,
                            SteadFlowNode  node);

/* Once for each pair; the one farther left is where it comes from.  Nothing within a column. */
void       stead_flow_link (SteadFlow *flow,
                            guint      a,
                            guint      b);

G_END_DECLS
