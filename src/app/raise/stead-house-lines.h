/* stead-house-lines.h - what a house gives its birds beside what they need. */
#pragma once

#include "answer/stead-house-answer.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* @house: (nullable): nothing is shown then */
void stead_house_lines_show (GtkGrid *grid, const SteadHouseAnswer *house);

G_END_DECLS
