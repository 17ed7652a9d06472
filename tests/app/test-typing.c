/* test-typing.c - Ctrl+Z in a field: typing of its own first, then the farm's last step. */
#include "config.h"

#include "app-fixture.h"
#include "app/stead-window-private.h"
#include "app/today/stead-today-page.h"
#include "store/stead-farm-repo.h"

typedef struct
{
  SteadStore  *store;
  SteadWindow *window;
  GtkEditable *entry;    /* what is typed in */
  GtkWidget   *other;    /* another field */
} Fixture;

static void
set_up (Fixture       *f,
        gconstpointer  data)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  GtkWidget *places;

  f->store = fixture_farm ();
  f->window = STEAD_WINDOW (stead_window_new (NULL));
  gtk_window_present (GTK_WINDOW (f->window));
  stead_window_take (f->window, f->store);
  f->entry = GTK_EDITABLE (gtk_entry_new ());
  f->other = gtk_entry_new ();
  gtk_box_append (GTK_BOX (box), GTK_WIDGET (f->entry));
  gtk_box_append (GTK_BOX (box), f->other);
  places = gtk_widget_get_parent (fixture_find (GTK_WIDGET (f->window), STEAD_TYPE_TODAY_PAGE, 0));
  gtk_stack_add_named (GTK_STACK (places), box, "fields");
  gtk_stack_set_visible_child_name (GTK_STACK (places), "fields");
  fixture_settle ();
}

static void
tear_down (Fixture       *f,
           gconstpointer  data)
{
  g_object_add_weak_pointer (G_OBJECT (f->window), (gpointer *) &f->window);
  gtk_window_destroy (GTK_WINDOW (f->window));
  fixture_settle ();
  g_assert_null (f->window);
  g_assert_finalize_object (f->store);
}

static gboolean
rename_farm (SteadStore  *store,
             gpointer     name,
             GError     **error)
{
  g_autoptr(SteadFarm) farm = stead_farm_repo_get (store, error);

  g_free (farm->name);
  farm->name = g_strdup (name);
  return stead_farm_repo_set (store, farm, error);
}

static void
step (Fixture    *f,
      const char *name)
{
  g_autoptr(GError) error = NULL;

  g_assert_true (stead_desk_act (stead_window_get_desk (f->window), name, rename_farm, (gpointer) name, &error));
  g_assert_no_error (error);
}

/* As a key does: into the field that has the focus. */
static void
type (Fixture    *f,
      const char *text)
{
  gtk_widget_grab_focus (GTK_WIDGET (f->entry));
  gtk_editable_set_position (f->entry, -1);
  g_signal_emit_by_name (gtk_window_get_focus (GTK_WINDOW (f->window)), "insert-at-cursor", text);
}

static void
press (Fixture    *f,
       const char *action)
{
  g_assert_true (gtk_widget_activate_action (GTK_WIDGET (f->window), action, NULL));
  fixture_settle ();
}

#define assert_is(f, text, farm) G_STMT_START { \
    g_assert_cmpstr (gtk_editable_get_text ((f)->entry), ==, text); \
    g_assert_cmpstr (gtk_window_get_title (GTK_WINDOW ((f)->window)), ==, farm); \
  } G_STMT_END

static void
test_typing_first (Fixture       *f,
                   gconstpointer  data)
{
  step (f, "Hill farm");
  fixture_settle ();
  type (f, "22 eg");
  press (f, "win.undo-here");
  assert_is (f, "", "Hill farm");
  press (f, "win.redo-here");
  assert_is (f, "22 eg", "Hill farm");
  press (f, "win.undo-here");
  press (f, "win.undo-here");
  assert_is (f, "", "Test farm");
  press (f, "win.redo-here");
  assert_is (f, "", "Hill farm");
}

/* What a step took and emptied does not come back into the field in its place. */
static void
test_a_step_takes_its_typing (Fixture       *f,
                              gconstpointer  data)
{
  type (f, "21 eggs");
  step (f, "Hill farm");
  gtk_editable_set_text (f->entry, "");
  fixture_settle ();
  press (f, "win.undo-here");
  assert_is (f, "", "Test farm");
  type (f, "9");
  press (f, "win.undo-here");
  assert_is (f, "", "Test farm");
}

/* What the program put into the field is no typing; what a person left there is. */
static void
test_where_typing_begins (Fixture       *f,
                          gconstpointer  data)
{
  step (f, "Hill farm");
  gtk_editable_set_text (f->entry, "start");
  fixture_settle ();
  type (f, "ed");
  gtk_widget_grab_focus (f->other);
  gtk_widget_grab_focus (GTK_WIDGET (f->entry));
  press (f, "win.undo-here");
  assert_is (f, "start", "Hill farm");
  press (f, "win.undo-here");
  assert_is (f, "start", "Test farm");
}

/* The buttons name the farm's step, and mean it. */
static void
test_buttons_mean_the_farm (Fixture       *f,
                            gconstpointer  data)
{
  step (f, "Hill farm");
  fixture_settle ();
  type (f, "22 eg");
  press (f, "win.undo");
  assert_is (f, "22 eg", "Test farm");
}

int
main (int    argc,
      char **argv)
{
  fixture_init (&argc, &argv);
#define ADD(name, test) g_test_add ("/app/typing/" name, Fixture, NULL, set_up, test, tear_down)
  ADD ("typing-first", test_typing_first);
  ADD ("a-step-takes-its-typing", test_a_step_takes_its_typing);
  ADD ("where-typing-begins", test_where_typing_begins);
  ADD ("buttons-mean-the-farm", test_buttons_mean_the_farm);
  return g_test_run ();
}
