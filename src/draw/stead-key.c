/* stead-key.c - a line of keys over a chart, for boxes too narrow to name lines at their ends. */
#include "config.h"

#include "draw/stead-key.h"

/* In text sizes. */
#define SAMPLE_EM 1.8
#define SAMPLE_GAP_EM 0.5
#define KEY_GAP_EM 1.2
#define ROW_GAP_EM 0.2

static double
text_offset (const SteadDrawStyle *style)
{
  return (SAMPLE_EM + SAMPLE_GAP_EM) * style->font_size;
}

double
stead_keys_layout (cairo_t              *cr,
                   const SteadDrawStyle *style,
                   SteadKey             *keys,
                   int                   n,
                   double                x,
                   double                y,
                   double                width)
{
  double at_x = x, row_height = 0, top = y;

  for (int i = 0; i < n; i++)
    {
      double w, h;

      stead_text_measure_block (cr, style, keys[i].text, 1, FALSE, width - text_offset (style), &w, &h);
      w += text_offset (style);
      if (at_x > x && at_x + w > x + width)
        {
          at_x = x;
          top += row_height + ROW_GAP_EM * style->font_size;
          row_height = 0;
        }
      keys[i].box = (SteadBox) { at_x, top, w, h };
      at_x += w + KEY_GAP_EM * style->font_size;
      row_height = MAX (row_height, h);
    }
  return top + row_height - y;
}

void
stead_keys_paint (cairo_t              *cr,
                  const SteadDrawStyle *style,
                  const SteadKey       *keys,
                  int                   n)
{
  double em = style->font_size;

  for (int i = 0; i < n; i++)
    {
      const SteadKey *key = &keys[i];
      double y = key->box.y + key->box.height / 2;

      if (key->line_width > 0)
        {
          cairo_new_path (cr);
          cairo_move_to (cr, key->box.x + key->line_width / 2, y);
          cairo_line_to (cr, key->box.x + SAMPLE_EM * em - key->line_width / 2, y);
          stead_stroke_line (cr, style, key->role, key->line, key->line_width);
        }
      stead_mark_paint (cr, style, key->role, key->mark, key->box.x + SAMPLE_EM * em / 2, y, em * 0.3);
      stead_text_paint_block (cr, style, STEAD_ROLE_INK, key->text, 1, FALSE, STEAD_ALIGN_LEFT,
                              key->box.width - text_offset (style) + 1, key->box.x + text_offset (style), y);
    }
}
