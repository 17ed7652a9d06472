/* test-line-entry.c - the one-line entry: read back, then recorded as it was read. */
#include "config.h"

#include "app-fixture.h"
#include "app/today/stead-line-entry.h"
#include "store/stead-flock-repo.h"

typedef struct
{
  SteadDesk  *desk;
  SteadStore *store;
  GtkWidget  *line;
  GtkWindow  *window;
  char       *said;
} Fixture;

static void
said_cb (Fixture    *f,
         const char *text)
{
  g_free (f->said);
  f->said = g_strdup (text);
}

static void
set_up (Fixture       *f,
        gconstpointer  data)
{
  f->desk = stead_desk_new ();
  f->store = fixture_farm ();
  stead_desk_set_store (f->desk, f->store);
  g_signal_connect_swapped (f->desk, "said", G_CALLBACK (said_cb), f);
  f->line = stead_line_entry_new ();
  stead_line_entry_set_desk (STEAD_LINE_ENTRY (f->line), f->desk);
  f->window = fixture_show (f->line);
}

static void
tear_down (Fixture       *f,
           gconstpointer  data)
{
  fixture_close (f->window);
  g_assert_finalize_object (f->desk);
  g_assert_finalize_object (f->store);
  g_free (f->said);
}

static GtkEditable *
entry_of (Fixture *f)
{
  return GTK_EDITABLE (fixture_find (f->line, GTK_TYPE_ENTRY, 0));
}

static gint64
entries (Fixture *f)
{
  return stead_flock_repo_count_entries (f->store, 1, NULL);
}

static void
test_record (Fixture       *f,
             gconstpointer  data)
{
  GtkWidget *record = fixture_button (f->line, "Record");
  gint64 before = entries (f);

  g_assert_false (gtk_widget_get_sensitive (record));
  gtk_editable_set_text (entry_of (f), "22 eggs, 1 cracked");
  fixture_settle ();
  g_assert_true (gtk_widget_get_sensitive (record));
  g_signal_emit_by_name (entry_of (f), "activate");
  fixture_settle ();
  g_assert_cmpint (entries (f), ==, before + 1);
  g_assert_cmpstr (gtk_editable_get_text (entry_of (f)), ==, "");
  g_assert_nonnull (f->said);
  g_assert_true (g_str_has_prefix (f->said, "Saved: 22 eggs"));
}

static void
test_not_understood (Fixture       *f,
                     gconstpointer  data)
{
  GtkWidget *record = fixture_button (f->line, "Record");
  gint64 before = entries (f);

  gtk_editable_set_text (entry_of (f), "22 eggz");
  fixture_settle ();
  g_assert_false (gtk_widget_get_sensitive (record));
  g_signal_emit_by_name (entry_of (f), "activate");
  g_assert_cmpint (entries (f), ==, before);
  g_assert_cmpstr (gtk_editable_get_text (entry_of (f)), ==, "22 eggz");
  g_assert_null (f->said);
}

/* What the farm refuses stays in the entry, with the reason. */
static void
test_refused (Fixture       *f,
              gconstpointer  data)
{
  gint64 before = entries (f);

  gtk_editable_set_text (entry_of (f), "900 eggs");
  fixture_settle ();
  g_signal_emit_by_name (entry_of (f), "activate");
  g_assert_cmpint (entries (f), ==, before);
  g_assert_cmpstr (gtk_editable_get_text (entry_of (f)), ==, "900 eggs");
  g_assert_true (gtk_test_accessible_has_property (GTK_ACCESSIBLE (entry_of (f)), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION));
}

int
main (int    argc,
      char **argv)
{
  fixture_init (&argc, &argv);
#define ADD(name, test) g_test_add ("/app/line-entry/" name, Fixture, NULL, set_up, test, tear_down)
  ADD ("record", test_record);
  ADD ("not-understood", test_not_understood);
  ADD ("refused", test_refused);
#undef ADD
  return g_test_run ();
}
