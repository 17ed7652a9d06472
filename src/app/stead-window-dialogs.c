/* stead-window-dialogs.c - what the window opens over itself: new things, settings, people. */
#include "config.h"

#include "app/keep/stead-item-dialog.h"
#include "app/keep/stead-receipt-dialog.h"
#include "app/price/stead-product-dialog.h"
#include "app/raise/stead-flock-dialog.h"
#include "app/stead-import-dialog.h"
#include "app/stead-people-window.h"
#include "app/stead-preferences.h"
#include "app/stead-window-private.h"

/* %NULL if no farm is open: then these actions have nothing to work on. */
static SteadDesk *
desk_of (GtkWidget *widget)
{
  SteadDesk *desk = stead_window_get_desk (STEAD_WINDOW (widget));

  return stead_desk_get_store (desk) != NULL ? desk : NULL;
}

static void
new_flock_action (GtkWidget  *widget,
                  const char *action,
                  GVariant   *parameter)
{
  if (desk_of (widget) != NULL)
    stead_flock_dialog_show (widget, desk_of (widget), 0);
}

static void
new_product_action (GtkWidget  *widget,
                    const char *action,
                    GVariant   *parameter)
{
  if (desk_of (widget) != NULL)
    stead_product_dialog_show (widget, desk_of (widget), 0);
}

static void
new_receipt_action (GtkWidget  *widget,
                    const char *action,
                    GVariant   *parameter)
{
  if (desk_of (widget) != NULL)
    stead_receipt_dialog_show (widget, desk_of (widget), 0, 0);
}

static void
new_item_action (GtkWidget  *widget,
                 const char *action,
                 GVariant   *parameter)
{
  if (desk_of (widget) != NULL)
    stead_item_dialog_show (widget, desk_of (widget), 0);
}

static void
import_log_action (GtkWidget  *widget,
                   const char *action,
                   GVariant   *parameter)
{
  if (desk_of (widget) != NULL)
    stead_import_dialog_show (widget, desk_of (widget), STEAD_IMPORT_FLOCK_LOG, 0);
}

static void
import_receipts_action (GtkWidget  *widget,
                        const char *action,
                        GVariant   *parameter)
{
  if (desk_of (widget) != NULL)
    stead_import_dialog_show (widget, desk_of (widget), STEAD_IMPORT_RECEIPTS, 0);
}

static void
preferences_action (GtkWidget  *widget,
                    const char *action,
                    GVariant   *parameter)
{
  stead_preferences_show (widget, stead_window_get_desk (STEAD_WINDOW (widget)));
}

static void
people_action (GtkWidget  *widget,
               const char *action,
               GVariant   *parameter)
{
  if (desk_of (widget) != NULL)
    stead_people_window_show (widget, desk_of (widget));
}

void
stead_window_install_dialogs (GtkWidgetClass *widget_class)
{
  gtk_widget_class_install_action (widget_class, "win.new-flock", NULL, new_flock_action);
  gtk_widget_class_install_action (widget_class, "win.new-product", NULL, new_product_action);
  gtk_widget_class_install_action (widget_class, "win.new-receipt", NULL, new_receipt_action);
  gtk_widget_class_install_action (widget_class, "win.new-item", NULL, new_item_action);
  gtk_widget_class_install_action (widget_class, "win.import-log", NULL, import_log_action);
  gtk_widget_class_install_action (widget_class, "win.import-receipts", NULL, import_receipts_action);
  gtk_widget_class_install_action (widget_class, "win.preferences", NULL, preferences_action);
  gtk_widget_class_install_action (widget_class, "win.people", NULL, people_action);
}
