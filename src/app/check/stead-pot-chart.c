/* stead-pot-chart.c - how a pot cools: its readings, what they foretell, the marks it must reach. */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "app/check/stead-pot-chart.h"

#include "app/stead-chart-area.h"
#include "app/stead-ui.h"
#include "core/stead-clock.h"
#include "draw/stead-cooling-chart.h"

#define CHART_HEIGHT 260
#define DAY_MIN (24 * 60)

struct _SteadPotChart
{
  GtkWidget                 parent_instance;

  const SteadCoolingSeries *series;   /* (nullable): of the answer that is shown */
  gboolean                  celsius;
  SteadCoolingWords         words;    /* its strings are the chart's */
  char                     *mark_words[STEAD_COOLING_MARKS], *act_words;
  SteadChartArea           *chart;
};

G_DEFINE_FINAL_TYPE (SteadPotChart, stead_pot_chart, GTK_TYPE_WIDGET)

static void
paint_cb (cairo_t              *cr,
          const SteadDrawStyle *style,
          double                width,
          double                height,
          gpointer              data)
{
  SteadPotChart *self = data;
  const SteadCoolingSeries *series = self->series;
  SteadCoolingLayout layout;

  if (series == NULL || series->n_readings == 0)
    return;
  stead_cooling_chart_layout (cr, series, &self->words, style, width, height, &layout);
  stead_cooling_chart_paint (cr, series, &self->words, style, &layout);
}

static char *
temp_text (SteadPotChart *self,
           double         temp_f)
{
  g_autofree char *number = stead_number_format (self->celsius ? (temp_f - 32) / 1.8 : temp_f, 1);

  return g_strdup_printf (self->celsius ? "%s °C" : "%s °F", number);
}

static char *
clock_of (const SteadCoolingSeries *series,
          double                    minute)
{
  return stead_minute_format ((int) fmod (series->first_of_day + floor (minute + 0.5) + 10.0 * DAY_MIN, DAY_MIN));
}

static char *
reading_text (SteadPotChart *self,
              int            index)
{
  const SteadCoolingSeries *series = self->series;
  const SteadCoolingReading *reading = &series->readings[index];
  g_autofree char *temp = temp_text (self, reading->temp_f);
  g_autofree char *clock = clock_of (series, reading->minute);

  /* Translators: a temperature, a time of the day. */
  return g_strdup_printf (_("%s at %s"), temp, clock);
}

static void
lay (SteadPotChart      *self,
     SteadCoolingLayout *out)
{
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_ARGB32, 1, 1);
  cairo_t *cr = cairo_create (surface);
  SteadDrawStyle style;

  stead_chart_area_get_style (self->chart, NULL, &style);
  stead_cooling_chart_layout (cr, self->series, &self->words, &style, gtk_widget_get_width (GTK_WIDGET (self->chart)),
                              gtk_widget_get_height (GTK_WIDGET (self->chart)), out);
  cairo_destroy (cr);
  cairo_surface_destroy (surface);
}

static char *
hint_cb (double   x,
         double   y,
         gpointer data)
{
  SteadPotChart *self = data;
  SteadCoolingLayout layout;
  int found;

  if (self->series == NULL || self->series->n_readings == 0)
    return NULL;
  lay (self, &layout);
  found = stead_cooling_chart_nearest (&layout, self->series, x);
  return found >= 0 ? reading_text (self, found) : NULL;
}

static char *
step_cb (int       index,
         double   *x,
         double   *y,
         gpointer  data)
{
  SteadPotChart *self = data;
  const SteadCoolingSeries *series = self->series;
  SteadCoolingLayout layout;

  if (series == NULL || index < 0 || (gsize) index >= series->n_readings)
    return NULL;
  lay (self, &layout);
  *x = stead_cooling_chart_x (&layout, series, series->readings[index].minute);
  *y = stead_cooling_chart_y (&layout, series->readings[index].temp_f);
  return reading_text (self, index);
}

static void
fill_words (SteadPotChart *self)
{
  const SteadCoolingSeries *series = self->series;

  self->words.celsius = self->celsius;
  self->words.unit = self->words.celsius ? _("°C in the middle of the pot") : _("°F in the middle of the pot");
  self->words.expected = C_("cooling", "expected");
  self->words.too_warm = C_("cooling", "too warm");
  self->words.now = C_("cooling", "now");
  for (gsize i = 0; i < STEAD_COOLING_MARKS; i++)
    {
      g_clear_pointer (&self->mark_words[i], g_free);
      if (i < series->n_marks)
        {
          g_autofree char *temp = temp_text (self, series->marks[i].temp_f);
          g_autofree char *clock = clock_of (series, series->marks[i].due_min);

          /* Translators: a temperature that must be reached, a time of the day. */
          self->mark_words[i] = g_strdup_printf (_("%s by %s"), temp, clock);
        }
      self->words.marks[i] = self->mark_words[i];
    }
  g_clear_pointer (&self->act_words, g_free);
  if (!isnan (series->act_min))
    {
      g_autofree char *clock = clock_of (series, series->act_min);

      /* Translators: a time of the day. */
      self->act_words = g_strdup_printf (_("act by %s"), clock);
    }
  self->words.act = self->act_words;
}

void
stead_pot_chart_show (SteadPotChart            *self,
                      const SteadCoolingAnswer *cooling,
                      const char               *pot_name,
                      gboolean                  celsius)
{
  g_autofree char *label = NULL;

  g_return_if_fail (STEAD_IS_POT_CHART (self));

  self->series = cooling != NULL && cooling->series.n_readings > 0 ? &cooling->series : NULL;
  self->celsius = celsius;
  gtk_widget_set_visible (GTK_WIDGET (self), self->series != NULL);
  if (self->series == NULL)
    return;
  fill_words (self);
  /* Translators: the name of a pot: what a chart is. */
  label = g_strdup_printf (_("How %s cools"), pot_name);
  stead_chart_area_describe (self->chart, label, cooling->sentence);
  gtk_widget_queue_draw (GTK_WIDGET (self->chart));
}

/* --- the object ---------------------------------------------------------------------------------- */

static void
stead_pot_chart_dispose (GObject *object)
{
  SteadPotChart *self = STEAD_POT_CHART (object);

  self->series = NULL;
  stead_ui_drop_children (GTK_WIDGET (object));
  for (gsize i = 0; i < STEAD_COOLING_MARKS; i++)
    g_clear_pointer (&self->mark_words[i], g_free);
  g_clear_pointer (&self->act_words, g_free);
  G_OBJECT_CLASS (stead_pot_chart_parent_class)->dispose (object);
}

static void
stead_pot_chart_class_init (SteadPotChartClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = stead_pot_chart_dispose;
  gtk_widget_class_set_layout_manager_type (GTK_WIDGET_CLASS (klass), GTK_TYPE_BIN_LAYOUT);
}

static void
stead_pot_chart_init (SteadPotChart *self)
{
  self->chart = STEAD_CHART_AREA (stead_chart_area_new ());
  stead_chart_area_set_paint (self->chart, paint_cb, hint_cb, self);
  stead_chart_area_set_step (self->chart, step_cb);
  stead_chart_area_set_file_name (self->chart, _("cooling"));
  gtk_widget_set_size_request (GTK_WIDGET (self->chart), -1, CHART_HEIGHT);
  gtk_widget_set_parent (GTK_WIDGET (self->chart), GTK_WIDGET (self));
}

GtkWidget *
stead_pot_chart_new (void)
{
  return g_object_new (STEAD_TYPE_POT_CHART, NULL);
}
