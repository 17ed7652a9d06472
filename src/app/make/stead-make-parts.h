/* stead-make-parts.h - small widgets that the parts of Make share. */
#pragma once

#include <gtk/gtk.h>

#include "core/stead-calendar.h"
#include "core/stead-quantity.h"

G_BEGIN_DECLS

/* A text that wraps, from the left; @style: (nullable): a class. */
GtkWidget *stead_make_label  (const char *text, const char *style);
/* The same for a column of figures, from the right. */
GtkWidget *stead_make_figure (const char *text, const char *style);
/* Shows @text, or hides the label if there is none. */
void       stead_make_say    (GtkLabel *label, const char *text, gboolean markup);
/* Takes all children of a box, a grid or a list away. */
void       stead_make_clear  (GtkWidget *box);
/* A link-like button; @name: what a screen reader says; the signal "clicked" gives @data first. */
GtkWidget *stead_make_link   (const char *label, const char *name, GCallback clicked, gpointer data);
/* A row of a list with an id: a title over a softer line. */
GtkWidget *stead_make_row    (gint64 id, const char *title, const char *detail);
gint64     stead_make_row_id (GtkWidget *row);

/* What people type for @dimension; %FALSE if it is not an amount yet. */
gboolean   stead_make_peek   (const char *text, const SteadUnit *unit, double *out_base);

/* "14:05", local time, of seconds since 1970. */
char      *stead_make_clock      (gint64 at) G_GNUC_WARN_UNUSED_RESULT;
/* "14:05", "2:05 pm", "2pm" of @day as seconds since 1970; a message for the person otherwise. */
gboolean   stead_make_read_clock (const char *text, SteadDay day, gint64 *out_at, GError **error);

G_END_DECLS
