/* stead-sauce-answer.h - "What kind of food is this, and may it stand sealed on a shelf?"
 *
 * Acidity and water activity decide, by the tables in data/limits.  What a process
 * authority must approve is said, and never guessed: without a published process
 * there is no time.
 */
#pragma once

#include "store/stead-farm-repo.h"
#include "store/stead-recipe-repo.h"

G_BEGIN_DECLS

typedef enum
{
  STEAD_FOOD_UNKNOWN,      /* a measurement that decides is missing */
  STEAD_FOOD_HOT,          /* held hot until it is sold */
  STEAD_FOOD_COLD,
  STEAD_FOOD_FROZEN,
  STEAD_FOOD_SHELF,        /* open at room temperature; dry or sour enough */
  STEAD_FOOD_HOLD,         /* open; hot or cold until its safety was assessed */
  STEAD_FOOD_ACID,         /* sealed; acid by nature */
  STEAD_FOOD_ACIDIFIED,    /* sealed; acid was added: 21 CFR 114 */
  STEAD_FOOD_DRY,          /* sealed; too dry for the rule of acidified foods */
  STEAD_FOOD_NOT_SEALED,   /* low-acid: not for sale sealed at room temperature */
} SteadFoodKind;

typedef struct
{
  SteadFoodKind kind;
  char         *sentence;        /* plain: what it is, and why */
  GPtrArray    *notes;           /* of char *, plain: what has to be done and who approves; may be empty */
  double        process_min;     /* minutes in boiling water for its jar at the farm's elevation; NAN: none published */
  double        headspace_in;    /* NAN: not published */
  double        tomatoes_kg;     /* for one jar of thin sauce, or of what the process makes; NAN */
  double        tomatoes_thick_kg; /* for one jar of thick sauce; NAN: only one figure is published */
} SteadSauceAnswer;

void stead_sauce_answer_free (SteadSauceAnswer *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadSauceAnswer, stead_sauce_answer_free)

/**
 * stead_sauce_answer_new:
 * @recipe: how it is kept, its acidity, its jar and its process; need not be saved
 * @farm: for the elevation and the units
 */
SteadSauceAnswer *stead_sauce_answer_new (const SteadRecipe *recipe,
                                          const SteadFarm   *farm) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
