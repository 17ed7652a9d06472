/* The plan of checks: every line has its row, questions matter, and what must be stopped is.
 *
 * Which row belongs to which case stands in the sources beside the cases.
 */
#include "limit-tables.h"

#include "core/stead-check-plan.h"

#include <math.h>
#include <string.h>

#define DAY 20000

static const char * const no_words[] = { NULL };

static SteadCheckFood
food_named (const char     *name,
            SteadCheckForm  form,
            SteadCheckKept  kept)
{
  return (SteadCheckFood) { .name = name, .form = form, .kept = kept, .ph = NAN, .aw = NAN };
}

/* --- foods of every kind ----------------------------------------------------------- */

#define STEP(step, food) { step, food, NAN, NAN, NAN }

static const SteadCheckStep bowl_steps[] = { STEP ("cook", "raw_egg"), STEP ("cook", "plant_food"), STEP ("hold_hot", NULL) };
static const SteadCheckStep sauce_steps[] = { STEP ("cook", "plant_food"), STEP ("cool", NULL) };
static const SteadCheckStep chicken_steps[] = { STEP ("cook", "poultry"), STEP ("cool", NULL), STEP ("reheat", NULL) };
static const SteadCheckStep unsaid_steps[] = { STEP ("cook", NULL) };
static const SteadCheckStep silent_steps[] = { STEP (NULL, NULL) };
static const char * const egg_parts[] = { "raw_egg", NULL };
static const char * const shell_parts[] = { "raw_shell_eggs", NULL };
static const char * const fish_parts[] = { "fish_intact", NULL };
static const char * const burger_parts[] = { "meat_ground", NULL };
static const char * const chicken_parts[] = { "poultry", "plant_food", NULL };
static const char * const salad_parts[] = { "cut_leafy_greens", "sprouts", NULL };
static const char * const sauce_parts[] = { "plant_food", NULL };
static const char * const allergens[] = { "egg", "milk", NULL };

typedef enum
{
  BOWL, SAUCE_COLD, SAUCE_JAR, CHICKEN, UNSAID, SILENT, MAYONNAISE, EGGS_ANY_STYLE, FISH, BURGER, STEW, SALAD, MENU_SAUCE,
  EGGS, TILAPIA, TOMATOES, MUFFINS, TEA, UNKNOWN, DRIED, N_FOODS
} Which;

static SteadCheckFood
make_food (Which which)
{
  SteadCheckFood food = food_named ("Food", STEAD_CHECK_FORM_DISH, STEAD_CHECK_KEPT_UNKNOWN);

  food.allergens = no_words;
#define RECIPE(array, how) \
  food.recipe = TRUE; food.steps = array; food.n_steps = G_N_ELEMENTS (array); food.kept = STEAD_CHECK_KEPT_##how
  switch (which)
    {
    case BOWL: RECIPE (bowl_steps, HOT); food.allergens = allergens; food.parts = shell_parts; break;
    case SAUCE_COLD: RECIPE (sauce_steps, COLD); break;
    case SAUCE_JAR: RECIPE (sauce_steps, ROOM); food.sealed = food.tomato = TRUE; food.ph = 4.2; break;
    case CHICKEN: RECIPE (chicken_steps, HOT); break;
    case UNSAID: RECIPE (unsaid_steps, FROZEN); break;
    case SILENT: RECIPE (silent_steps, ROOM); break;
    case MAYONNAISE: RECIPE (silent_steps, COLD); food.parts = shell_parts; break;
    case EGGS_ANY_STYLE: food.parts = egg_parts; break;
    case FISH: food.parts = fish_parts; break;
    case BURGER: food.parts = burger_parts; break;
    case STEW: food.parts = chicken_parts; break;
    case SALAD: food.parts = salad_parts; food.no_cook = TRUE; break;
    case MENU_SAUCE: food.parts = sauce_parts; food.jar = food.tomato = TRUE; break;
    case EGGS: food.form = STEAD_CHECK_FORM_SHELL_EGGS; break;
    case TILAPIA: food.form = STEAD_CHECK_FORM_RAW_ANIMAL; break;
    case TOMATOES: food.form = STEAD_CHECK_FORM_WHOLE_PRODUCE; break;
    case MUFFINS: food.form = STEAD_CHECK_FORM_BAKED; food.parts = egg_parts; break;
    case TEA: food.form = STEAD_CHECK_FORM_PACKAGE; break;
    case UNKNOWN: food.form = STEAD_CHECK_FORM_UNKNOWN; break;
    case DRIED: RECIPE (silent_steps, ROOM); food.ph = 5; food.aw = 0.6; break;
    case N_FOODS: default: g_assert_not_reached ();
    }
#undef RECIPE
  return food;
}

static SteadCheckPlan *
plan_of_all (const SteadLimitTable    *table,
             const SteadCheckFood     *foods,
             gsize                     n,
             const SteadCheckAnswered *answers,
             gsize                     n_answers)
{
  const SteadCheckCase given = { foods, n, answers, n_answers, DAY, NULL, NULL };

  return stead_check_plan_new (table, &given);
}

static SteadCheckPlan *
plan_of (const SteadLimitTable    *table,
         const SteadCheckFood     *food,
         const SteadCheckAnswered *answers,
         gsize                     n_answers)
{
  return plan_of_all (table, food, food != NULL, answers, n_answers);
}

static const char *
name_of (const SteadCheckFood     *foods,
         const SteadCheckQuestion *question)
{
  return question->food >= 0 ? foods[question->food].name : NULL;
}

/* --- properties over all foods and all answers -------------------------------------- */

static void
expect_cited (const SteadLimit *row)
{
  g_assert_nonnull (row);
  g_assert_cmpuint (strlen (row->source), >, 5);
  g_assert_cmpuint (strlen (row->where), >, 0);
  g_assert_cmpstr (row->hazard, !=, "");
}

static void
expect_lines (const SteadCheckPlan *plan)
{
  for (guint i = 0; i < plan->lines->len; i++)
    {
      const SteadCheckLine *line = plan->lines->pdata[i];

      g_assert_cmpuint (line->rows->len, >, 0);
      for (guint r = 0; r < line->rows->len; r++)
        expect_cited (line->rows->pdata[r]);
      g_assert_true ((line->measure == NULL) == (line->unit == NULL));
      g_assert_true (line->often != STEAD_CHECK_OFTEN_EVERY || line->often_limit != NULL);
      g_assert_true (i == 0 || ((SteadCheckLine *) plan->lines->pdata[i - 1])->stage <= line->stage);
      /* No line stands there twice. */
      for (guint j = 0; j < i; j++)
        {
          const SteadCheckLine *other = plan->lines->pdata[j];

          g_assert_false (other->kind == line->kind && other->food == line->food
                          && g_strcmp0 (other->subject, line->subject) == 0);
        }
    }
  for (guint i = 0; i < plan->stops->len; i++)
    expect_cited (((SteadCheckStop *) plan->stops->pdata[i])->row);
}

/* Two answers of each question that is asked make two lists. */
static void
expect_questions_matter (const SteadLimitTable *table,
                         const SteadCheckFood  *foods,
                         gsize                  n,
                         GArray                *answers,
                         const SteadCheckPlan  *plan)
{
  for (guint q = 0; q < plan->questions->len; q++)
    {
      const SteadCheckQuestion *question = plan->questions->pdata[q];
      g_autoptr(SteadCheckPlan) first = NULL;
      gboolean differs = FALSE;

      for (gsize w = 0; question->words[w] != NULL && !differs; w++)
        {
          SteadCheckAnswered answer = { question->key, name_of (foods, question), question->words[w] };
          g_autoptr(GArray) with = g_array_copy (answers);
          g_autoptr(SteadCheckPlan) other = NULL;

          g_array_prepend_val (with, answer);
          other = plan_of_all (table, foods, n, (const SteadCheckAnswered *) (void *) with->data, with->len);
          expect_lines (other);
          if (first == NULL)
            first = g_steal_pointer (&other);
          else
            differs = !stead_check_plan_equal (first, other);
        }
      if (!differs)
        g_test_message ("%s does not matter", stead_check_key_id (question->key));
      g_assert_true (differs);
    }
}

/* Answers as a random person would: asked, answered, asked on, until nothing is open. */
static void
walk (const SteadLimitTable *table,
      const SteadCheckFood  *foods,
      gsize                  n,
      GRand                 *rand)
{
  g_autoptr(GArray) answers = g_array_new (FALSE, FALSE, sizeof (SteadCheckAnswered));

  for (guint round = 0; round < STEAD_N_CHECK_KEYS; round++)
    {
      g_autoptr(SteadCheckPlan) plan = plan_of_all (table, foods, n, (const SteadCheckAnswered *) (void *) answers->data,
                                                    answers->len);
      guint before = answers->len;

      expect_lines (plan);
      expect_questions_matter (table, foods, n, answers, plan);
      for (guint q = 0; q < plan->questions->len; q++)
        {
          const SteadCheckQuestion *question = plan->questions->pdata[q];
          SteadCheckAnswered answer = { question->key, name_of (foods, question), NULL };
          gint32 n_words = (gint32) g_strv_length ((char **) question->words);

          if (question->word != NULL)
            continue;
          answer.word = question->words[g_rand_int_range (rand, 0, n_words)];
          g_array_append_val (answers, answer);
        }
      if (answers->len == before)
        {
          g_assert_cmpuint (plan->n_open, ==, 0);
          return;
        }
    }
  g_assert_not_reached ();
}

static void
test_every_line_has_its_row (void)
{
  g_autoptr(SteadLimitTable) table = limit_tables ();
  g_autoptr(GRand) rand = g_rand_new_with_seed (5);

  for (int which = 0; which < N_FOODS; which++)
    for (guint i = 0; i < 20; i++)
      {
        SteadCheckFood food = make_food ((Which) which);

        g_test_message ("food %d, walk %u", which, i);
        walk (table, &food, 1, rand);
      }
}

/* Several foods on one list share the kitchen and its questions. */
static void
test_many_foods (void)
{
  static const char * const names[] = { "One", "Two", "Three", "Four" };
  g_autoptr(SteadLimitTable) table = limit_tables ();
  g_autoptr(GRand) rand = g_rand_new_with_seed (7);

  for (guint i = 0; i < 15; i++)
    {
      SteadCheckFood foods[G_N_ELEMENTS (names)];
      gsize n = (gsize) g_rand_int_range (rand, 2, G_N_ELEMENTS (names) + 1);

      for (gsize f = 0; f < n; f++)
        {
          foods[f] = make_food ((Which) g_rand_int_range (rand, 0, N_FOODS));
          foods[f].name = names[f];
        }
      walk (table, foods, n, rand);
    }
}

/* --- cases ---------------------------------------------------------------------------- */

static const SteadCheckLine *
line_of (const SteadCheckPlan *plan,
         SteadCheckLineKind    kind,
         const char           *subject)
{
  for (guint i = 0; i < plan->lines->len; i++)
    {
      const SteadCheckLine *line = plan->lines->pdata[i];

      if (line->kind == kind && (subject == NULL || g_strcmp0 (line->subject, subject) == 0))
        return line;
    }
  return NULL;
}

static gboolean
has_row (const SteadCheckLine *line,
         const char           *id)
{
  for (guint i = 0; line != NULL && i < line->rows->len; i++)
    if (g_str_equal (((const SteadLimit *) line->rows->pdata[i])->id, id))
      return TRUE;
  return FALSE;
}

static gboolean
asks (const SteadCheckPlan *plan,
      SteadCheckKey         key)
{
  for (guint i = 0; i < plan->questions->len; i++)
    if (((const SteadCheckQuestion *) plan->questions->pdata[i])->key == key)
      return TRUE;
  return FALSE;
}

static const SteadCheckStop *
stop_of (const SteadCheckPlan *plan,
         SteadCheckStopKind    kind)
{
  for (guint i = 0; i < plan->stops->len; i++)
    if (((const SteadCheckStop *) plan->stops->pdata[i])->kind == kind)
      return plan->stops->pdata[i];
  return NULL;
}

/* FDA Food Code 2022, §3-401.11(A)(2), §3-401.13, §3-501.16(A)(1) (read). */
static void
test_bowl (void)
{
  g_autoptr(SteadLimitTable) table = limit_tables ();
  SteadCheckFood food = make_food (BOWL);
  const SteadCheckAnswered ahead[] = { { STEAD_CHECK_KEY_AHEAD, "Food", "reheated" } };
  g_autoptr(SteadCheckPlan) plan = plan_of (table, &food, NULL, 0);
  g_autoptr(SteadCheckPlan) later = plan_of (table, &food, ahead, G_N_ELEMENTS (ahead));
  const SteadCheckLine *line = line_of (plan, STEAD_CHECK_LINE_COOK, "raw_egg");

  g_assert_nonnull (line);
  g_assert_cmpstr (line->use, ==, "pooled_or_held");
  g_assert_false (line->all);
  g_assert_true (has_row (line, "cook-egg-held-155") && has_row (line, "cook-egg-held-158"));
  g_assert_false (has_row (line, "cook-egg-order-145") || has_row (line, "cook-egg-held-155-2013"));
  g_assert_true (has_row (line_of (plan, STEAD_CHECK_LINE_COOK, "plant_food"), "cook-plant-135"));
  g_assert_true (has_row (line_of (plan, STEAD_CHECK_LINE_HOLD_HOT, NULL), "hold-hot-135"));
  g_assert_cmpint (plan->processes[0], ==, STEAD_PROCESS_SAME_DAY);
  g_assert_null (line_of (plan, STEAD_CHECK_LINE_COOL, NULL));
  /* Held hot: how the egg is used is known, and so is how long the recipe cooks. */
  g_assert_false (asks (plan, STEAD_CHECK_KEY_EGG_USE));
  g_assert_false (asks (plan, STEAD_CHECK_KEY_HELD));
  g_assert_false (asks (plan, STEAD_CHECK_KEY_DONENESS));
  g_assert_true (asks (plan, STEAD_CHECK_KEY_AHEAD));
  g_assert_true (asks (plan, STEAD_CHECK_KEY_EATERS));

  g_assert_cmpint (later->processes[0], ==, STEAD_PROCESS_COMPLEX);
  line = line_of (later, STEAD_CHECK_LINE_COOL, NULL);
  g_assert_true (line->all && has_row (line, "cool-stage-1") && has_row (line, "cool-total"));
  g_assert_true (has_row (line_of (later, STEAD_CHECK_LINE_REHEAT, NULL), "reheat-own-165"));
  g_assert_true (has_row (line_of (later, STEAD_CHECK_LINE_REHEAT_TIME, NULL), "reheat-time-2h"));
}

/* Eggs from the menu, served at once: §3-401.11(A)(1)(a). */
static void
test_eggs_to_order (void)
{
  const SteadCheckAnswered answers[] = {
    { STEAD_CHECK_KEY_HELD, "Food", "at_once" }, { STEAD_CHECK_KEY_EGG_USE, "Food", "immediate_service" },
  };
  g_autoptr(SteadLimitTable) table = limit_tables ();
  SteadCheckFood food = make_food (EGGS_ANY_STYLE);
  g_autoptr(SteadCheckPlan) asked = plan_of (table, &food, NULL, 0);
  g_autoptr(SteadCheckPlan) plan = plan_of (table, &food, answers, G_N_ELEMENTS (answers));
  g_autoptr(SteadCheckPlan) held = plan_of (table, &food, answers, 1);

  /* Nothing answered: the stricter case stands. */
  g_assert_true (has_row (line_of (asked, STEAD_CHECK_LINE_COOK, "raw_egg"), "cook-egg-held-155"));
  g_assert_true (asks (asked, STEAD_CHECK_KEY_HELD));
  g_assert_true (asks (held, STEAD_CHECK_KEY_EGG_USE));
  g_assert_true (has_row (line_of (held, STEAD_CHECK_LINE_COOK, "raw_egg"), "cook-egg-held-155"));
  g_assert_true (has_row (line_of (plan, STEAD_CHECK_LINE_COOK, "raw_egg"), "cook-egg-order-145"));
  g_assert_cmpuint (line_of (plan, STEAD_CHECK_LINE_COOK, "raw_egg")->rows->len, ==, 1);
  g_assert_null (line_of (plan, STEAD_CHECK_LINE_HOLD_HOT, NULL));
}

typedef struct
{
  Which               which;
  SteadCheckAnswered  answers[4];
  SteadCheckStopKind  stop;
  const char         *row;
} Stopped;

#define AT_RISK { STEAD_CHECK_KEY_EATERS, NULL, "hsp" }

/* 21 CFR 114.3, .80; FDA Food Code 2022, §3-201.12, §3-502.11, §3-801.11, §3-401.11(D)(2),
 * §3-501.16(B), §1-201.10(B). */
static const Stopped stopped[] = {
  { BOWL, { AT_RISK, { STEAD_CHECK_KEY_PASTEURIZED, "Food", "no" } }, STEAD_CHECK_STOP_EGGS_POOLED, "raw-egg-pooled" },
  { EGGS_ANY_STYLE, { AT_RISK, { STEAD_CHECK_KEY_DONENESS, "Food", "undercooked" },
                      { STEAD_CHECK_KEY_PASTEURIZED, "Food", "no" } },
    STEAD_CHECK_STOP_EGGS_UNDERCOOKED, "raw-egg-undercooked" },
  { MAYONNAISE, { AT_RISK, { STEAD_CHECK_KEY_DONENESS, "Food", "raw" }, { STEAD_CHECK_KEY_PASTEURIZED, "Food", "no" } },
    STEAD_CHECK_STOP_EGGS_UNDERCOOKED, "raw-egg-uncooked" },
  { EGGS_ANY_STYLE, { AT_RISK, { STEAD_CHECK_KEY_DONENESS, "Food", "undercooked" }, { STEAD_CHECK_KEY_HELD, "Food", "time" },
                      { STEAD_CHECK_KEY_PASTEURIZED, "Food", "no" } }, STEAD_CHECK_STOP_EGGS_TIME, "time-eggs-hsp" },
  { MUFFINS, { AT_RISK, { STEAD_CHECK_KEY_COMBINED, "Food", "ahead" } },
    STEAD_CHECK_STOP_EGGS_POOLED, "raw-egg-pooled" },
  { EGGS, { { STEAD_CHECK_KEY_EGGS_COLD, NULL, "no" } }, STEAD_CHECK_STOP_EGGS_WARM, "hold-cold-eggs-45" },
  { BURGER, { AT_RISK, { STEAD_CHECK_KEY_DONENESS, "Food", "undercooked" } }, STEAD_CHECK_STOP_GROUND_MEAT,
    "advisory-children" },
  { FISH, { AT_RISK, { STEAD_CHECK_KEY_DONENESS, "Food", "raw" } }, STEAD_CHECK_STOP_RAW_ANIMAL, "raw-animal-hsp" },
  { SALAD, { AT_RISK }, STEAD_CHECK_STOP_SPROUTS, "sprouts-hsp" },
  { SAUCE_JAR, { { STEAD_CHECK_KEY_MADE_IN, "Food", "private_home" } }, STEAD_CHECK_STOP_HOME, "source-home-jar" },
  { SAUCE_JAR, { { STEAD_CHECK_KEY_MADE_IN, "Food", "processing_plant" } }, STEAD_CHECK_STOP_AUTHORITY,
    "acidified-authority" },
  { MENU_SAUCE, { { STEAD_CHECK_KEY_HELD, "Food", "sealed_jar" } }, STEAD_CHECK_STOP_UNTESTED, "acidified-ph-4.6" },
  { SILENT, { { STEAD_CHECK_KEY_SHELF, "Food", "other" } }, STEAD_CHECK_STOP_ROOM, "tcs-named" },
};

static void
test_stops (void)
{
  g_autoptr(SteadLimitTable) table = limit_tables ();

  for (gsize i = 0; i < G_N_ELEMENTS (stopped); i++)
    {
      SteadCheckFood food = make_food (stopped[i].which);
      g_autoptr(SteadCheckPlan) plan = plan_of (table, &food, stopped[i].answers, G_N_ELEMENTS (stopped[i].answers));
      const SteadCheckStop *stop = stop_of (plan, stopped[i].stop);

      g_test_message ("case %u", (guint) i);
      g_assert_nonnull (stop);
      g_assert_cmpstr (stop->row->id, ==, stopped[i].row);
    }
}

/* What is allowed: one order cooked through, pasteurized eggs, baked just before, an approved jar. */
static void
test_not_stopped (void)
{
  static const Stopped fine[] = {
    { BOWL, { AT_RISK, { STEAD_CHECK_KEY_PASTEURIZED, "Food", "yes" } }, STEAD_CHECK_STOP_EGGS_POOLED, NULL },
    { BOWL, { { STEAD_CHECK_KEY_EATERS, NULL, "general" } }, STEAD_CHECK_STOP_EGGS_POOLED, NULL },
    { EGGS_ANY_STYLE, { AT_RISK, { STEAD_CHECK_KEY_HELD, "Food", "at_once" },
                        { STEAD_CHECK_KEY_EGG_USE, "Food", "immediate_service" } }, STEAD_CHECK_STOP_EGGS_POOLED, NULL },
    { MUFFINS, { AT_RISK, { STEAD_CHECK_KEY_COMBINED, "Food", "just_before_baking" } }, STEAD_CHECK_STOP_EGGS_POOLED, NULL },
    { SAUCE_COLD, { AT_RISK }, STEAD_CHECK_STOP_LOW_ACID, NULL },
    { DRIED, { AT_RISK }, STEAD_CHECK_STOP_ROOM, NULL },
    { TEA, { AT_RISK }, STEAD_CHECK_STOP_ROOM, NULL },
  };
  g_autoptr(SteadLimitTable) table = limit_tables ();
  SteadCheckFood jar = make_food (SAUCE_JAR);
  const SteadCheckAnswered plant[] = { { STEAD_CHECK_KEY_MADE_IN, "Food", "processing_plant" } };
  g_autoptr(SteadCheckPlan) approved = NULL;

  for (gsize i = 0; i < G_N_ELEMENTS (fine); i++)
    {
      SteadCheckFood food = make_food (fine[i].which);
      g_autoptr(SteadCheckPlan) plan = plan_of (table, &food, fine[i].answers, G_N_ELEMENTS (fine[i].answers));

      g_test_message ("case %u", (guint) i);
      g_assert_null (stop_of (plan, fine[i].stop));
    }
  jar.authority = "State food laboratory";
  approved = plan_of (table, &jar, plant, 1);
  g_assert_cmpuint (approved->stops->len, ==, 0);
  g_assert_nonnull (line_of (approved, STEAD_CHECK_LINE_JAR_PH, NULL));
}

/* A jar at its limit, a hundredth under and over it.  21 CFR 114.80(a)(1), 114.3(d), (b):
 * tomatoes under pH 4.7 are not low-acid, yet 4.6 is the limit of what is acidified. */
static void
test_jar_acidity (void)
{
  static const struct { double ph; gboolean tomato, acid; int stop; } cases[] = {
    { 4.59, FALSE, TRUE, -1 }, { 4.60, FALSE, TRUE, -1 }, { 4.61, FALSE, TRUE, STEAD_CHECK_STOP_LOW_ACID },
    { 4.60, FALSE, FALSE, -1 }, { 4.61, FALSE, FALSE, STEAD_CHECK_STOP_LOW_ACID },
    { 4.60, TRUE, FALSE, -1 }, { 4.61, TRUE, FALSE, STEAD_CHECK_STOP_DOUBT }, { 4.69, TRUE, FALSE, STEAD_CHECK_STOP_DOUBT },
    { 4.70, TRUE, FALSE, STEAD_CHECK_STOP_LOW_ACID }, { NAN, TRUE, TRUE, STEAD_CHECK_STOP_UNTESTED },
  };
  const SteadCheckAnswered plant[] = { { STEAD_CHECK_KEY_MADE_IN, "Food", "processing_plant" } };
  g_autoptr(SteadLimitTable) table = limit_tables ();

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      SteadCheckFood food = make_food (SAUCE_JAR);
      g_autoptr(SteadCheckPlan) plan = NULL;

      food.authority = "State food laboratory";
      food.ph = cases[i].ph;
      food.tomato = cases[i].tomato;
      food.acid_added = cases[i].acid;
      plan = plan_of (table, &food, plant, 1);
      g_test_message ("case %u", (guint) i);
      g_assert_cmpuint (plan->stops->len, ==, cases[i].stop >= 0 ? 1 : 0);
      if (cases[i].stop >= 0)
        g_assert_cmpint (((SteadCheckStop *) plan->stops->pdata[0])->kind, ==, cases[i].stop);
    }
}

/* FDA Food Code 2022, §3-501.17: the day made is day 1, the last is day 7. */
static void
test_lots (void)
{
  const SteadCheckLot lots[] = {
    { "A", DAY - 6, STEAD_DAY_NONE }, { "B", DAY - 7, STEAD_DAY_NONE }, { "C", STEAD_DAY_NONE, STEAD_DAY_NONE },
    { "D", DAY - 2, DAY - 1 },
  };
  g_autoptr(SteadLimitTable) table = limit_tables ();
  SteadCheckFood food = make_food (SAUCE_COLD);
  g_autoptr(SteadCheckPlan) plan = NULL;

  food.lots = lots;
  food.n_lots = G_N_ELEMENTS (lots);
  plan = plan_of (table, &food, NULL, 0);
  g_assert_cmpuint (plan->stops->len, ==, 2);
  g_assert_cmpint (((SteadCheckStop *) plan->stops->pdata[0])->lot, ==, 1);
  g_assert_cmpint (((SteadCheckStop *) plan->stops->pdata[1])->lot, ==, 3);
}

/* Eggs in the shell that are carried: the air counts.  §3-501.16(B). */
static void
test_carried_eggs (void)
{
  const SteadCheckAnswered stay[] = { { STEAD_CHECK_KEY_CARRIED, NULL, "no" } };
  g_autoptr(SteadLimitTable) table = limit_tables ();
  SteadCheckFood food = make_food (EGGS);
  g_autoptr(SteadCheckPlan) plan = plan_of (table, &food, NULL, 0);
  g_autoptr(SteadCheckPlan) here = plan_of (table, &food, stay, 1);
  const SteadCheckLine *line = line_of (plan, STEAD_CHECK_LINE_CARRY_COLD, NULL);

  g_assert_true (has_row (line, "hold-cold-eggs-45"));
  g_assert_cmpint (line->tool, ==, STEAD_CHECK_TOOL_AIR);
  g_assert_cmpstr (line->measure, ==, "air_temp");
  g_assert_null (line_of (here, STEAD_CHECK_LINE_CARRY_COLD, NULL));
}

/* §2-201.12(H): a sore throat with fever keeps a helper out where people at risk eat, else only
 * from food.  §4-501.114: each sanitizer has its own limits.  §4-203.11, §4-204.112: so has each scale. */
static void
test_kitchen (void)
{
  static const struct { SteadCheckAnswered answers[2]; SteadCheckLineKind kind; const char *has, *lacks; gboolean all; } cases[] = {
    { { { STEAD_CHECK_KEY_EATERS, NULL, "hsp" } }, STEAD_CHECK_LINE_ILL, "ill-throat-hsp", "ill-throat", TRUE },
    { { { STEAD_CHECK_KEY_EATERS, NULL, "general" } }, STEAD_CHECK_LINE_ILL, "ill-throat", "ill-throat-hsp", TRUE },
    { { { STEAD_CHECK_KEY_EATERS, NULL, "hsp" } }, STEAD_CHECK_LINE_ILL, "ill-diagnosis-hsp", "ill-diagnosis", TRUE },
    { { { STEAD_CHECK_KEY_SANITIZER, NULL, "chlorine" } }, STEAD_CHECK_LINE_SANITIZER, "chlorine-50-ph10",
      "chlorine-50-ph8", FALSE },
    { { { STEAD_CHECK_KEY_SANITIZER, NULL, "chlorine" }, { STEAD_CHECK_KEY_WATER_PH, NULL, "up_to_8" } },
      STEAD_CHECK_LINE_SANITIZER, "chlorine-50-ph8", "chlorine-50-ph10", FALSE },
    { { { STEAD_CHECK_KEY_SANITIZER, NULL, "iodine" } }, STEAD_CHECK_LINE_SANITIZER, "iodine-ph", "chlorine-100", TRUE },
    { { { STEAD_CHECK_KEY_SANITIZER, NULL, "quat" } }, STEAD_CHECK_LINE_SANITIZER, "quat-hardness", "iodine-ph", TRUE },
    { { { STEAD_CHECK_KEY_SANITIZER, NULL, "quat" } }, STEAD_CHECK_LINE_SANITIZER_CONTACT, "quat-contact",
      "chlorine-contact-10", FALSE },
    { { { STEAD_CHECK_KEY_SANITIZER, NULL, "hot_water" } }, STEAD_CHECK_LINE_SANITIZER, "wash-hand-hot-171", "quat-temp",
      FALSE },
    { { { STEAD_CHECK_KEY_THERMOMETER, NULL, "F_only" } }, STEAD_CHECK_LINE_THERMOMETER_ICE, "thermometer-food-f",
      "thermometer-food-c", TRUE },
    { { { STEAD_CHECK_KEY_THERMOMETER, NULL, "C_only" } }, STEAD_CHECK_LINE_THERMOMETER_ICE, "thermometer-step-c",
      "thermometer-step-f", TRUE },
    { { { STEAD_CHECK_KEY_WASH, NULL, "machine" } }, STEAD_CHECK_LINE_WASH_MACHINE, "wash-machine-surface-160",
      "wash-hand-110", FALSE },
  };
  g_autoptr(SteadLimitTable) table = limit_tables ();

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      SteadCheckFood food = make_food (BOWL);
      g_autoptr(SteadCheckPlan) plan = plan_of (table, &food, cases[i].answers, G_N_ELEMENTS (cases[i].answers));
      const SteadCheckLine *line = line_of (plan, cases[i].kind, NULL);

      g_test_message ("case %u", (guint) i);
      g_assert_true (has_row (line, cases[i].has));
      g_assert_false (has_row (line, cases[i].lacks));
      g_assert_cmpint (line->all, ==, cases[i].all);
    }
}

/* A stricter local rule takes the place of the row: 140 °F, as before 2005 and in some states. */
static void
test_local (void)
{
  const SteadLimitLocal local = { "hold-hot-135", 140, NAN, "County food code", "§3-501.16", "2019" };
  g_autoptr(SteadLimitTable) table = limit_tables ();
  SteadCheckFood food = make_food (BOWL);
  g_autoptr(SteadCheckPlan) plan = NULL;
  const SteadLimit *row;

  g_assert_true (stead_limit_table_add_local (table, &local, NULL));
  plan = plan_of (table, &food, NULL, 0);
  row = line_of (plan, STEAD_CHECK_LINE_HOLD_HOT, NULL)->rows->pdata[0];
  g_assert_cmpfloat (row->value, ==, 140);
  g_assert_cmpstr (row->source, ==, "County food code");
}

/* Editions, states and wordings: §3-401.11 (2013), WAC 246-215-05210(1), COMAR 10.15.03.11 A(1). */
static void
test_settings (void)
{
  g_autoptr(SteadLimitTable) table = limit_tables ();
  SteadCheckFood food = make_food (SAUCE_COLD);
  SteadCheckFood bowl = make_food (BOWL);
  const SteadCheckCase given = { &food, 1, NULL, 0, DAY, "additional_4h", "Washington" };
  g_autoptr(SteadCheckPlan) plan = stead_check_plan_new (table, &given);
  g_autoptr(SteadCheckPlan) old = NULL;

  g_assert_true (has_row (line_of (plan, STEAD_CHECK_LINE_COOL, NULL), "cool-stage-2-additional"));
  g_assert_false (has_row (line_of (plan, STEAD_CHECK_LINE_COOL, NULL), "cool-total"));
  g_assert_true (has_row (line_of (plan, STEAD_CHECK_LINE_HANDS, NULL), "hands-water-washington"));
  stead_limit_table_set_edition (table, 2013);
  old = plan_of (table, &bowl, NULL, 0);
  g_assert_true (has_row (line_of (old, STEAD_CHECK_LINE_COOK, "raw_egg"), "cook-egg-held-155-2013"));
  g_assert_false (has_row (line_of (old, STEAD_CHECK_LINE_COOK, "raw_egg"), "cook-egg-held-155"));
  g_assert_null (line_of (old, STEAD_CHECK_LINE_ALLERGEN_NOTICE, NULL));
}

/* An answer that is none is as no answer; one to what is not asked does nothing. */
static void
test_odd_answers (void)
{
  const SteadCheckAnswered odd[] = {
    { STEAD_CHECK_KEY_EATERS, NULL, "martians" }, { STEAD_CHECK_KEY_AHEAD, "Another", "reheated" },
    { STEAD_CHECK_KEY_FISH_FEED, "Food", "pellets" }, { STEAD_CHECK_KEY_HELD, NULL, NULL },
  };
  g_autoptr(SteadLimitTable) table = limit_tables ();
  SteadCheckFood food = make_food (BOWL);
  g_autoptr(SteadCheckPlan) plain = plan_of (table, &food, NULL, 0);
  g_autoptr(SteadCheckPlan) plan = plan_of (table, &food, odd, G_N_ELEMENTS (odd));
  g_autoptr(SteadCheckPlan) nothing = plan_of (table, NULL, NULL, 0);

  g_assert_true (stead_check_plan_equal (plain, plan));
  g_assert_cmpuint (plan->n_open, ==, plain->n_open);
  /* Even an empty list keeps the ill away. */
  g_assert_nonnull (line_of (nothing, STEAD_CHECK_LINE_ILL, NULL));
}

static void
test_ids (void)
{
  for (int i = 0; i < STEAD_N_CHECK_KEYS; i++)
    {
      SteadCheckKey key;

      g_assert_true (stead_check_key_by_id (stead_check_key_id ((SteadCheckKey) i), &key));
      g_assert_cmpint (key, ==, i);
    }
  for (int i = 0; i < STEAD_N_CHECK_LINE_KINDS; i++)
    {
      SteadCheckLineKind kind;

      g_assert_true (stead_check_line_kind_by_id (stead_check_line_kind_id ((SteadCheckLineKind) i), &kind));
      g_assert_cmpint (kind, ==, i);
    }
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/core/check-plan/every-line-has-its-row", test_every_line_has_its_row);
  g_test_add_func ("/core/check-plan/many-foods", test_many_foods);
  g_test_add_func ("/core/check-plan/bowl", test_bowl);
  g_test_add_func ("/core/check-plan/eggs-to-order", test_eggs_to_order);
  g_test_add_func ("/core/check-plan/stops", test_stops);
  g_test_add_func ("/core/check-plan/not-stopped", test_not_stopped);
  g_test_add_func ("/core/check-plan/jar-acidity", test_jar_acidity);
  g_test_add_func ("/core/check-plan/lots", test_lots);
  g_test_add_func ("/core/check-plan/carried-eggs", test_carried_eggs);
  g_test_add_func ("/core/check-plan/kitchen", test_kitchen);
  g_test_add_func ("/core/check-plan/local", test_local);
  g_test_add_func ("/core/check-plan/settings", test_settings);
  g_test_add_func ("/core/check-plan/odd-answers", test_odd_answers);
  g_test_add_func ("/core/check-plan/ids", test_ids);
  return g_test_run ();
}
