/* stead-glpk-private.h - GLPK called so that its own failures do not end the program. */
#pragma once

#include <glib.h>
#include <glpk.h>

G_BEGIN_DECLS

typedef gboolean (*SteadGlpkCall) (glp_prob *problem,
                                   gpointer  data);

/**
 * stead_glpk_call:
 * @problem: (inout): what to work on; %NULL afterwards if GLPK failed
 * @call: what to do; owns no memory while it is in GLPK
 * @data: for @call
 *
 * GLPK ends the program where its own checks fail, as numbers of wildly different
 * size can make them.  Its documented way out is to jump from its error hook and to
 * free all that it holds, every problem of this thread with it.
 *
 * Returns: what @call says; %FALSE if GLPK failed
 */
gboolean stead_glpk_call (glp_prob      **problem,
                          SteadGlpkCall   call,
                          gpointer        data);

G_END_DECLS
