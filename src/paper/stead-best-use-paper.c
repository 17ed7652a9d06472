/* stead-best-use-paper.c - the best use of what is scarce. */
#include "config.h"

#include "core/stead-money.h"
#include "paper/stead-paper-private.h"
#include "paper/stead-price-figure.h"

#include <glib/gi18n-lib.h>
#include <math.h>

static char *
money (const SteadBestUse *answer,
       double              cents)
{
  return stead_money_format (stead_money_round (cents), answer->currency);
}

static void
add_lines (SteadPages         *pages,
           const SteadBestUse *answer)
{
  const SteadPagesColumn columns[] = {
    { C_("column of products", "Product"), STEAD_ALIGN_LEFT, 1 },
    { C_("column of products", "Left of one"), STEAD_ALIGN_RIGHT, 0.7 },
    { C_("column of products", "Planned"), STEAD_ALIGN_RIGHT, 0.5 },
    { C_("column of products", "At most"), STEAD_ALIGN_RIGHT, 0.5 },
    { C_("column of products", "Best use"), STEAD_ALIGN_RIGHT, 0.5 },
    { C_("column of products", "Brings"), STEAD_ALIGN_RIGHT, 0.5 },
    { C_("column of products", "Same plan at prices"), STEAD_ALIGN_RIGHT, 0.8 },
  };
  g_autofree char *best = money (answer, answer->best_cents);

  stead_pages_add_heading (pages, _("What to make of it"));
  stead_pages_add_table (pages, columns, G_N_ELEMENTS (columns));
  for (guint i = 0; i < answer->lines->len; i++)
    {
      const SteadBestUseLine *line = answer->lines->pdata[i];
      g_autofree char *left = money (answer, line->price_cents - line->own_cents);
      g_autofree char *planned = stead_words_units (line->pack, line->planned);
      g_autofree char *most = stead_words_units (line->pack, line->most);
      g_autofree char *use = stead_words_units (line->pack, line->best);
      g_autofree char *prices = stead_best_use_prices (answer, line);
      g_autofree char *brings = money (answer, line->best * (line->price_cents - line->own_cents));

      stead_pages_add_row (pages, STEAD_ROW_PLAIN, STEAD_PAGES_NO_KEY,
                           (const char *[]) { line->name, left, planned, most, use, brings, prices });
    }
  stead_pages_add_row (pages, STEAD_ROW_TOTAL, STEAD_PAGES_NO_KEY,
                       (const char *[]) { _("Together"), NULL, NULL, NULL, NULL, best, NULL });
}

static void
add_scarce (SteadPages         *pages,
            const SteadBestUse *answer)
{
  const SteadPagesColumn columns[] = {
    { C_("column of products", "What there is"), STEAD_ALIGN_LEFT, 1 },
    { C_("column of products", "How much"), STEAD_ALIGN_RIGHT, 0.5 },
    { C_("column of products", "Stays over"), STEAD_ALIGN_RIGHT, 0.5 },
  };
  g_auto(GStrv) sentences = g_strsplit (answer->scarce_text, "\n", -1);

  stead_pages_add_heading (pages, _("What there is for the day"));
  stead_pages_add_table (pages, columns, G_N_ELEMENTS (columns));
  for (guint i = 0; i < answer->scarce->len; i++)
    {
      const SteadScarce *scarce = answer->scarce->pdata[i];
      g_autofree char *amount = stead_scarce_amount (scarce, scarce->amount);
      g_autofree char *unused = stead_scarce_amount (scarce, MAX (0, scarce->unused));

      stead_pages_add_row (pages, STEAD_ROW_PLAIN, STEAD_PAGES_NO_KEY, (const char *[]) { scarce->name, amount, unused });
    }
  stead_pages_add_heading (pages, _("What one more of it is worth"));
  for (int i = 0; sentences[i] != NULL; i++)
    stead_pages_add_text (pages, sentences[i]);
  stead_pages_add_note (pages, _("Feed, and work that nobody is paid for, are spent either way. So what counts here is "
                                 "the price less what is bought for it: packaging, and what the kitchen adds. "
                                 "What one more is worth holds for a plan that may make a part of a unit."));
}

static void
add_whys (SteadPages         *pages,
          const SteadBestUse *answer)
{
  g_autoptr(GPtrArray) whys = stead_best_use_whys (answer);

  for (guint i = 0; i < whys->len; i++)
    stead_pages_add_why (pages, whys->pdata[i]);
}

SteadPages *
stead_best_use_paper_new (SteadStore               *store,
                          const char               *of,
                          const SteadPaperOptions  *options,
                          GError                  **error)
{
  g_autoptr(SteadImprint) imprint = stead_imprint_new (store, error);
  SteadBestUse *answer = imprint == NULL ? NULL
    : stead_best_use_new (store, options == NULL ? STEAD_PERIOD_12_WEEKS : options->period, error);
  SteadFigure *figure;
  SteadPages *pages;

  if (answer == NULL)
    return NULL;
  pages = stead_pages_new (imprint, _("Best use of what is scarce"), NULL);
  stead_pages_add_title (pages, _("Best use of what is scarce"));
  stead_pages_add_lead (pages, answer->sentence);
  if (answer->advice != NULL)
    stead_pages_add_text (pages, answer->advice);
  figure = stead_best_use_figure_new (answer);
  if (figure == NULL)
    {
      stead_paper_add_left_out (pages, answer->missing);
      stead_best_use_free (answer);
    }
  else
    {
      stead_figure_own (figure, answer, (GDestroyNotify) stead_best_use_free);
      stead_pages_add_figure (pages, stead_best_use_figure_height (answer), stead_figure_print, figure, stead_figure_free);
      add_lines (pages, answer);
      add_scarce (pages, answer);
      add_whys (pages, answer);
      stead_paper_add_left_out (pages, answer->missing);
    }
  stead_pages_settle (pages);
  return pages;
}
