/* stead-fish-weeks.h - the weeks of a group of fish as a table. */
#pragma once

#include "answer/stead-fish-answer.h"
#include "app/stead-table.h"

G_BEGIN_DECLS

/* @units: read whenever a cell is shown; must outlive the table */
GtkWidget *stead_fish_weeks_new  (const SteadUnitSystem *units);
/* What is to come first, then the newest week, as the log has it. */
void       stead_fish_weeks_show (SteadTable            *table,
                                  const SteadFishAnswer *answer);

G_END_DECLS
