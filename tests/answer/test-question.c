/* test-question.c - every question by name, and its figures against the answers. */
#include "numbers.h"
#include "shoal.h"

#include "answer/stead-answer-error.h"
#include "answer/stead-batch-answer.h"
#include "answer/stead-cost-answer.h"
#include "answer/stead-question.h"
#include "answer/stead-water-answer.h"
#include "store/stead-cash-repo.h"
#include "store/stead-sale-repo.h"

#include <math.h>
#include <string.h>

static JsonObject *
ask (Farm        *farm,
     const char  *name,
     const char  *of,
     JsonNode   **out_node)
{
  g_autoptr(GError) error = NULL;
  g_autofree char *sentence = NULL;

  g_test_message ("%s", name);
  if (!stead_question_ask (farm->store, name, of, &sentence, out_node, &error))
    g_error ("%s: %s", name, error->message);
  g_assert_cmpuint (strlen (sentence), >, 10);
  g_assert_null (strchr (sentence, '<'));
  return json_node_get_object (*out_node);
}

static gint64
make_water (Farm *farm)
{
  g_autoptr(SteadWater) water = stead_water_new ();
  g_autoptr(SteadWaterTest) test = stead_water_test_new ();

  water->name = g_strdup ("Loop");
  water->volume_l = 1000;
  FARM_DO (farm, stead_water_repo_save (farm->store, water, &farm_error));
  test->water_id = water->id;
  test->day = farm->today - 1;
  test->values[STEAD_READING_TEMPERATURE] = 28;
  test->values[STEAD_READING_PH] = 8.4;
  test->values[STEAD_READING_TAN] = 1;
  FARM_DO (farm, stead_water_test_repo_save (farm->store, test, &farm_error));
  return water->id;
}

static void
make_sale (Farm *farm)
{
  g_autoptr(SteadSale) sale = stead_sale_new ();

  sale->name = g_strdup ("Winter market");
  sale->day = farm->today + 6;
  sale->opens_min = 9 * 60;
  sale->closes_min = 13 * 60;
  FARM_DO (farm, stead_sale_repo_save (farm->store, sale, NULL, &farm_error));
}

/* A farm that has something to say to each question. */
static void
test_list (Shoal          *shoal,
           gconstpointer  data)
{
  gsize n;
  const SteadQuestion *questions = stead_question_list (&n);

  farm_stock (&shoal->farm);
  farm_log (&shoal->farm);
  make_water (&shoal->farm);
  make_sale (&shoal->farm);
  g_assert_cmpuint (n, >=, 10);
  for (gsize i = 0; i < n; i++)
    {
      g_autoptr(JsonNode) node = NULL;

      /* This farm grows nothing, cooks nothing and builds nothing. */
      if (g_strcmp0 (questions[i].of, "crop") == 0 || g_strcmp0 (questions[i].of, "bay") == 0
          || g_strcmp0 (questions[i].of, "recipe") == 0 || g_strcmp0 (questions[i].of, "kitchen") == 0
          || g_strcmp0 (questions[i].of, "build") == 0)
        continue;
      g_assert_cmpuint (json_object_get_size (ask (&shoal->farm, questions[i].name, NULL, &node)), >, 1);
      g_assert_true (g_str_has_suffix (questions[i].asks, "?"));
    }
}

static void
test_batch (Farm          *farm,
            gconstpointer  data)
{
  g_autoptr(JsonNode) node = NULL;
  g_autoptr(SteadBatchAnswer) answer = NULL;
  JsonObject *figures;

  farm_stock (farm);
  farm_log (farm);
  answer = stead_batch_answer_new (farm->store, farm->flock, NULL);
  figures = ask (farm, "batch", " brown HENS", &node);
  g_assert_cmpstr (json_object_get_string_member (figures, "kind"), ==, "flock");
  g_assert_cmpstr (json_object_get_string_member (figures, "outlook"), ==, "forecast");
  g_assert_cmpfloat (json_object_get_double_member (figures, "cost_so_far_cents"), ==, answer->money.cost.so_far_cents);
  g_assert_cmpfloat (json_object_get_double_member (figures, "output_so_far"), ==, 711);
  /* Nothing was planned, so there is no difference to take apart. */
  g_assert_true (json_object_get_null_member (figures, "price_variance_cents"));
  g_assert_true (json_object_get_null_member (figures, "wait_until"));
  g_assert_cmpuint (json_array_get_length (json_object_get_array_member (figures, "review")), ==, 0);
}

static void
test_water (Farm          *farm,
            gconstpointer  data)
{
  g_autoptr(JsonNode) node = NULL;
  g_autoptr(SteadWaterAnswer) answer = stead_water_answer_new (farm->store, make_water (farm), NULL);
  JsonObject *figures = ask (farm, "water", "loop", &node);
  JsonObject *readings = json_object_get_object_member (figures, "readings");
  JsonObject *nh3 = json_object_get_object_member (readings, "nh3_n_mgl");
  JsonObject *nitrite = json_object_get_object_member (readings, "nitrite_mgl");

  g_assert_cmpint (json_object_get_int_member (figures, "to_act_on"), ==, answer->n_act);
  g_assert_cmpstr (json_object_get_string_member (figures, "last_test"), ==, "2026-03-30");
  g_assert_cmpstr (json_object_get_string_member (figures, "next_test"), ==, "2026-04-06");
  g_assert_cmpfloat (json_object_get_double_member (nh3, "value"), ==, answer->lines[STEAD_WATER_NH3N].value);
  g_assert_cmpstr (json_object_get_string_member (nh3, "verdict"), ==, "act");
  g_assert_cmpfloat (json_object_get_double_member (nh3, "act_above"), ==, 0.05);
  g_assert_true (json_object_get_null_member (nitrite, "value"));     /* a gap is no zero */
  g_assert_true (json_object_get_null_member (nitrite, "verdict"));
}

static void
test_cost (Farm          *farm,
           gconstpointer  data)
{
  g_autoptr(JsonNode) node = NULL;
  g_autoptr(SteadCostAnswer) answer = NULL;
  JsonObject *figures;
  JsonObject *parts;

  farm_stock (farm);
  farm_log (farm);
  answer = stead_cost_answer_new (farm->store, farm->product, STEAD_PERIOD_12_WEEKS, NULL);
  figures = ask (farm, "cost", "eggs", &node);
  g_assert_cmpint (json_object_get_int_member (figures, "unit_cents"), ==, answer->sheet.unit_cents);
  g_assert_cmpstr (json_object_get_string_member (figures, "from"), ==, "2026-01-07");
  g_assert_cmpstr (json_object_get_string_member (figures, "to"), ==, "2026-03-31");
  g_assert_true (json_object_get_null_member (figures, "caution"));
  parts = json_object_get_object_member (figures, "parts");
  g_assert_cmpuint (json_object_get_size (parts), ==, STEAD_N_COST_KINDS);
  g_assert_cmpint (json_object_get_int_member (json_object_get_object_member (parts, "feed"), "shown_cents"), ==,
                   answer->sheet.parts[STEAD_COST_FEED].shown_cents);
}

static void
open_account (Farm       *farm,
              const char *name,
              gint64      cents)
{
  SteadAccount account = { .name = (char *) name, .kind = STEAD_ACCOUNT_TILL, .opened_on = farm->today - 9,
                           .opening_cents = cents, .closed_on = STEAD_DAY_NONE };

  FARM_DO (farm, stead_account_repo_save (farm->store, &account, &farm_error));
}

/* Of one account, what is in it; of none, what is in all. */
static void
test_cash (Farm          *farm,
           gconstpointer  data)
{
  g_autoptr(JsonNode) all = NULL;
  g_autoptr(JsonNode) one = NULL;

  open_account (farm, "Box", 4000);
  open_account (farm, "Bank", 250000);
  g_assert_cmpint (json_object_get_int_member (ask (farm, "cash", NULL, &all), "cents"), ==, 254000);
  g_assert_cmpint (json_object_get_int_member (ask (farm, "cash", "Box", &one), "cents"), ==, 4000);
}

/* A figure that does not exist is null, not -1 and not a word. */
static void
test_null_figures (Farm          *farm,
                   gconstpointer  data)
{
  g_autoptr(JsonNode) flock = NULL;
  g_autoptr(JsonNode) price = NULL;
  JsonObject *figures = ask (farm, "flock", NULL, &flock);

  g_assert_true (json_object_get_null_member (figures, "laying_frac"));
  g_assert_true (json_object_get_null_member (figures, "feed_days"));
  farm_log (farm);
  stead_store_set_today (farm->store, stead_day_new (2026, 1, 9));
  figures = ask (farm, "price", NULL, &price);
  g_assert_true (json_object_get_null_member (figures, "price_on_file_cents"));
}

static void
test_errors (Farm          *farm,
             gconstpointer  data)
{
  static const struct { const char *name; const char *of; SteadAnswerError code; const char *says; } cases[] = {
    { "weather", NULL, STEAD_ANSWER_ERROR_UNKNOWN, "weather" },
    { "cost", "Llamas", STEAD_ANSWER_ERROR_UNKNOWN, "Llamas" },
    { "flock", "Llamas", STEAD_ANSWER_ERROR_UNKNOWN, "Brown hens" },
    { "fish", NULL, STEAD_ANSWER_ERROR_MISSING, "no fish yet" },
    { "cost", NULL, STEAD_ANSWER_ERROR_MISSING, "Brown hens" },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr(GError) error = NULL;
      char *sentence = (char *) "untouched";
      JsonNode *node = NULL;

      g_assert_false (stead_question_ask (farm->store, cases[i].name, cases[i].of, &sentence, &node, &error));
      g_assert_error (error, STEAD_ANSWER_ERROR, (int) cases[i].code);
      g_assert_nonnull (strstr (error->message, cases[i].says));
      g_assert_cmpstr (sentence, ==, "untouched");
      g_assert_null (node);
    }
}

int
main (int    argc,
      char **argv)
{
  farm_start (&argc, &argv);
#define ADD(name, test) g_test_add ("/answer/question/" name, Farm, NULL, farm_set_up, test, farm_tear_down)
  g_test_add ("/answer/question/list", Shoal, NULL, shoal_set_up, test_list, shoal_tear_down);
  ADD ("cost", test_cost);
  ADD ("batch", test_batch);
  ADD ("water", test_water);
  ADD ("cash", test_cash);
  ADD ("null-figures", test_null_figures);
  ADD ("errors", test_errors);
#undef ADD
  return g_test_run ();
}
