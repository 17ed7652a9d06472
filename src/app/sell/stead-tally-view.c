/* stead-tally-view.c - the stall while it sells: one tap a unit, from a button or a key.
 *
 * Every tap is on disk before it is shown.  Keys work unless something is typed into a
 * field: a product's key sells one, plus sells one more of the last, Backspace or minus
 * takes the last tap back.
 */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#include "app/sell/stead-tally-view.h"

#include "answer/stead-sale-tally-answer.h"
#include "app/make/stead-make-parts.h"
#include "app/sell/stead-order-dialog.h"
#include "app/sell/stead-sell-parts.h"
#include "app/sell/stead-stall-line-dialog.h"
#include "app/sell/stead-tally-parts.h"
#include "app/stead-columns-layout.h"
#include "app/stead-why-box.h"
#include "core/stead-money.h"

/* Of products, on a wide screen. */
#define COLUMNS 4

struct _SteadTallyView
{
  GtkBox            parent_instance;

  SteadDesk        *desk;        /* not owned */
  gint64            sale_id;
  SteadTallyAnswer *answer;
  gint64            last_line;   /* sold last; 0: nothing yet */
  GArray           *basket_prices;  /* of gint64: of what the customer at the stall takes; below 0: taken back */
  gint64            basket_cents;   /* what that comes to */
  GtkLabel         *sentence, *problem, *last, *basket, *change;
  GtkWidget        *goods, *back, *orders;
  SteadField       *given;
  SteadWhyBox      *whys;
  GtkEventController *keys;      /* of the window, while the tally is seen */
};

G_DEFINE_FINAL_TYPE (SteadTallyView, stead_tally_view, GTK_TYPE_BOX)

/* --- acts ------------------------------------------------------------------------------- */

typedef struct
{
  gint64       id;      /* of a line, a tap or an order */
  SteadTapKind kind;
} Act;

static gboolean
tap_act (SteadStore  *store,
         gpointer     data,
         GError     **error)
{
  const Act *act = data;

  return stead_sale_tally_add (store, act->id, act->kind, 1, stead_sell_now (), NULL, error);
}

static gboolean
back_act (SteadStore  *store,
          gpointer     data,
          GError     **error)
{
  return stead_sale_tally_take_back (store, ((const Act *) data)->id, stead_sell_now (), error);
}

static gboolean
collect_act (SteadStore  *store,
             gpointer     data,
             GError     **error)
{
  return stead_sale_order_collect (store, ((const Act *) data)->id, stead_sell_now (), error);
}

static void
complain (SteadTallyView *self,
          const GError   *error)
{
  stead_make_say (self->problem, error != NULL ? error->message : NULL, FALSE);
}

static void
show_whys (SteadTallyView *self,
           gint64          given_cents)
{
  g_autoptr(GPtrArray) whys = self->answer != NULL ? stead_tally_answer_whys (self->answer) : g_ptr_array_new ();

  if (self->answer != NULL && self->basket_prices->len > 0)
    g_ptr_array_insert (whys, 0, stead_tally_due_why (self->answer->farm, self->basket_prices, self->basket_cents, given_cents));
  stead_why_box_set (self->whys, whys);
}

/* @cents: of what is put into it; below 0: of what is taken out, and no more than all. */
static void
change_basket (SteadTallyView *self,
               gint64          cents)
{
  if (self->basket_cents + cents <= 0)
    g_array_set_size (self->basket_prices, 0);
  else
    g_array_append_val (self->basket_prices, cents);
  self->basket_cents = MAX (0, self->basket_cents + cents);
}

static void
empty_basket (SteadTallyView *self)
{
  change_basket (self, -self->basket_cents);
}

static void
show_basket (SteadTallyView *self)
{
  const SteadFarm *farm = stead_desk_get_farm (self->desk);
  g_autofree char *sum = stead_money_format (self->basket_cents, farm->currency);
  /* Translators: what a customer has to pay. */
  g_autofree char *text = g_strdup_printf (_("To pay: <b>%s</b>"), sum);
  g_autofree char *change = NULL;
  gint64 given = 0;

  gtk_label_set_markup (self->basket, text);
  if (!stead_field_is_empty (self->given) && stead_money_parse (stead_field_get_text (self->given), farm->currency, &given, NULL))
    change = stead_tally_change (farm, self->basket_cents, given);
  stead_make_say (self->change, change, FALSE);
  show_whys (self, change != NULL ? given : 0);
}

static const SteadTallyLine *
line_of (SteadTallyView *self,
         gint64          line_id)
{
  for (guint i = 0; self->answer != NULL && i < self->answer->lines->len; i++)
    if (((SteadTallyLine *) self->answer->lines->pdata[i])->good->id == line_id)
      return self->answer->lines->pdata[i];
  return NULL;
}

static void
tap (SteadTallyView *self,
     gint64          line_id,
     SteadTapKind    kind)
{
  const SteadTallyLine *line = line_of (self, line_id);
  Act act = { line_id, kind };
  g_autoptr(GError) error = NULL;
  g_autofree char *name = NULL;
  gint64 price;

  if (line == NULL)
    return;
  price = line->price_cents;
  /* Translators: name of a step to undo: a product, and what became of one. */
  name = g_strdup_printf (_("%s: %s"), line->good->name, stead_sale_tap_name (kind));
  if (stead_desk_act (self->desk, name, tap_act, &act, &error) && kind == STEAD_TAP_SOLD)
    {
      change_basket (self, price);
      self->last_line = line_id;
    }
  complain (self, error);
  show_basket (self);
}

static void
back_cb (SteadTallyView *self)
{
  Act act = { self->answer != NULL ? self->answer->last_tap : 0, 0 };
  g_autoptr(GError) error = NULL;
  gint64 before;

  if (act.id == 0)
    return;
  before = self->answer->till.takings_cents + self->answer->till.ahead_cents;
  if (stead_desk_act (self->desk, _("a tap taken back"), back_act, &act, &error) && self->answer != NULL)
    change_basket (self, self->answer->till.takings_cents + self->answer->till.ahead_cents - before);
  complain (self, error);
  show_basket (self);
}

static void
next_cb (SteadTallyView *self)
{
  empty_basket (self);
  stead_field_set_text (self->given, "");
  show_basket (self);
}

/* --- goods and orders -------------------------------------------------------------------- */

/* FALSE: the cards are not of these products, in this order. */
static gboolean
show_on_cards (SteadTallyView *self)
{
  GtkWidget *card = gtk_widget_get_first_child (self->goods);

  for (guint i = 0; i < self->answer->lines->len; i++, card = gtk_widget_get_next_sibling (card))
    if (card == NULL || !stead_tally_good_show (card, self->answer->farm, self->answer->lines->pdata[i]))
      return FALSE;
  return card == NULL;
}

static void
show_goods (SteadTallyView *self)
{
  GtkRoot *root = gtk_widget_get_root (GTK_WIDGET (self));
  GtkWidget *focus = root != NULL ? gtk_root_get_focus (root) : NULL;
  gint64 focused = focus != NULL && gtk_widget_is_ancestor (focus, self->goods) ? stead_tally_button_get_id (focus) : 0;

  if (show_on_cards (self))
    return;
  stead_make_clear (self->goods);
  for (guint i = 0; i < self->answer->lines->len; i++)
    {
      const SteadTallyLine *line = self->answer->lines->pdata[i];
      GtkWidget *card = stead_tally_good_new (self->answer->farm, line);

      gtk_box_append (GTK_BOX (self->goods), card);
      /* The focus stays where it was. */
      if (line->good->id == focused)
        gtk_widget_grab_focus (gtk_widget_get_first_child (card));
    }
}

static void
show_orders (SteadTallyView *self)
{
  stead_make_clear (self->orders);
  for (guint i = 0; i < self->answer->orders->len; i++)
    {
      const SteadSaleOrder *order = self->answer->orders->pdata[i];

      gtk_box_append (GTK_BOX (self->orders),
                      stead_tally_order_new (order, stead_sale_find_good (self->answer->sale, order->line_id)));
    }
}

static void
tap_cb (GtkWidget  *widget,
        const char *action,
        GVariant   *id)
{
  SteadTapKind kind = strcmp (action, STEAD_TALLY_SAMPLE) == 0  ? STEAD_TAP_SAMPLE
                      : strcmp (action, STEAD_TALLY_GIVEN) == 0 ? STEAD_TAP_GIVEN
                      : strcmp (action, STEAD_TALLY_SPOILED) == 0 ? STEAD_TAP_SPOILED : STEAD_TAP_SOLD;

  tap (STEAD_TALLY_VIEW (widget), g_variant_get_int64 (id), kind);
}

static void
change_cb (GtkWidget  *widget,
           const char *action,
           GVariant   *id)
{
  SteadTallyView *self = STEAD_TALLY_VIEW (widget);

  stead_stall_line_dialog_show (widget, self->desk, self->sale_id, g_variant_get_int64 (id));
}

static void
collect_cb (GtkWidget  *widget,
            const char *action,
            GVariant   *id)
{
  SteadTallyView *self = STEAD_TALLY_VIEW (widget);
  Act act = { g_variant_get_int64 (id), STEAD_TAP_SOLD };
  g_autoptr(GError) error = NULL;

  if (!stead_desk_act (self->desk, _("an order collected"), collect_act, &act, &error))
    complain (self, error);
}

static void
edit_order_cb (GtkWidget  *widget,
               const char *action,
               GVariant   *id)
{
  SteadTallyView *self = STEAD_TALLY_VIEW (widget);

  stead_order_dialog_show (widget, self->desk, self->sale_id, g_variant_get_int64 (id));
}

static void
order_cb (SteadTallyView *self)
{
  stead_order_dialog_show (GTK_WIDGET (self), self->desk, self->sale_id, 0);
}

/* --- keys -------------------------------------------------------------------------------------- */

static gboolean
key_cb (SteadTallyView  *self,
        guint            key,
        guint            code,
        GdkModifierType  state)
{
  GtkRoot *root = gtk_widget_get_root (GTK_WIDGET (self));
  GtkWidget *focus = root != NULL ? gtk_root_get_focus (root) : NULL;
  gunichar letter = g_unichar_tolower (gdk_keyval_to_unicode (key));

  if ((state & (GDK_CONTROL_MASK | GDK_ALT_MASK)) != 0 || self->answer == NULL || (focus != NULL && GTK_IS_EDITABLE (focus)))
    return FALSE;
  if (key == GDK_KEY_BackSpace || key == GDK_KEY_KP_Subtract || letter == '-')
    {
      back_cb (self);
      return TRUE;
    }
  if ((key == GDK_KEY_KP_Add || letter == '+') && self->last_line != 0)
    {
      tap (self, self->last_line, STEAD_TAP_SOLD);
      return TRUE;
    }
  for (guint i = 0; i < self->answer->lines->len; i++)
    {
      const SteadSaleGood *good = ((SteadTallyLine *) self->answer->lines->pdata[i])->good;

      if (letter == 0 || letter != (gunichar) good->key)
        continue;
      tap (self, good->id, STEAD_TAP_SOLD);
      return TRUE;
    }
  return FALSE;
}

/* --- the view ------------------------------------------------------------------------------------ */

void
stead_tally_view_show (SteadTallyView *self,
                       SteadDesk      *desk,
                       gint64          sale_id)
{
  g_autoptr(GError) error = NULL;
  SteadTallyAnswer *answer = stead_tally_answer_new (stead_desk_get_store (desk), sale_id, &error);

  if (answer == NULL)
    {
      complain (self, error);
      return;
    }
  if (sale_id != self->sale_id)
    {
      empty_basket (self);
      self->last_line = 0;
      complain (self, NULL);
    }
  self->desk = desk;
  self->sale_id = sale_id;
  g_clear_pointer (&self->answer, stead_tally_answer_free);
  self->answer = answer;
  stead_make_say (self->sentence, answer->sentence, TRUE);
  stead_make_say (self->last, answer->last, FALSE);
  gtk_widget_set_sensitive (self->back, answer->last_tap != 0);
  stead_field_set_currency (self->given, answer->farm->currency);
  show_goods (self);
  show_orders (self);
  show_basket (self);
}

static void
stead_tally_view_dispose (GObject *object)
{
  SteadTallyView *self = STEAD_TALLY_VIEW (object);

  g_clear_pointer (&self->answer, stead_tally_answer_free);
  g_clear_pointer (&self->basket_prices, g_array_unref);
  G_OBJECT_CLASS (stead_tally_view_parent_class)->dispose (object);
}

/* Keys sell wherever the focus is in the window, so they are the window's meanwhile. */
static void
stead_tally_view_map (GtkWidget *widget)
{
  SteadTallyView *self = STEAD_TALLY_VIEW (widget);

  GTK_WIDGET_CLASS (stead_tally_view_parent_class)->map (widget);
  self->keys = gtk_event_controller_key_new ();
  gtk_event_controller_set_propagation_phase (self->keys, GTK_PHASE_CAPTURE);
  g_signal_connect_object (self->keys, "key-pressed", G_CALLBACK (key_cb), self, G_CONNECT_SWAPPED);
  gtk_widget_add_controller (GTK_WIDGET (gtk_widget_get_root (widget)), self->keys);
}

static void
stead_tally_view_unmap (GtkWidget *widget)
{
  SteadTallyView *self = STEAD_TALLY_VIEW (widget);
  GtkRoot *root = gtk_widget_get_root (widget);

  if (self->keys != NULL && root != NULL)
    gtk_widget_remove_controller (GTK_WIDGET (root), self->keys);
  self->keys = NULL;
  GTK_WIDGET_CLASS (stead_tally_view_parent_class)->unmap (widget);
}

static void
stead_tally_view_class_init (SteadTallyViewClass *klass)
{
  static const char * const taps[] = { STEAD_TALLY_SOLD, STEAD_TALLY_SAMPLE, STEAD_TALLY_GIVEN, STEAD_TALLY_SPOILED };

  G_OBJECT_CLASS (klass)->dispose = stead_tally_view_dispose;
  GTK_WIDGET_CLASS (klass)->map = stead_tally_view_map;
  GTK_WIDGET_CLASS (klass)->unmap = stead_tally_view_unmap;
  for (gsize i = 0; i < G_N_ELEMENTS (taps); i++)
    gtk_widget_class_install_action (GTK_WIDGET_CLASS (klass), taps[i], "x", tap_cb);
  gtk_widget_class_install_action (GTK_WIDGET_CLASS (klass), STEAD_TALLY_CHANGE, "x", change_cb);
  gtk_widget_class_install_action (GTK_WIDGET_CLASS (klass), STEAD_TALLY_COLLECT, "x", collect_cb);
  gtk_widget_class_install_action (GTK_WIDGET_CLASS (klass), STEAD_TALLY_EDIT_ORDER, "x", edit_order_cb);
}

/* In one row over the goods, so that it is seen while they are tapped; what takes a wrong
 * tap back is in reach. */
static void
add_till (SteadTallyView *self)
{
  GtkWidget *card = stead_sell_card (GTK_WIDGET (self), NULL);
  GtkWidget *row = stead_sell_row (card);

  self->basket = GTK_LABEL (stead_make_label (NULL, "sentence"));
  gtk_label_set_wrap (self->basket, FALSE);
  gtk_widget_set_margin_end (GTK_WIDGET (self->basket), 12);
  gtk_box_append (GTK_BOX (row), GTK_WIDGET (self->basket));
  self->given = stead_sell_field (row, _("Money given"), STEAD_FIELD_MONEY);
  g_object_set (self->given, "compact", TRUE, NULL);
  gtk_widget_set_hexpand (GTK_WIDGET (self->given), FALSE);
  g_signal_connect_swapped (self->given, "changed", G_CALLBACK (show_basket), self);
  g_signal_connect_swapped (self->given, "activate", G_CALLBACK (next_cb), self);
  stead_sell_button (row, _("Next customer"), G_CALLBACK (next_cb), self);
  self->back = stead_sell_button (row, _("Take back the last tap"), G_CALLBACK (back_cb), self);
  self->change = GTK_LABEL (stead_make_label (NULL, "strong"));
  gtk_box_append (GTK_BOX (card), GTK_WIDGET (self->change));
  self->last = GTK_LABEL (stead_make_label (NULL, "soft"));
  gtk_box_append (GTK_BOX (card), GTK_WIDGET (self->last));
}

static void
stead_tally_view_init (SteadTallyView *self)
{
  GtkWidget *card;

  gtk_orientable_set_orientation (GTK_ORIENTABLE (self), GTK_ORIENTATION_VERTICAL);
  gtk_box_set_spacing (GTK_BOX (self), 12);
  self->basket_prices = g_array_new (FALSE, FALSE, sizeof (gint64));
  self->sentence = GTK_LABEL (stead_make_label (NULL, "sentence"));
  gtk_box_append (GTK_BOX (self), GTK_WIDGET (self->sentence));
  self->problem = GTK_LABEL (stead_make_label (NULL, "warn"));
  gtk_box_append (GTK_BOX (self), GTK_WIDGET (self->problem));
  add_till (self);
  self->goods = gtk_box_new (GTK_ORIENTATION_VERTICAL, 12);
  gtk_widget_set_layout_manager (self->goods, stead_columns_layout_new (COLUMNS, 0, TRUE));
  gtk_box_append (GTK_BOX (self), self->goods);
  card = stead_sell_card (GTK_WIDGET (self), _("What was ordered ahead"));
  self->orders = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);
  gtk_box_append (GTK_BOX (card), self->orders);
  stead_sell_button (stead_sell_row (card), _("New order…"), G_CALLBACK (order_cb), self);
  gtk_box_append (GTK_BOX (self), stead_why_box_new_folded (&self->whys));
}
