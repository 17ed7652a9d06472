/* stead-product-repo.h - what is sold: pack, price history, plan of a sale day. */
#pragma once

#include "store/stead-store.h"

G_BEGIN_DECLS

/* Words for one unit; sentences need them whole, so they are a list of ours. */
typedef enum
{
  STEAD_PACK_DOZEN,
  STEAD_PACK_HALF_DOZEN,
  STEAD_PACK_TRAY,       /* 30 eggs */
  STEAD_PACK_PIECE,
  STEAD_PACK_POUND,
  STEAD_PACK_KILOGRAM,
  STEAD_PACK_JAR,
  STEAD_PACK_PACK,
} SteadPack;

/* The pack that a word of the file stands for; a dozen for a word that is not known. */
SteadPack stead_pack_from_word (const char *word);

typedef struct
{
  gint64 item_id;
  double quantity_base;  /* for one unit sold, above 0 */
} SteadProductPart;

typedef struct
{
  gint64  id;
  char   *name;          /* "Table", "Permit", "Ice" */
  gint64  cents;         /* 0 or more */
  gint64  per_units;     /* 0: once a day; else again for each so many units (one such line a product) */
} SteadStallCost;

typedef struct
{
  gint64     id;               /* 0: not saved yet */
  char      *name;             /* unique, not empty: "Eggs" */
  SteadPack  pack;
  double     base_per_unit;    /* of the batch in one unit: 12, 6, 30 or 1 eggs; kg of fish or fruit */
  gint64     batch_id;         /* where it comes from; 0: not said yet */
  gint64     item_id;          /* of the store room, that it is packed from; 0: not said */
  double     unsold_frac;      /* share of good units that is given up unsold, 0 to 0.9 */
  double     pack_minutes;     /* unpaid work on one unit */
  gint64     planned_units;    /* on the next sale day, 0 or more */
  gint64     target_cents;     /* profit wanted of the day */
  SteadDay   retired_on;       /* STEAD_DAY_NONE: sold */
  GArray    *parts;            /* of SteadProductPart: packaging of one unit */
  GPtrArray *stall_costs;      /* of SteadStallCost */
} SteadProduct;

SteadProduct *stead_product_new     (void) G_GNUC_WARN_UNUSED_RESULT;
void          stead_product_free    (SteadProduct *product);
void          stead_stall_cost_free (SteadStallCost *cost);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadProduct, stead_product_free)
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadStallCost, stead_stall_cost_free)

typedef struct
{
  gint64    id;
  SteadDay  from_day;
  gint64    cents;
  char     *note;   /* (nullable): why */
} SteadPrice;

void stead_price_free (SteadPrice *price);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadPrice, stead_price_free)

GPtrArray    *stead_product_repo_list    (SteadStore *store, gboolean retired, GError **error) G_GNUC_WARN_UNUSED_RESULT;
SteadProduct *stead_product_repo_get     (SteadStore *store, gint64 id, GError **error) G_GNUC_WARN_UNUSED_RESULT;
/* Saves the product with its parts and stall costs. */
gboolean      stead_product_repo_save    (SteadStore *store, SteadProduct *product, GError **error) G_GNUC_WARN_UNUSED_RESULT;
gboolean      stead_product_repo_delete  (SteadStore *store, gint64 id, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* The product in sale that is packed from an item, the oldest first; 0: none, -1 with @error. */
gint64        stead_product_repo_of_item (SteadStore *store, gint64 item_id, GError **error);

/* Oldest first. */
GPtrArray    *stead_product_repo_prices    (SteadStore *store, gint64 product_id, GError **error) G_GNUC_WARN_UNUSED_RESULT;
/* A second price on one day replaces the first.  @cents 0 or more. */
gboolean      stead_product_repo_set_price (SteadStore *store, gint64 product_id, SteadDay from_day, gint64 cents,
                                            const char *note, GError **error) G_GNUC_WARN_UNUSED_RESULT;
/* The price in force on @day; -1: none yet (@error is then unset). */
gint64        stead_product_repo_price_on  (SteadStore *store, gint64 product_id, SteadDay day, GError **error);

G_END_DECLS
