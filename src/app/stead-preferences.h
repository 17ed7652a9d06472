/* stead-preferences.h - the settings of this computer and of this farm. */
#pragma once

#include "app/stead-dialog.h"

G_BEGIN_DECLS

#define STEAD_TYPE_PREFERENCES (stead_preferences_get_type ())
G_DECLARE_FINAL_TYPE (SteadPreferences, stead_preferences, STEAD, PREFERENCES, SteadDialog)

/* Without a farm only the computer's are shown. */
void stead_preferences_show (GtkWidget *parent, SteadDesk *desk);

G_END_DECLS
