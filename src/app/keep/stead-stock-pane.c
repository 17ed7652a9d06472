/* stead-stock-pane.c - what is in the store room, item by item. */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "app/keep/stead-stock-pane.h"

#include "answer/stead-store-room-why.h"
#include "app/keep/stead-count-dialog.h"
#include "app/keep/stead-counts-window.h"
#include "app/keep/stead-item-dialog.h"
#include "app/keep/stead-receipt-dialog.h"
#include "app/keep/stead-use-dialog.h"
#include "app/stead-ui.h"
#include "app/stead-why-box.h"
#include "core/stead-money.h"

struct _SteadStockPane
{
  SteadPane    parent_instance;

  SteadTable  *table;
  GtkLabel    *buy;
  SteadWhyBox *whys;
};

G_DEFINE_FINAL_TYPE (SteadStockPane, stead_stock_pane, STEAD_TYPE_PANE)

static const SteadStockLine *
line_of (gpointer item)
{
  return stead_row_get (item);
}

static char *
name_text (gpointer item,
           gpointer data)
{
  return g_strdup (line_of (item)->item->name);
}

static char *
kind_text (gpointer item,
           gpointer data)
{
  return g_strdup (stead_item_kind_label (line_of (item)->item->kind));
}

static char *
on_hand_text (gpointer item,
              gpointer data)
{
  return g_strdup (line_of (item)->on_hand);
}

static char *
lasts_text (gpointer item,
            gpointer data)
{
  return g_strdup (line_of (item)->lasts);
}

static char *
value_text (gpointer item,
            gpointer data)
{
  const SteadFarm *farm = stead_desk_get_farm (stead_pane_get_desk (data));

  return stead_money_format (line_of (item)->stock.on_hand_cents, farm->currency);
}

static char *
low_text (gpointer item,
          gpointer data)
{
  return g_strdup (line_of (item)->low ? _("⚠ running low") : "");
}

static int
compare_name (gconstpointer a,
              gconstpointer b,
              gpointer      data)
{
  return g_utf8_collate (line_of ((gpointer) a)->item->name, line_of ((gpointer) b)->item->name);
}

static int
compare_value (gconstpointer a,
               gconstpointer b,
               gpointer      data)
{
  gint64 x = line_of ((gpointer) a)->stock.on_hand_cents, y = line_of ((gpointer) b)->stock.on_hand_cents;

  return (x > y) - (x < y);
}

/* What lasts least comes first; what is not used comes last. */
static int
compare_lasts (gconstpointer a,
               gconstpointer b,
               gpointer      data)
{
  double x = line_of ((gpointer) a)->days, y = line_of ((gpointer) b)->days;

  if (isnan (x) || isnan (y))
    return isnan (x) - isnan (y);
  return (x > y) - (x < y);
}

static void
edit_item (gpointer item,
           gpointer data)
{
  stead_item_dialog_show (data, stead_pane_get_desk (data), line_of (item)->item->id);
}

/* The item of the chosen row; 0 if none is. */
static gint64
selected_id (SteadPane *pane)
{
  gpointer row = stead_table_get_selected (STEAD_STOCK_PANE (pane)->table);

  return row != NULL ? line_of (row)->item->id : 0;
}

static void
new_receipt_cb (SteadPane *pane)
{
  stead_receipt_dialog_show (GTK_WIDGET (pane), stead_pane_get_desk (pane), 0, selected_id (pane));
}

static void
use_cb (SteadPane *pane)
{
  stead_use_dialog_show (GTK_WIDGET (pane), stead_pane_get_desk (pane), selected_id (pane));
}

static void
new_item_cb (SteadPane *pane)
{
  stead_item_dialog_show (GTK_WIDGET (pane), stead_pane_get_desk (pane), 0);
}

static void
edit_cb (SteadPane *pane)
{
  const SteadStockLine *line = stead_pane_get_chosen (pane);

  if (line != NULL)
    stead_item_dialog_show (GTK_WIDGET (pane), stead_pane_get_desk (pane), line->item->id);
}

static void
count_cb (SteadPane *pane)
{
  stead_count_dialog_show (GTK_WIDGET (pane), stead_pane_get_desk (pane));
}

static void
counts_cb (SteadPane *pane)
{
  stead_counts_window_show (GTK_WIDGET (pane), stead_pane_get_desk (pane));
}

/* "To buy: Potatoes: 16 lb; Layer feed: 150 lb." */
static void
show_to_buy (SteadStockPane             *self,
             const SteadStoreRoomAnswer *answer)
{
  g_autoptr(GString) list = g_string_new (NULL);
  g_autofree char *text = NULL;

  for (guint i = 0; answer != NULL && i < answer->reorder->len; i++)
    g_string_append_printf (list, "%s%s", i > 0 ? "; " : "", ((const SteadReorderLine *) answer->reorder->pdata[i])->text);
  gtk_widget_set_visible (GTK_WIDGET (self->buy), list->len > 0);
  /* Translators: a list follows: "Potatoes: 16 lb; Layer feed: 150 lb". */
  text = g_strdup_printf (_("To buy, for four weeks: %s."), list->str);
  gtk_label_set_text (self->buy, text);
}

static void
stead_stock_pane_refresh (SteadPane *pane)
{
  SteadStockPane *self = STEAD_STOCK_PANE (pane);
  g_autoptr(GError) error = NULL;
  g_autoptr(SteadStoreRoomAnswer) answer = stead_store_room_answer_new (stead_pane_get_store (pane), &error);
  g_autoptr(GListModel) model = NULL;
  g_autoptr(GPtrArray) whys = NULL;

  stead_pane_say (pane, answer != NULL ? answer->sentence : NULL, error);
  show_to_buy (self, answer);
  if (answer != NULL)
    {
      whys = stead_store_room_answer_whys (answer, stead_desk_get_farm (stead_pane_get_desk (pane))->currency);
      stead_why_box_set (self->whys, whys);
      model = stead_rows_from_array (g_steal_pointer (&answer->stock->lines), (GDestroyNotify) stead_stock_line_free);
    }
  stead_table_set_model (self->table, model);
}

static void
stead_stock_pane_class_init (SteadStockPaneClass *klass)
{
  STEAD_PANE_CLASS (klass)->refresh = stead_stock_pane_refresh;
}

static void
stead_stock_pane_init (SteadStockPane *self)
{
  SteadPane *pane = STEAD_PANE (self);

  self->buy = GTK_LABEL (gtk_label_new (NULL));
  gtk_label_set_xalign (self->buy, 0);
  stead_ui_wrap (self->buy);
  stead_pane_add_head (pane, GTK_WIDGET (self->buy));
  stead_pane_add_head (pane, stead_why_box_new_low (&self->whys));
  self->table = stead_pane_add_table (pane, _("Items in the store room"));
  stead_table_add_column (self->table, _("Item"), FALSE, FALSE, name_text, NULL, compare_name, self);
  stead_table_add_column (self->table, _("Kind"), FALSE, FALSE, kind_text, NULL, NULL, self);
  stead_table_add_column (self->table, _("On hand"), TRUE, FALSE, on_hand_text, NULL, NULL, self);
  stead_table_add_column (self->table, _("Lasts"), FALSE, FALSE, lasts_text, NULL, compare_lasts, self);
  stead_table_add_column (self->table, _("Cost"), TRUE, FALSE, value_text, NULL, compare_value, self);
  stead_table_add_column (self->table, _("To look at"), FALSE, TRUE, low_text, NULL, NULL, self);
  stead_table_set_empty (self->table, _("Feed, litter, cartons belong here. Start with a receipt: it brings its items along."));
  stead_table_set_activate (self->table, edit_item, self);
  stead_pane_add_button (pane, _("New receipt…"), G_CALLBACK (new_receipt_cb));
  stead_pane_add_button (pane, _("Use in a batch…"), G_CALLBACK (use_cb));
  stead_pane_add_button (pane, _("New item…"), G_CALLBACK (new_item_cb));
  stead_pane_add_button (pane, _("Change item…"), G_CALLBACK (edit_cb));
  stead_pane_add_button (pane, _("Count the store room…"), G_CALLBACK (count_cb));
  stead_pane_add_button (pane, _("Past counts…"), G_CALLBACK (counts_cb));
}
