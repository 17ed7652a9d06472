/* stead-jump.h - the jump field: any flock, product, receipt, document or command
 * by a few letters of its name.
 */
#pragma once

#include <gtk/gtk.h>

#include "app/stead-desk.h"

G_BEGIN_DECLS

#define STEAD_TYPE_JUMP (stead_jump_get_type ())
G_DECLARE_FINAL_TYPE (SteadJump, stead_jump, STEAD, JUMP, GtkWidget)

GtkWidget *stead_jump_new      (void);
/* @desk: (transfer none) */
void       stead_jump_set_desk (SteadJump *self, SteadDesk *desk);
/* @papers_only: lists nothing but documents, to look at and print */
void       stead_jump_open     (SteadJump *self, gboolean papers_only);

G_END_DECLS
