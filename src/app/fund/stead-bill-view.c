/* stead-bill-view.c - the bill of a build as a table, and what is done with a row. */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "app/fund/stead-bill-view.h"
#include "app/fund/stead-fund-dialogs.h"
#include "app/make/stead-make-parts.h"
#include "app/sell/stead-sell-parts.h"
#include "app/stead-table.h"
#include "app/stead-ui.h"
#include "app/stead-wrap-layout.h"
#include "core/stead-money.h"

struct _SteadBillView
{
  GtkWidget   parent_instance;

  SteadDesk  *desk;       /* (nullable) */
  gint64      build_id;
  SteadTable *table;
  GtkWidget  *slot, *sums, *stocks;
};

G_DEFINE_FINAL_TYPE (SteadBillView, stead_bill_view, GTK_TYPE_WIDGET)

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
  g_free (row->supplier);
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
  return stead_desk_get_farm (((SteadBillView *) data)->desk)->currency;
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
  return stead_build_row_amount (row_of (item), row_of (item)->packs);
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

  gint64 cents = row->given ? row->planned_cents : row->cents;

  return row->price_cents < 0 && cents == 0 ? g_strdup ("–") : stead_money_format (cents, currency (data));
}

/* Who it is to be bought from, or who quoted the lowest price. */
static char *
from_text (gpointer item,
           gpointer data)
{
  const SteadBuildRow *row = row_of (item);

  if (row->given)
    return g_strdup (row->giver != NULL ? row->giver : "");
  if (row->supplier != NULL)
    return g_strdup (row->supplier);
  if (row->n_quotes == 0)
    return g_strdup ("");
  return g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "%u quote", "%u quotes", row->n_quotes), row->n_quotes);
}

static char *
state_text (gpointer item,
            gpointer data)
{
  const SteadBuildRow *row = row_of (item);
  g_autofree char *came = NULL;
  g_autofree char *all = NULL;

  if (row->left_out)
    return g_strdup (C_("line of a bill", "left out"));
  if (row->given)
    return g_strdup (row->is_bought ? C_("line of a bill", "given, here") : C_("line of a bill", "given"));
  if (row->is_bought)
    return g_strdup (C_("line of a bill", "bought"));
  if (!(row->came > 0))
    return g_strdup (C_("line of a bill", "to buy"));
  came = stead_number_format (row->came, 1);
  all = stead_number_format (row->packs, 1);
  /* Translators: state of a line of a bill: so many of so many. */
  return g_strdup_printf (_("%s of %s bought"), came, all);
}

/* --- what a person says about it --------------------------------------------------------- */

static gboolean
save_act (SteadStore  *store,
          gpointer     data,
          GError     **error)
{
  return stead_build_line_repo_save (store, data, error);
}

static gboolean
save_line (SteadBillView       *self,
           const SteadBuildRow  *row,
           SteadBuildLine       *line,
           GError              **error)
{
  /* Translators: name of a step to undo; a thing on the bill of a build. */
  g_autofree char *step = g_strdup_printf (_("bill: %s"), row->name);

  return stead_desk_act (self->desk, step, save_act, line, error);
}

static SteadBuildLine *
find_line (SteadBillView        *self,
           const SteadBuildRow  *row,
           GError              **error)
{
  return stead_fund_find_line (self->desk, self->build_id, row, error);
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
chosen_row (SteadBillView *self)
{
  gpointer item = stead_table_get_selected (self->table);

  if (item == NULL)
    stead_desk_say (self->desk, _("Choose a line of the bill first."), FALSE);
  return item != NULL ? row_of (item) : NULL;
}

static void
line_cb (SteadBillView *self)
{
  const SteadBuildRow *row = chosen_row (self);

  if (row != NULL)
    stead_line_dialog_show (GTK_WIDGET (self), self->desk, self->build_id, row);
}

static void
activate_cb (gpointer item,
             gpointer data)
{
  line_cb (data);
}

static void
quotes_cb (SteadBillView *self)
{
  const SteadBuildRow *row = chosen_row (self);

  if (row != NULL)
    stead_quotes_dialog_show (GTK_WIDGET (self), self->desk, self->build_id, row);
}

static void
buy_cb (SteadBillView *self)
{
  stead_buy_dialog_show (GTK_WIDGET (self), self->desk, self->build_id);
}

static void
add_cb (SteadBillView *self)
{
  stead_line_dialog_show (GTK_WIDGET (self), self->desk, self->build_id, NULL);
}

static void
stocks_cb (SteadBillView *self)
{
  stead_stocks_dialog_show (GTK_WIDGET (self), self->desk, self->build_id);
}

/* --- sums --------------------------------------------------------------------------- */

static void
add_sum (SteadBillView *self,
         int           *row,
         const char    *style,
         const char    *name,
         gint64         cents)
{
  g_autofree char *text = stead_money_format (cents, currency (self));

  stead_sell_figures (self->sums, (*row)++, style, name, text, NULL);
}

static void
show_sums (SteadBillView          *self,
           const SteadBuildAnswer *answer)
{
  int row = 0;

  stead_make_clear (self->sums);
  if (answer->spent_cents > 0)
    add_sum (self, &row, NULL, _("Paid already"), answer->spent_cents);
  add_sum (self, &row, NULL, _("To be bought"), answer->bill.bought_cents);
  add_sum (self, &row, NULL, _("Sales tax"), answer->bill.tax_cents);
  add_sum (self, &row, NULL, _("For what was forgotten or gets dearer"), answer->bill.contingency_cents);
  add_sum (self, &row, "strong", _("Money needed"), answer->goal_cents);
  if (answer->bill.given_cents > 0)
    add_sum (self, &row, "soft", _("Given besides, at its fair value"), answer->bill.given_cents);
}

/* --- the object ----------------------------------------------------------------------- */

static void
stead_bill_view_dispose (GObject *object)
{
  SteadBillView *self = STEAD_BILL_VIEW (object);

  gtk_widget_dispose_template (GTK_WIDGET (self), STEAD_TYPE_BILL_VIEW);
  stead_ui_drop_children (GTK_WIDGET (object));
  g_clear_object (&self->desk);
  G_OBJECT_CLASS (stead_bill_view_parent_class)->dispose (object);
}

static void
stead_bill_view_class_init (SteadBillViewClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  g_type_ensure (STEAD_TYPE_WRAP_LAYOUT);
  G_OBJECT_CLASS (klass)->dispose = stead_bill_view_dispose;
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_template_from_resource (widget_class, STEAD_UI ("fund/stead-bill-view.ui"));
  gtk_widget_class_bind_template_child (widget_class, SteadBillView, slot);
  gtk_widget_class_bind_template_child (widget_class, SteadBillView, sums);
  gtk_widget_class_bind_template_child (widget_class, SteadBillView, stocks);
  gtk_widget_class_bind_template_callback (widget_class, line_cb);
  gtk_widget_class_bind_template_callback (widget_class, quotes_cb);
  gtk_widget_class_bind_template_callback (widget_class, buy_cb);
  gtk_widget_class_bind_template_callback (widget_class, add_cb);
  gtk_widget_class_bind_template_callback (widget_class, stocks_cb);
}

static void
stead_bill_view_init (SteadBillView *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  self->table = STEAD_TABLE (stead_table_new (_("Bill of materials")));
  stead_table_add_column (self->table, _("Part"), FALSE, FALSE, part_text, NULL, NULL, self);
  stead_table_add_column (self->table, _("Thing"), FALSE, TRUE, name_text, NULL, NULL, self);
  stead_table_add_column (self->table, _("How many"), TRUE, FALSE, amount_text, amount_edit, NULL, self);
  stead_table_add_column (self->table, _("Price of one"), TRUE, FALSE, price_text, price_edit, NULL, self);
  stead_table_add_column (self->table, _("Cost"), TRUE, FALSE, cents_text, NULL, NULL, self);
  stead_table_add_column (self->table, _("From"), FALSE, FALSE, from_text, NULL, NULL, self);
  stead_table_add_column (self->table, _("State"), FALSE, FALSE, state_text, NULL, NULL, self);
  stead_table_set_empty (self->table, _("Draw the build, or add a line: what it takes stands here."));
  stead_table_set_activate (self->table, activate_cb, self);
  gtk_widget_set_hexpand (GTK_WIDGET (self->table), TRUE);
  gtk_box_append (GTK_BOX (self->slot), GTK_WIDGET (self->table));
}

void
stead_bill_view_show (SteadBillView    *self,
                      SteadDesk        *desk,
                      SteadBuildAnswer *answer)
{
  g_autoptr(GListModel) model = NULL;
  GPtrArray *rows;

  g_return_if_fail (STEAD_IS_BILL_VIEW (self) && STEAD_IS_DESK (desk));
  g_set_object (&self->desk, desk);
  self->build_id = answer->build->id;
  gtk_widget_set_visible (self->stocks, answer->build->has_shelter);
  show_sums (self, answer);
  rows = g_steal_pointer (&answer->rows);
  answer->rows = g_ptr_array_new ();
  model = stead_rows_from_array (rows, row_free);
  stead_table_set_model (self->table, model);
}
