/* stead-tally-view.c - the stall while it sells: one tap a unit, from a button or a key.
 *
 * Every tap is on disk before it is shown.  Keys work unless something is typed into a
 * field: a product's key sells one, plus sells one more of the last, Backspace or minus
 * takes the last tap back.
 */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "app/sell/stead-tally-view.h"

#include "answer/stead-sale-tally-answer.h"
#include "app/make/stead-make-parts.h"
#include "app/sell/stead-order-dialog.h"
#include "app/sell/stead-sell-parts.h"
#include "app/sell/stead-stall-line-dialog.h"
#include "app/stead-ui.h"
#include "core/stead-money.h"

#define COLUMNS 3

struct _SteadTallyView
{
  GtkBox            parent_instance;

  SteadDesk        *desk;        /* not owned */
  gint64            sale_id;
  SteadTallyAnswer *answer;
  gint64            last_line;   /* sold last; 0: nothing yet */
  gint64            basket_cents;   /* what the customer at the stall has to pay */
  GtkLabel         *sentence, *problem, *last, *basket, *change;
  GtkWidget        *goods, *back, *orders;
  SteadField       *given;
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
      self->basket_cents += price;
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
    self->basket_cents = MAX (0, self->basket_cents - (before - self->answer->till.takings_cents
                                                       - self->answer->till.ahead_cents));
  complain (self, error);
  show_basket (self);
}

static void
next_cb (SteadTallyView *self)
{
  self->basket_cents = 0;
  stead_field_set_text (self->given, "");
  show_basket (self);
}

/* --- goods -------------------------------------------------------------------------------- */

#define LINE_KEY "stead-line"

static void
set_id (GtkWidget *widget,
        gint64     id)
{
  g_object_set_data_full (G_OBJECT (widget), LINE_KEY, g_memdup2 (&id, sizeof id), g_free);
}

static gint64
get_id (GtkWidget *widget)
{
  const gint64 *id = g_object_get_data (G_OBJECT (widget), LINE_KEY);

  return id != NULL ? *id : 0;
}

static SteadTallyView *
view_of (GtkWidget *widget)
{
  return STEAD_TALLY_VIEW (gtk_widget_get_ancestor (widget, STEAD_TYPE_TALLY_VIEW));
}

static void
sold_cb (GtkWidget *button)
{
  tap (view_of (button), get_id (button), STEAD_TAP_SOLD);
}

static void
sample_cb (GtkWidget *button)
{
  tap (view_of (button), get_id (button), STEAD_TAP_SAMPLE);
}

static void
given_cb (GtkWidget *button)
{
  tap (view_of (button), get_id (button), STEAD_TAP_GIVEN);
}

static void
spoiled_cb (GtkWidget *button)
{
  tap (view_of (button), get_id (button), STEAD_TAP_SPOILED);
}

static void
change_cb (GtkWidget *button)
{
  SteadTallyView *self = view_of (button);

  stead_stall_line_dialog_show (GTK_WIDGET (self), self->desk, self->sale_id, get_id (button));
}

static void
small_button (GtkWidget            *row,
              const SteadTallyLine *line,
              const char           *label,
              GCallback             clicked)
{
  GtkWidget *button = gtk_button_new_with_label (label);
  /* Translators: for a screen reader: what a button does, and for which product. */
  g_autofree char *name = g_strdup_printf (_("%s: %s"), label, line->good->name);

  stead_ui_name (button, name);
  set_id (button, line->good->id);
  g_signal_connect (button, "clicked", clicked, NULL);
  gtk_box_append (GTK_BOX (row), button);
}

static GtkWidget *
good_new (SteadTallyView       *self,
          const SteadTallyLine *line)
{
  const char *currency = self->answer->farm->currency;
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);
  GtkWidget *button = gtk_button_new ();
  GtkWidget *face = gtk_box_new (GTK_ORIENTATION_VERTICAL, 3);
  GtkWidget *row, *label;
  g_autofree char *price = stead_money_format (line->price_cents, currency);
  g_autofree char *sold = stead_words_units (line->good->pack, line->sum.sold);
  /* Translators: what was sold, and what is left: "7 dozen sold, 3 dozen left". */
  g_autofree char *count = g_strdup_printf (_("%s sold, %s"), sold, line->left);
  /* Translators: a price, and the key to press for it. */
  g_autofree char *head = g_strdup_printf (_("%s, key %c"), price, g_ascii_toupper (line->good->key));
  /* Translators: for a screen reader: a product to sell one of. */
  g_autofree char *name = g_strdup_printf (_("Sell %s"), line->good->name);

  gtk_box_append (GTK_BOX (face), label = stead_make_label (line->good->name, "tap-name"));
  gtk_label_set_xalign (GTK_LABEL (label), 0.5);
  gtk_label_set_justify (GTK_LABEL (label), GTK_JUSTIFY_CENTER);
  gtk_box_append (GTK_BOX (face), label = stead_make_label (head, NULL));
  gtk_label_set_xalign (GTK_LABEL (label), 0.5);
  gtk_widget_set_valign (face, GTK_ALIGN_CENTER);
  gtk_button_set_child (GTK_BUTTON (button), face);
  gtk_widget_add_css_class (button, "tap");
  gtk_widget_set_hexpand (button, TRUE);
  stead_ui_name (button, name);
  set_id (button, line->good->id);
  g_signal_connect (button, "clicked", G_CALLBACK (sold_cb), NULL);
  gtk_box_append (GTK_BOX (box), button);
  gtk_box_append (GTK_BOX (box), stead_make_label (count, "strong"));
  row = stead_sell_row (box);
  small_button (row, line, C_("tally", "Sample"), G_CALLBACK (sample_cb));
  small_button (row, line, C_("tally", "Given away"), G_CALLBACK (given_cb));
  small_button (row, line, C_("tally", "Spoiled"), G_CALLBACK (spoiled_cb));
  small_button (row, line, _("Change…"), G_CALLBACK (change_cb));
  gtk_widget_add_css_class (box, "card");
  gtk_widget_set_hexpand (box, TRUE);
  return box;
}

/* The big button of a line, to keep the focus where it was. */
static GtkWidget *
button_of (SteadTallyView *self,
           gint64          line_id)
{
  for (GtkWidget *box = gtk_widget_get_first_child (self->goods); box != NULL; box = gtk_widget_get_next_sibling (box))
    {
      GtkWidget *button = gtk_widget_get_first_child (box);

      if (get_id (button) == line_id)
        return button;
    }
  return NULL;
}

static void
show_goods (SteadTallyView *self)
{
  GtkRoot *root = gtk_widget_get_root (GTK_WIDGET (self));
  GtkWidget *focus = root != NULL ? gtk_root_get_focus (root) : NULL;
  gint64 focused = focus != NULL && gtk_widget_is_ancestor (focus, self->goods) ? get_id (focus) : 0;
  GtkWidget *button;

  stead_make_clear (self->goods);
  for (guint i = 0; i < self->answer->lines->len; i++)
    gtk_grid_attach (GTK_GRID (self->goods), good_new (self, self->answer->lines->pdata[i]), (int) i % COLUMNS,
                     (int) i / COLUMNS, 1, 1);
  button = focused != 0 ? button_of (self, focused) : NULL;
  if (button != NULL)
    gtk_widget_grab_focus (button);
}

/* --- orders --------------------------------------------------------------------------------- */

static void
collect_cb (GtkWidget *button)
{
  SteadTallyView *self = view_of (button);
  Act act = { get_id (button), STEAD_TAP_SOLD };
  g_autoptr(GError) error = NULL;

  if (!stead_desk_act (self->desk, _("an order collected"), collect_act, &act, &error))
    complain (self, error);
}

static void
order_cb (SteadTallyView *self)
{
  stead_order_dialog_show (GTK_WIDGET (self), self->desk, self->sale_id, 0);
}

static void
edit_order_cb (GtkWidget *button)
{
  SteadTallyView *self = view_of (button);

  stead_order_dialog_show (GTK_WIDGET (self), self->desk, self->sale_id, get_id (button));
}

static void
order_button (GtkWidget  *row,
              gint64      id,
              const char *label,
              const char *who,
              GCallback   clicked)
{
  GtkWidget *button = gtk_button_new_with_label (label);
  g_autofree char *name = g_strdup_printf (_("%s: %s"), label, who);

  stead_ui_name (button, name);
  set_id (button, id);
  g_signal_connect (button, "clicked", clicked, NULL);
  gtk_box_append (GTK_BOX (row), button);
}

static void
show_orders (SteadTallyView *self)
{
  stead_make_clear (self->orders);
  for (guint i = 0; i < self->answer->orders->len; i++)
    {
      const SteadSaleOrder *order = self->answer->orders->pdata[i];
      const SteadSaleGood *good = stead_sale_find_good (self->answer->sale, order->line_id);
      GtkWidget *row = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6);
      const char *who = order->who != NULL ? order->who : _("no name");
      g_autofree char *amount = good != NULL ? stead_words_units (good->pack, order->units) : NULL;
      /* Translators: who ordered, a product, an amount, and whether it was paid. */
      g_autofree char *text = g_strdup_printf (order->paid ? _("%s: %s, %s, paid before") : _("%s: %s, %s, to pay"), who,
                                               good != NULL ? good->name : "", amount != NULL ? amount : "");
      GtkWidget *label = stead_make_label (text, order->tap_id != 0 ? "done" : NULL);

      gtk_widget_set_hexpand (label, TRUE);
      gtk_box_append (GTK_BOX (row), label);
      if (order->tap_id == 0)
        {
          order_button (row, order->id, _("Collected"), who, G_CALLBACK (collect_cb));
          order_button (row, order->id, _("Edit…"), who, G_CALLBACK (edit_order_cb));
        }
      gtk_box_append (GTK_BOX (self->orders), row);
    }
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
      self->basket_cents = 0;
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
  G_OBJECT_CLASS (klass)->dispose = stead_tally_view_dispose;
  GTK_WIDGET_CLASS (klass)->map = stead_tally_view_map;
  GTK_WIDGET_CLASS (klass)->unmap = stead_tally_view_unmap;
}

/* In one row over the goods, so that it is seen while they are tapped. */
static void
add_till (SteadTallyView *self)
{
  GtkWidget *card = stead_sell_card (GTK_WIDGET (self), NULL);
  GtkWidget *row = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 12);

  gtk_box_append (GTK_BOX (card), row);
  self->basket = GTK_LABEL (stead_make_label (NULL, "sentence"));
  gtk_widget_set_hexpand (GTK_WIDGET (self->basket), TRUE);
  gtk_box_append (GTK_BOX (row), GTK_WIDGET (self->basket));
  self->given = stead_sell_field (row, _("Money given"), STEAD_FIELD_MONEY);
  g_object_set (self->given, "compact", TRUE, NULL);
  gtk_widget_set_hexpand (GTK_WIDGET (self->given), FALSE);
  g_signal_connect_swapped (self->given, "changed", G_CALLBACK (show_basket), self);
  g_signal_connect_swapped (self->given, "activate", G_CALLBACK (next_cb), self);
  gtk_widget_set_valign (stead_sell_button (row, _("Next customer"), G_CALLBACK (next_cb), self), GTK_ALIGN_START);
  self->change = GTK_LABEL (stead_make_label (NULL, "strong"));
  gtk_box_append (GTK_BOX (card), GTK_WIDGET (self->change));
}

static void
stead_tally_view_init (SteadTallyView *self)
{
  GtkWidget *row, *card;

  gtk_orientable_set_orientation (GTK_ORIENTABLE (self), GTK_ORIENTATION_VERTICAL);
  gtk_box_set_spacing (GTK_BOX (self), 12);
  self->sentence = GTK_LABEL (stead_make_label (NULL, "sentence"));
  gtk_box_append (GTK_BOX (self), GTK_WIDGET (self->sentence));
  row = stead_sell_row (GTK_WIDGET (self));
  self->back = stead_sell_button (row, _("Take back the last tap"), G_CALLBACK (back_cb), self);
  self->last = GTK_LABEL (stead_make_label (NULL, "soft"));
  gtk_box_append (GTK_BOX (row), GTK_WIDGET (self->last));
  self->problem = GTK_LABEL (stead_make_label (NULL, "warn"));
  gtk_box_append (GTK_BOX (self), GTK_WIDGET (self->problem));
  add_till (self);
  self->goods = gtk_grid_new ();
  gtk_grid_set_column_spacing (GTK_GRID (self->goods), 12);
  gtk_grid_set_row_spacing (GTK_GRID (self->goods), 12);
  gtk_grid_set_column_homogeneous (GTK_GRID (self->goods), TRUE);
  gtk_box_append (GTK_BOX (self), self->goods);
  card = stead_sell_card (GTK_WIDGET (self), _("What was ordered ahead"));
  self->orders = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);
  gtk_box_append (GTK_BOX (card), self->orders);
  row = stead_sell_row (card);
  stead_sell_button (row, _("New order…"), G_CALLBACK (order_cb), self);
}
