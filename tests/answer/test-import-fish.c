/* test-import-fish.c - logs of fish and weighings out of a table, row by row. */
#include "shoal.h"

#include "answer/stead-import-answer.h"

#include <glib/gstdio.h>
#include <math.h>
#include <string.h>

#define POUND_KG 0.45359237   /* NIST SP 811, appendix B */

static SteadImport *
read_text (Shoal            *shoal,
           SteadImportKind  kind,
           gint64           batch_id,
           const char      *text)
{
  g_autoptr(GError) error = NULL;
  g_autofree char *path = NULL;
  int file = g_file_open_tmp ("stead-import-XXXXXX.csv", &path, &error);
  SteadImport *import;

  g_assert_no_error (error);
  g_assert_true (g_close (file, NULL));
  g_assert_true (g_file_set_contents (path, text, -1, &error));
  import = stead_import_read (shoal->farm.store, kind, batch_id, path, STEAD_DATE_ORDER_UNKNOWN, NULL, NULL, NULL, &error);
  g_unlink (path);
  g_assert_no_error (error);
  return import;
}

static void
assert_counts (SteadImport *import,
               guint        take,
               guint        skip,
               guint        wrong)
{
  for (guint i = 0; i < stead_import_get_n_rows (import); i++)
    {
      const SteadImportRow *row = stead_import_get_row (import, i);

      g_test_message ("line %u: %s %s", row->line, row->understood != NULL ? row->understood : "–",
                      row->message != NULL ? row->message : "");
    }
  g_assert_cmpuint (stead_import_count (import, STEAD_ROW_TAKE), ==, take);
  g_assert_cmpuint (stead_import_count (import, STEAD_ROW_SKIP), ==, skip);
  g_assert_cmpuint (stead_import_count (import, STEAD_ROW_WRONG), ==, wrong);
}

static void
assert_wrong (SteadImport *import,
              guint        i,
              int          column,
              const char  *says)
{
  const SteadImportRow *row = stead_import_get_row (import, i);

  g_assert_cmpint (row->state, ==, STEAD_ROW_WRONG);
  g_assert_cmpint (row->column, ==, column);
  if (strstr (row->message, says) == NULL)
    g_error ("“%s” does not say “%s”", row->message, says);
}

static void
take (Shoal        *shoal,
      SteadImport *import)
{
  g_autoptr(GError) error = NULL;

  g_assert_true (stead_import_take (import, shoal->farm.store, NULL, NULL, NULL, &error));
  g_assert_no_error (error);
}

/* --- the log -------------------------------------------------------------------------- */

static void
test_log (Shoal          *shoal,
          gconstpointer  data)
{
  static const char text[] =
    "Date,Feed (lb),Water temp (F),Died,Culled,Feed left,Reason,Note,By\n"
    "2026-03-01,0.5,78,1,0,no,jumped out,windy,Nobody Known\n"
    "2026-03-02,8 oz,25 C,,,yes,,,\n"
    "2026-03-03,,,,,,,,\n"
    "2026-03-04,,,,,,,Only a note,\n";
  g_autoptr(SteadImport) import = read_text (shoal, STEAD_IMPORT_FISH_LOG, 0, text);
  g_autoptr(SteadImport) again = NULL;
  g_autoptr(GPtrArray) entries = NULL;
  const SteadFishEntry *entry;

  assert_counts (import, 3, 1, 0);
  g_assert_cmpstr (stead_import_get_row (import, 0)->understood, ==,
                   "Mar 1, 2026; 0.5 lb of feed; 78 °F; 1 fish found dead; note “windy (by Nobody Known)”");
  take (shoal, import);
  entries = stead_fish_repo_entries (shoal->farm.store, shoal->fish, shoal->farm.today - 45, shoal->farm.today, NULL);
  g_assert_cmpuint (entries->len, ==, 3);
  entry = entries->pdata[0];
  g_assert_cmpfloat_with_epsilon (entry->feed_kg, 0.5 * POUND_KG, 1e-9);
  g_assert_cmpfloat_with_epsilon (entry->water_c, (78 - 32) / 1.8, 1e-9);
  g_assert_cmpint (entry->deaths, ==, 1);
  g_assert_cmpstr (entry->reason, ==, "jumped out");
  entry = entries->pdata[1];
  g_assert_cmpfloat_with_epsilon (entry->feed_kg, 0.5 * POUND_KG, 1e-9);
  g_assert_cmpfloat_with_epsilon (entry->water_c, 25, 1e-9);
  g_assert_true (entry->refused);
  again = read_text (shoal, STEAD_IMPORT_FISH_LOG, shoal->fish, text);
  assert_counts (again, 0, 4, 0);
}

/* Rows may stand in any order; what earlier ones lose is not there for later ones. */
static void
test_log_wrong (Shoal          *shoal,
                gconstpointer  data)
{
  static const char text[] =
    "Date,Feed (kg),Temperature,Dead\n"
    "2026-03-20,,,20\n"
    "2026-03-01,,,90\n"
    "2025-12-01,0.1,,\n"
    "2026-04-01,0.1,,\n"
    "2026-03-02,9,,\n"
    "2026-03-02,,150,\n"
    "2026-03-02,,78 kg,\n"
    "2026-03-02,,,-1\n"
    "2026-03-25,0.3,,\n";
  g_autoptr(SteadImport) import = read_text (shoal, STEAD_IMPORT_FISH_LOG, 0, text);

  assert_counts (import, 2, 0, 7);
  assert_wrong (import, 0, 3, "only 10 fish that can go");
  g_assert_cmpint (stead_import_get_row (import, 1)->state, ==, STEAD_ROW_TAKE);
  assert_wrong (import, 2, 0, "began on");
  assert_wrong (import, 3, 0, "still to come");
  assert_wrong (import, 4, 1, "a third");
  assert_wrong (import, 5, 2, "−5 to 60 °C");
  assert_wrong (import, 6, 2, "kg");
  assert_wrong (import, 7, 3, "");
  take (shoal, import);
}

static void
test_log_spanish (Shoal          *shoal,
                  gconstpointer  data)
{
  g_autoptr(SteadImport) import = read_text (shoal, STEAD_IMPORT_FISH_LOG, 0,
                                             "Fecha;Alimento (kg);Temperatura del agua (C);Peces muertos;Sobró;Nota\n"
                                             "2026-03-01;0,25;26,5;2;sí;turbia\n");
  g_autoptr(GPtrArray) entries = NULL;
  const SteadFishEntry *entry;

  assert_counts (import, 1, 0, 0);
  take (shoal, import);
  entries = stead_fish_repo_entries (shoal->farm.store, shoal->fish, shoal->farm.today - 45, shoal->farm.today, NULL);
  entry = entries->pdata[0];
  g_assert_cmpfloat_with_epsilon (entry->feed_kg, 0.25, 1e-9);
  g_assert_cmpfloat_with_epsilon (entry->water_c, 26.5, 1e-9);
  g_assert_cmpint (entry->deaths, ==, 2);
  g_assert_true (entry->refused);
}

static void
test_log_refused (Shoal          *shoal,
                  gconstpointer  data)
{
  g_autoptr(GError) error = NULL;
  g_autofree char *path = NULL;
  int file = g_file_open_tmp ("stead-import-XXXXXX.csv", &path, &error);

  g_assert_true (g_close (file, NULL));
  g_assert_true (g_file_set_contents (path, "Date,Eggs\n2026-03-01,3\n", -1, &error));
  g_assert_null (stead_import_read (shoal->farm.store, STEAD_IMPORT_FISH_LOG, 0, path, STEAD_DATE_ORDER_UNKNOWN, NULL,
                                    NULL, NULL, &error));
  g_assert_nonnull (strstr (error->message, "Temperature (F)"));
  g_clear_error (&error);
  shoal_group (shoal, "Others", shoal->tank, 10, 50, 10);
  g_assert_true (g_file_set_contents (path, "Date,Feed\n2026-03-01,3\n", -1, &error));
  g_assert_null (stead_import_read (shoal->farm.store, STEAD_IMPORT_FISH_LOG, 0, path, STEAD_DATE_ORDER_UNKNOWN, NULL,
                                    NULL, NULL, &error));
  g_assert_nonnull (strstr (error->message, "several groups of fish"));
  g_unlink (path);
}

/* --- weighings --------------------------------------------------------------------------- */

static void
test_samples (Shoal          *shoal,
              gconstpointer  data)
{
  static const char text[] =
    "Date,Number,Total weight (lb),Mean weight (oz),Mean length (in),Note\n"
    "2026-03-01,30,5.5,,,bulk\n"
    "2026-03-15,20,,3.2,7.5,\n"
    "2026-03-15,200,,3.2,,\n"
    "2026-03-20,10,,,,\n";
  g_autoptr(SteadImport) import = read_text (shoal, STEAD_IMPORT_WEIGHINGS, 0, text);
  g_autoptr(SteadImport) again = NULL;
  g_autoptr(GPtrArray) list = NULL;
  const SteadWeighing *weighing;

  assert_counts (import, 2, 0, 2);
  assert_wrong (import, 2, 0, "200 were weighed, but only 100 were alive in “Tilapia”");
  assert_wrong (import, 3, 1, "The weight is missing");
  g_assert_cmpstr (stead_import_get_row (import, 0)->understood, ==,
                   "Mar 1, 2026; 30 fish, 5.5 lb together, 2.9 oz each");
  take (shoal, import);
  list = stead_weighing_repo_list (shoal->farm.store, shoal->fish, NULL);
  g_assert_cmpuint (list->len, ==, 2);
  weighing = list->pdata[0];
  g_assert_cmpint (weighing->n, ==, 30);
  g_assert_cmpfloat_with_epsilon (weighing->total_kg, 5.5 * POUND_KG, 1e-9);
  g_assert_true (isnan (weighing->sd_g));
  g_assert_cmpstr (weighing->note, ==, "bulk");
  weighing = list->pdata[1];
  g_assert_cmpfloat_with_epsilon (weighing->total_kg, 20 * 3.2 / 16 * POUND_KG, 1e-9);
  g_assert_cmpfloat_with_epsilon (weighing->length_cm, 7.5 * 2.54, 1e-9);
  again = read_text (shoal, STEAD_IMPORT_WEIGHINGS, 0, text);
  assert_counts (again, 0, 2, 2);
}

/* A row a fish: those of one day are one weighing; 90, 100, 120 and 130 g, sd = sqrt (1000 / 3). */
static void
test_single_fish (Shoal          *shoal,
                  gconstpointer  data)
{
  static const char text[] =
    "Date,Weight (g),Length (cm)\n"
    "2026-03-01,90,20\n2026-03-01,100,\n2026-03-08,95,\n2026-03-01,120,22\n2026-03-01,130,24\n2026-03-08,0,20\n";
  g_autoptr(SteadImport) import = read_text (shoal, STEAD_IMPORT_WEIGHINGS, 0, text);
  g_autoptr(SteadImport) again = NULL;
  g_autoptr(GPtrArray) list = NULL;
  const SteadWeighing *weighing;

  assert_counts (import, 5, 0, 1);
  assert_wrong (import, 5, -1, "Weight 1 cannot be");
  g_assert_cmpstr (stead_import_get_row (import, 0)->understood, ==, "Mar 1, 2026; one fish of 3.2 oz");
  take (shoal, import);
  list = stead_weighing_repo_list (shoal->farm.store, shoal->fish, NULL);
  g_assert_cmpuint (list->len, ==, 2);
  weighing = list->pdata[0];
  g_assert_cmpint (weighing->n, ==, 4);
  g_assert_cmpfloat_with_epsilon (stead_weighing_mean_g (weighing), 110, 1e-9);
  g_assert_cmpfloat_with_epsilon (weighing->sd_g, sqrt (1000 / 3.0), 1e-9);
  g_assert_cmpfloat_with_epsilon (weighing->length_cm, 22, 1e-9);
  g_assert_cmpuint (weighing->single->len, ==, 4);
  again = read_text (shoal, STEAD_IMPORT_WEIGHINGS, 0, text);
  assert_counts (again, 0, 5, 1);
}

static void
test_groups (Shoal          *shoal,
             gconstpointer  data)
{
  gint64 other = shoal_group (shoal, "Truchas", shoal->tank, 50, 50, 40);
  g_autoptr(SteadImport) import = read_text (shoal, STEAD_IMPORT_WEIGHINGS, 0,
                                             "Date,Group,Number,Total weight (kg)\n"
                                             "2026-03-01,truchas,10,0.6\n2026-03-01,Tilapia,10,0.7\n"
                                             "2026-03-01,Perch,10,0.7\n2026-03-01,,10,0.7\n2026-02-18,Truchas,10,0.7\n");
  g_autoptr(GPtrArray) list = NULL;

  assert_counts (import, 2, 0, 3);
  assert_wrong (import, 2, 1, "No group of fish is called “Perch”");
  assert_wrong (import, 3, 1, "Say which group");
  assert_wrong (import, 4, 0, "not under way");
  take (shoal, import);
  list = stead_weighing_repo_list (shoal->farm.store, other, NULL);
  g_assert_cmpuint (list->len, ==, 1);
}

/* "Weight" beside a number may mean all of them, or one. */
static void
test_unclear_weight (Shoal          *shoal,
                     gconstpointer  data)
{
  g_autoptr(SteadImport) import = read_text (shoal, STEAD_IMPORT_WEIGHINGS, 0, "Date,Number,Weight\n2026-03-01,10,2\n");

  assert_counts (import, 0, 0, 1);
  assert_wrong (import, 0, 2, "such as “Total weight” or such as “Mean weight”");
}

static void
test_undo (Shoal          *shoal,
           gconstpointer  data)
{
  g_autoptr(SteadImport) import = read_text (shoal, STEAD_IMPORT_WEIGHINGS, 0,
                                             "Date,Weight (g)\n2026-03-01,90\n2026-03-01,100\n");
  g_autoptr(GPtrArray) list = NULL;
  g_autoptr(GError) error = NULL;
  g_autofree char *name = NULL;

  take (shoal, import);
  name = stead_store_get_undo_name (shoal->farm.store);
  g_assert_cmpstr (name, ==, "Import of 2 rows");
  g_assert_true (stead_store_undo (shoal->farm.store, &error));
  list = stead_weighing_repo_list (shoal->farm.store, shoal->fish, &error);
  g_assert_no_error (error);
  g_assert_cmpuint (list->len, ==, 0);
}

#define TEST(path, func) g_test_add ("/answer/import-fish/" path, Shoal, NULL, shoal_set_up, func, shoal_tear_down)

int
main (int   argc,
      char *argv[])
{
  farm_start (&argc, &argv);
  TEST ("log", test_log);
  TEST ("log-wrong", test_log_wrong);
  TEST ("log-spanish", test_log_spanish);
  TEST ("log-refused", test_log_refused);
  TEST ("samples", test_samples);
  TEST ("single-fish", test_single_fish);
  TEST ("groups", test_groups);
  TEST ("unclear-weight", test_unclear_weight);
  TEST ("one-step-of-undo", test_undo);
  return g_test_run ();
}
