/* stead-lots-pane.c - traceable quantities on hand. */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "app/keep/stead-lots-pane.h"

#include "answer/stead-store-room-why.h"
#include "app/keep/stead-lot-dialog.h"
#include "app/keep/stead-pick.h"
#include "app/keep/stead-put-dialog.h"
#include "app/keep/stead-waste-dialog.h"
#include "app/stead-why-box.h"
#include "core/stead-money.h"
#include "store/stead-lot-repo.h"

/* Choices of the places beside their ids; 0 is what has no place. */
#define EVERYWHERE (-1)

struct _SteadLotsPane
{
  SteadPane       parent_instance;

  SteadTable     *table;
  GtkCheckButton *all;
  SteadPick      *place;
  SteadWhyBox    *whys;
};

G_DEFINE_FINAL_TYPE (SteadLotsPane, stead_lots_pane, STEAD_TYPE_PANE)

static const SteadLot *
lot_of (gpointer item)
{
  return stead_row_get (item);
}

static char *
code_text (gpointer item,
           gpointer data)
{
  return g_strdup (lot_of (item)->code);
}

static char *
item_text (gpointer item,
           gpointer data)
{
  return g_strdup (lot_of (item)->item_name);
}

static char *
day_text (gpointer item,
          gpointer data)
{
  return stead_day_format (lot_of (item)->day, STEAD_DAY_STYLE_MEDIUM);
}

static char *
supplier_text (gpointer item,
               gpointer data)
{
  const SteadLot *lot = lot_of (item);

  return g_strdup (lot->supplier != NULL ? lot->supplier : lot->batch_name != NULL ? lot->batch_name : "");
}

static char *
place_text (gpointer item,
            gpointer data)
{
  const SteadLot *lot = lot_of (item);

  return g_strdup (lot->place_name != NULL ? lot->place_name : "");
}

static char *
best_by_text (gpointer item,
              gpointer data)
{
  const SteadLot *lot = lot_of (item);
  SteadDay today = stead_store_get_today (stead_pane_get_store (data));
  g_autofree char *day = NULL;

  if (lot->best_by == STEAD_DAY_NONE)
    return g_strdup ("");
  day = stead_day_format (lot->best_by, STEAD_DAY_STYLE_MEDIUM);
  /* Translators: a date that has passed */
  return lot->best_by < today ? g_strdup_printf (_("⚠ %s, past"), day) : g_steal_pointer (&day);
}

static char *
on_hand_text (gpointer item,
              gpointer data)
{
  return stead_quantity_format (lot_of (item)->on_hand_base, lot_of (item)->unit);
}

static char *
cost_text (gpointer item,
           gpointer data)
{
  const SteadFarm *farm = stead_desk_get_farm (stead_pane_get_desk (data));

  return stead_money_format (lot_of (item)->on_hand_cents, farm->currency);
}

static int
compare_day (gconstpointer a,
             gconstpointer b,
             gpointer      data)
{
  SteadDay x = lot_of ((gpointer) a)->day, y = lot_of ((gpointer) b)->day;

  return (x > y) - (x < y);
}

static int
compare_item (gconstpointer a,
              gconstpointer b,
              gpointer      data)
{
  return g_utf8_collate (lot_of ((gpointer) a)->item_name, lot_of ((gpointer) b)->item_name);
}

static void
open_lot (gpointer item,
          gpointer data)
{
  stead_lot_dialog_show (data, stead_pane_get_desk (data), lot_of (item)->id);
}

static void
open_cb (SteadPane *pane)
{
  const SteadLot *lot = stead_pane_get_chosen (pane);

  if (lot != NULL)
    stead_lot_dialog_show (GTK_WIDGET (pane), stead_pane_get_desk (pane), lot->id);
}

static void
waste_cb (SteadPane *pane)
{
  const SteadLot *lot = stead_pane_get_chosen (pane);

  if (lot != NULL)
    stead_waste_dialog_show (GTK_WIDGET (pane), stead_pane_get_desk (pane), lot->id, STEAD_MOVE_LOST);
}

static void
give_cb (SteadPane *pane)
{
  const SteadLot *lot = stead_pane_get_chosen (pane);

  if (lot != NULL)
    stead_waste_dialog_show (GTK_WIDGET (pane), stead_pane_get_desk (pane), lot->id, STEAD_MOVE_GIVEN);
}

static void
put_cb (SteadPane *pane)
{
  const SteadLot *lot = stead_pane_get_chosen (pane);

  if (lot != NULL)
    stead_put_dialog_show (GTK_WIDGET (pane), stead_pane_get_desk (pane), lot->id);
}

/* --- places ------------------------------------------------------------------------ */

static void
add_place (SteadLotsPane *self,
           gint64         id,
           const char    *name,
           guint          n,
           gint64         cents)
{
  const SteadFarm *farm = stead_desk_get_farm (stead_pane_get_desk (STEAD_PANE (self)));
  g_autofree char *money = stead_money_format (cents, farm->currency);
  /* Translators: a place, the number of lots there, what they cost. */
  g_autofree char *text = g_strdup_printf (ngettext ("%s: %u lot, %s", "%s: %u lots, %s", n), name, n, money);

  stead_pick_append (self->place, id, text);
}

/* What was chosen stays, if something still lies there. */
static void
show_places (SteadLotsPane *self,
             GPtrArray     *lots)
{
  g_autoptr(GPtrArray) places = stead_lots_places (lots);
  gint64 chosen = stead_pick_count (self->place) > 0 ? stead_pick_get (self->place) : EVERYWHERE;
  gint64 cents = 0;

  for (guint i = 0; i < lots->len; i++)
    cents += ((const SteadLot *) lots->pdata[i])->on_hand_cents;
  stead_pick_clear (self->place);
  add_place (self, EVERYWHERE, _("Everywhere"), lots->len, cents);
  for (guint i = 0; i < places->len; i++)
    {
      const SteadPlaceLine *place = places->pdata[i];

      add_place (self, place->place_id, place->name, place->n_lots, place->cents);
    }
  stead_pick_show (self->place, chosen);
}

static void
drop_elsewhere (SteadLotsPane *self,
                GPtrArray     *lots)
{
  gint64 place = stead_pick_get (self->place);

  for (guint i = lots->len; i > 0 && place != EVERYWHERE; i--)
    if (((const SteadLot *) lots->pdata[i - 1])->place_id != place)
      g_ptr_array_remove_index (lots, i - 1);
}

static void
stead_lots_pane_refresh (SteadPane *pane)
{
  SteadLotsPane *self = STEAD_LOTS_PANE (pane);
  g_autoptr(GError) error = NULL;
  gboolean all = gtk_check_button_get_active (self->all);
  g_autoptr(GPtrArray) lots = stead_lot_repo_list (stead_pane_get_store (pane), all, &error);
  g_autoptr(GListModel) model = NULL;
  g_autoptr(GPtrArray) whys = NULL;

  stead_pane_say (pane, _("Each lot came on a receipt or was made by one batch; what left it is on its card."), error);
  if (lots != NULL)
    {
      show_places (self, lots);
      whys = stead_lots_whys (lots, stead_desk_get_farm (stead_pane_get_desk (pane))->currency);
      stead_why_box_set (self->whys, whys);
      drop_elsewhere (self, lots);
    }
  if (lots != NULL)
    model = stead_rows_from_array (g_steal_pointer (&lots), (GDestroyNotify) stead_lot_free);
  stead_table_set_model (self->table, model);
}

static void
all_cb (SteadPane *pane)
{
  if (stead_pane_get_desk (pane) != NULL)
    stead_lots_pane_refresh (pane);
}

static void
stead_lots_pane_class_init (SteadLotsPaneClass *klass)
{
  STEAD_PANE_CLASS (klass)->refresh = stead_lots_pane_refresh;
}

static void
stead_lots_pane_init (SteadLotsPane *self)
{
  SteadPane *pane = STEAD_PANE (self);
  GtkWidget *open;

  self->place = STEAD_PICK (stead_pick_new (_("Where they lie")));
  gtk_widget_set_halign (GTK_WIDGET (self->place), GTK_ALIGN_START);
  g_signal_connect_swapped (self->place, "changed", G_CALLBACK (all_cb), self);
  stead_pane_add_head (pane, GTK_WIDGET (self->place));
  stead_pane_add_head (pane, stead_why_box_new_low (&self->whys));
  self->table = stead_pane_add_table (pane, _("Lots"));
  stead_table_add_column (self->table, _("Lot"), FALSE, FALSE, code_text, NULL, NULL, self);
  stead_table_add_column (self->table, _("Item"), FALSE, FALSE, item_text, NULL, compare_item, self);
  stead_table_add_column (self->table, _("Came on"), FALSE, FALSE, day_text, NULL, compare_day, self);
  stead_table_add_column (self->table, _("Best by"), FALSE, FALSE, best_by_text, NULL, NULL, self);
  stead_table_add_column (self->table, _("On hand"), TRUE, FALSE, on_hand_text, NULL, NULL, self);
  stead_table_add_column (self->table, _("Cost"), TRUE, FALSE, cost_text, NULL, NULL, self);
  stead_table_add_column (self->table, _("Place"), FALSE, FALSE, place_text, NULL, NULL, self);
  stead_table_add_column (self->table, C_("supplier", "From"), FALSE, TRUE, supplier_text, NULL, NULL, self);
  stead_table_set_empty (self->table, _("Nothing is on hand. A receipt brings lots."));
  stead_table_set_activate (self->table, open_lot, self);
  open = stead_pane_add_button (pane, _("Open the lot's card…"), G_CALLBACK (open_cb));
  stead_pane_add_button (pane, _("Waste…"), G_CALLBACK (waste_cb));
  stead_pane_add_button (pane, _("Give away…"), G_CALLBACK (give_cb));
  stead_pane_add_button (pane, _("Put in a place…"), G_CALLBACK (put_cb));
  self->all = GTK_CHECK_BUTTON (gtk_check_button_new_with_label (_("Show used-up lots too")));
  gtk_box_append (GTK_BOX (gtk_widget_get_parent (open)), GTK_WIDGET (self->all));
  g_signal_connect_swapped (self->all, "toggled", G_CALLBACK (all_cb), self);
}
