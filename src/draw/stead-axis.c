/* stead-axis.c - one axis of a chart: its range, its round steps, their texts. */
#include "config.h"

#include <math.h>

#include "core/stead-money.h"
#include "core/stead-quantity.h"
#include "draw/stead-axis.h"

#define MAX_CENTS 9e15

char *
stead_axis_text_number (const SteadAxis      *axis,
                        const SteadDrawStyle *style,
                        double                value)
{
  return stead_number_format (value, axis->ticks.step < 1 ? 2 : 1);
}

char *
stead_axis_text_hundred (const SteadAxis      *axis,
                         const SteadDrawStyle *style,
                         double                value)
{
  return stead_number_format (value * 100, 1);
}

/* With or without decimals, but the same for the whole axis. */
char *
stead_axis_text_money (const SteadAxis      *axis,
                       const SteadDrawStyle *style,
                       double                value)
{
  const char *currency = style->currency != NULL ? style->currency : "USD";
  double unit = pow (10, stead_currency_digits (currency));
  gint64 cents = (gint64) round (CLAMP (value, -MAX_CENTS, MAX_CENTS));
  gboolean whole = fmod (axis->ticks.step, unit) == 0 && fmod (axis->ticks.first, unit) == 0;

  return whole ? stead_money_format_short (cents, currency) : stead_money_format (cents, currency);
}

static double
tick_value (const SteadTicks *ticks,
            int               i)
{
  return ticks->first + i * ticks->step;
}

void
stead_axis_measure (cairo_t              *cr,
                    const SteadDrawStyle *style,
                    const SteadAxis      *axis,
                    double               *width,
                    double               *height)
{
  *width = 0;
  *height = 0;
  for (int i = 0; i < axis->ticks.n; i++)
    {
      g_autofree char *text = axis->text (axis, style, tick_value (&axis->ticks, i));
      double w, h;

      stead_text_measure (cr, style, text, 1, FALSE, &w, &h);
      *width = MAX (*width, w);
      *height = MAX (*height, h);
    }
}

double
stead_axis_x (const SteadAxis *axis,
              const SteadBox  *plot,
              double           value)
{
  return plot->x + (value - axis->low) / (axis->high - axis->low) * plot->width;
}

double
stead_axis_y (const SteadAxis *axis,
              const SteadBox  *plot,
              double           value)
{
  return plot->y + plot->height - (value - axis->low) / (axis->high - axis->low) * plot->height;
}

void
stead_axis_paint_left (cairo_t              *cr,
                       const SteadDrawStyle *style,
                       const SteadAxis      *axis,
                       const SteadBox       *plot,
                       double                gap)
{
  for (int i = 0; i < axis->ticks.n; i++)
    {
      double value = tick_value (&axis->ticks, i);
      g_autofree char *text = axis->text (axis, style, value);
      double y = stead_axis_y (axis, plot, value);
      gboolean zero = fabs (value) < axis->ticks.step * 1e-9;

      stead_rule_paint (cr, style, zero ? STEAD_ROLE_SOFT : STEAD_ROLE_RULE,
                        plot->x, plot->x + plot->width, y);
      stead_text_paint (cr, style, STEAD_ROLE_SOFT, text, 1, FALSE, STEAD_ALIGN_RIGHT,
                        plot->x - gap, y);
    }
}

void
stead_axis_paint_bottom (cairo_t              *cr,
                         const SteadDrawStyle *style,
                         const SteadAxis      *axis,
                         const SteadBox       *plot,
                         double                gap)
{
  double bottom = plot->y + plot->height;
  double width, height;

  stead_axis_measure (cr, style, axis, &width, &height);
  for (int i = 0; i < axis->ticks.n; i++)
    {
      double value = tick_value (&axis->ticks, i);
      g_autofree char *text = axis->text (axis, style, value);
      double x = stead_axis_x (axis, plot, value);

      cairo_new_path (cr);
      cairo_move_to (cr, x, bottom);
      cairo_line_to (cr, x, bottom + MIN (gap, 4));
      stead_stroke_line (cr, style, STEAD_ROLE_SOFT, STEAD_LINE_SOLID,
                         style->scheme == STEAD_SCHEME_PRINT ? 0.5 : 1);
      stead_text_paint (cr, style, STEAD_ROLE_SOFT, text, 1, FALSE, STEAD_ALIGN_CENTER,
                        x, bottom + gap + height / 2);
    }
}
