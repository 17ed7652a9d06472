/* stead-statement-balance.c - what the farm owns and owes, at first and at the end. */
#include "config.h"

#include "answer/stead-statement-private.h"

#include <glib/gi18n-lib.h>

static gboolean
take_account (const SteadStatementMaker *self,
              const SteadPosting        *posting,
              gint64                     account)
{
  return posting->head == STEAD_HEAD_CASH && posting->key == account;
}

/* Fills one line with the keys of @head that are owed at the end, or paid ahead. */
static void
fill_owed (SteadStatementMaker *self,
           SteadStatementLine  *line,
           SteadHead            head,
           int                  sign)
{
  g_autoptr(GHashTable) sums = stead_maker_sums (self, head);
  GHashTableIter iter;
  gpointer value;

  g_hash_table_iter_init (&iter, sums);
  while (g_hash_table_iter_next (&iter, NULL, &value))
    {
      const SteadSumPair *pair = value;

      line->before_cents += sign * pair->before > 0 ? pair->before : 0;
      line->cents += sign * pair->end > 0 ? pair->end : 0;
    }
  for (guint i = 0; i < self->postings->len; i++)
    {
      const SteadPosting *posting = &g_array_index (self->postings, SteadPosting, i);
      const SteadSumPair *pair = posting->head == head ? g_hash_table_lookup (sums, &posting->key) : NULL;

      if (pair != NULL && sign * pair->end > 0)
        stead_maker_entry (line, posting, 1);
    }
}

static const SteadHead owed_heads[] = { STEAD_HEAD_OWED_RECEIPT, STEAD_HEAD_OWED_BATCH, STEAD_HEAD_OWED_ASSET };

static SteadSumPair
finish_owed (SteadStatementMaker *self,
             SteadStatementLine  *line)
{
  SteadSumPair pair = { line->before_cents, line->cents };

  if (pair.before == 0 && pair.end == 0)
    g_ptr_array_remove_index (self->answer->lines, self->answer->lines->len - 1);
  return pair;
}

static SteadSumPair
add_ahead (SteadStatementMaker *self)
{
  SteadStatementLine *line = stead_maker_line (self, STEAD_STATEMENT_BALANCE, "ahead", _("Paid ahead"));

  for (gsize i = 0; i < G_N_ELEMENTS (owed_heads); i++)
    fill_owed (self, line, owed_heads[i], 1);
  return finish_owed (self, line);
}

static SteadSumPair
add_owed (SteadStatementMaker *self,
          SteadHead            head,
          const char          *name,
          const char          *label)
{
  SteadStatementLine *line = stead_maker_line (self, STEAD_STATEMENT_BALANCE, name, label);

  fill_owed (self, line, head, -1);
  return finish_owed (self, line);
}

static SteadSumPair
plus (SteadSumPair a,
      SteadSumPair b)
{
  return (SteadSumPair) { a.before + b.before, a.end + b.end };
}

static gboolean
add_accounts (SteadStore          *store,
              SteadStatementMaker *self,
              SteadSumPair        *sum,
              GError             **error)
{
  g_autoptr(GPtrArray) accounts = stead_account_repo_list (store, TRUE, error);

  for (guint i = 0; accounts != NULL && i < accounts->len; i++)
    {
      const SteadAccount *account = accounts->pdata[i];
      g_autofree char *name = g_strdup_printf ("account_%" G_GINT64_FORMAT, account->id);

      *sum = plus (*sum, stead_maker_stand (self, name, account->name, take_account, account->id));
    }
  return accounts != NULL;
}

/* Money of funds stands apart: it is part of the accounts above. */
static gboolean
add_funds (SteadStore          *store,
           SteadStatementMaker *self,
           GError             **error)
{
  g_autoptr(GPtrArray) funds = stead_fund_repo_list (store, TRUE, error);

  for (guint i = 0; funds != NULL && i < funds->len; i++)
    {
      const SteadFund *fund = funds->pdata[i];
      g_autofree char *name = g_strdup_printf ("fund_%" G_GINT64_FORMAT, fund->id);
      /* Translators: %s is the name of a fund. */
      g_autofree char *label = g_strdup_printf (_("Of it for one purpose only: %s"), fund->name);
      SteadStatementLine *line;
      gint64 before, end;

      if (!stead_cash_repo_balance (store, 0, fund->id, self->answer->from - 1, &before, error) ||
          !stead_cash_repo_balance (store, 0, fund->id, self->answer->to, &end, error))
        return FALSE;
      self->answer->restricted_end += end;
      if (before == 0 && end == 0)
        continue;
      line = stead_maker_line (self, STEAD_STATEMENT_BALANCE, name, label);
      line->before_cents = before;
      line->cents = end;
      line->is_apart = TRUE;
    }
  return funds != NULL;
}

static SteadSumPair
add_head (SteadStatementMaker *self,
          SteadHead            head,
          const char          *name,
          const char          *label)
{
  return stead_maker_stand (self, name, label, stead_take_head, head);
}

static SteadSumPair
add_goods (SteadStatementMaker *self)
{
  SteadSumPair sum = stead_maker_stand (self, "stock", _("In the store room"), stead_take_stock, 0);

  sum = plus (sum, stead_maker_stand (self, "growing", _("Growing: fish, crops and kitchen"), stead_take_growing, 0));
  return plus (sum, stead_maker_stand (self, "flocks", _("Flocks"), stead_take_growing, 1));
}

gboolean
stead_statement_add_balance (SteadStore          *store,
                             SteadStatementMaker *self,
                             GError             **error)
{
  SteadStatementAnswer *answer = self->answer;
  const SteadStatementPart part = STEAD_STATEMENT_BALANCE;
  SteadSumPair owned = { 0, 0 }, owed;

  if (answer->enterprise_id != 0)
    {
      add_goods (self);
      return TRUE;
    }
  if (!add_accounts (store, self, &owned, error) || !add_funds (store, self, error))
    return FALSE;
  owned = plus (owned, add_head (self, STEAD_HEAD_TRANSIT, "transit", _("On its way between accounts")));
  owned = plus (owned, add_head (self, STEAD_HEAD_DUE, "due", _("To be paid to the farm for things sold")));
  owned = plus (owned, add_ahead (self));
  owned = plus (owned, add_goods (self));
  owned = plus (owned, add_head (self, STEAD_HEAD_THINGS, "things", _("Things that last")));
  stead_maker_total (self, part, "owned", _("All that the farm owns"), owned.before, owned.end);
  owed = add_owed (self, STEAD_HEAD_OWED_RECEIPT, "owed_receipts", _("Receipts that no line of the cash book has paid"));
  owed = plus (owed, add_owed (self, STEAD_HEAD_OWED_BATCH, "owed_batches", _("Animals, seed and plants not paid for")));
  owed = plus (owed, add_owed (self, STEAD_HEAD_OWED_ASSET, "owed_things", _("Things that last, not paid for")));
  owed = plus (owed, add_head (self, STEAD_HEAD_LOAN, "loans", _("Loans")));
  stead_maker_total (self, part, "owed", _("All that it owes"), owed.before, owed.end);
  answer->owned_before = owned.before;
  answer->owned_end = owned.end;
  answer->owed_before = -owed.before;
  answer->owed_end = -owed.end;
  answer->worth_before = owned.before + owed.before;
  answer->worth_end = owned.end + owed.end;
  stead_maker_total (self, part, "worth", _("Worth of the farm"), answer->worth_before, answer->worth_end);
  return TRUE;
}
