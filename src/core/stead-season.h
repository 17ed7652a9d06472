/* stead-season.h - a season of sale days drawn many times before it comes.
 *
 * Of each input the lowest, likeliest and highest value are given (the triangular shape of
 * stead-chance.h).  A season draws once: how many of each product one sale day sells, what
 * its batch gives, the price of what is bought, the costs of a sale day.  Products of one
 * batch share what it gives; all share the prices.
 *
 * Good and bad seasons: in a share of the seasons all products have the same luck, in the
 * others each has its own.  So each product keeps its own range, and the rank correlation
 * of two of them is that share (the family of Fréchet: Nelsen, An Introduction to Copulas,
 * section 2.2; memory).
 *
 * The same seed gives the same figures on every machine, whatever the number of threads;
 * a product more or less leaves the luck of all others as it was.
 */
#pragma once

#include "core/stead-band.h"
#include "core/stead-chance.h"

G_BEGIN_DECLS

#define STEAD_SEASON_MOST_PRODUCTS 100
#define STEAD_SEASON_MOST_DRAWS 1000000
#define STEAD_SEASON_MOST_DAYS 366

typedef struct
{
  SteadThreePoint sold;          /* units on one sale day, 0 or more */
  SteadThreePoint yield;         /* what comes of the batch, as a multiple of the log's; above 0 */
  double          price_cents;   /* of one */
  double          input_cents;   /* of one: what is bought to go in, at today's prices */
  double          keep_cents;    /* of one: the rest of what is spread over all that comes out */
  double          other_cents;   /* of one: goes with each that is sold, however much comes out */
  double          step_cents;    /* of one sale day, for each step_units begun; 0: none */
  double          step_units;
  guint32         stream;        /* a number of its own, as its id in the farm file */
  guint32         yield_stream;  /* of its batch: products of one batch have the same */
} SteadSeasonProduct;

typedef struct
{
  const SteadSeasonProduct *products;    /* (array length=n_products) */
  gsize                     n_products;
  SteadThreePoint           input;       /* price of what is bought, as a multiple of today's; 0 or more */
  SteadThreePoint           day_cents;   /* costs of one sale day, without steps */
  int                       n_days;      /* sale days, 1 to %STEAD_SEASON_MOST_DAYS */
  double                    together;    /* share of the seasons in which all have the same luck, 0 to 1 */
} SteadSeason;

/* TRUE when the work is to stop; g_cancellable_is_cancelled() fits. */
typedef gboolean (*SteadSeasonStop) (gpointer data);

typedef struct _SteadSeasonDraws SteadSeasonDraws;

/* Whether low <= likely <= high, all of them numbers. */
gboolean stead_season_is_range (const SteadThreePoint *range);

/**
 * stead_season_profit:
 * @season: the plan
 *
 * Profit of the season when all is as likely as can be: the product sum
 * n_days x (sum of units x (price - (input x its price + keep) / yield - other) - steps - day).
 *
 * Returns: cents
 */
double stead_season_profit (const SteadSeason *season);

/**
 * stead_season_draws_new:
 * @season: copied
 * @n_draws: seasons, 1 to %STEAD_SEASON_MOST_DRAWS
 * @seed: any number
 * @error: return location for a #GError in %STEAD_CORE_ERROR
 *
 * Returns: (transfer full): room for the seasons, still empty; %NULL for a range that is upside
 *   down or a number that cannot be
 */
SteadSeasonDraws *stead_season_draws_new (const SteadSeason  *season,
                                          gsize               n_draws,
                                          guint32             seed,
                                          GError            **error) G_GNUC_WARN_UNUSED_RESULT;

void stead_season_draws_free (SteadSeasonDraws *draws);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadSeasonDraws, stead_season_draws_free)

/* Parts of the work. */
guint stead_season_draws_get_n_blocks (const SteadSeasonDraws *draws);

/**
 * stead_season_draws_run:
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
gboolean stead_season_draws_run (SteadSeasonDraws  *draws,
                                 guint              first,
                                 guint              n,
                                 SteadSeasonStop    stop,
                                 gpointer           stop_data,
                                 GError           **error) G_GNUC_WARN_UNUSED_RESULT;

/**
 * stead_season_draws_run_all:
 * @stop: (nullable): asked before every block, by two threads at the same time
 * @stop_data: for @stop
 * @done: (nullable) (inout): counts the blocks that are done, for g_atomic_int_get() of another thread
 *
 * All blocks, on two threads.
 *
 * Returns: %TRUE, or %FALSE if it was stopped; then there is nothing to read
 */
gboolean stead_season_draws_run_all (SteadSeasonDraws *draws,
                                     SteadSeasonStop   stop,
                                     gpointer          stop_data,
                                     gint             *done);

/**
 * stead_season_draws_band: the profit of the season, cents
 * stead_season_draws_chance_below: share of the seasons with a profit below @cents, 0 to 1
 * stead_season_draws_moments: mean and standard deviation of the profit, cents
 * stead_season_draws_count: how many profits lie in each of @n_bins equal parts from @low to @high;
 *   what lies beyond counts in the first and the last
 *
 * After all blocks were run.
 */
void   stead_season_draws_band         (SteadSeasonDraws       *draws,
                                        double                  level,
                                        SteadBand              *out);
double stead_season_draws_chance_below (const SteadSeasonDraws *draws,
                                        double                  cents);
void   stead_season_draws_moments      (const SteadSeasonDraws *draws,
                                        double                 *out_mean,
                                        double                 *out_sd);
void   stead_season_draws_count        (const SteadSeasonDraws *draws,
                                        double                  low,
                                        double                  high,
                                        guint                  *out_counts,
                                        gsize                   n_bins);

G_END_DECLS
