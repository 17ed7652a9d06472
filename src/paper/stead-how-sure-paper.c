/* stead-how-sure-paper.c - how sure it is that the season pays. */
#include "config.h"

#include "core/stead-money.h"
#include "paper/stead-paper-private.h"
#include "paper/stead-price-figure.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#define CHART_HEIGHT 190.0

static char *
money (const SteadHowSure *answer,
       double              cents)
{
  return stead_money_format (stead_money_round (cents), answer->currency);
}

static void
add_figure (SteadPages *pages,
            const char *name,
            const char *value)
{
  stead_pages_add_row (pages, STEAD_ROW_PLAIN, STEAD_PAGES_NO_KEY, (const char *[]) { name, value });
}

static void
add_figures (SteadPages         *pages,
             const SteadHowSure *answer)
{
  static const SteadPagesColumn columns[] = { { NULL, STEAD_ALIGN_LEFT, 1 }, { NULL, STEAD_ALIGN_RIGHT, 0.6 } };
  g_autofree char *days = stead_words_days (answer->n_days);
  g_autofree char *likely = money (answer, answer->likely_cents);
  g_autofree char *middle = money (answer, answer->band.likely);
  g_autofree char *low = money (answer, answer->band.low);
  g_autofree char *high = money (answer, answer->band.high);
  g_autofree char *loss = stead_how_sure_chance (answer->loss_frac);
  g_autofree char *target = money (answer, answer->target_cents);
  g_autofree char *reach = stead_how_sure_chance (answer->target_frac);
  g_autofree char *reach_name = g_strdup_printf (_("Chance to reach %s"), target);

  stead_pages_add_heading (pages, _("The figures"));
  stead_pages_add_table (pages, columns, G_N_ELEMENTS (columns));
  add_figure (pages, _("Sale days"), days);
  add_figure (pages, _("With everything as likely as can be"), likely);
  add_figure (pages, _("Half of the seasons leave more than"), middle);
  add_figure (pages, _("One season in ten leaves less than"), low);
  add_figure (pages, _("One season in ten leaves more than"), high);
  add_figure (pages, _("Chance to lose money"), loss);
  if (answer->target_cents > 0)
    add_figure (pages, reach_name, reach);
}

static void
add_ranges (SteadPages         *pages,
            const SteadHowSure *answer)
{
  const SteadPagesColumn columns[] = {
    { C_("column of ranges", "Range"), STEAD_ALIGN_LEFT, 1 },
    { C_("column of ranges", "Lowest"), STEAD_ALIGN_RIGHT, 0 },
    { C_("column of ranges", "Likeliest"), STEAD_ALIGN_RIGHT, 0 },
    { C_("column of ranges", "Highest"), STEAD_ALIGN_RIGHT, 0 },
    { C_("column of ranges", "Where from"), STEAD_ALIGN_LEFT, 0.8 },
  };

  stead_pages_add_heading (pages, _("What is not sure"));
  stead_pages_add_table (pages, columns, G_N_ELEMENTS (columns));
  for (guint i = 0; i < answer->ranges->len; i++)
    {
      const SteadRange *range = answer->ranges->pdata[i];
      g_autofree char *low = stead_range_text (answer, range, range->value.low);
      g_autofree char *likely = stead_range_text (answer, range, range->value.likely);
      g_autofree char *high = stead_range_text (answer, range, range->value.high);

      stead_pages_add_row (pages, STEAD_ROW_PLAIN, STEAD_PAGES_NO_KEY,
                           (const char *[]) { range->name, low, likely, high, range->from });
    }
}

SteadPages *
stead_how_sure_paper_new (SteadStore               *store,
                          const char               *of,
                          const SteadPaperOptions  *options,
                          GError                  **error)
{
  g_autoptr(SteadImprint) imprint = stead_imprint_new (store, error);
  SteadHowSure *answer = imprint == NULL ? NULL
    : stead_how_sure_new (store, options == NULL ? STEAD_PERIOD_12_WEEKS : options->period, error);
  g_autoptr(GPtrArray) whys = NULL;
  SteadFigure *figure;
  SteadPages *pages;

  if (answer == NULL)
    return NULL;
  pages = stead_pages_new (imprint, _("How sure the season is"), NULL);
  stead_pages_add_title (pages, _("How sure the season is"));
  if (!answer->solved)
    {
      stead_pages_add_text (pages, _("Nothing is sold yet. Make a product in Price."));
      stead_how_sure_free (answer);
      stead_pages_settle (pages);
      return pages;
    }
  whys = stead_how_sure_whys (answer);
  figure = stead_spread_figure_new (answer);
  stead_figure_own (figure, answer, (GDestroyNotify) stead_how_sure_free);
  stead_pages_add_lead (pages, answer->sentence);
  if (answer->advice != NULL)
    stead_pages_add_text (pages, answer->advice);
  stead_pages_add_figure (pages, CHART_HEIGHT, stead_figure_print, figure, stead_figure_free);
  add_figures (pages, answer);
  add_ranges (pages, answer);
  stead_pages_add_heading (pages, _("Which range matters most"));
  stead_pages_add_figure (pages, stead_range_figure_height (answer), stead_figure_print, stead_range_figure_new (answer),
                          stead_figure_free);
  stead_pages_add_heading (pages, _("How it is worked out"));
  for (guint i = 0; i < whys->len; i++)
    stead_pages_add_why (pages, whys->pdata[i]);
  stead_paper_add_left_out (pages, answer->missing);
  stead_pages_settle (pages);
  return pages;
}
