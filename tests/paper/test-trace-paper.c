/* test-trace-paper.c - the trace of a lot on paper: it is there for a lot bought and one made, and for no other. */
#include "answer/stead-answer-error.h"
#include "paper/stead-paper.h"
#include "farm.h"

static void
assert_paper (Farm       *farm,
              const char *of)
{
  g_autoptr(GError) error = NULL;
  g_autoptr(SteadPaper) paper = stead_paper_new (farm->store, "trace", of, NULL, &error);

  g_assert_no_error (error);
  g_assert_nonnull (paper);
}

static void
test_lots (Farm          *farm,
           gconstpointer  data)
{
  g_autoptr(GPtrArray) lots = NULL;
  g_autoptr(GError) error = NULL;

  farm_stock (farm);
  farm_log (farm);
  lots = stead_lot_repo_list (farm->store, TRUE, &error);
  g_assert_no_error (error);
  g_assert_cmpuint (lots->len, >=, 3);
  for (guint i = 0; i < lots->len; i++)
    assert_paper (farm, ((SteadLot *) lots->pdata[i])->code);
  assert_paper (farm, NULL);
}

static void
test_refused (Farm          *farm,
              gconstpointer  data)
{
  g_autoptr(GError) none = NULL;
  g_autoptr(GError) unknown = NULL;

  g_assert_null (stead_paper_new (farm->store, "trace", NULL, NULL, &none));
  g_assert_error (none, STEAD_ANSWER_ERROR, STEAD_ANSWER_ERROR_MISSING);
  farm_stock (farm);
  g_assert_null (stead_paper_new (farm->store, "trace", "X99", NULL, &unknown));
  g_assert_error (unknown, STEAD_ANSWER_ERROR, STEAD_ANSWER_ERROR_UNKNOWN);
}

int
main (int    argc,
      char **argv)
{
  farm_start (&argc, &argv);
  g_test_add ("/paper/trace/lots", Farm, NULL, farm_set_up, test_lots, farm_tear_down);
  g_test_add ("/paper/trace/refused", Farm, NULL, farm_set_up, test_refused, farm_tear_down);
  return g_test_run ();
}
