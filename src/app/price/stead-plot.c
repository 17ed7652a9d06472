/* stead-plot.c - a card with a question, a chart that answers it, and the same as a table. */
#include "config.h"

#include "app/price/stead-plot.h"

#include <glib/gi18n-lib.h>

#include "answer/stead-words.h"
#include "app/stead-table.h"
#include "app/stead-ui.h"

struct _SteadPlot
{
  GtkWidget       parent_instance;

  char           *label;
  GtkWidget      *box, *head, *stack, *toggle;
  SteadChartArea *chart;
  SteadTable     *table;
  SteadFigure    *figure;   /* (nullable) */
};

G_DEFINE_FINAL_TYPE (SteadPlot, stead_plot, GTK_TYPE_WIDGET)

static char *
cell_text (gpointer item,
           gpointer data)
{
  return g_strdup (((char **) stead_row_get (STEAD_ROW (item)))[GPOINTER_TO_INT (data)]);
}

static void
toggled_cb (SteadPlot *self)
{
  gboolean table = gtk_toggle_button_get_active (GTK_TOGGLE_BUTTON (self->toggle));

  gtk_stack_set_visible_child_name (GTK_STACK (self->stack), table ? "table" : "chart");
}

/* --- the figure ------------------------------------------------------------------------ */

/* What stands in the widget is kept to be pointed at; a picture is painted at another size. */
static void
paint_cb (cairo_t              *cr,
          const SteadDrawStyle *style,
          double                width,
          double                height,
          gpointer              data)
{
  SteadPlot *self = data;

  if (self->figure != NULL)
    stead_figure_paint (self->figure, cr, style, width, height,
                        (int) width == gtk_widget_get_width (GTK_WIDGET (self->chart)));
}

static char *
hint_cb (double   x,
         double   y,
         gpointer data)
{
  SteadPlot *self = data;

  return self->figure != NULL ? stead_figure_hint (self->figure, x, y) : NULL;
}

static char *
step_cb (int       index,
         double   *x,
         double   *y,
         gpointer  data)
{
  SteadPlot *self = data;

  return self->figure != NULL ? stead_figure_step (self->figure, index, x, y) : NULL;
}

void
stead_plot_take_figure (SteadPlot   *self,
                        SteadFigure *figure)
{
  g_return_if_fail (STEAD_IS_PLOT (self));

  g_clear_pointer (&self->figure, stead_figure_free);
  self->figure = figure;
  gtk_widget_queue_draw (GTK_WIDGET (self->chart));
}

/* --- widget ------------------------------------------------------------------------------ */

static void
stead_plot_dispose (GObject *object)
{
  g_clear_pointer (&STEAD_PLOT (object)->figure, stead_figure_free);
  stead_ui_drop_children (GTK_WIDGET (object));
  G_OBJECT_CLASS (stead_plot_parent_class)->dispose (object);
}

static void
stead_plot_finalize (GObject *object)
{
  g_free (STEAD_PLOT (object)->label);
  G_OBJECT_CLASS (stead_plot_parent_class)->finalize (object);
}

static void
stead_plot_class_init (SteadPlotClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = stead_plot_dispose;
  G_OBJECT_CLASS (klass)->finalize = stead_plot_finalize;
  gtk_widget_class_set_layout_manager_type (GTK_WIDGET_CLASS (klass), GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_accessible_role (GTK_WIDGET_CLASS (klass), GTK_ACCESSIBLE_ROLE_GROUP);
}

static void
stead_plot_init (SteadPlot *self)
{
  self->head = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6);
  self->toggle = gtk_toggle_button_new_with_label (_("Show as table"));
  gtk_widget_set_valign (self->toggle, GTK_ALIGN_START);
  g_signal_connect_swapped (self->toggle, "toggled", G_CALLBACK (toggled_cb), self);
  self->chart = STEAD_CHART_AREA (stead_chart_area_new ());
  stead_chart_area_set_paint (self->chart, paint_cb, hint_cb, self);
  stead_chart_area_set_step (self->chart, step_cb);
  self->stack = gtk_stack_new ();
  gtk_stack_set_hhomogeneous (GTK_STACK (self->stack), FALSE);
  gtk_stack_set_vhomogeneous (GTK_STACK (self->stack), FALSE);
  gtk_widget_set_vexpand (self->stack, TRUE);
  gtk_widget_set_hexpand (self->stack, TRUE);
  gtk_stack_add_named (GTK_STACK (self->stack), GTK_WIDGET (self->chart), "chart");
  self->box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);
  gtk_widget_add_css_class (self->box, "card");
  gtk_box_append (GTK_BOX (self->box), self->head);
  gtk_box_append (GTK_BOX (self->box), self->stack);
  gtk_widget_set_parent (self->box, GTK_WIDGET (self));
}

GtkWidget *
stead_plot_new (const char         *question,
                const char         *label,
                const char * const *columns)
{
  SteadPlot *self = g_object_new (STEAD_TYPE_PLOT, NULL);
  GtkWidget *heading = gtk_label_new (question);

  self->label = g_strdup (label);
  gtk_label_set_xalign (GTK_LABEL (heading), 0);
  gtk_label_set_wrap (GTK_LABEL (heading), TRUE);
  gtk_widget_set_hexpand (heading, TRUE);
  gtk_widget_add_css_class (heading, "heading");
  gtk_box_append (GTK_BOX (self->head), heading);
  gtk_box_append (GTK_BOX (self->head), self->toggle);
  self->table = STEAD_TABLE (stead_table_new (label));
  for (int i = 0; columns[i] != NULL; i++)
    stead_table_add_column (self->table, columns[i], i > 0, TRUE, cell_text, NULL, NULL, GINT_TO_POINTER (i));
  gtk_stack_add_named (GTK_STACK (self->stack), GTK_WIDGET (self->table), "table");
  stead_chart_area_set_file_name (self->chart, label);
  return GTK_WIDGET (self);
}

SteadChartArea *
stead_plot_get_chart (SteadPlot *self)
{
  g_return_val_if_fail (STEAD_IS_PLOT (self), NULL);

  return self->chart;
}

void
stead_plot_set_height (SteadPlot *self,
                       int        height)
{
  g_return_if_fail (STEAD_IS_PLOT (self));

  gtk_widget_set_size_request (GTK_WIDGET (self->chart), -1, height);
}

static void
row_free (gpointer row)
{
  g_strfreev (row);
}

void
stead_plot_show (SteadPlot  *self,
                 const char *markup,
                 const char *currency,
                 GPtrArray  *rows)
{
  g_autofree char *plain = stead_words_plain (markup != NULL ? markup : "");
  g_autoptr(GListModel) model = NULL;

  g_return_if_fail (STEAD_IS_PLOT (self));

  stead_chart_area_set_currency (self->chart, currency);
  stead_chart_area_describe (self->chart, self->label, plain);
  g_ptr_array_set_free_func (rows, NULL);
  model = stead_rows_from_array (rows, row_free);
  stead_table_set_model (self->table, model);
  gtk_widget_queue_draw (GTK_WIDGET (self->chart));
}

void
stead_plot_add (SteadPlot *self,
                GtkWidget *widget)
{
  g_return_if_fail (STEAD_IS_PLOT (self) && GTK_IS_WIDGET (widget));

  gtk_widget_set_valign (widget, GTK_ALIGN_START);
  gtk_box_insert_child_after (GTK_BOX (self->head), widget, gtk_widget_get_first_child (self->head));
}
