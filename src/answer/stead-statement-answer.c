/* stead-statement-answer.c - the statements of a period. */
#include "config.h"

#include "answer/stead-cash-words.h"
#include "answer/stead-statement-private.h"
#include "answer/stead-words-private.h"

#include "core/stead-money.h"
#include "store/stead-store-error.h"

#include <glib/gi18n-lib.h>

void
stead_statement_answer_free (SteadStatementAnswer *self)
{
  if (self == NULL)
    return;
  g_clear_pointer (&self->farm, stead_farm_free);
  g_clear_pointer (&self->lines, g_ptr_array_unref);
  g_free (self->enterprise_name);
  g_free (self->sentence);
  g_free (self->caution);
  g_free (self);
}

const SteadStatementLine *
stead_statement_answer_line (const SteadStatementAnswer *self,
                             SteadStatementPart          part,
                             const char                 *name)
{
  g_return_val_if_fail (self != NULL && name != NULL, NULL);
  for (guint i = 0; i < self->lines->len; i++)
    {
      const SteadStatementLine *line = self->lines->pdata[i];

      if (line->part == part && g_str_equal (line->name, name))
        return line;
    }
  return NULL;
}

const char *
stead_statement_part_title (SteadStatementPart part)
{
  switch (part)
    {
    case STEAD_STATEMENT_CASH: return _("Cash flow");
    case STEAD_STATEMENT_INCOME: return _("Income");
    case STEAD_STATEMENT_BALANCE: return _("Balance sheet");
    case STEAD_STATEMENT_WORTH: return _("Change in worth");
    default: g_return_val_if_reached ("");
    }
}

/* --- in words ------------------------------------------------------------------------ */

static char *
farm_sentence (const SteadStatementAnswer *self,
               const char                 *from,
               const char                 *to)
{
  const char *currency = self->farm->currency;
  g_autofree char *cash = stead_money_format (ABS (self->operating), currency);
  g_autofree char *net = stead_money_format (ABS (self->net), currency);
  g_autofree char *end = stead_money_format (self->worth_end, currency);

  if (!self->has_accounts)
    return g_strdup (_("The cash book has no account yet, so these statements show costs and debts alone: no sale and no "
                       "payment. Begin with the till box and the school activity account."));
  if (self->net >= 0 && self->operating >= 0)
    /* Translators: two days, then three amounts of money; so in the three below. */
    return g_strdup_printf (_("From %s to %s running the farm brought in <b>%s</b>. It earned <b>%s</b> and is worth "
                              "<b>%s</b>."), from, to, cash, net, end);
  if (self->net >= 0)
    return g_strdup_printf (_("From %s to %s running the farm took <b>%s</b> of its money. It earned <b>%s</b> and is "
                              "worth <b>%s</b>."), from, to, cash, net, end);
  if (self->operating >= 0)
    return g_strdup_printf (_("From %s to %s running the farm brought in <b>%s</b>. It lost <b>%s</b> and is worth "
                              "<b>%s</b>."), from, to, cash, net, end);
  return g_strdup_printf (_("From %s to %s running the farm took <b>%s</b> of its money. It lost <b>%s</b> and is "
                            "worth <b>%s</b>."), from, to, cash, net, end);
}

static char *
enterprise_sentence (const SteadStatementAnswer *self,
                     const char                 *from,
                     const char                 *to)
{
  g_autofree char *sales = stead_money_format (self->sales, self->farm->currency);
  g_autofree char *net = stead_money_format (ABS (self->net), self->farm->currency);

  if (self->net >= 0)
    /* Translators: the name of a part of the farm, two days, and two amounts of money. */
    return g_strdup_printf (_("%s, from %s to %s: sales of <b>%s</b>, and <b>%s</b> earned."),
                            self->enterprise_name, from, to, sales, net);
  return g_strdup_printf (_("%s, from %s to %s: sales of <b>%s</b>, and <b>%s</b> lost."),
                          self->enterprise_name, from, to, sales, net);
}

static void
add_words (SteadStatementAnswer *self)
{
  g_autofree char *from = stead_day_format (self->from, STEAD_DAY_STYLE_MEDIUM);
  g_autofree char *to = stead_day_format (self->to, STEAD_DAY_STYLE_MEDIUM);
  g_autofree char *unpaid = stead_money_format (self->unpaid_cents, self->farm->currency);
  g_autoptr(GString) caution = g_string_new (NULL);

  self->sentence = self->enterprise_id != 0 ? enterprise_sentence (self, from, to) : farm_sentence (self, from, to);
  if (self->enterprise_id != 0)
    stead_words_add (caution, _("Money, debts and things that all of the farm uses are in the statements of the whole "
                                "farm only."));
  else if (self->n_unpaid > 0)
    {
      g_autofree char *text = g_strdup_printf (ngettext ("%d receipt of %s has no payment in the cash book yet, so it "
                                                         "counts as owed. Link the line that paid it.",
                                                         "%d receipts of %s have no payment in the cash book yet, so "
                                                         "they count as owed. Link the lines that paid them.",
                                                         (gulong) self->n_unpaid), self->n_unpaid, unpaid);

      stead_words_add (caution, text);
    }
  stead_words_add (caution, _("The money itself goes through the school’s books and its bookkeeper; this is the farm’s "
                              "own record. Unpaid student work is not in it."));
  self->caution = g_string_free (g_steal_pointer (&caution), FALSE);
}

/* --- all -------------------------------------------------------------------------------- */

static gboolean
read_enterprise (SteadStore            *store,
                 SteadStatementAnswer  *self,
                 GError               **error)
{
  g_autoptr(GPtrArray) all = stead_enterprise_repo_list (store, error);

  for (guint i = 0; all != NULL && i < all->len; i++)
    {
      const SteadEnterprise *enterprise = all->pdata[i];

      if (enterprise->id == self->enterprise_id)
        self->enterprise_name = g_strdup (enterprise->name);
    }
  if (all != NULL && self->enterprise_id != 0 && self->enterprise_name == NULL)
    {
      g_set_error_literal (error, STEAD_STORE_ERROR, STEAD_STORE_ERROR_NOT_FOUND,
                           _("This part of the farm is no longer there. Choose another."));
      return FALSE;
    }
  return all != NULL;
}

static gboolean
read_accounts (SteadStore            *store,
               SteadStatementAnswer  *self,
               GError               **error)
{
  g_autoptr(GPtrArray) accounts = stead_account_repo_list (store, TRUE, error);

  self->has_accounts = accounts != NULL && accounts->len > 0;
  return accounts != NULL;
}

SteadStatementAnswer *
stead_statement_answer_new (SteadStore  *store,
                            SteadDay     from,
                            SteadDay     to,
                            gint64       enterprise_id,
                            GError     **error)
{
  g_autoptr(SteadStatementAnswer) self = NULL;
  g_autoptr(GArray) postings = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  g_return_val_if_fail (from != STEAD_DAY_NONE && to >= from, NULL);
  self = g_new0 (SteadStatementAnswer, 1);
  self->from = from;
  self->to = to;
  self->enterprise_id = enterprise_id;
  self->lines = g_ptr_array_new_with_free_func ((GDestroyNotify) stead_statement_line_free);
  self->farm = stead_farm_repo_get (store, error);
  postings = self->farm != NULL && read_enterprise (store, self, error)
             ? stead_journal_repo_read (store, from, to, error) : NULL;
  if (postings == NULL
      || !read_accounts (store, self, error)
      || !stead_statement_add_time (store, from, to, postings, error)
      || !stead_statement_add_lines (store, self, postings, error))
    return NULL;
  add_words (self);
  return g_steal_pointer (&self);
}
