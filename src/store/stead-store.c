/* stead-store.c - one open farm and the one transaction of an action.
 *
 * Every way to write passes stead_store_begin_change() and
 * stead_store_end_change(): an action of a person, an undo, a redo.
 */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "store/stead-backup.h"
#include "store/stead-given-ids.h"
#include "store/stead-message.h"
#include "store/stead-presence.h"
#include "store/stead-store-internal.h"
#include "store/stead-store-watch.h"
#include "store/stead-undo.h"

G_DEFINE_FINAL_TYPE (SteadStore, stead_store, G_TYPE_OBJECT)

enum { CHANGED, N_SIGNALS };
static guint signals[N_SIGNALS];

static gint64
read_number (SteadStore *self,
             const char *sql,
             gint64      otherwise)
{
  gint64 number;

  return stead_connection_number (self->db, sql, &number, NULL) ? number : otherwise;
}

static void
stead_store_finalize (GObject *object)
{
  SteadStore *self = STEAD_STORE (object);

  if (self->in_action)
    stead_store_rollback (self);
  stead_backup_wait (self);
  stead_store_let_go (self);
  g_clear_pointer (&self->stmts, g_hash_table_unref);
  g_clear_pointer (&self->db, sqlite3_close);
  g_clear_pointer (&self->path, g_free);
  g_clear_pointer (&self->notice, g_free);
  G_OBJECT_CLASS (stead_store_parent_class)->finalize (object);
}

static void
stead_store_class_init (SteadStoreClass *klass)
{
  G_OBJECT_CLASS (klass)->finalize = stead_store_finalize;

  /**
   * SteadStore::changed:
   *
   * The farm is not what it was: read again what is shown.  Once a step.
   */
  signals[CHANGED] = g_signal_new ("changed", STEAD_TYPE_STORE, G_SIGNAL_RUN_LAST, 0,
                                   NULL, NULL, NULL, G_TYPE_NONE, 0);
}

static void
finalize_stmt (gpointer stmt)
{
  sqlite3_finalize (stmt);
}

static void
stead_store_init (SteadStore *self)
{
  self->today = STEAD_DAY_NONE;
  self->copy_tried_on = STEAD_DAY_NONE;
  self->stmts = g_hash_table_new_full (NULL, NULL, NULL, finalize_stmt);
}

SteadStore *
stead_store_wrap (sqlite3           *db,
                  const char        *path,
                  const SteadSchema *schema)
{
  SteadStore *self = g_object_new (STEAD_TYPE_STORE, NULL);

  self->db = db;
  self->schema = schema;
  self->path = path != NULL ? g_canonicalize_filename (path, NULL) : NULL;
  self->data_version = read_number (self, "PRAGMA data_version", 0);
  return self;
}

/* --- what it is ------------------------------------------------------------- */

const char *
stead_store_get_path (SteadStore *self)
{
  g_return_val_if_fail (STEAD_IS_STORE (self), NULL);
  return self->path;
}

gboolean
stead_store_is_read_only (SteadStore *self)
{
  g_return_val_if_fail (STEAD_IS_STORE (self), TRUE);
  return self->read_only;
}

char *
stead_store_hold (SteadStore *self)
{
  char *holder = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (self), NULL);
  if (self->path == NULL || self->read_only || self->presence != NULL)
    return NULL;
  self->presence = stead_presence_take (self->path, &holder);
  if (holder == NULL)
    return NULL;
  self->read_only = TRUE;
  sqlite3_exec (self->db, "PRAGMA query_only = ON", NULL, NULL, NULL);
  return holder;
}

void
stead_store_let_go (SteadStore *self)
{
  g_return_if_fail (STEAD_IS_STORE (self));
  g_clear_pointer (&self->presence, stead_presence_free);
}

gint64
stead_store_get_change_no (SteadStore *self)
{
  g_return_val_if_fail (STEAD_IS_STORE (self), 0);
  self->change_no = read_number (self, "SELECT number FROM change_count", self->change_no);
  return self->change_no;
}

SteadDay
stead_store_clock_day (void)
{
  g_autoptr(GDateTime) now = g_date_time_new_now_local ();
  int year, month, mday;

  g_date_time_get_ymd (now, &year, &month, &mday);
  return stead_day_new (year, month, mday);
}

SteadDay
stead_store_get_today (SteadStore *self)
{
  g_return_val_if_fail (STEAD_IS_STORE (self), STEAD_DAY_NONE);
  return self->today != STEAD_DAY_NONE ? self->today : stead_store_clock_day ();
}

SteadDay
stead_store_get_set_day (SteadStore *self)
{
  g_return_val_if_fail (STEAD_IS_STORE (self), STEAD_DAY_NONE);
  return self->today;
}

void
stead_store_set_today (SteadStore *self,
                       SteadDay    today)
{
  g_return_if_fail (STEAD_IS_STORE (self));
  self->today = today;
}

void
stead_store_allow_changes (SteadStore *self)
{
  g_return_if_fail (STEAD_IS_STORE (self));
  stead_store_end_unchecked (self);
  if (self->gave_up)   /* what could not be read in time can now */
    g_signal_emit (self, signals[CHANGED], 0);
  self->gave_up = FALSE;
}

gboolean
stead_store_in_action (SteadStore *self)
{
  g_return_val_if_fail (STEAD_IS_STORE (self), FALSE);
  return self->in_action;
}

char *
stead_store_take_notice (SteadStore *self)
{
  g_return_val_if_fail (STEAD_IS_STORE (self), NULL);
  stead_backup_settle (self);
  return g_steal_pointer (&self->notice);
}

void
stead_store_poll (SteadStore *self)
{
  gint64 version;

  g_return_if_fail (STEAD_IS_STORE (self));
  version = read_number (self, "PRAGMA data_version", self->data_version);
  if (version == self->data_version)
    return;
  self->data_version = version;
  g_signal_emit (self, signals[CHANGED], 0);
}

/* --- one change ------------------------------------------------------------- */

static gboolean
may_change (SteadStore  *self,
            GError     **error)
{
  int moved = 0;

  if (self->read_only)
    stead_message_set (NULL, SQLITE_READONLY, error);
  else if (self->damaged)
    stead_message_set (NULL, SQLITE_CORRUPT, error);
  else if (self->unchecked)
    g_set_error_literal (error, STEAD_STORE_ERROR, STEAD_STORE_ERROR_BUSY,
                         _("The farm file is still being checked. Try again in a moment."));
  else if (sqlite3_file_control (self->db, "main", SQLITE_FCNTL_HAS_MOVED, &moved) == SQLITE_OK && moved)
    stead_message_set (NULL, SQLITE_READONLY_DBMOVED, error);
  else
    return TRUE;
  return FALSE;
}

void
stead_store_drop_change (SteadStore *self)
{
  if (!sqlite3_get_autocommit (self->db))   /* a full disk may have rolled it back already */
    sqlite3_exec (self->db, "ROLLBACK", NULL, NULL, NULL);
}

/* Looked at once nobody else can write: a newer program may have brought the farm
 * up to date while it was open here. */
static gboolean
check_version (SteadStore  *self,
               GError     **error)
{
  gint64 version;

  if (!stead_connection_number (self->db, "PRAGMA user_version", &version, error))
    return FALSE;
  if (version == self->schema->version)
    return TRUE;
  g_set_error_literal (error, STEAD_STORE_ERROR, STEAD_STORE_ERROR_NEWER,
                       _("A newer version of this program changed this farm while it was open. "
                         "Close it, and bring the program up to date."));
  return FALSE;
}

gboolean
stead_store_begin_change (SteadStore  *self,
                          GError     **error)
{
  int rc;

  if (!may_change (self, error))
    return FALSE;
  stead_backup_of_day (self);
  rc = sqlite3_exec (self->db, "BEGIN IMMEDIATE", NULL, NULL, NULL);
  if (rc != SQLITE_OK)
    {
      stead_store_set_error (self, rc, error);
      return FALSE;
    }
  if (check_version (self, error))
    return TRUE;
  stead_store_drop_change (self);
  return FALSE;
}

gboolean
stead_store_end_change (SteadStore  *self,
                        GError     **error)
{
  int rc = SQLITE_IOERR;

  if (!sqlite3_get_autocommit (self->db))
    rc = sqlite3_exec (self->db, "UPDATE change_count SET number = number + 1; COMMIT", NULL, NULL, NULL);
  if (rc != SQLITE_OK)
    {
      stead_store_set_error (self, rc, error);
      stead_store_drop_change (self);
      return FALSE;
    }
  g_object_ref (self);
  g_signal_emit (self, signals[CHANGED], 0);
  g_object_unref (self);
  return TRUE;
}

/* --- an action -------------------------------------------------------------- */

static void
leave_action (SteadStore *self)
{
  g_clear_pointer (&self->session, sqlite3session_delete);
  g_clear_pointer (&self->step_name, g_free);
  self->in_action = FALSE;
  self->forgets = FALSE;
}

gboolean
stead_store_begin (SteadStore  *self,
                   const char  *name,
                   GError     **error)
{
  g_return_val_if_fail (STEAD_IS_STORE (self), FALSE);
  g_return_val_if_fail (name != NULL, FALSE);
  g_return_val_if_fail (!self->in_action, FALSE);

  if (!stead_store_begin_change (self, error))
    return FALSE;
  self->session = stead_undo_record (self, error);
  if (self->session == NULL)
    {
      stead_store_drop_change (self);
      return FALSE;
    }
  self->step_name = g_strdup (name);
  self->in_action = TRUE;
  return TRUE;
}

/* The action is over, and @kept or not. */
static gboolean
settle_ids (SteadGivenIds *ids,
            gboolean       kept)
{
  return ids != NULL ? stead_given_ids_end (ids, kept) : kept;
}

void
stead_store_rollback (SteadStore *self)
{
  g_return_if_fail (STEAD_IS_STORE (self));
  g_return_if_fail (self->in_action);
  leave_action (self);
  stead_store_drop_change (self);
  settle_ids (g_steal_pointer (&self->ids), FALSE);
}

void
stead_store_watch_id (SteadStore *self,
                      gint64     *id)
{
  g_return_if_fail (STEAD_IS_STORE (self) && id != NULL);
  g_return_if_fail (self->in_action);

  if (self->ids == NULL)
    self->ids = stead_given_ids_new (id);
  else
    stead_given_ids_add (self->ids, id);
}

/* SQLite gives a transaction up by itself when the disk is full or fails.  Whoever
 * goes on all the same must not have the rest kept. */
static gboolean
still_open (SteadStore  *self,
            GError     **error)
{
  if (!sqlite3_get_autocommit (self->db))
    return TRUE;
  stead_message_set (NULL, SQLITE_IOERR, error);
  return FALSE;
}

gboolean
stead_store_commit (SteadStore  *self,
                    GError     **error)
{
  SteadGivenIds *ids;
  gboolean changed = FALSE;

  g_return_val_if_fail (STEAD_IS_STORE (self), FALSE);
  g_return_val_if_fail (self->in_action, FALSE);

  if (!still_open (self, error) || !stead_undo_keep (self, &changed, error))
    {
      stead_store_rollback (self);
      return FALSE;
    }
  if (!changed)
    {
      stead_store_rollback (self);
      return TRUE;
    }
  leave_action (self);
  ids = g_steal_pointer (&self->ids);   /* another action may begin once this one is told of */
  return settle_ids (ids, stead_store_end_change (self, error));
}

void
stead_store_forget_steps (SteadStore *self)
{
  g_return_if_fail (STEAD_IS_STORE (self));
  g_return_if_fail (self->in_action);
  self->forgets = TRUE;
}
