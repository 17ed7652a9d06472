/* stead-over-chart.c - cash over and short by sale day, as a chart to look at. */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "app/sell/stead-over-chart.h"

#include "app/stead-chart-area.h"
#include "core/stead-money.h"
#include "draw/stead-run-plot.h"

#define CHART_HEIGHT 190

struct _SteadOverChart
{
  GtkBox          parent_instance;

  SteadChartArea *chart;
  GArray         *days;      /* of SteadDay */
  GArray         *cents;     /* of double */
  SteadRunChart   run;
  char           *median;
  char           *currency;
};

G_DEFINE_FINAL_TYPE (SteadOverChart, stead_over_chart, GTK_TYPE_BOX)

static SteadRunPlot
plot_of (SteadOverChart *self)
{
  return (SteadRunPlot) {
    .days = (const SteadDay *) (gpointer) self->days->data,
    .cents = (const double *) (gpointer) self->cents->data,
    .n = self->cents->len,
    .run = self->run,
  };
}

static void
paint_cb (cairo_t              *cr,
          const SteadDrawStyle *style,
          double                width,
          double                height,
          gpointer              data)
{
  SteadOverChart *self = data;
  SteadRunPlot plot = plot_of (self);
  SteadRunLayout layout;

  if (plot.n == 0)
    return;
  stead_run_plot_layout (cr, &plot, self->median, style, width, height, &layout);
  stead_run_plot_paint (cr, &plot, self->median, style, &layout);
}

/* "Oct 3: $2.00 short" */
static char *
point_text (SteadOverChart *self,
            guint           i)
{
  double cents = g_array_index (self->cents, double, i);
  g_autofree char *day = stead_day_format (g_array_index (self->days, SteadDay, i), STEAD_DAY_STYLE_MEDIUM);
  g_autofree char *sum = stead_money_format (stead_money_round (fabs (cents)), self->currency);

  if (cents > 0)
    /* Translators: a day, and a sum of money. */
    return g_strdup_printf (_("%1$s: %2$s over"), day, sum);
  if (cents < 0)
    /* Translators: a day, and a sum of money. */
    return g_strdup_printf (_("%1$s: %2$s short"), day, sum);
  /* Translators: a day. */
  return g_strdup_printf (_("%s: it agrees"), day);
}

/* The layout that the chart was last painted with, to find a place on it. */
static void
lay (SteadOverChart *self,
     SteadRunLayout *out)
{
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_ARGB32, 1, 1);
  cairo_t *cr = cairo_create (surface);
  SteadRunPlot plot = plot_of (self);
  SteadDrawStyle style;

  stead_chart_area_get_style (self->chart, self->currency, &style);
  stead_run_plot_layout (cr, &plot, self->median, &style, gtk_widget_get_width (GTK_WIDGET (self->chart)),
                         gtk_widget_get_height (GTK_WIDGET (self->chart)), out);
  cairo_destroy (cr);
  cairo_surface_destroy (surface);
}

static char *
hint_cb (double   x,
         double   y,
         gpointer data)
{
  SteadOverChart *self = data;
  SteadRunLayout layout;
  double at;

  if (self->cents->len == 0)
    return NULL;
  lay (self, &layout);
  at = floor ((x - layout.plot.x) / layout.plot.width * self->cents->len);
  return at >= 0 && at < self->cents->len ? point_text (self, (guint) at) : NULL;
}

static char *
step_cb (int       index,
         double   *x,
         double   *y,
         gpointer  data)
{
  SteadOverChart *self = data;
  SteadRunPlot plot = plot_of (self);
  SteadRunLayout layout;

  if (index >= (int) plot.n)
    return NULL;
  lay (self, &layout);
  *x = stead_run_plot_x (&plot, &layout, (gsize) index);
  *y = stead_run_plot_y (&layout, plot.cents[index]);
  return point_text (self, (guint) index);
}

void
stead_over_chart_set (SteadOverChart          *self,
                      const SteadSeasonAnswer *season)
{
  g_autofree char *median = NULL;

  g_return_if_fail (STEAD_IS_OVER_CHART (self) && season != NULL);

  g_array_set_size (self->days, 0);
  g_array_set_size (self->cents, 0);
  g_array_append_vals (self->days, season->over_days->data, season->over_days->len);
  g_array_append_vals (self->cents, season->overs->data, season->overs->len);
  gtk_widget_set_visible (GTK_WIDGET (self), self->cents->len > 0);
  if (self->cents->len == 0)
    return;
  self->run = season->run;
  g_free (self->currency);
  self->currency = g_strdup (season->farm->currency);
  median = stead_money_format (stead_money_round (self->run.median), self->currency);
  g_free (self->median);
  /* Translators: a sum of money that half of the counts lie below; beside a line in a chart. */
  self->median = g_strdup_printf (_("middle %s"), median);
  stead_chart_area_set_currency (self->chart, self->currency);
  stead_chart_area_describe (self->chart, _("Over and short by sale day"), season->run_text);
  gtk_widget_queue_draw (GTK_WIDGET (self->chart));
}

static void
stead_over_chart_finalize (GObject *object)
{
  SteadOverChart *self = STEAD_OVER_CHART (object);

  g_array_unref (self->days);
  g_array_unref (self->cents);
  g_free (self->median);
  g_free (self->currency);
  G_OBJECT_CLASS (stead_over_chart_parent_class)->finalize (object);
}

static void
stead_over_chart_class_init (SteadOverChartClass *klass)
{
  G_OBJECT_CLASS (klass)->finalize = stead_over_chart_finalize;
}

static void
stead_over_chart_init (SteadOverChart *self)
{
  self->days = g_array_new (FALSE, FALSE, sizeof (SteadDay));
  self->cents = g_array_new (FALSE, FALSE, sizeof (double));
  self->currency = g_strdup ("USD");
  self->chart = STEAD_CHART_AREA (stead_chart_area_new ());
  stead_chart_area_set_paint (self->chart, paint_cb, hint_cb, self);
  stead_chart_area_set_step (self->chart, step_cb);
  stead_chart_area_set_file_name (self->chart, _("over-and-short"));
  gtk_widget_set_size_request (GTK_WIDGET (self->chart), -1, CHART_HEIGHT);
  gtk_widget_set_hexpand (GTK_WIDGET (self->chart), TRUE);
  gtk_box_append (GTK_BOX (self), GTK_WIDGET (self->chart));
}

GtkWidget *
stead_over_chart_new (void)
{
  return g_object_new (STEAD_TYPE_OVER_CHART, NULL);
}
