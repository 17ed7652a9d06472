/* stead-log-cash.c - the cash book, and statements with their entries, as rows for a spreadsheet. */
#include "config.h"

#include "answer/stead-cash-words.h"
#include "answer/stead-log-cash.h"
#include "answer/stead-log-private.h"

#include <glib/gi18n-lib.h>

/* Names by id. */
static GHashTable *
names_new (void)
{
  return g_hash_table_new_full (g_int64_hash, g_int64_equal, g_free, g_free);
}

static void
name_add (GHashTable *names,
          gint64      id,
          const char *name)
{
  g_hash_table_insert (names, g_memdup2 (&id, sizeof id), g_strdup (name));
}

static GHashTable *
account_names (SteadStore  *store,
               GError     **error)
{
  g_autoptr(GPtrArray) accounts = stead_account_repo_list (store, TRUE, error);
  g_autoptr(GHashTable) names = names_new ();

  for (guint i = 0; accounts != NULL && i < accounts->len; i++)
    name_add (names, ((SteadAccount *) accounts->pdata[i])->id, ((SteadAccount *) accounts->pdata[i])->name);
  return accounts != NULL ? g_steal_pointer (&names) : NULL;
}

static GHashTable *
fund_names (SteadStore  *store,
            GError     **error)
{
  g_autoptr(GPtrArray) funds = stead_fund_repo_list (store, TRUE, error);
  g_autoptr(GHashTable) names = names_new ();

  for (guint i = 0; funds != NULL && i < funds->len; i++)
    name_add (names, ((SteadFund *) funds->pdata[i])->id, ((SteadFund *) funds->pdata[i])->name);
  return funds != NULL ? g_steal_pointer (&names) : NULL;
}

/* --- the cash book ---------------------------------------------------------------------- */

enum
{
  BOOK_NUMBER,
  BOOK_DAY,
  BOOK_ACCOUNT,
  BOOK_CATEGORY,
  BOOK_IN,
  BOOK_OUT,
  BOOK_BALANCE,
  BOOK_FUND,
  BOOK_WHO,
  BOOK_REFERENCE,
  BOOK_NOTE,
  BOOK_PERSON,
  BOOK_SECOND,
  BOOK_CORRECTS,
};

static void
add_text_column (SteadLogAnswer *self,
                 const char     *title)
{
  stead_log_add_column (self, g_strdup (title), STEAD_CELL_TEXT, 0, FALSE);
}

static void
add_money_column (SteadLogAnswer *self,
                  const char     *title,
                  gboolean        sum)
{
  stead_log_add_column (self, g_strdup (title), STEAD_CELL_MONEY, 0, sum);
}

static void
add_book_columns (SteadLogAnswer *self)
{
  stead_log_add_column (self, g_strdup (C_("column of the cash book", "Line")), STEAD_CELL_COUNT, 0, FALSE);
  stead_log_add_column (self, g_strdup (C_("column of the cash book", "Date")), STEAD_CELL_DAY, 0, FALSE);
  add_text_column (self, C_("column of the cash book", "Account"));
  add_text_column (self, C_("column of the cash book", "Category"));
  add_money_column (self, C_("column of the cash book", "Money in"), TRUE);
  add_money_column (self, C_("column of the cash book", "Money out"), TRUE);
  add_money_column (self, C_("column of the cash book", "Balance"), FALSE);
  add_text_column (self, C_("column of the cash book", "Fund"));
  add_text_column (self, C_("column of the cash book", "Paid by or to"));
  add_text_column (self, C_("column of the cash book", "Reference"));
  add_text_column (self, C_("column of the cash book", "Note"));
  add_text_column (self, C_("column of the cash book", "Person"));
  add_text_column (self, C_("column of the cash book", "Second person"));
  stead_log_add_column (self, g_strdup (C_("column of the cash book", "Corrects line")), STEAD_CELL_COUNT, 0, FALSE);
}

static void
add_book_row (SteadLogAnswer      *self,
              const SteadCashLine *line,
              GHashTable          *accounts,
              GHashTable          *funds,
              GHashTable          *people)
{
  SteadLogCell *row = stead_log_add_row (self);

  row[BOOK_NUMBER] = stead_log_whole (line->id, TRUE);
  row[BOOK_DAY] = stead_log_whole (line->day, TRUE);
  row[BOOK_ACCOUNT] = stead_log_text (g_hash_table_lookup (accounts, &line->account_id));
  row[BOOK_CATEGORY] = stead_log_text (stead_cash_words_category (line->category));
  row[BOOK_IN] = stead_log_whole (line->cents, line->cents > 0);
  row[BOOK_OUT] = stead_log_whole (-line->cents, line->cents < 0);
  row[BOOK_BALANCE] = stead_log_whole (line->balance_cents, TRUE);
  row[BOOK_FUND] = stead_log_text (g_hash_table_lookup (funds, &line->fund_id));
  row[BOOK_WHO] = stead_log_text (line->who);
  row[BOOK_REFERENCE] = stead_log_text (line->reference);
  row[BOOK_NOTE] = stead_log_text (line->note);
  row[BOOK_PERSON] = stead_log_text (g_hash_table_lookup (people, &line->person_id));
  row[BOOK_SECOND] = stead_log_text (g_hash_table_lookup (people, &line->second_id));
  row[BOOK_CORRECTS] = stead_log_whole (line->corrects_id, line->corrects_id != 0);
}

SteadLogAnswer *
stead_log_answer_cash (SteadStore  *store,
                       gint64       account_id,
                       SteadDay     from,
                       SteadDay     to,
                       GError     **error)
{
  g_autoptr(SteadFarm) farm = NULL;
  g_autoptr(GHashTable) accounts = NULL;
  g_autoptr(GHashTable) funds = NULL;
  g_autoptr(GHashTable) people = NULL;
  g_autoptr(GPtrArray) lines = NULL;
  g_autoptr(SteadLogAnswer) self = NULL;
  SteadCashFilter filter;

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  stead_cash_filter_init (&filter);
  filter.account_id = account_id;
  filter.from = from;
  filter.to = to;
  if ((farm = stead_farm_repo_get (store, error)) == NULL
      || (accounts = account_names (store, error)) == NULL
      || (funds = fund_names (store, error)) == NULL
      || (people = stead_log_people (store, error)) == NULL
      || (lines = stead_cash_repo_list (store, &filter, error)) == NULL)
    return NULL;
  self = stead_log_new (g_strdup (_("Cash book")), farm->currency, store);
  self->from = from != STEAD_DAY_NONE ? from
               : lines->len > 0 ? ((SteadCashLine *) lines->pdata[0])->day : self->today;
  self->to = to != STEAD_DAY_NONE ? to : self->today;
  add_book_columns (self);
  for (guint i = 0; i < lines->len; i++)
    add_book_row (self, lines->pdata[i], accounts, funds, people);
  return g_steal_pointer (&self);
}

void
stead_log_answer_cash_hide_names (SteadLogAnswer *self)
{
  static const int named[] = { BOOK_WHO, BOOK_NOTE, BOOK_PERSON, BOOK_SECOND };

  g_return_if_fail (self != NULL && self->columns->len == BOOK_CORRECTS + 1);
  for (guint row = 0; row < self->rows->len; row++)
    for (gsize i = 0; i < G_N_ELEMENTS (named); i++)
      ((SteadLogCell *) stead_log_answer_cell (self, row, (guint) named[i]))->filled = FALSE;
}

/* --- statements ---------------------------------------------------------------------------- */

enum
{
  ENTRY_PART,
  ENTRY_LINE,
  ENTRY_DAY,
  ENTRY_WHAT,
  ENTRY_AMOUNT,
};

static gboolean
add_entry_rows (SteadStore                *store,
                SteadLogAnswer            *self,
                const SteadStatementLine  *line,
                GError                   **error)
{
  for (guint i = 0; i < line->entries->len; i++)
    {
      const SteadStatementEntry *entry = &g_array_index (line->entries, SteadStatementEntry, i);
      g_autofree char *what = stead_statement_entry_text (store, entry, error);
      SteadLogCell *row;

      if (what == NULL)
        return FALSE;
      row = stead_log_add_row (self);
      row[ENTRY_PART] = stead_log_text (stead_statement_part_title (line->part));
      row[ENTRY_LINE] = stead_log_text (line->label);
      row[ENTRY_DAY] = stead_log_whole (entry->day, TRUE);
      row[ENTRY_WHAT] = stead_log_text (what);
      row[ENTRY_AMOUNT] = stead_log_whole (entry->cents, TRUE);
    }
  return TRUE;
}

SteadLogAnswer *
stead_log_answer_statement (SteadStore                  *store,
                            const SteadStatementAnswer  *statement,
                            GError                     **error)
{
  g_autoptr(SteadLogAnswer) self = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store) && statement != NULL, NULL);
  self = stead_log_new (g_strdup (_("Entries behind the statements")), statement->farm->currency, store);
  self->from = statement->from;
  self->to = statement->to;
  add_text_column (self, C_("column of statements", "Statement"));
  add_text_column (self, C_("column of statements", "Line"));
  stead_log_add_column (self, g_strdup (C_("column of statements", "Date")), STEAD_CELL_DAY, 0, FALSE);
  add_text_column (self, C_("column of statements", "Entry"));
  add_money_column (self, C_("column of statements", "Amount"), FALSE);
  for (guint i = 0; i < statement->lines->len; i++)
    if (!add_entry_rows (store, self, statement->lines->pdata[i], error))
      return NULL;
  return g_steal_pointer (&self);
}
