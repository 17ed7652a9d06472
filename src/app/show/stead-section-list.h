/* stead-section-list.h - which sections a packet has, and in which order. */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* (transfer floating): all sections, those of @sections (of char) first and ticked. */
GtkWidget *stead_section_list_new  (const GPtrArray *sections);
/* Puts the keys of those that are ticked into @sections, in their order. */
void       stead_section_list_read (GtkWidget *list, GPtrArray *sections);

G_END_DECLS
