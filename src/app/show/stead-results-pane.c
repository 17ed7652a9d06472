/* stead-results-pane.c - what was earned together, and each one's share. */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "app/show/stead-results-pane.h"

#include "answer/stead-hours-answer.h"
#include "answer/stead-results-answer.h"
#include "app/keep/stead-pick.h"
#include "app/make/stead-make-parts.h"
#include "app/show/stead-shares-dialog.h"
#include "app/stead-chart-area.h"
#include "app/stead-why-box.h"
#include "core/stead-money.h"
#include "draw/stead-bar-chart.h"
#include "store/stead-cash-repo.h"

/* The least that names and figures need beside each other. */
#define COLUMN_WIDTH 400

struct _SteadResultsPane
{
  SteadPane           parent_instance;

  SteadResultsAnswer *answer;    /* (nullable): what is shown */
  int                 n_bars;
  char               *names[STEAD_MAX_BARS], *values[STEAD_MAX_BARS];
  gint64              cents[STEAD_MAX_BARS];

  SteadPick          *enterprise;
  GtkLabel           *how;
  GtkWidget          *figures, *chart;
  SteadWhyBox        *whys;
};

G_DEFINE_FINAL_TYPE (SteadResultsPane, stead_results_pane, STEAD_TYPE_PANE)

/* --- the chart --------------------------------------------------------------------------- */

static int
make_bars (SteadResultsPane *self,
           SteadBar         *bars)
{
  for (int i = 0; i < self->n_bars; i++)
    {
      gboolean is_loss = self->cents[i] < 0;

      bars[i] = (SteadBar) { self->names[i], self->values[i], 0, (double) self->cents[i],
                             is_loss ? STEAD_ROLE_TOMATO : STEAD_ROLE_WATER,
                             is_loss ? STEAD_PATTERN_RISING : STEAD_PATTERN_SOLID, FALSE };
    }
  return self->n_bars;
}

static void
paint_cb (cairo_t              *cr,
          const SteadDrawStyle *style,
          double                width,
          double                height,
          gpointer              data)
{
  SteadBar bars[STEAD_MAX_BARS];
  SteadBarSeries series = { bars, make_bars (data, bars), FALSE, NAN, NULL };
  SteadBarLayout layout;

  if (series.n == 0)
    return;
  stead_bar_chart_layout (cr, &series, style, width, height, &layout);
  stead_bar_chart_paint (cr, &series, style, &layout, -1);
}

static void
forget_bars (SteadResultsPane *self)
{
  for (guint i = 0; i < STEAD_MAX_BARS; i++)
    {
      g_clear_pointer (&self->names[i], g_free);
      g_clear_pointer (&self->values[i], g_free);
    }
  self->n_bars = 0;
}

/* @name: (transfer full) */
static void
add_bar (SteadResultsPane *self,
         char             *name,
         gint64            cents)
{
  self->names[self->n_bars] = name;
  self->values[self->n_bars] = stead_money_format (cents, self->answer->farm->currency);
  self->cents[self->n_bars++] = cents;
}

/* One bar each; where a class has more people than bars, the last bar is that of all others. */
static void
read_bars (SteadResultsPane *self)
{
  const GPtrArray *shares = self->answer->shares;
  guint n = shares->len > STEAD_MAX_BARS ? STEAD_MAX_BARS - 1 : shares->len;
  gint64 rest = 0;

  forget_bars (self);
  for (guint i = 0; i < n; i++)
    add_bar (self, g_strdup (((const SteadResultShare *) shares->pdata[i])->name),
             ((const SteadResultShare *) shares->pdata[i])->cents);
  for (guint i = n; i < shares->len; i++)
    rest += ((const SteadResultShare *) shares->pdata[i])->cents;
  if (n < shares->len)
    add_bar (self, g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "%u other", "%u others", shares->len - n),
                                    shares->len - n), rest);
}

static void
show_chart (SteadResultsPane *self)
{
  SteadBar bars[STEAD_MAX_BARS];
  SteadBarSeries series = { bars, 0, FALSE, NAN, NULL };
  SteadDrawStyle style;
  g_autoptr(GString) said = g_string_new (NULL);

  read_bars (self);
  for (int i = 0; i < self->n_bars; i++)
    g_string_append_printf (said, "%s%s %s", i > 0 ? ", " : "", self->names[i], self->values[i]);
  series.n = make_bars (self, bars);
  gtk_widget_set_visible (self->chart, series.n > 0);
  stead_chart_area_set_currency (STEAD_CHART_AREA (self->chart), self->answer->farm->currency);
  stead_chart_area_get_style (STEAD_CHART_AREA (self->chart), self->answer->farm->currency, &style);
  if (series.n > 0)
    gtk_widget_set_size_request (self->chart, -1, (int) stead_bar_chart_height (&series, &style));
  stead_chart_area_describe (STEAD_CHART_AREA (self->chart), _("Shares of the result"), said->str);
  gtk_widget_queue_draw (self->chart);
}

/* --- figures ------------------------------------------------------------------------------ */

static void
add_heading (SteadResultsPane *self,
             const char       *text)
{
  gtk_box_append (GTK_BOX (self->figures), stead_make_label (text, "heading"));
}

static void
add_line (SteadResultsPane *self,
          const char       *left,
          const char       *right)
{
  GtkWidget *row = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 12), *name = stead_make_label (left, NULL);

  gtk_widget_set_hexpand (name, TRUE);
  gtk_box_append (GTK_BOX (row), name);
  gtk_box_append (GTK_BOX (row), stead_make_figure (right, NULL));
  gtk_box_append (GTK_BOX (self->figures), row);
}

static void
add_money (SteadResultsPane *self,
           const char       *left,
           gint64            cents)
{
  g_autofree char *text = stead_money_format (cents, self->answer->farm->currency);

  add_line (self, left, text);
}

static void
show_figures (SteadResultsPane *self)
{
  const SteadResultsAnswer *answer = self->answer;
  g_autofree char *hours = stead_hours_words (answer->minutes);

  stead_make_clear (self->figures);
  add_heading (self, _("The group"));
  add_money (self, _("Sold"), answer->sales_cents);
  add_money (self, _("Earned"), answer->net_cents);
  add_money (self, _("Change of what the farm is worth"), answer->worth_change_cents);
  add_line (self, _("Hours worked"), hours);
  if (!isnan (answer->per_hour_cents))
    add_money (self, _("Earned for an hour that was not paid"), stead_money_round (answer->per_hour_cents));
  if (answer->units->len > 0)
    add_heading (self, _("What one unit costs"));
  for (guint i = 0; i < answer->units->len; i++)
    add_line (self, ((SteadResultUnit *) answer->units->pdata[i])->product,
              ((SteadResultUnit *) answer->units->pdata[i])->text);
  if (answer->lines->len > 0)
    add_heading (self, _("Production beside its plan"));
  for (guint i = 0; i < answer->lines->len; i++)
    {
      const SteadResultsLine *line = answer->lines->pdata[i];
      /* Translators: a batch, "Eggs". */
      g_autofree char *left = g_strdup_printf (C_("production", "%1$s: %2$s"), line->batch, line->what);
      /* Translators: what came so far, what was planned. */
      g_autofree char *right = g_strdup_printf (_("%1$s of %2$s"), line->actual, line->planned);

      add_line (self, left, right);
    }
}

/* --- the pane ------------------------------------------------------------------------------- */

static void
share_cb (SteadPane *pane)
{
  SteadResultsPane *self = STEAD_RESULTS_PANE (pane);

  if (self->answer != NULL)
    stead_shares_dialog_show (GTK_WIDGET (pane), stead_pane_get_desk (pane), self->answer->enterprise_id);
}

static void
fill_enterprises (SteadResultsPane *self,
                  SteadStore       *store,
                  gint64            chosen)
{
  g_autoptr(GPtrArray) enterprises = stead_enterprise_repo_list (store, NULL);

  stead_pick_clear (self->enterprise);
  stead_pick_append (self->enterprise, 0, _("The farm as a whole"));
  for (guint i = 0; enterprises != NULL && i < enterprises->len; i++)
    stead_pick_append (self->enterprise, ((SteadEnterprise *) enterprises->pdata[i])->id,
                       ((SteadEnterprise *) enterprises->pdata[i])->name);
  stead_pick_show (self->enterprise, chosen);
}

static void
stead_results_pane_refresh (SteadPane *pane)
{
  SteadResultsPane *self = STEAD_RESULTS_PANE (pane);
  SteadStore *store = stead_pane_get_store (pane);
  gint64 enterprise = stead_pick_get (self->enterprise);
  g_autoptr(GError) error = NULL;
  SteadResultsAnswer *answer;

  fill_enterprises (self, store, enterprise);
  answer = stead_results_answer_new (store, enterprise, &error);
  stead_pane_say (pane, answer != NULL ? answer->sentence : NULL, error);
  if (answer == NULL)
    return;
  g_clear_pointer (&self->answer, stead_results_answer_free);
  self->answer = answer;
  gtk_label_set_text (self->how, answer->how);
  show_figures (self);
  show_chart (self);
  stead_why_box_set (self->whys, answer->whys);
}

static void
chosen_cb (SteadResultsPane *self)
{
  stead_pane_refresh (STEAD_PANE (self), stead_pane_get_desk (STEAD_PANE (self)));
}

static void
stead_results_pane_finalize (GObject *object)
{
  SteadResultsPane *self = STEAD_RESULTS_PANE (object);

  g_clear_pointer (&self->answer, stead_results_answer_free);
  forget_bars (self);
  G_OBJECT_CLASS (stead_results_pane_parent_class)->finalize (object);
}

static void
stead_results_pane_class_init (SteadResultsPaneClass *klass)
{
  G_OBJECT_CLASS (klass)->finalize = stead_results_pane_finalize;
  STEAD_PANE_CLASS (klass)->refresh = stead_results_pane_refresh;
}

/* Two columns where there is room, one below the other where there is not. */
static void
add_column (GtkWidget *flow,
            GtkWidget *column)
{
  GtkWidget *child = gtk_flow_box_child_new ();

  gtk_widget_set_size_request (column, COLUMN_WIDTH, -1);
  gtk_widget_set_valign (column, GTK_ALIGN_START);
  gtk_widget_set_focusable (child, FALSE);
  gtk_flow_box_child_set_child (GTK_FLOW_BOX_CHILD (child), column);
  gtk_flow_box_append (GTK_FLOW_BOX (flow), child);
}

static void
stead_results_pane_init (SteadResultsPane *self)
{
  SteadPane *pane = STEAD_PANE (self);
  GtkWidget *scroller = gtk_scrolled_window_new (), *shares = gtk_box_new (GTK_ORIENTATION_VERTICAL, 12);
  GtkWidget *whole = gtk_box_new (GTK_ORIENTATION_VERTICAL, 18);
  GtkWidget *flow = g_object_new (GTK_TYPE_FLOW_BOX, "selection-mode", GTK_SELECTION_NONE, "max-children-per-line", 2,
                                  "homogeneous", TRUE, "column-spacing", 30, "row-spacing", 18, "valign", GTK_ALIGN_START, NULL);

  self->enterprise = STEAD_PICK (stead_pick_new (_("Part of the farm")));
  gtk_widget_set_halign (GTK_WIDGET (self->enterprise), GTK_ALIGN_START);
  g_signal_connect_swapped (self->enterprise, "changed", G_CALLBACK (chosen_cb), self);
  stead_pane_add_head (pane, GTK_WIDGET (self->enterprise));
  self->how = GTK_LABEL (stead_make_label ("", NULL));
  gtk_label_set_max_width_chars (self->how, 40);   /* or its length alone would take the whole width */
  self->chart = stead_chart_area_new ();
  stead_chart_area_set_paint (STEAD_CHART_AREA (self->chart), paint_cb, NULL, self);
  stead_chart_area_set_file_name (STEAD_CHART_AREA (self->chart), "shares");
  self->figures = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);
  gtk_box_append (GTK_BOX (shares), stead_make_label (_("Each one's share"), "heading"));
  gtk_box_append (GTK_BOX (shares), GTK_WIDGET (self->how));
  gtk_box_append (GTK_BOX (shares), self->chart);
  add_column (flow, self->figures);
  add_column (flow, shares);
  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (scroller), GTK_POLICY_NEVER, GTK_POLICY_AUTOMATIC);
  gtk_box_append (GTK_BOX (whole), flow);
  gtk_box_append (GTK_BOX (whole), stead_why_box_new_folded (&self->whys));
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scroller), whole);
  stead_pane_add_body (pane, scroller);
  stead_pane_add_button (pane, _("Agree on shares…"), G_CALLBACK (share_cb));
}
