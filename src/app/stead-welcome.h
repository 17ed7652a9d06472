/* stead-welcome.h - what a window without a farm shows: new, open, or look around. */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define STEAD_TYPE_WELCOME (stead_welcome_get_type ())
G_DECLARE_FINAL_TYPE (SteadWelcome, stead_welcome, STEAD, WELCOME, GtkWidget)

/* Its buttons are the window's actions: win.new-farm, win.open, win.demo, win.open-path. */
GtkWidget *stead_welcome_new  (void);
/* The demo farm is being made: its button waits. */
void       stead_welcome_busy (SteadWelcome *self, gboolean busy);

G_END_DECLS
