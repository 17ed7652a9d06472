/* stead-price-choice.h - "Which price?": markup and margin, easy change, a bundle, what
 * another price would have to sell, and what people asked for at which price.
 *
 * The farm is read once; while a handle is dragged only stead_price_choice_settle() runs.
 */
#pragma once

#include "answer/stead-price-answer.h"
#include "core/stead-demand-line.h"
#include "store/stead-scenario-repo.h"

G_BEGIN_DECLS

typedef struct
{
  SteadPriceAnswer *price;
  GPtrArray        *trials;        /* of SteadPriceTrial, by day */
  double            try_cents;     /* the price that is tried */
  double            other_cents;   /* one to compare with */
  double            bundle_units;  /* in one bundle, 2 or more */
  double            bundle_off;    /* share taken off its price, 0 to 0.9 */

  /* Settled: */
  double            unit_cents;
  double            markup_frac, margin_frac;   /* NAN where there is none */
  double            least_cents;   /* covers what another one uses up: no equipment, no pullets */
  gint64            easy_below, easy_above;     /* whole coins */
  double            same_units;    /* at the other price, for the same profit as the plan; NAN */
  double            bundle_cents;  /* price of one bundle, whole coins */
  double            bundle_margin_frac;
  gboolean          has_line;
  SteadDemandLine   line;          /* units by cents */
  double            best_cents;    /* earns most */
  double            most_cents;    /* sells most: the lowest seen */
  char             *sentence;      /* markup */
  char             *advice;        /* markup: what the pairs say, or how many are missing */
  char             *bundle_text;   /* plain */
  char             *same_text;     /* plain */
} SteadPriceChoice;

void stead_price_choice_free (SteadPriceChoice *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadPriceChoice, stead_price_choice_free)

SteadPriceChoice *stead_price_choice_new (SteadStore   *store,
                                          gint64        product_id,
                                          SteadPeriod   period,
                                          GError      **error) G_GNUC_WARN_UNUSED_RESULT;
void              stead_price_choice_settle (SteadPriceChoice *self);
/* (transfer full) (element-type SteadWhy) */
GPtrArray        *stead_price_choice_whys (const SteadPriceChoice *self) G_GNUC_WARN_UNUSED_RESULT;

/* Share of the chances that the band of the line holds. */
#define STEAD_PRICE_CHOICE_LEVEL 0.8

G_END_DECLS
