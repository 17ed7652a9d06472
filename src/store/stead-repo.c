/* stead-repo.c - what every repository does the same way. */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#include "store/stead-repo-private.h"
#include "store/stead-still-named.h"

gboolean
stead_repo_refuse (GError     **error,
                   const char  *format,
                   ...)
{
  g_autofree char *message = NULL;
  va_list args;

  va_start (args, format);
  message = g_strdup_vprintf (format, args);
  va_end (args);
  g_set_error_literal (error, STEAD_STORE_ERROR, STEAD_STORE_ERROR_INVALID, message);
  return FALSE;
}

gboolean
stead_repo_missing (GError **error)
{
  g_set_error_literal (error, STEAD_STORE_ERROR, STEAD_STORE_ERROR_NOT_FOUND,
                       _("This is no longer in the farm. It may have been deleted or undone."));
  return FALSE;
}

char *
stead_repo_tidy (const char *text)
{
  g_autofree char *tidy = g_strdup (text);

  if (tidy == NULL || *g_strstrip (tidy) == '\0')
    return NULL;
  return g_steal_pointer (&tidy);
}

void
stead_repo_bind_tidy (SteadStmt  *stmt,
                      int         at,
                      const char *text)
{
  g_autofree char *tidy = stead_repo_tidy (text);

  if (tidy == NULL)
    sqlite3_bind_null (stmt, at);
  else
    stead_stmt_bind_text (stmt, at, tidy);
}

/* Nothing that cannot be read: broken UTF-8, line breaks in a line, control signs. */
static gboolean
is_readable (const char *text,
             gboolean    one_line)
{
  if (!g_utf8_validate (text, -1, NULL))
    return FALSE;
  for (const char *at = text; *at != '\0'; at = g_utf8_next_char (at))
    if (g_unichar_iscntrl (g_utf8_get_char (at)) && (one_line || (*at != '\n' && *at != '\t')))
      return FALSE;
  return TRUE;
}

gboolean
stead_repo_check_name (const char  *name,
                       GError     **error)
{
  g_autofree char *tidy = stead_repo_tidy (name);

  if (tidy == NULL)
    return stead_repo_refuse (error, _("Enter a name."));
  if (!is_readable (tidy, TRUE))
    return stead_repo_refuse (error, _("The name has signs that cannot be read. Type it again."));
  if (g_utf8_strlen (tidy, -1) > STEAD_NAME_MAX)
    return stead_repo_refuse (error, ngettext ("The name is too long. Use at most %d letter.",
                                               "The name is too long. Use at most %d letters.",
                                               STEAD_NAME_MAX), STEAD_NAME_MAX);
  return TRUE;
}

gboolean
stead_repo_check_note (const char  *note,
                       GError     **error)
{
  if (note == NULL)
    return TRUE;
  if (!is_readable (note, FALSE))
    return stead_repo_refuse (error, _("The note has signs that cannot be read. Type it again."));
  if (g_utf8_strlen (note, -1) > STEAD_NOTE_MAX)
    return stead_repo_refuse (error, ngettext ("The note is too long. Use at most %d letter.",
                                               "The note is too long. Use at most %d letters.",
                                               STEAD_NOTE_MAX), STEAD_NOTE_MAX);
  return TRUE;
}

gboolean
stead_repo_check_unique (SteadStore  *store,
                         const char  *sql,
                         const char  *name,
                         gint64       id,
                         GError     **error)
{
  g_autoptr(SteadStmt) stmt = stead_store_prepare (store, sql, error);
  g_autofree char *tidy = stead_repo_tidy (name);
  int found;

  if (stmt == NULL)
    return FALSE;
  stead_stmt_bind_text (stmt, 1, tidy);
  sqlite3_bind_int64 (stmt, 2, id);
  found = stead_store_step (store, stmt, error);
  if (found == 1)
    return stead_repo_refuse (error, _("The name “%s” is taken. Choose another name."), tidy);
  return found == 0;
}

gboolean
stead_repo_check_cents (const char  *what,
                        gint64       cents,
                        GError     **error)
{
  if (cents < 0)
    return stead_repo_refuse (error, _("%s: an amount below zero is not possible. Check the number."), what);
  if (cents > STEAD_CENTS_MAX)
    return stead_repo_refuse (error, _("%s: the amount is too large. Check the number."), what);
  return TRUE;
}

int
stead_repo_word (SteadStmt          *stmt,
                 int                 at,
                 const char * const *words)
{
  const char *text = (const char *) sqlite3_column_text (stmt, at);

  for (int i = 0; text != NULL && words[i] != NULL; i++)
    if (strcmp (text, words[i]) == 0)
      return i;
  return 0;
}

GPtrArray *
stead_repo_rows (SteadStore      *store,
                 SteadStmt       *stmt,
                 SteadRowFunc     row,
                 GDestroyNotify   free_row,
                 GError         **error)
{
  g_autoptr(GPtrArray) rows = g_ptr_array_new_with_free_func (free_row);
  int found;

  while ((found = stead_store_step (store, stmt, error)) == 1)
    g_ptr_array_add (rows, row (stmt));
  return found == 0 ? g_steal_pointer (&rows) : NULL;
}

gpointer
stead_repo_row (SteadStore    *store,
                SteadStmt     *stmt,
                SteadRowFunc   row,
                GError       **error)
{
  int found = stead_store_step (store, stmt, error);

  if (found == 1)
    return row (stmt);
  if (found == 0)
    stead_repo_missing (error);
  return NULL;
}

GPtrArray *
stead_repo_rows_of (SteadStore      *store,
                    const char      *sql,
                    gint64           number,
                    SteadRowFunc     row,
                    GDestroyNotify   free_row,
                    GError         **error)
{
  g_autoptr(SteadStmt) stmt = stead_store_prepare (store, sql, error);

  if (stmt == NULL)
    return NULL;
  sqlite3_bind_int64 (stmt, 1, number);
  return stead_repo_rows (store, stmt, row, free_row, error);
}

gpointer
stead_repo_row_of (SteadStore    *store,
                   const char    *sql,
                   gint64         number,
                   SteadRowFunc   row,
                   GError       **error)
{
  g_autoptr(SteadStmt) stmt = stead_store_prepare (store, sql, error);

  if (stmt == NULL)
    return NULL;
  sqlite3_bind_int64 (stmt, 1, number);
  return stead_repo_row (store, stmt, row, error);
}

gboolean
stead_repo_add_ids (SteadStore  *store,
                    SteadStmt   *stmt,
                    GArray      *ids,
                    GError     **error)
{
  int found;

  while ((found = stead_store_step (store, stmt, error)) == 1)
    {
      gint64 id = sqlite3_column_int64 (stmt, 0);

      g_array_append_val (ids, id);
    }
  return found == 0;
}

GArray *
stead_repo_ids (SteadStore  *store,
                SteadStmt   *stmt,
                GError     **error)
{
  g_autoptr(GArray) ids = g_array_new (FALSE, FALSE, sizeof (gint64));

  return stead_repo_add_ids (store, stmt, ids, error) ? g_steal_pointer (&ids) : NULL;
}

GArray *
stead_repo_ids_of (SteadStore  *store,
                   const char  *sql,
                   gint64       id,
                   GError     **error)
{
  g_autoptr(SteadStmt) stmt = stead_store_prepare (store, sql, error);

  if (stmt == NULL)
    return NULL;
  sqlite3_bind_int64 (stmt, 1, id);
  return stead_repo_ids (store, stmt, error);
}

gboolean
stead_repo_number (SteadStore  *store,
                   SteadStmt   *stmt,
                   gint64       none,
                   gint64      *out,
                   GError     **error)
{
  int found = stead_store_step (store, stmt, error);

  if (found < 0)
    return FALSE;
  *out = found == 1 && sqlite3_column_type (stmt, 0) != SQLITE_NULL
         ? sqlite3_column_int64 (stmt, 0) : none;
  return TRUE;
}

/* Where the file refused to delete a row that something names, the message says what that is. */
static void
tell_who_names (SteadStore  *store,
                const char  *sql,
                gint64       id,
                GError     **error)
{
  static const char start[] = "DELETE FROM ";
  g_autofree char *table = NULL;
  g_autofree char *by = NULL;

  if (!g_str_has_prefix (sql, start) || sqlite3_extended_errcode (stead_store_get_db (store)) != SQLITE_CONSTRAINT_FOREIGNKEY)
    return;
  table = g_strndup (sql + strlen (start), strcspn (sql + strlen (start), " "));
  by = stead_still_named (store, table, id);
  if (by == NULL)
    return;
  g_clear_error (error);
  (void) stead_repo_refuse (error, _("This stands in: %s. Take it out there first."), by);
}

gboolean
stead_repo_run_id (SteadStore  *store,
                   const char  *sql,
                   gint64       id,
                   GError     **error)
{
  g_autoptr(SteadStmt) stmt = stead_store_prepare (store, sql, error);

  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, id);
  if (stead_store_run (store, stmt, error))
    return TRUE;
  tell_who_names (store, sql, id, error);
  return FALSE;
}

static gboolean
changed_one (SteadStore  *store,
             GError     **error)
{
  return sqlite3_changes (stead_store_get_db (store)) == 1 || stead_repo_missing (error);
}

gboolean
stead_repo_change_row (SteadStore  *store,
                       const char  *sql,
                       gint64       id,
                       GError     **error)
{
  return stead_repo_run_id (store, sql, id, error) && changed_one (store, error);
}

gboolean
stead_repo_run_one (SteadStore  *store,
                    SteadStmt   *stmt,
                    GError     **error)
{
  return stead_store_run (store, stmt, error) && changed_one (store, error);
}

gint64
stead_repo_count_id (SteadStore  *store,
                     const char  *sql,
                     gint64       id,
                     GError     **error)
{
  g_autoptr(SteadStmt) stmt = stead_store_prepare (store, sql, error);
  gint64 count = -1;

  if (stmt == NULL)
    return -1;
  sqlite3_bind_int64 (stmt, 1, id);
  return stead_repo_number (store, stmt, 0, &count, error) ? count : -1;
}

gboolean
stead_repo_save_row (SteadStore  *store,
                     SteadStmt   *stmt,
                     gint64      *id,
                     GError     **error)
{
  if (*id != 0)
    {
      sqlite3_bind_int64 (stmt, sqlite3_bind_parameter_count (stmt), *id);
      return stead_repo_run_one (store, stmt, error);
    }
  if (!stead_store_run (store, stmt, error))
    return FALSE;
  *id = stead_store_last_id (store);
  return TRUE;
}
