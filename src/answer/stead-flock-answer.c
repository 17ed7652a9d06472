/* stead-flock-answer.c - "How is this flock doing, and what will it give?" */
#include "config.h"

#include "answer/stead-cost-in-private.h"
#include "answer/stead-flock-answer.h"
#include "answer/stead-flock-private.h"
#include "answer/stead-hand-why-private.h"

#include <math.h>

#define CURVE_STEP_WEEKS 0.5
#define CURVE_AHEAD_WEEKS 8.0
#define CURVE_LEAST_AGE_WEEKS 72.0

static void
free_notes (GArray *notes)
{
  if (notes == NULL)
    return;
  for (guint i = 0; i < notes->len; i++)
    g_free ((char *) g_array_index (notes, SteadLayNote, i).text);
  g_array_unref (notes);
}

void
stead_flock_answer_free (SteadFlockAnswer *self)
{
  if (self == NULL)
    return;
  g_clear_pointer (&self->farm, stead_farm_free);
  g_clear_pointer (&self->flock, stead_flock_free);
  g_clear_pointer (&self->weeks, g_array_unref);
  g_clear_pointer (&self->curve_age, g_array_unref);
  g_clear_pointer (&self->curve_frac, g_array_unref);
  g_clear_pointer (&self->ahead, g_array_unref);
  g_clear_pointer (&self->ahead_age, g_array_unref);
  g_clear_pointer (&self->ahead_frac, g_array_unref);
  free_notes (self->notes);
  g_clear_pointer (&self->feed_lots, g_ptr_array_unref);
  stead_why_free (self->cost_why);
  g_free (self->fit_note);
  g_free (self->sentence);
  g_free (self->caution);
  g_free (self);
}

double
stead_flock_expected_frac (const SteadFlock *flock,
                           double            age_weeks)
{
  if (age_weeks > flock->curve.onset_age_weeks + STEAD_CURVE_MAX_LAY_WEEKS)
    return NAN;
  return stead_lay_curve_frac (&flock->curve, age_weeks);
}

/* The last day that counts as complete: yesterday, or the flock's last one. */
static SteadDay
last_complete (const SteadFlock *flock,
               SteadDay          today)
{
  return flock->ended_on == STEAD_DAY_NONE ? today - 1 : MIN (today - 1, flock->ended_on);
}

/* The last day of the flock that the answer speaks of. */
static SteadDay
last_day (const SteadFlock *flock,
          SteadDay          today)
{
  return flock->ended_on == STEAD_DAY_NONE ? today : MIN (today, flock->ended_on);
}

/* The log is long and read once: the last week, the last twelve, the whole, week by week. */
static gboolean
read_log (SteadStore        *store,
          SteadFlockAnswer  *self,
          SteadDay           today,
          GError           **error)
{
  enum { WEEK, RECENT, SO_FAR, N_SPANS };
  const SteadFlock *flock = self->flock;
  SteadDay last = last_complete (flock, today);
  SteadDay from = MAX (flock->housed_on, last - 6);
  SteadDay end = last_day (flock, today);
  SteadFlockSpan spans[N_SPANS] = {
    [WEEK] = { .from = from, .to = last },
    [RECENT] = { .from = MAX (flock->housed_on, end - 83), .to = end },
    [SO_FAR] = { .from = flock->housed_on, .to = end },
  };

  self->week_frac = NAN;
  self->expected_frac = NAN;
  self->feed_per_dozen_kg = NAN;
  self->weeks = stead_flock_repo_weeks_and_spans (store, flock->id, flock->housed_on, MAX (end, flock->housed_on),
                                                  spans, N_SPANS, error);
  if (self->weeks == NULL)
    return FALSE;
  self->week = spans[WEEK].totals;
  self->recent = spans[RECENT].totals;
  self->so_far = spans[SO_FAR].totals;
  if (end < flock->housed_on)
    return TRUE;
  self->week_frac = stead_flock_hen_day_frac (self->week.eggs, self->week.hen_days);
  self->expected_frac = stead_flock_expected_frac (
    flock, (stead_age_weeks (flock->hatched_on, from) + stead_age_weeks (flock->hatched_on, last + 1)) / 2);
  if (self->recent.feed_kg > 0)
    self->feed_per_dozen_kg = stead_flock_feed_per_dozen_kg (self->recent.feed_kg, self->recent.eggs);
  return TRUE;
}

static gboolean
read_feed (SteadStore        *store,
           SteadFlockAnswer  *self,
           SteadDay           today,
           GError           **error)
{
  SteadStock stock;

  self->feed_days = NAN;
  if (self->flock->feed_item_id == 0)
    return TRUE;
  if (!stead_lot_repo_stock (store, self->flock->feed_item_id, today, STEAD_USE_DAYS, &stock, error))
    return FALSE;
  self->feed_on_hand_kg = stock.on_hand_base;
  self->feed_use_kg_day = stock.use_per_day_base;
  if (stock.use_per_day_base > 0)
    self->feed_days = stock.on_hand_base / stock.use_per_day_base;
  self->feed_lots = stead_hand_lots (store, self->flock->feed_item_id, error);
  return self->feed_lots != NULL;
}

/* Everything that went in since the flock came: the birds at their full price. */
static gboolean
read_cost (SteadStore        *store,
           SteadFlockAnswer  *self,
           SteadDay           today,
           GError           **error)
{
  const SteadFlock *flock = self->flock;
  SteadDay end = last_day (flock, today);
  SteadCostIn cost;

  if (!stead_cost_in_read (store, STEAD_BATCH_FLOCK, flock->id, flock->housed_on, MAX (end, flock->housed_on),
                           flock->birds_cost_cents, 0, &cost, error))
    return FALSE;
  self->cost_in_cents = cost.total_cents;
  self->cost_why = stead_cost_in_why (&cost, STEAD_BATCH_FLOCK, self->farm->currency);
  return TRUE;
}

/* The expected curve for the chart, up to some weeks ahead of today. */
static void
fill_curve (SteadFlockAnswer *self,
            double            today_age_weeks)
{
  const SteadLayCurve *curve = &self->flock->curve;
  double first = floor (MIN (curve->onset_age_weeks,
                             stead_age_weeks (self->flock->hatched_on, self->flock->housed_on)));
  double last = MIN (MAX (today_age_weeks + CURVE_AHEAD_WEEKS, CURVE_LEAST_AGE_WEEKS),
                     curve->onset_age_weeks + STEAD_CURVE_MAX_LAY_WEEKS);

  self->curve_age = g_array_new (FALSE, FALSE, sizeof (double));
  self->curve_frac = g_array_new (FALSE, FALSE, sizeof (double));
  for (double age = MAX (0, first); age <= last; age += CURVE_STEP_WEEKS)
    {
      double frac = stead_lay_curve_frac (curve, age);

      g_array_append_val (self->curve_age, age);
      g_array_append_val (self->curve_frac, frac);
    }
}

static gboolean
fill_series (SteadStore        *store,
             SteadFlockAnswer  *self,
             SteadDay           today,
             GError           **error)
{
  fill_curve (self, self->age_weeks);
  if (!stead_flock_forecast (store, self, today, error)
      || !stead_flock_notes (store, self, error))
    return FALSE;
  self->series = (SteadLaySeries) {
    .weeks = (const SteadLayWeek *) (gpointer) self->weeks->data,
    .n_weeks = self->weeks->len,
    .curve_age = (const double *) (gpointer) self->curve_age->data,
    .curve_frac = (const double *) (gpointer) self->curve_frac->data,
    .n_curve = self->curve_age->len,
    .today_age_weeks = self->age_weeks,
    .ahead_age = (const double *) (gpointer) self->ahead_age->data,
    .ahead_frac = (const SteadBand *) (gpointer) self->ahead_frac->data,
    .n_ahead = self->ahead_age->len,
    .notes = (const SteadLayNote *) (gpointer) self->notes->data,
    .n_notes = self->notes->len,
  };
  return TRUE;
}

/* Hens after today's losses. */
static gboolean
read_hens (SteadStore        *store,
           SteadFlockAnswer  *self,
           SteadDay           today,
           GError           **error)
{
  const SteadFlock *flock = self->flock;
  gboolean over = flock->ended_on != STEAD_DAY_NONE && flock->ended_on <= today;
  SteadDay end = over ? flock->ended_on : today;

  self->alive = stead_flock_repo_alive (store, flock->id, end + 1, error);
  self->age_weeks = stead_age_weeks (flock->hatched_on, end);
  return self->alive >= 0;
}

SteadFlockAnswer *
stead_flock_answer_new (SteadStore  *store,
                        gint64       flock_id,
                        GError     **error)
{
  g_autoptr(SteadFlockAnswer) self = NULL;
  SteadDay today;

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);

  today = stead_store_get_today (store);
  self = g_new0 (SteadFlockAnswer, 1);
  self->farm = stead_farm_repo_get (store, error);
  if (self->farm == NULL)
    return NULL;
  self->flock = stead_flock_repo_get (store, flock_id, error);
  if (self->flock == NULL
      || !read_hens (store, self, today, error)
      || !read_log (store, self, today, error)
      || !read_feed (store, self, today, error)
      || !read_cost (store, self, today, error)
      || !fill_series (store, self, today, error)
      || !stead_flock_low_days (store, self->flock, today, &self->low, error))
    return NULL;
  self->caution = stead_flock_low_caution (&self->low);
  self->sentence = stead_flock_sentence (self, today);
  return g_steal_pointer (&self);
}
