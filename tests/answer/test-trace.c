/* test-trace.c - where a lot came from and where it is now: the rows, the words and the cards. */
#include "farm.h"

#include "answer/stead-recall-answer.h"
#include "answer/stead-trace-answer.h"
#include "store/stead-harvest-repo.h"

#include <math.h>
#include <string.h>

typedef struct
{
  Farm   farm;
  gint64 egg;
} House;

static void
set_up (House         *house,
        gconstpointer  data)
{
  SteadItem item = { .name = g_strdup ("Egg"), .kind = STEAD_ITEM_PRODUCE, .unit = stead_unit_by_id ("ea"), .reorder_base = NAN };
  Farm *farm = &house->farm;

  farm_set_up (farm, data);
  farm_stock (farm);
  farm_log (farm);
  FARM_DO (farm, stead_item_repo_save (farm->store, &item, &farm_error));
  house->egg = item.id;
  g_free (item.name);
}

static void
tear_down (House         *house,
           gconstpointer  data)
{
  farm_tear_down (&house->farm, data);
}

static gint64
collect (House    *house,
         SteadDay  day,
         double    eggs)
{
  g_autoptr(SteadHarvest) harvest = stead_harvest_new ();

  harvest->batch_id = house->farm.flock;
  harvest->item_id = house->egg;
  harvest->day = day;
  harvest->quantity_base = eggs;
  FARM_DO (&house->farm, stead_harvest_repo_save (house->farm.store, harvest, &farm_error));
  return harvest->lot_id;
}

static SteadTraceAnswer *
ask (House  *house,
     gint64  lot_id)
{
  g_autoptr(GError) error = NULL;
  SteadTraceAnswer *answer = stead_trace_answer_new (house->farm.store, lot_id, &error);

  g_assert_no_error (error);
  return answer;
}

/* Of 24 eggs 10 are sold, 2 are given away, 1 is lost, 11 are left; both sacks of feed went into them. */
static void
test_eggs (House         *house,
           gconstpointer  data)
{
  Farm *farm = &house->farm;
  gint64 lot = collect (house, farm->today - 5, 24);
  g_autoptr(SteadTraceAnswer) answer = NULL;
  const SteadTraceRow *row;

  FARM_DO (farm, stead_lot_repo_sell (farm->store, house->egg, farm->today - 3, 10, NULL, 0, &farm_error));
  FARM_DO (farm, stead_lot_repo_adjust (farm->store, lot, STEAD_MOVE_GIVEN, farm->today - 2, -2, "neighbor", 0, &farm_error));
  FARM_DO (farm, stead_lot_repo_adjust (farm->store, lot, STEAD_MOVE_LOST, farm->today - 1, -1, "dropped", 0, &farm_error));
  answer = ask (house, lot);
  g_assert_true (answer->balances);
  g_assert_null (answer->caution);
  g_assert_cmpuint (answer->ahead->len, ==, 1);
  g_assert_cmpuint (answer->back->len, ==, 2);
  row = answer->ahead->pdata[0];
  g_assert_cmpfloat (row->lot->in_base, ==, 24);
  g_assert_cmpfloat (row->lot->sold_base + row->lot->given_base + row->lot->lost_base + row->lot->left_base, ==, 24);
  g_assert_cmpfloat (row->lot->left_base, ==, 11);
  g_assert_null (row->used);
  g_assert_nonnull (strstr (row->left, "11"));
  g_assert_cmpuint (answer->suppliers->len, ==, 1);
  if (farm_in_english ())
    g_assert_nonnull (strstr (answer->sentence, "<b>2 lots</b> went into it"));
  /* Feed, then the hens, then the eggs; both sacks into the hens. */
  g_assert_cmpint (answer->flow->n_columns, ==, 3);
  g_assert_cmpuint (answer->flow->nodes->len, ==, 4);
  g_assert_cmpuint (answer->flow->links->len, ==, 3);
  for (guint i = 0; i < answer->flow->nodes->len; i++)
    {
      const SteadFlowNode *node = &g_array_index (answer->flow->nodes, SteadFlowNode, i);

      if (!node->is_subject)
        continue;
      g_assert_cmpint (node->column, ==, 2);
      g_assert_cmpfloat_with_epsilon (node->left_frac, 11.0 / 24, 1e-9);
    }
}

/* A sack of feed is in eggs of many days: they are one card, and as many rows. */
static void
test_many (House         *house,
           gconstpointer  data)
{
  Farm *farm = &house->farm;
  g_autoptr(SteadTraceAnswer) answer = NULL;
  const SteadFlowNode *last;

  for (int i = 20; i >= 1; i--)
    collect (house, farm->today - i, 8);
  answer = ask (house, 1);
  g_assert_cmpuint (answer->ahead->len, ==, 21);
  g_assert_cmpuint (answer->flow->nodes->len, ==, 3);
  g_assert_cmpuint (answer->flow->links->len, ==, 2);
  last = &g_array_index (answer->flow->nodes, SteadFlowNode, 2);
  g_assert_cmpuint (last->n, ==, 20);
  g_assert_cmpfloat (last->left_frac, ==, 1);
}

/* Forty more sacks from one supplier: each lot is named in one sentence to call with, and no sentence is
 * longer than a page is high; together they say how much came. */
static void
test_many_sacks (House         *house,
                 gconstpointer  data)
{
  Farm *farm = &house->farm;
  g_autoptr(SteadRecallAnswer) recall = NULL;
  g_autoptr(GError) error = NULL;
  guint n_whys = 0, n_lots = 0;

  for (int i = 0; i < 40; i++)
    {
      farm_buy (farm, farm->today - 60 + i, farm->feed, 50, 6000, FALSE);
      FARM_DO (farm, stead_lot_repo_use (farm->store, farm->feed, farm->flock, farm->today - 60 + i, 50, 0, &farm_error));
    }
  recall = stead_recall_answer_new (farm->store, collect (house, farm->today, 24), 0, &error);
  g_assert_no_error (error);
  for (guint i = 0; i < recall->trace->trace->lots->len; i++)
    {
      const SteadTraceLot *lot = recall->trace->trace->lots->pdata[i];
      guint n_told = 0;

      if (lot->supplier == NULL)
        continue;
      n_lots++;
      for (guint c = 0; c < recall->calls->len; c++)
        {
          const SteadRecallCall *call = recall->calls->pdata[c];

          for (guint w = 0; g_str_equal (call->who, lot->supplier) && w < call->whys->len; w++)
            n_told += g_strstr_len (call->whys->pdata[w], -1, lot->code) != NULL;
        }
      g_assert_cmpuint (n_told, ==, 1);
    }
  g_assert_cmpuint (n_lots, >=, 40);
  for (guint c = 0; c < recall->calls->len; c++)
    n_whys += ((const SteadRecallCall *) recall->calls->pdata[c])->whys->len;
  /* Two who decide, and 36 lots at most in one sentence. */
  g_assert_cmpuint (n_whys, ==, 2 + 2);
}

int
main (int    argc,
      char **argv)
{
  farm_start (&argc, &argv);
  g_test_add ("/answer/trace/eggs", House, NULL, set_up, test_eggs, tear_down);
  g_test_add ("/answer/trace/many", House, NULL, set_up, test_many, tear_down);
  g_test_add ("/answer/trace/many-sacks", House, NULL, set_up, test_many_sacks, tear_down);
  return g_test_run ();
}
