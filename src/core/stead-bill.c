/* stead-bill.c - the bill of materials of a build: what is bought and what is given. */
#include "config.h"

#include "core/stead-bill.h"
#include "core/stead-core-error.h"
#include "core/stead-money.h"

#include <glib/gi18n-lib.h>

/* A line beyond ten billion is a slip of the pen. */
#define MOST_CENTS 1e12
#define MOST_LINES 10000

static gboolean
is_line (const SteadBillLine *line)
{
  return line->quantity >= 0 && line->price_cents >= 0 && line->quantity * line->price_cents <= MOST_CENTS;
}

static gboolean
is_share (double frac)
{
  return frac >= 0 && frac <= 1;
}

gint64
stead_bill_line_cents (const SteadBillLine *line)
{
  g_return_val_if_fail (line != NULL && is_line (line), 0);
  return stead_money_round (line->quantity * line->price_cents);
}

gboolean
stead_bill_sum (const SteadBillLine  *lines,
                gsize                 n,
                double                tax_frac,
                double                contingency_frac,
                SteadBill            *out,
                GError              **error)
{
  SteadBill sum = { 0 };
  gint64 taxed_cents = 0;

  g_return_val_if_fail ((lines != NULL || n == 0) && n <= MOST_LINES, FALSE);
  g_return_val_if_fail (out != NULL, FALSE);

  if (!is_share (tax_frac) || !is_share (contingency_frac))
    {
      g_set_error_literal (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_RANGE,
                           _("Sales tax and contingency are 0 to 100 percent. Check both."));
      return FALSE;
    }
  for (gsize i = 0; i < n; i++)
    {
      gint64 cents;

      if (!is_line (&lines[i]))
        {
          g_set_error (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_RANGE,
                       _("Line %d of the bill has a quantity or a price that cannot be. Check it."),
                       (int) i + 1);
          return FALSE;
        }
      cents = stead_bill_line_cents (&lines[i]);
      if (lines[i].given)
        sum.given_cents += cents;
      else
        sum.bought_cents += cents;
      taxed_cents += lines[i].taxed && !lines[i].given ? cents : 0;
    }
  sum.tax_cents = stead_money_round ((double) taxed_cents * tax_frac);
  sum.contingency_cents = stead_money_round ((double) sum.bought_cents * contingency_frac);
  sum.cash_cents = sum.bought_cents + sum.tax_cents + sum.contingency_cents;
  sum.worth_cents = sum.cash_cents + sum.given_cents;
  *out = sum;
  return TRUE;
}
