#include "config.h"

#include <dlfcn.h>
#include <execinfo.h>
#include <sqlite3.h>
#include <stdio.h>
#include <sys/mman.h>
#include <sys/wait.h>
#include <unistd.h>

#include "stumble.h"

/* So many calls up from the statement tell one place from another. */
#define DEEP 4

#define N_PLACES (1 << 16)   /* far more than there are */

/* What may be missing without a word: the number of the last change, for which the last one
 * known stands; whether somebody else wrote, which is asked again; and where a mark of a
 * packet leads, without which it leads nowhere. */
static const char * const spared[] = {
  "PRAGMA data_version",
  "SELECT number FROM change_count",
  "SELECT lot_id FROM movement WHERE id = ?1",
  "SELECT batch_id FROM fish_move WHERE id = ?1",
  NULL
};

/* Of a way of calls each of which is a place of its own: as many as there may be. */
#define LONG_WAY 48

static int armed_rc;
static gboolean has_failed;
static gboolean by_fork;      /* what fails, fails in a child that is made there */
static guint n_forks;
static guint64 *places;       /* those that failed, N_PLACES at most; shared with children */
static sqlite3_stmt *failed_stmt;   /* says so once more when it is reset, as a true one does */
static sqlite3 *failed_db;          /* so does its connection, until the next success */

static void *calls[DEEP + 3];   /* of the last place */
static int n_calls;
static GThread *owner;          /* copies are made in another thread, which is let be */
static __thread int inside;     /* SQLite itself prepares and steps, for its own ends */

static guint64
place_here (void)
{
  guint64 place = 14695981039346656037u;   /* FNV-1a */

  n_calls = backtrace (calls, G_N_ELEMENTS (calls));
  /* From 2 on: before that are this function and fails(). */
  for (int i = 2; i < n_calls; i++)
    place = (place ^ (guint64) GPOINTER_TO_SIZE (calls[i])) * 1099511628211u;
  return place;
}

static void
make_places (void)
{
  if (places == NULL)
    places = mmap (NULL, N_PLACES * sizeof *places, PROT_READ | PROT_WRITE, MAP_SHARED | MAP_ANONYMOUS, -1, 0);
  g_assert_true (places != MAP_FAILED);
}

/* Whether the place was not there before. */
static gboolean
add_place (guint64 place)
{
  for (gsize at = place % N_PLACES;; at = (at + 1) % N_PLACES)
    if (places[at] == place)
      return FALSE;
    else if (places[at] == 0)
      {
        places[at] = place;
        return TRUE;
      }
}

static gboolean fails_in_child (gconstpointer caller);

/* @n_bytes: of @sql, which then has no end of its own; below 0: it has */
static gboolean
is_spared (const char *sql,
           int         n_bytes)
{
  g_autofree char *whole = n_bytes < 0 ? g_strdup (sql) : g_strndup (sql, (gsize) n_bytes);

  return g_strv_contains (spared, whole);
}

static gboolean
fails (const char    *sql,
       int            n_bytes,
       gconstpointer  caller)
{
  if (armed_rc == 0 || has_failed || inside > 0 || g_thread_self () != owner
      || (sql != NULL && is_spared (sql, n_bytes)))
    return FALSE;
  return has_failed = by_fork ? fails_in_child (caller) : add_place (place_here ());
}

void
stumble_arm (int rc)
{
  make_places ();
  has_failed = FALSE;
  failed_stmt = NULL;
  failed_db = NULL;
  owner = g_thread_self ();
  armed_rc = rc;
}

gboolean
stumble_disarm (void)
{
  armed_rc = 0;
  return has_failed;
}

gboolean
stumble_check (const char   *what,
               gboolean      worked,
               const GError *error)
{
  if (!stumble_disarm ())
    return FALSE;
  if (!worked && error != NULL && error->message[0] != '\0')
    return TRUE;
  backtrace_symbols_fd (calls, n_calls, STDERR_FILENO);
  g_test_message ("%s: the file failed, and that was %s", what, worked ? "not told" : "told without a word");
  g_test_fail ();
  return TRUE;
}

/* --- apart --------------------------------------------------------------------------------- */

enum { TOLD, NOT_TOLD };

#ifdef STEAD_COVERAGE
extern void __gcov_dump (void);   /* what a child covered counts too */
#else
#define __gcov_dump()
#endif

static void G_GNUC_NORETURN
leave (const char   *what,
       gboolean      worked,
       const GError *error)
{
  int said = !worked && error != NULL && error->message[0] != '\0' ? TOLD : NOT_TOLD;

  stumble_disarm ();
  if (said == NOT_TOLD)
    {
      backtrace_symbols_fd (calls, n_calls, STDERR_FILENO);
      g_printerr ("%s: the file failed, and that was not told\n", what);
    }
  __gcov_dump ();
  _exit (said);
}

/* Each call on the way here is a place: all of them are told of the failure. */
static gboolean
is_new_way (void)
{
  void *way[LONG_WAY];
  int n = backtrace (way, G_N_ELEMENTS (way));
  gboolean is_new = FALSE;

  for (int i = 0; i < n; i++)
    is_new |= add_place ((guint64) GPOINTER_TO_SIZE (way[i]));
  return is_new;
}

/* From __executable_start to etext are the program and our libraries, which it holds. */
extern const char __executable_start, etext;

/* SQLite calls these for its own ends too, with locks held that a child could not take. */
static gboolean
is_ours (gconstpointer caller)
{
  return (const char *) caller >= &__executable_start && (const char *) caller < &etext;
}

/* Whether this is the child, in which the place fails; the parent waits, and goes on. */
static gboolean
fails_in_child (gconstpointer caller)
{
  pid_t child;
  int status;

  if (!is_ours (caller) || !is_new_way ())
    return FALSE;
  n_calls = backtrace (calls, G_N_ELEMENTS (calls));
  fflush (NULL);
  child = fork ();
  g_assert_cmpint (child, >=, 0);
  if (child == 0)
    return TRUE;
  n_forks++;
  g_assert_cmpint (waitpid (child, &status, 0), ==, child);
  if (!WIFEXITED (status) || WEXITSTATUS (status) != TOLD)
    g_test_fail ();
  return FALSE;
}

void
stumble_fork (int rc)
{
  by_fork = TRUE;
  n_forks = 0;
  stumble_arm (rc);
}

guint
stumble_join (const char   *what,
              gboolean      worked,
              const GError *error)
{
  if (has_failed)   /* in the child */
    leave (what, worked, error);
  stumble_disarm ();
  by_fork = FALSE;
  return n_forks;
}

/* --- the linker takes these before those of the library ------------------------------- */

#define TRUE_ONE(name) ((typeof (&name)) dlsym (RTLD_NEXT, #name))

int
sqlite3_step (sqlite3_stmt *stmt)
{
  static typeof (&sqlite3_step) true_step;
  int rc;

  if (true_step == NULL)
    true_step = TRUE_ONE (sqlite3_step);
  if (!fails (sqlite3_sql (stmt), -1, __builtin_return_address (0)))
    {
      inside++;
      rc = true_step (stmt);
      inside--;
      return rc;
    }
  failed_stmt = stmt;
  failed_db = sqlite3_db_handle (stmt);
  return armed_rc;
}

/* Holds a lock while it prepares and steps, which a child could not take: so it fails as a whole. */
int
sqlite3_exec (sqlite3     *db,
              const char  *sql,
              int        (*row) (void *, int, char **, char **),
              void        *data,
              char       **out_message)
{
  static typeof (&sqlite3_exec) true_exec;
  int rc;

  if (true_exec == NULL)
    true_exec = TRUE_ONE (sqlite3_exec);
  if (!by_fork)
    return true_exec (db, sql, row, data, out_message);
  if (fails (sql, -1, __builtin_return_address (0)))
    {
      failed_db = db;
      return armed_rc;
    }
  inside++;
  rc = true_exec (db, sql, row, data, out_message);
  inside--;
  return rc;
}

int
sqlite3_reset (sqlite3_stmt *stmt)
{
  static typeof (&sqlite3_reset) true_reset;
  int rc;

  if (true_reset == NULL)
    true_reset = TRUE_ONE (sqlite3_reset);
  rc = true_reset (stmt);
  if (stmt == NULL || stmt != failed_stmt)
    return rc;
  failed_stmt = NULL;
  return armed_rc != 0 ? armed_rc : rc;
}

int
sqlite3_errcode (sqlite3 *db)
{
  static typeof (&sqlite3_errcode) true_errcode;

  if (true_errcode == NULL)
    true_errcode = TRUE_ONE (sqlite3_errcode);
  return db == failed_db && has_failed && armed_rc != 0 ? armed_rc : true_errcode (db);
}

int
sqlite3_prepare_v2 (sqlite3       *db,
                    const char    *sql,
                    int            n_bytes,
                    sqlite3_stmt **out_stmt,
                    const char   **out_tail)
{
  static typeof (&sqlite3_prepare_v2) true_prepare;
  int rc;

  if (true_prepare == NULL)
    true_prepare = TRUE_ONE (sqlite3_prepare_v2);
  if (!fails (sql, n_bytes, __builtin_return_address (0)))
    {
      inside++;
      rc = true_prepare (db, sql, n_bytes, out_stmt, out_tail);
      inside--;
      return rc;
    }
  *out_stmt = NULL;
  failed_db = db;
  return armed_rc;
}

int
sqlite3_prepare_v3 (sqlite3       *db,
                    const char    *sql,
                    int            n_bytes,
                    unsigned       flags,
                    sqlite3_stmt **out_stmt,
                    const char   **out_tail)
{
  static typeof (&sqlite3_prepare_v3) true_prepare;
  int rc;

  if (true_prepare == NULL)
    true_prepare = TRUE_ONE (sqlite3_prepare_v3);
  if (!fails (sql, n_bytes, __builtin_return_address (0)))
    {
      inside++;
      rc = true_prepare (db, sql, n_bytes, flags, out_stmt, out_tail);
      inside--;
      return rc;
    }
  *out_stmt = NULL;
  failed_db = db;
  return armed_rc;
}
