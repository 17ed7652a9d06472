/* stead-lay-chart-notes.c - where the words on weeks that stand apart find room.
 *
 * A note that would cover a point, a cross or another note is not written: the
 * weeks then have only their mark and a key.
 */
#include "config.h"

#include <math.h>

#include "draw/stead-labels.h"
#include "draw/stead-lay-chart-private.h"

#define NOTE_WIDTH_EM 11.0
#define CURVE_STROKES 40

/* The lines are kept clear of where that can be. */
static void
add_lines (const SteadLaySeries *series,
           const SteadLayLayout *layout,
           SteadObstacles       *out)
{
  gsize step = MAX (1, series->n_curve / CURVE_STROKES);

  for (gsize i = 0; i + step < series->n_curve; i += step)
    stead_obstacles_add_stroke (out, stead_lay_chart_x (layout, series->curve_age[i]),
                                stead_lay_chart_y (layout, series->curve_frac[i]),
                                stead_lay_chart_x (layout, series->curve_age[i + step]),
                                stead_lay_chart_y (layout, series->curve_frac[i + step]));
  if (layout->has_today)
    stead_obstacles_add_stroke (out, layout->today_x, layout->plot.y,
                                layout->today_x, layout->plot.y + layout->plot.height);
}

/* The points so near that the note could reach them; the nearest ones, as there may be many. */
static void
add_points (const SteadLaySeries *series,
            const SteadLayLayout *layout,
            gsize                 middle,
            double                reach,
            SteadObstacles       *out)
{
  double r = layout->point_radius + 1;
  double at = stead_lay_chart_x (layout, series->weeks[middle].age_weeks);

  for (gsize away = 0; away < series->n_weeks; away++)
    for (int side = 0; side < 2; side++)
      {
        gsize i = side == 0 ? middle - away : middle + away;
        double x, y;

        if (i >= series->n_weeks || (away == 0 && side == 1)
            || !stead_lay_chart_point (layout, &series->weeks[i], &x, &y) || fabs (x - at) > reach)
          continue;
        stead_obstacles_add_box (out, (SteadBox) { x - r, y - r, 2 * r, 2 * r });
      }
}

static gboolean
place_note (cairo_t              *cr,
            const SteadLaySeries *series,
            const SteadDrawStyle *style,
            const SteadLayNote   *note,
            const SteadLayLayout *layout,
            SteadBox             *out)
{
  SteadObstacles obstacles = { .inside = layout->plot };
  double em = style->font_size, x, y, w, h;
  gsize middle = (note->first + note->last) / 2;

  if (note->text == NULL || note->last >= series->n_weeks
      || !stead_lay_chart_point (layout, &series->weeks[middle], &x, &y))
    return FALSE;
  for (int i = 0; i < layout->n_notes; i++)
    stead_obstacles_add_box (&obstacles, layout->note_boxes[i]);
  if (layout->has_lost)
    stead_obstacles_add_box (&obstacles, (SteadBox) { layout->plot.x, layout->lost_y - em * 0.4, layout->plot.width,
                                                      em * 0.8 });
  add_lines (series, layout, &obstacles);
  stead_text_measure_block (cr, style, note->text, 1, FALSE, layout->note_width, &w, &h);
  if (w > layout->plot.width || h > layout->plot.height)
    return FALSE;
  add_points (series, layout, middle, w + em * 4, &obstacles);
  return stead_labels_place (&obstacles, x, y, w, h, layout->point_radius + em * 0.5, out);
}

void
stead_lay_chart_place_notes (cairo_t              *cr,
                             const SteadLaySeries *series,
                             const SteadDrawStyle *style,
                             SteadLayLayout       *layout)
{
  layout->note_width = NOTE_WIDTH_EM * style->font_size;
  for (gsize i = series->n_notes; i-- > 0 && layout->n_notes < STEAD_LAY_MAX_NOTES;)
    {
      SteadBox box;

      if (!place_note (cr, series, style, &series->notes[i], layout, &box))
        continue;
      layout->notes[layout->n_notes] = i;
      layout->note_boxes[layout->n_notes++] = box;
    }
}

gboolean
stead_lay_chart_all_noted (const SteadLaySeries *series,
                           const SteadLayLayout *layout,
                           gboolean              far_off)
{
  gsize want = 0, have = 0;

  for (gsize i = 0; i < series->n_notes; i++)
    want += series->notes[i].far_off == far_off;
  for (int i = 0; i < layout->n_notes; i++)
    have += series->notes[layout->notes[i]].far_off == far_off;
  return want > 0 && have == want;
}
