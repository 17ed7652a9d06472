/* test-kitchen.c - the run sheet, its limits, and what came of a kitchen batch.
 *
 * Limits: FDA Food Code 2022, §3-401.11(A)(2): eggs that are held, 155 °F for 17 s or
 * 158 °F; §3-501.16: 135 °F and 41 °F; §3-501.14(A): 70 °F within 2 h, 41 °F within 6 h.
 */
#include "farm.h"
#include "numbers.h"

#include "answer/stead-batch-answer.h"
#include "answer/stead-due-answer.h"
#include "answer/stead-kitchen-private.h"
#include "answer/stead-question.h"
#include "answer/stead-words.h"

#include <math.h>
#include <string.h>

#define F(f) (((f) - 32) / 1.8)

typedef struct
{
  Farm   farm;
  gint64 flour, bowls, recipe, batch;
} Kitchen;

static gint64
new_item (Kitchen       *kitchen,
          const char    *name,
          SteadItemKind  kind,
          const char    *unit)
{
  SteadItem item = { .name = (char *) name, .kind = kind, .unit = stead_unit_by_id (unit), .reorder_base = NAN };

  FARM_DO (&kitchen->farm, stead_item_repo_save (kitchen->farm.store, &item, &farm_error));
  return item.id;
}

static SteadRecipeStep *
add_step (SteadRecipe *recipe,
          const char  *text,
          const char  *step_word,
          const char  *food)
{
  SteadRecipeStep *step = stead_recipe_step_new ();

  step->text = g_strdup (text);
  step->step = g_strdup (step_word);
  step->food = g_strdup (food);
  g_ptr_array_add (recipe->steps, step);
  return step;
}

static void
set_up (Kitchen       *kitchen,
        gconstpointer  data)
{
  g_autoptr(SteadRecipe) recipe = stead_recipe_new ();
  SteadRecipePart *part = stead_recipe_part_new ();

  farm_set_up (&kitchen->farm, data);
  kitchen->flour = new_item (kitchen, "Flour", STEAD_ITEM_INGREDIENT, "kg");
  kitchen->bowls = new_item (kitchen, "Bowl", STEAD_ITEM_PRODUCE, "ea");
  recipe->name = g_strdup ("Bowls");
  recipe->item_id = kitchen->bowls;
  recipe->yield_base = 10;
  part->item_id = kitchen->flour;
  part->amount = 2;
  part->unit = stead_unit_by_id ("kg");
  g_ptr_array_add (recipe->parts, part);
  add_step (recipe, "Cook the eggs", "cook", "raw_egg");
  add_step (recipe, "Hold hot", "hold_hot", NULL)->least_c = F (150);
  add_step (recipe, "Cool", "cool", NULL);
  add_step (recipe, "Wash up", NULL, NULL);
  FARM_DO (&kitchen->farm, stead_recipe_repo_save (kitchen->farm.store, recipe, &farm_error));
  kitchen->recipe = recipe->id;
  farm_buy (&kitchen->farm, kitchen->farm.today - 5, kitchen->flour, 6, 900, FALSE);
  FARM_DO (&kitchen->farm, stead_kitchen_repo_plan (kitchen->farm.store, recipe->id, 10, kitchen->farm.today, "Bowls 1", 0,
                                                    &kitchen->batch, &farm_error));
}

static void
tear_down (Kitchen       *kitchen,
           gconstpointer  data)
{
  farm_tear_down (&kitchen->farm, data);
}

static SteadKitchenAnswer *
ask (Kitchen *kitchen)
{
  g_autoptr(GError) error = NULL;
  SteadKitchenAnswer *answer = stead_kitchen_answer_new (kitchen->farm.store, kitchen->batch, &error);

  g_assert_no_error (error);
  return answer;
}

static const SteadRunLine *
line_of (const SteadKitchenAnswer *answer,
         guint                     at)
{
  return answer->lines->pdata[at];
}

/* A reading of a step, @minute after midnight of today. */
static void
read_temp (Kitchen *kitchen,
           guint    step,
           int      minute,
           double   temp_f)
{
  g_autoptr(SteadKitchenAnswer) answer = ask (kitchen);
  SteadShown shown = { .at = (gint64) kitchen->farm.today * 86400 + minute * 60, .kind = (char *) "food_temp",
                       .value = F (temp_f), .batch_id = kitchen->batch };

  shown.step_id = line_of (answer, step)->step->id;
  FARM_DO (&kitchen->farm, stead_kitchen_repo_add_reading (kitchen->farm.store, &shown, &farm_error));
}

static SteadRunVerdict
verdict_of (Kitchen *kitchen,
            guint    step)
{
  g_autoptr(SteadKitchenAnswer) answer = ask (kitchen);

  return line_of (answer, step)->verdict;
}

static void
test_limits (Kitchen       *kitchen,
             gconstpointer  data)
{
  g_autoptr(SteadKitchenAnswer) answer = ask (kitchen);

  g_assert_cmpuint (answer->lines->len, ==, 4);
  NUMBERS_ARE (line_of (answer, 0)->limit, 145, 3, 150, 60, 155, 17, 158);
  NUMBERS_ARE (line_of (answer, 1)->limit, 135);
  NUMBERS_ARE (line_of (answer, 1)->own, 150);
  NUMBERS_ARE (line_of (answer, 2)->limit, 70, 2, 41, 6);
  g_assert_null (line_of (answer, 3)->limit);
  g_assert_cmpint (line_of (answer, 3)->verdict, ==, STEAD_RUN_NO_LIMIT);
  g_assert_cmpint (line_of (answer, 0)->verdict, ==, STEAD_RUN_OPEN);
  g_assert_cmpint (answer->n_open, ==, 3);
  g_assert_nonnull (strstr (line_of (answer, 0)->source, "§3-401.11"));
  g_assert_nonnull (strstr (line_of (answer, 1)->source, "§3-501.16(A)(1)"));
  if (farm_in_english ())
    g_assert_cmpstr (line_of (answer, 2)->limit, ==, "at most 70 °F within 2 h, and at most 41 °F within 6 h");
}

/* 158 °F is met at once, 155 °F if it was held, 144 °F is not met by any row. */
static void
test_readings (Kitchen       *kitchen,
               gconstpointer  data)
{
  g_autoptr(SteadKitchenAnswer) answer = NULL;

  read_temp (kitchen, 0, 600, 158);
  g_assert_cmpint (verdict_of (kitchen, 0), ==, STEAD_RUN_MET);
  read_temp (kitchen, 0, 601, 155);
  g_assert_cmpint (verdict_of (kitchen, 0), ==, STEAD_RUN_IF_HELD);
  read_temp (kitchen, 0, 602, 144);
  g_assert_cmpint (verdict_of (kitchen, 0), ==, STEAD_RUN_NOT_MET);
  /* The table asks for 135 °F, this recipe for 150 °F. */
  read_temp (kitchen, 1, 610, 140);
  g_assert_cmpint (verdict_of (kitchen, 1), ==, STEAD_RUN_NOT_MET);
  answer = ask (kitchen);
  g_assert_cmpint (answer->n_not_met, ==, 2);
  NUMBERS_ARE (line_of (answer, 0)->verdict_text, 1);
  NUMBERS_ARE (line_of (answer, 1)->verdict_text, 10);
  if (farm_in_english ())
    g_assert_nonnull (strstr (answer->caution, "2 limits were not met"));
  read_temp (kitchen, 1, 611, 150);
  g_assert_cmpint (verdict_of (kitchen, 1), ==, STEAD_RUN_MET);
}

static void
test_cooling (Kitchen       *kitchen,
              gconstpointer  data)
{
  read_temp (kitchen, 2, 600, 135);
  g_assert_cmpint (verdict_of (kitchen, 2), ==, STEAD_RUN_OPEN);
  read_temp (kitchen, 2, 720, 70);
  g_assert_cmpint (verdict_of (kitchen, 2), ==, STEAD_RUN_OPEN);
  read_temp (kitchen, 2, 960, 41);
  g_assert_cmpint (verdict_of (kitchen, 2), ==, STEAD_RUN_MET);
}

/* 70 °F is cold enough, but a minute late. */
static void
test_cooling_slowly (Kitchen       *kitchen,
                     gconstpointer  data)
{
  read_temp (kitchen, 2, 600, 135);
  read_temp (kitchen, 2, 721, 70);
  g_assert_cmpint (verdict_of (kitchen, 2), ==, STEAD_RUN_NOT_MET);
}

static void
test_sentences (Kitchen       *kitchen,
                gconstpointer  data)
{
  Farm *farm = &kitchen->farm;
  g_autoptr(SteadHarvest) harvest = stead_harvest_new ();
  g_autoptr(SteadKitchenAnswer) answer = ask (kitchen);
  g_autoptr(GPtrArray) whys = NULL;
  g_autofree char *plain = stead_words_plain (answer->sentence);

  /* 2 kg of 6 kg at $9.00: $3.00 for ten bowls. */
  g_assert_cmpfloat_with_epsilon (answer->planned_cents, 300, 1e-9);
  g_assert_cmpfloat_with_epsilon (answer->planned_unit_cents, 30, 1e-9);
  NUMBERS_ARE (plain, 1, 10, 0, 4);
  FARM_DO (farm, stead_kitchen_repo_take_proposed (farm->store, kitchen->batch, farm->today, 0, &farm_error));
  harvest->batch_id = kitchen->batch;
  harvest->day = farm->today;
  harvest->quantity_base = 8;
  harvest->lost_base = 1;
  harvest->tasted_base = 1;
  harvest->reason = g_strdup ("Burnt & dropped");
  FARM_DO (farm, stead_kitchen_repo_finish (farm->store, harvest, &farm_error));
  g_clear_pointer (&answer, stead_kitchen_answer_free);
  answer = ask (kitchen);
  g_clear_pointer (&plain, g_free);
  plain = stead_words_plain (answer->sentence);
  g_assert_cmpint (answer->used_cents, ==, 300);
  g_assert_cmpfloat_with_epsilon (answer->unit_cents, 37.5, 1e-9);
  g_assert_cmpfloat_with_epsilon (answer->yield_frac, 0.8, 1e-12);
  if (farm_in_english ())
    {
      g_assert_cmpstr (plain, ==, "8 of 10 planned came out of “Bowls 1” on Mar 31: 80%. 1 spoiled (Burnt & dropped), and "
                                  "1 was tasted or kept.");
      g_assert_cmpstr (answer->cost_text, ==, "The lot carries $3.00: one “Bowl” costs $0.38; planned at today's prices, "
                                          "$0.30.");
    }
  else
    {
      NUMBERS_ARE (answer->cost_text, 3, 0.38, 0.3);
    }
  NUMBERS_ARE (answer->caution, 3);
  whys = stead_kitchen_answer_whys (answer);
  g_assert_cmpuint (whys->len, ==, 4);
  NUMBERS_ARE (((SteadWhy *) whys->pdata[0])->worked, 3, 3);
  NUMBERS_ARE (((SteadWhy *) whys->pdata[1])->worked, 3, 8, 0.38);
  NUMBERS_ARE (((SteadWhy *) whys->pdata[2])->worked, 3, 10, 0.30);
  NUMBERS_ARE (((SteadWhy *) whys->pdata[3])->worked, 8, 10, 80);
}

static void
test_question (Kitchen       *kitchen,
               gconstpointer  data)
{
  g_autofree char *sentence = NULL;
  g_autoptr(JsonNode) figures = NULL;
  g_autoptr(GError) error = NULL;
  JsonObject *object;

  g_assert_true (stead_question_ask (kitchen->farm.store, "kitchen", NULL, &sentence, &figures, &error));
  g_assert_no_error (error);
  object = json_node_get_object (figures);
  g_assert_cmpstr (json_object_get_string_member (object, "batch"), ==, "Bowls 1");
  g_assert_cmpint (json_array_get_length (json_object_get_array_member (object, "steps")), ==, 4);
}

/* What is cooked, or planned for a day to come, is no trouble to what is raised. */
static void
test_elsewhere (Kitchen       *kitchen,
                gconstpointer  data)
{
  Farm *farm = &kitchen->farm;
  g_autoptr(SteadDueAnswer) due_before = stead_due_answer_new (farm->store, NULL);
  g_autoptr(SteadDueAnswer) due = NULL;
  g_autoptr(SteadStripAnswer) strip = NULL;
  g_autoptr(SteadBatchAnswer) batch = NULL;
  g_autoptr(SteadBatchAnswer) ahead = NULL;
  g_autoptr(GError) error = NULL;
  gint64 later = 0;

  FARM_DO (farm, stead_kitchen_repo_plan (farm->store, kitchen->recipe, 20, farm->today + 7, NULL, 0, &later,
                                          &farm_error));
  FARM_DO (farm, stead_kitchen_repo_take_proposed (farm->store, kitchen->batch, farm->today, 0, &farm_error));
  due = stead_due_answer_new (farm->store, &error);
  g_assert_no_error (error);
  g_assert_cmpuint (due->dues->len, ==, due_before->dues->len);
  strip = stead_strip_answer_new (farm->store, NULL, 0, &error);
  g_assert_no_error (error);
  NUMBERS_ARE (strip->raise, 1);
  batch = stead_batch_answer_new (farm->store, kitchen->batch, &error);
  g_assert_no_error (error);
  g_assert_cmpfloat (batch->money.cost.so_far_cents, ==, 300);
  ahead = stead_batch_answer_new (farm->store, later, &error);
  g_assert_no_error (error);
  g_assert_cmpfloat (ahead->money.cost.so_far_cents, ==, 0);
}

#define CASE(name, function) g_test_add ("/answer/kitchen/" name, Kitchen, NULL, set_up, function, tear_down)

/* 21 CFR 114.80(a)(1): a finished equilibrium pH of 4.6 or below. */
static void
test_ph (Kitchen       *kitchen,
         gconstpointer  data)
{
  static const struct { double ph; SteadRunVerdict verdict; } cases[] = {
    { 4.2, STEAD_RUN_MET }, { 4.6, STEAD_RUN_MET }, { 4.61, STEAD_RUN_NOT_MET }, { 5.1, STEAD_RUN_NOT_MET },
  };
  SteadKitchenStep step = { .id = 7, .text = (char *) "Measure the pH", .step = (char *) "ph", .minutes = NAN, .least_c = NAN,
                            .most_c = NAN, .hold_s = NAN, .started_at = STEAD_TIME_NONE, .done_at = STEAD_TIME_NONE };

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      SteadShown shown = { .id = 1, .step_id = 7, .kind = (char *) "ph", .value = cases[i].ph, .held_s = NAN };
      g_autoptr(GPtrArray) readings = g_ptr_array_new ();
      SteadRunLine *line;

      g_ptr_array_add (readings, &shown);
      line = stead_kitchen_run_line (&step, 1, readings, STEAD_UNITS_US);
      g_assert_cmpstr (line->measure, ==, "ph");
      g_assert_nonnull (strstr (line->limit, "4"));
      g_assert_nonnull (strstr (line->source, "114.80"));
      g_assert_true (g_str_has_prefix (line->reading, "pH "));
      g_assert_cmpint (line->verdict, ==, cases[i].verdict);
      stead_run_line_free (line);
    }
}

int
main (int    argc,
      char **argv)
{
  farm_start (&argc, &argv);
  CASE ("steps-bear-their-limits-and-sources", test_limits);
  CASE ("readings-are-judged-by-table-and-recipe", test_readings);
  CASE ("cooling-is-met-in-both-stages", test_cooling);
  CASE ("ph", test_ph);
  CASE ("cooling-too-slowly-is-said", test_cooling_slowly);
  CASE ("says-what-came-out-and-what-it-costs", test_sentences);
  CASE ("is-no-trouble-to-what-is-raised", test_elsewhere);
  CASE ("is-asked-by-name", test_question);
  return g_test_run ();
}
