/* stead-why-box.h - the "Why?" disclosure: worked, not told. */
#pragma once

#include <gtk/gtk.h>

#include "answer/stead-words.h"

G_BEGIN_DECLS

#define STEAD_TYPE_WHY_BOX (stead_why_box_get_type ())
G_DECLARE_FINAL_TYPE (SteadWhyBox, stead_why_box, STEAD, WHY_BOX, GtkWidget)

GtkWidget *stead_why_box_new (void);
/* Folded away under "Why?", and hidden while there is none; returns what folds it. @out_self: (out) (transfer none) */
GtkWidget *stead_why_box_new_folded (SteadWhyBox **out_self);
/* The same where the page itself does not scroll: it takes little height, and scrolls. */
GtkWidget *stead_why_box_new_low (SteadWhyBox **out_self);
/* As a page of its own: all open, in columns where there is room.  Before the first is set. */
void       stead_why_box_set_page (SteadWhyBox *self);
/* @whys: (transfer none) (element-type SteadWhy).  What is open stays open. */
void       stead_why_box_set (SteadWhyBox *self, GPtrArray *whys);
/* Opens the disclosure with this title and takes the focus there; %FALSE if there is none. */
gboolean   stead_why_box_open (SteadWhyBox *self, const char *title);

G_END_DECLS
