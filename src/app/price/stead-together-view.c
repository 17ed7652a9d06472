/* stead-together-view.c - several products on one sale day: the path of profit.
 *
 * The plan of each product, the costs of the day, the target and the fund's share are
 * handles; nothing is kept, "Reset to the log" reads them anew.
 */
#include "config.h"

#include "app/price/stead-together-view.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "answer/stead-together-answer.h"
#include "app/stead-ui.h"
#include "app/stead-why-box.h"
#include "core/stead-money.h"
#include "paper/stead-price-figure.h"

struct _SteadTogetherView
{
  SteadView       parent_instance;

  SteadTogether  *answer;      /* (nullable) */
  gboolean        turned;      /* a handle stands elsewhere than the farm */
  GtkWidget      *plans;       /* a handle for each product */
  SteadHandle    *extra, *target, *fund;
  GtkWidget      *order, *reset;
  SteadPlot      *plot;
  GtkWidget      *grid;
  SteadWhyBox    *whys;
};

G_DEFINE_FINAL_TYPE (SteadTogetherView, stead_together_view, STEAD_TYPE_VIEW)

static char *
money (SteadTogetherView *self,
       double             cents)
{
  return stead_money_format (stead_money_round (cents), self->answer->currency);
}

/* --- showing ---------------------------------------------------------------------------- */

static GPtrArray *
make_rows (SteadTogetherView *self)
{
  GPtrArray *rows = g_ptr_array_new ();

  for (guint i = 0; i < self->answer->lines->len; i++)
    {
      const SteadTogetherLine *line = self->answer->lines->pdata[i];
      char **row = g_new0 (char *, 8);

      row[0] = g_strdup (line->name);
      row[1] = stead_words_units (line->pack, line->planned);
      row[2] = money (self, line->price_cents);
      row[3] = money (self, line->unit_cents);
      row[4] = money (self, line->margin_cents);
      row[5] = isfinite (line->margin_frac) ? stead_words_percent (line->margin_frac, 0) : g_strdup ("–");
      row[6] = isfinite (line->even_units) ? stead_words_units (line->pack, ceil (line->even_units - 1e-9)) : g_strdup ("–");
      g_ptr_array_add (rows, row);
    }
  return rows;
}

static char *
share_or_dash (double part,
               double whole)
{
  return whole > 0 && part >= 0 ? stead_words_percent (part / whole, 0) : g_strdup ("–");
}

/* Who brings the sales, and who pays the day. */
static void
show_grid (SteadTogetherView *self)
{
  const char *heads[] = { "", _("Taken in"), _("Of the sales"), _("Left of all sold"), _("Of what is left") };
  double left = 0;

  stead_view_grid_clear (self->grid);
  for (int i = 0; i < (int) G_N_ELEMENTS (heads); i++)
    stead_view_grid_put (self->grid, i, 0, heads[i], TRUE, FALSE);
  for (guint i = 0; i < self->answer->lines->len; i++)
    left += ((SteadTogetherLine *) self->answer->lines->pdata[i])->margin_cents
            * ((SteadTogetherLine *) self->answer->lines->pdata[i])->planned;
  for (guint i = 0; i < self->answer->lines->len; i++)
    {
      const SteadTogetherLine *line = self->answer->lines->pdata[i];
      double taken_cents = line->price_cents * line->planned, left_cents = line->margin_cents * line->planned;
      g_autofree char *taken = money (self, taken_cents);
      g_autofree char *of_sales = share_or_dash (taken_cents, self->answer->sales_cents);
      g_autofree char *stays = money (self, left_cents);
      g_autofree char *of_left = share_or_dash (left_cents, left);
      const char *cells[] = { line->name, taken, of_sales, stays, of_left };

      for (int k = 0; k < (int) G_N_ELEMENTS (cells); k++)
        stead_view_grid_put (self->grid, k, (int) i + 1, cells[k], k == 0, FALSE);
    }
}

static void
show (SteadTogetherView *self)
{
  g_autoptr(GPtrArray) whys = stead_together_whys (self->answer);

  stead_view_say (STEAD_VIEW (self), self->answer->sentence, self->answer->advice);
  stead_plot_take_figure (self->plot, stead_together_figure_new (self->answer));
  stead_plot_show (self->plot, self->answer->sentence, self->answer->currency, make_rows (self));
  show_grid (self);
  stead_why_box_set (self->whys, whys);
  gtk_widget_set_sensitive (self->reset, self->turned);
}

/* --- handles ------------------------------------------------------------------------------- */

static char *
units_text (double   value,
            gpointer data)
{
  return stead_words_units (GPOINTER_TO_INT (data), value);
}

static char *
cents_text (double   value,
            gpointer data)
{
  SteadTogetherView *self = data;

  return stead_money_format (stead_money_round (value), self->answer != NULL ? self->answer->currency : "USD");
}

static char *
share_text (double   value,
            gpointer data)
{
  return stead_words_percent (value / 100, 0);
}

static void
settle (SteadTogetherView *self)
{
  self->turned = TRUE;
  stead_together_settle (self->answer);
  show (self);
}

static void
plan_cb (SteadHandle *handle,
         double       value,
         gpointer     data)
{
  SteadTogetherView *self = data;
  guint at = GPOINTER_TO_UINT (g_object_get_data (G_OBJECT (handle), "line"));

  ((SteadTogetherLine *) self->answer->lines->pdata[at])->planned = round (value);
  settle (self);
}

static void
money_cb (SteadTogetherView *self)
{
  if (self->answer == NULL)
    return;
  self->answer->extra_cents = stead_handle_get (self->extra);
  self->answer->target_cents = stead_handle_get (self->target);
  self->answer->fund_frac = stead_handle_get (self->fund) / 100;
  settle (self);
}

static void
order_cb (SteadTogetherView *self)
{
  if (self->answer == NULL)
    return;
  self->answer->order = (SteadTogetherOrder) gtk_drop_down_get_selected (GTK_DROP_DOWN (self->order));
  stead_together_settle (self->answer);
  show (self);
}

static void
fill_handles (SteadTogetherView *self)
{
  double step = pow (10, stead_currency_digits (self->answer->currency));

  stead_view_clear (self->plans);
  for (guint i = 0; i < self->answer->lines->len; i++)
    {
      const SteadTogetherLine *line = self->answer->lines->pdata[i];
      GtkWidget *handle = stead_handle_new (line->name, units_text, GINT_TO_POINTER (line->pack));

      stead_handle_range (STEAD_HANDLE (handle), 0, MAX (10, line->planned * 3), 1);
      stead_handle_set (STEAD_HANDLE (handle), line->planned);
      g_object_set_data (G_OBJECT (handle), "line", GUINT_TO_POINTER (i));
      g_signal_connect (handle, "turned", G_CALLBACK (plan_cb), self);
      gtk_box_append (GTK_BOX (self->plans), handle);
    }
  stead_handle_range (self->extra, 0, MAX (200 * step, self->answer->fixed_cents * 2), step);
  stead_handle_range (self->target, 0, MAX (500 * step, MAX (self->answer->target_cents, self->answer->sales_cents) * 2),
                      step);
  stead_handle_range (self->fund, 0, 100, 1);
  stead_handle_set (self->extra, self->answer->extra_cents);
  stead_handle_set (self->target, self->answer->target_cents);
  stead_handle_set (self->fund, self->answer->fund_frac * 100);
}

static void
load (SteadTogetherView *self,
      SteadStore        *store)
{
  SteadPeriod period = stead_desk_get_period (stead_view_get_desk (STEAD_VIEW (self)));
  g_autoptr(GError) error = NULL;
  double fund = self->answer != NULL ? self->answer->fund_frac : 0.5;

  stead_plot_take_figure (self->plot, NULL);
  g_clear_pointer (&self->answer, stead_together_free);
  self->answer = stead_together_new (store, period, &error);
  self->turned = FALSE;
  if (self->answer != NULL)
    stead_view_leave_out (STEAD_VIEW (self), self->answer->missing);
  if (self->answer == NULL || self->answer->lines->len == 0)
    {
      stead_view_miss (STEAD_VIEW (self), error != NULL ? error->message
                       : _("Here all products of a sale day stand together. Give at least one of them a batch, a price "
                           "and a number planned."));
      g_clear_pointer (&self->answer, stead_together_free);
      return;
    }
  self->answer->fund_frac = fund;
  self->answer->order = (SteadTogetherOrder) gtk_drop_down_get_selected (GTK_DROP_DOWN (self->order));
  stead_together_settle (self->answer);
  fill_handles (self);
  show (self);
}

static void
stead_together_view_refresh (SteadView  *view,
                             SteadStore *store,
                             gint64      product_id)
{
  load (STEAD_TOGETHER_VIEW (view), store);
}

static void
reset_cb (SteadTogetherView *self)
{
  load (self, stead_desk_get_store (stead_view_get_desk (STEAD_VIEW (self))));
}

/* --- widget ------------------------------------------------------------------------------------ */

static void
stead_together_view_finalize (GObject *object)
{
  SteadTogetherView *self = STEAD_TOGETHER_VIEW (object);

  g_clear_pointer (&self->answer, stead_together_free);
  G_OBJECT_CLASS (stead_together_view_parent_class)->finalize (object);
}

static void
stead_together_view_class_init (SteadTogetherViewClass *klass)
{
  G_OBJECT_CLASS (klass)->finalize = stead_together_view_finalize;
  STEAD_VIEW_CLASS (klass)->refresh = stead_together_view_refresh;
}

static SteadHandle *
add_handle (SteadTogetherView *self,
            GtkWidget         *box,
            const char        *name,
            SteadHandleText    text)
{
  GtkWidget *handle = stead_handle_new (name, text, self);

  g_signal_connect_swapped (handle, "turned", G_CALLBACK (money_cb), self);
  gtk_box_append (GTK_BOX (box), handle);
  return STEAD_HANDLE (handle);
}

static GtkWidget *
make_order (SteadTogetherView *self)
{
  const char *names[STEAD_N_TOGETHER_ORDERS + 1] = { NULL };

  for (int i = 0; i < STEAD_N_TOGETHER_ORDERS; i++)
    names[i] = stead_together_order_name ((SteadTogetherOrder) i);
  self->order = gtk_drop_down_new_from_strings (names);
  stead_ui_name (self->order, _("Order in which they sell"));
  stead_ui_name (gtk_widget_get_first_child (self->order), _("Order in which they sell"));
  g_signal_connect_swapped (self->order, "notify::selected", G_CALLBACK (order_cb), self);
  return self->order;
}

static void
stead_together_view_init (SteadTogetherView *self)
{
  const char *columns[] = { _("Product"), _("Planned"), _("Price"), _("Cost of one"), _("Left of one"),
                            _("Of the price"), _("At the break-even"), NULL };
  GtkWidget *card = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);

  gtk_widget_add_css_class (card, "card");
  gtk_box_append (GTK_BOX (card), stead_view_heading (_("What is sold on one day")));
  self->plans = gtk_box_new (GTK_ORIENTATION_VERTICAL, 2);
  gtk_box_append (GTK_BOX (card), self->plans);
  gtk_box_append (GTK_BOX (card), stead_view_heading (_("The day as a whole")));
  self->extra = add_handle (self, card, _("Other costs of the day"), cents_text);
  self->target = add_handle (self, card, _("Profit wanted"), cents_text);
  self->fund = add_handle (self, card, _("Share of the profit for the fund"), share_text);
  self->reset = gtk_button_new_with_label (_("Reset to the log"));
  g_signal_connect_swapped (self->reset, "clicked", G_CALLBACK (reset_cb), self);
  gtk_box_append (GTK_BOX (card), self->reset);
  stead_view_add_left (STEAD_VIEW (self), card);

  self->plot = STEAD_PLOT (stead_plot_new (_("How the profit grows with the sales"), _("Path of profit, by money taken in"),
                                           columns));
  stead_plot_add (self->plot, make_order (self));
  stead_plot_set_height (self->plot, 300);
  stead_view_add_page (STEAD_VIEW (self), self->plot, "break-even-all", NULL);
  stead_view_add_right (STEAD_VIEW (self), GTK_WIDGET (self->plot));
  stead_view_add_right (STEAD_VIEW (self), stead_view_grid (_("Who brings the sales, and who pays the day"), &self->grid));
  stead_view_add_right (STEAD_VIEW (self), stead_why_box_new_folded (&self->whys));
}

GtkWidget *
stead_together_view_new (void)
{
  return g_object_new (STEAD_TYPE_TOGETHER_VIEW, NULL);
}
