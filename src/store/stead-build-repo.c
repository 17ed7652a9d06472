/* stead-build-repo.c - builds: a pen, a poultry run, a hoop house, or a list of things. */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#include "core/stead-us-units.h"
#include "store/stead-build-private.h"
#include "store/stead-repo-private.h"

#define FT STEAD_FOOT_M
#define IN STEAD_INCH_M

static const char * const kind_words[] = { "pen", "run", "hoop", "list", NULL };
static const char * const fence_words[] = { "woven", "boards", "electric", "none", NULL };

/* --- the struct ------------------------------------------------------------------- */

/* Where a figure has a source it stands in data/rules/build.csv; the others are common
 * practice: 8 ft between posts, 12 in holes, a tenth of waste. */
static void
set_usual (SteadBuild *build)
{
  gboolean run = build->kind == STEAD_BUILD_RUN;

  build->fence = build->kind == STEAD_BUILD_PEN ? STEAD_BUILD_FENCE_WOVEN : STEAD_BUILD_FENCE_NONE;
  build->height_m = run ? 6 * FT : build->kind == STEAD_BUILD_HOOP ? 0 : 48 * IN;
  build->spacing_m = (build->kind == STEAD_BUILD_HOOP ? 4 : 8) * FT;
  build->rows = 9;
  build->roll_m = (run ? 50 : 330) * FT;
  build->roll_width_m = 4 * FT;
  build->apron_m = run ? 24 * IN : 0;
  build->hole_m = 12 * IN;
  build->post_m = 6 * IN;
  build->depth_m = 42 * IN;
  build->bag_lb = 80;
  build->wire_waste = run ? 0.10 : 0.05;
  build->wood_waste = 0.10;
  build->mix_waste = 0.10;
  build->contingency_frac = 0.10;
  build->sale_frac = 1;
  build->season_frac = 0.3;
  build->notice_days = 2;
}

/**
 * stead_build_new:
 *
 * Returns: (transfer full): nothing drawn yet
 */
SteadBuild *
stead_build_new (SteadBuildKind kind)
{
  SteadBuild *build = g_new0 (SteadBuild, 1);

  build->kind = kind;
  build->begun_on = build->goal_on = build->finished_on = STEAD_DAY_NONE;
  build->dig_on = build->called_on = build->permit_on = STEAD_DAY_NONE;
  build->housed_each_m2 = build->yard_each_m2 = build->frost_m = NAN;
  build->corners = g_array_new (FALSE, TRUE, sizeof (SteadBuildCorner));
  build->gates = g_array_new (FALSE, TRUE, sizeof (SteadFenceGate));
  build->stocks = g_array_new (FALSE, TRUE, sizeof (SteadBuildStock));
  set_usual (build);
  return build;
}

SteadBuild *
stead_build_copy (const SteadBuild *build)
{
  SteadBuild *copy;

  g_return_val_if_fail (build != NULL, NULL);
  copy = g_memdup2 (build, sizeof *build);
  copy->name = g_strdup (build->name);
  copy->animal = g_strdup (build->animal);
  copy->housing = g_strdup (build->housing);
  copy->note = g_strdup (build->note);
  copy->corners = g_array_copy (build->corners);
  copy->gates = g_array_copy (build->gates);
  copy->stocks = g_array_copy (build->stocks);
  return copy;
}

void
stead_build_free (SteadBuild *build)
{
  if (build == NULL)
    return;
  g_free (build->name);
  g_free (build->animal);
  g_free (build->housing);
  g_free (build->note);
  g_array_unref (build->corners);
  g_array_unref (build->gates);
  g_array_unref (build->stocks);
  g_free (build);
}

void
stead_build_set_rectangle (SteadBuild *build,
                           double      length_m,
                           double      width_m)
{
  const double x[] = { 0, 1, 1, 0 }, y[] = { 0, 0, 1, 1 };

  g_return_if_fail (build != NULL);
  g_array_set_size (build->corners, 0);
  g_array_set_size (build->gates, 0);
  for (int i = 0; i < 4; i++)
    {
      SteadBuildCorner corner = { x[i] * length_m, y[i] * width_m, 0, 0 };

      g_array_append_val (build->corners, corner);
    }
}

/* --- reading ---------------------------------------------------------------------- */

#define BUILD_COLUMNS \
  "id, name, kind, begun_on, goal_on, finished_on, animal, head, housing, housed_each_m2, yard_each_m2," \
  " fence, height_m, spacing_m, rows, roll_m, roll_width_m, apron_m, hole_m, post_m, depth_m, frost_m, bag_lb," \
  " wire_waste, wood_waste, mix_waste, bed_m, tax_frac, contingency_frac, sale_frac, season_frac, fund_id," \
  " dig_on, notice_days, called_on, permit_on, asset_id, note"

static void
read_measures (SteadStmt  *stmt,
               SteadBuild *build)
{
  build->fence = (SteadBuildFence) stead_repo_word (stmt, 11, fence_words);
  build->height_m = sqlite3_column_double (stmt, 12);
  build->spacing_m = sqlite3_column_double (stmt, 13);
  build->rows = sqlite3_column_int (stmt, 14);
  build->roll_m = sqlite3_column_double (stmt, 15);
  build->roll_width_m = sqlite3_column_double (stmt, 16);
  build->apron_m = sqlite3_column_double (stmt, 17);
  build->hole_m = sqlite3_column_double (stmt, 18);
  build->post_m = sqlite3_column_double (stmt, 19);
  build->depth_m = sqlite3_column_double (stmt, 20);
  build->frost_m = stead_stmt_real (stmt, 21);
  build->bag_lb = sqlite3_column_int (stmt, 22);
  build->wire_waste = sqlite3_column_double (stmt, 23);
  build->wood_waste = sqlite3_column_double (stmt, 24);
  build->mix_waste = sqlite3_column_double (stmt, 25);
  build->bed_m = sqlite3_column_double (stmt, 26);
}

static void
read_money (SteadStmt  *stmt,
            SteadBuild *build)
{
  build->tax_frac = sqlite3_column_double (stmt, 27);
  build->contingency_frac = sqlite3_column_double (stmt, 28);
  build->sale_frac = sqlite3_column_double (stmt, 29);
  build->season_frac = sqlite3_column_double (stmt, 30);
  build->fund_id = sqlite3_column_int64 (stmt, 31);
  build->dig_on = stead_stmt_day (stmt, 32);
  build->notice_days = sqlite3_column_int (stmt, 33);
  build->called_on = stead_stmt_day (stmt, 34);
  build->permit_on = stead_stmt_day (stmt, 35);
  build->asset_id = sqlite3_column_int64 (stmt, 36);
  build->note = stead_stmt_text (stmt, 37);
}

static gpointer
build_from_row (SteadStmt *stmt)
{
  SteadBuild *build = stead_build_new ((SteadBuildKind) stead_repo_word (stmt, 2, kind_words));

  build->id = sqlite3_column_int64 (stmt, 0);
  build->name = stead_stmt_text (stmt, 1);
  build->begun_on = stead_stmt_day (stmt, 3);
  build->goal_on = stead_stmt_day (stmt, 4);
  build->finished_on = stead_stmt_day (stmt, 5);
  build->animal = stead_stmt_text (stmt, 6);
  build->head = sqlite3_column_int (stmt, 7);
  build->housing = stead_stmt_text (stmt, 8);
  build->housed_each_m2 = stead_stmt_real (stmt, 9);
  build->yard_each_m2 = stead_stmt_real (stmt, 10);
  read_measures (stmt, build);
  read_money (stmt, build);
  return build;
}

GPtrArray *
stead_build_repo_list (SteadStore  *store,
                       GError     **error)
{
  static const char sql[] = "SELECT " BUILD_COLUMNS " FROM build ORDER BY finished_on IS NOT NULL, name, id";
  g_autoptr(SteadStmt) stmt = NULL;
  g_autoptr(GPtrArray) builds = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  stmt = stead_store_prepare (store, sql, error);
  if (stmt == NULL)
    return NULL;
  builds = stead_repo_rows (store, stmt, build_from_row, (GDestroyNotify) stead_build_free, error);
  if (builds == NULL)
    return NULL;
  for (guint i = 0; i < builds->len; i++)
    if (!stead_build_read_plan (store, builds->pdata[i], error))
      return NULL;
  return g_steal_pointer (&builds);
}

SteadBuild *
stead_build_repo_get (SteadStore  *store,
                      gint64       id,
                      GError     **error)
{
  static const char sql[] = "SELECT " BUILD_COLUMNS " FROM build WHERE id = ?1";
  g_autoptr(SteadStmt) stmt = NULL;
  g_autoptr(SteadBuild) build = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  stmt = stead_store_prepare (store, sql, error);
  if (stmt == NULL)
    return NULL;
  sqlite3_bind_int64 (stmt, 1, id);
  build = stead_repo_row (store, stmt, build_from_row, error);
  if (build == NULL || !stead_build_read_plan (store, build, error))
    return NULL;
  return g_steal_pointer (&build);
}

/* --- writing ---------------------------------------------------------------------- */

#define INSERT_SQL \
  "INSERT INTO build (name, kind, begun_on, goal_on, finished_on, animal, head, housing, housed_each_m2," \
  " yard_each_m2, fence, height_m, spacing_m, rows, roll_m, roll_width_m, apron_m, hole_m, post_m, depth_m," \
  " frost_m, bag_lb, wire_waste, wood_waste, mix_waste, bed_m, tax_frac, contingency_frac, sale_frac, season_frac," \
  " fund_id, dig_on, notice_days, called_on, permit_on, asset_id, note)" \
  " VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9, ?10, ?11, ?12, ?13, ?14, ?15, ?16, ?17, ?18, ?19, ?20, ?21, ?22," \
  " ?23, ?24, ?25, ?26, ?27, ?28, ?29, ?30, ?31, ?32, ?33, ?34, ?35, ?36, ?37)"

#define UPDATE_SQL \
  "UPDATE build SET name = ?1, kind = ?2, begun_on = ?3, goal_on = ?4, finished_on = ?5, animal = ?6, head = ?7," \
  " housing = ?8, housed_each_m2 = ?9, yard_each_m2 = ?10, fence = ?11, height_m = ?12, spacing_m = ?13, rows = ?14," \
  " roll_m = ?15, roll_width_m = ?16, apron_m = ?17, hole_m = ?18, post_m = ?19, depth_m = ?20, frost_m = ?21," \
  " bag_lb = ?22, wire_waste = ?23, wood_waste = ?24, mix_waste = ?25, bed_m = ?26, tax_frac = ?27," \
  " contingency_frac = ?28, sale_frac = ?29, season_frac = ?30, fund_id = ?31, dig_on = ?32, notice_days = ?33," \
  " called_on = ?34, permit_on = ?35, asset_id = ?36, note = ?37 WHERE id = ?38"

static void
bind_measures (SteadStmt        *stmt,
               const SteadBuild *build)
{
  stead_stmt_bind_text (stmt, 11, fence_words[build->fence]);
  sqlite3_bind_double (stmt, 12, build->height_m);
  sqlite3_bind_double (stmt, 13, build->spacing_m);
  sqlite3_bind_int (stmt, 14, build->rows);
  sqlite3_bind_double (stmt, 15, build->roll_m);
  sqlite3_bind_double (stmt, 16, build->roll_width_m);
  sqlite3_bind_double (stmt, 17, build->apron_m);
  sqlite3_bind_double (stmt, 18, build->hole_m);
  sqlite3_bind_double (stmt, 19, build->post_m);
  sqlite3_bind_double (stmt, 20, build->depth_m);
  stead_stmt_bind_real (stmt, 21, build->frost_m);
  sqlite3_bind_int (stmt, 22, build->bag_lb);
  sqlite3_bind_double (stmt, 23, build->wire_waste);
  sqlite3_bind_double (stmt, 24, build->wood_waste);
  sqlite3_bind_double (stmt, 25, build->mix_waste);
  sqlite3_bind_double (stmt, 26, build->bed_m);
}

static void
bind_money (SteadStmt        *stmt,
            const SteadBuild *build)
{
  sqlite3_bind_double (stmt, 27, build->tax_frac);
  sqlite3_bind_double (stmt, 28, build->contingency_frac);
  sqlite3_bind_double (stmt, 29, build->sale_frac);
  sqlite3_bind_double (stmt, 30, build->season_frac);
  stead_stmt_bind_id (stmt, 31, build->fund_id);
  stead_stmt_bind_day (stmt, 32, build->dig_on);
  sqlite3_bind_int (stmt, 33, build->notice_days);
  stead_stmt_bind_day (stmt, 34, build->called_on);
  stead_stmt_bind_day (stmt, 35, build->permit_on);
  stead_stmt_bind_id (stmt, 36, build->asset_id);
  stead_repo_bind_tidy (stmt, 37, build->note);
}

static gboolean
write_build (SteadStore  *store,
             SteadBuild  *build,
             GError     **error)
{
  static const char insert_sql[] = INSERT_SQL, update_sql[] = UPDATE_SQL;
  g_autoptr(SteadStmt) stmt = stead_store_prepare (store, build->id == 0 ? insert_sql : update_sql, error);

  if (stmt == NULL)
    return FALSE;
  stead_repo_bind_tidy (stmt, 1, build->name);
  stead_stmt_bind_text (stmt, 2, kind_words[build->kind]);
  stead_stmt_bind_day (stmt, 3, build->begun_on);
  stead_stmt_bind_day (stmt, 4, build->goal_on);
  stead_stmt_bind_day (stmt, 5, build->finished_on);
  stead_stmt_bind_text (stmt, 6, build->head > 0 ? build->animal : NULL);
  sqlite3_bind_int (stmt, 7, build->animal != NULL ? build->head : 0);
  stead_stmt_bind_text (stmt, 8, build->housing);
  stead_stmt_bind_real (stmt, 9, build->housed_each_m2);
  stead_stmt_bind_real (stmt, 10, build->yard_each_m2);
  bind_measures (stmt, build);
  bind_money (stmt, build);
  return stead_repo_save_row (store, stmt, &build->id, error);
}

/* A goal that has gone by stays as it is; a new one lies ahead. */
static gboolean
check_goal (SteadStore        *store,
            const SteadBuild  *build,
            GError           **error)
{
  SteadDay today = stead_store_get_today (store);
  g_autoptr(SteadBuild) old = NULL;

  if (build->goal_on == STEAD_DAY_NONE || build->goal_on >= today || build->finished_on != STEAD_DAY_NONE)
    return TRUE;
  if (build->id != 0)
    old = stead_build_repo_get (store, build->id, NULL);
  if (old != NULL && old->goal_on == build->goal_on)
    return TRUE;
  return stead_repo_refuse (error, _("The day by which it is wanted has gone by. Choose one that is still to come."));
}

static gboolean
check_days (SteadStore        *store,
            const SteadBuild  *build,
            GError           **error)
{
  SteadDay today = stead_store_get_today (store);

  if (build->begun_on == STEAD_DAY_NONE || build->begun_on > today)
    return stead_repo_refuse (error, _("A plan begins today or before. Check the date."));
  if (build->finished_on != STEAD_DAY_NONE && (build->finished_on < build->begun_on || build->finished_on > today))
    return stead_repo_refuse (error, _("It was finished after it was begun, and not later than today. Check the date."));
  return check_goal (store, build, error);
}

gboolean
stead_build_repo_save (SteadStore  *store,
                       SteadBuild  *build,
                       GError     **error)
{
  static const char unique_sql[] = "SELECT 1 FROM build WHERE name = ?1 AND id <> ?2";
  SteadGivenIds *ids;

  g_return_val_if_fail (STEAD_IS_STORE (store) && build != NULL, FALSE);
  g_return_val_if_fail (stead_store_in_action (store), FALSE);
  if (build->begun_on == STEAD_DAY_NONE)
    build->begun_on = stead_store_get_today (store);
  if (!stead_repo_check_name (build->name, error) ||
      !stead_repo_check_unique (store, unique_sql, build->name, build->id, error) ||
      !stead_repo_check_note (build->note, error) || !stead_build_check (build, error) ||
      !check_days (store, build, error))
    return FALSE;
  ids = stead_given_ids_new (&build->id);
  return stead_given_ids_end (ids, write_build (store, build, error) && stead_build_write_plan (store, build, error));
}

gboolean
stead_build_repo_delete (SteadStore  *store,
                         gint64       id,
                         GError     **error)
{
  static const char sql[] = "DELETE FROM build WHERE id = ?1";

  g_return_val_if_fail (STEAD_IS_STORE (store), FALSE);
  g_return_val_if_fail (stead_store_in_action (store), FALSE);
  return stead_repo_change_row (store, sql, id, error);
}
