/* stead-flock-view.c - one flock in Raise: its log and its chart.
 *
 * Left the form of the day and what the flock has given so far, right one of five
 * views: the chart, its weeks as a table, the grading of its eggs, the entries of its
 * log, its plan and review.
 */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "app/raise/stead-flock-view.h"

#include "answer/stead-flock-answer.h"
#include "answer/stead-house-answer.h"
#include "answer/stead-lay-text.h"
#include "app/raise/stead-batch-panel.h"
#include "app/raise/stead-day-form.h"
#include "app/raise/stead-egg-view.h"
#include "app/raise/stead-figures.h"
#include "app/raise/stead-flock-weeks.h"
#include "app/raise/stead-house-lines.h"
#include "app/raise/stead-log-view.h"
#include "app/stead-chart-area.h"
#include "app/stead-table.h"
#include "app/stead-ui.h"
#include "app/stead-why-box.h"
#include "app/stead-wrap-layout.h"
#include "core/stead-money.h"
#include "draw/stead-lay-chart.h"

#define RESOURCE STEAD_UI ("raise/stead-flock-view.ui")

struct _SteadFlockView
{
  GtkWidget          parent_instance;

  SteadDesk         *desk;
  SteadFlockAnswer  *answer;       /* (nullable): of the chosen flock */
  SteadUnitSystem    units;
  SteadLayLayout     layout;       /* of the chart as it stands on the screen */

  GtkWidget         *content, *cards;
  GtkLabel          *sentence, *caution, *view_title, *fit_note;
  GtkStack          *views;
  GtkGrid           *figures;
  SteadWhyBox       *whys;
  SteadDayForm      *form;
  SteadLogView      *log;
  SteadChartArea    *chart;
  GtkBox            *weeks_slot;
  SteadTable        *weeks;
  GtkWidget         *house_title;
  GtkGrid           *house;
  GtkLabel          *house_caution;
  SteadEggView      *eggs;
  SteadBatchPanel   *plan;
  GtkToggleButton   *chart_button, *weeks_button, *eggs_button, *log_button, *plan_button;
};

G_DEFINE_FINAL_TYPE (SteadFlockView, stead_flock_view, GTK_TYPE_WIDGET)

/* --- the chart -------------------------------------------------------------- */

static const SteadUnit *
feed_unit (const SteadFarm *farm)
{
  return stead_unit_default (STEAD_DIMENSION_MASS, farm->units);
}

/* @ends: must outlive @out */
static void
chart_words (SteadFlockView     *self,
             const SteadLayEnds *ends,
             SteadLayWords      *out)
{
  gboolean metric = self->answer->farm->units == STEAD_UNITS_METRIC;
  gboolean hens = self->answer->flock->species == STEAD_SPECIES_HEN;
  const char *feed = hens ? (metric ? _("feed, kg a hen a day") : _("feed, lb a hen a day"))
                          : (metric ? _("feed, kg a bird a day") : _("feed, lb a bird a day"));

  *out = (SteadLayWords) {
    .axis = _("age of the flock, weeks"),
    .expected = ends->forecast == NULL ? _("expected") : NULL,
    .forecast = ends->forecast,
    .band_high = ends->band_high,
    .band_low = ends->band_low,
    .band = ends->band,
    .today = _("today"),
    .lost = hens ? _("hens lost") : _("birds lost"),
    .feed = feed,
    .left_out = _("left out"),
    .far_off = _("far off"),
    .feed_factor = stead_quantity_from_base (1, feed_unit (self->answer->farm)),
  };
}

static void
paint_chart (cairo_t              *cr,
             const SteadDrawStyle *style,
             double                width,
             double                height,
             gpointer              data)
{
  SteadFlockView *self = data;
  g_auto(SteadLayEnds) ends = { 0 };
  SteadLayWords words;
  SteadLayLayout layout;

  if (self->answer == NULL)
    return;
  stead_lay_text_ends (self->answer, &ends);
  chart_words (self, &ends, &words);
  stead_lay_chart_layout (cr, &self->answer->series, &words, style, width, height, &layout);
  stead_lay_chart_paint (cr, &self->answer->series, &words, style, &layout, -1);
  if ((int) width == gtk_widget_get_width (GTK_WIDGET (self->chart)))
    self->layout = layout;
}

/* What the week under the pointer gave, or is expected to give. */
static char *
chart_hint (double   x,
            double   y,
            gpointer data)
{
  SteadFlockView *self = data;
  char *ahead;
  int week;

  if (self->answer == NULL)
    return NULL;
  ahead = stead_lay_text_ahead (self->answer, stead_lay_chart_age (&self->layout, x));
  if (ahead != NULL || self->answer->weeks->len == 0)
    return ahead;
  week = stead_lay_chart_nearest (&self->layout, &self->answer->series, x);
  return week < 0 ? NULL : stead_lay_text_week (self->answer, (gsize) week);
}

/* --- the figures ------------------------------------------------------------- */

static char *
mass_or_unknown (double           kg,
                 const SteadUnit *unit)
{
  return isnan (kg) ? NULL : stead_quantity_format (kg, unit);
}

static char *
number_or_unknown (double number)
{
  return isnan (number) ? NULL : stead_number_format (number, 1);
}

static char *
alive_text (const SteadFlockAnswer *answer)
{
  g_autofree char *alive = stead_number_format ((double) answer->alive, 0);
  g_autofree char *birds = stead_number_format ((double) answer->flock->birds, 0);

  /* Translators: hens alive, hens that moved in: "27 of 30" */
  return g_strdup_printf (C_("hens alive", "%s of %s"), alive, birds);
}

static void
show_figures (SteadFlockView *self)
{
  const SteadFlockAnswer *answer = self->answer;
  const SteadUnit *mass = feed_unit (answer->farm);

  stead_figures_clear (self->figures);
  stead_figures_add (self->figures, answer->flock->species == STEAD_SPECIES_HEN ? _("Hens alive") : _("Birds alive"),
                     alive_text (answer));
  stead_figures_add (self->figures, _("Dozens collected"),
                     stead_number_format ((double) answer->so_far.eggs / 12, 0));
  stead_figures_add (self->figures, _("Feed for a dozen"), mass_or_unknown (answer->feed_per_dozen_kg, mass));
  stead_figures_add (self->figures, _("Feed on hand"), stead_quantity_format (answer->feed_on_hand_kg, mass));
  stead_figures_add (self->figures, _("Cost in, so far"),
                     stead_money_format (answer->cost_in_cents, answer->farm->currency));
  stead_figures_add (self->figures, _("Dozens to expect in 7 days"), number_or_unknown (answer->next_dozens));
}

/* --- showing a flock ---------------------------------------------------------- */

/* The view that is chosen: its name in the stack, and its title. */
static void
view_cb (SteadFlockView *self)
{
  gboolean hens = self->answer == NULL || self->answer->flock->species == STEAD_SPECIES_HEN;
  const struct { GtkToggleButton *button; const char *name; const char *title; } views[] = {
    { self->chart_button, "chart", hens ? _("How many eggs a day from 100 hens") : _("How many eggs a day from 100 birds") },
    { self->weeks_button, "weeks", _("Week by week") },
    { self->eggs_button, "eggs", _("Weight classes and freshness") },
    { self->log_button, "log", _("What was written down") },
    { self->plan_button, "plan", _("What it costs, and what comes of it") },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (views); i++)
    if (gtk_toggle_button_get_active (views[i].button))
      {
        gtk_stack_set_visible_child_name (self->views, views[i].name);
        gtk_label_set_text (self->view_title, views[i].title);
      }
}

/* The house against what its birds need, and why. */
static void
show_house (SteadFlockView *self,
            GPtrArray      *whys)
{
  const SteadFlockAnswer *answer = self->answer;
  g_autoptr(SteadHouseAnswer) house = NULL;
  SteadWhy *why;

  if (answer->flock->ended_on == STEAD_DAY_NONE && answer->alive > 0)
    house = stead_house_answer_new (stead_desk_get_store (self->desk), answer->flock, answer->alive,
                                    answer->age_weeks, answer->farm->units, NULL);
  stead_house_lines_show (self->house, house);
  gtk_widget_set_visible (self->house_title, house != NULL);
  gtk_widget_set_visible (GTK_WIDGET (self->house_caution), house != NULL);
  if (house == NULL)
    return;
  gtk_label_set_text (self->house_caution, house->caution);
  why = stead_house_answer_why (house);
  if (why != NULL)
    g_ptr_array_add (whys, why);
}

static void
show_answer (SteadFlockView *self)
{
  SteadFlockAnswer *answer = self->answer;
  g_autofree char *plain = stead_words_plain (answer->sentence);
  g_autofree char *file = g_strdup_printf (_("Eggs of %s"), answer->flock->name);
  g_autoptr(GPtrArray) whys = stead_flock_answer_whys (answer);

  self->units = answer->farm->units;
  gtk_label_set_markup (self->sentence, answer->sentence);
  stead_ui_tell (self->caution, answer->caution);
  stead_ui_tell (self->fit_note, answer->fit_note);
  stead_day_form_show (self->form, self->desk, answer->flock);
  stead_log_view_show (self->log, self->desk, &stead_log_flock, answer->flock->id, answer->flock->name);
  stead_egg_view_show (self->eggs, self->desk, answer->flock->id);
  stead_batch_panel_show (self->plan, answer->flock->id);
  show_house (self, whys);
  stead_why_box_set (self->whys, whys);
  view_cb (self);
  show_figures (self);
  stead_flock_weeks_show (self->weeks, answer);
  stead_chart_area_set_currency (self->chart, answer->farm->currency);
  stead_chart_area_set_file_name (self->chart, file);
  stead_chart_area_describe (self->chart, _("Chart of eggs by age of the flock"), plain);
  gtk_widget_queue_draw (GTK_WIDGET (self->chart));
}

static void
show_failure (SteadFlockView *self,
              const GError   *error)
{
  gtk_label_set_text (self->sentence, error->message);
  gtk_widget_hide (GTK_WIDGET (self->caution));
}

/**
 * stead_flock_view_show:
 * @flock_id: a flock of the open farm
 *
 * Reads its answer anew; what stands typed in the form for the same flock stays.
 */
void
stead_flock_view_show (SteadFlockView *self,
                       gint64          flock_id)
{
  g_autoptr(GError) error = NULL;

  g_return_if_fail (STEAD_IS_FLOCK_VIEW (self));
  g_clear_pointer (&self->answer, stead_flock_answer_free);
  self->answer = stead_flock_answer_new (stead_desk_get_store (self->desk), flock_id, &error);
  gtk_widget_set_visible (self->cards, self->answer != NULL);
  if (self->answer == NULL)
    show_failure (self, error);
  else
    show_answer (self);
}

void
stead_flock_view_focus (SteadFlockView *self)
{
  g_return_if_fail (STEAD_IS_FLOCK_VIEW (self));
  stead_day_form_focus (self->form);
}

static void
stead_flock_view_dispose (GObject *object)
{
  SteadFlockView *self = STEAD_FLOCK_VIEW (object);

  if (self->chart != NULL)
    stead_chart_area_set_paint (self->chart, NULL, NULL, NULL);
  gtk_widget_dispose_template (GTK_WIDGET (self), STEAD_TYPE_FLOCK_VIEW);
  g_clear_pointer (&self->answer, stead_flock_answer_free);
  g_clear_object (&self->desk);
  G_OBJECT_CLASS (stead_flock_view_parent_class)->dispose (object);
}

#define BIND(child) gtk_widget_class_bind_template_child (widget_class, SteadFlockView, child)

static void
stead_flock_view_class_init (SteadFlockViewClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  g_type_ensure (STEAD_TYPE_WHY_BOX);
  g_type_ensure (STEAD_TYPE_CHART_AREA);
  g_type_ensure (STEAD_TYPE_DAY_FORM);
  g_type_ensure (STEAD_TYPE_EGG_VIEW);
  g_type_ensure (STEAD_TYPE_BATCH_PANEL);
  g_type_ensure (STEAD_TYPE_WRAP_LAYOUT);
  g_type_ensure (STEAD_TYPE_LOG_VIEW);
  G_OBJECT_CLASS (klass)->dispose = stead_flock_view_dispose;
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_template_from_resource (widget_class, RESOURCE);
  BIND (content);
  BIND (cards);
  BIND (sentence);
  BIND (caution);
  BIND (view_title);
  BIND (fit_note);
  BIND (views);
  BIND (figures);
  BIND (whys);
  BIND (form);
  BIND (log);
  BIND (chart);
  BIND (weeks_slot);
  BIND (chart_button);
  BIND (weeks_button);
  BIND (log_button);
  BIND (eggs_button);
  BIND (eggs);
  BIND (plan);
  BIND (plan_button);
  BIND (house);
  BIND (house_title);
  BIND (house_caution);
  gtk_widget_class_bind_template_callback (widget_class, view_cb);
}

static void
stead_flock_view_init (SteadFlockView *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  stead_ui_hush_stack (self->views);
  self->weeks = STEAD_TABLE (stead_flock_weeks_new (&self->units));
  gtk_box_append (self->weeks_slot, GTK_WIDGET (self->weeks));
  stead_chart_area_set_paint (self->chart, paint_chart, chart_hint, self);
  view_cb (self);
}

GtkWidget *
stead_flock_view_new (SteadDesk *desk)
{
  SteadFlockView *self = g_object_new (STEAD_TYPE_FLOCK_VIEW, NULL);

  self->desk = g_object_ref (desk);
  stead_batch_panel_set_desk (self->plan, desk);
  return GTK_WIDGET (self);
}
