/* test-jump.c - what the jump field finds. */
#include "config.h"

#include "app-fixture.h"
#include "app/stead-jump-goal.h"

static gboolean
has (GPtrArray  *goals,
     const char *title,
     const char *kind)
{
  for (guint i = 0; i < goals->len; i++)
    {
      const SteadJumpGoal *goal = goals->pdata[i];

      if (g_str_equal (goal->title, title) && g_str_equal (goal->kind, kind))
        return TRUE;
    }
  return FALSE;
}

static void
test_things (void)
{
  g_autoptr(SteadStore) store = fixture_farm ();
  g_autoptr(GPtrArray) found = stead_jump_goals_find (store, " BROWN ", FALSE);
  const SteadJumpGoal *first = found->pdata[0];

  g_assert_cmpstr (first->title, ==, "Brown hens");
  g_assert_cmpint (first->target, ==, STEAD_TARGET_FLOCK);
  g_assert_cmpint (first->id, >, 0);
}

static void
test_commands (void)
{
  g_autoptr(SteadStore) store = fixture_farm ();
  g_autoptr(GPtrArray) found = stead_jump_goals_find (store, "new rec", FALSE);

  g_assert_true (has (found, "New receipt", "Command"));
  g_assert_false (has (found, "New flock", "Command"));
  for (guint i = 0; i < found->len; i++)
    g_assert_cmpstr (((SteadJumpGoal *) found->pdata[i])->action, ==, "win.new-receipt");
}

static void
test_documents (void)
{
  g_autoptr(SteadStore) store = fixture_farm ();
  g_autoptr(GPtrArray) found = stead_jump_goals_find (store, "cost sheet", FALSE);
  g_autoptr(GPtrArray) papers = stead_jump_goals_find (store, "", TRUE);

  g_assert_true (has (found, "Cost sheet: Eggs", "Document"));
  g_assert_cmpuint (papers->len, >, 0);
  for (guint i = 0; i < papers->len; i++)
    g_assert_nonnull (((SteadJumpGoal *) papers->pdata[i])->paper);
}

static void
test_nothing_typed (void)
{
  g_autoptr(SteadStore) store = fixture_farm ();
  g_autoptr(GPtrArray) near = stead_jump_goals_find (store, NULL, FALSE);
  g_autoptr(GPtrArray) none = stead_jump_goals_find (store, "zzzz", FALSE);

  g_assert_true (has (near, "Brown hens", "Flock"));
  g_assert_true (has (near, "Eggs", "Product"));
  g_assert_true (has (near, "Settings", "Command"));
  g_assert_cmpuint (none->len, ==, 0);
}

int
main (int    argc,
      char **argv)
{
  fixture_init (&argc, &argv);
  g_test_add_func ("/app/jump/things", test_things);
  g_test_add_func ("/app/jump/commands", test_commands);
  g_test_add_func ("/app/jump/documents", test_documents);
  g_test_add_func ("/app/jump/nothing-typed", test_nothing_typed);
  return g_test_run ();
}
