/* stead-build-buy-why.h - what a thing of a bill comes to at each supplier, and what a receipt was planned to cost. */
#pragma once

#include "answer/stead-build-answer.h"

G_BEGIN_DECLS

/* Something of the bill, and how many of it are on a receipt. */
typedef struct
{
  const char *name;
  double      all;          /* that the build takes, as they are sold */
  double      came;         /* of them before this receipt */
  double      packs;        /* on this receipt, as typed, else all that are still to come */
  gint64      price_cents;  /* planned price of one; -1: not known */
} SteadBuildBuying;

/* So many at that price, in whole cents. */
gint64 stead_build_price_cents (gint64 price_cents,
                                double packs);

/**
 * stead_build_quotes_whys:
 * @quotes: (element-type SteadBuildQuote)
 *
 * Returns: (transfer full): of SteadWhy: what all of @row comes to at each supplier, and how many are bought;
 *   empty without a quote
 */
GPtrArray *stead_build_quotes_whys (const SteadBuildRow *row,
                                    const GPtrArray     *quotes,
                                    const char          *currency) G_GNUC_WARN_UNUSED_RESULT;

/**
 * stead_build_buying_whys:
 * @things: (element-type SteadBuildBuying)
 *
 * Returns: (transfer full): of SteadWhy: what each was planned to cost, and how many are still to come of what
 *   came in part
 */
GPtrArray *stead_build_buying_whys (const GArray *things,
                                    const char   *currency) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
