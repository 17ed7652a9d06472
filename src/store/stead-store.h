/* stead-store.h - one farm, one file: opening, changing, undoing, copying, checking.
 *
 * Invariants:
 *  1. What a person did is one transaction and one undo step; it has a name.
 *  2. A failed change leaves the file as it was before the change began.
 *  3. A file that is no farm, newer, damaged or locked is refused with its own
 *     message, and not one byte of it is changed.
 *  4. What is signed is never rewritten, not by undo either.
 *  5. One SteadStore is one connection and lives in one thread.  A worker opens
 *     its own on the same path.
 */
#pragma once

#include <gio/gio.h>

#include "core/stead-calendar.h"

G_BEGIN_DECLS

#define STEAD_TYPE_STORE (stead_store_get_type ())
G_DECLARE_FINAL_TYPE (SteadStore, stead_store, STEAD, STORE, GObject)

/* Signal "changed" (no arguments): after each commit, undo, redo, and when
 * stead_store_poll() saw that another connection wrote.  Emitted once a step. */

typedef enum
{
  STEAD_STORE_OPEN_DEFAULT = 0,
  STEAD_STORE_OPEN_READ_ONLY = 1 << 0,
  /* Leave the quick check to stead_store_check_file() in a worker: until
   * stead_store_allow_changes() every change is refused with BUSY. */
  STEAD_STORE_OPEN_DEFER_CHECK = 1 << 1,
} SteadStoreOpenFlags;

/**
 * stead_store_create:
 * @path: a file that does not exist yet; its folder does
 * @farm_name: what the farm is called, not empty
 * @error: return location for a #GError in %STEAD_STORE_ERROR
 *
 * Returns: (transfer full): the new farm, open for changes, or %NULL; then no file is left
 */
SteadStore *stead_store_create (const char  *path,
                                const char  *farm_name,
                                GError     **error) G_GNUC_WARN_UNUSED_RESULT;

/**
 * stead_store_create_memory:
 *
 * As stead_store_create(), in memory only: for tests and for trying things out.
 */
SteadStore *stead_store_create_memory (const char  *farm_name,
                                       GError     **error) G_GNUC_WARN_UNUSED_RESULT;

/**
 * stead_store_open:
 * @path: an existing file
 * @flags: how
 * @error: return location for a #GError in %STEAD_STORE_ERROR
 *
 * An older farm is copied beside itself ("NAME before version N.steading") and
 * brought to this program's schema in one transaction.  A file that cannot be
 * written is opened for reading; see stead_store_is_read_only().
 *
 * Returns: (transfer full): the farm, or %NULL with a message for the person
 */
SteadStore *stead_store_open (const char           *path,
                              SteadStoreOpenFlags   flags,
                              GError              **error) G_GNUC_WARN_UNUSED_RESULT;

/**
 * stead_store_check_file:
 *
 * The quick check on a connection of its own; may run in any thread.
 * Returns: %TRUE if the file is whole
 */
gboolean stead_store_check_file (const char    *path,
                                 GCancellable  *cancellable,
                                 GError       **error) G_GNUC_WARN_UNUSED_RESULT;

void         stead_store_allow_changes (SteadStore *self);
/* Returns: (nullable): the path; NULL in memory */
const char  *stead_store_get_path      (SteadStore *self);
gboolean     stead_store_is_read_only  (SteadStore *self);
/**
 * stead_store_hold:
 *
 * Marks the farm as open here, until stead_store_let_go() or the end of @self.  If
 * somebody else has it, @self can only be read from now on.  In memory there is
 * nothing to mark.
 *
 * Returns: (transfer full) (nullable): who has it, a sentence for the person; %NULL if
 *   nobody else has
 */
char        *stead_store_hold          (SteadStore *self) G_GNUC_WARN_UNUSED_RESULT;
void         stead_store_let_go        (SteadStore *self);
/* Returns: a number that grows with each change; papers print it */
gint64       stead_store_get_change_no (SteadStore *self);

/**
 * stead_store_get_today:
 *
 * Returns: the present day in the person's time zone, or the day set by
 *   stead_store_set_today() (tests, demo farm, documents made for another day)
 */
SteadDay stead_store_get_today   (SteadStore *self);
/* Returns: the day that was set, or %STEAD_DAY_NONE while the clock is asked */
SteadDay stead_store_get_set_day (SteadStore *self);
void     stead_store_set_today   (SteadStore *self,
                                  SteadDay    today);

/**
 * stead_store_begin:
 * @name: what the person does, as the menu will say after "Undo: ", translated
 *
 * Opens the one transaction of an action (BEGIN IMMEDIATE) and starts recording
 * for undo.  On the first change of a day a dated copy is made first; that the
 * copy failed does not stop the change but is told by stead_store_take_notice().
 * The repositories' writing functions may only be called between begin and commit.
 *
 * Returns: %TRUE, or %FALSE (read-only, busy, full) with nothing begun
 */
gboolean stead_store_begin (SteadStore  *self,
                            const char  *name,
                            GError     **error) G_GNUC_WARN_UNUSED_RESULT;

/**
 * stead_store_commit:
 *
 * Ends the action.  If it changed nothing, no step is kept.
 * Returns: %TRUE, or %FALSE with everything rolled back
 */
gboolean stead_store_commit (SteadStore  *self,
                             GError     **error) G_GNUC_WARN_UNUSED_RESULT;

/* Gives the action up; the file is as before stead_store_begin(). */
void stead_store_rollback (SteadStore *self);

/* Returns: (transfer full) (nullable): name of the step that undo (redo) would take */
char *stead_store_get_undo_name (SteadStore *self) G_GNUC_WARN_UNUSED_RESULT;
char *stead_store_get_redo_name (SteadStore *self) G_GNUC_WARN_UNUSED_RESULT;

/* The steps are kept in the file: undo works after closing, and after a crash.
 * The last 200 steps are kept.  Both refuse, naming the reason, when a signed
 * row or a later change from elsewhere stands in the way. */
gboolean stead_store_undo (SteadStore  *self,
                           GError     **error) G_GNUC_WARN_UNUSED_RESULT;
gboolean stead_store_redo (SteadStore  *self,
                           GError     **error) G_GNUC_WARN_UNUSED_RESULT;

/* Looks whether another connection wrote; emits "changed" if so.  Cheap. */
void stead_store_poll (SteadStore *self);

/* Returns: (transfer full) (nullable): something that went wrong beside the last
 * change without stopping it (a copy that could not be made), told once */
char *stead_store_take_notice (SteadStore *self) G_GNUC_WARN_UNUSED_RESULT;

/* --- dated copies ---------------------------------------------------------- */

typedef struct
{
  char     *path;
  SteadDay  day;
  gboolean  monthly;  /* kept as the copy of its month */
} SteadBackup;

void stead_backup_free (SteadBackup *backup);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadBackup, stead_backup_free)

/* The folder "NAME.copies" beside the farm. */
char      *stead_store_backup_folder (const char *path) G_GNUC_WARN_UNUSED_RESULT;
/* Returns: (transfer full) (element-type SteadBackup): newest first; empty if none */
GPtrArray *stead_store_list_backups  (const char *path) G_GNUC_WARN_UNUSED_RESULT;

/**
 * stead_store_restore:
 * @backup_path: a dated copy
 * @path: the farm that it replaces; must not be open in this process
 *
 * Checks the copy, keeps the present file beside it as "NAME before DATE.steading"
 * (DATE: the day of restoring), then puts the copy in place in one rename.
 */
gboolean stead_store_restore (const char  *backup_path,
                              const char  *path,
                              GError     **error) G_GNUC_WARN_UNUSED_RESULT;

/* A copy of the open farm under another name, through the backup API. */
gboolean stead_store_save_copy (SteadStore    *self,
                                const char    *path,
                                GCancellable  *cancellable,
                                GError       **error) G_GNUC_WARN_UNUSED_RESULT;

/**
 * stead_store_verify:
 * @path: a farm file
 *
 * integrity_check, foreign_key_check, lots never below zero, receipts that sum
 * to their lots, movements that sum to what was put in, the seals of signed rows.
 *
 * Returns: (transfer full) (element-type utf8): what is wrong, a sentence each,
 *   empty if sound; %NULL with @error if the file is no farm at all
 */
GPtrArray *stead_store_verify (const char    *path,
                               GCancellable  *cancellable,
                               GError       **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
