/* stead-check-answer.c - "What of this list is read, what is open, and what did not meet its limit?" */
#include "config.h"

#include "answer/stead-check-answer-private.h"
#include "answer/stead-check-plan-private.h"
#include "answer/stead-limits.h"

#include <glib/gi18n-lib.h>
#include <math.h>

static void
pot_free (gpointer data)
{
  SteadCheckPotRead *pot = data;

  g_free (pot->name);
  stead_cooling_answer_free (pot->cooling);
  g_free (pot);
}

static void
line_free (gpointer data)
{
  SteadCheckedLine *line = data;

  g_free (line->food);
  g_free (line->text);
  g_free (line->limit);
  g_free (line->own);
  g_free (line->reason);
  g_free (line->source);
  g_free (line->tool);
  g_free (line->often);
  g_free (line->who);
  g_free (line->state_text);
  g_ptr_array_unref (line->reads);
  g_ptr_array_unref (line->pots);
  g_free (line);
}

static void
stop_free (gpointer data)
{
  SteadCheckStopRead *stop = data;

  g_free (stop->food);
  g_free (stop->text);
  g_free (stop->way);
  g_free (stop->source);
  g_free (stop->settled);
  g_free (stop);
}

void
stead_check_answer_free (SteadCheckAnswer *self)
{
  if (self == NULL)
    return;
  g_clear_pointer (&self->lines, g_ptr_array_unref);
  g_clear_pointer (&self->stops, g_ptr_array_unref);
  g_clear_pointer (&self->holds, g_ptr_array_unref);
  g_clear_pointer (&self->instruments, g_ptr_array_unref);
  g_clear_pointer (&self->people, g_ptr_array_unref);
  g_clear_pointer (&self->holes, stead_list_holes_free);
  g_clear_pointer (&self->list, stead_check_list_free);
  g_clear_pointer (&self->table, stead_limit_table_free);
  g_clear_pointer (&self->farm, stead_farm_free);
  g_free (self->sentence);
  g_free (self->stale);
  g_free (self->signed_by);
  g_free (self->missing);
  g_free (self->caution);
  g_free (self);
}

/* --- whose, and of what ------------------------------------------------------------------------ */

const char *
stead_check_person_name (const SteadCheckAnswer *self,
                         gint64                  id)
{
  for (guint i = 0; i < self->people->len; i++)
    if (((const SteadPerson *) self->people->pdata[i])->id == id)
      return ((const SteadPerson *) self->people->pdata[i])->name;
  return NULL;
}

static char *
food_name (const SteadCheckList *list,
           int                   food)
{
  return food >= 0 && (guint) food < list->foods->len
         ? g_strdup (((const SteadListFood *) list->foods->pdata[food])->name) : NULL;
}

/* --- pots ------------------------------------------------------------------------------------ */

/* Something was done after the reading before it, and no later than this one. */
static gboolean
was_changed (const GPtrArray  *dones,
             const SteadShown *before,
             const SteadShown *shown)
{
  for (guint i = 0; before != NULL && i < dones->len; i++)
    {
      const SteadDone *done = dones->pdata[i];

      if (done->reading_id == before->id || (done->at > before->at && done->at <= shown->at &&
                                             done->reading_id == shown->id))
        return TRUE;
    }
  return FALSE;
}

/* Two readings of one minute, of which one had its time corrected: the warmer counts, and both are told. */
static void
count_the_warmer (const SteadCheckAnswer *self,
                  SteadPotReading        *kept,
                  const SteadShown       *before,
                  const SteadShown       *shown,
                  GPtrArray              *differ)
{
  g_autofree char *one = NULL, *other = NULL, *time = NULL;

  if (shown->value == before->value)
    return;
  one = stead_check_value_text (before, NULL, self->farm->units);
  other = stead_check_value_text (shown, NULL, self->farm->units);
  time = stead_check_time_text (shown->at);
  kept->temp_c = MAX (kept->temp_c, shown->value);
  /* Translators: a time of day, two temperatures. */
  g_ptr_array_add (differ, g_strdup_printf (_("At %1$s one read %2$s and another %3$s: the warmer counts. Probe it again, and "
                                              "correct the one that is wrong."), time, one, other));
}

static void
add_pot (SteadCheckAnswer   *self,
         SteadCheckedLine   *line,
         const SteadListPot *pot,
         const GPtrArray    *dones,
         gint64              now)
{
  g_autoptr(GArray) readings = g_array_new (FALSE, TRUE, sizeof (SteadPotReading));
  g_autoptr(GPtrArray) differ = g_ptr_array_new ();
  const SteadShown *before = NULL;
  SteadCheckPotRead *read;
  SteadPot asked = { .now = now, .air_low_c = NAN, .air_high_c = NAN, .units = self->farm->units, .table = self->table };

  for (guint i = 0; i < line->line->readings->len; i++)
    {
      const SteadShown *shown = line->line->readings->pdata[i];
      SteadPotReading row = { shown->at, shown->value, was_changed (dones, before, shown) };

      if (shown->corrected || shown->pot_id != (pot != NULL ? pot->id : 0))
        continue;
      if (before != NULL && before->at == shown->at)
        {
          count_the_warmer (self, &g_array_index (readings, SteadPotReading, readings->len - 1), before, shown, differ);
          continue;
        }
      g_array_append_val (readings, row);
      before = shown;
    }
  if (pot == NULL && readings->len == 0)
    return;
  asked.readings = (const SteadPotReading *) (void *) readings->data;
  asked.n_readings = readings->len;
  read = g_new0 (SteadCheckPotRead, 1);
  read->pot = pot;
  read->name = g_strdup (pot != NULL ? pot->name : line->food);
  if (readings->len > 0)
    read->cooling = stead_cooling_answer_new (&asked, NULL);
  for (guint i = 0; i < differ->len; i++)
    if (read->cooling != NULL)
      g_ptr_array_add (read->cooling->notes, differ->pdata[i]);
    else
      g_free (differ->pdata[i]);
  g_ptr_array_add (line->pots, read);
}

/* --- one line ---------------------------------------------------------------------------------- */

/* The last reading that counts. */
static const SteadCheckRead *
last_read (const SteadCheckedLine *line)
{
  for (guint i = line->reads->len; i > 0; i--)
    if (((const SteadCheckRead *) line->reads->pdata[i - 1])->state != STEAD_READ_CORRECTED)
      return line->reads->pdata[i - 1];
  return NULL;
}

static SteadCheckedState
pots_state (const SteadCheckedLine *line)
{
  SteadCheckedState state = line->pots->len > 0 ? STEAD_CHECKED_MET : STEAD_CHECKED_OPEN;

  for (guint i = 0; i < line->pots->len; i++)
    {
      const SteadCheckPotRead *pot = line->pots->pdata[i];

      if (pot->cooling == NULL)
        return STEAD_CHECKED_OPEN;
      if (pot->cooling->state == STEAD_POT_FAILED)
        return last_read (line) != NULL && last_read (line)->state == STEAD_READ_HANDLED ? STEAD_CHECKED_HANDLED
                                                                                        : STEAD_CHECKED_FAILED;
      if (pot->cooling->state != STEAD_POT_MET)
        state = STEAD_CHECKED_UNSURE;
    }
  return state;
}

static gboolean
is_over (const SteadCheckList *list,
         gint64                now)
{
  return list->signed_by != 0 || stead_time_day (now) > list->day;
}

/* @now: STEAD_TIME_NONE once the work is over: then nothing is due again. */
static SteadCheckedState
find_state (SteadCheckedLine *line,
            gint64            now)
{
  const SteadCheckRead *last = last_read (line);

  if (line->line->left_out != NULL)
    return STEAD_CHECKED_LEFT_OUT;
  if (last == NULL)
    return STEAD_CHECKED_OPEN;
  if (stead_list_line_is_cooling (line->line))
    return pots_state (line);
  /* One that failed before and was never answered is still open. */
  for (guint i = 0; i < line->reads->len; i++)
    if (((const SteadCheckRead *) line->reads->pdata[i])->state == STEAD_READ_FAILED)
      return STEAD_CHECKED_FAILED;
  if (last->state == STEAD_READ_HANDLED)
    return STEAD_CHECKED_HANDLED;
  if (last->state != STEAD_READ_MET)
    return STEAD_CHECKED_UNSURE;
  if (!isnan (line->line->every_s) && now != STEAD_TIME_NONE)
    line->next_at = last->shown->at + (gint64) line->line->every_s;
  return line->next_at != STEAD_TIME_NONE && line->next_at <= now ? STEAD_CHECKED_AGAIN : STEAD_CHECKED_MET;
}

static char *
state_text (const SteadCheckedLine *line)
{
  const SteadCheckRead *last = last_read (line);
  g_autofree char *next = stead_check_time_text (line->next_at);

  switch (line->state)
    {
    case STEAD_CHECKED_OPEN: return g_strdup (_("Not read yet."));
    case STEAD_CHECKED_LEFT_OUT:
      /* Translators: why a line was left out. */
      return g_strdup_printf (_("Left out: %s"), line->line->left_out);
    case STEAD_CHECKED_AGAIN:
      /* Translators: a time of day. */
      return g_strdup_printf (_("Due again since %s."), next);
    case STEAD_CHECKED_FAILED: return g_strdup (_("Did not meet its limit, and nothing says what was done."));
    case STEAD_CHECKED_HANDLED: return g_strdup (_("Did not meet its limit; something was done. Read it again."));
    case STEAD_CHECKED_UNSURE:
      return g_strdup (stead_list_line_is_cooling (line->line) ? _("Cooling: not all marks are reached yet.")
                                                               : _("Read, but neither met nor missed: measure again."));
    case STEAD_CHECKED_MET:
    default:
      /* Translators: a time of day. */
      return g_strdup_printf (_("Met at %s."), last != NULL ? last->time : "");
    }
}

/* Times of readings in a store that lives on another day are as that day. */
static void
add_line (SteadCheckAnswer *self,
          SteadListLine    *kept,
          const GPtrArray  *dones,
          gint64            now)
{
  SteadCheckedLine *line = g_new0 (SteadCheckedLine, 1);

  line->line = kept;
  line->reads = g_ptr_array_new_with_free_func (stead_check_read_free);
  line->pots = g_ptr_array_new_with_free_func (pot_free);
  line->next_at = STEAD_TIME_NONE;
  line->food = food_name (self->list, kept->food);
  line->known = stead_check_line_of_list (kept, &line->plan);
  line->text = line->known ? stead_check_line_text (&line->plan, self->farm) : g_strdup (kept->topic);
  line->source = stead_check_sources_text (kept->rows);
  if (line->known)
    {
      line->limit = line->plan.measure != NULL ? stead_check_limit_text (kept->rows, kept->needs_all, self->farm->units)
                                               : NULL;
      line->own = stead_check_own_text (&line->plan, self->farm->units);
      line->reason = stead_check_reason_text (&line->plan);
      line->tool = stead_check_tool_text (&line->plan);
      line->often = stead_check_often_text (&line->plan);
      line->who = stead_check_who_text (&line->plan);
    }
  for (guint i = 0; i < kept->readings->len; i++)
    g_ptr_array_add (line->reads, stead_check_read_new (self, line, kept->readings->pdata[i], dones));
  if (stead_list_line_is_cooling (kept))
    {
      for (guint i = 0; i < kept->pots->len; i++)
        add_pot (self, line, kept->pots->pdata[i], dones, now);
      add_pot (self, line, NULL, dones, now);
    }
  line->state = find_state (line, is_over (self->list, now) ? STEAD_TIME_NONE : now);
  line->state_text = state_text (line);
  g_ptr_array_add (self->lines, line);
}

/* --- stops ----------------------------------------------------------------------------------------- */

static char *
way_text (const char *id)
{
  for (int i = 0; i <= STEAD_CHECK_WAY_DISCARD; i++)
    if (g_strcmp0 (stead_check_way_id ((SteadCheckWay) i), id) == 0)
      return stead_check_way_text ((SteadCheckWay) i);
  return NULL;
}

static void
add_stop (SteadCheckAnswer    *self,
          const SteadListStop *kept)
{
  SteadCheckStopRead *stop = g_new0 (SteadCheckStopRead, 1);
  const char *name = stead_check_person_name (self, kept->settled_by);

  stop->stop = kept;
  stop->food = food_name (self->list, kept->food);
  stop->text = g_strdup (kept->told != NULL ? kept->told : kept->kind);
  stop->way = way_text (kept->way);
  stop->source = stead_limits_source (kept->row);
  if (kept->settled != NULL)
    stop->settled = name != NULL ? g_strdup_printf ("%s (%s)", kept->settled, name) : g_strdup (kept->settled);
  g_ptr_array_add (self->stops, stop);
}

/* --- the whole --------------------------------------------------------------------------------------- */

static void
count_lines (SteadCheckAnswer *self)
{
  for (guint i = 0; i < self->lines->len; i++)
    {
      const SteadCheckedLine *line = self->lines->pdata[i];

      self->n_to_do += line->state != STEAD_CHECKED_LEFT_OUT;
      self->n_open += line->state == STEAD_CHECKED_OPEN || line->state == STEAD_CHECKED_AGAIN;
      self->n_failed += line->state == STEAD_CHECKED_FAILED || line->state == STEAD_CHECKED_HANDLED;
      self->n_unsure += line->state == STEAD_CHECKED_UNSURE;
    }
  for (guint i = 0; i < self->holds->len; i++)
    self->n_held += ((const SteadHold *) self->holds->pdata[i])->ended_at == STEAD_TIME_NONE;
}

static gboolean
read_all (SteadCheckAnswer  *self,
          SteadStore        *store,
          gint64             list_id,
          GPtrArray        **out_dones,
          GError           **error)
{
  self->list = stead_check_repo_get (store, list_id, error);
  if (self->list == NULL)
    return FALSE;
  self->farm = stead_farm_repo_get (store, error);
  self->table = self->farm != NULL ? stead_check_table_on (store, self->list->day, error) : NULL;
  self->holds = self->table != NULL ? stead_hold_repo_of_list (store, list_id, error) : NULL;
  self->instruments = self->holds != NULL ? stead_instrument_repo_list (store, TRUE, error) : NULL;
  self->people = self->instruments != NULL ? stead_person_repo_list (store, error) : NULL;
  self->holes = self->people != NULL ? stead_check_repo_holes (store, self->list, error) : NULL;
  *out_dones = self->holes != NULL ? stead_done_repo_of_list (store, list_id, error) : NULL;
  return *out_dones != NULL;
}

SteadCheckAnswer *
stead_check_answer_new (SteadStore  *store,
                        gint64       list_id,
                        GError     **error)
{
  g_autoptr(SteadCheckAnswer) self = g_new0 (SteadCheckAnswer, 1);
  g_autoptr(GPtrArray) dones = NULL;
  gint64 now;

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  if (!read_all (self, store, list_id, &dones, error))
    return NULL;
  now = stead_time_now (store);
  self->lines = g_ptr_array_new_with_free_func (line_free);
  self->stops = g_ptr_array_new_with_free_func (stop_free);
  for (guint i = 0; i < self->list->lines->len; i++)
    add_line (self, self->list->lines->pdata[i], dones, now);
  for (guint i = 0; i < self->list->stops->len; i++)
    add_stop (self, self->list->stops->pdata[i]);
  count_lines (self);
  stead_check_answer_say (self);
  return g_steal_pointer (&self);
}
