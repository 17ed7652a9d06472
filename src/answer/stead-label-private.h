/* stead-label-private.h - the facts that the words of a label are made of. */
#pragma once

#include "answer/stead-label-answer.h"
#include "store/stead-farm-repo.h"
#include "store/stead-item-repo.h"
#include "store/stead-product-repo.h"

G_BEGIN_DECLS

typedef struct
{
  SteadStore       *store;
  SteadLabelAnswer *out;
  SteadFarm        *farm;
  SteadItem        *item;
  SteadProduct     *product;   /* (nullable): packed from the item */
  gint64            recipe_id; /* that the lot was made by; 0: none */
} SteadLabelFacts;

#define STEAD_LABEL_OZ_KG 0.028349523125    /* avoirdupois ounce: NIST Handbook 44, appendix C */
#define STEAD_LABEL_FLOZ_L 0.0295735295625  /* US fluid ounce, there */

/* Says what must be entered before the label can be used. */
void stead_label_add_missing (SteadLabelAnswer *out,
                              const char       *sentence);

/* (transfer none): the item's common name, as a label gives it */
const char *stead_label_item_name (const SteadItem *item);

/* Words the ingredients, heaviest first, and the allergens; a card for the shelf has none. */
gboolean stead_label_word_contents (SteadLabelFacts  *facts,
                                    GError          **error) G_GNUC_WARN_UNUSED_RESULT;

/* Works out the order of @names, heaviest first; @kg: of each; 0: not known */
void stead_label_why_ingredients (SteadLabelFacts    *facts,
                                  const char * const *names,
                                  const double       *kg,
                                  gsize               n);

/* Works out the net quantity, the letters and the days, once they are worded. */
void stead_label_word_whys (SteadLabelFacts *facts);

G_END_DECLS
