/* stead-steps-view.c - from feed to the pack on the table, and what changed since last month.
 *
 * Left the sheet, whose lines open to their entries; right the same as steps.
 */
#include "config.h"

#include "app/price/stead-steps-view.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "answer/stead-cost-steps.h"
#include "app/price/stead-cost-card.h"
#include "app/price/stead-overhead-card.h"
#include "app/price/stead-knob-words.h"
#include "app/stead-why-box.h"
#include "core/stead-money.h"
#include "draw/stead-bar-chart.h"
#include "draw/stead-cost-bar.h"

#define MOST_STEPS (STEAD_N_COST_KINDS + 2)
#define MOST_CHANGES (STEAD_N_CHANGE_KINDS + 2)

/* Bars with texts of their own. */
typedef struct
{
  SteadBar       bars[MAX (MOST_STEPS, MOST_CHANGES)];
  char          *values[MAX (MOST_STEPS, MOST_CHANGES)];
  char          *abouts[MAX (MOST_STEPS, MOST_CHANGES)];   /* what is said of each */
  int            n;
  SteadBarLayout layout;
} Stack;

struct _SteadStepsView
{
  SteadView       parent_instance;

  SteadCostSteps *answer;   /* (nullable) */
  GtkWidget      *card, *card_box, *overhead;
  SteadPlot      *plots[2];
  SteadWhyBox    *whys;
  GtkWidget      *change;
  Stack           stacks[2];
};

G_DEFINE_FINAL_TYPE (SteadStepsView, stead_steps_view, STEAD_TYPE_VIEW)

/* --- the bars ------------------------------------------------------------------------ */

static void
stack_clear (Stack *stack)
{
  for (int i = 0; i < stack->n; i++)
    {
      g_free (stack->values[i]);
      g_free (stack->abouts[i]);
    }
  stack->n = 0;
}

static void
push (SteadStepsView *self,
      Stack          *stack,
      const char     *name,
      double          from,
      double          to,
      SteadRole       role,
      SteadPattern    pattern,
      gboolean        total)
{
  int i = stack->n++;
  g_autofree char *cents = stead_money_format (stead_money_round (to - from), self->answer->cost->farm->currency);

  stack->values[i] = g_strconcat (!total && to > from ? "+" : "", cents, NULL);
  stack->abouts[i] = g_strdup_printf ("%s: %s", name, stack->values[i]);
  stack->bars[i] = (SteadBar) { name, stack->values[i], from, to, role, pattern, total };
}

static void
fill_steps (SteadStepsView *self)
{
  const SteadCostAnswer *cost = self->answer->cost;
  Stack *stack = &self->stacks[0];
  double at = 0;

  stack_clear (stack);
  for (int kind = 0; kind < STEAD_COST_LABOR; kind++)
    {
      double cents = (double) cost->sheet.parts[kind].shown_cents;

      if (!(cost->sheet.parts[kind].total_cents > 0))
        continue;
      push (self, stack, cost->labels[kind], at, at + cents, stead_cost_kind_role (kind), stead_cost_kind_pattern (kind),
            FALSE);
      at += cents;
    }
  push (self, stack, stead_knob_one_costs (cost->product->pack), 0, at, STEAD_ROLE_INK, STEAD_PATTERN_SOLID, TRUE);
  if (cost->sheet.parts[STEAD_COST_LABOR].shown_cents > 0)
    push (self, stack, cost->labels[STEAD_COST_LABOR], at, at + (double) cost->sheet.parts[STEAD_COST_LABOR].shown_cents,
          STEAD_ROLE_CARD, STEAD_PATTERN_CROSS, FALSE);
}

static void
fill_change (SteadStepsView *self)
{
  Stack *stack = &self->stacks[1];
  double at;

  stack_clear (stack);
  if (self->answer->before == NULL)
    return;
  at = (double) self->answer->before->sheet.unit_cents;
  push (self, stack, _("The four weeks before"), 0, at, STEAD_ROLE_SHELL, STEAD_PATTERN_SOLID, TRUE);
  for (int k = 0; k < STEAD_N_CHANGE_KINDS; k++)
    {
      double cents = (double) self->answer->shown[k];

      if (cents == 0)
        continue;
      push (self, stack, stead_change_name (k), at, at + cents, cents > 0 ? STEAD_ROLE_TOMATO : STEAD_ROLE_WATER,
            cents > 0 ? STEAD_PATTERN_RISING : STEAD_PATTERN_FALLING, FALSE);
      g_free (stack->abouts[stack->n - 1]);
      stack->abouts[stack->n - 1] = g_strdup_printf ("%s: %s. %s", stead_change_name (k), stack->values[stack->n - 1],
                                                     stead_change_about (k));
      at += cents;
    }
  push (self, stack, _("The last four weeks"), 0, at, STEAD_ROLE_INK, STEAD_PATTERN_SOLID, TRUE);
}

static SteadBarSeries
series_of (const Stack *stack)
{
  return (SteadBarSeries) { stack->bars, stack->n, TRUE, NAN, NULL };
}

static void
paint_stack (SteadStepsView       *self,
             int                   which,
             cairo_t              *cr,
             const SteadDrawStyle *style,
             double                width,
             double                height)
{
  SteadBarSeries series = series_of (&self->stacks[which]);
  SteadBarLayout layout;

  if (self->answer == NULL || series.n == 0)
    return;
  stead_bar_chart_layout (cr, &series, style, width, height, &layout);
  stead_bar_chart_paint (cr, &series, style, &layout, -1);
  if ((int) width == gtk_widget_get_width (GTK_WIDGET (stead_plot_get_chart (self->plots[which]))))
    self->stacks[which].layout = layout;
}

static char *
hint_stack (Stack  *stack,
            double  y)
{
  SteadBarSeries series = series_of (stack);
  int i = stack->n > 0 ? stead_bar_chart_at (&series, &stack->layout, y) : -1;

  return i >= 0 ? g_strdup (stack->abouts[i]) : NULL;
}

static char *
step_stack (Stack  *stack,
            int     index,
            double *x,
            double *y)
{
  if (index < 0 || index >= stack->n)
    return NULL;
  *x = stack->layout.bars[index].x + stack->layout.bars[index].width / 2;
  *y = stack->layout.bars[index].y;
  return g_strdup (stack->abouts[index]);
}

static void
paint_steps_cb (cairo_t *cr, const SteadDrawStyle *style, double width, double height, gpointer data)
{
  paint_stack (data, 0, cr, style, width, height);
}

static void
paint_change_cb (cairo_t *cr, const SteadDrawStyle *style, double width, double height, gpointer data)
{
  paint_stack (data, 1, cr, style, width, height);
}

static char *
hint_steps_cb (double x, double y, gpointer data)
{
  return hint_stack (&STEAD_STEPS_VIEW (data)->stacks[0], y);
}

static char *
hint_change_cb (double x, double y, gpointer data)
{
  return hint_stack (&STEAD_STEPS_VIEW (data)->stacks[1], y);
}

static char *
step_steps_cb (int index, double *x, double *y, gpointer data)
{
  return step_stack (&STEAD_STEPS_VIEW (data)->stacks[0], index, x, y);
}

static char *
step_change_cb (int index, double *x, double *y, gpointer data)
{
  return step_stack (&STEAD_STEPS_VIEW (data)->stacks[1], index, x, y);
}

/* --- showing --------------------------------------------------------------------------- */

static char *
money (SteadStepsView *self,
       double          cents)
{
  return stead_money_format (stead_money_round (cents), self->answer->cost->farm->currency);
}

static GPtrArray *
step_rows (SteadStepsView *self)
{
  const SteadCostSheet *sheet = &self->answer->cost->sheet;
  GPtrArray *rows = g_ptr_array_new ();

  for (int kind = 0; kind < STEAD_N_COST_KINDS; kind++)
    {
      char **row;

      if (!(sheet->parts[kind].total_cents > 0))
        continue;
      row = g_new0 (char *, 5);
      row[0] = g_strdup (self->answer->cost->labels[kind]);
      row[1] = money (self, (double) sheet->parts[kind].shown_cents);
      row[2] = sheet->unit_cents > 0 && kind != STEAD_COST_LABOR
               ? stead_words_percent ((double) sheet->parts[kind].shown_cents / (double) sheet->unit_cents, 0)
               : g_strdup ("–");
      row[3] = money (self, sheet->parts[kind].total_cents);
      g_ptr_array_add (rows, row);
    }
  return rows;
}

static char *
signed_money (SteadStepsView *self,
              double          cents)
{
  g_autofree char *text = money (self, cents);

  return g_strconcat (stead_money_round (cents) > 0 ? "+" : "", text, NULL);
}

static GPtrArray *
change_rows (SteadStepsView *self)
{
  GPtrArray *rows = g_ptr_array_new ();

  for (guint i = 0; i < self->answer->moves->len; i++)
    {
      const SteadCostMove *move = &g_array_index (self->answer->moves, SteadCostMove, i);
      char **row = g_new0 (char *, STEAD_N_CHANGE_KINDS + 2);

      row[0] = g_strdup (self->answer->cost->labels[move->kind]);
      for (int k = 0; k < STEAD_N_CHANGE_KINDS; k++)
        row[k + 1] = signed_money (self, move->cents[k]);
      g_ptr_array_add (rows, row);
    }
  return rows;
}

static void
stead_steps_view_refresh (SteadView  *view,
                          SteadStore *store,
                          gint64      product_id)
{
  SteadStepsView *self = STEAD_STEPS_VIEW (view);
  SteadDesk *desk = stead_view_get_desk (view);
  g_autoptr(GError) error = NULL;
  g_autoptr(GPtrArray) whys = NULL;
  const char *currency;

  if (self->card == NULL)
    {
      self->card = stead_cost_card_new (desk);
      gtk_widget_add_css_class (self->card, "card");
      gtk_box_append (GTK_BOX (self->card_box), self->card);
      self->overhead = stead_overhead_card_new (desk);
      gtk_box_append (GTK_BOX (self->card_box), self->overhead);
    }
  stead_overhead_card_load (STEAD_OVERHEAD_CARD (self->overhead));
  stead_cost_card_set (STEAD_COST_CARD (self->card), NULL);
  g_clear_pointer (&self->answer, stead_cost_steps_free);
  if (product_id != 0)
    self->answer = stead_cost_steps_new (store, product_id, stead_desk_get_period (desk), &error);
  if (self->answer == NULL)
    {
      stead_view_miss (view, error != NULL ? error->message : _("First make a product under “One product”."));
      return;
    }
  currency = self->answer->cost->farm->currency;
  stead_cost_card_set (STEAD_COST_CARD (self->card), self->answer->cost);
  fill_steps (self);
  fill_change (self);
  stead_view_say (view, self->answer->sentence, self->answer->change);
  stead_plot_show (self->plots[0], self->answer->sentence, currency, step_rows (self));
  stead_plot_show (self->plots[1], self->answer->change, currency, change_rows (self));
  gtk_widget_set_visible (GTK_WIDGET (self->plots[1]), self->answer->before != NULL);
  whys = stead_cost_steps_whys (self->answer);
  stead_why_box_set (self->whys, whys);
}

/* --- widget ------------------------------------------------------------------------------- */

static void
stead_steps_view_dispose (GObject *object)
{
  SteadStepsView *self = STEAD_STEPS_VIEW (object);

  if (self->card != NULL)
    stead_cost_card_set (STEAD_COST_CARD (self->card), NULL);
  self->card = NULL;
  G_OBJECT_CLASS (stead_steps_view_parent_class)->dispose (object);
}

static void
stead_steps_view_finalize (GObject *object)
{
  SteadStepsView *self = STEAD_STEPS_VIEW (object);

  stack_clear (&self->stacks[0]);
  stack_clear (&self->stacks[1]);
  g_clear_pointer (&self->answer, stead_cost_steps_free);
  G_OBJECT_CLASS (stead_steps_view_parent_class)->finalize (object);
}

static void
stead_steps_view_class_init (SteadStepsViewClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = stead_steps_view_dispose;
  G_OBJECT_CLASS (klass)->finalize = stead_steps_view_finalize;
  STEAD_VIEW_CLASS (klass)->refresh = stead_steps_view_refresh;
}

static void
stead_steps_view_init (SteadStepsView *self)
{
  const char *steps[] = { _("Step"), _("For one"), _("Share"), _("In all"), NULL };
  const char *changes[] = { _("Step"), stead_change_name (STEAD_CHANGE_USE), stead_change_name (STEAD_CHANGE_YIELD),
                            stead_change_name (STEAD_CHANGE_VOLUME), stead_change_name (STEAD_CHANGE_PRICE), NULL };

  self->card_box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 12);
  stead_view_add_left (STEAD_VIEW (self), self->card_box);
  self->plots[0] = STEAD_PLOT (stead_plot_new (_("What each step adds, up to the pack on the table"),
                                               _("Cost of one, step by step"), steps));
  stead_plot_set_height (self->plots[0], 250);
  stead_chart_area_set_paint (stead_plot_get_chart (self->plots[0]), paint_steps_cb, hint_steps_cb, self);
  stead_chart_area_set_step (stead_plot_get_chart (self->plots[0]), step_steps_cb);
  self->plots[1] = STEAD_PLOT (stead_plot_new (_("What changed since the four weeks before, and why"),
                                               _("Change of the cost of one, by its reasons"), changes));
  stead_plot_set_height (self->plots[1], 200);
  stead_chart_area_set_paint (stead_plot_get_chart (self->plots[1]), paint_change_cb, hint_change_cb, self);
  stead_chart_area_set_step (stead_plot_get_chart (self->plots[1]), step_change_cb);
  for (int i = 0; i < 2; i++)
    stead_view_add_right (STEAD_VIEW (self), GTK_WIDGET (self->plots[i]));
  stead_view_add_right (STEAD_VIEW (self), stead_why_box_new_folded (&self->whys));
}

GtkWidget *
stead_steps_view_new (void)
{
  return g_object_new (STEAD_TYPE_STEPS_VIEW, NULL);
}
