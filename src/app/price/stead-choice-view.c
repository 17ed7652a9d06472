/* stead-choice-view.c - which price: markup and margin, a bundle, and what people paid before.
 *
 * Days with their price and what was sold are entered here, or come from the sale days.
 */
#include "config.h"

#include "app/price/stead-choice-view.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "answer/stead-price-choice.h"
#include "app/make/stead-make-parts.h"
#include "app/stead-field.h"
#include "app/stead-why-box.h"
#include "core/stead-money.h"
#include "paper/stead-price-figure.h"

struct _SteadChoiceView
{
  SteadView         parent_instance;

  gint64            product_id;
  SteadPriceChoice *answer;       /* (nullable) */
  SteadHandle      *price, *other, *units, *off;
  GtkWidget        *bundle, *same, *error, *entered;
  SteadField       *day, *cents, *sold;
  SteadPlot        *plot;
  GtkWidget        *grid;
  GtkWidget        *empty;
  SteadWhyBox      *whys;
};

G_DEFINE_FINAL_TYPE (SteadChoiceView, stead_choice_view, STEAD_TYPE_VIEW)

static char *
money (SteadChoiceView *self,
       double           cents)
{
  return stead_money_format (stead_money_round (cents), self->answer->price->cost->farm->currency);
}

static SteadPack
pack_of (SteadChoiceView *self)
{
  return self->answer->price->cost->product->pack;
}

/* --- days that were entered ----------------------------------------------------------------- */

static void
say_error (SteadChoiceView *self,
           const GError    *error)   /* (nullable) */
{
  gtk_label_set_text (GTK_LABEL (self->error), error != NULL ? error->message : "");
  gtk_widget_set_visible (self->error, error != NULL);
}

static gboolean
remove_act (SteadStore  *store,
            gpointer     data,
            GError     **error)
{
  return stead_price_trial_repo_delete (store, *(const gint64 *) data, error);
}

static void
remove_cb (SteadChoiceView *self,
           GtkWidget       *button)
{
  gint64 id = *(const gint64 *) g_object_get_data (G_OBJECT (button), "id");
  const char *day = g_object_get_data (G_OBJECT (button), "day");
  /* Translators: the step that Undo names: what was sold on a day. */
  g_autofree char *step = g_strdup_printf (_("deleting the price and number sold on %s"), day);
  g_autoptr(GError) error = NULL;

  if (!stead_desk_act (stead_view_get_desk (STEAD_VIEW (self)), step, remove_act, &id, &error))
    say_error (self, error);
}

static void
add_entered (SteadChoiceView       *self,
             const SteadPriceTrial *trial)
{
  g_autofree char *day = stead_day_format (trial->day, STEAD_DAY_STYLE_MEDIUM);
  g_autofree char *price = money (self, (double) trial->price_cents);
  g_autofree char *units = stead_words_units (pack_of (self), trial->units);
  /* Translators: a day, what was sold on it: "24 dozen", the price of one. */
  g_autofree char *text = g_strdup_printf (_("%s: %s at %s"), day, units, price);
  /* Translators: a button and the row of a list that it stands on: "Change… Winter market". */
  g_autofree char *name = g_strdup_printf (C_("button of a row", "%s %s"), _("Delete this day"), text);
  GtkWidget *link = stead_make_link (_("Delete this day"), name, G_CALLBACK (remove_cb), self);
  GtkWidget *actions = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6);

  g_object_set_data_full (G_OBJECT (link), "id", g_memdup2 (&trial->id, sizeof trial->id), g_free);
  g_object_set_data_full (G_OBJECT (link), "day", g_steal_pointer (&day), g_free);
  gtk_widget_add_css_class (actions, "outdent");
  gtk_box_append (GTK_BOX (actions), link);
  gtk_box_append (GTK_BOX (self->entered), stead_make_label (text, NULL));
  gtk_box_append (GTK_BOX (self->entered), actions);
}

/* Newest first; what the sale days tell is not changed here. */
static void
show_entered (SteadChoiceView *self)
{
  stead_make_clear (self->entered);
  for (guint i = self->answer->trials->len; i-- > 0; )
    {
      const SteadPriceTrial *trial = self->answer->trials->pdata[i];

      if (!trial->is_counted)
        add_entered (self, trial);
    }
}

/* --- showing ---------------------------------------------------------------------------- */

static GPtrArray *
make_rows (SteadChoiceView *self)
{
  GPtrArray *rows = g_ptr_array_new ();

  for (guint i = 0; i < self->answer->trials->len; i++)
    {
      const SteadPriceTrial *trial = self->answer->trials->pdata[i];
      char **row = g_new0 (char *, 5);

      row[0] = stead_day_format (trial->day, STEAD_DAY_STYLE_MEDIUM);
      row[1] = money (self, (double) trial->price_cents);
      row[2] = stead_words_units (pack_of (self), trial->units);
      row[3] = g_strdup (trial->is_counted ? _("counted on the sale day") : _("entered"));
      g_ptr_array_add (rows, row);
    }
  return rows;
}

static void
put_price (SteadChoiceView *self,
           int              row,
           const char      *name,
           double           cents,
           gboolean         here)
{
  const SteadCvp *plan = &self->answer->price->plan;
  double left = cents - self->answer->unit_cents;
  double same = left > 0 ? plan->planned_units * (plan->price_cents - self->answer->unit_cents) / left : NAN;
  g_autofree char *price = money (self, cents);
  g_autofree char *leaves = money (self, left);
  g_autofree char *markup = self->answer->unit_cents > 0 ? stead_words_percent (left / self->answer->unit_cents, 0) : g_strdup ("–");
  g_autofree char *margin = cents > 0 ? stead_words_percent (left / cents, 0) : g_strdup ("–");
  g_autofree char *units = same > 0 ? stead_words_units (pack_of (self), ceil (same - 1e-9)) : g_strdup ("–");
  const char *cells[] = { name, price, leaves, markup, margin, units };

  for (int i = 0; i < (int) G_N_ELEMENTS (cells); i++)
    stead_view_grid_put (self->grid, i, row, cells[i], i == 0, here && i > 0);
}

/* Prices side by side, so that markup and margin are never taken for each other. */
static void
show_grid (SteadChoiceView *self)
{
  const char *heads[] = { "", _("Price"), _("Left of one"), _("Markup"), _("Margin"), _("For the plan's profit") };
  int row = 1;

  stead_view_grid_clear (self->grid);
  for (int i = 0; i < (int) G_N_ELEMENTS (heads); i++)
    stead_view_grid_put (self->grid, i, 0, heads[i], TRUE, FALSE);
  put_price (self, row++, _("Price tried"), self->answer->try_cents, TRUE);
  put_price (self, row++, _("Another price"), self->answer->other_cents, FALSE);
  if ((double) self->answer->easy_below < self->answer->try_cents)
    put_price (self, row++, _("Easy change, below"), (double) self->answer->easy_below, FALSE);
  if ((double) self->answer->easy_above > self->answer->try_cents)
    put_price (self, row++, _("Easy change, above"), (double) self->answer->easy_above, FALSE);
  if (self->answer->least_cents > 0)
    put_price (self, row++, _("Pays just for what another one uses up"), ceil (self->answer->least_cents - 1e-6), FALSE);
  if (self->answer->has_line)
    put_price (self, row++, _("Earns most, by what was sold"), self->answer->best_cents, FALSE);
}

static void
show (SteadChoiceView *self)
{
  g_autoptr(GPtrArray) whys = stead_price_choice_whys (self->answer);

  stead_view_say (STEAD_VIEW (self), self->answer->sentence, self->answer->advice);
  gtk_label_set_text (GTK_LABEL (self->bundle), self->answer->bundle_text);
  gtk_label_set_text (GTK_LABEL (self->same), self->answer->same_text);
  stead_plot_take_figure (self->plot, stead_choice_figure_new (self->answer));
  stead_plot_show (self->plot, self->answer->advice, self->answer->price->cost->farm->currency, make_rows (self));
  gtk_widget_set_visible (GTK_WIDGET (self->plot), self->answer->trials->len > 0);
  gtk_widget_set_visible (self->empty, self->answer->trials->len == 0);
  show_grid (self);
  stead_why_box_set (self->whys, whys);
}

/* --- what the person does ----------------------------------------------------------------- */

static void
turned_cb (SteadChoiceView *self)
{
  if (self->answer == NULL)
    return;
  self->answer->try_cents = stead_handle_get (self->price);
  self->answer->other_cents = stead_handle_get (self->other);
  self->answer->bundle_units = stead_handle_get (self->units);
  self->answer->bundle_off = stead_handle_get (self->off) / 100;
  stead_price_choice_settle (self->answer);
  show (self);
}

typedef struct
{
  gint64           product_id;
  SteadPriceTrial *trial;
} Added;

static gboolean
add_act (SteadStore  *store,
         gpointer     data,
         GError     **error)
{
  const Added *added = data;

  return stead_price_trial_repo_add (store, added->product_id, added->trial, error);
}

static void
add_cb (SteadChoiceView *self)
{
  SteadDesk *desk = stead_view_get_desk (STEAD_VIEW (self));
  g_autoptr(SteadPriceTrial) trial = g_new0 (SteadPriceTrial, 1);
  g_autoptr(GError) error = NULL;
  g_autofree char *day = NULL, *step = NULL;
  Added added = { self->product_id, trial };
  gint64 sold = 0;

  if (!stead_field_read_day (self->day, stead_store_get_today (stead_desk_get_store (desk)), &trial->day)
      || !stead_field_read_money (self->cents, -1, &trial->price_cents)
      || !stead_field_read_count (self->sold, 0, &sold))
    return;
  trial->units = (double) sold;
  day = stead_day_format (trial->day, STEAD_DAY_STYLE_MEDIUM);
  /* Translators: the step that Undo names: what was sold on a day. */
  step = g_strdup_printf (_("price and number sold on %s"), day);
  if (stead_desk_act (desk, step, add_act, &added, &error))
    {
      stead_field_set_text (self->cents, "");
      stead_field_set_text (self->sold, "");
    }
  say_error (self, error);
}

/* --- reading -------------------------------------------------------------------------------- */

static char *
cents_text (double   value,
            gpointer data)
{
  SteadChoiceView *self = data;

  return self->answer != NULL ? money (self, value) : g_strdup ("");
}

static char *
units_text (double   value,
            gpointer data)
{
  SteadChoiceView *self = data;

  return self->answer != NULL ? stead_words_units (pack_of (self), value) : g_strdup ("");
}

static char *
share_text (double   value,
            gpointer data)
{
  return stead_words_percent (value / 100, 0);
}

static void
fill_handles (SteadChoiceView *self)
{
  const char *currency = self->answer->price->cost->farm->currency;
  double step = stead_currency_digits (currency) > 0 ? 5 : 1;
  double top = MAX (self->answer->price->plan.price_cents, self->answer->unit_cents) * 3;

  stead_handle_range (self->price, 0, MAX (top, 100), step);
  stead_handle_range (self->other, 0, MAX (top, 100), step);
  stead_handle_range (self->units, 2, 12, 1);
  stead_handle_range (self->off, 0, 50, 1);
  stead_handle_set (self->price, self->answer->try_cents);
  stead_handle_set (self->other, self->answer->other_cents);
  stead_handle_set (self->units, self->answer->bundle_units);
  stead_handle_set (self->off, self->answer->bundle_off * 100);
  stead_field_set_currency (self->cents, currency);
}

static void
stead_choice_view_refresh (SteadView  *view,
                           SteadStore *store,
                           gint64      product_id)
{
  SteadChoiceView *self = STEAD_CHOICE_VIEW (view);
  g_autoptr(GError) error = NULL;
  g_autoptr(SteadPriceChoice) old = g_steal_pointer (&self->answer);

  stead_plot_take_figure (self->plot, NULL);
  if (product_id != 0)
    self->answer = stead_price_choice_new (store, product_id, stead_desk_get_period (stead_view_get_desk (view)), &error);
  if (self->answer == NULL)
    {
      stead_view_miss (view, error != NULL ? error->message : _("First make a product under “One product”."));
      return;
    }
  if (old != NULL && self->product_id == product_id)
    {
      self->answer->try_cents = old->try_cents;
      self->answer->other_cents = old->other_cents;
      self->answer->bundle_units = old->bundle_units;
      self->answer->bundle_off = old->bundle_off;
      stead_price_choice_settle (self->answer);
    }
  self->product_id = product_id;
  stead_field_set_today (self->day, stead_store_get_today (store));
  fill_handles (self);
  show_entered (self);
  show (self);
}

/* --- widget ---------------------------------------------------------------------------------- */

static void
stead_choice_view_finalize (GObject *object)
{
  SteadChoiceView *self = STEAD_CHOICE_VIEW (object);

  g_clear_pointer (&self->answer, stead_price_choice_free);
  G_OBJECT_CLASS (stead_choice_view_parent_class)->finalize (object);
}

static void
stead_choice_view_class_init (SteadChoiceViewClass *klass)
{
  g_type_ensure (STEAD_TYPE_FIELD);
  G_OBJECT_CLASS (klass)->finalize = stead_choice_view_finalize;
  STEAD_VIEW_CLASS (klass)->refresh = stead_choice_view_refresh;
}

static SteadHandle *
add_handle (SteadChoiceView *self,
            GtkWidget       *card,
            const char      *name,
            SteadHandleText  text)
{
  GtkWidget *handle = stead_handle_new (name, text, self);

  g_signal_connect_swapped (handle, "turned", G_CALLBACK (turned_cb), self);
  gtk_box_append (GTK_BOX (card), handle);
  return STEAD_HANDLE (handle);
}

static GtkWidget *
make_card (SteadChoiceView *self)
{
  GtkWidget *card = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);

  gtk_widget_add_css_class (card, "card");
  stead_view_add_left (STEAD_VIEW (self), card);
  return card;
}

static SteadField *
add_field (GtkWidget      *card,
           const char     *label,
           SteadFieldKind  kind)
{
  GtkWidget *field = stead_field_new (label, kind);

  gtk_box_append (GTK_BOX (card), field);
  return STEAD_FIELD (field);
}

static void
add_left (SteadChoiceView *self)
{
  GtkWidget *card = make_card (self), *button;

  gtk_box_append (GTK_BOX (card), stead_view_heading (_("Try a price")));
  self->price = add_handle (self, card, _("Price tried"), cents_text);
  self->other = add_handle (self, card, _("Another price"), cents_text);
  self->same = stead_view_note (NULL);
  gtk_box_append (GTK_BOX (card), self->same);
  gtk_box_append (GTK_BOX (card), stead_view_heading (_("Several for one price")));
  self->units = add_handle (self, card, _("In one bundle"), units_text);
  self->off = add_handle (self, card, _("Taken off the price"), share_text);
  self->bundle = stead_view_note (NULL);
  gtk_box_append (GTK_BOX (card), self->bundle);

  card = make_card (self);
  gtk_box_append (GTK_BOX (card), stead_view_heading (_("What people paid before")));
  self->day = add_field (card, _("Day of the sale"), STEAD_FIELD_DAY);
  self->cents = add_field (card, _("Price that day"), STEAD_FIELD_MONEY);
  self->sold = add_field (card, _("How many were sold"), STEAD_FIELD_COUNT);
  g_object_set (self->cents, "required", TRUE, NULL);
  g_object_set (self->sold, "required", TRUE, NULL);
  button = gtk_button_new_with_label (_("Add this day"));
  g_signal_connect_swapped (button, "clicked", G_CALLBACK (add_cb), self);
  gtk_box_append (GTK_BOX (card), button);
  self->error = stead_view_note (NULL);
  gtk_widget_add_css_class (self->error, "message");
  gtk_widget_set_visible (self->error, FALSE);
  gtk_box_append (GTK_BOX (card), self->error);
  self->entered = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  gtk_box_append (GTK_BOX (card), self->entered);
}

static const char *
product_name (SteadView *view)
{
  SteadChoiceView *self = STEAD_CHOICE_VIEW (view);

  return self->answer != NULL ? self->answer->price->cost->product->name : NULL;
}

static void
stead_choice_view_init (SteadChoiceView *self)
{
  const char *columns[] = { _("Day"), _("Price"), _("Sold"), _("Where from"), NULL };

  add_left (self);
  self->plot = STEAD_PLOT (stead_plot_new (_("How many people ask for, by the price"), _("Number sold, by price"), columns));
  stead_plot_set_height (self->plot, 280);
  stead_view_add_page (STEAD_VIEW (self), self->plot, "which-price", product_name);
  stead_view_add_right (STEAD_VIEW (self), GTK_WIDGET (self->plot));
  self->empty = stead_view_note (_("Here comes a chart of what was sold at which price. Enter days at the left, or sell on a sale "
                                   "day: what is counted there comes by itself."));
  gtk_widget_add_css_class (self->empty, "card");
  stead_view_add_right (STEAD_VIEW (self), self->empty);
  stead_view_add_right (STEAD_VIEW (self), stead_view_grid (_("Prices side by side"), &self->grid));
  stead_view_add_right (STEAD_VIEW (self), stead_why_box_new_folded (&self->whys));
}

GtkWidget *
stead_choice_view_new (void)
{
  return g_object_new (STEAD_TYPE_CHOICE_VIEW, NULL);
}
