/* stead-egg-kitchen.h - eggs in a recipe: other sizes, and what is in the shell.
 */
#pragma once

#include "core/stead-egg.h"

G_BEGIN_DECLS

/* A recipe's large eggs that the chart covers. */
#define STEAD_EGG_CHART_MOST 6

/**
 * stead_egg_substitute:
 * @large_eggs: whole eggs that the recipe asks for, 1 to %STEAD_EGG_CHART_MOST
 * @class: eggs at hand; there is no row for peewee
 * @out_eggs: (out): eggs of that class to take
 * @error: return location for a #GError in %STEAD_CORE_ERROR
 *
 * The chart is a kitchen's, not a ratio of weights.
 * Source: Iowa State University Extension, All about eggs, substitution chart.
 *
 * Returns: %TRUE, or %FALSE outside the chart
 */
gboolean stead_egg_substitute (int             large_eggs,
                               SteadEggClass   class,
                               int            *out_eggs,
                               GError        **error) G_GNUC_WARN_UNUSED_RESULT;

/* A large egg without its shell, and a cup of whole egg, grams.  Sources: weight of
 * a large egg without shell, breakdown; a kitchen conversion chart for large eggs. */
#define STEAD_EGG_LARGE_LIQUID_G 50.0
#define STEAD_EGG_CUP_G 243.0

/**
 * stead_egg_per_cups:
 * @cups: US cups of whole egg
 *
 * Returns: large eggs that fill them, fractions kept
 */
double stead_egg_per_cups (double cups);

G_END_DECLS
