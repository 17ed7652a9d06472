#include "config.h"

#include <glib/gstdio.h>
#include <sqlite3.h>
#include <unistd.h>

#include "answer/stead-check-list.h"
#include "answer/stead-demo-answer.h"

#include "demo.h"

/* An open checklist, besides those of the story. */
static void
add_list (SteadStore *store)
{
  const SteadCheckOrder order = { .kind = STEAD_CHECK_ORDER_MENU, .text = "breakfast bowls, tomato sauce",
                                  .day = STEAD_DAY_NONE };
  g_autoptr(SteadCheckPlanAnswer) plan = stead_check_plan_answer_new (store, &order, NULL);
  g_autoptr(SteadCheckList) list = stead_check_list_from_plan (store, plan, &order, NULL, NULL);

  g_assert_true (stead_store_begin (store, "list", NULL));
  g_assert_true (stead_check_repo_save (store, list, NULL));
  g_assert_true (stead_store_commit (store, NULL));
}

void
demo_set_up (Demo          *demo,
             gconstpointer  data)
{
  g_autoptr(GError) error = NULL;
  g_autofree char *path = NULL;

  if (g_access ("/dev/shm", W_OK) == 0)   /* a thousand rounds need no disk */
    demo->folder = g_strdup ("/dev/shm/steading-XXXXXX");
  else
    demo->folder = g_build_filename (g_get_tmp_dir (), "steading-XXXXXX", NULL);
  g_assert_nonnull (g_mkdtemp (demo->folder));
  path = g_build_filename (demo->folder, "demo.steading", NULL);
  demo->store = stead_demo_answer_create (path, NULL, DEMO_TODAY, &error);
  g_assert_no_error (error);
  add_list (demo->store);
}

void
demo_tear_down (Demo          *demo,
                gconstpointer  data)
{
  g_autoptr(GDir) folder = g_dir_open (demo->folder, 0, NULL);
  const char *name;

  g_object_unref (demo->store);
  while ((name = g_dir_read_name (folder)) != NULL)
    {
      g_autofree char *path = g_build_filename (demo->folder, name, NULL);

      g_unlink (path);
    }
  g_rmdir (demo->folder);
  g_free (demo->folder);
}

/* Names that each kind of question can be asked of. */
static const struct
{
  const char *of;
  const char *sql;
} subjects[] = {
  { "product", "SELECT name FROM product" },
  { "batch", "SELECT name FROM batch" },
  { "flock", "SELECT name FROM batch WHERE kind = 'flock'" },
  { "fish", "SELECT name FROM batch WHERE kind = 'fish'" },
  { "crop", "SELECT name FROM batch WHERE kind = 'crop'" },
  { "kitchen", "SELECT name FROM batch WHERE kind = 'kitchen'" },
  { "bay", "SELECT DISTINCT name FROM place JOIN climate ON place_id = place.id" },
  { "water", "SELECT name FROM water" },
  { "recipe", "SELECT name FROM recipe" },
  { "lot", "SELECT code FROM lot WHERE id % 17 = 0" },
  { "account", "SELECT name FROM account" },
  { "enterprise", "SELECT name FROM enterprise" },
  { "sale", "SELECT DISTINCT name FROM sale_day" },
  { "person", "SELECT name FROM person" },
  { "build", "SELECT name FROM build" },
  { "packet", "SELECT name FROM packet" },
  { "checklist", "SELECT DISTINCT name FROM checklist" },
};

GPtrArray *
demo_names (const Demo *demo,
            const char *of)
{
  g_autofree char *path = g_build_filename (demo->folder, "demo.steading", NULL);
  GPtrArray *names = g_ptr_array_new_with_free_func (g_free);
  const char *sql = NULL;
  sqlite3_stmt *stmt = NULL;
  sqlite3 *db = NULL;

  g_ptr_array_add (names, NULL);   /* of the first one, or of all */
  for (gsize i = 0; i < G_N_ELEMENTS (subjects); i++)
    if (g_strcmp0 (subjects[i].of, of) == 0)
      sql = subjects[i].sql;
  if (of == NULL)
    return names;
  g_assert_nonnull (sql);
  g_assert_cmpint (sqlite3_open_v2 (path, &db, SQLITE_OPEN_READONLY, NULL), ==, SQLITE_OK);
  g_assert_cmpint (sqlite3_prepare_v2 (db, sql, -1, &stmt, NULL), ==, SQLITE_OK);
  while (sqlite3_step (stmt) == SQLITE_ROW)
    g_ptr_array_add (names, g_strdup ((const char *) sqlite3_column_text (stmt, 0)));
  sqlite3_finalize (stmt);
  sqlite3_close (db);
  return names;
}

void
demo_look (Demo           *demo,
           const DemoView *view)
{
  g_autoptr(GError) error = NULL;
  g_autoptr(SteadFarm) farm = stead_farm_repo_get (demo->store, &error);

  g_assert_no_error (error);
  farm->units = view->units;
  g_free (farm->currency);
  farm->currency = g_strdup (view->currency);
  g_assert_true (stead_store_begin (demo->store, "view", &error));
  g_assert_true (stead_farm_repo_set (demo->store, farm, &error));
  g_assert_true (stead_store_commit (demo->store, &error));
  g_assert_no_error (error);
  stead_store_set_today (demo->store, DEMO_TODAY + view->later);
}
