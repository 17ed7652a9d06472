/* stead-count-row.h - one lot in the count of the store room: how much is there, and why
 * that differs from the record. */
#pragma once

#include <gtk/gtk.h>

#include "store/stead-count-repo.h"

G_BEGIN_DECLS

#define STEAD_TYPE_COUNT_ROW (stead_count_row_get_type ())
G_DECLARE_FINAL_TYPE (SteadCountRow, stead_count_row, STEAD, COUNT_ROW, GtkWidget)

/* @line is copied from; it need not live on.  Emits "changed" with each key.  What should be
 * there is told once something else was typed, so that people count before they know. */
GtkWidget  *stead_count_row_new (const SteadCountLine *line);

gint64      stead_count_row_get_lot  (SteadCountRow *self);
/* Something was typed that can be read; @out_base: how much, else NAN; @out_differs: it is not what should be there. */
gboolean    stead_count_row_peek     (SteadCountRow *self, double *out_base, gboolean *out_differs);
/* Fills in what was typed: NAN for a lot that was not counted.  %FALSE: a field says what is wrong. */
gboolean    stead_count_row_read     (SteadCountRow *self, SteadCountLine *line);
/* What was typed goes over from another row of the same lot. */
void        stead_count_row_take     (SteadCountRow *self, SteadCountRow *other);

G_END_DECLS
