/* stead-handle.h - an assumption to turn: its name, a slider, its value in words. */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define STEAD_TYPE_HANDLE (stead_handle_get_type ())
G_DECLARE_FINAL_TYPE (SteadHandle, stead_handle, STEAD, HANDLE, GtkWidget)

/* What a value is in words, (transfer full): "72 dozen", "+10%". */
typedef char *(*SteadHandleText) (double value, gpointer data);

/* Signal "turned" (double value): by the person, not by stead_handle_set(). */

GtkWidget *stead_handle_new   (const char *name, SteadHandleText text, gpointer data);
/* @step: of an arrow key; Page Up and Page Down turn ten of them. */
void       stead_handle_range (SteadHandle *self, double low, double high, double step);
void       stead_handle_set   (SteadHandle *self, double value);
double     stead_handle_get   (SteadHandle *self);

G_END_DECLS
