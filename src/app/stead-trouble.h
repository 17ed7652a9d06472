/* stead-trouble.h - a farm file that cannot be opened: what was found, what is
 * safe, and what to do.
 */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define STEAD_TYPE_TROUBLE (stead_trouble_get_type ())
G_DECLARE_FINAL_TYPE (SteadTrouble, stead_trouble, STEAD, TROUBLE, GtkWidget)

/* @error: of %STEAD_STORE_ERROR, or any.  Its buttons are the window's actions. */
GtkWidget *stead_trouble_new (const char   *path,
                              const GError *error);

G_END_DECLS
