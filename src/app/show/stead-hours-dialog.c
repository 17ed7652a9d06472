/* stead-hours-dialog.c - hours of one person, or of everyone of a group; a change, or a correction.
 *
 * Each refusal stands at its field.  What an advisor checked is never overwritten: then a
 * correction is appended, and 0 hours say that the work was not done.
 */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "app/show/stead-hours-dialog.h"

#include "answer/stead-hours-answer.h"
#include "app/keep/stead-pick.h"
#include "app/make/stead-make-parts.h"
#include "app/sell/stead-sell-parts.h"
#include "app/show/stead-show-picks.h"
#include "core/stead-clock.h"
#include "core/stead-hours.h"

struct _SteadHoursDialog
{
  SteadDialog     parent_instance;

  SteadWorkSpan  *span;       /* what is entered; links of a draft are kept in it */
  GPtrArray      *groups;     /* of SteadGroup */
  GPtrArray      *duties;     /* of char */

  GtkLabel       *about;
  SteadPick      *who, *link, *usual;
  SteadField     *day, *from, *to, *minutes, *pause, *duty, *note;
  GtkCheckButton *next_day, *paid;
};

G_DEFINE_FINAL_TYPE (SteadHoursDialog, stead_hours_dialog, STEAD_TYPE_DIALOG)

/* --- reading the fields --------------------------------------------------------------- */

static gboolean
read_clock (SteadField *field,
            int        *out)
{
  g_autoptr(GError) error = NULL;

  stead_field_set_error (field, NULL);
  if (stead_minute_parse (stead_field_get_text (field), out, &error))
    return TRUE;
  stead_field_set_error (field, error->message);
  gtk_widget_grab_focus (GTK_WIDGET (field));
  return FALSE;
}

static gboolean
fault_at (SteadField *field,
          const char *text)
{
  stead_field_set_error (field, text);
  gtk_widget_grab_focus (GTK_WIDGET (field));
  return FALSE;
}

/* From clock to clock, in the place's own time. */
static gboolean
read_times (SteadHoursDialog *self,
            SteadWorkSpan    *span)
{
  g_autoptr(GTimeZone) zone = g_time_zone_new_local ();
  g_autoptr(GError) error = NULL;
  SteadWork work = { .day = span->day, .meal_min = (int) span->break_minutes,
                     .next_day = gtk_check_button_get_active (self->next_day) };
  int minutes;

  if (!read_clock (self->from, &work.start) || !read_clock (self->to, &work.end))
    return FALSE;
  if (work.start == STEAD_MINUTE_NONE)
    return fault_at (self->from, _("Enter when the work began, such as 3:30 pm; or leave both times empty."));
  if (work.end == STEAD_MINUTE_NONE)
    return fault_at (self->to, _("Enter when the work ended, such as 5 pm; or leave both times empty."));
  if (!stead_work_times (&work, zone, &span->from_at, &span->to_at, &error) ||
      !stead_work_minutes (&work, zone, &minutes, NULL, &error))
    return fault_at (self->from, error->message);
  if (span->to_at <= span->from_at)
    return fault_at (self->to, _("The end must be later than the start. Tick “The end is on the next day” for work past "
                                 "midnight."));
  if (minutes <= 0)
    return fault_at (self->pause, _("The break is as long as the work. Check both."));
  if (!stead_work_is_likely (minutes))
    return fault_at (self->to, _("That is more than 16 hours at one go. Check the times; a longer stretch is entered in "
                                 "two parts."));
  span->minutes = minutes;
  return TRUE;
}

static gboolean
read_length (SteadHoursDialog *self,
             SteadWorkSpan    *span)
{
  gint64 minutes;

  span->from_at = G_MININT64;
  span->to_at = G_MININT64;
  if (stead_field_is_empty (self->minutes))
    return fault_at (self->minutes, _("Enter from when to when, or how many minutes."));
  if (!stead_field_read_count (self->minutes, 0, &minutes))
    return FALSE;
  if (minutes > STEAD_HOURS_MOST_MIN)
    return fault_at (self->minutes, _("More than 16 hours at one go: check it. A day has 24 hours at most."));
  if (minutes == 0 && span->corrects_id == 0)
    return fault_at (self->minutes, _("Enter more than zero."));
  span->minutes = (double) minutes;
  return TRUE;
}

static gboolean
read_span (SteadHoursDialog *self,
           SteadWorkSpan    *span)
{
  SteadStore *store = stead_desk_get_store (stead_dialog_get_desk (STEAD_DIALOG (self)));
  gboolean timed = !stead_field_is_empty (self->from) || !stead_field_is_empty (self->to);
  const char *duty;
  gint64 pause;

  stead_pick_say (self->who, NULL, FALSE);
  stead_field_set_error (self->minutes, NULL);
  if (stead_pick_get (self->who) == 0)
    {
      stead_pick_say (self->who, _("Choose who worked."), TRUE);
      return FALSE;
    }
  if (!stead_field_read_day (self->day, STEAD_DAY_NONE, &span->day) ||
      !stead_field_read_count (self->pause, 0, &pause) || !stead_field_read_text (self->duty, &duty))
    return FALSE;
  if (span->day > stead_store_get_today (store))
    return fault_at (self->day, _("Hours are entered for a day up to today."));
  if (pause > 1440)
    return fault_at (self->pause, _("A break takes between nothing and 24 hours."));
  span->break_minutes = (double) pause;
  g_free (span->duty);
  span->duty = g_strdup (duty);
  g_free (span->note);
  span->note = g_strdup (stead_field_get_text (self->note));
  span->paid = gtk_check_button_get_active (self->paid);
  stead_show_picks_read_link (self->link, span);
  return timed ? read_times (self, span) : read_length (self, span);
}

/* --- saving ---------------------------------------------------------------------------- */

typedef struct
{
  SteadWorkSpan  *span;
  GArray         *person_ids;   /* (nullable): a group */
  SteadWorkFault  fault;
} Entering;

static gboolean
enter_act (SteadStore  *store,
           gpointer     data,
           GError     **error)
{
  Entering *entering = data;

  return entering->person_ids != NULL
         ? stead_work_repo_enter_all (store, entering->span, entering->person_ids, &entering->fault, error)
         : stead_work_repo_enter (store, entering->span, &entering->fault, error);
}

static SteadField *
field_of (SteadHoursDialog *self,
          SteadWorkFault    fault)
{
  switch (fault)
    {
    case STEAD_WORK_FAULT_DAY:   return self->day;
    case STEAD_WORK_FAULT_BREAK: return self->pause;
    case STEAD_WORK_FAULT_DUTY:  return self->duty;
    case STEAD_WORK_FAULT_TIME:
      return stead_field_is_empty (self->from) ? self->minutes : self->from;
    case STEAD_WORK_FAULT_PERSON:
    case STEAD_WORK_FAULT_NONE:
    default:                     return NULL;
    }
}

static char *
step_of (SteadHoursDialog    *self,
         const SteadWorkSpan *span)
{
  g_autofree char *hours = stead_hours_words ((gint64) round (span->minutes));

  if (span->corrects_id != 0)
    /* Translators: a step of undo: a person, or a group. */
    return g_strdup_printf (_("Correction: %1$s, %2$s"), stead_pick_get_text (self->who), hours);
  /* Translators: a step of undo: a person, or a group; "2 h". */
  return g_strdup_printf (_("Hours: %1$s, %2$s"), stead_pick_get_text (self->who), hours);
}

static gboolean
stead_hours_dialog_save (SteadDialog  *dialog,
                         GError      **error)
{
  SteadHoursDialog *self = STEAD_HOURS_DIALOG (dialog);
  Entering entering = { .span = self->span };
  g_autoptr(GError) local_error = NULL;
  g_autofree char *step = NULL;
  const SteadGroup *group;
  SteadField *field;

  if (!read_span (self, self->span))
    return FALSE;
  group = stead_show_picks_group (self->groups, stead_pick_get (self->who));
  entering.person_ids = group != NULL ? group->person_ids : NULL;
  self->span->person_id = group != NULL ? 0 : stead_pick_get (self->who);
  step = step_of (self, self->span);
  if (stead_desk_act (stead_dialog_get_desk (dialog), step, enter_act, &entering, &local_error))
    return TRUE;
  field = field_of (self, entering.fault);
  if (field != NULL)
    return fault_at (field, local_error->message);
  g_propagate_error (error, g_steal_pointer (&local_error));
  return FALSE;
}

static gboolean
remove_act (SteadStore  *store,
            gpointer     id,
            GError     **error)
{
  return stead_work_repo_remove (store, *(gint64 *) id, error);
}

static gboolean
stead_hours_dialog_remove (SteadDialog  *dialog,
                           GError      **error)
{
  return stead_desk_act (stead_dialog_get_desk (dialog), _("Hours removed"), remove_act,
                         &STEAD_HOURS_DIALOG (dialog)->span->id, error);
}

/* --- the form ----------------------------------------------------------------------------- */

static void
stead_hours_dialog_dispose (GObject *object)
{
  SteadHoursDialog *self = STEAD_HOURS_DIALOG (object);

  g_clear_pointer (&self->span, stead_work_span_free);
  g_clear_pointer (&self->groups, g_ptr_array_unref);
  g_clear_pointer (&self->duties, g_ptr_array_unref);
  G_OBJECT_CLASS (stead_hours_dialog_parent_class)->dispose (object);
}

static void
stead_hours_dialog_class_init (SteadHoursDialogClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = stead_hours_dialog_dispose;
  STEAD_DIALOG_CLASS (klass)->save = stead_hours_dialog_save;
  STEAD_DIALOG_CLASS (klass)->remove = stead_hours_dialog_remove;
}

static void
usual_cb (SteadHoursDialog *self)
{
  if (stead_pick_get (self->usual) != 0)
    stead_field_set_text (self->duty, stead_pick_get_text (self->usual));
}

static GtkWidget *
attach (GtkWidget *grid,
        gpointer   child,
        int        column,
        int        row,
        int        width)
{
  gtk_widget_set_hexpand (child, TRUE);
  gtk_grid_attach (GTK_GRID (grid), child, column, row, width, 1);
  return child;
}

static gpointer
attach_field (GtkWidget      *grid,
              const char     *label,
              SteadFieldKind  kind,
              int             column,
              int             row,
              int             width)
{
  return attach (grid, stead_field_new (label, kind), column, row, width);
}

static void
stead_hours_dialog_init (SteadHoursDialog *self)
{
  GtkWidget *grid = gtk_grid_new ();

  gtk_grid_set_row_spacing (GTK_GRID (grid), 12);
  gtk_grid_set_column_spacing (GTK_GRID (grid), 18);
  self->about = GTK_LABEL (attach (grid, stead_make_label ("", "sentence"), 0, 0, 4));
  gtk_widget_hide (GTK_WIDGET (self->about));
  self->who = STEAD_PICK (attach (grid, stead_pick_new (_("Who worked")), 0, 1, 2));
  self->day = attach_field (grid, _("Day"), STEAD_FIELD_DAY, 2, 1, 2);
  self->from = attach_field (grid, _("From"), STEAD_FIELD_TEXT, 0, 2, 1);
  self->to = attach_field (grid, _("Until"), STEAD_FIELD_TEXT, 1, 2, 1);
  self->pause = attach_field (grid, _("Break, minutes"), STEAD_FIELD_COUNT, 2, 2, 1);
  self->minutes = attach_field (grid, _("Or minutes in all"), STEAD_FIELD_COUNT, 3, 2, 1);
  self->next_day = GTK_CHECK_BUTTON (attach (grid, gtk_check_button_new_with_label (_("The end is on the next day")), 0, 3, 2));
  self->paid = GTK_CHECK_BUTTON (attach (grid, gtk_check_button_new_with_label (_("Paid work")), 2, 3, 2));
  self->duty = attach_field (grid, _("What was done"), STEAD_FIELD_TEXT, 0, 4, 2);
  self->usual = STEAD_PICK (attach (grid, stead_pick_new (_("As before")), 2, 4, 2));
  self->link = STEAD_PICK (attach (grid, stead_pick_new (_("It belongs to")), 0, 5, 2));
  self->note = attach_field (grid, _("Note"), STEAD_FIELD_TEXT, 2, 5, 2);
  g_object_set (self->from, "hint", _("3:30 pm"), NULL);
  g_object_set (self->to, "hint", _("5 pm"), NULL);
  g_object_set (self->day, "required", TRUE, NULL);
  g_object_set (self->duty, "required", TRUE, NULL);
  g_signal_connect_swapped (self->usual, "changed", G_CALLBACK (usual_cb), self);
  g_object_set (self, "content", grid, "default-width", 760, NULL);
}

/* --- showing -------------------------------------------------------------------------------- */

static void
fill_usual (SteadHoursDialog *self,
            SteadStore       *store)
{
  g_autoptr(GPtrArray) duties = stead_show_picks_duties (store);

  stead_pick_append (self->usual, 0, _("Something else"));
  for (guint i = 0; i < duties->len; i++)
    stead_pick_append (self->usual, (gint64) i + 1, duties->pdata[i]);
  stead_pick_show (self->usual, 0);
}

static void
show_clock (SteadField *field,
            gint64      at)
{
  g_autoptr(GDateTime) time = g_date_time_new_from_unix_local (at);
  g_autofree char *text = stead_minute_format (g_date_time_get_hour (time) * 60 + g_date_time_get_minute (time));

  stead_field_set_text (field, text);
}

/* @span: (transfer full) */
static SteadHoursDialog *
open_dialog (SteadDesk     *desk,
             const char    *title,
             const char    *save_label,
             gboolean       with_groups,
             SteadWorkSpan *span)
{
  SteadStore *store = stead_desk_get_store (desk);
  SteadHoursDialog *self = g_object_new (STEAD_TYPE_HOURS_DIALOG, "title", title, "save-label", save_label, NULL);

  self->span = span;
  self->groups = with_groups ? stead_group_repo_list (store, NULL) : NULL;
  stead_show_picks_people (self->who, store, self->groups, span->person_id);
  stead_show_picks_links (self->link, store, span);
  fill_usual (self, store);
  stead_field_set_today (self->day, stead_store_get_today (store));
  stead_field_show_day (self->day, span->day);
  if (span->duty != NULL)
    stead_field_set_text (self->duty, span->duty);
  if (span->note != NULL)
    stead_field_set_text (self->note, span->note);
  if (span->break_minutes > 0)
    stead_field_show_count (self->pause, (gint64) round (span->break_minutes));
  gtk_check_button_set_active (self->paid, span->paid);
  if (span->from_at != G_MININT64)
    {
      show_clock (self->from, span->from_at);
      show_clock (self->to, span->to_at);
      gtk_check_button_set_active (self->next_day, stead_show_day_of (span->to_at) > span->day);
    }
  else if (span->minutes > 0)
    stead_field_show_count (self->minutes, (gint64) round (span->minutes));
  return self;
}

void
stead_hours_dialog_show (GtkWidget *parent,
                         SteadDesk *desk,
                         gint64     person_id,
                         SteadDay   day)
{
  SteadWorkSpan *span = g_new0 (SteadWorkSpan, 1);

  span->person_id = person_id;
  span->day = day;
  span->from_at = G_MININT64;
  span->to_at = G_MININT64;
  stead_dialog_present (STEAD_DIALOG (open_dialog (desk, _("Hours"), _("Record hours"), TRUE, span)), parent, desk);
}

void
stead_hours_dialog_show_span (GtkWidget *parent,
                              SteadDesk *desk,
                              gint64     span_id)
{
  g_autoptr(GError) error = NULL;
  SteadWorkSpan *span = stead_work_repo_get (stead_desk_get_store (desk), span_id, &error);
  SteadHoursDialog *self;

  if (span == NULL)
    {
      stead_desk_say (desk, error->message, FALSE);
      return;
    }
  if (span->checked_by == 0)
    {
      self = open_dialog (desk, _("Change hours"), _("Save"), FALSE, span);
      g_object_set (self, "delete-label", _("Remove"), NULL);
    }
  else
    {
      g_autofree char *state = stead_hours_state (span);
      /* Translators: "checked by Ms. Alder". */
      g_autofree char *text = g_strdup_printf (_("This is %s, so it stays. What you enter here is kept beside it and counts "
                                                 "in its place; 0 minutes say that the work was not done."), state);

      span->corrects_id = span->id;
      span->id = 0;
      g_clear_pointer (&span->known_by, g_free);
      self = open_dialog (desk, _("Correct hours"), _("Record correction"), FALSE, span);
      gtk_label_set_text (self->about, text);
      gtk_widget_show (GTK_WIDGET (self->about));
    }
  stead_dialog_present (STEAD_DIALOG (self), parent, desk);
}

void
stead_hours_dialog_show_draft (GtkWidget            *parent,
                               SteadDesk            *desk,
                               const SteadWorkDraft *draft)
{
  SteadWorkSpan *span = g_new0 (SteadWorkSpan, 1);
  SteadHoursDialog *self;
  g_autofree char *text = stead_hours_draft_text (draft);

  span->person_id = draft->person_id;
  span->day = draft->day;
  span->from_at = G_MININT64;
  span->to_at = G_MININT64;
  span->minutes = draft->minutes > 0 ? draft->minutes : 0;
  span->batch_id = draft->batch_id;
  span->sale_id = draft->sale_id;
  span->known_by = g_strdup (draft->known_by);
  span->duty = stead_hours_draft_duty (draft);
  self = open_dialog (desk, _("Hours of known work"), _("Record hours"), FALSE, span);
  gtk_label_set_text (self->about, text);
  gtk_widget_show (GTK_WIDGET (self->about));
  stead_dialog_present (STEAD_DIALOG (self), parent, desk);
  gtk_widget_grab_focus (GTK_WIDGET (self->minutes));
}
