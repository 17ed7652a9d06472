/* stead-recipe-repo.h - recipes: what goes in, what is done, what comes out.
 *
 * Amounts stand as they were written, in a unit of their own: 3 cups.  What that
 * is in the store room's measure follows from the item (core/stead-measure.h).
 * Another recipe can be an ingredient; no recipe contains itself, over however
 * many others.
 */
#pragma once

#include "store/stead-item-repo.h"

G_BEGIN_DECLS

/* How it is kept until it is sold.  Not to be changed in order: the file holds their words. */
typedef enum
{
  STEAD_KEPT_HOT,
  STEAD_KEPT_COLD,
  STEAD_KEPT_FROZEN,
  STEAD_KEPT_ROOM,
} SteadKept;

/* One ingredient: an item out of the store room, or another recipe made along. */
typedef struct
{
  gint64           item_id;     /* 0: @sub_id says which recipe */
  gint64           sub_id;      /* 0: @item_id says which item */
  double           amount;      /* above 0, in @unit */
  const SteadUnit *unit;        /* of a count, a weight or a volume */
  gboolean         ready;       /* ready for the pot; FALSE: as it was bought */
  double           yield_frac;  /* of this use, above 0 to 1; NAN: the item's own */
  char            *note;        /* (nullable): "diced" */
  char            *name;        /* (nullable): of the item or the recipe; filled in when read */
} SteadRecipePart;

SteadRecipePart *stead_recipe_part_new  (void) G_GNUC_WARN_UNUSED_RESULT;
void             stead_recipe_part_free (SteadRecipePart *part);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadRecipePart, stead_recipe_part_free)

typedef struct
{
  char   *text;      /* what is done; not empty */
  double  minutes;   /* on the clock, 0 to 14,400; NAN: not said */
  char   *step;      /* (nullable): in the words of the limit tables: "cook", "hold_hot" … */
  char   *food;      /* (nullable): … and the food: "raw_egg" */
  double  least_c;   /* the recipe's own, where it asks for more than the limit, °C; NAN */
  double  most_c;    /* °C; NAN */
  double  hold_s;    /* seconds at it, 0 or more; NAN */
} SteadRecipeStep;

SteadRecipeStep *stead_recipe_step_new  (void) G_GNUC_WARN_UNUSED_RESULT;
void             stead_recipe_step_free (SteadRecipeStep *step);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadRecipeStep, stead_recipe_step_free)

typedef struct
{
  gint64           id;            /* 0: not saved yet */
  char            *name;          /* unique, not empty */
  gint64           item_id;       /* what it makes: of kind "produce" */
  double           yield_base;    /* how much of it, above 0, in the item's base unit */
  double           minutes;       /* of people's work on one making, 0 to 14,400 */
  char            *equipment;     /* (nullable) */
  char            *note;          /* (nullable) */
  SteadKept        kept;
  gboolean         sealed;        /* in jars or packs that nothing gets into */
  gboolean         acid_added;
  gboolean         tomato;        /* tomatoes have a rule of their own */
  double           ph;            /* finished equilibrium pH, 0 to 14; NAN: not measured */
  SteadDay         ph_on;         /* the day of that measurement; needed with one */
  double           aw;            /* water activity, 0 to 1; NAN: not measured */
  char            *jar;           /* (nullable): "pint", "quart" */
  char            *process;       /* (nullable): the published process that it follows word for
                                   * word, as the limit tables name it: "standard_tomato_sauce" */
  char            *authority;     /* (nullable): who approved it for sale, and under which number */
  SteadDay         authority_on;  /* needed with one */
  SteadDay         retired_on;    /* STEAD_DAY_NONE: in use */
  GPtrArray       *parts;         /* of SteadRecipePart, in the order of the recipe */
  GPtrArray       *steps;         /* of SteadRecipeStep, likewise */
  char            *item_name;     /* (nullable): filled in when read */
  const SteadUnit *unit;          /* (nullable): of the item, filled in when read */
} SteadRecipe;

SteadRecipe *stead_recipe_new  (void) G_GNUC_WARN_UNUSED_RESULT;
SteadRecipe *stead_recipe_copy (const SteadRecipe *recipe) G_GNUC_WARN_UNUSED_RESULT;
void         stead_recipe_free (SteadRecipe *recipe);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadRecipe, stead_recipe_free)

/* @retired: also those no longer in use.  By name; parts and steps are left empty. */
GPtrArray   *stead_recipe_repo_list (SteadStore *store, gboolean retired, GError **error) G_GNUC_WARN_UNUSED_RESULT;
/* With its parts and steps. */
SteadRecipe *stead_recipe_repo_get  (SteadStore *store, gint64 id, GError **error) G_GNUC_WARN_UNUSED_RESULT;
/* The recipe in use that makes an item, the oldest first; 0: none, -1 with @error. */
gint64       stead_recipe_repo_of_item (SteadStore *store, gint64 item_id, GError **error);

/**
 * stead_recipe_repo_save:
 *
 * Inserts, or changes with all parts and steps.  Refused: a name that is empty or
 * taken, nothing that it makes or a yield of zero, no ingredient, an amount of
 * zero, a unit that does not lead to the item's (asks for the weight of a cup or a
 * piece), and a recipe that contains itself (names the way).
 */
gboolean     stead_recipe_repo_save   (SteadStore *store, SteadRecipe *recipe, GError **error) G_GNUC_WARN_UNUSED_RESULT;
/* Refused while another recipe contains it, or after it was cooked: set its retired_on instead. */
gboolean     stead_recipe_repo_delete (SteadStore *store, gint64 id, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* What one ingredient comes to, as it is cooked and as it is bought. */
typedef struct
{
  gint64           item_id;
  char            *item_name;
  SteadItemKind    item_kind;
  const SteadUnit *item_unit;
  double           amount;      /* exact, as the recipe measures it … */
  const SteadUnit *unit;        /* … in this unit */
  double           need_base;   /* as bought, in the item's base unit: ready / yield */
  double           ready_base;  /* ready for the pot */
  char            *note;        /* (nullable) */
  gint64           recipe_id;   /* the recipe that it stands in: this one or one inside it */
  char            *recipe_name;
} SteadRecipeNeed;

void stead_recipe_need_free (SteadRecipeNeed *need);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadRecipeNeed, stead_recipe_need_free)

/**
 * stead_recipe_repo_needs:
 * @factor: how often the recipe is made, above 0
 *
 * Recipes inside it are opened where they stand: each row is an item of the store
 * room.  An item can stand in several rows.
 *
 * Returns: (transfer full) (element-type SteadRecipeNeed)
 */
GPtrArray *stead_recipe_repo_needs (SteadStore *store, gint64 recipe_id, double factor,
                                    GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* People's minutes of work on it and on the recipes inside it, in proportion to what is
 * made: a first guess, since work does not scale straight (common practice, no source). */
gboolean stead_recipe_repo_minutes (SteadStore *store, gint64 recipe_id, double factor, double *out_minutes,
                                    GError **error) G_GNUC_WARN_UNUSED_RESULT;

/**
 * stead_recipe_repo_price:
 * @out_cents: (out): for one base unit of the item; NAN if no product in use sells it on @day
 *
 * What the item is sold for, as the product that is linked to it says.
 */
gboolean stead_recipe_repo_price (SteadStore *store, gint64 item_id, SteadDay day, double *out_cents,
                                  GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* The recipe and those inside it, each once, this one first; of SteadRecipe without
 * parts.  Where the equipment, the acid and the steps of all matter. */
GPtrArray *stead_recipe_repo_inside (SteadStore *store, gint64 recipe_id, GError **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
