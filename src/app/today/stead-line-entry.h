/* stead-line-entry.h - the one-line entry: typed as people say it, read back
 * before it is recorded.
 */
#pragma once

#include <gtk/gtk.h>

#include "app/stead-desk.h"

G_BEGIN_DECLS

#define STEAD_TYPE_LINE_ENTRY (stead_line_entry_get_type ())
G_DECLARE_FINAL_TYPE (SteadLineEntry, stead_line_entry, STEAD, LINE_ENTRY, GtkWidget)

GtkWidget *stead_line_entry_new      (void);
/* @desk: (transfer none) */
void       stead_line_entry_set_desk (SteadLineEntry *self, SteadDesk *desk);
/* Reads the farm's names anew and the line again: facts changed. */
void       stead_line_entry_refresh  (SteadLineEntry *self);

G_END_DECLS
