/* stead-cash-words.c - the words of the cash book, of accounts and of shares. */
#include "config.h"

#include "answer/stead-cash-words.h"

#include <glib/gi18n-lib.h>

const char *
stead_cash_words_category (SteadCashCategory category)
{
  switch (category)
    {
    case STEAD_CASH_SALES: return _("Sales");
    case STEAD_CASH_REFUND: return _("Given back to customers");
    case STEAD_CASH_OTHER_IN: return _("Other money in");
    case STEAD_CASH_SUPPLIES: return _("Feed and supplies");
    case STEAD_CASH_ANIMALS: return _("Animals, seed and plants");
    case STEAD_CASH_ENERGY: return _("Power, water and fuel");
    case STEAD_CASH_FEES: return _("Market tables, permits and tests");
    case STEAD_CASH_PAY: return _("Paid work");
    case STEAD_CASH_OTHER_OUT: return _("Other costs");
    case STEAD_CASH_OVER_SHORT: return _("Over or short at a count");
    case STEAD_CASH_THING_BOUGHT: return _("Things that last, bought");
    case STEAD_CASH_THING_SOLD: return _("Things that last, sold");
    case STEAD_CASH_PUT_IN: return _("Own money put in");
    case STEAD_CASH_GRANT: return _("Grants and gifts of money");
    case STEAD_CASH_LOAN: return _("Borrowed");
    case STEAD_CASH_LOAN_PAID: return _("Loans paid back");
    case STEAD_CASH_TAKEN_OUT: return _("Taken out for the group");
    case STEAD_CASH_TRANSFER: return _("Moved to another account or fund");
    default: g_return_val_if_reached ("");
    }
}

const char *
stead_cash_words_activity (SteadCashActivity activity)
{
  switch (activity)
    {
    case STEAD_CASH_ACTIVITY_OPERATING: return _("Running the farm");
    case STEAD_CASH_ACTIVITY_INVESTING: return _("Things that last");
    case STEAD_CASH_ACTIVITY_FINANCING: return _("Money put in and taken out");
    case STEAD_CASH_ACTIVITY_NONE: return _("Moved within the farm");
    default: g_return_val_if_reached ("");
    }
}

const char *
stead_cash_words_account (SteadAccountKind kind)
{
  switch (kind)
    {
    case STEAD_ACCOUNT_TILL: return _("Till box");
    case STEAD_ACCOUNT_ACTIVITY: return _("School activity account");
    case STEAD_ACCOUNT_BANK: return _("Bank account");
    default: g_return_val_if_reached ("");
    }
}

const char *
stead_cash_words_share_by (SteadShareBy share_by)
{
  switch (share_by)
    {
    case STEAD_SHARE_PARTS: return _("By fixed parts");
    case STEAD_SHARE_DAYS: return _("By days");
    case STEAD_SHARE_SPACE: return _("By space");
    case STEAD_SHARE_USE: return _("By use");
    default: g_return_val_if_reached ("");
    }
}

const char *
stead_cash_words_caution (void)
{
  return _("The money itself goes through the school’s books and its bookkeeper; this is the farm’s own record. "
           "Two people count together and sign. Deposit all of it, unchanged, by the next banking day or sooner: "
           "schools set their own deadlines, so ask your bookkeeper for the written rule.");
}

const gint64 *
stead_cash_faces (const char *currency,
                  gsize      *n_faces)
{
  static const gint64 dollar[] = { 10000, 5000, 2000, 1000, 500, 200, 100, 50, 25, 10, 5, 1 };
  static const gint64 round[] = { 50000, 20000, 10000, 5000, 2000, 1000, 500, 200, 100, 50, 20, 10, 5, 2, 1 };
  gboolean is_dollar;

  g_return_val_if_fail (currency != NULL && n_faces != NULL, NULL);
  is_dollar = g_str_equal (currency, "USD");
  *n_faces = is_dollar ? G_N_ELEMENTS (dollar) : G_N_ELEMENTS (round);
  return is_dollar ? dollar : round;
}
