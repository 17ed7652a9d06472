/* stead-together-paper.c - all products of a sale day: their break-even, their costs and prices. */
#include "config.h"

#include "core/stead-money.h"
#include "paper/stead-paper-private.h"
#include "paper/stead-price-figure.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#define CHART_HEIGHT 230.0

static char *
money (const SteadTogether *answer,
       double               cents)
{
  return stead_money_format (stead_money_round (cents), answer->currency);
}

static char *
share (double frac)
{
  return isfinite (frac) ? stead_words_percent (frac, 0) : g_strdup ("–");
}

static SteadTogether *
read_answer (SteadStore               *store,
             const SteadPaperOptions  *options,
             GError                  **error)
{
  return stead_together_new (store, options == NULL ? STEAD_PERIOD_12_WEEKS : options->period, error);
}

/* --- break-even ------------------------------------------------------------------------ */

static void
add_lines (SteadPages          *pages,
           const SteadTogether *answer)
{
  const SteadPagesColumn columns[] = {
    { C_("column of products", "Product"), STEAD_ALIGN_LEFT, 1 },
    { C_("column of products", "Planned"), STEAD_ALIGN_RIGHT, 0 },
    { C_("column of products", "Price"), STEAD_ALIGN_RIGHT, 0 },
    { C_("column of products", "Cost of one"), STEAD_ALIGN_RIGHT, 0 },
    { C_("column of products", "Left of one"), STEAD_ALIGN_RIGHT, 0 },
    { C_("column of products", "Of the price"), STEAD_ALIGN_RIGHT, 0 },
    { C_("column of products", "At the break-even"), STEAD_ALIGN_RIGHT, 0 },
  };

  stead_pages_add_heading (pages, _("Product by product"));
  stead_pages_add_table (pages, columns, G_N_ELEMENTS (columns));
  for (guint i = 0; i < answer->lines->len; i++)
    {
      const SteadTogetherLine *line = answer->lines->pdata[i];
      g_autofree char *planned = stead_words_units (line->pack, line->planned);
      g_autofree char *price = money (answer, line->price_cents);
      g_autofree char *cost = money (answer, line->unit_cents);
      g_autofree char *left = money (answer, line->margin_cents);
      g_autofree char *of_price = share (line->margin_frac);
      g_autofree char *even = isfinite (line->even_units)
        ? stead_words_units (line->pack, ceil (line->even_units - 1e-9)) : g_strdup ("–");

      stead_pages_add_row (pages, STEAD_ROW_PLAIN, STEAD_PAGES_NO_KEY,
                           (const char *[]) { line->name, planned, price, cost, left, of_price, even });
    }
}

static void
add_figure (SteadPages *pages,
            const char *name,
            const char *value,
            const char *more)
{
  stead_pages_add_row (pages, STEAD_ROW_PLAIN, STEAD_PAGES_NO_KEY, (const char *[]) { name, value, more });
}

static void
add_day (SteadPages          *pages,
         const SteadTogether *answer)
{
  static const SteadPagesColumn columns[] = {
    { NULL, STEAD_ALIGN_LEFT, 1 }, { NULL, STEAD_ALIGN_RIGHT, 0 }, { NULL, STEAD_ALIGN_LEFT, 1.4 },
  };
  g_autofree char *sales = money (answer, answer->sales_cents);
  g_autofree char *fixed = money (answer, answer->fixed_cents);
  g_autofree char *profit = money (answer, answer->profit_cents);
  g_autofree char *even = isfinite (answer->even_frac) ? money (answer, ceil (answer->even_sales_cents - 1e-6)) : g_strdup ("–");
  g_autofree char *safety = money (answer, answer->safety_cents);
  g_autofree char *left = share (answer->margin_frac);
  g_autofree char *of_plan = share (answer->even_frac);
  g_autofree char *safe_share = share (answer->safety_frac);
  g_autofree char *weighted = g_strdup_printf (_("%s of it is left before the costs of the day"), left);
  g_autofree char *of_sales = g_strdup_printf (_("%s of the plan"), of_plan);
  g_autofree char *safe = g_strdup_printf (_("%s of the plan"), safe_share);

  stead_pages_add_heading (pages, _("The day as a whole"));
  stead_pages_add_table (pages, columns, G_N_ELEMENTS (columns));
  add_figure (pages, _("Planned sales"), sales, isfinite (answer->margin_frac) ? weighted : NULL);
  add_figure (pages, _("Costs of the sale day"), fixed, NULL);
  add_figure (pages, _("Break-even"), even, isfinite (answer->even_frac) ? of_sales : NULL);
  add_figure (pages, _("Left at the plan"), profit, NULL);
  if (isfinite (answer->even_frac))
    add_figure (pages, _("Sales can fall short by"), safety, safe);
}

SteadPages *
stead_together_paper_new (SteadStore               *store,
                          const char               *of,
                          const SteadPaperOptions  *options,
                          GError                  **error)
{
  g_autoptr(SteadImprint) imprint = stead_imprint_new (store, error);
  SteadTogether *answer = imprint == NULL ? NULL : read_answer (store, options, error);
  g_autoptr(GPtrArray) whys = NULL;
  SteadFigure *figure;
  SteadPages *pages;

  if (answer == NULL)
    return NULL;
  figure = stead_together_figure_new (answer);
  stead_figure_own (figure, answer, (GDestroyNotify) stead_together_free);
  whys = stead_together_whys (answer);
  pages = stead_pages_new (imprint, _("Break-even of all products"), NULL);
  stead_pages_add_title (pages, _("Break-even of all products"));
  stead_pages_add_lead (pages, answer->sentence);
  if (answer->advice != NULL)
    stead_pages_add_text (pages, answer->advice);
  if (answer->lines->len == 0)
    stead_figure_free (figure);
  else
    {
      stead_pages_add_figure (pages, CHART_HEIGHT, stead_figure_print, figure, stead_figure_free);
      add_lines (pages, answer);
      add_day (pages, answer);
      stead_pages_add_heading (pages, _("How it is worked out"));
    }
  for (guint i = 0; i < whys->len; i++)
    stead_pages_add_why (pages, whys->pdata[i]);
  stead_pages_settle (pages);
  return pages;
}

/* --- prices and costs ---------------------------------------------------------------------- */

static SteadPages *
begin (const SteadImprint *imprint,
       const char         *title)
{
  SteadPages *pages = stead_pages_new (imprint, title, NULL);

  stead_pages_add_title (pages, title);
  return pages;
}

void
stead_paper_add_left_out (SteadPages *pages,
                          GPtrArray  *names)
{
  for (guint i = 0; i < names->len; i++)
    {
      /* Translators: a product that stands in no list of prices. */
      g_autofree char *text = g_strdup_printf (_("%s: a cost, a price or a plan is missing."), (const char *) names->pdata[i]);

      stead_pages_add_note (pages, text);
    }
}

static void
end (SteadPages          *pages,
     const SteadTogether *answer)
{
  stead_paper_add_left_out (pages, answer->missing);
  if (answer->lines->len == 0 && answer->missing->len == 0)
    stead_pages_add_text (pages, _("Nothing is sold yet. Make a product in Price."));
  stead_pages_settle (pages);
}

static char *
price_text (const SteadTogether     *answer,
            const SteadTogetherLine *line)
{
  g_autofree char *cents = money (answer, line->price_cents);

  return g_strdup_printf (C_("price of a unit", "%s %s"), cents, stead_words_per_unit (line->pack));
}

/* For customers: no word of costs. */
SteadPages *
stead_price_list_paper_new (SteadStore               *store,
                            const char               *of,
                            const SteadPaperOptions  *options,
                            GError                  **error)
{
  const SteadPagesColumn columns[] = {
    { C_("column of products", "Product"), STEAD_ALIGN_LEFT, 1 },
    { C_("column of products", "Price"), STEAD_ALIGN_RIGHT, 1 },
  };
  g_autoptr(SteadImprint) imprint = stead_imprint_new (store, error);
  g_autoptr(SteadTogether) answer = imprint == NULL ? NULL : read_answer (store, options, error);
  SteadPages *pages;

  if (answer == NULL)
    return NULL;
  pages = begin (imprint, _("Price list"));
  if (answer->lines->len > 0)
    stead_pages_add_table (pages, columns, G_N_ELEMENTS (columns));
  for (guint i = 0; i < answer->lines->len; i++)
    {
      const SteadTogetherLine *line = answer->lines->pdata[i];
      g_autofree char *price = price_text (answer, line);

      stead_pages_add_row (pages, STEAD_ROW_PLAIN, STEAD_PAGES_NO_KEY, (const char *[]) { line->name, price });
    }
  g_ptr_array_set_size (answer->missing, answer->lines->len > 0 ? 0 : (int) answer->missing->len);
  end (pages, answer);
  return pages;
}

static void
add_costs (SteadPages          *pages,
           const SteadTogether *answer)
{
  const SteadPagesColumn columns[] = {
    { C_("column of products", "Product"), STEAD_ALIGN_LEFT, 1 },
    { C_("column of products", "Cost of one"), STEAD_ALIGN_RIGHT, 0.5 },
    { C_("column of products", "Price"), STEAD_ALIGN_RIGHT, 0.7 },
    { C_("column of products", "Left of one"), STEAD_ALIGN_RIGHT, 0.5 },
    { C_("column of products", "Markup"), STEAD_ALIGN_RIGHT, 0.4 },
    { C_("column of products", "Margin"), STEAD_ALIGN_RIGHT, 0.4 },
  };

  stead_pages_add_table (pages, columns, G_N_ELEMENTS (columns));
  for (guint i = 0; i < answer->lines->len; i++)
    {
      const SteadTogetherLine *line = answer->lines->pdata[i];
      g_autofree char *price = price_text (answer, line);
      g_autofree char *cost = money (answer, line->unit_cents);
      g_autofree char *left = money (answer, line->margin_cents);
      g_autofree char *markup = share (line->unit_cents > 0 ? line->margin_cents / line->unit_cents : NAN);
      g_autofree char *margin = share (line->margin_frac);

      stead_pages_add_row (pages, STEAD_ROW_PLAIN, STEAD_PAGES_NO_KEY,
                           (const char *[]) { line->name, cost, price, left, markup, margin });
    }
  stead_pages_add_note (pages, _("Markup is what is left of one, as a share of its cost; margin is the same, as a share of its price. "
                                 "Costs are without unpaid labor and without the costs of a sale day."));
}

SteadPages *
stead_costs_paper_new (SteadStore               *store,
                       const char               *of,
                       const SteadPaperOptions  *options,
                       GError                  **error)
{
  g_autoptr(SteadImprint) imprint = stead_imprint_new (store, error);
  g_autoptr(SteadTogether) answer = imprint == NULL ? NULL : read_answer (store, options, error);
  SteadPages *pages;

  if (answer == NULL)
    return NULL;
  pages = begin (imprint, _("Costs and prices of all products"));
  if (answer->lines->len > 0)
    add_costs (pages, answer);
  end (pages, answer);
  return pages;
}
