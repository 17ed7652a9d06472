/* stead-view.h - one of the views of Price: a sentence over two columns, the left one to
 * turn things in, the right one to look at.
 *
 * A base for the views; each reads the farm when it is refreshed and can be seen.
 */
#pragma once

#include <gtk/gtk.h>

#include "app/price/stead-handle.h"
#include "app/price/stead-plot.h"
#include "app/stead-desk.h"

G_BEGIN_DECLS

#define STEAD_TYPE_VIEW (stead_view_get_type ())
G_DECLARE_DERIVABLE_TYPE (SteadView, stead_view, STEAD, VIEW, GtkWidget)

struct _SteadViewClass
{
  GtkWidgetClass parent_class;

  /* Reads the farm and shows it; @product_id: the chosen one, 0: none. */
  void (*refresh) (SteadView *self, SteadStore *store, gint64 product_id);
};

void       stead_view_refresh    (SteadView *self, SteadDesk *desk);
SteadDesk *stead_view_get_desk   (SteadView *self);   /* (nullable) until the first refresh */
/* The sentence, and what comes under it; markup, (nullable). */
void       stead_view_say        (SteadView *self, const char *sentence, const char *advice);
/* @names: (element-type utf8): products that are left out, since something of them is missing; each
 * is a button that leads to it. */
void       stead_view_leave_out  (SteadView *self, GPtrArray *names);
/* Instead of everything: what is missing, in words. */
void       stead_view_miss       (SteadView *self, const char *text);
void       stead_view_add_left   (SteadView *self, GtkWidget *widget);
void       stead_view_add_right  (SteadView *self, GtkWidget *widget);
/* A button in the head of @plot that shows a document; @of: (nullable): whose, (transfer none)
 * (nullable): of nothing. */
void       stead_view_add_page   (SteadView *self, SteadPlot *plot, const char *paper, const char *(*of) (SteadView *self));
/* A heading in a column. */
GtkWidget *stead_view_heading    (const char *text);
/* A soft line that wraps. */
GtkWidget *stead_view_note       (const char *text);
void       stead_view_clear      (GtkWidget *box);
/* A small table that is always seen: a card under @heading; what it is filled in by. */
GtkWidget *stead_view_grid       (const char *heading, GtkWidget **out_grid);
void       stead_view_grid_clear (GtkWidget *grid);
/* @head: of a column or a row; @here: what the view is about now. */
void       stead_view_grid_put   (GtkWidget *grid, int column, int row, const char *text, gboolean head, gboolean here);

G_END_DECLS
