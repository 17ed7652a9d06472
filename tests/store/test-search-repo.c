/* test-search-repo.c - the jump field finds what a person means. */
#include "config.h"

#include "check-fixture.h"
#include "repo-fixture.h"
#include "store/stead-kitchen-repo.h"
#include "store/stead-sale-repo.h"

#include <math.h>

/* "kind:title" of each hit, best first. */
static char *
find (Farm       *farm,
      const char *text,
      guint       limit)
{
  g_autoptr(GError) error = NULL;
  g_autoptr(GPtrArray) hits = stead_search_repo_find (farm->store, text, limit, &error);
  GString *found = g_string_new (NULL);

  g_assert_no_error (error);
  for (guint i = 0; i < hits->len; i++)
    {
      SteadHit *hit = hits->pdata[i];

      g_assert_cmpint (hit->id, >, 0);
      g_string_append_printf (found, "%s%d:%s", i > 0 ? "|" : "", hit->kind, hit->title);
    }
  return g_string_free (found, FALSE);
}

#define FINDS(text, wanted) \
  G_STMT_START { \
    g_autofree char *found = find (farm, text, 10); \
    g_assert_cmpstr (found, ==, wanted); \
  } G_STMT_END

static void
test_find (void)
{
  g_autoptr(Farm) farm = farm_new ();
  g_autoptr(SteadAsset) asset = stead_asset_new ();
  SteadPerson person = { .name = (char *) "José Ñandú", .role = STEAD_PERSON_STUDENT, .left_on = STEAD_DAY_NONE };

  asset->name = g_strdup ("Hen house");
  asset->bought_on = TODAY;
  asset->life_years = 8;
  ACT (farm, stead_asset_repo_save (farm->store, asset, err));
  ACT (farm, stead_person_repo_save (farm->store, &person, err));
  farm_receipt (farm, farm->feed, TODAY - 30, 10, 100, FALSE);
  farm_receipt (farm, farm->feed, TODAY - 20, 10, 100, FALSE);

  FINDS ("jose", "6:José Ñandú");
  FINDS ("NANDU", "6:José Ñandú");
  FINDS ("ñan", "6:José Ñandú");
  FINDS ("", "");
  FINDS ("   ", "");
  FINDS ("\xff", "");
  FINDS ("zzz", "");
  FINDS ("%", "");
  /* A name's beginning before a word's, a word's before the inside; newest receipt first. */
  FINDS ("feed", "2:Layer feed|4:Lakeside Feed & Seed, Feb 11, 2026|4:Lakeside Feed & Seed, Feb 1, 2026");
  FINDS ("hen", "0:Hens 1|5:Hen house");
  FINDS ("hen house", "5:Hen house");
  FINDS ("aye", "2:Layer feed");
  /* Lots by the beginning of their codes; newest first, a whole code before all. */
  FINDS ("f26", "3:F26042-1|3:F26032-1");
  FINDS ("F26032-1", "3:F26032-1");
  FINDS ("26032", "");
}

/* A recipe goes by its name, and so does each making of it; the newest first. */
static void
test_kitchen (void)
{
  g_autoptr(Farm) farm = farm_new ();
  g_autoptr(SteadRecipe) recipe = stead_recipe_new ();
  SteadRecipePart *part = stead_recipe_part_new ();
  SteadItem bread = { .name = (char *) "Flat loaf", .kind = STEAD_ITEM_PRODUCE, .unit = stead_unit_by_id ("ea"),
                      .reorder_base = NAN };

  ACT (farm, stead_item_repo_save (farm->store, &bread, err));
  recipe->name = g_strdup ("Bread");
  recipe->item_id = bread.id;
  recipe->yield_base = 10;
  part->item_id = farm->feed;
  part->amount = 2;
  part->unit = stead_unit_by_id ("kg");
  g_ptr_array_add (recipe->parts, part);
  ACT (farm, stead_recipe_repo_save (farm->store, recipe, err));
  ACT (farm, stead_kitchen_repo_plan (farm->store, recipe->id, 10, TODAY - 1, "Bread of Monday", 0, NULL, err));
  ACT (farm, stead_kitchen_repo_plan (farm->store, recipe->id, 10, TODAY, "Bread of Tuesday", 0, NULL, err));

  FINDS ("bread", "7:Bread|8:Bread of Tuesday|8:Bread of Monday");
}

/* A sale day goes by its name and its day; the newest first. */
static void
test_sale (void)
{
  g_autoptr(Farm) farm = farm_new ();

  for (int i = 0; i < 2; i++)
    {
      g_autoptr(SteadSale) sale = stead_sale_new ();

      sale->name = g_strdup ("Winter market");
      sale->day = TODAY - 30 * i;
      sale->opens_min = 540;
      sale->closes_min = 780;
      ACT (farm, stead_sale_repo_save (farm->store, sale, NULL, err));
    }
  FINDS ("winter", "9:Winter market, Mar 3, 2026|9:Winter market, Feb 1, 2026");
}

/* A checklist is called by its name and its day; the newest first. */
static void
test_checklist (void)
{
  g_autoptr(Farm) farm = farm_new ();
  g_autoptr(SteadCheckList) old G_GNUC_UNUSED = check_list_saved (farm, TODAY - 1, 0, FALSE);
  g_autoptr(SteadCheckList) new_one G_GNUC_UNUSED = check_list_saved (farm, TODAY, 0, FALSE);
  g_autofree char *yesterday = stead_day_format (TODAY - 1, STEAD_DAY_STYLE_MEDIUM);
  g_autofree char *today = stead_day_format (TODAY, STEAD_DAY_STYLE_MEDIUM);
  g_autofree char *both = g_strdup_printf ("10:Breakfast bowls, %s|10:Breakfast bowls, %s", today, yesterday);

  FINDS ("breakfast", both);
}

static void
test_limit (void)
{
  g_autoptr(Farm) farm = farm_new ();
  g_autofree char *found = NULL;
  g_autofree char *none = NULL;

  found = find (farm, "e", 2);
  g_assert_cmpint (g_strrstr (found, "|") - found, >, 0);
  none = find (farm, "e", 0);
  g_assert_cmpstr (none, ==, "");
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/store/search/find", test_find);
  g_test_add_func ("/store/search/kitchen", test_kitchen);
  g_test_add_func ("/store/search/sale", test_sale);
  g_test_add_func ("/store/search/checklist", test_checklist);
  g_test_add_func ("/store/search/limit", test_limit);
  return g_test_run ();
}
