/* stead-files.h - the one place that asks for files and shows messages.
 *
 * Wraps what newer GTK deprecates, so that no other file needs to know.
 */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* @path is NULL when the person gave up. */
typedef void (*SteadFileChosen) (const char *path, gpointer data);

/* @pattern: "*.csv"; @pattern_name: "Tables (CSV)"; both (nullable) */
void stead_files_open (GtkWidget *parent, const char *title, const char *pattern_name, const char *pattern,
                       SteadFileChosen chosen, gpointer data);
void stead_files_save (GtkWidget *parent, const char *title, const char *name, SteadFileChosen chosen, gpointer data);
/* A message as the answer to a press; never stacked. */
void stead_files_tell (GtkWidget *parent, const char *text, const char *detail);

G_END_DECLS
