/* stead-crop-view.c - one crop in Raise.
 *
 * Left the form of the day and what the crop has given so far; right one of
 * seven views: the chart of picks, its weeks as a table, the log, the thermometer, heat,
 * feeding, plan and review.
 */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "app/raise/stead-crop-view.h"

#include "answer/stead-crop-pick.h"
#include "app/raise/stead-batch-panel.h"
#include "app/raise/stead-climate-view.h"
#include "app/raise/stead-crop-form.h"
#include "app/raise/stead-crop-log.h"
#include "app/raise/stead-crop-weeks.h"
#include "app/raise/stead-feeding-view.h"
#include "app/raise/stead-figures.h"
#include "app/raise/stead-heat-view.h"
#include "app/stead-chart-area.h"
#include "app/stead-ui.h"
#include "app/stead-why-box.h"
#include "core/stead-money.h"
#include "draw/stead-harvest-chart.h"

#define RESOURCE STEAD_UI ("raise/stead-crop-view.ui")

struct _SteadCropView
{
  GtkWidget           parent_instance;

  SteadDesk          *desk;
  SteadCropAnswer    *answer;       /* (nullable): of the chosen crop */
  SteadUnitSystem     units;
  SteadHarvestLayout  layout;       /* of the chart as it stands on the screen */

  GtkWidget          *content, *cards;
  GtkLabel           *sentence, *caution, *view_title;
  GtkStack           *views;
  GtkGrid            *figures;
  SteadWhyBox        *whys;
  SteadCropForm      *form;
  SteadCropLog       *log;
  SteadClimateView   *climate;
  SteadHeatView      *heat;
  SteadFeedingView   *feeding;
  SteadBatchPanel    *plan;
  SteadChartArea     *chart;
  GtkBox             *weeks_slot;
  SteadTable         *weeks;
  GtkToggleButton    *chart_button, *weeks_button, *log_button, *climate_button, *heat_button,
                     *feeding_button, *plan_button;
};

G_DEFINE_FINAL_TYPE (SteadCropView, stead_crop_view, GTK_TYPE_WIDGET)

/* --- the chart -------------------------------------------------------------- */

/* "first pick: May 12"; (nullable) */
static char *
ripe_words (const SteadCropAnswer *answer)
{
  g_autofree char *day = NULL;

  if (answer->series.first_ripe == STEAD_DAY_NONE)
    return NULL;
  day = stead_day_format (answer->series.first_ripe, STEAD_DAY_STYLE_SHORT);
  /* Translators: over the chart; a day. */
  return g_strdup_printf (_("first pick: %s"), day);
}

static void
chart_words (SteadCropView     *self,
             const char        *ripe,
             SteadHarvestWords *out)
{
  const SteadUnit *unit = stead_unit_default (STEAD_DIMENSION_MASS, self->units);

  *out = (SteadHarvestWords) {
    .amount = self->units == STEAD_UNITS_METRIC ? _("kg a week") : _("lb a week"),
    .picked = _("picked"),
    .lost = _("thrown out"),
    .expected = _("expected, with its band"),
    .today = _("today"),
    .ripe = ripe,
    .factor = stead_quantity_from_base (1, unit),
  };
}

static void
paint_chart (cairo_t              *cr,
             const SteadDrawStyle *style,
             double                width,
             double                height,
             gpointer              data)
{
  SteadCropView *self = data;
  g_autofree char *ripe = NULL;
  SteadHarvestWords words;
  SteadHarvestLayout layout;

  if (self->answer == NULL)
    return;
  ripe = ripe_words (self->answer);
  chart_words (self, ripe, &words);
  stead_harvest_chart_layout (cr, &self->answer->series, &words, style, width, height, &layout);
  stead_harvest_chart_paint (cr, &self->answer->series, &words, style, &layout, -1);
  if ((int) width == gtk_widget_get_width (GTK_WIDGET (self->chart)))
    self->layout = layout;
}

/* What the week under the pointer gave, or should give. */
static char *
chart_hint (double   x,
            double   y,
            gpointer data)
{
  SteadCropView *self = data;
  int week;

  if (self->answer == NULL || self->answer->weeks->len == 0)
    return NULL;
  week = stead_harvest_chart_nearest (&self->layout, &self->answer->series, x);
  return week < 0 ? NULL : stead_crop_weeks_words (&self->answer->series.weeks[week], self->units);
}

static char *
chart_step (int      index,
            double  *x,
            double  *y,
            gpointer data)
{
  SteadCropView *self = data;
  const SteadPickWeek *week;
  SteadBox bar;

  if (self->answer == NULL || index < 0 || index >= (int) self->answer->weeks->len)
    return NULL;
  week = &self->answer->series.weeks[index];
  stead_harvest_chart_bar (&self->layout, week, &bar);
  *x = bar.x + bar.width / 2;
  *y = isnan (week->likely_kg) ? bar.y : stead_harvest_chart_y (&self->layout, week->likely_kg);
  return stead_crop_weeks_words (week, self->units);
}

/* --- the figures ------------------------------------------------------------- */

static char *
kg_or_unknown (double          kg,
            SteadUnitSystem units)
{
  return isnan (kg) ? NULL : stead_crop_kg_text (kg, units);
}

static char *
plants_text (const SteadCropAnswer *answer)
{
  g_autofree char *stand = stead_number_format ((double) answer->plants, 0);
  g_autofree char *all = stead_number_format ((double) answer->crop->plants, 0);

  /* Translators: plants that stand, plants set out: "37 of 40" */
  return g_strdup_printf (C_("plants standing", "%s of %s"), stand, all);
}

static char *
warmth_text (const SteadCropAnswer *answer)
{
  double factor = answer->farm->units == STEAD_UNITS_US ? STEAD_F_DAYS_PER_C_DAY : 1;
  g_autofree char *sum = NULL, *need = NULL;

  if (answer->from == STEAD_DAY_NONE)
    return NULL;
  sum = stead_number_format (round ((answer->sum_c + answer->assumed_c) * factor), 0);
  need = stead_number_format (round (answer->need_c.likely * factor), 0);
  /* Translators: degree days so far, degree days needed: "540 of 1,300" */
  return g_strdup_printf (C_("degree days", "%s of %s"), sum, need);
}

/* What one square meter, or one square foot, gave. */
static char *
area_text (const SteadCropAnswer *answer)
{
  const SteadUnit *area = stead_unit_default (STEAD_DIMENSION_AREA, answer->farm->units);
  const SteadUnit *mass = stead_unit_default (STEAD_DIMENSION_MASS, answer->farm->units);

  return isnan (answer->m2_kg) ? NULL : stead_quantity_format (answer->m2_kg * area->factor, mass);
}

/* Bed that the fish feed keeps. */
static char *
bed_text (const SteadCropAnswer *answer)
{
  const SteadUnit *area = stead_unit_default (STEAD_DIMENSION_AREA, answer->farm->units);
  g_autofree char *least = stead_number_format (stead_quantity_from_base (answer->bed_min_m2, area), 0);
  g_autofree char *most = stead_quantity_format (stead_quantity_to_base (
    round (stead_quantity_from_base (answer->bed_max_m2, area)), area), area);

  /* Translators: a range of areas: "118 to 190 sq ft" */
  return g_strdup_printf (C_("range", "%s to %s"), least, most);
}

/* What the figures rest on goes into @whys, beside what the answer itself tells. */
static void
show_figures (SteadCropView *self,
              GPtrArray     *whys)
{
  const SteadCropAnswer *answer = self->answer;
  g_autoptr(SteadWhy) why = NULL;
  gint64 cost = stead_crop_cost_in (stead_desk_get_store (self->desk), answer->crop, &why, NULL);
  gboolean us = self->units == STEAD_UNITS_US;

  stead_figures_clear (self->figures);
  stead_figures_add (self->figures, _("Plants standing"), plants_text (answer));
  stead_figures_add (self->figures, us ? _("Degree days (°F)") : _("Degree days (°C)"), warmth_text (answer));
  stead_figures_add (self->figures, _("Picked so far"), kg_or_unknown (answer->picked.good_base, self->units));
  stead_figures_add (self->figures, _("Planned in all"), kg_or_unknown (answer->plan_kg, self->units));
  stead_figures_add (self->figures, _("Expected in all"), kg_or_unknown (answer->total_kg.likely, self->units));
  stead_figures_add (self->figures, _("Picked of one plant"), kg_or_unknown (answer->plant_kg, self->units));
  stead_figures_add (self->figures, us ? _("Picked of a square foot") : _("Picked of a m²"), area_text (answer));
  if (!isnan (answer->light_mol))
    stead_figures_add (self->figures, _("Light a day, mol/m²"), stead_number_format (answer->light_mol, 1));
  if (!isnan (answer->deficit_kpa))
    stead_figures_add (self->figures, _("Vapor pressure deficit, kPa"), stead_number_format (answer->deficit_kpa, 2));
  if (answer->feed_g_day > 0)
    stead_figures_add (self->figures, _("Bed the fish feed keeps"), bed_text (answer));
  if (cost >= 0)
    stead_figures_add (self->figures, _("Cost in, so far"), stead_money_format (cost, answer->farm->currency));
  if (why != NULL)
    g_ptr_array_add (whys, g_steal_pointer (&why));
}

/* --- showing a crop ------------------------------------------------------------ */

static void
view_cb (SteadCropView *self)
{
  static const char * const names[] = { "chart", "weeks", "log", "climate", "heat", "feeding", "plan" };
  const char *titles[] = { _("What is picked each week, and what is to come"), _("Week by week"),
                           _("What was written down"), _("How warm each day was"), _("What keeping it warm costs"),
                           _("What feeds the plants"),
                           _("What it costs, and what comes of it") };
  GtkToggleButton *buttons[] = { self->chart_button, self->weeks_button, self->log_button, self->climate_button,
                                 self->heat_button, self->feeding_button, self->plan_button };

  for (gsize i = 0; i < G_N_ELEMENTS (buttons); i++)
    if (gtk_toggle_button_get_active (buttons[i]))
      {
        gtk_stack_set_visible_child_name (self->views, names[i]);
        gtk_label_set_text (self->view_title, titles[i]);
      }
}

static void
show_answer (SteadCropView *self)
{
  SteadCropAnswer *answer = self->answer;
  g_autofree char *plain = stead_words_plain (answer->sentence);
  g_autofree char *file = g_strdup_printf (_("Picks of %s"), answer->crop->batch.name);
  g_autoptr(GPtrArray) whys = stead_crop_answer_whys (answer);

  self->units = answer->farm->units;
  gtk_label_set_markup (self->sentence, answer->sentence);
  stead_ui_tell (self->caution, answer->caution);
  stead_crop_form_show (self->form, self->desk, answer);
  stead_crop_log_show (self->log, self->desk, answer);
  stead_climate_view_show (self->climate, self->desk, answer);
  stead_heat_view_show (self->heat, self->desk, answer);
  stead_feeding_view_show (self->feeding, answer);
  stead_batch_panel_show (self->plan, answer->crop->batch.id);
  show_figures (self, whys);
  stead_why_box_set (self->whys, whys);
  stead_crop_weeks_show (self->weeks, answer);
  stead_chart_area_set_currency (self->chart, answer->farm->currency);
  stead_chart_area_set_file_name (self->chart, file);
  stead_chart_area_describe (self->chart, _("Chart of what is picked each week"), plain);
  gtk_widget_queue_draw (GTK_WIDGET (self->chart));
}

void
stead_crop_view_show (SteadCropView *self,
                      gint64         crop_id)
{
  g_autoptr(GError) error = NULL;

  g_return_if_fail (STEAD_IS_CROP_VIEW (self));
  g_clear_pointer (&self->answer, stead_crop_answer_free);
  self->answer = stead_crop_answer_new (stead_desk_get_store (self->desk), crop_id, &error);
  gtk_widget_set_visible (self->cards, self->answer != NULL);
  if (self->answer != NULL)
    {
      show_answer (self);
      return;
    }
  gtk_label_set_text (self->sentence, error->message);
  gtk_widget_hide (GTK_WIDGET (self->caution));
}

void
stead_crop_view_focus (SteadCropView *self)
{
  g_return_if_fail (STEAD_IS_CROP_VIEW (self));
  stead_crop_form_focus (self->form);
}

static void
stead_crop_view_dispose (GObject *object)
{
  SteadCropView *self = STEAD_CROP_VIEW (object);

  if (self->chart != NULL)
    stead_chart_area_set_paint (self->chart, NULL, NULL, NULL);
  gtk_widget_dispose_template (GTK_WIDGET (self), STEAD_TYPE_CROP_VIEW);
  g_clear_pointer (&self->answer, stead_crop_answer_free);
  g_clear_object (&self->desk);
  G_OBJECT_CLASS (stead_crop_view_parent_class)->dispose (object);
}

#define BIND(child) gtk_widget_class_bind_template_child (widget_class, SteadCropView, child)

static void
stead_crop_view_class_init (SteadCropViewClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  g_type_ensure (STEAD_TYPE_WHY_BOX);
  g_type_ensure (STEAD_TYPE_CHART_AREA);
  g_type_ensure (STEAD_TYPE_CROP_FORM);
  g_type_ensure (STEAD_TYPE_CROP_LOG);
  g_type_ensure (STEAD_TYPE_CLIMATE_VIEW);
  g_type_ensure (STEAD_TYPE_HEAT_VIEW);
  g_type_ensure (STEAD_TYPE_FEEDING_VIEW);
  g_type_ensure (STEAD_TYPE_BATCH_PANEL);
  G_OBJECT_CLASS (klass)->dispose = stead_crop_view_dispose;
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_template_from_resource (widget_class, RESOURCE);
  BIND (content);
  BIND (cards);
  BIND (sentence);
  BIND (caution);
  BIND (view_title);
  BIND (views);
  BIND (figures);
  BIND (whys);
  BIND (form);
  BIND (log);
  BIND (climate);
  BIND (heat);
  BIND (feeding);
  BIND (plan);
  BIND (chart);
  BIND (weeks_slot);
  BIND (chart_button);
  BIND (weeks_button);
  BIND (log_button);
  BIND (climate_button);
  BIND (heat_button);
  BIND (feeding_button);
  BIND (plan_button);
  gtk_widget_class_bind_template_callback (widget_class, view_cb);
}

static void
stead_crop_view_init (SteadCropView *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  stead_ui_hush_stack (self->views);
  self->weeks = STEAD_TABLE (stead_crop_weeks_new (&self->units));
  gtk_box_append (self->weeks_slot, GTK_WIDGET (self->weeks));
  stead_chart_area_set_paint (self->chart, paint_chart, chart_hint, self);
  stead_chart_area_set_step (self->chart, chart_step);
  view_cb (self);
}

GtkWidget *
stead_crop_view_new (SteadDesk *desk)
{
  SteadCropView *self = g_object_new (STEAD_TYPE_CROP_VIEW, NULL);

  self->desk = g_object_ref (desk);
  stead_batch_panel_set_desk (self->plan, desk);
  return GTK_WIDGET (self);
}
