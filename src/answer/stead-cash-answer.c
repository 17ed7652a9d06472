/* stead-cash-answer.c - what money is there, and what in the cash book needs a look. */
#include "config.h"

#include "answer/stead-cash-private.h"
#include "answer/stead-words-private.h"

#include "core/stead-money.h"
#include "store/stead-closing-repo.h"

#include <glib/gi18n-lib.h>

/* Costs of one amount this near may be one that was entered twice; what came in, on one
 * day only, since sales are often alike (common practice, no source). */
#define TWIN_DAYS 3

/* The next banking day is at most this far, over a weekend. */
#define DEPOSIT_DAYS 3

static void
account_state_free (gpointer data)
{
  SteadAccountState *state = data;

  stead_account_free (state->account);
  g_free (state);
}

static void
fund_state_free (gpointer data)
{
  SteadFundState *state = data;

  stead_fund_free (state->fund);
  g_free (state);
}

static void
look_free (gpointer data)
{
  SteadCashLook *look = data;

  g_free (look->text);
  g_free (look);
}

void
stead_cash_answer_free (SteadCashAnswer *self)
{
  if (self == NULL)
    return;
  g_clear_pointer (&self->farm, stead_farm_free);
  g_clear_pointer (&self->accounts, g_ptr_array_unref);
  g_clear_pointer (&self->funds, g_ptr_array_unref);
  g_clear_pointer (&self->lines, g_ptr_array_unref);
  g_clear_pointer (&self->looks, g_ptr_array_unref);
  g_free (self->sentence);
  g_free (self->caution);
  g_free (self);
}

static char *
money (const SteadCashAnswer *self,
       gint64                 cents)
{
  return stead_money_format (cents, self->farm->currency);
}

static char *
day_text (SteadDay day)
{
  return stead_day_format (day, STEAD_DAY_STYLE_MEDIUM);
}

/* Takes @text over. */
static void
look_add (SteadCashAnswer   *self,
          SteadCashLookKind  kind,
          gint64             id,
          SteadDay           day,
          char              *text)
{
  SteadCashLook *look = g_new0 (SteadCashLook, 1);

  look->kind = kind;
  look->id = id;
  look->day = day;
  look->text = text;
  g_ptr_array_add (self->looks, look);
}

/* --- what is there --------------------------------------------------------------------- */

static void
add_balances (SteadCashAnswer *self,
              GPtrArray       *balances)
{
  for (guint i = 0; i < balances->len; i++)
    {
      const SteadCashBalance *balance = balances->pdata[i];

      self->total_cents += balance->cents;
      self->restricted_cents += balance->fund_id != 0 ? balance->cents : 0;
      for (guint j = 0; j < self->accounts->len; j++)
        {
          SteadAccountState *state = self->accounts->pdata[j];

          if (state->account->id != balance->account_id)
            continue;
          state->cents += balance->cents;
          state->restricted_cents += balance->fund_id != 0 ? balance->cents : 0;
        }
      for (guint j = 0; j < self->funds->len; j++)
        if (((SteadFundState *) self->funds->pdata[j])->fund->id == balance->fund_id)
          ((SteadFundState *) self->funds->pdata[j])->cents += balance->cents;
    }
}

/* What the accounts held before the time that is shown, and opened with in it. */
static gboolean
read_before (SteadStore       *store,
             SteadCashAnswer  *self,
             GError          **error)
{
  g_autoptr(GPtrArray) balances = stead_cash_repo_balances (store, self->from - 1, error);

  for (guint i = 0; balances != NULL && i < self->accounts->len; i++)
    {
      SteadAccountState *state = self->accounts->pdata[i];

      if (state->account->opened_on >= self->from && state->account->opened_on <= self->day)
        state->opened_cents = state->account->opening_cents;
      for (guint j = 0; j < balances->len; j++)
        {
          const SteadCashBalance *balance = balances->pdata[j];

          state->before_cents += balance->account_id == state->account->id ? balance->cents : 0;
        }
    }
  return balances != NULL;
}

static gboolean
read_fund_lines (SteadStore       *store,
                 SteadCashAnswer  *self,
                 SteadFundState   *state,
                 GError          **error)
{
  SteadCashFilter filter;
  g_autoptr(GPtrArray) lines = NULL;

  stead_cash_filter_init (&filter);
  filter.to = self->day;
  filter.fund_id = state->fund->id;
  lines = stead_cash_repo_list (store, &filter, error);
  for (guint i = 0; lines != NULL && i < lines->len; i++)
    {
      const SteadCashLine *line = lines->pdata[i];

      state->in_cents += MAX (line->cents, 0);
      state->out_cents += MAX (-line->cents, 0);
    }
  return lines != NULL;
}

static gboolean
read_places (SteadStore       *store,
             SteadCashAnswer  *self,
             GError          **error)
{
  g_autoptr(GPtrArray) accounts = stead_account_repo_list (store, TRUE, error);
  g_autoptr(GPtrArray) funds = accounts != NULL ? stead_fund_repo_list (store, TRUE, error) : NULL;
  g_autoptr(GPtrArray) balances = funds != NULL ? stead_cash_repo_balances (store, self->day, error) : NULL;

  if (balances == NULL)
    return FALSE;
  while (accounts->len > 0)
    {
      SteadAccountState *state = g_new0 (SteadAccountState, 1);

      state->account = g_ptr_array_steal_index (accounts, 0);
      state->counted_on = state->agreed_to = STEAD_DAY_NONE;
      g_ptr_array_add (self->accounts, state);
    }
  while (funds->len > 0)
    {
      SteadFundState *state = g_new0 (SteadFundState, 1);

      state->fund = g_ptr_array_steal_index (funds, 0);
      g_ptr_array_add (self->funds, state);
    }
  add_balances (self, balances);
  for (guint i = self->funds->len; i > 0; i--)
    {
      SteadFundState *state = self->funds->pdata[i - 1];

      if (state->fund->closed_on != STEAD_DAY_NONE && state->cents == 0)
        g_ptr_array_remove_index (self->funds, i - 1);
      else if (!read_fund_lines (store, self, state, error))
        return FALSE;
    }
  return read_before (store, self, error);
}

SteadAccountState *
stead_cash_answer_state (const SteadCashAnswer *self,
                         gint64                 account_id)
{
  for (guint i = 0; i < self->accounts->len; i++)
    if (((SteadAccountState *) self->accounts->pdata[i])->account->id == account_id)
      return self->accounts->pdata[i];
  return NULL;
}

/* --- counts and statements ------------------------------------------------------------------ */

static void
look_at_count (SteadCashAnswer      *self,
               SteadAccountState    *state,
               const SteadCashCount *count)
{
  g_autofree char *day = day_text (count->day);
  g_autofree char *over = money (self, ABS (stead_cash_count_over_cents (count)));
  g_autofree char *deposit = NULL;

  if (stead_cash_count_is_open (count))
    look_add (self, STEAD_CASH_LOOK_COUNT_OPEN, count->id, count->day,
              /* Translators: the name of an account, a day, an amount of money. */
              g_strdup_printf (_("%s, count of %s: off by %s, and nobody wrote why yet."), state->account->name, day,
                               over));
  if (state->counted_on != STEAD_DAY_NONE)
    return;
  state->counted_on = count->day;
  if (state->account->kind != STEAD_ACCOUNT_TILL || self->day <= count->day + DEPOSIT_DAYS
      || stead_cash_count_deposit_cents (count) == 0
      || state->cents < count->float_cents + stead_cash_count_deposit_cents (count))
    return;
  deposit = money (self, stead_cash_count_deposit_cents (count));
  look_add (self, STEAD_CASH_LOOK_NOT_DEPOSITED, count->id, count->day,
            /* Translators: an amount of money, the name of an account, a day. */
            g_strdup_printf (_("%s counted in %s on %s is not deposited yet. Your school’s rule may ask for the next "
                               "banking day or sooner."), deposit, state->account->name, day));
}

static gboolean
read_counts (SteadStore       *store,
             SteadCashAnswer  *self,
             GError          **error)
{
  g_autoptr(GPtrArray) counts = stead_cash_count_repo_list (store, 0, error);

  for (guint i = 0; counts != NULL && i < counts->len; i++)
    {
      const SteadCashCount *count = counts->pdata[i];
      SteadAccountState *state = stead_cash_answer_state (self, count->account_id);

      if (state != NULL && count->day <= self->day)
        look_at_count (self, state, count);
    }
  return counts != NULL;
}

static gboolean
read_sheets (SteadStore       *store,
             SteadCashAnswer  *self,
             GError          **error)
{
  g_autoptr(GPtrArray) sheets = stead_bank_repo_sheets (store, 0, error);

  for (guint i = 0; sheets != NULL && i < sheets->len; i++)
    {
      const SteadBankSheet *sheet = sheets->pdata[i];
      SteadAccountState *state = stead_cash_answer_state (self, sheet->account_id);
      g_autofree char *day = day_text (sheet->through_day);

      if (state == NULL || sheet->through_day > self->day)
        continue;
      if (sheet->agreed_on != STEAD_DAY_NONE)
        state->agreed_to = MAX (state->agreed_to, sheet->through_day);
      else
        look_add (self, STEAD_CASH_LOOK_SHEET_OPEN, sheet->id, sheet->through_day,
                  /* Translators: the name of an account, a day. */
                  g_strdup_printf (_("%s, statement through %s: does not agree with the book yet."),
                                   state->account->name, day));
    }
  return sheets != NULL;
}

/* --- what is short or there twice ------------------------------------------------------------ */

static void
look_below_zero (SteadCashAnswer *self)
{
  for (guint i = 0; i < self->accounts->len; i++)
    {
      const SteadAccountState *state = self->accounts->pdata[i];
      g_autofree char *cents = money (self, state->cents);

      if (state->cents < 0)
        look_add (self, STEAD_CASH_LOOK_BELOW_ZERO, state->account->id, STEAD_DAY_NONE,
                  /* Translators: the name of an account, an amount of money. */
                  g_strdup_printf (_("%s stands at %s, less than nothing. A line is missing or has the wrong sign."),
                                   state->account->name, cents));
    }
  for (guint i = 0; i < self->funds->len; i++)
    {
      const SteadFundState *state = self->funds->pdata[i];
      g_autofree char *cents = money (self, -state->cents);

      if (state->cents < 0)
        look_add (self, STEAD_CASH_LOOK_FUND_SHORT, state->fund->id, STEAD_DAY_NONE,
                  /* Translators: the name of a fund, an amount of money. */
                  g_strdup_printf (_("%s: %s more was spent than is in this fund."), state->fund->name, cents));
    }
}

static gboolean
read_receipts (SteadStore       *store,
               SteadCashAnswer  *self,
               GError          **error)
{
  g_autoptr(GPtrArray) off = stead_cash_repo_receipts_off (store, error);

  for (guint i = 0; off != NULL && i < off->len; i++)
    {
      const SteadReceiptPaid *paid = off->pdata[i];
      g_autofree char *day = day_text (paid->day);
      g_autofree char *more = money (self, paid->paid_cents - paid->total_cents);

      if (paid->day > self->day)
        continue;
      if (paid->paid_cents > paid->total_cents)
        look_add (self, STEAD_CASH_LOOK_PAID_TWICE, paid->receipt_id, paid->day,
                  paid->n_lines > 1
                  /* Translators: a day, an amount of money. */
                  ? g_strdup_printf (_("The receipt of %s was paid more than once: %s too much."), day, more)
                  : g_strdup_printf (_("More was paid for the receipt of %s than it says: %s too much."), day, more));
      else
        {
          self->n_unpaid++;
          self->unpaid_cents += paid->total_cents - paid->paid_cents;
          self->unpaid_total_cents += paid->total_cents;
        }
    }
  return off != NULL;
}

/* Of two alike the later one is named. */
static void
look_for_twins (SteadCashAnswer *self)
{
  for (guint i = 0; i < self->lines->len; i++)
    {
      const SteadCashLine *line = self->lines->pdata[i];

      for (guint j = i; j > 0; j--)
        {
          const SteadCashLine *other = self->lines->pdata[j - 1];
          g_autofree char *day = NULL;
          g_autofree char *cents = NULL;

          if (line->day - other->day > (line->cents > 0 ? 0 : TWIN_DAYS))
            break;
          if (other->cents != line->cents || other->account_id != line->account_id
              || other->category != line->category || g_strcmp0 (other->who, line->who) != 0
              || g_strcmp0 (other->reference, line->reference) != 0 || other->receipt_id != line->receipt_id
              || other->product_id != line->product_id || line->category == STEAD_CASH_TRANSFER
              || line->corrects_id != 0 || other->corrects_id != 0
              || line->corrected_by != 0 || other->corrected_by != 0)
            continue;
          day = day_text (line->day);
          cents = money (self, line->cents);
          look_add (self, STEAD_CASH_LOOK_TWIN, line->id, line->day,
                    /* Translators: a day, an amount of money. */
                    g_strdup_printf (_("The line of %s over %s may be there twice."), day, cents));
          break;
        }
    }
}

static gboolean
read_lines (SteadStore       *store,
            SteadCashAnswer  *self,
            gint64            account_id,
            GError          **error)
{
  SteadCashFilter filter;

  stead_cash_filter_init (&filter);
  filter.from = self->from;
  filter.to = self->day;
  filter.account_id = account_id;
  self->lines = stead_cash_repo_list (store, &filter, error);
  for (guint i = 0; self->lines != NULL && i < self->lines->len; i++)
    {
      const SteadCashLine *line = self->lines->pdata[i];

      if (line->category == STEAD_CASH_TRANSFER)
        continue;
      self->in_cents += MAX (line->cents, 0);
      self->out_cents += MAX (-line->cents, 0);
    }
  return self->lines != NULL;
}

/* --- the answer ---------------------------------------------------------------------------------- */

SteadCashAnswer *
stead_cash_answer_new (SteadStore  *store,
                       SteadDay     from,
                       SteadDay     to,
                       gint64       account_id,
                       GError     **error)
{
  g_autoptr(SteadCashAnswer) self = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  g_return_val_if_fail (from != STEAD_DAY_NONE && to >= from, NULL);
  self = g_new0 (SteadCashAnswer, 1);
  self->day = to;
  self->from = from;
  self->account_id = account_id;
  self->accounts = g_ptr_array_new_with_free_func (account_state_free);
  self->funds = g_ptr_array_new_with_free_func (fund_state_free);
  self->looks = g_ptr_array_new_with_free_func (look_free);
  self->farm = stead_farm_repo_get (store, error);
  if (self->farm == NULL
      || !stead_closing_repo_last (store, &self->closed_to, error)
      || !read_places (store, self, error)
      || !read_counts (store, self, error)
      || !read_sheets (store, self, error)
      || !read_receipts (store, self, error)
      || !read_lines (store, self, account_id, error))
    return NULL;
  look_below_zero (self);
  look_for_twins (self);
  self->sentence = stead_cash_answer_say (self);
  self->caution = stead_cash_answer_warn (self);
  return g_steal_pointer (&self);
}

/* The day on which the first account was opened; @fallback without one. */
static gboolean
first_opening (SteadStore  *store,
               SteadDay     fallback,
               SteadDay    *out,
               GError     **error)
{
  g_autoptr(GPtrArray) accounts = stead_account_repo_list (store, TRUE, error);

  *out = accounts != NULL && accounts->len > 0 ? G_MAXINT32 : fallback;
  for (guint i = 0; accounts != NULL && i < accounts->len; i++)
    *out = MIN (*out, ((const SteadAccount *) accounts->pdata[i])->opened_on);
  return accounts != NULL;
}

gboolean
stead_cash_period_start (SteadStore   *store,
                         SteadPeriod   period,
                         SteadDay     *out_from,
                         GError      **error)
{
  g_autoptr(SteadFarm) farm = NULL;
  SteadDay today, year;

  g_return_val_if_fail (STEAD_IS_STORE (store) && out_from != NULL, FALSE);
  farm = stead_farm_repo_get (store, error);
  if (farm == NULL)
    return FALSE;
  today = stead_store_get_today (store);
  year = stead_school_year_start (today, farm->school_year_month, farm->school_year_mday);
  switch (period)
    {
    case STEAD_PERIOD_12_WEEKS: *out_from = today - 83; return TRUE;
    case STEAD_PERIOD_4_WEEKS: *out_from = today - 27; return TRUE;
    case STEAD_PERIOD_WHOLE_BATCH: return first_opening (store, year, out_from, error);
    case STEAD_PERIOD_SCHOOL_YEAR:
    default: *out_from = year; return TRUE;
    }
}
