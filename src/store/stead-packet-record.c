/* stead-packet-record.c - what the farm has recorded of one person. */
#include "config.h"

#include "store/stead-packet-repo.h"
#include "store/stead-repo-private.h"

void
stead_packet_hours_free (SteadPacketHours *hours)
{
  if (hours == NULL)
    return;
  g_free (hours->duty);
  g_free (hours);
}

void
stead_packet_training_free (SteadPacketTraining *training)
{
  if (training == NULL)
    return;
  g_free (training->subject);
  g_free (training);
}

void
stead_packet_fix_free (SteadPacketFix *fix)
{
  if (fix == NULL)
    return;
  g_free (fix->note);
  g_free (fix);
}

/* @sql: a literal with person, first and last day. */
static SteadStmt *
prepare_days (SteadStore  *store,
              const char  *sql,
              gint64       person_id,
              SteadDay     from,
              SteadDay     to,
              GError     **error)
{
  SteadStmt *stmt = stead_store_prepare (store, sql, error);

  if (stmt == NULL)
    return NULL;
  sqlite3_bind_int64 (stmt, 1, person_id);
  stead_stmt_bind_day (stmt, 2, from);
  stead_stmt_bind_day (stmt, 3, to);
  return stmt;
}

static gpointer
hours_from_row (SteadStmt *stmt)
{
  SteadPacketHours *hours = g_new0 (SteadPacketHours, 1);

  hours->id = sqlite3_column_int64 (stmt, 0);
  hours->day = stead_stmt_day (stmt, 1);
  hours->minutes = sqlite3_column_double (stmt, 2);
  hours->duty = stead_stmt_text (stmt, 3);
  hours->paid = sqlite3_column_int (stmt, 4) != 0;
  hours->entered_on = stead_stmt_day (stmt, 5);
  hours->is_checked = sqlite3_column_type (stmt, 6) != SQLITE_NULL;
  hours->batch_id = sqlite3_column_int64 (stmt, 7);
  hours->sale_id = sqlite3_column_int64 (stmt, 8);
  hours->build_id = sqlite3_column_int64 (stmt, 9);
  hours->event_id = sqlite3_column_int64 (stmt, 10);
  return hours;
}

GPtrArray *
stead_packet_repo_hours (SteadStore  *store,
                         gint64       person_id,
                         SteadDay     from,
                         SteadDay     to,
                         GError     **error)
{
  static const char sql[] =
    "SELECT w.id, w.day, w.minutes, w.duty, w.paid, w.entered_on, w.checked_on, w.batch_id, w.sale_id,"
    " coalesce (z.build_id, w.build_id), w.event_id FROM work_span w LEFT JOIN build_phase z ON z.id = w.phase_id"
    " WHERE w.person_id = ?1 AND w.day BETWEEN ?2 AND ?3"
    " AND NOT EXISTS (SELECT 1 FROM work_span c WHERE c.corrects_id = w.id) ORDER BY w.day, w.id";
  g_autoptr(SteadStmt) stmt = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  stmt = prepare_days (store, sql, person_id, from, to, error);
  return stmt == NULL ? NULL
         : stead_repo_rows (store, stmt, hours_from_row, (GDestroyNotify) stead_packet_hours_free, error);
}

static gpointer
training_from_row (SteadStmt *stmt)
{
  SteadPacketTraining *training = g_new0 (SteadPacketTraining, 1);

  training->subject = stead_stmt_text (stmt, 0);
  training->given_on = stead_stmt_day (stmt, 1);
  training->until_on = stead_stmt_day (stmt, 2);
  return training;
}

GPtrArray *
stead_packet_repo_trainings (SteadStore  *store,
                             gint64       person_id,
                             GError     **error)
{
  static const char sql[] = "SELECT subject, given_on, until_on FROM training WHERE person_id = ?1"
                            " ORDER BY given_on, id";

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  return stead_repo_rows_of (store, sql, person_id, training_from_row,
                             (GDestroyNotify) stead_packet_training_free, error);
}

static gpointer
fix_from_row (SteadStmt *stmt)
{
  SteadPacketFix *fix = g_new0 (SteadPacketFix, 1);

  fix->what = (SteadFixKind) sqlite3_column_int (stmt, 0);
  fix->id = sqlite3_column_int64 (stmt, 1);
  fix->old_id = sqlite3_column_int64 (stmt, 2);
  fix->day = stead_stmt_day (stmt, 3);
  fix->before = sqlite3_column_double (stmt, 4);
  fix->after = sqlite3_column_double (stmt, 5);
  fix->note = stead_stmt_text (stmt, 6);
  return fix;
}

GPtrArray *
stead_packet_repo_fixes (SteadStore  *store,
                         gint64       person_id,
                         SteadDay     from,
                         SteadDay     to,
                         GError     **error)
{
  /* Of hours it is the worker's own; of what belongs to the farm, who put it right. */
  static const char sql[] =
    "SELECT 0 AS what, n.id AS id, o.id, o.day AS day, o.minutes, n.minutes, n.note FROM work_span o"
    " JOIN work_span n ON n.corrects_id = o.id WHERE o.person_id = ?1 AND o.day BETWEEN ?2 AND ?3"
    " UNION ALL SELECT 1, n.id, o.id, o.at / 86400, o.value, n.value, n.note FROM reading o"
    " JOIN reading n ON n.corrects_id = o.id WHERE o.at BETWEEN ?2 * 86400 AND ?3 * 86400 + 86399 AND n.person_id = ?1"
    " UNION ALL SELECT 2, n.id, o.id, o.day, (SELECT coalesce (sum (cost_cents), 0) FROM receipt_line WHERE receipt_id = o.id),"
    " (SELECT coalesce (sum (cost_cents), 0) FROM receipt_line WHERE receipt_id = n.id), n.note FROM receipt n"
    " JOIN receipt o ON o.id = n.corrects_id WHERE n.day BETWEEN ?2 AND ?3 AND n.person_id = ?1"
    " UNION ALL SELECT 3, n.id, o.id, o.day, o.cents, n.cents, n.note FROM cash_line n"
    " JOIN cash_line o ON o.id = n.corrects_id WHERE n.day BETWEEN ?2 AND ?3 AND n.person_id = ?1"
    " ORDER BY day, what, id";
  g_autoptr(SteadStmt) stmt = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  stmt = prepare_days (store, sql, person_id, from, to, error);
  return stmt == NULL ? NULL : stead_repo_rows (store, stmt, fix_from_row, (GDestroyNotify) stead_packet_fix_free, error);
}

static gpointer
id_from_row (SteadStmt *stmt)
{
  gint64 *id = g_new (gint64, 1);

  *id = sqlite3_column_int64 (stmt, 0);
  return id;
}

static GArray *
ids_of (SteadStore  *store,
        const char  *sql,
        gint64       person_id,
        SteadDay     from,
        SteadDay     to,
        GError     **error)
{
  g_autoptr(SteadStmt) stmt = prepare_days (store, sql, person_id, from, to, error);
  g_autoptr(GPtrArray) rows = stmt == NULL ? NULL : stead_repo_rows (store, stmt, id_from_row, g_free, error);
  GArray *ids;

  if (rows == NULL)
    return NULL;
  ids = g_array_new (FALSE, FALSE, sizeof (gint64));
  for (guint i = 0; i < rows->len; i++)
    g_array_append_vals (ids, rows->pdata[i], 1);
  return ids;
}

GArray *
stead_packet_repo_batches (SteadStore  *store,
                           gint64       person_id,
                           SteadDay     from,
                           SteadDay     to,
                           GError     **error)
{
  static const char sql[] =
    "SELECT b.id FROM batch b WHERE b.started_on <= ?3 AND (b.ended_on IS NULL OR b.ended_on >= ?2) AND b.id IN ("
    " SELECT batch_id FROM batch_entry WHERE person_id = ?1 AND day BETWEEN ?2 AND ?3"
    " UNION SELECT batch_id FROM batch_person WHERE person_id = ?1"
    " UNION SELECT batch_id FROM work_span WHERE person_id = ?1 AND day BETWEEN ?2 AND ?3)"
    " ORDER BY b.name, b.id";

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  return ids_of (store, sql, person_id, from, to, error);
}

GArray *
stead_packet_repo_builds (SteadStore  *store,
                          gint64       person_id,
                          SteadDay     from,
                          SteadDay     to,
                          GError     **error)
{
  static const char sql[] =
    "SELECT b.id FROM build b WHERE b.id IN (SELECT coalesce (z.build_id, w.build_id) FROM work_span w"
    " LEFT JOIN build_phase z ON z.id = w.phase_id WHERE w.person_id = ?1 AND w.day BETWEEN ?2 AND ?3)"
    " ORDER BY b.name, b.id";

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  return ids_of (store, sql, person_id, from, to, error);
}

GArray *
stead_packet_repo_sales (SteadStore  *store,
                         gint64       person_id,
                         SteadDay     from,
                         SteadDay     to,
                         GError     **error)
{
  static const char sql[] =
    "SELECT s.id FROM sale_day s WHERE s.day BETWEEN ?2 AND ?3 AND s.id IN ("
    " SELECT sale_id FROM sale_shift WHERE person_id = ?1"
    " UNION SELECT sale_id FROM work_span WHERE person_id = ?1 AND day BETWEEN ?2 AND ?3)"
    " ORDER BY s.day, s.id";

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  return ids_of (store, sql, person_id, from, to, error);
}

typedef struct
{
  char     *name;
  gboolean  agreed;
} Mate;

static gpointer
mate_from_row (SteadStmt *stmt)
{
  Mate *mate = g_new0 (Mate, 1);

  mate->name = stead_stmt_text (stmt, 0);
  mate->agreed = sqlite3_column_int (stmt, 1) != 0;
  return mate;
}

static void
mate_free (Mate *mate)
{
  g_free (mate->name);
  g_free (mate);
}

GPtrArray *
stead_packet_repo_mates (SteadStore  *store,
                         gint64       batch_id,
                         gint64       person_id,
                         int         *out_others,
                         GError     **error)
{
  static const char sql[] =
    "SELECT p.name, EXISTS (SELECT 1 FROM consent c WHERE c.person_id = p.id AND c.what = 'name' AND c.given_on <= ?3"
    " AND (c.ended_on IS NULL OR c.ended_on > ?3)) FROM person p WHERE p.id <> ?2 AND p.id IN ("
    " SELECT person_id FROM batch_person WHERE batch_id = ?1"
    " UNION SELECT person_id FROM work_span WHERE batch_id = ?1"
    " UNION SELECT person_id FROM batch_entry WHERE batch_id = ?1 AND person_id IS NOT NULL)"
    " ORDER BY p.name, p.id";
  g_autoptr(SteadStmt) stmt = NULL;
  g_autoptr(GPtrArray) rows = NULL;
  g_autoptr(GPtrArray) names = g_ptr_array_new_with_free_func (g_free);

  g_return_val_if_fail (STEAD_IS_STORE (store) && out_others != NULL, NULL);
  stmt = stead_store_prepare (store, sql, error);
  if (stmt == NULL)
    return NULL;
  sqlite3_bind_int64 (stmt, 1, batch_id);
  sqlite3_bind_int64 (stmt, 2, person_id);
  stead_stmt_bind_day (stmt, 3, stead_store_get_today (store));
  rows = stead_repo_rows (store, stmt, mate_from_row, (GDestroyNotify) mate_free, error);
  if (rows == NULL)
    return NULL;
  for (guint i = 0; i < rows->len; i++)
    {
      Mate *mate = rows->pdata[i];

      if (mate->agreed)
        g_ptr_array_add (names, g_steal_pointer (&mate->name));
    }
  *out_others = (int) rows->len;
  return g_steal_pointer (&names);
}
