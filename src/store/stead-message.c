/* stead-message.c - what an SQLite result says to the person at the screen.
 *
 * Every message says what is safe and what to do next.  The repositories check
 * facts before they write and say it better; the messages about rules of the
 * file are the net below them.
 */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "store/stead-message.h"

typedef struct
{
  int         rc;
  int         code;
  const char *text;
} Message;

/* An extended code stands before its plain one. */
static const Message messages[] = {
  { SQLITE_READONLY_DBMOVED, STEAD_STORE_ERROR_IO,
    N_("The farm file was moved, renamed or deleted while it was open. This change was not kept. "
       "Save a copy of the farm under a new name.") },
  { SQLITE_READONLY_ROLLBACK, STEAD_STORE_ERROR_READ_ONLY,
    N_("The last change to this farm was cut off, and the file cannot be written to mend it. "
       "Copy the farm and the file beside it that ends in “-journal” to a folder that you can write to.") },
  { SQLITE_BUSY, STEAD_STORE_ERROR_BUSY,
    N_("The farm is being saved in another window or program. Nothing is lost. Try again in a moment.") },
  { SQLITE_LOCKED, STEAD_STORE_ERROR_BUSY,
    N_("The farm is being saved in another window or program. Nothing is lost. Try again in a moment.") },
  { SQLITE_FULL, STEAD_STORE_ERROR_FULL,
    N_("The disk is full. This change was not kept; all before it is safe. "
       "Free some space, or save a copy of the farm in another place.") },
  { SQLITE_IOERR_NOMEM, STEAD_STORE_ERROR_IO,
    N_("The computer is out of memory. This change was not kept; all before it is safe. "
       "Close other programs and try again.") },
  { SQLITE_NOMEM, STEAD_STORE_ERROR_IO,
    N_("The computer is out of memory. This change was not kept; all before it is safe. "
       "Close other programs and try again.") },
  { SQLITE_IOERR, STEAD_STORE_ERROR_IO,
    N_("The disk failed, or it was taken away. This change was not kept; all before it is safe. "
       "Check the disk, or save a copy of the farm in another place.") },
  { SQLITE_READONLY, STEAD_STORE_ERROR_READ_ONLY,
    N_("The farm file or its folder cannot be written to. "
       "Save a copy of the farm in a folder of your own to change it there.") },
  { SQLITE_CANTOPEN, STEAD_STORE_ERROR_READ_ONLY,
    N_("The farm file cannot be opened, or its folder cannot be written to. "
       "Check that the disk is there and that you may use the folder.") },
  { SQLITE_PERM, STEAD_STORE_ERROR_READ_ONLY,
    N_("The farm file or its folder cannot be written to. "
       "Save a copy of the farm in a folder of your own to change it there.") },
  { SQLITE_CORRUPT, STEAD_STORE_ERROR_DAMAGED,
    N_("The farm file is damaged. Nothing more will be written to it. "
       "Open one of its dated copies.") },
  { SQLITE_NOTADB, STEAD_STORE_ERROR_DAMAGED,
    N_("The farm file is damaged. Nothing more will be written to it. "
       "Open one of its dated copies.") },
  { SQLITE_INTERRUPT, STEAD_STORE_ERROR_CANCELLED,
    N_("Stopped. Nothing of it was kept.") },
  { SQLITE_TOOBIG, STEAD_STORE_ERROR_INVALID,
    N_("This is too much at once for the farm file. Split it into smaller parts.") },
  { SQLITE_CONSTRAINT_FOREIGNKEY, STEAD_STORE_ERROR_INVALID,
    N_("Something else in the farm still uses this, or what it names is gone. "
       "Take it out there first.") },
  { SQLITE_CONSTRAINT_NOTNULL, STEAD_STORE_ERROR_INVALID,
    N_("Something that is needed was left empty. Fill it in and save again.") },
  { SQLITE_CONSTRAINT_UNIQUE, STEAD_STORE_ERROR_INVALID,
    N_("There is already one like this. Change it so that it differs, or edit the one that is there.") },
  { SQLITE_CONSTRAINT_PRIMARYKEY, STEAD_STORE_ERROR_INVALID,
    N_("There is already one like this. Change it so that it differs, or edit the one that is there.") },
  { SQLITE_CONSTRAINT_DATATYPE, STEAD_STORE_ERROR_IO,
    N_("A value cannot be kept as it is: it is too long, or the computer is out of memory. "
       "This change was not kept.") },
  { SQLITE_CONSTRAINT, STEAD_STORE_ERROR_INVALID,
    N_("A value is outside of what the farm can hold. Check the numbers and the dates.") },
};

/* Rules that the schema names itself, by the text that SQLite gives back. */
static const Message rules[] = {
  { 0, STEAD_STORE_ERROR_INVALID,
    N_("A lot would hold less than nothing. Check the amount, or enter the receipt that is missing.") },
  { 0, STEAD_STORE_ERROR_SIGNED,
    N_("This is signed, so it stays as it is. Enter a correction beside it.") },
  { 0, STEAD_STORE_ERROR_INVALID,
    N_("That name is already taken. Choose another.") },
  { 0, STEAD_STORE_ERROR_SIGNED,
    N_("The books are closed for that day, so it stays as it is. "
       "Enter a correction with a day after the closing.") },
  { 0, STEAD_STORE_ERROR_INVALID,
    N_("A reading of this did not meet its limit, so it is held. "
       "Settle it in Check first: say what was done, or throw it away.") },
};

static const Message *
find_rule (sqlite3 *db)
{
  const char *said = sqlite3_errmsg (db);

  if (g_str_equal (said, "lot below zero"))
    return &rules[0];
  if (g_str_equal (said, "signed"))
    return &rules[1];
  if (g_str_equal (said, "closed"))
    return &rules[3];
  if (g_str_equal (said, "held"))
    return &rules[4];
  if (g_str_has_prefix (said, "UNIQUE") && g_str_has_suffix (said, ".name"))
    return &rules[2];
  return NULL;
}

static const Message *
find_message (int rc)
{
  for (gsize i = 0; i < G_N_ELEMENTS (messages); i++)
    if (messages[i].rc == rc || messages[i].rc == (rc & 0xff))
      return &messages[i];
  return NULL;
}

void
stead_message_set (sqlite3  *db,
                   int       rc,
                   GError  **error)
{
  const Message *message = NULL;

  g_return_if_fail (rc != SQLITE_OK);
  if (db != NULL && (rc & 0xff) == SQLITE_CONSTRAINT)
    message = find_rule (db);
  if (message == NULL)
    message = find_message (rc);
  if (message != NULL)
    g_set_error_literal (error, STEAD_STORE_ERROR, message->code, _(message->text));
  else
    g_set_error (error, STEAD_STORE_ERROR, STEAD_STORE_ERROR_IO,
                 _("The farm file could not be used (%s). This change was not kept."),
                 db != NULL ? sqlite3_errmsg (db) : sqlite3_errstr (rc));
}

gboolean
stead_message_refuse (GError          **error,
                      SteadStoreError   code,
                      const char       *text)
{
  g_set_error_literal (error, STEAD_STORE_ERROR, code, text);
  return FALSE;
}
