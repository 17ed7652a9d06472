/* test-asset.c - what the things that last are worth, how they wear, and who bears it. */
#include "farm.h"
#include "numbers.h"

#include "answer/stead-asset-answer.h"
#include "answer/stead-cash-words.h"

#include <string.h>

static SteadAsset *
thing (const char *name,
       SteadDay    bought_on,
       gint64      cost_cents,
       gint64      salvage_cents)
{
  SteadAsset *asset = stead_asset_new ();

  asset->name = g_strdup (name);
  asset->bought_on = bought_on;
  asset->cost_cents = cost_cents;
  asset->salvage_cents = salvage_cents;
  return asset;
}

static gint64
save (Farm       *farm,
      SteadAsset *asset)
{
  FARM_DO (farm, stead_asset_repo_save (farm->store, asset, &farm_error));
  return asset->id;
}

static SteadAssetAnswer *
ask (Farm *farm)
{
  g_autoptr(GError) error = NULL;
  SteadAssetAnswer *answer = stead_asset_answer_new (farm->store, &error);

  g_assert_no_error (error);
  return answer;
}

static const SteadAssetLine *
line (const SteadAssetAnswer *answer,
      guint                   i)
{
  return answer->lines->pdata[i];
}

/* Invented: $1,200 with delivery, worth $200 at the end of 2,000 hours: $0.50 an hour.  200 hours before the
 * last twelve months, 100 in them: $1,200 - $150 = $1,050. */
static void
test_by_use (Farm          *farm,
             gconstpointer  data)
{
  g_autoptr(SteadAsset) mower = thing ("Mower", farm->today - 800, 100000, 20000);
  g_autoptr(SteadAssetAnswer) answer = NULL;
  g_autoptr(GPtrArray) whys = NULL;

  mower->extra_cents = 20000;
  mower->method = STEAD_DEPRECIATION_UNITS;
  mower->life_units = 2000;
  mower->unit_name = g_strdup ("hours");
  save (farm, mower);
  FARM_DO (farm, stead_asset_repo_add_use (farm->store, mower->id, farm->flock, farm->today - 365, 200, &farm_error)
                 && stead_asset_repo_add_use (farm->store, mower->id, farm->flock, farm->today - 364, 100, &farm_error));
  answer = ask (farm);
  g_assert_cmpint (line (answer, 0)->worth_cents, ==, 105000);
  g_assert_cmpint (line (answer, 0)->year_cents, ==, 5000);
  g_assert_cmpstr (line (answer, 0)->life, ==, "2,000 hours");
  NUMBERS_ARE (answer->sentence, 1050, 50);
  whys = stead_asset_answer_whys (answer);
  g_assert_cmpuint (whys->len, ==, 1);
  NUMBERS_ARE (((SteadWhy *) whys->pdata[0])->worked, 1200, 200, 2000, 0.50, 1200, 150, 1050);
}

/* Without a word for its uses they are called so. */
static void
test_uses (Farm          *farm,
           gconstpointer  data)
{
  g_autoptr(SteadAsset) trap = thing ("Trap", farm->today - 10, 1000, 0);
  g_autoptr(SteadAssetAnswer) answer = NULL;

  trap->method = STEAD_DEPRECIATION_UNITS;
  trap->life_units = 50;
  save (farm, trap);
  answer = ask (farm);
  g_assert_cmpint (line (answer, 0)->worth_cents, ==, 1000);
  if (farm_in_english ())
    {
      g_assert_cmpstr (line (answer, 0)->life, ==, "50 uses");
      g_assert_cmpstr (line (answer, 0)->borne_by, ==, "nobody yet");
    }
}

/* Twice a fifth of $1,000 in the first of five years: $400, and 40 % of it the year after. */
static void
test_declining (Farm          *farm,
                gconstpointer  data)
{
  g_autoptr(SteadAsset) cooler = thing ("Cooler", farm->today + 1 - 365, 100000, 0);
  g_autoptr(SteadAssetAnswer) answer = NULL;
  g_autoptr(GPtrArray) whys = NULL;

  cooler->method = STEAD_DEPRECIATION_DOUBLE_DECLINING;
  cooler->life_years = 5;
  save (farm, cooler);
  answer = ask (farm);
  g_assert_cmpint (line (answer, 0)->worth_cents, ==, 60000);
  g_assert_cmpint (line (answer, 0)->year_cents, ==, 40000);
  whys = stead_asset_answer_whys (answer);
  NUMBERS_ARE (((SteadWhy *) whys->pdata[0])->worked, 2, 5, 40, 1000, 400, 600);
  NUMBERS_ARE (line (answer, 0)->life, 5);
  if (farm_in_english ())
    g_assert_cmpstr (line (answer, 0)->life, ==, "5 years, more at first");
}

/* Broken after half of its ten years: it wore until then, is worth nothing, and explains nothing. */
static void
test_gone (Farm          *farm,
           gconstpointer  data)
{
  g_autoptr(SteadAsset) fan = thing ("Fan", farm->today + 1 - 5 * 365, 36500, 0);
  g_autoptr(SteadAssetAnswer) answer = NULL;
  g_autoptr(GPtrArray) whys = NULL;

  fan->life_years = 10;
  fan->gone_on = farm->today;
  fan->gone_cents = -1;
  save (farm, fan);
  answer = ask (farm);
  g_assert_cmpint (line (answer, 0)->worth_cents, ==, 0);
  g_assert_cmpint (line (answer, 0)->year_cents, ==, 3650);    /* $0.10 a day */
  whys = stead_asset_answer_whys (answer);
  g_assert_cmpuint (whys->len, ==, 0);
}

/* Fixed parts bear their percentages, days bear the rule. */
static void
test_borne_by (Farm          *farm,
               gconstpointer  data)
{
  g_autoptr(SteadAsset) parts = thing ("A", farm->today, 1000, 0), days = thing ("B", farm->today, 1000, 0);
  SteadAssetShare share = { farm->flock, 0.6 };
  g_autoptr(SteadAssetAnswer) answer = NULL;
  g_autofree char *by_days = g_strdup_printf ("Brown hens: %s", stead_cash_words_share_by (STEAD_SHARE_DAYS));

  parts->life_years = days->life_years = 1;
  days->share_by = STEAD_SHARE_DAYS;
  g_array_append_val (parts->shares, share);
  g_array_append_val (days->shares, share);
  save (farm, parts);
  save (farm, days);
  answer = ask (farm);
  g_assert_cmpstr (line (answer, 0)->borne_by, ==, "Brown hens 60%");
  g_assert_cmpstr (line (answer, 1)->borne_by, ==, by_days);
}

/* A farm that bought nothing lasting says what such a thing would be. */
static void
test_nothing (Farm          *farm,
              gconstpointer  data)
{
  g_autoptr(SteadAssetAnswer) answer = ask (farm);

  g_assert_cmpuint (answer->lines->len, ==, 0);
  g_assert_cmpint (answer->worth_cents + answer->year_cents, ==, 0);
  NUMBERS_ARE (answer->sentence);
}

/* Each way to wear bears a name of its own in the list. */
static void
test_names (void)
{
  const char *names[] = { stead_asset_answer_method_name (STEAD_DEPRECIATION_STRAIGHT_LINE),
                          stead_asset_answer_method_name (STEAD_DEPRECIATION_DOUBLE_DECLINING),
                          stead_asset_answer_method_name (STEAD_DEPRECIATION_UNITS) };

  for (gsize i = 0; i < G_N_ELEMENTS (names); i++)
    for (gsize k = 0; k < i; k++)
      g_assert_cmpstr (names[i], !=, names[k]);
}

#define ADD(name, test) g_test_add ("/answer/asset/" name, Farm, NULL, farm_set_up, test, farm_tear_down)

int
main (int    argc,
      char **argv)
{
  farm_start (&argc, &argv);
  ADD ("by-use", test_by_use);
  ADD ("uses", test_uses);
  ADD ("declining", test_declining);
  ADD ("gone", test_gone);
  ADD ("borne-by", test_borne_by);
  ADD ("nothing", test_nothing);
  g_test_add_func ("/answer/asset/names", test_names);
  return g_test_run ();
}
