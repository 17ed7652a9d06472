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

/* --- the weeks as a table ---------------------------------------------------- */

/* Weeks to come that the table shows above those that were logged. */
#define WEEKS_AHEAD 12

typedef struct
{
  SteadLayWeek  week;
  gboolean      is_ahead;
  SteadBand     eggs;      /* if it is */
  const char   *remark;    /* (nullable): belongs to the answer or is translated */
} WeekRow;

static const WeekRow *
row_of (gconstpointer item)
{
  return stead_row_get ((gpointer) item);
}

static const SteadLayWeek *
row_week (gconstpointer item)
{
  return &row_of (item)->week;
}

static char *
week_text (gpointer item,
           gpointer data)
{
  return stead_day_format (row_week (item)->first_day, STEAD_DAY_STYLE_SHORT);
}

static char *
age_text (gpointer item,
          gpointer data)
{
  return stead_number_format (floor (row_week (item)->age_weeks), 0);
}

/* "138 to 163" */
static char *
range_text (double low,
            double high)
{
  g_autofree char *from = stead_number_format (rint (low), 0);
  g_autofree char *to = stead_number_format (rint (high), 0);

  /* Translators: the least and the most of something. */
  return g_strdup_printf (C_("range", "%s to %s"), from, to);
}

static char *
eggs_text (gpointer item,
           gpointer data)
{
  const WeekRow *row = row_of (item);

  return row->is_ahead ? range_text (row->eggs.low, row->eggs.high)
                       : stead_number_format ((double) row->week.eggs, 0);
}

static double
row_frac (const WeekRow *row)
{
  return stead_flock_hen_day_frac (row->is_ahead ? (gint64) rint (row->eggs.likely) : row->week.eggs,
                                   row->week.hen_days);
}

static char *
rate_text (gpointer item,
           gpointer data)
{
  const WeekRow *row = row_of (item);
  double frac = row_frac (row);

  return isnan (frac) ? g_strdup ("–") : stead_number_format (frac * 100, row->is_ahead ? 0 : 1);
}

/* Nothing is forecast of cracks, losses and feed. */
static char *
count_or_nothing (const WeekRow *row,
                  gint64         count)
{
  return row->is_ahead ? g_strdup ("") : stead_number_format ((double) count, 0);
}

static char *
cracked_text (gpointer item,
              gpointer data)
{
  return count_or_nothing (row_of (item), row_week (item)->cracked);
}

static char *
deaths_text (gpointer item,
             gpointer data)
{
  return count_or_nothing (row_of (item), row_week (item)->deaths);
}

static char *
feed_text (gpointer item,
           gpointer data)
{
  SteadFlockView *self = data;
  double kg = row_week (item)->feed_kg;

  if (row_of (item)->is_ahead)
    return g_strdup ("");
  return kg > 0 && self->answer != NULL
         ? stead_quantity_format (kg, feed_unit (self->answer->farm)) : g_strdup ("–");
}

static char *
remark_text (gpointer item,
             gpointer data)
{
  const char *remark = row_of (item)->remark;

  return g_strdup (remark != NULL ? remark : "");
}

static int
compare_rate (gconstpointer a,
              gconstpointer b,
              gpointer      data)
{
  double p = row_frac (row_of (a)), q = row_frac (row_of (b));

  return (p > q) - (p < q);
}

static int
compare_week (gconstpointer a,
              gconstpointer b,
              gpointer      data)
{
  SteadDay x = row_week (a)->first_day, y = row_week (b)->first_day;

  return (x > y) - (x < y);
}

static void
build_weeks (SteadFlockView *self)
{
  GtkWidget *table = stead_table_new (_("Weeks of the flock"));

  self->weeks = STEAD_TABLE (table);
  stead_table_add_column (self->weeks, _("Week of"), FALSE, FALSE, week_text, NULL, compare_week, self);
  stead_table_add_column (self->weeks, _("Age, weeks"), TRUE, FALSE, age_text, NULL, compare_week, self);
  stead_table_add_column (self->weeks, _("Eggs"), TRUE, FALSE, eggs_text, NULL, NULL, self);
  stead_table_add_column (self->weeks, _("From 100 birds"), TRUE, FALSE, rate_text, NULL, compare_rate, self);
  stead_table_add_column (self->weeks, _("Cracked"), TRUE, FALSE, cracked_text, NULL, NULL, self);
  stead_table_add_column (self->weeks, _("Lost"), TRUE, FALSE, deaths_text, NULL, NULL, self);
  stead_table_add_column (self->weeks, _("Feed"), TRUE, FALSE, feed_text, NULL, NULL, self);
  stead_table_add_column (self->weeks, _("Remark"), FALSE, TRUE, remark_text, NULL, NULL, self);
  stead_table_set_empty (self->weeks, _("Weeks appear here once eggs are recorded."));
  gtk_widget_set_hexpand (table, TRUE);
  gtk_box_append (self->weeks_slot, table);
}

static const char *
remark_of (const SteadFlockAnswer *answer,
           guint                   week)
{
  for (gsize i = 0; i < answer->series.n_notes; i++)
    if (answer->series.notes[i].far_off && answer->series.notes[i].first == week)
      return _("far off");
  return g_array_index (answer->weeks, SteadLayWeek, week).left_out ? _("left out") : NULL;
}

static void
add_weeks_ahead (const SteadFlockAnswer *answer,
                 GPtrArray              *rows)
{
  for (guint i = MIN (answer->ahead->len, WEEKS_AHEAD); i-- > 0;)
    {
      const SteadLayAhead *ahead = &g_array_index (answer->ahead, SteadLayAhead, i);
      WeekRow row = { .is_ahead = TRUE, .eggs = ahead->eggs,
                      .remark = answer->is_learned ? _("forecast") : _("expected") };

      row.week.first_day = stead_lay_text_ahead_day (answer, ahead);
      row.week.age_weeks = ahead->age_weeks;
      row.week.hen_days = 7 * ahead->hens;
      g_ptr_array_add (rows, g_memdup2 (&row, sizeof row));
    }
}

/* What is to come first, then the newest week, as the log has it. */
static void
show_weeks (SteadFlockView *self)
{
  g_autoptr(GPtrArray) rows = g_ptr_array_new ();
  g_autoptr(GListModel) model = NULL;

  add_weeks_ahead (self->answer, rows);
  for (guint i = self->answer->weeks->len; i-- > 0;)
    {
      WeekRow row = { .week = g_array_index (self->answer->weeks, SteadLayWeek, i),
                      .remark = remark_of (self->answer, i) };

      g_ptr_array_add (rows, g_memdup2 (&row, sizeof row));
    }
  model = stead_rows_from_array (g_steal_pointer (&rows), g_free);
  stead_table_set_model (self->weeks, model);
}

/* --- the figures ------------------------------------------------------------- */

static void
add_figure (SteadFlockView *self,
            int             row,
            const char     *name,
            char           *value)   /* (transfer full) */
{
  GtkWidget *left = gtk_label_new (name), *right = gtk_label_new (value);

  gtk_label_set_xalign (GTK_LABEL (left), 0);
  gtk_label_set_xalign (GTK_LABEL (right), 1);
  gtk_label_set_wrap (GTK_LABEL (left), TRUE);
  gtk_widget_set_hexpand (left, TRUE);
  gtk_widget_add_css_class (left, "soft");
  gtk_widget_add_css_class (right, "figure");
  gtk_widget_add_css_class (right, "strong");
  gtk_grid_attach (self->figures, left, 0, row, 1, 1);
  gtk_grid_attach (self->figures, right, 1, row, 1, 1);
  g_free (value);
}

/* What is not known yet is a dash. */
static char *
mass_or_dash (double           kg,
              const SteadUnit *unit)
{
  return isnan (kg) ? g_strdup ("–") : stead_quantity_format (kg, unit);
}

static char *
number_or_dash (double number)
{
  return isnan (number) ? g_strdup ("–") : stead_number_format (number, 1);
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
  GtkWidget *child;
  int row = 0;

  while ((child = gtk_widget_get_first_child (GTK_WIDGET (self->figures))) != NULL)
    gtk_grid_remove (self->figures, child);
  add_figure (self, row++, answer->flock->species == STEAD_SPECIES_HEN ? _("Hens alive") : _("Birds alive"),
              alive_text (answer));
  add_figure (self, row++, _("Dozens collected"), stead_number_format ((double) answer->so_far.eggs / 12, 0));
  add_figure (self, row++, _("Feed for a dozen"), mass_or_dash (answer->feed_per_dozen_kg, mass));
  add_figure (self, row++, _("Feed on hand"), stead_quantity_format (answer->feed_on_hand_kg, mass));
  add_figure (self, row++, _("Cost in, so far"), stead_money_format (answer->cost_in_cents, answer->farm->currency));
  add_figure (self, row++, _("Dozens to expect in 7 days"), number_or_dash (answer->next_dozens));
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

static void
add_house_line (SteadFlockView       *self,
                const SteadHouseLine *line,
                int                  *row)
{
  GtkWidget *name = gtk_label_new (line->name), *text = gtk_label_new (line->text);

  gtk_label_set_xalign (GTK_LABEL (name), 0);
  gtk_label_set_xalign (GTK_LABEL (text), 1);
  gtk_label_set_wrap (GTK_LABEL (name), TRUE);
  gtk_label_set_wrap (GTK_LABEL (text), TRUE);
  gtk_label_set_justify (GTK_LABEL (text), GTK_JUSTIFY_RIGHT);
  gtk_widget_set_hexpand (text, TRUE);
  gtk_widget_add_css_class (name, "soft");
  gtk_widget_add_css_class (text, line->state == STEAD_HOUSE_SHORT ? "warn" : "figure");
  gtk_grid_attach (self->house, name, 0, *row, 1, 1);
  gtk_grid_attach (self->house, text, 1, (*row)++, 1, 1);
  if (line->what != NULL)
    {
      GtkWidget *what = gtk_label_new (line->what);

      gtk_label_set_xalign (GTK_LABEL (what), 0);
      gtk_label_set_wrap (GTK_LABEL (what), TRUE);
      gtk_widget_add_css_class (what, "small");
      gtk_grid_attach (self->house, what, 0, (*row)++, 2, 1);
    }
}

/* The house against what its birds need, and why. */
static void
show_house (SteadFlockView *self,
            GPtrArray      *whys)
{
  const SteadFlockAnswer *answer = self->answer;
  g_autoptr(SteadHouseAnswer) house = NULL;
  gboolean shown;
  SteadWhy *why;
  GtkWidget *child;
  int row = 0;

  while ((child = gtk_widget_get_first_child (GTK_WIDGET (self->house))) != NULL)
    gtk_grid_remove (self->house, child);
  if (answer->flock->ended_on == STEAD_DAY_NONE && answer->alive > 0)
    house = stead_house_answer_new (stead_desk_get_store (self->desk), answer->flock, answer->alive,
                                    answer->age_weeks, answer->farm->units, NULL);
  shown = house != NULL;
  gtk_widget_set_visible (self->house_title, shown);
  gtk_widget_set_visible (GTK_WIDGET (self->house), shown && house->lines->len > 0);
  gtk_widget_set_visible (GTK_WIDGET (self->house_caution), shown);
  if (!shown)
    return;
  for (guint i = 0; i < house->lines->len; i++)
    add_house_line (self, house->lines->pdata[i], &row);
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

  gtk_label_set_markup (self->sentence, answer->sentence);
  gtk_label_set_text (self->caution, answer->caution != NULL ? answer->caution : "");
  gtk_widget_set_visible (GTK_WIDGET (self->caution), answer->caution != NULL);
  gtk_label_set_text (self->fit_note, answer->fit_note != NULL ? answer->fit_note : "");
  gtk_widget_set_visible (GTK_WIDGET (self->fit_note), answer->fit_note != NULL);
  stead_day_form_show (self->form, self->desk, answer->flock);
  stead_log_view_show (self->log, self->desk, &stead_log_flock, answer->flock->id, answer->flock->name);
  stead_egg_view_show (self->eggs, self->desk, answer->flock->id);
  stead_batch_panel_show (self->plan, answer->flock->id);
  show_house (self, whys);
  stead_why_box_set (self->whys, whys);
  view_cb (self);
  show_figures (self);
  show_weeks (self);
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
  gtk_widget_class_bind_template_child (widget_class, SteadFlockView, content);
  gtk_widget_class_bind_template_child (widget_class, SteadFlockView, cards);
  gtk_widget_class_bind_template_child (widget_class, SteadFlockView, sentence);
  gtk_widget_class_bind_template_child (widget_class, SteadFlockView, caution);
  gtk_widget_class_bind_template_child (widget_class, SteadFlockView, view_title);
  gtk_widget_class_bind_template_child (widget_class, SteadFlockView, fit_note);
  gtk_widget_class_bind_template_child (widget_class, SteadFlockView, views);
  gtk_widget_class_bind_template_child (widget_class, SteadFlockView, figures);
  gtk_widget_class_bind_template_child (widget_class, SteadFlockView, whys);
  gtk_widget_class_bind_template_child (widget_class, SteadFlockView, form);
  gtk_widget_class_bind_template_child (widget_class, SteadFlockView, log);
  gtk_widget_class_bind_template_child (widget_class, SteadFlockView, chart);
  gtk_widget_class_bind_template_child (widget_class, SteadFlockView, weeks_slot);
  gtk_widget_class_bind_template_child (widget_class, SteadFlockView, chart_button);
  gtk_widget_class_bind_template_child (widget_class, SteadFlockView, weeks_button);
  gtk_widget_class_bind_template_child (widget_class, SteadFlockView, log_button);
  gtk_widget_class_bind_template_child (widget_class, SteadFlockView, eggs_button);
  gtk_widget_class_bind_template_child (widget_class, SteadFlockView, eggs);
  gtk_widget_class_bind_template_child (widget_class, SteadFlockView, plan);
  gtk_widget_class_bind_template_child (widget_class, SteadFlockView, plan_button);
  gtk_widget_class_bind_template_child (widget_class, SteadFlockView, house);
  gtk_widget_class_bind_template_child (widget_class, SteadFlockView, house_title);
  gtk_widget_class_bind_template_child (widget_class, SteadFlockView, house_caution);
  gtk_widget_class_bind_template_callback (widget_class, view_cb);
}

static void
stead_flock_view_init (SteadFlockView *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  stead_ui_hush_stack (self->views);
  build_weeks (self);
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
