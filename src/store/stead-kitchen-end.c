/* stead-kitchen-end.c - a kitchen batch finished, opened again, or taken away.
 *
 * Cents in = cents out: what the batch used is what its lot carries.  Where nothing
 * good came of it, the cost stays with the batch as a loss.
 */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "core/stead-money.h"
#include "store/stead-kitchen-private.h"
#include "store/stead-ledger-private.h"

gboolean
stead_kitchen_repo_used_cents (SteadStore  *store,
                               gint64       batch_id,
                               gint64      *out_cents,
                               GError     **error)
{
  static const char sql[] = "SELECT -sum (cost_cents) FROM movement WHERE batch_id = ?1 AND kind = 'used'";
  g_autoptr(SteadStmt) stmt = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store) && out_cents != NULL, FALSE);
  stmt = stead_store_prepare (store, sql, error);
  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, batch_id);
  return stead_repo_number (store, stmt, 0, out_cents, error);
}

/* --- what the lots carry ----------------------------------------------------------- */

typedef struct
{
  GArray *ids;     /* of gint64: movements "made" of the batch */
  GArray *bases;   /* of double: how much each brought in */
} Made;

static void
made_clear (Made *made)
{
  g_clear_pointer (&made->ids, g_array_unref);
  g_clear_pointer (&made->bases, g_array_unref);
}
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Made, made_clear)

static gboolean
read_made (SteadStore  *store,
           gint64       batch_id,
           Made        *made,
           GError     **error)
{
  static const char sql[] =
    "SELECT m.id, m.quantity_base FROM harvest h JOIN movement m ON m.lot_id = h.lot_id AND m.kind = 'made'"
    " WHERE h.batch_id = ?1 ORDER BY m.id";
  g_autoptr(SteadStmt) stmt = stead_store_prepare (store, sql, error);
  int found;

  made->ids = g_array_new (FALSE, FALSE, sizeof (gint64));
  made->bases = g_array_new (FALSE, FALSE, sizeof (double));
  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, batch_id);
  while ((found = stead_store_step (store, stmt, error)) == 1)
    {
      gint64 id = sqlite3_column_int64 (stmt, 0);
      double base = sqlite3_column_double (stmt, 1);

      g_array_append_val (made->ids, id);
      g_array_append_val (made->bases, base);
    }
  return found == 0;
}

static gboolean
set_cents (SteadStore  *store,
           gint64       move_id,
           gint64       cents,
           GError     **error)
{
  static const char sql[] = "UPDATE movement SET cost_cents = ?2 WHERE id = ?1 AND cost_cents <> ?2";
  g_autoptr(SteadStmt) stmt = stead_store_prepare (store, sql, error);

  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, move_id);
  sqlite3_bind_int64 (stmt, 2, cents);
  return stead_store_run (store, stmt, error);
}

gboolean
stead_kitchen_settle_cost (SteadStore  *store,
                           gint64       batch_id,
                           GError     **error)
{
  g_auto(Made) made = { NULL, NULL };
  g_autofree gint64 *shares = NULL;
  gint64 used;

  if (!stead_kitchen_repo_used_cents (store, batch_id, &used, error) || !read_made (store, batch_id, &made, error))
    return FALSE;
  if (made.ids->len == 0)
    return TRUE;
  shares = g_new (gint64, made.ids->len);
  stead_money_split (used, (const double *) (gconstpointer) made.bases->data, made.ids->len, shares);
  for (guint i = 0; i < made.ids->len; i++)
    if (!set_cents (store, g_array_index (made.ids, gint64, i), shares[i], error))
      return FALSE;
  return TRUE;
}

/* --- finishing ------------------------------------------------------------------------ */

static gboolean
write_end (SteadStore  *store,
           gint64       batch_id,
           SteadDay     day,
           GError     **error)
{
  static const char sql[] = "UPDATE batch SET ended_on = ?2 WHERE id = ?1";
  g_autoptr(SteadStmt) stmt = stead_store_prepare (store, sql, error);

  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, batch_id);
  stead_stmt_bind_day (stmt, 2, day);
  return stead_store_run (store, stmt, error);
}

/* Something was used, and nothing after @day. */
static gboolean
check_used (SteadStore        *store,
            const SteadBatch  *batch,
            SteadDay           day,
            GError           **error)
{
  static const char sql[] = "SELECT max (day) FROM movement WHERE batch_id = ?1 AND kind = 'used'";
  g_autoptr(SteadStmt) stmt = stead_store_prepare (store, sql, error);
  g_autofree char *text = NULL;
  SteadDay last;

  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, batch->id);
  if (stead_store_step (store, stmt, error) < 0)
    return FALSE;
  last = stead_stmt_day (stmt, 0);
  if (last == STEAD_DAY_NONE)
    return stead_repo_refuse (error, _("Nothing was taken out of the store room for “%s” yet. Take the ingredients "
                                       "first, so that its cost is known."), batch->name);
  if (last > day)
    {
      text = stead_day_format (last, STEAD_DAY_STYLE_MEDIUM);
      return stead_repo_refuse (error, _("Something was taken out for “%s” on %s. It cannot be finished before that "
                                         "day."), batch->name, text);
    }
  return TRUE;
}

/* The batch as it is when its end is written down: open, and begun by then. */
static SteadBatch *
batch_to_finish (SteadStore          *store,
                 const SteadHarvest  *harvest,
                 GError             **error)
{
  g_autoptr(SteadBatch) batch = NULL;

  /* A change of what came out opens it for that long. */
  if (harvest->id != 0 && !write_end (store, harvest->batch_id, STEAD_DAY_NONE, error))
    return NULL;
  batch = stead_kitchen_open_batch (store, harvest->batch_id, error);
  if (batch == NULL || harvest->day == STEAD_DAY_NONE || harvest->day > stead_store_get_today (store))
    return g_steal_pointer (&batch);
  return stead_kitchen_begin_by (store, batch, harvest->day, error) ? g_steal_pointer (&batch) : NULL;
}

gboolean
stead_kitchen_repo_finish (SteadStore    *store,
                           SteadHarvest  *harvest,
                           GError       **error)
{
  g_autoptr(SteadKitchen) kitchen = NULL;
  g_autoptr(SteadBatch) batch = NULL;
  SteadGivenIds *ids;
  gint64 used;

  g_return_val_if_fail (STEAD_IS_STORE (store) && harvest != NULL, FALSE);
  g_return_val_if_fail (stead_store_in_action (store), FALSE);
  batch = batch_to_finish (store, harvest, error);
  kitchen = batch != NULL ? stead_kitchen_repo_get (store, batch->id, error) : NULL;
  if (kitchen == NULL)
    return FALSE;
  if (harvest->day == STEAD_DAY_NONE)
    return stead_repo_refuse (error, _("Enter the day."));
  if (!check_used (store, batch, harvest->day, error) ||
      !stead_kitchen_repo_used_cents (store, batch->id, &used, error))
    return FALSE;
  if (harvest->item_id == 0)
    harvest->item_id = kitchen->item_id;
  harvest->cost_cents = used;
  harvest->is_last = TRUE;
  ids = stead_given_ids_new (&harvest->id);
  stead_given_ids_add (ids, &harvest->lot_id);
  return stead_given_ids_end (ids, stead_harvest_repo_save (store, harvest, error) &&
                                   stead_kitchen_settle_cost (store, batch->id, error) &&
                                   write_end (store, batch->id, harvest->day, error));
}

/* --- taking back ------------------------------------------------------------------------ */

static gboolean
delete_harvests (SteadStore  *store,
                 gint64       batch_id,
                 GError     **error)
{
  g_autoptr(GPtrArray) harvests = stead_harvest_repo_list (store, batch_id, stead_day_new (1900, 1, 1), stead_day_new (2199, 12, 31), error);

  for (guint i = harvests != NULL ? harvests->len : 0; i > 0; i--)
    if (!stead_harvest_repo_delete (store, ((const SteadHarvest *) harvests->pdata[i - 1])->id, error))
      return FALSE;
  return harvests != NULL;
}

/* The batch, which must be of the kitchen. */
static gboolean
check_kind (SteadStore  *store,
            gint64       batch_id,
            GError     **error)
{
  g_autoptr(SteadBatch) batch = stead_batch_repo_get (store, batch_id, error);

  if (batch == NULL)
    return FALSE;
  return batch->kind == STEAD_BATCH_KITCHEN || stead_repo_missing (error);
}

gboolean
stead_kitchen_repo_reopen (SteadStore  *store,
                           gint64       batch_id,
                           GError     **error)
{
  g_return_val_if_fail (STEAD_IS_STORE (store), FALSE);
  g_return_val_if_fail (stead_store_in_action (store), FALSE);
  return check_kind (store, batch_id, error) &&
         delete_harvests (store, batch_id, error) &&
         write_end (store, batch_id, STEAD_DAY_NONE, error);
}

static gboolean
give_all_back (SteadStore  *store,
               gint64       batch_id,
               GError     **error)
{
  g_autoptr(GPtrArray) moves = stead_kitchen_repo_taken (store, batch_id, error);

  for (guint i = moves != NULL ? moves->len : 0; i > 0; i--)
    if (!stead_kitchen_repo_give_back (store, ((const SteadMove *) moves->pdata[i - 1])->id, error))
      return FALSE;
  return moves != NULL;
}

gboolean
stead_kitchen_repo_delete (SteadStore  *store,
                           gint64       batch_id,
                           GError     **error)
{
  return stead_kitchen_repo_reopen (store, batch_id, error) &&
         give_all_back (store, batch_id, error) &&
         stead_batch_check_unused (store, batch_id, error) &&
         stead_batch_remove (store, batch_id, error);
}
