/* stead-what-if-paper.c - the scenarios of a product side by side, and what matters most. */
#include "config.h"

#include "core/stead-money.h"
#include "paper/stead-paper-private.h"
#include "paper/stead-price-figure.h"

#include <glib/gi18n-lib.h>
#include <math.h>

static char *
money (const SteadWhatIf *answer,
       double             cents)
{
  return stead_money_format (stead_money_round (cents), answer->price->cost->farm->currency);
}

/* --- scenarios ------------------------------------------------------------------------- */

static void
add_scenario (SteadPages          *pages,
              const SteadWhatIf   *answer,
              const SteadScenario *scenario)
{
  SteadPack pack = answer->price->cost->product->pack;
  SteadCvpFigures figures;
  SteadCvp cvp;
  g_autofree char *price = NULL, *cost = NULL, *sold = NULL, *even = NULL, *left = NULL;

  stead_what_if_figures (answer, scenario, &cvp, &figures);
  price = money (answer, cvp.price_cents);
  cost = money (answer, cvp.variable_cents);
  sold = stead_words_units (pack, cvp.planned_units);
  even = figures.even_whole_units < 0 ? g_strdup (_("never")) : stead_words_units (pack, (double) figures.even_whole_units);
  left = money (answer, figures.profit_cents);
  stead_pages_add_row (pages, STEAD_ROW_PLAIN, STEAD_PAGES_NO_KEY,
                       (const char *[]) { scenario != NULL ? scenario->name : _("As the farm has it"), price, cost, sold, even,
                                          left });
}

static void
add_scenarios (SteadPages        *pages,
               const SteadWhatIf *answer)
{
  const SteadPagesColumn columns[] = {
    { C_("column of scenarios", "Scenario"), STEAD_ALIGN_LEFT, 1 },
    { C_("column of scenarios", "Price"), STEAD_ALIGN_RIGHT, 0.5 },
    { C_("column of scenarios", "Cost of one"), STEAD_ALIGN_RIGHT, 0.5 },
    { C_("column of scenarios", "Sold"), STEAD_ALIGN_RIGHT, 0.5 },
    { C_("column of scenarios", "Break-even"), STEAD_ALIGN_RIGHT, 0.5 },
    { C_("column of scenarios", "Left"), STEAD_ALIGN_RIGHT, 0.5 },
  };

  stead_pages_add_heading (pages, _("Scenarios beside the farm's own figures"));
  stead_pages_add_table (pages, columns, G_N_ELEMENTS (columns));
  add_scenario (pages, answer, NULL);
  for (guint i = 0; i < answer->scenarios->len; i++)
    add_scenario (pages, answer, answer->scenarios->pdata[i]);
  if (answer->scenarios->len == 0)
    stead_pages_add_note (pages, _("No scenario is kept yet. Turn the handles under “What if” in Price and keep one."));
}

/* --- what matters most ------------------------------------------------------------------- */

static void
add_swings (SteadPages        *pages,
            const SteadWhatIf *answer)
{
  const SteadPagesColumn columns[] = {
    { C_("column of scenarios", "What changes"), STEAD_ALIGN_LEFT, 1 },
    { C_("column of scenarios", "Down to"), STEAD_ALIGN_RIGHT, 0.5 },
    { C_("column of scenarios", "Then left"), STEAD_ALIGN_RIGHT, 0.5 },
    { C_("column of scenarios", "Up to"), STEAD_ALIGN_RIGHT, 0.5 },
    { C_("column of scenarios", "Then left"), STEAD_ALIGN_RIGHT, 0.5 },
    { C_("column of scenarios", "Apart"), STEAD_ALIGN_RIGHT, 0.5 },
  };

  stead_pages_add_table (pages, columns, G_N_ELEMENTS (columns));
  for (int i = 0; i < answer->n_swings; i++)
    {
      const SteadSwing *swing = &answer->swings[i];
      g_autofree char *low_at = stead_what_if_text (answer, swing->assumption, swing->low);
      g_autofree char *high_at = stead_what_if_text (answer, swing->assumption, swing->high);
      g_autofree char *low = money (answer, swing->low_cents);
      g_autofree char *high = money (answer, swing->high_cents);
      g_autofree char *apart = money (answer, fabs (swing->high_cents - swing->low_cents));

      stead_pages_add_row (pages, STEAD_ROW_PLAIN, STEAD_PAGES_NO_KEY,
                           (const char *[]) { stead_what_if_name (answer, swing->assumption), low_at, low, high_at, high,
                                              apart });
    }
}

static SteadWhatIf *
read_answer (SteadStore               *store,
             const char               *of,
             const SteadPaperOptions  *options,
             GError                  **error)
{
  gint64 product_id;
  SteadPeriod period;

  if (!stead_paper_find_product (store, of, options, &product_id, &period, error))
    return NULL;
  return stead_what_if_new (store, product_id, period, error);
}

SteadPages *
stead_what_if_paper_new (SteadStore               *store,
                         const char               *of,
                         const SteadPaperOptions  *options,
                         GError                  **error)
{
  g_autoptr(SteadImprint) imprint = stead_imprint_new (store, error);
  SteadWhatIf *answer = imprint == NULL ? NULL : read_answer (store, of, options, error);
  g_autoptr(GPtrArray) whys = NULL;
  g_autofree char *title = NULL, *period = NULL;
  SteadFigure *figure;
  SteadPages *pages;

  if (answer == NULL)
    return NULL;
  /* Translators: title of a page; %s is a product. */
  title = g_strdup_printf (_("%s: scenarios compared"), answer->price->cost->product->name);
  period = stead_paper_period (answer->price->cost);
  whys = stead_what_if_whys (answer);
  pages = stead_pages_new (imprint, title, period);
  stead_pages_add_title (pages, title);
  stead_pages_add_lead (pages, answer->matters);
  add_scenarios (pages, answer);
  figure = stead_swing_figure_new (answer);
  if (figure != NULL)
    {
      stead_pages_add_heading (pages, _("What matters most"));
      stead_pages_add_figure (pages, stead_swing_figure_height (answer), stead_figure_print, figure, stead_figure_free);
      add_swings (pages, answer);
    }
  stead_pages_add_heading (pages, _("How it is worked out"));
  for (guint i = 0; i < whys->len; i++)
    stead_pages_add_why (pages, whys->pdata[i]);
  if (figure != NULL)
    stead_figure_own (figure, answer, (GDestroyNotify) stead_what_if_free);
  else
    stead_what_if_free (answer);
  stead_pages_settle (pages);
  return pages;
}
