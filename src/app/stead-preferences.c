/* stead-preferences.c - the settings of this computer and of this farm.
 *
 * How the window looks is taken at once and kept for the person; what the farm
 * is like goes into its file as one change that can be undone.
 */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "app/stead-field.h"
#include "app/stead-preferences.h"
#include "app/stead-scheme.h"
#include "app/stead-settings.h"
#include "app/stead-ui.h"
#include "core/stead-money.h"

struct _SteadPreferences
{
  SteadDialog  parent_instance;

  GtkWidget   *looks[3];        /* by SteadLook */
  GtkWidget   *look_desktop;
  GtkWidget   *look_light;
  GtkWidget   *look_dark;

  GtkWidget   *farm;            /* everything about the farm */
  SteadField  *name;
  GtkWidget   *us;
  GtkWidget   *metric;
  GtkWidget   *currency;
  GtkWidget   *month;
  SteadField  *mday;
  SteadField  *elevation;
  SteadField  *labor;
  SteadField  *address;
  GtkWidget   *method;

  const SteadUnit *elevation_unit;
};

G_DEFINE_FINAL_TYPE (SteadPreferences, stead_preferences, STEAD_TYPE_DIALOG)

static const char * const month_names[] = {
  N_("January"), N_("February"), N_("March"), N_("April"), NC_("month", "May"), N_("June"),
  N_("July"), N_("August"), N_("September"), N_("October"), N_("November"), N_("December"),
};

/* --- this computer -------------------------------------------------------------------- */

static void
look_cb (SteadPreferences *self,
         GtkToggleButton  *button)
{
  if (!gtk_toggle_button_get_active (button))
    return;
  for (int look = STEAD_LOOK_DESKTOP; look <= STEAD_LOOK_DARK; look++)
    if (self->looks[look] == GTK_WIDGET (button))
      stead_settings_set_look ((SteadLook) look);
  stead_scheme_update ();
}

static void
show_look (SteadPreferences *self)
{
  self->looks[STEAD_LOOK_DESKTOP] = self->look_desktop;
  self->looks[STEAD_LOOK_LIGHT] = self->look_light;
  self->looks[STEAD_LOOK_DARK] = self->look_dark;
  gtk_toggle_button_set_active (GTK_TOGGLE_BUTTON (self->looks[stead_settings_get_look ()]), TRUE);
  for (int look = STEAD_LOOK_DESKTOP; look <= STEAD_LOOK_DARK; look++)
    g_signal_connect_swapped (self->looks[look], "toggled", G_CALLBACK (look_cb), self);
}

/* --- this farm -------------------------------------------------------------------------- */

static guint
currency_index (const char *currency)
{
  const char * const *list = stead_currency_list ();

  for (guint i = 0; list[i] != NULL; i++)
    if (g_strcmp0 (list[i], currency) == 0)
      return i;
  return 0;
}

static void
fill_lists (SteadPreferences *self)
{
  g_autoptr(GtkStringList) months = gtk_string_list_new (NULL);
  g_autoptr(GtkStringList) currencies = gtk_string_list_new (stead_currency_list ());

  for (gsize i = 0; i < G_N_ELEMENTS (month_names); i++)
    gtk_string_list_append (months, i == 4 ? C_("month", "May") : _(month_names[i]));
  gtk_drop_down_set_model (GTK_DROP_DOWN (self->month), G_LIST_MODEL (months));
  gtk_drop_down_set_model (GTK_DROP_DOWN (self->currency), G_LIST_MODEL (currencies));
}

/* A whole number of feet or meters: more is not known of a farm's height. */
static void
show_elevation (SteadPreferences *self,
                double            elevation_m)
{
  const SteadUnit *unit = self->elevation_unit;

  stead_field_show_quantity (self->elevation,
                             stead_quantity_to_base (rint (stead_quantity_from_base (elevation_m, unit)), unit));
}

/* What was only rounded for the eye stays as it is in the file. */
static gboolean
read_elevation (SteadPreferences *self,
                double           *elevation_m)
{
  double shown = *elevation_m;

  if (!stead_field_read_quantity (self->elevation, 0, &shown))
    return FALSE;
  if (fabs (stead_quantity_from_base (shown - *elevation_m, self->elevation_unit)) > 0.5)
    *elevation_m = shown;
  return TRUE;
}

static void
show_farm (SteadPreferences *self,
           const SteadFarm  *farm)
{
  gboolean metric = farm->units == STEAD_UNITS_METRIC;

  stead_field_set_text (self->name, farm->name);
  gtk_toggle_button_set_active (GTK_TOGGLE_BUTTON (metric ? self->metric : self->us), TRUE);
  gtk_drop_down_set_selected (GTK_DROP_DOWN (self->currency), currency_index (farm->currency));
  gtk_drop_down_set_selected (GTK_DROP_DOWN (self->month), (guint) farm->school_year_month - 1);
  stead_field_show_count (self->mday, farm->school_year_mday);
  self->elevation_unit = stead_unit_by_id (metric ? "m" : "ft");
  stead_field_set_unit (self->elevation, self->elevation_unit);
  show_elevation (self, farm->elevation_m);
  stead_field_set_currency (self->labor, farm->currency);
  if (farm->labor_cents_hour > 0)
    stead_field_show_money (self->labor, farm->labor_cents_hour);
  stead_field_set_text (self->address, farm->address != NULL ? farm->address : "");
  gtk_drop_down_set_selected (GTK_DROP_DOWN (self->method), farm->stock_method == STEAD_STOCK_AVERAGE_MOVING);
}

/* Reads the fields into @farm; %FALSE: a field says what is wrong. */
static gboolean
read_farm (SteadPreferences *self,
           SteadFarm        *farm)
{
  const char *name;
  gint64 mday;

  if (!stead_field_read_text (self->name, &name)
      || !stead_field_read_count (self->mday, 1, &mday)
      || !read_elevation (self, &farm->elevation_m)
      || !stead_field_read_money (self->labor, 0, &farm->labor_cents_hour))
    return FALSE;
  farm->school_year_month = (int) gtk_drop_down_get_selected (GTK_DROP_DOWN (self->month)) + 1;
  farm->school_year_mday = (int) MIN (mday, 99);
  if (stead_day_new (2027, farm->school_year_month, farm->school_year_mday) == STEAD_DAY_NONE)
    {
      stead_field_set_error (self->mday, _("This month has no such day."));
      return FALSE;
    }
  farm->units = gtk_toggle_button_get_active (GTK_TOGGLE_BUTTON (self->metric)) ? STEAD_UNITS_METRIC : STEAD_UNITS_US;
  g_free (farm->name);
  farm->name = g_strdup (name);
  g_free (farm->address);
  farm->address = g_strdup (stead_field_get_text (self->address));
  farm->stock_method = gtk_drop_down_get_selected (GTK_DROP_DOWN (self->method)) == 1 ? STEAD_STOCK_AVERAGE_MOVING
                                                                                    : STEAD_STOCK_FIFO;
  g_free (farm->currency);
  farm->currency = g_strdup (stead_currency_list ()[gtk_drop_down_get_selected (GTK_DROP_DOWN (self->currency))]);
  return TRUE;
}

static gboolean
save_farm (SteadStore  *store,
           gpointer     data,
           GError     **error)
{
  const SteadFarm *farm = data;

  return stead_farm_repo_set (store, farm, error) &&
         stead_farm_repo_set_stock_method (store, farm->stock_method, error);
}

static gboolean
stead_preferences_save (SteadDialog  *dialog,
                        GError      **error)
{
  SteadPreferences *self = STEAD_PREFERENCES (dialog);
  SteadDesk *desk = stead_dialog_get_desk (dialog);
  g_autoptr(SteadFarm) farm = NULL;

  if (stead_desk_get_store (desk) == NULL)
    return TRUE;
  farm = stead_farm_repo_get (stead_desk_get_store (desk), error);
  if (farm == NULL || !read_farm (self, farm))
    return FALSE;
  return stead_desk_act (desk, _("Settings of the farm"), save_farm, farm, error);
}

/* --- the object ---------------------------------------------------------------------------- */

static void
stead_preferences_dispose (GObject *object)
{
  gtk_widget_dispose_template (GTK_WIDGET (object), STEAD_TYPE_PREFERENCES);
  G_OBJECT_CLASS (stead_preferences_parent_class)->dispose (object);
}

static void
stead_preferences_class_init (SteadPreferencesClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = stead_preferences_dispose;
  STEAD_DIALOG_CLASS (klass)->save = stead_preferences_save;
  gtk_widget_class_set_template_from_resource (widget_class, STEAD_UI ("stead-preferences.ui"));
  gtk_widget_class_bind_template_child (widget_class, SteadPreferences, look_desktop);
  gtk_widget_class_bind_template_child (widget_class, SteadPreferences, look_light);
  gtk_widget_class_bind_template_child (widget_class, SteadPreferences, look_dark);
  gtk_widget_class_bind_template_child (widget_class, SteadPreferences, farm);
  gtk_widget_class_bind_template_child (widget_class, SteadPreferences, name);
  gtk_widget_class_bind_template_child (widget_class, SteadPreferences, us);
  gtk_widget_class_bind_template_child (widget_class, SteadPreferences, metric);
  gtk_widget_class_bind_template_child (widget_class, SteadPreferences, currency);
  gtk_widget_class_bind_template_child (widget_class, SteadPreferences, month);
  gtk_widget_class_bind_template_child (widget_class, SteadPreferences, mday);
  gtk_widget_class_bind_template_child (widget_class, SteadPreferences, elevation);
  gtk_widget_class_bind_template_child (widget_class, SteadPreferences, labor);
  gtk_widget_class_bind_template_child (widget_class, SteadPreferences, address);
  gtk_widget_class_bind_template_child (widget_class, SteadPreferences, method);
}

static void
stead_preferences_init (SteadPreferences *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  fill_lists (self);
  show_look (self);
}

void
stead_preferences_show (GtkWidget *parent,
                        SteadDesk *desk)
{
  SteadPreferences *self = g_object_new (STEAD_TYPE_PREFERENCES, NULL);
  const SteadFarm *farm = stead_desk_get_farm (desk);

  gtk_widget_set_visible (self->farm, farm != NULL);
  if (farm != NULL)
    show_farm (self, farm);
  stead_dialog_present (STEAD_DIALOG (self), parent, desk);
}
