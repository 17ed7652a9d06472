/* stead-price-paper.c - the price page: the chart, its figures, the price so far, and why. */
#include "config.h"

#include "core/stead-money.h"
#include "draw/stead-price-history-chart.h"
#include "paper/stead-paper-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#define CHART_HEIGHT 250.0
#define HISTORY_HEIGHT 96.0
#define HISTORY_TEXT 8.0

static void
add_figure_row (SteadPages *pages,
                const char *name,
                const char *value,
                const char *more)
{
  stead_pages_add_row (pages, STEAD_ROW_PLAIN, STEAD_PAGES_NO_KEY, (const char *[]) { name, value, more });
}

/* "46 dozen", or a dash where there is no such number. */
static char *
units_or_dash (const SteadPriceAnswer *answer,
               gint64                  units)
{
  return units < 0 ? g_strdup ("–") : stead_words_units (answer->cost->product->pack, (double) units);
}

static char *
percent_or_null (double frac)
{
  return isfinite (frac) ? stead_words_percent (frac, 1) : NULL;
}

static void
add_cost_figures (SteadPages             *pages,
                  const SteadPriceAnswer *answer)
{
  const SteadCvp *cvp = &answer->cvp;
  g_autofree char *price = stead_paper_moneyf (answer->cost, cvp->price_cents);
  g_autofree char *variable = stead_paper_moneyf (answer->cost, cvp->variable_cents);
  g_autofree char *margin = stead_paper_moneyf (answer->cost, answer->figures.margin_cents);
  g_autofree char *share = percent_or_null (answer->figures.margin_frac);
  g_autofree char *fixed = stead_paper_moneyf (answer->cost, cvp->fixed_cents);
  g_autofree char *step = stead_paper_moneyf (answer->cost, cvp->step_cents);
  g_autofree char *each = stead_words_units (answer->cost->product->pack, cvp->step_units);
  g_autofree char *of_price = share == NULL ? NULL : g_strdup_printf (_("%s of the price"), share);

  add_figure_row (pages, answer->price_on_file >= 0 ? _("Price") : _("Price, proposed"), price,
                  stead_words_per_unit (answer->cost->product->pack));
  add_figure_row (pages, _("Cost of each"), variable, NULL);
  add_figure_row (pages, _("What each one leaves"), margin, of_price);
  add_figure_row (pages, _("Costs of the sale day"), fixed, NULL);
  if (cvp->step_cents > 0 && cvp->step_units > 0)
    {
      /* Translators: "for each 40 dozen": after a cost that comes again with every so many. */
      g_autofree char *again = g_strdup_printf (_("for each %s begun"), each);

      add_figure_row (pages, _("Further costs"), step, again);
    }
}

static void
add_even_figures (SteadPages             *pages,
                  const SteadPriceAnswer *answer)
{
  const SteadCvpFigures *figures = &answer->figures;
  g_autofree char *even = units_or_dash (answer, figures->even_whole_units);
  g_autofree char *lasting = units_or_dash (answer, figures->lasting_whole_units);
  g_autofree char *sales = figures->even_whole_units < 0
    ? NULL : stead_paper_moneyf (answer->cost, (double) figures->even_whole_units * answer->cvp.price_cents);
  g_autofree char *taken = NULL;

  /* Translators: beside a number of units, what they bring in. */
  taken = sales == NULL ? NULL : g_strdup_printf (_("%s taken in"), sales);
  add_figure_row (pages, _("Break-even"), even, taken);
  if (figures->lasting_whole_units > figures->even_whole_units)
    add_figure_row (pages, _("No loss from here on"), lasting, NULL);
}

static void
add_plan_figures (SteadPages             *pages,
                  const SteadPriceAnswer *answer)
{
  const SteadCvpFigures *figures = &answer->figures;
  g_autofree char *plan = stead_words_units (answer->cost->product->pack, answer->cvp.planned_units);
  g_autofree char *sales = stead_paper_moneyf (answer->cost, answer->cvp.planned_units * answer->cvp.price_cents);
  g_autofree char *profit = stead_paper_moneyf (answer->cost, figures->profit_cents);
  g_autofree char *safety = stead_words_units (answer->cost->product->pack, (double) figures->safety_whole_units);
  g_autofree char *safety_share = percent_or_null (figures->safety_frac);
  g_autofree char *leverage = isfinite (figures->leverage) ? stead_number_format (figures->leverage, 2) : NULL;
  g_autofree char *taken = g_strdup_printf (_("%s taken in"), sales);
  g_autofree char *of_plan = safety_share == NULL ? NULL : g_strdup_printf (_("%s of the plan, exactly"), safety_share);
  g_autofree char *pull = NULL;

  if (!(answer->cvp.planned_units > 0))
    return;
  add_figure_row (pages, _("Plan"), plan, taken);
  add_figure_row (pages, _("Left at the plan"), profit, NULL);
  if (figures->even_whole_units >= 0 && figures->safety_whole_units >= 0)
    add_figure_row (pages, _("The plan can fall short by"), safety, of_plan);
  if (leverage == NULL || !(figures->profit_cents > 0))
    return;
  /* Translators: what operating leverage means, with its number put in. */
  pull = g_strdup_printf (_("1%% more sold leaves %s%% more"), leverage);
  add_figure_row (pages, _("Operating leverage"), leverage, pull);
}

static void
add_target_figures (SteadPages             *pages,
                    const SteadPriceAnswer *answer)
{
  g_autofree char *target = stead_paper_moneyf (answer->cost, answer->cvp.target_cents);
  g_autofree char *units = units_or_dash (answer, answer->figures.target_whole_units);
  g_autofree char *price = NULL;

  if (!(answer->cvp.target_cents > 0))
    return;
  add_figure_row (pages, _("Target for the day"), target, NULL);
  add_figure_row (pages, _("Sell for the target"), units, NULL);
  if (!isfinite (answer->figures.needed_price_cents))
    return;
  /* Rounded up: a price that is rounded down would just miss. */
  price = stead_paper_money (answer->cost, (gint64) ceil (answer->figures.needed_price_cents - 1e-6));
  add_figure_row (pages, _("Or ask, with the plan"), price, NULL);
}

static void
add_figures (SteadPages             *pages,
             const SteadPriceAnswer *answer)
{
  static const SteadPagesColumn columns[] = {
    { NULL, STEAD_ALIGN_LEFT, 1 }, { NULL, STEAD_ALIGN_RIGHT, 0 }, { NULL, STEAD_ALIGN_LEFT, 1.4 },
  };

  stead_pages_add_heading (pages, _("The figures"));
  stead_pages_add_table (pages, columns, G_N_ELEMENTS (columns));
  add_cost_figures (pages, answer);
  add_even_figures (pages, answer);
  add_plan_figures (pages, answer);
  add_target_figures (pages, answer);
}

static void
add_chart_table (SteadPages             *pages,
                 const SteadPriceAnswer *answer)
{
  const SteadPagesColumn columns[] = {
    { C_("column of sales", "Sold"), STEAD_ALIGN_LEFT, 1 },
    { C_("column of sales", "Money in"), STEAD_ALIGN_RIGHT, 0.8 },
    { C_("column of sales", "All costs"), STEAD_ALIGN_RIGHT, 0.8 },
    { C_("column of sales", "What is left"), STEAD_ALIGN_RIGHT, 0.8 },
  };
  g_autoptr(GArray) rows = stead_price_answer_table (answer);

  stead_pages_add_heading (pages, _("The chart in numbers"));
  stead_pages_add_table (pages, columns, G_N_ELEMENTS (columns));
  for (guint i = 0; i < rows->len; i++)
    {
      const SteadPriceRow *row = &g_array_index (rows, SteadPriceRow, i);
      g_autofree char *units = stead_words_units (answer->cost->product->pack, (double) row->units);
      g_autofree char *revenue = stead_paper_money (answer->cost, row->revenue_cents);
      g_autofree char *costs = stead_paper_money (answer->cost, row->cost_cents);
      g_autofree char *profit = stead_paper_money (answer->cost, row->profit_cents);

      stead_pages_add_row (pages, STEAD_ROW_PLAIN, STEAD_PAGES_NO_KEY,
                           (const char *[]) { units, revenue, costs, profit });
    }
}

/* --- the price so far ------------------------------------------------------- */

typedef struct
{
  SteadPriceHistory  history;
  SteadDay          *days;
  gint64            *cents;
  char              *cost;
  char              *currency;
} HistoryFigure;

static void
history_free (gpointer data)
{
  HistoryFigure *self = data;

  g_free (self->days);
  g_free (self->cents);
  g_free (self->cost);
  g_free (self->currency);
  g_free (self);
}

static void
history_print (cairo_t  *cr,
               double    width,
               double    height,
               gpointer  data)
{
  const HistoryFigure *self = data;
  SteadDrawStyle style = { STEAD_SCHEME_PRINT, HISTORY_TEXT, NULL, self->currency };
  SteadPriceHistoryWords words = { self->cost };
  SteadPriceHistoryLayout layout;

  stead_price_history_chart_layout (cr, &self->history, &words, &style, width, height, &layout);
  stead_price_history_chart_paint (cr, &self->history, &words, &style, &layout);
}

static HistoryFigure *
history_new (const SteadPriceAnswer *answer,
             SteadDay                today)
{
  HistoryFigure *self = g_new0 (HistoryFigure, 1);
  g_autofree char *cost = stead_paper_money (answer->cost, answer->cost->sheet.unit_cents);
  guint n = answer->prices->len;

  self->days = g_new (SteadDay, n);
  self->cents = g_new (gint64, n);
  for (guint i = 0; i < n; i++)
    {
      const SteadPrice *price = answer->prices->pdata[i];

      self->days[i] = price->from_day;
      self->cents[i] = price->cents;
    }
  /* Translators: beside a line in a chart of prices; what one unit costs the farm. */
  self->cost = g_strdup_printf (_("costs %s now"), cost);
  self->currency = g_strdup (answer->cost->farm->currency);
  self->history = (SteadPriceHistory) { self->days, self->cents, n, today, answer->cost->sheet.unit_cents };
  return self;
}

static void
add_history (SteadPages             *pages,
             const SteadPriceAnswer *answer,
             SteadDay                today)
{
  const SteadPagesColumn columns[] = {
    { C_("column of prices", "From"), STEAD_ALIGN_LEFT, 0 },
    { C_("column of prices", "Price"), STEAD_ALIGN_RIGHT, 0 },
    { C_("column of prices", "Why"), STEAD_ALIGN_LEFT, 1 },
  };

  if (answer->prices->len == 0)
    return;
  stead_pages_add_heading (pages, _("The price so far"));
  stead_pages_add_figure (pages, HISTORY_HEIGHT, history_print, history_new (answer, today), history_free);
  stead_pages_add_table (pages, columns, G_N_ELEMENTS (columns));
  for (guint i = answer->prices->len; i > 0; i--)
    {
      const SteadPrice *price = answer->prices->pdata[i - 1];
      g_autofree char *day = stead_day_format (price->from_day, STEAD_DAY_STYLE_MEDIUM);
      g_autofree char *cents = stead_paper_money (answer->cost, price->cents);

      stead_pages_add_row (pages, STEAD_ROW_PLAIN, STEAD_PAGES_NO_KEY, (const char *[]) { day, cents, price->note });
    }
}

static SteadPages *
begin (const SteadImprint     *imprint,
       const SteadPriceAnswer *answer)
{
  /* Translators: title of the price page; the product's name. */
  g_autofree char *title = g_strdup_printf (_("%s: price and break-even"), answer->cost->product->name);
  g_autofree char *period = stead_paper_period (answer->cost);
  SteadPages *pages = stead_pages_new (imprint, title, period);

  stead_pages_add_title (pages, title);
  stead_pages_add_lead (pages, answer->sentence);
  if (answer->advice != NULL)
    stead_pages_add_text (pages, answer->advice);
  if (answer->cost->caution != NULL)
    stead_pages_add_caution (pages, answer->cost->caution);
  return pages;
}

SteadPages *
stead_price_paper_new (SteadStore               *store,
                       const char               *of,
                       const SteadPaperOptions  *options,
                       GError                  **error)
{
  g_autoptr(SteadImprint) imprint = stead_imprint_new (store, error);
  g_autoptr(SteadPriceAnswer) answer = imprint == NULL ? NULL : stead_paper_read_price (store, of, options, error);
  g_autoptr(GPtrArray) whys = NULL;
  SteadPages *pages;

  if (answer == NULL)
    return NULL;
  whys = stead_price_answer_whys (answer);
  pages = begin (imprint, answer);
  stead_pages_add_figure (pages, CHART_HEIGHT, stead_cvp_figure_print, stead_cvp_figure_new (answer),
                          stead_cvp_figure_free);
  add_figures (pages, answer);
  add_chart_table (pages, answer);
  add_history (pages, answer, imprint->today);
  stead_pages_add_heading (pages, _("How it is worked out"));
  for (guint i = 0; i < whys->len; i++)
    stead_pages_add_why (pages, whys->pdata[i]);
  stead_pages_settle (pages);
  return pages;
}
