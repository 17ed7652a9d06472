/* stead-class-repo.c - what of each person the log holds, counted in one go. */
#include "config.h"

#include "store/stead-people-repo.h"
#include "store/stead-repo-private.h"

void
stead_class_sums_free (SteadClassSums *sums)
{
  if (sums == NULL)
    return;
  g_free (sums->groups);
  g_free (sums);
}

static gpointer
sums_from_row (SteadStmt *stmt)
{
  SteadClassSums *sums = g_new0 (SteadClassSums, 1);

  sums->person_id = sqlite3_column_int64 (stmt, 0);
  sums->minutes = sqlite3_column_int64 (stmt, 1);
  sums->n_late = sqlite3_column_int (stmt, 2);
  sums->n_unchecked = sqlite3_column_int (stmt, 3);
  sums->n_receipts_bare = sqlite3_column_int (stmt, 4);
  sums->n_skills = sqlite3_column_int (stmt, 5);
  sums->n_trainings_over = sqlite3_column_int (stmt, 6);
  sums->groups = stead_stmt_text (stmt, 7);
  return sums;
}

/* Entries of the period are grouped once, not looked up for each person. */
GPtrArray *
stead_class_repo_sums (SteadStore  *store,
                       SteadDay     from,
                       SteadDay     to,
                       int          late_days,
                       GError     **error)
{
  static const char sql[] =
    "SELECT p.id, CAST (round (coalesce (s.minutes, 0)) AS INTEGER), coalesce (s.late, 0), coalesce (s.bare, 0),"
    " (SELECT count (*) FROM receipt r WHERE r.person_id = p.id AND r.day BETWEEN ?1 AND ?2 AND r.reference IS NULL"
    "  AND NOT EXISTS (SELECT 1 FROM receipt_picture x WHERE x.receipt_id = r.id)),"
    " (SELECT count (DISTINCT y.skill_id) FROM skill_try y WHERE y.person_id = p.id AND y.level >= 3),"
    " (SELECT count (*) FROM training v WHERE v.person_id = p.id AND v.until_on < ?2 AND NOT EXISTS"
    "  (SELECT 1 FROM training n WHERE n.person_id = v.person_id AND n.subject = v.subject AND n.given_on > v.given_on)),"
    " (SELECT group_concat (g.name, ', ') FROM group_member b JOIN person_group g ON g.id = b.group_id"
    "  WHERE b.person_id = p.id)"
    " FROM person p LEFT JOIN (SELECT w.person_id, sum (w.minutes) AS minutes,"
    "   sum (w.entered_on - w.day > ?3) AS late, sum (w.checked_on IS NULL) AS bare FROM work_span w"
    "   WHERE w.day BETWEEN ?1 AND ?2 AND NOT EXISTS (SELECT 1 FROM work_span c WHERE c.corrects_id = w.id)"
    "   GROUP BY w.person_id) s ON s.person_id = p.id"
    " WHERE p.left_on IS NULL OR p.left_on > ?2 ORDER BY p.id";
  g_autoptr(SteadStmt) stmt = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  stmt = stead_store_prepare (store, sql, error);
  if (stmt == NULL)
    return NULL;
  sqlite3_bind_int (stmt, 1, from);
  sqlite3_bind_int (stmt, 2, to);
  sqlite3_bind_int (stmt, 3, late_days);
  return stead_repo_rows (store, stmt, sums_from_row, (GDestroyNotify) stead_class_sums_free, error);
}

gint64
stead_class_repo_skills (SteadStore  *store,
                         GError     **error)
{
  static const char sql[] = "SELECT count (*) FROM skill WHERE retired_on IS NULL";
  g_autoptr(SteadStmt) stmt = NULL;
  gint64 n = 0;

  g_return_val_if_fail (STEAD_IS_STORE (store), -1);
  stmt = stead_store_prepare (store, sql, error);
  return stmt != NULL && stead_repo_number (store, stmt, 0, &n, error) ? n : -1;
}

void
stead_person_minutes_free (SteadPersonMinutes *minutes)
{
  if (minutes == NULL)
    return;
  g_free (minutes->name);
  g_free (minutes);
}

static gpointer
minutes_from_row (SteadStmt *stmt)
{
  static const char * const roles[] = { "student", "advisor", "helper", NULL };
  SteadPersonMinutes *minutes = g_new0 (SteadPersonMinutes, 1);

  minutes->person_id = sqlite3_column_int64 (stmt, 0);
  minutes->name = stead_stmt_text (stmt, 1);
  minutes->role = (SteadPersonRole) stead_repo_word (stmt, 2, roles);
  minutes->minutes = sqlite3_column_int64 (stmt, 3);
  minutes->unpaid_min = sqlite3_column_int64 (stmt, 4);
  return minutes;
}

GPtrArray *
stead_class_repo_minutes (SteadStore  *store,
                          SteadDay     from,
                          SteadDay     to,
                          gint64       enterprise_id,
                          GError     **error)
{
  static const char sql[] =
    "SELECT p.id, p.name, p.role, CAST (round (s.minutes) AS INTEGER), CAST (round (s.unpaid) AS INTEGER)"
    " FROM (SELECT w.person_id, sum (w.minutes) AS minutes, sum (w.minutes * (1 - w.paid)) AS unpaid FROM work_span w"
    "  WHERE w.day BETWEEN ?1 AND ?2 AND NOT EXISTS (SELECT 1 FROM work_span c WHERE c.corrects_id = w.id)"
    "  AND (?3 = 0 OR w.batch_id IN (SELECT id FROM batch WHERE enterprise_id = ?3)) GROUP BY w.person_id) s"
    " JOIN person p ON p.id = s.person_id ORDER BY p.name, p.id";
  g_autoptr(SteadStmt) stmt = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  stmt = stead_store_prepare (store, sql, error);
  if (stmt == NULL)
    return NULL;
  sqlite3_bind_int (stmt, 1, from);
  sqlite3_bind_int (stmt, 2, to);
  sqlite3_bind_int64 (stmt, 3, enterprise_id);
  return stead_repo_rows (store, stmt, minutes_from_row, (GDestroyNotify) stead_person_minutes_free, error);
}

GArray *
stead_class_repo_batches (SteadStore  *store,
                          SteadDay     from,
                          SteadDay     to,
                          gint64       enterprise_id,
                          GError     **error)
{
  static const char sql[] =
    "SELECT id FROM batch WHERE started_on <= ?2 AND (ended_on IS NULL OR ended_on >= ?1) AND kind <> 'kitchen'"
    " AND (?3 = 0 OR enterprise_id = ?3) ORDER BY started_on, id";
  g_autoptr(SteadStmt) stmt = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  stmt = stead_store_prepare (store, sql, error);
  if (stmt == NULL)
    return NULL;
  sqlite3_bind_int (stmt, 1, from);
  sqlite3_bind_int (stmt, 2, to);
  sqlite3_bind_int64 (stmt, 3, enterprise_id);
  return stead_repo_ids (store, stmt, error);
}

/* --- shares ----------------------------------------------------------------- */

static const char * const bases[] = { "hours", "role", "fixed", NULL };

void
stead_share_rule_free (SteadShareRule *rule)
{
  if (rule == NULL)
    return;
  g_clear_pointer (&rule->parts, g_array_unref);
  g_free (rule);
}

static gboolean
read_parts (SteadStore      *store,
            SteadShareRule  *rule,
            GError         **error)
{
  static const char sql[] = "SELECT person_id, weight FROM share_part WHERE rule_id = ?1 ORDER BY person_id";
  g_autoptr(SteadStmt) stmt = stead_store_prepare (store, sql, error);
  int rc;

  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, rule->id);
  while ((rc = sqlite3_step (stmt)) == SQLITE_ROW)
    {
      SteadSharePart part = { sqlite3_column_int64 (stmt, 0), sqlite3_column_double (stmt, 1) };

      g_array_append_val (rule->parts, part);
    }
  if (rc != SQLITE_DONE)
    stead_store_set_error (store, rc, error);
  return rc == SQLITE_DONE;
}

/* Without a rule the shares go by hours. */
SteadShareRule *
stead_share_repo_get (SteadStore  *store,
                      gint64       enterprise_id,
                      SteadDay     day,
                      GError     **error)
{
  static const char sql[] = "SELECT id, from_on, basis, agreed_by FROM share_rule"
                            " WHERE coalesce (enterprise_id, 0) = ?1 AND from_on <= ?2 ORDER BY from_on DESC, id DESC LIMIT 1";
  g_autoptr(SteadShareRule) rule = NULL;
  g_autoptr(SteadStmt) stmt = NULL;
  int rc;

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  stmt = stead_store_prepare (store, sql, error);
  if (stmt == NULL)
    return NULL;
  rule = g_new0 (SteadShareRule, 1);
  rule->enterprise_id = enterprise_id;
  rule->from_on = STEAD_DAY_NONE;
  rule->parts = g_array_new (FALSE, FALSE, sizeof (SteadSharePart));
  sqlite3_bind_int64 (stmt, 1, enterprise_id);
  sqlite3_bind_int (stmt, 2, day);
  rc = sqlite3_step (stmt);
  if (rc == SQLITE_DONE)
    return g_steal_pointer (&rule);
  if (rc != SQLITE_ROW)
    {
      stead_store_set_error (store, rc, error);
      return NULL;
    }
  rule->id = sqlite3_column_int64 (stmt, 0);
  rule->from_on = stead_stmt_day (stmt, 1);
  rule->basis = (SteadShareBasis) stead_repo_word (stmt, 2, bases);
  rule->agreed_by = sqlite3_column_int64 (stmt, 3);
  return read_parts (store, rule, error) ? g_steal_pointer (&rule) : NULL;
}

static gboolean
write_parts (SteadStore            *store,
             const SteadShareRule  *rule,
             GError               **error)
{
  for (guint i = 0; i < rule->parts->len; i++)
    {
      const SteadSharePart *part = &g_array_index (rule->parts, SteadSharePart, i);
      g_autoptr(SteadStmt) stmt = stead_store_prepare (store, "INSERT INTO share_part (rule_id, person_id, weight)"
                                                              " VALUES (?1, ?2, ?3)", error);

      if (stmt == NULL)
        return FALSE;
      sqlite3_bind_int64 (stmt, 1, rule->id);
      sqlite3_bind_int64 (stmt, 2, part->person_id);
      sqlite3_bind_double (stmt, 3, part->weight);
      if (!stead_store_run (store, stmt, error))
        return FALSE;
    }
  return TRUE;
}

gboolean
stead_share_repo_add (SteadStore      *store,
                      SteadShareRule  *rule,
                      GError         **error)
{
  static const char sql[] = "INSERT INTO share_rule (enterprise_id, from_on, basis, agreed_by) VALUES (?1, ?2, ?3, ?4)";
  g_autoptr(SteadStmt) stmt = NULL;
  SteadGivenIds *ids;

  g_return_val_if_fail (STEAD_IS_STORE (store) && rule != NULL && rule->id == 0, FALSE);
  g_return_val_if_fail (stead_store_in_action (store), FALSE);
  stmt = stead_store_prepare (store, sql, error);
  if (stmt == NULL)
    return FALSE;
  stead_stmt_bind_id (stmt, 1, rule->enterprise_id);
  stead_stmt_bind_day (stmt, 2, rule->from_on);
  stead_stmt_bind_text (stmt, 3, bases[rule->basis]);
  stead_stmt_bind_id (stmt, 4, rule->agreed_by);
  if (!stead_store_run (store, stmt, error))
    return FALSE;
  ids = stead_given_ids_new (&rule->id);
  rule->id = stead_store_last_id (store);
  return stead_given_ids_end (ids, write_parts (store, rule, error));
}
