/* stead-tank-dialog.c - the shape and the measures of a tank; what it holds is shown as
 * one types.
 */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "app/raise/stead-tank-dialog.h"

#include "answer/stead-tank-text.h"
#include "app/stead-field.h"
#include "app/stead-ui.h"
#include "app/stead-why-box.h"
#include "store/stead-farm-repo.h"
#include "store/stead-water-repo.h"

#define RESOURCE STEAD_UI ("raise/stead-tank-dialog.ui")

struct _SteadTankDialog
{
  SteadDialog      parent_instance;

  SteadTank       *tank;      /* as on file, or a new one */
  SteadUnitSystem  units;

  SteadField      *name, *length, *width, *diameter, *depth, *cone, *volume, *flow;
  GtkDropDown     *shape;
  GtkLabel        *holds;
  SteadWhyBox     *whys;
};

G_DEFINE_FINAL_TYPE (SteadTankDialog, stead_tank_dialog, STEAD_TYPE_DIALOG)

static SteadTankShape
present_shape (SteadTankDialog *self)
{
  guint at = gtk_drop_down_get_selected (self->shape);

  return at <= STEAD_TANK_OTHER ? (SteadTankShape) at : STEAD_TANK_ROUND;
}

static double
peek (SteadTankDialog *self,
      SteadField      *field,
      SteadDimension   dimension)
{
  double base;

  if (stead_field_is_empty (field)
      || !stead_quantity_parse (stead_field_get_text (field), dimension, stead_unit_default (dimension, self->units), &base,
                                NULL, NULL))
    return NAN;
  return base;
}

/* What the tank would hold, from what stands in the fields. */
static void
measure_cb (SteadTankDialog *self)
{
  SteadTank typed = { .shape = present_shape (self) };
  g_autofree char *text = NULL;
  g_autoptr(GPtrArray) whys = NULL;

  typed.length_m = peek (self, self->length, STEAD_DIMENSION_LENGTH);
  typed.width_m = peek (self, self->width, STEAD_DIMENSION_LENGTH);
  typed.diameter_m = peek (self, self->diameter, STEAD_DIMENSION_LENGTH);
  typed.depth_m = peek (self, self->depth, STEAD_DIMENSION_LENGTH);
  typed.cone_m = peek (self, self->cone, STEAD_DIMENSION_LENGTH);
  typed.volume_l = peek (self, self->volume, STEAD_DIMENSION_VOLUME);
  typed.flow_l_min = peek (self, self->flow, STEAD_DIMENSION_VOLUME);
  text = stead_tank_text_holds (&typed, self->units);
  gtk_label_set_markup (self->holds, text);
  whys = stead_tank_text_whys (&typed, self->units);
  stead_why_box_set (self->whys, whys);
}

/* The fields that a shape has. */
static void
shape_cb (SteadTankDialog *self)
{
  SteadTankShape shape = present_shape (self);
  gboolean round = shape == STEAD_TANK_ROUND || shape == STEAD_TANK_CONE;

  gtk_widget_set_visible (GTK_WIDGET (self->length), shape == STEAD_TANK_BOX);
  gtk_widget_set_visible (GTK_WIDGET (self->width), shape == STEAD_TANK_BOX);
  gtk_widget_set_visible (GTK_WIDGET (self->diameter), round);
  gtk_widget_set_visible (GTK_WIDGET (self->depth), shape != STEAD_TANK_OTHER);
  gtk_widget_set_visible (GTK_WIDGET (self->cone), shape == STEAD_TANK_CONE);
  gtk_widget_set_visible (GTK_WIDGET (self->volume), shape == STEAD_TANK_OTHER);
  measure_cb (self);
}

/* --- reading and saving ------------------------------------------------------------- */

static gboolean
read_measures (SteadTankDialog *self,
               SteadTank       *tank)
{
  const struct { SteadField *field; double *value; } fields[] = {
    { self->length, &tank->length_m }, { self->width, &tank->width_m }, { self->diameter, &tank->diameter_m },
    { self->depth, &tank->depth_m }, { self->cone, &tank->cone_m }, { self->volume, &tank->volume_l },
  };
  gboolean good = TRUE;

  for (gsize i = 0; i < G_N_ELEMENTS (fields); i++)
    if (gtk_widget_get_visible (GTK_WIDGET (fields[i].field)))
      good &= stead_field_read_quantity (fields[i].field, NAN, fields[i].value);
  return good;
}

static gboolean
read_fields (SteadTankDialog *self,
             SteadTank       *tank)
{
  const char *name = NULL;
  gboolean good = stead_field_read_text (self->name, &name);

  tank->shape = present_shape (self);
  good &= read_measures (self, tank);
  good &= stead_field_read_quantity (self->flow, NAN, &tank->flow_l_min);
  if (!good)
    return FALSE;
  g_free (tank->name);
  tank->name = g_strstrip (g_strdup (name));
  return TRUE;
}

static gboolean
save_act (SteadStore *store,
          gpointer    data,
          GError    **error)
{
  return stead_tank_repo_save (store, data, error);
}

static gboolean
stead_tank_dialog_save (SteadDialog *dialog,
                        GError     **error)
{
  SteadTankDialog *self = STEAD_TANK_DIALOG (dialog);
  gboolean is_new = self->tank->place_id == 0;
  g_autofree char *step = NULL;

  if (!read_fields (self, self->tank))
    return FALSE;
  step = g_strdup_printf (is_new ? _("new tank %s") : _("changes to tank %s"), self->tank->name);
  return stead_desk_act (stead_dialog_get_desk (dialog), step, save_act, self->tank, error);
}

static gboolean
remove_act (SteadStore *store,
            gpointer    data,
            GError    **error)
{
  return stead_tank_repo_delete (store, ((SteadTank *) data)->place_id, error);
}

static gboolean
stead_tank_dialog_remove (SteadDialog *dialog,
                          GError     **error)
{
  SteadTankDialog *self = STEAD_TANK_DIALOG (dialog);
  g_autofree char *step = g_strdup_printf (_("deleting tank %s"), self->tank->name);

  return stead_desk_act (stead_dialog_get_desk (dialog), step, remove_act, self->tank, error);
}

/* --- showing -------------------------------------------------------------------------- */

static void
show_measure (SteadField *field,
              double      base)
{
  if (!isnan (base))
    stead_field_show_quantity (field, base);
}

static void
show_tank (SteadTankDialog *self)
{
  const SteadTank *tank = self->tank;
  SteadField *lengths[] = { self->length, self->width, self->diameter, self->depth, self->cone };

  for (gsize i = 0; i < G_N_ELEMENTS (lengths); i++)
    stead_field_set_unit (lengths[i], stead_unit_default (STEAD_DIMENSION_LENGTH, self->units));
  stead_field_set_unit (self->volume, stead_unit_default (STEAD_DIMENSION_VOLUME, self->units));
  stead_field_set_unit (self->flow, stead_unit_default (STEAD_DIMENSION_VOLUME, self->units));
  stead_field_set_text (self->name, tank->name != NULL ? tank->name : "");
  show_measure (self->length, tank->length_m);
  show_measure (self->width, tank->width_m);
  show_measure (self->diameter, tank->diameter_m);
  show_measure (self->depth, tank->depth_m);
  show_measure (self->cone, tank->cone_m);
  if (tank->shape == STEAD_TANK_OTHER)
    show_measure (self->volume, tank->volume_l);
  show_measure (self->flow, tank->flow_l_min);
  gtk_drop_down_set_selected (self->shape, tank->shape);
  shape_cb (self);
}

static void
stead_tank_dialog_dispose (GObject *object)
{
  SteadTankDialog *self = STEAD_TANK_DIALOG (object);

  gtk_widget_dispose_template (GTK_WIDGET (self), STEAD_TYPE_TANK_DIALOG);
  g_clear_pointer (&self->tank, stead_tank_free);
  G_OBJECT_CLASS (stead_tank_dialog_parent_class)->dispose (object);
}

static void
stead_tank_dialog_class_init (SteadTankDialogClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  g_type_ensure (STEAD_TYPE_FIELD);
  G_OBJECT_CLASS (klass)->dispose = stead_tank_dialog_dispose;
  STEAD_DIALOG_CLASS (klass)->save = stead_tank_dialog_save;
  STEAD_DIALOG_CLASS (klass)->remove = stead_tank_dialog_remove;
  gtk_widget_class_set_template_from_resource (widget_class, RESOURCE);
  gtk_widget_class_bind_template_child (widget_class, SteadTankDialog, name);
  gtk_widget_class_bind_template_child (widget_class, SteadTankDialog, length);
  gtk_widget_class_bind_template_child (widget_class, SteadTankDialog, width);
  gtk_widget_class_bind_template_child (widget_class, SteadTankDialog, diameter);
  gtk_widget_class_bind_template_child (widget_class, SteadTankDialog, depth);
  gtk_widget_class_bind_template_child (widget_class, SteadTankDialog, cone);
  gtk_widget_class_bind_template_child (widget_class, SteadTankDialog, volume);
  gtk_widget_class_bind_template_child (widget_class, SteadTankDialog, flow);
  gtk_widget_class_bind_template_child (widget_class, SteadTankDialog, shape);
  gtk_widget_class_bind_template_child (widget_class, SteadTankDialog, holds);
  gtk_widget_class_bind_template_callback (widget_class, shape_cb);
  gtk_widget_class_bind_template_callback (widget_class, measure_cb);
}

static void
stead_tank_dialog_init (SteadTankDialog *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  gtk_box_append (GTK_BOX (gtk_widget_get_parent (GTK_WIDGET (self->holds))), stead_why_box_new_folded (&self->whys));
}

void
stead_tank_dialog_show (GtkWidget *parent,
                        SteadDesk *desk,
                        gint64     place_id,
                        gint64     water_id)
{
  SteadTankDialog *self;
  g_autoptr(SteadTank) tank = NULL;
  g_autoptr(GError) error = NULL;

  tank = place_id > 0 ? stead_tank_repo_get (stead_desk_get_store (desk), place_id, &error) : stead_tank_new ();
  if (tank == NULL)
    {
      stead_desk_say (desk, error->message, FALSE);
      return;
    }
  if (place_id == 0)
    tank->water_id = water_id;
  self = g_object_new (STEAD_TYPE_TANK_DIALOG, "title", place_id > 0 ? _("Change the tank") : _("New tank"),
                       "delete-label", place_id > 0 ? _("Delete the tank") : NULL, NULL);
  self->tank = g_steal_pointer (&tank);
  self->units = stead_desk_get_farm (desk)->units;
  show_tank (self);
  stead_dialog_present (STEAD_DIALOG (self), parent, desk);
  gtk_widget_grab_focus (GTK_WIDGET (self->name));
}
