/* stead-fund-rows.h - lists of Fund: a title over a softer line, and what can be done with it. */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* A row at the end of @box.  @detail: (nullable) */
GtkWidget *stead_fund_row        (GtkBox *box, gint64 id, const char *title, const char *detail);
/* A button on it; a screen reader says its title, too.  @clicked: (data, button) */
void       stead_fund_row_action (GtkWidget *row, const char *label, GCallback clicked, gpointer data);
/* The id of the row that @button stands on. */
gint64     stead_fund_row_id     (GtkWidget *button);
/* Instead of rows: what belongs here. */
void       stead_fund_row_none   (GtkBox *box, const char *text);

G_END_DECLS
