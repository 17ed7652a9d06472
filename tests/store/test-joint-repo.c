/* test-joint-repo.c - how the cost of a batch is shared by what comes of it. */
#include "config.h"

#include <math.h>

#include "repo-fixture.h"
#include "store/stead-joint-repo.h"
#include "store/stead-store-private.h"

static SteadJointPlan *
get (Farm *farm)
{
  g_autoptr(GError) error = NULL;
  SteadJointPlan *plan = stead_joint_repo_get (farm->store, farm->flock, &error);

  g_assert_no_error (error);
  return plan;
}

static void
test_round_trip (void)
{
  g_autoptr(Farm) farm = farm_new ();
  g_autoptr(SteadJointPlan) fresh = get (farm), plan = stead_joint_plan_new (), kept = NULL, fewer = NULL;

  g_assert_cmpint (fresh->method, ==, STEAD_JOINT_NRV);
  g_assert_cmpuint (fresh->figures->len, ==, 0);
  plan->method = STEAD_JOINT_PHYSICAL;
  stead_joint_plan_set (plan, "hens", "weight", 1);
  stead_joint_plan_set (plan, "hens", "weight", 1.9);
  stead_joint_plan_set (plan, "eggs", "split", 450);
  ACT (farm, stead_joint_repo_save (farm->store, farm->flock, plan, err));
  kept = get (farm);
  g_assert_cmpint (kept->method, ==, STEAD_JOINT_PHYSICAL);
  g_assert_cmpuint (kept->figures->len, ==, 2);
  g_assert_cmpfloat (stead_joint_plan_get (kept, "hens", "weight", NAN), ==, 1.9);
  g_assert_cmpfloat (stead_joint_plan_get (kept, "eggs", "split", NAN), ==, 450);
  g_assert_cmpfloat (stead_joint_plan_get (kept, "eggs", "final", -1), ==, -1);
  g_ptr_array_set_size (plan->figures, 0);
  plan->method = STEAD_JOINT_CONSTANT_MARGIN;
  ACT (farm, stead_joint_repo_save (farm->store, farm->flock, plan, err));
  fewer = get (farm);
  g_assert_cmpint (fewer->method, ==, STEAD_JOINT_CONSTANT_MARGIN);
  g_assert_cmpuint (fewer->figures->len, ==, 0);
  farm_assert_undo (farm);
}

static void
test_refused (void)
{
  g_autoptr(Farm) farm = farm_new ();
  g_autoptr(SteadJointPlan) plan = stead_joint_plan_new ();

  stead_joint_plan_set (plan, "hens", "weight", -1);
  INVALID (farm, stead_joint_repo_save (farm->store, farm->flock, plan, err), "zero or more");
  stead_joint_plan_set (plan, "hens", "weight", NAN);
  INVALID (farm, stead_joint_repo_save (farm->store, farm->flock, plan, err), "zero or more");
}

/* Every way of sharing has its word in the file. */
static void
test_methods (void)
{
  g_autoptr(Farm) farm = farm_new ();
  g_autoptr(SteadJointPlan) plan = stead_joint_plan_new ();

  for (SteadJointMethod method = 0; method < STEAD_N_JOINT_METHODS; method++)
    {
      g_autoptr(SteadJointPlan) kept = NULL;

      plan->method = method;
      ACT (farm, stead_joint_repo_save (farm->store, farm->flock, plan, err));
      kept = get (farm);
      g_assert_cmpint (kept->method, ==, method);
    }
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/store/joint-repo/round-trip", test_round_trip);
  g_test_add_func ("/store/joint-repo/refused", test_refused);
  g_test_add_func ("/store/joint-repo/methods", test_methods);
  return g_test_run ();
}
