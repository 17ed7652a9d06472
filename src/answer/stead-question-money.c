/* stead-question-money.c - the cash book and the statements as figures for programs.
 *
 * Names are never translated, money is in minor units, days are as 2026-03-03.
 */
#include "config.h"

#include "answer/stead-cash-private.h"
#include "answer/stead-question-private.h"
#include "answer/stead-statement-answer.h"
#include "answer/stead-words.h"

static void
put_accounts (JsonBuilder           *out,
              const SteadCashAnswer *answer)
{
  json_builder_set_member_name (out, "accounts");
  json_builder_begin_array (out);
  for (guint i = 0; i < answer->accounts->len; i++)
    {
      const SteadAccountState *state = answer->accounts->pdata[i];

      json_builder_begin_object (out);
      stead_put_text (out, "account", state->account->name);
      stead_put_int (out, "cents", state->cents);
      stead_put_int (out, "restricted_cents", state->restricted_cents);
      stead_put_day (out, "counted_on", state->counted_on);
      stead_put_day (out, "agreed_to", state->agreed_to);
      json_builder_end_object (out);
    }
  json_builder_end_array (out);
}

static void
put_funds (JsonBuilder           *out,
           const SteadCashAnswer *answer)
{
  json_builder_set_member_name (out, "funds");
  json_builder_begin_array (out);
  for (guint i = 0; i < answer->funds->len; i++)
    {
      const SteadFundState *state = answer->funds->pdata[i];

      json_builder_begin_object (out);
      stead_put_text (out, "fund", state->fund->name);
      stead_put_int (out, "cents", state->cents);
      json_builder_end_object (out);
    }
  json_builder_end_array (out);
}

char *
stead_question_ask_cash (SteadStore   *store,
                         gint64        id,
                         JsonBuilder  *out,
                         GError      **error)
{
  g_autoptr(SteadCashAnswer) answer = NULL;
  const SteadAccountState *one;
  SteadDay today = stead_store_get_today (store), from;

  if (!stead_cash_period_start (store, STEAD_PERIOD_SCHOOL_YEAR, &from, error)
      || (answer = stead_cash_answer_new (store, from, today, id, error)) == NULL)
    return NULL;
  one = stead_cash_answer_state (answer, id);
  stead_put_text (out, "currency", answer->farm->currency);
  stead_put_day (out, "from", answer->from);
  stead_put_day (out, "to", answer->day);
  stead_put_int (out, "cents", one != NULL ? one->cents : answer->total_cents);
  stead_put_int (out, "restricted_cents", one != NULL ? one->restricted_cents : answer->restricted_cents);
  stead_put_int (out, "in_cents", answer->in_cents);
  stead_put_int (out, "out_cents", answer->out_cents);
  stead_put_int (out, "lines", answer->lines->len);
  stead_put_int (out, "receipts_unpaid", answer->n_unpaid);
  stead_put_int (out, "unpaid_cents", answer->unpaid_cents);
  stead_put_int (out, "looks", answer->looks->len);
  stead_put_day (out, "closed_to", answer->closed_to);
  put_accounts (out, answer);
  put_funds (out, answer);
  stead_put_text (out, "caution", answer->caution);
  return stead_words_plain (answer->sentence);
}

static void
put_lines (JsonBuilder                *out,
           const SteadStatementAnswer *answer,
           SteadStatementPart          part,
           const char                 *name)
{
  json_builder_set_member_name (out, name);
  json_builder_begin_array (out);
  for (guint i = 0; i < answer->lines->len; i++)
    {
      const SteadStatementLine *line = answer->lines->pdata[i];

      if (line->part != part)
        continue;
      json_builder_begin_object (out);
      stead_put_text (out, "line", line->name);
      if (part == STEAD_STATEMENT_BALANCE)
        stead_put_int (out, "before_cents", line->before_cents);
      stead_put_int (out, "cents", line->cents);
      stead_put_int (out, "entries", line->entries->len);
      json_builder_end_object (out);
    }
  json_builder_end_array (out);
}

char *
stead_question_ask_statement (SteadStore   *store,
                              gint64        id,
                              JsonBuilder  *out,
                              GError      **error)
{
  g_autoptr(SteadStatementAnswer) answer = NULL;
  SteadDay today = stead_store_get_today (store), from;

  if (!stead_cash_period_start (store, STEAD_PERIOD_SCHOOL_YEAR, &from, error)
      || (answer = stead_statement_answer_new (store, from, today, id, error)) == NULL)
    return NULL;
  stead_put_text (out, "enterprise", answer->enterprise_name);
  stead_put_text (out, "currency", answer->farm->currency);
  stead_put_day (out, "from", answer->from);
  stead_put_day (out, "to", answer->to);
  stead_put_int (out, "operating_cents", answer->operating);
  stead_put_int (out, "investing_cents", answer->investing);
  stead_put_int (out, "financing_cents", answer->financing);
  stead_put_int (out, "sales_cents", answer->sales);
  stead_put_int (out, "net_cents", answer->net);
  stead_put_int (out, "put_in_cents", answer->put_in);
  stead_put_int (out, "taken_out_cents", answer->taken_out);
  stead_put_int (out, "worth_before_cents", answer->worth_before);
  stead_put_int (out, "worth_cents", answer->worth_end);
  put_lines (out, answer, STEAD_STATEMENT_CASH, "cash_flow");
  put_lines (out, answer, STEAD_STATEMENT_INCOME, "income");
  put_lines (out, answer, STEAD_STATEMENT_BALANCE, "balance");
  stead_put_text (out, "caution", answer->caution);
  return stead_words_plain (answer->sentence);
}
