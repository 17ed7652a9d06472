/* stead-entry-list.c - the entries behind one line of the cost sheet: date, what,
 * how much, money; two lines of text each, since the card is narrow.
 *
 * A list view of GTK 4.8 takes the Tab key from row to row; this bin lets it leave.
 */
#include "config.h"

#include "app/price/stead-entry-list.h"

#include <glib/gi18n-lib.h>

#include "app/stead-table.h"
#include "app/stead-ui.h"
#include "core/stead-money.h"

#define SHOWN_ROWS 4      /* more are scrolled */
#define ROW_PADDING 9     /* px over two lines of text */

struct _SteadEntryList
{
  GtkWidget           parent_instance;

  SteadDesk          *desk;
  char               *currency;
  GtkWidget          *scrolled;
  GtkWidget          *view;
  GtkSingleSelection *selection;
};

G_DEFINE_FINAL_TYPE (SteadEntryList, stead_entry_list, GTK_TYPE_WIDGET)

static GtkWidget *
add_label (GtkWidget  *grid,
           const char *css_class,
           int         column,
           int         row,
           float       xalign)
{
  GtkWidget *label = gtk_label_new (NULL);

  gtk_label_set_xalign (GTK_LABEL (label), xalign);
  if (xalign == 0)
    {
      gtk_label_set_ellipsize (GTK_LABEL (label), PANGO_ELLIPSIZE_END);
      gtk_widget_set_hexpand (label, TRUE);
    }
  gtk_widget_add_css_class (label, css_class);
  gtk_grid_attach (GTK_GRID (grid), label, column, row, 1, 1);
  return label;
}

/* The labels of a row, in the order that bind_cb() fills them. */
enum { DAY, CENTS, WHAT, QUANTITY, N_LABELS };

static void
setup_cb (SteadEntryList *self,
          GtkListItem    *item)
{
  GtkWidget *grid = gtk_grid_new ();
  GtkWidget **labels = g_new (GtkWidget *, N_LABELS);

  gtk_grid_set_column_spacing (GTK_GRID (grid), 12);
  labels[DAY] = add_label (grid, "field-label", 0, 0, 0);
  labels[CENTS] = add_label (grid, "figure", 1, 0, 1);
  labels[WHAT] = add_label (grid, "soft", 0, 1, 0);
  labels[QUANTITY] = add_label (grid, "soft", 1, 1, 1);
  g_object_set_data_full (G_OBJECT (grid), "labels", labels, g_free);
  gtk_list_item_set_child (item, grid);
}

static void
bind_cb (SteadEntryList *self,
         GtkListItem    *item)
{
  const SteadCostEntry *entry = stead_row_get (STEAD_ROW (gtk_list_item_get_item (item)));
  GtkWidget *grid = gtk_list_item_get_child (item), *row = gtk_widget_get_parent (grid);
  GtkWidget **labels = g_object_get_data (G_OBJECT (grid), "labels");
  g_autofree char *money = stead_money_format (entry->cents, self->currency);
  g_autofree char *day = entry->day == STEAD_DAY_NONE ? g_strdup ("")
                                                       : stead_day_format (entry->day, STEAD_DAY_STYLE_MEDIUM);
  const char *quantity = entry->quantity != NULL ? entry->quantity : "";
  g_autofree char *said = g_strdup_printf ("%s, %s, %s, %s", day, entry->what, quantity, money);

  gtk_label_set_text (GTK_LABEL (labels[DAY]), day);
  gtk_label_set_text (GTK_LABEL (labels[CENTS]), money);
  gtk_label_set_text (GTK_LABEL (labels[WHAT]), entry->what);
  gtk_label_set_text (GTK_LABEL (labels[QUANTITY]), quantity);
  gtk_widget_set_tooltip_text (grid, entry->what);
  gtk_list_item_set_activatable (item, entry->receipt_id != 0 || entry->asset_id != 0);
  if (row != NULL)
    stead_ui_name (row, said);
}

static void
activate_cb (SteadEntryList *self,
             guint           position)
{
  g_autoptr(SteadRow) row = g_list_model_get_item (G_LIST_MODEL (self->selection), position);
  const SteadCostEntry *entry;

  if (row == NULL || self->desk == NULL)
    return;
  entry = stead_row_get (row);
  if (entry->receipt_id != 0)
    stead_desk_jump (self->desk, STEAD_TARGET_RECEIPT, entry->receipt_id);
  else if (entry->asset_id != 0)
    stead_desk_jump (self->desk, STEAD_TARGET_ASSET, entry->asset_id);
}

static gboolean
stead_entry_list_focus (GtkWidget        *widget,
                        GtkDirectionType  direction)
{
  if (gtk_widget_get_focus_child (widget) != NULL
      && (direction == GTK_DIR_TAB_FORWARD || direction == GTK_DIR_TAB_BACKWARD))
    return FALSE;
  return gtk_widget_child_focus (STEAD_ENTRY_LIST (widget)->scrolled, direction);
}

static void
stead_entry_list_dispose (GObject *object)
{
  SteadEntryList *self = STEAD_ENTRY_LIST (object);

  stead_ui_drop_children (GTK_WIDGET (self));
  g_clear_object (&self->selection);
  g_clear_object (&self->desk);
  g_clear_pointer (&self->currency, g_free);
  G_OBJECT_CLASS (stead_entry_list_parent_class)->dispose (object);
}

static void
stead_entry_list_class_init (SteadEntryListClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = stead_entry_list_dispose;
  widget_class->focus = stead_entry_list_focus;
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_css_name (widget_class, "entrylist");
}

static void
stead_entry_list_init (SteadEntryList *self)
{
  GtkListItemFactory *factory = gtk_signal_list_item_factory_new ();

  self->currency = g_strdup ("USD");
  self->selection = gtk_single_selection_new (NULL);
  gtk_single_selection_set_autoselect (self->selection, FALSE);
  gtk_single_selection_set_can_unselect (self->selection, TRUE);
  g_signal_connect_swapped (factory, "setup", G_CALLBACK (setup_cb), self);
  g_signal_connect_swapped (factory, "bind", G_CALLBACK (bind_cb), self);
  self->view = gtk_list_view_new (GTK_SELECTION_MODEL (g_object_ref (self->selection)), factory);
  g_signal_connect_swapped (self->view, "activate", G_CALLBACK (activate_cb), self);
  self->scrolled = gtk_scrolled_window_new ();
  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (self->scrolled), GTK_POLICY_NEVER, GTK_POLICY_AUTOMATIC);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (self->scrolled), self->view);
  gtk_widget_set_parent (self->scrolled, GTK_WIDGET (self));
}

GtkWidget *
stead_entry_list_new (SteadDesk  *desk,
                      const char *name)
{
  SteadEntryList *self;

  g_return_val_if_fail (name != NULL, NULL);

  self = g_object_new (STEAD_TYPE_ENTRY_LIST, NULL);
  g_set_object (&self->desk, desk);
  stead_ui_name (self->view, name);
  return GTK_WIDGET (self);
}

/* A list view does not know its height before it is shown; its rows are alike. */
static int
rows_height (SteadEntryList *self,
             guint           n_rows)
{
  g_autoptr(PangoLayout) layout = gtk_widget_create_pango_layout (GTK_WIDGET (self), "0\n0");
  int height;

  pango_layout_get_pixel_size (layout, NULL, &height);
  return (int) MIN (n_rows, SHOWN_ROWS) * (height + ROW_PADDING);
}

void
stead_entry_list_set (SteadEntryList *self,
                      GPtrArray      *entries,
                      const char     *currency)
{
  g_autoptr(GListModel) rows = NULL;

  g_return_if_fail (STEAD_IS_ENTRY_LIST (self) && entries != NULL && currency != NULL);

  g_free (self->currency);
  self->currency = g_strdup (currency);
  gtk_scrolled_window_set_min_content_height (GTK_SCROLLED_WINDOW (self->scrolled),
                                              rows_height (self, entries->len));
  rows = stead_rows_from_array (entries, (GDestroyNotify) stead_cost_entry_free);
  gtk_single_selection_set_model (self->selection, rows);
}
