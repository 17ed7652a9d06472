/* stead-part-dialog.h - one ingredient of a kitchen batch: another amount, one more, one less. */
#pragma once

#include "app/stead-dialog.h"
#include "store/stead-kitchen-repo.h"

G_BEGIN_DECLS

#define STEAD_TYPE_PART_DIALOG (stead_part_dialog_get_type ())
G_DECLARE_FINAL_TYPE (SteadPartDialog, stead_part_dialog, STEAD, PART_DIALOG, SteadDialog)

void stead_part_dialog_show     (GtkWidget *parent, SteadDesk *desk, const SteadKitchenPart *part);
/* One that the recipe does not have. */
void stead_part_dialog_show_new (GtkWidget *parent, SteadDesk *desk, gint64 batch_id);

G_END_DECLS
