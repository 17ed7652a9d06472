#include "config.h"

#include <glib/gstdio.h>
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
