/* stead-entry-list.h - the entries behind one line of the cost sheet. */
#pragma once

#include <gtk/gtk.h>

#include "answer/stead-cost-answer.h"
#include "app/stead-desk.h"

G_BEGIN_DECLS

#define STEAD_TYPE_ENTRY_LIST (stead_entry_list_get_type ())
G_DECLARE_FINAL_TYPE (SteadEntryList, stead_entry_list, STEAD, ENTRY_LIST, GtkWidget)

/* @name: what a screen reader calls the list.  Return on an entry goes to its
 * receipt or asset. */
GtkWidget *stead_entry_list_new (SteadDesk  *desk,
                                 const char *name);
/* @entries: (transfer full) (element-type SteadCostEntry) */
void       stead_entry_list_set (SteadEntryList *self,
                                 GPtrArray      *entries,
                                 const char     *currency);

G_END_DECLS
