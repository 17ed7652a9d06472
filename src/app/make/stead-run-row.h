/* stead-run-row.h - one step on the run sheet: what to do, its limit, what was read, the time.
 *
 * Buttons are large enough for a finger.
 */
#pragma once

#include <gtk/gtk.h>

#include "answer/stead-kitchen-answer.h"

G_BEGIN_DECLS

#define STEAD_TYPE_RUN_ROW (stead_run_row_get_type ())
G_DECLARE_FINAL_TYPE (SteadRunRow, stead_run_row, STEAD, RUN_ROW, GtkWidget)

/* Signals: "start" (), "done" (), "again" () takes the times back, "read" () a reading was
 * typed: ask stead_run_row_get_reading(). */

GtkWidget *stead_run_row_new    (SteadUnitSystem units);
/* @readings: of SteadShown, of the whole batch; @open: it is not finished.  What is being typed stays. */
void       stead_run_row_show   (SteadRunRow *self, const SteadRunLine *line, const GPtrArray *readings, gboolean open);
gint64     stead_run_row_get_id (SteadRunRow *self);
/* @out_value: °C; @out_clock: (nullable): the time that was typed, NULL for now;
 * @out_corrects: it takes the place of the last one. */
gboolean   stead_run_row_get_reading (SteadRunRow *self, double *out_value, const char **out_clock,
                                      gboolean *out_corrects);
/* At the reading, or at its time. */
void       stead_run_row_complain (SteadRunRow *self, const char *message, gboolean of_clock);
/* Empties the fields of the reading. */
void       stead_run_row_clear    (SteadRunRow *self);

G_END_DECLS
