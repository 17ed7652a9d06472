/* test-check-plan.c - the list of checks in sentences: the figures are the rows', the rows are cited.
 *
 * Limits: FDA Food Code 2022, §3-401.11(A)(2): 145 °F for 180 s, 150 °F for 60 s, 155 °F for 17 s,
 * 158 °F; §3-501.16: 135 °F, 41 °F, eggs in air of 45 °F; §3-501.14(A): 70 °F in 2 h, 41 °F in 6 h.
 */
#include "farm.h"
#include "numbers.h"

#include "answer/stead-check-plan-answer.h"
#include "answer/stead-question.h"
#include "answer/stead-check-list.h"
#include "store/stead-kitchen-repo.h"
#include "store/stead-sale-repo.h"

#include <math.h>
#include <string.h>

#define F(f) (((f) - 32) / 1.8)

typedef struct
{
  Farm   farm;
  gint64 eggs, bowls, recipe, batch;
} Kitchen;

static gint64
new_item (Kitchen       *kitchen,
          const char    *name,
          SteadItemKind  kind,
          const char    *food,
          const char    *allergens)
{
  SteadItem item = { .name = (char *) name, .kind = kind, .unit = stead_unit_by_id ("ea"), .reorder_base = NAN,
                     .food = (char *) food, .allergens = (char *) allergens };

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
  kitchen->eggs = new_item (kitchen, "House eggs", STEAD_ITEM_INGREDIENT, "raw_shell_eggs", "Eggs; dairy");
  kitchen->bowls = new_item (kitchen, "Bowl", STEAD_ITEM_PRODUCE, NULL, NULL);
  recipe->name = g_strdup ("Breakfast bowls");
  recipe->item_id = kitchen->bowls;
  recipe->yield_base = 10;
  recipe->kept = STEAD_KEPT_HOT;
  part->item_id = kitchen->eggs;
  part->amount = 20;
  part->unit = stead_unit_by_id ("ea");
  g_ptr_array_add (recipe->parts, part);
  add_step (recipe, "Cook the eggs", "cook", "raw_egg");
  add_step (recipe, "Hold hot", "hold_hot", NULL)->least_c = F (150);
  FARM_DO (&kitchen->farm, stead_recipe_repo_save (kitchen->farm.store, recipe, &farm_error));
  kitchen->recipe = recipe->id;
  FARM_DO (&kitchen->farm, stead_kitchen_repo_plan (kitchen->farm.store, recipe->id, 10, kitchen->farm.today, "Bowls 1", 0,
                                                    &kitchen->batch, &farm_error));
}

static void
tear_down (Kitchen       *kitchen,
           gconstpointer  data)
{
  farm_tear_down (&kitchen->farm, data);
}

static gboolean
numbers_has (const char *text,
             double      number)
{
  g_autoptr(GArray) numbers = numbers_in (text);

  for (guint i = 0; i < numbers->len; i++)
    if (fabs (g_array_index (numbers, double, i) - number) < 1e-9)
      return TRUE;
  return FALSE;
}

static SteadCheckPlanAnswer *
ask (Kitchen         *kitchen,
     SteadCheckOrder  order)
{
  g_autoptr(GError) error = NULL;
  SteadCheckPlanAnswer *answer;

  order.day = kitchen->farm.today;
  answer = stead_check_plan_answer_new (kitchen->farm.store, &order, &error);
  g_assert_no_error (error);
  g_assert_nonnull (answer);
  return answer;
}

static const SteadCheckSaid *
line_of (const SteadCheckPlanAnswer *answer,
         SteadCheckLineKind          kind)
{
  for (guint i = 0; i < answer->lines->len; i++)
    if (((const SteadCheckSaid *) answer->lines->pdata[i])->line->kind == kind)
      return answer->lines->pdata[i];
  return NULL;
}

/* No text is missing or half made, whatever is on the list. */
static void
expect_texts (const SteadCheckPlanAnswer *answer)
{
  for (guint i = 0; i < answer->lines->len; i++)
    {
      const SteadCheckSaid *said = answer->lines->pdata[i];

      g_assert_true (said->text != NULL && strlen (said->text) > 10);
      g_assert_null (strchr (said->text, '?'));
      g_assert_null (strstr (said->text, "nan"));
      g_assert_cmpstr (said->reason, !=, "");
      g_assert_cmpuint (strlen (said->source), >, 5);
      g_assert_nonnull (said->often);
      g_assert_nonnull (said->who);
      for (guint j = 0; j < i; j++)
        g_assert_cmpstr (said->key, !=, ((const SteadCheckSaid *) answer->lines->pdata[j])->key);
    }
  for (guint i = 0; i < answer->questions->len; i++)
    {
      const SteadCheckAsked *asked = answer->questions->pdata[i];

      g_assert_cmpstr (asked->text, !=, "");
      g_assert_cmpuint (asked->answers->len, >, 1);
      for (guint a = 0; a < asked->answers->len; a++)
        for (guint b = 0; b < a; b++)
          g_assert_cmpstr (asked->answers->pdata[a], !=, asked->answers->pdata[b]);
    }
  for (guint i = 0; i < answer->stops->len; i++)
    {
      const SteadCheckStopped *stopped = answer->stops->pdata[i];

      g_assert_true (stopped->text != NULL && stopped->way != NULL && stopped->source != NULL);
      g_assert_null (strchr (stopped->text, '?'));
    }
  g_assert_cmpuint (answer->processes->len, ==, answer->menu->foods->len);
}

static void
test_kitchen (Kitchen       *kitchen,
              gconstpointer  data)
{
  g_autoptr(SteadCheckPlanAnswer) answer = ask (kitchen, (SteadCheckOrder) { STEAD_CHECK_ORDER_KITCHEN, kitchen->batch });
  const SteadCheckSaid *cook = line_of (answer, STEAD_CHECK_LINE_COOK);
  const SteadCheckSaid *hot = line_of (answer, STEAD_CHECK_LINE_HOLD_HOT);
  const SteadCheckSaid *allergens = line_of (answer, STEAD_CHECK_LINE_ALLERGENS);

  expect_texts (answer);
  g_assert_true (numbers_has (cook->text, 155) && numbers_has (cook->text, 17) && numbers_has (cook->text, 158));
  g_assert_true (numbers_has (cook->text, 145) && numbers_has (cook->text, 3));
  g_assert_nonnull (strstr (cook->source, "§3-401.11(A)(2)"));
  g_assert_cmpstr (cook->key, ==, "cook:raw_egg:Breakfast bowls");
  g_assert_true (numbers_has (hot->text, 135));
  g_assert_true (numbers_has (hot->own, 150));
  g_assert_nonnull (allergens);
  g_assert_cmpuint (allergens->line->rows->len, ==, 3);
  g_assert_nonnull (line_of (answer, STEAD_CHECK_LINE_EGGS_COLD));
  if (farm_in_english ())
    {
      g_assert_cmpstr (cook->text, ==, "Cook the pooled eggs to at least 145 °F for 3 minutes, 150 °F for 60 seconds, "
                                       "155 °F for 17 seconds, or 158 °F.");
      g_assert_cmpstr (cook->reason, ==, "Salmonella can live through less heat.");
      g_assert_cmpstr (hot->text, ==, "Hold it hot: at least 135 °F.");
    }
}

/* A metric farm reads °C on the strict side, and the °F that is compared. */
static void
test_metric (Kitchen       *kitchen,
             gconstpointer  data)
{
  g_autoptr(SteadFarm) farm = stead_farm_repo_get (kitchen->farm.store, NULL);
  g_autoptr(SteadCheckPlanAnswer) answer = NULL;
  const char *text;

  farm->units = STEAD_UNITS_METRIC;
  FARM_DO (&kitchen->farm, stead_farm_repo_set (kitchen->farm.store, farm, &farm_error));
  answer = ask (kitchen, (SteadCheckOrder) { STEAD_CHECK_ORDER_RECIPE, kitchen->recipe });
  expect_texts (answer);
  text = line_of (answer, STEAD_CHECK_LINE_COOK)->text;
  g_test_message ("%s", text);
  /* 155 °F is 68.33 °C: 68.3 would be too cold. */
  g_assert_true (numbers_has (text, 68.4) && numbers_has (text, 155));
  g_assert_true (numbers_has (line_of (answer, STEAD_CHECK_LINE_EGGS_COLD)->text, 7.2));
}

static void
test_menu (Kitchen       *kitchen,
           gconstpointer  data)
{
  static const struct { const char *text; SteadCheckForm form; gboolean recipe; } cases[] = {
    { "breakfast  BOWL", STEAD_CHECK_FORM_DISH, TRUE },
    { "tomato sauce", STEAD_CHECK_FORM_DISH, FALSE },
    { "Scrambled eggs with chives", STEAD_CHECK_FORM_DISH, FALSE },
    { "brown eggs", STEAD_CHECK_FORM_SHELL_EGGS, FALSE },
    { "blueberry muffins", STEAD_CHECK_FORM_BAKED, FALSE },
    { "whole trout", STEAD_CHECK_FORM_RAW_ANIMAL, FALSE },
    { "fried fish", STEAD_CHECK_FORM_DISH, FALSE },
    { "grue", STEAD_CHECK_FORM_UNKNOWN, FALSE },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr(SteadCheckMenu) menu = stead_check_menu_new_text (kitchen->farm.store, cases[i].text, NULL);
      const SteadCheckFood *food = &g_array_index (menu->foods, SteadCheckFood, 0);

      g_test_message ("%s", cases[i].text);
      g_assert_cmpuint (menu->foods->len, ==, 1);
      g_assert_cmpint (food->form, ==, cases[i].form);
      g_assert_cmpint (food->recipe, ==, cases[i].recipe);
      g_assert_cmpuint (menu->unknown->len, ==, cases[i].form == STEAD_CHECK_FORM_UNKNOWN ? 1 : 0);
    }
}

/* A comma in a name that the farm knows does not part it; in any other text it does. */
static void
test_comma_in_name (Kitchen       *kitchen,
                    gconstpointer  data)
{
  g_autoptr(GError) error = NULL;
  g_autoptr(SteadRecipe) recipe = stead_recipe_repo_get (kitchen->farm.store, kitchen->recipe, &error);
  g_autoptr(SteadCheckMenu) menu = NULL;

  g_assert_no_error (error);
  g_free (recipe->name);
  recipe->name = g_strdup ("Breakfast bowls, large, with cheese");
  FARM_DO (&kitchen->farm, stead_recipe_repo_save (kitchen->farm.store, recipe, &farm_error));
  menu = stead_check_menu_new_text (kitchen->farm.store, "tomato sauce, breakfast bowls,large , with cheese, grue", &error);
  g_assert_no_error (error);
  g_assert_cmpuint (menu->foods->len, ==, 3);
  g_assert_cmpstr (g_array_index (menu->foods, SteadCheckFood, 1).name, ==, "Breakfast bowls, large, with cheese");
  g_assert_true (g_array_index (menu->foods, SteadCheckFood, 1).recipe);
  g_assert_cmpuint (menu->unknown->len, ==, 1);
}

/* Many foods at once, with all answers of each question in turn. */
static void
test_all_texts (Kitchen       *kitchen,
                gconstpointer  data)
{
  static const char menu[] = "breakfast bowls, tomato sauce; fried eggs\nmayonnaise, bread, chili, burgers, chicken, trout, "
                             "fried fish, salad, sprouts, milk, honey, apples, eggs, grue, breakfast bowls,, ";
  g_autoptr(GArray) answers = g_array_new (FALSE, FALSE, sizeof (SteadCheckAnswered));
  SteadCheckOrder order = { .kind = STEAD_CHECK_ORDER_MENU, .text = menu };

  for (guint turn = 0; turn < 8; turn++)
    {
      g_autoptr(SteadCheckPlanAnswer) answer = NULL;

      order.answers = (const SteadCheckAnswered *) (void *) answers->data;
      order.n_answers = answers->len;
      answer = ask (kitchen, order);
      g_assert_cmpuint (answer->menu->foods->len, ==, 17);
      expect_texts (answer);
      g_array_set_size (answers, 0);
      for (guint i = 0; i < answer->questions->len; i++)
        {
          const SteadCheckAsked *asked = answer->questions->pdata[i];
          guint n = asked->answers->len;
          SteadCheckAnswered given = { asked->question->key,
                                       asked->food != NULL ? g_intern_string (asked->food) : NULL,
                                       asked->question->words[(turn + i) % n] };

          g_array_append_val (answers, given);
        }
    }
}

static void
test_stops (Kitchen       *kitchen,
            gconstpointer  data)
{
  const SteadCheckAnswered answers[] = {
    { STEAD_CHECK_KEY_EATERS, NULL, "hsp" }, { STEAD_CHECK_KEY_PASTEURIZED, "Breakfast bowls", "no" },
    { STEAD_CHECK_KEY_HELD, "tomato sauce", "sealed_jar" }, { STEAD_CHECK_KEY_MADE_IN, "tomato sauce", "private_home" },
  };
  g_autoptr(SteadCheckPlanAnswer) answer = ask (kitchen, (SteadCheckOrder) {
    .kind = STEAD_CHECK_ORDER_MENU, .text = "breakfast bowls, tomato sauce", .answers = answers,
    .n_answers = G_N_ELEMENTS (answers) });

  expect_texts (answer);
  g_assert_cmpuint (answer->stops->len, ==, 3);
  g_assert_true (numbers_has (((const SteadCheckStopped *) answer->stops->pdata[1])->text, 4.6));
  g_assert_true (numbers_has (answer->sentence, 3));
  if (farm_in_english ())
    {
      g_assert_nonnull (strstr (answer->sentence, "cannot be sold as planned"));
      g_assert_nonnull (strstr (answer->caution, "local health department"));
    }
}

static void
test_sale_day (Kitchen       *kitchen,
               gconstpointer  data)
{
  g_autoptr(SteadCheckPlanAnswer) answer = ask (kitchen, (SteadCheckOrder) { STEAD_CHECK_ORDER_SALE_DAY });

  expect_texts (answer);
  g_assert_cmpuint (answer->menu->foods->len, ==, 1);
  /* Dozens of eggs: the carton, the cold; no kitchen to clean. */
  g_assert_nonnull (line_of (answer, STEAD_CHECK_LINE_EGG_CARTON));
  g_assert_true (numbers_has (line_of (answer, STEAD_CHECK_LINE_EGGS_COLD)->text, 45));
  g_assert_null (line_of (answer, STEAD_CHECK_LINE_SANITIZER));
}

/* The list of one sale day is of what its plan brings along, by name and by recipe. */
static void
test_planned_sale (Kitchen       *kitchen,
                   gconstpointer  data)
{
  g_autoptr(SteadSale) sale = stead_sale_new ();
  g_autoptr(SteadSale) bare = stead_sale_new ();
  SteadSaleGood *good = stead_sale_good_new ();
  SteadCheckOrder order = { .kind = STEAD_CHECK_ORDER_SALE_DAY, .day = kitchen->farm.today };
  g_autoptr(SteadCheckPlanAnswer) answer = NULL;
  g_autoptr(SteadCheckList) list = NULL;
  g_autoptr(GError) error = NULL;

  sale->name = g_strdup ("Winter market");
  bare->name = g_strdup ("Fair");
  sale->day = bare->day = kitchen->farm.today;
  sale->opens_min = bare->opens_min = 540;
  sale->closes_min = bare->closes_min = 780;
  good->product_id = kitchen->farm.product;
  good->price_cents = 450;
  good->planned = 12;
  g_ptr_array_add (sale->goods, good);
  FARM_DO (&kitchen->farm, stead_sale_repo_save (kitchen->farm.store, sale, NULL, &farm_error));
  FARM_DO (&kitchen->farm, stead_sale_repo_save (kitchen->farm.store, bare, NULL, &farm_error));
  order.id = sale->id;
  answer = ask (kitchen, order);
  g_assert_cmpuint (answer->menu->foods->len, ==, 1);
  list = stead_check_list_from_plan (kitchen->farm.store, answer, &order, sale->name, &error);
  g_assert_no_error (error);
  g_assert_cmpint (list->sale_id, ==, sale->id);
  g_assert_cmpint (((const SteadListFood *) list->foods->pdata[0])->product_id, ==, kitchen->farm.product);
  /* Nothing planned is nothing to check, and is said. */
  order.id = bare->id;
  g_assert_null (stead_check_plan_answer_new (kitchen->farm.store, &order, &error));
  g_assert_nonnull (error);
}

/* A county that holds hot at 140 °F is obeyed; one that would hold at 130 is not. */
static void
test_local (Kitchen       *kitchen,
            gconstpointer  data)
{
  const SteadLimitLocal strict = { "hold-hot-135", 140, NAN, "County code", "§12", "2020" };
  const SteadLimitLocal loose = { "hold-hot-135", 130, NAN, "County code", "§12", "2020" };
  SteadCheckOrder order = { .kind = STEAD_CHECK_ORDER_RECIPE, .id = kitchen->recipe, .local = &strict, .n_local = 1,
                            .day = kitchen->farm.today };
  g_autoptr(SteadCheckPlanAnswer) answer = ask (kitchen, order);
  g_autoptr(GError) error = NULL;

  g_assert_true (numbers_has (line_of (answer, STEAD_CHECK_LINE_HOLD_HOT)->text, 140));
  g_assert_nonnull (strstr (line_of (answer, STEAD_CHECK_LINE_HOLD_HOT)->source, "County code"));
  order.local = &loose;
  g_assert_null (stead_check_plan_answer_new (kitchen->farm.store, &order, &error));
  g_assert_nonnull (error);
  order.local = NULL;
  order.n_local = 0;
  order.kind = STEAD_CHECK_ORDER_MENU;
  order.text = " , ; ";
  g_clear_error (&error);
  g_assert_null (stead_check_plan_answer_new (kitchen->farm.store, &order, &error));
  g_assert_nonnull (error);
}

/* The same through --ask. */
static void
test_question (Kitchen       *kitchen,
               gconstpointer  data)
{
  g_autofree char *sentence = NULL;
  g_autoptr(JsonNode) node = NULL;
  g_autoptr(SteadCheckPlanAnswer) answer = ask (kitchen, (SteadCheckOrder) { STEAD_CHECK_ORDER_RECIPE, kitchen->recipe });
  JsonObject *figures;

  g_assert_true (stead_question_ask (kitchen->farm.store, "checks", "breakfast bowls", &sentence, &node, NULL));
  figures = json_node_get_object (node);
  g_assert_cmpstr (sentence, ==, answer->sentence);
  g_assert_cmpuint (json_array_get_length (json_object_get_array_member (figures, "checks")), ==, answer->lines->len);
  g_assert_cmpuint (json_array_get_length (json_object_get_array_member (figures, "questions")), ==,
                    answer->questions->len);
}

int
main (int   argc,
      char *argv[])
{
  farm_start (&argc, &argv);
#define ADD(name, func) g_test_add ("/answer/check-plan/" name, Kitchen, NULL, set_up, func, tear_down)
  ADD ("kitchen", test_kitchen);
  ADD ("metric", test_metric);
  ADD ("menu", test_menu);
  ADD ("comma-in-name", test_comma_in_name);
  ADD ("all-texts", test_all_texts);
  ADD ("stops", test_stops);
  ADD ("sale-day", test_sale_day);
  ADD ("planned-sale", test_planned_sale);
  ADD ("local", test_local);
  ADD ("question", test_question);
  return g_test_run ();
}
