/* stead-fund-dialogs.h - what is asked about a build and about the money for it. */
#pragma once

#include "app/stead-form.h"
#include "answer/stead-build-answer.h"
#include "app/stead-desk.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* An id of 0 of what is changed: a new one. */

/* The build itself */
void stead_build_dialog_show   (GtkWidget *parent, SteadDesk *desk, gint64 build_id);

/* Its drawing */
void stead_sides_dialog_show   (GtkWidget *parent, SteadDesk *desk, gint64 build_id);
void stead_gates_dialog_show   (GtkWidget *parent, SteadDesk *desk, gint64 build_id);
void stead_shelter_dialog_show (GtkWidget *parent, SteadDesk *desk, gint64 build_id);
void stead_fence_dialog_show   (GtkWidget *parent, SteadDesk *desk, gint64 build_id);
void stead_permit_dialog_show  (GtkWidget *parent, SteadDesk *desk, gint64 build_id);
void stead_room_dialog_show    (GtkWidget *parent, SteadDesk *desk, gint64 build_id);

/* Its bill; @row: what is said about it is changed, NULL: a line of the farm's own */
void stead_line_dialog_show    (GtkWidget *parent, SteadDesk *desk, gint64 build_id, const SteadBuildRow *row);
void stead_quotes_dialog_show  (GtkWidget *parent, SteadDesk *desk, gint64 build_id, const SteadBuildRow *row);
void stead_stocks_dialog_show  (GtkWidget *parent, SteadDesk *desk, gint64 build_id);
void stead_buy_dialog_show     (GtkWidget *parent, SteadDesk *desk, gint64 build_id);

/* Its money; @goal_cents: what the build costs */
void stead_pledge_dialog_show  (GtkWidget *parent, SteadDesk *desk, gint64 build_id, gint64 goal_cents, gint64 pledge_id);
void stead_receive_dialog_show (GtkWidget *parent, SteadDesk *desk, gint64 build_id, gint64 pledge_id);
void stead_income_dialog_show  (GtkWidget *parent, SteadDesk *desk, gint64 build_id, gint64 income_id);
void stead_grant_dialog_show   (GtkWidget *parent, SteadDesk *desk, gint64 build_id, gint64 fund_id);

/* Its work, its end, its cost afterwards */
void stead_phase_dialog_show   (GtkWidget *parent, SteadDesk *desk, gint64 build_id, gint64 phase_id);
void stead_upkeep_dialog_show  (GtkWidget *parent, SteadDesk *desk, gint64 build_id, gint64 upkeep_id);
void stead_build_end_dialog_show  (GtkWidget *parent, SteadDesk *desk, gint64 build_id);

/* --- shared by them -------------------------------------------------------------------- */

/* Saves the build as one step, "gates of “Sheep pen”". */
gboolean stead_fund_save_build (SteadForm *dialog, SteadBuild *build, const char *what, GError **error);
/* The line of the file that @row stands for, or a new one; NULL with @error. */
SteadBuildLine *stead_fund_find_line (SteadDesk *desk, gint64 build_id, const SteadBuildRow *row, GError **error);
/* A choice of the parts of a bill; @any: (nullable): what stands for none of them, before all. */
GtkDropDown *stead_fund_add_part (SteadForm *dialog, const char *label, const char *any, int part);
int          stead_fund_get_part (GtkDropDown *choice, gboolean with_any);

G_END_DECLS
