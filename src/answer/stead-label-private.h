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

/* Says what must be entered before the label can be used. */
void stead_label_add_missing (SteadLabelAnswer *out,
                              const char       *sentence);

/* (transfer none): the item's common name, as a label gives it */
const char *stead_label_item_name (const SteadItem *item);

/* Words the ingredients, heaviest first, and the allergens; a card for the shelf has none. */
gboolean stead_label_word_contents (SteadLabelFacts  *facts,
                                    GError          **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
