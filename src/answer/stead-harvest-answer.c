/* stead-harvest-answer.c - "What does this harvest make, and what does it carry?" */
#include "config.h"

#include "answer/stead-harvest-answer.h"
#include "answer/stead-wait.h"
#include "answer/stead-words-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "core/stead-money.h"
#include "store/stead-fish-repo.h"

void
stead_harvest_answer_free (SteadHarvestAnswer *self)
{
  if (self == NULL)
    return;
  g_clear_pointer (&self->farm, stead_farm_free);
  g_clear_pointer (&self->batch, stead_batch_free);
  stead_batch_money_clear (&self->money);
  g_free (self->lot_code);
  g_free (self->sentence);
  g_free (self->caution);
  g_free (self);
}

/* The batch as it stood without the harvest that is being changed. */
static gboolean
leave_out (SteadHarvestAnswer  *self,
           SteadStore          *store,
           GError             **error)
{
  g_autoptr(SteadHarvest) harvest = NULL;
  SteadBatchCost *cost = &self->money.cost;

  if (self->harvest_id == 0)
    return TRUE;
  harvest = stead_harvest_repo_get (store, self->harvest_id, error);
  if (harvest == NULL)
    return FALSE;
  if (self->batch->kind != STEAD_BATCH_FLOCK)
    cost->good_base = MAX (0, cost->good_base - harvest->quantity_base);
  cost->expected_base += harvest->quantity_base;
  cost->carried_cents -= harvest->cost_cents;
  return TRUE;
}

SteadHarvestAnswer *
stead_harvest_answer_new (SteadStore  *store,
                          gint64       batch_id,
                          gint64       harvest_id,
                          GError     **error)
{
  g_autoptr(SteadHarvestAnswer) self = g_new0 (SteadHarvestAnswer, 1);

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  self->harvest_id = harvest_id;
  self->wait_until = self->best_by = STEAD_DAY_NONE;
  self->alive = -1;
  self->farm = stead_farm_repo_get (store, error);
  if (self->farm == NULL || !stead_batch_money_read (store, self->farm, batch_id, &self->money, error))
    return NULL;
  self->batch = stead_batch_copy (self->money.batch);
  self->last_item_id = stead_harvest_repo_last_item (store, batch_id, error);
  if (self->last_item_id < 0 || !leave_out (self, store, error)
      || !stead_batch_output_unit (store, self->batch, &self->unit, error))
    return NULL;
  self->unit_cents = stead_batch_unit_cents (&self->money.cost);
  return g_steal_pointer (&self);
}

/* --- as it is typed ----------------------------------------------------------------- */

static gboolean
read_lot (SteadHarvestAnswer  *self,
          SteadStore          *store,
          const SteadHarvest  *harvest,
          const SteadItem     *item,
          GError             **error)
{
  g_autoptr(SteadHarvest) before = NULL;

  g_clear_pointer (&self->lot_code, g_free);
  self->best_by = harvest->best_by;
  self->keeps = item != NULL && self->best_by == STEAD_DAY_NONE && item->shelf_life_days > 0;
  if (self->keeps)
    self->best_by = harvest->day + item->shelf_life_days;
  if (self->harvest_id != 0)
    {
      before = stead_harvest_repo_get (store, self->harvest_id, error);
      if (before == NULL)
        return FALSE;
      self->lot_code = g_strdup (before->lot_code);
    }
  if (self->lot_code == NULL)
    self->lot_code = stead_harvest_repo_next_code (store, self->batch, harvest->day, error);
  return self->lot_code != NULL;
}

static gboolean
read_fish (SteadHarvestAnswer  *self,
           SteadStore          *store,
           const SteadHarvest  *harvest,
           GError             **error)
{
  if (self->batch->kind != STEAD_BATCH_FISH)
    return TRUE;
  self->alive = stead_fish_repo_alive (store, self->batch->id, harvest->day, error);
  return self->alive >= 0;
}

/* Most eggs leave a flock without a lot, so that no lot of eggs is the last of it all. */
static gboolean
takes_rest (const SteadHarvestAnswer *self,
            const SteadHarvest       *harvest)
{
  return harvest->is_last && self->batch->kind != STEAD_BATCH_FLOCK;
}

static gint64
cost_of (const SteadHarvestAnswer *self,
         const SteadHarvest       *harvest)
{
  if (!(harvest->quantity_base > 0))
    return 0;
  return stead_batch_harvest_cents (&self->money.cost, harvest->quantity_base, takes_rest (self, harvest));
}

static void
read_cost (SteadHarvestAnswer *self,
           const SteadHarvest *harvest,
           const SteadItem    *item)
{
  self->day = harvest->day;
  self->quantity_base = harvest->quantity_base;
  self->lot_unit = item != NULL ? item->unit : self->unit;
  self->takes_rest = takes_rest (self, harvest);
  self->cost_cents = cost_of (self, harvest);
  self->each_cents = !(harvest->quantity_base > 0) ? 0
    : stead_money_round ((double) self->cost_cents / stead_quantity_from_base (harvest->quantity_base, self->lot_unit));
}

/* "Lot W26062-1 gets 20 kg at $4.18 for 1 kg: $83.67." */
static char *
lot_sentence (const SteadHarvestAnswer *self,
              const SteadHarvest       *harvest)
{
  g_autofree char *amount = stead_quantity_format (self->quantity_base, self->lot_unit);
  g_autofree char *one = stead_quantity_format (stead_quantity_to_base (1, self->lot_unit), self->lot_unit);
  g_autofree char *each = stead_money_format (self->each_cents, self->farm->currency);
  g_autofree char *cost = stead_money_format (self->cost_cents, self->farm->currency);

  if (harvest->is_last)
    /* Translators: code of a lot, "20 kg", all the money that is left, what one costs, "1 kg". */
    return g_strdup_printf (_("Lot <b>%s</b> gets the last %s, and with it all that is left of the cost, <b>%s</b>: "
                              "%s for %s."), self->lot_code, amount, cost, each, one);
  /* Translators: code of a lot, "20 kg", what it carries, what one costs, "1 kg". */
  return g_strdup_printf (_("Lot <b>%s</b> gets %s and carries <b>%s</b> of the cost: %s for %s."),
                          self->lot_code, amount, cost, each, one);
}

static char *
sentence_of (const SteadHarvestAnswer *self,
             const SteadHarvest       *harvest)
{
  GString *text = g_string_new (NULL);
  g_autofree char *lot = NULL;
  g_autofree char *best_by = NULL;

  if (harvest->quantity_base > 0)
    {
      lot = lot_sentence (self, harvest);
      stead_words_add (text, lot);
      if (self->best_by != STEAD_DAY_NONE)
        {
          g_autofree char *day = stead_day_format (self->best_by, STEAD_DAY_STYLE_MEDIUM);

          best_by = g_strdup_printf (_("Best by %s."), day);
          stead_words_add (text, best_by);
        }
    }
  else if (harvest->lost_base > 0)
    stead_words_add (text, _("Nothing good came of it: no lot is made."));
  return stead_words_end (text);
}

/* What is uncertain in the cost. */
static void
add_doubts (const SteadHarvestAnswer *self,
            const SteadHarvest       *harvest,
            GString                  *text)
{
  if (!(harvest->quantity_base > 0) || harvest->is_last)
    return;
  if (self->money.outlook.basis == STEAD_OUTLOOK_NONE)
    stead_words_add (text, _("Neither a plan nor a forecast says how much is still to come, so this lot may carry more "
                             "of the cost than its share. Enter a plan first."));
  else if (stead_batch_left_cents (&self->money.cost) == self->cost_cents && self->cost_cents > 0)
    stead_words_add (text, _("All that went in so far is in this lot: more was harvested than the cost so far covers."));
}

static char *
caution_of (const SteadHarvestAnswer *self,
            const SteadHarvest       *harvest)
{
  GString *text = g_string_new (NULL);
  g_autofree char *wait = stead_wait_batch_caution (self->batch->name, self->wait_until);

  stead_words_add (text, wait);
  add_doubts (self, harvest, text);
  return stead_words_end (text);
}

gboolean
stead_harvest_answer_set (SteadHarvestAnswer  *self,
                          SteadStore          *store,
                          const SteadHarvest  *harvest,
                          GError             **error)
{
  g_autoptr(SteadItem) item = NULL;

  g_return_val_if_fail (self != NULL && harvest != NULL && STEAD_IS_STORE (store), FALSE);
  g_return_val_if_fail (stead_day_is_valid (harvest->day), FALSE);
  if (harvest->item_id != 0)
    {
      item = stead_item_repo_get (store, harvest->item_id, error);
      if (item == NULL)
        return FALSE;
    }
  if (!stead_wait_read (store, self->batch->id, harvest->day, &self->wait_until, error)
      || !read_lot (self, store, harvest, item, error) || !read_fish (self, store, harvest, error))
    return FALSE;
  read_cost (self, harvest, item);
  g_free (self->sentence);
  self->sentence = sentence_of (self, harvest);
  g_free (self->caution);
  self->caution = caution_of (self, harvest);
  return TRUE;
}

gboolean
stead_harvest_cost (SteadStore          *store,
                    const SteadHarvest  *harvest,
                    gint64              *out_cents,
                    GError             **error)
{
  g_autoptr(SteadHarvestAnswer) answer = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store) && harvest != NULL && out_cents != NULL, FALSE);
  answer = stead_harvest_answer_new (store, harvest->batch_id, harvest->id, error);
  if (answer == NULL)
    return FALSE;
  *out_cents = cost_of (answer, harvest);
  return TRUE;
}

char *
stead_harvest_name (const SteadHarvest *harvest,
                    const SteadItem    *item,
                    const char         *batch_name)
{
  g_autofree char *day = stead_day_format (harvest->day, STEAD_DAY_STYLE_SHORT);
  g_autofree char *amount = NULL;

  if (item == NULL)
    /* Translators: name of a step to undo: name of a batch, a day. */
    return g_strdup_printf (_("harvest of “%s” on %s"), batch_name, day);
  amount = stead_quantity_format (harvest->quantity_base, item->unit);
  /* Translators: name of a step to undo: "20 kg", name of an item, a day. */
  return g_strdup_printf (_("harvest of %s of %s on %s"), amount, item->name, day);
}
