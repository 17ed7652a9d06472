/* stead-tally-parts.c - the card of a product at the stall, and the row of an order. */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "app/sell/stead-tally-parts.h"

#include "app/make/stead-make-parts.h"
#include "app/stead-ui.h"
#include "core/stead-money.h"

/* Small buttons of a card, side by side. */
#define SMALL_COLUMNS 2

static void
set_action (GtkWidget  *button,
            const char *action,
            gint64      id)
{
  gtk_actionable_set_action_name (GTK_ACTIONABLE (button), action);
  gtk_actionable_set_action_target (GTK_ACTIONABLE (button), "x", id);
}

gint64
stead_tally_button_get_id (GtkWidget *button)
{
  GVariant *id = GTK_IS_ACTIONABLE (button) ? gtk_actionable_get_action_target_value (GTK_ACTIONABLE (button)) : NULL;

  return id != NULL && g_variant_is_of_type (id, G_VARIANT_TYPE_INT64) ? g_variant_get_int64 (id) : 0;
}

static GtkWidget *
button_new (const char *label,
            const char *what,
            const char *action,
            gint64      id)
{
  GtkWidget *button = gtk_button_new_with_label (label);
  /* Translators: for a screen reader: what a button does, and for which product or order. */
  g_autofree char *name = g_strdup_printf (_("%s: %s"), label, what);

  stead_ui_name (button, name);
  set_action (button, action, id);
  return button;
}

/* --- a product ---------------------------------------------------------------------------- */

/* What a card shows, and where. */
typedef struct
{
  gint64    id;
  char     *name;
  char      key;
  GtkLabel *head, *count;
} Good;

static void
good_free (gpointer data)
{
  Good *good = data;

  g_free (good->name);
  g_free (good);
}

static GQuark
good_quark (void)
{
  return g_quark_from_static_string ("stead-tally-good");
}

static GtkLabel *
add_centered (GtkWidget  *box,
              const char *text,
              const char *style)
{
  GtkWidget *label = stead_make_label (text, style);

  gtk_label_set_xalign (GTK_LABEL (label), 0.5);
  gtk_label_set_justify (GTK_LABEL (label), GTK_JUSTIFY_CENTER);
  gtk_box_append (GTK_BOX (box), label);
  return GTK_LABEL (label);
}

static GtkWidget *
tap_button_new (const SteadTallyLine *line,
                Good                 *good)
{
  GtkWidget *button = gtk_button_new ();
  GtkWidget *face = gtk_box_new (GTK_ORIENTATION_VERTICAL, 3);
  /* Translators: for a screen reader: a product to sell one of. */
  g_autofree char *name = g_strdup_printf (_("Sell %s"), line->good->name);

  add_centered (face, line->good->name, "tap-name");
  good->head = add_centered (face, NULL, NULL);
  gtk_widget_set_valign (face, GTK_ALIGN_CENTER);
  gtk_button_set_child (GTK_BUTTON (button), face);
  gtk_widget_add_css_class (button, "tap");
  gtk_widget_set_hexpand (button, TRUE);
  stead_ui_name (button, name);
  set_action (button, STEAD_TALLY_SOLD, line->good->id);
  return button;
}

GtkWidget *
stead_tally_good_new (const SteadFarm      *farm,
                      const SteadTallyLine *line)
{
  const struct { const char *label, *action; } small[] = {
    { C_("tally", "Sample"), STEAD_TALLY_SAMPLE }, { C_("tally", "Given away"), STEAD_TALLY_GIVEN },
    { C_("tally", "Spoiled"), STEAD_TALLY_SPOILED }, { _("Change…"), STEAD_TALLY_CHANGE },
  };
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);
  GtkWidget *grid = gtk_grid_new ();
  GtkWidget *label;
  Good *good = g_new0 (Good, 1);

  good->id = line->good->id;
  good->name = g_strdup (line->good->name);
  good->key = line->good->key;
  g_object_set_qdata_full (G_OBJECT (box), good_quark (), good, good_free);
  gtk_box_append (GTK_BOX (box), tap_button_new (line, good));
  label = stead_make_label (NULL, "strong");
  good->count = GTK_LABEL (label);
  gtk_widget_set_vexpand (label, TRUE);
  gtk_widget_set_valign (label, GTK_ALIGN_START);
  gtk_box_append (GTK_BOX (box), label);
  gtk_grid_set_column_homogeneous (GTK_GRID (grid), TRUE);
  gtk_grid_set_column_spacing (GTK_GRID (grid), 6);
  gtk_grid_set_row_spacing (GTK_GRID (grid), 6);
  for (int i = 0; i < (int) G_N_ELEMENTS (small); i++)
    gtk_grid_attach (GTK_GRID (grid), button_new (small[i].label, line->good->name, small[i].action, line->good->id),
                     i % SMALL_COLUMNS, i / SMALL_COLUMNS, 1, 1);
  gtk_box_append (GTK_BOX (box), grid);
  gtk_widget_add_css_class (box, "card");
  gtk_widget_set_hexpand (box, TRUE);
  stead_tally_good_show (box, farm, line);
  return box;
}

gboolean
stead_tally_good_show (GtkWidget            *card,
                       const SteadFarm      *farm,
                       const SteadTallyLine *line)
{
  const Good *good = g_object_get_qdata (G_OBJECT (card), good_quark ());
  g_autofree char *price = NULL, *sold = NULL, *head = NULL, *count = NULL;

  if (good->id != line->good->id || good->key != line->good->key || g_strcmp0 (good->name, line->good->name) != 0)
    return FALSE;
  price = stead_money_format (line->price_cents, farm->currency);
  sold = stead_words_units (line->good->pack, line->sum.sold);
  /* Translators: a price, and the key to press for it. */
  head = g_strdup_printf (_("%s, key %c"), price, g_ascii_toupper (good->key));
  /* Translators: what was sold, and what is left: "7 dozen sold, 3 dozen left". */
  count = g_strdup_printf (_("%s sold, %s"), sold, line->left);
  gtk_label_set_text (good->head, head);
  gtk_label_set_text (good->count, count);
  return TRUE;
}

/* --- an order ------------------------------------------------------------------------------ */

GtkWidget *
stead_tally_order_new (const SteadSaleOrder *order,
                       const SteadSaleGood  *good)
{
  GtkWidget *row = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6);
  const char *who = order->who != NULL ? order->who : _("no name");
  g_autofree char *amount = good != NULL ? stead_words_units (good->pack, order->units) : NULL;
  /* Translators: who ordered, a product, an amount, and whether it was paid. */
  g_autofree char *text = g_strdup_printf (order->paid ? _("%s: %s, %s, paid before") : _("%s: %s, %s, to pay"), who,
                                           good != NULL ? good->name : "", amount != NULL ? amount : "");
  GtkWidget *label = stead_make_label (text, order->tap_id != 0 ? "done" : NULL);

  gtk_widget_set_hexpand (label, TRUE);
  gtk_box_append (GTK_BOX (row), label);
  if (order->tap_id != 0)
    return row;
  gtk_box_append (GTK_BOX (row), button_new (_("Collected"), who, STEAD_TALLY_COLLECT, order->id));
  gtk_box_append (GTK_BOX (row), button_new (_("Edit…"), who, STEAD_TALLY_EDIT_ORDER, order->id));
  return row;
}
