/* stead-bar-figure.c - what each product brings at its best, and what matters most. */
#include "config.h"

#include "core/stead-money.h"
#include "draw/stead-bar-chart.h"
#include "paper/stead-price-figure.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#define PRINT_TEXT 9.0
#define MOST_RANGES 8    /* those that matter most */

/* Bars, the texts beside them, and what to say of each. */
typedef struct
{
  SteadFigure     figure;
  SteadBar        bars[STEAD_MAX_BARS];
  GPtrArray      *texts;    /* of char *: everything that the bars point to */
  GPtrArray      *said;     /* of char *: one a bar */
  SteadBarSeries  series;
} Bars;

static void
bars_layout (const SteadFigure    *figure,
             cairo_t              *cr,
             const SteadDrawStyle *style,
             double                width,
             double                height,
             gpointer              layout)
{
  stead_bar_chart_layout (cr, &((const Bars *) figure)->series, style, width, height, layout);
}

static void
bars_paint (const SteadFigure    *figure,
            cairo_t              *cr,
            const SteadDrawStyle *style,
            gconstpointer         layout)
{
  stead_bar_chart_paint (cr, &((const Bars *) figure)->series, style, layout, -1);
}

static char *
bars_hint (const SteadFigure *figure,
           gconstpointer      layout,
           double             x,
           double             y)
{
  const Bars *self = (const Bars *) figure;
  int i = stead_bar_chart_at (&self->series, layout, y);

  return i >= 0 ? g_strdup (self->said->pdata[i]) : NULL;
}

static char *
bars_step (const SteadFigure *figure,
           gconstpointer      layout,
           int                index,
           double            *x,
           double            *y)
{
  const Bars *self = (const Bars *) figure;
  const SteadBarLayout *bars = layout;

  if (index >= self->series.n)
    return NULL;
  *x = bars->bars[index].x + bars->bars[index].width / 2;
  *y = bars->bars[index].y;
  return g_strdup (self->said->pdata[index]);
}

static void
bars_clear (SteadFigure *figure)
{
  Bars *self = (Bars *) figure;

  g_ptr_array_unref (self->texts);
  g_ptr_array_unref (self->said);
}

static Bars *
bars_new (const char *currency)
{
  static const SteadFigureClass klass = { sizeof (Bars), sizeof (SteadBarLayout), bars_layout, bars_paint, bars_hint,
                                          bars_step, bars_clear };
  Bars *self = stead_figure_new (&klass, currency);

  self->texts = g_ptr_array_new_with_free_func (g_free);
  self->said = g_ptr_array_new_with_free_func (g_free);
  self->series = (SteadBarSeries) { self->bars, 0, FALSE, NAN, NULL };
  return self;
}

/* (transfer full) for @value and @said; @name lives as long as the answer. */
static void
bars_add (Bars         *self,
          const char   *name,
          char         *value,
          char         *said,
          double        from,
          double        to,
          SteadRole     role,
          SteadPattern  pattern)
{
  g_ptr_array_add (self->texts, value);
  g_ptr_array_add (self->said, said);
  self->bars[self->series.n++] = (SteadBar) { name, value, from, to, role, pattern, FALSE };
}

static char *
money (const Bars *self,
       double      cents)
{
  return stead_money_format (stead_money_round (cents), self->figure.currency);
}

static double
height_of (int      n,
           gboolean base)
{
  SteadDrawStyle style = { STEAD_SCHEME_PRINT, PRINT_TEXT, NULL, NULL };
  SteadBarSeries series = { NULL, n, FALSE, NAN, base ? "" : NULL };

  return stead_bar_chart_height (&series, &style);
}

/* --- best use ------------------------------------------------------------------------- */

static void
add_use (Bars                   *self,
         const SteadBestUseLine *line)
{
  static const SteadRole roles[] = { STEAD_ROLE_EGG, STEAD_ROLE_FISH, STEAD_ROLE_CROP, STEAD_ROLE_SAUCE, STEAD_ROLE_WATER };
  static const SteadPattern patterns[] = { STEAD_PATTERN_SOLID, STEAD_PATTERN_FALLING, STEAD_PATTERN_RISING,
                                           STEAD_PATTERN_LINES, STEAD_PATTERN_CROSS };
  double brings = line->best * (line->price_cents - line->own_cents);
  g_autofree char *units = stead_words_units (line->pack, line->best);
  g_autofree char *planned = stead_words_units (line->pack, line->planned);
  g_autofree char *cents = money (self, brings);
  /* Translators: "60 dozen" and the money that they bring. */
  char *value = g_strdup_printf (C_("label on a chart", "%s, %s"), units, cents);
  gsize look = line->look % G_N_ELEMENTS (roles);

  bars_add (self, line->name, value,
            /* Translators: a product, "60 dozen, $246.00", "72 dozen". */
            g_strdup_printf (_("%s: %s; the plan has %s"), line->name, value, planned), 0, brings, roles[look],
            patterns[look]);
}

SteadFigure *
stead_best_use_figure_new (const SteadBestUse *answer)
{
  Bars *self;

  g_return_val_if_fail (answer != NULL, NULL);

  if (!answer->solved)
    return NULL;
  self = bars_new (answer->currency);
  for (guint i = 0; i < MIN (answer->lines->len, STEAD_MAX_BARS); i++)
    add_use (self, answer->lines->pdata[i]);
  return &self->figure;
}

double
stead_best_use_figure_height (const SteadBestUse *answer)
{
  g_return_val_if_fail (answer != NULL, 0);

  return height_of ((int) MIN (answer->lines->len, STEAD_MAX_BARS), FALSE);
}

/* --- what matters most ------------------------------------------------------------------ */

static void
add_swing (Bars              *self,
           const SteadWhatIf *answer,
           const SteadSwing  *swing)
{
  static const SteadRole roles[] = { STEAD_ROLE_WATER, STEAD_ROLE_FISH, STEAD_ROLE_SAUCE, STEAD_ROLE_EGG,
                                     STEAD_ROLE_TOMATO, STEAD_ROLE_SHELL, STEAD_ROLE_WATER, STEAD_ROLE_EGG,
                                     STEAD_ROLE_FISH, STEAD_ROLE_TOMATO };
  static const SteadPattern patterns[] = { STEAD_PATTERN_SOLID, STEAD_PATTERN_FALLING, STEAD_PATTERN_LINES,
                                           STEAD_PATTERN_SOLID, STEAD_PATTERN_RISING, STEAD_PATTERN_DOTS,
                                           STEAD_PATTERN_CROSS, STEAD_PATTERN_DOTS, STEAD_PATTERN_LINES,
                                           STEAD_PATTERN_CROSS };
  const char *name = stead_what_if_name (answer, swing->assumption);
  g_autofree char *low_at = stead_what_if_text (answer, swing->assumption, swing->low);
  g_autofree char *high_at = stead_what_if_text (answer, swing->assumption, swing->high);
  g_autofree char *low = money (self, swing->low_cents);
  g_autofree char *high = money (self, swing->high_cents);

  bars_add (self, name, money (self, fabs (swing->high_cents - swing->low_cents)),
            /* Translators: an assumption, its two values with the profit at each. */
            g_strdup_printf (_("%s: %s leaves %s, %s leaves %s"), name, low_at, low, high_at, high),
            MIN (swing->low_cents, swing->high_cents), MAX (swing->low_cents, swing->high_cents),
            roles[swing->assumption], patterns[swing->assumption]);
}

SteadFigure *
stead_swing_figure_new (const SteadWhatIf *answer)
{
  g_autofree char *profit = NULL;
  Bars *self;

  g_return_val_if_fail (answer != NULL, NULL);

  if (answer->n_swings == 0)
    return NULL;
  self = bars_new (answer->price->cost->farm->currency);
  for (int i = 0; i < answer->n_swings; i++)
    add_swing (self, answer, &answer->swings[i]);
  profit = money (self, answer->figures.profit_cents);
  self->series.base = answer->figures.profit_cents;
  /* Translators: on a chart, over the line of the present profit. */
  self->series.base_name = g_strdup_printf (C_("label on a chart", "now: %s"), profit);
  g_ptr_array_add (self->texts, (char *) self->series.base_name);
  return &self->figure;
}

double
stead_swing_figure_height (const SteadWhatIf *answer)
{
  g_return_val_if_fail (answer != NULL, 0);

  return height_of (answer->n_swings, TRUE);
}

/* --- which range matters most ------------------------------------------------------------ */

static void
add_range (Bars               *self,
           const SteadHowSure *answer,
           const SteadRange   *range)
{
  static const SteadRole roles[] = { STEAD_ROLE_FISH, STEAD_ROLE_TOMATO, STEAD_ROLE_EGG, STEAD_ROLE_SAUCE };
  static const SteadPattern patterns[] = { STEAD_PATTERN_FALLING, STEAD_PATTERN_RISING, STEAD_PATTERN_SOLID,
                                           STEAD_PATTERN_LINES };
  g_autofree char *low_at = stead_range_text (answer, range, range->value.low);
  g_autofree char *high_at = stead_range_text (answer, range, range->value.high);
  g_autofree char *low = money (self, range->low_cents);
  g_autofree char *high = money (self, range->high_cents);

  bars_add (self, range->name, money (self, fabs (range->high_cents - range->low_cents)),
            g_strdup_printf (_("%s: %s leaves %s, %s leaves %s"), range->name, low_at, low, high_at, high),
            MIN (range->low_cents, range->high_cents), MAX (range->low_cents, range->high_cents), roles[range->kind],
            patterns[range->kind]);
}

static int
compare_spans (gconstpointer a,
               gconstpointer b)
{
  const SteadRange *x = *(SteadRange * const *) a, *y = *(SteadRange * const *) b;
  double left = fabs (x->high_cents - x->low_cents), right = fabs (y->high_cents - y->low_cents);

  return (left < right) - (left > right);
}

SteadFigure *
stead_range_figure_new (const SteadHowSure *answer)
{
  g_autoptr(GPtrArray) ranges = g_ptr_array_new ();
  g_autofree char *likely = NULL;
  Bars *self;

  g_return_val_if_fail (answer != NULL, NULL);

  if (!answer->solved)
    return NULL;
  for (guint i = 0; i < answer->ranges->len; i++)
    g_ptr_array_add (ranges, answer->ranges->pdata[i]);
  g_ptr_array_sort (ranges, compare_spans);
  self = bars_new (answer->currency);
  for (guint i = 0; i < MIN (ranges->len, MOST_RANGES); i++)
    add_range (self, answer, ranges->pdata[i]);
  likely = money (self, answer->likely_cents);
  self->series.base = answer->likely_cents;
  /* Translators: on a chart, over the line of the likeliest profit. */
  self->series.base_name = g_strdup_printf (C_("label on a chart", "likeliest: %s"), likely);
  g_ptr_array_add (self->texts, (char *) self->series.base_name);
  return &self->figure;
}

double
stead_range_figure_height (const SteadHowSure *answer)
{
  g_return_val_if_fail (answer != NULL, 0);

  return height_of ((int) MIN (answer->ranges->len, MOST_RANGES), TRUE);
}
