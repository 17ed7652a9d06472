/* stead-cost-answer.c - "What does one dozen really cost us?" */
#include "config.h"

#include "answer/stead-cost-answer.h"
#include "answer/stead-answer-error.h"
#include "answer/stead-cost-private.h"
#include "answer/stead-wait.h"

#include <glib/gi18n-lib.h>
#include <math.h>

const char *
stead_period_name (SteadPeriod period)
{
  switch (period)
    {
    case STEAD_PERIOD_12_WEEKS: return _("Last 12 weeks");
    case STEAD_PERIOD_4_WEEKS: return _("Last 4 weeks");
    case STEAD_PERIOD_SCHOOL_YEAR: return _("This school year");
    case STEAD_PERIOD_WHOLE_BATCH: return _("Since the flock came");
    default: g_return_val_if_reached ("");
    }
}

const char *
stead_period_id (SteadPeriod period)
{
  switch (period)
    {
    case STEAD_PERIOD_12_WEEKS: return "12-weeks";
    case STEAD_PERIOD_4_WEEKS: return "4-weeks";
    case STEAD_PERIOD_SCHOOL_YEAR: return "school-year";
    case STEAD_PERIOD_WHOLE_BATCH: return "whole-batch";
    default: g_return_val_if_reached ("");
    }
}

gboolean
stead_period_from_id (const char  *id,
                      SteadPeriod *out_period)
{
  g_return_val_if_fail (id != NULL && out_period != NULL, FALSE);

  for (int period = 0; period < STEAD_N_PERIODS; period++)
    if (g_str_equal (id, stead_period_id (period)))
      {
        *out_period = period;
        return TRUE;
      }
  return FALSE;
}

SteadDay
stead_flock_first_lay (const SteadFlock *flock)
{
  g_return_val_if_fail (flock != NULL, STEAD_DAY_NONE);
  if (!flock->reared)
    return flock->housed_on;
  if (flock->lay_began_on != STEAD_DAY_NONE)
    return MAX (flock->housed_on, flock->lay_began_on);
  return MAX (flock->housed_on, flock->hatched_on + (SteadDay) ceil (flock->curve.onset_age_weeks * 7));
}

void
stead_period_days (SteadPeriod       period,
                   const SteadFarm  *farm,
                   const SteadFlock *flock,
                   SteadDay          today,
                   SteadDay         *out_from,
                   SteadDay         *out_to)
{
  SteadDay to = flock->ended_on == STEAD_DAY_NONE ? today : MIN (today, flock->ended_on);
  SteadDay first = stead_flock_first_lay (flock);
  SteadDay from = first;

  switch (period)
    {
    case STEAD_PERIOD_12_WEEKS: from = to - 83; break;
    case STEAD_PERIOD_4_WEEKS: from = to - 27; break;
    case STEAD_PERIOD_SCHOOL_YEAR:
      from = stead_school_year_start (to, farm->school_year_month, farm->school_year_mday);
      break;
    case STEAD_PERIOD_WHOLE_BATCH:
    default: break;
    }
  *out_to = MAX (to, first);
  *out_from = MAX (from, first);
}

void
stead_cost_answer_free (SteadCostAnswer *self)
{
  if (self == NULL)
    return;
  g_clear_pointer (&self->farm, stead_farm_free);
  g_clear_pointer (&self->product, stead_product_free);
  g_clear_pointer (&self->batch, stead_batch_free);
  g_clear_pointer (&self->flock, stead_flock_free);
  if (self->money != NULL)
    stead_batch_money_clear (self->money);
  g_free (self->money);
  stead_kitchen_sheet_free (self->kitchen);
  for (int kind = 0; kind < STEAD_N_COST_KINDS; kind++)
    {
      g_free (self->labels[kind]);
      stead_why_free (self->whys[kind]);
    }
  stead_why_free (self->total_why);
  g_clear_pointer (&self->uses, g_ptr_array_unref);
  g_free (self->sentence);
  g_free (self->caution);
  g_free (self);
}

/* What the question is about: the farm, the product and its batch. */
static gboolean
read_subject (SteadStore       *store,
              gint64            product_id,
              SteadCostAnswer  *self,
              GError          **error)
{
  self->farm = stead_farm_repo_get (store, error);
  if (self->farm == NULL)
    return FALSE;
  self->product = stead_product_repo_get (store, product_id, error);
  if (self->product == NULL)
    return FALSE;
  if (self->product->batch_id == 0 && self->product->item_id != 0)
    return TRUE;
  if (self->product->batch_id == 0)
    {
      g_set_error (error, STEAD_ANSWER_ERROR, STEAD_ANSWER_ERROR_MISSING,
                   _("First say in Price which flock, fish, crop or item “%s” comes from."), self->product->name);
      return FALSE;
    }
  self->batch = stead_batch_repo_get (store, self->product->batch_id, error);
  return self->batch != NULL
         && stead_wait_read (store, self->batch->id, stead_store_get_today (store), &self->wait_until, error);
}

/* There must be something to divide by. */
static gboolean
check_eggs (const SteadCostAnswer  *self,
            GError                **error)
{
  g_autofree char *from = NULL;
  g_autofree char *to = NULL;

  if (self->totals.eggs > self->totals.cracked)
    return TRUE;
  if (self->flock->reared && self->totals.eggs == 0 && stead_flock_first_lay (self->flock) >= self->to)
    {
      from = stead_day_format (stead_flock_first_lay (self->flock), STEAD_DAY_STYLE_MEDIUM);
      g_set_error (error, STEAD_ANSWER_ERROR, STEAD_ANSWER_ERROR_MISSING,
                   _("“%s” does not lay yet; it is expected to begin on %s. What goes in until then is gathered, "
                     "and spread over the eggs."), self->flock->name, from);
      return FALSE;
    }
  from = stead_day_format (self->from, STEAD_DAY_STYLE_SHORT);
  to = stead_day_format (self->to, STEAD_DAY_STYLE_SHORT);
  if (self->totals.eggs == 0)
    g_set_error (error, STEAD_ANSWER_ERROR, STEAD_ANSWER_ERROR_MISSING,
                 _("The log of “%s” has no eggs from %s to %s. First enter the eggs in Raise."),
                 self->flock->name, from, to);
  else
    g_set_error (error, STEAD_ANSWER_ERROR, STEAD_ANSWER_ERROR_MISSING,
                 _("All eggs of “%s” from %s to %s are cracked, so there is nothing to sell. "
                   "First check the log in Raise."),
                 self->flock->name, from, to);
  return FALSE;
}

/* To an earlier span of the same length. */
static gboolean
go_back (SteadCostAnswer  *self,
         GError          **error)
{
  SteadDay first = stead_flock_first_lay (self->flock);

  if (self->spans_back == 0)
    return TRUE;
  self->to -= 28 * self->spans_back;
  self->from = MAX (first, self->to - 27);
  if (self->to - self->from >= 27)
    return TRUE;
  g_set_error (error, STEAD_ANSWER_ERROR, STEAD_ANSWER_ERROR_MISSING, _("“%s” did not lay yet on all of those days."),
               self->flock->name);
  return FALSE;
}

/* By the period: what it cost, over what it laid. */
static gboolean
answer_for_flock (SteadStore       *store,
                  SteadCostAnswer  *self,
                  SteadCostFacts   *facts,
                  GError          **error)
{
  self->flock = stead_flock_repo_get (store, self->batch->id, error);
  if (self->flock == NULL)
    return FALSE;
  stead_period_days (self->period, self->farm, self->flock, stead_store_get_today (store), &self->from, &self->to);
  if (!go_back (self, error))
    return FALSE;
  if (!stead_flock_repo_totals (store, self->flock->id, self->from, self->to, &self->totals, error)
      || !check_eggs (self, error)
      || !stead_cost_facts_read (store, self, facts, error))
    return FALSE;
  self->uses = stead_lot_repo_uses (store, self->flock->id, self->from, self->to, error);
  if (self->uses == NULL)
    return FALSE;
  stead_cost_facts_settle (self, facts);
  return TRUE;
}

/* There must be something to divide by, if not yet, then in the plan. */
static gboolean
check_output (const SteadCostAnswer  *self,
              GError                **error)
{
  const SteadBatchCost *cost = &self->money->cost;

  if (cost->good_base + cost->expected_base > 0)
    return TRUE;
  if (self->money->outlook.basis == STEAD_OUTLOOK_OVER)
    g_set_error (error, STEAD_ANSWER_ERROR, STEAD_ANSWER_ERROR_MISSING,
                 _("Nothing good came of “%s”, so there is nothing to divide its cost by."), self->batch->name);
  else
    g_set_error (error, STEAD_ANSWER_ERROR, STEAD_ANSWER_ERROR_MISSING,
                 _("Nothing is harvested of “%s” yet, and nothing is planned. "
                   "First enter in Raise how much it is meant to give."), self->batch->name);
  return FALSE;
}

/* By the whole batch: what it cost and will cost, over what it gave and will give. */
static gboolean
answer_for_batch (SteadStore       *store,
                  SteadCostAnswer  *self,
                  SteadCostFacts   *facts,
                  GError          **error)
{
  self->period = STEAD_PERIOD_WHOLE_BATCH;
  self->money = g_new0 (SteadBatchMoney, 1);
  if (!stead_batch_money_read (store, self->farm, self->batch->id, self->money, error)
      || !check_output (self, error))
    return FALSE;
  self->from = self->money->from;
  self->to = self->money->to;
  self->uses = g_ptr_array_ref (self->money->uses);
  if (!stead_cost_facts_read (store, self, facts, error))
    return FALSE;
  stead_cost_money_settle (self, facts);
  return TRUE;
}

/* By what the kitchen made, or would make. */
static gboolean
answer_for_kitchen (SteadStore       *store,
                    SteadCostAnswer  *self,
                    SteadCostFacts   *facts,
                    GError          **error)
{
  if (!stead_cost_kitchen_read (store, self, error) || !stead_cost_facts_read (store, self, facts, error))
    return FALSE;
  stead_cost_kitchen_settle (self, facts);
  return TRUE;
}

static gboolean
answer_by_source (SteadStore       *store,
                  SteadCostAnswer  *self,
                  SteadCostFacts   *facts,
                  GError          **error)
{
  if (self->batch == NULL)
    return answer_for_kitchen (store, self, facts, error);
  if (self->batch->kind == STEAD_BATCH_FLOCK)
    return answer_for_flock (store, self, facts, error);
  return answer_for_batch (store, self, facts, error);
}

static SteadCostAnswer *
answer_new (SteadStore   *store,
            gint64        product_id,
            SteadPeriod   period,
            int           spans_back,
            GError      **error)
{
  g_autoptr(SteadCostAnswer) self = g_new0 (SteadCostAnswer, 1);
  g_auto(SteadCostFacts) facts = { 0 };

  self->period = period;
  self->spans_back = spans_back;
  if (!read_subject (store, product_id, self, error))
    return NULL;
  if (!answer_by_source (store, self, &facts, error) || !stead_cost_overhead_settle (store, self, error))
    return NULL;
  stead_cost_answer_put_in_words (self, &facts);
  return g_steal_pointer (&self);
}

SteadCostAnswer *
stead_cost_answer_new (SteadStore   *store,
                       gint64        product_id,
                       SteadPeriod   period,
                       GError      **error)
{
  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  g_return_val_if_fail (period < STEAD_N_PERIODS, NULL);

  return answer_new (store, product_id, period, 0, error);
}

SteadCostAnswer *
stead_cost_answer_new_span (SteadStore  *store,
                            gint64       product_id,
                            int          back,
                            GError     **error)
{
  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);

  return answer_new (store, product_id, STEAD_PERIOD_4_WEEKS, back, error);
}
