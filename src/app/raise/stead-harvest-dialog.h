/* stead-harvest-dialog.h - what a batch gave, into a lot or lost. */
#pragma once

#include "app/stead-dialog.h"

G_BEGIN_DECLS

#define STEAD_TYPE_HARVEST_DIALOG (stead_harvest_dialog_get_type ())
G_DECLARE_FINAL_TYPE (SteadHarvestDialog, stead_harvest_dialog, STEAD, HARVEST_DIALOG, SteadDialog)

/* A new harvest of a batch. */
void stead_harvest_dialog_show (GtkWidget *parent, SteadDesk *desk, gint64 batch_id);
/* One that is on file; what was used of its lot stands. */
void stead_harvest_dialog_edit (GtkWidget *parent, SteadDesk *desk, gint64 harvest_id);

G_END_DECLS
