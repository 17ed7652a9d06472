/* stead-hours-dialog.h - hours of one person, or of everyone of a group; a change, or a correction. */
#pragma once

#include "app/stead-dialog.h"
#include "store/stead-work-repo.h"

G_BEGIN_DECLS

#define STEAD_TYPE_HOURS_DIALOG (stead_hours_dialog_get_type ())
G_DECLARE_FINAL_TYPE (SteadHoursDialog, stead_hours_dialog, STEAD, HOURS_DIALOG, SteadDialog)

/* New hours; @person_id: 0: not chosen yet; @day: of the work */
void stead_hours_dialog_show       (GtkWidget *parent, SteadDesk *desk, gint64 person_id, SteadDay day);
/* Changes an entry, or, where it is checked, corrects it with a new one beside it. */
void stead_hours_dialog_show_span  (GtkWidget *parent, SteadDesk *desk, gint64 span_id);
/* Work that the farm knows of, to be completed. */
void stead_hours_dialog_show_draft (GtkWidget *parent, SteadDesk *desk, const SteadWorkDraft *draft);

G_END_DECLS
