/* stead-day-axis.c - an axis of days, with round steps of weeks and their dates. */
#include "config.h"

#include <math.h>

#include "draw/stead-day-axis.h"

#define LONG_SPAN_DAYS 300

/* Between two dates, in text sizes. */
#define GAP_EM 1.4

static char *
text_day (const SteadAxis      *axis,
          const SteadDrawStyle *style,
          double                value)
{
  gboolean far = axis->high - axis->low > LONG_SPAN_DAYS;

  return stead_day_format ((SteadDay) lround (value), far ? STEAD_DAY_STYLE_MEDIUM : STEAD_DAY_STYLE_SHORT);
}

SteadAxis
stead_day_axis (cairo_t              *cr,
                const SteadDrawStyle *style,
                SteadDay              first,
                SteadDay              last,
                double                width)
{
  SteadAxis axis = { first, MAX (last, first + 1), { first, 7, first, 1 }, text_day };
  double span = axis.high - axis.low, w, h;

  for (double step = 7; ; step *= 2)
    {
      axis.ticks.step = step;
      axis.ticks.n = (int) floor (span / step) + 1;
      axis.ticks.last = first + (axis.ticks.n - 1) * step;
      if (axis.ticks.n <= 2)
        return axis;
      /* More are not drawn anyway, so they need not be measured. */
      if (axis.ticks.n > 60)
        continue;
      stead_axis_measure (cr, style, &axis, &w, &h);
      if ((w + GAP_EM * style->font_size) * (axis.ticks.n - 1) <= width)
        return axis;
    }
}

double
stead_day_axis_x (const SteadAxis *axis,
                  const SteadBox  *plot,
                  SteadDay         day)
{
  return stead_axis_x (axis, plot, day);
}
