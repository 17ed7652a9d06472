/* stead-small-columns.c - one small column for each of many, to see at a glance who stands out. */
#include "config.h"

#include <math.h>

#include "draw/stead-small-columns.h"

#define MOST_STEP_EM 3.0   /* few columns do not become blocks */
#define GAP_FRAC 0.25      /* of the step */

void
stead_small_columns_layout (cairo_t                 *cr,
                            const SteadSmallColumns *columns,
                            const SteadDrawStyle    *style,
                            double                   width,
                            double                   height,
                            SteadSmallColumnsLayout *out)
{
  double w = 0, h = 0;

  g_return_if_fail (cr != NULL && columns != NULL && columns->n >= 1 && style != NULL && out != NULL);
  *out = (SteadSmallColumnsLayout) { .font_size = style->font_size, .top = columns->full };
  for (int i = 0; i < columns->n; i++)
    out->top = MAX (out->top, columns->values[i]);
  if (out->top <= 0)
    out->top = 1;
  if (columns->most != NULL)
    stead_text_measure (cr, style, columns->most, 1, FALSE, &w, &h);
  if (w > 0 && w <= width - 2)
    out->most_box = (SteadBox) { 1, 0, w, h };
  out->plot = (SteadBox) { 1, out->most_box.height + 2, width - 2, MAX (height - out->most_box.height - 4, 1) };
  out->step = MIN (out->plot.width / columns->n, MOST_STEP_EM * style->font_size);
}

SteadBox
stead_small_columns_box (const SteadSmallColumns       *columns,
                         const SteadSmallColumnsLayout *layout,
                         int                            i)
{
  double height = layout->plot.height * columns->values[i] / layout->top;

  return (SteadBox) { layout->plot.x + (i + GAP_FRAC / 2) * layout->step, layout->plot.y + layout->plot.height - height,
                      layout->step * (1 - GAP_FRAC), height };
}

int
stead_small_columns_at (const SteadSmallColumns       *columns,
                        const SteadSmallColumnsLayout *layout,
                        double                         x)
{
  int i = (int) floor ((x - layout->plot.x) / layout->step);

  return i >= 0 && i < columns->n ? i : -1;
}

void
stead_small_columns_paint (cairo_t                       *cr,
                           const SteadSmallColumns       *columns,
                           const SteadDrawStyle          *style,
                           const SteadSmallColumnsLayout *layout)
{
  double right = layout->plot.x + columns->n * layout->step, foot = layout->plot.y + layout->plot.height;

  cairo_save (cr);
  if (columns->full > 0)
    stead_rule_paint (cr, style, STEAD_ROLE_RULE, layout->plot.x, right,
                      foot - layout->plot.height * columns->full / layout->top);
  for (int i = 0; i < columns->n; i++)
    {
      SteadBox box = stead_small_columns_box (columns, layout, i);

      if (box.height <= 0)
        continue;
      cairo_new_path (cr);
      cairo_rectangle (cr, box.x, box.y, box.width, box.height);
      stead_fill_pattern (cr, style, columns->role, columns->pattern, FALSE);
    }
  stead_rule_paint (cr, style, STEAD_ROLE_SOFT, layout->plot.x, right, foot);
  if (layout->most_box.width > 0)
    stead_text_paint (cr, style, STEAD_ROLE_SOFT, columns->most, 1, FALSE, STEAD_ALIGN_LEFT, layout->most_box.x,
                      layout->most_box.y + layout->most_box.height / 2);
  cairo_restore (cr);
}
