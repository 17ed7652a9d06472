/* stead-batch-panel.h - plan and review of any batch: what was meant beside what came,
 * cost so far and to finish, harvests with their lots, treatments, notes with pictures,
 * and, once it is over, why it came out as it did.
 */
#pragma once

#include <gtk/gtk.h>

#include "app/stead-desk.h"

G_BEGIN_DECLS

#define STEAD_TYPE_BATCH_PANEL (stead_batch_panel_get_type ())
G_DECLARE_FINAL_TYPE (SteadBatchPanel, stead_batch_panel, STEAD, BATCH_PANEL, GtkWidget)

GtkWidget *stead_batch_panel_new     (SteadDesk *desk);
/* For a panel that a .ui file makes. */
void       stead_batch_panel_set_desk (SteadBatchPanel *self, SteadDesk *desk);
/* Shows another batch, or the same anew; nothing is read while it cannot be seen. */
void       stead_batch_panel_show    (SteadBatchPanel *self, gint64 batch_id);
void       stead_batch_panel_refresh (SteadBatchPanel *self);

G_END_DECLS
