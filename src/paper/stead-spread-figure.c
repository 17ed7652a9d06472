/* stead-spread-figure.c - how the seasons turn out, and which range matters most. */
#include "config.h"

#include "core/stead-money.h"
#include "draw/stead-spread-chart.h"
#include "paper/stead-price-figure.h"

#include <glib/gi18n-lib.h>
#include <math.h>

typedef struct
{
  SteadFigure         figure;
  const SteadHowSure *answer;
  char               *texts[2];
  SteadSpreadSeries   series;
} Spread;

static char *
money (const Spread *self,
       double        cents)
{
  return stead_money_format (stead_money_round (cents), self->figure.currency);
}

static void
spread_layout (const SteadFigure    *figure,
               cairo_t              *cr,
               const SteadDrawStyle *style,
               double                width,
               double                height,
               gpointer              layout)
{
  stead_spread_chart_layout (cr, &((const Spread *) figure)->series, style, width, height, layout);
}

static void
spread_paint (const SteadFigure    *figure,
              cairo_t              *cr,
              const SteadDrawStyle *style,
              gconstpointer         layout)
{
  stead_spread_chart_paint (cr, &((const Spread *) figure)->series, style, layout);
}

static char *
column_text (const Spread *self,
             int           i)
{
  double from = self->answer->low + self->answer->step * i;
  g_autofree char *low = money (self, from);
  g_autofree char *high = money (self, from + self->answer->step);
  g_autofree char *share = stead_how_sure_chance ((double) self->answer->counts[i] / self->answer->n_draws);

  /* Translators: a share of the seasons ("6%", "less than 1%"), between two sums of money. */
  return g_strdup_printf (_("%s of the seasons leave between %s and %s"), share, low, high);
}

static char *
spread_hint (const SteadFigure *figure,
             gconstpointer      layout,
             double             x,
             double             y)
{
  const Spread *self = (const Spread *) figure;
  int i = stead_spread_chart_at (&self->series, layout, x);

  return i >= 0 ? column_text (self, i) : NULL;
}

static char *
spread_step (const SteadFigure *figure,
             gconstpointer      layout,
             int                index,
             double            *x,
             double            *y)
{
  const Spread *self = (const Spread *) figure;
  const SteadSpreadLayout *columns = layout;

  if (index >= self->series.n)
    return NULL;
  *x = columns->columns[index].x + columns->columns[index].width / 2;
  *y = columns->columns[index].y;
  return column_text (self, index);
}

static void
spread_clear (SteadFigure *figure)
{
  Spread *self = (Spread *) figure;

  g_free (self->texts[0]);
  g_free (self->texts[1]);
}

static void
add_line (Spread     *self,
          double      cents,
          const char *text,
          gboolean    bold)
{
  self->series.lines[self->series.n_lines++] = (SteadSpreadLine) { cents, text, bold };
}

SteadFigure *
stead_spread_figure_new (const SteadHowSure *answer)
{
  static const SteadFigureClass klass = { sizeof (Spread), sizeof (SteadSpreadLayout), spread_layout, spread_paint,
                                          spread_hint, spread_step, spread_clear };
  g_autofree char *middle = NULL, *target = NULL;
  Spread *self;

  g_return_val_if_fail (answer != NULL, NULL);

  if (!answer->solved)
    return NULL;
  self = stead_figure_new (&klass, answer->currency);
  self->answer = answer;
  self->series = (SteadSpreadSeries) { .counts = answer->counts, .n = (int) answer->n_bins, .low = answer->low,
                                       .step = answer->step, .x_name = _("left after the season") };
  middle = money (self, answer->band.likely);
  target = money (self, answer->target_cents);
  /* Translators: on a chart: half of all results are above this sum. */
  self->texts[0] = g_strdup_printf (C_("label on a chart", "half above %s"), middle);
  /* Translators: on a chart: a sum that is wanted. */
  self->texts[1] = g_strdup_printf (C_("label on a chart", "wanted: %s"), target);
  add_line (self, answer->band.likely, self->texts[0], TRUE);
  if (answer->target_cents > 0)
    add_line (self, answer->target_cents, self->texts[1], FALSE);
  add_line (self, 0, C_("label on a chart", "nothing left"), FALSE);
  return &self->figure;
}
