/* stead-cost-card.c - "What one dozen costs": one bar, its parts, the sum.
 *
 * The bar and the lines bear the same patterns, so that one finds the other
 * without color.
 */
#include "config.h"

#include "app/price/stead-cost-card.h"

#include <glib/gi18n-lib.h>

#include "app/price/stead-cost-line.h"
#include "app/price/stead-knob-words.h"
#include "app/price/stead-sum-row.h"
#include "app/stead-chart-style.h"
#include "app/stead-ui.h"
#include "core/stead-money.h"
#include "draw/stead-cost-bar.h"

#define BAR_HEIGHT 24

struct _SteadCostCard
{
  GtkWidget              parent_instance;

  const SteadCostAnswer *answer;   /* (nullable), not owned */

  GtkWidget             *box;
  GtkWidget             *head;
  GtkWidget             *heading;
  GtkWidget             *span;     /* the days that the figures are of */
  GtkWidget             *bar;
  GtkWidget             *lines[STEAD_COST_LABOR];
  GtkWidget             *sums[3];  /* total, without gifts, with labor */
  GtkWidget             *caution;
};

enum { TOTAL, CASH, LABOR, N_SUMS };

G_DEFINE_FINAL_TYPE (SteadCostCard, stead_cost_card, GTK_TYPE_WIDGET)

static void
draw_bar_cb (GtkDrawingArea *area,
             cairo_t        *cr,
             int             width,
             int             height,
             gpointer        data)
{
  SteadCostCard *self = data;
  SteadDrawStyle style;
  SteadCostBarLayout layout;

  if (self->answer == NULL)
    return;
  stead_chart_style (GTK_WIDGET (area), self->answer->farm->currency, &style);
  stead_cost_bar_layout (&self->answer->sheet, width, height, &layout);
  stead_cost_bar_paint (cr, &style, &layout);
}

static gboolean
has_gifts (const SteadCostSheet *sheet)
{
  for (int kind = 0; kind < STEAD_COST_LABOR; kind++)
    if (sheet->parts[kind].gift_cents > 0)
      return TRUE;
  return FALSE;
}

static void
show_sums (SteadCostCard *self)
{
  const SteadCostAnswer *answer = self->answer;
  const SteadCostSheet *sheet = &answer->sheet;
  const char *currency = answer->farm->currency;
  g_autofree char *rate = stead_money_format (answer->farm->labor_cents_hour, currency);
  /* Translators: %s is money for one hour: "With student labor at $9.00/h". */
  g_autofree char *labor = g_strdup_printf (_("With student labor at %s/h"), rate);

  stead_sum_row_set (STEAD_SUM_ROW (self->sums[TOTAL]), stead_knob_one_costs (answer->product->pack),
                     sheet->unit_cents, currency, answer->total_why);
  stead_sum_row_set (STEAD_SUM_ROW (self->sums[CASH]), _("Without gifts"), sheet->unit_cash_cents, currency, NULL);
  stead_sum_row_set (STEAD_SUM_ROW (self->sums[LABOR]), labor, sheet->unit_labor_cents, currency,
                     answer->whys[STEAD_COST_LABOR]);
  gtk_widget_set_visible (self->sums[CASH], has_gifts (sheet));
  gtk_widget_set_visible (self->sums[LABOR], sheet->parts[STEAD_COST_LABOR].shown_cents > 0);
}

static void
show_span (SteadCostCard *self)
{
  g_autofree char *from = stead_day_format (self->answer->from, STEAD_DAY_STYLE_MEDIUM);
  g_autofree char *to = stead_day_format (self->answer->to, STEAD_DAY_STYLE_MEDIUM);
  /* Translators: name of a batch, first day, last day. */
  g_autofree char *text = g_strdup_printf (_("%s, %s to %s"), stead_cost_answer_source (self->answer), from, to);

  gtk_label_set_text (GTK_LABEL (self->span), text);
}

static void
stead_cost_card_dispose (GObject *object)
{
  SteadCostCard *self = STEAD_COST_CARD (object);

  self->answer = NULL;
  stead_ui_drop_children (GTK_WIDGET (self));
  G_OBJECT_CLASS (stead_cost_card_parent_class)->dispose (object);
}

static void
stead_cost_card_class_init (SteadCostCardClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = stead_cost_card_dispose;
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
}

static GtkWidget *
make_label (const char *css_class,
            float       xalign)
{
  GtkWidget *label = gtk_label_new (NULL);

  gtk_label_set_xalign (GTK_LABEL (label), xalign);
  gtk_label_set_wrap (GTK_LABEL (label), xalign == 0);
  gtk_widget_add_css_class (label, css_class);
  return label;
}

static void
stead_cost_card_init (SteadCostCard *self)
{
  self->head = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6);
  self->heading = make_label ("heading", 0);
  gtk_widget_set_hexpand (self->heading, TRUE);
  gtk_box_append (GTK_BOX (self->head), self->heading);
  self->span = make_label ("soft", 0);
  gtk_widget_add_css_class (self->span, "small");
  self->bar = gtk_drawing_area_new ();
  gtk_drawing_area_set_content_height (GTK_DRAWING_AREA (self->bar), BAR_HEIGHT);
  gtk_drawing_area_set_draw_func (GTK_DRAWING_AREA (self->bar), draw_bar_cb, self, NULL);
  self->caution = make_label ("caution", 0);
  self->box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);
  gtk_widget_add_css_class (self->box, "cost");
  gtk_widget_set_parent (self->box, GTK_WIDGET (self));
}

GtkWidget *
stead_cost_card_new (SteadDesk *desk)
{
  SteadCostCard *self;
  GtkWidget *sheet = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  GtkBox *box;

  g_return_val_if_fail (STEAD_IS_DESK (desk), NULL);

  self = g_object_new (STEAD_TYPE_COST_CARD, NULL);
  box = GTK_BOX (self->box);
  gtk_box_append (box, self->head);
  gtk_box_append (box, self->span);
  gtk_box_append (box, self->bar);
  for (int kind = 0; kind < STEAD_COST_LABOR; kind++)
    {
      self->lines[kind] = stead_cost_line_new (desk, (SteadCostKind) kind);
      gtk_box_append (GTK_BOX (sheet), self->lines[kind]);
    }
  for (int i = 0; i < N_SUMS; i++)
    {
      self->sums[i] = stead_sum_row_new (i == TOTAL);
      gtk_box_append (GTK_BOX (sheet), self->sums[i]);
    }
  gtk_box_append (box, sheet);
  gtk_box_append (box, self->caution);
  return GTK_WIDGET (self);
}

void
stead_cost_card_set (SteadCostCard         *self,
                     const SteadCostAnswer *answer)
{
  g_autofree char *plain = NULL;

  g_return_if_fail (STEAD_IS_COST_CARD (self));

  self->answer = answer;
  for (int kind = 0; kind < STEAD_COST_LABOR; kind++)
    stead_cost_line_set (STEAD_COST_LINE (self->lines[kind]), answer);
  gtk_widget_queue_draw (self->bar);
  if (answer == NULL)
    return;
  plain = stead_words_plain (answer->sentence);
  stead_ui_name (self->bar, plain);
  gtk_label_set_text (GTK_LABEL (self->heading), stead_knob_what_costs (answer->product->pack));
  show_span (self);
  show_sums (self);
  gtk_label_set_text (GTK_LABEL (self->caution), answer->caution != NULL ? answer->caution : "");
  gtk_widget_set_visible (self->caution, answer->caution != NULL);
}

void
stead_cost_card_add_button (SteadCostCard *self,
                            GtkWidget     *button)
{
  g_return_if_fail (STEAD_IS_COST_CARD (self) && GTK_IS_WIDGET (button));

  gtk_box_append (GTK_BOX (self->head), button);
}
