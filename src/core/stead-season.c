/* stead-season.c - a season of sale days drawn many times before it comes.
 *
 * Speed is part of what is promised: a handle that is dragged draws thousands of seasons
 * anew.  So a season is no object: each input is drawn for a block of seasons at once, out
 * of counted numbers (splitmix64), which need no generator to be wound on.
 */
#include "config.h"

#include "core/stead-core-error.h"
#include "core/stead-draw-private.h"
#include "core/stead-season.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#define LARGEST 1e9
#define GOLDEN G_GUINT64_CONSTANT (0x9e3779b97f4a7c15)

/* Streams that are no product's and no batch's. */
#define INPUT_STREAM  G_MAXUINT32
#define DAY_STREAM    (G_MAXUINT32 - 1)
#define LUCK_STREAM   (G_MAXUINT32 - 2)
#define COIN_STREAM   (G_MAXUINT32 - 3)
#define YIELD_STREAMS 0x80000000u    /* and up: of the batches */

struct _SteadSeasonDraws
{
  SteadSeason         season;
  SteadSeasonProduct *products;
  guint32             seed;
  gsize               n_draws;
  double             *profit;    /* of each season, cents */
  double             *scratch;   /* bands change the order of what they get */
};

/* A triangular shape, ready to be drawn from: one root a draw. */
typedef struct
{
  double low, high, split, up, down;
} Shape;

/* --- drawing ------------------------------------------------------------------------- */

static Shape
shape_of (const SteadThreePoint *range)
{
  double width = range->high - range->low;

  return (Shape) { range->low, range->high, width > 0 ? (range->likely - range->low) / width : 1,
                   width * (range->likely - range->low), width * (range->high - range->likely) };
}

/* Chance decides which side it is, which no processor can foretell: so both sides are
 * reckoned, and none is jumped over. */
static inline double
draw_shape (const Shape *shape,
            double       chance)
{
  double left = chance < shape->split;
  double root = sqrt (left * chance * shape->up + (1 - left) * (1 - chance) * shape->down);

  return left * (shape->low + root) + (1 - left) * (shape->high - root);
}

/* Numbers from 0 to below 1 of a stream in a block. */
static void
fill_chances (const SteadSeasonDraws *draws,
              guint                   block,
              guint32                 stream,
              double                 *out,
              gsize                   n)
{
  guint64 at = draw_mix (draw_mix (((guint64) draws->seed << 32) | block) ^ stream);

  for (gsize i = 0; i < n; i++, at += GOLDEN)
    out[i] = (double) (gint64) (draw_mix (at) >> 11) * 0x1p-53;
}

static void
fill_values (const SteadSeasonDraws *draws,
             guint                   block,
             guint32                 stream,
             const SteadThreePoint  *range,
             double                 *out,
             gsize                   n)
{
  Shape shape = shape_of (range);

  if (!(range->high > range->low))
    {
      for (gsize i = 0; i < n; i++)
        out[i] = range->low;
      return;
    }
  fill_chances (draws, block, stream, out, n);
  for (gsize i = 0; i < n; i++)
    out[i] = draw_shape (&shape, out[i]);
}

/* What is the same for all products of a block. */
typedef struct
{
  double  input[DRAW_BLOCK];
  double  luck[DRAW_BLOCK];     /* shared … */
  double  coin[DRAW_BLOCK];     /* … where this is below the share */
} Shared;

static double
steps_cents (const SteadSeasonProduct *product,
             double                    units)
{
  if (!(product->step_cents > 0) || !(product->step_units > 0))
    return 0;
  return product->step_cents * MAX (1, ceil (units / product->step_units - 1e-9));
}

static void
draw_product (const SteadSeasonDraws   *draws,
              const SteadSeasonProduct *product,
              const Shared             *shared,
              guint                     block,
              double                   *profit,
              gsize                     n)
{
  double own[DRAW_BLOCK], yield[DRAW_BLOCK];
  double together = draws->season.together, kept = product->price_cents - product->other_cents;
  Shape shape = shape_of (&product->sold);
  gboolean steps = product->step_cents > 0 && product->step_units > 0;

  fill_chances (draws, block, product->stream, own, n);
  fill_values (draws, block, YIELD_STREAMS | product->yield_stream, &product->yield, yield, n);
  for (gsize i = 0; i < n; i++)
    {
      double same = shared->coin[i] < together;
      double units = draw_shape (&shape, same * shared->luck[i] + (1 - same) * own[i]);

      profit[i] += units * (kept - (product->input_cents * shared->input[i] + product->keep_cents) / yield[i]);
      own[i] = units;
    }
  for (gsize i = 0; steps && i < n; i++)
    profit[i] -= steps_cents (product, own[i]);
}

static void
run_block (SteadSeasonDraws *draws,
           guint             block)
{
  gsize first = (gsize) block * DRAW_BLOCK, n = MIN (DRAW_BLOCK, draws->n_draws - first);
  double *profit = draws->profit + first;
  Shared shared;

  fill_values (draws, block, INPUT_STREAM, &draws->season.input, shared.input, n);
  fill_values (draws, block, DAY_STREAM, &draws->season.day_cents, profit, n);
  fill_chances (draws, block, LUCK_STREAM, shared.luck, n);
  fill_chances (draws, block, COIN_STREAM, shared.coin, n);
  for (gsize i = 0; i < n; i++)
    profit[i] = -profit[i];
  for (gsize p = 0; p < draws->season.n_products; p++)
    draw_product (draws, &draws->products[p], &shared, block, profit, n);
  for (gsize i = 0; i < n; i++)
    profit[i] *= draws->season.n_days;
}

/* --- the plan -------------------------------------------------------------------------- */

gboolean
stead_season_is_range (const SteadThreePoint *range)
{
  g_return_val_if_fail (range != NULL, FALSE);

  return range->low <= range->likely && range->likely <= range->high && fabs (range->low) <= LARGEST
         && fabs (range->high) <= LARGEST;
}

static gboolean
is_product (const SteadSeasonProduct *product)
{
  return stead_season_is_range (&product->sold) && product->sold.low >= 0
         && stead_season_is_range (&product->yield) && product->yield.low > 0
         && product->price_cents >= 0 && product->price_cents <= LARGEST
         && fabs (product->input_cents) <= LARGEST && fabs (product->keep_cents) <= LARGEST
         && fabs (product->other_cents) <= LARGEST
         && product->step_cents >= 0 && product->step_cents <= LARGEST
         && product->step_units >= 0 && product->step_units <= LARGEST
         && product->yield_stream < YIELD_STREAMS;
}

static gboolean
check_season (const SteadSeason  *season,
              GError            **error)
{
  gboolean fits = season->n_products <= STEAD_SEASON_MOST_PRODUCTS
                  && season->n_days >= 1 && season->n_days <= STEAD_SEASON_MOST_DAYS
                  && season->together >= 0 && season->together <= 1
                  && stead_season_is_range (&season->input) && season->input.low >= 0
                  && stead_season_is_range (&season->day_cents) && season->day_cents.low >= 0;

  for (gsize i = 0; i < season->n_products && fits; i++)
    fits = is_product (&season->products[i]);
  if (!fits)
    g_set_error_literal (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_RANGE,
                         _("A range goes from the lowest over the likeliest to the highest number, and none of them is "
                           "below 0. Turn the handles so that each range does."));
  return fits;
}

double
stead_season_profit (const SteadSeason *season)
{
  double day;

  g_return_val_if_fail (season != NULL && (season->products != NULL || season->n_products == 0), NAN);

  day = -season->day_cents.likely;
  for (gsize p = 0; p < season->n_products; p++)
    {
      const SteadSeasonProduct *product = &season->products[p];
      double unit = (product->input_cents * season->input.likely + product->keep_cents) / product->yield.likely;

      day += product->sold.likely * (product->price_cents - unit - product->other_cents)
             - steps_cents (product, product->sold.likely);
    }
  return day * season->n_days;
}

SteadSeasonDraws *
stead_season_draws_new (const SteadSeason  *season,
                        gsize               n_draws,
                        guint32             seed,
                        GError            **error)
{
  SteadSeasonDraws *draws;

  g_return_val_if_fail (season != NULL && (season->products != NULL || season->n_products == 0), NULL);
  g_return_val_if_fail (n_draws > 0 && n_draws <= STEAD_SEASON_MOST_DRAWS, NULL);

  if (!check_season (season, error))
    return NULL;
  draws = g_new0 (SteadSeasonDraws, 1);
  draws->season = *season;
  draws->products = g_memdup2 (season->products, season->n_products * sizeof *season->products);
  draws->season.products = draws->products;
  draws->seed = seed;
  draws->n_draws = n_draws;
  draws->profit = g_new0 (double, n_draws);
  draws->scratch = g_new0 (double, n_draws);
  return draws;
}

void
stead_season_draws_free (SteadSeasonDraws *draws)
{
  if (draws == NULL)
    return;
  g_free (draws->products);
  g_free (draws->profit);
  g_free (draws->scratch);
  g_free (draws);
}

/* --- the work ---------------------------------------------------------------------------- */

guint
stead_season_draws_get_n_blocks (const SteadSeasonDraws *draws)
{
  g_return_val_if_fail (draws != NULL, 0);
  return (guint) ((draws->n_draws + DRAW_BLOCK - 1) / DRAW_BLOCK);
}

gboolean
stead_season_draws_run (SteadSeasonDraws  *draws,
                        guint              first,
                        guint              n,
                        SteadSeasonStop    stop,
                        gpointer           stop_data,
                        GError           **error)
{
  g_return_val_if_fail (draws != NULL, FALSE);
  g_return_val_if_fail (first <= stead_season_draws_get_n_blocks (draws)
                        && n <= stead_season_draws_get_n_blocks (draws) - first, FALSE);

  for (guint block = first; block < first + n; block++)
    {
      if (stop != NULL && stop (stop_data))
        {
          g_set_error_literal (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_STOPPED, _("Stopped before all draws were made."));
          return FALSE;
        }
      run_block (draws, block);
    }
  return TRUE;
}

/* What one of the two threads does. */
typedef struct
{
  SteadSeasonDraws *draws;
  guint             first, end;
  SteadSeasonStop   stop;
  gpointer          stop_data;
  gint             *done;
  gboolean          finished;
} Half;

static gpointer
run_half (gpointer data)
{
  Half *half = data;

  for (guint block = half->first; block < half->end; block++)
    {
      if (half->stop != NULL && half->stop (half->stop_data))
        return NULL;
      run_block (half->draws, block);
      if (half->done != NULL)
        g_atomic_int_inc (half->done);
    }
  half->finished = TRUE;
  return NULL;
}

gboolean
stead_season_draws_run_all (SteadSeasonDraws *draws,
                            SteadSeasonStop   stop,
                            gpointer          stop_data,
                            gint             *done)
{
  GThread *thread;
  guint n;
  Half mine, other;

  g_return_val_if_fail (draws != NULL, FALSE);

  n = stead_season_draws_get_n_blocks (draws);
  mine = (Half) { draws, 0, n / 2, stop, stop_data, done, FALSE };
  other = (Half) { draws, n / 2, n, stop, stop_data, done, FALSE };
  thread = n > 1 ? g_thread_try_new ("season", run_half, &other, NULL) : NULL;
  run_half (&mine);
  if (thread != NULL)
    g_thread_join (thread);
  else
    run_half (&other);
  return mine.finished && other.finished;
}

/* --- what came of it ----------------------------------------------------------------------- */

void
stead_season_draws_band (SteadSeasonDraws *draws,
                         double            level,
                         SteadBand        *out)
{
  g_return_if_fail (draws != NULL && out != NULL);

  memcpy (draws->scratch, draws->profit, draws->n_draws * sizeof *draws->profit);
  stead_band_of_draws (draws->scratch, draws->n_draws, level, out);
}

double
stead_season_draws_chance_below (const SteadSeasonDraws *draws,
                                 double                  cents)
{
  gsize n = 0;

  g_return_val_if_fail (draws != NULL, NAN);

  for (gsize i = 0; i < draws->n_draws; i++)
    n += draws->profit[i] < cents;
  return (double) n / (double) draws->n_draws;
}

void
stead_season_draws_moments (const SteadSeasonDraws *draws,
                            double                 *out_mean,
                            double                 *out_sd)
{
  double mean = 0, squares = 0, n;

  g_return_if_fail (draws != NULL && out_mean != NULL && out_sd != NULL);

  n = (double) draws->n_draws;
  for (gsize i = 0; i < draws->n_draws; i++)
    mean += draws->profit[i] / n;
  for (gsize i = 0; i < draws->n_draws; i++)
    squares += (draws->profit[i] - mean) * (draws->profit[i] - mean);
  *out_mean = mean;
  *out_sd = draws->n_draws > 1 ? sqrt (squares / (n - 1)) : 0;
}

void
stead_season_draws_count (const SteadSeasonDraws *draws,
                          double                  low,
                          double                  high,
                          guint                  *out_counts,
                          gsize                   n_bins)
{
  double scale;

  g_return_if_fail (draws != NULL && out_counts != NULL && n_bins > 0);

  scale = high > low ? (double) n_bins / (high - low) : 0;
  memset (out_counts, 0, n_bins * sizeof *out_counts);
  for (gsize i = 0; i < draws->n_draws; i++)
    out_counts[(gsize) CLAMP ((draws->profit[i] - low) * scale, 0, (double) n_bins - 1)]++;
}
