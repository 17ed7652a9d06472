/* stead-cooler-card.c - one place that is to be cold: its air over time, its limit, the next reading. */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "app/check/stead-cooler-card.h"

#include "app/make/stead-make-parts.h"
#include "app/stead-chart-area.h"
#include "app/stead-field.h"
#include "app/stead-import-dialog.h"
#include "app/stead-ui.h"
#include "app/stead-wrap-layout.h"
#include "draw/stead-trend-chart.h"

#define CHART_HEIGHT 200
#define AIR_KIND "air_temp"

struct _SteadCoolerCard
{
  GtkWidget            parent_instance;

  SteadDesk           *desk;
  gint64               place_id;
  char                *name;
  SteadPlaceAirAnswer *air;       /* (nullable): as last shown */
  SteadTrendLayout     layout;

  GtkLabel            *sentence, *source;
  SteadChartArea      *chart;
  SteadField          *shown;
};

G_DEFINE_FINAL_TYPE (SteadCoolerCard, stead_cooler_card, GTK_TYPE_WIDGET)

/* --- the chart -------------------------------------------------------------------------- */

static gboolean
is_drawn (SteadCoolerCard *self)
{
  return self->air != NULL && self->air->points->len > 0;
}

static void
paint_cb (cairo_t              *cr,
          const SteadDrawStyle *style,
          double                width,
          double                height,
          gpointer              data)
{
  SteadCoolerCard *self = data;
  SteadTrendLayout layout;
  SteadTrendWords words;

  if (!is_drawn (self))
    return;
  words = (SteadTrendWords) { .unit = self->air->unit, .today = _("today"), .most = self->air->most,
                              .ahead = _("if it goes on so") };
  stead_trend_chart_layout (cr, &self->air->series, &words, style, width, height, &layout);
  stead_trend_chart_paint (cr, &self->air->series, &words, style, &layout, -1);
  if ((int) width == gtk_widget_get_width (GTK_WIDGET (self->chart)))
    self->layout = layout;
}

static char *
hint_cb (double   x,
         double   y,
         gpointer data)
{
  SteadCoolerCard *self = data;
  int nearest = is_drawn (self) ? stead_trend_chart_nearest (&self->layout, &self->air->series, x) : -1;

  return nearest >= 0 ? stead_place_air_point_text (self->air, (gsize) nearest) : NULL;
}

static char *
step_cb (int       index,
         double   *x,
         double   *y,
         gpointer  data)
{
  SteadCoolerCard *self = data;

  if (!is_drawn (self) || index < 0 || (guint) index >= self->air->points->len)
    return NULL;
  stead_trend_chart_point (&self->layout, &self->air->series.points[index], x, y);
  return stead_place_air_point_text (self->air, (gsize) index);
}

/* --- writing down ----------------------------------------------------------------------- */

static gboolean
shown_act (SteadStore *store,
           gpointer    data,
           GError    **error)
{
  return stead_shown_repo_add (store, data, error);
}

static void
read_cb (SteadCoolerCard *self)
{
  SteadStore *store = stead_desk_get_store (self->desk);
  SteadShown shown = { .at = stead_time_now (store), .place_id = self->place_id, .held_s = NAN, .kind = (char *) AIR_KIND };
  const SteadUnit *unit = NULL;
  g_autoptr(GError) error = NULL;
  g_autofree char *step = NULL;

  if (stead_field_is_empty (self->shown))
    stead_field_set_error (self->shown, _("Enter what the thermometer in it shows."));
  else if (!stead_quantity_parse (stead_field_get_text (self->shown), STEAD_DIMENSION_TEMPERATURE,
                                  stead_unit_default (STEAD_DIMENSION_TEMPERATURE, stead_desk_get_farm (self->desk)->units),
                                  &shown.value, &unit, &error))
    stead_field_set_error (self->shown, error->message);
  else
    {
      shown.scale = g_str_equal (unit->id, "degC") ? 'C' : 'F';
      /* Translators: a step that can be undone; the name of a cooler follows. */
      step = g_strdup_printf (_("the air of “%s”"), self->name);
      if (stead_desk_act (self->desk, step, shown_act, &shown, &error))
        stead_field_set_text (self->shown, "");
      else
        stead_field_set_error (self->shown, error->message);
    }
}

static void
import_cb (SteadCoolerCard *self)
{
  stead_import_dialog_show (GTK_WIDGET (self), self->desk, STEAD_IMPORT_COOLER, self->place_id);
}

/* --- showing -------------------------------------------------------------------------------- */

void
stead_cooler_card_show (SteadCoolerCard     *self,
                        SteadPlaceAirAnswer *air)
{
  g_autofree char *title = NULL;

  g_return_if_fail (STEAD_IS_COOLER_CARD (self) && air != NULL);

  g_clear_pointer (&self->air, stead_place_air_answer_free);
  self->air = air;
  stead_make_say (self->sentence, air->sentence, FALSE);
  stead_make_say (self->source, air->readings->len > 0 ? air->source : NULL, FALSE);
  if (air->warns)
    gtk_widget_add_css_class (GTK_WIDGET (self->sentence), "warn");
  else
    gtk_widget_remove_css_class (GTK_WIDGET (self->sentence), "warn");
  gtk_widget_set_visible (GTK_WIDGET (self->chart), is_drawn (self));
  /* Translators: the name of a cooler: what a chart is. */
  title = g_strdup_printf (_("The air of %s"), self->name);
  stead_chart_area_set_file_name (self->chart, title);
  stead_chart_area_describe (self->chart, title, air->sentence);
  gtk_widget_queue_draw (GTK_WIDGET (self->chart));
}

gint64
stead_cooler_card_get (SteadCoolerCard *self)
{
  g_return_val_if_fail (STEAD_IS_COOLER_CARD (self), 0);
  return self->place_id;
}

/* --- the object --------------------------------------------------------------------------------- */

static GtkWidget *
make_entry (SteadCoolerCard *self)
{
  GtkWidget *row = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6);
  GtkWidget *press = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6);
  GtkWidget *save = gtk_button_new_with_label (_("Record reading")), *import;
  /* Translators: the name of a cooler. */
  g_autofree char *label = g_strdup_printf (_("What the thermometer in %s shows"), self->name);
  g_autofree char *record = g_strdup_printf (_("Record the reading of %s"), self->name);
  g_autofree char *take = g_strdup_printf (_("Take a logger's readings of %s from a table"), self->name);

  gtk_widget_set_layout_manager (row, stead_wrap_layout_new ());
  self->shown = STEAD_FIELD (stead_field_new (label, STEAD_FIELD_TEXT));
  gtk_widget_set_size_request (GTK_WIDGET (self->shown), 260, -1);
  gtk_widget_set_hexpand (GTK_WIDGET (self->shown), FALSE);
  g_signal_connect_swapped (self->shown, "activate", G_CALLBACK (read_cb), self);
  stead_ui_name (save, record);
  g_signal_connect_swapped (save, "clicked", G_CALLBACK (read_cb), self);
  import = gtk_button_new_with_label (_("Take a logger's readings from a table (CSV)…"));
  stead_ui_name (import, take);
  g_signal_connect_swapped (import, "clicked", G_CALLBACK (import_cb), self);
  gtk_widget_set_layout_manager (press, stead_wrap_layout_new ());
  gtk_box_append (GTK_BOX (press), save);
  gtk_box_append (GTK_BOX (press), import);
  gtk_widget_set_valign (press, GTK_ALIGN_END);
  gtk_box_append (GTK_BOX (row), GTK_WIDGET (self->shown));
  gtk_box_append (GTK_BOX (row), press);
  return row;
}

static void
stead_cooler_card_init (SteadCoolerCard *self)
{
}

static void
stead_cooler_card_dispose (GObject *object)
{
  SteadCoolerCard *self = STEAD_COOLER_CARD (object);

  stead_ui_drop_children (GTK_WIDGET (object));
  g_clear_pointer (&self->air, stead_place_air_answer_free);
  g_clear_pointer (&self->name, g_free);
  g_clear_object (&self->desk);
  G_OBJECT_CLASS (stead_cooler_card_parent_class)->dispose (object);
}

static void
stead_cooler_card_class_init (SteadCoolerCardClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = stead_cooler_card_dispose;
  gtk_widget_class_set_layout_manager_type (GTK_WIDGET_CLASS (klass), GTK_TYPE_BIN_LAYOUT);
}

GtkWidget *
stead_cooler_card_new (SteadDesk  *desk,
                       gint64      place_id,
                       const char *name)
{
  SteadCoolerCard *self = g_object_new (STEAD_TYPE_COOLER_CARD, NULL);
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 9);

  self->desk = g_object_ref (desk);
  self->place_id = place_id;
  self->name = g_strdup (name);
  gtk_widget_add_css_class (box, "card");
  self->sentence = GTK_LABEL (stead_make_label ("", "sentence"));
  self->source = GTK_LABEL (stead_make_label ("", "soft"));
  gtk_widget_add_css_class (GTK_WIDGET (self->source), "small");
  self->chart = STEAD_CHART_AREA (stead_chart_area_new ());
  stead_chart_area_set_paint (self->chart, paint_cb, hint_cb, self);
  stead_chart_area_set_step (self->chart, step_cb);
  gtk_widget_set_size_request (GTK_WIDGET (self->chart), -1, CHART_HEIGHT);
  gtk_box_append (GTK_BOX (box), stead_make_label (name, "title"));
  gtk_box_append (GTK_BOX (box), GTK_WIDGET (self->sentence));
  gtk_box_append (GTK_BOX (box), GTK_WIDGET (self->chart));
  gtk_box_append (GTK_BOX (box), make_entry (self));
  gtk_box_append (GTK_BOX (box), GTK_WIDGET (self->source));
  gtk_widget_set_parent (box, GTK_WIDGET (self));
  return GTK_WIDGET (self);
}
