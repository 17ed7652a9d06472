/* test-money.c - the statements, the cash book and the counting sheet, read back with pdftotext.
 *
 * The figures are those that tests/answer/test-statement.c works out by hand.
 * STEAD_KEEP=FOLDER leaves the papers there, for the eye.
 */
#include "farm.h"

#include <glib/gstdio.h>
#include <string.h>

#include "paper/stead-paper.h"
#include "store/stead-cash-repo.h"

static void
add_line (Farm *farm, gint64 account, SteadDay day, gint64 cents, SteadCashCategory category, gint64 fund, const char *who)
{
  g_autoptr(SteadCashLine) line = stead_cash_line_new ();

  line->account_id = account;
  line->day = day;
  line->cents = cents;
  line->category = category;
  line->fund_id = fund;
  line->who = g_strdup (who);
  line->product_id = category == STEAD_CASH_SALES ? farm->product : 0;
  FARM_DO (farm, stead_cash_repo_save (farm->store, line, &farm_error));
}

static void
farm_with_money (Farm *farm)
{
  SteadAccount till = { .name = (char *) "Till box", .kind = STEAD_ACCOUNT_TILL, .opened_on = stead_day_new (2026, 3, 1),
                        .opening_cents = 5000, .closed_on = STEAD_DAY_NONE };
  SteadFund fund = { .name = (char *) "New pen", .closed_on = STEAD_DAY_NONE };

  farm_set_up (farm, NULL);
  farm_stock (farm);
  farm_log (farm);
  FARM_DO (farm, stead_account_repo_save (farm->store, &till, &farm_error)
                 && stead_fund_repo_save (farm->store, &fund, &farm_error));
  for (int i = 0; i < 12; i++)
    add_line (farm, till.id, stead_day_new (2026, 3, 2 + 2 * i), 750, STEAD_CASH_SALES, 0, "Saturday market");
  add_line (farm, till.id, stead_day_new (2026, 3, 7), -2000, STEAD_CASH_FEES, 0, "Market board");
  add_line (farm, till.id, stead_day_new (2026, 3, 15), 10000, STEAD_CASH_GRANT, fund.id, "Parents");
}

static char *
folder_new (void)
{
  const char *keep = g_getenv ("STEAD_KEEP");

  if (keep == NULL)
    return g_dir_make_tmp ("steading-money-XXXXXX", NULL);
  g_mkdir_with_parents (keep, 0755);
  return g_strdup (keep);
}

/* The text of a paper as a reader that is not ours sees it. */
static char *
text_of (Farm *farm, const char *folder, const char *name)
{
  SteadPaperOptions options = { .period = STEAD_PERIOD_WHOLE_BATCH };
  g_autofree char *file = g_strconcat (name, ".pdf", NULL);
  g_autofree char *path = g_build_filename (folder, file, NULL);
  g_autofree char *command = g_strdup_printf ("pdftotext -layout %s -", path);
  g_autoptr(GError) error = NULL;
  char *text = NULL;

  g_assert_true (stead_paper_write (farm->store, name, NULL, &options, path, &error));
  g_assert_no_error (error);
  g_assert_true (g_spawn_command_line_sync (command, &text, NULL, NULL, &error));
  g_assert_no_error (error);
  if (g_getenv ("STEAD_KEEP") == NULL)
    g_remove (path);
  return text;
}

/* One line of the text has both. */
static void
assert_row (const char *text, const char *label, const char *figures)
{
  g_auto(GStrv) lines = g_strsplit (text, "\n", -1);

  for (guint i = 0; lines[i] != NULL; i++)
    if (strstr (lines[i], label) != NULL && strstr (lines[i], figures) != NULL)
      return;
  g_test_message ("%s", text);
  g_error ("no line has “%s” and “%s”", label, figures);
}

static void
test_statements (void)
{
  Farm farm = { 0 };
  g_autofree char *folder = folder_new ();
  g_autofree char *text = NULL;

  farm_with_money (&farm);
  text = text_of (&farm, folder, "statements");
  assert_row (text, "Sales", "$90.00");
  assert_row (text, "From running the farm", "$70.00");
  assert_row (text, "Cost of flocks that lay", "−$49.60");   /* 31 kg at 1.28, 248 eggs at 0.04 */
  assert_row (text, "Flocks", "$111.20");
  assert_row (text, "Of it for one purpose only: New pen", "$100.00");
  g_assert_nonnull (strstr (text, "Balance sheet"));
  farm_tear_down (&farm, NULL);
  g_rmdir (folder);
}

static void
test_cash_book (void)
{
  Farm farm = { 0 };
  g_autofree char *folder = folder_new ();
  g_autofree char *text = NULL;

  farm_with_money (&farm);
  text = text_of (&farm, folder, "cash-book");
  assert_row (text, "Till box", "$220.00");
  assert_row (text, "Market board", "−$20.00");
  assert_row (text, "Parents", "$100.00");
  /* Utah Code 51-4-2: daily if practicable, never later than every three banking days. */
  g_assert_nonnull (strstr (text, "within 3 banking days"));
  g_assert_nonnull (strstr (text, "Utah Code 51-4-2"));
  farm_tear_down (&farm, NULL);
  g_rmdir (folder);
}

static void
test_count_sheet (void)
{
  Farm farm = { 0 };
  g_autofree char *folder = folder_new ();
  g_autofree char *text = NULL;

  farm_with_money (&farm);
  text = text_of (&farm, folder, "count-sheet");
  assert_row (text, "$20.00", "____");
  g_assert_nonnull (strstr (text, "Second person, name and signature"));
  g_assert_nonnull (strstr (text, "next banking day"));
  farm_tear_down (&farm, NULL);
  g_rmdir (folder);
}

int
main (int argc, char **argv)
{
  farm_start (&argc, &argv);
  g_test_add_func ("/paper/money/statements", test_statements);
  g_test_add_func ("/paper/money/cash-book", test_cash_book);
  g_test_add_func ("/paper/money/count-sheet", test_count_sheet);
  return g_test_run ();
}
