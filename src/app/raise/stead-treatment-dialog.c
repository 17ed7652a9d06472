/* stead-treatment-dialog.c - a medicine that a veterinarian ordered, and the wait after it. */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "app/raise/stead-treatment-dialog.h"

#include "app/stead-field.h"
#include "app/stead-ui.h"
#include "store/stead-harvest-repo.h"
#include "store/stead-store-watch.h"

#define RESOURCE STEAD_UI ("raise/stead-treatment-dialog.ui")

struct _SteadTreatmentDialog
{
  SteadDialog      parent_instance;

  SteadTreatment  *treatment;   /* as on file, or a new one */
  SteadBatch      *batch;

  SteadField      *what, *dose, *ordered, *day, *last_day, *wait, *note;
  GtkLabel        *late;
};

G_DEFINE_FINAL_TYPE (SteadTreatmentDialog, stead_treatment_dialog, STEAD_TYPE_DIALOG)

static void
take_text (char       **to,
           SteadField  *field)
{
  g_free (*to);
  *to = stead_field_is_empty (field) ? NULL : g_strdup (stead_field_get_text (field));
}

static gboolean
check_days (SteadTreatmentDialog *self,
            const SteadTreatment *treatment)
{
  if (treatment->last_day < treatment->day)
    {
      stead_field_set_error (self->last_day, _("The last day cannot be before the first."));
      return FALSE;
    }
  if (treatment->wait_until < treatment->last_day)
    {
      stead_field_set_error (self->wait, _("The wait ends on the last day or later: as the veterinarian ordered it."));
      return FALSE;
    }
  return TRUE;
}

static gboolean
read_treatment (SteadTreatmentDialog *self,
                SteadTreatment       *treatment)
{
  const char *what = NULL, *ordered = NULL;
  gboolean good = stead_field_read_text (self->what, &what);

  good &= stead_field_read_text (self->ordered, &ordered);
  good &= stead_field_read_day (self->day, STEAD_DAY_NONE, &treatment->day);
  good &= stead_field_read_day (self->last_day, STEAD_DAY_NONE, &treatment->last_day);
  good &= stead_field_read_day (self->wait, STEAD_DAY_NONE, &treatment->wait_until);
  if (!good || !check_days (self, treatment))
    return FALSE;
  take_text (&treatment->what, self->what);
  take_text (&treatment->ordered_by, self->ordered);
  take_text (&treatment->dose, self->dose);
  take_text (&treatment->note, self->note);
  return TRUE;
}

static gboolean
save_act (SteadStore  *store,
          gpointer     data,
          GError     **error)
{
  SteadTreatment *treatment = data;

  stead_store_watch_id (store, &treatment->id);
  return stead_treatment_repo_save (store, treatment, error);
}

static gboolean
stead_treatment_dialog_save (SteadDialog  *dialog,
                             GError      **error)
{
  SteadTreatmentDialog *self = STEAD_TREATMENT_DIALOG (dialog);
  g_autofree char *step = NULL;

  if (!read_treatment (self, self->treatment))
    return FALSE;
  /* Translators: name of a step to undo; name of a batch. */
  step = g_strdup_printf (_("treatment of “%s”"), self->batch->name);
  return stead_desk_act (stead_dialog_get_desk (dialog), step, save_act, self->treatment, error);
}

static gboolean
remove_act (SteadStore  *store,
            gpointer     data,
            GError     **error)
{
  return stead_treatment_repo_delete (store, ((SteadTreatment *) data)->id, error);
}

static gboolean
stead_treatment_dialog_remove (SteadDialog  *dialog,
                               GError      **error)
{
  SteadTreatmentDialog *self = STEAD_TREATMENT_DIALOG (dialog);
  g_autofree char *step = g_strdup_printf (_("deleting a treatment of “%s”"), self->batch->name);

  return stead_desk_act (stead_dialog_get_desk (dialog), step, remove_act, self->treatment, error);
}

/* Lots that were harvested within the wait, written down too late, must not be sold. */
static void
look_for_lots (SteadTreatmentDialog *self)
{
  SteadDesk *desk = stead_dialog_get_desk (STEAD_DIALOG (self));
  SteadDay from = STEAD_DAY_NONE, to = STEAD_DAY_NONE;
  g_autoptr(GPtrArray) harvests = NULL;
  g_autofree char *text = NULL;
  guint n = 0;

  gtk_widget_set_visible (GTK_WIDGET (self->late), FALSE);
  if (desk == NULL || stead_field_is_empty (self->day) || stead_field_is_empty (self->wait)
      || !stead_day_parse (stead_field_get_text (self->day), stead_store_get_today (stead_desk_get_store (desk)),
                           stead_date_order_from_locale (), &from, NULL)
      || !stead_day_parse (stead_field_get_text (self->wait), stead_store_get_today (stead_desk_get_store (desk)),
                           stead_date_order_from_locale (), &to, NULL))
    return;
  harvests = stead_harvest_repo_list (stead_desk_get_store (desk), self->batch->id, from, to, NULL);
  for (guint i = 0; harvests != NULL && i < harvests->len; i++)
    n += ((SteadHarvest *) harvests->pdata[i])->lot_id != 0;
  if (n == 0)
    return;
  text = g_strdup_printf (ngettext ("%u lot was harvested within this wait. Do not sell or eat it, and ask the veterinarian.",
                                    "%u lots were harvested within this wait. Do not sell or eat them, and ask the veterinarian.",
                                    n), n);
  gtk_label_set_text (self->late, text);
  gtk_widget_set_visible (GTK_WIDGET (self->late), TRUE);
}

static void
show_treatment (SteadTreatmentDialog *self,
                SteadDay              today)
{
  const SteadTreatment *treatment = self->treatment;

  stead_field_set_today (self->day, today);
  stead_field_set_today (self->last_day, today);
  stead_field_set_today (self->wait, today);
  stead_field_show_day (self->day, treatment->day);
  stead_field_show_day (self->last_day, treatment->last_day);
  if (treatment->wait_until != STEAD_DAY_NONE)
    stead_field_show_day (self->wait, treatment->wait_until);
  stead_field_set_text (self->what, treatment->what != NULL ? treatment->what : "");
  stead_field_set_text (self->dose, treatment->dose != NULL ? treatment->dose : "");
  stead_field_set_text (self->ordered, treatment->ordered_by != NULL ? treatment->ordered_by : "");
  stead_field_set_text (self->note, treatment->note != NULL ? treatment->note : "");
}

static void
stead_treatment_dialog_dispose (GObject *object)
{
  SteadTreatmentDialog *self = STEAD_TREATMENT_DIALOG (object);

  gtk_widget_dispose_template (GTK_WIDGET (self), STEAD_TYPE_TREATMENT_DIALOG);
  g_clear_pointer (&self->treatment, stead_treatment_free);
  g_clear_pointer (&self->batch, stead_batch_free);
  G_OBJECT_CLASS (stead_treatment_dialog_parent_class)->dispose (object);
}

static void
stead_treatment_dialog_class_init (SteadTreatmentDialogClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  g_type_ensure (STEAD_TYPE_FIELD);
  G_OBJECT_CLASS (klass)->dispose = stead_treatment_dialog_dispose;
  STEAD_DIALOG_CLASS (klass)->save = stead_treatment_dialog_save;
  STEAD_DIALOG_CLASS (klass)->remove = stead_treatment_dialog_remove;
  gtk_widget_class_set_template_from_resource (widget_class, RESOURCE);
  gtk_widget_class_bind_template_child (widget_class, SteadTreatmentDialog, what);
  gtk_widget_class_bind_template_child (widget_class, SteadTreatmentDialog, dose);
  gtk_widget_class_bind_template_child (widget_class, SteadTreatmentDialog, ordered);
  gtk_widget_class_bind_template_child (widget_class, SteadTreatmentDialog, day);
  gtk_widget_class_bind_template_child (widget_class, SteadTreatmentDialog, last_day);
  gtk_widget_class_bind_template_child (widget_class, SteadTreatmentDialog, wait);
  gtk_widget_class_bind_template_child (widget_class, SteadTreatmentDialog, note);
  gtk_widget_class_bind_template_child (widget_class, SteadTreatmentDialog, late);
}

static void
stead_treatment_dialog_init (SteadTreatmentDialog *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

static SteadTreatment *
find_treatment (SteadStore  *store,
                gint64       batch_id,
                gint64       id,
                GError     **error)
{
  g_autoptr(GPtrArray) all = NULL;
  SteadTreatment *treatment;

  if (id != 0)
    {
      all = stead_treatment_repo_list (store, batch_id, error);
      for (guint i = 0; all != NULL && i < all->len; i++)
        if (((SteadTreatment *) all->pdata[i])->id == id)
          return g_ptr_array_steal_index (all, i);
    }
  treatment = g_new0 (SteadTreatment, 1);
  treatment->batch_id = batch_id;
  treatment->day = treatment->last_day = stead_store_get_today (store);
  treatment->wait_until = STEAD_DAY_NONE;
  return treatment;
}

void
stead_treatment_dialog_show (GtkWidget *parent,
                             SteadDesk *desk,
                             gint64     batch_id,
                             gint64     treatment_id)
{
  SteadStore *store;
  g_autoptr(SteadBatch) batch = NULL;
  g_autoptr(GError) error = NULL;
  SteadTreatmentDialog *self;

  g_return_if_fail (STEAD_IS_DESK (desk));
  store = stead_desk_get_store (desk);
  g_return_if_fail (store != NULL);
  batch = stead_batch_repo_get (store, batch_id, &error);
  if (batch == NULL)
    {
      stead_desk_say (desk, error->message, FALSE);
      return;
    }
  self = g_object_new (STEAD_TYPE_TREATMENT_DIALOG,
                       "title", treatment_id == 0 ? _("Treatment") : _("Change the treatment"),
                       "delete-label", treatment_id != 0 ? _("Delete the treatment") : NULL, NULL);
  self->batch = g_steal_pointer (&batch);
  self->treatment = find_treatment (store, batch_id, treatment_id, NULL);
  show_treatment (self, stead_store_get_today (store));
  g_signal_connect_object (self->day, "changed", G_CALLBACK (look_for_lots), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (self->wait, "changed", G_CALLBACK (look_for_lots), self, G_CONNECT_SWAPPED);
  stead_dialog_present (STEAD_DIALOG (self), parent, desk);
  look_for_lots (self);
  gtk_widget_grab_focus (GTK_WIDGET (self->what));
}
