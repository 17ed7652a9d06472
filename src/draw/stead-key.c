/* stead-key.c - names of what a chart shows: at the ends of the lines, or in a row of keys. */
#include "config.h"

#include <math.h>

#include "draw/stead-key.h"
#include "draw/stead-labels.h"

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

      cairo_new_path (cr);
      if (key->area)
        {
          cairo_rectangle (cr, key->box.x, y - em * 0.4, SAMPLE_EM * em, em * 0.8);
          stead_fill_area (cr, style, key->role, STEAD_PATTERN_RISING);
        }
      if (key->line_width > 0)
        {
          cairo_move_to (cr, key->box.x + key->line_width / 2, y);
          cairo_line_to (cr, key->box.x + SAMPLE_EM * em - key->line_width / 2, y);
          stead_stroke_line (cr, style, key->role, key->line, key->line_width);
        }
      stead_mark_paint (cr, style, key->role, key->mark, key->box.x + SAMPLE_EM * em / 2, y, em * 0.3);
      stead_text_paint_block (cr, style, STEAD_ROLE_INK, key->text, 1, FALSE, STEAD_ALIGN_LEFT,
                              key->box.width - text_offset (style) + 1, key->box.x + text_offset (style), y);
    }
}

/* --- beside the plot -------------------------------------------------------------- */

double
stead_keys_measure_right (cairo_t              *cr,
                          const SteadDrawStyle *style,
                          const SteadKey       *keys,
                          int                   n,
                          double                max_width)
{
  double widest = 0;

  for (int i = 0; i < n; i++)
    {
      double w, h;

      stead_text_measure_block (cr, style, keys[i].text, 1, keys[i].bold, max_width, &w, &h);
      widest = MAX (widest, w);
    }
  return ceil (widest) + 1;
}

void
stead_keys_layout_right (cairo_t              *cr,
                         const SteadDrawStyle *style,
                         SteadKey             *keys,
                         const double         *want_y,
                         int                   n,
                         double                x,
                         double                width,
                         double                top,
                         double                bottom)
{
  SteadEndLabel labels[STEAD_MAX_KEYS];

  g_return_if_fail (n <= STEAD_MAX_KEYS);
  for (int i = 0; i < n; i++)
    {
      SteadBox *box = &keys[i].box;

      stead_text_measure_block (cr, style, keys[i].text, 1, keys[i].bold, width, &box->width, &box->height);
      labels[i] = (SteadEndLabel) { .want_y = want_y[i], .height = box->height };
    }
  stead_labels_spread (labels, n, top, bottom);
  for (int i = 0; i < n; i++)
    {
      keys[i].box.x = x;
      keys[i].box.y = labels[i].y - labels[i].height / 2;
    }
}

void
stead_keys_paint_right (cairo_t              *cr,
                        const SteadDrawStyle *style,
                        const SteadKey       *keys,
                        int                   n,
                        double                width)
{
  for (int i = 0; i < n; i++)
    {
      const SteadKey *key = &keys[i];
      double y = key->box.y + key->box.height / 2;

      if (key->mark != STEAD_MARK_NONE)
        stead_mark_paint (cr, style, key->role, key->mark, key->box.x - style->font_size * 0.75, y,
                          style->font_size * 0.28);
      stead_text_paint_block (cr, style, key->role == STEAD_ROLE_TOMATO ? STEAD_ROLE_TOMATO
                                         : key->bold ? STEAD_ROLE_INK : STEAD_ROLE_SOFT,
                              key->text, 1, key->bold, STEAD_ALIGN_LEFT, width, key->box.x, y);
    }
}
