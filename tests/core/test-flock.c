/* Flock figures against published examples. */
#include "core/stead-core-error.h"
#include "core/stead-flock.h"

#include <math.h>

/* Calculating Agriculture, chapter 12, p. 12-11 (read); a poultry keeping guide
 * on hen-day against hen-housed (read). */
static void
test_published (void)
{
  g_assert_cmpfloat_with_epsilon (stead_flock_hen_day_frac (9090750, 10695000), 0.85, 0.0005);
  g_assert_cmpfloat_with_epsilon (stead_flock_hen_day_frac (3852, 6270), 0.614, 0.0005);
  g_assert_cmpfloat_with_epsilon (stead_flock_hen_housed_frac (9108, 10000, 1), 0.9108, 1e-9);
  /* UC Davis, Hen value: 3.00 dollars, 300 eggs: 12 cents a dozen. */
  g_assert_cmpfloat_with_epsilon (stead_flock_bird_cents_per_egg (300, 0, 300) * 12, 12, 1e-9);
  g_assert_true (isnan (stead_flock_hen_day_frac (3, 0)));
}

/* Pennsylvania Code, title 7, section 87.42(a) (read). */
static void
test_classes (void)
{
  static const struct { double oz; SteadEggClass class; } cases[] = {
    { 30, STEAD_EGG_CLASS_JUMBO }, { 29.99, STEAD_EGG_CLASS_EXTRA_LARGE },
    { 27, STEAD_EGG_CLASS_EXTRA_LARGE }, { 26.9, STEAD_EGG_CLASS_LARGE },
    { 24, STEAD_EGG_CLASS_LARGE }, { 21, STEAD_EGG_CLASS_MEDIUM },
    { 20.9, STEAD_EGG_CLASS_SMALL }, { 15.5, STEAD_EGG_CLASS_PEEWEE },
  };
  g_autoptr(GError) error = NULL;
  SteadEggClass class = STEAD_EGG_CLASS_LARGE;

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_assert_true (stead_egg_class_of_dozen (cases[i].oz, &class, NULL));
      g_assert_cmpint (class, ==, cases[i].class);
    }
  class = STEAD_EGG_CLASS_LARGE;
  g_assert_false (stead_egg_class_of_dozen (14.9, &class, &error));
  g_assert_error (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_RANGE);
  g_assert_cmpint (class, ==, STEAD_EGG_CLASS_LARGE);
}

/* Calculating Agriculture, p. 12-11 (read): 200 hens in March, 4 died on the
 * 12th, 10 came on the 16th. */
static void
test_hen_days (void)
{
  const SteadFlockChange deaths[] = { { 12, 4 } };
  const SteadFlockChange arrivals[] = { { 16, 10 } };

  g_assert_cmpfloat (stead_flock_hen_days (200, 31, deaths, 1, arrivals, 1), ==, 6270);
  g_assert_cmpfloat (stead_flock_hen_days (345000, 31, NULL, 0, NULL, 0), ==, 10695000);
  /* Page 12-9: 4.2 percent of 150,000. */
  g_assert_cmpfloat_with_epsilon (stead_flock_survivors (150000, 0.042), 143700, 1e-6);
  g_assert_cmpfloat_with_epsilon (stead_flock_mortality_frac (2, 30), 0.067, 0.0005);
  g_assert_true (isnan (stead_flock_mortality_frac (2, 0)));
}

static void
test_nothing_to_divide_by (void)
{
  g_assert_true (isnan (stead_flock_hen_day_frac (5, 0)));
  g_assert_true (isnan (stead_flock_hen_housed_frac (5, 0, 7)));
  g_assert_true (isnan (stead_flock_hen_housed_frac (5, 10, 0)));
  g_assert_true (isnan (stead_flock_feed_per_dozen_kg (5, 0)));
  /* 175 lb for 600 eggs: 3.50 lb a dozen. */
  g_assert_cmpfloat_with_epsilon (stead_flock_feed_per_dozen_kg (175 * 0.45359237, 600) / 0.45359237, 3.5, 1e-9);
}

static void
test_misuse (void)
{
  if (g_test_subprocess ())
    {
      g_assert_true (isnan (stead_flock_bird_cents_per_egg (100, 200, 300)));
      return;
    }
  g_test_trap_subprocess (NULL, 0, G_TEST_SUBPROCESS_DEFAULT);
  g_test_trap_assert_failed ();
  g_test_trap_assert_stderr ("*CRITICAL*salvage_cents*");
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/core/flock/published", test_published);
  g_test_add_func ("/core/flock/classes", test_classes);
  g_test_add_func ("/core/flock/hen-days", test_hen_days);
  g_test_add_func ("/core/flock/nothing-to-divide-by", test_nothing_to_divide_by);
  g_test_add_func ("/core/flock/misuse", test_misuse);
  return g_test_run ();
}
