/* stead-shown-read.c - what instruments showed: days and times, and reading it. */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "store/stead-check-private.h"

#define DAY_S 86400

/* Clocks of a kitchen differ by so much. */
#define CLOCK_S 300

void
stead_shown_free (SteadShown *shown)
{
  if (shown == NULL)
    return;
  g_free (shown->kind);
  g_free (shown->note);
  g_free (shown);
}

/* --- days and times ----------------------------------------------------------------- */

SteadDay
stead_time_day (gint64 at)
{
  g_autoptr(GDateTime) time = g_date_time_new_from_unix_local (at);

  return time == NULL ? STEAD_DAY_NONE
                      : stead_day_new (g_date_time_get_year (time), g_date_time_get_month (time),
                                       g_date_time_get_day_of_month (time));
}

gint64
stead_time_midnight (SteadDay day)
{
  g_autoptr(GDateTime) time = NULL;
  int year, month, mday;

  g_return_val_if_fail (stead_day_is_valid (day), STEAD_TIME_NONE);
  stead_day_split (day, &year, &month, &mday);
  time = g_date_time_new_local (year, month, mday, 0, 0, 0);
  return time != NULL ? g_date_time_to_unix (time) : (gint64) day * DAY_S;
}

gint64
stead_time_now (SteadStore *store)
{
  SteadDay day = stead_store_get_set_day (store);

  return day == STEAD_DAY_NONE ? g_get_real_time () / G_USEC_PER_SEC : stead_time_midnight (day) + DAY_S / 2;
}

/* On a day that was set, be it the present one, the clock on the wall says nothing. */
gboolean
stead_shown_check_time (SteadStore  *store,
                        gint64       at,
                        GError     **error)
{
  SteadDay day = stead_store_get_set_day (store);
  gint64 latest = day == STEAD_DAY_NONE ? stead_time_now (store) + CLOCK_S : stead_time_midnight (day + 1);

  if (at > latest)
    return stead_repo_refuse (error, _("That time is still to come. Check the clock."));
  return TRUE;
}

/* --- reading --------------------------------------------------------------------------- */

gpointer
stead_shown_from_row (SteadStmt *stmt)
{
  SteadShown *shown = g_new0 (SteadShown, 1);
  const char *scale = (const char *) sqlite3_column_text (stmt, 14);

  shown->id = sqlite3_column_int64 (stmt, 0);
  shown->at = sqlite3_column_int64 (stmt, 1);
  shown->kind = stead_stmt_text (stmt, 2);
  shown->value = sqlite3_column_double (stmt, 3);
  shown->batch_id = sqlite3_column_int64 (stmt, 4);
  shown->step_id = sqlite3_column_int64 (stmt, 5);
  shown->person_id = sqlite3_column_int64 (stmt, 6);
  shown->note = stead_stmt_text (stmt, 7);
  shown->corrects_id = sqlite3_column_int64 (stmt, 8);
  shown->line_id = sqlite3_column_int64 (stmt, 9);
  shown->pot_id = sqlite3_column_int64 (stmt, 10);
  shown->instrument_id = sqlite3_column_int64 (stmt, 11);
  shown->place_id = sqlite3_column_int64 (stmt, 12);
  shown->held_s = sqlite3_column_double (stmt, 13);
  shown->scale = scale != NULL ? scale[0] : 0;
  shown->corrected = sqlite3_column_int (stmt, 15) != 0;
  shown->n_actions = sqlite3_column_int64 (stmt, 16);
  shown->noted_at = sqlite3_column_int64 (stmt, 17);
  return shown;
}

static GPtrArray *
rows_of (SteadStore  *store,
         SteadStmt   *stmt,
         GError     **error)
{
  return stead_repo_rows (store, stmt, stead_shown_from_row, (GDestroyNotify) stead_shown_free, error);
}

static GPtrArray *
rows_between (SteadStore  *store,
              const char  *sql,
              gint64       id,
              gint64       from,
              gint64       to,
              GError     **error)
{
  g_autoptr(SteadStmt) stmt = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  stmt = stead_store_prepare (store, sql, error);
  if (stmt == NULL)
    return NULL;
  sqlite3_bind_int64 (stmt, 1, id);
  sqlite3_bind_int64 (stmt, 2, from);
  sqlite3_bind_int64 (stmt, 3, to);
  return rows_of (store, stmt, error);
}

GPtrArray *
stead_shown_repo_tried (SteadStore  *store,
                        gint64       instrument_id,
                        gint64       from,
                        gint64       to,
                        GError     **error)
{
  static const char sql[] = "SELECT " SHOWN_COLUMNS " FROM reading r WHERE r.instrument_id = ?1"
                            " AND r.kind IN ('ice_bath', 'boiling_water') AND r.at BETWEEN ?2 AND ?3 ORDER BY r.at, r.id";

  return rows_between (store, sql, instrument_id, from, to, error);
}

GPtrArray *
stead_shown_repo_of_place (SteadStore  *store,
                           gint64       place_id,
                           gint64       from,
                           gint64       to,
                           GError     **error)
{
  static const char sql[] = "SELECT " SHOWN_COLUMNS " FROM reading r WHERE r.place_id = ?1"
                            " AND r.at BETWEEN ?2 AND ?3 ORDER BY r.at, r.id";

  return rows_between (store, sql, place_id, from, to, error);
}

GPtrArray *
stead_shown_repo_of_batch (SteadStore  *store,
                           gint64       batch_id,
                           GError     **error)
{
  static const char sql[] = "SELECT " SHOWN_COLUMNS " FROM reading r WHERE r.batch_id = ?1 ORDER BY r.at, r.id";
  g_autoptr(SteadStmt) stmt = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  stmt = stead_store_prepare (store, sql, error);
  if (stmt == NULL)
    return NULL;
  sqlite3_bind_int64 (stmt, 1, batch_id);
  return rows_of (store, stmt, error);
}

GPtrArray *
stead_shown_repo_of_days (SteadStore  *store,
                          SteadDay     from,
                          SteadDay     to,
                          GError     **error)
{
  static const char sql[] =
    "SELECT " SHOWN_COLUMNS " FROM checklist l CROSS JOIN check_line k ON k.list_id = l.id CROSS JOIN reading r ON r.line_id = k.id"
    " WHERE l.day BETWEEN ?1 AND ?2 ORDER BY r.line_id, r.at, r.id";
  g_autoptr(SteadStmt) stmt = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  stmt = stead_store_prepare (store, sql, error);
  if (stmt == NULL)
    return NULL;
  stead_stmt_bind_day (stmt, 1, from);
  stead_stmt_bind_day (stmt, 2, to);
  return rows_of (store, stmt, error);
}

SteadShown *
stead_shown_by_id (SteadStore  *store,
                   gint64       id,
                   GError     **error)
{
  static const char sql[] = "SELECT " SHOWN_COLUMNS " FROM reading r WHERE r.id = ?1";
  g_autoptr(SteadStmt) stmt = stead_store_prepare (store, sql, error);

  if (stmt == NULL)
    return NULL;
  sqlite3_bind_int64 (stmt, 1, id);
  return stead_repo_row (store, stmt, stead_shown_from_row, error);
}
