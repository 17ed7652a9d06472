/* test-import-stop.c - a table of each kind: stopped while it is read, stopped while it is taken, taken, and read again.
 *
 * Stopped, nothing of it is in the farm; read again, nothing of it is taken twice.
 */
#include "shoal.h"

#include "answer/stead-answer-error.h"
#include "answer/stead-import-answer.h"
#include "store/stead-bank-repo.h"
#include "store/stead-cash-repo.h"
#include "store/stead-crop-repo.h"
#include "store/stead-harvest-repo.h"
#include "store/stead-place-repo.h"

#include <glib/gstdio.h>
#include <math.h>

typedef struct
{
  Shoal  shoal;
  gint64 crop, bank, cooler;
} World;

static void
set_up (World         *world,
        gconstpointer  data)
{
  Farm *farm = &world->shoal.farm;
  g_autoptr(SteadCrop) crop = stead_crop_new ();
  SteadItem tomatoes = { .name = (char *) "Tomatoes", .kind = STEAD_ITEM_PRODUCE, .unit = stead_unit_by_id ("kg"),
                         .reorder_base = NAN };
  SteadAccount bank = { .name = (char *) "School", .kind = STEAD_ACCOUNT_ACTIVITY, .opened_on = stead_day_new (2026, 3, 1),
                        .closed_on = STEAD_DAY_NONE };
  SteadPlaceFacts cooler = { .name = (char *) "Refrigerator", .kind = STEAD_PLACE_KITCHEN, .area_m2 = NAN };

  shoal_set_up (&world->shoal, NULL);
  crop->batch.name = g_strdup ("Bed 1");
  crop->batch.started_on = crop->set_out_on = stead_day_new (2026, 3, 1);
  crop->plants = 10;
  FARM_DO (farm, stead_item_repo_save (farm->store, &tomatoes, &farm_error)
                 && stead_crop_repo_save (farm->store, crop, &farm_error)
                 && stead_account_repo_save (farm->store, &bank, &farm_error)
                 && stead_place_repo_save (farm->store, &cooler, &farm_error));
  world->crop = crop->batch.id;
  world->bank = bank.id;
  world->cooler = cooler.id;
}

static void
tear_down (World         *world,
           gconstpointer  data)
{
  shoal_tear_down (&world->shoal, NULL);
}

static char *
write_table (const char *text)
{
  g_autoptr(GError) error = NULL;
  char *path = NULL;
  int file = g_file_open_tmp ("stead-import-XXXXXX.csv", &path, &error);

  g_assert_no_error (error);
  g_assert_true (g_close (file, NULL));
  g_assert_true (g_file_set_contents (path, text, -1, &error));
  return path;
}

/* Shares never fall, and end at all of it. */
static void
progress_cb (double   share,
             gpointer data)
{
  double *last = data;

  g_assert_cmpfloat (share, >=, *last);
  g_assert_cmpfloat (share, <=, 1);
  *last = share;
}

/* Two rows of each. */
static void
try_kind (World           *world,
          SteadImportKind  kind,
          gint64           of,
          const char      *text)
{
  SteadStore *store = world->shoal.farm.store;
  g_autofree char *path = write_table (text);
  g_autoptr(GCancellable) stopped = g_cancellable_new ();
  g_autoptr(GError) error = NULL;
  g_autoptr(SteadImport) import = NULL, again = NULL;
  gint64 before = stead_store_get_change_no (store);
  double share = 0;

  g_test_message ("%s", text);
  g_cancellable_cancel (stopped);
  g_assert_null (stead_import_read (store, kind, of, path, STEAD_DATE_ORDER_UNKNOWN, stopped, NULL, NULL, &error));
  g_assert_error (error, G_IO_ERROR, G_IO_ERROR_CANCELLED);
  g_clear_error (&error);
  import = stead_import_read (store, kind, of, path, STEAD_DATE_ORDER_UNKNOWN, NULL, progress_cb, &share, &error);
  g_assert_no_error (error);
  g_assert_cmpuint (stead_import_count (import, STEAD_ROW_TAKE), ==, 2);
  g_assert_false (stead_import_take (import, store, stopped, NULL, NULL, &error));
  g_assert_nonnull (error);
  g_clear_error (&error);
  g_assert_cmpint (stead_store_get_change_no (store), ==, before);
  share = 0;
  g_assert_true (stead_import_take (import, store, NULL, progress_cb, &share, &error));
  g_assert_no_error (error);
  g_assert_cmpfloat (share, ==, 1);
  again = stead_import_read (store, kind, of, path, STEAD_DATE_ORDER_UNKNOWN, NULL, NULL, NULL, &error);
  g_assert_no_error (error);
  g_assert_cmpuint (stead_import_count (again, STEAD_ROW_TAKE), ==, 0);
  g_assert_cmpuint (stead_import_count (again, STEAD_ROW_SKIP), ==, 2);
  g_unlink (path);
}

static void
test_kinds (World         *world,
            gconstpointer  data)
{
  try_kind (world, STEAD_IMPORT_FLOCK_LOG, 0, "Date,Eggs\n2026-03-01,8\n2026-03-02,7\n");
  try_kind (world, STEAD_IMPORT_RECEIPTS, 0, "Date,Supplier,Item,Quantity,Cost\n2026-03-01,Mill,Layer feed,50 kg,60.00\n"
                                             "2026-03-05,Mill,Layer feed,25 kg,31.00\n");
  try_kind (world, STEAD_IMPORT_FISH_LOG, 0, "Date,Feed (kg)\n2026-03-01,0.1\n2026-03-02,0.12\n");
  try_kind (world, STEAD_IMPORT_WEIGHINGS, 0, "Date,Number,Total weight (kg)\n2026-03-01,10,0.8\n2026-03-08,10,0.9\n");
  try_kind (world, STEAD_IMPORT_TEMPERATURES, world->crop, "Date,Max (C),Min (C)\n2026-03-02,25,12\n2026-03-03,24,11\n");
  try_kind (world, STEAD_IMPORT_PICKS, world->crop, "Date,Picked (kg)\n2026-03-22,3\n2026-03-23,2\n");
  try_kind (world, STEAD_IMPORT_BANK, world->bank, "Date,Amount\n2026-03-04,45.00\n2026-03-05,-20.00\n");
  try_kind (world, STEAD_IMPORT_PEOPLE, 0, "Name\nMara K.\nLin T.\n");
  try_kind (world, STEAD_IMPORT_COOLER, world->cooler, "Date and time,Temperature (C)\n2026-03-01 08:00,3\n"
                                                       "2026-03-01 09:00,3.5\n");
}

/* --- a statement of the bank --------------------------------------------------------------------- */

static SteadImport *
read_bank (World       *world,
           gint64       account,
           const char  *text,
           GError     **error)
{
  g_autofree char *path = write_table (text);
  SteadImport *import = stead_import_read (world->shoal.farm.store, STEAD_IMPORT_BANK, account, path,
                                           STEAD_DATE_ORDER_UNKNOWN, NULL, NULL, NULL, error);

  g_unlink (path);
  return import;
}

/* The account was opened on March 1; the statement to March 10 was agreed to. */
static void
test_bank_days (World         *world,
                gconstpointer  data)
{
  Farm *farm = &world->shoal.farm;
  SteadBankSheet sheet = { .account_id = world->bank, .through_day = stead_day_new (2026, 3, 10), .closing_cents = 0 };
  SteadPerson advisor = { .name = (char *) "Ms. Reed", .role = STEAD_PERSON_ADVISOR, .left_on = STEAD_DAY_NONE };
  g_autoptr(GError) error = NULL;
  g_autoptr(SteadImport) import = NULL;

  FARM_DO (farm, stead_person_repo_save (farm->store, &advisor, &farm_error)
                 && stead_bank_repo_save_sheet (farm->store, &sheet, &farm_error)
                 && stead_bank_repo_agree (farm->store, sheet.id, advisor.id, &farm_error));
  import = read_bank (world, world->bank, "Date,Money in,Money out\n2026-02-28,5,\n2026-03-10,5,\n2026-03-11,,7.50\n"
                                          "2026-03-12,5,7\n2026-03-13,x,\n2026-03-14,,y\n2026-03-15,,\n", &error);
  g_assert_no_error (error);
  g_assert_cmpint (stead_import_get_row (import, 0)->state, ==, STEAD_ROW_WRONG);
  g_assert_cmpint (stead_import_get_row (import, 1)->state, ==, STEAD_ROW_SKIP);
  g_assert_cmpint (stead_import_get_row (import, 2)->state, ==, STEAD_ROW_TAKE);
  g_assert_cmpint (stead_import_get_row (import, 4)->state, ==, STEAD_ROW_WRONG);
  g_assert_cmpint (stead_import_get_row (import, 4)->column, ==, 1);
  g_assert_cmpint (stead_import_get_row (import, 5)->state, ==, STEAD_ROW_WRONG);
  g_assert_cmpint (stead_import_get_row (import, 5)->column, ==, 2);
  g_assert_cmpint (stead_import_get_row (import, 6)->state, ==, STEAD_ROW_WRONG);
  if (farm_in_english ())
    {
      g_assert_cmpstr (stead_import_get_row (import, 0)->message, ==, "The account was not open on that day. Check the date.");
      g_assert_cmpstr (stead_import_get_row (import, 1)->message, ==,
                       "A statement that agrees with the book covers this day already.");
      g_assert_cmpstr (stead_import_get_row (import, 2)->understood, ==, "Mar 11, 2026; −$7.50, not in the cash book yet");
    }
}

static void
assert_bank_refused (World      *world,
                     const char *text,
                     const char *words)
{
  g_autoptr(GError) error = NULL;

  g_assert_null (read_bank (world, 0, text, &error));
  g_assert_error (error, STEAD_ANSWER_ERROR, STEAD_ANSWER_ERROR_INPUT);
  if (farm_in_english ())
    g_assert_true (g_str_has_prefix (error->message, words));
}

/* Without an account named the only one is meant; a closed one and a till have no statements. */
static void
test_bank_account (World         *world,
                   gconstpointer  data)
{
  static const char row[] = "Date,Amount\n2026-03-04,45.00\n";
  Farm *farm = &world->shoal.farm;
  SteadAccount other = { .name = (char *) "Club", .kind = STEAD_ACCOUNT_ACTIVITY, .opened_on = farm->today - 5,
                         .closed_on = STEAD_DAY_NONE };
  SteadAccount till = { .name = (char *) "Till", .kind = STEAD_ACCOUNT_TILL, .opened_on = farm->today - 5,
                        .closed_on = STEAD_DAY_NONE };
  g_autoptr(GError) error = NULL;
  g_autoptr(SteadImport) only = NULL, still = NULL;

  FARM_DO (farm, stead_account_repo_save (farm->store, &till, &farm_error));
  only = read_bank (world, 0, row, &error);
  g_assert_no_error (error);
  assert_bank_refused (world, "Date,Words\n2026-03-04,x\n", "The first row must name the columns: Date and Amount");
  FARM_DO (farm, stead_account_repo_save (farm->store, &other, &farm_error));
  assert_bank_refused (world, row, "Say which account the statement is of.");
  other.closed_on = farm->today;
  FARM_DO (farm, stead_account_repo_save (farm->store, &other, &farm_error));
  still = read_bank (world, 0, row, &error);
  g_assert_no_error (error);
  FARM_DO (farm, stead_account_repo_delete (farm->store, world->bank, &farm_error));
  assert_bank_refused (world, row, "The cash book has no account with a statement. Enter the account first.");
}

#define ADD(name, test) g_test_add ("/answer/import-stop/" name, World, NULL, set_up, test, tear_down)

int
main (int    argc,
      char **argv)
{
  farm_start (&argc, &argv);
  ADD ("kinds", test_kinds);
  ADD ("bank-days", test_bank_days);
  ADD ("bank-account", test_bank_account);
  return g_test_run ();
}
