/* stead-trace-window.h - where a lot came from and where it went: the picture and the amounts. */
#pragma once

#include <gtk/gtk.h>

#include "app/stead-desk.h"

G_BEGIN_DECLS

#define STEAD_TYPE_TRACE_WINDOW (stead_trace_window_get_type ())
G_DECLARE_FINAL_TYPE (SteadTraceWindow, stead_trace_window, STEAD, TRACE_WINDOW, GtkWindow)

/* A lot that cannot be traced is told beside the desk's last step. */
void stead_trace_window_show (GtkWidget *parent,
                              SteadDesk *desk,
                              gint64     lot_id);

G_END_DECLS
