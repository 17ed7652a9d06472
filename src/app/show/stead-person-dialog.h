/* stead-person-dialog.h - one person: name, role, class year, consent, and leaving. */
#pragma once

#include "app/stead-dialog.h"

G_BEGIN_DECLS

#define STEAD_TYPE_PERSON_DIALOG (stead_person_dialog_get_type ())
G_DECLARE_FINAL_TYPE (SteadPersonDialog, stead_person_dialog, STEAD, PERSON_DIALOG, SteadDialog)

/* @person_id: 0: a new one */
void stead_person_dialog_show (GtkWidget *parent, SteadDesk *desk, gint64 person_id);

G_END_DECLS
