/* stead-cash-count-why.c - money that two people count, worked out while they type. */
#include "config.h"

#include "answer/stead-cash-count-why.h"

#include "answer/stead-sale-private.h"
#include "answer/stead-sum-private.h"
#include "answer/stead-words-private.h"
#include "core/stead-money.h"
#include "store/stead-cash-repo.h"

#include <glib/gi18n-lib.h>

#define NO_SOURCE N_("Common practice, no source.")
#define OVER_SHORT N_("Petty cash, and cash over and short: OpenStax, Principles of Accounting, vol. 1, section 8.4.")

/* "4 × $5.00 + 3 × $1.00 = $23.00" */
static SteadWhy *
counted_why (const GArray *pieces,
             gint64        total_cents,
             const char   *currency)
{
  GString *sum = g_string_new (NULL);

  for (guint i = 0; i < pieces->len; i++)
    {
      const SteadCashPiece *piece = &g_array_index (pieces, SteadCashPiece, i);
      g_autofree char *number = stead_number_format ((double) piece->pieces, 0);
      g_autofree char *face = stead_money_format (piece->face_cents, currency);
      g_autofree char *term = g_strdup_printf ("%s × %s", number, face);

      stead_sum_add_term (sum, term);
    }
  if (pieces->len == 0)
    stead_sum_add (sum, 0, currency);
  stead_sum_total (sum, total_cents, currency);
  return stead_why_new (g_strdup (_("What was counted")), _("Number of each coin and bill × what one is worth, added up."),
                        g_string_free (sum, FALSE), _(NO_SOURCE));
}

static SteadWhy *
over_why (gint64      counted_cents,
          gint64      expected_cents,
          gint64      over_cents,
          const char *formula,
          const char *currency)
{
  GString *sum = g_string_new (NULL);

  stead_sum_add (sum, counted_cents, currency);
  stead_sum_take (sum, expected_cents, currency);
  stead_sum_total (sum, over_cents, currency);
  return stead_why_new (g_strdup (_("Over or short")), formula, g_string_free (sum, FALSE), _(OVER_SHORT));
}

/* --- an account ---------------------------------------------------------------------------- */

/* The evening before, or what it opened with that day; then the lines of the day.  %NULL: it cannot be read. */
static char *
book_worked (SteadStore           *store,
             const SteadCashCount *count,
             const char           *currency)
{
  g_autoptr(GPtrArray) lines = NULL;
  SteadCashFilter filter;
  gint64 before = 0, in = 0, out = 0;
  GString *sum;

  stead_cash_filter_init (&filter);
  filter.from = filter.to = count->day;
  filter.account_id = count->account_id;
  lines = stead_cash_repo_list (store, &filter, NULL);
  if (lines == NULL || !stead_cash_repo_balance (store, count->account_id, STEAD_FUND_ANY, count->day - 1, &before, NULL))
    return NULL;
  for (guint i = 0; i < lines->len; i++)
    {
      const SteadCashLine *line = lines->pdata[i];

      in += MAX (line->cents, 0);
      out += MAX (-line->cents, 0);
    }
  sum = g_string_new (NULL);
  stead_sum_add (sum, before, currency);
  if (count->expected_cents != before + in - out)
    stead_sum_add (sum, count->expected_cents - before - in + out, currency);
  stead_sum_add (sum, in, currency);
  stead_sum_take (sum, out, currency);
  stead_sum_total (sum, count->expected_cents, currency);
  return g_string_free (sum, FALSE);
}

static SteadWhy *
book_why (SteadStore           *store,
          const SteadCashCount *count,
          const char           *currency)
{
  g_autofree char *expected = stead_money_format (count->expected_cents, currency);
  /* Translators: an amount of money. */
  char *worked = count->id != 0 ? g_strdup_printf (_("%s, as it was when the count was saved"), expected)
                 : book_worked (store, count, currency);

  if (worked == NULL)
    return NULL;
  return stead_why_new (g_strdup (_("What the book says")),
                        _("What was in the account the evening before, and what it opened with that day + what came in on the "
                          "day − what went out. The count’s own line is not among it."),
                        worked, _(NO_SOURCE));
}

/* Nothing is above the change while less than it was counted. */
static SteadWhy *
deposit_why (const SteadCashCount *count,
             const char           *currency)
{
  gint64 counted = stead_cash_count_total_cents (count);
  GString *sum;

  if (count->float_cents < 0 || counted < count->float_cents || counted == 0)
    return NULL;
  sum = g_string_new (NULL);
  stead_sum_add (sum, counted, currency);
  stead_sum_take (sum, count->float_cents, currency);
  stead_sum_total (sum, stead_cash_count_deposit_cents (count), currency);
  return stead_why_new (g_strdup (_("What can be taken to an account")),
                        _("Counted − what stays in the box for change: exactly what is there, neither topped up nor rounded."),
                        g_string_free (sum, FALSE), _(OVER_SHORT));
}

GPtrArray *
stead_cash_count_whys (SteadStore           *store,
                       const SteadCashCount *count,
                       gboolean              is_known,
                       const char           *currency)
{
  GPtrArray *whys = stead_whys_new ();
  gint64 counted;

  g_return_val_if_fail (STEAD_IS_STORE (store) && count != NULL && currency != NULL, whys);
  counted = stead_cash_count_total_cents (count);
  g_ptr_array_add (whys, counted_why (count->pieces, counted, currency));
  if (is_known)
    {
      stead_whys_add (whys, book_why (store, count, currency));
      g_ptr_array_add (whys, over_why (counted, count->expected_cents, stead_cash_count_over_cents (count),
                                       _("Counted − what the book says. Below zero it is short."), currency));
    }
  stead_whys_add (whys, deposit_why (count, currency));
  return whys;
}

/* --- the box of a sale ------------------------------------------------------------------------ */

static SteadWhy *
left_why (const SteadSale *sale,
          const GArray    *sums)
{
  GString *worked = g_string_new (NULL);

  for (guint i = 0; i < sale->goods->len; i++)
    {
      const SteadSaleGood *good = sale->goods->pdata[i];
      const SteadSaleSum *sum = stead_sale_sums_find (sums, good->id);
      double tallied = sum != NULL ? stead_sale_sum_tallied (sum) : 0;

      stead_sale_why_add_left (worked, good, tallied, MAX (0, stead_sale_good_brought (good) - tallied));
    }
  return stead_sale_left_why (worked);
}

GPtrArray *
stead_cash_up_whys (const SteadSale      *sale,
                    const GArray         *sums,
                    const SteadSaleTill  *till,
                    const GArray         *pieces,
                    const char           *currency)
{
  GPtrArray *whys = stead_whys_new ();

  g_return_val_if_fail (sale != NULL && sums != NULL && till != NULL && pieces != NULL && currency != NULL, whys);
  g_ptr_array_add (whys, stead_sale_box_why (till, currency));
  g_ptr_array_add (whys, counted_why (pieces, till->counted_cents, currency));
  g_ptr_array_add (whys, over_why (till->counted_cents, till->expected_cents, till->over_cents,
                                   _("Counted − what must be in the box. Below zero it is short."), currency));
  if (sale->goods->len > 0)
    g_ptr_array_add (whys, left_why (sale, sums));
  return whys;
}
