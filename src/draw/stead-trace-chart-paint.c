/* stead-trace-chart-paint.c - paints the cards of a trace and what joins them. */
#include <math.h>

#include "draw/stead-trace-chart.h"

#define SMALL 0.88

static const SteadFlowNode *
node_at (const SteadFlow *flow,
         guint            at)
{
  return &g_array_index (flow->nodes, SteadFlowNode, at);
}

/* --- links ------------------------------------------------------------------------- */

/* From the right edge of one card to the left edge of the next, in a gentle bend. */
static void
paint_link (cairo_t              *cr,
            const SteadDrawStyle *style,
            const SteadBox       *from,
            const SteadBox       *to)
{
  double x0 = from->x + from->width, y0 = from->y + from->height / 2;
  double x1 = to->x, y1 = to->y + to->height / 2;
  double bend = (x1 - x0) / 2;

  cairo_new_path (cr);
  cairo_move_to (cr, x0, y0);
  cairo_curve_to (cr, x0 + bend, y0, x1 - bend, y1, x1, y1);
  stead_stroke_line (cr, style, STEAD_ROLE_SOFT, STEAD_LINE_SOLID, MAX (1, style->font_size / 11));
}

static void
paint_links (cairo_t                *cr,
             const SteadFlow        *flow,
             const SteadDrawStyle   *style,
             const SteadTraceLayout *layout)
{
  for (guint i = 0; i < flow->links->len; i++)
    {
      const SteadFlowLink *link = &g_array_index (flow->links, SteadFlowLink, i);
      const SteadTraceCard *from = &layout->cards[link->from], *to = &layout->cards[link->to];

      if (from->is_drawn && to->is_drawn)
        paint_link (cr, style, &from->card, &to->card);
    }
}

/* --- cards --------------------------------------------------------------------------- */

static void
trace_card (cairo_t        *cr,
            const SteadBox *box,
            double          round,
            double          inset)
{
  double x0 = box->x + inset, y0 = box->y + inset;
  double x1 = box->x + box->width - inset, y1 = box->y + box->height - inset;

  cairo_new_sub_path (cr);
  cairo_arc (cr, x1 - round, y0 + round, round, -G_PI_2, 0);
  cairo_arc (cr, x1 - round, y1 - round, round, 0, G_PI_2);
  cairo_arc (cr, x0 + round, y1 - round, round, G_PI_2, G_PI);
  cairo_arc (cr, x0 + round, y0 + round, round, G_PI, 1.5 * G_PI);
  cairo_close_path (cr);
}

/* What came, what was made and who made it, told apart without color. */
static void
paint_band (cairo_t              *cr,
            const SteadDrawStyle *style,
            const SteadFlowNode  *node,
            const SteadBox       *box,
            double                round)
{
  static const struct
  {
    SteadRole    role;
    SteadPattern pattern;
  } bands[] = {
    [STEAD_FLOW_CAME] = { STEAD_ROLE_WATER, STEAD_PATTERN_SOLID },
    [STEAD_FLOW_MADE] = { STEAD_ROLE_EGG, STEAD_PATTERN_RISING },
    [STEAD_FLOW_BATCH] = { STEAD_ROLE_SAUCE, STEAD_PATTERN_DOTS },
  };

  cairo_save (cr);
  trace_card (cr, box, round, 0.5);
  cairo_clip (cr);
  cairo_rectangle (cr, box->x, box->y, style->font_size * 0.5, box->height);
  stead_fill_pattern (cr, style, bands[node->kind].role, bands[node->kind].pattern, FALSE);
  cairo_restore (cr);
}

static void
paint_ground (cairo_t              *cr,
              const SteadDrawStyle *style,
              const SteadFlowNode  *node,
              const SteadBox       *box)
{
  double round = node->kind == STEAD_FLOW_BATCH ? style->font_size * 0.7 : style->font_size * 0.25;
  double line = node->is_subject ? MAX (2, style->font_size / 5) : 1;

  round = MIN (round, MIN (box->width, box->height) / 2 - 1);
  trace_card (cr, box, round, line / 2);
  stead_palette_set_source (cr, style->scheme, node->is_subject ? STEAD_ROLE_SHELL : STEAD_ROLE_CARD, 1);
  cairo_fill (cr);
  paint_band (cr, style, node, box, round);
  trace_card (cr, box, round, line / 2);
  stead_palette_set_source (cr, style->scheme, node->is_subject ? STEAD_ROLE_INK : STEAD_ROLE_SOFT, 1);
  cairo_set_line_width (cr, line);
  cairo_stroke (cr);
}

/* Full for what is left, empty for what is gone. */
static void
paint_bar (cairo_t              *cr,
           const SteadDrawStyle *style,
           const SteadFlowNode  *node,
           const SteadBox       *box)
{
  double left = CLAMP (node->left_frac, 0, 1);

  if (left > 0)
    {
      cairo_rectangle (cr, box->x, box->y, box->width * left, box->height);
      stead_palette_set_source (cr, style->scheme, STEAD_ROLE_WATER, 1);
      cairo_fill (cr);
    }
  cairo_rectangle (cr, box->x + 0.5, box->y + 0.5, box->width - 1, box->height - 1);
  stead_palette_set_source (cr, style->scheme, STEAD_ROLE_INK, 1);
  cairo_set_line_width (cr, 1);
  cairo_stroke (cr);
}

static void
paint_text (cairo_t              *cr,
            const SteadDrawStyle *style,
            SteadRole             role,
            const char           *text,
            double                scale,
            gboolean              bold,
            double                width,
            const SteadBox       *box)
{
  if (box->width > 0)
    stead_text_paint_block (cr, style, role, text, scale, bold, STEAD_ALIGN_LEFT, width, box->x,
                            box->y + box->height / 2);
}

static void
paint_card (cairo_t                *cr,
            const SteadFlowNode    *node,
            const SteadDrawStyle   *style,
            const SteadTraceLayout *layout,
            const SteadTraceCard   *card)
{
  paint_ground (cr, style, node, &card->card);
  paint_text (cr, style, STEAD_ROLE_INK, node->title, 1, TRUE, layout->text_width, &card->title);
  paint_text (cr, style, node->is_subject ? STEAD_ROLE_INK : STEAD_ROLE_SOFT, node->detail, SMALL, FALSE,
              layout->text_width, &card->detail);
  paint_text (cr, style, STEAD_ROLE_INK, node->state, SMALL, FALSE, layout->text_width, &card->state);
  if (card->bar.width > 0)
    paint_bar (cr, style, node, &card->bar);
}

static void
paint_more (cairo_t                *cr,
            const SteadDrawStyle   *style,
            const SteadTraceColumn *column)
{
  g_autofree char *text = g_strdup_printf ("+%u", column->n_hidden);

  if (column->n_hidden > 0)
    stead_text_paint (cr, style, STEAD_ROLE_INK, text, 1, TRUE, STEAD_ALIGN_LEFT, column->more.x,
                      column->more.y + column->more.height / 2);
}

void
stead_trace_chart_paint (cairo_t                *cr,
                         const SteadFlow        *flow,
                         const SteadDrawStyle   *style,
                         const SteadTraceLayout *layout)
{
  SteadDrawStyle fit;

  g_return_if_fail (cr != NULL && flow != NULL && style != NULL && layout != NULL);
  g_return_if_fail (layout->n_cards == flow->nodes->len);
  fit = *style;
  fit.font_size = layout->font_size;
  cairo_save (cr);
  paint_links (cr, flow, &fit, layout);
  for (guint i = 0; i < layout->n_cards; i++)
    if (layout->cards[i].is_drawn)
      paint_card (cr, node_at (flow, i), &fit, layout, &layout->cards[i]);
  for (int c = 0; c < layout->n_columns; c++)
    paint_more (cr, &fit, &layout->columns[c]);
  cairo_restore (cr);
}
