/* show-papers.c - writes every document in every format into a folder, for the eye.
 *
 * usage: show-papers FOLDER [FARM.steading]
 *
 * Without a farm the demo farm is made in the folder.
 */
#include <locale.h>

#include <glib/gstdio.h>

#include "answer/stead-check-list.h"
#include "answer/stead-demo-answer.h"
#include "paper/stead-paper.h"

static void
write_one (SteadStore           *store,
           const SteadPaperKind *kind,
           const char           *folder,
           const char           *ending)
{
  g_autofree char *file = g_strconcat (kind->name, ending, NULL);
  g_autofree char *path = g_build_filename (folder, file, NULL);
  g_autoptr(GError) error = NULL;

  if (!stead_paper_write (store, kind->name, NULL, NULL, path, &error))
    g_printerr ("%s: %s\n", path, error->message);
}

/* A checklist, for the papers that are of one. */
static void
add_list (SteadStore *store)
{
  const SteadCheckOrder order = { .kind = STEAD_CHECK_ORDER_MENU, .text = "breakfast bowls, tomato sauce",
                                  .day = STEAD_DAY_NONE };
  g_autoptr(SteadCheckPlanAnswer) plan = stead_check_plan_answer_new (store, &order, NULL);
  g_autoptr(SteadCheckList) list = plan != NULL ? stead_check_list_from_plan (store, plan, &order, NULL, NULL) : NULL;

  g_assert_nonnull (list);
  g_assert_true (stead_store_begin (store, "list", NULL));
  g_assert_true (stead_check_repo_save (store, list, NULL));
  g_assert_true (stead_store_commit (store, NULL));
}

static SteadStore *
make_demo_farm (const char *folder)
{
  g_autofree char *path = g_build_filename (folder, "demo.steading", NULL);
  g_autoptr(GError) error = NULL;
  SteadDay today = stead_day_new (2026, 3, 3);
  SteadStore *store;

  g_unlink (path);
  store = stead_demo_answer_create (path, NULL, today, &error);
  if (store == NULL)
    g_printerr ("%s\n", error->message);
  else
    add_list (store);
  return store;
}

static SteadStore *
open_farm (const char *path)
{
  g_autoptr(GError) error = NULL;
  SteadStore *store = stead_store_open (path, STEAD_STORE_OPEN_READ_ONLY, &error);

  if (store == NULL)
    g_printerr ("%s\n", error->message);
  return store;
}

int
main (int    argc,
      char **argv)
{
  static const char * const endings[] = { ".pdf", ".png", ".svg", ".csv", ".xlsx" };
  const SteadPaperKind *kinds;
  SteadStore *store;
  gsize n_kinds;

  setlocale (LC_ALL, "");
  if (argc < 2)
    return 2;
  g_mkdir_with_parents (argv[1], 0755);
  store = argc > 2 ? open_farm (argv[2]) : make_demo_farm (argv[1]);
  if (store == NULL)
    return 1;
  kinds = stead_paper_list (&n_kinds);
  for (gsize i = 0; i < n_kinds; i++)
    for (gsize e = 0; e < G_N_ELEMENTS (endings); e++)
      if (kinds[i].formats & 1u << e)
        write_one (store, &kinds[i], argv[1], endings[e]);
  g_object_unref (store);
  return 0;
}
