/* stead-measures.h - what a cup, a piece and the trimming of common foods come to.
 *
 * To be offered where an item lacks its own figure, always with the source; the
 * farm's own scale knows better.  data/measures/measures.csv holds the rows.
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* What is known of one food; what is not is NAN, and its source NULL. */
typedef struct
{
  double density_kg_l;
  char  *density_source;   /* "USDA FoodData Central, household weights (from memory)" */
  double piece_kg;
  char  *piece_source;
  double yield_frac;
  char  *yield_source;
} SteadFoodMeasure;

void stead_food_measure_free (SteadFoodMeasure *measure);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadFoodMeasure, stead_food_measure_free)

/**
 * stead_measures_find:
 * @name: the name of an item, in English or Spanish, in any case: "Flour", "Harina"
 *
 * Returns: (transfer full) (nullable): what is known of it
 */
SteadFoodMeasure *stead_measures_find (const char *name) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
