/* test-build-words.c - what parts, animals and tasks of a build are called, and the bedding of a run. */
#include "farm.h"
#include "numbers.h"

#include "answer/stead-build-answer.h"

#include <string.h>

#define FT 0.3048

/* Each word of the file has a name of its own; one that this program does not know stands for itself. */
static void
test_names (void)
{
  const char * const *animals = stead_build_animals (), * const *tasks = stead_build_tasks ();

  for (int i = 0; animals[i] != NULL; i++)
    for (int k = 0; k < i; k++)
      g_assert_cmpstr (stead_build_animal_name (animals[i]), !=, stead_build_animal_name (animals[k]));
  for (int i = 0; tasks[i] != NULL; i++)
    for (int k = 0; k < i; k++)
      g_assert_cmpstr (stead_build_task_name (tasks[i]), !=, stead_build_task_name (tasks[k]));
  for (int i = 0; i <= STEAD_BUILD_PART_OTHER; i++)
    for (int k = 0; k < i; k++)
      g_assert_cmpstr (stead_build_part_name ((SteadBuildPart) i), !=, stead_build_part_name ((SteadBuildPart) k));
  g_assert_cmpstr (stead_build_animal_name ("emu"), ==, "emu");
  g_assert_cmpstr (stead_build_task_name ("whittling"), ==, "whittling");
  if (farm_in_english ())
    {
      g_assert_cmpstr (stead_build_animal_name ("wether"), ==, "Wethers");
      g_assert_cmpstr (stead_build_task_name ("power_chain_saw"), ==, "chain saw with a motor");
    }
}

static double
bedding (SteadUnitSystem  units,
         double           bed_m,
         const char      *key)
{
  g_autoptr(SteadBuild) run = stead_build_new (STEAD_BUILD_RUN);
  g_autoptr(SteadBuildTakeoff) takeoff = NULL;
  g_autoptr(GError) error = NULL;

  run->name = g_strdup ("Run");
  run->bed_m = bed_m;
  stead_build_set_rectangle (run, 12 * FT, 6 * FT);
  takeoff = stead_build_takeoff_new (run, units, &error);
  g_assert_no_error (error);
  for (guint i = 0; i < takeoff->needs->len; i++)
    if (g_str_equal (((const SteadBuildNeed *) takeoff->needs->pdata[i])->key, key))
      return ((const SteadBuildNeed *) takeoff->needs->pdata[i])->quantity;
  return 0;
}

/* 72 sq ft, half a foot deep: 36 cu ft, of which 27 make a cubic yard; a foot is 0.3048 m. */
static void
test_bedding (void)
{
  g_assert_cmpfloat_with_epsilon (bedding (STEAD_UNITS_US, 0.5 * FT, "bedding_cuyd"), 36 / 27.0, 1e-9);
  g_assert_cmpfloat_with_epsilon (bedding (STEAD_UNITS_METRIC, 0.5 * FT, "bedding_m3"), 36 * FT * FT * FT, 1e-9);
  g_assert_cmpfloat (bedding (STEAD_UNITS_US, 0, "bedding_cuyd"), ==, 0);
}

int
main (int    argc,
      char **argv)
{
  farm_start (&argc, &argv);
  g_test_add_func ("/answer/build-words/names", test_names);
  g_test_add_func ("/answer/build-words/bedding", test_bedding);
  return g_test_run ();
}
