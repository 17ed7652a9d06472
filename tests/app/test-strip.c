/* test-strip.c - the row of posts: what each is called, and who chooses. */
#include "config.h"

#include "app-fixture.h"
#include "app/stead-said.h"
#include "app/stead-strip.h"

static SteadStrip *
make (void)
{
  SteadStrip *strip = STEAD_STRIP (g_object_ref_sink (stead_strip_new ()));

  stead_strip_add (strip, "today", "Today");
  stead_strip_add (strip, "raise", "Raise");
  stead_strip_add (strip, "keep", "Keep");
  return strip;
}

static GtkAccessible *
post (SteadStrip *strip,
      guint       n)
{
  return GTK_ACCESSIBLE (fixture_find (GTK_WIDGET (strip), GTK_TYPE_TOGGLE_BUTTON, n));
}

static void
test_names (void)
{
  SteadStrip *strip = make ();
  GtkWidget *symbol = fixture_find (GTK_WIDGET (post (strip, 0)), GTK_TYPE_IMAGE, 0);

  gtk_test_accessible_assert_property (post (strip, 0), GTK_ACCESSIBLE_PROPERTY_LABEL, "Today");
  stead_strip_set_figure (strip, "today", "3 due, 1 warning", TRUE);
  gtk_test_accessible_assert_property (post (strip, 0), GTK_ACCESSIBLE_PROPERTY_LABEL, "Today, 3 due, 1 warning");
  g_assert_true (gtk_widget_get_visible (symbol));     /* not by colour alone */
  stead_strip_set_figure (strip, "today", "3 due", FALSE);
  gtk_test_accessible_assert_property (post (strip, 0), GTK_ACCESSIBLE_PROPERTY_LABEL, "Today, 3 due");
  g_assert_false (gtk_widget_get_visible (symbol));
  stead_strip_set_figure (strip, "nowhere", "1", FALSE);
  gtk_test_accessible_assert_property (post (strip, 1), GTK_ACCESSIBLE_PROPERTY_LABEL, "Raise");
  g_assert_finalize_object (strip);
}

static void
chosen_cb (GString    *log,
           const char *name)
{
  g_string_append_printf (log, "%s ", name);
}

static void
test_choosing (void)
{
  SteadStrip *strip = make ();
  g_autoptr(GString) log = g_string_new (NULL);

  g_signal_connect_swapped (strip, "chosen", G_CALLBACK (chosen_cb), log);
  stead_strip_select (strip, "raise");
  g_assert_cmpstr (stead_strip_get_selected (strip), ==, "raise");
  g_assert_cmpstr (log->str, ==, "");                   /* the code chose */
  gtk_toggle_button_set_active (GTK_TOGGLE_BUTTON (post (strip, 2)), TRUE);
  g_assert_cmpstr (log->str, ==, "keep ");              /* the person did */
  g_assert_cmpstr (stead_strip_get_selected (strip), ==, "keep");
  gtk_test_accessible_assert_state (post (strip, 2), GTK_ACCESSIBLE_STATE_PRESSED, GTK_ACCESSIBLE_TRISTATE_TRUE);
  gtk_test_accessible_assert_state (post (strip, 1), GTK_ACCESSIBLE_STATE_PRESSED, GTK_ACCESSIBLE_TRISTATE_FALSE);
  g_assert_cmpstr (stead_strip_get_nth (strip, 1), ==, "raise");
  g_assert_null (stead_strip_get_nth (strip, 3));
  g_assert_finalize_object (strip);
}

/* Nine posts leave room for the tools at 1024 px, and are even. */
static void
test_room (void)
{
  SteadStrip *strip = make ();
  int least, wanted;

  for (int i = 0; i < 6; i++)
    {
      g_autofree char *name = g_strdup_printf ("place%d", i);

      stead_strip_add (strip, name, "Make");
      stead_strip_set_figure (strip, name, "all readings in, none missing", FALSE);
    }
  gtk_widget_measure (GTK_WIDGET (strip), GTK_ORIENTATION_HORIZONTAL, -1, &least, &wanted, NULL, NULL);
  g_assert_cmpint (least, <=, 720);
  g_assert_cmpint (wanted, >=, 9 * 137);
  g_assert_finalize_object (strip);
}

/* The first of a post's figures that fits is the one to read. */
static void
test_brief (void)
{
  SteadStrip *strip = make ();
  GtkWidget *first = GTK_WIDGET (post (strip, 0));
  GtkWidget *whole, *brief;
  GtkWindow *window;

  stead_strip_set_figure (strip, "today", "3 things due, 11 warnings", TRUE);
  stead_strip_set_brief (strip, "today", "3 due");
  whole = fixture_find (first, GTK_TYPE_LABEL, 1);
  brief = fixture_find (first, GTK_TYPE_LABEL, 2);
  g_assert_cmpstr (gtk_label_get_text (GTK_LABEL (brief)), ==, "3 due");
  window = fixture_show (GTK_WIDGET (strip));
  gtk_widget_size_allocate (GTK_WIDGET (strip), &(GtkAllocation) { 0, 0, 240, 48 }, -1);
  g_assert_false (gtk_widget_get_child_visible (whole));
  g_assert_true (gtk_widget_get_child_visible (brief));
  gtk_widget_size_allocate (GTK_WIDGET (strip), &(GtkAllocation) { 0, 0, 900, 48 }, -1);
  g_assert_true (gtk_widget_get_child_visible (whole));
  g_assert_false (gtk_widget_get_child_visible (brief));
  gtk_test_accessible_assert_property (GTK_ACCESSIBLE (first), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                       "Today, 3 things due, 11 warnings");
  fixture_close (window);
  g_object_unref (strip);
}

static int
height_at (SteadStrip *strip,
           int         width)
{
  int height;

  gtk_widget_measure (GTK_WIDGET (strip), GTK_ORIENTATION_VERTICAL, width, &height, NULL, NULL, NULL);
  return height;
}

/* Where one row would cut off a verb, the posts stand in two. */
static void
test_two_rows (void)
{
  SteadStrip *strip = make ();
  int one, least;

  for (int i = 0; i < 3; i++)
    {
      g_autofree char *name = g_strdup_printf ("long %d", i);

      stead_strip_add (strip, name, "A verb that is much too long for a narrow post");
    }
  one = height_at (strip, 4000);
  g_assert_cmpint (one, >, 0);
  gtk_widget_measure (GTK_WIDGET (strip), GTK_ORIENTATION_HORIZONTAL, -1, &least, NULL, NULL, NULL);
  g_assert_cmpint (height_at (strip, MAX (960, least)), ==, 2 * one);
  g_assert_finalize_object (strip);
}

/* Where only one verb is too long for posts of one width, it has what it needs. */
static void
test_own_width (void)
{
  SteadStrip *strip = make ();
  GtkWindow *window;
  GtkWidget *verb;
  int least, wanted;

  stead_strip_add (strip, "long", "A verb that is much too long for a narrow post");
  g_assert_cmpint (height_at (strip, 700), ==, height_at (strip, 4000));
  window = fixture_show (GTK_WIDGET (strip));
  gtk_widget_size_allocate (GTK_WIDGET (strip), &(GtkAllocation) { 0, 0, 700, 48 }, -1);
  verb = fixture_find (GTK_WIDGET (post (strip, 3)), GTK_TYPE_LABEL, 0);
  gtk_widget_measure (verb, GTK_ORIENTATION_HORIZONTAL, -1, &least, &wanted, NULL, NULL);
  g_assert_cmpint (wanted, >, 700 / 4);
  g_assert_cmpint (gtk_widget_get_width (verb), >=, wanted);
  fixture_close (window);
  g_object_unref (strip);
}

/* In two rows one long verb widens its own column, not each of them. */
static void
test_own_column (void)
{
  SteadStrip *strip = make ();
  int before, after, long_verb;

  for (int i = 0; i < 6; i++)
    {
      g_autofree char *name = g_strdup_printf ("verb %d", i);

      stead_strip_add (strip, name, "A verb too long");
    }
  gtk_widget_measure (GTK_WIDGET (strip), GTK_ORIENTATION_HORIZONTAL, -1, &before, NULL, NULL, NULL);
  stead_strip_add (strip, "long", "A verb that is much too long for a narrow post");
  gtk_widget_measure (fixture_find (GTK_WIDGET (post (strip, 9)), GTK_TYPE_LABEL, 0), GTK_ORIENTATION_HORIZONTAL, -1, NULL,
                      &long_verb, NULL, NULL);
  gtk_widget_measure (GTK_WIDGET (strip), GTK_ORIENTATION_HORIZONTAL, -1, &after, NULL, NULL, NULL);
  g_assert_cmpint (height_at (strip, after), ==, 2 * height_at (strip, 9000));
  g_assert_cmpint (after, >, before);
  g_assert_cmpint (after, <, before + long_verb + 40);
  g_assert_finalize_object (strip);
}

static void
test_said (void)
{
  GtkWidget *overlay = gtk_overlay_new ();
  GtkWidget *entry = gtk_entry_new ();
  GtkWidget *said = stead_said_new ();
  GtkWindow *window;

  gtk_overlay_set_child (GTK_OVERLAY (overlay), entry);
  gtk_overlay_add_overlay (GTK_OVERLAY (overlay), said);
  window = fixture_show (overlay);
  gtk_widget_grab_focus (entry);
  g_assert_false (gtk_widget_get_visible (said));
  stead_said_show (STEAD_SAID (said), "Saved: 22 eggs on March 3.", TRUE);
  fixture_settle ();
  g_assert_true (gtk_widget_get_visible (said));
  gtk_test_accessible_assert_property (GTK_ACCESSIBLE (said), GTK_ACCESSIBLE_PROPERTY_LABEL, "Saved: 22 eggs on March 3.");
  g_assert_true (gtk_widget_is_ancestor (gtk_window_get_focus (window), entry));   /* takes no focus */
  g_assert_true (gtk_widget_get_visible (fixture_button (said, "Undo")));
  stead_said_show (STEAD_SAID (said), "Undone: 22 eggs on March 3.", FALSE);
  g_assert_false (gtk_widget_get_visible (fixture_button (said, "Undo")));
  stead_said_hide (STEAD_SAID (said));
  g_assert_false (gtk_widget_get_visible (said));
  fixture_close (window);
}

int
main (int    argc,
      char **argv)
{
  fixture_init (&argc, &argv);
  g_test_add_func ("/app/strip/names", test_names);
  g_test_add_func ("/app/strip/choosing", test_choosing);
  g_test_add_func ("/app/strip/room", test_room);
  g_test_add_func ("/app/strip/brief", test_brief);
  g_test_add_func ("/app/strip/two-rows", test_two_rows);
  g_test_add_func ("/app/strip/own-column", test_own_column);
  g_test_add_func ("/app/strip/own-width", test_own_width);
  g_test_add_func ("/app/strip/said", test_said);
  return g_test_run ();
}
