/* test-cash.c - the cash book in words, the import of a bank's lines, and the two questions. */
#include "config.h"

#include <glib/gstdio.h>
#include <string.h>

#include "answer/stead-cash-answer.h"
#include "answer/stead-cash-rules.h"
#include "answer/stead-cash-words.h"
#include "answer/stead-import-answer.h"
#include "answer/stead-log-cash.h"
#include "answer/stead-question.h"
#include "farm.h"
#include "numbers.h"

typedef struct
{
  Farm   farm;
  gint64 till, bank, fund, student, advisor;
} Book;

static gint64
add_account (Book *book, const char *name, SteadAccountKind kind, gint64 cents)
{
  SteadAccount account = { .name = (char *) name, .kind = kind, .opened_on = stead_day_new (2026, 1, 1),
                           .opening_cents = cents, .closed_on = STEAD_DAY_NONE };

  FARM_DO (&book->farm, stead_account_repo_save (book->farm.store, &account, &farm_error));
  return account.id;
}

static gint64
add_person (Book *book, const char *name, SteadPersonRole role)
{
  SteadPerson person = { .name = (char *) name, .role = role, .left_on = STEAD_DAY_NONE };

  FARM_DO (&book->farm, stead_person_repo_save (book->farm.store, &person, &farm_error));
  return person.id;
}

static void
book_set_up (Book *book, gconstpointer data)
{
  SteadFund fund = { .name = (char *) "Pen", .closed_on = STEAD_DAY_NONE };

  farm_set_up (&book->farm, data);
  book->till = add_account (book, "Till box", STEAD_ACCOUNT_TILL, 2000);
  book->bank = add_account (book, "School account", STEAD_ACCOUNT_ACTIVITY, 30000);
  FARM_DO (&book->farm, stead_fund_repo_save (book->farm.store, &fund, &farm_error));
  book->fund = fund.id;
  book->student = add_person (book, "Ana", STEAD_PERSON_STUDENT);
  book->advisor = add_person (book, "Ms. Reed", STEAD_PERSON_ADVISOR);
}

static void
book_tear_down (Book *book, gconstpointer data)
{
  farm_tear_down (&book->farm, data);
}

static gint64
add_line (Book *book, gint64 account, SteadDay day, gint64 cents, SteadCashCategory category, gint64 fund, gint64 receipt)
{
  g_autoptr(SteadCashLine) line = stead_cash_line_new ();

  line->account_id = account;
  line->day = day;
  line->cents = cents;
  line->category = category;
  line->fund_id = fund;
  line->receipt_id = receipt;
  FARM_DO (&book->farm, stead_cash_repo_save (book->farm.store, line, &farm_error));
  return line->id;
}

static const SteadCashLook *
find_look (const SteadCashAnswer *answer, SteadCashLookKind kind)
{
  for (guint i = 0; i < answer->looks->len; i++)
    if (((SteadCashLook *) answer->looks->pdata[i])->kind == kind)
      return answer->looks->pdata[i];
  return NULL;
}

static SteadCashAnswer *
ask (Book *book)
{
  g_autoptr(GError) error = NULL;
  SteadCashAnswer *answer = stead_cash_answer_new (book->farm.store, stead_day_new (2026, 3, 1), book->farm.today, 0, &error);

  g_assert_no_error (error);
  return answer;
}

/* 320.00 at first, 45.00 sold, 8.00 paid, 100.00 given for the pen. */
static void
test_sums (Book *book, gconstpointer data)
{
  g_autoptr(SteadCashAnswer) answer = NULL;
  g_autoptr(GPtrArray) whys = NULL;

  add_line (book, book->till, stead_day_new (2026, 2, 7), 4500, STEAD_CASH_SALES, 0, 0);
  add_line (book, book->till, stead_day_new (2026, 3, 7), -800, STEAD_CASH_FEES, 0, 0);
  add_line (book, book->bank, stead_day_new (2026, 3, 8), 10000, STEAD_CASH_GRANT, book->fund, 0);
  answer = ask (book);
  g_assert_cmpint (answer->total_cents, ==, 45700);
  g_assert_cmpint (answer->restricted_cents, ==, 10000);
  g_assert_cmpint (answer->in_cents, ==, 10000);
  g_assert_cmpint (answer->out_cents, ==, 800);
  g_assert_cmpuint (answer->lines->len, ==, 2);
  g_assert_cmpint (((SteadCashLine *) answer->lines->pdata[0])->balance_cents, ==, 35700);
  g_assert_cmpuint (answer->looks->len, ==, 0);
  whys = stead_cash_answer_whys (answer);
  g_assert_cmpuint (whys->len, ==, 4);
  /* The till: 20.00 + 45.00 before, 8.00 out; the bank: 300.00 before, 100.00 in. */
  NUMBERS_ARE (((SteadWhy *) whys->pdata[0])->worked, 65, 0, 8, 57, 300, 100, 0, 400, 57, 400, 457);
  NUMBERS_ARE (((SteadWhy *) whys->pdata[1])->worked, 100, 100, 8, 8);
  NUMBERS_ARE (((SteadWhy *) whys->pdata[2])->worked, 3, 357, 100, 457);
  NUMBERS_ARE (((SteadWhy *) whys->pdata[3])->worked, 100, 0, 100);
  if (farm_in_english ())
    {
      g_assert_nonnull (strstr (answer->sentence, "<b>$457.00</b>, of which $100.00 is for one purpose only"));
      g_assert_nonnull (strstr (answer->caution, "Two people count together"));
    }
}

/* A box that was opened later with 50.00; 12.00 went from the till into it, and 9.00 of a receipt over 21.00 are paid. */
static void
test_whys (Book *book, gconstpointer data)
{
  SteadAccount box = { .name = (char *) "Box", .kind = STEAD_ACCOUNT_TILL, .opened_on = stead_day_new (2026, 3, 5),
                       .opening_cents = 5000, .closed_on = STEAD_DAY_NONE };
  SteadTransfer transfer = { .day = stead_day_new (2026, 3, 6), .cents = 1200, .from_account = book->till };
  gint64 receipt = farm_buy (&book->farm, stead_day_new (2026, 3, 2), book->farm.feed, 50, 2100, FALSE);
  g_autoptr(SteadCashAnswer) all = NULL, one = NULL;
  g_autoptr(GPtrArray) whys = NULL, whys_of_one = NULL;
  g_autoptr(GError) error = NULL;
  const SteadCashLine *last;

  FARM_DO (&book->farm, stead_account_repo_save (book->farm.store, &box, &farm_error));
  transfer.to_account = box.id;
  add_line (book, book->bank, stead_day_new (2026, 3, 3), -900, STEAD_CASH_SUPPLIES, 0, receipt);
  FARM_DO (&book->farm, stead_cash_repo_transfer (book->farm.store, &transfer, &farm_error) != 0);
  all = ask (book);
  whys = stead_cash_answer_whys (all);
  g_assert_cmpint (all->total_cents, ==, 2000 + 30000 + 5000 - 900);
  /* What the box opened with is in the balance of the lines after it. */
  last = all->lines->pdata[all->lines->len - 1];
  g_assert_cmpint (last->balance_cents, ==, all->total_cents);
  NUMBERS_ARE (((SteadWhy *) whys->pdata[0])->worked, 20, 0, 12, 8, 300, 0, 9, 291, 50, 12, 0, 62, 8, 291, 62, 361);
  NUMBERS_ARE (((SteadWhy *) whys->pdata[1])->worked, 0, 0, 9, 9);
  NUMBERS_ARE (((SteadWhy *) whys->pdata[4])->worked, 21, 9, 12);
  one = stead_cash_answer_new (book->farm.store, stead_day_new (2026, 3, 1), book->farm.today, box.id, &error);
  g_assert_no_error (error);
  whys_of_one = stead_cash_answer_whys (one);
  NUMBERS_ARE (((SteadWhy *) whys_of_one->pdata[0])->worked, 50, 12, 0, 62);
}

static char *
sentence_of (Book *book, gint64 account)
{
  g_autoptr(GError) error = NULL;
  g_autoptr(SteadCashAnswer) answer = stead_cash_answer_new (book->farm.store, stead_day_new (2026, 3, 1), book->farm.today,
                                                             account, &error);

  g_assert_no_error (error);
  return g_strdup (answer->sentence);
}

static void
move_cents (Book *book, gint64 from, gint64 to, gint64 cents)
{
  SteadTransfer transfer = { .day = stead_day_new (2026, 3, 6), .cents = cents, .from_account = from, .to_account = to };

  FARM_DO (&book->farm, stead_cash_repo_transfer (book->farm.store, &transfer, &farm_error) != 0);
}

/* 5.00 of the till's 20.00 are taken to the bank with its 300.00; then 2.00 are fetched from there. */
static void
test_moves (Book *book, gconstpointer data)
{
  g_autofree char *all = NULL, *till = NULL, *bank = NULL, *both = NULL, *grant = NULL;

  move_cents (book, book->till, book->bank, 500);
  all = sentence_of (book, 0);
  NUMBERS_ARE (all, 320, 1, 2026);
  till = sentence_of (book, book->till);
  NUMBERS_ARE (till, 15, 1, 2026, 0, 0, 5);
  move_cents (book, book->bank, book->till, 200);
  bank = sentence_of (book, book->bank);
  NUMBERS_ARE (bank, 303, 1, 2026, 0, 0, 3);
  add_line (book, book->till, stead_day_new (2026, 3, 7), 700, STEAD_CASH_SALES, 0, 0);
  both = sentence_of (book, 0);
  NUMBERS_ARE (both, 327, 1, 2026, 7, 0);
  add_line (book, book->bank, stead_day_new (2026, 3, 8), 4000, STEAD_CASH_GRANT, book->fund, 0);
  grant = sentence_of (book, book->bank);
  NUMBERS_ARE (grant, 343, 40, 1, 2026, 40, 0, 3);
  if (!farm_in_english ())
    return;
  g_assert_nonnull (strstr (all, "money was only moved from one place to another; none came in or went out."));
  g_assert_nonnull (strstr (till, "In Till box there is <b>$15.00</b>."));
  g_assert_nonnull (strstr (till, "$5.00 more was moved to other accounts than here from them."));
  g_assert_nonnull (strstr (bank, "$3.00 more was moved here from other accounts than to them."));
  g_assert_nonnull (strstr (both, "$7.00 came in and $0.00 went out."));
  g_assert_nonnull (strstr (grant, "In School account there is <b>$343.00</b>, of which $40.00 is for one purpose only."));
}

/* The sentence is markup; what somebody wrote is not. */
static void
test_marked_name (Book *book, gconstpointer data)
{
  gint64 account = add_account (book, "Eggs & <herbs>", STEAD_ACCOUNT_TILL, 100);
  g_autofree char *sentence = sentence_of (book, account);

  g_assert_nonnull (strstr (sentence, "Eggs &amp; &lt;herbs&gt;"));
}

static void
test_looks (Book *book, gconstpointer data)
{
  SteadCashCount *count = stead_cash_count_new ();
  SteadCashPiece piece = { 2000, 3 };
  SteadBankSheet sheet = { .account_id = book->bank, .through_day = stead_day_new (2026, 3, 31), .closing_cents = 1 };
  gint64 receipt = farm_buy (&book->farm, stead_day_new (2026, 3, 2), book->farm.feed, 50, 2100, FALSE);
  g_autoptr(SteadCashAnswer) answer = NULL;

  add_line (book, book->bank, stead_day_new (2026, 3, 3), -2100, STEAD_CASH_SUPPLIES, 0, receipt);
  add_line (book, book->bank, stead_day_new (2026, 3, 5), -2100, STEAD_CASH_SUPPLIES, 0, receipt);
  add_line (book, book->bank, stead_day_new (2026, 3, 6), -30000, STEAD_CASH_OTHER_OUT, book->fund, 0);
  farm_buy (&book->farm, stead_day_new (2026, 3, 9), book->farm.straw, 2, 900, FALSE);
  count->day = stead_day_new (2026, 3, 20);
  count->account_id = book->till;
  count->first_id = book->student;
  count->second_id = book->advisor;
  g_array_append_val (count->pieces, piece);
  FARM_DO (&book->farm, stead_cash_count_repo_save (book->farm.store, count, &farm_error)
                        && stead_bank_repo_save_sheet (book->farm.store, &sheet, &farm_error));
  answer = ask (book);
  g_assert_cmpint (find_look (answer, STEAD_CASH_LOOK_PAID_TWICE)->id, ==, receipt);
  g_assert_nonnull (find_look (answer, STEAD_CASH_LOOK_TWIN));
  g_assert_cmpint (find_look (answer, STEAD_CASH_LOOK_BELOW_ZERO)->id, ==, book->bank);
  g_assert_cmpint (find_look (answer, STEAD_CASH_LOOK_FUND_SHORT)->id, ==, book->fund);
  g_assert_cmpint (find_look (answer, STEAD_CASH_LOOK_COUNT_OPEN)->id, ==, count->id);
  g_assert_cmpint (find_look (answer, STEAD_CASH_LOOK_SHEET_OPEN)->id, ==, sheet.id);
  g_assert_cmpuint (answer->n_unpaid, ==, 1);
  g_assert_cmpint (answer->unpaid_cents, ==, 900);
  /* Explained, the book has the 60.00 too, and eleven days are more than a weekend. */
  count->reason = g_strdup ("Sales not written down");
  FARM_DO (&book->farm, stead_cash_count_repo_save (book->farm.store, count, &farm_error));
  g_clear_pointer (&answer, stead_cash_answer_free);
  answer = ask (book);
  g_assert_null (find_look (answer, STEAD_CASH_LOOK_COUNT_OPEN));
  g_assert_cmpint (find_look (answer, STEAD_CASH_LOOK_NOT_DEPOSITED)->id, ==, count->id);
  FARM_DO (&book->farm, stead_cash_count_repo_deposit (book->farm.store, count->id, book->bank, book->farm.today, NULL,
                                                       &farm_error) != 0);
  g_clear_pointer (&answer, stead_cash_answer_free);
  answer = ask (book);
  g_assert_null (find_look (answer, STEAD_CASH_LOOK_NOT_DEPOSITED));
  stead_cash_count_free (count);
}

/* --- the bank's lines ------------------------------------------------------------------- */

static SteadImport *
read_bank (Book *book, gint64 account, const char *text)
{
  g_autofree char *path = g_build_filename (g_get_tmp_dir (), "stead-bank-XXXXXX.csv", NULL);
  g_autoptr(GError) error = NULL;
  int handle = g_mkstemp (path);
  SteadImport *import;

  g_assert_cmpint (handle, >=, 0);
  g_close (handle, NULL);
  g_assert_true (g_file_set_contents (path, text, -1, &error));
  import = stead_import_read (book->farm.store, STEAD_IMPORT_BANK, account, path, STEAD_DATE_ORDER_UNKNOWN, NULL, NULL,
                              NULL, &error);
  g_remove (path);
  g_assert_no_error (error);
  return import;
}

static void
test_bank (Book *book, gconstpointer data)
{
  static const char text[] =
    "Posting Date,Description,Amount\r\n"
    "2026-03-04,DEPOSIT,45.00\r\n"
    "2026-03-06,CHECK 104,-21.00\r\n"
    "2026-03-06,FEE,(1.50)\r\n"
    "2026-03-06,FEE,(1.50)\r\n"
    "2026-04-06,LATER,1.00\r\n"
    "2026-03-07,NOTHING,\r\n"
    "2026-03-08,WORDS,ten\r\n"
    "\r\n";
  gint64 sale = add_line (book, book->bank, stead_day_new (2026, 3, 2), 4500, STEAD_CASH_SALES, 0, 0);
  gint64 other = add_line (book, book->bank, stead_day_new (2026, 2, 20), 4500, STEAD_CASH_SALES, 0, 0);
  gint64 check_line = add_line (book, book->bank, stead_day_new (2026, 3, 3), -2100, STEAD_CASH_OTHER_OUT, 0, 0);
  g_autoptr(SteadImport) import = read_bank (book, 0, text);
  g_autoptr(SteadImport) again = NULL;
  g_autoptr(GPtrArray) lines = NULL;
  g_autoptr(GError) error = NULL;

  g_assert_cmpuint (stead_import_count (import, STEAD_ROW_TAKE), ==, 4);
  g_assert_cmpuint (stead_import_count (import, STEAD_ROW_WRONG), ==, 3);
  if (farm_in_english ())
    {
      g_assert_cmpstr (stead_import_get_row (import, 0)->understood, ==,
                       "Mar 4, 2026; $45.00, goes with the cash book’s line of Mar 2, 2026");
      g_assert_cmpstr (stead_import_get_row (import, 2)->understood, ==,
                       "Mar 6, 2026; −$1.50, not in the cash book yet");
    }
  g_assert_true (stead_import_take (import, book->farm.store, NULL, NULL, NULL, &error));
  g_assert_no_error (error);
  lines = stead_bank_repo_lines (book->farm.store, book->bank, book->farm.today, FALSE, &error);
  g_assert_cmpuint (lines->len, ==, 4);
  g_assert_cmpint (((SteadBankLine *) lines->pdata[0])->line_id, ==, sale);
  g_assert_cmpint (((SteadBankLine *) lines->pdata[1])->line_id, ==, check_line);
  g_assert_cmpint (((SteadBankLine *) lines->pdata[2])->line_id, ==, 0);
  g_assert_cmpint (other, !=, sale);
  again = read_bank (book, book->bank, text);
  g_assert_cmpuint (stead_import_count (again, STEAD_ROW_TAKE), ==, 0);
  g_assert_cmpuint (stead_import_count (again, STEAD_ROW_SKIP), ==, 4);
}

static void
test_bank_columns (Book *book, gconstpointer data)
{
  static const char text[] =
    "Date;Concepto;Depósito;Retiro\n"
    "07/03/2026;VENTA;1.045,00;\n"
    "13/03/2026;CHEQUE;;21,00\n"
    "14/03/2026;LOS DOS;1,00;21,00\n";
  g_autoptr(SteadImport) import = read_bank (book, book->bank, text);
  g_autoptr(GPtrArray) lines = NULL;
  g_autoptr(GError) error = NULL;

  g_assert_cmpuint (stead_import_count (import, STEAD_ROW_TAKE), ==, 2);
  g_assert_cmpuint (stead_import_count (import, STEAD_ROW_WRONG), ==, 1);
  g_assert_true (stead_import_take (import, book->farm.store, NULL, NULL, NULL, &error));
  lines = stead_bank_repo_lines (book->farm.store, book->bank, book->farm.today, TRUE, &error);
  g_assert_cmpuint (lines->len, ==, 2);
  g_assert_cmpint (((SteadBankLine *) lines->pdata[0])->cents, ==, 104500);
  g_assert_cmpint (((SteadBankLine *) lines->pdata[1])->cents, ==, -2100);
  g_assert_cmpstr (((SteadBankLine *) lines->pdata[1])->text, ==, "CHEQUE");
}

/* --- as tables and as figures -------------------------------------------------------------- */

static void
test_log (Book *book, gconstpointer data)
{
  g_autoptr(SteadLogAnswer) log = NULL;
  g_autoptr(GError) error = NULL;

  add_line (book, book->till, stead_day_new (2026, 3, 7), 4500, STEAD_CASH_SALES, 0, 0);
  add_line (book, book->till, stead_day_new (2026, 3, 8), -800, STEAD_CASH_FEES, book->fund, 0);
  log = stead_log_answer_cash (book->farm.store, book->till, STEAD_DAY_NONE, STEAD_DAY_NONE, &error);
  g_assert_no_error (error);
  g_assert_cmpuint (log->rows->len, ==, 2);
  g_assert_cmpint (stead_log_answer_cell (log, 0, 4)->whole, ==, 4500);
  g_assert_false (stead_log_answer_cell (log, 0, 5)->filled);
  g_assert_cmpint (stead_log_answer_cell (log, 1, 5)->whole, ==, 800);
  g_assert_cmpint (stead_log_answer_cell (log, 1, 6)->whole, ==, 2000 + 4500 - 800);
  g_assert_cmpstr (stead_log_answer_cell (log, 1, 7)->text, ==, "Pen");
}

static gint64
figure (JsonNode *figures, const char *name)
{
  return json_object_get_int_member (json_node_get_object (figures), name);
}

static void
test_questions (Book *book, gconstpointer data)
{
  SteadEnterprise eggs = { .name = (char *) "Eggs" };
  g_autoptr(JsonNode) cash = NULL;
  g_autoptr(JsonNode) statement = NULL;
  g_autoptr(JsonNode) part = NULL;
  g_autofree char *first = NULL;
  g_autofree char *second = NULL;
  g_autofree char *third = NULL;
  g_autoptr(GError) error = NULL;

  add_line (book, book->till, stead_day_new (2026, 3, 7), 4500, STEAD_CASH_SALES, 0, 0);
  FARM_DO (&book->farm, stead_enterprise_repo_save (book->farm.store, &eggs, &farm_error));
  g_assert_true (stead_question_ask (book->farm.store, "cash", NULL, &first, &cash, &error));
  g_assert_cmpint (figure (cash, "cents"), ==, 36500);
  g_assert_true (stead_question_ask (book->farm.store, "statement", NULL, &second, &statement, &error));
  g_assert_cmpint (figure (statement, "sales_cents"), ==, 4500);
  g_assert_cmpint (figure (statement, "operating_cents"), ==, 4500);
  g_assert_true (stead_question_ask (book->farm.store, "statement", "eggs", &third, &part, &error));
  g_assert_cmpint (figure (part, "sales_cents"), ==, 0);
  g_clear_pointer (&third, g_free);
  g_clear_pointer (&part, json_node_unref);
  g_assert_false (stead_question_ask (book->farm.store, "statement", "Geese", &third, &part, &error));
  g_assert_nonnull (error);
}

/* Each face is smaller than the one before it, and every cent can be counted. */
static void
test_faces (void)
{
  static const char * const currencies[] = { "USD", "EUR", "MXN" };

  for (gsize i = 0; i < G_N_ELEMENTS (currencies); i++)
    {
      gsize n;
      const gint64 *faces = stead_cash_faces (currencies[i], &n);

      for (gsize j = 1; j < n; j++)
        g_assert_cmpint (faces[j], <, faces[j - 1]);
      g_assert_cmpint (faces[n - 1], ==, 1);
    }
}

/* Every row of the table has its sentence and its source. */
static void
test_rules (void)
{
  g_autoptr(GPtrArray) rules = stead_cash_rules_list ();

  g_assert_cmpuint (rules->len, ==, 11);
  for (guint i = 0; i < rules->len; i++)
    {
      const SteadCashRule *rule = rules->pdata[i];

      g_assert_nonnull (rule->text);
      g_assert_cmpstr (rule->source, !=, "");
    }
}

#define ADD(name, func) g_test_add ("/answer/cash/" name, Book, NULL, book_set_up, func, book_tear_down)

int
main (int argc, char **argv)
{
  farm_start (&argc, &argv);
  ADD ("sums", test_sums);
  ADD ("whys", test_whys);
  ADD ("moves", test_moves);
  ADD ("marked-name", test_marked_name);
  ADD ("looks", test_looks);
  ADD ("bank", test_bank);
  ADD ("bank-columns", test_bank_columns);
  ADD ("log", test_log);
  ADD ("questions", test_questions);
  g_test_add_func ("/answer/cash/faces", test_faces);
  g_test_add_func ("/answer/cash/rules", test_rules);
  return g_test_run ();
}
