/* stead-sell-parts.h - small widgets that the parts of Sell share. */
#pragma once

#include <gtk/gtk.h>

#include "app/keep/stead-pick.h"
#include "app/stead-desk.h"
#include "app/stead-field.h"
#include "store/stead-sale-repo.h"

G_BEGIN_DECLS

/* A white card with a question over it; what is shown goes into the returned box.
 * @parent: a box */
GtkWidget *stead_sell_card   (GtkWidget *parent, const char *heading);
/* Cards side by side where there is room; @parent: a box */
GtkWidget *stead_sell_columns (GtkWidget *parent);
/* A row of buttons that goes on in a next line where it must. */
GtkWidget *stead_sell_row    (GtkWidget *parent);
GtkWidget *stead_sell_button (GtkWidget *row, const char *label, GCallback clicked, gpointer data);
/* A labelled entry; appended to @parent, a box, if there is one. */
SteadField *stead_sell_field (GtkWidget *parent, const char *label, SteadFieldKind kind);
SteadPick  *stead_sell_pick  (GtkWidget *parent, const char *label);
/* One row of a grid of figures: names left, figures right; NULL ends. */
void       stead_sell_figures (GtkWidget *grid, int row, const char *style, ...) G_GNUC_NULL_TERMINATED;
/* Out of which lots, side by side; @texts: (element-type utf8), see stead_sale_lots_texts(). */
GtkWidget *stead_sell_lots   (const GPtrArray *texts);
/* Fields for bills and coins: (transfer full) (element-type SteadField): highest first, attached to @grid. */
GPtrArray *stead_sell_faces  (GtkWidget *grid, const char *currency, GCallback changed, gpointer data);
/* What they say, as far as it can be read; (transfer full) of SteadCashPiece */
GArray    *stead_sell_read_faces (GPtrArray *fields, const char *currency);
void       stead_sell_show_faces (GPtrArray *fields, const char *currency, const GArray *pieces);
/* Seconds since 1970. */
gint64     stead_sell_now    (void);
/* An amount of units as it is typed, in the reader's own writing: "2.5"; %FALSE with the message at the field. */
gboolean   stead_sell_read_units (SteadField *field, double if_empty, double *out);

/* Reads what is typed so far, quietly; FALSE: it is no number of 0 or more. */
gboolean     stead_sell_peek_units (SteadField *field, double *out);

G_END_DECLS
