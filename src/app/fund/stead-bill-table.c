/* stead-bill-table.c - the bill of a build as a table, and what is done with a row. */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "answer/stead-build-answer.h"
#include "app/fund/stead-bill-table.h"
#include "app/fund/stead-fund-dialogs.h"
#include "app/stead-ui.h"
#include "app/stead-wrap-layout.h"
#include "core/stead-money.h"

struct _SteadBillTable
{
  GtkWidget   parent_instance;

  SteadDesk  *desk;       /* (nullable) */
  gint64      build_id;
  SteadTable *table;
};

G_DEFINE_FINAL_TYPE (SteadBillTable, stead_bill_table, GTK_TYPE_WIDGET)

static void
row_free (gpointer data)
{
  SteadBuildRow *row = data;

  g_free (row->key);
  g_free (row->name);
  g_free (row->how);
  g_free (row->unit);
  g_free (row->giver);
  g_free (row->best_supplier);
  g_free (row);
}

static const SteadBuildRow *
row_of (gpointer item)
{
  return stead_row_get (item);
}

static const char *
currency (gpointer data)
{
  return stead_desk_get_farm (((SteadBillTable *) data)->desk)->currency;
}

/* --- what a cell shows ---------------------------------------------------------------- */

static char *
part_text (gpointer item,
           gpointer data)
{
  return g_strdup (stead_build_part_name (row_of (item)->part));
}

static char *
name_text (gpointer item,
           gpointer data)
{
  return g_strdup (row_of (item)->name);
}

static char *
amount_text (gpointer item,
             gpointer data)
{
  const SteadBuildRow *row = row_of (item);
  g_autofree char *number = stead_number_format (row->quantity, row->unit != NULL ? 1 : 0);

  return row->unit != NULL ? g_strdup_printf ("%s %s", number, row->unit) : g_steal_pointer (&number);
}

static char *
price_text (gpointer item,
            gpointer data)
{
  const SteadBuildRow *row = row_of (item);

  return row->price_cents < 0 ? g_strdup ("–") : stead_money_format (row->price_cents, currency (data));
}

static char *
cents_text (gpointer item,
            gpointer data)
{
  const SteadBuildRow *row = row_of (item);

  return row->price_cents < 0 ? g_strdup ("–") : stead_money_format (row->cents, currency (data));
}

static char *
state_text (gpointer item,
            gpointer data)
{
  const SteadBuildRow *row = row_of (item);

  if (row->left_out)
    return g_strdup (C_("line of a bill", "left out"));
  if (row->given)
    return g_strdup (C_("line of a bill", "given"));
  return g_strdup (row->is_bought ? C_("line of a bill", "bought") : C_("line of a bill", "to buy"));
}

/* --- what a person says about it --------------------------------------------------------- */

static gboolean
save_act (SteadStore  *store,
          gpointer     data,
          GError     **error)
{
  return stead_build_line_repo_save (store, data, error);
}

static SteadBuildLine *
find_line (SteadBillTable      *self,
           const SteadBuildRow *row,
           GError             **error)
{
  g_autoptr(GPtrArray) lines = stead_build_line_repo_list (stead_desk_get_store (self->desk), self->build_id, error);
  SteadBuildLine *line;

  if (lines == NULL)
    return NULL;
  for (guint i = 0; row->line_id != 0 && i < lines->len; i++)
    if (((SteadBuildLine *) lines->pdata[i])->id == row->line_id)
      return g_ptr_array_steal_index (lines, i);
  line = stead_build_line_new ();
  line->build_id = self->build_id;
  line->part = row->part;
  line->key = g_strdup (row->key);
  return line;
}

static gboolean
save_line (SteadBillTable       *self,
           const SteadBuildRow  *row,
           SteadBuildLine       *line,
           GError              **error)
{
  /* Translators: name of a step to undo; a thing on the bill of a build. */
  g_autofree char *step = g_strdup_printf (_("bill: %s"), row->name);

  return stead_desk_act (self->desk, step, save_act, line, error);
}

static gboolean
price_edit (gpointer     item,
            const char  *text,
            gpointer     data,
            GError     **error)
{
  g_autoptr(SteadBuildLine) line = find_line (data, row_of (item), error);
  gint64 cents;

  if (line == NULL || !stead_money_parse (text, currency (data), &cents, error))
    return FALSE;
  line->price_cents = cents;
  return save_line (data, row_of (item), line, error);
}

static gboolean
amount_edit (gpointer     item,
             const char  *text,
             gpointer     data,
             GError     **error)
{
  g_autoptr(SteadBuildLine) line = find_line (data, row_of (item), error);
  double value;

  if (line == NULL || !stead_number_parse (text, &value, error))
    return FALSE;
  line->quantity = value;
  return save_line (data, row_of (item), line, error);
}

static const SteadBuildRow *
chosen_row (SteadBillTable *self)
{
  gpointer item = stead_table_get_selected (self->table);

  if (item == NULL)
    stead_desk_say (self->desk, _("Choose a line of the bill first."), FALSE);
  return item != NULL ? row_of (item) : NULL;
}

static void
change (SteadBillTable *self,
        gboolean        given)
{
  const SteadBuildRow *row = chosen_row (self);
  g_autoptr(GError) error = NULL;
  g_autoptr(SteadBuildLine) line = row == NULL ? NULL : find_line (self, row, &error);

  if (line == NULL)
    return;
  if (given)
    line->given = !line->given;
  else
    line->left_out = !line->left_out;
  if (!save_line (self, row, line, &error))
    stead_desk_say (self->desk, error->message, FALSE);
}

static void
given_cb (SteadBillTable *self)
{
  change (self, TRUE);
}

static void
leave_out_cb (SteadBillTable *self)
{
  change (self, FALSE);
}

static void
add_cb (SteadBillTable *self)
{
  if (self->desk != NULL && self->build_id != 0)
    stead_line_dialog_show (GTK_WIDGET (self), self->desk, self->build_id);
}

/* --- the object ----------------------------------------------------------------------- */

static void
stead_bill_table_dispose (GObject *object)
{
  g_clear_object (&STEAD_BILL_TABLE (object)->desk);
  stead_ui_drop_children (GTK_WIDGET (object));
  G_OBJECT_CLASS (stead_bill_table_parent_class)->dispose (object);
}

static void
stead_bill_table_class_init (SteadBillTableClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = stead_bill_table_dispose;
  gtk_widget_class_set_layout_manager_type (GTK_WIDGET_CLASS (klass), GTK_TYPE_BIN_LAYOUT);
}

static void
add_button (SteadBillTable *self,
            GtkWidget      *row,
            const char     *label,
            GCallback       clicked)
{
  GtkWidget *button = gtk_button_new_with_label (label);

  g_signal_connect_swapped (button, "clicked", clicked, self);
  gtk_widget_set_parent (button, row);
}

static void
stead_bill_table_init (SteadBillTable *self)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 9);
  GtkWidget *buttons = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6);
  const struct { const char *label; GCallback clicked; } actions[] = {
    { _("Add a line…"), G_CALLBACK (add_cb) }, { _("Given or bought"), G_CALLBACK (given_cb) },
    { _("Leave out or take in"), G_CALLBACK (leave_out_cb) },
  };

  self->table = STEAD_TABLE (stead_table_new (_("Bill of materials")));
  stead_table_add_column (self->table, _("Part"), FALSE, FALSE, part_text, NULL, NULL, self);
  stead_table_add_column (self->table, _("Thing"), FALSE, TRUE, name_text, NULL, NULL, self);
  stead_table_add_column (self->table, _("How many"), TRUE, FALSE, amount_text, amount_edit, NULL, self);
  stead_table_add_column (self->table, _("Price of one"), TRUE, FALSE, price_text, price_edit, NULL, self);
  stead_table_add_column (self->table, _("Cost"), TRUE, FALSE, cents_text, NULL, NULL, self);
  stead_table_add_column (self->table, _("State"), FALSE, FALSE, state_text, NULL, NULL, self);
  stead_table_set_empty (self->table, _("Draw the build, or add a line: what it takes stands here."));
  gtk_widget_set_size_request (GTK_WIDGET (self->table), -1, 300);
  gtk_widget_set_vexpand (GTK_WIDGET (self->table), TRUE);
  gtk_box_append (GTK_BOX (box), GTK_WIDGET (self->table));
  for (gsize i = 0; i < G_N_ELEMENTS (actions); i++)
    add_button (self, buttons, actions[i].label, actions[i].clicked);
  gtk_box_append (GTK_BOX (box), buttons);
  gtk_widget_set_parent (box, GTK_WIDGET (self));
}

GtkWidget *
stead_bill_table_new (void)
{
  return g_object_new (STEAD_TYPE_BILL_TABLE, NULL);
}

void
stead_bill_table_set (SteadBillTable   *self,
                      SteadDesk        *desk,
                      SteadBuildAnswer *answer)
{
  g_autoptr(GListModel) model = NULL;
  GPtrArray *rows;

  g_return_if_fail (STEAD_IS_BILL_TABLE (self) && STEAD_IS_DESK (desk));
  g_set_object (&self->desk, desk);
  self->build_id = answer != NULL ? answer->build->id : 0;
  if (answer == NULL)
    {
      stead_table_set_model (self->table, NULL);
      return;
    }
  rows = g_steal_pointer (&answer->rows);
  answer->rows = g_ptr_array_new ();
  model = stead_rows_from_array (rows, row_free);
  stead_table_set_model (self->table, model);
}
