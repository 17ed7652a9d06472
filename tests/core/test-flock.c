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

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/core/flock/published", test_published);
  g_test_add_func ("/core/flock/classes", test_classes);
  return g_test_run ();
}
