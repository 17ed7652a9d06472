/* test-build-fence.c - the same pen fenced with boards, with electric wire, and not at all.
 *
 * The pen is CASE-01 of tests/reference/build.csv: 48 by 24 ft with gates of 12 and 4 ft, so 128 ft of fence; 4 corner,
 * 4 gate and 11 line posts at 8 ft.
 */
#include "farm.h"
#include "numbers.h"

#include "answer/stead-build-answer.h"

#include <string.h>

#define FT 0.3048

static SteadBuild *
pen (SteadBuildFence fence,
     int             rows)
{
  SteadBuild *build = stead_build_new (STEAD_BUILD_PEN);
  const SteadFenceGate gates[] = { { 0, 8 * FT, 4 * FT }, { 1, 6 * FT, 12 * FT } };

  build->name = g_strdup ("Sheep pen");
  build->fence = fence;
  build->rows = rows;
  stead_build_set_rectangle (build, 48 * FT, 24 * FT);
  g_array_append_vals (build->gates, gates, G_N_ELEMENTS (gates));
  return build;
}

static SteadBuildTakeoff *
take_off (const SteadBuild *build)
{
  g_autoptr(GError) error = NULL;
  SteadBuildTakeoff *takeoff = stead_build_takeoff_new (build, STEAD_UNITS_US, &error);

  g_assert_no_error (error);
  return takeoff;
}

/* (nullable) */
static const SteadBuildNeed *
need (const SteadBuildTakeoff *takeoff,
      const char              *key)
{
  for (guint i = 0; i < takeoff->needs->len; i++)
    if (g_str_equal (((const SteadBuildNeed *) takeoff->needs->pdata[i])->key, key))
      return takeoff->needs->pdata[i];
  return NULL;
}

static void
assert_need (const SteadBuildTakeoff *takeoff,
             const char              *key,
             double                   quantity,
             const char              *name)
{
  g_assert_nonnull (need (takeoff, key));
  g_assert_cmpfloat (need (takeoff, key)->quantity, ==, quantity);
  if (farm_in_english ())
    g_assert_cmpstr (need (takeoff, key)->name, ==, name);
}

/* Three boards above each other and a tenth of waste: 128 x 3 x 1.1 = 422.4 ft, 26.4 boards of 16 ft. */
static void
test_boards (void)
{
  g_autoptr(SteadBuild) build = pen (STEAD_BUILD_FENCE_BOARDS, 3);
  g_autoptr(SteadBuildTakeoff) takeoff = take_off (build);

  g_assert_cmpfloat (build->wood_waste, ==, 0.1);
  assert_need (takeoff, "fence_board", 27, "Fence board, 16 ft");
  g_assert_cmpfloat (need (takeoff, "line_post")->quantity, ==, 11);
  g_assert_null (need (takeoff, "staple"));
}

/* Five wires and a twentieth of waste: 128 x 5 x 1.05 = 672 ft, more than two rolls of 330 ft; an insulator for each
 * wire on each of 19 posts; University of Maryland Extension: three ground rods. */
static void
test_electric (void)
{
  g_autoptr(SteadBuild) build = pen (STEAD_BUILD_FENCE_ELECTRIC, 5);
  g_autoptr(SteadBuildTakeoff) takeoff = take_off (build);

  g_assert_cmpfloat (build->wire_waste, ==, 0.05);
  assert_need (takeoff, "electric_roll_100584", 3, "Electric wire, roll of 330 ft");
  assert_need (takeoff, "insulator", 95, "Insulators");
  assert_need (takeoff, "ground_rod", 3, "Ground rods");
  assert_need (takeoff, "energizer", 1, "Energizer");
  NUMBERS_ARE (need (takeoff, "electric_roll_100584")->how, 5, 672);
}

/* Without a fence there is no post of one; the gates are still there. */
static void
test_none (void)
{
  g_autoptr(SteadBuild) build = pen (STEAD_BUILD_FENCE_NONE, 5);
  g_autoptr(SteadBuildTakeoff) takeoff = take_off (build);

  g_assert_null (need (takeoff, "corner_post"));
  g_assert_null (need (takeoff, "line_post"));
  g_assert_nonnull (need (takeoff, "gate_3658"));
}

/* Up a slope in three level steps of 6 ft in all every post stands 2 ft higher: a line post of 6 ft becomes one of 8. */
static void
test_steps (void)
{
  g_autoptr(SteadBuild) flat = pen (STEAD_BUILD_FENCE_WOVEN, 9), slope = pen (STEAD_BUILD_FENCE_WOVEN, 9);
  g_autoptr(SteadBuildTakeoff) low = take_off (flat), high = NULL;

  g_array_index (slope->corners, SteadBuildCorner, 0).rise_m = 6 * FT;
  g_array_index (slope->corners, SteadBuildCorner, 0).steps = 3;
  high = take_off (slope);
  if (farm_in_english ())
    {
      g_assert_cmpstr (need (low, "line_post")->name, ==, "Line post, 6 ft");
      g_assert_cmpstr (need (high, "line_post")->name, ==, "Line post, 8 ft");
    }
  g_assert_cmpfloat (need (high, "line_post")->quantity, >=, 11);
}

int
main (int    argc,
      char **argv)
{
  farm_start (&argc, &argv);
  g_test_add_func ("/answer/build-fence/boards", test_boards);
  g_test_add_func ("/answer/build-fence/electric", test_electric);
  g_test_add_func ("/answer/build-fence/none", test_none);
  g_test_add_func ("/answer/build-fence/steps", test_steps);
  return g_test_run ();
}
