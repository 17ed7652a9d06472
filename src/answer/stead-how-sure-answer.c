/* stead-how-sure-answer.c - "How sure is it that the season pays?" */
#include "config.h"

#include "answer/stead-how-sure-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "answer/stead-answer-error.h"
#include "answer/stead-batch-outlook.h"
#include "answer/stead-what-if-answer.h"
#include "core/stead-money.h"

/* The same luck each time. */
#define SEED 20260303u

/* Own rules, where the farm knows nothing better: how far what is sold, what comes out, prices
 * and the costs of a day may go; so many days tell what is sold; half of the seasons are good
 * or bad for all. */
#define SOLD_AWAY 0.25
#define YIELD_AWAY 0.10
#define KITCHEN_AWAY 0.05
#define INPUT_LOW 0.9
#define INPUT_HIGH 1.15
#define DAY_LOW 0.95
#define DAY_HIGH 1.2
#define ENOUGH_DAYS 3
#define FIRST_TOGETHER 0.5
#define FIRST_DAYS 12

/* What comes of a kitchen or out of the store room has a stream beside those of batches. */
#define ITEM_STREAMS 0x40000000u

static void
range_free (gpointer data)
{
  SteadRange *range = data;

  g_free (range->name);
  g_free (range->from);
  g_free (range);
}

void
stead_how_sure_free (SteadHowSure *self)
{
  if (self == NULL)
    return;
  g_free (self->currency);
  g_ptr_array_unref (self->ranges);
  g_ptr_array_unref (self->missing);
  g_free (self->products);
  g_free (self->sentence);
  g_free (self->advice);
  g_free (self);
}

/* --- what the farm knows -------------------------------------------------------------- */

static void
add_range (SteadHowSure    *self,
           SteadRangeKind   kind,
           char            *name,
           guint            line,
           SteadPack        pack,
           guint32          stream,
           SteadThreePoint  farm,
           char            *from)
{
  SteadRange *range = g_new0 (SteadRange, 1);

  *range = (SteadRange) { .kind = kind, .name = name, .pack = pack, .line = line, .stream = stream, .farm = farm,
                          .value = farm, .from = from };
  g_ptr_array_add (self->ranges, range);
}

static SteadThreePoint
around (double likely,
        double away)
{
  return (SteadThreePoint) { likely * (1 - away), likely, likely * (1 + away) };
}

static int
compare_units (gconstpointer a,
               gconstpointer b)
{
  double x = (*(SteadPriceTrial * const *) a)->units, y = (*(SteadPriceTrial * const *) b)->units;

  return (x > y) - (x < y);
}

/* From the fewest to the most that were sold on a day, the middle one the likeliest. */
static gboolean
add_sold (SteadHowSure      *self,
          SteadStore        *store,
          const SteadWhatIf *what_if,
          guint              line,
          GError           **error)
{
  const SteadProduct *product = what_if->price->cost->product;
  g_autoptr(GPtrArray) trials = stead_price_trial_repo_list (store, product->id, error);
  SteadThreePoint sold = around (round (what_if->price->plan.planned_units), SOLD_AWAY);
  char *from = g_strdup (_("a quarter around the plan"));

  if (trials == NULL)
    {
      g_free (from);
      return FALSE;
    }
  if (trials->len >= ENOUGH_DAYS)
    {
      g_ptr_array_sort (trials, compare_units);
      sold.low = ((SteadPriceTrial *) trials->pdata[0])->units;
      sold.likely = ((SteadPriceTrial *) trials->pdata[trials->len / 2])->units;
      sold.high = ((SteadPriceTrial *) trials->pdata[trials->len - 1])->units;
      g_free (from);
      /* Translators: where a range is from. */
      from = g_strdup_printf (ngettext ("as sold on %u day", "as sold on %u days", trials->len), trials->len);
    }
  add_range (self, STEAD_RANGE_SOLD,
             /* Translators: a range: how many of a product one sale day sells. */
             g_strdup_printf (C_("range", "%s sold on a day"), product->name), line, product->pack, 0,
             (SteadThreePoint) { floor (sold.low), round (sold.likely), ceil (sold.high) }, from);
  return TRUE;
}

static const SteadRange *
find_yield (const SteadHowSure *self,
            guint32             stream)
{
  for (guint i = 0; i < self->ranges->len; i++)
    {
      const SteadRange *range = self->ranges->pdata[i];

      if (range->kind == STEAD_RANGE_YIELD && range->stream == stream)
        return range;
    }
  return NULL;
}

/* The band of the forecast in Raise is of what is still to come: the costs of the season too. */
static gboolean
add_yield (SteadHowSure           *self,
           SteadStore             *store,
           const SteadCostAnswer  *cost,
           guint                   line,
           guint32                 stream,
           GError                **error)
{
  SteadThreePoint yield = around (1, cost->batch != NULL ? YIELD_AWAY : KITCHEN_AWAY);
  SteadBatchOutlook outlook = { 0 };
  char *from = g_strdup (cost->batch != NULL ? _("a tenth around the log") : _("a twentieth around the recipe"));

  if (cost->batch != NULL && !stead_batch_outlook_read (store, cost->batch, &outlook, error))
    {
      g_free (from);
      return FALSE;
    }
  if (cost->batch != NULL && outlook.basis == STEAD_OUTLOOK_FORECAST && outlook.expected_base > 0
      && outlook.low_base > 0 && outlook.low_base <= outlook.expected_base && outlook.high_base >= outlook.expected_base)
    {
      yield = (SteadThreePoint) { outlook.low_base / outlook.expected_base, 1, outlook.high_base / outlook.expected_base };
      g_free (from);
      from = g_strdup (_("the forecast in Raise"));
    }
  yield.low = MAX (0.2, round (yield.low * 100) / 100);
  yield.high = MIN (3, round (yield.high * 100) / 100);
  add_range (self, STEAD_RANGE_YIELD,
             /* Translators: a range: what a batch or a recipe gives. */
             g_strdup_printf (C_("range", "%s: what comes of it"), stead_cost_answer_source (cost)), line,
             cost->product->pack, stream, yield, from);
  return TRUE;
}

static gboolean
add_product (SteadHowSure       *self,
             SteadStore         *store,
             const SteadWhatIf  *what_if,
             GError            **error)
{
  const SteadCvp *plan = &what_if->price->plan;
  const SteadCostAnswer *cost = what_if->price->cost;
  const SteadUnitParts *parts = &what_if->parts;
  guint32 stream = cost->batch != NULL ? (guint32) cost->batch->id
                   : ITEM_STREAMS | (guint32) (cost->product->item_id != 0 ? cost->product->item_id : cost->product->id);
  guint line = self->n_products++;

  self->products = g_renew (SteadSeasonProduct, self->products, self->n_products);
  self->products[line] = (SteadSeasonProduct) {
    .price_cents = plan->price_cents, .input_cents = parts->input_cents, .keep_cents = parts->shared_cents,
    .other_cents = parts->good_cents + parts->pack_cents + parts->rounding_cents, .step_cents = plan->step_cents,
    .step_units = plan->step_units, .stream = (guint32) cost->product->id, .yield_stream = stream };
  self->target_cents += plan->target_cents;
  return add_sold (self, store, what_if, line, error)
         && (find_yield (self, stream) != NULL || add_yield (self, store, cost, line, stream, error));
}

static gboolean
read_products (SteadHowSure  *self,
               SteadStore    *store,
               SteadPeriod    period,
               double        *day_cents,
               GError       **error)
{
  g_autoptr(GPtrArray) products = stead_product_repo_list (store, FALSE, error);

  for (guint i = 0; products != NULL && i < products->len && self->n_products < STEAD_SEASON_MOST_PRODUCTS; i++)
    {
      const SteadProduct *product = products->pdata[i];
      g_autoptr(GError) local_error = NULL;
      g_autoptr(SteadWhatIf) what_if = stead_what_if_new (store, product->id, period, &local_error);

      if (what_if == NULL && !g_error_matches (local_error, STEAD_ANSWER_ERROR, STEAD_ANSWER_ERROR_MISSING))
        {
          g_propagate_error (error, g_steal_pointer (&local_error));
          return FALSE;
        }
      if (what_if == NULL || what_if->price->price_on_file < 0 || !(what_if->price->plan.planned_units > 0))
        {
          g_ptr_array_add (self->missing, g_strdup (product->name));
          continue;
        }
      *day_cents += what_if->price->plan.fixed_cents;
      if (!add_product (self, store, what_if, error))
        return FALSE;
    }
  return products != NULL;
}

/* Ranges of products first, then of batches, then what all share. */
static int
compare_ranges (gconstpointer a,
                gconstpointer b)
{
  const SteadRange *x = *(SteadRange * const *) a, *y = *(SteadRange * const *) b;

  return x->kind != y->kind ? (int) x->kind - (int) y->kind : (int) x->line - (int) y->line;
}

SteadHowSure *
stead_how_sure_new (SteadStore   *store,
                    SteadPeriod   period,
                    GError      **error)
{
  g_autoptr(SteadFarm) farm = NULL;
  g_autoptr(SteadHowSure) self = NULL;
  double day = 0;

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  farm = stead_farm_repo_get (store, error);
  if (farm == NULL)
    return NULL;
  self = g_new0 (SteadHowSure, 1);
  self->currency = g_strdup (farm->currency);
  self->ranges = g_ptr_array_new_with_free_func (range_free);
  self->missing = g_ptr_array_new_with_free_func (g_free);
  self->n_days = FIRST_DAYS;
  self->together = FIRST_TOGETHER;
  if (!read_products (self, store, period, &day, error))
    return NULL;
  self->target_cents *= FIRST_DAYS;
  add_range (self, STEAD_RANGE_INPUT, g_strdup (_("Price of feed and supplies")), 0, 0, 0,
             (SteadThreePoint) { INPUT_LOW, 1, INPUT_HIGH }, g_strdup (_("a usual range, not the farm's own")));
  add_range (self, STEAD_RANGE_DAY, g_strdup (_("Costs of one sale day")), 0, 0, 0,
             (SteadThreePoint) { round (day * DAY_LOW), day, round (day * DAY_HIGH) },
             g_strdup (_("a usual range, not the farm's own")));
  g_ptr_array_sort (self->ranges, compare_ranges);
  stead_how_sure_settle (self);
  return g_steal_pointer (&self);
}

/* --- figures ---------------------------------------------------------------------------- */

static void
put_range (SteadHowSure      *self,
           SteadSeason       *season,
           const SteadRange  *range)
{
  switch (range->kind)
    {
    case STEAD_RANGE_SOLD: self->products[range->line].sold = range->value; break;
    case STEAD_RANGE_INPUT: season->input = range->value; break;
    case STEAD_RANGE_DAY: season->day_cents = range->value; break;
    case STEAD_RANGE_YIELD:
      for (guint i = 0; i < self->n_products; i++)
        if (self->products[i].yield_stream == range->stream)
          self->products[i].yield = range->value;
      break;
    default: g_return_if_reached ();
    }
}

static SteadSeason
season_of (SteadHowSure *self)
{
  SteadSeason season = { .products = self->products, .n_products = self->n_products, .n_days = self->n_days,
                         .together = self->together };

  for (guint i = 0; i < self->ranges->len; i++)
    put_range (self, &season, self->ranges->pdata[i]);
  return season;
}

/* The profit of the season with one range at one value and all else as likely as can be. */
static double
profit_at (SteadHowSure *self,
           SteadRange   *range,
           double        value)
{
  SteadThreePoint kept = range->value;
  SteadSeason season;
  double profit;

  range->value.likely = value;
  season = season_of (self);
  profit = stead_season_profit (&season);
  range->value = kept;
  return profit;
}

/* Round widths, so that zero parts two counts. */
static void
cut (SteadHowSure    *self,
     const SteadBand *wide)
{
  double span = MAX (wide->high - wide->low, 100), step = pow (10, floor (log10 (span / 20))), low;

  while (span / step > 24)
    step *= span / step > 48 ? 5 : 2;
  /* Nothing left is shown too, where it is near. */
  low = wide->low > 0 && wide->low < span ? 0 : wide->low;
  self->step = step;
  self->low = floor (low / step) * step;
  self->n_bins = (guint) CLAMP (ceil ((wide->high - self->low) / step), 1, STEAD_HOW_SURE_MOST_BINS);
}

static void
count (SteadHowSure     *self,
       SteadSeasonDraws *draws,
       guint             n_draws)
{
  SteadBand wide;

  self->n_draws = n_draws;
  stead_season_draws_band (draws, STEAD_HOW_SURE_LEVEL, &self->band);
  stead_season_draws_band (draws, 0.998, &wide);
  stead_season_draws_moments (draws, &self->mean_cents, &self->sd_cents);
  self->loss_frac = stead_season_draws_chance_below (draws, 0);
  self->target_frac = 1 - stead_season_draws_chance_below (draws, self->target_cents);
  cut (self, &wide);
  stead_season_draws_count (draws, self->low, self->low + self->step * self->n_bins, self->counts, self->n_bins);
}

void
stead_how_sure_settle (SteadHowSure *self)
{
  g_autoptr(SteadSeasonDraws) draws = NULL;
  g_autoptr(GError) error = NULL;
  SteadSeason season;

  g_return_if_fail (self != NULL);
  season = season_of (self);
  self->upside_down = FALSE;
  for (guint i = 0; i < self->ranges->len; i++)
    self->upside_down |= !stead_season_is_range (&((SteadRange *) self->ranges->pdata[i])->value);
  draws = self->n_products > 0 ? stead_season_draws_new (&season, STEAD_HOW_SURE_DRAWS, SEED, &error) : NULL;
  self->solved = draws != NULL;
  if (self->solved)
    {
      if (!stead_season_draws_run_all (draws, NULL, NULL, NULL))
        g_return_if_reached ();
      count (self, draws, STEAD_HOW_SURE_DRAWS);
      self->likely_cents = stead_season_profit (&season);
      for (guint i = 0; i < self->ranges->len; i++)
        {
          SteadRange *range = self->ranges->pdata[i];

          range->low_cents = profit_at (self, range, range->value.low);
          range->high_cents = profit_at (self, range, range->value.high);
        }
    }
  stead_how_sure_put_in_words (self);
}

SteadSeasonDraws *
stead_how_sure_many_new (SteadHowSure *self)
{
  SteadSeason season;

  g_return_val_if_fail (self != NULL, NULL);

  season = season_of (self);
  return self->solved ? stead_season_draws_new (&season, STEAD_HOW_SURE_MANY_DRAWS, SEED, NULL) : NULL;
}

void
stead_how_sure_take_many (SteadHowSure     *self,
                          SteadSeasonDraws *draws)
{
  g_return_if_fail (self != NULL && self->solved && draws != NULL);

  count (self, draws, STEAD_HOW_SURE_MANY_DRAWS);
  stead_how_sure_put_in_words (self);
}

void
stead_how_sure_reset (SteadHowSure *self)
{
  g_return_if_fail (self != NULL);

  for (guint i = 0; i < self->ranges->len; i++)
    ((SteadRange *) self->ranges->pdata[i])->value = ((SteadRange *) self->ranges->pdata[i])->farm;
  stead_how_sure_settle (self);
}
