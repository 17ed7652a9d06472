/* stead-fish-view.c - one group of fish in Raise: its day, its log, its weighings, its growth.
 *
 * Left the form of the day, what can be done with the fish, and their figures; right one
 * of five views: the chart of the growth, its weeks as a table, the log, the weighings, and
 * the plan with what came of it.
 */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "app/raise/stead-fish-view.h"

#include "answer/stead-fish-text.h"
#include "app/raise/stead-batch-panel.h"
#include "app/raise/stead-figures.h"
#include "app/raise/stead-fish-form.h"
#include "app/raise/stead-fish-move-dialog.h"
#include "app/raise/stead-fish-moves.h"
#include "app/raise/stead-fish-weeks.h"
#include "app/raise/stead-log-view.h"
#include "app/raise/stead-weighing-dialog.h"
#include "app/stead-chart-area.h"
#include "app/stead-ui.h"
#include "app/stead-why-box.h"
#include "core/stead-money.h"
#include "draw/stead-growth-chart.h"

#define RESOURCE STEAD_UI ("raise/stead-fish-view.ui")

/* A weighing is pointed at within so many pixels. */
#define NEAR_MARK 12

struct _SteadFishView
{
  GtkWidget          parent_instance;

  SteadDesk         *desk;
  SteadFishAnswer   *answer;       /* (nullable): of the chosen group */
  SteadUnitSystem    units;
  SteadGrowthLayout  layout;       /* of the chart as it stands on the screen */

  GtkWidget         *content, *cards, *actions;
  GtkLabel          *sentence, *caution, *rule;
  GtkStack          *views;
  GtkGrid           *figures;
  SteadWhyBox       *whys;
  SteadFishForm     *form;
  SteadFishMoves    *moves;
  SteadLogView      *log, *weighings;
  SteadChartArea    *chart;
  GtkBox            *weeks_slot;
  SteadTable        *weeks;
  GtkButton         *purge, *record;
  GtkToggleButton   *chart_button, *weeks_button, *log_button, *weighings_button, *plan_button;
  SteadBatchPanel   *plan;
};

G_DEFINE_FINAL_TYPE (SteadFishView, stead_fish_view, GTK_TYPE_WIDGET)

/* --- the chart -------------------------------------------------------------------- */

/* Weights are shown in the unit of the heaviest there is. */
static const SteadUnit *
weight_unit (const SteadFishAnswer *answer)
{
  return stead_fish_weight_unit (answer->group->sale_g, answer->farm->units);
}

static void
paint_chart (cairo_t              *cr,
             const SteadDrawStyle *style,
             double                width,
             double                height,
             gpointer              data)
{
  SteadFishView *self = data;
  const SteadFishAnswer *answer = self->answer;
  g_autofree char *weight = NULL, *sale_day = NULL;
  SteadGrowthLayout layout;
  SteadGrowthWords words;

  if (answer == NULL)
    return;
  /* Translators: over the axis of a chart; a unit of weight. */
  weight = g_strdup_printf (_("weight of a fish, %s"), stead_unit_symbol (weight_unit (answer)));
  sale_day = stead_fish_text_sale_day (answer);
  words = (SteadGrowthWords) {
    .weight = weight,
    .expected = _("expected"),
    .today = _("today"),
    .sale = _("sale weight"),
    .sale_day = sale_day,
    .lost = _("fish lost"),
    .not_counted = _("weighing not counted"),
    .factor = stead_quantity_from_base (0.001, weight_unit (answer)),
  };
  stead_growth_chart_layout (cr, &answer->series, &words, style, width, height, &layout);
  stead_growth_chart_paint (cr, &answer->series, &words, style, &layout);
  if ((int) width == gtk_widget_get_width (GTK_WIDGET (self->chart)))
    self->layout = layout;
}

/* The weighing under the pointer, else the day. */
static char *
chart_hint (double   x,
            double   y,
            gpointer data)
{
  SteadFishView *self = data;
  const SteadGrowthSeries *series;
  int mark, step;

  if (self->answer == NULL)
    return NULL;
  series = &self->answer->series;
  mark = stead_growth_chart_nearest_mark (&self->layout, series, x);
  if (mark >= 0 && fabs (stead_growth_chart_x (&self->layout, series->marks[mark].day) - x) <= NEAR_MARK)
    return stead_fish_text_mark (self->answer, &series->marks[mark]);
  step = stead_growth_chart_nearest_step (&self->layout, series, x);
  return step < 0 ? NULL : stead_fish_text_step (self->answer, &series->steps[step]);
}

/* The first day that is to come, counted among the steps. */
static int
first_ahead (const SteadGrowthSeries *series)
{
  for (gsize i = 0; i < series->n_steps; i++)
    if (series->today != STEAD_DAY_NONE && series->steps[i].day > series->today)
      return (int) i;
  return (int) series->n_steps;
}

/* From weighing to weighing, then week by week ahead. */
static char *
chart_step (int      index,
            double  *x,
            double  *y,
            gpointer data)
{
  SteadFishView *self = data;
  const SteadGrowthSeries *series;
  int n_marks, step;

  if (self->answer == NULL || index < 0)
    return NULL;
  series = &self->answer->series;
  n_marks = (int) series->n_marks;
  if (index < n_marks)
    {
      *x = stead_growth_chart_x (&self->layout, series->marks[index].day);
      *y = stead_growth_chart_y (&self->layout, series->marks[index].mean_g);
      return stead_fish_text_mark (self->answer, &series->marks[index]);
    }
  step = first_ahead (series) + index - n_marks;
  if (step >= (int) series->n_steps)
    return NULL;
  *x = stead_growth_chart_x (&self->layout, series->steps[step].day);
  *y = stead_growth_chart_y (&self->layout, series->steps[step].likely_g);
  return stead_fish_text_step (self->answer, &series->steps[step]);
}

/* --- the figures -------------------------------------------------------------------- */

static char *
mass_text (SteadFishView *self,
           double         kg)
{
  return isnan (kg) ? NULL : stead_quantity_format (kg, stead_unit_default (STEAD_DIMENSION_MASS, self->units));
}

static char *
number_text (double number,
             int    digits)
{
  return isnan (number) ? NULL : stead_number_format (number, digits);
}

static char *
alive_text (const SteadFishAnswer *answer)
{
  g_autofree char *alive = stead_number_format ((double) answer->alive, 0);
  g_autofree char *came = stead_number_format ((double) (answer->group->stocked + answer->so_far.moved_in), 0);

  /* Translators: fish alive, fish that came: "96 of 100" */
  return g_strdup_printf (C_("fish alive", "%s of %s"), alive, came);
}

static char *
percent_text (double frac)
{
  g_autofree char *number = NULL;

  if (isnan (frac))
    return NULL;
  number = stead_number_format (frac * 100, 0);
  /* Translators: so many of 100. */
  return g_strdup_printf (_("%s %%"), number);
}

static void
show_harvest (SteadFishView *self)
{
  const SteadFishAnswer *answer = self->answer;

  if (answer->sale_day == STEAD_DAY_NONE)
    return;
  stead_figures_add (self->figures, _("Fish to harvest then"), number_text (answer->harvest_fish.likely, 0));
  stead_figures_add (self->figures, _("Their weight, alive"), mass_text (self, answer->harvest_kg.likely));
  for (guint i = 0; i < answer->dressed->len; i++)
    {
      const SteadFishDressed *dressed = &g_array_index (answer->dressed, SteadFishDressed, i);
      /* Translators: a weight of the harvest, by how it is cut: "lean fillets". */
      g_autofree char *name = g_strdup_printf (_("As %s"), stead_fish_cut_name (dressed->cut));

      stead_figures_add (self->figures, name, mass_text (self, dressed->kg));
    }
}

/* Of the fish as they are now. */
static const SteadUnit *
present_unit (const SteadFishAnswer *answer)
{
  return stead_fish_weight_unit (isnan (answer->mean_g.likely) ? 0 : answer->mean_g.likely, answer->farm->units);
}

static void
show_figures (SteadFishView *self)
{
  const SteadFishAnswer *answer = self->answer;
  GtkGrid *grid = self->figures;

  stead_figures_clear (grid);
  stead_figures_add (grid, _("Fish alive"), alive_text (answer));
  stead_figures_add (grid, _("Weight of one"), stead_fish_text_range (&answer->mean_g, present_unit (answer)));
  stead_figures_add (grid, _("Spread of single fish"), percent_text (answer->cv_frac));
  stead_figures_add (grid, _("Weight of all"), mass_text (self, answer->biomass_kg));
  stead_figures_add (grid, _("Ready for sale today"), percent_text (answer->share_ready));
  stead_figures_add (grid, _("Fish in the tank"), isnan (answer->density_kg_m3) ? NULL
                     : stead_fish_density_text (answer->density_kg_m3, self->units));
  stead_figures_add (grid, _("Feed on hand"), mass_text (self, answer->feed_on_hand_kg));
  stead_figures_add (grid, _("Feed for one of gain"), number_text (answer->fcr, 2));
  stead_figures_add (grid, _("Condition factor"), number_text (answer->condition, 2));
  stead_figures_add (grid, _("Cost in, so far"), stead_money_format (answer->cost_in_cents, answer->farm->currency));
  show_harvest (self);
}

/* --- what can be done -------------------------------------------------------------------- */

static void
record_cb (SteadFishView *self)
{
  stead_fish_form_record (self->form);
}

static void
weigh_cb (SteadFishView *self)
{
  if (self->answer != NULL)
    stead_weighing_dialog_show (GTK_WIDGET (self), self->desk, self->answer->group->batch.id, 0);
}

static void
move_cb (SteadFishView *self)
{
  if (self->answer != NULL)
    stead_fish_move_dialog_show (GTK_WIDGET (self), self->desk, self->answer->group->batch.id);
}

static gboolean
save_group_act (SteadStore *store,
                gpointer    data,
                GError    **error)
{
  return stead_fish_repo_save (store, data, error);
}

/* The purge begins, or is called off, today; the strip below offers to undo it. */
static void
purge_cb (SteadFishView *self)
{
  SteadStore *store = stead_desk_get_store (self->desk);
  g_autoptr(SteadFish) group = NULL;
  g_autoptr(GError) error = NULL;
  g_autofree char *step = NULL;
  gboolean begins;

  if (self->answer == NULL)
    return;
  group = stead_fish_repo_get (store, self->answer->group->batch.id, &error);
  if (group != NULL)
    {
      begins = group->purge_from == STEAD_DAY_NONE;
      group->purge_from = begins ? stead_store_get_today (store) : STEAD_DAY_NONE;
      step = g_strdup_printf (begins ? _("start of the purge of %s") : _("end of the purge of %s"), group->batch.name);
      if (stead_desk_act (self->desk, step, save_group_act, group, &error))
        return;
    }
  stead_desk_say (self->desk, error->message, FALSE);
}

/* --- showing a group ---------------------------------------------------------------------- */

static void
view_cb (SteadFishView *self)
{
  static const char * const names[] = { "chart", "weeks", "log", "weighings", "plan" };
  GtkToggleButton *buttons[] = { self->chart_button, self->weeks_button, self->log_button, self->weighings_button,
                                 self->plan_button };

  for (gsize i = 0; i < G_N_ELEMENTS (buttons); i++)
    if (gtk_toggle_button_get_active (buttons[i]))
      gtk_stack_set_visible_child_name (self->views, names[i]);
}

static void
show_chart (SteadFishView *self)
{
  const SteadFishAnswer *answer = self->answer;
  g_autofree char *plain = stead_words_plain (answer->sentence);
  g_autofree char *file = g_strdup_printf (_("Growth of %s"), answer->group->batch.name);

  stead_chart_area_set_currency (self->chart, answer->farm->currency);
  stead_chart_area_set_file_name (self->chart, file);
  stead_chart_area_describe (self->chart, _("Chart of the weight of a fish over time"), plain);
  gtk_widget_queue_draw (GTK_WIDGET (self->chart));
}

static void
show_answer (SteadFishView *self)
{
  SteadFishAnswer *answer = self->answer;
  const SteadBatch *batch = &answer->group->batch;
  g_autoptr(GPtrArray) whys = stead_fish_answer_whys (answer);

  self->units = answer->farm->units;
  gtk_label_set_markup (self->sentence, answer->sentence);
  stead_ui_tell (self->caution, answer->caution);
  stead_ui_tell (self->rule, answer->rule);
  stead_fish_form_show (self->form, self->desk, answer);
  stead_log_view_show (self->log, self->desk, &stead_log_fish, batch->id, batch->name);
  stead_log_view_show (self->weighings, self->desk, &stead_log_weighings, batch->id, batch->name);
  stead_fish_moves_show (self->moves, self->desk, batch->id);
  stead_batch_panel_show (self->plan, batch->id);
  stead_why_box_set (self->whys, whys);
  show_figures (self);
  stead_fish_weeks_show (self->weeks, answer);
  gtk_button_set_label (self->purge, answer->group->purge_from == STEAD_DAY_NONE ? _("Start the purge")
                                                                                : _("Call the purge off"));
  gtk_widget_set_visible (GTK_WIDGET (self->record), batch->ended_on == STEAD_DAY_NONE);
  gtk_widget_set_visible (self->actions, batch->ended_on == STEAD_DAY_NONE);
  show_chart (self);
}

void
stead_fish_view_show (SteadFishView *self,
                      gint64         fish_id)
{
  g_autoptr(GError) error = NULL;

  g_return_if_fail (STEAD_IS_FISH_VIEW (self));

  g_clear_pointer (&self->answer, stead_fish_answer_free);
  self->answer = stead_fish_answer_new (stead_desk_get_store (self->desk), fish_id, &error);
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
stead_fish_view_focus (SteadFishView *self)
{
  g_return_if_fail (STEAD_IS_FISH_VIEW (self));
  stead_fish_form_focus (self->form);
}

static void
stead_fish_view_dispose (GObject *object)
{
  SteadFishView *self = STEAD_FISH_VIEW (object);

  if (self->chart != NULL)
    stead_chart_area_set_paint (self->chart, NULL, NULL, NULL);
  gtk_widget_dispose_template (GTK_WIDGET (self), STEAD_TYPE_FISH_VIEW);
  g_clear_pointer (&self->answer, stead_fish_answer_free);
  g_clear_object (&self->desk);
  G_OBJECT_CLASS (stead_fish_view_parent_class)->dispose (object);
}

#define BIND(child) gtk_widget_class_bind_template_child (widget_class, SteadFishView, child)

static void
stead_fish_view_class_init (SteadFishViewClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  g_type_ensure (STEAD_TYPE_WHY_BOX);
  g_type_ensure (STEAD_TYPE_CHART_AREA);
  g_type_ensure (STEAD_TYPE_FISH_FORM);
  g_type_ensure (STEAD_TYPE_FISH_MOVES);
  g_type_ensure (STEAD_TYPE_LOG_VIEW);
  g_type_ensure (STEAD_TYPE_BATCH_PANEL);
  G_OBJECT_CLASS (klass)->dispose = stead_fish_view_dispose;
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_template_from_resource (widget_class, RESOURCE);
  BIND (content);
  BIND (cards);
  BIND (actions);
  BIND (sentence);
  BIND (caution);
  BIND (rule);
  BIND (views);
  BIND (figures);
  BIND (whys);
  BIND (form);
  BIND (moves);
  BIND (log);
  BIND (weighings);
  BIND (chart);
  BIND (weeks_slot);
  BIND (purge);
  BIND (record);
  BIND (chart_button);
  BIND (weeks_button);
  BIND (log_button);
  BIND (weighings_button);
  BIND (plan_button);
  BIND (plan);
  gtk_widget_class_bind_template_callback (widget_class, view_cb);
  gtk_widget_class_bind_template_callback (widget_class, record_cb);
  gtk_widget_class_bind_template_callback (widget_class, weigh_cb);
  gtk_widget_class_bind_template_callback (widget_class, move_cb);
  gtk_widget_class_bind_template_callback (widget_class, purge_cb);
}

static void
stead_fish_view_init (SteadFishView *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  stead_ui_hush_stack (self->views);
  self->weeks = STEAD_TABLE (stead_fish_weeks_new (&self->units));
  gtk_box_append (self->weeks_slot, GTK_WIDGET (self->weeks));
  stead_chart_area_set_paint (self->chart, paint_chart, chart_hint, self);
  stead_chart_area_set_step (self->chart, chart_step);
  view_cb (self);
}

GtkWidget *
stead_fish_view_new (SteadDesk *desk)
{
  SteadFishView *self = g_object_new (STEAD_TYPE_FISH_VIEW, NULL);

  self->desk = g_object_ref (desk);
  stead_batch_panel_set_desk (self->plan, desk);
  return GTK_WIDGET (self);
}
