/* stead-check-from.c - sums over what a checklist was made from.
 *
 * They are compared with each other in one farm, and with nothing else.
 */
#include "config.h"

#include "store/stead-check-private.h"

/* Adds all rows of @stmt, each value with its length. */
static gboolean
add_rows (SteadStore  *store,
          SteadStmt   *stmt,
          GChecksum   *sum,
          guint       *n,
          GError     **error)
{
  int found;

  while ((found = stead_store_step (store, stmt, error)) == 1)
    {
      ++*n;
      for (int i = 0; i < sqlite3_column_count (stmt); i++)
        {
          const char *text = (const char *) sqlite3_column_text (stmt, i);
          g_autofree char *value = text != NULL ? g_strdup_printf ("%d:%s;", sqlite3_column_bytes (stmt, i), text)
                                                : g_strdup ("n;");

          g_checksum_update (sum, (const guchar *) value, -1);
        }
    }
  return found == 0;
}

static gboolean
sum_of (SteadStore         *store,
        const char * const *sqls,
        gsize               n_sqls,
        gint64              id,
        char              **out,
        GError            **error)
{
  g_autoptr(GChecksum) sum = g_checksum_new (G_CHECKSUM_SHA256);
  guint n = 0;

  for (gsize i = 0; i < n_sqls; i++)
    {
      g_autoptr(SteadStmt) stmt = stead_store_prepare (store, sqls[i], error);

      if (stmt == NULL)
        return FALSE;
      sqlite3_bind_int64 (stmt, 1, id);
      if (!add_rows (store, stmt, sum, &n, error))
        return FALSE;
    }
  *out = n > 0 ? g_strdup (g_checksum_get_string (sum)) : NULL;
  return TRUE;
}

/* Amounts do not matter: 20 bowls are checked as 40 are. */
gboolean
stead_check_from_batch (SteadStore  *store,
                        gint64       batch_id,
                        char       **out,
                        GError     **error)
{
  static const char parts_sql[] = "SELECT DISTINCT item_id FROM kitchen_part WHERE batch_id = ?1 ORDER BY item_id";
  static const char steps_sql[] = "SELECT text, step, food, least_c, most_c, hold_s FROM kitchen_step"
                                  " WHERE batch_id = ?1 ORDER BY position, id";
  static const char * const sqls[] = { parts_sql, steps_sql };

  *out = NULL;
  return batch_id == 0 || sum_of (store, sqls, G_N_ELEMENTS (sqls), batch_id, out, error);
}

#define WITH_INSIDE \
  "WITH RECURSIVE inside (id) AS (SELECT ?1 UNION SELECT p.sub_id FROM inside i" \
  " JOIN recipe_part p ON p.recipe_id = i.id WHERE p.sub_id IS NOT NULL) "

gboolean
stead_check_from_recipe (SteadStore  *store,
                         gint64       recipe_id,
                         char       **out,
                         GError     **error)
{
  static const char recipe_sql[] = WITH_INSIDE
    "SELECT r.id, r.item_id, r.kept, r.sealed, r.acid_added, r.tomato, r.ph, r.aw, r.jar, r.process, r.authority"
    " FROM recipe r WHERE r.id IN (SELECT id FROM inside) ORDER BY r.id";
  static const char parts_sql[] = WITH_INSIDE
    "SELECT DISTINCT p.recipe_id, p.item_id, p.sub_id FROM recipe_part p"
    " WHERE p.recipe_id IN (SELECT id FROM inside) ORDER BY p.recipe_id, p.item_id, p.sub_id";
  static const char steps_sql[] = WITH_INSIDE
    "SELECT s.recipe_id, s.text, s.step, s.food, s.least_c, s.most_c, s.hold_s FROM recipe_step s"
    " WHERE s.recipe_id IN (SELECT id FROM inside) ORDER BY s.recipe_id, s.position, s.id";
  static const char * const sqls[] = { recipe_sql, parts_sql, steps_sql };

  *out = NULL;
  return recipe_id == 0 || sum_of (store, sqls, G_N_ELEMENTS (sqls), recipe_id, out, error);
}

gboolean
stead_check_from_limits (SteadStore  *store,
                         SteadDay     day,
                         char       **out,
                         GError     **error)
{
  static const char sql[] = "SELECT limit_id, value, unit, time_s FROM local_limit"
                            " WHERE from_day <= ?1 AND (retired_on IS NULL OR retired_on > ?1) ORDER BY limit_id, id";
  static const char * const sqls[] = { sql };

  *out = NULL;
  return sum_of (store, sqls, G_N_ELEMENTS (sqls), day, out, error);
}
