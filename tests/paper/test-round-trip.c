/* test-round-trip.c - what was saved as CSV comes back as it was. */
#include <glib/gstdio.h>
#include <math.h>

#include "answer/stead-import-answer.h"
#include "paper/stead-paper.h"
#include "shoal.h"

/* A log with what is hard: a formula, quotes, a line break, gaps, deaths, days left out. */
static void
fill_log (Farm *farm)
{
  static const char * const notes[] = { "=1+1", "the \"red\" door, left", "two\nlines", "-5 at night", "@home", "ñandú" };
  SteadDay first = stead_day_new (2026, 2, 1);

  for (int i = 0; i < 12; i++)
    {
      SteadFlockEntry entry = { .flock_id = farm->flock, .day = first + i, .eggs = i == 3 ? STEAD_COUNT_NONE : 8 - i % 4,
                                .cracked = i % 3 == 1 ? 1 : 0, .deaths = i == 5, .culled = i == 8,
                                .feed_kg = i % 2 ? NAN : 1.25 + i * 0.01, .left_out = i % 4 == 2,
                                .reason = i == 5 ? (char *) "a hawk, \"again\"" : NULL,
                                .note = i < 6 ? (char *) notes[i] : NULL };

      if (entry.eggs == STEAD_COUNT_NONE)
        entry.cracked = 0;
      FARM_DO (farm, stead_flock_repo_save_entry (farm->store, &entry, &farm_error));
    }
}

static SteadImport *
export_and_read (Farm       *from,
                 Farm       *to,
                 const char *path)
{
  g_autoptr(GError) error = NULL;
  SteadImport *import;

  g_assert_true (stead_paper_write (from->store, "flock-log", NULL, NULL, path, &error));
  g_assert_no_error (error);
  import = stead_import_read (to->store, STEAD_IMPORT_FLOCK_LOG, to->flock, path, STEAD_DATE_ORDER_UNKNOWN,
                              NULL, NULL, NULL, &error);
  g_assert_no_error (error);
  return import;
}

static void
test_back_into_another_farm (void)
{
  g_autofree char *folder = g_dir_make_tmp ("steading-trip-XXXXXX", NULL);
  g_autofree char *path = g_build_filename (folder, "log.csv", NULL);
  SteadDay first = stead_day_new (2026, 2, 1);
  g_autoptr(GPtrArray) before = NULL;
  g_autoptr(GPtrArray) after = NULL;
  g_autoptr(GError) error = NULL;
  SteadImport *import;
  Farm from, to;

  farm_set_up (&from, NULL);
  farm_set_up (&to, NULL);
  fill_log (&from);
  import = export_and_read (&from, &to, path);
  g_assert_cmpuint (stead_import_count (import, STEAD_ROW_WRONG), ==, 0);
  g_assert_cmpuint (stead_import_count (import, STEAD_ROW_TAKE), ==, 12);
  g_assert_true (stead_import_take (import, to.store, NULL, NULL, NULL, &error));
  g_assert_no_error (error);
  before = stead_flock_repo_entries (from.store, from.flock, first, first + 20, &error);
  after = stead_flock_repo_entries (to.store, to.flock, first, first + 20, &error);
  g_assert_no_error (error);
  g_assert_cmpuint (before->len, ==, after->len);
  g_assert_cmpuint (before->len, ==, 12);
  for (guint i = 0; i < before->len; i++)
    {
      const SteadFlockEntry *a = before->pdata[i], *b = after->pdata[i];

      g_test_message ("entry %u", i);
      g_assert_cmpint (a->day, ==, b->day);
      g_assert_cmpint (a->eggs, ==, b->eggs);
      g_assert_cmpint (a->cracked, ==, b->cracked);
      g_assert_cmpint (a->deaths, ==, b->deaths);
      g_assert_cmpint (a->culled, ==, b->culled);
      g_assert_cmpstr (a->note, ==, b->note);
      g_assert_cmpstr (a->reason, ==, b->reason);
      g_assert_cmpint (a->left_out, ==, b->left_out);
      g_assert_cmpint (isnan (a->feed_kg), ==, isnan (b->feed_kg));
      if (!isnan (a->feed_kg))   /* six digits of a pound */
        g_assert_cmpfloat_with_epsilon (a->feed_kg, b->feed_kg, 5e-7);
    }
  g_assert_finalize_object (import);
  g_remove (path);
  g_rmdir (folder);
  farm_tear_down (&from, NULL);
  farm_tear_down (&to, NULL);
}

/* Into the farm that it came from nothing is taken twice. */
static void
test_back_into_the_same_farm (void)
{
  g_autofree char *folder = g_dir_make_tmp ("steading-trip-XXXXXX", NULL);
  g_autofree char *path = g_build_filename (folder, "log.csv", NULL);
  SteadImport *import;
  Farm farm;

  farm_set_up (&farm, NULL);
  fill_log (&farm);
  import = export_and_read (&farm, &farm, path);
  g_assert_cmpuint (stead_import_count (import, STEAD_ROW_TAKE), ==, 0);
  g_assert_cmpuint (stead_import_count (import, STEAD_ROW_WRONG), ==, 0);
  g_assert_cmpuint (stead_import_count (import, STEAD_ROW_SKIP), ==, 12);
  g_assert_finalize_object (import);
  g_remove (path);
  g_rmdir (folder);
  farm_tear_down (&farm, NULL);
}

/* --- fish -------------------------------------------------------------------------- */

static void
fill_fish (Shoal *shoal)
{
  static const SteadWeighed single[] = { { 90, 20 }, { 100.25, NAN }, { 123.4, 21.5 } };
  g_autoptr(SteadWeighing) weighing = stead_weighing_new ();

  for (int i = 0; i < 8; i++)
    shoal_enter (shoal, (SteadFishEntry) { .day = shoal->farm.today - 20 + i, .feed_kg = i % 2 ? NAN : 0.25 + i * 0.01,
                                         .water_c = i % 3 ? 26.3 : NAN, .refused = i == 4, .deaths = i == 5,
                                         .culled = i == 6, .left_out = i == 2,
                                         .reason = i == 5 ? (char *) "jumped, \"again\"" : NULL,
                                         .note = i % 2 ? (char *) "=1+1" : NULL });
  shoal_weigh (shoal, shoal->fish, shoal->farm.today - 15, 30, 75.5);
  weighing->batch_id = shoal->fish;
  weighing->day = shoal->farm.today - 5;
  weighing->note = g_strdup ("after a day without feed");
  weighing->single = g_array_new (FALSE, FALSE, sizeof (SteadWeighed));
  g_array_append_vals (weighing->single, single, 3);
  FARM_DO (&shoal->farm, stead_weighing_repo_save (shoal->farm.store, weighing, &farm_error));
}

/* Out of @from and into @to; every row of the table is taken, or in the same farm none. */
static void
carry (Shoal            *from,
       Shoal            *to,
       const char      *name,
       SteadImportKind  kind,
       guint            rows)
{
  g_autofree char *folder = g_dir_make_tmp ("steading-trip-XXXXXX", NULL);
  g_autofree char *path = g_build_filename (folder, "table.csv", NULL);
  g_autoptr(GError) error = NULL;
  SteadImport *import;

  g_assert_true (stead_paper_write (from->farm.store, name, NULL, NULL, path, &error));
  g_assert_no_error (error);
  import = stead_import_read (to->farm.store, kind, to->fish, path, STEAD_DATE_ORDER_UNKNOWN, NULL, NULL, NULL, &error);
  g_assert_no_error (error);
  g_assert_cmpuint (stead_import_count (import, STEAD_ROW_WRONG), ==, 0);
  g_assert_cmpuint (stead_import_count (import, STEAD_ROW_TAKE), ==, from == to ? 0 : rows);
  g_assert_cmpuint (stead_import_count (import, STEAD_ROW_SKIP), ==, from == to ? rows : 0);
  if (from != to)
    g_assert_true (stead_import_take (import, to->farm.store, NULL, NULL, NULL, &error));
  g_assert_no_error (error);
  g_assert_finalize_object (import);
  g_remove (path);
  g_rmdir (folder);
}

static void
assert_near (double a,
             double b,
             double off)
{
  g_assert_cmpint (isnan (a), ==, isnan (b));
  if (!isnan (a))
    g_assert_cmpfloat_with_epsilon (a, b, off);
}

static void
assert_same_log (Shoal *from,
                 Shoal *to)
{
  SteadDay today = from->farm.today;
  g_autoptr(GPtrArray) before = stead_fish_repo_entries (from->farm.store, from->fish, today - 45, today, NULL);
  g_autoptr(GPtrArray) after = stead_fish_repo_entries (to->farm.store, to->fish, today - 45, today, NULL);

  g_assert_cmpuint (before->len, ==, after->len);
  for (guint i = 0; i < before->len; i++)
    {
      const SteadFishEntry *a = before->pdata[i], *b = after->pdata[i];

      g_assert_cmpint (a->day, ==, b->day);
      g_assert_cmpint (a->refused, ==, b->refused);
      g_assert_cmpint (a->deaths, ==, b->deaths);
      g_assert_cmpint (a->culled, ==, b->culled);
      g_assert_cmpint (a->left_out, ==, b->left_out);
      g_assert_cmpstr (a->reason, ==, b->reason);
      g_assert_cmpstr (a->note, ==, b->note);
      assert_near (a->feed_kg, b->feed_kg, 5e-7);
      assert_near (a->water_c, b->water_c, 1e-6);
    }
}

static void
assert_same_weighings (Shoal *from,
                       Shoal *to)
{
  g_autoptr(GPtrArray) before = stead_weighing_repo_list (from->farm.store, from->fish, NULL);
  g_autoptr(GPtrArray) after = stead_weighing_repo_list (to->farm.store, to->fish, NULL);

  g_assert_cmpuint (before->len, ==, 2);
  g_assert_cmpuint (after->len, ==, 2);
  for (guint i = 0; i < 2; i++)
    {
      const SteadWeighing *a = before->pdata[i], *b = after->pdata[i];

      g_assert_cmpint (a->day, ==, b->day);
      g_assert_cmpint (a->n, ==, b->n);
      g_assert_cmpstr (a->note, ==, b->note);
      assert_near (a->total_kg, b->total_kg, 1e-6);
      assert_near (a->sd_g, b->sd_g, 1e-3);
      assert_near (a->length_cm, b->length_cm, 1e-4);
    }
}

static void
test_fish (void)
{
  Shoal from, to;

  shoal_set_up (&from, NULL);
  shoal_set_up (&to, NULL);
  fill_fish (&from);
  carry (&from, &to, "fish-log", STEAD_IMPORT_FISH_LOG, 8);
  carry (&from, &to, "weighings", STEAD_IMPORT_WEIGHINGS, 4);
  assert_same_log (&from, &to);
  assert_same_weighings (&from, &to);
  carry (&from, &from, "fish-log", STEAD_IMPORT_FISH_LOG, 8);
  carry (&from, &from, "weighings", STEAD_IMPORT_WEIGHINGS, 4);
  shoal_tear_down (&from, NULL);
  shoal_tear_down (&to, NULL);
}

int
main (int    argc,
      char **argv)
{
  farm_start (&argc, &argv);
  g_test_add_func ("/paper/round-trip/into-another-farm", test_back_into_another_farm);
  g_test_add_func ("/paper/round-trip/into-the-same-farm", test_back_into_the_same_farm);
  g_test_add_func ("/paper/round-trip/fish", test_fish);
  return g_test_run ();
}
