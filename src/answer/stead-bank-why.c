/* stead-bank-why.c - a statement beside the cash book, worked out. */
#include "config.h"

#include "answer/stead-bank-why.h"

#include "answer/stead-sum-private.h"
#include "answer/stead-words-private.h"
#include "core/stead-money.h"

#include <glib/gi18n-lib.h>

#define BANK_CHECK N_("Bank reconciliation: OpenStax, Principles of Accounting, vol. 1, section 8.6.")

static SteadWhy *
bank_why (const SteadBankCheck *check,
          const char           *currency)
{
  GString *sum = g_string_new (NULL);

  stead_sum_add (sum, check->bank_cents, currency);
  stead_sum_add (sum, check->in_transit_cents, currency);
  stead_sum_take (sum, check->outstanding_cents, currency);
  if (check->bank_error_cents != 0)
    stead_sum_add (sum, check->bank_error_cents, currency);
  stead_sum_total (sum, stead_bank_side_cents (check), currency);
  return stead_why_new (g_strdup (_("What the statement comes to")),
                        _("What the statement says is there + what came in by the cash book and is not on it yet − what went out and "
                          "is not on it yet."),
                        g_string_free (sum, FALSE), _(BANK_CHECK));
}

static SteadWhy *
book_why (const SteadBankCheck *check,
          const char           *currency)
{
  GString *sum = g_string_new (NULL);

  stead_sum_add (sum, check->book_cents, currency);
  stead_sum_add (sum, check->additions_cents, currency);
  stead_sum_take (sum, check->deductions_cents, currency);
  stead_sum_total (sum, stead_book_side_cents (check), currency);
  return stead_why_new (g_strdup (_("What the book comes to")),
                        _("What the cash book has in the account on that day + what came in by the statement and is not in the book − "
                          "what went out by it and is not in the book, such as fees."),
                        g_string_free (sum, FALSE), _(BANK_CHECK));
}

static SteadWhy *
apart_why (const SteadBankCheck *check,
           const char           *currency)
{
  gint64 bank = stead_bank_side_cents (check), book = stead_book_side_cents (check);
  GString *sum = g_string_new (NULL);

  stead_sum_add (sum, bank, currency);
  stead_sum_take (sum, book, currency);
  stead_sum_total (sum, bank - book, currency);
  return stead_why_new (g_strdup (_("How far they are apart")),
                        _("Side of the statement − side of the book. While it is not zero, a line is missing, is there twice or has "
                          "another amount."),
                        g_string_free (sum, FALSE), _(BANK_CHECK));
}

GPtrArray *
stead_bank_check_whys (const SteadBankCheck *check,
                       const char           *currency)
{
  GPtrArray *whys = stead_whys_new ();

  g_return_val_if_fail (check != NULL && currency != NULL, whys);
  g_ptr_array_add (whys, bank_why (check, currency));
  g_ptr_array_add (whys, book_why (check, currency));
  g_ptr_array_add (whys, apart_why (check, currency));
  return whys;
}
