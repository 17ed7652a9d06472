/* stead-glasshouse-dialog.c - what keeps a bay warm: cover, air, heater. */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "app/raise/stead-glasshouse-dialog.h"

#include "answer/stead-greenhouse-answer.h"
#include "app/stead-field.h"
#include "app/stead-ui.h"
#include "core/stead-greenhouse.h"
#include "core/stead-round.h"
#include "core/stead-us-units.h"

#define RESOURCE STEAD_UI ("raise/stead-glasshouse-dialog.ui")

/* Proposed for a house with double film; each is a field and can be changed
 * (common practice, no source). */
#define DEFAULT_INSIDE_C 15
#define DEFAULT_SUN_LIFT_C 3
#define DEFAULT_EFFICIENCY 0.8

struct _SteadGlasshouseDialog
{
  SteadDialog       parent_instance;

  SteadGlasshouse   house;
  SteadUnitSystem   units;

  SteadField       *cover, *u, *volume, *changes, *inside, *sun, *price, *efficiency;
  GtkDropDown      *kind, *fuel;
};

G_DEFINE_FINAL_TYPE (SteadGlasshouseDialog, stead_glasshouse_dialog, STEAD_TYPE_DIALOG)

/* m³ in the unit that air is typed in. */
static double
air_factor (SteadGlasshouseDialog *self)
{
  return self->units == STEAD_UNITS_US ? STEAD_CUBIC_FOOT_M3 : 1;
}

/* °C in a degree that warmth is typed in. */
static double
degree_factor (SteadGlasshouseDialog *self)
{
  return self->units == STEAD_UNITS_US ? 5.0 / 9 : 1;
}

/* Two places are as good as such a figure is; all that it has are kept. */
static void
show_rounded (SteadField *field,
              double      value)
{
  g_autofree char *text = stead_number_format (value, 2);

  stead_field_show_as (field, text, value);
}

static SteadFuel
chosen_fuel (SteadGlasshouseDialog *self)
{
  return (SteadFuel) MIN (gtk_drop_down_get_selected (self->fuel), (guint) STEAD_N_FUELS - 1);
}

static gboolean
save_act (SteadStore *store,
          gpointer    data,
          GError    **error)
{
  return stead_glasshouse_repo_save (store, data, error);
}

static gboolean
stead_glasshouse_dialog_save (SteadDialog *dialog,
                              GError     **error)
{
  SteadGlasshouseDialog *self = STEAD_GLASSHOUSE_DIALOG (dialog);
  SteadGlasshouse house = { .place_id = self->house.place_id, .fuel = chosen_fuel (self) };
  gint64 price = 0;
  gboolean good = stead_field_read_quantity (self->cover, NAN, &house.cover_m2);

  good &= stead_field_read_number (self->u, NAN, &house.u_w_m2_k);
  good &= stead_field_read_number (self->volume, NAN, &house.volume_m3);
  good &= stead_field_read_number (self->changes, NAN, &house.changes_hour);
  good &= stead_field_read_quantity (self->inside, NAN, &house.inside_c);
  good &= stead_field_read_number (self->sun, 0, &house.sun_lift_c);
  good &= stead_field_read_money (self->price, 0, &price);
  good &= stead_field_read_number (self->efficiency, NAN, &house.efficiency_frac);
  if (!good)
    return FALSE;
  house.volume_m3 = stead_round_back (house.volume_m3 * air_factor (self), self->house.volume_m3);
  house.sun_lift_c = stead_round_back (house.sun_lift_c * degree_factor (self), self->house.sun_lift_c);
  house.fuel_cents = (double) price / stead_greenhouse_fuel_factor (house.fuel, self->units);
  return stead_desk_act (stead_dialog_get_desk (dialog), _("what keeps a bay warm"), save_act, &house, error);
}

/* The heat that a cover lets through is filled in with the choice, and can be changed. */
static void
kind_cb (SteadGlasshouseDialog *self)
{
  guint at = gtk_drop_down_get_selected (self->kind);

  if (at > 0 && at <= (guint) STEAD_N_COVERS)
    show_rounded (self->u, stead_cover_u_w_m2_c ((SteadCover) (at - 1)));
}

static void
fuel_cb (SteadGlasshouseDialog *self)
{
  /* Translators: the unit that fuel is bought in. */
  g_autofree char *label = g_strdup_printf (_("Price of the fuel for one %s"),
                                            stead_greenhouse_fuel_unit (chosen_fuel (self), self->units));

  g_object_set (self->price, "label", label, NULL);
}

static void
fill_choices (SteadGlasshouseDialog *self)
{
  const char *covers[] = { _("Not said"), _("Single film"), _("Double film, air between"),
                           _("Twin-wall sheet, 8 mm"), _("Glass"), NULL };
  g_autoptr(GtkStringList) kinds = gtk_string_list_new (covers);
  g_autoptr(GtkStringList) fuels = gtk_string_list_new (NULL);

  G_STATIC_ASSERT (G_N_ELEMENTS (covers) == STEAD_N_COVERS + 2);
  for (int i = 0; i < STEAD_N_FUELS; i++)
    gtk_string_list_append (fuels, stead_fuel_name ((SteadFuel) i));
  gtk_drop_down_set_model (self->kind, G_LIST_MODEL (kinds));
  gtk_drop_down_set_model (self->fuel, G_LIST_MODEL (fuels));
}

static void
stead_glasshouse_dialog_dispose (GObject *object)
{
  gtk_widget_dispose_template (GTK_WIDGET (object), STEAD_TYPE_GLASSHOUSE_DIALOG);
  G_OBJECT_CLASS (stead_glasshouse_dialog_parent_class)->dispose (object);
}

static void
stead_glasshouse_dialog_class_init (SteadGlasshouseDialogClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  g_type_ensure (STEAD_TYPE_FIELD);
  G_OBJECT_CLASS (klass)->dispose = stead_glasshouse_dialog_dispose;
  STEAD_DIALOG_CLASS (klass)->save = stead_glasshouse_dialog_save;
  gtk_widget_class_set_template_from_resource (widget_class, RESOURCE);
  gtk_widget_class_bind_template_child (widget_class, SteadGlasshouseDialog, cover);
  gtk_widget_class_bind_template_child (widget_class, SteadGlasshouseDialog, u);
  gtk_widget_class_bind_template_child (widget_class, SteadGlasshouseDialog, volume);
  gtk_widget_class_bind_template_child (widget_class, SteadGlasshouseDialog, changes);
  gtk_widget_class_bind_template_child (widget_class, SteadGlasshouseDialog, inside);
  gtk_widget_class_bind_template_child (widget_class, SteadGlasshouseDialog, sun);
  gtk_widget_class_bind_template_child (widget_class, SteadGlasshouseDialog, price);
  gtk_widget_class_bind_template_child (widget_class, SteadGlasshouseDialog, efficiency);
  gtk_widget_class_bind_template_child (widget_class, SteadGlasshouseDialog, kind);
  gtk_widget_class_bind_template_child (widget_class, SteadGlasshouseDialog, fuel);
  gtk_widget_class_bind_template_callback (widget_class, kind_cb);
  gtk_widget_class_bind_template_callback (widget_class, fuel_cb);
}

static void
stead_glasshouse_dialog_init (SteadGlasshouseDialog *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

static void
prepare_fields (SteadGlasshouseDialog *self,
                const SteadFarm       *farm)
{
  gboolean us = farm->units == STEAD_UNITS_US;

  self->units = farm->units;
  stead_field_set_currency (self->price, farm->currency);
  stead_field_set_unit (self->cover, stead_unit_default (STEAD_DIMENSION_AREA, farm->units));
  stead_field_set_unit (self->inside, stead_unit_default (STEAD_DIMENSION_TEMPERATURE, farm->units));
  g_object_set (self->volume, "label", us ? _("Air in the house, cubic feet") : _("Air in the house, m³"), NULL);
  g_object_set (self->sun, "label", us ? _("Warmth that the sun gives, mean of day and night, °F")
                                       : _("Warmth that the sun gives, mean of day and night, °C"), NULL);
  fill_choices (self);
}

static void
show_house (SteadGlasshouseDialog *self,
            gboolean               is_new)
{
  const SteadGlasshouse *house = &self->house;

  gtk_drop_down_set_selected (self->fuel, house->fuel);
  fuel_cb (self);
  stead_field_show_number (self->changes, house->changes_hour);
  stead_field_show_quantity (self->inside, house->inside_c);
  show_rounded (self->sun, house->sun_lift_c / degree_factor (self));
  stead_field_show_number (self->efficiency, house->efficiency_frac);
  if (is_new)
    {
      gtk_drop_down_set_selected (self->kind, STEAD_COVER_DOUBLE_FILM + 1);
      return;
    }
  stead_field_show_number (self->u, house->u_w_m2_k);
  stead_field_show_quantity (self->cover, house->cover_m2);
  show_rounded (self->volume, house->volume_m3 / air_factor (self));
  stead_field_show_money (self->price, (gint64) rint (house->fuel_cents
                                                      * stead_greenhouse_fuel_factor (house->fuel, self->units)));
}

void
stead_glasshouse_dialog_show (GtkWidget *parent,
                              SteadDesk *desk,
                              gint64     place_id)
{
  g_autoptr(GError) error = NULL;
  g_autofree SteadGlasshouse *house = stead_glasshouse_repo_get (stead_desk_get_store (desk), place_id, &error);
  SteadGlasshouseDialog *self;

  if (error != NULL)
    {
      stead_desk_say (desk, error->message, FALSE);
      return;
    }
  self = g_object_new (STEAD_TYPE_GLASSHOUSE_DIALOG, "title", _("What keeps this bay warm"), NULL);
  self->house = (SteadGlasshouse) { .place_id = place_id, .changes_hour = STEAD_AIR_CHANGES_TIGHT,
                                    .inside_c = DEFAULT_INSIDE_C, .sun_lift_c = DEFAULT_SUN_LIFT_C,
                                    .efficiency_frac = DEFAULT_EFFICIENCY };
  if (house != NULL)
    self->house = *house;
  prepare_fields (self, stead_desk_get_farm (desk));
  show_house (self, house == NULL);
  stead_dialog_present (STEAD_DIALOG (self), parent, desk);
  gtk_widget_grab_focus (GTK_WIDGET (self->cover));
}
