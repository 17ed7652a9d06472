/* stead-search-repo.c - the jump field's look through the farm.
 *
 * The names of a farm are few: they are folded and compared here, so that
 * "jose" finds "José" in any locale.  Lots are many: their codes are looked up
 * by prefix through the index.
 */
#include "config.h"

#include <string.h>

#include "store/stead-repo-private.h"
#include "store/stead-search-repo.h"

void
stead_hit_free (SteadHit *hit)
{
  if (hit == NULL)
    return;
  g_free (hit->title);
  g_free (hit);
}

/* --- folding ---------------------------------------------------------------- */

/* Without case and accents: decomposed, marks dropped, case folded. */
static char *
fold (const char *text)
{
  g_autofree char *apart = g_utf8_normalize (text, -1, G_NORMALIZE_ALL);
  g_autoptr(GString) bare = g_string_new (NULL);

  for (const char *at = apart; at != NULL && *at != '\0'; at = g_utf8_next_char (at))
    if (!g_unichar_ismark (g_utf8_get_char (at)))
      g_string_append_unichar (bare, g_utf8_get_char (at));
  return g_utf8_casefold (bare->str, -1);
}

/* How well: 0 the whole name, 1 its start, 2 the start of a word, 3 inside; -1 not. */
static int
rank_of (const char *name,
         const char *wanted)
{
  const char *found = strstr (name, wanted);

  if (found == NULL)
    return -1;
  if (found == name)
    return strlen (name) == strlen (wanted) ? 0 : 1;
  for (; found != NULL; found = strstr (found + 1, wanted))
    if (!g_unichar_isalnum (g_utf8_get_char (g_utf8_find_prev_char (name, found))))
      return 2;
  return 3;
}

/* --- collecting ------------------------------------------------------------- */

typedef struct
{
  SteadHit *hit;
  int       rank;
  guint     number;   /* keeps the order of finding among equals */
} Ranked;

static void
ranked_clear (gpointer data)
{
  stead_hit_free (((Ranked *) data)->hit);
}

static int
compare_ranked (gconstpointer a,
                gconstpointer b)
{
  const Ranked *first = a, *second = b;

  if (first->rank != second->rank)
    return first->rank - second->rank;
  return (first->number > second->number) - (first->number < second->number);
}

static void
add_hit (GArray       *found,
         SteadHitKind  kind,
         gint64        id,
         char         *title,
         int           rank)
{
  Ranked ranked = { g_new0 (SteadHit, 1), rank, found->len };

  ranked.hit->kind = kind;
  ranked.hit->id = id;
  ranked.hit->title = title;
  g_array_append_val (found, ranked);
}

/* A receipt is called by who it came from and the day, a sale and a checklist by name and day,
 * which a checklist may bear already; other names are themselves. */
static char *
title_of (SteadStmt    *stmt,
          SteadHitKind  kind)
{
  g_autofree char *name = stead_stmt_text (stmt, 2);
  g_autofree char *day = NULL;

  if (kind != STEAD_HIT_RECEIPT && kind != STEAD_HIT_SALE && kind != STEAD_HIT_CHECKLIST)
    return g_steal_pointer (&name);
  day = stead_day_format (stead_stmt_day (stmt, 3), STEAD_DAY_STYLE_MEDIUM);
  if (strstr (name, day) != NULL)
    return g_steal_pointer (&name);
  return g_strdup_printf ("%s, %s", name, day);
}

static gboolean
find_names (SteadStore  *store,
            const char  *wanted,
            GArray      *found,
            GError     **error)
{
  /* The first column is SteadHitKind. */
  static const char sql[] =
    "SELECT 0, id, name, NULL, 0 FROM batch WHERE kind = 'flock'"
    " UNION ALL SELECT 1, id, name, NULL, 0 FROM product UNION ALL SELECT 2, id, name, NULL, 0 FROM item"
    " UNION ALL SELECT 4, id, supplier, day, -day FROM receipt UNION ALL SELECT 5, id, name, NULL, 0 FROM asset"
    " UNION ALL SELECT 6, id, name, NULL, 0 FROM person UNION ALL SELECT 7, id, name, NULL, 0 FROM recipe"
    " UNION ALL SELECT 8, id, name, NULL, -started_on FROM batch WHERE kind = 'kitchen'"
    " UNION ALL SELECT 9, id, name, day, -day FROM sale_day"
    " UNION ALL SELECT 10, id, name, day, -day FROM checklist ORDER BY 1, 5, 3, 2";
  g_autoptr(SteadStmt) stmt = stead_store_prepare (store, sql, error);
  int step;

  if (stmt == NULL)
    return FALSE;
  while ((step = stead_store_step (store, stmt, error)) == 1)
    {
      g_autofree char *text = stead_stmt_text (stmt, 2);
      g_autofree char *name = fold (text);
      SteadHitKind kind = (SteadHitKind) sqlite3_column_int (stmt, 0);
      int rank = rank_of (name, wanted);

      if (rank >= 0)
        add_hit (found, kind, sqlite3_column_int64 (stmt, 1), title_of (stmt, kind), rank);
    }
  return step == 0;
}

/* Codes are capital letters, digits and hyphens; newest first. */
static gboolean
find_lots (SteadStore  *store,
           const char  *text,
           guint        limit,
           GArray      *found,
           GError     **error)
{
  static const char sql[] = "SELECT id, code FROM lot WHERE code >= ?1 AND code < ?2 ORDER BY id DESC LIMIT ?3";
  g_autoptr(SteadStmt) stmt = NULL;
  g_autofree char *prefix = g_ascii_strup (text, -1);
  g_autofree char *end = NULL;
  int step;

  if (!g_str_is_ascii (prefix) || (stmt = stead_store_prepare (store, sql, error)) == NULL)
    return g_str_is_ascii (prefix) ? FALSE : TRUE;
  end = g_strdup_printf ("%s~", prefix);
  stead_stmt_bind_text (stmt, 1, prefix);
  stead_stmt_bind_text (stmt, 2, end);
  sqlite3_bind_int64 (stmt, 3, limit);
  while ((step = stead_store_step (store, stmt, error)) == 1)
    {
      char *code = stead_stmt_text (stmt, 1);

      add_hit (found, STEAD_HIT_LOT, sqlite3_column_int64 (stmt, 0), code, strcmp (code, prefix) == 0 ? 0 : 1);
    }
  return step == 0;
}

/**
 * stead_search_repo_find:
 * @text: what the person typed; blank finds nothing
 *
 * Returns: (transfer full) (element-type SteadHit): best first, or %NULL with @error
 */
GPtrArray *
stead_search_repo_find (SteadStore  *store,
                        const char  *text,
                        guint        limit,
                        GError     **error)
{
  g_autoptr(GPtrArray) hits = g_ptr_array_new_with_free_func ((GDestroyNotify) stead_hit_free);
  g_autoptr(GArray) found = g_array_new (FALSE, FALSE, sizeof (Ranked));
  g_autofree char *tidy = NULL;
  g_autofree char *wanted = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  g_array_set_clear_func (found, ranked_clear);
  tidy = stead_repo_tidy (text);
  if (tidy == NULL || !g_utf8_validate (tidy, -1, NULL))
    return g_steal_pointer (&hits);
  wanted = fold (tidy);
  if (!find_names (store, wanted, found, error) || !find_lots (store, tidy, limit, found, error))
    return NULL;
  g_array_sort (found, compare_ranked);
  for (guint i = 0; i < found->len && i < limit; i++)
    g_ptr_array_add (hits, g_steal_pointer (&g_array_index (found, Ranked, i).hit));
  return g_steal_pointer (&hits);
}
