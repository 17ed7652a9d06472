/* stead-backups.h - the dated copies of a farm: look at one, or go back to it. */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define STEAD_TYPE_BACKUPS (stead_backups_get_type ())
G_DECLARE_FINAL_TYPE (SteadBackups, stead_backups, STEAD, BACKUPS, GtkWindow)

/* Signals: "look" (char *backup), "restore" (char *backup); the window is closed before. */

GtkWidget *stead_backups_new (GtkWindow  *parent,
                              const char *path);

G_END_DECLS
