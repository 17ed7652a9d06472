/* stead-phase-dialog.c - a stretch of the work: hours, days, task, and the age of the youngest. */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "app/fund/stead-fund-dialogs.h"
#include "store/stead-store-watch.h"

typedef struct
{
  SteadBuildPhase *phase;
  SteadField      *name, *hours, *from, *to, *done, *age, *decided;
  SteadPick       *task;
} Form;

static void
form_free (gpointer data)
{
  stead_build_phase_free (((Form *) data)->phase);
  g_free (data);
}

static gboolean
save_act (SteadStore  *store,
          gpointer     data,
          GError     **error)
{
  SteadBuildPhase *phase = ((Form *) data)->phase;

  stead_store_watch_id (store, &phase->id);
  return stead_build_phase_repo_save (store, phase, error);
}

static gboolean
remove_act (SteadStore  *store,
            gpointer     data,
            GError     **error)
{
  return stead_build_phase_repo_delete (store, ((Form *) data)->phase->id, error);
}

static gboolean
check_days (Form     *form,
            SteadDay  today)
{
  const SteadBuildPhase *phase = form->phase;

  if (phase->from_day != STEAD_DAY_NONE && phase->to_day != STEAD_DAY_NONE && phase->to_day < phase->from_day)
    {
      stead_field_set_error (form->to, _("The work ends before it begins."));
      return FALSE;
    }
  if (phase->done_on != STEAD_DAY_NONE && phase->done_on > today)
    {
      stead_field_set_error (form->done, _("It was done today or before."));
      return FALSE;
    }
  return TRUE;
}

static gboolean
save_cb (SteadForm  *dialog,
         gpointer    data,
         GError    **error)
{
  Form *form = data;
  SteadDesk *desk = stead_dialog_get_desk (STEAD_DIALOG (dialog));
  SteadBuildPhase *phase = form->phase;
  const char *name = NULL;
  const char *decided = stead_field_get_text (form->decided);
  gint64 age = 0, task = stead_pick_get (form->task);
  g_autofree char *step = NULL;
  gboolean good = stead_field_read_text (form->name, &name);

  good &= stead_field_read_number (form->hours, 0, &phase->hours);
  good &= stead_field_read_day (form->from, STEAD_DAY_NONE, &phase->from_day);
  good &= stead_field_read_day (form->to, STEAD_DAY_NONE, &phase->to_day);
  good &= stead_field_read_day (form->done, STEAD_DAY_NONE, &phase->done_on);
  good &= stead_field_read_count (form->age, 0, &age);
  if (!good || !check_days (form, stead_store_get_today (stead_desk_get_store (desk))))
    return FALSE;
  phase->age_years = (int) MIN (age, 1000);
  g_free (phase->name);
  phase->name = g_strstrip (g_strdup (name));
  g_free (phase->task);
  phase->task = task == 0 ? NULL : g_strdup (stead_build_tasks ()[task - 1]);
  g_free (phase->decided);
  phase->decided = *decided != '\0' ? g_strdup (decided) : NULL;
  /* Translators: name of a step to undo; a stretch of work on a build. */
  step = g_strdup_printf (_("work “%s”"), phase->name);
  if (stead_desk_act (desk, step, save_act, form, error))
    return TRUE;
  return stead_form_fail_at (phase->age_years != 0 && (phase->age_years < 5 || phase->age_years > 99) ? form->age : form->hours,
                             error);
}

static gboolean
remove_cb (SteadForm  *dialog,
           gpointer    data,
           GError    **error)
{
  return stead_form_act (dialog, _("a stretch of work less"), remove_act, data, error);
}

static SteadBuildPhase *
load_phase (SteadStore *store,
            gint64      build_id,
            gint64      id)
{
  g_autoptr(GPtrArray) phases = stead_build_phase_repo_list (store, build_id, NULL);
  SteadBuildPhase *phase;

  for (guint i = 0; phases != NULL && i < phases->len; i++)
    if (((SteadBuildPhase *) phases->pdata[i])->id == id)
      return g_ptr_array_steal_index (phases, i);
  phase = stead_build_phase_new ();
  phase->build_id = build_id;
  return phase;
}

static SteadField *
add_day (SteadForm  *dialog,
         SteadDesk  *desk,
         const char *label,
         SteadDay    day)
{
  SteadField *field = stead_form_add (dialog, desk, label, STEAD_FIELD_DAY);

  if (day != STEAD_DAY_NONE)
    stead_field_show_day (field, day);
  return field;
}

static void
add_task (Form      *form,
          SteadForm *dialog)
{
  gint64 chosen = 0;

  form->task = stead_form_add_pick (dialog, _("Riskiest tool or task in it"));
  stead_pick_append (form->task, 0, _("none of these"));
  for (int i = 0; stead_build_tasks ()[i] != NULL; i++)
    {
      stead_pick_append (form->task, i + 1, stead_build_task_name (stead_build_tasks ()[i]));
      if (g_strcmp0 (form->phase->task, stead_build_tasks ()[i]) == 0)
        chosen = i + 1;
    }
  stead_pick_show (form->task, chosen);
}

void
stead_phase_dialog_show (GtkWidget *parent,
                         SteadDesk *desk,
                         gint64     build_id,
                         gint64     phase_id)
{
  Form *form = g_new0 (Form, 1);
  const SteadBuildPhase *phase;
  SteadForm *dialog;

  phase = form->phase = load_phase (stead_desk_get_store (desk), build_id, phase_id);
  dialog = stead_form_new (phase->id == 0 ? _("New stretch of work") : _("Stretch of work"), _("Save work"),
                           phase->id != 0 ? _("Delete work") : NULL, save_cb, remove_cb, form, form_free);
  stead_form_add_text (dialog, _("Ages follow the federal rules for work by young people; state law and school rules may ask for more. The advisor decides and says why. The program never says that a task is safe."), "caution");
  form->name = stead_form_add (dialog, desk, _("What is done"), STEAD_FIELD_TEXT);
  form->hours = stead_form_add (dialog, desk, _("Hours of all together"), STEAD_FIELD_NUMBER);
  form->from = add_day (dialog, desk, _("From"), phase->from_day);
  form->to = add_day (dialog, desk, _("To"), phase->to_day);
  add_task (form, dialog);
  form->age = stead_form_add (dialog, desk, _("Full years of the youngest"), STEAD_FIELD_COUNT);
  form->done = add_day (dialog, desk, _("Done on"), phase->done_on);
  form->decided = stead_form_add (dialog, desk, _("What the advisor decided, and why"), STEAD_FIELD_TEXT);
  if (phase->name != NULL)
    stead_field_set_text (form->name, phase->name);
  if (phase->hours > 0)
    stead_field_show_number (form->hours, phase->hours);
  if (phase->age_years > 0)
    stead_field_show_count (form->age, phase->age_years);
  if (phase->decided != NULL)
    stead_field_set_text (form->decided, phase->decided);
  stead_dialog_present (STEAD_DIALOG (dialog), parent, desk);
  gtk_widget_grab_focus (GTK_WIDGET (form->name));
}
