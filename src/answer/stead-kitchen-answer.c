/* stead-kitchen-answer.c - "What has to be done, which limits were met, and what came of it?" */
#include "config.h"

#include "answer/stead-kitchen-private.h"
#include "store/stead-lot-repo.h"

#include <math.h>

/* The rate of use does not matter here. */
#define USE_DAYS 28

void
stead_kitchen_answer_free (SteadKitchenAnswer *self)
{
  if (self == NULL)
    return;
  g_clear_pointer (&self->lines, g_ptr_array_unref);
  g_clear_pointer (&self->readings, g_ptr_array_unref);
  g_clear_pointer (&self->people, g_ptr_array_unref);
  g_clear_pointer (&self->taken, g_ptr_array_unref);
  g_clear_pointer (&self->harvest, stead_harvest_free);
  g_clear_pointer (&self->kitchen, stead_kitchen_free);
  g_clear_pointer (&self->farm, stead_farm_free);
  g_free (self->sentence);
  g_free (self->cost_text);
  g_free (self->caution);
  g_free (self);
}

/* What the parts need at today's prices.  What was taken already has its real cost. */
static gboolean
read_plan (SteadKitchenAnswer  *self,
           SteadStore          *store,
           GError             **error)
{
  SteadDay today = stead_store_get_today (store);

  self->all_taken = self->kitchen->parts->len > 0;
  for (guint i = 0; i < self->kitchen->parts->len; i++)
    {
      const SteadKitchenPart *part = self->kitchen->parts->pdata[i];
      SteadStock stock;

      if (!stead_lot_repo_stock (store, part->item_id, today, USE_DAYS, &stock, error))
        return FALSE;
      self->planned_cents += part->need_base * stock.next_unit_cents;
      self->all_taken &= part->taken_base >= part->need_base - 1e-7;
    }
  self->planned_unit_cents = self->planned_cents / self->kitchen->wanted_base;
  return stead_kitchen_repo_used_cents (store, self->kitchen->batch.id, &self->used_cents, error);
}

/* (transfer full) (nullable) */
static char *
name_of (const GPtrArray *persons,
         gint64           person_id)
{
  for (guint i = 0; i < persons->len; i++)
    if (((const SteadPerson *) persons->pdata[i])->id == person_id)
      return g_strdup (((const SteadPerson *) persons->pdata[i])->name);
  return NULL;
}

static gboolean
read_lines (SteadKitchenAnswer  *self,
            SteadStore          *store,
            GError             **error)
{
  g_autoptr(GPtrArray) persons = stead_person_repo_list (store, error);

  if (persons == NULL)
    return FALSE;
  for (guint i = 0; i < self->kitchen->steps->len; i++)
    {
      const SteadKitchenStep *step = self->kitchen->steps->pdata[i];
      SteadRunLine *line = stead_kitchen_run_line (step, (int) i + 1, self->readings, self->farm->units);

      line->who = name_of (persons, step->person_id);
      self->n_done += step->done_at != STEAD_TIME_NONE;
      self->n_open += line->verdict == STEAD_RUN_OPEN;
      self->n_not_met += line->verdict == STEAD_RUN_NOT_MET;
      g_ptr_array_add (self->lines, line);
    }
  return TRUE;
}

static gboolean
read_end (SteadKitchenAnswer  *self,
          SteadStore          *store,
          GError             **error)
{
  self->yield_frac = self->unit_cents = NAN;
  for (guint i = 0; i < self->people->len; i++)
    self->worked_minutes += ((const SteadBatchPerson *) self->people->pdata[i])->minutes;
  if (self->kitchen->harvest_id == 0)
    return TRUE;
  self->harvest = stead_harvest_repo_get (store, self->kitchen->harvest_id, error);
  if (self->harvest == NULL)
    return FALSE;
  self->yield_frac = self->harvest->quantity_base / self->kitchen->wanted_base;
  if (self->harvest->quantity_base > 0)
    self->unit_cents = (double) self->harvest->cost_cents / self->harvest->quantity_base;
  return TRUE;
}

SteadKitchenAnswer *
stead_kitchen_answer_new (SteadStore  *store,
                          gint64       batch_id,
                          GError     **error)
{
  g_autoptr(SteadKitchenAnswer) self = g_new0 (SteadKitchenAnswer, 1);

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  self->lines = g_ptr_array_new_with_free_func ((GDestroyNotify) stead_run_line_free);
  self->farm = stead_farm_repo_get (store, error);
  self->kitchen = self->farm != NULL ? stead_kitchen_repo_get (store, batch_id, error) : NULL;
  self->readings = self->kitchen != NULL ? stead_kitchen_repo_readings (store, batch_id, error) : NULL;
  self->people = self->readings != NULL ? stead_kitchen_repo_people (store, batch_id, error) : NULL;
  self->taken = self->people != NULL ? stead_kitchen_repo_taken (store, batch_id, error) : NULL;
  if (self->taken == NULL || !read_plan (self, store, error) || !read_end (self, store, error)
      || !read_lines (self, store, error))
    return NULL;
  stead_kitchen_put_words (self, stead_store_get_today (store));
  return g_steal_pointer (&self);
}
