/* stead-water-dialog.c - a water: what it is, what stands in it, how often it is tested.
 *
 * Tanks have a dialog of their own, which saves at once; which places stand in the
 * water is saved with the water, as one step.
 */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "app/raise/stead-water-dialog.h"

#include "answer/stead-tank-text.h"
#include "app/raise/stead-tank-dialog.h"
#include "app/stead-field.h"
#include "app/stead-ui.h"
#include "store/stead-farm-repo.h"
#include "store/stead-place-repo.h"
#include "store/stead-store-watch.h"
#include "store/stead-water-repo.h"

#define RESOURCE STEAD_UI ("raise/stead-water-dialog.ui")

struct _SteadWaterDialog
{
  SteadDialog   parent_instance;

  SteadWater   *water;      /* as on file, or a new one */
  GHashTable   *checked;    /* ids of the places that are to stand in it */
  GHashTable   *known;      /* ids of the places that were listed before */
  gulong        changed;    /* of the desk */

  SteadField   *name, *test_days, *volume, *salinity, *ended, *note;
  GtkDropDown  *kind;
  GtkBox       *places;
};

G_DEFINE_FINAL_TYPE (SteadWaterDialog, stead_water_dialog, STEAD_TYPE_DIALOG)

static gpointer
id_copy (gint64 id)
{
  return g_memdup2 (&id, sizeof id);
}

/* --- what stands in it ----------------------------------------------------------------- */

static void
toggled_cb (GtkCheckButton *check,
            gpointer        data)
{
  SteadWaterDialog *self = data;
  gint64 id = *(const gint64 *) g_object_get_data (G_OBJECT (check), "place");

  if (gtk_check_button_get_active (check))
    g_hash_table_add (self->checked, id_copy (id));
  else
    g_hash_table_remove (self->checked, &id);
}

static void
change_tank_cb (GtkWidget *button,
                gpointer   data)
{
  SteadWaterDialog *self = data;

  stead_tank_dialog_show (GTK_WIDGET (self), stead_dialog_get_desk (STEAD_DIALOG (self)),
                          *(const gint64 *) g_object_get_data (G_OBJECT (button), "place"), 0);
}

/* "Tank 1, 2,060 gal" */
static char *
place_label (const SteadPlaceFacts *place,
             const SteadTank       *tank,   /* (nullable) */
             SteadUnitSystem        units)
{
  const SteadUnit *area = stead_unit_default (STEAD_DIMENSION_AREA, units);
  g_autofree char *size = NULL;

  if (tank != NULL)
    size = stead_tank_text_volume (tank->volume_l, units);
  else if (!isnan (place->area_m2))
    size = stead_quantity_format (place->area_m2, area);
  if (size == NULL)
    return g_strdup (place->name);
  /* Translators: the name of a place and its size. */
  return g_strdup_printf (C_("place", "%s, %s"), place->name, size);
}

static void
add_place (SteadWaterDialog      *self,
           const SteadPlaceFacts *place,
           const SteadTank       *tank,   /* (nullable) */
           SteadUnitSystem        units)
{
  GtkWidget *row = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 12);
  g_autofree char *label = place_label (place, tank, units);
  GtkWidget *check = gtk_check_button_new_with_label (label);

  g_object_set_data_full (G_OBJECT (check), "place", id_copy (place->id), g_free);
  gtk_check_button_set_active (GTK_CHECK_BUTTON (check), g_hash_table_contains (self->checked, &place->id));
  g_signal_connect (check, "toggled", G_CALLBACK (toggled_cb), self);
  gtk_widget_set_hexpand (check, TRUE);
  gtk_box_append (GTK_BOX (row), check);
  if (tank != NULL)
    {
      /* Translators: the name of a tank. */
      g_autofree char *name = g_strdup_printf (_("Change %s"), place->name);
      GtkWidget *button = stead_ui_icon_button ("stead-edit-symbolic", name);

      g_object_set_data_full (G_OBJECT (button), "place", id_copy (place->id), g_free);
      g_signal_connect (button, "clicked", G_CALLBACK (change_tank_cb), self);
      gtk_box_append (GTK_BOX (row), button);
    }
  gtk_box_append (self->places, row);
}

static const SteadTank *
tank_of (GPtrArray *tanks,
         gint64     place_id)
{
  for (guint i = 0; tanks != NULL && i < tanks->len; i++)
    if (((const SteadTank *) tanks->pdata[i])->place_id == place_id)
      return tanks->pdata[i];
  return NULL;
}

/* Only what can stand in water is offered; a tank that was just made is taken in. */
static gboolean
is_offered (const SteadPlaceFacts *place)
{
  return place->kind == STEAD_PLACE_TANK || place->kind == STEAD_PLACE_BAY;
}

static void
list_places (SteadWaterDialog *self,
             SteadDesk        *desk)
{
  SteadStore *store = stead_desk_get_store (desk);
  SteadUnitSystem units = stead_desk_get_farm (desk)->units;
  g_autoptr(GPtrArray) places = stead_place_repo_list (store, NULL);
  g_autoptr(GPtrArray) tanks = stead_tank_repo_list (store, NULL);
  gboolean first = g_hash_table_size (self->known) == 0;
  GtkWidget *child;

  while ((child = gtk_widget_get_first_child (GTK_WIDGET (self->places))) != NULL)
    gtk_box_remove (self->places, child);
  for (guint i = 0; places != NULL && i < places->len; i++)
    {
      const SteadPlaceFacts *place = places->pdata[i];
      gint64 stands_in = stead_water_repo_of_place (store, place->id, NULL);

      if (!is_offered (place))
        continue;
      /* At first what is on file; later, what is new since. */
      if (g_hash_table_add (self->known, id_copy (place->id))
          && (first ? stands_in != 0 && stands_in == self->water->id : place->kind == STEAD_PLACE_TANK))
        g_hash_table_add (self->checked, id_copy (place->id));
      add_place (self, place, tank_of (tanks, place->id), units);
    }
  /* A farm without places has none that are old. */
  g_hash_table_add (self->known, id_copy (0));
  gtk_widget_set_visible (GTK_WIDGET (self->places), gtk_widget_get_first_child (GTK_WIDGET (self->places)) != NULL);
}

static void
desk_changed_cb (SteadWaterDialog *self)
{
  SteadDesk *desk = stead_dialog_get_desk (STEAD_DIALOG (self));

  if (stead_desk_get_store (desk) != NULL)
    list_places (self, desk);
}

static void
new_tank_cb (SteadWaterDialog *self)
{
  stead_tank_dialog_show (GTK_WIDGET (self), stead_dialog_get_desk (STEAD_DIALOG (self)), 0, 0);
}

/* --- reading and saving ------------------------------------------------------------------- */

static gboolean
read_fields (SteadWaterDialog *self,
             SteadWater       *water)
{
  const char *name = NULL;
  gint64 test_days = 0;
  gboolean good = stead_field_read_text (self->name, &name);

  good &= stead_field_read_count (self->test_days, 0, &test_days);
  good &= stead_field_read_quantity (self->volume, NAN, &water->volume_l);
  good &= stead_field_read_number (self->salinity, 0, &water->salinity_g_l);
  good &= stead_field_read_day (self->ended, STEAD_DAY_NONE, &water->ended_on);
  if (!good)
    return FALSE;
  if (test_days < 1 || test_days > 365)
    {
      stead_field_set_error (self->test_days, _("Enter 1 to 365 days."));
      return FALSE;
    }
  if (!(water->salinity_g_l >= 0 && water->salinity_g_l <= 45))
    {
      stead_field_set_error (self->salinity, _("Enter 0 to 45 grams a liter; the sea has about 35."));
      return FALSE;
    }
  water->test_days = (int) test_days;
  water->kind = (SteadWaterKind) MIN (gtk_drop_down_get_selected (self->kind), STEAD_WATER_AQUAPONIC);
  g_free (water->name);
  water->name = g_strstrip (g_strdup (name));
  g_free (water->note);
  water->note = g_strdup (stead_field_get_text (self->note));
  return TRUE;
}

/* The water, and each place that is to stand in it or no longer. */
static gboolean
save_act (SteadStore *store,
          gpointer    data,
          GError    **error)
{
  SteadWaterDialog *self = data;
  GHashTableIter iter;
  gpointer key;

  stead_store_watch_id (store, &self->water->id);
  if (!stead_water_repo_save (store, self->water, error))
    return FALSE;
  g_hash_table_iter_init (&iter, self->known);
  while (g_hash_table_iter_next (&iter, &key, NULL))
    {
      gint64 id = *(const gint64 *) key;
      gint64 stands_in = id == 0 ? 0 : stead_water_repo_of_place (store, id, error);
      gboolean wanted = g_hash_table_contains (self->checked, key);

      if (stands_in < 0)
        return FALSE;
      if (id != 0 && wanted != (stands_in == self->water->id)
          && !stead_water_repo_set_place (store, id, wanted ? self->water->id : 0, error))
        return FALSE;
    }
  return TRUE;
}

static gboolean
stead_water_dialog_save (SteadDialog *dialog,
                         GError     **error)
{
  SteadWaterDialog *self = STEAD_WATER_DIALOG (dialog);
  SteadDesk *desk = stead_dialog_get_desk (dialog);
  gboolean is_new = self->water->id == 0;
  g_autofree char *step = NULL;
  gint64 id;

  if (!read_fields (self, self->water))
    return FALSE;
  step = g_strdup_printf (is_new ? _("new water %s") : _("changes to water %s"), self->water->name);
  g_signal_handler_block (desk, self->changed);
  if (!stead_desk_act (desk, step, save_act, self, error))
    {
      g_signal_handler_unblock (desk, self->changed);
      return FALSE;
    }
  g_signal_handler_unblock (desk, self->changed);
  id = self->water->id;
  if (is_new)
    stead_desk_jump (desk, STEAD_TARGET_WATER, id);
  return TRUE;
}

static gboolean
remove_act (SteadStore *store,
            gpointer    data,
            GError    **error)
{
  return stead_water_repo_delete (store, ((SteadWater *) data)->id, error);
}

static gboolean
stead_water_dialog_remove (SteadDialog *dialog,
                           GError     **error)
{
  SteadWaterDialog *self = STEAD_WATER_DIALOG (dialog);
  g_autofree char *step = g_strdup_printf (_("deleting water %s"), self->water->name);

  return stead_desk_act (stead_dialog_get_desk (dialog), step, remove_act, self->water, error);
}

/* --- showing --------------------------------------------------------------------------------- */

static void
show_water (SteadWaterDialog *self,
            SteadDesk        *desk)
{
  const SteadWater *water = self->water;

  stead_field_set_unit (self->volume, stead_unit_default (STEAD_DIMENSION_VOLUME, stead_desk_get_farm (desk)->units));
  stead_field_set_today (self->ended, stead_store_get_today (stead_desk_get_store (desk)));
  stead_field_set_text (self->name, water->name != NULL ? water->name : "");
  stead_field_set_text (self->note, water->note != NULL ? water->note : "");
  stead_field_show_count (self->test_days, water->test_days);
  stead_field_show_number (self->salinity, water->salinity_g_l);
  if (!isnan (water->volume_l))
    stead_field_show_quantity (self->volume, water->volume_l);
  if (water->ended_on != STEAD_DAY_NONE)
    stead_field_show_day (self->ended, water->ended_on);
  gtk_drop_down_set_selected (self->kind, water->kind);
}

static void
stead_water_dialog_dispose (GObject *object)
{
  SteadWaterDialog *self = STEAD_WATER_DIALOG (object);
  SteadDesk *desk = stead_dialog_get_desk (STEAD_DIALOG (self));

  if (desk != NULL)
    g_clear_signal_handler (&self->changed, desk);
  gtk_widget_dispose_template (GTK_WIDGET (self), STEAD_TYPE_WATER_DIALOG);
  g_clear_pointer (&self->water, stead_water_free);
  g_clear_pointer (&self->checked, g_hash_table_unref);
  g_clear_pointer (&self->known, g_hash_table_unref);
  G_OBJECT_CLASS (stead_water_dialog_parent_class)->dispose (object);
}

static void
stead_water_dialog_class_init (SteadWaterDialogClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  g_type_ensure (STEAD_TYPE_FIELD);
  G_OBJECT_CLASS (klass)->dispose = stead_water_dialog_dispose;
  STEAD_DIALOG_CLASS (klass)->save = stead_water_dialog_save;
  STEAD_DIALOG_CLASS (klass)->remove = stead_water_dialog_remove;
  gtk_widget_class_set_template_from_resource (widget_class, RESOURCE);
  gtk_widget_class_bind_template_child (widget_class, SteadWaterDialog, name);
  gtk_widget_class_bind_template_child (widget_class, SteadWaterDialog, test_days);
  gtk_widget_class_bind_template_child (widget_class, SteadWaterDialog, volume);
  gtk_widget_class_bind_template_child (widget_class, SteadWaterDialog, salinity);
  gtk_widget_class_bind_template_child (widget_class, SteadWaterDialog, ended);
  gtk_widget_class_bind_template_child (widget_class, SteadWaterDialog, note);
  gtk_widget_class_bind_template_child (widget_class, SteadWaterDialog, kind);
  gtk_widget_class_bind_template_child (widget_class, SteadWaterDialog, places);
  gtk_widget_class_bind_template_callback (widget_class, new_tank_cb);
}

static void
stead_water_dialog_init (SteadWaterDialog *self)
{
  self->checked = g_hash_table_new_full (g_int64_hash, g_int64_equal, g_free, NULL);
  self->known = g_hash_table_new_full (g_int64_hash, g_int64_equal, g_free, NULL);
  gtk_widget_init_template (GTK_WIDGET (self));
}

void
stead_water_dialog_show (GtkWidget *parent,
                         SteadDesk *desk,
                         gint64     water_id)
{
  SteadWaterDialog *self;
  g_autoptr(SteadWater) water = NULL;
  g_autoptr(GError) error = NULL;

  water = water_id > 0 ? stead_water_repo_get (stead_desk_get_store (desk), water_id, &error) : stead_water_new ();
  if (water == NULL)
    {
      stead_desk_say (desk, error->message, FALSE);
      return;
    }
  self = g_object_new (STEAD_TYPE_WATER_DIALOG, "title", water_id > 0 ? _("Change the water") : _("New water"),
                       "delete-label", water_id > 0 ? _("Delete the water and its tests") : NULL, NULL);
  self->water = g_steal_pointer (&water);
  self->changed = g_signal_connect_swapped (desk, "changed", G_CALLBACK (desk_changed_cb), self);
  show_water (self, desk);
  list_places (self, desk);
  stead_dialog_present (STEAD_DIALOG (self), parent, desk);
  gtk_widget_grab_focus (GTK_WIDGET (self->name));
}
