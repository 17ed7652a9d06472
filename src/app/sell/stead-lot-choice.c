/* stead-lot-choice.c - out of which lots a product is brought: proposed, or by hand.
 *
 * Words tell the lots.  By hand each lot has a field; while nothing was typed
 * into them they follow the proposal.
 */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "app/sell/stead-lot-choice.h"

#include "answer/stead-sale-lots.h"
#include "app/make/stead-make-parts.h"
#include "app/stead-ui.h"
#include "core/stead-quantity.h"

#define COLUMNS 2

/* Decimals of a number of units in a field, and what its last one is worth. */
#define SHOWN_DECIMALS 2
#define SHOWN_UNITS 0.01

struct _SteadLotChoice
{
  GtkBox        parent_instance;

  SteadStore   *store;      /* not owned */
  SteadProduct *product;    /* (nullable) */
  SteadDay      day;
  double        units;
  GArray       *chosen;     /* of SteadSaleLot: by hand; empty: as proposed */
  GArray       *claims;     /* of SteadSaleLot: what others take */
  GPtrArray    *choices;    /* (nullable) of SteadSaleLotChoice */
  gboolean      by_hand;
  GPtrArray    *fields;     /* of SteadField, not owned, one a choice */
  GtkWidget    *texts;      /* a box */
  GtkButton    *button;
  GtkWidget    *grid;
};

enum { CHANGED, N_SIGNALS };

static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (SteadLotChoice, stead_lot_choice, GTK_TYPE_BOX)

/* 61 eggs are 5.083333 dozen: shown as 5.08, which is not to leave a bit of an egg behind. */
static double
whole_of (double                    units,
          const SteadSaleLotChoice *choice)
{
  if (fabs (units - choice->units) <= SHOWN_UNITS / 2)
    return choice->units;
  return fabs (units - choice->there_units) <= SHOWN_UNITS / 2 ? choice->there_units : units;
}

static void
show_units (SteadField *field,
            double      units)
{
  g_autofree char *text = stead_number_format (units, SHOWN_DECIMALS);

  stead_field_set_text (field, text);
}

/* What stands in the fields, as far as it can be read. */
static void
read_fields (SteadLotChoice *self)
{
  for (guint i = 0; i < self->fields->len; i++)
    {
      SteadSaleLotChoice *choice = self->choices->pdata[i];

      double units = 0;

      stead_sell_peek_units (self->fields->pdata[i], &units);
      choice->units = whole_of (units, choice);
    }
}

static void
show_texts (SteadLotChoice *self)
{
  g_autoptr(GPtrArray) texts = NULL;

  stead_make_clear (self->texts);
  if (self->choices != NULL)
    texts = stead_sale_lots_texts (self->choices, self->product->pack, self->units);
  if (texts != NULL && texts->len > 0)
    gtk_box_append (GTK_BOX (self->texts), stead_sell_lots (texts));
}

static void
typed_cb (SteadLotChoice *self)
{
  read_fields (self);
  show_texts (self);
  g_signal_emit (self, signals[CHANGED], 0, TRUE);
}

static GtkWidget *
field_new (SteadLotChoice           *self,
           const SteadSaleLotChoice *choice)
{
  g_autofree char *there = stead_words_units (self->product->pack, choice->there_units);
  g_autofree char *day = choice->best_by != STEAD_DAY_NONE ? stead_day_format (choice->best_by, STEAD_DAY_STYLE_SHORT) : NULL;
  /* Translators: the code of a lot, its best-by day, and how much there is of it. */
  g_autofree char *label = day != NULL ? g_strdup_printf (_("%1$s, best by %2$s: %3$s there"), choice->code, day, there)
                                       /* Translators: the code of a lot, and how much there is of it. */
                                       : g_strdup_printf (_("%1$s: %2$s there"), choice->code, there);
  SteadField *field = stead_sell_field (NULL, label, STEAD_FIELD_NUMBER);

  if (choice->units > 0)
    show_units (field, choice->units);
  g_signal_connect_swapped (field, "changed", G_CALLBACK (typed_cb), self);
  g_ptr_array_add (self->fields, field);
  return GTK_WIDGET (field);
}

static void
show_fields (SteadLotChoice *self)
{
  guint n = self->choices != NULL ? self->choices->len : 0;
  const char *label = self->by_hand ? _("As proposed") : _("Choose lots");
  /* Translators: for a screen reader: what a button does, and for which product. */
  g_autofree char *name = g_strdup_printf (_("%s: %s"), label, self->product->name);

  stead_make_clear (self->grid);
  g_ptr_array_set_size (self->fields, 0);
  for (guint i = 0; self->by_hand && i < n; i++)
    gtk_grid_attach (GTK_GRID (self->grid), field_new (self, self->choices->pdata[i]), (int) i % COLUMNS,
                     (int) i / COLUMNS, 1, 1);
  gtk_widget_set_visible (self->grid, self->by_hand && n > 0);
  gtk_widget_set_visible (GTK_WIDGET (self->button), n > 0);
  gtk_button_set_label (self->button, label);
  stead_ui_name (GTK_WIDGET (self->button), name);
}

static void
show (SteadLotChoice *self)
{
  g_autoptr(GError) error = NULL;

  stead_make_clear (self->grid);
  g_ptr_array_set_size (self->fields, 0);
  g_clear_pointer (&self->choices, g_ptr_array_unref);
  gtk_widget_set_visible (GTK_WIDGET (self), self->product != NULL && self->day != STEAD_DAY_NONE);
  if (self->product == NULL || self->day == STEAD_DAY_NONE)
    return;
  self->choices = stead_sale_lots_new (self->store, self->product, self->day, self->units,
                                       self->by_hand ? self->chosen : NULL, self->claims, &error);
  show_texts (self);
  if (error != NULL)
    gtk_box_append (GTK_BOX (self->texts), stead_make_label (error->message, "soft"));
  show_fields (self);
  gtk_widget_set_visible (GTK_WIDGET (self), gtk_widget_get_first_child (self->texts) != NULL
                                             || gtk_widget_get_visible (GTK_WIDGET (self->button)));
}

static void
toggle_cb (SteadLotChoice *self)
{
  self->by_hand = !self->by_hand;
  g_array_set_size (self->chosen, 0);
  g_signal_emit (self, signals[CHANGED], 0, FALSE);
  if (self->by_hand && self->fields->len > 0)
    gtk_widget_grab_focus (self->fields->pdata[0]);
}

/* --- for the row -------------------------------------------------------------------------- */

void
stead_lot_choice_set (SteadLotChoice *self,
                      const GArray   *lots)
{
  g_return_if_fail (STEAD_IS_LOT_CHOICE (self));

  g_array_set_size (self->chosen, 0);
  if (lots != NULL)
    g_array_append_vals (self->chosen, lots->data, lots->len);
  self->by_hand = self->chosen->len > 0;
}

/* What was typed by hand is not lost when the number or the day changes. */
static void
keep_typed (SteadLotChoice *self)
{
  if (!self->by_hand || self->fields->len == 0)
    return;
  read_fields (self);
  g_array_set_size (self->chosen, 0);
  for (guint i = 0; i < self->choices->len; i++)
    {
      const SteadSaleLotChoice *choice = self->choices->pdata[i];
      SteadSaleLot lot = { choice->lot_id, choice->units * self->product->base_per_unit };

      if (lot.base > 0)
        g_array_append_val (self->chosen, lot);
    }
}

void
stead_lot_choice_propose (SteadLotChoice *self,
                          gint64          product_id,
                          SteadDay        day,
                          double          units,
                          const GArray   *claims)
{
  g_return_if_fail (STEAD_IS_LOT_CHOICE (self));

  if (self->product == NULL || self->product->id == product_id)
    keep_typed (self);
  if (self->product == NULL || self->product->id != product_id)
    {
      g_clear_pointer (&self->product, stead_product_free);
      self->product = stead_product_repo_get (self->store, product_id, NULL);
    }
  self->day = day;
  self->units = units;
  g_array_set_size (self->claims, 0);
  if (claims != NULL)
    g_array_append_vals (self->claims, claims->data, claims->len);
  show (self);
}

void
stead_lot_choice_claim (SteadLotChoice *self,
                        GArray         *claims,
                        int             times)
{
  g_return_if_fail (STEAD_IS_LOT_CHOICE (self) && claims != NULL);

  if (self->choices != NULL && self->product != NULL)
    {
      stead_sale_lots_claim_all (claims, self->choices, times * self->product->base_per_unit);
      return;
    }
  for (guint i = 0; i < self->chosen->len; i++)
    {
      const SteadSaleLot *lot = &g_array_index (self->chosen, SteadSaleLot, i);

      stead_sale_lots_claim (claims, lot->lot_id, times * lot->base);
    }
}

gboolean
stead_lot_choice_is_by_hand (SteadLotChoice *self)
{
  g_return_val_if_fail (STEAD_IS_LOT_CHOICE (self), FALSE);

  return self->by_hand;
}

gint64
stead_lot_choice_get_item (SteadLotChoice *self)
{
  g_return_val_if_fail (STEAD_IS_LOT_CHOICE (self), 0);

  return self->product != NULL ? self->product->item_id : 0;
}

gboolean
stead_lot_choice_read (SteadLotChoice *self,
                       GArray         *lots)
{
  gboolean good = TRUE;

  g_return_val_if_fail (STEAD_IS_LOT_CHOICE (self) && lots != NULL, FALSE);

  if (self->fields->len == 0)
    {
      g_array_append_vals (lots, self->chosen->data, self->chosen->len);
      return TRUE;
    }
  for (guint i = 0; i < self->fields->len; i++)
    {
      const SteadSaleLotChoice *choice = self->choices->pdata[i];
      SteadSaleLot lot = { choice->lot_id, 0 };
      double units = 0;

      good &= stead_sell_read_units (self->fields->pdata[i], 0, &units);
      lot.base = whole_of (units, choice) * self->product->base_per_unit;
      if (lot.base > 0)
        g_array_append_val (lots, lot);
    }
  return good;
}

/* --- the widget ------------------------------------------------------------------------------ */

static void
stead_lot_choice_dispose (GObject *object)
{
  SteadLotChoice *self = STEAD_LOT_CHOICE (object);

  g_clear_pointer (&self->product, stead_product_free);
  g_clear_pointer (&self->chosen, g_array_unref);
  g_clear_pointer (&self->claims, g_array_unref);
  g_clear_pointer (&self->choices, g_ptr_array_unref);
  g_clear_pointer (&self->fields, g_ptr_array_unref);
  G_OBJECT_CLASS (stead_lot_choice_parent_class)->dispose (object);
}

static void
stead_lot_choice_class_init (SteadLotChoiceClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = stead_lot_choice_dispose;
  signals[CHANGED] = g_signal_new ("changed", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 1,
                                   G_TYPE_BOOLEAN);
}

static void
stead_lot_choice_init (SteadLotChoice *self)
{
  gtk_orientable_set_orientation (GTK_ORIENTABLE (self), GTK_ORIENTATION_VERTICAL);
  gtk_box_set_spacing (GTK_BOX (self), 6);
  self->day = STEAD_DAY_NONE;
  self->chosen = g_array_new (FALSE, FALSE, sizeof (SteadSaleLot));
  self->claims = g_array_new (FALSE, FALSE, sizeof (SteadSaleLot));
  self->fields = g_ptr_array_new ();
  self->texts = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  gtk_box_append (GTK_BOX (self), self->texts);
  self->button = GTK_BUTTON (stead_sell_button (GTK_WIDGET (self), _("Choose lots"), G_CALLBACK (toggle_cb), self));
  gtk_widget_add_css_class (GTK_WIDGET (self->button), "link");
  gtk_widget_add_css_class (GTK_WIDGET (self->button), "outdent");
  gtk_widget_set_halign (GTK_WIDGET (self->button), GTK_ALIGN_START);
  self->grid = gtk_grid_new ();
  gtk_grid_set_column_homogeneous (GTK_GRID (self->grid), TRUE);
  gtk_grid_set_column_spacing (GTK_GRID (self->grid), 12);
  gtk_grid_set_row_spacing (GTK_GRID (self->grid), 6);
  gtk_box_append (GTK_BOX (self), self->grid);
}

GtkWidget *
stead_lot_choice_new (SteadStore *store)
{
  SteadLotChoice *self = g_object_new (STEAD_TYPE_LOT_CHOICE, NULL);

  self->store = store;
  return GTK_WIDGET (self);
}
