/* test-import-crop.c - temperatures of a logger and picks of a crop, row by row. */
#include "farm.h"

#include "answer/stead-import-answer.h"
#include "store/stead-crop-repo.h"
#include "store/stead-harvest-repo.h"

#include <glib/gstdio.h>
#include <math.h>
#include <string.h>

#define LB 0.45359237   /* NIST Special Publication 811, appendix B */

static gint64
plant (Farm *farm)
{
  g_autoptr(SteadCrop) crop = stead_crop_new ();

  crop->batch.name = g_strdup ("Tomatoes");
  crop->batch.started_on = crop->set_out_on = stead_day_new (2026, 3, 1);
  crop->plants = 10;
  FARM_DO (farm, stead_crop_repo_save (farm->store, crop, &farm_error));
  return crop->batch.id;
}

static SteadImport *
read_text (Farm            *farm,
           SteadImportKind  kind,
           gint64           crop_id,
           const char      *text)
{
  g_autoptr(GError) error = NULL;
  g_autofree char *path = NULL;
  int file = g_file_open_tmp ("stead-import-XXXXXX.csv", &path, &error);
  SteadImport *import;

  g_assert_no_error (error);
  g_assert_true (g_close (file, NULL));
  g_assert_true (g_file_set_contents (path, text, -1, &error));
  import = stead_import_read (farm->store, kind, crop_id, path, STEAD_DATE_ORDER_UNKNOWN, NULL, NULL, NULL, &error);
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
take (Farm        *farm,
      SteadImport *import)
{
  g_autoptr(GError) error = NULL;

  g_assert_true (stead_import_take (import, farm->store, NULL, NULL, NULL, &error));
  g_assert_no_error (error);
}

static GPtrArray *
log_of (Farm *farm)
{
  g_autoptr(GError) error = NULL;
  GPtrArray *days = stead_climate_repo_list (farm->store, 0, stead_day_new (2026, 3, 1), farm->today, &error);

  g_assert_no_error (error);
  return days;
}

/* --- temperatures ----------------------------------------------------------------- */

/* A logger's readings through two days become two days. */
static void
test_logger (Farm          *farm,
             gconstpointer  data)
{
  static const char text[] =
    "Date Time,Temperature (F),Humidity (%)\n"
    "2026-03-02 06:00,50,90\n"
    "2026-03-02 14:00,86,50\n"
    "2026-03-02 22:00,60,70\n"
    "2026-03-03 06:00,-4,\n"
    "2026-03-03 14:00,,\n";
  gint64 crop = plant (farm);
  g_autoptr(SteadImport) import = read_text (farm, STEAD_IMPORT_TEMPERATURES, crop, text);
  g_autoptr(SteadImport) again = NULL;
  g_autoptr(GPtrArray) days = NULL;
  const SteadClimateDay *day;

  assert_counts (import, 4, 1, 0);
  if (farm_in_english ())
    g_assert_cmpstr (stead_import_get_row (import, 1)->understood, ==, "Mar 2, 2026; 86 °F; humidity 50%");
  take (farm, import);
  days = log_of (farm);
  g_assert_cmpuint (days->len, ==, 2);
  day = days->pdata[0];
  g_assert_cmpfloat_with_epsilon (day->min_c, 10, 1e-9);
  g_assert_cmpfloat_with_epsilon (day->max_c, 30, 1e-9);
  g_assert_cmpfloat_with_epsilon (day->rh_frac, 0.7, 1e-9);
  day = days->pdata[1];
  g_assert_cmpfloat_with_epsilon (day->min_c, -20, 1e-9);
  g_assert_true (isnan (day->rh_frac));
  again = read_text (farm, STEAD_IMPORT_TEMPERATURES, crop, text);
  assert_counts (again, 0, 5, 0);
}

static void
test_days (Farm          *farm,
           gconstpointer  data)
{
  static const char text[] =
    "Date;Max (C);Min (C);Light;Note\n"
    "2026-03-02;25,5;12;18;\n"
    "2026-03-03;12;25;;\n"
    "2026-03-04;80;10;;\n"
    "2026-04-04;20;10;;\n"
    "2026-03-05;20;10;120;\n"
    "2026-03-06;20;;;door open\n";
  gint64 crop = plant (farm);
  g_autoptr(SteadImport) import = read_text (farm, STEAD_IMPORT_TEMPERATURES, crop, text);
  g_autoptr(GPtrArray) days = NULL;
  const SteadClimateDay *day;

  assert_counts (import, 2, 0, 4);
  if (farm_in_english ())
    {
      assert_wrong (import, 1, 1, "above the highest");
      assert_wrong (import, 2, 1, "between −60 and 70");
      assert_wrong (import, 3, 0, "still to come");
      assert_wrong (import, 4, 3, "never reaches");
    }
  take (farm, import);
  days = log_of (farm);
  g_assert_cmpuint (days->len, ==, 2);
  day = days->pdata[0];
  g_assert_cmpfloat_with_epsilon (day->max_c, 25.5, 1e-9);
  g_assert_cmpfloat_with_epsilon (day->light_mol, 18, 1e-9);
  day = days->pdata[1];
  g_assert_true (isnan (day->min_c));
  g_assert_cmpstr (day->note, ==, "door open");
}

/* --- picks ------------------------------------------------------------------------ */

static void
test_picks (Farm          *farm,
            gconstpointer  data)
{
  static const char text[] =
    "Date,Picked (lb),Grade,Thrown out (lb),Reason,Note\n"
    "2026-03-20,12,first,,,\n"
    "2026-03-22,8 oz,,1,cracked,hot day\n"
    "2026-03-23,2,,1,,\n"
    "2026-02-20,2,,,,\n"
    "2026-03-24,,,,,\n"
    "2026-03-25,-2,,,,\n";
  gint64 crop = plant (farm);
  g_autoptr(SteadImport) import = read_text (farm, STEAD_IMPORT_PICKS, crop, text);
  g_autoptr(SteadImport) again = NULL;
  g_autoptr(GPtrArray) picks = NULL;
  const SteadHarvest *pick;

  assert_counts (import, 2, 1, 3);
  if (farm_in_english ())
    {
      g_assert_cmpstr (stead_import_get_row (import, 0)->understood, ==, "Mar 20, 2026; 12 lb picked; grade “first”");
      assert_wrong (import, 2, 3, "why it was thrown out");
      assert_wrong (import, 3, 0, "did not grow");
    }
  take (farm, import);
  picks = stead_harvest_repo_list (farm->store, crop, stead_day_new (2026, 3, 1), farm->today, NULL);
  g_assert_cmpuint (picks->len, ==, 2);
  pick = picks->pdata[0];
  g_assert_cmpfloat_with_epsilon (pick->quantity_base, 12 * LB, 1e-9);
  g_assert_cmpstr (pick->grade, ==, "first");
  g_assert_nonnull (pick->lot_code);
  pick = picks->pdata[1];
  g_assert_cmpfloat_with_epsilon (pick->quantity_base, 0.5 * LB, 1e-9);
  g_assert_cmpfloat_with_epsilon (pick->lost_base, LB, 1e-9);
  g_assert_cmpstr (pick->reason, ==, "cracked");
  again = read_text (farm, STEAD_IMPORT_PICKS, 0, text);     /* the only crop */
  assert_counts (again, 0, 3, 3);
}

static void
test_header (Farm          *farm,
             gconstpointer  data)
{
  g_autoptr(GError) error = NULL;
  g_autofree char *path = NULL;
  int file = g_file_open_tmp ("stead-import-XXXXXX.csv", &path, NULL);

  g_assert_true (g_close (file, NULL));
  g_assert_true (g_file_set_contents (path, "Date,Max\n2026-03-02,20\n", -1, NULL));
  g_assert_null (stead_import_read (farm->store, STEAD_IMPORT_TEMPERATURES, plant (farm), path,
                                    STEAD_DATE_ORDER_UNKNOWN, NULL, NULL, NULL, &error));
  g_unlink (path);
  g_assert_nonnull (error);
  if (farm_in_english ())
    g_assert_nonnull (strstr (error->message, "Highest"));
}

#define ADD(path, func) g_test_add ("/answer/import-crop/" path, Farm, NULL, farm_set_up, func, farm_tear_down)

int
main (int    argc,
      char **argv)
{
  farm_start (&argc, &argv);
  ADD ("logger", test_logger);
  ADD ("days", test_days);
  ADD ("picks", test_picks);
  ADD ("header", test_header);
  return g_test_run ();
}
