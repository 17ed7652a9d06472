/* app-fixture.h - what the tests of the window's parts share. */
#pragma once

#include <gtk/gtk.h>

#include "store/stead-store.h"

G_BEGIN_DECLS

/* Instead of gtk_test_init(): the screen, the resources, our style sheets. */
void        fixture_init   (int *argc, char ***argv);
/* (transfer full): a farm in memory on 3 March 2026: thirty "Brown hens" with ten days of
 * 24 eggs, feed and cartons on a receipt, and "Eggs" by the dozen at $4.50 */
SteadStore *fixture_farm   (void) G_GNUC_WARN_UNUSED_RESULT;
/* Shows @child in a window and waits until it can be seen. (transfer full) */
GtkWindow  *fixture_show   (GtkWidget *child) G_GNUC_WARN_UNUSED_RESULT;
/* Closes it and lets everything that was waiting run. */
void        fixture_close  (GtkWindow *window);
/* Runs what waits in the main loop. */
void        fixture_settle (void);
/* Runs the main loop until the window of @widget has painted a frame; waits for no other. */
void        fixture_wait_frame (GtkWidget *widget);
/* The nth widget of @type below @widget, depth first; NULL if there is none. */
GtkWidget  *fixture_find   (GtkWidget *widget, GType type, guint n);
/* The button with this label below @widget, which must be there. */
GtkWidget  *fixture_button (GtkWidget *widget, const char *label);

G_END_DECLS
