/* stead-instrument-repo.c - what measures: thermometers, meters, strips. */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#include "store/stead-check-private.h"

static const char * const kind_words[] = { "probe", "infrared", "air", "ph_meter", "strip", "logger", NULL };

/* What each kind shows at most, °C; common practice, no source: wider than any on sale. */
static const struct { double least_c, most_c; } ranges[] = {
  [STEAD_INSTRUMENT_PROBE] = { -50, 300 },
  [STEAD_INSTRUMENT_INFRARED] = { -60, 300 },
  [STEAD_INSTRUMENT_AIR] = { -50, 120 },
  [STEAD_INSTRUMENT_PH_METER] = { -5, 110 },
  [STEAD_INSTRUMENT_STRIP] = { 0, 110 },
  [STEAD_INSTRUMENT_LOGGER] = { -60, 150 },
};

void
stead_instrument_free (SteadInstrument *instrument)
{
  if (instrument == NULL)
    return;
  g_free (instrument->name);
  g_free (instrument->scale);
  g_free (instrument);
}

void
stead_instrument_range (SteadInstrumentKind  instrument,
                        const char          *kind,
                        double              *out_least,
                        double              *out_most)
{
  g_return_if_fail (kind != NULL && out_least != NULL && out_most != NULL);
  g_return_if_fail ((gsize) instrument < G_N_ELEMENTS (ranges));
  *out_least = g_str_equal (kind, "ph") ? 0 : ranges[instrument].least_c;
  *out_most = g_str_equal (kind, "ph") ? 14 : ranges[instrument].most_c;
}

/* --- reading -------------------------------------------------------------------------- */

#define COLUMNS "id, name, kind, scale, shows_step, error, place_id, retired_on"

static gpointer
instrument_from_row (SteadStmt *stmt)
{
  SteadInstrument *instrument = g_new0 (SteadInstrument, 1);

  instrument->id = sqlite3_column_int64 (stmt, 0);
  instrument->name = stead_stmt_text (stmt, 1);
  instrument->kind = (SteadInstrumentKind) stead_repo_word (stmt, 2, kind_words);
  instrument->scale = stead_stmt_text (stmt, 3);
  instrument->step = stead_stmt_real (stmt, 4);
  instrument->error = stead_stmt_real (stmt, 5);
  instrument->place_id = sqlite3_column_int64 (stmt, 6);
  instrument->retired_on = stead_stmt_day (stmt, 7);
  return instrument;
}

GPtrArray *
stead_instrument_repo_list (SteadStore  *store,
                            gboolean     all,
                            GError     **error)
{
  static const char sql[] = "SELECT " COLUMNS " FROM instrument WHERE ?1 OR retired_on IS NULL ORDER BY name, id";

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  return stead_repo_rows_of (store, sql, all != FALSE, instrument_from_row,
                             (GDestroyNotify) stead_instrument_free, error);
}

SteadInstrument *
stead_instrument_repo_get (SteadStore  *store,
                           gint64       id,
                           GError     **error)
{
  static const char sql[] = "SELECT " COLUMNS " FROM instrument WHERE id = ?1";

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  return stead_repo_row_of (store, sql, id, instrument_from_row, error);
}

/* --- saving ------------------------------------------------------------------------------ */

static gboolean
instrument_check (SteadStore             *store,
                  const SteadInstrument  *instrument,
                  GError                **error)
{
  static const char taken_sql[] = "SELECT 1 FROM instrument WHERE name = ?1 AND id <> ?2";

  if (!stead_repo_check_name (instrument->name, error) ||
      !stead_repo_check_unique (store, taken_sql, instrument->name, instrument->id, error))
    return FALSE;
  if (!isnan (instrument->step) && !(instrument->step > 0 && instrument->step <= 100))
    return stead_repo_refuse (error, _("Enter the smallest step that it shows: a number above zero."));
  if (!isnan (instrument->error) && !(instrument->error >= 0 && instrument->error <= 100))
    return stead_repo_refuse (error, _("Enter how far off it may be, plus or minus: zero or more."));
  return TRUE;
}

gboolean
stead_instrument_repo_save (SteadStore       *store,
                            SteadInstrument  *instrument,
                            GError          **error)
{
  static const char insert_sql[] = "INSERT INTO instrument (name, kind, scale, shows_step, error, place_id, retired_on)"
                                   " VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7)";
  static const char update_sql[] = "UPDATE instrument SET name = ?1, kind = ?2, scale = ?3, shows_step = ?4, error = ?5,"
                                   " place_id = ?6, retired_on = ?7 WHERE id = ?8";
  g_autoptr(SteadStmt) stmt = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store) && instrument != NULL, FALSE);
  g_return_val_if_fail (stead_store_in_action (store), FALSE);
  if (!instrument_check (store, instrument, error))
    return FALSE;
  stmt = stead_store_prepare (store, instrument->id == 0 ? insert_sql : update_sql, error);
  if (stmt == NULL)
    return FALSE;
  stead_repo_bind_tidy (stmt, 1, instrument->name);
  stead_stmt_bind_text (stmt, 2, kind_words[instrument->kind]);
  stead_stmt_bind_text (stmt, 3, instrument->scale);
  stead_stmt_bind_real (stmt, 4, instrument->step);
  stead_stmt_bind_real (stmt, 5, instrument->error);
  stead_stmt_bind_id (stmt, 6, instrument->place_id);
  stead_stmt_bind_day (stmt, 7, instrument->retired_on);
  if (instrument->id != 0)
    sqlite3_bind_int64 (stmt, 8, instrument->id);
  if (!stead_store_run (store, stmt, error))
    return FALSE;
  if (instrument->id == 0)
    instrument->id = stead_store_last_id (store);
  return TRUE;
}

gboolean
stead_instrument_repo_delete (SteadStore  *store,
                              gint64       id,
                              GError     **error)
{
  static const char used_sql[] =
    "SELECT EXISTS (SELECT 1 FROM reading WHERE instrument_id = ?1)"
    " OR EXISTS (SELECT 1 FROM check_line WHERE instrument_id = ?1)";
  static const char sql[] = "DELETE FROM instrument WHERE id = ?1";
  g_autoptr(SteadInstrument) instrument = NULL;
  gint64 used;

  g_return_val_if_fail (STEAD_IS_STORE (store), FALSE);
  g_return_val_if_fail (stead_store_in_action (store), FALSE);
  instrument = stead_instrument_repo_get (store, id, error);
  used = instrument != NULL ? stead_repo_count_id (store, used_sql, id, error) : -1;
  if (used > 0)
    return stead_repo_refuse (error, _("“%s” was read, or a checklist names it, so it is kept. Take it out of use instead."),
                              instrument->name);
  return used == 0 && stead_repo_run_id (store, sql, id, error);
}
