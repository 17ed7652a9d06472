/* stead-build-plan.c - the drawing of a build: corners, gates, shelter, lengths sold. */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "store/stead-build-private.h"
#include "store/stead-repo-private.h"

/* --- what can be built -------------------------------------------------------------- */

/* Half an inch: what a string and a tape leave open. */
#define SQUARE_M 0.0127

static gboolean
is_square (const SteadBuild *build)
{
  const SteadBuildCorner *c = (const SteadBuildCorner *) (gpointer) build->corners->data;

  if (build->corners->len != 4)
    return FALSE;
  return fabs (hypot (c[2].x_m - c[0].x_m, c[2].y_m - c[0].y_m) -
               hypot (c[3].x_m - c[1].x_m, c[3].y_m - c[1].y_m)) <= SQUARE_M &&
         fabs (hypot (c[1].x_m - c[0].x_m, c[1].y_m - c[0].y_m) -
               hypot (c[3].x_m - c[2].x_m, c[3].y_m - c[2].y_m)) <= SQUARE_M;
}

static gboolean
check_outline (const SteadBuild  *build,
               GError           **error)
{
  g_autofree SteadCorner *corners = g_new0 (SteadCorner, build->corners->len + 1);

  if (build->corners->len > STEAD_OUTLINE_MOST)
    return stead_repo_refuse (error, _("A plan has at most %d corners."), STEAD_OUTLINE_MOST);
  for (guint i = 0; i < build->corners->len; i++)
    {
      const SteadBuildCorner *corner = &g_array_index (build->corners, SteadBuildCorner, i);

      if (!(fabs (corner->x_m) <= 10000 && fabs (corner->y_m) <= 10000))
        return stead_repo_refuse (error, _("A side is too long. Check the plan."));
      if (!(fabs (corner->rise_m) <= 100) || corner->steps < 0 || corner->steps > 100)
        return stead_repo_refuse (error, _("The slope of a side cannot be. Check its rise and its steps."));
      corners[i] = (SteadCorner) { corner->x_m, corner->y_m };
    }
  if (!stead_outline_check (corners, build->corners->len, error))
    return FALSE;
  if (build->kind != STEAD_BUILD_PEN && !is_square (build))
    return stead_repo_refuse (error, _("A run or a hoop house has four square corners. Make both diagonals the same length."));
  return TRUE;
}

static gboolean
check_gates (const SteadBuild  *build,
             GError           **error)
{
  g_autofree SteadCorner *corners = g_new0 (SteadCorner, build->corners->len);
  g_autofree double *sides = g_new0 (double, build->corners->len);
  SteadFencePlan plan = { sides, build->corners->len, (const SteadFenceGate *) (gpointer) build->gates->data,
                          build->gates->len, build->spacing_m };
  SteadFenceTakeoff takeoff;

  if (build->gates->len == 0)
    return TRUE;
  for (guint i = 0; i < build->corners->len; i++)
    corners[i] = (SteadCorner) { g_array_index (build->corners, SteadBuildCorner, i).x_m,
                                 g_array_index (build->corners, SteadBuildCorner, i).y_m };
  stead_outline_sides (corners, build->corners->len, sides);
  return stead_fence_take_off (&plan, &takeoff, error);
}

static gboolean
check_shelter (const SteadBuildShelter  *s,
               GError                  **error)
{
  if (!(s->wall_m > 0 && s->wall_m <= 100) || !(s->depth_m > 0 && s->depth_m <= 100))
    return stead_repo_refuse (error, _("Enter how long and how deep the shelter is."));
  if (!(s->rear_m > 0) || !(s->front_m >= s->rear_m && s->front_m <= 10))
    return stead_repo_refuse (error, _("The shelter's roof falls to the rear: its front is as high as its rear or higher."));
  if (!(s->overhang_front_m >= 0 && s->overhang_front_m <= 5) || !(s->overhang_rear_m >= 0 && s->overhang_rear_m <= 5) ||
      !(s->end_m >= 0 && s->end_m <= 5) || !(s->cover_m > 0 && s->cover_m <= 5))
    return stead_repo_refuse (error, _("Check how far the shelter's roof reaches past its walls, and what one sheet covers."));
  if (!(s->rafter_spacing_m > 0 && s->rafter_spacing_m <= 10) || !(s->post_spacing_m > 0 && s->post_spacing_m <= 20) ||
      !(s->post_depth_m >= 0 && s->post_depth_m <= 5) || s->turn < 0 || s->turn > 3)
    return stead_repo_refuse (error, _("Check the spacing of the shelter's rafters and posts, and how deep its posts stand."));
  return TRUE;
}

static gboolean
is_share (double frac)
{
  return frac >= 0 && frac <= 1;
}

static gboolean
check_figures (const SteadBuild  *b,
               GError           **error)
{
  if (!(b->height_m >= 0 && b->height_m <= 20) || !(b->spacing_m > 0 && b->spacing_m <= 100) ||
      b->rows < 0 || b->rows > 40)
    return stead_repo_refuse (error, _("Check the height of the fence, its posts' spacing and its wires."));
  if (!(b->roll_m > 0 && b->roll_m <= 2000) || !(b->roll_width_m > 0 && b->roll_width_m <= 50) ||
      !(b->apron_m >= 0 && b->apron_m <= 5))
    return stead_repo_refuse (error, _("Check the length and width of a roll, and the apron."));
  if (!(b->hole_m > 0 && b->hole_m <= 2) || !(b->post_m > 0 && b->post_m <= b->hole_m) ||
      !(b->depth_m > 0 && b->depth_m <= 5) || (b->bag_lb != 40 && b->bag_lb != 60 && b->bag_lb != 80))
    return stead_repo_refuse (error, _("Check the post hole: a post fits into its hole, and a bag has 40, 60 or 80 lb."));
  if (!isnan (b->frost_m) && !(b->frost_m >= 0 && b->frost_m <= 5))
    return stead_repo_refuse (error, _("Enter how deep the ground freezes at your place; the building office knows it."));
  if (!is_share (b->wire_waste) || !is_share (b->wood_waste) || !is_share (b->mix_waste) ||
      !is_share (b->tax_frac) || !is_share (b->contingency_frac) || !is_share (b->sale_frac) || !is_share (b->season_frac))
    return stead_repo_refuse (error, _("A share is between 0 and 100 %%. Check waste, tax and contingency."));
  if (!(b->bed_m >= 0 && b->bed_m <= 2) || b->notice_days < 0 || b->notice_days > 60)
    return stead_repo_refuse (error, _("Check the depth of the bedding and the days of notice."));
  return TRUE;
}

gboolean
stead_build_check (const SteadBuild  *build,
                   GError           **error)
{
  g_return_val_if_fail (build != NULL, FALSE);
  if (build->head < 0 || build->head > 100000)
    return stead_repo_refuse (error, _("Enter how many animals will live in it."));
  if ((!isnan (build->housed_each_m2) && !(build->housed_each_m2 > 0)) ||
      (!isnan (build->yard_each_m2) && !(build->yard_each_m2 > 0)))
    return stead_repo_refuse (error, _("The room for one animal must be above zero."));
  if (!check_figures (build, error))
    return FALSE;
  if (build->kind == STEAD_BUILD_LIST)
    return TRUE;
  return check_outline (build, error) && check_gates (build, error) &&
         (!build->has_shelter || check_shelter (&build->shelter, error));
}

/* --- reading ---------------------------------------------------------------------- */

static gboolean
read_corners (SteadStore  *store,
              SteadBuild  *build,
              GError     **error)
{
  static const char sql[] = "SELECT x_m, y_m, rise_m, steps FROM build_corner WHERE build_id = ?1 ORDER BY position";
  g_autoptr(SteadStmt) stmt = stead_store_prepare (store, sql, error);
  int found;

  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, build->id);
  while ((found = stead_store_step (store, stmt, error)) == 1)
    {
      SteadBuildCorner corner = { sqlite3_column_double (stmt, 0), sqlite3_column_double (stmt, 1),
                                  sqlite3_column_double (stmt, 2), sqlite3_column_int (stmt, 3) };

      g_array_append_val (build->corners, corner);
    }
  return found == 0;
}

static gboolean
read_gates (SteadStore  *store,
            SteadBuild  *build,
            GError     **error)
{
  static const char sql[] = "SELECT side, offset_m, width_m FROM build_gate WHERE build_id = ?1"
                            " ORDER BY side, offset_m, id";
  g_autoptr(SteadStmt) stmt = stead_store_prepare (store, sql, error);
  int found;

  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, build->id);
  while ((found = stead_store_step (store, stmt, error)) == 1)
    {
      SteadFenceGate gate = { (gsize) sqlite3_column_int (stmt, 0), sqlite3_column_double (stmt, 1),
                              sqlite3_column_double (stmt, 2) };

      g_array_append_val (build->gates, gate);
    }
  return found == 0;
}

static gboolean
read_stocks (SteadStore  *store,
             SteadBuild  *build,
             GError     **error)
{
  static const char sql[] = "SELECT size, length_m, price_cents FROM build_stock WHERE build_id = ?1"
                            " ORDER BY size, length_m";
  g_autoptr(SteadStmt) stmt = stead_store_prepare (store, sql, error);
  int found;

  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, build->id);
  while ((found = stead_store_step (store, stmt, error)) == 1)
    {
      SteadBuildStock stock = { .length_m = sqlite3_column_double (stmt, 1),
                                .price_cents = sqlite3_column_int64 (stmt, 2) };

      g_autofree char *size = stead_stmt_text (stmt, 0);
      const char *end;

      /* A letter that is cut in the middle is none. */
      g_strlcpy (stock.size, size, sizeof stock.size);
      g_utf8_validate (stock.size, -1, &end);
      stock.size[end - stock.size] = '\0';
      g_array_append_val (build->stocks, stock);
    }
  return found == 0;
}

#define SHELTER_COLUMNS \
  "x_m, y_m, turn, wall_m, depth_m, front_m, rear_m, overhang_front_m, overhang_rear_m, end_m, cover_m," \
  " rafter_spacing_m, post_spacing_m, post_depth_m"

static gboolean
read_shelter (SteadStore  *store,
              SteadBuild  *build,
              GError     **error)
{
  static const char sql[] = "SELECT " SHELTER_COLUMNS " FROM build_shelter WHERE build_id = ?1";
  g_autoptr(SteadStmt) stmt = stead_store_prepare (store, sql, error);
  SteadBuildShelter *s = &build->shelter;
  double *measures[] = { &s->wall_m, &s->depth_m, &s->front_m, &s->rear_m, &s->overhang_front_m, &s->overhang_rear_m,
                         &s->end_m, &s->cover_m, &s->rafter_spacing_m, &s->post_spacing_m, &s->post_depth_m };
  int found;

  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, build->id);
  found = stead_store_step (store, stmt, error);
  if (found != 1)
    return found == 0;
  build->has_shelter = TRUE;
  s->x_m = sqlite3_column_double (stmt, 0);
  s->y_m = sqlite3_column_double (stmt, 1);
  s->turn = sqlite3_column_int (stmt, 2);
  for (gsize i = 0; i < G_N_ELEMENTS (measures); i++)
    *measures[i] = sqlite3_column_double (stmt, 3 + (int) i);
  return TRUE;
}

gboolean
stead_build_read_plan (SteadStore  *store,
                       SteadBuild  *build,
                       GError     **error)
{
  return read_corners (store, build, error) && read_gates (store, build, error) &&
         read_shelter (store, build, error) && read_stocks (store, build, error);
}

/* --- writing ---------------------------------------------------------------------- */

static gboolean
write_corner (SteadStore              *store,
              gint64                   build_id,
              guint                    position,
              const SteadBuildCorner  *corner,
              GError                 **error)
{
  static const char sql[] = "INSERT INTO build_corner (build_id, position, x_m, y_m, rise_m, steps)"
                            " VALUES (?1, ?2, ?3, ?4, ?5, ?6)";
  g_autoptr(SteadStmt) stmt = stead_store_prepare (store, sql, error);

  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, build_id);
  sqlite3_bind_int (stmt, 2, (int) position);
  sqlite3_bind_double (stmt, 3, corner->x_m);
  sqlite3_bind_double (stmt, 4, corner->y_m);
  sqlite3_bind_double (stmt, 5, corner->rise_m);
  sqlite3_bind_int (stmt, 6, corner->steps);
  return stead_store_run (store, stmt, error);
}

/* Rows keep their numbers in turn, so that a plan that nobody changed is no step to undo;
 * 0: one more than there were. */
static gint64
id_at (const GArray *ids,
       guint         i)
{
  return i < ids->len ? g_array_index (ids, gint64, i) : 0;
}

static gboolean
write_gate (SteadStore            *store,
            gint64                 id,
            gint64                 build_id,
            const SteadFenceGate  *gate,
            GError               **error)
{
  static const char sql[] = "INSERT INTO build_gate (id, build_id, side, offset_m, width_m) VALUES (?5, ?1, ?2, ?3, ?4)";
  g_autoptr(SteadStmt) stmt = stead_store_prepare (store, sql, error);

  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, build_id);
  sqlite3_bind_int (stmt, 2, (int) gate->side);
  sqlite3_bind_double (stmt, 3, gate->offset_m);
  sqlite3_bind_double (stmt, 4, gate->width_m);
  stead_stmt_bind_id (stmt, 5, id);
  return stead_store_run (store, stmt, error);
}

static gboolean
write_stock (SteadStore             *store,
             gint64                  id,
             gint64                  build_id,
             const SteadBuildStock  *stock,
             GError                **error)
{
  static const char sql[] = "INSERT INTO build_stock (id, build_id, size, length_m, price_cents)"
                            " VALUES (?5, ?1, ?2, ?3, ?4)";
  g_autoptr(SteadStmt) stmt = NULL;

  if (!(stock->length_m > 0 && stock->length_m <= 100) || *stock->size == '\0')
    return stead_repo_refuse (error, _("Enter a size and a length in which it is sold: 2x4, 12 ft."));
  if (!stead_repo_check_cents (_("Price"), stock->price_cents, error))
    return FALSE;
  stmt = stead_store_prepare (store, sql, error);
  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, build_id);
  stead_stmt_bind_text (stmt, 2, stock->size);
  sqlite3_bind_double (stmt, 3, stock->length_m);
  sqlite3_bind_int64 (stmt, 4, stock->price_cents);
  stead_stmt_bind_id (stmt, 5, id);
  return stead_store_run (store, stmt, error);
}

static gboolean
write_shelter (SteadStore        *store,
               const SteadBuild  *build,
               GError           **error)
{
  static const char sql[] = "INSERT INTO build_shelter (build_id, " SHELTER_COLUMNS ")"
                            " VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9, ?10, ?11, ?12, ?13, ?14, ?15)";
  const SteadBuildShelter *s = &build->shelter;
  const double measures[] = { s->wall_m, s->depth_m, s->front_m, s->rear_m, s->overhang_front_m, s->overhang_rear_m,
                              s->end_m, s->cover_m, s->rafter_spacing_m, s->post_spacing_m, s->post_depth_m };
  g_autoptr(SteadStmt) stmt = NULL;

  if (!build->has_shelter)
    return TRUE;
  stmt = stead_store_prepare (store, sql, error);
  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, build->id);
  sqlite3_bind_double (stmt, 2, s->x_m);
  sqlite3_bind_double (stmt, 3, s->y_m);
  sqlite3_bind_int (stmt, 4, s->turn);
  for (gsize i = 0; i < G_N_ELEMENTS (measures); i++)
    sqlite3_bind_double (stmt, 5 + (int) i, measures[i]);
  return stead_store_run (store, stmt, error);
}

static gboolean
drop_plan (SteadStore  *store,
           gint64       build_id,
           GError     **error)
{
  static const char corners[] = "DELETE FROM build_corner WHERE build_id = ?1";
  static const char gates[] = "DELETE FROM build_gate WHERE build_id = ?1";
  static const char shelter[] = "DELETE FROM build_shelter WHERE build_id = ?1";
  static const char stocks[] = "DELETE FROM build_stock WHERE build_id = ?1";

  return stead_repo_run_id (store, corners, build_id, error) && stead_repo_run_id (store, gates, build_id, error) &&
         stead_repo_run_id (store, shelter, build_id, error) && stead_repo_run_id (store, stocks, build_id, error);
}

gboolean
stead_build_write_plan (SteadStore        *store,
                        const SteadBuild  *build,
                        GError           **error)
{
  static const char gates_sql[] = "SELECT id FROM build_gate WHERE build_id = ?1 ORDER BY side, offset_m, id";
  static const char stocks_sql[] = "SELECT id FROM build_stock WHERE build_id = ?1 ORDER BY size, length_m";
  g_autoptr(GArray) gates = stead_repo_ids_of (store, gates_sql, build->id, error);
  g_autoptr(GArray) stocks = gates != NULL ? stead_repo_ids_of (store, stocks_sql, build->id, error) : NULL;

  if (stocks == NULL || !drop_plan (store, build->id, error) || !write_shelter (store, build, error))
    return FALSE;
  for (guint i = 0; i < build->corners->len; i++)
    if (!write_corner (store, build->id, i, &g_array_index (build->corners, SteadBuildCorner, i), error))
      return FALSE;
  for (guint i = 0; i < build->gates->len; i++)
    if (!write_gate (store, id_at (gates, i), build->id, &g_array_index (build->gates, SteadFenceGate, i), error))
      return FALSE;
  for (guint i = 0; i < build->stocks->len; i++)
    if (!write_stock (store, id_at (stocks, i), build->id, &g_array_index (build->stocks, SteadBuildStock, i), error))
      return FALSE;
  return TRUE;
}
