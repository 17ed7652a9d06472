/* stead-row.c - a row item that carries any C struct. */
#include "config.h"

#include "app/stead-table.h"

struct _SteadRow
{
  GObject        parent_instance;

  gpointer       fact;
  GDestroyNotify destroy;   /* (nullable) */
};

G_DEFINE_FINAL_TYPE (SteadRow, stead_row, G_TYPE_OBJECT)

static void
stead_row_finalize (GObject *object)
{
  SteadRow *self = STEAD_ROW (object);

  if (self->destroy != NULL)
    self->destroy (self->fact);
  G_OBJECT_CLASS (stead_row_parent_class)->finalize (object);
}

static void
stead_row_class_init (SteadRowClass *klass)
{
  G_OBJECT_CLASS (klass)->finalize = stead_row_finalize;
}

static void
stead_row_init (SteadRow *self)
{
}

/**
 * stead_row_new:
 * @fact: (transfer full): what the row is about
 * @destroy: (nullable): frees @fact with the row
 */
SteadRow *
stead_row_new (gpointer       fact,
               GDestroyNotify destroy)
{
  SteadRow *self = g_object_new (STEAD_TYPE_ROW, NULL);

  self->fact = fact;
  self->destroy = destroy;
  return self;
}

gpointer
stead_row_get (SteadRow *self)
{
  g_return_val_if_fail (STEAD_IS_ROW (self), NULL);
  return self->fact;
}

/**
 * stead_rows_from_array:
 * @facts: (transfer full): is freed; its own free function is not run
 * @destroy: (nullable): frees each fact with its row
 *
 * Returns: (transfer full): a list store of #SteadRow
 */
GListModel *
stead_rows_from_array (GPtrArray      *facts,
                       GDestroyNotify  destroy)
{
  GListStore *model = g_list_store_new (STEAD_TYPE_ROW);
  g_autoptr(GPtrArray) rows = g_ptr_array_new_with_free_func (g_object_unref);

  g_return_val_if_fail (facts != NULL, G_LIST_MODEL (model));

  for (guint i = 0; i < facts->len; i++)
    g_ptr_array_add (rows, stead_row_new (facts->pdata[i], destroy));
  g_ptr_array_set_free_func (facts, NULL);
  g_ptr_array_unref (facts);
  g_list_store_splice (model, 0, 0, rows->pdata, rows->len);
  return G_LIST_MODEL (model);
}
