/* stead-build-buy-why.c - what a thing of a bill comes to at each supplier, and what a receipt was planned to cost. */
#include "config.h"

#include "answer/stead-build-buy-why.h"

#include "answer/stead-words-private.h"
#include "core/stead-money.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#define NO_SOURCE N_("Common practice, no source.")

gint64
stead_build_price_cents (gint64 price_cents,
                         double packs)
{
  return stead_money_round ((double) price_cents * packs);
}

/* As many digits as there are, so that it can be worked out again. */
static char *
count_text (double packs)
{
  return stead_number_format (packs, 3);
}

/* A line more: "Hill Lumber: 19 × $4.20 = $79.80" */
static void
add_cost (GString    *worked,
          const char *name,
          double      packs,
          gint64      price_cents,
          const char *currency)
{
  g_autofree char *number = count_text (packs), *price = stead_money_format (price_cents, currency);
  g_autofree char *all = stead_money_format (stead_build_price_cents (price_cents, packs), currency);

  if (worked->len > 0)
    g_string_append_c (worked, '\n');
  /* Translators: a supplier or a thing; a number × money = money. */
  g_string_append_printf (worked, _("%1$s: %2$s × %3$s = %4$s"), name, number, price, all);
}

/* %NULL: nothing was worked out.  @worked: (transfer full) */
static SteadWhy *
why_of (const char *title,
        const char *formula,
        GString    *worked)
{
  if (worked->len > 0)
    return stead_why_new (g_strdup (title), formula, g_string_free (worked, FALSE), _(NO_SOURCE));
  g_string_free (worked, TRUE);
  return NULL;
}

/* "450 ÷ 500 = 0.9, rounded up: 1" */
static SteadWhy *
packs_why (const SteadBuildRow *row)
{
  g_autofree char *quantity = count_text (row->quantity), *pack = count_text (row->pack);
  g_autofree char *share = count_text (row->quantity / row->pack), *packs = count_text (row->packs);

  if (row->pack == 1)
    return NULL;
  return stead_why_new (g_strdup (_("How many are bought")), _("How many are needed ÷ how many are sold together, rounded up."),
                        /* Translators: four numbers. */
                        g_strdup_printf (_("%1$s ÷ %2$s = %3$s, rounded up: %4$s"), quantity, pack, share, packs), _(NO_SOURCE));
}

GPtrArray *
stead_build_quotes_whys (const SteadBuildRow *row,
                         const GPtrArray     *quotes,
                         const char          *currency)
{
  GPtrArray *whys = stead_whys_new ();
  GString *worked;

  g_return_val_if_fail (row != NULL && quotes != NULL && currency != NULL, whys);
  if (quotes->len == 0)
    return whys;
  worked = g_string_new (NULL);
  for (guint i = 0; i < quotes->len; i++)
    {
      const SteadBuildQuote *quote = quotes->pdata[i];

      add_cost (worked, quote->supplier, row->packs, quote->price_cents, currency);
    }
  stead_whys_add (whys, why_of (_("What all of it costs"),
                                _("How many the build takes × price of one, at each supplier, the lowest first. Tax and delivery are "
                                  "not in it: ask about both."), worked));
  stead_whys_add (whys, packs_why (row));
  return whys;
}

GPtrArray *
stead_build_buying_whys (const GArray *things,
                         const char   *currency)
{
  GPtrArray *whys = stead_whys_new ();
  GString *planned, *open;

  g_return_val_if_fail (things != NULL && currency != NULL, whys);
  planned = g_string_new (NULL);
  open = g_string_new (NULL);
  for (guint i = 0; i < things->len; i++)
    {
      const SteadBuildBuying *thing = &g_array_index (things, SteadBuildBuying, i);
      g_autofree char *all = count_text (thing->all), *came = count_text (thing->came);
      g_autofree char *left = count_text (thing->all - thing->came);

      if (thing->price_cents >= 0)
        add_cost (planned, thing->name, thing->packs, thing->price_cents, currency);
      if (thing->came > 0)
        /* Translators: a thing; a number − a number = a number. */
        g_string_append_printf (open, _("%1$s%2$s: %3$s − %4$s = %5$s"), open->len > 0 ? "\n" : "", thing->name, all, came, left);
    }
  stead_whys_add (whys, why_of (_("What it was planned to cost"),
                                _("How many came × planned price of one; of what no number is typed, how many are still to come. A "
                                  "cost that is left empty is this one."), planned));
  stead_whys_add (whys, why_of (_("Still to come"), _("How many the build takes − how many came already."), open));
  return whys;
}
