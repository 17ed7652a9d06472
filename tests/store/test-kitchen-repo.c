/* test-kitchen-repo.c - kitchen batches from plan to lot: every cent that goes in comes out. */
#include "config.h"

#include <math.h>

#include "repo-fixture.h"
#include "store/stead-kitchen-private.h"

typedef struct
{
  Farm   *farm;
  gint64  flour, eggs, bowls;
  gint64  recipe;      /* 10 bowls of 1 kg of flour and 5 eggs, 40 minutes, two steps */
} Kitchen;

static gint64
lot_of (Kitchen *kitchen,
        gint64   receipt_id)
{
  g_autofree char *sql = g_strdup_printf ("SELECT l.id FROM lot l JOIN receipt_line rl ON rl.id = l.receipt_line_id"
                                          " WHERE rl.receipt_id = %" G_GINT64_FORMAT, receipt_id);

  return fixture_number (kitchen->farm->store, sql);
}

/* A lot of flour that came @days ago and is best by @best_by. */
static gint64
flour_lot (Kitchen *kitchen,
           int      days,
           double   kg,
           gint64   cents,
           SteadDay best_by)
{
  Farm *farm = kitchen->farm;
  gint64 lot = lot_of (kitchen, farm_receipt (farm, kitchen->flour, TODAY - days, kg, cents, FALSE));
  g_autofree char *sql = g_strdup_printf ("UPDATE lot SET best_by = %d WHERE id = %" G_GINT64_FORMAT, best_by, lot);

  if (best_by != STEAD_DAY_NONE)
    g_assert_cmpint (sqlite3_exec (stead_store_get_db (farm->store), sql, NULL, NULL, NULL), ==, SQLITE_OK);
  return lot;
}

static void
set_up (Kitchen       *kitchen,
        gconstpointer  data)
{
  Farm *farm = kitchen->farm = farm_new ();
  SteadItem bowls = { .name = (char *) "Breakfast bowl", .kind = STEAD_ITEM_PRODUCE,
                      .unit = stead_unit_by_id ("ea"), .shelf_life_days = 4, .reorder_base = NAN };
  g_autoptr(SteadRecipe) recipe = stead_recipe_new ();
  SteadRecipePart *part;
  SteadRecipeStep *step;

  kitchen->flour = farm_item (farm, "Flour", STEAD_ITEM_INGREDIENT, "kg");
  kitchen->eggs = farm_item (farm, "Eggs", STEAD_ITEM_PRODUCE, "ea");
  ACT (farm, stead_item_repo_save (farm->store, &bowls, err));
  kitchen->bowls = bowls.id;
  recipe->name = g_strdup ("Bowls");
  recipe->item_id = bowls.id;
  recipe->yield_base = 10;
  recipe->minutes = 40;
  part = stead_recipe_part_new ();
  part->item_id = kitchen->flour;
  part->amount = 1;
  part->unit = stead_unit_by_id ("kg");
  g_ptr_array_add (recipe->parts, part);
  part = stead_recipe_part_new ();
  part->item_id = kitchen->eggs;
  part->amount = 5;
  g_ptr_array_add (recipe->parts, part);
  step = stead_recipe_step_new ();
  step->text = g_strdup ("Cook");
  step->step = g_strdup ("cook");
  step->food = g_strdup ("raw_egg");
  g_ptr_array_add (recipe->steps, step);
  step = stead_recipe_step_new ();
  step->text = g_strdup ("Cool");
  g_ptr_array_add (recipe->steps, step);
  ACT (farm, stead_recipe_repo_save (farm->store, recipe, err));
  kitchen->recipe = recipe->id;
}

static void
tear_down (Kitchen       *kitchen,
           gconstpointer  data)
{
  farm_free (kitchen->farm);
}

static gint64
plan (Kitchen  *kitchen,
      double    wanted,
      SteadDay  day)
{
  Farm *farm = kitchen->farm;
  gint64 id = 0;

  ACT (farm, stead_kitchen_repo_plan (farm->store, kitchen->recipe, wanted, day, NULL, 0, &id, err));
  return id;
}

static SteadHarvest *
out_of (gint64 batch_id,
        double good,
        double lost)
{
  SteadHarvest *harvest = stead_harvest_new ();

  harvest->batch_id = batch_id;
  harvest->day = TODAY;
  harvest->quantity_base = good;
  harvest->lost_base = lost;
  harvest->reason = lost > 0 ? g_strdup ("Dropped") : NULL;
  return harvest;
}

/* --- planning ------------------------------------------------------------------ */

static void
test_plan (Kitchen       *kitchen,
           gconstpointer  data)
{
  Farm *farm = kitchen->farm;
  gint64 id = plan (kitchen, 25, TODAY + 4);
  g_autoptr(SteadRecipe) recipe = NULL;
  g_autoptr(SteadKitchen) read = NULL;
  g_autoptr(GPtrArray) list = NULL;
  g_autoptr(GError) error = NULL;
  const SteadKitchenPart *part;

  read = stead_kitchen_repo_get (farm->store, id, &error);
  g_assert_no_error (error);
  g_assert_cmpint (read->batch.kind, ==, STEAD_BATCH_KITCHEN);
  g_assert_cmpstr (read->batch.name, ==, "Bowls, Mar 7, 2026");
  g_assert_cmpint (read->batch.started_on, ==, TODAY + 4);
  g_assert_cmpfloat (read->wanted_base, ==, 25);
  g_assert_cmpfloat (read->minutes, ==, 100);
  g_assert_cmpstr (read->recipe_name, ==, "Bowls");
  g_assert_cmpstr (read->item_name, ==, "Breakfast bowl");
  g_assert_cmpuint (read->parts->len, ==, 2);
  g_assert_cmpuint (read->steps->len, ==, 2);
  part = read->parts->pdata[0];
  g_assert_cmpfloat_with_epsilon (part->need_base, 2.5, 1e-9);
  /* Twelve and a half eggs are thirteen. */
  part = read->parts->pdata[1];
  g_assert_cmpfloat (part->amount, ==, 13);
  g_assert_cmpfloat_with_epsilon (part->need_base, 13, 1e-9);
  g_assert_cmpstr (((SteadKitchenStep *) read->steps->pdata[0])->food, ==, "raw_egg");
  g_assert_cmpint (((SteadKitchenStep *) read->steps->pdata[0])->started_at, ==, STEAD_TIME_NONE);
  g_assert_cmpint (plan (kitchen, 10, TODAY + 4), !=, id);
  g_assert_cmpint (fixture_number (farm->store, "SELECT count (*) FROM batch WHERE name = 'Bowls, Mar 7, 2026 (2)'"),
                   ==, 1);
  list = stead_kitchen_repo_list (farm->store, FALSE, &error);
  g_assert_cmpuint (list->len, ==, 2);
  ACT (farm, stead_kitchen_repo_replan (farm->store, id, 10, err));
  g_assert_cmpint (fixture_number (farm->store, "SELECT count (*) FROM kitchen_part"), ==, 4);
  g_clear_pointer (&read, stead_kitchen_free);
  read = stead_kitchen_repo_get (farm->store, id, &error);
  g_assert_cmpfloat_with_epsilon (((SteadKitchenPart *) read->parts->pdata[0])->need_base, 1, 1e-9);
  read->minutes = 33;
  read->batch.started_on = TODAY;
  ACT (farm, stead_kitchen_repo_save (farm->store, read, err));
  g_assert_cmpint (fixture_number (farm->store, "SELECT minutes FROM kitchen ORDER BY batch_id LIMIT 1"), ==, 33);
  INVALID (farm, stead_kitchen_repo_plan (farm->store, kitchen->recipe, 0, TODAY, NULL, 0, NULL, err), "above zero");
  INVALID (farm, stead_kitchen_repo_plan (farm->store, kitchen->recipe, 5, TODAY + 900, NULL, 0, NULL, err), "year");
  recipe = stead_recipe_repo_get (farm->store, kitchen->recipe, &error);
  recipe->retired_on = TODAY;
  ACT (farm, stead_recipe_repo_save (farm->store, recipe, err));
  INVALID (farm, stead_kitchen_repo_plan (farm->store, kitchen->recipe, 5, TODAY, NULL, 0, NULL, err), "out of use");
  INVALID (farm, stead_recipe_repo_delete (farm->store, kitchen->recipe, err), "2 kitchen batches");
  farm_assert_undo (farm);
}

/* The batch keeps its own copy: a recipe changed later changes nothing cooked. */
static void
test_copy (Kitchen       *kitchen,
           gconstpointer  data)
{
  Farm *farm = kitchen->farm;
  gint64 id = plan (kitchen, 10, TODAY);
  g_autoptr(SteadRecipe) recipe = stead_recipe_repo_get (farm->store, kitchen->recipe, NULL);
  g_autoptr(SteadKitchen) read = NULL;

  ((SteadRecipePart *) recipe->parts->pdata[0])->amount = 9;
  g_ptr_array_set_size (recipe->steps, 0);
  ACT (farm, stead_recipe_repo_save (farm->store, recipe, err));
  read = stead_kitchen_repo_get (farm->store, id, NULL);
  g_assert_cmpfloat (((SteadKitchenPart *) read->parts->pdata[0])->amount, ==, 1);
  g_assert_cmpuint (read->steps->len, ==, 2);
}

/* --- lots ------------------------------------------------------------------------- */

static void
test_propose (Kitchen       *kitchen,
              gconstpointer  data)
{
  Farm *farm = kitchen->farm;
  gint64 keeps = flour_lot (kitchen, 30, 5, 500, STEAD_DAY_NONE);
  gint64 late = flour_lot (kitchen, 20, 1, 100, TODAY + 60);
  gint64 soon = flour_lot (kitchen, 2, 1, 150, TODAY + 3);
  gint64 past = flour_lot (kitchen, 40, 2, 200, TODAY - 1);
  gint64 id = plan (kitchen, 25, TODAY);
  g_autoptr(GError) error = NULL;
  g_autoptr(GPtrArray) takes = stead_kitchen_repo_propose (farm->store, id, TODAY, &error);
  g_autoptr(GPtrArray) lots = stead_kitchen_repo_lots (farm->store, kitchen->flour, TODAY, &error);
  g_autoptr(GPtrArray) more = NULL;
  const SteadKitchenTake *take;

  g_assert_no_error (error);
  /* First expiring first, what keeps last; never out of what is past. */
  g_assert_cmpuint (takes->len, ==, 4);
  take = takes->pdata[0];
  g_assert_cmpint (take->lot_id, ==, soon);
  g_assert_cmpfloat_with_epsilon (take->base, 1, 1e-9);
  take = takes->pdata[1];
  g_assert_cmpint (take->lot_id, ==, late);
  take = takes->pdata[2];
  g_assert_cmpint (take->lot_id, ==, keeps);
  g_assert_cmpfloat_with_epsilon (take->base, 0.5, 1e-9);
  take = takes->pdata[3];
  g_assert_cmpint (take->lot_id, ==, 0);
  g_assert_cmpstr (take->item_name, ==, "Eggs");
  g_assert_cmpfloat (take->base, ==, 13);
  g_assert_cmpuint (lots->len, ==, 4);
  take = lots->pdata[3];
  g_assert_cmpint (take->lot_id, ==, past);
  g_assert_true (take->past);
  INVALID (farm, stead_kitchen_repo_take_proposed (farm->store, id, TODAY, 0, err), "Eggs: the store room is short by 13.");
  /* Not even where it is short: 100 bowls want 10 kg, and 7 of the 9 are good. */
  more = stead_kitchen_repo_propose (farm->store, plan (kitchen, 100, TODAY), TODAY, &error);
  take = more->pdata[3];
  g_assert_cmpint (take->lot_id, ==, 0);
  g_assert_cmpfloat_with_epsilon (take->base, 3, 1e-9);
  INVALID (farm, stead_kitchen_repo_take (farm->store, id, past, TODAY, 1, "  ", 0, err), "was best by Mar 2, 2026");
  INVALID (farm, stead_kitchen_repo_take (farm->store, id, keeps, TODAY, 6, NULL, 0, err), "holds 5 kg");
  ACT (farm, stead_kitchen_repo_take (farm->store, id, past, TODAY, 1, "Smells fine, baked through", 0, err));
  g_assert_cmpint (fixture_number (farm->store, "SELECT count (*) FROM movement WHERE reason LIKE 'Smells%'"), ==, 1);
  /* What was taken by hand is not proposed again. */
  g_clear_pointer (&takes, g_ptr_array_unref);
  takes = stead_kitchen_repo_propose (farm->store, id, TODAY, &error);
  g_assert_cmpuint (takes->len, ==, 3);
  take = takes->pdata[1];
  g_assert_cmpint (take->lot_id, ==, late);
  g_assert_cmpfloat_with_epsilon (take->base, 0.5, 1e-9);
}

/* Animals that should have waited are not eaten. */
static void
test_wait (Kitchen       *kitchen,
           gconstpointer  data)
{
  Farm *farm = kitchen->farm;
  gint64 harvest = farm_harvest (farm, farm->flock, kitchen->eggs, TODAY - 2, 30, 30, 600);
  gint64 id = plan (kitchen, 10, TODAY), lot;
  SteadTreatment treatment = { .batch_id = farm->flock, .day = TODAY - 4, .last_day = TODAY - 3,
                               .wait_until = TODAY - 1, .what = (char *) "Drops", .ordered_by = (char *) "Dr. Lane" };
  g_autoptr(GPtrArray) takes = NULL;

  g_assert_cmpint (harvest, !=, 0);
  lot = fixture_number (farm->store, "SELECT lot_id FROM harvest");
  ACT (farm, stead_treatment_repo_save (farm->store, &treatment, err));
  INVALID (farm, stead_kitchen_repo_take (farm->store, id, lot, TODAY, 5, "all the same", 0, err), "must not be eaten");
  takes = stead_kitchen_repo_propose (farm->store, id, TODAY, NULL);
  g_assert_cmpuint (takes->len, ==, 2);
  g_assert_cmpint (((SteadKitchenTake *) takes->pdata[1])->lot_id, ==, 0);
}

/* --- the whole way ------------------------------------------------------------------ */

static void
test_cents (Kitchen       *kitchen,
            gconstpointer  data)
{
  Farm *farm = kitchen->farm;
  g_autoptr(SteadHarvest) harvest = NULL;
  g_autoptr(GPtrArray) moves = NULL;
  g_autoptr(GError) error = NULL;
  gint64 id, used;

  /* 1 kg of 3 kg at 10.00 is 3.33; 5 of 30 eggs at 4.99 are 0.83: together 4.16. */
  flour_lot (kitchen, 10, 3, 1000, STEAD_DAY_NONE);
  farm_harvest (farm, farm->flock, kitchen->eggs, TODAY - 1, 30, 30, 499);
  id = plan (kitchen, 10, TODAY + 1);
  harvest = out_of (id, 9, 1);
  INVALID (farm, stead_kitchen_repo_finish (farm->store, harvest, err), "Nothing was taken out");
  ACT (farm, stead_kitchen_repo_take_proposed (farm->store, id, TODAY, farm->student, err));
  /* Planned for tomorrow, cooked today. */
  g_assert_cmpint (fixture_number (farm->store, "SELECT started_on FROM batch WHERE kind = 'kitchen'"), ==, TODAY);
  harvest->tasted_base = 1;
  harvest->quantity_base = 8;
  ACT (farm, stead_kitchen_repo_finish (farm->store, harvest, err));
  g_assert_cmpint (harvest->cost_cents, ==, 333 + 83);
  g_assert_cmpint (harvest->best_by, ==, TODAY + 4);
  g_assert_cmpstr (harvest->lot_code, ==, "K26062-1");
  g_assert_cmpint (fixture_number (farm->store, "SELECT s.cents FROM lot_stock s JOIN harvest h ON h.lot_id = s.lot_id"
                                                " WHERE h.tasted_base = 1 AND h.lost_base = 1 AND h.is_last = 1"),
                   ==, 416);
  g_assert_cmpint (fixture_number (farm->store, "SELECT ended_on FROM batch WHERE kind = 'kitchen'"), ==, TODAY);
  moves = stead_kitchen_repo_taken (farm->store, id, &error);
  g_assert_cmpuint (moves->len, ==, 2);
  INVALID (farm, stead_kitchen_repo_give_back (farm->store, ((SteadMove *) moves->pdata[0])->id, err), "finished");
  INVALID (farm, stead_kitchen_repo_take (farm->store, id, 1, TODAY, 1, NULL, 0, err), "finished");
  /* Counting again what came out keeps the lot and its cents. */
  harvest->quantity_base = 7;
  harvest->lost_base = 2;
  ACT (farm, stead_kitchen_repo_finish (farm->store, harvest, err));
  g_assert_cmpint (fixture_number (farm->store, "SELECT count (*) FROM lot WHERE code LIKE 'K%'"), ==, 1);
  g_assert_true (stead_kitchen_repo_used_cents (farm->store, id, &used, &error));
  g_assert_cmpint (used, ==, 416);
  farm_assert_ledger (farm);
  ACT (farm, stead_kitchen_repo_reopen (farm->store, id, err));
  ACT (farm, stead_kitchen_repo_give_back (farm->store, ((SteadMove *) moves->pdata[0])->id, err));
  g_assert_cmpint (fixture_number (farm->store, "SELECT count (*) FROM lot WHERE code LIKE 'K%'"), ==, 0);
  ACT (farm, stead_kitchen_repo_delete (farm->store, id, err));
  g_assert_cmpint (fixture_number (farm->store, "SELECT sum (cents) FROM lot_stock"), ==, 1499);
  g_assert_cmpint (fixture_number (farm->store, "SELECT count (*) FROM kitchen_step"), ==, 0);
  farm_assert_undo (farm);
}

/* Once something of the lot was sold, its batch stays as it is. */
static void
test_sold (Kitchen       *kitchen,
           gconstpointer  data)
{
  Farm *farm = kitchen->farm;
  g_autoptr(SteadHarvest) harvest = NULL;
  gint64 id;

  flour_lot (kitchen, 10, 3, 1000, STEAD_DAY_NONE);
  farm_receipt (farm, kitchen->eggs, TODAY - 1, 30, 499, FALSE);
  id = plan (kitchen, 10, TODAY);
  ACT (farm, stead_kitchen_repo_take_proposed (farm->store, id, TODAY, 0, err));
  harvest = out_of (id, 10, 0);
  ACT (farm, stead_kitchen_repo_finish (farm->store, harvest, err));
  ACT (farm, stead_lot_repo_sell (farm->store, kitchen->bowls, TODAY, 4, NULL, 0, err));
  INVALID (farm, stead_kitchen_repo_reopen (farm->store, id, err), "was used or changed");
  INVALID (farm, stead_kitchen_repo_delete (farm->store, id, err), "was used or changed");
  INVALID (farm, stead_kitchen_repo_finish (farm->store, harvest, err), "was used or changed");
  farm_assert_undo (farm);
}

/* A price that is mended later goes on into what was made of it. */
static void
test_settle (Kitchen       *kitchen,
             gconstpointer  data)
{
  Farm *farm = kitchen->farm;
  g_autoptr(SteadHarvest) harvest = NULL;
  gint64 lot = flour_lot (kitchen, 10, 1, 1000, STEAD_DAY_NONE);
  gint64 id;

  farm_receipt (farm, kitchen->eggs, TODAY - 1, 5, 100, FALSE);
  id = plan (kitchen, 10, TODAY);
  ACT (farm, stead_kitchen_repo_take_proposed (farm->store, id, TODAY, 0, err));
  harvest = out_of (id, 10, 0);
  ACT (farm, stead_kitchen_repo_finish (farm->store, harvest, err));
  g_assert_cmpint (lot, !=, 0);
  g_assert_cmpint (sqlite3_exec (stead_store_get_db (farm->store), "UPDATE movement SET cost_cents = -1234"
                   " WHERE kind = 'used' AND cost_cents = -1000", NULL, NULL, NULL), ==, SQLITE_OK);
  ACT (farm, stead_kitchen_settle_cost (farm->store, id, err));
  g_assert_cmpint (fixture_number (farm->store, "SELECT cost_cents FROM movement WHERE kind = 'made'"), ==, 1334);
}

/* Whatever is cooked, taken back and cooked again, by lot or by average: cents in = cents on hand. */
static void
test_any_history (Kitchen       *kitchen,
                  gconstpointer  data)
{
  Farm *farm = kitchen->farm;
  gint64 bought = 0;

  if (data != NULL)
    g_assert_cmpint (sqlite3_exec (stead_store_get_db (farm->store), data, NULL, NULL, NULL), ==, SQLITE_OK);

  for (int round = 0; round < 60; round++)
    {
      gint64 cents = g_test_rand_int_range (1, 5000), id;
      double wanted = g_test_rand_int_range (1, 40);
      g_autoptr(SteadHarvest) harvest = NULL;

      flour_lot (kitchen, g_test_rand_int_range (0, 20), g_test_rand_double_range (0.1, 9), cents, STEAD_DAY_NONE);
      bought += cents;
      cents = g_test_rand_int_range (1, 3000);
      farm_receipt (farm, kitchen->eggs, TODAY - g_test_rand_int_range (0, 20), g_test_rand_int_range (1, 60), cents,
                    FALSE);
      bought += cents;
      id = plan (kitchen, wanted, TODAY);
      g_assert_true (stead_store_begin (farm->store, "take", NULL));
      if (!stead_kitchen_repo_take_proposed (farm->store, id, TODAY, 0, NULL))
        {
          stead_store_rollback (farm->store);
          ACT (farm, stead_kitchen_repo_delete (farm->store, id, err));
          continue;
        }
      g_assert_true (stead_store_commit (farm->store, NULL));
      harvest = out_of (id, g_test_rand_int_range (1, 40), g_test_rand_int_range (0, 3));
      ACT (farm, stead_kitchen_repo_finish (farm->store, harvest, err));
      if (round % 7 == 3)
        ACT (farm, stead_kitchen_repo_reopen (farm->store, id, err));
      if (round % 7 == 3)
        ACT (farm, stead_kitchen_repo_finish (farm->store, (harvest->id = 0, harvest->lot_id = 0, harvest), err));
      if (round % 7 == 5)
        ACT (farm, stead_kitchen_repo_delete (farm->store, id, err));
    }
  g_assert_cmpint (fixture_number (farm->store, "SELECT sum (cents) FROM lot_stock"), ==, bought);
  g_assert_cmpint (fixture_number (farm->store, "SELECT sum (cost_cents) FROM movement WHERE kind = 'made'"), >, 0);
  g_assert_cmpint (fixture_number (farm->store,
    "SELECT count (*) FROM harvest h JOIN movement m ON m.lot_id = h.lot_id AND m.kind = 'made' WHERE m.cost_cents <>"
    " (SELECT -sum (cost_cents) FROM movement WHERE batch_id = h.batch_id AND kind = 'used')"), ==, 0);
  farm_assert_ledger (farm);
}

/* --- what was done ------------------------------------------------------------------- */

static void
test_steps (Kitchen       *kitchen,
            gconstpointer  data)
{
  Farm *farm = kitchen->farm;
  gint64 id = plan (kitchen, 10, TODAY), noon = (gint64) TODAY * 86400 + 12 * 3600, step;
  SteadShown first = { .at = noon, .kind = (char *) "food_temp", .value = 86, .batch_id = id };
  SteadShown right = { .at = noon, .kind = (char *) "food_temp", .value = 68.5, .batch_id = id };
  SteadShown again = { .at = noon, .kind = (char *) "food_temp", .value = 69, .batch_id = id };
  g_autoptr(SteadKitchen) read = NULL;
  g_autoptr(GPtrArray) shown = NULL;
  g_autoptr(GPtrArray) people = NULL;
  const SteadKitchenStep *row;

  step = fixture_number (farm->store, "SELECT min (id) FROM kitchen_step");
  ACT (farm, stead_kitchen_repo_step_start (farm->store, step, noon, farm->student, err));
  INVALID (farm, stead_kitchen_repo_step_done (farm->store, step, noon - 60, farm->student, NULL, err), "before it began");
  INVALID (farm, stead_kitchen_repo_step_done (farm->store, step, noon + 3 * 86400, 0, NULL, err), "still to come");
  ACT (farm, stead_kitchen_repo_step_done (farm->store, step, noon + 900, farm->student, " Two pans ", err));
  read = stead_kitchen_repo_get (farm->store, id, NULL);
  row = read->steps->pdata[0];
  g_assert_cmpint (row->started_at, ==, noon);
  g_assert_cmpint (row->done_at, ==, noon + 900);
  g_assert_cmpint (row->person_id, ==, farm->student);
  g_assert_cmpstr (row->note, ==, "Two pans");
  INVALID (farm, stead_kitchen_repo_replan (farm->store, id, 20, err), "under way");
  ACT (farm, stead_kitchen_repo_step_start (farm->store, step, STEAD_TIME_NONE, 0, err));
  g_assert_cmpint (fixture_number (farm->store, "SELECT count (*) FROM kitchen_step WHERE done_at IS NOT NULL"), ==, 0);
  /* A wrong reading stays, and the right one names it. */
  first.step_id = right.step_id = again.step_id = step;
  ACT (farm, stead_kitchen_repo_add_reading (farm->store, &first, err));
  right.corrects_id = again.corrects_id = first.id;
  ACT (farm, stead_kitchen_repo_add_reading (farm->store, &right, err));
  INVALID (farm, stead_kitchen_repo_add_reading (farm->store, &again, err), "corrected already");
  again.corrects_id = 0;
  again.value = 500;
  INVALID (farm, stead_kitchen_repo_add_reading (farm->store, &again, err), "so cold or so hot");
  shown = stead_kitchen_repo_readings (farm->store, id, NULL);
  g_assert_cmpuint (shown->len, ==, 2);
  g_assert_true (((SteadShown *) shown->pdata[0])->corrected);
  g_assert_false (((SteadShown *) shown->pdata[1])->corrected);
  g_assert_cmpfloat (((SteadShown *) shown->pdata[1])->value, ==, 68.5);
  ACT (farm, stead_kitchen_repo_set_person (farm->store, id, farm->student, 30, err));
  ACT (farm, stead_kitchen_repo_set_person (farm->store, id, farm->student, 45, err));
  ACT (farm, stead_kitchen_repo_set_person (farm->store, id, farm->advisor, 10, err));
  ACT (farm, stead_kitchen_repo_drop_person (farm->store, id, farm->advisor, err));
  INVALID (farm, stead_kitchen_repo_set_person (farm->store, id, farm->advisor, -1, err), "minutes of work");
  people = stead_kitchen_repo_people (farm->store, id, NULL);
  g_assert_cmpuint (people->len, ==, 1);
  g_assert_cmpfloat (((SteadBatchPerson *) people->pdata[0])->minutes, ==, 45);
  farm_assert_undo (farm);
}

static void
test_parts (Kitchen       *kitchen,
            gconstpointer  data)
{
  Farm *farm = kitchen->farm;
  gint64 id = plan (kitchen, 10, TODAY), part;
  g_autoptr(SteadKitchen) read = NULL;

  part = fixture_number (farm->store, "SELECT min (id) FROM kitchen_part");
  ACT (farm, stead_kitchen_repo_set_part (farm->store, part, 900, stead_unit_by_id ("g"), 0.9, err));
  INVALID (farm, stead_kitchen_repo_set_part (farm->store, part, 0, stead_unit_by_id ("g"), 0, err), "above zero");
  ACT (farm, stead_kitchen_repo_add_part (farm->store, id, farm->carton, 10, stead_unit_by_id ("ea"), 10, err));
  ACT (farm, stead_kitchen_repo_drop_part (farm->store, part + 1, err));
  read = stead_kitchen_repo_get (farm->store, id, NULL);
  g_assert_cmpuint (read->parts->len, ==, 2);
  g_assert_cmpstr (((SteadKitchenPart *) read->parts->pdata[0])->unit->id, ==, "g");
  g_assert_cmpfloat (((SteadKitchenPart *) read->parts->pdata[0])->need_base, ==, 0.9);
  g_assert_cmpint (((SteadKitchenPart *) read->parts->pdata[1])->item_id, ==, farm->carton);
  INVALID (farm, stead_item_repo_delete (farm->store, kitchen->flour, err), "1 recipe");
  farm_assert_undo (farm);
}

#define CASE(name, function) g_test_add ("/store/kitchen/" name, Kitchen, NULL, set_up, function, tear_down)

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  CASE ("is-planned-in-measures-that-a-cook-has", test_plan);
  CASE ("keeps-its-own-copy-of-the-recipe", test_copy);
  CASE ("proposes-what-expires-first", test_propose);
  CASE ("never-takes-what-had-to-wait", test_wait);
  CASE ("carries-exactly-what-was-used", test_cents);
  CASE ("stays-once-its-lot-was-sold", test_sold);
  CASE ("follows-a-mended-price", test_settle);
  CASE ("cents-in-are-cents-on-hand-in-any-history", test_any_history);
  g_test_add ("/store/kitchen/cents-in-are-cents-on-hand-on-average-too", Kitchen,
              "UPDATE farm SET cost_method = 'average'", set_up, test_any_history, tear_down);
  CASE ("writes-down-steps-readings-and-people", test_steps);
  CASE ("parts-are-changed-by-hand", test_parts);
  return g_test_run ();
}
