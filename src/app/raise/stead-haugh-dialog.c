/* stead-haugh-dialog.c - one egg broken out: weight, height of the white, Haugh units at once. */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "app/raise/stead-haugh-dialog.h"

#include "answer/stead-egg-answer.h"
#include "app/stead-field.h"
#include "app/stead-ui.h"
#include "app/stead-why-box.h"

#define RESOURCE STEAD_UI ("raise/stead-haugh-dialog.ui")

/* Of the grid: below the figure that it works out. */
#define WHY_ROW 3

struct _SteadHaughDialog
{
  SteadDialog  parent_instance;

  gint64       id, flock_id, person_id;
  SteadField  *day, *weight, *height, *temperature;
  GtkLabel    *units;
  GtkGrid     *grid;
  SteadWhyBox *whys;
};

G_DEFINE_FINAL_TYPE (SteadHaughDialog, stead_haugh_dialog, STEAD_TYPE_DIALOG)

/* A number as far as it is typed by now; NAN: not a number yet.  The field itself says
 * what is wrong once it is left. */
static double
typed (SteadField *field)
{
  double value;

  return stead_number_parse (stead_field_get_text (field), &value, NULL) ? value : NAN;
}

static void
changed_cb (SteadHaughDialog *self)
{
  g_autoptr(GPtrArray) whys = stead_whys_new ();
  g_autofree char *text = stead_egg_haugh_text (typed (self->weight), typed (self->height));

  gtk_label_set_text (self->units, text);
  g_ptr_array_add (whys, stead_egg_haugh_why (typed (self->weight), typed (self->height)));
  stead_why_box_set (self->whys, whys);
}

static gboolean
save_act (SteadStore *store,
          gpointer    data,
          GError    **error)
{
  return stead_egg_repo_save_sample (store, data, error);
}

static gboolean
remove_act (SteadStore *store,
            gpointer    data,
            GError    **error)
{
  return stead_egg_repo_delete_sample (store, *(gint64 *) data, error);
}

static gboolean
stead_haugh_dialog_save (SteadDialog *dialog,
                         GError     **error)
{
  SteadHaughDialog *self = STEAD_HAUGH_DIALOG (dialog);
  SteadEggSample sample = { .id = self->id, .flock_id = self->flock_id, .person_id = self->person_id };
  g_autofree char *step = NULL;
  gboolean good = stead_field_read_day (self->day, STEAD_DAY_NONE, &sample.day);

  good &= stead_field_read_number (self->weight, NAN, &sample.egg_g);
  good &= stead_field_read_number (self->height, NAN, &sample.albumen_mm);
  good &= stead_field_read_quantity (self->temperature, NAN, &sample.egg_c);
  if (!good)
    return FALSE;
  step = stead_egg_sample_name (&sample);
  return stead_desk_act (stead_dialog_get_desk (dialog), step, save_act, &sample, error);
}

static gboolean
stead_haugh_dialog_remove (SteadDialog *dialog,
                           GError     **error)
{
  return stead_desk_act (stead_dialog_get_desk (dialog), _("deleting a broken-out egg"), remove_act,
                         &STEAD_HAUGH_DIALOG (dialog)->id, error);
}

static void
stead_haugh_dialog_dispose (GObject *object)
{
  gtk_widget_dispose_template (GTK_WIDGET (object), STEAD_TYPE_HAUGH_DIALOG);
  G_OBJECT_CLASS (stead_haugh_dialog_parent_class)->dispose (object);
}

static void
stead_haugh_dialog_class_init (SteadHaughDialogClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  g_type_ensure (STEAD_TYPE_FIELD);
  G_OBJECT_CLASS (klass)->dispose = stead_haugh_dialog_dispose;
  STEAD_DIALOG_CLASS (klass)->save = stead_haugh_dialog_save;
  STEAD_DIALOG_CLASS (klass)->remove = stead_haugh_dialog_remove;
  gtk_widget_class_set_template_from_resource (widget_class, RESOURCE);
  gtk_widget_class_bind_template_child (widget_class, SteadHaughDialog, day);
  gtk_widget_class_bind_template_child (widget_class, SteadHaughDialog, weight);
  gtk_widget_class_bind_template_child (widget_class, SteadHaughDialog, height);
  gtk_widget_class_bind_template_child (widget_class, SteadHaughDialog, temperature);
  gtk_widget_class_bind_template_child (widget_class, SteadHaughDialog, units);
  gtk_widget_class_bind_template_child (widget_class, SteadHaughDialog, grid);
  gtk_widget_class_bind_template_callback (widget_class, changed_cb);
}

static void
stead_haugh_dialog_init (SteadHaughDialog *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  gtk_grid_attach (self->grid, stead_why_box_new_folded (&self->whys), 0, WHY_ROW, 2, 1);
}

void
stead_haugh_dialog_show (GtkWidget            *parent,
                         SteadDesk            *desk,
                         gint64                flock_id,
                         const SteadEggSample *sample)
{
  SteadDay today = stead_store_get_today (stead_desk_get_store (desk));
  SteadHaughDialog *self;

  self = g_object_new (STEAD_TYPE_HAUGH_DIALOG, "title", sample != NULL ? _("Change the broken-out egg")
                                                                       : _("Break out an egg"),
                       "delete-label", sample != NULL ? _("Delete this egg") : NULL, NULL);
  self->flock_id = flock_id;
  stead_field_set_today (self->day, today);
  stead_field_set_unit (self->temperature, stead_unit_default (STEAD_DIMENSION_TEMPERATURE,
                                                               stead_desk_get_farm (desk)->units));
  stead_field_show_day (self->day, sample != NULL ? sample->day : today);
  if (sample != NULL)
    {
      self->id = sample->id;
      self->person_id = sample->person_id;
      stead_field_show_number (self->weight, sample->egg_g);
      stead_field_show_number (self->height, sample->albumen_mm);
      if (!isnan (sample->egg_c))
        stead_field_show_quantity (self->temperature, sample->egg_c);
    }
  changed_cb (self);
  stead_dialog_present (STEAD_DIALOG (self), parent, desk);
  gtk_widget_grab_focus (GTK_WIDGET (self->weight));
}
