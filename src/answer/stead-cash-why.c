/* stead-cash-why.c - how the sums of the cash book come about, worked with the farm's numbers. */
#include "config.h"

#include "answer/stead-cash-answer.h"
#include "answer/stead-cash-words.h"
#include "answer/stead-sum-private.h"
#include "answer/stead-words-private.h"
#include "core/stead-money.h"

#include <glib/gi18n-lib.h>

#define NO_SOURCE N_("Common practice, no source.")

/* @worked: (transfer full) */
static SteadWhy *
why_new (const char *title,
         const char *formula,
         GString    *worked,
         const char *source)
{
  return stead_why_new (g_strdup (title), formula, g_string_free (worked, FALSE), source);
}

/* "Till box: $20.00 + $45.00 − $8.00 = $57.00"; @sum: (transfer full) */
static void
add_line (GString    *text,
          const char *name,
          GString    *sum)
{
  if (text->len > 0)
    g_string_append_c (text, '\n');
  /* Translators: an account, a fund or what money was for, and a sum that is worked out. */
  g_string_append_printf (text, _("%1$s: %2$s"), name, sum->str);
  g_string_free (sum, TRUE);
}

/* --- what is there ------------------------------------------------------------------------ */

static GString *
account_sum (const SteadCashAnswer   *self,
             const SteadAccountState *state)
{
  const char *currency = self->farm->currency;
  GString *sum = g_string_new (NULL);
  gint64 in = 0, out = 0;

  for (guint i = 0; i < self->lines->len; i++)
    {
      const SteadCashLine *line = self->lines->pdata[i];

      if (line->account_id != state->account->id)
        continue;
      in += MAX (line->cents, 0);
      out += MAX (-line->cents, 0);
    }
  stead_sum_add (sum, state->before_cents + state->opened_cents, currency);
  stead_sum_add (sum, in, currency);
  stead_sum_take (sum, out, currency);
  stead_sum_total (sum, state->cents, currency);
  return sum;
}

static SteadWhy *
there_why (const SteadCashAnswer *self)
{
  GString *worked = g_string_new (NULL), *all = g_string_new (NULL);
  guint n = 0;

  for (guint i = 0; i < self->accounts->len; i++)
    {
      const SteadAccountState *state = self->accounts->pdata[i];

      if (self->account_id != 0 && self->account_id != state->account->id)
        continue;
      add_line (worked, state->account->name, account_sum (self, state));
      stead_sum_add (all, state->cents, self->farm->currency);
      n++;
    }
  stead_sum_total (all, self->total_cents, self->farm->currency);
  if (n > 1)
    g_string_append_printf (worked, _("\nTogether: %s"), all->str);
  g_string_free (all, TRUE);
  return why_new (_("What is there"),
                  _("What was there before, or an account opened with + what came in − what went out, in the time that is shown. "
                    "Money that was moved goes out of one account and into another."), worked, _(NO_SOURCE));
}

/* --- what came in and went out ------------------------------------------------------------- */

/* "Sales $45.00 + Grant $100.00" */
static void
add_flow (const SteadCashAnswer *self,
          GString               *sum,
          SteadCashCategory      category,
          gint64                 cents)
{
  g_autofree char *text = stead_money_format (cents, self->farm->currency);

  g_string_append_printf (sum, "%s%s %s", sum->len > 0 ? " + " : "", stead_cash_words_category (category), text);
}

/* By what it was for: what came in (@sign 1), or what went out (-1). */
static GString *
flow_sum (const SteadCashAnswer *self,
          int                    sign)
{
  GString *sum = g_string_new (NULL);

  for (int category = 0; category < STEAD_N_CASH_CATEGORIES; category++)
    {
      gint64 cents = 0;

      for (guint i = 0; i < self->lines->len; i++)
        {
          const SteadCashLine *line = self->lines->pdata[i];

          if ((int) line->category == category && category != STEAD_CASH_TRANSFER)
            cents += MAX (sign * line->cents, 0);
        }
      if (cents == 0)
        continue;
      add_flow (self, sum, (SteadCashCategory) category, cents);
    }
  if (sum->len == 0)
    stead_sum_add (sum, 0, self->farm->currency);
  stead_sum_total (sum, sign > 0 ? self->in_cents : self->out_cents, self->farm->currency);
  return sum;
}

static SteadWhy *
flow_why (const SteadCashAnswer *self)
{
  GString *worked = g_string_new (NULL);

  add_line (worked, C_("money", "In"), flow_sum (self, 1));
  add_line (worked, C_("money", "Out"), flow_sum (self, -1));
  return why_new (_("What came in and went out"),
                  _("All lines of the time that is shown, by what they were for. Money that was moved from one account or fund to "
                    "another is in neither."), worked, _(NO_SOURCE));
}

/* The newest line stands for all. */
static SteadWhy *
balance_why (const SteadCashAnswer *self)
{
  const SteadCashLine *line = self->lines->pdata[self->lines->len - 1];
  GString *worked = g_string_new (NULL), *sum = g_string_new (NULL);
  g_autofree char *name = g_strdup_printf (_("Line %u"), (guint) line->id);

  stead_sum_add (sum, line->balance_cents - line->cents, self->farm->currency);
  stead_sum_add (sum, line->cents, self->farm->currency);
  stead_sum_total (sum, line->balance_cents, self->farm->currency);
  add_line (worked, name, sum);
  return why_new (_("The balance of a line"),
                  _("What was there before the line + what came in, or − what went out; with one account chosen, in that account. "
                    "What an account opens with is there from its first day on."), worked, _(NO_SOURCE));
}

/* --- what is kept apart ---------------------------------------------------------------------- */

static SteadWhy *
funds_why (const SteadCashAnswer *self)
{
  GString *worked = g_string_new (NULL), *all = g_string_new (NULL);

  for (guint i = 0; i < self->funds->len; i++)
    {
      const SteadFundState *state = self->funds->pdata[i];
      GString *sum = g_string_new (NULL);

      stead_sum_add (sum, state->in_cents, self->farm->currency);
      stead_sum_take (sum, state->out_cents, self->farm->currency);
      stead_sum_total (sum, state->cents, self->farm->currency);
      add_line (worked, state->fund->name, sum);
      stead_sum_add (all, state->cents, self->farm->currency);
    }
  stead_sum_total (all, self->restricted_cents, self->farm->currency);
  if (self->funds->len > 1)
    g_string_append_printf (worked, _("\nTogether: %s"), all->str);
  g_string_free (all, TRUE);
  return why_new (_("What is kept apart"),
                  _("All that came into the fund − all that went out of it, in any account. It may be spent for its purpose only."),
                  worked, _("Restricted gifts are kept apart by fund: common practice, no source."));
}

static SteadWhy *
unpaid_why (const SteadCashAnswer *self)
{
  GString *sum = g_string_new (NULL);

  stead_sum_add (sum, self->unpaid_total_cents, self->farm->currency);
  stead_sum_add (sum, self->unpaid_cents - self->unpaid_total_cents, self->farm->currency);
  stead_sum_total (sum, self->unpaid_cents, self->farm->currency);
  return why_new (_("Receipts without a payment"),
                  _("What the receipts say − what lines of the cash book have paid for them, of all that are not paid in full."), sum,
                  _(NO_SOURCE));
}

GPtrArray *
stead_cash_answer_whys (const SteadCashAnswer *self)
{
  GPtrArray *whys = stead_whys_new ();

  g_return_val_if_fail (self != NULL && self->lines != NULL, whys);
  if (self->accounts->len == 0)
    return whys;
  g_ptr_array_add (whys, there_why (self));
  if (self->lines->len > 0)
    {
      g_ptr_array_add (whys, flow_why (self));
      g_ptr_array_add (whys, balance_why (self));
    }
  if (self->funds->len > 0)
    g_ptr_array_add (whys, funds_why (self));
  if (self->n_unpaid > 0)
    g_ptr_array_add (whys, unpaid_why (self));
  return whys;
}
