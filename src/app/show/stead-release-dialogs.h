/* stead-release-dialogs.h - what leaves the farm is told, and who gets it is asked. */
#pragma once

#include "answer/stead-handout-answer.h"
#include "app/stead-desk.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* Something was handed out in another way, such as a printed packet: written into the log. */
void stead_release_dialog_show (GtkWidget *parent, SteadDesk *desk);

/* A document was printed or saved: asks who gets it.  @handout: (transfer full) */
void stead_handout_dialog_show (GtkWidget *parent, SteadDesk *desk, SteadHandoutAnswer *handout);

/* @whom, @ground: as they go into the log */
typedef void (*SteadReleaseThen) (const char *whom, const char *ground, gpointer data);

/**
 * stead_class_release_dialog_show:
 * @then: called once somebody said who gets the packets of the class
 * @data: (transfer full): kept until the dialog is gone
 */
void stead_class_release_dialog_show (GtkWidget        *parent,
                                      SteadDesk        *desk,
                                      SteadReleaseThen  then,
                                      gpointer          data,
                                      GDestroyNotify    destroy);

G_END_DECLS
