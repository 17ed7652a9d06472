/* stead-build-path.c - when a build will be paid for, and how surely. */
#include "config.h"

#include "answer/stead-build-path-private.h"
#include "answer/stead-sale-answer.h"
#include "core/stead-sale-day.h"

#include <gio/gio.h>
#include <math.h>

/* The same luck each time. */
#define SEED 20260303u

/* What luck a thing has is told by its id in the file; each kind has a range of its own. */
#define STREAM_PLEDGE 0x10000000u
#define STREAM_INCOME 0x20000000u
#define STREAM_SALE   0x40000000u

/* Draws for the result of one sale day. */
#define SALE_DRAWS 4000
#define SALE_TOGETHER 0.5

const double stead_build_sureties[STEAD_BUILD_N_SURETIES] = { 0.50, 0.80, 0.95 };

static void
try_free (gpointer data)
{
  SteadBuildTry *try = data;

  g_free (try->text);
  g_free (try->effect);
  g_free (try);
}

static void
good_free (gpointer data)
{
  SteadBuildGood *good = data;

  g_free (good->name);
  g_free (good);
}

void
stead_build_path_free (SteadBuildPath *self)
{
  if (self == NULL)
    return;
  g_ptr_array_unref (self->goods);
  g_array_unref (self->mores);
  g_ptr_array_unref (self->steps);
  g_free (self->more_sentence);
  g_free (self->goods_sentence);
  g_free (self->steps_sentence);
  g_array_unref (self->events);
  g_array_unref (self->fans);
  g_ptr_array_unref (self->tries);
  g_free (self->currency);
  g_free (self->sale_name);
  g_free (self->dearest);
  g_free (self->sentence);
  g_free (self->back_sentence);
  g_free (self->next_sentence);
  g_free (self);
}

/* --- what may come -------------------------------------------------------------------- */

static void
add_event (SteadBuildPath *self,
           SteadDay        day,
           double          mean,
           double          sd,
           double          chance,
           gboolean        together,
           guint32         stream)
{
  SteadOutlookEvent event = { day, mean, sd, chance, together, stream };

  if (self->events->len < STEAD_OUTLOOK_MOST_EVENTS)
    g_array_append_val (self->events, event);
}

/* One that is overdue may come any day: tomorrow. */
static void
add_pledges (SteadBuildPath         *self,
             const SteadBuildAnswer *answer)
{
  for (guint i = 0; i < answer->pledges->len; i++)
    {
      const SteadBuildPledge *pledge = answer->pledges->pdata[i];
      double cents = (double) pledge->cents;

      if (pledge->cash_line_id != 0 || pledge->withdrawn_on != STEAD_DAY_NONE)
        continue;
      if (pledge->part >= 0)
        cents = MIN (cents, (double) answer->part_cents[pledge->part]);
      if (!(cents > 0))
        continue;
      self->pledges_cents += cents;
      add_event (self, MAX (pledge->due_on, self->today + 1), cents, 0, pledge->chance, FALSE,
                 STREAM_PLEDGE + (guint32) pledge->id);
    }
}

/* Whether it is the best one so far. */
static gboolean
keep_best (SteadBuildPath *self,
           const char     *name,
           double          mean,
           double          sd)
{
  if (mean <= self->sale_mean)
    return FALSE;
  g_ptr_array_set_size (self->goods, 0);
  self->sale_mean = mean;
  self->sale_sd = sd;
  g_free (self->sale_name);
  self->sale_name = g_strdup (name);
  return TRUE;
}

static void
add_incomes (SteadBuildPath         *self,
             const SteadBuildAnswer *answer)
{
  for (guint i = 0; i < answer->incomes->len; i++)
    {
      const SteadBuildIncome *income = answer->incomes->pdata[i];
      double share = income->is_sale ? answer->build->sale_frac : 1;
      double mean = (double) income->mean_cents * share, sd = (double) income->sd_cents * share;

      if (income->is_sale)
        keep_best (self, income->name, mean, sd);
      for (int k = 0; k < income->times; k++)
        {
          SteadDay day = income->first_on + k * income->every_days;

          if (day >= self->today)
            add_event (self, day, mean, sd, 1, income->is_sale, STREAM_INCOME + (guint32) income->id * 512 + (guint32) k);
        }
    }
}

/* What is known too little to be drawn: nothing guessed, then all that is brought is sold. */
static gboolean
guess_moments (const SteadSale *sale,
               double          *mean,
               double          *sd)
{
  g_autoptr(GArray) products = g_array_new (FALSE, TRUE, sizeof (SteadSaleProduct));
  g_autoptr(SteadSaleDraws) draws = NULL;
  SteadSalePlan plan = { .together = SALE_TOGETHER };
  double goodwill;

  for (guint i = 0; i < sale->goods->len; i++)
    {
      const SteadSaleGood *good = sale->goods->pdata[i];
      gboolean guessed = !isnan (good->low) && !isnan (good->likely) && !isnan (good->high);
      SteadSaleProduct product = {
        .guess = { guessed ? good->low : good->planned, guessed ? good->likely : good->planned,
                   guessed ? good->high : good->planned },
        .made = good->planned, .price_cents = (double) good->price_cents,
        .cost_cents = isnan (good->cost_cents) ? 0 : good->cost_cents,
        .left_cents = (double) good->left_cents, .stream = (guint32) good->id,
      };

      g_array_append_val (products, product);
    }
  for (guint i = 0; i < sale->costs->len; i++)
    plan.fixed_cents += (double) ((const SteadSaleCost *) sale->costs->pdata[i])->cents;
  plan.products = (const SteadSaleProduct *) (gpointer) products->data;
  plan.n_products = products->len;
  draws = products->len == 0 ? NULL : stead_sale_draws_new (&plan, SALE_DRAWS, SEED, NULL);
  if (draws == NULL || !stead_sale_draws_run (draws, 0, stead_sale_draws_get_n_blocks (draws), NULL, NULL, NULL))
    return FALSE;
  stead_sale_draws_moments (draws, mean, sd, &goodwill);
  return TRUE;
}

/* Mean and spread of what a planned sale day clears: as Sell tells it, where it can. */
static gboolean
sale_moments (const SteadSaleAnswer *answer,
              double                *mean,
              double                *sd)
{
  if (!answer->has_band)
    return guess_moments (answer->sale, mean, sd);
  *mean = answer->mean_cents;
  *sd = answer->sd_cents;
  return TRUE;
}

static void
keep_goods (SteadBuildPath        *self,
            const SteadSaleAnswer *answer,
            double                 share)
{
  for (guint i = 0; i < answer->lines->len; i++)
    {
      const SteadSaleLineAnswer *line = answer->lines->pdata[i];
      SteadBuildGood *good;

      if (!(line->good->planned > 0))
        continue;
      good = g_new0 (SteadBuildGood, 1);
      good->product_id = line->good->product_id;
      good->name = g_strdup (line->good->name);
      good->pack = line->good->pack;
      good->sold = isnan (line->sold_units) ? line->good->planned : line->sold_units;
      good->more_cents = ((double) line->good->price_cents - line->unit_cents) * share;
      g_ptr_array_add (self->goods, good);
    }
}

/* The event was added last. */
static void
add_mores (SteadBuildPath        *self,
           const SteadSaleAnswer *answer,
           double                 share)
{
  for (guint i = 0; i < answer->lines->len && self->events->len > 0; i++)
    {
      const SteadSaleLineAnswer *line = answer->lines->pdata[i];
      SteadBuildMore more = { self->events->len - 1, line->good->product_id,
                              ((double) line->good->price_cents - line->unit_cents) * share };

      if (line->good->planned > 0 && more.cents > 0)
        g_array_append_val (self->mores, more);
    }
}

static void
add_sale (SteadBuildPath        *self,
          const SteadSaleAnswer *answer,
          double                 share)
{
  const SteadSale *sale = answer->sale;
  double mean, sd;

  if (!sale_moments (answer, &mean, &sd))
    return;
  if (keep_best (self, sale->name, mean * share, sd * share))
    keep_goods (self, answer, share);
  add_event (self, sale->day, mean * share, sd * share, 1, TRUE, STREAM_SALE + (guint32) sale->id);
  add_mores (self, answer, share);
}

static gboolean
add_sales (SteadStore              *store,
           SteadBuildPath          *self,
           const SteadBuildAnswer  *answer,
           GError                 **error)
{
  g_autoptr(GPtrArray) sales = stead_sale_repo_list (store, error);
  double share = answer->build->sale_frac;

  if (sales == NULL)
    return FALSE;
  for (guint i = 0; i < sales->len; i++)
    {
      const SteadSale *head = sales->pdata[i];
      g_autoptr(SteadSaleAnswer) sale = NULL;

      if (head->day < self->today || head->closed_at != STEAD_SALE_NO_TIME || !(share > 0))
        continue;
      sale = stead_sale_answer_new (store, head->id, error);
      if (sale == NULL)
        return FALSE;
      add_sale (self, sale, share);
    }
  return TRUE;
}

static void
find_dearest (SteadBuildPath         *self,
              const SteadBuildAnswer *answer)
{
  for (guint i = 0; i < answer->rows->len; i++)
    {
      const SteadBuildRow *row = answer->rows->pdata[i];

      if (row->given || row->left_out || row->cents - row->paid_cents <= self->dearest_cents)
        continue;
      self->dearest_cents = row->cents - row->paid_cents;
      g_free (self->dearest);
      self->dearest = g_strdup (row->name);
    }
}

SteadBuildPath *
stead_build_path_begin (void)
{
  SteadBuildPath *self = g_new0 (SteadBuildPath, 1);
  self->events = g_array_new (FALSE, TRUE, sizeof (SteadOutlookEvent));
  self->fans = g_array_new (FALSE, TRUE, sizeof (SteadBuildFan));
  self->tries = g_ptr_array_new_with_free_func (try_free);
  self->goods = g_ptr_array_new_with_free_func (good_free);
  self->mores = g_array_new (FALSE, TRUE, sizeof (SteadBuildMore));
  self->steps = g_ptr_array_new_with_free_func (stead_build_step_free);

  self->chance_goal = NAN;
  self->sales_needed = -1;
  self->next_on = self->money_by = self->work_by = STEAD_DAY_NONE;
  self->chance_money = NAN;
  for (int i = 0; i < STEAD_BUILD_N_SURETIES; i++)
    self->days[i] = STEAD_DAY_NONE;
  return self;
}

SteadBuildPath *
stead_build_path_new (SteadStore              *store,
                      const SteadBuildAnswer  *answer,
                      GError                 **error)
{
  g_autoptr(SteadBuildPath) self = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store) && answer != NULL, NULL);
  self = stead_build_path_begin ();
  self->today = answer->day;
  self->goal_on = answer->build->goal_on;
  self->start_cents = (double) answer->have_cents;
  self->goal_cents = (double) answer->goal_cents;
  self->together = answer->build->season_frac;
  self->currency = g_strdup (answer->farm->currency);
  self->spare_cents = answer->bill.contingency_cents;
  add_pledges (self, answer);
  add_incomes (self, answer);
  find_dearest (self, answer);
  stead_build_back_read (self, answer);
  return add_sales (store, self, answer, error) ? g_steal_pointer (&self) : NULL;
}

/* --- the run ----------------------------------------------------------------------------- */

static gboolean
stopped (gpointer data)
{
  return data != NULL && g_cancellable_is_cancelled (data);
}

SteadOutlookRun *
stead_build_path_simulate (const GArray  *events,
                           double         start_cents,
                           double         goal_cents,
                           double         together,
                           gsize          n_paths,
                           GCancellable  *cancellable,
                           GError       **error)
{
  SteadOutlook outlook = { (const SteadOutlookEvent *) (gconstpointer) events->data, events->len,
                           start_cents, goal_cents, together };
  g_autoptr(SteadOutlookRun) run = stead_outlook_run_new (&outlook, n_paths, SEED, error);

  if (run == NULL || !stead_outlook_run_blocks (run, 0, stead_outlook_run_get_n_blocks (run), stopped, cancellable, error))
    return NULL;
  return g_steal_pointer (&run);
}

SteadDay
stead_build_path_day (SteadOutlookRun *run,
                      SteadDay         today,
                      double           surety)
{
  guint step;

  if (stead_outlook_run_chance_now (run) >= surety)
    return today;
  return stead_outlook_run_find_day (run, surety, &step) ? stead_outlook_run_get_day (run, step) : STEAD_DAY_NONE;
}

double
stead_build_path_chance (SteadOutlookRun *run,
                         SteadDay         day)
{
  double chance = stead_outlook_run_chance_now (run);

  for (guint i = 0; i < stead_outlook_run_get_n_steps (run) && stead_outlook_run_get_day (run, i) <= day; i++)
    chance = stead_outlook_run_chance_by (run, i);
  return chance;
}

static const SteadOutlookEvent *
next_sale (const SteadBuildPath *self)
{
  const SteadOutlookEvent *next = NULL;

  for (guint i = 0; i < self->events->len; i++)
    {
      const SteadOutlookEvent *event = &g_array_index (self->events, SteadOutlookEvent, i);

      if (event->moves_together && (next == NULL || event->day < next->day))
        next = event;
    }
  return next;
}

/* What the next sale has to clear if all that is planned after it until the wanted day
 * (or at all) brings just what is expected. */
static void
plan_next (SteadBuildPath *self)
{
  const SteadOutlookEvent *next = next_sale (self);
  double expected = 0;

  if (next == NULL || (self->goal_on != STEAD_DAY_NONE && next->day > self->goal_on))
    return;
  for (guint i = 0; i < self->events->len; i++)
    {
      const SteadOutlookEvent *event = &g_array_index (self->events, SteadOutlookEvent, i);

      if (event != next && (self->goal_on == STEAD_DAY_NONE || event->day <= self->goal_on))
        expected += event->mean_cents * event->chance;
    }
  self->next_on = next->day;
  self->next_mean = next->mean_cents;
  self->next_cents = MAX (self->goal_cents - self->start_cents - expected, 0);
}

/* The plan backwards: what is sure until the wanted day, and sale days for the rest. */
static void
plan_back (SteadBuildPath *self)
{
  double missing = self->goal_cents - self->start_cents;

  if (self->goal_on == STEAD_DAY_NONE || self->goal_on <= self->today)
    return;
  for (guint i = 0; i < self->events->len; i++)
    {
      const SteadOutlookEvent *event = &g_array_index (self->events, SteadOutlookEvent, i);

      if (event->day > self->goal_on)
        continue;
      if (event->moves_together)
        self->sales_planned++;
      else
        missing -= event->mean_cents * event->chance;
    }
  if (self->sale_mean > 0)
    self->sales_needed = missing <= 0 ? 0 : stead_outlook_sales_needed (missing, self->sale_mean, self->sale_sd,
                                                                        self->together, stead_build_sureties[1]);
}

gboolean
stead_build_path_run (SteadBuildPath  *self,
                      gsize            n_paths,
                      GCancellable    *cancellable,
                      GError         **error)
{
  if (!stead_build_path_run_fans (self, n_paths, cancellable, error))
    return FALSE;
  plan_back (self);
  plan_next (self);
  stead_build_back_run (self);
  if (self->goal_cents > self->start_cents && !stead_build_path_try (self, n_paths / 4 + 1, cancellable, error))
    return FALSE;
  stead_build_path_say (self);
  return TRUE;
}
