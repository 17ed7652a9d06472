/* stead-check-row-write.c - what a row of a checklist writes down.
 *
 * A reading is judged before it is kept: an odd one is asked about, and one that must
 * hold for a time asks for how long.
 */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "app/check/stead-check-row-private.h"

/* --- readings --------------------------------------------------------------------------- */

typedef struct
{
  SteadShown          *shown;
  const SteadSolution *solution;   /* (nullable): what else was measured at that time */
  const SteadListLine *line;
} Reading;

static gboolean
add_measured (SteadStore       *store,
              const SteadShown *warmth,
              const char       *kind,
              double            value,
              GError          **error)
{
  SteadShown shown = { .at = warmth->at, .value = value, .line_id = warmth->line_id, .person_id = warmth->person_id,
                       .instrument_id = warmth->instrument_id, .held_s = NAN, .noted_at = warmth->noted_at };
  gboolean added;

  if (isnan (value))
    return TRUE;
  shown.kind = g_strdup (kind);
  added = stead_shown_repo_add (store, &shown, error);
  g_free (shown.kind);
  return added;
}

/* What was measured at the time of the wrong reading: 0 for nothing of this kind. */
static gint64
measured_beside (const Reading *reading,
                 const char    *kind)
{
  const GPtrArray *readings = reading->line->readings;
  gint64 at = STEAD_TIME_NONE;

  for (guint i = 0; i < readings->len; i++)
    if (((const SteadShown *) readings->pdata[i])->id == reading->shown->corrects_id)
      at = ((const SteadShown *) readings->pdata[i])->at;
  for (guint i = 0; i < readings->len; i++)
    {
      const SteadShown *other = readings->pdata[i];

      if (other->at == at && !other->corrected && g_str_equal (other->kind, kind))
        return other->id;
    }
  return 0;
}

static gboolean
correct_measured (SteadStore     *store,
                  const Reading  *reading,
                  const char     *kind,
                  double          value,
                  GError        **error)
{
  gint64 wrong_id = isnan (value) ? 0 : measured_beside (reading, kind);
  SteadShown right = { .at = reading->shown->at, .value = value, .person_id = reading->shown->person_id, .held_s = NAN,
                       .noted_at = reading->shown->noted_at };
  gboolean corrected;

  if (wrong_id == 0)
    return TRUE;
  corrected = stead_shown_repo_correct (store, wrong_id, &right, error);
  g_free (right.kind);
  return corrected;
}

static gboolean
correct_act (SteadStore     *store,
             const Reading  *reading,
             GError        **error)
{
  const SteadSolution *solution = reading->solution;

  if (solution != NULL && (!correct_measured (store, reading, "strength", solution->strength_mgl, error)
                           || !correct_measured (store, reading, "ph", solution->ph, error)
                           || !correct_measured (store, reading, "hardness", solution->hardness_mgl, error)))
    return FALSE;
  return stead_shown_repo_correct (store, reading->shown->corrects_id, reading->shown, error);
}

/* The warmth of a sanitizer comes last: it stands for all. */
static gboolean
reading_act (SteadStore *store,
             gpointer    data,
             GError    **error)
{
  const Reading *reading = data;
  SteadShown *shown = reading->shown;
  const SteadSolution *solution = reading->solution;

  if (shown->corrects_id != 0)
    return correct_act (store, reading, error);
  if (solution != NULL && (!add_measured (store, shown, "strength", solution->strength_mgl, error)
                           || !add_measured (store, shown, "ph", solution->ph, error)
                           || !add_measured (store, shown, "hardness", solution->hardness_mgl, error)))
    return FALSE;
  return stead_shown_repo_add (store, shown, error);
}

/* An air thermometer cannot show what a probe does: only lines of a probe take the one that was chosen. */
static gint64
instrument_of (SteadCheckRow *self)
{
  gint64 chosen = g_str_equal (self->line->line->tool, "probe") ? stead_pick_get (self->instrument) : 0;

  return chosen != 0 ? chosen : self->line->line->instrument_id;
}

static gboolean
write_reading (SteadCheckRow        *self,
               SteadShown           *shown,
               const SteadSolution  *solution,
               const char           *value,
               GError              **error)
{
  Reading reading = { shown, solution, self->line->line };
  /* Translators: a step that can be undone: a reading "158 °F", the number of a check, the name of a checklist. */
  g_autofree char *step = g_strdup_printf (_("%s at check %d of “%s”"), value, self->number, self->answer->list->name);
  gboolean saved;

  shown->line_id = self->line_id;
  if (shown->person_id == 0)
    shown->person_id = stead_person_pick_get (self->person);
  shown->instrument_id = stead_check_row_is_tick (self) ? 0 : instrument_of (self);
  shown->corrects_id = self->wrong_id;
  /* A correction puts the kind of the wrong one in its place. */
  shown->kind = g_strdup (self->line->line->measure);
  saved = stead_desk_act (self->desk, step, reading_act, &reading, error);
  g_clear_pointer (&shown->kind, g_free);
  return saved;
}

static void
tick (SteadCheckRow *self,
      gboolean       done)
{
  SteadShown shown = { .at = STEAD_TIME_NONE, .value = done ? 1 : 0 };
  g_autoptr(GError) error = NULL;

  if (!stead_check_entry_read_tick (self->entry, self->answer, &shown))
    return;

  /* Translators: what was noted of a check that is ticked. */
  if (write_reading (self, &shown, NULL, done ? C_("check", "done") : C_("check", "not done"), &error))
    {
      stead_check_entry_clear (self->entry);
      stead_check_row_saved (self);
    }
  else
    stead_desk_say (self->desk, error->message, FALSE);
}

void
stead_check_row_read (SteadCheckRow *self)
{
  SteadShown shown = { .at = STEAD_TIME_NONE };
  SteadSolution solution;
  g_autofree char *value = NULL;
  g_autoptr(GError) error = NULL;

  if (stead_check_row_is_tick (self))
    {
      tick (self, TRUE);   /* Return in a field about when or who */
      return;
    }
  if (!stead_check_entry_read (self->entry, self->answer, self->line, &shown, &solution))
    return;
  shown.kind = (char *) self->line->line->measure;
  value = stead_check_value_text (&shown, self->line->line->unit, self->answer->farm->units);
  if (!write_reading (self, &shown, &solution, value, &error))
    {
      stead_check_entry_complain (self->entry, error->message);
      return;
    }
  stead_check_entry_clear (self->entry);
  stead_check_row_saved (self);
}

void
stead_check_row_done (SteadCheckRow *self)
{
  tick (self, TRUE);
}

void
stead_check_row_undone (SteadCheckRow *self)
{
  tick (self, FALSE);
}

static gboolean
action_act (SteadStore *store,
            gpointer    data,
            GError    **error)
{
  return stead_done_repo_add (store, data, error);
}

static void
write_action (SteadCheckRow *self,
              const char    *text)
{
  const SteadCheckRead *read = stead_check_row_failed_read (self);
  SteadDone done = { .at = stead_time_now (stead_desk_get_store (self->desk)), .text = (char *) text,
                     .person_id = stead_person_pick_get (self->person) };
  g_autoptr(GError) error = NULL;
  /* Translators: a step that can be undone: the number of a check, the name of a checklist. */
  g_autofree char *step = g_strdup_printf (_("what was done about check %d of “%s”"), self->number,
                                           self->answer->list->name);

  if (read == NULL)
    return;
  done.reading_id = read->shown->id;
  if (!stead_desk_act (self->desk, step, action_act, &done, &error))
    {
      stead_field_set_error (self->action, error->message);
      return;
    }
  stead_field_set_text (self->action, "");
  /* It is read again, until it is met. */
  stead_check_row_focus (self);
}

void
stead_check_row_save_done (SteadCheckRow *self)
{
  g_autofree char *text = g_strdup (stead_field_get_text (self->action));

  if (stead_field_is_empty (self->action))
    stead_field_set_error (self->action, _("Write down what was done."));
  else
    write_action (self, text);
}

void
stead_check_row_did (SteadCheckRow *self)
{
  const SteadCheckRead *read = stead_check_row_failed_read (self);
  g_autofree char *text = read != NULL ? g_strdup (read->todo) : NULL;

  if (text != NULL)
    write_action (self, text);
}

typedef struct
{
  gint64      line_id;
  const char *reason;   /* (nullable) */
} LeaveOut;

static gboolean
leave_act (SteadStore *store,
           gpointer    data,
           GError    **error)
{
  const LeaveOut *leave = data;

  return stead_check_repo_leave_out (store, leave->line_id, leave->reason, error);
}

static void
leave_out (SteadCheckRow *self,
           const char    *reason)
{
  LeaveOut leave = { self->line_id, reason };
  g_autoptr(GError) error = NULL;
  /* Translators: a step that can be undone: the number of a check, the name of a checklist. */
  g_autofree char *step = reason != NULL
    ? g_strdup_printf (_("leaving out check %d of “%s”"), self->number, self->answer->list->name)
    : g_strdup_printf (_("taking back check %d of “%s”"), self->number, self->answer->list->name);

  if (!stead_desk_act (self->desk, step, leave_act, &leave, &error))
    {
      stead_field_set_error (self->leave_reason, error->message);
      return;
    }
  gtk_widget_hide (self->leave_box);
  stead_check_row_saved (self);
}

void
stead_check_row_save_left (SteadCheckRow *self)
{
  g_autofree char *reason = g_strdup (stead_field_get_text (self->leave_reason));

  if (stead_field_is_empty (self->leave_reason))
    stead_field_set_error (self->leave_reason, _("Write down why it need not be done."));
  else
    leave_out (self, reason);
}

void
stead_check_row_take_back (SteadCheckRow *self)
{
  leave_out (self, NULL);
}
