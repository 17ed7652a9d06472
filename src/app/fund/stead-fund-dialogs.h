/* stead-fund-dialogs.h - what is asked about a build and about the money for it. */
#pragma once

#include "app/stead-desk.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* @build_id: 0: a new one */
void stead_build_dialog_show  (GtkWidget *parent, SteadDesk *desk, gint64 build_id);
/* @goal_cents: what the build costs */
void stead_pledge_dialog_show (GtkWidget *parent, SteadDesk *desk, gint64 build_id, gint64 goal_cents);
void stead_income_dialog_show (GtkWidget *parent, SteadDesk *desk, gint64 build_id);
void stead_line_dialog_show   (GtkWidget *parent, SteadDesk *desk, gint64 build_id);

G_END_DECLS
