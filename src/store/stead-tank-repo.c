/* stead-tank-repo.c - tanks: a place, its shape and measures, and the water in it. */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "core/stead-tank.h"
#include "store/stead-farm-repo.h"
#include "store/stead-place-repo.h"
#include "store/stead-repo-private.h"
#include "store/stead-water-repo.h"

static const char * const shape_words[] = { "round", "box", "cone", "other", NULL };

/* No farm tank is longer or deeper; beyond it a unit was mixed up. */
#define LENGTH_MAX_M 1000.0

SteadTank *
stead_tank_new (void)
{
  SteadTank *tank = g_new0 (SteadTank, 1);

  tank->shape = STEAD_TANK_ROUND;
  tank->length_m = tank->width_m = tank->diameter_m = tank->depth_m = tank->cone_m = NAN;
  tank->volume_l = tank->flow_l_min = NAN;
  return tank;
}

void
stead_tank_free (SteadTank *tank)
{
  if (tank == NULL)
    return;
  g_free (tank->name);
  g_free (tank);
}

double
stead_tank_volume_l (const SteadTank *tank)
{
  g_return_val_if_fail (tank != NULL, NAN);
  switch (tank->shape)
    {
    case STEAD_TANK_ROUND:
      return stead_tank_round_l (tank->diameter_m, tank->depth_m);
    case STEAD_TANK_BOX:
      return stead_tank_box_l (tank->length_m, tank->width_m, tank->depth_m);
    case STEAD_TANK_CONE:
      return stead_tank_cone_l (tank->diameter_m, tank->depth_m, tank->cone_m, 0);
    case STEAD_TANK_OTHER:
      return tank->volume_l;
    default:
      g_return_val_if_reached (NAN);
    }
}

/* --- reading ---------------------------------------------------------------- */

#define TANK_SELECT \
  "SELECT k.place_id, p.name, k.shape, k.length_m, k.width_m, k.diameter_m, k.depth_m, k.cone_m, k.volume_l," \
  " k.flow_l_min, p.water_id FROM tank k JOIN place p ON p.id = k.place_id"

static gpointer
tank_from_row (SteadStmt *stmt)
{
  SteadTank *tank = stead_tank_new ();

  tank->place_id = sqlite3_column_int64 (stmt, 0);
  tank->name = stead_stmt_text (stmt, 1);
  tank->shape = (SteadTankShape) stead_repo_word (stmt, 2, shape_words);
  tank->length_m = stead_stmt_real (stmt, 3);
  tank->width_m = stead_stmt_real (stmt, 4);
  tank->diameter_m = stead_stmt_real (stmt, 5);
  tank->depth_m = stead_stmt_real (stmt, 6);
  tank->cone_m = stead_stmt_real (stmt, 7);
  tank->volume_l = stead_stmt_real (stmt, 8);
  tank->flow_l_min = stead_stmt_real (stmt, 9);
  tank->water_id = sqlite3_column_int64 (stmt, 10);
  tank->volume_l = stead_tank_volume_l (tank);
  return tank;
}

GPtrArray *
stead_tank_repo_list (SteadStore  *store,
                      GError     **error)
{
  static const char sql[] = TANK_SELECT " ORDER BY p.name, k.place_id";
  g_autoptr(SteadStmt) stmt = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  stmt = stead_store_prepare (store, sql, error);
  return stmt != NULL ? stead_repo_rows (store, stmt, tank_from_row, (GDestroyNotify) stead_tank_free, error) : NULL;
}

GPtrArray *
stead_tank_repo_list_of (SteadStore  *store,
                         gint64       water_id,
                         GError     **error)
{
  static const char sql[] = TANK_SELECT " WHERE p.water_id = ?1 ORDER BY p.name, k.place_id";

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  return stead_repo_rows_of (store, sql, water_id, tank_from_row, (GDestroyNotify) stead_tank_free, error);
}

SteadTank *
stead_tank_repo_get (SteadStore  *store,
                     gint64       place_id,
                     GError     **error)
{
  static const char sql[] = TANK_SELECT " WHERE k.place_id = ?1";

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  return stead_repo_row_of (store, sql, place_id, tank_from_row, error);
}

/* --- checking --------------------------------------------------------------- */

static gboolean
check_length (double       length_m,
              const char  *message,
              GError     **error)
{
  if (length_m > 0 && length_m <= LENGTH_MAX_M)
    return TRUE;
  return stead_repo_refuse (error, "%s", message);
}

static gboolean
check_measures (const SteadTank  *tank,
                GError          **error)
{
  const char *diameter = _("Enter the diameter of the tank: more than 0, at most 1,000 meters.");
  const char *depth = _("Enter the depth of the water: more than 0, at most 1,000 meters.");

  switch (tank->shape)
    {
    case STEAD_TANK_ROUND:
      return check_length (tank->diameter_m, diameter, error) && check_length (tank->depth_m, depth, error);
    case STEAD_TANK_BOX:
      return check_length (tank->length_m, _("Enter the length of the tank: more than 0, at most 1,000 meters."), error)
             && check_length (tank->width_m, _("Enter the width of the tank: more than 0, at most 1,000 meters."), error)
             && check_length (tank->depth_m, depth, error);
    case STEAD_TANK_CONE:
      if (!check_length (tank->diameter_m, diameter, error) || !check_length (tank->depth_m, depth, error))
        return FALSE;
      if (!(tank->cone_m >= 0 && tank->cone_m <= LENGTH_MAX_M))
        return stead_repo_refuse (error, _("Enter the depth of the cone: 0 or more, at most 1,000 meters."));
      return TRUE;
    case STEAD_TANK_OTHER:
      if (!(tank->volume_l > 0 && tank->volume_l <= STEAD_AMOUNT_MAX))
        return stead_repo_refuse (error, _("Enter how much water the tank holds: more than 0."));
      return TRUE;
    default:
      g_return_val_if_reached (FALSE);
    }
}

static gboolean
check_tank (const SteadTank  *tank,
            GError          **error)
{
  if (!check_measures (tank, error))
    return FALSE;
  if (!isnan (tank->flow_l_min) && !(tank->flow_l_min >= 0 && tank->flow_l_min <= STEAD_AMOUNT_MAX))
    return stead_repo_refuse (error, _("The flow through the tank must be 0 or more. Check the number, "
                                       "or leave it empty."));
  return TRUE;
}

/* --- writing ---------------------------------------------------------------- */

/* The place of the tank: its name is checked there. */
static gboolean
save_place (SteadStore       *store,
            const SteadTank  *tank,
            gint64           *out_id,
            GError          **error)
{
  g_autoptr(GPtrArray) places = stead_place_repo_list (store, error);
  SteadPlaceFacts made = { .kind = STEAD_PLACE_TANK, .area_m2 = NAN };
  SteadPlaceFacts *place = &made;
  g_autofree char *name = g_strdup (tank->name);
  gboolean saved;

  if (places == NULL)
    return FALSE;
  for (guint i = 0; tank->place_id != 0 && i < places->len; i++)
    if (((SteadPlaceFacts *) places->pdata[i])->id == tank->place_id)
      place = places->pdata[i];
  if (tank->place_id != 0 && place == &made)
    return stead_repo_missing (error);
  place->kind = STEAD_PLACE_TANK;
  if (place == &made)
    made.name = name;
  else
    {
      g_free (place->name);
      place->name = g_steal_pointer (&name);
    }
  saved = stead_place_repo_save (store, place, error);
  if (saved)
    *out_id = place->id;
  return saved;
}

/* What the shape does not have is not kept. */
static void
bind_measures (SteadStmt       *stmt,
               const SteadTank *tank)
{
  SteadTankShape shape = tank->shape;
  gboolean round = shape == STEAD_TANK_ROUND || shape == STEAD_TANK_CONE;

  stead_stmt_bind_text (stmt, 2, shape_words[shape]);
  stead_stmt_bind_real (stmt, 3, shape == STEAD_TANK_BOX ? tank->length_m : NAN);
  stead_stmt_bind_real (stmt, 4, shape == STEAD_TANK_BOX ? tank->width_m : NAN);
  stead_stmt_bind_real (stmt, 5, round ? tank->diameter_m : NAN);
  stead_stmt_bind_real (stmt, 6, shape != STEAD_TANK_OTHER ? tank->depth_m : NAN);
  stead_stmt_bind_real (stmt, 7, shape == STEAD_TANK_CONE ? tank->cone_m : NAN);
  stead_stmt_bind_real (stmt, 8, shape == STEAD_TANK_OTHER ? tank->volume_l : NAN);
  stead_stmt_bind_real (stmt, 9, tank->flow_l_min);
}

gboolean
stead_tank_repo_save (SteadStore  *store,
                      SteadTank   *tank,
                      GError     **error)
{
  static const char sql[] =
    "INSERT INTO tank (place_id, shape, length_m, width_m, diameter_m, depth_m, cone_m, volume_l, flow_l_min)"
    " VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9) ON CONFLICT (place_id) DO UPDATE SET shape = ?2, length_m = ?3,"
    " width_m = ?4, diameter_m = ?5, depth_m = ?6, cone_m = ?7, volume_l = ?8, flow_l_min = ?9";
  g_autoptr(SteadStmt) stmt = NULL;
  gint64 place_id = 0;

  g_return_val_if_fail (STEAD_IS_STORE (store) && tank != NULL, FALSE);
  g_return_val_if_fail (stead_store_in_action (store), FALSE);
  g_return_val_if_fail ((guint) tank->shape <= STEAD_TANK_OTHER, FALSE);
  if (!check_tank (tank, error) || !save_place (store, tank, &place_id, error))
    return FALSE;
  stmt = stead_store_prepare (store, sql, error);
  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, place_id);
  bind_measures (stmt, tank);
  if (!stead_store_run (store, stmt, error) ||
      !stead_water_repo_set_place (store, place_id, tank->water_id, error))
    return FALSE;
  tank->place_id = place_id;
  tank->volume_l = stead_tank_volume_l (tank);
  return TRUE;
}

gboolean
stead_tank_repo_delete (SteadStore  *store,
                        gint64       place_id,
                        GError     **error)
{
  static const char batches_sql[] =
    "SELECT count (*) FROM batch b WHERE b.place_id = ?1"
    " OR EXISTS (SELECT 1 FROM batch_stay s WHERE s.batch_id = b.id AND s.place_id = ?1)";
  static const char sql[] = "DELETE FROM place WHERE id = ?1";
  g_autoptr(SteadTank) tank = NULL;
  gint64 batches;

  g_return_val_if_fail (STEAD_IS_STORE (store), FALSE);
  g_return_val_if_fail (stead_store_in_action (store), FALSE);
  tank = stead_tank_repo_get (store, place_id, error);
  if (tank == NULL || (batches = stead_repo_count_id (store, batches_sql, place_id, error)) < 0)
    return FALSE;
  if (batches > 0)
    return stead_repo_refuse (error, ngettext ("%d batch lives or lived in “%s”. The tank cannot be deleted.",
                                               "%d batches live or lived in “%s”. The tank cannot be deleted.",
                                               (gulong) batches), (int) batches, tank->name);
  return stead_repo_run_id (store, sql, place_id, error);
}
