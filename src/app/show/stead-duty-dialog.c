/* stead-duty-dialog.c - what a duty is called and which training it needs; removes one that nobody does.
 *
 * A duty is made with its first turn.  Hours that were worked keep its name.
 */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "app/show/stead-duty-dialog.h"

#include "app/make/stead-make-parts.h"
#include "app/stead-form.h"
#include "store/stead-people-repo.h"

typedef struct
{
  GPtrArray  *duties;   /* of SteadDuty */
  GPtrArray  *turns;    /* of SteadTurn, of today */
  SteadPick  *which;
  SteadField *name, *needs;
  GtkLabel   *about;
} Form;

static void
form_free (gpointer data)
{
  Form *form = data;

  g_ptr_array_unref (form->duties);
  g_ptr_array_unref (form->turns);
  g_free (form);
}

/* There is one at least. */
static const SteadDuty *
chosen (const Form *form)
{
  for (guint i = 0; i < form->duties->len; i++)
    if (((const SteadDuty *) form->duties->pdata[i])->id == stead_pick_get (form->which))
      return form->duties->pdata[i];
  return form->duties->pdata[0];
}

static void
which_cb (Form *form)
{
  const SteadDuty *duty = chosen (form);
  g_autofree char *about = NULL;
  guint n = 0;

  for (guint i = 0; i < form->turns->len; i++)
    n += ((const SteadTurn *) form->turns->pdata[i])->duty_id == duty->id;
  stead_field_set_text (form->name, duty->name);
  stead_field_set_text (form->needs, duty->needs != NULL ? duty->needs : "");
  about = n == 0 ? g_strdup (_("No turn of the rota is about it."))
          : g_strdup_printf (ngettext ("%u turn of the rota is about it, and goes with it if it is removed.",
                                       "%u turns of the rota are about it, and go with it if it is removed.", n), n);
  gtk_label_set_text (form->about, about);
}

static gboolean
save_act (SteadStore  *store,
          gpointer     data,
          GError     **error)
{
  return stead_duty_repo_save (store, data, error);
}

static gboolean
save_cb (SteadForm  *dialog,
         gpointer    data,
         GError    **error)
{
  Form *form = data;
  const SteadDuty *before = chosen (form);
  const char *name;
  g_autofree char *step = NULL;
  SteadDuty duty;

  if (!stead_field_read_text (form->name, &name))
    return FALSE;
  duty = (SteadDuty) { .id = before->id, .name = (char *) name, .needs = (char *) stead_field_get_text (form->needs),
                       .retired_on = before->retired_on };
  /* Translators: a step of undo: a duty. */
  step = g_strdup_printf (_("Duty: %s"), name);
  return stead_form_act (dialog, step, save_act, &duty, error) || stead_form_fail_at (form->name, error);
}

static gboolean
remove_act (SteadStore  *store,
            gpointer     data,
            GError     **error)
{
  return stead_duty_repo_remove (store, ((const SteadDuty *) data)->id, error);
}

static gboolean
remove_cb (SteadForm  *dialog,
           gpointer    data,
           GError    **error)
{
  return stead_form_act (dialog, _("Duty removed"), remove_act, (gpointer) chosen (data), error);
}

static void
show_form (GtkWidget *parent,
           SteadDesk *desk,
           Form      *form)
{
  SteadForm *dialog = stead_form_new (_("Duties"), _("Save the duty"), _("Remove the duty"), save_cb, remove_cb, form,
                                      form_free);

  form->which = STEAD_PICK (stead_pick_new (_("Duty")));
  for (guint i = 0; i < form->duties->len; i++)
    {
      const SteadDuty *duty = form->duties->pdata[i];

      stead_pick_append (form->which, duty->id, duty->name);
    }
  stead_pick_show (form->which, 0);
  g_signal_connect_swapped (form->which, "changed", G_CALLBACK (which_cb), form);
  stead_form_add_widget (dialog, GTK_WIDGET (form->which));
  form->name = stead_form_add_wide (dialog, _("Name of the duty"));
  g_object_set (form->name, "required", TRUE, NULL);
  form->needs = stead_form_add_wide (dialog, _("Training that it needs, if any"));
  form->about = GTK_LABEL (stead_make_label ("", "soft"));
  stead_form_add_widget (dialog, GTK_WIDGET (form->about));
  which_cb (form);
  stead_dialog_present (STEAD_DIALOG (dialog), parent, desk);
}

void
stead_duty_dialog_show (GtkWidget *parent,
                        SteadDesk *desk)
{
  SteadStore *store = stead_desk_get_store (desk);
  g_autoptr(GError) error = NULL;
  g_autoptr(GPtrArray) duties = stead_duty_repo_list (store, &error);
  g_autoptr(GPtrArray) turns = duties != NULL ? stead_turn_repo_list (store, stead_store_get_today (store), &error) : NULL;
  Form *form;

  if (turns == NULL || duties->len == 0)
    {
      stead_desk_say (desk, turns == NULL ? error->message : _("No duty yet. One is made with its first turn."), FALSE);
      return;
    }
  form = g_new0 (Form, 1);
  form->duties = g_steal_pointer (&duties);
  form->turns = g_steal_pointer (&turns);
  show_form (parent, desk, form);
}
