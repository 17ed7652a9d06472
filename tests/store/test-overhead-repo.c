/* test-overhead-repo.c - the rate by which overhead is charged. */
#include "config.h"

#include <math.h>

#include "repo-fixture.h"
#include "store/stead-overhead-repo.h"
#include "store/stead-store-private.h"

static SteadOverhead
get (Farm *farm)
{
  g_autoptr(GError) error = NULL;
  SteadOverhead overhead = { STEAD_OVERHEAD_MONEY, -1, -1 };

  g_assert_true (stead_overhead_repo_get (farm->store, &overhead, &error));
  g_assert_no_error (error);
  return overhead;
}

static void
test_round_trip (void)
{
  g_autoptr(Farm) farm = farm_new ();
  SteadOverhead overhead = { STEAD_OVERHEAD_HOURS, 25000, 310.5 };

  g_assert_cmpint (get (farm).base, ==, STEAD_OVERHEAD_NONE);
  for (SteadOverheadBase base = STEAD_OVERHEAD_HOURS; base <= STEAD_OVERHEAD_MONEY; base++)
    {
      overhead.base = base;
      ACT (farm, stead_overhead_repo_set (farm->store, &overhead, err));
      g_assert_cmpint (get (farm).base, ==, base);
      g_assert_cmpint (get (farm).planned_cents, ==, 25000);
      g_assert_cmpfloat (get (farm).planned_base, ==, 310.5);
    }
  overhead.base = STEAD_OVERHEAD_NONE;
  ACT (farm, stead_overhead_repo_set (farm->store, &overhead, err));
  g_assert_cmpint (get (farm).base, ==, STEAD_OVERHEAD_NONE);
  farm_assert_undo (farm);
}

static void
test_refused (void)
{
  g_autoptr(Farm) farm = farm_new ();
  const SteadOverhead nothing = { STEAD_OVERHEAD_HOURS, 25000, 0 }, none = { STEAD_OVERHEAD_SPACE, 25000, NAN },
                      below = { STEAD_OVERHEAD_MONEY, -1, 10 };

  INVALID (farm, stead_overhead_repo_set (farm->store, &nothing, err), "above zero");
  INVALID (farm, stead_overhead_repo_set (farm->store, &none, err), "above zero");
  INVALID (farm, stead_overhead_repo_set (farm->store, &below, err), "Overhead of a year");
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/store/overhead-repo/round-trip", test_round_trip);
  g_test_add_func ("/store/overhead-repo/refused", test_refused);
  return g_test_run ();
}
