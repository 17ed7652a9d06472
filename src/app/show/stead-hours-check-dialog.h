/* stead-hours-check-dialog.h - an advisor checks hours, which freezes them. */
#pragma once

#include "app/stead-dialog.h"

G_BEGIN_DECLS

#define STEAD_TYPE_HOURS_CHECK_DIALOG (stead_hours_check_dialog_get_type ())
G_DECLARE_FINAL_TYPE (SteadHoursCheckDialog, stead_hours_check_dialog, STEAD, HOURS_CHECK_DIALOG, SteadDialog)

/* @person_id: 0 for everybody */
void stead_hours_check_dialog_show (GtkWidget *parent, SteadDesk *desk, SteadDay from, SteadDay to, gint64 person_id);

G_END_DECLS
