/* bare-window.c - the least that GTK can show: what the program's start is measured against. */
#include <gtk/gtk.h>

static void
activate_cb (GtkApplication *application,
             gpointer        data)
{
  GtkWidget *window = gtk_application_window_new (application);

  gtk_window_set_default_size (GTK_WINDOW (window), 1366, 768);
  gtk_window_set_child (GTK_WINDOW (window), gtk_label_new ("bare"));
  gtk_window_present (GTK_WINDOW (window));
}

int
main (int    argc,
      char **argv)
{
  g_autoptr(GtkApplication) application = gtk_application_new ("farm.steading.Bare", G_APPLICATION_NON_UNIQUE);

  g_signal_connect (application, "activate", G_CALLBACK (activate_cb), NULL);
  return g_application_run (G_APPLICATION (application), argc, argv);
}
