/* stead-water-lines.h - a water test line by line: each reading with its verdict, its
 * limit and whose it is, the source, where it is going, and what to do first.
 */
#pragma once

#include <gtk/gtk.h>

#include "answer/stead-water-answer.h"

G_BEGIN_DECLS

#define STEAD_TYPE_WATER_LINES (stead_water_lines_get_type ())
G_DECLARE_FINAL_TYPE (SteadWaterLines, stead_water_lines, STEAD, WATER_LINES, GtkWidget)

void stead_water_lines_show (SteadWaterLines *self, const SteadWaterAnswer *answer);

G_END_DECLS
