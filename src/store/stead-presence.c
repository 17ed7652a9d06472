/* stead-presence.c - who has a farm open: a mark beside the file.
 *
 * Invariants:
 *  1. The lock is the truth, the text says only whose it is.  On a disk that knows no
 *     locks the text is believed: of this computer while its program runs, of another
 *     for half a day.
 *  2. The lock belongs to the open mark (an "open file description" lock), so two
 *     windows of one program meet it, too; and it is on the mark, never on the farm,
 *     whose locks are SQLite's.
 */
#define _GNU_SOURCE 1   /* F_OFD_SETLK */
#include "config.h"

#include <errno.h>
#include <fcntl.h>
#include <glib/gi18n-lib.h>
#include <glib/gstdio.h>
#include <signal.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

#include "store/stead-presence.h"

#define LONGEST_MARK 1000
#define LONGEST_WORD 60
#define BELIEVED_S (12 * 60 * 60)
#define MOST_TRIES 10

struct _SteadPresence
{
  char *path;
  int   fd;
};

/* What a mark says. */
typedef struct
{
  char   *user, *host;
  gint64  pid, since;
} Mark;

static void
mark_clear (Mark *mark)
{
  g_free (mark->user);
  g_free (mark->host);
}
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Mark, mark_clear)

/* One farm has one mark, under whatever name it is opened. */
char *
stead_presence_path (const char *path)
{
  g_autofree char *whole = g_canonicalize_filename (path, NULL);
  char *real = realpath (whole, NULL);
  g_autofree char *folder = g_path_get_dirname (real != NULL ? real : whole);
  g_autofree char *name = g_path_get_basename (real != NULL ? real : whole);
  g_autofree char *hidden = g_strdup_printf (".%s.in-use", name);

  free (real);
  return g_build_filename (folder, hidden, NULL);
}

/* --- the text --------------------------------------------------------------------- */

/* Whatever stands there is a word to be shown, or nothing. */
static char *
tidy_word (const char *word)
{
  g_autofree char *valid = g_utf8_make_valid (word, -1);
  char *shown = g_utf8_substring (valid, 0, MIN (g_utf8_strlen (valid, -1), LONGEST_WORD));

  return g_strstrip (g_strdelimit (shown, "\t\r\v\f", ' '));
}

static gboolean
read_mark (int   fd,
           Mark *out)
{
  char text[LONGEST_MARK + 1];
  ssize_t length = pread (fd, text, LONGEST_MARK, 0);
  g_auto(GStrv) lines = NULL;

  if (length <= 0)
    return FALSE;
  text[length] = '\0';
  lines = g_strsplit (text, "\n", 5);
  if (g_strv_length (lines) < 4)
    return FALSE;
  out->user = tidy_word (lines[0]);
  out->host = tidy_word (lines[1]);
  out->pid = g_ascii_strtoll (lines[2], NULL, 10);
  out->since = g_ascii_strtoll (lines[3], NULL, 10);
  return TRUE;
}

static void
write_mark (int fd)
{
  g_autofree char *text = g_strdup_printf ("%s\n%s\n%ld\n%" G_GINT64_FORMAT "\n", g_get_user_name (), g_get_host_name (),
                                           (long) getpid (), g_get_real_time () / G_USEC_PER_SEC);

  /* A mark without its text still holds its lock. */
  if (ftruncate (fd, 0) != 0 || pwrite (fd, text, strlen (text), 0) < 0)
    g_debug ("the mark of the farm cannot be written: %s", g_strerror (errno));
}

static char *
hour_of (gint64 since)
{
  g_autoptr(GDateTime) then = g_date_time_new_from_unix_local (since);
  g_autoptr(GDateTime) now = g_date_time_new_now_local ();

  if (then == NULL)
    return g_strdup ("?");
  if (g_date_time_get_day_of_year (then) == g_date_time_get_day_of_year (now) &&
      g_date_time_get_year (then) == g_date_time_get_year (now))
    return g_date_time_format (then, "%H:%M");
  return g_date_time_format (then, "%Y-%m-%d, %H:%M");
}

static char *
tell (const Mark *mark)
{
  g_autofree char *hour = mark->since > 0 ? hour_of (mark->since) : g_strdup ("?");

  if (mark->user == NULL)
    return g_strdup (_("Another program has this farm open. You can look at it here. "
                       "To make changes here, close it there first, then open it again."));
  if (mark->pid == getpid () && g_str_equal (mark->host, g_get_host_name ()))
    return g_strdup_printf (/* Translators: %s is an hour, perhaps with a day. */
                            _("You opened this farm in another window at %s. You can look at it here. "
                              "To make changes here, close it there first, then open it again."), hour);
  return g_strdup_printf (/* Translators: a person's login, the name of a computer, an hour, perhaps with a day. */
                          _("%s opened this farm on the computer “%s” at %s and still has it open. You can look at it here. "
                            "To make changes here, close it there first, then open it again."),
                          mark->user, mark->host, hour);
}

/* --- the lock ---------------------------------------------------------------------- */

typedef enum { OURS, THEIRS, UNKNOWN } Lock;

static Lock
lock (int fd)
{
  struct flock wish = { .l_type = F_WRLCK, .l_whence = SEEK_SET };

  if (fcntl (fd, F_OFD_SETLK, &wish) == 0)
    return OURS;
  return errno == EAGAIN || errno == EACCES ? THEIRS : UNKNOWN;
}

/* On a disk that knows no locks. */
static gboolean
is_believed (const Mark *mark)
{
  gint64 now = g_get_real_time () / G_USEC_PER_SEC;

  if (mark->user == NULL)
    return FALSE;
  if (g_str_equal (mark->host, g_get_host_name ()))
    return mark->pid > 0 && mark->pid <= G_MAXINT32 && (kill ((pid_t) mark->pid, 0) == 0 || errno == EPERM);
  return mark->since <= now + 60 && now - mark->since < BELIEVED_S;
}

/* Between opening the mark and locking it, its holder may have taken it away. */
static gboolean
is_there (int         fd,
          const char *path)
{
  struct stat open_one, named_one;

  return fstat (fd, &open_one) == 0 && stat (path, &named_one) == 0 &&
         open_one.st_dev == named_one.st_dev && open_one.st_ino == named_one.st_ino;
}

static SteadPresence *
presence_new (const char *path,
              int         fd)
{
  SteadPresence *self = g_new0 (SteadPresence, 1);

  write_mark (fd);
  self->path = g_strdup (path);
  self->fd = fd;
  return self;
}

SteadPresence *
stead_presence_take (const char  *path,
                     char       **out_holder)
{
  g_autofree char *mark_path = NULL;

  g_return_val_if_fail (path != NULL && out_holder != NULL, NULL);
  *out_holder = NULL;
  mark_path = stead_presence_path (path);
  for (int i = 0; i < MOST_TRIES; i++)
    {
      int fd = g_open (mark_path, O_RDWR | O_CREAT | O_CLOEXEC | O_NOFOLLOW, 0666);
      g_auto(Mark) mark = { 0 };
      Lock got;

      if (fd < 0)
        return NULL;
      got = lock (fd);
      if (got != OURS)
        read_mark (fd, &mark);
      if (got == THEIRS || (got == UNKNOWN && is_believed (&mark)))
        {
          *out_holder = tell (&mark);
          close (fd);
          return NULL;
        }
      if (is_there (fd, mark_path))
        return presence_new (mark_path, fd);
      close (fd);
    }
  return NULL;
}

void
stead_presence_free (SteadPresence *presence)
{
  g_return_if_fail (presence != NULL);
  if (is_there (presence->fd, presence->path))
    g_unlink (presence->path);
  close (presence->fd);
  g_free (presence->path);
  g_free (presence);
}
