/* stead-grading-dialog.c - a grading sheet: eggs by weight class, and what the light found. */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "app/raise/stead-grading-dialog.h"

#include "answer/stead-egg-answer.h"
#include "app/stead-field.h"
#include "app/stead-ui.h"

#define RESOURCE STEAD_UI ("raise/stead-grading-dialog.ui")

struct _SteadGradingDialog
{
  SteadDialog  parent_instance;

  gint64       id, flock_id, person_id;
  SteadField  *day, *jumbo, *extra_large, *large, *medium, *small, *peewee, *blood, *checked, *dirty, *note;
};

G_DEFINE_FINAL_TYPE (SteadGradingDialog, stead_grading_dialog, STEAD_TYPE_DIALOG)

/* The field of each class, in the order of SteadEggClass. */
static void
class_fields (SteadGradingDialog *self,
              SteadField         *out[STEAD_N_EGG_CLASSES])
{
  out[STEAD_EGG_CLASS_PEEWEE] = self->peewee;
  out[STEAD_EGG_CLASS_SMALL] = self->small;
  out[STEAD_EGG_CLASS_MEDIUM] = self->medium;
  out[STEAD_EGG_CLASS_LARGE] = self->large;
  out[STEAD_EGG_CLASS_EXTRA_LARGE] = self->extra_large;
  out[STEAD_EGG_CLASS_JUMBO] = self->jumbo;
}

static gboolean
read_count (SteadField *field,
            gint32     *out)
{
  gint64 count = 0;

  if (!stead_field_read_count (field, 0, &count))
    return FALSE;
  *out = (gint32) MIN (count, G_MAXINT32);
  return TRUE;
}

static gboolean
read_fields (SteadGradingDialog *self,
             SteadEggGrading    *out)
{
  SteadField *classes[STEAD_N_EGG_CLASSES];
  gboolean good = stead_field_read_day (self->day, STEAD_DAY_NONE, &out->day);

  class_fields (self, classes);
  for (int i = 0; i < STEAD_N_EGG_CLASSES; i++)
    good &= read_count (classes[i], &out->counts[i]);
  good &= read_count (self->blood, &out->blood);
  good &= read_count (self->checked, &out->checked);
  good &= read_count (self->dirty, &out->dirty);
  out->id = self->id;
  out->flock_id = self->flock_id;
  out->person_id = self->person_id;
  out->note = g_strdup (stead_field_get_text (self->note));
  return good;
}

static gboolean
save_act (SteadStore *store,
          gpointer    data,
          GError    **error)
{
  return stead_egg_repo_save_grading (store, data, error);
}

static gboolean
remove_act (SteadStore *store,
            gpointer    data,
            GError    **error)
{
  return stead_egg_repo_delete_grading (store, *(gint64 *) data, error);
}

static gboolean
stead_grading_dialog_save (SteadDialog *dialog,
                           GError     **error)
{
  g_autoptr(SteadEggGrading) grading = g_new0 (SteadEggGrading, 1);
  g_autofree char *step = NULL;

  if (!read_fields (STEAD_GRADING_DIALOG (dialog), grading))
    return FALSE;
  step = stead_egg_grading_name (grading);
  return stead_desk_act (stead_dialog_get_desk (dialog), step, save_act, grading, error);
}

static gboolean
stead_grading_dialog_remove (SteadDialog *dialog,
                             GError     **error)
{
  return stead_desk_act (stead_dialog_get_desk (dialog), _("deleting a grading sheet"), remove_act,
                         &STEAD_GRADING_DIALOG (dialog)->id, error);
}

static void
show_count (SteadField *field,
            gint32      count)
{
  if (count > 0)
    stead_field_show_count (field, count);
}

static void
show_grading (SteadGradingDialog    *self,
              const SteadEggGrading *grading)
{
  SteadField *classes[STEAD_N_EGG_CLASSES];

  self->id = grading->id;
  self->person_id = grading->person_id;
  class_fields (self, classes);
  stead_field_show_day (self->day, grading->day);
  for (int i = 0; i < STEAD_N_EGG_CLASSES; i++)
    show_count (classes[i], grading->counts[i]);
  show_count (self->blood, grading->blood);
  show_count (self->checked, grading->checked);
  show_count (self->dirty, grading->dirty);
  stead_field_set_text (self->note, grading->note != NULL ? grading->note : "");
}

static void
stead_grading_dialog_dispose (GObject *object)
{
  gtk_widget_dispose_template (GTK_WIDGET (object), STEAD_TYPE_GRADING_DIALOG);
  G_OBJECT_CLASS (stead_grading_dialog_parent_class)->dispose (object);
}

static void
stead_grading_dialog_class_init (SteadGradingDialogClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  g_type_ensure (STEAD_TYPE_FIELD);
  G_OBJECT_CLASS (klass)->dispose = stead_grading_dialog_dispose;
  STEAD_DIALOG_CLASS (klass)->save = stead_grading_dialog_save;
  STEAD_DIALOG_CLASS (klass)->remove = stead_grading_dialog_remove;
  gtk_widget_class_set_template_from_resource (widget_class, RESOURCE);
  gtk_widget_class_bind_template_child (widget_class, SteadGradingDialog, day);
  gtk_widget_class_bind_template_child (widget_class, SteadGradingDialog, jumbo);
  gtk_widget_class_bind_template_child (widget_class, SteadGradingDialog, extra_large);
  gtk_widget_class_bind_template_child (widget_class, SteadGradingDialog, large);
  gtk_widget_class_bind_template_child (widget_class, SteadGradingDialog, medium);
  gtk_widget_class_bind_template_child (widget_class, SteadGradingDialog, small);
  gtk_widget_class_bind_template_child (widget_class, SteadGradingDialog, peewee);
  gtk_widget_class_bind_template_child (widget_class, SteadGradingDialog, blood);
  gtk_widget_class_bind_template_child (widget_class, SteadGradingDialog, checked);
  gtk_widget_class_bind_template_child (widget_class, SteadGradingDialog, dirty);
  gtk_widget_class_bind_template_child (widget_class, SteadGradingDialog, note);
}

static void
stead_grading_dialog_init (SteadGradingDialog *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

void
stead_grading_dialog_show (GtkWidget             *parent,
                           SteadDesk             *desk,
                           gint64                 flock_id,
                           const SteadEggGrading *grading)
{
  SteadDay today = stead_store_get_today (stead_desk_get_store (desk));
  SteadGradingDialog *self;

  self = g_object_new (STEAD_TYPE_GRADING_DIALOG, "title", grading != NULL ? _("Change the grading sheet")
                                                                          : _("Grade eggs"),
                       "delete-label", grading != NULL ? _("Delete the sheet") : NULL, NULL);
  self->flock_id = flock_id;
  stead_field_set_today (self->day, today);
  if (grading != NULL)
    show_grading (self, grading);
  else
    stead_field_show_day (self->day, today);
  stead_dialog_present (STEAD_DIALOG (self), parent, desk);
  gtk_widget_grab_focus (GTK_WIDGET (self->jumbo));
}
