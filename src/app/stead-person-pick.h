/* stead-person-pick.h - who did it: those of the farm who are still here, or "not said". */
#pragma once

#include <gtk/gtk.h>

#include "store/stead-store.h"

G_BEGIN_DECLS

#define STEAD_TYPE_PERSON_PICK (stead_person_pick_get_type ())
G_DECLARE_FINAL_TYPE (SteadPersonPick, stead_person_pick, STEAD, PERSON_PICK, GtkWidget)

GtkWidget *stead_person_pick_new         (void);
/* Reads the people anew; who was chosen stays chosen. */
void       stead_person_pick_fill        (SteadPersonPick *self, SteadStore *store);
gint64     stead_person_pick_get         (SteadPersonPick *self);   /* 0: not said */
/* In place of "By", where there are two of them. */
void       stead_person_pick_set_label   (SteadPersonPick *self, const char *label);
/* The label stands over the choice, as other choices beside it have theirs. */
void       stead_person_pick_set_above   (SteadPersonPick *self);
void       stead_person_pick_share_width (SteadPersonPick *self, GtkSizeGroup *group);

G_END_DECLS
