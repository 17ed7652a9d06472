/* stead-share-chart.c - one sum cut into parts in several ways, a bar for each way. */
#include "config.h"

#include "draw/stead-share-chart.h"

#include <math.h>

#define ROW_EM 3.0
#define BAR_SHARE 0.66       /* of the row */
#define NAMES_SHARE 0.32     /* of the width at most */
#define KEY_EM 1.0           /* side of a key's square */
#define PLATE_EM 0.3         /* around a text on a bar */

double
stead_share_chart_height (const SteadShareSeries *series,
                          const SteadDrawStyle   *style)
{
  g_return_val_if_fail (series != NULL && style != NULL, 0);
  return ceil (style->font_size * (ROW_EM * series->n_ways + 2.5));
}

/* Square and name in rows from the left; returns the height that they take. */
static double
lay_keys (cairo_t                *cr,
          const SteadShareSeries *series,
          const SteadDrawStyle   *style,
          double                  width,
          SteadShareLayout       *out)
{
  double em = style->font_size, x = 1, y = 1, line = 0;

  for (int i = 0; i < series->n_parts; i++)
    {
      double w, h, room = em * (KEY_EM + 0.4);

      stead_text_measure_block (cr, style, series->parts[i].name, 1, FALSE, MAX (width - room - 2, 1), &w, &h);
      if (x > 1 && x + room + w > width)
        {
          x = 1;
          y += line + em * 0.3;
          line = 0;
        }
      out->keys[i] = (SteadBox) { x, y, room + w, MAX (h, em * KEY_EM) };
      line = MAX (line, out->keys[i].height);
      x += room + w + em * 1.2;
    }
  return y + line;
}

static void
lay_bar (cairo_t              *cr,
         const SteadShareWay  *way,
         const SteadDrawStyle *style,
         int                   n_parts,
         const SteadBox       *room,
         SteadBox             *bars,
         SteadBox             *texts)
{
  double em = style->font_size, sum = 0, before = 0;

  for (int i = 0; i < n_parts; i++)
    sum += MAX (way->cents[i], 0);
  for (int i = 0; i < n_parts; i++)
    {
      double from = room->width * before / MAX (sum, 1e-9), to, w, h;

      before += MAX (way->cents[i], 0);
      to = room->width * before / MAX (sum, 1e-9);
      bars[i] = (SteadBox) { room->x + from, room->y, to - from, room->height };
      stead_text_measure (cr, style, way->texts[i], 1, FALSE, &w, &h);
      if (w + em * PLATE_EM * 4 <= bars[i].width)
        texts[i] = (SteadBox) { bars[i].x + (bars[i].width - w) / 2, room->y + (room->height - h) / 2, w, h };
    }
}

void
stead_share_chart_layout (cairo_t                *cr,
                          const SteadShareSeries *series,
                          const SteadDrawStyle   *style,
                          double                  width,
                          double                  height,
                          SteadShareLayout       *out)
{
  SteadDrawStyle fit;
  double em, names = 0, top, row, thick;

  g_return_if_fail (cr != NULL && series != NULL && style != NULL && out != NULL);
  g_return_if_fail (series->n_parts <= STEAD_MAX_SHARES && series->n_ways <= STEAD_MAX_WAYS);

  *out = (SteadShareLayout) { 0 };
  fit = stead_draw_style_fit (style, width, height);
  em = out->font_size = fit.font_size;
  top = lay_keys (cr, series, &fit, width, out) + em * 0.8;
  for (int i = 0; i < series->n_ways; i++)
    {
      stead_text_measure_block (cr, &fit, series->ways[i].name, 1, series->ways[i].chosen, width * NAMES_SHARE,
                                &out->names[i].width, &out->names[i].height);
      names = MAX (names, out->names[i].width);
    }
  row = MAX (height - top - 1, 1) / MAX (series->n_ways, 1);
  thick = MIN (row * BAR_SHARE, em * 2.6);
  for (int i = 0; i < series->n_ways; i++)
    {
      double middle = top + row * (i + 0.5), left = ceil (names + em * 0.7) + 2;
      SteadBox room = { left, middle - thick / 2, MAX (width - left - 2, 1), thick };

      out->names[i].x = left - em * 0.7 - out->names[i].width;
      out->names[i].y = middle - out->names[i].height / 2;
      lay_bar (cr, &series->ways[i], &fit, series->n_parts, &room, out->bars[i], out->texts[i]);
    }
}

static void
paint_patch (cairo_t                   *cr,
             const SteadDrawStyle      *style,
             const SteadShareChartPart *part,
             const SteadBox            *box)
{
  double line = style->font_size / 12, inset = box->width > 3 * line ? line / 2 : 0;

  if (box->width <= 0)
    return;
  cairo_new_path (cr);
  cairo_rectangle (cr, box->x + inset, box->y + inset, box->width - 2 * inset, box->height - 2 * inset);
  stead_fill_pattern (cr, style, part->role, part->pattern, inset > 0);
}

/* On a plate, so that no pattern runs through the figures. */
static void
paint_text (cairo_t              *cr,
            const SteadDrawStyle *style,
            const char           *text,
            const SteadBox       *box)
{
  double pad = style->font_size * PLATE_EM;

  if (box->width <= 0)
    return;
  cairo_new_path (cr);
  cairo_rectangle (cr, box->x - pad, box->y, box->width + 2 * pad, box->height);
  stead_fill_pattern (cr, style, STEAD_ROLE_CARD, STEAD_PATTERN_SOLID, FALSE);
  stead_text_paint (cr, style, STEAD_ROLE_INK, text, 1, FALSE, STEAD_ALIGN_LEFT, box->x, box->y + box->height / 2);
}

static void
paint_key (cairo_t                   *cr,
           const SteadDrawStyle      *style,
           const SteadShareChartPart *part,
           const SteadBox            *box)
{
  double side = style->font_size * KEY_EM, room = style->font_size * (KEY_EM + 0.4);
  SteadBox square = { box->x, box->y + (box->height - side) / 2, side, side };

  paint_patch (cr, style, part, &square);
  stead_text_paint_block (cr, style, STEAD_ROLE_INK, part->name, 1, FALSE, STEAD_ALIGN_LEFT, box->width - room + 1,
                          box->x + room, box->y + box->height / 2);
}

void
stead_share_chart_paint (cairo_t                *cr,
                         const SteadShareSeries *series,
                         const SteadDrawStyle   *style,
                         const SteadShareLayout *layout)
{
  SteadDrawStyle fit;

  g_return_if_fail (cr != NULL && series != NULL && style != NULL && layout != NULL);
  fit = *style;
  fit.font_size = layout->font_size;
  cairo_save (cr);
  for (int i = 0; i < series->n_parts; i++)
    paint_key (cr, &fit, &series->parts[i], &layout->keys[i]);
  for (int i = 0; i < series->n_ways; i++)
    {
      stead_text_paint_block (cr, &fit, STEAD_ROLE_INK, series->ways[i].name, 1, series->ways[i].chosen, STEAD_ALIGN_RIGHT,
                              layout->names[i].width + 1, layout->names[i].x + layout->names[i].width,
                              layout->names[i].y + layout->names[i].height / 2);
      for (int k = 0; k < series->n_parts; k++)
        paint_patch (cr, &fit, &series->parts[k], &layout->bars[i][k]);
      for (int k = 0; k < series->n_parts; k++)
        paint_text (cr, &fit, series->ways[i].texts[k], &layout->texts[i][k]);
    }
  cairo_restore (cr);
}

int
stead_share_chart_at (const SteadShareSeries *series,
                      const SteadShareLayout *layout,
                      double                  y)
{
  for (int i = 0; i < series->n_ways; i++)
    if (y >= layout->bars[i][0].y && y <= layout->bars[i][0].y + layout->bars[i][0].height)
      return i;
  return -1;
}
