/* stead-lumber.h - boards: their true size, and the measure that they are sold by.
 *
 * Names of sizes ("2x6") are not sizes: sawn and dry they are smaller.
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/**
 * stead_lumber_dressed_m:
 * @thickness_in: first number of the name, inches
 * @width_in: second number of the name, inches
 * @out_thickness_m: (out): as it is, dry
 * @out_width_m: (out): as it is, dry
 * @error: return location for a #GError in %STEAD_CORE_ERROR
 *
 * 1, 2, 3 and 4 by 2 to 12 inches, and 6 by 6.
 * Source: American Softwood Lumber Standard PS 20, from memory.
 *
 * Returns: %TRUE, or %FALSE for a size that is not in the table
 */
gboolean stead_lumber_dressed_m (int      thickness_in,
                                 int      width_in,
                                 double  *out_thickness_m,
                                 double  *out_width_m,
                                 GError **error) G_GNUC_WARN_UNUSED_RESULT;

/**
 * stead_board_feet:
 * @pieces: how many
 * @thickness_in: by its name, inches
 * @width_in: by its name, inches
 * @length_m: of one, m
 *
 * Source: a trades-math study guide on material take-offs, key formulas.
 *
 * Returns: board feet: pieces x thickness x width x feet / 12; NAN if one is below 0
 */
double stead_board_feet (double pieces,
                         double thickness_in,
                         double width_in,
                         double length_m);

/**
 * stead_fence_boards:
 * @run_m: of fence
 * @rails: boards above each other
 * @board_m: length of one
 * @waste_frac: 0 to 1
 *
 * Returns: how many; %STEAD_COUNT_NONE for another number
 */
gint64 stead_fence_boards (double run_m,
                           gint64 rails,
                           double board_m,
                           double waste_frac);

G_END_DECLS
