/* stead-flow.c - things that go from one to the next, from left to right: a trace to be drawn. */
#include "core/stead-flow.h"

static void
node_clear (gpointer data)
{
  SteadFlowNode *node = data;

  g_free (node->title);
  g_free (node->detail);
  g_free (node->state);
}

SteadFlow *
stead_flow_new (void)
{
  SteadFlow *flow = g_new0 (SteadFlow, 1);

  flow->nodes = g_array_new (FALSE, FALSE, sizeof (SteadFlowNode));
  g_array_set_clear_func (flow->nodes, node_clear);
  flow->links = g_array_new (FALSE, FALSE, sizeof (SteadFlowLink));
  return flow;
}

void
stead_flow_free (SteadFlow *flow)
{
  if (flow == NULL)
    return;
  g_array_unref (flow->nodes);
  g_array_unref (flow->links);
  g_free (flow);
}

guint
stead_flow_add (SteadFlow     *flow,
                SteadFlowNode  node)
{
  g_return_val_if_fail (flow != NULL && node.column >= 0, 0);
  g_array_append_val (flow->nodes, node);
  flow->n_columns = MAX (flow->n_columns, node.column + 1);
  return flow->nodes->len - 1;
}

static int
column_of (const SteadFlow *flow,
           guint            node)
{
  return g_array_index (flow->nodes, SteadFlowNode, node).column;
}

void
stead_flow_link (SteadFlow *flow,
                 guint      a,
                 guint      b)
{
  SteadFlowLink link;

  g_return_if_fail (flow != NULL && a < flow->nodes->len && b < flow->nodes->len);
  if (column_of (flow, a) == column_of (flow, b))
    return;
  link = column_of (flow, a) < column_of (flow, b) ? (SteadFlowLink) { a, b } : (SteadFlowLink) { b, a };
  for (guint i = 0; i < flow->links->len; i++)
    {
      const SteadFlowLink *old = &g_array_index (flow->links, SteadFlowLink, i);

      if (old->from == link.from && old->to == link.to)
        return;
    }
  g_array_append_val (flow->links, link);
}
