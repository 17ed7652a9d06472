/* test-trace-repo.c - one way back, and forward. */
#include "config.h"

#include <math.h>

#include "kitchen-fixture.h"
#include "store/stead-trace-repo.h"

typedef struct
{
  Farm  *farm;
  gint64 flour, dough, bread, egg;
} Kitchen;

/* Two sacks of flour; dough of the first; bread of the dough, twice; eggs beside it. */
static void
kitchen_open (Kitchen *self)
{
  Farm *farm = self->farm = farm_new ();

  self->flour = farm_item (farm, "Flour", STEAD_ITEM_INGREDIENT, "lb");
  self->dough = farm_item (farm, "Dough", STEAD_ITEM_PRODUCE, "lb");
  self->bread = farm_item (farm, "Bread", STEAD_ITEM_PRODUCE, "ea");
  self->egg = farm_item (farm, "Egg", STEAD_ITEM_PRODUCE, "ea");
  farm_receipt (farm, self->flour, TODAY - 30, 10, 1000, FALSE);                       /* lot 1 */
  farm_receipt (farm, self->flour, TODAY - 29, 10, 1000, TRUE);                        /* lot 2 */
  kitchen_cook (farm, "Dough 1", TODAY - 20, self->flour, 8, self->dough, 12);         /* lot 3 */
  kitchen_cook (farm, "Bread 1", TODAY - 19, self->dough, 5, self->bread, 10);         /* lot 4 */
  kitchen_cook (farm, "Bread 2", TODAY - 18, self->dough, 5, self->bread, 9);          /* lot 5 */
  ACT (farm, stead_lot_repo_sell (farm->store, self->bread, TODAY - 10, 12, "Market", 0, err));
  ACT (farm, stead_lot_repo_adjust (farm->store, 5, STEAD_MOVE_GIVEN, TODAY - 9, -3, "food bank", 0, err));
  ACT (farm, stead_lot_repo_adjust (farm->store, 5, STEAD_MOVE_COUNTED, TODAY - 8, 1, "found", 0, err));
}

static SteadTrace *
trace_of (Farm   *farm,
          gint64  lot_id)
{
  g_autoptr(GError) error = NULL;
  SteadTrace *trace = stead_trace_repo_get (farm->store, lot_id, &error);

  g_assert_no_error (error);
  for (guint i = 0; i < trace->lots->len; i++)
    g_assert_cmpfloat_with_epsilon (stead_trace_lot_gap (trace->lots->pdata[i]), 0, 1e-6);
  return trace;
}

/* The ids of the lots of one step, in order: "4 5". */
static void
assert_step (const SteadTrace *trace,
             int               step,
             const char       *wanted)
{
  g_autoptr(GString) ids = g_string_new (NULL);

  for (guint i = 0; i < trace->lots->len; i++)
    {
      const SteadTraceLot *lot = trace->lots->pdata[i];

      if (lot->step == step)
        g_string_append_printf (ids, ids->len > 0 ? " %d" : "%d", (int) lot->id);
    }
  g_assert_cmpstr (ids->str, ==, wanted);
}

static void
test_back (void)
{
  Kitchen kitchen;
  g_autoptr(Farm) farm = NULL;
  g_autoptr(SteadTrace) trace = NULL;
  const SteadTraceLot *flour;

  kitchen_open (&kitchen);
  farm = kitchen.farm;
  trace = trace_of (farm, 5);
  assert_step (trace, 0, "5");
  assert_step (trace, -1, "3");
  assert_step (trace, -2, "1");     /* not the other sack */
  assert_step (trace, 1, "");
  g_assert_cmpuint (trace->batches->len, ==, 2);
  g_assert_cmpstr (((SteadTraceBatch *) trace->batches->pdata[0])->name, ==, "Dough 1");
  flour = stead_trace_find_lot (trace, 1);
  g_assert_cmpstr (flour->supplier, ==, "Lakeside Feed & Seed");
  g_assert_cmpfloat (flour->in_base, ==, 10);
  g_assert_cmpfloat (flour->used_base, ==, 8);
  g_assert_cmpfloat (flour->left_base, ==, 2);
  g_assert_cmpuint (trace->links->len, ==, 4);
  g_assert_cmpuint (trace->gone->len, ==, 2);     /* sold and given of this lot */
}

/* From the sack to every loaf, sold or on the shelf. */
static void
test_forward (void)
{
  Kitchen kitchen;
  g_autoptr(Farm) farm = NULL;
  g_autoptr(SteadTrace) trace = NULL;
  g_autoptr(SteadTrace) other = NULL;
  const SteadTraceLot *lot;

  kitchen_open (&kitchen);
  farm = kitchen.farm;
  trace = trace_of (farm, 1);
  assert_step (trace, 0, "1");
  assert_step (trace, 1, "3");
  assert_step (trace, 2, "4 5");
  lot = stead_trace_find_lot (trace, 5);
  g_assert_cmpfloat (lot->in_base, ==, 9);
  g_assert_cmpfloat (lot->found_base, ==, 1);
  g_assert_cmpfloat (lot->sold_base, ==, 2);      /* the first ten were of the other lot */
  g_assert_cmpfloat (lot->given_base, ==, 3);
  g_assert_cmpfloat (lot->left_base, ==, 5);
  g_assert_cmpuint (trace->gone->len, ==, 3);
  other = trace_of (farm, 2);
  g_assert_cmpuint (other->lots->len, ==, 1);
}

/* Eggs that were laid before the feed came were not laid of it, and feed of later days is not theirs. */
static void
test_days (void)
{
  Kitchen kitchen;
  g_autoptr(Farm) farm = NULL;
  g_autoptr(SteadTrace) feed = NULL;
  g_autoptr(SteadTrace) eggs = NULL;
  gint64 old, new;

  kitchen_open (&kitchen);
  farm = kitchen.farm;
  farm_receipt (farm, farm->feed, TODAY - 50, 4, 400, FALSE);
  old = fixture_number (farm->store, "SELECT max (id) FROM lot");
  farm_receipt (farm, farm->feed, TODAY - 40, 40, 400, FALSE);
  new = old + 1;
  farm_entry (farm, TODAY - 45, 20, 4, 0);
  farm_harvest (farm, farm->flock, kitchen.egg, TODAY - 44, 20, STEAD_COUNT_NONE, 100);
  farm_entry (farm, TODAY - 35, 20, 4, 0);
  farm_harvest (farm, farm->flock, kitchen.egg, TODAY - 34, 20, STEAD_COUNT_NONE, 100);
  feed = trace_of (farm, new);
  g_assert_cmpuint (feed->lots->len, ==, 2);
  g_assert_null (stead_trace_find_lot (feed, new + 1));
  g_assert_nonnull (stead_trace_find_lot (feed, new + 2));
  eggs = trace_of (farm, new + 1);
  g_assert_nonnull (stead_trace_find_lot (eggs, old));
  g_assert_null (stead_trace_find_lot (eggs, new));
}

/* Who worked on it, what its run sheet says. */
static void
test_people (void)
{
  Kitchen kitchen;
  g_autoptr(Farm) farm = NULL;
  g_autoptr(SteadTrace) trace = NULL;
  const SteadTraceBatch *batch;

  kitchen_open (&kitchen);
  farm = kitchen.farm;
  fixture_act (farm->store, "people",
    "INSERT INTO batch_person (batch_id, person_id, minutes) SELECT id, 1, 30 FROM batch WHERE name = 'Dough 1';"
    "INSERT INTO batch_person (batch_id, person_id, minutes) SELECT id, 2, 30 FROM batch WHERE name = 'Dough 1';"
    "INSERT INTO treatment (batch_id, day, what, ordered_by, last_day, wait_until)"
    " SELECT id, 20000, 'Salt', 'Vet', 20000, 20000 FROM batch WHERE name = 'Dough 1'");
  trace = trace_of (farm, 3);
  batch = trace->batches->pdata[0];
  g_assert_cmpint (batch->n_people, ==, 2);
  g_assert_cmpstr (batch->people, ==, "Ada B., Mx. Reed");
  g_assert_cmpint (batch->n_treatments, ==, 1);
  g_assert_cmpstr (batch->treatment, ==, "Salt");
  g_assert_cmpint (batch->n_steps, ==, 0);
}

/* A file in which a batch used what it made: it ends. */
static void
test_circle (void)
{
  Kitchen kitchen;
  g_autoptr(Farm) farm = NULL;
  g_autoptr(SteadTrace) trace = NULL;

  kitchen_open (&kitchen);
  farm = kitchen.farm;
  fixture_act (farm->store, "circle", "INSERT INTO movement (lot_id, day, kind, quantity_base, cost_cents, batch_id)"
                                      " SELECT 5, day, 'used', -1, 0, (SELECT id FROM batch WHERE name = 'Dough 1')"
                                      " FROM lot WHERE id = 5");
  trace = trace_of (farm, 3);
  g_assert_cmpuint (trace->lots->len, ==, 4);
}

/* In a damaged file a lot does not add up, and it can be seen by how much. */
static void
test_gap (void)
{
  Kitchen kitchen;
  g_autoptr(Farm) farm = NULL;
  g_autoptr(SteadTrace) trace = NULL;
  g_autoptr(GError) error = NULL;

  kitchen_open (&kitchen);
  farm = kitchen.farm;
  fixture_run (farm->store, "UPDATE lot_stock SET base = base - 1 WHERE lot_id = 1");
  trace = stead_trace_repo_get (farm->store, 1, &error);
  g_assert_no_error (error);
  g_assert_cmpfloat_with_epsilon (stead_trace_lot_gap (stead_trace_find_lot (trace, 1)), 1, 1e-9);
}

static void
test_codes (void)
{
  Kitchen kitchen;
  g_autoptr(Farm) farm = NULL;
  g_autoptr(GError) error = NULL;
  g_autofree char *code = NULL;
  g_autofree char *typed = NULL;
  g_autoptr(SteadTrace) trace = NULL;

  kitchen_open (&kitchen);
  farm = kitchen.farm;
  trace = trace_of (farm, 3);
  code = g_strdup (stead_trace_find_lot (trace, 3)->code);
  typed = g_strdup_printf ("  %c%s ", g_ascii_tolower (code[0]), code + 1);
  g_assert_cmpint (stead_trace_repo_find_code (farm->store, typed, &error), ==, 3);
  g_assert_cmpint (stead_trace_repo_find_code (farm->store, "X1", &error), ==, 0);
  g_assert_cmpint (stead_trace_repo_find_code (farm->store, " ", &error), ==, 0);
  g_assert_no_error (error);
  g_assert_null (stead_trace_repo_get (farm->store, 99, &error));
  g_assert_error (error, STEAD_STORE_ERROR, STEAD_STORE_ERROR_NOT_FOUND);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/store/trace/back", test_back);
  g_test_add_func ("/store/trace/forward", test_forward);
  g_test_add_func ("/store/trace/days", test_days);
  g_test_add_func ("/store/trace/people", test_people);
  g_test_add_func ("/store/trace/circle", test_circle);
  g_test_add_func ("/store/trace/gap", test_gap);
  g_test_add_func ("/store/trace/codes", test_codes);
  return g_test_run ();
}
