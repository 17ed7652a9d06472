/* stead-usual-year-dialog.h - the usual year of a thermometer: a lowest and a highest a month. */
#pragma once

#include "app/stead-dialog.h"

G_BEGIN_DECLS

#define STEAD_TYPE_USUAL_YEAR_DIALOG (stead_usual_year_dialog_get_type ())
G_DECLARE_FINAL_TYPE (SteadUsualYearDialog, stead_usual_year_dialog, STEAD, USUAL_YEAR_DIALOG, SteadDialog)

/* @place_id: of the thermometer; 0: outdoors */
void stead_usual_year_dialog_show (GtkWidget *parent, SteadDesk *desk, gint64 place_id);

G_END_DECLS
