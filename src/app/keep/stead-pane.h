/* stead-pane.h - one of Keep's lists: a sentence, a table, and its buttons. */
#pragma once

#include <gtk/gtk.h>

#include "app/stead-desk.h"
#include "app/stead-table.h"

G_BEGIN_DECLS

#define STEAD_TYPE_PANE (stead_pane_get_type ())
G_DECLARE_DERIVABLE_TYPE (SteadPane, stead_pane, STEAD, PANE, GtkWidget)

struct _SteadPaneClass
{
  GtkWidgetClass parent_class;

  /* Reads the farm anew and fills the table. */
  void (*refresh) (SteadPane *self);
  /* (nullable): asked to show one thing; refreshed after this. */
  void (*show)    (SteadPane *self, SteadTarget target, gint64 id);
};

void        stead_pane_refresh    (SteadPane *self, SteadDesk *desk);
void        stead_pane_show       (SteadPane *self, SteadTarget target, gint64 id);
SteadDesk  *stead_pane_get_desk   (SteadPane *self);
SteadStore *stead_pane_get_store  (SteadPane *self);

/* Something of its own between the sentence and the table's card; in the order of the calls. */
void        stead_pane_add_head   (SteadPane *self, GtkWidget *head);
/* What stands in the card in place of a table. */
void        stead_pane_add_body   (SteadPane *self, GtkWidget *body);
/* The table is named for screen readers here, once, in the subclass's init. */
SteadTable *stead_pane_add_table  (SteadPane *self, const char *name);
/* A button under the table; the first one is the one that is pressed most. */
GtkWidget  *stead_pane_add_button (SteadPane *self, const char *label, GCallback clicked);
/* @markup: the sentence above; @error (nullable) is shown instead. */
void        stead_pane_say        (SteadPane *self, const char *markup, const GError *error);
/* The fact of the chosen row, or NULL after saying "choose one first". */
gpointer    stead_pane_get_chosen (SteadPane *self);

G_END_DECLS
