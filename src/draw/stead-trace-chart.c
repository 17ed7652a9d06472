/* stead-trace-chart.c - where the cards of a trace stand. */
#include <math.h>

#include "draw/stead-trace-chart.h"

/* In heights of the text. */
#define PAD 0.5
#define BAND 0.5
#define BAR 0.45
#define CARD_GAP 0.7
#define COLUMN_GAP 2.2
#define LEAST_COLUMN 6.0    /* below it the gaps give way */
#define SMALL 0.88          /* of detail and state */

void
stead_trace_layout_clear (SteadTraceLayout *layout)
{
  g_clear_pointer (&layout->cards, g_free);
  g_clear_pointer (&layout->columns, g_free);
}

static const SteadFlowNode *
node_at (const SteadFlow *flow,
         guint            at)
{
  return &g_array_index (flow->nodes, SteadFlowNode, at);
}

/* --- one card ------------------------------------------------------------------- */

static double
lay_text (cairo_t              *cr,
          const SteadDrawStyle *style,
          const char           *text,
          double                scale,
          gboolean              bold,
          double                width,
          double                y,
          SteadBox             *out)
{
  *out = (SteadBox) { 0 };
  if (text == NULL || *text == '\0')
    return y;
  stead_text_measure_block (cr, style, text, scale, bold, width, &out->width, &out->height);
  out->width = MIN (out->width, width);
  out->y = y;
  return y + out->height + 1;
}

/* At the origin; its height is what the texts take. */
static void
lay_card (cairo_t              *cr,
          const SteadFlowNode  *node,
          const SteadDrawStyle *style,
          double                width,
          double                text_width,
          SteadTraceCard       *card)
{
  double em = style->font_size, left = (PAD + BAND) * em;
  double y = PAD * em;

  y = lay_text (cr, style, node->title, 1, TRUE, text_width, y, &card->title);
  y = lay_text (cr, style, node->detail, SMALL, FALSE, text_width, y, &card->detail);
  y = lay_text (cr, style, node->state, SMALL, FALSE, text_width, y, &card->state);
  card->title.x = card->detail.x = card->state.x = left;
  card->bar = (SteadBox) { 0 };
  if (isfinite (node->left_frac))
    {
      card->bar = (SteadBox) { left, y + 0.2 * em, text_width, BAR * em };
      y = card->bar.y + card->bar.height;
    }
  card->card = (SteadBox) { 0, 0, width, y + PAD * em };
}

static void
shift_box (SteadBox *box,
           double    x,
           double    y)
{
  if (box->width > 0)
    {
      box->x += x;
      box->y += y;
    }
}

static void
put_card (SteadTraceCard *card,
          double          x,
          double          y)
{
  card->is_drawn = TRUE;
  shift_box (&card->card, x, y);
  shift_box (&card->title, x, y);
  shift_box (&card->detail, x, y);
  shift_box (&card->state, x, y);
  shift_box (&card->bar, x, y);
}

/* --- one column ------------------------------------------------------------------ */

static double
column_width (const SteadFlow      *flow,
              const SteadDrawStyle *style,
              double                width,
              double               *gap)
{
  int n = MAX (flow->n_columns, 1);
  double em = style->font_size, each;

  *gap = COLUMN_GAP * em;
  each = (width - (n - 1) * *gap) / n;
  if (each < LEAST_COLUMN * em)
    {
      *gap = em;
      each = (width - (n - 1) * *gap) / n;
    }
  return MAX (each, 1);
}

static double
column_height (const SteadFlow        *flow,
               const SteadTraceLayout *layout,
               int                     column,
               double                  gap)
{
  double height = 0;

  for (guint i = 0; i < flow->nodes->len; i++)
    if (node_at (flow, i)->column == column)
      height += (height > 0 ? gap : 0) + layout->cards[i].card.height;
  return height;
}

/* The traced lot's own card is always drawn; of the others, the first that fit. */
static void
put_column (cairo_t              *cr,
            const SteadFlow      *flow,
            const SteadDrawStyle *style,
            int                   column,
            double                x,
            double                height,
            SteadTraceLayout     *out)
{
  double gap = CARD_GAP * style->font_size, need = column_height (flow, out, column, gap), room = height;
  double y = MAX (0, (height - need) / 2), w = 0, line = 0;
  SteadTraceColumn *own = &out->columns[column];

  if (need > height)
    {
      stead_text_measure (cr, style, "+0000", 1, TRUE, &w, &line);
      room = height - line;
    }
  for (guint i = 0; i < flow->nodes->len; i++)
    {
      const SteadFlowNode *node = node_at (flow, i);
      SteadTraceCard *card = &out->cards[i];

      if (node->column != column)
        continue;
      if (own->n_hidden > 0 || y + card->card.height > room + 1e-6)
        {
          own->n_hidden += node->n;
          continue;
        }
      put_card (card, x, y);
      y += card->card.height + gap;
    }
  if (own->n_hidden > 0)
    {
      g_autofree char *text = g_strdup_printf ("+%u", own->n_hidden);

      stead_text_measure (cr, style, text, 1, TRUE, &w, &line);
      own->more = (SteadBox) { x, height - line, w, line };
    }
}

/* --- all --------------------------------------------------------------------------- */

static double
lay_cards (cairo_t              *cr,
           const SteadFlow      *flow,
           const SteadDrawStyle *style,
           double                width,
           SteadTraceLayout     *out)
{
  double gap, each = column_width (flow, style, width, &gap), most = 0;

  out->font_size = style->font_size;
  out->text_width = MAX (each - (2 * PAD + BAND) * style->font_size, 1);
  for (guint i = 0; i < flow->nodes->len; i++)
    {
      out->cards[i] = (SteadTraceCard) { 0 };
      lay_card (cr, node_at (flow, i), style, each, out->text_width, &out->cards[i]);
    }
  for (int c = 0; c < flow->n_columns; c++)
    most = MAX (most, column_height (flow, out, c, CARD_GAP * style->font_size));
  return most;
}

static void
begin (const SteadFlow  *flow,
       SteadTraceLayout *out)
{
  *out = (SteadTraceLayout) { .n_cards = flow->nodes->len, .n_columns = flow->n_columns };
  out->cards = g_new0 (SteadTraceCard, MAX (flow->nodes->len, 1));
  out->columns = g_new0 (SteadTraceColumn, MAX (flow->n_columns, 1));
}

double
stead_trace_chart_height (cairo_t              *cr,
                          const SteadFlow      *flow,
                          const SteadDrawStyle *style,
                          double                width)
{
  g_auto(SteadTraceLayout) layout = { 0 };

  g_return_val_if_fail (cr != NULL && flow != NULL && style != NULL, 0);
  begin (flow, &layout);
  return ceil (lay_cards (cr, flow, style, width, &layout));
}

void
stead_trace_chart_layout (cairo_t              *cr,
                          const SteadFlow      *flow,
                          const SteadDrawStyle *style,
                          double                width,
                          double                height,
                          SteadTraceLayout     *out)
{
  SteadDrawStyle fit;
  double gap, each;

  g_return_if_fail (cr != NULL && flow != NULL && style != NULL && out != NULL);
  begin (flow, out);
  fit = *style;
  for (double scale = 1; scale >= 0.6 - 1e-9; scale -= 0.1)
    {
      fit.font_size = style->font_size * scale;
      if (lay_cards (cr, flow, &fit, width, out) <= height)
        break;
    }
  each = column_width (flow, &fit, width, &gap);
  for (int c = 0; c < flow->n_columns; c++)
    put_column (cr, flow, &fit, c, c * (each + gap), height, out);
}

static gboolean
holds (const SteadBox *box,
       double          x,
       double          y)
{
  return x >= box->x && x < box->x + box->width && y >= box->y && y < box->y + box->height;
}

int
stead_trace_chart_at (const SteadTraceLayout *layout,
                      double                  x,
                      double                  y)
{
  g_return_val_if_fail (layout != NULL, -1);
  for (guint i = 0; i < layout->n_cards; i++)
    if (layout->cards[i].is_drawn && holds (&layout->cards[i].card, x, y))
      return (int) i;
  return -1;
}
