/* stead-enterprise-dialog.h - parts of the farm that are looked at on their own. */
#pragma once

#include "app/stead-dialog.h"

G_BEGIN_DECLS

#define STEAD_TYPE_ENTERPRISE_DIALOG (stead_enterprise_dialog_get_type ())
G_DECLARE_FINAL_TYPE (SteadEnterpriseDialog, stead_enterprise_dialog, STEAD, ENTERPRISE_DIALOG, SteadDialog)

/* @enterprise_id: the one to show first; 0: a new one. */
void stead_enterprise_dialog_show (GtkWidget *parent, SteadDesk *desk, gint64 enterprise_id);

G_END_DECLS
