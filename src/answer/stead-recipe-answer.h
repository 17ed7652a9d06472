/* stead-recipe-answer.h - "What does one of it cost, what is in it, and what is missing?"
 *
 * Costs are today's: what the next lot of the store room cost, or the last known
 * price (store/stead-lot-repo.h).  Work is shown beside them, never in them.
 */
#pragma once

#include "answer/stead-sauce-answer.h"

G_BEGIN_DECLS

/* One ingredient for what is wanted; recipes inside it are opened. */
typedef struct
{
  gint64         item_id;
  char          *name;
  SteadItemKind  kind;
  char          *amount;        /* as a cook measures it: "1 1/2 cup" */
  double         effect;        /* measured / exact; 1: exact */
  char          *rounding;      /* (nullable): "13 instead of 12.5" */
  char          *note;          /* (nullable): "diced" */
  char          *inside;        /* (nullable): the recipe inside that it belongs to */
  double         need_base;     /* as bought, exact */
  char          *bought;        /* the same as text, in the item's unit */
  double         unit_cents;    /* of one base unit; NAN: never bought */
  gint64         cents;         /* of this line, rounded; 0 where the price is not known */
  double         share_frac;    /* of the whole cost; NAN: cost not known */
} SteadRecipeLine;

/* An item, over all its lines. */
typedef struct
{
  gint64  item_id;
  char   *name;
  const SteadUnit *unit;
  double  need_base;
  double  on_hand_base;
  double  missing_base;       /* 0: enough is there */
  char   *missing;            /* (nullable): "0.4 lb" */
} SteadRecipeStock;

typedef struct
{
  SteadFarm        *farm;
  SteadRecipe      *recipe;        /* with its parts and steps */
  double            wanted_base;
  double            factor;        /* wanted / the recipe's own yield */
  double            whole_factor;  /* nearest at which all pieces come out whole; NAN: no pieces in it */
  GPtrArray        *lines;         /* of SteadRecipeLine, in the order of the recipe */
  GPtrArray        *stocks;        /* of SteadRecipeStock, an item a row */
  gint64            cents;         /* of what is wanted: the sum of the lines */
  double            unit_cents;    /* of one base unit that is made, unrounded */
  const SteadRecipeLine *dearest;  /* (nullable) */
  gboolean          all_priced;
  GPtrArray        *allergens;     /* of char *, each once, by name */
  double            minutes;       /* of work for what is wanted */
  gint64            labor_cents;   /* of it at the farm's rate; 0: not shown */
  double            price_cents;   /* at which one base unit is sold today; NAN: not sold yet */
  double            return_cents;  /* left for an hour of work at that price; NAN */
  double            makes_base;    /* what can be made of what is on hand; NAN: nothing is needed */
  const SteadRecipeStock *limiting; /* (nullable): runs out first */
  SteadSauceAnswer *sauce;
  char             *sentence;      /* markup */
  char             *stock_text;    /* markup: what can be made, and what is missing */
  char             *allergen_text; /* plain */
  char             *caution;       /* (nullable) plain: what is uncertain */
} SteadRecipeAnswer;

void stead_recipe_line_free   (SteadRecipeLine *line);
void stead_recipe_stock_free  (SteadRecipeStock *stock);
void stead_recipe_answer_free (SteadRecipeAnswer *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadRecipeAnswer, stead_recipe_answer_free)

/* @wanted_base: how much is wanted; 0: what the recipe makes */
SteadRecipeAnswer *stead_recipe_answer_new (SteadStore  *store,
                                            gint64       recipe_id,
                                            double       wanted_base,
                                            GError     **error) G_GNUC_WARN_UNUSED_RESULT;

/* (transfer full) (element-type SteadWhy): how the cost, the pay of an hour and what can be
 * made come about; those that are known */
GPtrArray *stead_recipe_answer_whys (const SteadRecipeAnswer *self) G_GNUC_WARN_UNUSED_RESULT;

/* The same of stock_text alone: what the recipe needs of each thing, and how much can be made */
GPtrArray *stead_recipe_answer_stock_whys (const SteadRecipeAnswer *self) G_GNUC_WARN_UNUSED_RESULT;

/* "25", "2 qt of Sauce": an amount of what is made, for a sentence. */
char *stead_recipe_amount (double           base,
                           const SteadUnit *unit,
                           const char      *name) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
