/* test-ui.c - what every part of the window needs of GTK 4.8, mended in one place. */
#include "config.h"

#include "app-fixture.h"
#include "app/stead-ui.h"

/* Tab goes past a closed expander without a word from GTK, and into an open one. */
static void
test_expander (void)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);
  GtkWidget *first = gtk_button_new_with_label ("first");
  GtkWidget *expander = gtk_expander_new ("Why?");
  GtkWidget *inside = gtk_button_new_with_label ("inside");
  GtkWidget *last = gtk_button_new_with_label ("last");
  GtkWindow *window;

  stead_ui_expander_set_child (expander, inside);
  gtk_box_append (GTK_BOX (box), first);
  gtk_box_append (GTK_BOX (box), expander);
  gtk_box_append (GTK_BOX (box), last);
  window = fixture_show (box);
  gtk_widget_grab_focus (first);
  gtk_widget_child_focus (box, GTK_DIR_TAB_FORWARD);
  g_assert_true (gtk_window_get_focus (window) == expander);
  gtk_widget_child_focus (box, GTK_DIR_TAB_FORWARD);
  g_assert_true (gtk_window_get_focus (window) == last);

  gtk_expander_set_expanded (GTK_EXPANDER (expander), TRUE);
  gtk_widget_grab_focus (expander);
  gtk_widget_child_focus (box, GTK_DIR_TAB_FORWARD);
  g_assert_true (gtk_window_get_focus (window) == inside);
  fixture_close (window);
}

static void
test_drop_down (void)
{
  GtkWidget *box = g_object_ref_sink (gtk_box_new (GTK_ORIENTATION_VERTICAL, 6));
  GtkWidget *label = gtk_label_new_with_mnemonic ("_Role");
  GtkWidget *drop_down = gtk_drop_down_new_from_strings ((const char *[]) { "Student", "Advisor", NULL });

  gtk_label_set_mnemonic_widget (GTK_LABEL (label), drop_down);
  gtk_box_append (GTK_BOX (box), label);
  gtk_box_append (GTK_BOX (box), drop_down);
  stead_ui_name_drop_downs (box);
  gtk_test_accessible_assert_property (GTK_ACCESSIBLE (gtk_widget_get_first_child (drop_down)),
                                       GTK_ACCESSIBLE_PROPERTY_LABEL, "Role");
  g_assert_finalize_object (box);
}

static void
test_icon_button (void)
{
  GtkWidget *button = g_object_ref_sink (stead_ui_icon_button ("stead-close-symbolic", "Close this message"));

  gtk_test_accessible_assert_property (GTK_ACCESSIBLE (button), GTK_ACCESSIBLE_PROPERTY_LABEL, "Close this message");
  g_assert_cmpstr (gtk_widget_get_tooltip_text (button), ==, "Close this message");
  g_assert_finalize_object (button);
}

int
main (int    argc,
      char **argv)
{
  fixture_init (&argc, &argv);
  g_test_add_func ("/app/ui/expander", test_expander);
  g_test_add_func ("/app/ui/drop-down", test_drop_down);
  g_test_add_func ("/app/ui/icon-button", test_icon_button);
  return g_test_run ();
}
