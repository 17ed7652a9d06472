/* stead-cost-answer.c - "What does one dozen really cost us?" */
#include "config.h"

#include "answer/stead-cost-answer.h"
#include "answer/stead-answer-error.h"
#include "answer/stead-cost-private.h"

#include <glib/gi18n-lib.h>

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

void
stead_period_days (SteadPeriod       period,
                   const SteadFarm  *farm,
                   const SteadFlock *flock,
                   SteadDay          today,
                   SteadDay         *out_from,
                   SteadDay         *out_to)
{
  SteadDay to = flock->ended_on == STEAD_DAY_NONE ? today : MIN (today, flock->ended_on);
  SteadDay from = flock->housed_on;

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
  *out_to = MAX (to, flock->housed_on);
  *out_from = MAX (from, flock->housed_on);
}

void
stead_cost_answer_free (SteadCostAnswer *self)
{
  if (self == NULL)
    return;
  g_clear_pointer (&self->farm, stead_farm_free);
  g_clear_pointer (&self->product, stead_product_free);
  g_clear_pointer (&self->flock, stead_flock_free);
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

/* What the question is about: the farm, the product and its flock. */
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
  if (self->product->batch_id == 0)
    {
      g_set_error (error, STEAD_ANSWER_ERROR, STEAD_ANSWER_ERROR_MISSING,
                   _("First say in Price which flock “%s” comes from."), self->product->name);
      return FALSE;
    }
  self->flock = stead_flock_repo_get (store, self->product->batch_id, error);
  return self->flock != NULL;
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

SteadCostAnswer *
stead_cost_answer_new (SteadStore   *store,
                       gint64        product_id,
                       SteadPeriod   period,
                       GError      **error)
{
  g_autoptr(SteadCostAnswer) self = NULL;
  g_auto(SteadCostFacts) facts = { 0 };

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  g_return_val_if_fail (period < STEAD_N_PERIODS, NULL);

  self = g_new0 (SteadCostAnswer, 1);
  self->period = period;
  if (!read_subject (store, product_id, self, error))
    return NULL;
  stead_period_days (period, self->farm, self->flock, stead_store_get_today (store), &self->from, &self->to);
  if (!stead_flock_repo_totals (store, self->flock->id, self->from, self->to, &self->totals, error)
      || !check_eggs (self, error)
      || !stead_cost_facts_read (store, self, &facts, error))
    return NULL;
  self->uses = stead_lot_repo_uses (store, self->flock->id, self->from, self->to, error);
  if (self->uses == NULL)
    return NULL;
  stead_cost_facts_settle (self, &facts);
  stead_cost_answer_put_in_words (self, &facts);
  return g_steal_pointer (&self);
}
