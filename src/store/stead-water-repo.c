/* stead-water-repo.c - waters, and what stands and swims in them. */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "store/stead-batch-repo.h"
#include "store/stead-farm-repo.h"
#include "store/stead-place-repo.h"
#include "store/stead-repo-private.h"
#include "store/stead-water-repo.h"

static const char * const kind_words[] = { "tank", "hydroponic", "aquaponic", NULL };

/* Saltier than any sea. */
#define SALINITY_MAX 45.0

/* A year, the longest that a water goes without a test. */
#define TEST_DAYS_MAX 365

/* A water that is cared for is looked at every week. */
#define TEST_DAYS_USUAL 7

SteadWater *
stead_water_new (void)
{
  SteadWater *water = g_new0 (SteadWater, 1);

  water->volume_l = NAN;
  water->test_days = TEST_DAYS_USUAL;
  water->ended_on = STEAD_DAY_NONE;
  return water;
}

void
stead_water_free (SteadWater *water)
{
  if (water == NULL)
    return;
  g_free (water->name);
  g_free (water->note);
  g_free (water);
}

void
stead_water_fish_free (SteadWaterFish *fish)
{
  if (fish == NULL)
    return;
  g_free (fish->species);
  g_free (fish);
}

/* --- reading ---------------------------------------------------------------- */

#define WATER_SELECT "SELECT id, name, kind, volume_l, salinity_g_l, test_days, ended_on, note FROM water"

static gpointer
water_from_row (SteadStmt *stmt)
{
  SteadWater *water = stead_water_new ();

  water->id = sqlite3_column_int64 (stmt, 0);
  water->name = stead_stmt_text (stmt, 1);
  water->kind = (SteadWaterKind) stead_repo_word (stmt, 2, kind_words);
  water->volume_l = stead_stmt_real (stmt, 3);
  water->salinity_g_l = sqlite3_column_double (stmt, 4);
  water->test_days = sqlite3_column_int (stmt, 5);
  water->ended_on = stead_stmt_day (stmt, 6);
  water->note = stead_stmt_text (stmt, 7);
  return water;
}

GPtrArray *
stead_water_repo_list (SteadStore  *store,
                       gboolean     ended,
                       GError     **error)
{
  static const char sql[] = WATER_SELECT " WHERE ?1 OR ended_on IS NULL ORDER BY ended_on IS NOT NULL, name, id";

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  return stead_repo_rows_of (store, sql, ended != FALSE, water_from_row, (GDestroyNotify) stead_water_free,
                             error);
}

SteadWater *
stead_water_repo_get (SteadStore  *store,
                      gint64       id,
                      GError     **error)
{
  static const char sql[] = WATER_SELECT " WHERE id = ?1";

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  return stead_repo_row_of (store, sql, id, water_from_row, error);
}

gboolean
stead_water_repo_volume (SteadStore        *store,
                         const SteadWater  *water,
                         double            *out_l,
                         GError           **error)
{
  g_autoptr(GPtrArray) tanks = NULL;
  double sum = 0;

  g_return_val_if_fail (STEAD_IS_STORE (store) && water != NULL && out_l != NULL, FALSE);
  if (!isnan (water->volume_l))
    {
      *out_l = water->volume_l;
      return TRUE;
    }
  tanks = stead_tank_repo_list_of (store, water->id, error);
  if (tanks == NULL)
    return FALSE;
  for (guint i = 0; i < tanks->len; i++)
    sum += ((const SteadTank *) tanks->pdata[i])->volume_l;
  *out_l = tanks->len > 0 ? sum : NAN;
  return TRUE;
}

/* --- writing ---------------------------------------------------------------- */

static gboolean
check_water_end (SteadStore        *store,
                 const SteadWater  *water,
                 GError           **error)
{
  static const char sql[] = "SELECT max (day) FROM water_test WHERE water_id = ?1";
  g_autoptr(SteadStmt) stmt = NULL;
  SteadDay last;

  if (water->ended_on == STEAD_DAY_NONE)
    return TRUE;
  if (water->ended_on > stead_store_get_today (store))
    return stead_repo_refuse (error, _("The last day of this water is still to come. Enter it when it is here."));
  if ((stmt = stead_store_prepare (store, sql, error)) == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, water->id);
  if (stead_store_step (store, stmt, error) < 0)
    return FALSE;
  last = stead_stmt_day (stmt, 0);
  if (last != STEAD_DAY_NONE && last > water->ended_on)
    return stead_repo_refuse (error, _("This water was tested after that day. Check the date."));
  return TRUE;
}

static gboolean
check_water (SteadStore        *store,
             const SteadWater  *water,
             GError           **error)
{
  static const char taken_sql[] = "SELECT 1 FROM water WHERE name = ?1 AND id <> ?2";

  if (!stead_repo_check_name (water->name, error))
    return FALSE;
  if (!isnan (water->volume_l) && !(water->volume_l > 0 && water->volume_l <= STEAD_AMOUNT_MAX))
    return stead_repo_refuse (error, _("The volume of the water must be above zero. Check the number, "
                                       "or leave it empty to take the sum of its tanks."));
  if (!(water->salinity_g_l >= 0 && water->salinity_g_l <= SALINITY_MAX))
    return stead_repo_refuse (error, _("Salt in the water must lie between 0 and 45 grams a liter; "
                                       "the sea has about 35."));
  if (!(water->test_days >= 1 && water->test_days <= TEST_DAYS_MAX))
    return stead_repo_refuse (error, _("From one test to the next it must be 1 to 365 days."));
  return stead_repo_check_note (water->note, error) &&
         stead_repo_check_unique (store, taken_sql, water->name, water->id, error) &&
         check_water_end (store, water, error);
}

gboolean
stead_water_repo_save (SteadStore  *store,
                       SteadWater  *water,
                       GError     **error)
{
  static const char insert_sql[] = "INSERT INTO water (name, kind, volume_l, salinity_g_l, test_days, ended_on, note)"
                                   " VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7)";
  static const char update_sql[] = "UPDATE water SET name = ?1, kind = ?2, volume_l = ?3, salinity_g_l = ?4,"
                                   " test_days = ?5, ended_on = ?6, note = ?7 WHERE id = ?8";
  g_autoptr(SteadStmt) stmt = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store) && water != NULL, FALSE);
  g_return_val_if_fail (stead_store_in_action (store), FALSE);
  g_return_val_if_fail ((guint) water->kind <= STEAD_WATER_AQUAPONIC, FALSE);
  if (!check_water (store, water, error))
    return FALSE;
  stmt = stead_store_prepare (store, water->id == 0 ? insert_sql : update_sql, error);
  if (stmt == NULL)
    return FALSE;
  stead_repo_bind_tidy (stmt, 1, water->name);
  stead_stmt_bind_text (stmt, 2, kind_words[water->kind]);
  stead_stmt_bind_real (stmt, 3, water->volume_l);
  sqlite3_bind_double (stmt, 4, water->salinity_g_l);
  sqlite3_bind_int (stmt, 5, water->test_days);
  stead_stmt_bind_day (stmt, 6, water->ended_on);
  stead_repo_bind_tidy (stmt, 7, water->note);
  return stead_repo_save_row (store, stmt, &water->id, error);
}

gboolean
stead_water_repo_delete (SteadStore  *store,
                         gint64       id,
                         GError     **error)
{
  static const char sql[] = "DELETE FROM water WHERE id = ?1";

  g_return_val_if_fail (STEAD_IS_STORE (store), FALSE);
  g_return_val_if_fail (stead_store_in_action (store), FALSE);
  return stead_repo_change_row (store, sql, id, error);
}

/* --- what stands in it ------------------------------------------------------- */

gint64
stead_water_repo_of_place (SteadStore  *store,
                           gint64       place_id,
                           GError     **error)
{
  static const char sql[] = "SELECT water_id FROM place WHERE id = ?1";

  g_return_val_if_fail (STEAD_IS_STORE (store), -1);
  return stead_repo_count_id (store, sql, place_id, error);
}

gboolean
stead_water_repo_set_place (SteadStore  *store,
                            gint64       place_id,
                            gint64       water_id,
                            GError     **error)
{
  static const char sql[] = "UPDATE place SET water_id = ?2 WHERE id = ?1";
  g_autoptr(SteadStmt) stmt = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store), FALSE);
  g_return_val_if_fail (stead_store_in_action (store), FALSE);
  stmt = stead_store_prepare (store, sql, error);
  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, place_id);
  stead_stmt_bind_id (stmt, 2, water_id);
  return stead_repo_run_one (store, stmt, error);
}

static gpointer
id_from_row (SteadStmt *stmt)
{
  gint64 id = sqlite3_column_int64 (stmt, 0);

  return g_memdup2 (&id, sizeof id);
}

/* The ids of its places, as a set. */
static GHashTable *
place_ids (SteadStore  *store,
           gint64       water_id,
           GError     **error)
{
  static const char sql[] = "SELECT id FROM place WHERE water_id = ?1 ORDER BY id";
  g_autoptr(SteadStmt) stmt = stead_store_prepare (store, sql, error);
  g_autoptr(GPtrArray) ids = NULL;
  GHashTable *set;

  if (stmt == NULL)
    return NULL;
  sqlite3_bind_int64 (stmt, 1, water_id);
  ids = stead_repo_rows (store, stmt, id_from_row, NULL, error);
  if (ids == NULL)
    return NULL;
  set = g_hash_table_new_full (g_int64_hash, g_int64_equal, g_free, NULL);
  for (guint i = 0; i < ids->len; i++)
    g_hash_table_add (set, ids->pdata[i]);
  return set;
}

GPtrArray *
stead_water_repo_places (SteadStore  *store,
                         gint64       water_id,
                         GError     **error)
{
  g_autoptr(GHashTable) inside = NULL;
  g_autoptr(GPtrArray) all = NULL;
  g_autoptr(GPtrArray) places = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  inside = place_ids (store, water_id, error);
  all = inside != NULL ? stead_place_repo_list (store, error) : NULL;
  if (all == NULL)
    return NULL;
  places = g_ptr_array_new_with_free_func ((GDestroyNotify) stead_place_facts_free);
  for (guint i = 0; i < all->len; i++)
    if (g_hash_table_contains (inside, &((const SteadPlaceFacts *) all->pdata[i])->id))
      g_ptr_array_add (places, g_steal_pointer (&all->pdata[i]));
  return g_steal_pointer (&places);
}

GPtrArray *
stead_water_repo_batches (SteadStore  *store,
                          gint64       water_id,
                          GError     **error)
{
  g_autoptr(GHashTable) inside = NULL;
  g_autoptr(GPtrArray) all = NULL;
  g_autoptr(GPtrArray) batches = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  inside = place_ids (store, water_id, error);
  all = inside != NULL ? stead_batch_repo_list (store, FALSE, error) : NULL;
  if (all == NULL)
    return NULL;
  batches = g_ptr_array_new_with_free_func ((GDestroyNotify) stead_batch_free);
  for (guint i = 0; i < all->len; i++)
    {
      const SteadBatch *batch = all->pdata[i];

      if ((batch->kind == STEAD_BATCH_FISH || batch->kind == STEAD_BATCH_CROP) &&
          g_hash_table_contains (inside, &batch->place_id))
        g_ptr_array_add (batches, g_steal_pointer (&all->pdata[i]));
    }
  return g_steal_pointer (&batches);
}

static gpointer
fish_from_row (SteadStmt *stmt)
{
  SteadWaterFish *fish = g_new0 (SteadWaterFish, 1);

  fish->batch_id = sqlite3_column_int64 (stmt, 0);
  fish->species = stead_stmt_text (stmt, 1);
  fish->mean_g = sqlite3_column_double (stmt, 2);
  fish->protein_frac = stead_stmt_real (stmt, 3);
  fish->feed_kg = sqlite3_column_double (stmt, 4);
  return fish;
}

GPtrArray *
stead_water_repo_fish (SteadStore  *store,
                       gint64       water_id,
                       SteadDay     from,
                       SteadDay     to,
                       GError     **error)
{
  static const char sql[] =
    "SELECT b.id, f.species,"
    " coalesce ((SELECT w.total_kg * 1000 / w.n FROM weighing w WHERE w.batch_id = b.id"
    "            ORDER BY w.day DESC, w.id DESC LIMIT 1), f.stocked_g),"
    " f.protein_frac,"
    " (SELECT coalesce (sum (e.feed_kg), 0) FROM batch_entry e WHERE e.batch_id = b.id AND e.day BETWEEN ?2 AND ?3)"
    " FROM place p JOIN batch b ON b.place_id = p.id JOIN fish f ON f.batch_id = b.id"
    " WHERE p.water_id = ?1 AND b.ended_on IS NULL ORDER BY b.name, b.id";
  g_autoptr(SteadStmt) stmt = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  stmt = stead_store_prepare (store, sql, error);
  if (stmt == NULL)
    return NULL;
  sqlite3_bind_int64 (stmt, 1, water_id);
  sqlite3_bind_int (stmt, 2, from);
  sqlite3_bind_int (stmt, 3, to);
  return stead_repo_rows (store, stmt, fish_from_row, (GDestroyNotify) stead_water_fish_free, error);
}
