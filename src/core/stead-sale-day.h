/* stead-sale-day.h - a sale day drawn many times before it comes.
 *
 * Each product has a guess of what people ask for; good and bad weather moves all of
 * them together.  What is asked for and there is sold; the rest is left over, or people
 * go without.  Parts of units are drawn too: what is shown is rounded by who shows it.
 * The same seed gives the same figures on every machine, whatever the
 * number of threads.
 */
#pragma once

#include "core/stead-band.h"
#include "core/stead-chance.h"

G_BEGIN_DECLS

#define STEAD_SALE_MOST_PRODUCTS 100
#define STEAD_SALE_MOST_DRAWS 200000

typedef struct
{
  SteadThreePoint guess;         /* units asked for, each 0 or more */
  double          made;          /* units that are there, 0 or more */
  double          price_cents;   /* of one */
  double          cost_cents;    /* of one that is made, spent in any case */
  double          left_cents;    /* what one left over is still worth; below 0: it costs */
  double          lost_cents;    /* goodwill that one who goes without costs; no cash */
  guint32         stream;        /* a number of its own, as its id in the farm file */
} SteadSaleProduct;

typedef struct
{
  const SteadSaleProduct *products;   /* (array length=n_products) */
  gsize                   n_products;
  double                  fixed_cents;   /* table, permit, fuel, ice */
  double                  together;      /* how far products move together, 0 to 1 */
} SteadSalePlan;

/* TRUE when the work is to stop; g_cancellable_is_cancelled() fits. */
typedef gboolean (*SteadSaleStop) (gpointer data);

typedef struct _SteadSaleDraws SteadSaleDraws;

/**
 * stead_sale_draws_new:
 * @plan: the day; copied
 * @n_draws: 1 to %STEAD_SALE_MOST_DRAWS
 * @seed: any number
 * @error: return location for a #GError in %STEAD_CORE_ERROR
 *
 * Returns: (transfer full): room for the draws, still empty; %NULL for a plan that
 *   cannot be
 */
SteadSaleDraws *stead_sale_draws_new (const SteadSalePlan  *plan,
                                      gsize                 n_draws,
                                      guint32               seed,
                                      GError              **error) G_GNUC_WARN_UNUSED_RESULT;

void stead_sale_draws_free (SteadSaleDraws *draws);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadSaleDraws, stead_sale_draws_free)

/**
 * stead_sale_draws_get_n_blocks:
 * Returns: parts of the work
 */
guint stead_sale_draws_get_n_blocks (const SteadSaleDraws *draws);

/**
 * stead_sale_draws_run:
 * @first: first block
 * @n: how many
 * @stop: (nullable): asked before every block
 * @stop_data: for @stop
 * @error: return location for a #GError in %STEAD_CORE_ERROR
 *
 * Threads may run different blocks at the same time.
 *
 * Returns: %TRUE, or %FALSE if it was stopped
 */
gboolean stead_sale_draws_run (SteadSaleDraws  *draws,
                               guint            first,
                               guint            n,
                               SteadSaleStop    stop,
                               gpointer         stop_data,
                               GError         **error) G_GNUC_WARN_UNUSED_RESULT;

/* One product over all draws, means. */
typedef struct
{
  double asked;
  double sold;
  double left;
  double missed;             /* units that people went without */
  double sold_out_chance;
} SteadSaleFigures;

/**
 * stead_sale_draws_product:
 * @product: from 0
 * @out: (out): its figures
 *
 * After all blocks were run.
 */
void stead_sale_draws_product (SteadSaleDraws    *draws,
                               gsize              product,
                               SteadSaleFigures  *out);

/**
 * stead_sale_draws_takings: the money in the till
 * stead_sale_draws_profit: takings - what was made - fixed + worth of what is left; the
 *   goodwill of those who went without is no part of it
 * stead_sale_draws_loss_chance: chance that the profit is below 0
 *
 * After all blocks were run.
 */
void stead_sale_draws_takings (SteadSaleDraws *draws,
                               double          level,
                               SteadBand      *out);
void stead_sale_draws_profit (SteadSaleDraws *draws,
                              double          level,
                              SteadBand      *out);
double stead_sale_draws_loss_chance (const SteadSaleDraws *draws);

/**
 * stead_sale_draws_moments:
 * @out_mean: (out): mean profit, cents
 * @out_sd: (out): its standard deviation, cents: what stead-outlook.h takes
 * @out_goodwill: (out): mean goodwill lost, cents
 */
void stead_sale_draws_moments (const SteadSaleDraws *draws,
                               double               *out_mean,
                               double               *out_sd,
                               double               *out_goodwill);

G_END_DECLS
