#include "config.h"

#include <dlfcn.h>
#include <execinfo.h>
#include <sqlite3.h>
#include <unistd.h>

#include "stumble.h"

/* So many calls up from the statement tell one place from another. */
#define DEEP 4

#define N_PLACES (1 << 16)   /* far more than there are */

/* What may be missing without a word: the number of the last change, for which the last one
 * known stands, and where a mark of a packet leads, without which it leads nowhere. */
static const char * const spared[] = {
  "SELECT number FROM change_count",
  "SELECT lot_id FROM movement WHERE id = ?1",
  "SELECT batch_id FROM fish_move WHERE id = ?1",
  NULL
};

static int armed_rc;
static gboolean has_failed;
static guint64 *places;       /* those that failed, N_PLACES at most */
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

static gboolean
fails (const char *sql)
{
  guint64 place;

  if (armed_rc == 0 || has_failed || inside > 0 || g_thread_self () != owner
      || (sql != NULL && g_strv_contains (spared, sql)))
    return FALSE;
  place = place_here ();
  for (gsize at = place % N_PLACES;; at = (at + 1) % N_PLACES)
    if (places[at] == place)
      return FALSE;
    else if (places[at] == 0)
      {
        places[at] = place;
        return has_failed = TRUE;
      }
}

void
stumble_arm (int rc)
{
  if (places == NULL)
    places = g_new0 (guint64, N_PLACES);
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

/* --- the linker takes these before those of the library ------------------------------- */

#define TRUE_ONE(name) ((typeof (&name)) dlsym (RTLD_NEXT, #name))

int
sqlite3_step (sqlite3_stmt *stmt)
{
  static typeof (&sqlite3_step) true_step;
  int rc;

  if (true_step == NULL)
    true_step = TRUE_ONE (sqlite3_step);
  if (!fails (sqlite3_sql (stmt)))
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
  if (!fails (sql))
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
  if (!fails (sql))
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
