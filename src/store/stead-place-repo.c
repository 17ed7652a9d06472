/* stead-place-repo.c - the places of the farm. */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "store/stead-place-repo.h"

#include "store/stead-repo-private.h"

static const char * const place_words[] = { "coop", "tank", "bay", "kitchen", "stall", "store", NULL };

void
stead_place_facts_free (SteadPlaceFacts *place)
{
  if (place == NULL)
    return;
  g_free (place->name);
  g_free (place);
}

static gpointer
place_from_row (SteadStmt *stmt)
{
  SteadPlaceFacts *place = g_new0 (SteadPlaceFacts, 1);

  place->id = sqlite3_column_int64 (stmt, 0);
  place->name = stead_stmt_text (stmt, 1);
  place->kind = (SteadPlaceKind) stead_repo_word (stmt, 2, place_words);
  place->area_m2 = stead_stmt_real (stmt, 3);
  return place;
}

GPtrArray *
stead_place_repo_list (SteadStore  *store,
                       GError     **error)
{
  static const char sql[] = "SELECT id, name, kind, area_m2 FROM place ORDER BY name, id";
  g_autoptr(SteadStmt) stmt = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  stmt = stead_store_prepare (store, sql, error);
  return stmt != NULL
         ? stead_repo_rows (store, stmt, place_from_row, (GDestroyNotify) stead_place_facts_free, error)
         : NULL;
}

/* A batch that lives or lived in a place is counted, housed or watered by what the place is. */
static gboolean
check_kind (SteadStore             *store,
            const SteadPlaceFacts  *place,
            GError                **error)
{
  static const char sql[] =
    "SELECT EXISTS (SELECT 1 FROM place WHERE id = ?1 AND kind <> ?2)"
    " AND (EXISTS (SELECT 1 FROM batch WHERE place_id = ?1) OR EXISTS (SELECT 1 FROM batch_stay WHERE place_id = ?1)"
    " OR EXISTS (SELECT 1 FROM crop WHERE climate_id = ?1) OR EXISTS (SELECT 1 FROM tank WHERE place_id = ?1)"
    " OR EXISTS (SELECT 1 FROM glasshouse WHERE place_id = ?1))";
  g_autoptr(SteadStmt) stmt = stead_store_prepare (store, sql, error);
  gint64 differs = 1;

  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, place->id);
  stead_stmt_bind_text (stmt, 2, place_words[place->kind]);
  if (!stead_repo_number (store, stmt, 0, &differs, error))
    return FALSE;
  return differs == 0
         || stead_repo_refuse (error, _("Something lives or lived at “%s”, or its measures are written down, so its kind stays."), place->name);
}

static gboolean
place_check (SteadStore       *store,
             SteadPlaceFacts  *place,
             GError          **error)
{
  static const char taken_sql[] = "SELECT 1 FROM place WHERE name = ?1 AND id <> ?2";

  if (!stead_repo_check_name (place->name, error))
    return FALSE;
  if (!isnan (place->area_m2) && !(place->area_m2 > 0 && place->area_m2 < STEAD_AMOUNT_MAX))
    return stead_repo_refuse (error, _("The area must be above zero. Check the number, or leave it empty."));
  return stead_repo_check_unique (store, taken_sql, place->name, place->id, error)
         && (place->id == 0 || check_kind (store, place, error));
}

gboolean
stead_place_repo_save (SteadStore       *store,
                       SteadPlaceFacts  *place,
                       GError          **error)
{
  static const char insert_sql[] = "INSERT INTO place (name, kind, area_m2) VALUES (?1, ?2, ?3)";
  static const char update_sql[] = "UPDATE place SET name = ?1, kind = ?2, area_m2 = ?3 WHERE id = ?4";
  g_autoptr(SteadStmt) stmt = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store) && place != NULL, FALSE);
  g_return_val_if_fail (stead_store_in_action (store), FALSE);
  if (!place_check (store, place, error))
    return FALSE;
  stmt = stead_store_prepare (store, place->id == 0 ? insert_sql : update_sql, error);
  if (stmt == NULL)
    return FALSE;
  stead_repo_bind_tidy (stmt, 1, place->name);
  stead_stmt_bind_text (stmt, 2, place_words[place->kind]);
  stead_stmt_bind_real (stmt, 3, place->area_m2);
  return stead_repo_save_row (store, stmt, &place->id, error);
}

gboolean
stead_place_repo_delete (SteadStore  *store,
                         gint64       place_id,
                         GError     **error)
{
  static const char used_sql[] =
    "SELECT EXISTS (SELECT 1 FROM batch WHERE place_id = ?1) OR EXISTS (SELECT 1 FROM batch_stay WHERE place_id = ?1)"
    " OR EXISTS (SELECT 1 FROM crop WHERE climate_id = ?1) OR EXISTS (SELECT 1 FROM climate WHERE place_id = ?1)"
    " OR EXISTS (SELECT 1 FROM lot WHERE place_id = ?1) OR EXISTS (SELECT 1 FROM instrument WHERE place_id = ?1)"
    " OR EXISTS (SELECT 1 FROM reading WHERE place_id = ?1)";
  static const char sql[] = "DELETE FROM place WHERE id = ?1";
  gint64 used;

  g_return_val_if_fail (STEAD_IS_STORE (store), FALSE);
  g_return_val_if_fail (stead_store_in_action (store), FALSE);
  used = stead_repo_count_id (store, used_sql, place_id, error);
  if (used > 0)
    return stead_repo_refuse (error, _("A batch, a lot, an instrument or a reading belongs to this place, so it is kept. "
                                       "It can be given another name."));
  return used == 0 && stead_repo_run_id (store, sql, place_id, error);
}
