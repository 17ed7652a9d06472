/* stead-cut.c - cutting pieces from boards, pipes or rolls with the least to buy. */
#include "config.h"

#include "core/stead-core-error.h"
#include "core/stead-cut-private.h"
#include "core/stead-cut.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#define SHORTEST_M 1e-3
#define LONGEST_M 1e5
#define DEAREST_CENTS 1e9

/* With more full patterns than this, whole numbers are sought among the good ones only. */
#define MOST_PATTERNS 1500

/* Costs are whole multiples of this, or the bound is not rounded: a cent, 1/100 mm. */
#define CENT 1.0
#define LENGTH_UNIT_M 1e-5

static void
bar_free (gpointer data)
{
  SteadCutBar *bar = data;

  g_free (bar->pieces);
  g_free (bar);
}

void
stead_cut_plan_free (SteadCutPlan *plan)
{
  if (plan == NULL)
    return;
  g_ptr_array_unref (plan->bars);
  g_free (plan);
}

static gboolean
set_range (GError    **error,
           const char *message)
{
  g_set_error_literal (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_RANGE, message);
  return FALSE;
}

static gboolean
check_stocks (const SteadCutStock  *stocks,
              gsize                 n_stocks,
              GError              **error)
{
  gsize priced = 0;

  for (gsize s = 0; s < n_stocks; s++)
    {
      if (!(stocks[s].length_m >= SHORTEST_M && stocks[s].length_m <= LONGEST_M)
          || !(stocks[s].price_cents >= 0 && stocks[s].price_cents <= DEAREST_CENTS))
        return set_range (error, _("Every length that can be bought must be above 0, and no price below 0."));
      priced += stocks[s].price_cents > 0;
    }
  if (priced != 0 && priced != n_stocks)
    return set_range (error, _("Give a price to every length that can be bought, or to none of them."));
  return TRUE;
}

static gboolean
check_pieces (const SteadCutPiece  *pieces,
              gsize                 n_kinds,
              double                longest_m,
              GError              **error)
{
  guint64 count = 0;

  for (gsize i = 0; i < n_kinds; i++)
    {
      if (!(pieces[i].length_m >= SHORTEST_M))
        return set_range (error, _("Every piece to be cut needs a length above 0."));
      if (pieces[i].count > 0 && !(pieces[i].length_m <= longest_m + CUT_SLACK_M))
        return set_range (error, _("A piece is longer than everything that can be bought. "
                                   "Choose longer stock, or join it from two."));
      count += pieces[i].count;
    }
  if (n_kinds > STEAD_CUT_MOST_KINDS || count > STEAD_CUT_MOST_PIECES)
    return set_range (error, _("There are too many pieces for one plan. Plan them in parts."));
  return TRUE;
}

/* A first plan */

/* The stock that costs least for what it gives, cut as full as can be, so often as
 * whole such bars are needed; and again with what is left. */
static GPtrArray *
first_plan (const CutJob *job)
{
  g_autofree guint *left = g_memdup2 (job->need, job->n * sizeof (guint));
  GPtrArray *plan = g_ptr_array_new_with_free_func (g_free);

  for (;;)
    {
      CutPattern *best = NULL;
      double best_rate = INFINITY;

      for (gsize s = 0; s < job->n_stocks; s++)
        {
          CutPattern *pattern = cut_pattern_new (job, s);
          double filled;

          cut_fill (job, s, job->size, left, pattern->counts, &filled);
          if (filled > 0 && job->cost[s] / filled < best_rate)
            {
              best_rate = job->cost[s] / filled;
              g_free (best);
              best = g_steal_pointer (&pattern);
            }
          g_free (pattern);
        }
      if (best == NULL)
        return plan;
      best->times = G_MAXUINT;
      for (gsize i = 0; i < job->n; i++)
        if (best->counts[i] > 0)
          best->times = MIN (best->times, left[i] / best->counts[i]);
      for (gsize i = 0; i < job->n; i++)
        left[i] -= best->times * best->counts[i];
      g_ptr_array_add (plan, best);
    }
}

static double
cost_of (const CutJob    *job,
         const GPtrArray *plan)
{
  double cost = 0;

  for (guint i = 0; i < plan->len; i++)
    {
      const CutPattern *pattern = plan->pdata[i];

      cost += pattern->times * job->cost[pattern->stock];
    }
  return cost;
}

/* Bounds */

static guint64
common_divisor (guint64 a,
                guint64 b)
{
  while (b != 0)
    {
      guint64 rest = a % b;

      a = b;
      b = rest;
    }
  return a;
}

/* What all costs are whole multiples of; 0 if nothing can be said. */
static double
cost_step (const CutJob *job,
           double        unit)
{
  guint64 step = 0;

  if (job->n_stocks == 1)
    return job->cost[0];
  for (gsize s = 0; s < job->n_stocks; s++)
    {
      double units = floor (job->cost[s] / unit + 0.5);

      if (units < 1 || fabs (job->cost[s] / unit - units) > 1e-4)
        return 0;
      step = common_divisor (step, (guint64) units);
    }
  return (double) step * unit;
}

static double
round_bound (double bound,
             double step)
{
  return step > 0 ? ceil (bound / step - 1e-6) * step : bound;
}

/* No stock gives its room for less than the best rate does. */
static double
material_bound (const CutJob *job)
{
  double rate = INFINITY;
  double sum = 0;

  for (gsize s = 0; s < job->n_stocks; s++)
    rate = MIN (rate, job->cost[s] / (job->room[s] + CUT_SLACK_M));
  for (gsize i = 0; i < job->n; i++)
    sum += job->need[i] * job->size[i];
  return sum * rate;
}

/* The plan */

/* Takes off what is cut too often: a plan may give more than is needed. */
static void
trim (const CutJob *job,
      GPtrArray    *bars)
{
  for (gsize i = 0; i < job->n; i++)
    {
      guint have = 0;

      for (guint b = 0; b < bars->len; b++)
        have += ((CutPattern *) bars->pdata[b])->counts[i];
      for (guint b = bars->len; b-- > 0 && have > job->need[i];)
        {
          CutPattern *bar = bars->pdata[b];
          guint off = MIN (bar->counts[i], have - job->need[i]);

          bar->counts[i] -= off;
          have -= off;
        }
    }
}

static double
filled_of (const CutJob     *job,
           const CutPattern *bar)
{
  double sum = 0;

  for (gsize i = 0; i < job->n; i++)
    sum += bar->counts[i] * job->size[i];
  return sum;
}

/* The cheapest stock that holds what is left of a bar. */
static void
shrink (const CutJob *job,
        CutPattern   *bar)
{
  double filled = filled_of (job, bar);

  for (gsize s = 0; s < job->n_stocks; s++)
    if (filled <= job->room[s] + CUT_SLACK_M && job->cost[s] < job->cost[bar->stock])
      bar->stock = s;
}

/* One pattern for each bar that is bought. */
static GPtrArray *
bars_of (const CutJob    *job,
         const GPtrArray *plan)
{
  GPtrArray *bars = g_ptr_array_new_with_free_func (g_free);

  for (guint i = 0; i < plan->len; i++)
    {
      const CutPattern *pattern = plan->pdata[i];

      for (guint k = 0; k < pattern->times; k++)
        {
          CutPattern *bar = cut_pattern_new (job, pattern->stock);

          memcpy (bar->counts, pattern->counts, job->n * sizeof (guint));
          bar->times = 1;
          g_ptr_array_add (bars, bar);
        }
    }
  trim (job, bars);
  for (guint i = bars->len; i-- > 0;)
    {
      if (filled_of (job, bars->pdata[i]) > 0)
        shrink (job, bars->pdata[i]);
      else
        g_ptr_array_remove_index (bars, i);
    }
  return bars;
}

/* Replaces *@best by the bars of @plan, if they cost less. */
static void
keep_cheaper (const CutJob     *job,
              const GPtrArray  *plan,
              GPtrArray       **best)
{
  g_autoptr(GPtrArray) bars = bars_of (job, plan);
  GPtrArray *old = *best;

  if (*best != NULL && cost_of (job, bars) >= cost_of (job, *best))
    return;
  *best = g_steal_pointer (&bars);
  if (old != NULL)
    g_ptr_array_unref (old);
}

/* One way after the other, until what a plan costs meets the bound. */
static GPtrArray *
solve (const CutJob *job,
       double        step,
       double       *out_bound)
{
  g_autoptr(GPtrArray) start = first_plan (job);
  g_autoptr(GPtrArray) patterns = NULL;
  g_autoptr(GPtrArray) all = NULL;
  GPtrArray *best = NULL;
  double bound;
  gboolean is_best;

  *out_bound = round_bound (material_bound (job), step);
  keep_cheaper (job, start, &best);
  if (cost_of (job, best) <= *out_bound * (1 + 1e-9))
    return best;
  patterns = cut_generate (job, start, &bound);
  *out_bound = MAX (*out_bound, round_bound (bound, step));
  if (cost_of (job, best) <= *out_bound * (1 + 1e-9))
    return best;
  if (isfinite (cut_whole (job, patterns, *out_bound, &is_best)))
    keep_cheaper (job, patterns, &best);
  if (cost_of (job, best) <= *out_bound * (1 + 1e-9))
    return best;
  all = cut_all_patterns (job, MOST_PATTERNS);
  if (all != NULL && isfinite (cut_whole (job, all, *out_bound, &is_best)))
    {
      keep_cheaper (job, all, &best);
      if (is_best)
        *out_bound = MAX (*out_bound, cost_of (job, best));
    }
  return best;
}

static int
compare_bars (gconstpointer a,
              gconstpointer b)
{
  const SteadCutBar *left = *(SteadCutBar * const *) a;
  const SteadCutBar *right = *(SteadCutBar * const *) b;

  if (left->stock != right->stock)
    return left->stock < right->stock ? -1 : 1;
  return (left->left_m > right->left_m) - (left->left_m < right->left_m);
}

static SteadCutBar *
find_alike (const GPtrArray  *bars,
            const CutPattern *pattern,
            gsize             n)
{
  for (guint i = 0; i < bars->len; i++)
    {
      SteadCutBar *bar = bars->pdata[i];

      if (bar->stock == pattern->stock && memcmp (bar->pieces, pattern->counts, n * sizeof (guint)) == 0)
        return bar;
    }
  return NULL;
}

static SteadCutPlan *
plan_new (const CutJob        *job,
          const GPtrArray     *bars,
          const SteadCutPiece *pieces,
          const SteadCutStock *stocks)
{
  SteadCutPlan *plan = g_new0 (SteadCutPlan, 1);

  plan->n_kinds = job->n;
  plan->n_bars = bars->len;
  plan->bars = g_ptr_array_new_with_free_func (bar_free);
  for (guint i = 0; i < bars->len; i++)
    {
      const CutPattern *pattern = bars->pdata[i];
      SteadCutBar *bar = find_alike (plan->bars, pattern, job->n);

      plan->bought_m += stocks[pattern->stock].length_m;
      plan->cost_cents += stocks[pattern->stock].price_cents;
      if (bar == NULL)
        {
          bar = g_new0 (SteadCutBar, 1);
          bar->stock = pattern->stock;
          bar->pieces = g_memdup2 (pattern->counts, job->n * sizeof (guint));
          bar->left_m = MAX (0, job->room[pattern->stock] - filled_of (job, pattern));
          bar->left_m = MIN (bar->left_m, stocks[pattern->stock].length_m);
          g_ptr_array_add (plan->bars, bar);
        }
      bar->times++;
    }
  for (gsize i = 0; i < job->n; i++)
    plan->used_m += pieces[i].count * pieces[i].length_m;
  g_ptr_array_sort (plan->bars, compare_bars);
  return plan;
}

SteadCutPlan *
stead_cut_plan_new (const SteadCutPiece  *pieces,
                    gsize                 n_kinds,
                    const SteadCutStock  *stocks,
                    gsize                 n_stocks,
                    double                kerf_m,
                    GError              **error)
{
  double size[STEAD_CUT_MOST_KINDS];
  guint need[STEAD_CUT_MOST_KINDS];
  double room[STEAD_CUT_MOST_STOCKS];
  double cost[STEAD_CUT_MOST_STOCKS];
  guint steps = CUT_MOST_STEPS;
  CutJob job = { n_kinds, size, need, n_stocks, room, cost, &steps };
  g_autoptr(GPtrArray) bars = NULL;
  SteadCutPlan *plan;
  double longest_m = 0;
  double bound;
  gboolean by_price;

  g_return_val_if_fail (pieces != NULL || n_kinds == 0, NULL);
  g_return_val_if_fail (stocks != NULL && n_stocks > 0 && n_stocks <= STEAD_CUT_MOST_STOCKS, NULL);

  if (!(kerf_m >= 0 && kerf_m <= LONGEST_M))
    {
      set_range (error, _("The width of a saw cut cannot be below 0."));
      return NULL;
    }
  for (gsize s = 0; s < n_stocks; s++)
    longest_m = MAX (longest_m, stocks[s].length_m);
  if (!check_stocks (stocks, n_stocks, error) || !check_pieces (pieces, n_kinds, longest_m, error))
    return NULL;
  by_price = stocks[0].price_cents > 0;
  for (gsize i = 0; i < n_kinds; i++)
    {
      size[i] = pieces[i].length_m + kerf_m;
      need[i] = pieces[i].count;
    }
  for (gsize s = 0; s < n_stocks; s++)
    {
      room[s] = stocks[s].length_m + kerf_m;
      cost[s] = by_price ? stocks[s].price_cents : stocks[s].length_m;
    }
  bars = solve (&job, cost_step (&job, by_price ? CENT : LENGTH_UNIT_M), &bound);
  plan = plan_new (&job, bars, pieces, stocks);
  plan->bound = bound;
  plan->proven = cost_of (&job, bars) <= bound * (1 + 1e-9);
  return plan;
}

GArray *
stead_cut_spliced (const double *runs_m,
                   gsize         n,
                   double        roll_m)
{
  g_autoptr(GArray) parts = g_array_new (FALSE, FALSE, sizeof (double));

  g_return_val_if_fail (runs_m != NULL || n == 0, NULL);

  if (!(roll_m >= SHORTEST_M && roll_m <= LONGEST_M))
    return NULL;
  for (gsize i = 0; i < n; i++)
    {
      double left_m = runs_m[i];

      if (!(left_m > 0 && left_m / roll_m <= STEAD_CUT_MOST_PIECES))
        return NULL;
      for (; left_m > roll_m + CUT_SLACK_M; left_m -= roll_m)
        g_array_append_val (parts, roll_m);
      g_array_append_val (parts, left_m);
    }
  return parts->len <= STEAD_CUT_MOST_PIECES ? g_steal_pointer (&parts) : NULL;
}
