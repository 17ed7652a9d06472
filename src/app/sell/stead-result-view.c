/* stead-result-view.c - what a sale brought beside its plan, and why. */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "app/sell/stead-result-view.h"

#include "answer/stead-sale-result-answer.h"
#include "app/make/stead-make-parts.h"
#include "app/sell/stead-sell-parts.h"
#include "app/stead-why-box.h"
#include "core/stead-hours.h"
#include "core/stead-money.h"

struct _SteadResultView
{
  GtkBox             parent_instance;

  SteadDesk         *desk;      /* not owned */
  SteadResultAnswer *answer;
  GtkLabel          *sentence, *caution, *next;
  GtkWidget         *reasons, *prices, *goods, *till, *lefts, *hours;
  SteadWhyBox       *whys;
};

G_DEFINE_FINAL_TYPE (SteadResultView, stead_result_view, GTK_TYPE_BOX)

static void
show_goods (SteadResultView *self)
{
  const char *currency = self->answer->farm->currency;

  stead_make_clear (self->goods);
  stead_sell_figures (self->goods, 0, "soft", _("Product"), _("Planned"), _("Sold"), _("Left over"), _("Taken"), NULL);
  for (guint i = 0; i < self->answer->lines->len; i++)
    {
      const SteadResultLine *line = self->answer->lines->pdata[i];
      g_autofree char *planned = stead_words_units (line->good->pack, line->good->planned);
      g_autofree char *sold = stead_words_units (line->good->pack, line->sum.sold);
      g_autofree char *left = stead_words_units (line->good->pack, stead_sale_sum_left (&line->sum));
      g_autofree char *taken = stead_money_format (line->sum.takings_cents, currency);

      stead_sell_figures (self->goods, (int) i + 1, NULL, line->good->name, planned, sold, left, taken, NULL);
    }
}

static void
add_money (SteadResultView *self,
           int             *row,
           const char      *style,
           const char      *name,
           gint64           cents)
{
  g_autofree char *text = stead_money_format (cents, self->answer->farm->currency);

  stead_sell_figures (self->till, (*row)++, style, name, text, NULL);
}

static void
show_till (SteadResultView *self)
{
  const SteadSaleTill *till = &self->answer->till;
  gint64 over = self->answer->over_cents;
  int row = 0;

  stead_make_clear (self->till);
  add_money (self, &row, NULL, _("Money for change"), till->float_cents);
  add_money (self, &row, NULL, _("Taken at the stall"), till->takings_cents);
  add_money (self, &row, NULL, _("Paid out of the box"), -till->paid_out_cents);
  add_money (self, &row, "strong", _("Must be in the box"), till->expected_cents);
  if (self->answer->count == NULL)
    return;
  add_money (self, &row, "strong", _("Counted by two"), till->counted_cents);
  add_money (self, &row, over < 0 ? "warn" : NULL,
             over < 0 ? _("Short") : over > 0 ? _("Over") : _("It agrees"), ABS (over));
  if (self->answer->count->reason != NULL)
    stead_sell_figures (self->till, row, "soft", self->answer->count->reason, NULL);
}

static void
show_lefts (SteadResultView *self)
{
  stead_make_clear (self->lefts);
  for (guint i = 0; i < self->answer->lefts->len; i++)
    {
      const SteadSaleLeft *left = self->answer->lefts->pdata[i];
      const SteadSaleGood *good = stead_sale_find_good (self->answer->sale, left->line_id);
      g_autofree char *amount = good != NULL ? stead_words_units (good->pack, left->units) : NULL;

      if (good != NULL)
        stead_sell_figures (self->lefts, (int) i, NULL, good->name, amount, stead_sale_left_name (left->goes_to),
                            left->reason != NULL ? left->reason : "", NULL);
    }
  gtk_widget_set_visible (gtk_widget_get_parent (self->lefts), self->answer->lefts->len > 0);
}

static void
show_hours (SteadResultView *self)
{
  stead_make_clear (self->hours);
  for (guint i = 0; i < self->answer->hours->len; i++)
    {
      const SteadWorkSpan *span = self->answer->hours->pdata[i];
      g_autofree char *time = stead_hours_format ((gint64) round (span->minutes));

      stead_sell_figures (self->hours, (int) i, NULL, span->person_name, span->duty, time, NULL);
    }
  gtk_widget_set_visible (gtk_widget_get_parent (self->hours), self->answer->hours->len > 0);
}

static void
show_reasons (SteadResultView *self)
{
  stead_make_clear (self->reasons);
  for (guint i = 0; i < self->answer->reasons->len; i++)
    gtk_box_append (GTK_BOX (self->reasons), stead_make_label (self->answer->reasons->pdata[i], NULL));
  gtk_widget_set_visible (gtk_widget_get_parent (self->reasons), self->answer->reasons->len > 0);
}

static void
show_prices (SteadResultView *self)
{
  stead_make_clear (self->prices);
  for (guint i = 0; i < self->answer->prices->len; i++)
    gtk_box_append (GTK_BOX (self->prices), stead_make_label (self->answer->prices->pdata[i], NULL));
  gtk_widget_set_visible (gtk_widget_get_parent (self->prices), self->answer->prices->len > 0);
}

void
stead_result_view_show (SteadResultView *self,
                        SteadDesk       *desk,
                        gint64           sale_id)
{
  g_autoptr(GError) error = NULL;
  SteadResultAnswer *answer = stead_result_answer_new (stead_desk_get_store (desk), sale_id, &error);
  g_autoptr(GPtrArray) whys = NULL;

  self->desk = desk;
  if (answer == NULL)
    {
      stead_make_say (self->sentence, error->message, FALSE);
      return;
    }
  g_clear_pointer (&self->answer, stead_result_answer_free);
  self->answer = answer;
  stead_make_say (self->sentence, answer->sentence, TRUE);
  stead_make_say (self->caution, answer->caution, FALSE);
  stead_make_say (self->next, answer->sale->change_next, FALSE);
  gtk_widget_set_visible (gtk_widget_get_parent (GTK_WIDGET (self->next)), answer->sale->change_next != NULL);
  show_reasons (self);
  show_prices (self);
  show_goods (self);
  show_till (self);
  show_lefts (self);
  show_hours (self);
  whys = stead_result_answer_whys (answer);
  stead_why_box_set (self->whys, whys);
}

static void
stead_result_view_dispose (GObject *object)
{
  g_clear_pointer (&STEAD_RESULT_VIEW (object)->answer, stead_result_answer_free);
  G_OBJECT_CLASS (stead_result_view_parent_class)->dispose (object);
}

static void
stead_result_view_class_init (SteadResultViewClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = stead_result_view_dispose;
}

static GtkWidget *
grid_in (GtkWidget  *cards,
         const char *heading)
{
  GtkWidget *grid = gtk_grid_new ();

  gtk_grid_set_column_spacing (GTK_GRID (grid), 18);
  gtk_grid_set_row_spacing (GTK_GRID (grid), 6);
  gtk_box_append (GTK_BOX (stead_sell_card (cards, heading)), grid);
  return grid;
}

static void
stead_result_view_init (SteadResultView *self)
{
  GtkWidget *cards;

  gtk_orientable_set_orientation (GTK_ORIENTABLE (self), GTK_ORIENTATION_VERTICAL);
  gtk_box_set_spacing (GTK_BOX (self), 12);
  self->sentence = GTK_LABEL (stead_make_label (NULL, "sentence"));
  gtk_box_append (GTK_BOX (self), GTK_WIDGET (self->sentence));
  self->caution = GTK_LABEL (stead_make_label (NULL, "caution"));
  gtk_box_append (GTK_BOX (self), GTK_WIDGET (self->caution));
  cards = stead_sell_columns (GTK_WIDGET (self));
  self->reasons = gtk_box_new (GTK_ORIENTATION_VERTICAL, 3);
  gtk_box_append (GTK_BOX (stead_sell_card (cards, _("Why more or less than planned"))), self->reasons);
  self->goods = grid_in (cards, _("Plan and result"));
  self->prices = gtk_box_new (GTK_ORIENTATION_VERTICAL, 3);
  gtk_box_append (GTK_BOX (stead_sell_card (cards, _("Prices that were changed, and when"))), self->prices);
  self->till = grid_in (cards, _("The money"));
  self->lefts = grid_in (cards, _("What became of the left-overs"));
  self->hours = grid_in (cards, _("Hours of the helpers"));
  self->next = GTK_LABEL (stead_make_label (NULL, NULL));
  gtk_box_append (GTK_BOX (stead_sell_card (cards, _("What to do otherwise next time"))), GTK_WIDGET (self->next));
  gtk_box_append (GTK_BOX (self), stead_why_box_new_folded (&self->whys));
}
