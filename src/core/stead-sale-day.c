/* stead-sale-day.c - a sale day drawn many times before it comes. */
#include "config.h"

#include "core/stead-core-error.h"
#include "core/stead-draw-private.h"
#include "core/stead-sale-day.h"

#include <glib/gi18n-lib.h>
#include <gsl/gsl_cdf.h>
#include <gsl/gsl_randist.h>
#include <math.h>
#include <string.h>

#define LARGEST 1e9

/* The stream of the weather; products have their own. */
#define WEATHER_STREAM G_MAXUINT32

/* Sums of one block and product. */
typedef struct
{
  double asked;
  double sold;
  double left;
  double missed;
  double sold_out;    /* draws */
} Sums;

struct _SteadSaleDraws
{
  SteadSaleProduct *products;
  gsize             n_products;
  double            fixed_cents;
  double            together;
  guint32           seed;
  gsize             n_draws;
  double           *takings;    /* of each draw */
  double           *profit;
  double           *scratch;    /* bands change the order of what they get */
  Sums             *sums;       /* of each block and product */
};

static gboolean
is_product (const SteadSaleProduct *product)
{
  const SteadThreePoint *guess = &product->guess;

  return guess->low >= 0 && guess->likely >= guess->low && guess->high >= guess->likely && guess->high <= LARGEST
         && product->made >= 0 && product->made <= LARGEST
         && product->price_cents >= 0 && product->price_cents <= LARGEST
         && product->cost_cents >= 0 && product->cost_cents <= LARGEST
         && fabs (product->left_cents) <= LARGEST
         && product->lost_cents >= 0 && product->lost_cents <= LARGEST;
}

static gboolean
check_plan (const SteadSalePlan  *plan,
            GError              **error)
{
  gboolean fits = plan->n_products <= STEAD_SALE_MOST_PRODUCTS && fabs (plan->fixed_cents) <= 1e12
                  && plan->together >= 0 && plan->together <= 1;

  for (gsize i = 0; i < plan->n_products && fits; i++)
    fits = is_product (&plan->products[i]);
  if (!fits)
    g_set_error_literal (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_RANGE,
                         _("A sale day needs guesses from the lowest over the likeliest to the highest number, and "
                           "amounts and prices not below 0. Check its products."));
  return fits;
}

SteadSaleDraws *
stead_sale_draws_new (const SteadSalePlan  *plan,
                      gsize                 n_draws,
                      guint32               seed,
                      GError              **error)
{
  SteadSaleDraws *draws;

  g_return_val_if_fail (plan != NULL && (plan->products != NULL || plan->n_products == 0), NULL);
  g_return_val_if_fail (n_draws > 0 && n_draws <= STEAD_SALE_MOST_DRAWS, NULL);

  if (!check_plan (plan, error))
    return NULL;
  draws = g_new0 (SteadSaleDraws, 1);
  draws->products = g_memdup2 (plan->products, plan->n_products * sizeof *plan->products);
  draws->n_products = plan->n_products;
  draws->fixed_cents = plan->fixed_cents;
  draws->together = plan->together;
  draws->seed = seed;
  draws->n_draws = n_draws;
  draws->takings = g_new0 (double, n_draws);
  draws->profit = g_new0 (double, n_draws);
  draws->scratch = g_new0 (double, n_draws);
  draws->sums = g_new0 (Sums, stead_sale_draws_get_n_blocks (draws) * plan->n_products + 1);
  return draws;
}

void
stead_sale_draws_free (SteadSaleDraws *draws)
{
  if (draws == NULL)
    return;
  g_free (draws->products);
  g_free (draws->takings);
  g_free (draws->profit);
  g_free (draws->scratch);
  g_free (draws->sums);
  g_free (draws);
}

guint
stead_sale_draws_get_n_blocks (const SteadSaleDraws *draws)
{
  g_return_val_if_fail (draws != NULL, 0);
  return (guint) ((draws->n_draws + DRAW_BLOCK - 1) / DRAW_BLOCK);
}

/* One product through the draws of a block.  Weather and the product's own chance make
 * one bell curve, whose chance is read off the guess: so each product keeps its guess
 * whatever the weather's share. */
static void
draw_product (SteadSaleDraws         *draws,
              const SteadSaleProduct *product,
              const double           *weather,
              gsize                   first,
              gsize                   n,
              gsl_rng                *rng,
              Sums                   *sums)
{
  double shared = sqrt (draws->together);
  double own = sqrt (1 - draws->together);

  for (gsize i = 0; i < n; i++)
    {
      double bell = shared * weather[i] + own * gsl_ran_gaussian_ziggurat (rng, 1);
      double asked = stead_triangle_quantile (&product->guess, gsl_cdf_ugaussian_P (bell));
      double sold = MIN (asked, product->made);
      double left = product->made - sold;

      draws->takings[first + i] += sold * product->price_cents;
      draws->profit[first + i] += sold * product->price_cents - product->made * product->cost_cents
                                  + left * product->left_cents;
      sums->asked += asked;
      sums->sold += sold;
      sums->left += left;
      sums->missed += asked - sold;
      sums->sold_out += asked >= product->made;
    }
}

static void
run_block (SteadSaleDraws *draws,
           guint           block,
           gsl_rng        *rng)
{
  double weather[DRAW_BLOCK];
  gsize first = (gsize) block * DRAW_BLOCK;
  gsize n = MIN (DRAW_BLOCK, draws->n_draws - first);

  draw_stream (rng, draws->seed, block, WEATHER_STREAM);
  for (gsize i = 0; i < n; i++)
    {
      weather[i] = gsl_ran_gaussian_ziggurat (rng, 1);
      draws->takings[first + i] = 0;
      draws->profit[first + i] = -draws->fixed_cents;
    }
  for (gsize p = 0; p < draws->n_products; p++)
    {
      Sums *sums = &draws->sums[block * draws->n_products + p];

      memset (sums, 0, sizeof *sums);
      draw_stream (rng, draws->seed, block, draws->products[p].stream);
      draw_product (draws, &draws->products[p], weather, first, n, rng, sums);
    }
}

gboolean
stead_sale_draws_run (SteadSaleDraws  *draws,
                      guint            first,
                      guint            n,
                      SteadSaleStop    stop,
                      gpointer         stop_data,
                      GError         **error)
{
  gsl_rng *rng;
  gboolean stopped = FALSE;

  g_return_val_if_fail (draws != NULL, FALSE);
  g_return_val_if_fail (first <= stead_sale_draws_get_n_blocks (draws)
                        && n <= stead_sale_draws_get_n_blocks (draws) - first, FALSE);

  rng = gsl_rng_alloc (gsl_rng_taus2);
  for (guint block = first; block < first + n && !stopped; block++)
    {
      stopped = stop != NULL && stop (stop_data);
      if (!stopped)
        run_block (draws, block, rng);
    }
  gsl_rng_free (rng);
  if (stopped)
    g_set_error_literal (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_STOPPED, _("Stopped before all draws were made."));
  return !stopped;
}

void
stead_sale_draws_product (SteadSaleDraws    *draws,
                          gsize              product,
                          SteadSaleFigures  *out)
{
  Sums all = { 0 };
  double n;

  g_return_if_fail (draws != NULL && out != NULL && product < draws->n_products);

  n = (double) draws->n_draws;
  for (guint block = 0; block < stead_sale_draws_get_n_blocks (draws); block++)
    {
      const Sums *sums = &draws->sums[block * draws->n_products + product];

      all.asked += sums->asked;
      all.sold += sums->sold;
      all.left += sums->left;
      all.missed += sums->missed;
      all.sold_out += sums->sold_out;
    }
  *out = (SteadSaleFigures) { all.asked / n, all.sold / n, all.left / n, all.missed / n, all.sold_out / n };
}

static void
band_of (SteadSaleDraws *draws,
         const double   *values,
         double          level,
         SteadBand      *out)
{
  memcpy (draws->scratch, values, draws->n_draws * sizeof *values);
  stead_band_of_draws (draws->scratch, draws->n_draws, level, out);
}

void
stead_sale_draws_takings (SteadSaleDraws *draws,
                          double          level,
                          SteadBand      *out)
{
  g_return_if_fail (draws != NULL && out != NULL);
  band_of (draws, draws->takings, level, out);
}

void
stead_sale_draws_profit (SteadSaleDraws *draws,
                         double          level,
                         SteadBand      *out)
{
  g_return_if_fail (draws != NULL && out != NULL);
  band_of (draws, draws->profit, level, out);
}

double
stead_sale_draws_loss_chance (const SteadSaleDraws *draws)
{
  gsize losses = 0;

  g_return_val_if_fail (draws != NULL, NAN);

  for (gsize i = 0; i < draws->n_draws; i++)
    losses += draws->profit[i] < 0;
  return (double) losses / (double) draws->n_draws;
}

void
stead_sale_draws_moments (const SteadSaleDraws *draws,
                          double               *out_mean,
                          double               *out_sd,
                          double               *out_goodwill)
{
  double mean = 0, squares = 0, goodwill = 0;
  double n;

  g_return_if_fail (draws != NULL && out_mean != NULL && out_sd != NULL && out_goodwill != NULL);

  n = (double) draws->n_draws;
  for (gsize i = 0; i < draws->n_draws; i++)
    mean += draws->profit[i] / n;
  for (gsize i = 0; i < draws->n_draws; i++)
    squares += (draws->profit[i] - mean) * (draws->profit[i] - mean);
  for (guint block = 0; block < stead_sale_draws_get_n_blocks (draws); block++)
    for (gsize p = 0; p < draws->n_products; p++)
      goodwill += draws->sums[block * draws->n_products + p].missed * draws->products[p].lost_cents / n;
  *out_mean = mean;
  *out_sd = draws->n_draws > 1 ? sqrt (squares / (n - 1)) : 0;
  *out_goodwill = goodwill;
}
