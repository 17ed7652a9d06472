/* stead-batch-panel-private.h - the lists of the panel, made of an answer. */
#pragma once

#include "answer/stead-batch-answer.h"
#include "app/raise/stead-batch-panel.h"

G_BEGIN_DECLS

/* Each fills an empty box or grid anew.  @panel: over which dialogs stand. */
void stead_batch_panel_fill_plan       (GtkGrid *grid, const SteadBatchAnswer *answer);
void stead_batch_panel_fill_review     (GtkBox *box, const SteadBatchAnswer *answer);
void stead_batch_panel_fill_harvests   (GtkGrid *grid, const SteadBatchAnswer *answer, SteadDesk *desk, GtkWidget *panel);
void stead_batch_panel_fill_treatments (GtkBox *box, const SteadBatchAnswer *answer, SteadDesk *desk, GtkWidget *panel);
void stead_batch_panel_fill_notes      (GtkBox *box, gint64 batch_id, SteadDesk *desk, GtkWidget *panel);

G_END_DECLS
