/* stead-timer-box.h - who is working now, since when; begin, break, end. */
#pragma once

#include <gtk/gtk.h>

#include "app/stead-desk.h"

G_BEGIN_DECLS

#define STEAD_TYPE_TIMER_BOX (stead_timer_box_get_type ())
G_DECLARE_FINAL_TYPE (SteadTimerBox, stead_timer_box, STEAD, TIMER_BOX, GtkWidget)

GtkWidget *stead_timer_box_new  (void);
/* (transfer none): the button that begins a timer; it stands where the box's owner puts it. */
GtkWidget *stead_timer_box_get_begin (SteadTimerBox *self);
void       stead_timer_box_show (SteadTimerBox *self, SteadDesk *desk);

G_END_DECLS
