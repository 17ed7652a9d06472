/* stead-cash-say.c - what money is there and what moved it, in a sentence, and the cautions beside it. */
#include "config.h"

#include "answer/stead-cash-private.h"
#include "answer/stead-cash-words.h"
#include "answer/stead-words-private.h"
#include "core/stead-money.h"

#include <glib/gi18n-lib.h>

/* Of what needs a look, so many are told with the cautions; the list has all. */
#define TOLD 4

static char *
money (const SteadCashAnswer *self,
       gint64                 cents)
{
  return stead_money_format (cents, self->farm->currency);
}

/* With one account chosen, it alone is told of, as the lines are. */
static char *
stand_of (const SteadCashAnswer *self)
{
  const SteadAccountState *one = stead_cash_answer_state (self, self->account_id);
  g_autofree char *name = one != NULL ? g_markup_escape_text (one->account->name, -1) : NULL;
  g_autofree char *cents = money (self, one != NULL ? one->cents : self->total_cents);
  gint64 restricted = one != NULL ? one->restricted_cents : self->restricted_cents;
  g_autofree char *kept = money (self, restricted);

  if (one != NULL && restricted != 0)
    /* Translators: the name of an account, an amount of money, one of it. */
    return g_strdup_printf (_("In %s there is <b>%s</b>, of which %s is for one purpose only."), name, cents, kept);
  if (one != NULL)
    /* Translators: the name of an account, an amount of money. */
    return g_strdup_printf (_("In %s there is <b>%s</b>."), name, cents);
  if (restricted != 0)
    /* Translators: an amount of money, one of it. */
    return g_strdup_printf (_("There is <b>%s</b>, of which %s is for one purpose only."), cents, kept);
  /* Translators: an amount of money. */
  return g_strdup_printf (_("There is <b>%s</b>."), cents);
}

/* What moves brought into the lines that are listed, less what they took; of all accounts it is 0. */
static gint64
moved_cents (const SteadCashAnswer *self,
             guint                 *out_n)
{
  gint64 cents = 0;

  *out_n = 0;
  for (guint i = 0; i < self->lines->len; i++)
    {
      const SteadCashLine *line = self->lines->pdata[i];

      if (line->category != STEAD_CASH_TRANSFER)
        continue;
      cents += line->cents;
      (*out_n)++;
    }
  return cents;
}

/* A move between the farm's own places is neither money that came in nor money that went out, but it is not nothing. */
static char *
flow_of (const SteadCashAnswer *self)
{
  guint n_moves;
  gint64 moved = moved_cents (self, &n_moves);
  g_autofree char *from = stead_day_format (self->from, STEAD_DAY_STYLE_MEDIUM);
  g_autofree char *in = money (self, self->in_cents);
  g_autofree char *out = money (self, self->out_cents);
  g_autofree char *net = money (self, ABS (moved));

  if (moved > 0)
    /* Translators: a day, three amounts of money. */
    return g_strdup_printf (_("Since %s, %s came in, %s went out, and %s more was moved here from other accounts than to "
                              "them."), from, in, out, net);
  if (moved < 0)
    /* Translators: a day, three amounts of money. */
    return g_strdup_printf (_("Since %s, %s came in, %s went out, and %s more was moved to other accounts than here from "
                              "them."), from, in, out, net);
  if (n_moves > 0 && self->in_cents == 0 && self->out_cents == 0)
    /* Translators: a day. */
    return g_strdup_printf (_("Since %s, money was only moved from one place to another; none came in or went out."), from);
  /* Translators: a day, two amounts of money. */
  return g_strdup_printf (_("Since %s, %s came in and %s went out."), from, in, out);
}

char *
stead_cash_answer_say (const SteadCashAnswer *self)
{
  g_autofree char *stand = NULL;
  g_autofree char *flow = NULL;

  if (self->accounts->len == 0)
    return g_strdup (_("The cash book begins with an account: a till box, the school activity account."));
  stand = stand_of (self);
  flow = flow_of (self);
  return g_strdup_printf ("%s %s", stand, flow);
}

char *
stead_cash_answer_warn (const SteadCashAnswer *self)
{
  g_autoptr(GString) text = g_string_new (NULL);

  for (guint i = 0; i < self->looks->len && i < TOLD; i++)
    stead_words_add (text, ((const SteadCashLook *) self->looks->pdata[i])->text);
  if (self->looks->len > TOLD)
    {
      guint more = self->looks->len - TOLD;
      g_autofree char *rest = g_strdup_printf (ngettext ("%u more thing in the cash book needs a look.",
                                                         "%u more things in the cash book need a look.", more), more);

      stead_words_add (text, rest);
    }
  if (self->n_unpaid > 0)
    {
      g_autofree char *cents = money (self, self->unpaid_cents);
      g_autofree char *unpaid = g_strdup_printf (ngettext ("%u receipt of %s has no payment in the cash book yet.",
                                                           "%u receipts of %s have no payment in the cash book yet.",
                                                           self->n_unpaid), self->n_unpaid, cents);

      stead_words_add (text, unpaid);
    }
  stead_words_add (text, stead_cash_words_caution ());
  return g_string_free (g_steal_pointer (&text), FALSE);
}
