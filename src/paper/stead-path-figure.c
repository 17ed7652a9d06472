/* stead-path-figure.c - the path of profit of all products, and what was sold at which price. */
#include "config.h"

#include "core/stead-money.h"
#include "draw/stead-path-chart.h"
#include "paper/stead-price-figure.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#define BAND_POINTS 25

/* Points, words and what to say of each point. */
typedef struct
{
  SteadFigure             figure;
  const SteadTogether    *together;    /* (nullable): of the one … */
  const SteadPriceChoice *choice;      /* … or of the other */
  GArray                 *points[4];   /* of SteadPathPoint */
  char                   *words[2];
  SteadPathSeries         series;
} Path;

static char *
money (const Path *self,
       double      cents)
{
  return stead_money_format (stead_money_round (cents), self->figure.currency);
}

static void
add_point (Path   *self,
           int     row,
           double  x,
           double  y)
{
  SteadPathPoint point = { x, y };

  g_array_append_val (self->points[row], point);
}

static const SteadPathPoint *
points_of (const Path *self,
           int         row)
{
  return (const SteadPathPoint *) (gpointer) self->points[row]->data;
}

static void
path_layout (const SteadFigure    *figure,
             cairo_t              *cr,
             const SteadDrawStyle *style,
             double                width,
             double                height,
             gpointer              layout)
{
  stead_path_chart_layout (cr, &((const Path *) figure)->series, style, width, height, layout);
}

static void
path_paint (const SteadFigure    *figure,
            cairo_t              *cr,
            const SteadDrawStyle *style,
            gconstpointer         layout)
{
  stead_path_chart_paint (cr, &((const Path *) figure)->series, style, layout);
}

static void
path_clear (SteadFigure *figure)
{
  Path *self = (Path *) figure;

  for (gsize i = 0; i < G_N_ELEMENTS (self->points); i++)
    g_array_unref (self->points[i]);
  for (gsize i = 0; i < G_N_ELEMENTS (self->words); i++)
    g_free (self->words[i]);
}

static Path *
path_new (const SteadFigureClass *klass,
          const char             *currency)
{
  Path *self = stead_figure_new (klass, currency);

  for (gsize i = 0; i < G_N_ELEMENTS (self->points); i++)
    self->points[i] = g_array_new (FALSE, FALSE, sizeof (SteadPathPoint));
  return self;
}

/* The point of a row that is nearest to the pointer; -1: there is none. */
static int
nearest_point (const Path            *self,
               int                    row,
               const SteadPathLayout *layout,
               double                 x,
               double                 y)
{
  double least = INFINITY;
  int nearest = -1;

  for (guint i = 0; i < self->points[row]->len; i++)
    {
      const SteadPathPoint *point = &points_of (self, row)[i];
      double away = hypot (stead_path_chart_x (layout, point->x) - x, stead_path_chart_y (layout, point->y) - y);

      if (away >= least)
        continue;
      least = away;
      nearest = (int) i;
    }
  return nearest;
}

/* --- all products together ------------------------------------------------------------ */

static char *
together_text (const Path *self,
               int         i)
{
  const SteadTogetherPoint *point = &g_array_index (self->together->path, SteadTogetherPoint, i);
  g_autofree char *sales = money (self, point->sales_cents);
  g_autofree char *left = money (self, point->profit_cents);
  g_autofree char *units = NULL;

  if (point->line < 0)
    /* Translators: money, at the start of a path of profit. */
    return g_strdup_printf (_("Before the first sale: %s"), left);
  units = stead_number_format (point->units, 0);
  /* Translators: a number of units, a product, money taken in, money left. */
  return g_strdup_printf (_("%s of “%s” sold: %s taken in, %s left"), units,
                          ((SteadTogetherLine *) self->together->lines->pdata[point->line])->name, sales, left);
}

static char *
together_hint (const SteadFigure *figure,
               gconstpointer      layout,
               double             x,
               double             y)
{
  const Path *self = (const Path *) figure;
  int i = nearest_point (self, 0, layout, x, y);

  return i >= 0 ? together_text (self, i) : NULL;
}

static char *
together_step (const SteadFigure *figure,
               gconstpointer      layout,
               int                index,
               double            *x,
               double            *y)
{
  const Path *self = (const Path *) figure;

  if (index >= (int) self->points[0]->len)
    return NULL;
  *x = stead_path_chart_x (layout, points_of (self, 0)[index].x);
  *y = stead_path_chart_y (layout, points_of (self, 0)[index].y);
  return together_text (self, index);
}

static void
add_mark (SteadPathSeries *series,
          SteadPathMark    mark)
{
  if (series->n_marks < STEAD_MAX_PATH_MARKS)
    series->marks[series->n_marks++] = mark;
}

/* The break-even, the plan, and the name of each product where its stretch ends. */
static void
add_together_marks (Path *self)
{
  const SteadTogether *answer = self->together;
  g_autofree char *plan = NULL;

  if (isfinite (answer->even_sales_cents) && answer->even_frac > 0)
    {
      g_autofree char *even = money (self, ceil (answer->even_sales_cents - 1e-6));

      /* Translators: on a chart, where the path crosses zero: sales in money. */
      self->words[0] = g_strdup_printf (C_("label on a chart", "break-even %s"), even);
      add_mark (&self->series, (SteadPathMark) { answer->even_sales_cents, 0, self->words[0], TRUE, TRUE });
    }
  if (answer->sales_cents > 0 && isfinite (answer->profit_cents))
    {
      plan = money (self, answer->profit_cents);
      /* Translators: on a chart, at its end: what the plan leaves. */
      self->words[1] = g_strdup_printf (C_("label on a chart", "plan: %s left"), plan);
      add_mark (&self->series, (SteadPathMark) { answer->sales_cents, answer->profit_cents, self->words[1], FALSE, TRUE });
    }
  for (guint i = 1; i + 1 < answer->path->len; i++)
    {
      const SteadTogetherPoint *point = &g_array_index (answer->path, SteadTogetherPoint, i);
      const SteadTogetherLine *line = answer->lines->pdata[point->line];

      if ((point + 1)->line != point->line)
        add_mark (&self->series, (SteadPathMark) { point->sales_cents, point->profit_cents, line->name, FALSE, FALSE });
    }
}

SteadFigure *
stead_together_figure_new (const SteadTogether *answer)
{
  static const SteadFigureClass klass = { sizeof (Path), sizeof (SteadPathLayout), path_layout, path_paint, together_hint,
                                          together_step, path_clear };
  const char *names[] = { C_("label on a chart", "one after the other"), C_("label on a chart", "all at once") };
  const GArray *paths[2];
  Path *self;

  g_return_val_if_fail (answer != NULL, NULL);

  self = path_new (&klass, answer->currency);
  self->together = answer;
  self->series = (SteadPathSeries) { .x_name = _("money taken in, all products"), .y_name = _("left for the farm"),
                                     .x_money = TRUE, .y_money = TRUE, .zero = TRUE };
  paths[0] = answer->path;
  paths[1] = answer->mix;
  for (int k = 0; k < 2; k++)
    {
      for (guint i = 0; i < paths[k]->len; i++)
        {
          const SteadTogetherPoint *point = &g_array_index (paths[k], SteadTogetherPoint, i);

          add_point (self, k, point->sales_cents, point->profit_cents);
        }
      self->series.paths[self->series.n_paths++] = (SteadPath) { points_of (self, k), (int) self->points[k]->len, names[k],
                                                                 k == 0 ? STEAD_ROLE_WATER : STEAD_ROLE_SAUCE,
                                                                 k == 0 ? STEAD_LINE_SOLID : STEAD_LINE_DASHED };
    }
  add_together_marks (self);
  return &self->figure;
}

/* --- what was sold at which price ---------------------------------------------------------- */

enum { DOTS, LINE, LOW, HIGH };

static char *
trial_text (const Path *self,
            int         i)
{
  const SteadPriceTrial *trial = self->choice->trials->pdata[i];
  g_autofree char *day = stead_day_format (trial->day, STEAD_DAY_STYLE_MEDIUM);
  g_autofree char *price = money (self, (double) trial->price_cents);
  g_autofree char *units = stead_words_units (self->choice->price->cost->product->pack, trial->units);

  /* Translators: a day, "72 dozen", a price. */
  return g_strdup_printf (_("%s: %s sold at %s"), day, units, price);
}

static char *
choice_hint (const SteadFigure *figure,
             gconstpointer      layout,
             double             x,
             double             y)
{
  const Path *self = (const Path *) figure;
  int i = nearest_point (self, DOTS, layout, x, y);

  return i >= 0 ? trial_text (self, i) : NULL;
}

static char *
choice_step (const SteadFigure *figure,
             gconstpointer      layout,
             int                index,
             double            *x,
             double            *y)
{
  const Path *self = (const Path *) figure;

  if (index >= (int) self->points[DOTS]->len)
    return NULL;
  *x = stead_path_chart_x (layout, points_of (self, DOTS)[index].x);
  *y = stead_path_chart_y (layout, points_of (self, DOTS)[index].y);
  return trial_text (self, index);
}

static void
fill_choice (Path *self)
{
  const SteadPriceChoice *answer = self->choice;
  const SteadDemandLine *line = &answer->line;

  for (guint i = 0; i < answer->trials->len; i++)
    {
      const SteadPriceTrial *trial = answer->trials->pdata[i];

      add_point (self, DOTS, (double) trial->price_cents, trial->units);
    }
  for (int i = 0; answer->has_line && i < BAND_POINTS; i++)
    {
      double x = line->x_low + (line->x_high - line->x_low) * i / (BAND_POINTS - 1);
      SteadBand band;

      if (!stead_demand_line_at (line, x, STEAD_PRICE_CHOICE_LEVEL, &band, NULL))
        continue;
      add_point (self, LINE, x, MAX (0, line->intercept + line->slope * x));
      add_point (self, LOW, x, MAX (0, band.low));
      add_point (self, HIGH, x, MAX (0, band.high));
    }
}

static void
add_best (Path *self)
{
  const SteadDemandLine *line = &self->choice->line;
  double at = self->choice->best_cents;
  g_autofree char *best = money (self, at);

  /* Translators: on a chart: the price that earns most. */
  self->words[0] = g_strdup_printf (C_("label on a chart", "earns most: %s"), best);
  add_mark (&self->series, (SteadPathMark) { at, MAX (0, line->intercept + line->slope * at), self->words[0], TRUE, TRUE });
}

SteadFigure *
stead_choice_figure_new (const SteadPriceChoice *answer)
{
  static const SteadFigureClass klass = { sizeof (Path), sizeof (SteadPathLayout), path_layout, path_paint, choice_hint,
                                          choice_step, path_clear };
  const SteadCostAnswer *cost;
  Path *self;

  g_return_val_if_fail (answer != NULL, NULL);

  if (answer->trials->len == 0)
    return NULL;
  cost = answer->price->cost;
  self = path_new (&klass, cost->farm->currency);
  self->choice = answer;
  fill_choice (self);
  self->series = (SteadPathSeries) { .dots = points_of (self, DOTS), .n_dots = (int) self->points[DOTS]->len,
                                     .band_low = points_of (self, LOW), .band_high = points_of (self, HIGH),
                                     .n_band = (int) self->points[LOW]->len, .x_name = _("price of one"),
                                     .y_name = stead_words_unit_plural (cost->product->pack), .x_money = TRUE };
  if (self->points[LINE]->len > 0)
    self->series.paths[self->series.n_paths++] = (SteadPath) { points_of (self, LINE), (int) self->points[LINE]->len,
                                                               C_("label on a chart", "what people ask for"),
                                                               STEAD_ROLE_FISH, STEAD_LINE_SOLID };
  if (answer->has_line)
    add_best (self);
  return &self->figure;
}
