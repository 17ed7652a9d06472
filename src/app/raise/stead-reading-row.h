/* stead-reading-row.h - one reading of a water test: its number, the unit that the
 * meter or kit shows, and under it what it means, as it is typed.
 *
 * A number that cannot be is told under it in place of the verdict; it stays as typed.
 */
#pragma once

#include <gtk/gtk.h>

#include "answer/stead-reading-unit.h"

G_BEGIN_DECLS

#define STEAD_TYPE_READING_ROW (stead_reading_row_get_type ())
G_DECLARE_FINAL_TYPE (SteadReadingRow, stead_reading_row, STEAD, READING_ROW, GtkWidget)

/* Signals: "changed" (each key, and another unit), "activate" (Return). */

GtkWidget *stead_reading_row_new       (SteadReading reading);
/* The unit that was chosen last on this machine, or the farm's. */
void       stead_reading_row_set_units (SteadReadingRow *self, SteadUnitSystem system);
void       stead_reading_row_clear     (SteadReadingRow *self);
gboolean   stead_reading_row_is_empty  (SteadReadingRow *self);

/* What stands there, as the file keeps it: NAN if nothing, or if it cannot be read. */
double     stead_reading_row_peek      (SteadReadingRow *self);
/* The same; %FALSE shows the message under the field and focuses it. */
gboolean   stead_reading_row_read      (SteadReadingRow *self, double *out);

/* @text: (nullable): what the reading means; @warns: in the color of a warning.  An
 * error that stands there is not covered by it. */
void       stead_reading_row_tell      (SteadReadingRow *self, const char *text, gboolean warns);
void       stead_reading_row_set_error (SteadReadingRow *self, const char *message);
void       stead_reading_row_share_width (SteadReadingRow *self, GtkSizeGroup *labels, GtkSizeGroup *units);

G_END_DECLS
