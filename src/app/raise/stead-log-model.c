/* stead-log-model.c - the log of a batch as a list that loads only what is looked at.
 *
 * Entries come in pages of 128; 24 pages are kept, more than a screen can show,
 * so that a log of any length costs the same memory.
 */
#include "config.h"

#include "app/raise/stead-log-model.h"

#include "app/stead-table.h"

#define PAGE_ROWS 128
#define MAX_PAGES 24

struct _SteadLogModel
{
  GObject               parent_instance;

  const SteadLogSource *source;
  SteadStore           *store;
  gint64                batch_id;
  guint                 n_entries;
  GHashTable           *pages;      /* page number + 1 → GPtrArray of SteadRow */
};

static GType
stead_log_model_get_item_type (GListModel *model)
{
  return STEAD_TYPE_ROW;
}

static guint
stead_log_model_get_n_items (GListModel *model)
{
  return STEAD_LOG_MODEL (model)->n_entries;
}

/* (transfer none) (nullable): NULL when the farm cannot be read just now. */
static GPtrArray *
load_page (SteadLogModel *self,
           guint          page)
{
  GPtrArray *rows = g_hash_table_lookup (self->pages, GUINT_TO_POINTER (page + 1));
  g_autoptr(GPtrArray) entries = NULL;

  if (rows != NULL)
    return rows;
  entries = self->source->page (self->store, self->batch_id, (gint64) page * PAGE_ROWS, PAGE_ROWS, NULL);
  if (entries == NULL)
    return NULL;
  if (g_hash_table_size (self->pages) >= MAX_PAGES)
    g_hash_table_remove_all (self->pages);
  rows = g_ptr_array_new_with_free_func (g_object_unref);
  for (guint i = 0; i < entries->len; i++)
    g_ptr_array_add (rows, stead_row_new (g_steal_pointer (&entries->pdata[i]), self->source->free));
  g_hash_table_insert (self->pages, GUINT_TO_POINTER (page + 1), rows);
  return rows;
}

static gpointer
stead_log_model_get_item (GListModel *model,
                          guint       position)
{
  SteadLogModel *self = STEAD_LOG_MODEL (model);
  GPtrArray *rows;

  if (position >= self->n_entries)
    return NULL;
  rows = load_page (self, position / PAGE_ROWS);
  if (rows == NULL || position % PAGE_ROWS >= rows->len)
    return stead_row_new (self->source->blank (), self->source->free);
  return g_object_ref (rows->pdata[position % PAGE_ROWS]);
}

static void
list_model_iface_init (GListModelInterface *iface)
{
  iface->get_item_type = stead_log_model_get_item_type;
  iface->get_n_items = stead_log_model_get_n_items;
  iface->get_item = stead_log_model_get_item;
}

G_DEFINE_FINAL_TYPE_WITH_CODE (SteadLogModel, stead_log_model, G_TYPE_OBJECT,
                               G_IMPLEMENT_INTERFACE (G_TYPE_LIST_MODEL, list_model_iface_init))

static void
stead_log_model_finalize (GObject *object)
{
  SteadLogModel *self = STEAD_LOG_MODEL (object);

  g_clear_pointer (&self->pages, g_hash_table_unref);
  g_clear_object (&self->store);
  G_OBJECT_CLASS (stead_log_model_parent_class)->finalize (object);
}

static void
stead_log_model_class_init (SteadLogModelClass *klass)
{
  G_OBJECT_CLASS (klass)->finalize = stead_log_model_finalize;
}

static void
stead_log_model_init (SteadLogModel *self)
{
  self->pages = g_hash_table_new_full (NULL, NULL, NULL, (GDestroyNotify) g_ptr_array_unref);
}

SteadLogModel *
stead_log_model_new (const SteadLogSource *source)
{
  SteadLogModel *self = g_object_new (STEAD_TYPE_LOG_MODEL, NULL);

  self->source = source;
  return self;
}

void
stead_log_model_load (SteadLogModel *self,
                      SteadStore    *store,
                      gint64         batch_id)
{
  guint before;
  gint64 count;

  g_return_if_fail (STEAD_IS_LOG_MODEL (self));

  before = self->n_entries;
  count = store != NULL && batch_id > 0 ? self->source->count (store, batch_id, NULL) : 0;
  g_hash_table_remove_all (self->pages);
  g_set_object (&self->store, store);
  self->batch_id = batch_id;
  self->n_entries = (guint) CLAMP (count, 0, G_MAXINT32);
  g_list_model_items_changed (G_LIST_MODEL (self), 0, before, self->n_entries);
}
