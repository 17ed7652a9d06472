/* stead-duty-dialog.h - what a duty is called and which training it needs; removes one that nobody does. */
#pragma once

#include "app/stead-desk.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

void stead_duty_dialog_show (GtkWidget *parent, SteadDesk *desk);

G_END_DECLS
