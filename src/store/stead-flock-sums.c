/* stead-flock-sums.c - sums over the log of one flock.
 *
 * All read a range of the index batch_entry_day and no row of the table.  A hen
 * that dies on a day does not count on it.
 */
#include "config.h"

#include "store/stead-flock-private.h"

/* Hens that died or were taken out before @day. */
static gint64
lost_before (SteadStore  *store,
             gint64       flock_id,
             SteadDay     day,
             GError     **error)
{
  static const char sql[] = "SELECT sum (deaths + culled) FROM batch_entry"
                            " WHERE batch_id = ?1 AND day < ?2 AND deaths + culled > 0";
  g_autoptr(SteadStmt) stmt = stead_store_prepare (store, sql, error);
  gint64 lost = -1;

  if (stmt == NULL)
    return -1;
  sqlite3_bind_int64 (stmt, 1, flock_id);
  sqlite3_bind_int (stmt, 2, day);
  return stead_repo_number (store, stmt, 0, &lost, error) ? lost : -1;
}

gint64
stead_flock_repo_alive (SteadStore  *store,
                        gint64       flock_id,
                        SteadDay     day,
                        GError     **error)
{
  static const char sql[] = "SELECT birds FROM flock WHERE batch_id = ?1";
  gint64 birds, lost;

  g_return_val_if_fail (STEAD_IS_STORE (store), -1);
  birds = stead_repo_count_id (store, sql, flock_id, error);
  lost = birds >= 0 ? lost_before (store, flock_id, day, error) : -1;
  return lost >= 0 ? birds - lost : -1;
}

gint64
stead_flock_repo_eggs (SteadStore  *store,
                       gint64       flock_id,
                       SteadDay     from,
                       SteadDay     to,
                       GError     **error)
{
  static const char sql[] = "SELECT sum (eggs) FROM batch_entry WHERE batch_id = ?1 AND day BETWEEN ?2 AND ?3";
  g_autoptr(SteadStmt) stmt = NULL;
  gint64 eggs = -1;

  g_return_val_if_fail (STEAD_IS_STORE (store), -1);
  stmt = stead_store_prepare (store, sql, error);
  if (stmt == NULL)
    return -1;
  sqlite3_bind_int64 (stmt, 1, flock_id);
  sqlite3_bind_int (stmt, 2, from);
  sqlite3_bind_int (stmt, 3, to);
  return stead_repo_number (store, stmt, 0, &eggs, error) ? eggs : -1;
}

/* --- the log day by day --------------------------------------------------------- */

typedef struct
{
  SteadDay day;
  gint64   eggs;
  gint64   cracked;
  gint64   lost;
  double   feed_kg;
  gint64   alive;      /* those that count on the day */
  gboolean has_eggs;
  gboolean has_feed;
  gboolean left_out;
} LogDay;

typedef void (*LogDayFunc) (const LogDay *day, gpointer data);

static void
read_day (SteadStmt *stmt,
          LogDay    *day)
{
  day->day = stead_stmt_day (stmt, 0);
  day->eggs = sqlite3_column_int64 (stmt, 1);
  day->cracked = sqlite3_column_int64 (stmt, 2);
  day->lost = sqlite3_column_int64 (stmt, 3);
  day->feed_kg = sqlite3_column_double (stmt, 4);
  day->has_eggs = sqlite3_column_int64 (stmt, 5) > 0;
  day->has_feed = sqlite3_column_int64 (stmt, 6) > 0;
  day->left_out = sqlite3_column_int (stmt, 7) != 0;
}

/* Calls @each for every day that has an entry, in order. */
static gboolean
walk_days (SteadStore  *store,
           gint64       flock_id,
           SteadDay     from,
           SteadDay     to,
           LogDayFunc   each,
           gpointer     data,
           GError     **error)
{
  static const char sql[] =
    "SELECT day, sum (eggs), sum (cracked), sum (deaths + culled), sum (feed_kg), count (eggs), count (feed_kg),"
    " max (left_out) FROM batch_entry WHERE batch_id = ?1 AND day BETWEEN ?2 AND ?3 GROUP BY day ORDER BY day";
  gint64 alive = stead_flock_repo_alive (store, flock_id, from, error);
  g_autoptr(SteadStmt) stmt = alive >= 0 ? stead_store_prepare (store, sql, error) : NULL;
  int found;

  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, flock_id);
  sqlite3_bind_int (stmt, 2, from);
  sqlite3_bind_int (stmt, 3, to);
  while ((found = stead_store_step (store, stmt, error)) == 1)
    {
      LogDay day;

      read_day (stmt, &day);
      alive -= day.lost;
      day.alive = alive;
      each (&day, data);
    }
  return found == 0;
}

static void
add_to_totals (const LogDay *day,
               gpointer      data)
{
  SteadFlockTotals *totals = data;

  totals->eggs += day->eggs;
  totals->cracked += day->cracked;
  totals->deaths += day->lost;
  totals->feed_kg += day->feed_kg;
  if (day->has_eggs)
    {
      totals->days_logged++;
      totals->hen_days += (double) day->alive;
    }
  if (day->has_feed)
    totals->fed_hen_days += (double) day->alive;
}

/**
 * stead_flock_repo_totals:
 * @out: deaths are all that died or were taken out
 *
 * Returns: %TRUE, or %FALSE with @error and @out left alone
 */
gboolean
stead_flock_repo_totals (SteadStore        *store,
                         gint64             flock_id,
                         SteadDay           from,
                         SteadDay           to,
                         SteadFlockTotals  *out,
                         GError           **error)
{
  SteadFlockTotals totals = { 0 };

  g_return_val_if_fail (STEAD_IS_STORE (store) && out != NULL, FALSE);
  if (!walk_days (store, flock_id, from, to, add_to_totals, &totals, error))
    return FALSE;
  *out = totals;
  return TRUE;
}

typedef struct
{
  GArray         *weeks;
  SteadDay        housed_on;
  SteadDay        hatched_on;
  SteadFlockSpan *spans;
  int             n_spans;
} WeekSums;

/* The week that @day lies in; a new one at the end if need be. */
static SteadLayWeek *
week_of (WeekSums *sums,
         SteadDay  day)
{
  SteadDay first = sums->housed_on + (day - sums->housed_on) / 7 * 7;
  SteadLayWeek week = { .first_day = first,
                        .age_weeks = stead_age_weeks (sums->hatched_on, first) + 0.5 };

  if (sums->weeks->len == 0 ||
      g_array_index (sums->weeks, SteadLayWeek, sums->weeks->len - 1).first_day != first)
    g_array_append_val (sums->weeks, week);
  return &g_array_index (sums->weeks, SteadLayWeek, sums->weeks->len - 1);
}

static void
add_to_weeks (const LogDay *day,
              gpointer      data)
{
  WeekSums *sums = data;
  SteadLayWeek *week = week_of (sums, day->day);

  for (int i = 0; i < sums->n_spans; i++)
    if (day->day >= sums->spans[i].from && day->day <= sums->spans[i].to)
      add_to_totals (day, &sums->spans[i].totals);
  week->eggs += day->eggs;
  week->cracked += day->cracked;
  week->deaths += day->lost;
  week->feed_kg += day->feed_kg;
  week->left_out |= day->left_out;
  if (day->has_eggs)
    {
      week->days_logged++;
      week->hen_days += (double) day->alive;
    }
}

/**
 * stead_flock_repo_weeks:
 *
 * Seven-day weeks from the day of housing; a week without an entry is not
 * there, and one that the span cuts holds the days inside it.  A week is left
 * out when an entry in it is.
 *
 * Returns: (transfer full) (element-type SteadLayWeek): or %NULL with @error
 */
GArray *
stead_flock_repo_weeks (SteadStore  *store,
                        gint64       flock_id,
                        SteadDay     from,
                        SteadDay     to,
                        GError     **error)
{
  return stead_flock_repo_weeks_and_spans (store, flock_id, from, to, NULL, 0, error);
}

GArray *
stead_flock_repo_weeks_and_spans (SteadStore      *store,
                                  gint64           flock_id,
                                  SteadDay         from,
                                  SteadDay         to,
                                  SteadFlockSpan  *spans,
                                  int              n_spans,
                                  GError         **error)
{
  g_autoptr(SteadFlock) flock = NULL;
  g_autoptr(GArray) weeks = g_array_new (FALSE, TRUE, sizeof (SteadLayWeek));
  g_autofree SteadFlockSpan *filled = NULL;
  WeekSums sums;

  g_return_val_if_fail (STEAD_IS_STORE (store) && (n_spans == 0 || spans != NULL), NULL);
  flock = stead_flock_repo_get (store, flock_id, error);
  if (flock == NULL)
    return NULL;
  filled = g_new0 (SteadFlockSpan, n_spans);
  for (int i = 0; i < n_spans; i++)
    filled[i] = (SteadFlockSpan) { .from = spans[i].from, .to = spans[i].to };
  sums = (WeekSums) { weeks, flock->housed_on, flock->hatched_on, filled, n_spans };
  if (!walk_days (store, flock_id, from, to, add_to_weeks, &sums, error))
    return NULL;
  for (int i = 0; i < n_spans; i++)
    spans[i] = filled[i];
  return g_steal_pointer (&weeks);
}

/* --- the last day with … ---------------------------------------------------------- */

static SteadDay
last_day (SteadStore  *store,
          const char  *sql,
          gint64       flock_id,
          GError     **error)
{
  g_autoptr(SteadStmt) stmt = stead_store_prepare (store, sql, error);
  gint64 day = STEAD_DAY_NONE;

  if (stmt == NULL)
    return STEAD_DAY_NONE;
  sqlite3_bind_int64 (stmt, 1, flock_id);
  return stead_repo_number (store, stmt, STEAD_DAY_NONE, &day, error) ? (SteadDay) day : STEAD_DAY_NONE;
}

SteadDay
stead_flock_repo_last_eggs (SteadStore  *store,
                            gint64       flock_id,
                            GError     **error)
{
  static const char sql[] = "SELECT day FROM batch_entry WHERE batch_id = ?1 AND eggs IS NOT NULL"
                            " ORDER BY day DESC LIMIT 1";

  g_return_val_if_fail (STEAD_IS_STORE (store), STEAD_DAY_NONE);
  return last_day (store, sql, flock_id, error);
}

SteadDay
stead_flock_repo_last_feed (SteadStore  *store,
                            gint64       flock_id,
                            GError     **error)
{
  static const char sql[] = "SELECT day FROM batch_entry WHERE batch_id = ?1 AND feed_kg > 0"
                            " ORDER BY day DESC LIMIT 1";

  g_return_val_if_fail (STEAD_IS_STORE (store), STEAD_DAY_NONE);
  return last_day (store, sql, flock_id, error);
}

/* From the bedding's side: a flock has a movement for each day's feed, but few of bedding. */
SteadDay
stead_flock_repo_last_bedding (SteadStore  *store,
                               gint64       flock_id,
                               GError     **error)
{
  static const char sql[] = "SELECT max (m.day) FROM item i CROSS JOIN lot l ON l.item_id = i.id"
                            " CROSS JOIN movement m ON m.lot_id = l.id"
                            " WHERE i.kind = 'bedding' AND m.kind = 'used' AND m.batch_id = ?1";

  g_return_val_if_fail (STEAD_IS_STORE (store), STEAD_DAY_NONE);
  return last_day (store, sql, flock_id, error);
}
