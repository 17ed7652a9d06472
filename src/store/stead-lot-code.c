/* stead-lot-code.c - the code that a lot goes by, on the shelf and on every label. */
#include "config.h"

#include <string.h>

#include "store/stead-lot-private.h"

/* The highest number given so far to a lot whose code begins with @prefix. */
static gboolean
last_number (SteadStore  *store,
             const char  *prefix,
             gint64      *out_number,
             GError     **error)
{
  static const char sql[] = "SELECT max (CAST (substr (code, length (?1) + 1) AS INTEGER)) FROM lot"
                            " WHERE code >= ?1 AND code < ?2";
  g_autoptr(SteadStmt) stmt = stead_store_prepare (store, sql, error);
  g_autofree char *end = g_strdup (prefix);

  if (stmt == NULL)
    return FALSE;
  end[strlen (end) - 1]++;
  stead_stmt_bind_text (stmt, 1, prefix);
  stead_stmt_bind_text (stmt, 2, end);
  return stead_repo_number (store, stmt, 0, out_number, error);
}

char *
stead_lot_new_code (SteadStore  *store,
                    char         letter,
                    SteadDay     day,
                    GError     **error)
{
  g_autofree char *date = stead_day_code (day);
  g_autofree char *prefix = g_strdup_printf ("%c%s-", letter, date);
  gint64 number = 0;

  if (!last_number (store, prefix, &number, error))
    return NULL;
  return g_strdup_printf ("%s%" G_GINT64_FORMAT, prefix, number + 1);
}
