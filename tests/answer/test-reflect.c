/* test-reflect.c - what happened that is worth a thought: colder nights, a batch under its plan, or nothing. */
#include "numbers.h"
#include "pond.h"

#include "answer/stead-reflect-answer.h"
#include "store/stead-batch-repo.h"
#include "store/stead-crop-repo.h"

#include <math.h>
#include <string.h>

static SteadReflectAnswer *
ask (Farm   *farm,
     gint64  person)
{
  g_autoptr(GError) error = NULL;
  SteadReflectAnswer *answer = stead_reflect_answer_new (farm->store, person, farm->today - 27, farm->today, &error);

  g_assert_no_error (error);
  return answer;
}

static gint64
student (Farm *farm)
{
  SteadPerson one = { .name = (char *) "Maya", .role = STEAD_PERSON_STUDENT, .left_on = STEAD_DAY_NONE };

  FARM_DO (farm, stead_person_repo_save (farm->store, &one, &farm_error));
  return one.id;
}

/* Eight eggs a day for three weeks, six in the last one. */
static void
log_fall (Farm *farm)
{
  for (int i = 27; i >= 0; i--)
    farm_entry (farm, farm->today - i, i < 7 ? 6 : 8, 0, 1, 0);
}

static void
add_night (Farm   *farm,
           int     days_ago,
           double  min_c)
{
  SteadClimateDay day = { .day = farm->today - days_ago, .min_c = min_c, .max_c = min_c + 10, .rh_frac = 0.5,
                          .light_mol = NAN };

  FARM_DO (farm, stead_climate_repo_save (farm->store, &day, FALSE, &farm_error));
}

static const SteadReflectQuestion *
only_question (const SteadReflectAnswer *answer)
{
  g_assert_cmpuint (answer->questions->len, ==, 1);
  return answer->questions->pdata[0];
}

/* Nights of 3 °C after nights of 8 °C, four of each, and one of which only the air's moisture was read: six
 * eggs for eight are 25 % less. */
static void
test_cold (Farm          *farm,
           gconstpointer  data)
{
  g_autoptr(SteadReflectAnswer) answer = NULL;

  log_fall (farm);
  for (int i = 0; i < 4; i++)
    {
      add_night (farm, i, 3);
      add_night (farm, 7 + i, 8);
    }
  add_night (farm, 4, NAN);
  answer = ask (farm, student (farm));
  g_assert_cmpint (only_question (answer)->target, ==, STEAD_TARGET_FLOCK);
  g_assert_cmpint (only_question (answer)->batch_id, ==, farm->flock);
  if (farm_in_english ())
    g_assert_cmpstr (only_question (answer)->text, ==,
                     "The lay of Brown hens fell by 25% in the cold week from Mar 25, 2026. What did you see, and what did "
                     "you change?");
}

/* With three nights read nobody knows how cold the week was. */
static void
test_few_nights (Farm          *farm,
                 gconstpointer  data)
{
  g_autoptr(SteadReflectAnswer) answer = NULL;

  log_fall (farm);
  for (int i = 0; i < 3; i++)
    {
      add_night (farm, i, 3);
      add_night (farm, 7 + i, 8);
    }
  answer = ask (farm, student (farm));
  if (farm_in_english ())
    g_assert_cmpstr (only_question (answer)->text, ==,
                     "The lay of Brown hens fell by 25% in the week from Mar 25, 2026. What can have caused it, and how would "
                     "you find out?");
  NUMBERS_ARE (answer->sentence, 1);
}

/* What a student wrote about is no open question any more. */
static void
test_answered (Farm          *farm,
               gconstpointer  data)
{
  gint64 maya = student (farm);
  g_autoptr(SteadReflectAnswer) open = NULL, after = NULL;
  SteadReflection thought = { .person_id = maya, .day = farm->today, .text = (char *) "The water was frozen." };

  log_fall (farm);
  open = ask (farm, maya);
  g_assert_cmpint (open->n_open, ==, 1);
  thought.question = only_question (open)->text;
  FARM_DO (farm, stead_reflection_repo_save (farm->store, &thought, &farm_error));
  after = ask (farm, maya);
  g_assert_true (only_question (after)->is_answered);
  g_assert_cmpint (after->n_open, ==, 0);
  if (farm_in_english ())
    g_assert_cmpstr (after->sentence, ==, "No question is open. A thought of your own is welcome at any time.");
}

/* Invented: 60 kg were planned at $10 the kilogram, and 30 came: the question names the batch and what is missing. */
static void
test_under_plan (void)
{
  Pond pond;
  Farm *farm = &pond.farm;
  SteadBatchPlan plan;
  g_autoptr(SteadReflectAnswer) answer = NULL;
  const SteadReflectQuestion *question;

  pond_set_up (&pond, NULL);
  stead_batch_plan_init (&plan);
  plan.output_base = 60;
  plan.price_cents = 1000;
  plan.ends_on = farm->today;
  FARM_DO (farm, stead_product_repo_set_price (farm->store, pond.product, farm->today - 60, 1000, NULL, &farm_error)
                 && stead_batch_repo_set_plan (farm->store, pond.fish, &plan, &farm_error));
  pond_feed (&pond);
  pond_harvest (&pond, farm->today, 30, 200, 5000, TRUE);
  FARM_DO (farm, stead_batch_repo_end (farm->store, pond.fish, farm->today, &farm_error));
  answer = ask (farm, student (farm));
  question = only_question (answer);
  g_assert_cmpint (question->target, ==, STEAD_TARGET_BATCH);
  g_assert_cmpint (question->target_id, ==, pond.fish);
  g_assert_cmpint (question->day, ==, farm->today);
  if (farm_in_english ())
    {
      g_assert_true (g_str_has_prefix (question->text, "Catfish 1 brought $"));
      g_assert_true (g_str_has_suffix (question->text, " less than planned. Which part of it could you change next time?"));
    }
  pond_tear_down (&pond, NULL);
}

#define ADD(name, test) g_test_add ("/answer/reflect/" name, Farm, NULL, farm_set_up, test, farm_tear_down)

int
main (int    argc,
      char **argv)
{
  farm_start (&argc, &argv);
  ADD ("cold", test_cold);
  ADD ("few-nights", test_few_nights);
  ADD ("answered", test_answered);
  g_test_add_func ("/answer/reflect/under-plan", test_under_plan);
  return g_test_run ();
}
