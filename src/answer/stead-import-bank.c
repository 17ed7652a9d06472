/* stead-import-bank.c - judges the rows of an account's statement.
 *
 * A row is a line of the bank: a day, an amount that is signed or stands in one of two
 * columns, and what the bank says of it.  Rows that the farm has are skipped; two alike in
 * one file are two.  Each is matched with the line of the cash book of the same amount that
 * is nearest in days, at most ten apart, as stead_bank_repo_proposals() does.
 */
#include "config.h"

#include "answer/stead-answer-error.h"
#include "answer/stead-import-private.h"

#include "core/stead-money.h"
#include "store/stead-bank-repo.h"
#include "store/stead-cash-repo.h"

#include <glib/gi18n-lib.h>

/* Checks take longer than deposits (common practice, no source). */
#define MATCH_DAYS 10

typedef struct
{
  SteadBankLine line;
  gint64        match_id;    /* of the cash book; 0: none */
  SteadDay      match_day;
} BankRow;

static void
free_row (gpointer fact)
{
  BankRow *bank = fact;

  if (bank == NULL)
    return;
  g_free (bank->line.text);
  g_free (bank);
}

/* --- reading ------------------------------------------------------------------------ */

/* @out is left alone if the cell is empty. */
static gboolean
read_cents (const SteadImportJudge *judge,
            SteadImportRow         *row,
            SteadColumn             column,
            gint64                 *out)
{
  g_autoptr(GError) error = NULL;
  const char *cell = stead_import_cell (judge, row, column);

  if (*cell == '\0')
    return TRUE;
  if (!stead_money_parse (cell, judge->farm->currency, out, &error))
    return stead_import_wrong (judge, row, column, g_strdup (error->message));
  return TRUE;
}

/* One signed amount, or one in the column of what came in or what went out. */
static gboolean
read_amount (const SteadImportJudge *judge,
             SteadImportRow         *row,
             gint64                 *out)
{
  gint64 amount = 0, in = 0, paid = 0;

  if (!read_cents (judge, row, STEAD_COLUMN_AMOUNT, &amount)
      || !read_cents (judge, row, STEAD_COLUMN_MONEY_IN, &in)
      || !read_cents (judge, row, STEAD_COLUMN_MONEY_OUT, &paid))
    return FALSE;
  if ((amount != 0) + (in != 0) + (paid != 0) > 1)
    return stead_import_wrong (judge, row, STEAD_COLUMN_MONEY_OUT,
                               g_strdup (_("The row has more than one amount. Only one can be right.")));
  *out = amount + in - ABS (paid);
  if (*out == 0)
    return stead_import_wrong (judge, row, judge->columns->at[STEAD_COLUMN_AMOUNT] >= 0 ? STEAD_COLUMN_AMOUNT
                                                                                      : STEAD_COLUMN_MONEY_IN,
                               g_strdup (_("The amount is missing.")));
  return TRUE;
}

static gboolean
check_day (const SteadImportJudge *judge,
           SteadImportRow         *row,
           SteadDay                day)
{
  if (day > judge->today)
    return stead_import_wrong (judge, row, STEAD_COLUMN_DATE, g_strdup (_("This day is still to come. Check the date.")));
  if (day < judge->account_opened_on)
    return stead_import_wrong (judge, row, STEAD_COLUMN_DATE,
                               g_strdup (_("The account was not open on that day. Check the date.")));
  if (judge->account_agreed_to != STEAD_DAY_NONE && day <= judge->account_agreed_to)
    {
      stead_import_skip (row, g_strdup (_("A statement that agrees with the book covers this day already.")));
      return FALSE;
    }
  return TRUE;
}

static void
read_row (SteadImportJudge *judge,
          SteadImportRow   *row)
{
  BankRow *bank;

  if (!stead_import_is_to_read (row))
    return;
  bank = g_new0 (BankRow, 1);
  bank->line.account_id = judge->account_id;
  bank->match_day = STEAD_DAY_NONE;
  if (!stead_import_read_day (judge, row, STEAD_COLUMN_DATE, &bank->line.day)
      || !read_amount (judge, row, &bank->line.cents)
      || !check_day (judge, row, bank->line.day))
    {
      free_row (bank);
      return;
    }
  bank->line.text = stead_import_read_text (judge, row, STEAD_COLUMN_TEXT);
  row->fact = bank;
  row->state = STEAD_ROW_TAKE;
}

/* --- beside the farm ------------------------------------------------------------------- */

static char *
key_of (const SteadBankLine *line)
{
  return g_strdup_printf ("%d %" G_GINT64_FORMAT " %s", line->day, line->cents, line->text != NULL ? line->text : "");
}

/* As many rows alike as the farm has are skipped; what is more is new. */
static gboolean
skip_known (const SteadImportJudge  *judge,
            GPtrArray               *rows,
            GError                 **error)
{
  g_autoptr(GHashTable) left = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);

  for (guint i = 0; i < rows->len; i++)
    {
      SteadImportRow *row = rows->pdata[i];
      const BankRow *bank = row->fact;
      g_autofree char *key = NULL;
      gpointer known;
      gint64 n;

      if (bank == NULL)
        continue;
      key = key_of (&bank->line);
      if (!g_hash_table_lookup_extended (left, key, NULL, &known))
        {
          n = stead_bank_repo_count_same (judge->store, &bank->line, error);
          if (n < 0)
            return FALSE;
          known = GINT_TO_POINTER ((int) n);
        }
      n = GPOINTER_TO_INT (known);
      g_hash_table_insert (left, g_steal_pointer (&key), GINT_TO_POINTER ((int) MAX (0, n - 1)));
      if (n > 0)
        {
          stead_import_skip (row, g_strdup (_("The farm already has this line of the bank.")));
          g_clear_pointer (&row->fact, free_row);
        }
    }
  return TRUE;
}

/* --- matching ---------------------------------------------------------------------------- */

typedef struct
{
  BankRow             *bank;
  const SteadCashLine *line;
  int                  days;
} Pair;

static int
compare_pairs (gconstpointer a,
               gconstpointer b)
{
  const Pair *first = a, *second = b;

  return (first->days > second->days) - (first->days < second->days);
}

static void
add_pairs (GArray    *pairs,
           BankRow   *bank,
           GPtrArray *lines)
{
  for (guint i = 0; i < lines->len; i++)
    {
      const SteadCashLine *line = lines->pdata[i];
      Pair pair = { bank, line, ABS (line->day - bank->line.day) };

      if (line->bank_line_id == 0 && line->cents == bank->line.cents && pair.days <= MATCH_DAYS)
        g_array_append_val (pairs, pair);
    }
}

static gboolean
match_rows (const SteadImportJudge  *judge,
            GPtrArray               *rows,
            GError                 **error)
{
  g_autoptr(GPtrArray) lines = NULL;
  g_autoptr(GArray) pairs = g_array_new (FALSE, FALSE, sizeof (Pair));
  g_autoptr(GHashTable) used = g_hash_table_new (NULL, NULL);
  SteadCashFilter filter;

  stead_cash_filter_init (&filter);
  filter.account_id = judge->account_id;
  lines = stead_cash_repo_list (judge->store, &filter, error);
  if (lines == NULL)
    return FALSE;
  for (guint i = 0; i < rows->len; i++)
    {
      SteadImportRow *row = rows->pdata[i];

      if (row->fact != NULL)
        add_pairs (pairs, row->fact, lines);
    }
  g_array_sort (pairs, compare_pairs);
  for (guint i = 0; i < pairs->len; i++)
    {
      Pair *pair = &g_array_index (pairs, Pair, i);

      if (pair->bank->match_id != 0 || !g_hash_table_add (used, (gpointer) pair->line))
        continue;
      pair->bank->match_id = pair->line->id;
      pair->bank->match_day = pair->line->day;
    }
  return TRUE;
}

static gboolean
judge_rows (SteadImportJudge  *judge,
            GPtrArray         *rows,
            GError           **error)
{
  for (guint i = 0; i < rows->len; i++)
    {
      if (!stead_import_go_on (judge, i, rows->len, error))
        return FALSE;
      read_row (judge, rows->pdata[i]);
    }
  return skip_known (judge, rows, error) && match_rows (judge, rows, error);
}

/* --- words ----------------------------------------------------------------------------- */

static char *
understood (const SteadFarm *farm,
            gconstpointer    fact)
{
  const BankRow *bank = fact;
  g_autofree char *day = stead_day_format (bank->line.day, STEAD_DAY_STYLE_MEDIUM);
  g_autofree char *cents = stead_money_format (bank->line.cents, farm->currency);
  g_autofree char *match = NULL;

  if (bank->match_id == 0)
    /* Translators: a day, an amount of money. */
    return g_strdup_printf (_("%s; %s, not in the cash book yet"), day, cents);
  match = stead_day_format (bank->match_day, STEAD_DAY_STYLE_MEDIUM);
  /* Translators: a day, an amount of money, a day. */
  return g_strdup_printf (_("%s; %s, goes with the cash book’s line of %s"), day, cents, match);
}

/* --- the kind ---------------------------------------------------------------------------- */

/* The account asked for, or the only one that has statements. */
static const SteadAccount *
find_account (GPtrArray  *accounts,
              gint64      account_id,
              GError    **error)
{
  const SteadAccount *found = NULL;
  int n = 0;

  for (guint i = 0; i < accounts->len; i++)
    {
      const SteadAccount *account = accounts->pdata[i];

      if (account->id == account_id)
        return account;
      if (account_id != 0 || account->kind == STEAD_ACCOUNT_TILL || account->closed_on != STEAD_DAY_NONE)
        continue;
      found = account;
      n++;
    }
  if (n == 1)
    return found;
  g_set_error_literal (error, STEAD_ANSWER_ERROR, STEAD_ANSWER_ERROR_INPUT,
                       n == 0 ? _("The cash book has no account with a statement. Enter the account first.")
                              : _("Say which account the statement is of."));
  return NULL;
}

static gboolean
read_agreed (SteadImportJudge  *judge,
             GError           **error)
{
  g_autoptr(GPtrArray) sheets = stead_bank_repo_sheets (judge->store, judge->account_id, error);

  judge->account_agreed_to = STEAD_DAY_NONE;
  for (guint i = 0; sheets != NULL && i < sheets->len; i++)
    {
      const SteadBankSheet *sheet = sheets->pdata[i];

      if (sheet->agreed_on != STEAD_DAY_NONE)
        judge->account_agreed_to = MAX (judge->account_agreed_to, sheet->through_day);
    }
  return sheets != NULL;
}

static gboolean
prepare (SteadImportJudge  *judge,
         gint64             account_id,
         GError           **error)
{
  g_autoptr(GPtrArray) accounts = stead_account_repo_list (judge->store, TRUE, error);
  const SteadAccount *account = accounts != NULL ? find_account (accounts, account_id, error) : NULL;

  if (account == NULL)
    return FALSE;
  judge->account_id = account->id;
  judge->account_opened_on = account->opened_on;
  return read_agreed (judge, error);
}

static gboolean
is_complete (const SteadColumns *columns)
{
  const int *at = columns->at;

  return at[STEAD_COLUMN_AMOUNT] >= 0 || at[STEAD_COLUMN_MONEY_IN] >= 0 || at[STEAD_COLUMN_MONEY_OUT] >= 0;
}

static gboolean
write_row (SteadStore  *store,
           BankRow     *bank,
           GError     **error)
{
  SteadBankLine line = bank->line;
  g_autoptr(SteadCashLine) own = NULL;

  line.id = 0;
  if (!stead_bank_repo_add_line (store, &line, error))
    return FALSE;
  if (bank->match_id == 0)
    return TRUE;
  /* The book may have changed since the preview: what does not fit any more stays open. */
  own = stead_cash_repo_get (store, bank->match_id, NULL);
  return own == NULL || own->bank_line_id != 0 || own->cents != line.cents || own->account_id != line.account_id
         || stead_bank_repo_match (store, line.id, own->id, error);
}

static gboolean
write_rows (GPtrArray            *rows,
            SteadStore           *store,
            GCancellable         *cancellable,
            SteadImportProgress   progress,
            gpointer              data,
            GError              **error)
{
  for (guint i = 0; i < rows->len; i++)
    {
      const SteadImportRow *row = rows->pdata[i];

      if (g_cancellable_set_error_if_cancelled (cancellable, error))
        return FALSE;
      if (row->state == STEAD_ROW_TAKE && !write_row (store, row->fact, error))
        return FALSE;
      if (progress != NULL)
        progress ((i + 1.0) / rows->len, data);
    }
  return TRUE;
}

const SteadImportMethods stead_import_bank = {
  .name = "bank",
  .prepare = prepare,
  .is_complete = is_complete,
  .needs = N_("The first row must name the columns: Date and Amount, with a minus sign for what went out; or Date, "
              "Money in and Money out. Description may stand too."),
  .judge = judge_rows,
  .understood = understood,
  .free_fact = free_row,
  .write = write_rows,
};
