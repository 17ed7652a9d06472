/* stead-sample-grid.h - single weights and lengths, typed one under the other or pasted.
 *
 * Return goes to the next weight, Tab to the length; there is always an empty row left.
 * A column, or two, pasted from a spreadsheet fills the rows from the cell on.
 */
#pragma once

#include <gtk/gtk.h>

#include "store/stead-fish-repo.h"

G_BEGIN_DECLS

#define STEAD_TYPE_SAMPLE_GRID (stead_sample_grid_get_type ())
G_DECLARE_FINAL_TYPE (SteadSampleGrid, stead_sample_grid, STEAD, SAMPLE_GRID, GtkWidget)

/* Signal: "changed" () after each key. */

GtkWidget *stead_sample_grid_new (void);
/* What a number without its unit is in. */
void       stead_sample_grid_set_units (SteadSampleGrid *self,
                                        const SteadUnit *weight,
                                        const SteadUnit *length);
/* @single: (nullable) (element-type SteadWeighed) */
void       stead_sample_grid_show  (SteadSampleGrid *self,
                                    const GArray    *single);
/**
 * stead_sample_grid_read:
 * @loud: %TRUE to mark the first cell that is wrong, and to go there
 *
 * Returns: (transfer full) (nullable) (element-type SteadWeighed): rows with a weight;
 *   %NULL with @error if a cell is wrong
 */
GArray    *stead_sample_grid_read  (SteadSampleGrid  *self,
                                    gboolean          loud,
                                    GError          **error);
void       stead_sample_grid_focus (SteadSampleGrid *self);

G_END_DECLS
