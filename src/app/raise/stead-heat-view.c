/* stead-heat-view.c - what it costs to keep a crop's bay warm, month by month. */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "app/raise/stead-heat-view.h"

#include "answer/stead-greenhouse-answer.h"
#include "app/raise/stead-glasshouse-dialog.h"
#include "app/raise/stead-month-words.h"
#include "app/raise/stead-usual-year-dialog.h"
#include "app/stead-table.h"
#include "app/stead-ui.h"
#include "app/stead-why-box.h"
#include "core/stead-money.h"

#define RESOURCE STEAD_UI ("raise/stead-heat-view.ui")

struct _SteadHeatView
{
  GtkWidget               parent_instance;

  SteadDesk              *desk;
  gint64                  place_id;   /* the bay; 0: not said */
  SteadGreenhouseAnswer  *answer;     /* (nullable) */

  GtkLabel               *sentence, *caution;
  GtkBox                 *slot;
  GtkWidget              *house;
  SteadWhyBox            *whys;
  SteadTable             *table;
};

G_DEFINE_FINAL_TYPE (SteadHeatView, stead_heat_view, GTK_TYPE_WIDGET)

/* 0 to 11, and 12 for the whole year. */
static int
row_month (gconstpointer item)
{
  return *(const int *) stead_row_get ((gpointer) item);
}

static const SteadGreenhouseMonth *
month_of (SteadHeatView *self,
          gpointer       item)
{
  int month = row_month (item);

  return month < 12 ? &self->answer->months[month] : &self->answer->all;
}

static char *
name_text (gpointer item,
           gpointer data)
{
  int month = row_month (item);

  return g_strdup (month == 12 ? _("Whole year") : stead_month_words (month));
}

static char *
degree_text (gpointer item,
             gpointer data)
{
  SteadHeatView *self = data;
  double factor = self->answer->farm->units == STEAD_UNITS_US ? STEAD_F_DAYS_PER_C_DAY : 1;

  return stead_number_format (round (month_of (self, item)->hdd_c * factor), 0);
}

static char *
heat_text (gpointer item,
           gpointer data)
{
  return stead_number_format (round (month_of (data, item)->heat_kwh), 0);
}

static char *
fuel_text (gpointer item,
           gpointer data)
{
  SteadHeatView *self = data;
  SteadFuel fuel = self->answer->house->fuel;
  SteadUnitSystem units = self->answer->farm->units;
  double factor = stead_greenhouse_fuel_factor (fuel, units);
  double amount = round (month_of (self, item)->fuel / factor);

  if (fuel == STEAD_FUEL_PROPANE || fuel == STEAD_FUEL_OIL)
    return stead_quantity_format (amount * factor, stead_unit_default (STEAD_DIMENSION_VOLUME, units));
  return stead_number_format (amount, 0);
}

static char *
cost_text (gpointer item,
           gpointer data)
{
  SteadHeatView *self = data;

  return stead_money_format (stead_money_round (month_of (self, item)->cents), self->answer->farm->currency);
}

static int
compare_month (gconstpointer a,
               gconstpointer b,
               gpointer      data)
{
  return row_month (a) - row_month (b);
}

static void
build_table (SteadHeatView *self)
{
  GtkWidget *table = stead_table_new (_("Heat by month"));

  self->table = STEAD_TABLE (table);
  stead_table_add_column (self->table, _("Month"), FALSE, TRUE, name_text, NULL, compare_month, self);
  stead_table_add_column (self->table, _("Heating degree days"), TRUE, FALSE, degree_text, NULL, NULL, self);
  stead_table_add_column (self->table, _("Heat, kWh"), TRUE, FALSE, heat_text, NULL, NULL, self);
  stead_table_add_column (self->table, _("Fuel"), TRUE, FALSE, fuel_text, NULL, NULL, self);
  stead_table_add_column (self->table, _("Cost"), TRUE, FALSE, cost_text, NULL, NULL, self);
  stead_table_set_empty (self->table, _("Months appear here once the house and the usual year are entered."));
  gtk_widget_set_hexpand (table, TRUE);
  gtk_box_append (self->slot, table);
}

static void
house_cb (SteadHeatView *self)
{
  if (self->place_id == 0)
    stead_desk_say (self->desk, _("Say first in which bay the crop stands: “Change this crop…”."), FALSE);
  else
    stead_glasshouse_dialog_show (GTK_WIDGET (self), self->desk, self->place_id);
}

/* The weather is outdoors, whatever thermometer the crop follows. */
static void
usual_cb (SteadHeatView *self)
{
  stead_usual_year_dialog_show (GTK_WIDGET (self), self->desk, 0);
}

static void
show_months (SteadHeatView *self)
{
  GPtrArray *rows = g_ptr_array_new ();
  g_autoptr(GListModel) model = NULL;
  gboolean known = self->answer != NULL && self->answer->house != NULL && self->answer->has_year;

  for (int i = 0; known && i <= 12; i++)
    g_ptr_array_add (rows, g_memdup2 (&i, sizeof i));
  model = stead_rows_from_array (rows, g_free);
  stead_table_set_model (self->table, model);
}

void
stead_heat_view_show (SteadHeatView         *self,
                      SteadDesk             *desk,
                      const SteadCropAnswer *answer)
{
  g_autoptr(GError) error = NULL;
  g_autoptr(GPtrArray) whys = NULL;

  g_return_if_fail (STEAD_IS_HEAT_VIEW (self));

  g_set_object (&self->desk, desk);
  self->place_id = answer->crop->batch.place_id;
  /* The rows of before look at the answer of before. */
  g_clear_pointer (&self->answer, stead_greenhouse_answer_free);
  show_months (self);
  self->answer = stead_greenhouse_answer_new (stead_desk_get_store (desk), self->place_id, &error);
  gtk_widget_set_visible (GTK_WIDGET (self->caution), self->answer != NULL);
  if (self->answer == NULL)
    {
      gtk_label_set_text (self->sentence, error->message);
      return;
    }
  gtk_label_set_markup (self->sentence, self->answer->sentence);
  gtk_label_set_text (self->caution, self->answer->caution);
  whys = stead_greenhouse_answer_whys (self->answer);
  stead_why_box_set (self->whys, whys);
  gtk_widget_set_visible (GTK_WIDGET (self->whys), whys->len > 0);
  show_months (self);
}

static void
stead_heat_view_dispose (GObject *object)
{
  SteadHeatView *self = STEAD_HEAT_VIEW (object);

  gtk_widget_dispose_template (GTK_WIDGET (self), STEAD_TYPE_HEAT_VIEW);
  stead_ui_drop_children (GTK_WIDGET (self));
  g_clear_pointer (&self->answer, stead_greenhouse_answer_free);
  g_clear_object (&self->desk);
  G_OBJECT_CLASS (stead_heat_view_parent_class)->dispose (object);
}

static void
stead_heat_view_class_init (SteadHeatViewClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  g_type_ensure (STEAD_TYPE_WHY_BOX);
  G_OBJECT_CLASS (klass)->dispose = stead_heat_view_dispose;
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_template_from_resource (widget_class, RESOURCE);
  gtk_widget_class_bind_template_child (widget_class, SteadHeatView, sentence);
  gtk_widget_class_bind_template_child (widget_class, SteadHeatView, caution);
  gtk_widget_class_bind_template_child (widget_class, SteadHeatView, slot);
  gtk_widget_class_bind_template_child (widget_class, SteadHeatView, house);
  gtk_widget_class_bind_template_child (widget_class, SteadHeatView, whys);
  gtk_widget_class_bind_template_callback (widget_class, house_cb);
  gtk_widget_class_bind_template_callback (widget_class, usual_cb);
}

static void
stead_heat_view_init (SteadHeatView *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  build_table (self);
}
