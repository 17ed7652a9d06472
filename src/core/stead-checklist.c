/* stead-checklist.c - which process a food goes through, and what must be checked on the way. */
#include "config.h"

#include "core/stead-checklist.h"

static const char * const step_ids[STEAD_N_STEPS] = {
  [STEAD_STEP_RECEIVE] = "receive", [STEAD_STEP_STORE] = "store", [STEAD_STEP_PREPARE] = "prepare",
  [STEAD_STEP_COOK] = "cook", [STEAD_STEP_COOL] = "cool", [STEAD_STEP_REHEAT] = "reheat",
  [STEAD_STEP_COLD_HOLD] = "cold_hold", [STEAD_STEP_HOT_HOLD] = "hot_hold", [STEAD_STEP_SERVE] = "serve",
};

const char *
stead_step_id (SteadStep step)
{
  g_return_val_if_fail ((gsize) step < G_N_ELEMENTS (step_ids), "");
  return step_ids[step];
}

gboolean
stead_step_by_id (const char *id,
                  SteadStep  *out)
{
  g_return_val_if_fail (id != NULL && out != NULL, FALSE);

  for (gsize i = 0; i < G_N_ELEMENTS (step_ids); i++)
    if (g_str_equal (step_ids[i], id))
      {
        *out = (SteadStep) i;
        return TRUE;
      }
  return FALSE;
}

guint
stead_process_trips (const SteadStep *steps,
                     gsize            n)
{
  gboolean cooked = FALSE;
  gboolean hot = FALSE;
  guint trips = 0;

  g_return_val_if_fail (steps != NULL || n == 0, 0);

  for (gsize i = 0; i < n; i++)
    {
      gboolean heats = steps[i] == STEAD_STEP_COOK || steps[i] == STEAD_STEP_REHEAT;
      gboolean chills = steps[i] == STEAD_STEP_COOL;

      cooked = cooked || steps[i] == STEAD_STEP_COOK;
      /* A trip is complete only from the other side. */
      if ((heats && !hot) || (chills && hot))
        {
          trips++;
          hot = heats;
        }
    }
  return cooked ? trips : 0;
}

SteadProcessKind
stead_process_kind (const SteadStep *steps,
                    gsize            n)
{
  guint trips = stead_process_trips (steps, n);

  if (trips == 0)
    return STEAD_PROCESS_NO_COOK;
  return trips == 1 ? STEAD_PROCESS_SAME_DAY : STEAD_PROCESS_COMPLEX;
}

/* The part of the tables that a step is checked by, and the word for the food
 * there; NULL if nothing is. */
static const char *
process_of (SteadStep                 step,
            const SteadChecklistFood *food,
            const char              **out_subject)
{
  static const char * const processes[STEAD_N_STEPS] = {
    [STEAD_STEP_RECEIVE] = "receive", [STEAD_STEP_STORE] = "store", [STEAD_STEP_COOK] = "cook",
    [STEAD_STEP_COOL] = "cool", [STEAD_STEP_REHEAT] = "reheat", [STEAD_STEP_COLD_HOLD] = "hold_cold",
    [STEAD_STEP_HOT_HOLD] = "hold_hot",
  };
  const char *subjects[STEAD_N_STEPS] = {
    [STEAD_STEP_RECEIVE] = food->received, [STEAD_STEP_STORE] = "dry_store", [STEAD_STEP_COOK] = food->cooked,
    [STEAD_STEP_COOL] = "cooked", [STEAD_STEP_REHEAT] = food->reheated, [STEAD_STEP_COLD_HOLD] = food->held,
    [STEAD_STEP_HOT_HOLD] = food->held,
  };

  *out_subject = subjects[step];
  return *out_subject != NULL ? processes[step] : NULL;
}

/* Cooling is checked stage by stage, so the facts of the food are not all. */
static GPtrArray *
limits_of (const SteadLimitTable    *table,
           const char               *process,
           const char               *subject,
           const SteadLimitFact     *facts)
{
  static const char * const stages[] = { "stage_1", "stage_2", "total" };
  g_autoptr(GArray) all = NULL;
  GPtrArray *limits;

  if (!g_str_equal (process, "cool"))
    return stead_limit_table_list (table, process, subject, NULL, facts);
  limits = g_ptr_array_new ();
  for (gsize i = 0; i < G_N_ELEMENTS (stages); i++)
    {
      g_autoptr(GPtrArray) found = NULL;
      SteadLimitFact stage = { "stage", stages[i], 0 };

      g_clear_pointer (&all, g_array_unref);
      all = g_array_new (TRUE, TRUE, sizeof (SteadLimitFact));
      g_array_append_val (all, stage);
      for (const SteadLimitFact *fact = facts; fact != NULL && fact->name != NULL; fact++)
        g_array_append_vals (all, fact, 1);
      found = stead_limit_table_list (table, process, subject, "food_temp",
                                      (const SteadLimitFact *) (void *) all->data);
      for (guint f = 0; f < found->len; f++)
        g_ptr_array_add (limits, found->pdata[f]);
    }
  return limits;
}

GArray *
stead_checklist_new (const SteadLimitTable    *table,
                     const SteadStep          *steps,
                     gsize                     n,
                     const SteadChecklistFood *food)
{
  GArray *items = g_array_new (FALSE, FALSE, sizeof (SteadChecklistItem));

  g_return_val_if_fail (table != NULL && (steps != NULL || n == 0) && food != NULL, items);

  for (gsize i = 0; i < n; i++)
    {
      const char *subject = NULL;
      const char *process = process_of (steps[i], food, &subject);
      g_autoptr(GPtrArray) limits = NULL;

      if (process == NULL)
        continue;
      limits = limits_of (table, process, subject, food->facts);
      for (guint l = 0; l < limits->len; l++)
        {
          SteadChecklistItem item = { steps[i], i, limits->pdata[l] };

          if (item.limit->direction != STEAD_LIMIT_IS)
            g_array_append_val (items, item);
        }
    }
  return items;
}
