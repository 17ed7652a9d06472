/* stead-plan-view.c - a sale day as it is planned, and what it may bring. */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "app/sell/stead-plan-view.h"

#include "answer/stead-sale-answer.h"
#include "app/check/stead-ask-dialog.h"
#include "app/make/stead-make-parts.h"
#include "app/sell/stead-again-sale-dialog.h"
#include "app/sell/stead-sale-dialog.h"
#include "app/sell/stead-sell-parts.h"
#include "app/stead-paper-dialog.h"
#include "app/stead-ui.h"
#include "app/stead-why-box.h"
#include "core/stead-hours.h"
#include "core/stead-money.h"

struct _SteadPlanView
{
  GtkBox           parent_instance;

  SteadDesk       *desk;      /* not owned */
  gint64           sale_id;
  gboolean         quiet;     /* ticks are set by the code, not by a person */
  SteadSaleAnswer *answer;
  GtkLabel        *sentence, *when, *caution;
  GtkWidget       *goods, *money, *shifts, *bring;
  SteadWhyBox     *whys;
};

G_DEFINE_FINAL_TYPE (SteadPlanView, stead_plan_view, GTK_TYPE_BOX)

/* --- buttons ------------------------------------------------------------------------------ */

static void
edit_cb (SteadPlanView *self)
{
  stead_sale_dialog_show (GTK_WIDGET (self), self->desk, self->sale_id);
}

static void
again_cb (SteadPlanView *self)
{
  stead_again_sale_dialog_show (GTK_WIDGET (self), self->desk, self->sale_id);
}

static void
check_cb (SteadPlanView *self)
{
  stead_ask_dialog_show_sale (GTK_WIDGET (self), self->desk, self->sale_id);
}

#define PAPER_KEY "stead-paper"

/* Papers are found by the name of the sale and its day. */
static void
paper_cb (GtkWidget *button)
{
  SteadPlanView *self = STEAD_PLAN_VIEW (gtk_widget_get_ancestor (button, STEAD_TYPE_PLAN_VIEW));
  g_autofree char *day = NULL;
  g_autofree char *of = NULL;

  if (self->answer == NULL)
    return;
  day = stead_day_format (self->answer->sale->day, STEAD_DAY_STYLE_ISO);
  of = g_strdup_printf ("%s %s", self->answer->sale->name, day);
  stead_paper_dialog_show (GTK_WIDGET (self), self->desk, g_object_get_data (G_OBJECT (button), PAPER_KEY), of);
}

/* --- what to bring ---------------------------------------------------------------------------- */

static gboolean
pack_act (SteadStore  *store,
          gpointer     data,
          GError     **error)
{
  return stead_sale_repo_save (store, data, NULL, error);
}

static void
packed_cb (GtkCheckButton *check)
{
  SteadPlanView *self = STEAD_PLAN_VIEW (gtk_widget_get_ancestor (GTK_WIDGET (check), STEAD_TYPE_PLAN_VIEW));
  guint at = GPOINTER_TO_UINT (g_object_get_data (G_OBJECT (check), PAPER_KEY));
  g_autoptr(GError) error = NULL;
  SteadSaleBring *bring;

  if (self == NULL || self->quiet || at >= self->answer->sale->bring->len)
    return;
  bring = self->answer->sale->bring->pdata[at];
  bring->packed = gtk_check_button_get_active (check);
  if (!stead_desk_act (self->desk, bring->text, pack_act, self->answer->sale, &error))
    stead_desk_say (self->desk, error->message, FALSE);
}

static void
show_bring (SteadPlanView *self)
{
  const GPtrArray *brings = self->answer->sale->bring;

  stead_make_clear (self->bring);
  for (guint i = 0; i < brings->len; i++)
    {
      const SteadSaleBring *bring = brings->pdata[i];
      GtkWidget *check = gtk_check_button_new_with_label (bring->text);

      gtk_check_button_set_active (GTK_CHECK_BUTTON (check), bring->packed);
      g_object_set_data (G_OBJECT (check), PAPER_KEY, GUINT_TO_POINTER (i));
      g_signal_connect (check, "toggled", G_CALLBACK (packed_cb), NULL);
      gtk_box_append (GTK_BOX (self->bring), check);
    }
  gtk_widget_set_visible (gtk_widget_get_parent (self->bring), brings->len > 0);
}

/* --- figures -------------------------------------------------------------------------------------- */

static char *
units_or_dash (const SteadSaleLineAnswer *line,
               double                     n)
{
  return isnan (n) ? g_strdup ("–") : stead_words_units (line->good->pack, round (n));
}

static void
show_goods (SteadPlanView *self)
{
  const SteadSaleAnswer *answer = self->answer;
  int row = 0;

  stead_make_clear (self->goods);
  stead_sell_figures (self->goods, row++, "soft", _("Product"), _("Bring"), _("Price"), _("Cost of one"), _("Asked for"),
                      _("Pays best"), NULL);
  for (guint i = 0; i < answer->lines->len; i++)
    {
      const SteadSaleLineAnswer *line = answer->lines->pdata[i];
      g_autofree char *bring = units_or_dash (line, line->good->planned);
      g_autofree char *price = stead_money_format (line->good->price_cents, answer->farm->currency);
      g_autofree char *cost = isnan (line->unit_cents) ? g_strdup ("–")
                              : stead_money_format (stead_money_round (line->unit_cents), answer->farm->currency);
      g_autofree char *asked = units_or_dash (line, line->demand_units);
      g_autofree char *best = units_or_dash (line, line->best_units);

      stead_sell_figures (self->goods, row++, "strong", line->good->name, bring, price, cost, asked, best, NULL);
      if (line->text != NULL)
        gtk_grid_attach (GTK_GRID (self->goods), stead_make_label (line->text, "soft"), 0, row++, 6, 1);
      if (line->lots_texts != NULL && line->lots_texts->len > 0)
        gtk_grid_attach (GTK_GRID (self->goods), stead_sell_lots (line->lots_texts), 0, row++, 6, 1);
    }
}

static void
add_money (SteadPlanView *self,
           int           *row,
           const char    *name,
           double         cents)
{
  g_autofree char *text = isnan (cents) ? g_strdup ("–")
                          : stead_money_format (stead_money_round (cents), self->answer->farm->currency);

  stead_sell_figures (self->money, (*row)++, NULL, name, text, NULL);
}

static void
show_money (SteadPlanView *self)
{
  const SteadSaleAnswer *answer = self->answer;
  int row = 0;

  stead_make_clear (self->money);
  add_money (self, &row, _("Taken if all is sold"), (double) answer->full_cents);
  add_money (self, &row, _("Left of it after the cost of the goods"), answer->margin_cents);
  add_money (self, &row, _("The day's own costs"), (double) answer->fixed_cents);
  add_money (self, &row, _("Takings that cover all costs"), answer->even_cents);
  if (answer->has_band)
    {
      g_autofree char *low = stead_money_format (stead_money_round (answer->takings.low), answer->farm->currency);
      g_autofree char *high = stead_money_format (stead_money_round (answer->takings.high), answer->farm->currency);
      /* Translators: two sums of money. */
      g_autofree char *band = g_strdup_printf (_("%s to %s"), low, high);

      stead_sell_figures (self->money, row++, NULL, _("Taken on 8 of 10 such days"), band, NULL);
    }
  add_money (self, &row, _("Money for change in the box"), (double) stead_sale_float_cents (answer->sale));
  for (guint i = 0; i < answer->sale->costs->len; i++)
    {
      const SteadSaleCost *cost = answer->sale->costs->pdata[i];

      add_money (self, &row, cost->name, (double) stead_sale_cost_paid (cost));
    }
}

static void
show_shifts (SteadPlanView *self)
{
  const GPtrArray *shifts = self->answer->sale->shifts;

  stead_make_clear (self->shifts);
  for (guint i = 0; i < shifts->len; i++)
    {
      const SteadSaleShift *shift = shifts->pdata[i];
      g_autofree char *from = stead_sale_clock (shift->from_min);
      g_autofree char *to = stead_sale_clock (shift->to_min);
      g_autofree char *hours = stead_hours_format (shift->to_min - shift->from_min - shift->break_min);
      /* Translators: two times of the day. */
      g_autofree char *span = g_strdup_printf (_("%s to %s"), from, to);

      stead_sell_figures (self->shifts, (int) i, NULL, shift->person_name, shift->duty != NULL ? shift->duty : "–", span,
                          hours, NULL);
    }
  gtk_widget_set_visible (gtk_widget_get_parent (self->shifts), shifts->len > 0);
}

void
stead_plan_view_show (SteadPlanView *self,
                      SteadDesk     *desk,
                      gint64         sale_id)
{
  g_autoptr(GError) error = NULL;
  SteadSaleAnswer *answer = stead_sale_answer_new (stead_desk_get_store (desk), sale_id, &error);
  g_autoptr(GPtrArray) whys = NULL;
  g_autofree char *when = NULL;

  self->desk = desk;
  self->sale_id = sale_id;
  if (answer == NULL)
    {
      stead_make_say (self->sentence, error->message, FALSE);
      return;
    }
  g_clear_pointer (&self->answer, stead_sale_answer_free);
  self->answer = answer;
  when = stead_sale_when (answer->sale);
  stead_make_say (self->when, when, FALSE);
  stead_make_say (self->sentence, answer->sentence, TRUE);
  stead_make_say (self->caution, answer->caution, FALSE);
  whys = stead_sale_answer_whys (answer);
  stead_why_box_set (self->whys, whys);
  self->quiet = TRUE;
  show_goods (self);
  show_money (self);
  show_shifts (self);
  show_bring (self);
  self->quiet = FALSE;
}

static void
stead_plan_view_dispose (GObject *object)
{
  SteadPlanView *self = STEAD_PLAN_VIEW (object);

  self->quiet = TRUE;
  g_clear_pointer (&self->answer, stead_sale_answer_free);
  G_OBJECT_CLASS (stead_plan_view_parent_class)->dispose (object);
}

static void
stead_plan_view_class_init (SteadPlanViewClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = stead_plan_view_dispose;
}

static GtkWidget *
grid_in (GtkWidget *card)
{
  GtkWidget *grid = gtk_grid_new ();

  gtk_grid_set_column_spacing (GTK_GRID (grid), 18);
  gtk_grid_set_row_spacing (GTK_GRID (grid), 6);
  gtk_box_append (GTK_BOX (card), grid);
  return grid;
}

static void
add_papers (SteadPlanView *self)
{
  static const struct { const char *name, *label; } papers[] = {
    { "sale-plan", N_("Plan…") }, { "price-signs", N_("Price signs…") }, { "tally-sheet", N_("Tally sheet…") },
    { "float-sheet", N_("Float and cash-up sheet…") }, { "order-list", N_("Order list…") },
    { "thank-you", N_("Thanks to helpers…") },
  };
  GtkWidget *card = stead_sell_card (GTK_WIDGET (self), _("Papers to print"));
  GtkWidget *row = stead_sell_row (card);

  for (gsize i = 0; i < G_N_ELEMENTS (papers); i++)
    {
      GtkWidget *button = gtk_button_new_with_label (_(papers[i].label));

      g_object_set_data (G_OBJECT (button), PAPER_KEY, (gpointer) papers[i].name);
      g_signal_connect (button, "clicked", G_CALLBACK (paper_cb), NULL);
      gtk_box_append (GTK_BOX (row), button);
    }
}

static void
stead_plan_view_init (SteadPlanView *self)
{
  GtkWidget *row, *card;

  gtk_orientable_set_orientation (GTK_ORIENTABLE (self), GTK_ORIENTATION_VERTICAL);
  gtk_box_set_spacing (GTK_BOX (self), 12);
  self->sentence = GTK_LABEL (stead_make_label (NULL, "sentence"));
  self->when = GTK_LABEL (stead_make_label (NULL, "soft"));
  self->caution = GTK_LABEL (stead_make_label (NULL, "caution"));
  gtk_box_append (GTK_BOX (self), GTK_WIDGET (self->sentence));
  gtk_box_append (GTK_BOX (self), GTK_WIDGET (self->when));
  gtk_box_append (GTK_BOX (self), GTK_WIDGET (self->caution));
  row = stead_sell_row (GTK_WIDGET (self));
  gtk_widget_add_css_class (stead_sell_button (row, _("Edit plan…"), G_CALLBACK (edit_cb), self), "primary");
  stead_sell_button (row, _("Plan it once more…"), G_CALLBACK (again_cb), self);
  stead_sell_button (row, _("Checklist…"), G_CALLBACK (check_cb), self);
  self->goods = grid_in (stead_sell_card (GTK_WIDGET (self), _("How many to bring")));
  self->money = grid_in (stead_sell_card (GTK_WIDGET (self), _("What the day may bring")));
  self->whys = STEAD_WHY_BOX (stead_why_box_new ());
  gtk_box_append (GTK_BOX (self), GTK_WIDGET (self->whys));
  self->shifts = grid_in (stead_sell_card (GTK_WIDGET (self), _("Who helps, and when")));
  card = stead_sell_card (GTK_WIDGET (self), _("What to bring"));
  self->bring = gtk_box_new (GTK_ORIENTATION_VERTICAL, 3);
  gtk_box_append (GTK_BOX (card), self->bring);
  add_papers (self);
}
