/* stead-sale-answer.h - "How many should we make for this sale, and what may it bring?"
 *
 * Demand is learned from past days of the same product (core/stead-demand-learn.h); the
 * day is drawn many times (core/stead-sale-day.h).  Cash is what the till says: what one
 * more customer who goes without costs is no part of the result.
 */
#pragma once

#include "answer/stead-words.h"
#include "core/stead-band.h"
#include "core/stead-order.h"
#include "store/stead-farm-repo.h"
#include "store/stead-sale-cash-up.h"
#include "store/stead-sale-tally.h"

G_BEGIN_DECLS

/* Draws of one day; and the seed, so that the same plan gives the same figures. */
#define STEAD_SALE_DRAWS 5000
#define STEAD_SALE_SEED 20260303u

/* How far products move together with the weather, 0 to 1.  Own rule. */
#define STEAD_SALE_TOGETHER 0.5

/* One product of the plan.  What is not known is NAN. */
typedef struct
{
  SteadSaleGood *good;           /* of the sale */
  double         on_hand_units;  /* in lots that keep until then, and that no other product or sale takes */
  double         coming_units;   /* about what its batch gives until then, less what products before it take */
  gint64         source_id;      /* of the batch or item that it comes from; 0: none */
  gboolean       source_is_batch;
  double         unit_cents;     /* cost of one */
  SteadDemand    demand;         /* of the day; only with has_demand */
  gboolean       has_demand;
  guint          n_days;         /* past days that it was learned from */
  double         demand_units;   /* mean */
  double         ratio;          /* chance of having enough that pays best */
  double         best_units;     /* number that pays best, whole */
  double         sold_out_frac;  /* chance to sell out at the plan */
  double         sold_units;     /* expected at the plan */
  double         left_units;
  double         missed_units;   /* that people go without */
  char          *text;           /* plain: what this means for this product */
  GPtrArray     *lots;           /* (nullable) of SteadSaleLotChoice: out of which lots it is brought */
  GPtrArray     *lots_texts;     /* (nullable) of plain texts: the same in words */
} SteadSaleLineAnswer;

typedef struct
{
  SteadFarm *farm;
  SteadSale *sale;
  GPtrArray *lines;              /* of SteadSaleLineAnswer, as the goods of the sale */
  gint64     fixed_cents;
  gint64     full_cents;         /* takings if all that is planned is sold */
  double     margin_cents;       /* of that, less what it cost; NAN: a cost is not known */
  double     even_cents;         /* takings at which the day breaks even with this mix; NAN */
  gboolean   has_band;           /* every product has a demand and a cost */
  SteadBand  takings, profit;    /* 8 days of 10 */
  double     loss_frac;          /* chance of a loss */
  double     mean_cents, sd_cents;
  char      *sentence;           /* markup */
  char      *caution;            /* (nullable) plain */
} SteadSaleAnswer;

void stead_sale_answer_free (SteadSaleAnswer *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadSaleAnswer, stead_sale_answer_free)

SteadSaleAnswer *stead_sale_answer_new (SteadStore  *store,
                                        gint64       sale_id,
                                        GError     **error) G_GNUC_WARN_UNUSED_RESULT;

/* The same for a plan that is not saved yet; @sale: (transfer full). */
SteadSaleAnswer *stead_sale_answer_of (SteadStore  *store,
                                       SteadSale   *sale,
                                       GError     **error) G_GNUC_WARN_UNUSED_RESULT;

/**
 * stead_sale_unit_cost:
 * @out_cents: (out): cost of one of a product: by its batch, or by what its lots cost and
 *   its packaging; NAN: not known
 */
gboolean stead_sale_unit_cost (SteadStore  *store,
                               gint64       product_id,
                               double      *out_cents,
                               GError     **error) G_GNUC_WARN_UNUSED_RESULT;

/* (transfer full) (element-type SteadWhy): number, chance and left-overs by product, and what the day brings. */
GPtrArray *stead_sale_answer_whys (const SteadSaleAnswer *self) G_GNUC_WARN_UNUSED_RESULT;

/* "Saturday, Dec 5, 9:00 AM to 1:00 PM, Town hall" */
char *stead_sale_when (const SteadSale *sale) G_GNUC_WARN_UNUSED_RESULT;
/* "9:00 AM", as the locale writes it; minutes since midnight. */
char *stead_sale_clock (int minute) G_GNUC_WARN_UNUSED_RESULT;
/* Reads "9", "9:30", "13:00", "1 pm": minutes since midnight; FALSE: it is no hour. */
gboolean stead_sale_clock_parse (const char *text,
                                 int        *out_minute);
/* "Back to the store room", "Kitchen", … */
const char *stead_sale_left_name (SteadLeftPlace goes_to);
/* "Sold", "Sample", "Given away", "Spoiled" */
const char *stead_sale_tap_name (SteadTapKind kind);

G_END_DECLS
