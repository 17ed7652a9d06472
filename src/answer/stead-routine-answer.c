/* stead-routine-answer.c - "What of the routine is due?" */
#include "config.h"

#include "answer/stead-crop-answer.h"
#include "answer/stead-routine-answer.h"
#include "store/stead-batch-repo.h"
#include "store/stead-flock-repo.h"
#include "store/stead-water-repo.h"

#include <glib/gi18n-lib.h>
#include <math.h>

SteadDay
stead_routine_due_on (const SteadRoutine *routine,
                      SteadDay            began_on,
                      double              sum_c,
                      SteadDay            today)
{
  g_return_val_if_fail (routine != NULL, STEAD_DAY_NONE);

  if (routine->every_days > 0)
    return routine->last_done == STEAD_DAY_NONE ? routine->start_on
                                                : MAX (routine->start_on, routine->last_done + routine->every_days);
  if (routine->last_done != STEAD_DAY_NONE)
    return STEAD_DAY_NONE;
  if (routine->age_days >= 0)
    return began_on == STEAD_DAY_NONE ? STEAD_DAY_NONE : began_on + routine->age_days;
  return sum_c >= routine->degree_days ? today : STEAD_DAY_NONE;
}

/* Whose task it is. */
typedef struct
{
  char        *name;
  SteadDay     began_on;
  SteadTarget  target;
  gint64       id;
} Owner;

static void
owner_clear (Owner *owner)
{
  g_free (owner->name);
}

G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Owner, owner_clear)

static gboolean
read_water (SteadStore  *store,
            gint64       id,
            Owner       *owner,
            GError     **error)
{
  g_autoptr(SteadWater) water = stead_water_repo_get (store, id, error);

  if (water == NULL)
    return FALSE;
  *owner = (Owner) { g_strdup (water->name), STEAD_DAY_NONE, STEAD_TARGET_WATER, id };
  return TRUE;
}

/* Hens have an age before they move in. */
static gboolean
read_batch (SteadStore  *store,
            gint64       id,
            Owner       *owner,
            GError     **error)
{
  g_autoptr(SteadBatch) batch = stead_batch_repo_get (store, id, error);
  g_autoptr(SteadFlock) flock = NULL;

  if (batch == NULL)
    return FALSE;
  if (batch->kind == STEAD_BATCH_FLOCK && (flock = stead_flock_repo_get (store, id, error)) == NULL)
    return FALSE;
  *owner = (Owner) { g_strdup (batch->name), flock != NULL ? flock->hatched_on : batch->started_on,
                     STEAD_TARGET_BATCH, id };
  return TRUE;
}

/* Degree days of the crop so far, those put in for gaps among them. */
static gboolean
read_sum (SteadStore          *store,
          const SteadRoutine  *routine,
          double              *out_c,
          GError             **error)
{
  g_autoptr(SteadCropAnswer) crop = NULL;

  *out_c = NAN;
  if (isnan (routine->degree_days))
    return TRUE;
  crop = stead_crop_answer_new (store, routine->batch_id, error);
  if (crop == NULL)
    return FALSE;
  if (crop->from != STEAD_DAY_NONE)
    *out_c = crop->sum_c + crop->assumed_c;
  return TRUE;
}

static void
add_due (GPtrArray          *dues,
         const SteadRoutine *routine,
         const Owner        *owner,
         SteadDay            due_on,
         SteadDay            today)
{
  SteadDue *due = g_new0 (SteadDue, 1);
  g_autofree char *day = due_on < today ? stead_day_format (due_on, STEAD_DAY_STYLE_MEDIUM) : NULL;

  *due = (SteadDue) { .kind = routine->last_done == today ? STEAD_DUE_DONE : STEAD_DUE_TASK, .target = owner->target,
                      .id = owner->id, .routine_id = routine->id };
  /* Translators: the name of a batch or a water, and a task: "Catfish 1: Weigh 30 fish". */
  due->text = g_strdup_printf (C_("routine", "%s: %s"), owner->name, routine->name);
  if (day != NULL && due->kind == STEAD_DUE_TASK)
    due->detail = g_strdup_printf (_("Due since %s."), day);
  g_ptr_array_add (dues, due);
}

static gboolean
read_owner (SteadStore          *store,
            const SteadRoutine  *routine,
            Owner               *owner,
            SteadDay            *out_due_on,
            GError             **error)
{
  double sum_c;

  if (!(routine->water_id != 0 ? read_water (store, routine->water_id, owner, error)
                               : read_batch (store, routine->batch_id, owner, error))
      || !read_sum (store, routine, &sum_c, error))
    return FALSE;
  *out_due_on = stead_routine_due_on (routine, owner->began_on, sum_c, stead_store_get_today (store));
  return TRUE;
}

gboolean
stead_routine_next (SteadStore          *store,
                    const SteadRoutine  *routine,
                    char               **out_owner,
                    SteadDay            *out_due_on,
                    GError             **error)
{
  g_auto(Owner) owner = { 0 };

  g_return_val_if_fail (STEAD_IS_STORE (store) && routine != NULL, FALSE);
  if (!read_owner (store, routine, &owner, out_due_on, error))
    return FALSE;
  *out_owner = g_strdup (owner.name);
  return TRUE;
}

static gboolean
look_at (SteadStore          *store,
         GPtrArray           *dues,
         const SteadRoutine  *routine,
         SteadDay             today,
         GError             **error)
{
  g_auto(Owner) owner = { 0 };
  SteadDay due_on;

  if (routine->paused)
    return TRUE;
  if (!read_owner (store, routine, &owner, &due_on, error))
    return FALSE;
  if (routine->last_done == today)
    add_due (dues, routine, &owner, today, today);
  else if (due_on != STEAD_DAY_NONE && due_on <= today)
    add_due (dues, routine, &owner, due_on, today);
  return TRUE;
}

gboolean
stead_routine_find_dues (SteadStore  *store,
                         GPtrArray   *dues,
                         GError     **error)
{
  g_autoptr(GPtrArray) routines = stead_routine_repo_list (store, 0, 0, error);

  if (routines == NULL)
    return FALSE;
  for (guint i = 0; i < routines->len; i++)
    if (!look_at (store, dues, routines->pdata[i], stead_store_get_today (store), error))
      return FALSE;
  return TRUE;
}
