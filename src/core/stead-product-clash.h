/* stead-product-clash.h - which limits of a plan cannot all be kept.
 *
 * Where stead_product_mix_solve() finds no plan, this names the fewest limits that clash: none
 * can be left out without the others being kept, and no fewer clash.
 * Source of the method: Ignatiev, Previti, Liffiton and Marques-Silva, "Smallest MUS extraction
 * with minimal hitting set dualization" (2015): the fewest limits that touch every set of limits
 * whose lifting leaves a plan (memory); an elastic program finds those sets (Chinneck,
 * Feasibility and Infeasibility in Optimization, chapter 6; memory).  Solved with GLPK.
 */
#pragma once

#include "core/stead-product-mix.h"

G_BEGIN_DECLS

/**
 * stead_product_clash_find:
 * @limits: (array length=n_limits): as for stead_product_mix_solve()
 * @n_limits: how many
 * @n_products: 1 or more
 * @out_clash: (out) (array length=n_limits): %TRUE for those that clash
 *
 * The smallest set.  If too many would have to be tried, a set of which none can be left out.
 *
 * Returns: how many clash; 0 if a plan keeps them all, or if the numbers lie too far apart to tell
 */
gsize stead_product_clash_find (const SteadMixLimit *limits,
                                gsize                n_limits,
                                gsize                n_products,
                                gboolean            *out_clash);

G_END_DECLS
