/* stead-choice-paper.c - which price: markup and margin, and what people paid before. */
#include "config.h"

#include "core/stead-money.h"
#include "paper/stead-paper-private.h"
#include "paper/stead-price-figure.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#define CHART_HEIGHT 220.0

static char *
money (const SteadPriceChoice *answer,
       double                  cents)
{
  return stead_money_format (stead_money_round (cents), answer->price->cost->farm->currency);
}

static void
add_price (SteadPages             *pages,
           const SteadPriceChoice *answer,
           const char             *name,
           double                  cents)
{
  double left = cents - answer->unit_cents;
  g_autofree char *price = money (answer, cents);
  g_autofree char *leaves = money (answer, left);
  g_autofree char *markup = answer->unit_cents > 0 ? stead_words_percent (left / answer->unit_cents, 0) : g_strdup ("–");
  g_autofree char *margin = cents > 0 ? stead_words_percent (left / cents, 0) : g_strdup ("–");

  stead_pages_add_row (pages, STEAD_ROW_PLAIN, STEAD_PAGES_NO_KEY, (const char *[]) { name, price, leaves, markup, margin });
}

static void
add_prices (SteadPages             *pages,
            const SteadPriceChoice *answer)
{
  const SteadPagesColumn columns[] = {
    { NULL, STEAD_ALIGN_LEFT, 1 },
    { C_("column of prices", "Price"), STEAD_ALIGN_RIGHT, 0.5 },
    { C_("column of prices", "Left of one"), STEAD_ALIGN_RIGHT, 0.5 },
    { C_("column of prices", "Markup"), STEAD_ALIGN_RIGHT, 0.5 },
    { C_("column of prices", "Margin"), STEAD_ALIGN_RIGHT, 0.5 },
  };

  stead_pages_add_heading (pages, _("Prices side by side"));
  stead_pages_add_table (pages, columns, G_N_ELEMENTS (columns));
  add_price (pages, answer, _("The price now"), answer->price->plan.price_cents);
  if (answer->easy_below != (gint64) answer->price->plan.price_cents)
    add_price (pages, answer, _("Easy change, below"), (double) answer->easy_below);
  if (answer->easy_above != (gint64) answer->price->plan.price_cents)
    add_price (pages, answer, _("Easy change, above"), (double) answer->easy_above);
  if (answer->least_cents > 0)
    add_price (pages, answer, _("Pays just for what another one uses up"), ceil (answer->least_cents - 1e-6));
  if (answer->has_line)
    add_price (pages, answer, _("Earns most, by what was sold"), answer->best_cents);
  stead_pages_add_text (pages, answer->same_text);
  stead_pages_add_text (pages, answer->bundle_text);
}

static void
add_trials (SteadPages             *pages,
            const SteadPriceChoice *answer)
{
  const SteadPagesColumn columns[] = {
    { C_("column of prices", "Day"), STEAD_ALIGN_LEFT, 1 },
    { C_("column of prices", "Price"), STEAD_ALIGN_RIGHT, 0.5 },
    { C_("column of prices", "Sold"), STEAD_ALIGN_RIGHT, 0.5 },
    { C_("column of prices", "Taken in"), STEAD_ALIGN_RIGHT, 0.5 },
  };

  if (answer->trials->len == 0)
    return;
  stead_pages_add_heading (pages, _("What people paid before"));
  stead_pages_add_table (pages, columns, G_N_ELEMENTS (columns));
  for (guint i = 0; i < answer->trials->len; i++)
    {
      const SteadPriceTrial *trial = answer->trials->pdata[i];
      g_autofree char *day = stead_day_format (trial->day, STEAD_DAY_STYLE_MEDIUM);
      g_autofree char *price = money (answer, (double) trial->price_cents);
      g_autofree char *units = stead_words_units (answer->price->cost->product->pack, trial->units);
      g_autofree char *taken = money (answer, (double) trial->price_cents * trial->units);

      stead_pages_add_row (pages, STEAD_ROW_PLAIN, STEAD_PAGES_NO_KEY, (const char *[]) { day, price, units, taken });
    }
}

static SteadPriceChoice *
read_answer (SteadStore               *store,
             const char               *of,
             const SteadPaperOptions  *options,
             GError                  **error)
{
  gint64 product_id;
  SteadPeriod period;

  if (!stead_paper_find_product (store, of, options, &product_id, &period, error))
    return NULL;
  return stead_price_choice_new (store, product_id, period, error);
}

SteadPages *
stead_choice_paper_new (SteadStore               *store,
                        const char               *of,
                        const SteadPaperOptions  *options,
                        GError                  **error)
{
  g_autoptr(SteadImprint) imprint = stead_imprint_new (store, error);
  SteadPriceChoice *answer = imprint == NULL ? NULL : read_answer (store, of, options, error);
  g_autoptr(GPtrArray) whys = NULL;
  g_autofree char *title = NULL, *period = NULL;
  SteadFigure *figure;
  SteadPages *pages;

  if (answer == NULL)
    return NULL;
  /* Translators: title of a page; %s is a product. */
  title = g_strdup_printf (_("%s: which price"), answer->price->cost->product->name);
  period = stead_paper_period (answer->price->cost);
  whys = stead_price_choice_whys (answer);
  pages = stead_pages_new (imprint, title, period);
  stead_pages_add_title (pages, title);
  stead_pages_add_lead (pages, answer->sentence);
  if (answer->advice != NULL)
    stead_pages_add_text (pages, answer->advice);
  figure = stead_choice_figure_new (answer);
  if (figure != NULL)
    stead_pages_add_figure (pages, CHART_HEIGHT, stead_figure_print, figure, stead_figure_free);
  add_prices (pages, answer);
  add_trials (pages, answer);
  stead_pages_add_heading (pages, _("How it is worked out"));
  for (guint i = 0; i < whys->len; i++)
    stead_pages_add_why (pages, whys->pdata[i]);
  if (figure != NULL)
    stead_figure_own (figure, answer, (GDestroyNotify) stead_price_choice_free);
  else
    stead_price_choice_free (answer);
  stead_pages_settle (pages);
  return pages;
}
