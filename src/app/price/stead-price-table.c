/* stead-price-table.c - the numbers of the break-even chart as a table. */
#include "config.h"

#include "app/price/stead-price-table.h"

#include <glib/gi18n-lib.h>

#include "core/stead-money.h"

/* What a cell needs to be written; owned by the table. */
typedef struct
{
  SteadPriceModel *model;
  char            *currency;
  SteadPack        pack;
} Follower;

static void
follower_free (gpointer data)
{
  Follower *follower = data;

  g_object_unref (follower->model);
  g_free (follower->currency);
  g_free (follower);
}

static const SteadPriceRow *
row_of (gpointer item)
{
  return stead_row_get (STEAD_ROW (item));
}

static char *
units_text (gpointer item,
            gpointer data)
{
  return stead_words_units (((Follower *) data)->pack, (double) row_of (item)->units);
}

static char *
revenue_text (gpointer item,
              gpointer data)
{
  return stead_money_format (row_of (item)->revenue_cents, ((Follower *) data)->currency);
}

static char *
cost_text (gpointer item,
           gpointer data)
{
  return stead_money_format (row_of (item)->cost_cents, ((Follower *) data)->currency);
}

static char *
profit_text (gpointer item,
             gpointer data)
{
  return stead_money_format (row_of (item)->profit_cents, ((Follower *) data)->currency);
}

static void
follow (GtkWidget *table)
{
  Follower *follower = g_object_get_data (G_OBJECT (table), "follower");
  const SteadPriceAnswer *answer = stead_price_model_get_answer (follower->model);
  GPtrArray *facts;
  g_autoptr(GArray) rows = NULL;
  g_autoptr(GListModel) model = NULL;

  if (answer == NULL || !gtk_widget_get_mapped (table))
    return;
  g_free (follower->currency);
  follower->currency = g_strdup (answer->cost->farm->currency);
  follower->pack = answer->cost->product->pack;
  rows = stead_price_answer_table (answer);
  facts = g_ptr_array_new ();
  for (guint i = 0; i < rows->len; i++)
    g_ptr_array_add (facts, g_memdup2 (&g_array_index (rows, SteadPriceRow, i), sizeof (SteadPriceRow)));
  model = stead_rows_from_array (facts, g_free);
  stead_table_set_model (STEAD_TABLE (table), model);
}

GtkWidget *
stead_price_table_new (SteadPriceModel *model)
{
  GtkWidget *widget = stead_table_new (_("Money in and costs, by how many are sold"));
  SteadTable *table = STEAD_TABLE (widget);
  Follower *follower = g_new0 (Follower, 1);

  follower->model = g_object_ref (model);
  follower->currency = g_strdup ("USD");
  g_object_set_data_full (G_OBJECT (widget), "follower", follower, follower_free);
  stead_table_add_column (table, _("Sold"), TRUE, TRUE, units_text, NULL, NULL, follower);
  stead_table_add_column (table, _("Money in"), TRUE, TRUE, revenue_text, NULL, NULL, follower);
  stead_table_add_column (table, _("All costs"), TRUE, TRUE, cost_text, NULL, NULL, follower);
  stead_table_add_column (table, C_("column of a table", "Left"), TRUE, TRUE, profit_text, NULL, NULL, follower);
  g_signal_connect_object (model, "changed", G_CALLBACK (follow), widget, G_CONNECT_SWAPPED);
  g_signal_connect_after (widget, "map", G_CALLBACK (follow), NULL);
  return widget;
}
