/* stead-entries-dialog.c - the entries behind a figure of a statement; each can be opened. */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "app/keep/stead-entries-dialog.h"

#include "app/keep/stead-account-dialog.h"
#include "app/keep/stead-asset-dialog.h"
#include "app/keep/stead-cash-dialog.h"
#include "app/keep/stead-move-dialog.h"
#include "app/keep/stead-receipt-dialog.h"
#include "app/stead-table.h"
#include "app/stead-ui.h"
#include "core/stead-money.h"

#define STEAD_TYPE_ENTRIES_DIALOG (stead_entries_dialog_get_type ())
G_DECLARE_FINAL_TYPE (SteadEntriesDialog, stead_entries_dialog, STEAD, ENTRIES_DIALOG, GtkWindow)

struct _SteadEntriesDialog
{
  GtkWindow   parent_instance;

  SteadDesk  *desk;
  char       *currency;
  GtkLabel   *sum;
  GtkBox     *slot;
  SteadTable *table;
};

G_DEFINE_FINAL_TYPE (SteadEntriesDialog, stead_entries_dialog, GTK_TYPE_WINDOW)

static const SteadStatementEntry *
entry_of (gconstpointer item)
{
  return stead_row_get ((gpointer) item);
}

static char *
day_text (gpointer item,
          gpointer data)
{
  return stead_day_format (entry_of (item)->day, STEAD_DAY_STYLE_MEDIUM);
}

static char *
what_text (gpointer item,
           gpointer data)
{
  char *text = stead_statement_entry_text (stead_desk_get_store (STEAD_ENTRIES_DIALOG (data)->desk), entry_of (item), NULL);

  return text != NULL ? text : g_strdup ("");
}

static char *
cents_text (gpointer item,
            gpointer data)
{
  return stead_money_format (entry_of (item)->cents, STEAD_ENTRIES_DIALOG (data)->currency);
}

static int
compare_day (gconstpointer a,
             gconstpointer b,
             gpointer      data)
{
  SteadDay x = entry_of (a)->day, y = entry_of (b)->day;

  return (x > y) - (x < y);
}

static int
compare_cents (gconstpointer a,
               gconstpointer b,
               gpointer      data)
{
  gint64 x = entry_of (a)->cents, y = entry_of (b)->cents;

  return (x > y) - (x < y);
}

static void
open_cash_line (SteadEntriesDialog *self,
                gint64              id)
{
  g_autoptr(SteadCashLine) line = stead_cash_repo_get (stead_desk_get_store (self->desk), id, NULL);

  if (line != NULL && line->pair_id != 0)
    stead_move_dialog_show (GTK_WIDGET (self), self->desk, id, 0);
  else
    stead_cash_dialog_show (GTK_WIDGET (self), self->desk, id);
}

/* What has a card of its own opens; the rest is told in the row. */
static void
open_entry (gpointer item,
            gpointer data)
{
  SteadEntriesDialog *self = data;
  const SteadStatementEntry *entry = entry_of (item);

  switch (entry->fact)
    {
    case STEAD_FACT_CASH_LINE: open_cash_line (self, entry->fact_id); break;
    case STEAD_FACT_RECEIPT: stead_receipt_dialog_show (data, self->desk, entry->fact_id, 0); break;
    case STEAD_FACT_ASSET: stead_asset_dialog_show (data, self->desk, entry->fact_id); break;
    case STEAD_FACT_ACCOUNT: stead_account_dialog_show (data, self->desk, entry->fact_id, STEAD_ACCOUNT_TILL); break;
    case STEAD_FACT_BEFORE:
    case STEAD_FACT_MOVEMENT:
    case STEAD_FACT_BATCH:
    case STEAD_FACT_FISH_MOVE:
    default: break;
    }
}

static void
close_cb (SteadEntriesDialog *self)
{
  gtk_window_close (GTK_WINDOW (self));
}

static void
stead_entries_dialog_dispose (GObject *object)
{
  SteadEntriesDialog *self = STEAD_ENTRIES_DIALOG (object);

  gtk_widget_dispose_template (GTK_WIDGET (self), STEAD_TYPE_ENTRIES_DIALOG);
  g_clear_object (&self->desk);
  G_OBJECT_CLASS (stead_entries_dialog_parent_class)->dispose (object);
}

static void
stead_entries_dialog_finalize (GObject *object)
{
  g_free (STEAD_ENTRIES_DIALOG (object)->currency);
  G_OBJECT_CLASS (stead_entries_dialog_parent_class)->finalize (object);
}

static void
stead_entries_dialog_class_init (SteadEntriesDialogClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = stead_entries_dialog_dispose;
  G_OBJECT_CLASS (klass)->finalize = stead_entries_dialog_finalize;
  gtk_widget_class_set_template_from_resource (widget_class, STEAD_UI ("keep/stead-entries-dialog.ui"));
  gtk_widget_class_bind_template_child (widget_class, SteadEntriesDialog, sum);
  gtk_widget_class_bind_template_child (widget_class, SteadEntriesDialog, slot);
  gtk_widget_class_bind_template_callback (widget_class, close_cb);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_Escape, 0, "window.close", NULL);
}

static void
stead_entries_dialog_init (SteadEntriesDialog *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  self->table = STEAD_TABLE (stead_table_new (_("Entries")));
  stead_table_add_column (self->table, _("Day"), FALSE, FALSE, day_text, NULL, compare_day, self);
  stead_table_add_column (self->table, _("Entry"), FALSE, TRUE, what_text, NULL, NULL, self);
  stead_table_add_column (self->table, _("Amount"), TRUE, FALSE, cents_text, NULL, compare_cents, self);
  stead_table_set_activate (self->table, open_entry, self);
  gtk_widget_set_hexpand (GTK_WIDGET (self->table), TRUE);
  gtk_box_append (self->slot, GTK_WIDGET (self->table));
}

void
stead_entries_dialog_show (GtkWidget                  *parent,
                           SteadDesk                  *desk,
                           const SteadStatementAnswer *answer,
                           const SteadStatementLine   *line)
{
  g_autoptr(GPtrArray) entries = g_ptr_array_new ();
  g_autoptr(GListModel) model = NULL;
  g_autofree char *cents = NULL, *text = NULL;
  SteadEntriesDialog *self;

  g_return_if_fail (STEAD_IS_DESK (desk) && answer != NULL && line != NULL);

  self = g_object_new (STEAD_TYPE_ENTRIES_DIALOG, "title", line->label, NULL);
  self->desk = g_object_ref (desk);
  self->currency = g_strdup (answer->farm->currency);
  for (guint i = 0; i < line->entries->len; i++)
    g_ptr_array_add (entries, g_memdup2 (&g_array_index (line->entries, SteadStatementEntry, i),
                                         sizeof (SteadStatementEntry)));
  model = stead_rows_from_array (g_steal_pointer (&entries), g_free);
  stead_table_set_model (self->table, model);
  cents = stead_money_format (line->cents, self->currency);
  /* Translators: a line of a statement and its figure. */
  text = g_strdup_printf (_("%s: %s, made of these entries."), line->label, cents);
  gtk_label_set_text (self->sum, text);
  gtk_window_set_transient_for (GTK_WINDOW (self), GTK_WINDOW (gtk_widget_get_root (parent)));
  gtk_window_present (GTK_WINDOW (self));
}
