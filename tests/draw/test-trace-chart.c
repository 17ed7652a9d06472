/* test-trace-chart.c - the cards of a trace, checked from outside. */
#include <locale.h>

#include "draw-probe.h"
#include "draw/stead-trace-chart.h"

static SteadFlowNode
node (int           column,
      SteadFlowKind kind,
      const char   *title,
      double        left)
{
  return (SteadFlowNode) { .column = column, .kind = kind, .title = g_strdup (title),
                           .detail = g_strdup ("K26062-1: 24 made on Mar 3"),
                           .state = kind == STEAD_FLOW_BATCH ? NULL : g_strdup ("10 sold, 1 lost, 13 left"),
                           .left_frac = left, .n = 1 };
}

/* @n receipts into a batch into the lot, and @n lots ahead of it. */
static SteadFlow *
flow_of (guint n)
{
  SteadFlow *flow = stead_flow_new ();
  guint batch, lot, next;

  for (guint i = 0; i < n; i++)
    stead_flow_add (flow, node (0, STEAD_FLOW_CAME, "Canning tomatoes of the second harvest", 0.25));
  batch = stead_flow_add (flow, node (1, STEAD_FLOW_BATCH, "Sauce 4", NAN));
  lot = stead_flow_add (flow, node (2, STEAD_FLOW_MADE, "Roasted tomato sauce", 0.5));
  g_array_index (flow->nodes, SteadFlowNode, lot).is_subject = TRUE;
  next = stead_flow_add (flow, node (3, STEAD_FLOW_BATCH, "Bowls", NAN));
  for (guint i = 0; i < n; i++)
    {
      stead_flow_link (flow, i, batch);
      stead_flow_link (flow, next, stead_flow_add (flow, node (4, STEAD_FLOW_MADE, "Breakfast bowl", 1)));
    }
  stead_flow_link (flow, lot, batch);
  stead_flow_link (flow, lot, batch);
  stead_flow_link (flow, lot, next);
  return flow;
}

static void
lay (cairo_t          *cr,
     const SteadFlow  *flow,
     SteadScheme       scheme,
     double            font_size,
     double            width,
     double            height,
     SteadTraceLayout *out)
{
  SteadDrawStyle style = { scheme, font_size, NULL, "USD" };

  stead_trace_chart_layout (cr, flow, &style, width, height, out);
  stead_trace_chart_paint (cr, flow, &style, out);
}

static void
test_links (void)
{
  g_autoptr(SteadFlow) flow = flow_of (2);

  g_assert_cmpint (flow->n_columns, ==, 5);
  g_assert_cmpuint (flow->links->len, ==, 2 + 2 + 2);
  for (guint i = 0; i < flow->links->len; i++)
    {
      const SteadFlowLink *link = &g_array_index (flow->links, SteadFlowLink, i);

      g_assert_cmpint (g_array_index (flow->nodes, SteadFlowNode, link->from).column, <,
                       g_array_index (flow->nodes, SteadFlowNode, link->to).column);
    }
}

static gboolean
within (const SteadBox *inner,
        const SteadBox *outer)
{
  return inner->width <= 0 ||
         (inner->x >= outer->x - 0.5 && inner->y >= outer->y - 0.5 &&
          inner->x + inner->width <= outer->x + outer->width + 0.5 &&
          inner->y + inner->height <= outer->y + outer->height + 0.5);
}

/* No card covers another, and each text stays on its card, apart from the others. */
static void
check (guint  n,
       double font_size,
       double width,
       double height)
{
  g_autoptr(SteadFlow) flow = flow_of (n);
  cairo_t *cr = probe_record ();
  g_auto(SteadTraceLayout) layout = { 0 };
  g_autofree SteadBox *cards = g_new0 (SteadBox, flow->nodes->len + (guint) flow->n_columns);
  guint shown = 0, hidden = 0;
  int m = 0;

  g_test_message ("%u, text %g, %g x %g", n, font_size, width, height);
  lay (cr, flow, STEAD_SCHEME_LIGHT, font_size, width, height, &layout);
  for (guint i = 0; i < layout.n_cards; i++)
    {
      const SteadTraceCard *card = &layout.cards[i];
      const SteadBox texts[] = { card->title, card->detail, card->state, card->bar };

      if (!card->is_drawn)
        continue;
      shown++;
      cards[m++] = card->card;
      probe_assert_apart (texts, G_N_ELEMENTS (texts));
      for (gsize j = 0; j < G_N_ELEMENTS (texts); j++)
        g_assert_true (within (&texts[j], &card->card));
    }
  for (int c = 0; c < layout.n_columns; c++)
    {
      cards[m++] = layout.columns[c].more;
      hidden += layout.columns[c].n_hidden;
    }
  g_assert_cmpuint (shown + hidden, ==, flow->nodes->len);
  probe_assert_apart (cards, m);
  probe_assert_inside (cr, width, height);
  cairo_destroy (cr);
}

static void
test_whole (void)
{
  static const guint counts[] = { 1, 3, 8, 40 };
  static const double widths[] = { 420, 760, 1200 };

  for (gsize c = 0; c < G_N_ELEMENTS (counts); c++)
    for (gsize w = 0; w < G_N_ELEMENTS (widths); w++)
      for (int f = 1; f <= 2; f++)
        check (counts[c], 12 * f, widths[w], 560);
}

/* In the height that it asks for, nothing is left out and the text keeps its size. */
static void
test_height (void)
{
  g_autoptr(SteadFlow) flow = flow_of (9);
  cairo_t *cr = probe_record ();
  SteadDrawStyle style = { STEAD_SCHEME_PRINT, 9, NULL, "USD" };
  g_auto(SteadTraceLayout) layout = { 0 };
  double height = stead_trace_chart_height (cr, flow, &style, 540);

  stead_trace_chart_layout (cr, flow, &style, 540, height, &layout);
  g_assert_cmpfloat (layout.font_size, ==, 9);
  for (guint i = 0; i < layout.n_cards; i++)
    g_assert_true (layout.cards[i].is_drawn);
  g_assert_cmpint (stead_trace_chart_at (&layout, layout.cards[3].card.x + 2, layout.cards[3].card.y + 2), ==, 3);
  g_assert_cmpint (stead_trace_chart_at (&layout, -5, -5), ==, -1);
  cairo_destroy (cr);
}

/* The bar is full up to what is left, and empty beyond. */
static void
test_bar (void)
{
  g_autoptr(SteadFlow) flow = flow_of (1);
  cairo_t *cr = probe_image (STEAD_SCHEME_LIGHT, 1000, 300);
  g_auto(SteadTraceLayout) layout = { 0 };
  const SteadBox *bar;

  lay (cr, flow, STEAD_SCHEME_LIGHT, 12, 1000, 300, &layout);
  bar = &layout.cards[0].bar;     /* a quarter is left */
  probe_assert_role (cr, STEAD_SCHEME_LIGHT, STEAD_ROLE_WATER, bar->x + bar->width * 0.2, bar->y + bar->height / 2);
  probe_assert_role (cr, STEAD_SCHEME_LIGHT, STEAD_ROLE_CARD, bar->x + bar->width * 0.3, bar->y + bar->height / 2);
  cairo_destroy (cr);
}

/* For the eye: STEAD_SHOW=FILE.png */
static void
test_show (void)
{
  g_autoptr(SteadFlow) flow = flow_of (4);
  cairo_t *cr = probe_image (STEAD_SCHEME_LIGHT, 1000, 420);
  g_auto(SteadTraceLayout) layout = { 0 };
  const char *path = g_getenv ("STEAD_SHOW");

  lay (cr, flow, STEAD_SCHEME_LIGHT, 12, 1000, 420, &layout);
  if (path != NULL)
    cairo_surface_write_to_png (cairo_get_target (cr), path);
  cairo_destroy (cr);
}

int
main (int    argc,
      char **argv)
{
  setlocale (LC_ALL, "");
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/draw/trace/links", test_links);
  g_test_add_func ("/draw/trace/whole", test_whole);
  g_test_add_func ("/draw/trace/height", test_height);
  g_test_add_func ("/draw/trace/bar", test_bar);
  g_test_add_func ("/draw/trace/show", test_show);
  return g_test_run ();
}
