/* stead-sale-box-why.c - what a stall took and what must be in its box, while it sells and after. */
#include "config.h"

#include "answer/stead-sale-private.h"
#include "answer/stead-sum-private.h"
#include "answer/stead-words-private.h"
#include "core/stead-money.h"

#include <glib/gi18n-lib.h>

static void
add (GString             *text,
     const SteadSaleGood *good,
     const char          *worked)
{
  if (text->len > 0)
    g_string_append_c (text, '\n');
  /* Translators: the name of a product, and what is worked out for it. */
  g_string_append_printf (text, _("%1$s: %2$s"), good->name, worked);
}

void
stead_sale_why_add_taken (GString             *text,
                          const SteadSaleGood *good,
                          const SteadSaleSum  *sum,
                          double               price_cents,
                          const char          *currency)
{
  g_autofree char *sold = stead_words_units (good->pack, sum->sold);
  g_autofree char *price = stead_money_format (stead_money_round (price_cents), currency);
  g_autofree char *taken = stead_money_format (sum->takings_cents, currency);
  /* Translators: an amount of a product, the mean of its prices, money. */
  g_autofree char *worked = g_strdup_printf (_("%1$s × %2$s on average = %3$s"), sold, price, taken);

  add (text, good, worked);
}

void
stead_sale_why_add_left (GString             *text,
                         const SteadSaleGood *good,
                         double               tallied,
                         double               left)
{
  g_autofree char *brought = stead_number_format (stead_sale_good_brought (good), 2);
  g_autofree char *gone = stead_number_format (tallied, 2);
  g_autofree char *still = stead_words_units (good->pack, left);
  g_autofree char *worked = g_strdup_printf ("%s − %s = %s", brought, gone, still);

  add (text, good, worked);
}

char *
stead_sale_why_box (const SteadSaleTill *till,
                    const char          *currency)
{
  GString *sum = g_string_new (NULL);

  stead_sum_add (sum, till->float_cents, currency);
  stead_sum_add (sum, till->takings_cents, currency);
  stead_sum_take (sum, till->paid_out_cents, currency);
  stead_sum_total (sum, till->expected_cents, currency);
  return g_string_free (sum, FALSE);
}

/* What was paid ahead is money taken, yet not in the box. */
SteadWhy *
stead_sale_box_why (const SteadSaleTill *till,
                    const char          *currency)
{
  g_autofree char *box = stead_sale_why_box (till, currency);
  GString *worked = g_string_new (NULL);

  if (till->ahead_cents != 0)
    {
      stead_sum_add (worked, till->takings_cents + till->ahead_cents, currency);
      stead_sum_take (worked, till->ahead_cents, currency);
      stead_sum_total (worked, till->takings_cents, currency);
      g_string_append_c (worked, '\n');
    }
  g_string_append (worked, box);
  return stead_why_new (g_strdup (_("What must be in the box")),
                        _("Money for change + taken at the stall − paid out of the box with a slip. Taken at the stall = taken "
                          "so far − paid before the day."),
                        g_string_free (worked, FALSE),
                        _("Petty cash, and cash over and short: OpenStax, Principles of Accounting, vol. 1, section 8.4."));
}

SteadWhy *
stead_sale_left_why (GString *worked)
{
  return stead_why_new (g_strdup (_("How many are left")),
                        _("Brought − sold, tasted, given away and spoiled so far. What is ordered and not yet collected is still "
                          "among them."),
                        g_string_free (worked, FALSE), _("Common practice, no source."));
}
