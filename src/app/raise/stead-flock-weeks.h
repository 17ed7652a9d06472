/* stead-flock-weeks.h - a flock's weeks as a table: those to come, then those logged. */
#pragma once

#include "answer/stead-flock-answer.h"
#include "app/stead-table.h"

G_BEGIN_DECLS

/* @units: (transfer none): must outlive the table; read when cells are shown */
GtkWidget *stead_flock_weeks_new  (const SteadUnitSystem *units);
/* What is to come first, then the newest week, as the log has it. */
void       stead_flock_weeks_show (SteadTable *table, const SteadFlockAnswer *answer);

G_END_DECLS
