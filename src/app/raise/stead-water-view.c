/* stead-water-view.c - one water in Raise: its test sheet, its trends, its doses.
 *
 * Left the sheet of a test, judged as it is typed; right one of four views on the
 * same tests: a reading over time with its limits, the last test line by line, all
 * tests, and the dose sheets.
 */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "app/raise/stead-water-view.h"

#include "answer/stead-tank-text.h"
#include "answer/stead-water-answer.h"
#include "app/raise/stead-dose-view.h"
#include "app/raise/stead-routine-dialog.h"
#include "app/raise/stead-water-form.h"
#include "app/raise/stead-water-lines.h"
#include "app/raise/stead-water-log.h"
#include "app/stead-chart-area.h"
#include "app/stead-ui.h"
#include "app/stead-why-box.h"
#include "draw/stead-trend-chart.h"

#define RESOURCE STEAD_UI ("raise/stead-water-view.ui")

/* A bad week has about so many lines of what was done. */
#define SHOWN_DONE 5

struct _SteadWaterView
{
  GtkWidget          parent_instance;

  SteadDesk         *desk;
  gint64             water_id;
  SteadWaterAnswer  *answer;      /* (nullable) */
  SteadWaterMeasure  shown;       /* in the chart */
  gboolean           filling;
  GArray            *points;      /* (nullable): of @series */
  SteadReadingSeries series;
  SteadWaterEnds     ends;
  SteadTrendLayout   layout;      /* of the chart as it stands on the screen */

  GtkWidget         *cards, *done_title;
  GtkLabel          *sentence, *todo, *about, *view_title, *trend, *budget, *done;
  GtkStack          *views;
  SteadWaterForm    *form;
  SteadWaterLog     *log;
  SteadWhyBox       *whys;
  SteadChartArea    *chart;
  GtkDropDown       *measure, *span;
  GtkBox            *doses;
  SteadWaterLines   *last;
  SteadDoseView     *sheets[STEAD_DOSE_CHANGE + 1];
  GtkToggleButton   *chart_button, *last_button, *log_button, *doses_button;
};

G_DEFINE_FINAL_TYPE (SteadWaterView, stead_water_view, GTK_TYPE_WIDGET)

/* --- the chart ------------------------------------------------------------------------- */

static void
chart_words (SteadWaterView  *self,
             SteadTrendWords *out)
{
  *out = (SteadTrendWords) {
    .unit = self->ends.unit,
    .today = _("today"),
    .most = self->ends.most,
    .least = self->ends.least,
    .harm_above = self->ends.harm_above,
    .harm_below = self->ends.harm_below,
    .ahead = _("if it goes on so"),
  };
}

static void
paint_chart (cairo_t              *cr,
             const SteadDrawStyle *style,
             double                width,
             double                height,
             gpointer              data)
{
  SteadWaterView *self = data;
  SteadTrendWords words;
  SteadTrendLayout layout;

  if (self->answer == NULL || self->points == NULL)
    return;
  chart_words (self, &words);
  stead_trend_chart_layout (cr, &self->series, &words, style, width, height, &layout);
  stead_trend_chart_paint (cr, &self->series, &words, style, &layout, -1);
  if ((int) width == gtk_widget_get_width (GTK_WIDGET (self->chart)))
    self->layout = layout;
}

static char *
chart_hint (double   x,
            double   y,
            gpointer data)
{
  SteadWaterView *self = data;
  int nearest;

  if (self->answer == NULL || self->points == NULL)
    return NULL;
  nearest = stead_trend_chart_nearest (&self->layout, &self->series, x);
  return nearest < 0 ? NULL : stead_water_answer_point_text (self->answer, self->shown, &self->series.points[nearest]);
}

static char *
chart_step (int      index,
            double  *x,
            double  *y,
            gpointer data)
{
  SteadWaterView *self = data;

  if (self->answer == NULL || self->points == NULL || index < 0 || (gsize) index >= self->series.n_points)
    return NULL;
  stead_trend_chart_point (&self->layout, &self->series.points[index], x, y);
  return stead_water_answer_point_text (self->answer, self->shown, &self->series.points[index]);
}

static SteadDay
first_day (SteadWaterView *self)
{
  static const int spans[] = { 30, 90, 365 };
  guint at = gtk_drop_down_get_selected (self->span);

  if (at < G_N_ELEMENTS (spans))
    return self->answer->today - spans[at];
  return self->answer->tests->len > 0 ? ((const SteadWaterTest *) self->answer->tests->pdata[0])->day
                                      : self->answer->today - 30;
}

/* What was done in the days of the chart tells why a reading rose or fell. */
static void
show_done (SteadWaterView *self)
{
  g_autofree char *done = stead_water_answer_done_text (self->answer, first_day (self), SHOWN_DONE);

  stead_ui_tell (self->done, done);
  gtk_widget_set_visible (self->done_title, done != NULL);
}

static void
show_chart (SteadWaterView *self)
{
  const char *name = stead_water_measure_name (self->shown);
  g_autofree char *trend = stead_water_answer_trend_sentence (self->answer, self->shown);
  g_autofree char *title = g_strdup_printf (_("%s over time"), name);
  /* Translators: name of a file: a measure, and the name of a water. */
  g_autofree char *file = g_strdup_printf (_("%s of %s"), name, self->answer->water->name);
  g_autofree char *line = stead_water_line_sentence (&self->answer->lines[self->shown], self->answer->farm->units);
  const char *said = trend != NULL ? trend : line;

  g_clear_pointer (&self->points, g_array_unref);
  self->points = stead_water_answer_series (self->answer, self->shown, first_day (self), &self->series);
  stead_water_ends_clear (&self->ends);
  stead_water_answer_ends (self->answer, self->shown, &self->ends);
  gtk_label_set_text (self->trend, said);
  show_done (self);
  stead_chart_area_set_file_name (self->chart, file);
  stead_chart_area_describe (self->chart, title, said);
  gtk_widget_queue_draw (GTK_WIDGET (self->chart));
}

static void
measure_cb (SteadWaterView *self)
{
  if (self->filling || self->answer == NULL)
    return;
  self->shown = (SteadWaterMeasure) gtk_drop_down_get_selected (self->measure);
  show_chart (self);
}

/* --- showing a water ------------------------------------------------------------------------ */

static void
view_cb (SteadWaterView *self)
{
  gboolean chart = gtk_toggle_button_get_active (self->chart_button);
  gboolean last = gtk_toggle_button_get_active (self->last_button);
  gboolean log = gtk_toggle_button_get_active (self->log_button);

  gtk_stack_set_visible_child_name (self->views, chart ? "chart" : last ? "last" : log ? "log" : "doses");
  gtk_label_set_text (self->view_title, chart ? _("Where it is going")
                                        : last ? _("What the last test says")
                                        : log ? _("What was written down") : _("What to add or to change"));
}

/* Volume, who shares it, and the next test. */
static void
show_about (SteadWaterView *self)
{
  const SteadWaterAnswer *answer = self->answer;
  g_autofree char *judged = stead_water_scene_sentence (&answer->scene);
  g_autofree char *due = stead_water_answer_due_sentence (answer);
  g_autofree char *plain = stead_words_plain (due);
  g_autofree char *volume = NULL;
  g_autofree char *holds = NULL;
  g_autofree char *text = NULL;

  if (!isnan (answer->volume_l))
    volume = stead_tank_text_volume (answer->volume_l, answer->farm->units);
  /* Translators: "1,200 gal". */
  holds = volume != NULL ? g_strdup_printf (_("It holds %s."), volume)
                         : g_strdup (_("How much it holds is not entered yet."));
  text = g_strjoin (" ", holds, judged, plain, NULL);
  gtk_label_set_text (self->about, text);
}

static void
show_todo (SteadWaterView *self)
{
  const SteadWaterAnswer *answer = self->answer;
  g_autofree char *text = answer->todo == NULL ? NULL
                          : answer->caution == NULL ? g_strdup (answer->todo)
                          : g_strconcat (answer->todo, " ", answer->caution, NULL);

  stead_ui_tell (self->todo, text);
}

/* The worst reading of the last test is shown first. */
static void
choose_measure (SteadWaterView *self,
                gboolean        same)
{
  g_autoptr(GPtrArray) worst = NULL;

  if (same)
    return;
  worst = stead_water_answer_worst (self->answer);
  self->shown = worst->len > 0 ? ((const SteadWaterLine *) worst->pdata[0])->measure : STEAD_WATER_PH;
  self->filling = TRUE;
  gtk_drop_down_set_selected (self->measure, self->shown);
  self->filling = FALSE;
}

static void
show_answer (SteadWaterView *self,
             gboolean        same)
{
  const SteadWaterAnswer *answer = self->answer;
  g_autoptr(GPtrArray) whys = stead_water_answer_whys (answer);
  g_autofree char *budget = stead_water_answer_budget_sentence (answer);

  gtk_label_set_markup (self->sentence, answer->sentence);
  show_todo (self);
  show_about (self);
  stead_water_form_show (self->form, self->desk, answer);
  stead_water_form_set_open (self->form, answer->water->ended_on == STEAD_DAY_NONE);
  stead_water_log_show (self->log, self->desk, answer);
  stead_why_box_set (self->whys, whys);
  choose_measure (self, same);
  show_chart (self);
  stead_water_lines_show (self->last, answer);
  stead_ui_tell (self->budget, budget);
  for (gsize i = 0; i < G_N_ELEMENTS (self->sheets); i++)
    stead_dose_view_show (self->sheets[i], answer);
}

void
stead_water_view_show (SteadWaterView *self,
                       gint64          water_id)
{
  g_autoptr(GError) error = NULL;
  SteadWaterAnswer *answer;
  gboolean same;

  g_return_if_fail (STEAD_IS_WATER_VIEW (self));

  same = self->water_id == water_id && self->answer != NULL;
  answer = stead_water_answer_new (stead_desk_get_store (self->desk), water_id, &error);
  gtk_widget_set_visible (self->cards, answer != NULL);
  if (answer == NULL)
    {
      gtk_label_set_text (self->sentence, error->message);
      gtk_widget_hide (GTK_WIDGET (self->todo));
      return;
    }
  /* What the parts still point to goes only when they point to the new one. */
  {
    g_autoptr(SteadWaterAnswer) before G_GNUC_UNUSED = g_steal_pointer (&self->answer);

    self->answer = answer;
    self->water_id = water_id;
    show_answer (self, same);
  }
}

void
stead_water_view_refresh (SteadWaterView *self)
{
  g_return_if_fail (STEAD_IS_WATER_VIEW (self));
  if (self->water_id != 0)
    stead_water_view_show (self, self->water_id);
}

void
stead_water_view_focus (SteadWaterView *self)
{
  g_return_if_fail (STEAD_IS_WATER_VIEW (self));
  stead_water_form_focus (self->form);
}

static void
routine_cb (SteadWaterView *self)
{
  stead_routine_dialog_show (GTK_WIDGET (self), self->desk, 0, self->water_id);
}

/* --- the type ---------------------------------------------------------------------------------- */

static void
stead_water_view_dispose (GObject *object)
{
  SteadWaterView *self = STEAD_WATER_VIEW (object);

  if (self->chart != NULL)
    stead_chart_area_set_paint (self->chart, NULL, NULL, NULL);
  gtk_widget_dispose_template (GTK_WIDGET (self), STEAD_TYPE_WATER_VIEW);
  stead_ui_drop_children (GTK_WIDGET (self));
  g_clear_pointer (&self->points, g_array_unref);
  g_clear_pointer (&self->answer, stead_water_answer_free);
  stead_water_ends_clear (&self->ends);
  g_clear_object (&self->desk);
  G_OBJECT_CLASS (stead_water_view_parent_class)->dispose (object);
}

static void
stead_water_view_class_init (SteadWaterViewClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  g_type_ensure (STEAD_TYPE_CHART_AREA);
  g_type_ensure (STEAD_TYPE_WATER_FORM);
  g_type_ensure (STEAD_TYPE_WATER_LINES);
  g_type_ensure (STEAD_TYPE_WATER_LOG);
  G_OBJECT_CLASS (klass)->dispose = stead_water_view_dispose;
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_template_from_resource (widget_class, RESOURCE);
  gtk_widget_class_bind_template_child (widget_class, SteadWaterView, cards);
  gtk_widget_class_bind_template_child (widget_class, SteadWaterView, sentence);
  gtk_widget_class_bind_template_child (widget_class, SteadWaterView, todo);
  gtk_widget_class_bind_template_child (widget_class, SteadWaterView, view_title);
  gtk_widget_class_bind_template_child (widget_class, SteadWaterView, trend);
  gtk_widget_class_bind_template_child (widget_class, SteadWaterView, done);
  gtk_widget_class_bind_template_child (widget_class, SteadWaterView, done_title);
  gtk_widget_class_bind_template_child (widget_class, SteadWaterView, budget);
  gtk_widget_class_bind_template_child (widget_class, SteadWaterView, views);
  gtk_widget_class_bind_template_child (widget_class, SteadWaterView, form);
  gtk_widget_class_bind_template_child (widget_class, SteadWaterView, log);
  gtk_widget_class_bind_template_child (widget_class, SteadWaterView, chart);
  gtk_widget_class_bind_template_child (widget_class, SteadWaterView, measure);
  gtk_widget_class_bind_template_child (widget_class, SteadWaterView, span);
  gtk_widget_class_bind_template_child (widget_class, SteadWaterView, last);
  gtk_widget_class_bind_template_child (widget_class, SteadWaterView, doses);
  gtk_widget_class_bind_template_child (widget_class, SteadWaterView, chart_button);
  gtk_widget_class_bind_template_child (widget_class, SteadWaterView, last_button);
  gtk_widget_class_bind_template_child (widget_class, SteadWaterView, log_button);
  gtk_widget_class_bind_template_child (widget_class, SteadWaterView, doses_button);
  gtk_widget_class_bind_template_callback (widget_class, view_cb);
  gtk_widget_class_bind_template_callback (widget_class, measure_cb);
}

static void
build_measures (SteadWaterView *self)
{
  g_autoptr(GtkStringList) names = gtk_string_list_new (NULL);

  for (int i = 0; i < STEAD_N_WATER_MEASURES; i++)
    gtk_string_list_append (names, stead_water_measure_name ((SteadWaterMeasure) i));
  self->filling = TRUE;
  gtk_drop_down_set_model (self->measure, G_LIST_MODEL (names));
  self->filling = FALSE;
}

/* Under the fields of the form: what the water is, how things are worked out, its routine. */
static void
build_below (SteadWaterView *self)
{
  GtkWidget *title = gtk_label_new (_("This water"));
  GtkWidget *about = gtk_label_new (NULL);
  GtkWidget *whys = stead_why_box_new ();
  GtkWidget *routine = gtk_button_new_with_label (_("Routine…"));

  gtk_label_set_xalign (GTK_LABEL (title), 0);
  gtk_widget_set_margin_top (title, 12);
  gtk_widget_add_css_class (title, "heading");
  gtk_label_set_xalign (GTK_LABEL (about), 0);
  gtk_label_set_wrap (GTK_LABEL (about), TRUE);
  gtk_label_set_max_width_chars (GTK_LABEL (about), 30);
  gtk_widget_add_css_class (about, "soft");
  gtk_widget_set_halign (routine, GTK_ALIGN_START);
  g_signal_connect_swapped (routine, "clicked", G_CALLBACK (routine_cb), self);
  stead_water_form_add_below (self->form, title);
  stead_water_form_add_below (self->form, about);
  stead_water_form_add_below (self->form, whys);
  stead_water_form_add_below (self->form, routine);
  self->about = GTK_LABEL (about);
  self->whys = STEAD_WHY_BOX (whys);
}

static void
stead_water_view_init (SteadWaterView *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  stead_ui_hush_stack (self->views);
  build_measures (self);
  build_below (self);
  for (gsize i = 0; i < G_N_ELEMENTS (self->sheets); i++)
    {
      GtkWidget *sheet = stead_dose_view_new ((SteadDoseSheet) i);

      self->sheets[i] = STEAD_DOSE_VIEW (sheet);
      gtk_box_append (self->doses, sheet);
    }
  stead_ui_name_drop_downs (GTK_WIDGET (self));
  stead_chart_area_set_paint (self->chart, paint_chart, chart_hint, self);
  stead_chart_area_set_step (self->chart, chart_step);
  view_cb (self);
}

GtkWidget *
stead_water_view_new (SteadDesk *desk)
{
  SteadWaterView *self = g_object_new (STEAD_TYPE_WATER_VIEW, NULL);

  self->desk = g_object_ref (desk);
  return GTK_WIDGET (self);
}
