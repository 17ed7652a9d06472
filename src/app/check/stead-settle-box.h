/* stead-settle-box.h - something that keeps food from being sold, and how it was settled. */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define STEAD_TYPE_SETTLE_BOX (stead_settle_box_get_type ())
G_DECLARE_FINAL_TYPE (SteadSettleBox, stead_settle_box, STEAD, SETTLE_BOX, GtkWidget)

/* Signal: "settled" (int way): a button was pressed; ask stead_settle_box_get_text(). */

GtkWidget  *stead_settle_box_new (gint64 id);
gint64      stead_settle_box_get_id (SteadSettleBox *self);
/* @head: (nullable) small; @text: large; @way: (nullable); @source: (nullable). */
void        stead_settle_box_say (SteadSettleBox *self, const char *head, const char *text, const char *way,
                                  const char *source);
/* @label: of the field, one of its kind in the window; %NULL takes the field away. */
void        stead_settle_box_ask (SteadSettleBox *self, const char *label);
/* Ways count from 0, in the order of the calls. */
void        stead_settle_box_add (SteadSettleBox *self, const char *label, const char *name);
const char *stead_settle_box_get_text (SteadSettleBox *self);
void        stead_settle_box_complain (SteadSettleBox *self, const char *message);

G_END_DECLS
