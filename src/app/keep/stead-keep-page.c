/* stead-keep-page.c - the place Keep: items, receipts, lots on hand, places, assets, the
 * cash book and the statements.
 *
 * Only the list that can be seen reads the farm.
 */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "app/keep/stead-keep-page.h"

#include "app/keep/stead-asset-dialog.h"
#include "app/keep/stead-assets-pane.h"
#include "app/keep/stead-cash-pane.h"
#include "app/keep/stead-item-dialog.h"
#include "app/keep/stead-lot-dialog.h"
#include "app/keep/stead-lots-pane.h"
#include "app/keep/stead-places-pane.h"
#include "app/keep/stead-receipt-dialog.h"
#include "app/keep/stead-receipts-pane.h"
#include "app/keep/stead-statement-pane.h"
#include "app/keep/stead-stock-pane.h"
#include "app/stead-chips.h"
#include "app/stead-ui.h"

/* In the order of the chips; chip ids count from 1. */
enum { STOCK = 1, RECEIPTS, LOTS, PLACES, ASSETS, CASH, STATEMENTS };

struct _SteadKeepPage
{
  SteadPage          parent_instance;

  SteadChips        *chips;
  GtkStack          *stack;
  SteadStockPane    *stock;
  SteadReceiptsPane *receipts;
  SteadLotsPane     *lots;
  SteadPlacesPane   *places;
  SteadAssetsPane   *assets;
  SteadCashPane     *cash;
  SteadStatementPane *statements;
};

G_DEFINE_FINAL_TYPE (SteadKeepPage, stead_keep_page, STEAD_TYPE_PAGE)

static void
stead_keep_page_refresh (SteadPage *page)
{
  GtkWidget *pane = gtk_stack_get_visible_child (STEAD_KEEP_PAGE (page)->stack);

  stead_pane_refresh (STEAD_PANE (pane), stead_page_get_desk (page));
}

static void
choose (SteadKeepPage *self,
        gint64         view)
{
  static const char * const names[] = { NULL, "stock", "receipts", "lots", "places", "assets", "cash", "statements" };

  stead_chips_choose (self->chips, view);
  gtk_stack_set_visible_child_name (self->stack, names[view]);
  stead_page_invalidate (STEAD_PAGE (self));
}

static void
chosen_cb (SteadKeepPage *self,
           gint64         view)
{
  choose (self, view);
}

static void
stead_keep_page_show (SteadPage  *page,
                      SteadTarget target,
                      gint64      id)
{
  SteadKeepPage *self = STEAD_KEEP_PAGE (page);
  SteadDesk *desk = stead_page_get_desk (page);
  GtkWidget *widget = GTK_WIDGET (page);

  switch (target)
    {
    case STEAD_TARGET_ITEM:
      choose (self, STOCK);
      if (id != 0)
        stead_item_dialog_show (widget, desk, id);
      break;
    case STEAD_TARGET_LOT:
      choose (self, LOTS);
      if (id != 0)
        stead_lot_dialog_show (widget, desk, id);
      break;
    case STEAD_TARGET_RECEIPT:
      choose (self, RECEIPTS);
      if (id != 0)
        stead_receipt_dialog_show (widget, desk, id, 0);
      break;
    case STEAD_TARGET_NEW_RECEIPT:
      choose (self, RECEIPTS);
      stead_receipt_dialog_show (widget, desk, 0, id);
      break;
    case STEAD_TARGET_ASSET:
      choose (self, ASSETS);
      if (id != 0)
        stead_asset_dialog_show (widget, desk, id);
      break;
    case STEAD_TARGET_NONE:
    case STEAD_TARGET_FLOCK:
    case STEAD_TARGET_PRODUCT:
    default:
      break;
    }
}

static void
stead_keep_page_dispose (GObject *object)
{
  gtk_widget_dispose_template (GTK_WIDGET (object), STEAD_TYPE_KEEP_PAGE);
  stead_ui_drop_children (GTK_WIDGET (object));
  G_OBJECT_CLASS (stead_keep_page_parent_class)->dispose (object);
}

static void
stead_keep_page_class_init (SteadKeepPageClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  g_type_ensure (STEAD_TYPE_CHIPS);
  g_type_ensure (STEAD_TYPE_STOCK_PANE);
  g_type_ensure (STEAD_TYPE_RECEIPTS_PANE);
  g_type_ensure (STEAD_TYPE_LOTS_PANE);
  g_type_ensure (STEAD_TYPE_PLACES_PANE);
  g_type_ensure (STEAD_TYPE_ASSETS_PANE);
  g_type_ensure (STEAD_TYPE_CASH_PANE);
  g_type_ensure (STEAD_TYPE_STATEMENT_PANE);
  G_OBJECT_CLASS (klass)->dispose = stead_keep_page_dispose;
  STEAD_PAGE_CLASS (klass)->refresh = stead_keep_page_refresh;
  STEAD_PAGE_CLASS (klass)->show = stead_keep_page_show;
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_template_from_resource (widget_class, STEAD_UI ("keep/stead-keep-page.ui"));
  gtk_widget_class_bind_template_child (widget_class, SteadKeepPage, chips);
  gtk_widget_class_bind_template_child (widget_class, SteadKeepPage, stack);
  gtk_widget_class_bind_template_child (widget_class, SteadKeepPage, stock);
  gtk_widget_class_bind_template_child (widget_class, SteadKeepPage, receipts);
  gtk_widget_class_bind_template_child (widget_class, SteadKeepPage, lots);
  gtk_widget_class_bind_template_child (widget_class, SteadKeepPage, places);
  gtk_widget_class_bind_template_child (widget_class, SteadKeepPage, assets);
  gtk_widget_class_bind_template_child (widget_class, SteadKeepPage, cash);
  gtk_widget_class_bind_template_child (widget_class, SteadKeepPage, statements);
  gtk_widget_class_bind_template_callback (widget_class, chosen_cb);
}

static void
stead_keep_page_init (SteadKeepPage *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  stead_ui_hush_stack (self->stack);
  stead_chips_append (self->chips, STOCK, _("Store room"));
  stead_chips_append (self->chips, RECEIPTS, _("Receipts"));
  stead_chips_append (self->chips, LOTS, _("Lots"));
  stead_chips_append (self->chips, PLACES, _("Places"));
  stead_chips_append (self->chips, ASSETS, _("Things that last"));
  stead_chips_append (self->chips, CASH, _("Cash book"));
  stead_chips_append (self->chips, STATEMENTS, _("Statements"));
  stead_chips_choose (self->chips, STOCK);
}

GtkWidget *
stead_keep_page_new (SteadDesk *desk)
{
  return g_object_new (STEAD_TYPE_KEEP_PAGE, "desk", desk, NULL);
}
