/* stead-fish-answer.c - "How are these fish doing, and when can they be sold?" */
#include "config.h"

#include "answer/stead-cost-in-private.h"
#include "answer/stead-fish-private.h"
#include "answer/stead-hand-why-private.h"
#include "core/stead-fish-growth.h"
#include "core/stead-fish-sample.h"
#include "store/stead-store-error.h"

#include <glib/gi18n-lib.h>
#include <math.h>

void
stead_fish_answer_free (SteadFishAnswer *self)
{
  if (self == NULL)
    return;
  g_clear_pointer (&self->farm, stead_farm_free);
  g_clear_pointer (&self->group, stead_fish_free);
  g_clear_pointer (&self->tank, stead_tank_free);
  g_clear_pointer (&self->dressed, g_array_unref);
  g_clear_pointer (&self->weeks, g_array_unref);
  g_clear_pointer (&self->marks, g_array_unref);
  g_clear_pointer (&self->steps, g_array_unref);
  g_clear_pointer (&self->losses, g_array_unref);
  g_clear_pointer (&self->feed_lots, g_ptr_array_unref);
  stead_why_free (self->cost_why);
  g_free (self->condition_worked);
  g_free (self->species_name);
  g_free (self->no_rate);
  g_free (self->no_sale);
  g_free (self->sentence);
  g_free (self->caution);
  g_free (self);
}

static SteadFishAnswer *
answer_init (void)
{
  SteadFishAnswer *self = g_new0 (SteadFishAnswer, 1);

  self->dressed = g_array_new (FALSE, FALSE, sizeof (SteadFishDressed));
  self->weeks = g_array_new (FALSE, FALSE, sizeof (SteadFishWeek));
  self->losses = g_array_new (FALSE, FALSE, sizeof (SteadGrowthLoss));
  self->mean_g = self->harvest_fish = self->harvest_kg = (SteadBand) { NAN, NAN, NAN };
  self->last_weighed = self->water_day = self->feed_on = self->sale_day = self->sale_soonest = self->sale_latest
    = self->purge_day = self->purged_on = STEAD_DAY_NONE;
  self->biomass_kg = self->tank_biomass_kg = self->density_kg_m3 = self->water_c = self->ahead_c = self->feed_kg
    = self->feed_days = self->survival_frac = self->fcr = self->condition = self->share_ready = self->purged_kg = NAN;
  self->rule = _("Many states ask for a permit to keep fish, and forbid some kinds: ask your fish and wildlife agency. "
                 "Never let fish or their water out. Local extension advice goes before these figures.");
  return self;
}

/* --- number and weight ----------------------------------------------------------------- */

static gboolean
read_number (SteadStore       *store,
             SteadFishAnswer  *self,
             SteadDay          end,
             GError          **error)
{
  gint64 id = self->group->batch.id, came;

  self->alive = stead_fish_repo_alive (store, id, end + 1, error);
  if (self->alive < 0 ||
      !stead_fish_repo_totals (store, id, self->group->batch.started_on, end, &self->so_far, error) ||
      !stead_fish_repo_totals (store, id, MAX (self->group->batch.started_on, end - 6), end, &self->week, error))
    return FALSE;
  came = self->group->stocked + self->so_far.moved_in;
  if (came > 0)
    self->survival_frac = 1 - (double) (self->so_far.deaths + self->so_far.culled) / (double) came;
  return TRUE;
}

static void
take_weight (SteadFishAnswer       *self,
             const SteadFishWarmth *warmth,
             SteadFishLearned      *learned)
{
  self->mean_g = learned->mean_g;
  self->last_weighed = learned->last_weighed;
  self->n_learned = learned->n_learned;
  self->tgc_x100 = learned->fit.tgc_x100;
  self->cv_frac = learned->fit.cv_frac;
  self->is_known = learned->is_known;
  self->species = learned->species;
  self->water_c = warmth->last_c;
  self->water_day = warmth->last_known;
  if (!isnan (learned->mean_g.likely))
    self->biomass_kg = stead_fish_biomass_kg ((double) self->alive, learned->mean_g.likely);
  self->marks = g_steal_pointer (&learned->marks);
  self->steps = g_array_copy (learned->steps);
}

/* Kilograms of another group of the same tank. */
static gboolean
add_other (SteadStore       *store,
           const SteadFish  *group,
           SteadDay          today,
           double           *biomass_kg,
           GError          **error)
{
  g_auto(SteadFishWarmth) warmth = { 0 };
  g_auto(SteadFishLearned) learned = { 0 };
  gint64 alive = stead_fish_repo_alive (store, group->batch.id, today + 1, error);

  if (alive < 0 ||
      !stead_fish_warmth_read (store, group, today, &warmth, error) ||
      !stead_fish_learn (store, group, &warmth, &learned, error))
    return FALSE;
  if (alive > 0 && !isnan (learned.mean_g.likely))
    *biomass_kg += stead_fish_biomass_kg ((double) alive, learned.mean_g.likely);
  return TRUE;
}

static gboolean
add_others (SteadStore       *store,
            SteadFishAnswer  *self,
            SteadDay          today,
            GError          **error)
{
  g_autoptr(GPtrArray) groups = stead_fish_repo_list (store, FALSE, error);

  for (guint i = 0; groups != NULL && i < groups->len; i++)
    {
      const SteadFish *other = groups->pdata[i];

      if (other->batch.id != self->group->batch.id && other->batch.place_id == self->group->batch.place_id &&
          !add_other (store, other, today, &self->tank_biomass_kg, error))
        return FALSE;
    }
  return groups != NULL;
}

static gboolean
read_tank (SteadStore       *store,
           SteadFishAnswer  *self,
           SteadDay          today,
           GError          **error)
{
  g_autoptr(GError) problem = NULL;

  if (self->group->batch.place_id == 0)
    return TRUE;
  self->tank = stead_tank_repo_get (store, self->group->batch.place_id, &problem);
  if (self->tank == NULL && !g_error_matches (problem, STEAD_STORE_ERROR, STEAD_STORE_ERROR_NOT_FOUND))
    {
      g_propagate_error (error, g_steal_pointer (&problem));
      return FALSE;
    }
  if (self->tank == NULL || !(self->tank->volume_l > 0) || isnan (self->biomass_kg))
    return TRUE;
  self->tank_biomass_kg = self->biomass_kg;
  if (!add_others (store, self, today, error))
    return FALSE;
  self->density_kg_m3 = self->tank_biomass_kg / (self->tank->volume_l / 1000);
  self->density_class = stead_fish_density_class (self->density_kg_m3);
  return TRUE;
}

/* --- feed --------------------------------------------------------------------------------- */

static gboolean
read_store_room (SteadStore       *store,
                 SteadFishAnswer  *self,
                 SteadDay          today,
                 GError          **error)
{
  SteadStock stock;

  if (self->group->batch.feed_item_id == 0)
    return TRUE;
  if (!stead_lot_repo_stock (store, self->group->batch.feed_item_id, today, STEAD_FISH_RECENT_DAYS, &stock, error))
    return FALSE;
  self->feed_on_hand_kg = stock.on_hand_base;
  self->feed_use_kg_day = stock.use_per_day_base;
  if (stock.use_per_day_base > 0)
    self->feed_days = stock.on_hand_base / stock.use_per_day_base;
  return TRUE;
}

/* Purging: from a day that has come, until they are harvested. */
static gboolean
is_purging (const SteadFishAnswer *self,
            SteadDay               today)
{
  return self->group->purge_from != STEAD_DAY_NONE && self->group->purge_from <= today;
}

static void
find_rate (SteadFishAnswer       *self,
           const SteadFishWarmth *warmth)
{
  double water_c = warmth->kind == STEAD_FISH_WARMTH_RECENT ? warmth->last_c : NAN;
  g_autoptr(GError) problem = NULL;

  if (isnan (self->mean_g.likely) || self->alive < 1)
    return;
  if (!self->is_known)
    self->no_rate = g_strdup (_("The program has no feeding table for this fish. Follow the chart of the feed's maker."));
  else if (isnan (water_c))
    self->no_rate = g_strdup (_("Enter the temperature of the water to see how much to feed."));
  else if (!stead_fish_feed_rate (self->species, self->mean_g.likely, water_c, &self->rate, &problem))
    self->no_rate = g_strdup (problem->message);
  else
    {
      self->has_rate = TRUE;
      self->feed_kg = stead_fish_daily_feed_kg (self->biomass_kg, self->rate.frac);
    }
}

static gboolean
read_feed (SteadStore             *store,
           SteadFishAnswer        *self,
           const SteadFishWarmth  *warmth,
           SteadDay                today,
           GError                **error)
{
  g_autoptr(GError) problem = NULL;
  SteadDay last;

  if (!read_store_room (store, self, today, error))
    return FALSE;
  find_rate (self, warmth);
  last = stead_fish_repo_last_feed (store, self->group->batch.id, &problem);
  if (problem != NULL)
    {
      g_propagate_error (error, g_steal_pointer (&problem));
      return FALSE;
    }
  self->feeds_today = last == today;
  if (!self->has_rate || is_purging (self, today))
    return TRUE;
  self->feed_on = today;
  if (last != STEAD_DAY_NONE)
    self->feed_on = MAX (today, last + (SteadDay) ceil (self->rate.interval_days));
  return TRUE;
}

/* --- what came of it ------------------------------------------------------------------------ */

/* Weight of those that died up to @until, at the weight that they had. */
static double
dead_kg (const SteadFishAnswer  *self,
         const SteadFishLearned *learned,
         SteadDay                until)
{
  double kg = 0;

  for (guint i = 0; i < self->losses->len; i++)
    {
      const SteadGrowthLoss *loss = &g_array_index (self->losses, SteadGrowthLoss, i);
      double mean_g = stead_fish_learned_mean_g (learned, loss->day);

      if (loss->day < until && !isnan (mean_g))
        kg += (double) loss->n * mean_g / 1000;
    }
  return kg;
}

/* Up to the last weighing: after it the weight is foretold out of the growth itself. */
static gboolean
find_fcr (SteadStore              *store,
          SteadFishAnswer         *self,
          const SteadFishLearned  *learned,
          GError                 **error)
{
  const SteadFish *group = self->group;
  SteadDay until = self->last_weighed;
  SteadFishTotals totals;
  gint64 alive;

  if (until == STEAD_DAY_NONE || until <= group->batch.started_on)
    return TRUE;
  alive = stead_fish_repo_alive (store, group->batch.id, until, error);
  if (alive < 0 ||
      !stead_fish_repo_totals (store, group->batch.id, group->batch.started_on, until - 1, &totals, error))
    return FALSE;
  if (!(totals.feed_kg > 0))
    return TRUE;
  self->fcr_feed_kg = totals.feed_kg;
  self->fcr_start_kg = (double) group->stocked * group->stocked_g / 1000 + totals.moved_in_kg;
  self->fcr_end_kg = (double) alive * stead_fish_learned_mean_g (learned, until) / 1000 + totals.harvested_kg
                     + totals.moved_out_kg;
  self->fcr_dead_kg = dead_kg (self, learned, until);
  self->fcr = stead_fish_fcr (self->fcr_feed_kg, self->fcr_start_kg, self->fcr_end_kg, self->fcr_dead_kg);
  return TRUE;
}

/* Of the newest weighing in which lengths were taken. */
static gboolean
find_condition (SteadStore       *store,
                SteadFishAnswer  *self,
                GError          **error)
{
  g_autoptr(GPtrArray) weighings = stead_weighing_repo_list (store, self->group->batch.id, error);

  for (guint i = weighings != NULL ? weighings->len : 0; i > 0 && isnan (self->condition); i--)
    {
      const SteadWeighing *weighing = weighings->pdata[i - 1];

      self->condition = stead_fish_weighing_condition (weighing);
      if (!isnan (self->condition))
        self->condition_worked = stead_fish_condition_worked (weighing, self->condition);
    }
  return weighings != NULL;
}

/* Everything that went in since the fish came: they themselves at their full price. */
static gboolean
read_cost (SteadStore       *store,
           SteadFishAnswer  *self,
           SteadDay          end,
           GError          **error)
{
  SteadCostIn cost;

  if (!stead_cost_in_read (store, STEAD_BATCH_FISH, self->group->batch.id, self->group->batch.started_on, end,
                           self->group->cost_cents + self->so_far.moved_in_cents, self->so_far.moved_out_cents,
                           &cost, error))
    return FALSE;
  self->cost_in_cents = cost.total_cents;
  self->cost_why = stead_cost_in_why (&cost, STEAD_BATCH_FISH, self->farm->currency);
  return TRUE;
}

/* What of the feed is on hand, lot by lot. */
static gboolean
read_lots (SteadStore       *store,
           SteadFishAnswer  *self,
           GError          **error)
{
  if (self->group->batch.feed_item_id == 0 || self->group->batch.ended_on != STEAD_DAY_NONE)
    return TRUE;
  self->feed_lots = stead_hand_lots (store, self->group->batch.feed_item_id, error);
  return self->feed_lots != NULL;
}

/* --- the whole -------------------------------------------------------------------------------- */

static void
make_series (SteadFishAnswer *self,
             SteadDay         today)
{
  self->series = (SteadGrowthSeries) {
    .marks = (const SteadGrowthMark *) (gpointer) self->marks->data, .n_marks = self->marks->len,
    .steps = (const SteadGrowthStep *) (gpointer) self->steps->data, .n_steps = self->steps->len,
    .losses = (const SteadGrowthLoss *) (gpointer) self->losses->data, .n_losses = self->losses->len,
    .first = self->group->batch.started_on,
    .today = self->group->batch.ended_on == STEAD_DAY_NONE ? today : STEAD_DAY_NONE,
    .sale_g = self->group->sale_g,
    .sale_day = self->sale_day, .sale_soonest = self->sale_soonest, .sale_latest = self->sale_latest,
  };
}

/* Number, weight, tank and feed as they stand. */
static gboolean
fill_now (SteadStore             *store,
          SteadFishAnswer        *self,
          const SteadFishWarmth  *warmth,
          SteadFishLearned       *learned,
          GError                **error)
{
  SteadDay end = warmth->from + (SteadDay) warmth->n - 1;

  if (!read_number (store, self, end, error) || !stead_fish_learn (store, self->group, warmth, learned, error))
    return FALSE;
  take_weight (self, warmth, learned);
  if (self->group->batch.ended_on != STEAD_DAY_NONE)
    return TRUE;
  if (!isnan (self->mean_g.likely) && self->alive > 0)
    self->share_ready = stead_fish_share_over (self->mean_g.likely, self->cv_frac, self->group->sale_g);
  if (is_purging (self, end))
    self->purged_on = self->group->purge_from + self->group->purge_days;
  return read_tank (store, self, end, error) && read_feed (store, self, warmth, end, error);
}

/* What came of them, week by week and in all, and what is to come. */
static gboolean
fill_story (SteadStore              *store,
            SteadFishAnswer         *self,
            const SteadFishWarmth   *warmth,
            const SteadFishLearned  *learned,
            GError                 **error)
{
  g_autoptr(GArray) counts = stead_fish_repo_counts (store, self->group->batch.id, error);

  if (counts == NULL ||
      !stead_fish_fill_weeks (store, self, warmth, learned, counts, error) ||
      !find_fcr (store, self, learned, error) ||
      !find_condition (store, self, error) ||
      !read_cost (store, self, warmth->from + (SteadDay) warmth->n - 1, error) ||
      !read_lots (store, self, error))
    return FALSE;
  return self->group->batch.ended_on != STEAD_DAY_NONE ||
         stead_fish_look_ahead (self, warmth, learned, counts, error);
}

static SteadFishAnswer *
answer_read (SteadStore  *store,
             gint64       fish_id,
             gboolean     whole,
             GError     **error)
{
  g_autoptr(SteadFishAnswer) self = answer_init ();
  g_auto(SteadFishWarmth) warmth = { 0 };
  g_auto(SteadFishLearned) learned = { 0 };
  SteadDay today = stead_store_get_today (store);
  const SteadBatch *batch;

  if ((self->farm = stead_farm_repo_get (store, error)) == NULL ||
      (self->group = stead_fish_repo_get (store, fish_id, error)) == NULL)
    return NULL;
  batch = &self->group->batch;
  self->species_name = stead_fish_species_name (self->group);
  if (!stead_fish_warmth_read (store, self->group, batch->ended_on != STEAD_DAY_NONE ? batch->ended_on : today, &warmth,
                               error) ||
      !fill_now (store, self, &warmth, &learned, error))
    return NULL;
  if (whole)
    {
      if (!fill_story (store, self, &warmth, &learned, error))
        return NULL;
      make_series (self, today);
    }
  return g_steal_pointer (&self);
}

SteadFishAnswer *
stead_fish_answer_new_now (SteadStore  *store,
                           gint64       fish_id,
                           GError     **error)
{
  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  return answer_read (store, fish_id, FALSE, error);
}

SteadFishAnswer *
stead_fish_answer_new (SteadStore  *store,
                       gint64       fish_id,
                       GError     **error)
{
  g_autoptr(SteadFishAnswer) self = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);

  self = answer_read (store, fish_id, TRUE, error);
  if (self == NULL || !stead_fish_find_cautions (store, self, error))
    return NULL;
  self->sentence = stead_fish_sentence (self);
  return g_steal_pointer (&self);
}
