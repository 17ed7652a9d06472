/* stead-undo.c - the steps that a person took, kept in the file.
 *
 * Invariants:
 *  1. A step is a changeset of the session extension; undoing it applies the
 *     inverse, redoing it the changeset itself, in one transaction, all or nothing.
 *  2. Only rows that still are as the step left them are touched.  A row that
 *     differs, is gone, or would be taken along by a cascade stops the whole.
 *  3. A step is read by stead_changeset_check() first: the farm may come from a
 *     stranger, and recorded tables are all that a step may touch.
 *  4. The newest step not undone is the one to undo; the oldest undone step is
 *     the one to redo; a new step drops what was undone.
 */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "store/stead-changeset.h"
#include "store/stead-message.h"
#include "store/stead-undo.h"

/* --- recording -------------------------------------------------------------- */

sqlite3_session *
stead_undo_record (SteadStore  *self,
                   GError     **error)
{
  sqlite3_session *session = NULL;
  int rc = sqlite3session_create (self->db, "main", &session);

  for (gsize i = 0; rc == SQLITE_OK && stead_schema_undo_tables[i] != NULL; i++)
    rc = sqlite3session_attach (session, stead_schema_undo_tables[i]);
  if (rc == SQLITE_OK)
    return session;
  stead_message_set (NULL, rc, error);
  g_clear_pointer (&session, sqlite3session_delete);
  return NULL;
}

static gboolean
insert_step (SteadStore   *self,
             const void   *changeset,
             int           size,
             GError      **error)
{
  g_autoptr(SteadStmt) stmt =
    stead_store_prepare (self, "INSERT INTO step (name, made_at, changeset) VALUES (?1, ?2, ?3)", error);
  int rc;

  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_text (stmt, 1, self->step_name, -1, SQLITE_STATIC);
  sqlite3_bind_int64 (stmt, 2, g_get_real_time () / G_USEC_PER_SEC);
  rc = sqlite3_bind_blob (stmt, 3, changeset, size, SQLITE_STATIC);
  if (rc == SQLITE_OK)
    return stead_store_run (self, stmt, error);
  stead_message_set (NULL, rc, error);   /* longer than a value may be */
  return FALSE;
}

static gboolean
drop_old_steps (SteadStore  *self,
                GError     **error)
{
  g_autoptr(SteadStmt) stmt =
    stead_store_prepare (self,
                         "DELETE FROM step WHERE undone = 1 OR id <="
                         " (SELECT id FROM step WHERE undone = 0 ORDER BY id DESC LIMIT 1 OFFSET ?1)",
                         error);

  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int (stmt, 1, STEAD_UNDO_STEPS - 1);   /* one place for the step to come */
  return stead_store_run (self, stmt, error);
}

static gboolean
drop_all_steps (SteadStore  *self,
                GError     **error)
{
  g_autoptr(SteadStmt) stmt = stead_store_prepare (self, "DELETE FROM step", error);

  return stmt != NULL && stead_store_run (self, stmt, error);
}

gboolean
stead_undo_keep (SteadStore  *self,
                 gboolean    *out_changed,
                 GError     **error)
{
  void *changeset = NULL;
  int size = 0;
  int rc = sqlite3session_changeset (self->session, &size, &changeset);
  gboolean kept;

  if (rc != SQLITE_OK)
    {
      stead_message_set (NULL, rc, error);
      return FALSE;
    }
  *out_changed = size > 0 || self->forgets;
  if (self->forgets)
    kept = drop_all_steps (self, error);
  else if (size > 0)
    kept = drop_old_steps (self, error) && insert_step (self, changeset, size, error);
  else
    kept = TRUE;
  sqlite3_free (changeset);
  return kept;
}

/* --- which step comes next -------------------------------------------------- */

static const char next_undo[] =
  "SELECT id, name, changeset FROM step WHERE undone = 0 ORDER BY id DESC LIMIT 1";
static const char next_redo[] =
  "SELECT id, name, changeset FROM step WHERE undone = 1 ORDER BY id LIMIT 1";

static char *
name_of_next (SteadStore *self,
              const char *sql)
{
  g_autoptr(SteadStmt) stmt = stead_store_prepare (self, sql, NULL);

  if (stmt == NULL || stead_store_step (self, stmt, NULL) != 1)
    return NULL;
  return stead_stmt_text (stmt, 1);
}

char *
stead_store_get_undo_name (SteadStore *self)
{
  g_return_val_if_fail (STEAD_IS_STORE (self), NULL);
  return name_of_next (self, next_undo);
}

char *
stead_store_get_redo_name (SteadStore *self)
{
  g_return_val_if_fail (STEAD_IS_STORE (self), NULL);
  return name_of_next (self, next_redo);
}

/* --- applying a step -------------------------------------------------------- */

typedef struct
{
  SteadStore *self;
  gboolean    is_signed;
  gboolean    is_changed;   /* a row is not as the step left it, or would go along */
} Applying;

static int
conflict_cb (gpointer                 data,
             int                      kind,
             sqlite3_changeset_iter  *iter)
{
  Applying *applying = data;

  if (kind == SQLITE_CHANGESET_CONSTRAINT && g_str_equal (sqlite3_errmsg (applying->self->db), "signed"))
    applying->is_signed = TRUE;
  else
    applying->is_changed = TRUE;
  return SQLITE_CHANGESET_ABORT;
}

/* A row that goes or changes by a cascade is one that the step does not know of:
 * its own rows were taken one by one before (see stead_schema_undo_tables). */
static void
preupdate_cb (gpointer      data,
              sqlite3      *db,
              int           op,
              const char   *schema,
              const char   *table,
              sqlite3_int64 old_rowid,
              sqlite3_int64 new_rowid)
{
  Applying *applying = data;

  if (sqlite3_preupdate_depth (db) > 0 && g_strv_contains (stead_schema_undo_tables, table))
    applying->is_changed = TRUE;
}

static gboolean
refuse_step (const Applying  *applying,
             int              rc,
             GError         **error)
{
  if (applying->is_signed)
    g_set_error_literal (error, STEAD_STORE_ERROR, STEAD_STORE_ERROR_SIGNED,
                         _("This step touches something that is signed, so it stays. Enter a correction beside it."));
  else if (applying->is_changed)
    g_set_error_literal (error, STEAD_STORE_ERROR, STEAD_STORE_ERROR_INVALID,
                         _("What this step changed has changed again since, so the step stays as it is."));
  else
    stead_store_set_error (applying->self, rc, error);
  return FALSE;
}

static gboolean
apply (SteadStore   *self,
       void         *changeset,
       int           size,
       gboolean      undo,
       GError      **error)
{
  Applying applying = { .self = self };
  int rc;

  if (!stead_changeset_check (self->db, changeset, (gsize) size, error))
    return FALSE;
  sqlite3_preupdate_hook (self->db, preupdate_cb, &applying);
  rc = sqlite3changeset_apply_v2 (self->db, size, changeset, NULL, conflict_cb, &applying, NULL, NULL,
                                  undo ? SQLITE_CHANGESETAPPLY_INVERT : 0);
  sqlite3_preupdate_hook (self->db, NULL, NULL);
  if (rc != SQLITE_OK || applying.is_changed)
    return refuse_step (&applying, rc, error);
  return TRUE;
}

static gboolean
mark_step (SteadStore  *self,
           gint64       id,
           gboolean     undone,
           GError     **error)
{
  g_autoptr(SteadStmt) stmt = stead_store_prepare (self, "UPDATE step SET undone = ?2 WHERE id = ?1", error);

  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, id);
  sqlite3_bind_int (stmt, 2, undone);
  return stead_store_run (self, stmt, error);
}

static gboolean
take_step (SteadStore  *self,
           gboolean     undo,
           GError     **error)
{
  g_autoptr(SteadStmt) stmt = stead_store_prepare (self, undo ? next_undo : next_redo, error);
  g_autofree void *changeset = NULL;
  gint64 id;
  int size, got;

  if (stmt == NULL)
    return FALSE;
  got = stead_store_step (self, stmt, error);
  if (got == 0)
    g_set_error_literal (error, STEAD_STORE_ERROR, STEAD_STORE_ERROR_NOT_FOUND,
                         undo ? _("There is nothing to undo.") : _("There is nothing to redo."));
  if (got != 1)
    return FALSE;
  id = sqlite3_column_int64 (stmt, 0);
  size = sqlite3_column_bytes (stmt, 2);
  changeset = g_memdup2 (sqlite3_column_blob (stmt, 2), (gsize) size);
  sqlite3_reset (stmt);
  return apply (self, changeset, size, undo, error) &&
         mark_step (self, id, undo, error);
}

static gboolean
move (SteadStore  *self,
      gboolean     undo,
      GError     **error)
{
  if (!stead_store_begin_change (self, error))
    return FALSE;
  if (take_step (self, undo, error))
    return stead_store_end_change (self, error);
  stead_store_drop_change (self);
  return FALSE;
}

gboolean
stead_store_undo (SteadStore  *self,
                  GError     **error)
{
  g_return_val_if_fail (STEAD_IS_STORE (self), FALSE);
  g_return_val_if_fail (!self->in_action, FALSE);
  return move (self, TRUE, error);
}

gboolean
stead_store_redo (SteadStore  *self,
                  GError     **error)
{
  g_return_val_if_fail (STEAD_IS_STORE (self), FALSE);
  g_return_val_if_fail (!self->in_action, FALSE);
  return move (self, FALSE, error);
}
