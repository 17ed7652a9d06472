/* stead-outline.h - the outline of a pen on its plan: corners, sides, area.
 *
 * Corners go round the pen in either direction; the last one is joined to the first.
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

#define STEAD_OUTLINE_MOST 200

typedef struct
{
  double x_m;
  double y_m;
} SteadCorner;

/**
 * stead_outline_sides:
 * @corners: (array length=n): round the pen
 * @n: 3 to %STEAD_OUTLINE_MOST
 * @out_sides_m: (out) (array length=n): from each corner to the next
 *
 * Returns: the way round
 */
double stead_outline_sides (const SteadCorner *corners,
                            gsize              n,
                            double            *out_sides_m);

/**
 * stead_outline_area_m2:
 * Half the sum of cross products (the surveyor's formula, in any text on geometry).
 *
 * Returns: area inside of an outline that does not cross itself
 */
double stead_outline_area_m2 (const SteadCorner *corners,
                              gsize              n);

/**
 * stead_outline_check:
 * @corners: (array length=n): round the pen
 * @n: how many
 * @error: return location for a #GError in %STEAD_CORE_ERROR
 *
 * Returns: %TRUE for a plan that can be built; %FALSE if it has fewer than three
 *   corners or too many, two of them in one place, sides that cross or touch, or no
 *   area
 */
gboolean stead_outline_check (const SteadCorner  *corners,
                              gsize               n,
                              GError            **error);

/**
 * stead_square_diagonal_m:
 * Returns: both diagonals of a pen with square corners; they prove it
 */
double stead_square_diagonal_m (double length_m,
                                double width_m);

G_END_DECLS
