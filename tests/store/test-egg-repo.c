/* test-egg-repo.c - grading sheets and broken-out eggs: kept whole, refused, undone. */
#include "config.h"

#include <math.h>

#include "repo-fixture.h"
#include "store/stead-egg-repo.h"

static SteadEggGrading
sheet (const Farm *farm,
       SteadDay    day)
{
  return (SteadEggGrading) { .flock_id = farm->flock, .day = day, .counts = { 1, 2, 3, 40, 5, 6 },
                             .blood = 7, .checked = 8, .dirty = 9, .note = (char *) " Warm day ",
                             .person_id = farm->student };
}

static void
test_gradings (void)
{
  g_autoptr(Farm) farm = farm_new ();
  g_autoptr(GError) error = NULL;
  g_autoptr(GPtrArray) list = NULL;
  SteadEggGrading first = sheet (farm, TODAY - 9), second = sheet (farm, TODAY), third = sheet (farm, TODAY - 3);
  const SteadEggGrading *got;

  ACT (farm, stead_egg_repo_save_grading (farm->store, &first, err));
  ACT (farm, stead_egg_repo_save_grading (farm->store, &second, err));
  ACT (farm, stead_egg_repo_save_grading (farm->store, &third, err));
  second.counts[STEAD_EGG_CLASS_LARGE] = 50;
  second.note = NULL;
  second.person_id = 0;
  ACT (farm, stead_egg_repo_save_grading (farm->store, &second, err));
  list = stead_egg_repo_gradings (farm->store, farm->flock, TODAY - 8, TODAY, &error);
  g_assert_no_error (error);
  g_assert_cmpuint (list->len, ==, 2);
  got = list->pdata[0];
  g_assert_cmpint (got->id, ==, second.id);
  g_assert_cmpint (got->counts[STEAD_EGG_CLASS_LARGE], ==, 50);
  g_assert_null (got->note);
  g_assert_cmpint (got->person_id, ==, 0);
  got = list->pdata[1];
  g_assert_cmpint (got->day, ==, TODAY - 3);
  /* Each class has a column of its own. */
  for (int i = 0; i < STEAD_N_EGG_CLASSES; i++)
    g_assert_cmpint (got->counts[i], ==, third.counts[i]);
  g_assert_cmpint (got->blood, ==, 7);
  g_assert_cmpint (got->checked, ==, 8);
  g_assert_cmpint (got->dirty, ==, 9);
  g_assert_cmpstr (got->note, ==, "Warm day");
  g_assert_cmpint (got->person_id, ==, farm->student);
  ACT (farm, stead_egg_repo_delete_grading (farm->store, third.id, err));
  g_clear_pointer (&list, g_ptr_array_unref);
  list = stead_egg_repo_gradings (farm->store, farm->flock, TODAY - 8, TODAY, &error);
  g_assert_cmpuint (list->len, ==, 1);
  farm_assert_undo (farm);
}

static void
test_samples (void)
{
  g_autoptr(Farm) farm = farm_new ();
  g_autoptr(GError) error = NULL;
  g_autoptr(GArray) list = NULL;
  SteadEggSample first = { .flock_id = farm->flock, .day = TODAY - 2, .egg_g = 60.5, .albumen_mm = 6.2, .egg_c = 12 };
  SteadEggSample second = { .flock_id = farm->flock, .day = TODAY, .egg_g = 58, .albumen_mm = 7, .egg_c = NAN };
  const SteadEggSample *got;

  ACT (farm, stead_egg_repo_save_sample (farm->store, &first, err));
  ACT (farm, stead_egg_repo_save_sample (farm->store, &second, err));
  first.albumen_mm = 5.9;
  ACT (farm, stead_egg_repo_save_sample (farm->store, &first, err));
  list = stead_egg_repo_samples (farm->store, farm->flock, TODAY - 2, TODAY, &error);
  g_assert_no_error (error);
  g_assert_cmpuint (list->len, ==, 2);
  got = &g_array_index (list, SteadEggSample, 0);
  g_assert_cmpint (got->id, ==, second.id);
  g_assert_true (isnan (got->egg_c));
  got = &g_array_index (list, SteadEggSample, 1);
  g_assert_cmpfloat (got->egg_g, ==, 60.5);
  g_assert_cmpfloat (got->albumen_mm, ==, 5.9);
  g_assert_cmpfloat (got->egg_c, ==, 12);
  ACT (farm, stead_egg_repo_delete_sample (farm->store, second.id, err));
  farm_assert_undo (farm);
}

static void
test_refused (void)
{
  g_autoptr(Farm) farm = farm_new ();
  SteadEggGrading grading = { .flock_id = farm->flock, .day = TODAY };
  SteadEggSample sample = { .flock_id = farm->flock, .day = TODAY, .egg_g = 60, .albumen_mm = 6, .egg_c = NAN };
  gint64 fish = farm_fish (farm, "Catfish 1", 50);

  INVALID (farm, stead_egg_repo_save_grading (farm->store, &grading, err), "how many eggs");
  grading.counts[0] = -1;
  INVALID (farm, stead_egg_repo_save_grading (farm->store, &grading, err), "each number");
  grading.counts[0] = 12;
  grading.day = TODAY + 1;
  INVALID (farm, stead_egg_repo_save_grading (farm->store, &grading, err), "still to come");
  grading.day = TODAY - 101;
  INVALID (farm, stead_egg_repo_save_grading (farm->store, &grading, err), "moved in");
  grading.day = TODAY;
  grading.flock_id = fish;
  INVALID (farm, stead_egg_repo_save_grading (farm->store, &grading, err), "not a flock");
  sample.egg_g = NAN;
  INVALID (farm, stead_egg_repo_save_sample (farm->store, &sample, err), "weight of one whole egg");
  sample.egg_g = 251;
  INVALID (farm, stead_egg_repo_save_sample (farm->store, &sample, err), "weight of one whole egg");
  sample.egg_g = 60;
  sample.albumen_mm = 21;
  INVALID (farm, stead_egg_repo_save_sample (farm->store, &sample, err), "thick white");
  sample.albumen_mm = 6;
  sample.egg_c = 61;
  INVALID (farm, stead_egg_repo_save_sample (farm->store, &sample, err), "how warm");
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/store/egg-repo/gradings", test_gradings);
  g_test_add_func ("/store/egg-repo/samples", test_samples);
  g_test_add_func ("/store/egg-repo/refused", test_refused);
  return g_test_run ();
}
