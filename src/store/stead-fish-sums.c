/* stead-fish-sums.c - sums over the log of one group, where it was, and how warm its water. */
#include "config.h"

#include <math.h>

#include "store/stead-fish-private.h"

/* --- totals ----------------------------------------------------------------------- */

static gboolean
add_log (SteadStore       *store,
         gint64            fish_id,
         SteadDay          from,
         SteadDay          to,
         SteadFishTotals  *totals,
         GError          **error)
{
  static const char sql[] =
    "SELECT coalesce (sum (feed_kg), 0), count (DISTINCT iif (feed_kg > 0, day, NULL)), coalesce (sum (deaths), 0),"
    " coalesce (sum (culled), 0) FROM batch_entry WHERE batch_id = ?1 AND day BETWEEN ?2 AND ?3";
  g_autoptr(SteadStmt) stmt = stead_store_prepare (store, sql, error);

  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, fish_id);
  sqlite3_bind_int (stmt, 2, from);
  sqlite3_bind_int (stmt, 3, to);
  if (stead_store_step (store, stmt, error) < 0)
    return FALSE;
  totals->feed_kg = sqlite3_column_double (stmt, 0);
  totals->days_fed = sqlite3_column_int64 (stmt, 1);
  totals->deaths = sqlite3_column_int64 (stmt, 2);
  totals->culled = sqlite3_column_int64 (stmt, 3);
  return TRUE;
}

/* Without a live weight a harvest weighs what went into the lot, and what was lost at once. */
static gboolean
add_harvests (SteadStore       *store,
              gint64            fish_id,
              SteadDay          from,
              SteadDay          to,
              SteadFishTotals  *totals,
              GError          **error)
{
  static const char sql[] =
    "SELECT coalesce (sum (h.pieces), 0), coalesce (sum (coalesce (h.live_kg, h.lost_base + coalesce"
    " ((SELECT sum (m.quantity_base) FROM movement m WHERE m.lot_id = h.lot_id AND m.kind = 'made'), 0))), 0)"
    " FROM harvest h WHERE h.batch_id = ?1 AND h.day BETWEEN ?2 AND ?3";
  g_autoptr(SteadStmt) stmt = stead_store_prepare (store, sql, error);

  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, fish_id);
  sqlite3_bind_int (stmt, 2, from);
  sqlite3_bind_int (stmt, 3, to);
  if (stead_store_step (store, stmt, error) < 0)
    return FALSE;
  totals->harvested = sqlite3_column_int64 (stmt, 0);
  totals->harvested_kg = sqlite3_column_double (stmt, 1);
  return TRUE;
}

static gboolean
add_moves (SteadStore       *store,
           gint64            fish_id,
           SteadDay          from,
           SteadDay          to,
           SteadFishTotals  *totals,
           GError          **error)
{
  static const char sql[] =
    "SELECT to_id = ?1, n, n * mean_g / 1000, cost_cents FROM fish_move"
    " WHERE (from_id = ?1 OR to_id = ?1) AND day BETWEEN ?2 AND ?3";
  g_autoptr(SteadStmt) stmt = stead_store_prepare (store, sql, error);
  int found;

  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, fish_id);
  sqlite3_bind_int (stmt, 2, from);
  sqlite3_bind_int (stmt, 3, to);
  while ((found = stead_store_step (store, stmt, error)) == 1)
    {
      gboolean in = sqlite3_column_int (stmt, 0) != 0;

      *(in ? &totals->moved_in : &totals->moved_out) += sqlite3_column_int64 (stmt, 1);
      *(in ? &totals->moved_in_kg : &totals->moved_out_kg) += sqlite3_column_double (stmt, 2);
      *(in ? &totals->moved_in_cents : &totals->moved_out_cents) += sqlite3_column_int64 (stmt, 3);
    }
  return found == 0;
}

/**
 * stead_fish_repo_totals:
 *
 * Returns: %TRUE, or %FALSE with @error and @out left alone
 */
gboolean
stead_fish_repo_totals (SteadStore       *store,
                        gint64            fish_id,
                        SteadDay          from,
                        SteadDay          to,
                        SteadFishTotals  *out,
                        GError          **error)
{
  SteadFishTotals totals = { 0 };

  g_return_val_if_fail (STEAD_IS_STORE (store) && out != NULL, FALSE);
  if (!add_log (store, fish_id, from, to, &totals, error) ||
      !add_harvests (store, fish_id, from, to, &totals, error) ||
      !add_moves (store, fish_id, from, to, &totals, error))
    return FALSE;
  *out = totals;
  return TRUE;
}

/* --- where they were --------------------------------------------------------------- */

GArray *
stead_fish_repo_stays (SteadStore  *store,
                       gint64       fish_id,
                       GError     **error)
{
  static const char sql[] = "SELECT until_day, place_id FROM batch_stay WHERE batch_id = ?1 AND until_day > ?2"
                            " ORDER BY until_day";
  g_autoptr(GArray) stays = g_array_new (FALSE, FALSE, sizeof (SteadFishStay));
  g_autoptr(SteadFish) group = NULL;
  g_autoptr(SteadStmt) stmt = NULL;
  SteadFishStay stay;
  int found;

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  group = stead_fish_repo_get (store, fish_id, error);
  stmt = group != NULL ? stead_store_prepare (store, sql, error) : NULL;
  if (stmt == NULL)
    return NULL;
  stay.from = group->batch.started_on;
  sqlite3_bind_int64 (stmt, 1, fish_id);
  sqlite3_bind_int (stmt, 2, stay.from);
  while ((found = stead_store_step (store, stmt, error)) == 1)
    {
      stay.place_id = sqlite3_column_int64 (stmt, 1);
      g_array_append_val (stays, stay);
      stay.from = stead_stmt_day (stmt, 0);
    }
  stay.place_id = group->batch.place_id;
  g_array_append_val (stays, stay);
  return found == 0 ? g_steal_pointer (&stays) : NULL;
}

/* --- how warm the water was ---------------------------------------------------------- */

/* Readings of some days, to be averaged. */
typedef struct
{
  SteadDay  from;
  SteadDay  to;
  double   *sums;
  int      *readings;
} Warmth;

static gboolean
add_readings (SteadStore  *store,
              SteadStmt   *stmt,
              Warmth      *warmth,
              GError     **error)
{
  int found;

  while ((found = stead_store_step (store, stmt, error)) == 1)
    {
      int at = stead_stmt_day (stmt, 0) - warmth->from;

      warmth->sums[at] += sqlite3_column_double (stmt, 1);
      warmth->readings[at]++;
    }
  return found == 0;
}

static gboolean
add_of_log (SteadStore  *store,
            gint64       fish_id,
            Warmth      *warmth,
            GError     **error)
{
  static const char sql[] = "SELECT day, water_c FROM batch_entry"
                            " WHERE batch_id = ?1 AND day BETWEEN ?2 AND ?3 AND water_c IS NOT NULL";
  g_autoptr(SteadStmt) stmt = stead_store_prepare (store, sql, error);

  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, fish_id);
  sqlite3_bind_int (stmt, 2, warmth->from);
  sqlite3_bind_int (stmt, 3, warmth->to);
  return add_readings (store, stmt, warmth, error);
}

/* The tests of the water that the place stands in, and the thermometer of the place itself. */
static gboolean
add_of_place (SteadStore  *store,
              gint64       place_id,
              SteadDay     from,
              SteadDay     to,
              Warmth      *warmth,
              GError     **error)
{
  static const char sql[] =
    "SELECT t.day, t.temperature_c FROM place p JOIN water_test t ON t.water_id = p.water_id"
    " WHERE p.id = ?1 AND t.day BETWEEN ?2 AND ?3 AND t.temperature_c IS NOT NULL"
    " UNION ALL SELECT day, (min_c + max_c) / 2 FROM climate"
    " WHERE coalesce (place_id, 0) = ?1 AND day BETWEEN ?2 AND ?3 AND min_c + max_c IS NOT NULL";
  g_autoptr(SteadStmt) stmt = NULL;

  if (place_id == 0 || from > to)
    return TRUE;
  stmt = stead_store_prepare (store, sql, error);
  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, place_id);
  sqlite3_bind_int (stmt, 2, from);
  sqlite3_bind_int (stmt, 3, to);
  return add_readings (store, stmt, warmth, error);
}

static gboolean
add_of_stays (SteadStore    *store,
              const GArray  *stays,
              Warmth        *warmth,
              GError       **error)
{
  for (guint i = 0; i < stays->len; i++)
    {
      const SteadFishStay *stay = &g_array_index (stays, SteadFishStay, i);
      SteadDay last = i + 1 < stays->len ? (stay + 1)->from - 1 : warmth->to;

      if (!add_of_place (store, stay->place_id, MAX (stay->from, warmth->from), MIN (last, warmth->to), warmth, error))
        return FALSE;
    }
  return TRUE;
}

gboolean
stead_fish_repo_temperatures (SteadStore  *store,
                              gint64       fish_id,
                              SteadDay     from,
                              SteadDay     to,
                              double      *out,
                              GError     **error)
{
  g_autoptr(GArray) stays = NULL;
  g_autofree double *sums = NULL;
  g_autofree int *readings = NULL;
  gsize days;

  g_return_val_if_fail (STEAD_IS_STORE (store) && out != NULL && from <= to, FALSE);
  stays = stead_fish_repo_stays (store, fish_id, error);
  if (stays == NULL)
    return FALSE;
  days = (gsize) (to - from) + 1;
  sums = g_new0 (double, days);
  readings = g_new0 (int, days);
  if (!add_of_log (store, fish_id, &(Warmth) { from, to, sums, readings }, error) ||
      !add_of_stays (store, stays, &(Warmth) { from, to, sums, readings }, error))
    return FALSE;
  for (gsize i = 0; i < days; i++)
    out[i] = readings[i] > 0 ? sums[i] / readings[i] : NAN;
  return TRUE;
}
