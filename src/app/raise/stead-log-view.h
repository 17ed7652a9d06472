/* stead-log-view.h - a flock's entries as a table that can be edited. */
#pragma once

#include <gtk/gtk.h>

#include "app/stead-desk.h"
#include "store/stead-flock-repo.h"

G_BEGIN_DECLS

#define STEAD_TYPE_LOG_VIEW (stead_log_view_get_type ())
G_DECLARE_FINAL_TYPE (SteadLogView, stead_log_view, STEAD, LOG_VIEW, GtkWidget)

void stead_log_view_show (SteadLogView     *self,
                          SteadDesk        *desk,
                          const SteadFlock *flock);

G_END_DECLS
