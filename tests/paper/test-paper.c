/* test-paper.c - documents by name: what there is, what is refused, what is written. */
#include <glib/gstdio.h>
#include <locale.h>
#include <math.h>
#include <string.h>

#include "answer/stead-answer-error.h"
#include "answer/stead-check-list.h"
#include "answer/stead-packet-answer.h"
#include "shoal.h"
#include "paper/stead-paper-error.h"
#include "paper/stead-paper.h"
#include "store/stead-build-repo.h"
#include "store/stead-kitchen-repo.h"
#include "store/stead-sale-repo.h"

typedef struct
{
  Shoal  shoal;
  char *folder;
} Fixture;

/* A batch of the kitchen, planned for today. */
static void
plan_kitchen (Farm *farm)
{
  SteadItem flour = { .name = (char *) "Flour", .kind = STEAD_ITEM_INGREDIENT, .unit = stead_unit_by_id ("kg"),
                      .reorder_base = NAN };
  SteadItem bread = { .name = (char *) "Bread", .kind = STEAD_ITEM_PRODUCE, .unit = stead_unit_by_id ("ea"),
                      .reorder_base = NAN };
  g_autoptr(SteadRecipe) recipe = stead_recipe_new ();
  SteadRecipePart *part = stead_recipe_part_new ();
  SteadRecipeStep *step = stead_recipe_step_new ();
  gint64 batch_id;

  FARM_DO (farm, stead_item_repo_save (farm->store, &flour, &farm_error));
  FARM_DO (farm, stead_item_repo_save (farm->store, &bread, &farm_error));
  recipe->name = g_strdup ("Breads");
  recipe->item_id = bread.id;
  recipe->yield_base = 10;
  part->item_id = flour.id;
  part->amount = 2;
  part->unit = flour.unit;
  g_ptr_array_add (recipe->parts, part);
  step->text = g_strdup ("Cool");
  step->step = g_strdup ("cool");
  g_ptr_array_add (recipe->steps, step);
  FARM_DO (farm, stead_recipe_repo_save (farm->store, recipe, &farm_error));
  FARM_DO (farm, stead_kitchen_repo_plan (farm->store, recipe->id, 20, farm->today, "Breads 1", 0, &batch_id,
                                          &farm_error));
}

static void
plan_sale (Farm *farm)
{
  g_autoptr(SteadSale) sale = stead_sale_new ();
  SteadSaleGood *good = stead_sale_good_new ();

  sale->name = g_strdup ("Winter market");
  sale->day = farm->today + 4;
  sale->opens_min = 540;
  sale->closes_min = 780;
  good->product_id = farm->product;
  good->price_cents = 450;
  good->planned = 24;
  g_ptr_array_add (sale->goods, good);
  FARM_DO (farm, stead_sale_repo_save (farm->store, sale, NULL, &farm_error));
}

static void
set_up (Fixture       *fixture,
        gconstpointer  data)
{
  shoal_set_up (&fixture->shoal, NULL);
  farm_log (&fixture->shoal.farm);
  farm_stock (&fixture->shoal.farm);
  plan_kitchen (&fixture->shoal.farm);
  plan_sale (&fixture->shoal.farm);
  fixture->folder = g_dir_make_tmp ("steading-paper-XXXXXX", NULL);
}

static void
tear_down (Fixture       *fixture,
           gconstpointer  data)
{
  GDir *folder = g_dir_open (fixture->folder, 0, NULL);
  const char *name;

  while ((name = g_dir_read_name (folder)) != NULL)
    {
      g_autofree char *path = g_build_filename (fixture->folder, name, NULL);

      g_remove (path);
    }
  g_dir_close (folder);
  g_rmdir (fixture->folder);
  g_free (fixture->folder);
  shoal_tear_down (&fixture->shoal, NULL);
}

static guint
n_files (Fixture *fixture)
{
  GDir *folder = g_dir_open (fixture->folder, 0, NULL);
  guint n = 0;

  while (g_dir_read_name (folder) != NULL)
    n++;
  g_dir_close (folder);
  return n;
}

static char *
path_of (Fixture    *fixture,
         const char *name)
{
  return g_build_filename (fixture->folder, name, NULL);
}

/* A checklist, for the papers that are of one; once. */
static void
add_list (SteadStore *store)
{
  g_autoptr(GPtrArray) lists = stead_check_repo_list (store, 0, G_MAXINT32, NULL);
  const SteadCheckOrder order = { .kind = STEAD_CHECK_ORDER_MENU, .text = "breakfast bowls, tomato sauce",
                                  .day = STEAD_DAY_NONE };
  g_autoptr(SteadCheckPlanAnswer) plan = stead_check_plan_answer_new (store, &order, NULL);
  g_autoptr(SteadCheckList) list = plan != NULL ? stead_check_list_from_plan (store, plan, &order, NULL, NULL) : NULL;

  if (lists->len > 0)
    return;
  g_assert_nonnull (list);
  g_assert_true (stead_store_begin (store, "list", NULL));
  g_assert_true (stead_check_repo_save (store, list, NULL));
  g_assert_true (stead_store_commit (store, NULL));
}

/* A pen, for the papers that are of a build; once. */
static void
add_build (SteadStore *store)
{
  g_autoptr(SteadBuild) build = stead_build_new (STEAD_BUILD_PEN);
  g_autoptr(GPtrArray) builds = stead_build_repo_list (store, NULL);

  if (builds->len > 0)
    return;
  build->name = g_strdup ("Sheep pen");
  stead_build_set_rectangle (build, 12, 6);
  g_assert_true (stead_store_begin (store, "build", NULL));
  g_assert_true (stead_build_repo_save (store, build, NULL));
  g_assert_true (stead_store_commit (store, NULL));
}

static void
add_student (SteadStore *store)
{
  g_autoptr(GPtrArray) people = stead_person_repo_list (store, NULL);
  SteadPerson person = { .name = (char *) "Ada B.", .left_on = STEAD_DAY_NONE };

  if (people->len > 0)
    return;
  g_assert_true (stead_store_begin (store, "person", NULL));
  g_assert_true (stead_person_repo_save (store, &person, NULL));
  g_assert_true (stead_store_commit (store, NULL));
}

/* A packet of all sections, for the paper that is of one; once. */
static void
add_packet (SteadStore *store)
{
  g_autoptr(GPtrArray) packets = stead_packet_repo_list (store, NULL);
  g_autoptr(SteadPacket) packet = stead_packet_usual (store, stead_store_get_today (store), NULL);
  SteadPerson person = { .name = (char *) "Learner L.", .left_on = STEAD_DAY_NONE };

  if (packets->len > 0)
    return;
  g_assert_true (stead_store_begin (store, "packet", NULL));
  g_assert_true (stead_person_repo_save (store, &person, NULL));
  packet->name = g_strdup ("Learner");
  packet->person_id = person.id;
  g_assert_true (stead_packet_repo_save (store, packet, NULL));
  g_assert_true (stead_store_commit (store, NULL));
}

/* Every kind in every format that it promises, and in no other. */
static void
test_every_format (Fixture       *fixture,
                   gconstpointer  data)
{
  static const char * const endings[] = { ".pdf", ".png", ".svg", ".csv", ".xlsx" };
  static const char * const starts[] = { "%PDF-", "\x89PNG", "<?xml", "\xef\xbb\xbf", "PK" };
  const SteadPaperKind *kinds;
  gsize n_kinds;

  add_list (fixture->shoal.farm.store);
  add_build (fixture->shoal.farm.store);
  add_student (fixture->shoal.farm.store);
  add_packet (fixture->shoal.farm.store);
  kinds = stead_paper_list (&n_kinds);
  g_assert_cmpuint (n_kinds, >=, 5);
  for (gsize i = 0; i < n_kinds; i++)
    for (gsize e = 0; e < G_N_ELEMENTS (endings); e++)
      {
        g_autofree char *file = g_strconcat (kinds[i].name, endings[e], NULL);
        g_autofree char *path = path_of (fixture, file);
        g_autofree char *content = NULL;
        g_autoptr(GError) error = NULL;

        g_test_message ("%s", file);
        if (!(kinds[i].formats & 1u << e))
          {
            g_assert_false (stead_paper_write (fixture->shoal.farm.store, kinds[i].name, NULL, NULL, path, &error));
            g_assert_error (error, STEAD_PAPER_ERROR, STEAD_PAPER_ERROR_UNKNOWN);
            g_assert_false (g_file_test (path, G_FILE_TEST_EXISTS));
            continue;
          }
        g_assert_true (stead_paper_write (fixture->shoal.farm.store, kinds[i].name, NULL, NULL, path, &error));
        g_assert_no_error (error);
        g_assert_true (g_file_get_contents (path, &content, NULL, NULL));
        g_assert_true (g_str_has_prefix (content, starts[e]));
      }
}

static void
test_pages_as_an_object (Fixture       *fixture,
                         gconstpointer  data)
{
  g_autoptr(GError) error = NULL;
  SteadPaper *paper = stead_paper_new (fixture->shoal.farm.store, "cost-sheet", "eggs", NULL, &error);
  cairo_surface_t *surface = cairo_recording_surface_create (CAIRO_CONTENT_COLOR_ALPHA, NULL);
  cairo_t *cr = cairo_create (surface);
  double width, height;

  g_assert_no_error (error);
  g_assert_cmpstr (stead_paper_get_title (paper), ==, "Eggs: what a dozen costs");
  g_assert_cmpint (stead_paper_get_n_pages (paper), >, 1);
  stead_paper_get_size (paper, &width, &height);
  g_assert_cmpfloat (width, ==, 612);
  for (int page = 0; page < stead_paper_get_n_pages (paper); page++)
    stead_paper_draw_page (paper, page, cr);
  g_assert_cmpint (cairo_status (cr), ==, CAIRO_STATUS_SUCCESS);
  cairo_destroy (cr);
  cairo_surface_destroy (surface);
  g_assert_finalize_object (paper);
}

static void
refuse (Fixture    *fixture,
        const char *name,
        const char *of,
        const char *file,
        GQuark      domain,
        int         code)
{
  g_autofree char *path = path_of (fixture, file);
  g_autoptr(GError) error = NULL;

  g_assert_false (stead_paper_write (fixture->shoal.farm.store, name, of, NULL, path, &error));
  g_assert_error (error, domain, code);
  g_assert_cmpuint (strlen (error->message), >, 20);
}

static void
test_refusals (Fixture       *fixture,
               gconstpointer  data)
{
  g_autoptr(GError) error = NULL;

  refuse (fixture, "poem", NULL, "a.pdf", STEAD_PAPER_ERROR, STEAD_PAPER_ERROR_UNKNOWN);
  refuse (fixture, "cost-sheet", NULL, "a.docx", STEAD_PAPER_ERROR, STEAD_PAPER_ERROR_UNKNOWN);
  refuse (fixture, "cost-sheet", NULL, "a", STEAD_PAPER_ERROR, STEAD_PAPER_ERROR_UNKNOWN);
  refuse (fixture, "cost-sheet", "Milk", "a.pdf", STEAD_ANSWER_ERROR, STEAD_ANSWER_ERROR_UNKNOWN);
  refuse (fixture, "flock-log", "Geese", "a.csv", STEAD_ANSWER_ERROR, STEAD_ANSWER_ERROR_UNKNOWN);
  g_assert_null (stead_paper_new (fixture->shoal.farm.store, "flock-log", NULL, NULL, &error));
  g_assert_error (error, STEAD_PAPER_ERROR, STEAD_PAPER_ERROR_UNKNOWN);
  g_assert_null (stead_paper_find (NULL));
  g_assert_null (stead_paper_find (""));
  g_assert_cmpuint (n_files (fixture), ==, 0);
}

/* A place that cannot be written: the message says so, and what was there stays. */
static void
test_no_place (Fixture       *fixture,
               gconstpointer  data)
{
  g_autofree char *sub = path_of (fixture, "sub.csv");

  refuse (fixture, "cost-sheet", NULL, "no/such/folder/a.pdf", STEAD_PAPER_ERROR, STEAD_PAPER_ERROR_WRITE);
  g_mkdir (sub, 0755);
  refuse (fixture, "flock-log", NULL, "sub.csv", STEAD_PAPER_ERROR, STEAD_PAPER_ERROR_WRITE);
  g_assert_true (g_file_test (sub, G_FILE_TEST_IS_DIR));
  g_assert_cmpuint (n_files (fixture), ==, 1);
}

static void
test_an_older_file_is_replaced_whole (Fixture       *fixture,
                                      gconstpointer  data)
{
  g_autofree char *path = path_of (fixture, "log.csv");
  g_autofree char *content = NULL;
  g_autoptr(GError) error = NULL;

  g_file_set_contents (path, "older", -1, NULL);
  refuse (fixture, "flock-log", "Geese", "log.csv", STEAD_ANSWER_ERROR, STEAD_ANSWER_ERROR_UNKNOWN);
  g_assert_true (g_file_get_contents (path, &content, NULL, NULL));
  g_assert_cmpstr (content, ==, "older");
  g_assert_true (stead_paper_write (fixture->shoal.farm.store, "flock-log", NULL, NULL, path, &error));
  g_assert_no_error (error);
  g_clear_pointer (&content, g_free);
  g_assert_true (g_file_get_contents (path, &content, NULL, NULL));
  g_assert_nonnull (strstr (content, "2026-03-31"));
  g_assert_cmpuint (n_files (fixture), ==, 1);
}

static void
test_the_farm_is_not_changed (Fixture       *fixture,
                              gconstpointer  data)
{
  gint64 before;

  add_list (fixture->shoal.farm.store);
  add_build (fixture->shoal.farm.store);
  add_student (fixture->shoal.farm.store);
  add_packet (fixture->shoal.farm.store);
  before = stead_store_get_change_no (fixture->shoal.farm.store);
  test_every_format (fixture, NULL);
  g_assert_cmpint (stead_store_get_change_no (fixture->shoal.farm.store), ==, before);
}

/* An emoji is painted as a picture; the name of the farm is the first thing on most pages. */
static void
test_an_emoji_begins_the_name (Fixture       *fixture,
                               gconstpointer  data)
{
  SteadStore *store = fixture->shoal.farm.store;
  g_autoptr(GError) error = NULL;
  g_autoptr(SteadFarm) farm = stead_farm_repo_get (store, &error);

  g_assert_no_error (error);
  g_free (farm->name);
  farm->name = g_strdup ("🐟 Ember Lake");
  FARM_DO (&fixture->shoal.farm, stead_farm_repo_set (store, farm, &farm_error));
  test_every_format (fixture, NULL);
}

/* Without a receipt, a log or a price a paper is still made, or says what is missing. */
static void
test_a_bare_farm (void)
{
  Farm farm;
  const SteadPaperKind *kinds;
  gsize n_kinds;

  farm_set_up (&farm, NULL);
  kinds = stead_paper_list (&n_kinds);
  for (gsize i = 0; i < n_kinds; i++)
    {
      g_autofree char *folder = g_dir_make_tmp ("steading-paper-XXXXXX", NULL);
      g_autofree char *path = g_build_filename (folder, kinds[i].formats & STEAD_FORMAT_PDF ? "a.pdf"
                                                : kinds[i].formats & STEAD_FORMAT_CSV ? "a.csv"
                                                : kinds[i].formats & STEAD_FORMAT_XLSX ? "a.xlsx" : "a.ics", NULL);
      g_autoptr(GError) error = NULL;

      g_test_message ("%s", kinds[i].name);
      if (stead_paper_write (farm.store, kinds[i].name, NULL, NULL, path, &error))
        g_remove (path);
      else
        g_assert_cmpint (error->domain, ==, STEAD_ANSWER_ERROR);
      g_rmdir (folder);
    }
  farm_tear_down (&farm, NULL);
}

#define ADD(path, test) g_test_add (path, Fixture, NULL, set_up, test, tear_down)

int
main (int    argc,
      char **argv)
{
  setlocale (LC_ALL, "");
  g_test_init (&argc, &argv, NULL);
  ADD ("/paper/paper/every-format", test_every_format);
  ADD ("/paper/paper/pages-as-an-object", test_pages_as_an_object);
  ADD ("/paper/paper/refusals", test_refusals);
  ADD ("/paper/paper/no-place", test_no_place);
  ADD ("/paper/paper/an-older-file-is-replaced-whole", test_an_older_file_is_replaced_whole);
  ADD ("/paper/paper/the-farm-is-not-changed", test_the_farm_is_not_changed);
  ADD ("/paper/paper/an-emoji-begins-the-name", test_an_emoji_begins_the_name);
  g_test_add_func ("/paper/paper/of-a-bare-farm", test_a_bare_farm);
  return g_test_run ();
}
