/* stead-nutrient-answer.h - "How much fertilizer for this water?": thinning two stocks, and
 * weighing out a bag.
 *
 * Both work on numbers that a person types; nothing of them is kept.
 */
#pragma once

#include "answer/stead-words.h"
#include "core/stead-quantity.h"

G_BEGIN_DECLS

typedef struct
{
  double    amount;     /* L of each stock, or g of the product; 0: none is needed */
  double    parts;      /* one part of each stock in so many of solution; of a bag NAN */
  char     *sentence;   /* markup: how much, and in which order */
  char     *caution;    /* plain: what it can do to people, plants and fish */
  SteadWhy *why;
} SteadNutrientDose;

void stead_nutrient_dose_free (SteadNutrientDose *dose);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadNutrientDose, stead_nutrient_dose_free)

/* Each NAN where nothing is typed.  Conductivities are in µS/cm. */
typedef struct
{
  double water_l;       /* nutrient solution that is wanted */
  double now_us;        /* of the water before */
  double target_us;
  double label_parts;   /* the label: one part of each stock in so many ... */
  double label_us;      /* ... adds so much to the water */
} SteadStockNumbers;

/**
 * stead_nutrient_thin:
 * @numbers: what was typed
 * @units: how amounts are shown
 * @error: return location for a #GError for the person: what is missing or cannot be
 *
 * C1 V1 = C2 V2, with the conductivity that a stock adds as its strength
 * (core/stead-nutrient.h).  That conductivity grows evenly with the strength is a
 * rule of growers, from memory: the solution is measured once it is mixed.
 *
 * Returns: (transfer full): the dose of stock A, and the same of stock B
 */
SteadNutrientDose *stead_nutrient_thin (const SteadStockNumbers  *numbers,
                                        SteadUnitSystem           units,
                                        GError                  **error) G_GNUC_WARN_UNUSED_RESULT;

typedef struct
{
  double target_ppm;    /* of the nutrient, mg/L in the water that reaches the plants */
  double share_frac;    /* of it in the bag: 0.20 of nitrogen in 20-10-20 */
  double water_l;       /* in the tank that it is stirred into */
  double ratio;         /* of an injector behind that tank, as 100 for 1:100; 1: none */
} SteadBagNumbers;

/* The same for a fertilizer in a bag; the dose is what goes into the tank. */
SteadNutrientDose *stead_nutrient_weigh (const SteadBagNumbers  *numbers,
                                         SteadUnitSystem         units,
                                         GError                **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
