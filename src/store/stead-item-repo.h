/* stead-item-repo.h - the things that are bought, used and packed. */
#pragma once

#include "core/stead-measure.h"
#include "core/stead-quantity.h"
#include "store/stead-store.h"

G_BEGIN_DECLS

typedef enum
{
  STEAD_ITEM_FEED,
  STEAD_ITEM_BEDDING,
  STEAD_ITEM_PACKAGING,
  STEAD_ITEM_INGREDIENT,
  STEAD_ITEM_SEED,
  STEAD_ITEM_SUPPLY,
  STEAD_ITEM_LIVESTOCK,  /* chicks, fingerlings */
  STEAD_ITEM_PRODUCE,    /* what the farm makes: eggs, fish, tomatoes, sauce */
} SteadItemKind;

typedef struct
{
  gint64           id;               /* 0: not saved yet */
  char            *name;             /* unique, not empty */
  SteadItemKind    kind;
  const SteadUnit *unit;             /* shown in; its dimension is the item's */
  char            *allergens;        /* (nullable) */
  char            *storage;          /* (nullable): "cool, dry, rodent-proof bin" */
  int              shelf_life_days;  /* 0: none */
  double           reorder_base;     /* say so when less is on hand; NAN: never */
  double           density_kg_l;     /* weight of a liter, 0.01 to 25; NAN or 0: not said */
  double           piece_kg;         /* weight of one; NAN or 0: not said */
  char            *measure_source;   /* (nullable): where the two are from */
  double           yield_frac;       /* of what is bought, ready for the pot; above 0 to 1; 0 is taken as 1 */
  char            *food;             /* (nullable): in the words of the limit tables: "raw_shell_eggs" */
  char            *label_name;       /* (nullable): stands on a label instead of the name */
} SteadItem;

void stead_item_free (SteadItem *item);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadItem, stead_item_free)

/* How @item is measured; the name stays the item's. */
void stead_item_measure (const SteadItem *item, SteadMeasure *out);

GPtrArray *stead_item_repo_list         (SteadStore *store, GError **error) G_GNUC_WARN_UNUSED_RESULT;
/* Returns: (transfer full) (nullable): NULL with @error NOT_FOUND if there is none */
SteadItem *stead_item_repo_get          (SteadStore *store, gint64 id, GError **error) G_GNUC_WARN_UNUSED_RESULT;
SteadItem *stead_item_repo_find_by_name (SteadStore *store, const char *name, GError **error) G_GNUC_WARN_UNUSED_RESULT;
/* The dimension of an item that has movements cannot change. */
gboolean   stead_item_repo_save         (SteadStore *store, SteadItem *item, GError **error) G_GNUC_WARN_UNUSED_RESULT;
/* Refused with a reason while receipts, lots or products name the item. */
gboolean   stead_item_repo_delete       (SteadStore *store, gint64 id, GError **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
