/* test-desk.c - the open farm as the window sees it: one change, one signal, one word about it. */
#include "config.h"

#include "app-fixture.h"
#include "app/stead-desk.h"
#include "core/stead-core-error.h"

typedef struct
{
  SteadDesk  *desk;
  SteadStore *store;
  int         changed;
  int         selected;
  int         target;
  gint64      id;
  char       *said;
  gboolean    with_undo;
} Fixture;

static void
changed_cb (Fixture *f)
{
  f->changed++;
}

static void
selected_cb (Fixture *f)
{
  f->selected++;
}

static void
said_cb (Fixture    *f,
         const char *text,
         gboolean    with_undo)
{
  g_free (f->said);
  f->said = g_strdup (text);
  f->with_undo = with_undo;
}

static void
jump_cb (Fixture *f,
         int      target,
         gint64   id)
{
  f->target = target;
  f->id = id;
}

static void
set_up (Fixture       *f,
        gconstpointer  data)
{
  f->desk = stead_desk_new ();
  f->store = fixture_farm ();
  g_signal_connect_swapped (f->desk, "changed", G_CALLBACK (changed_cb), f);
  g_signal_connect_swapped (f->desk, "selected", G_CALLBACK (selected_cb), f);
  g_signal_connect_swapped (f->desk, "said", G_CALLBACK (said_cb), f);
  g_signal_connect_swapped (f->desk, "jump", G_CALLBACK (jump_cb), f);
  stead_desk_set_store (f->desk, f->store);
  g_assert_cmpint (f->changed, ==, 1);
  f->changed = 0;
}

static void
tear_down (Fixture       *f,
           gconstpointer  data)
{
  g_assert_finalize_object (f->desk);
  g_assert_finalize_object (f->store);
  g_free (f->said);
}

static gboolean
rename_farm (SteadStore  *store,
             gpointer     name,
             GError     **error)
{
  g_autoptr(SteadFarm) farm = stead_farm_repo_get (store, error);

  if (farm == NULL)
    return FALSE;
  g_free (farm->name);
  farm->name = g_strdup (name);
  return stead_farm_repo_set (store, farm, error);
}

static gboolean
rename_and_fail (SteadStore  *store,
                 gpointer     name,
                 GError     **error)
{
  if (rename_farm (store, name, error))
    g_set_error_literal (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_RANGE, "Not like this.");
  return FALSE;
}

static gboolean
do_nothing (SteadStore  *store,
            gpointer     data,
            GError     **error)
{
  return TRUE;
}

static void
test_act (Fixture       *f,
          gconstpointer  data)
{
  g_autoptr(GError) error = NULL;

  g_assert_cmpstr (stead_desk_get_farm (f->desk)->name, ==, "Test farm");
  g_assert_true (stead_desk_act (f->desk, "A new name", rename_farm, (gpointer) "Hill farm", &error));
  g_assert_no_error (error);
  g_assert_cmpint (f->changed, ==, 1);
  g_assert_cmpstr (stead_desk_get_farm (f->desk)->name, ==, "Hill farm");
  g_assert_cmpstr (f->said, ==, "Saved: A new name.");
  g_assert_true (f->with_undo);
}

static void
test_failure (Fixture       *f,
              gconstpointer  data)
{
  g_autoptr(GError) error = NULL;
  g_autofree char *undo = stead_store_get_undo_name (f->store);

  g_assert_false (stead_desk_act (f->desk, "A new name", rename_and_fail, (gpointer) "Hill farm", &error));
  g_assert_error (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_RANGE);
  g_assert_cmpint (f->changed, ==, 0);
  g_assert_null (f->said);
  g_assert_cmpstr (stead_desk_get_farm (f->desk)->name, ==, "Test farm");
  g_assert_cmpstr (undo, ==, "start");
}

/* What changed nothing is no step, and nothing is said about it. */
static void
test_nothing (Fixture       *f,
              gconstpointer  data)
{
  g_autoptr(GError) error = NULL;

  g_assert_true (stead_desk_act (f->desk, "Nothing", do_nothing, NULL, &error));
  g_assert_no_error (error);
  g_assert_null (f->said);
}

static void
test_undo (Fixture       *f,
           gconstpointer  data)
{
  g_autoptr(GError) error = NULL;

  g_assert_true (stead_desk_act (f->desk, "A new name", rename_farm, (gpointer) "Hill farm", &error));
  f->changed = 0;
  stead_desk_undo (f->desk);
  g_assert_cmpint (f->changed, ==, 1);
  g_assert_cmpstr (f->said, ==, "Undone: A new name.");
  g_assert_false (f->with_undo);
  g_assert_cmpstr (stead_desk_get_farm (f->desk)->name, ==, "Test farm");
  stead_desk_redo (f->desk);
  g_assert_cmpstr (f->said, ==, "Done again: A new name.");
  g_assert_cmpstr (stead_desk_get_farm (f->desk)->name, ==, "Hill farm");
}

static void
test_nothing_to_undo (Fixture       *f,
                      gconstpointer  data)
{
  stead_desk_redo (f->desk);
  g_assert_null (f->said);
  stead_desk_set_store (f->desk, NULL);
  stead_desk_undo (f->desk);
  g_assert_null (f->said);
  g_assert_null (stead_desk_get_farm (f->desk));
}

static void
test_choice (Fixture       *f,
             gconstpointer  data)
{
  stead_desk_set_product (f->desk, 7);
  stead_desk_set_product (f->desk, 7);
  g_assert_cmpint (f->selected, ==, 1);
  stead_desk_set_period (f->desk, STEAD_PERIOD_SCHOOL_YEAR);
  g_assert_cmpint (f->selected, ==, 2);
  g_assert_cmpint (stead_desk_get_period (f->desk), ==, STEAD_PERIOD_SCHOOL_YEAR);
  stead_desk_jump (f->desk, STEAD_TARGET_LOT, 12);
  g_assert_cmpint (f->target, ==, STEAD_TARGET_LOT);
  g_assert_cmpint (f->id, ==, 12);
  /* Another farm has other products. */
  stead_desk_set_store (f->desk, NULL);
  g_assert_cmpint (stead_desk_get_product (f->desk), ==, 0);
}

int
main (int    argc,
      char **argv)
{
  fixture_init (&argc, &argv);
#define ADD(name, test) g_test_add ("/app/desk/" name, Fixture, NULL, set_up, test, tear_down)
  ADD ("act", test_act);
  ADD ("failure", test_failure);
  ADD ("nothing", test_nothing);
  ADD ("undo", test_undo);
  ADD ("nothing-to-undo", test_nothing_to_undo);
  ADD ("choice", test_choice);
#undef ADD
  return g_test_run ();
}
