/* test-run-paper.c - the run sheet: room to write in before the work, the record after it.
 *
 * Limits: FDA Food Code 2022, §3-401.11(A)(2), eggs that are held: 158 °F at once; §3-501.16(A)(1): 135 °F.
 */
#include "farm.h"
#include "read-back.h"

#include "store/stead-kitchen-repo.h"
#include "store/stead-people-repo.h"

#include <math.h>

#define CLOCK(farm, h, m) ((gint64) (farm)->today * 86400 + (h) * 3600 + (m) * 60)
#define F(f) (((f) - 32) / 1.8)

typedef struct
{
  Farm   farm;
  gint64 flour, batch, ada, bo;
} Kitchen;

static gint64
new_item (Farm          *farm,
          const char    *name,
          SteadItemKind  kind,
          const char    *unit)
{
  SteadItem item = { .name = (char *) name, .kind = kind, .unit = stead_unit_by_id (unit), .reorder_base = NAN };

  FARM_DO (farm, stead_item_repo_save (farm->store, &item, &farm_error));
  return item.id;
}

static gint64
new_person (Farm       *farm,
            const char *name)
{
  SteadPerson person = { .name = (char *) name, .left_on = STEAD_DAY_NONE };

  FARM_DO (farm, stead_person_repo_save (farm->store, &person, &farm_error));
  return person.id;
}

static SteadRecipeStep *
add_step (SteadRecipe *recipe,
          const char  *text,
          const char  *word,
          const char  *food)
{
  SteadRecipeStep *step = stead_recipe_step_new ();

  step->text = g_strdup (text);
  step->step = g_strdup (word);
  step->food = g_strdup (food);
  g_ptr_array_add (recipe->steps, step);
  return step;
}

static void
add_part (SteadRecipe *recipe,
          gint64       item,
          double       kg,
          const char  *note)
{
  SteadRecipePart *part = stead_recipe_part_new ();

  part->item_id = item;
  part->amount = kg;
  part->unit = stead_unit_by_id ("kg");
  part->note = g_strdup (note);
  g_ptr_array_add (recipe->parts, part);
}

/* Ten bowls of 2 kg of flour, half of it for the table; 6 kg were bought for $9 on two days. */
static void
set_up (Kitchen       *kitchen,
        gconstpointer  data)
{
  Farm *farm = &kitchen->farm;
  g_autoptr(SteadRecipe) recipe = stead_recipe_new ();
  SteadRecipeStep *hold;

  farm_set_up (farm, data);
  kitchen->flour = new_item (farm, "Flour", STEAD_ITEM_INGREDIENT, "kg");
  recipe->name = g_strdup ("Bowls");
  recipe->item_id = new_item (farm, "Bowl", STEAD_ITEM_PRODUCE, "ea");
  recipe->yield_base = 10;
  add_part (recipe, kitchen->flour, 1, "sifted");
  add_part (recipe, kitchen->flour, 1, NULL);
  add_step (recipe, "Cook the eggs", "cook", "raw_egg")->minutes = 15;
  hold = add_step (recipe, "Hold hot", "hold_hot", NULL);
  hold->least_c = F (150);
  add_step (recipe, "Wash up", NULL, NULL);
  FARM_DO (farm, stead_recipe_repo_save (farm->store, recipe, &farm_error));
  farm_buy (farm, farm->today - 5, kitchen->flour, 1.5, 225, FALSE);
  farm_buy (farm, farm->today - 4, kitchen->flour, 4.5, 675, FALSE);
  kitchen->ada = new_person (farm, "Ada Berg");
  kitchen->bo = new_person (farm, "Bo");
  FARM_DO (farm, stead_kitchen_repo_plan (farm->store, recipe->id, 10, farm->today, "Bowls 1", 0, &kitchen->batch,
                                          &farm_error));
}

static void
tear_down (Kitchen       *kitchen,
           gconstpointer  data)
{
  farm_tear_down (&kitchen->farm, data);
}

static gint64
step_id (Kitchen *kitchen,
         guint    at)
{
  g_autoptr(SteadKitchen) batch = stead_kitchen_repo_get (kitchen->farm.store, kitchen->batch, NULL);

  return ((SteadKitchenStep *) batch->steps->pdata[at])->id;
}

static gint64
read_f (Kitchen *kitchen,
        guint    at,
        gint64   time,
        double   temp_f)
{
  SteadShown shown = { .at = time, .kind = (char *) "food_temp", .value = F (temp_f), .batch_id = kitchen->batch,
                       .step_id = step_id (kitchen, at) };

  FARM_DO (&kitchen->farm, stead_kitchen_repo_add_reading (kitchen->farm.store, &shown, &farm_error));
  return shown.id;
}

static char *
sheet_of (Kitchen *kitchen)
{
  return read_back (kitchen->farm.store, "run-sheet", "Bowls 1", NULL);
}

/* Before the work: the plan, and lines for three more than nobody. */
static void
test_blank (Kitchen       *kitchen,
            gconstpointer  data)
{
  g_autofree char *text = sheet_of (kitchen);

  read_back_holds (text, "Bowls 1: run sheet");
  read_back_holds (text, "Flour, sifted");
  read_back_holds (text, "Limit: at least 135 °F");
  read_back_holds (text, "This recipe asks for at least 150 °F");
  read_back_counts (text, "wrong, corrected", 0);
  read_back_counts (text, " met ", 0);
}

/* After it: who, what of which lot, each reading with its time, how long it took, what came out. */
static void
test_filled (Kitchen       *kitchen,
             gconstpointer  data)
{
  Farm *farm = &kitchen->farm;
  g_autoptr(SteadHarvest) harvest = stead_harvest_new ();
  g_autoptr(GPtrArray) taken = NULL;
  g_autofree char *first = NULL, *second = NULL, *text = NULL;
  SteadShown right = { .value = F (158) };
  gint64 wrong;

  FARM_DO (farm, stead_kitchen_repo_take_proposed (farm->store, kitchen->batch, farm->today, 0, &farm_error)
                 && stead_kitchen_repo_set_person (farm->store, kitchen->batch, kitchen->ada, 90, &farm_error)
                 && stead_kitchen_repo_set_person (farm->store, kitchen->batch, kitchen->bo, 0, &farm_error));
  wrong = read_f (kitchen, 0, CLOCK (farm, 10, 0), 144);
  FARM_DO (farm, stead_shown_repo_correct (farm->store, wrong, &right, &farm_error));
  g_free (right.kind);
  FARM_DO (farm, stead_kitchen_repo_step_start (farm->store, step_id (kitchen, 0), CLOCK (farm, 9, 45), kitchen->ada,
                                                &farm_error)
                 && stead_kitchen_repo_step_done (farm->store, step_id (kitchen, 0), CLOCK (farm, 10, 5), kitchen->ada, NULL,
                                                  &farm_error)
                 && stead_kitchen_repo_step_start (farm->store, step_id (kitchen, 1), CLOCK (farm, 10, 6), 0, &farm_error)
                 && stead_kitchen_repo_step_done (farm->store, step_id (kitchen, 2), CLOCK (farm, 11, 30), kitchen->bo, NULL,
                                                  &farm_error));
  harvest->batch_id = kitchen->batch;
  harvest->day = farm->today;
  harvest->quantity_base = 8;
  harvest->lost_base = 1;
  harvest->tasted_base = 1;
  harvest->reason = g_strdup ("Burnt");
  harvest->best_by = farm->today + 3;
  FARM_DO (farm, stead_kitchen_repo_finish (farm->store, harvest, &farm_error));
  taken = stead_kitchen_repo_taken (farm->store, kitchen->batch, NULL);
  g_assert_cmpuint (taken->len, ==, 2);
  /* 1.5 kg of the older lot, the rest of 2 kg out of the other. */
  first = g_strdup_printf ("%s: 1.5 kg %s: 0.5 kg", ((SteadMove *) taken->pdata[0])->lot_code,
                           ((SteadMove *) taken->pdata[1])->lot_code);
  text = sheet_of (kitchen);
  read_back_holds (text, first);
  read_back_counts (text, ((SteadMove *) taken->pdata[0])->lot_code, 1);   /* of flour once, however often it is a part */
  read_back_holds (text, "Cooks Ada Berg, Bo");
  read_back_holds (text, "10:00 144 °F (wrong, corrected) 10:00 158 °F met");
  read_back_holds (text, "9:45–10:05");
  read_back_holds (text, "11:30");
  read_back_holds (text, "Ada Berg 90");
  read_back_holds (text, "Burnt");
  read_back_holds (text, "Apr 3, 2026");
  read_back_holds (text, "The lot carries $3.00");
}

#define ADD(name, test) g_test_add ("/paper/run/" name, Kitchen, NULL, set_up, test, tear_down)

int
main (int    argc,
      char **argv)
{
  farm_start (&argc, &argv);
  ADD ("blank", test_blank);
  ADD ("filled", test_filled);
  return g_test_run ();
}
