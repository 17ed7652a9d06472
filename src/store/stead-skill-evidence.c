/* stead-skill-evidence.c - rows of the log that show a skill.
 *
 * Evidence names a row and does not copy it: the log stays the one place where a fact
 * stands.  A row that was deleted since is told to be gone.
 *
 * Each kind has one list of columns, read for a single row and for all of a person.  The
 * large tables are gone through by batch, water or day, never from end to end.
 */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "store/stead-skill-repo.h"
#include "store/stead-show-private.h"

static const char * const kind_words[] = {
  "batch_entry", "harvest", "weighing", "water_test", "kitchen", "checklist", "reading", "receipt", "product",
  "sale_day", "build", "work_span", "shot", NULL
};

/* id, day, name, detail, a, b, target */
#define ENTRY "SELECT e.id, e.day, b.name, b.kind, e.eggs, e.feed_kg, b.id"
#define HARVEST "SELECT h.id, h.day, b.name, b.kind, h.pieces, h.live_kg, b.id"
#define WEIGHING "SELECT g.id, g.day, b.name, b.kind, g.n, g.total_kg, b.id"
#define WATER "SELECT g.id, g.day, b.name, NULL, g.ph, g.temperature_c, b.id"
#define KITCHEN "SELECT b.id, b.started_on, b.name, NULL, k.minutes, NULL, b.id FROM kitchen k JOIN batch b ON b.id = k.batch_id"
#define CHECKLIST "SELECT c.id, c.day, c.name, NULL, NULL, NULL, c.id FROM checklist c"
#define READING \
  "SELECT r.id, coalesce (c.day, r.at / 86400), coalesce (c.name, b.name, p.name, i.name), r.kind, r.value, c.id IS NULL, coalesce (c.id, b.id, 0)" \
  " FROM reading r LEFT JOIN check_line l ON l.id = r.line_id LEFT JOIN checklist c ON c.id = l.list_id" \
  " LEFT JOIN batch b ON b.id = r.batch_id LEFT JOIN place p ON p.id = r.place_id" \
  " LEFT JOIN instrument i ON i.id = r.instrument_id"
#define RECEIPT \
  "SELECT r.id, r.day, r.supplier, NULL, (SELECT sum (cost_cents) FROM receipt_line WHERE receipt_id = r.id), NULL, r.id" \
  " FROM receipt r"
#define PRODUCT "SELECT p.id, NULL, p.name, NULL, NULL, NULL, p.id FROM product p"
#define SALE "SELECT s.id, s.day, s.name, NULL, NULL, NULL, s.id FROM sale_day s"
#define BUILD "SELECT b.id, b.begun_on, b.name, NULL, NULL, NULL, b.id FROM build b"
#define WORK "SELECT w.id, w.day, w.duty, NULL, w.minutes, NULL, w.id FROM work_span w"
#define SHOT "SELECT s.id, s.day, s.caption, NULL, NULL, NULL, s.id FROM shot s"
#define LATEST " DESC LIMIT 40"

/* ?1: the row.  ?1, ?2, ?3: person, first and last day. */
static const struct
{
  const char *one;
  const char *offer;
} queries[STEAD_N_EVIDENCE_KINDS] = {
  { ENTRY " FROM batch_entry e JOIN batch b ON b.id = e.batch_id WHERE e.id = ?1",
    ENTRY " FROM batch b CROSS JOIN batch_entry e ON e.batch_id = b.id WHERE e.day BETWEEN ?2 AND ?3"
    " AND e.person_id = ?1 ORDER BY e.day DESC, e.id" LATEST },
  { HARVEST " FROM harvest h JOIN batch b ON b.id = h.batch_id WHERE h.id = ?1",
    HARVEST " FROM batch b CROSS JOIN harvest h ON h.batch_id = b.id WHERE h.day BETWEEN ?2 AND ?3"
    " AND h.person_id = ?1 ORDER BY h.day DESC, h.id" LATEST },
  { WEIGHING " FROM weighing g JOIN batch b ON b.id = g.batch_id WHERE g.id = ?1",
    WEIGHING " FROM batch b CROSS JOIN weighing g ON g.batch_id = b.id WHERE g.day BETWEEN ?2 AND ?3"
    " AND g.person_id = ?1 ORDER BY g.day DESC, g.id" LATEST },
  { WATER " FROM water_test g JOIN water b ON b.id = g.water_id WHERE g.id = ?1",
    WATER " FROM water b CROSS JOIN water_test g ON g.water_id = b.id WHERE g.day BETWEEN ?2 AND ?3"
    " AND g.person_id = ?1 ORDER BY g.day DESC, g.id" LATEST },
  { KITCHEN " WHERE k.batch_id = ?1",
    KITCHEN " WHERE b.started_on BETWEEN ?2 AND ?3 AND k.batch_id IN (SELECT batch_id FROM batch_person"
    " WHERE person_id = ?1) ORDER BY b.started_on DESC, b.id" LATEST },
  { CHECKLIST " WHERE c.id = ?1",
    CHECKLIST " WHERE c.day BETWEEN ?2 AND ?3 AND (c.signed_by = ?1 OR EXISTS (SELECT 1 FROM check_line l"
    " JOIN reading r ON r.line_id = l.id WHERE l.list_id = c.id AND r.person_id = ?1))"
    " ORDER BY c.day DESC, c.id" LATEST },
  { READING " WHERE r.id = ?1",
    READING " WHERE r.at BETWEEN ?2 * 86400 AND ?3 * 86400 + 86399 AND r.person_id = ?1 ORDER BY r.at DESC, r.id" LATEST },
  { RECEIPT " WHERE r.id = ?1",
    RECEIPT " WHERE r.day BETWEEN ?2 AND ?3 AND r.person_id = ?1 ORDER BY r.day DESC, r.id" LATEST },
  { PRODUCT " WHERE p.id = ?1",
    PRODUCT " WHERE ?1 > 0 AND ?2 <= ?3 AND p.retired_on IS NULL ORDER BY p.name, p.id" LATEST },
  { SALE " WHERE s.id = ?1",
    SALE " WHERE s.day BETWEEN ?2 AND ?3 AND (EXISTS (SELECT 1 FROM sale_shift t WHERE t.sale_id = s.id"
    " AND t.person_id = ?1) OR EXISTS (SELECT 1 FROM work_span w WHERE w.sale_id = s.id AND w.person_id = ?1))"
    " ORDER BY s.day DESC, s.id" LATEST },
  { BUILD " WHERE b.id = ?1",
    BUILD " WHERE b.id IN (SELECT coalesce (z.build_id, w.build_id) FROM work_span w"
    " LEFT JOIN build_phase z ON z.id = w.phase_id WHERE w.person_id = ?1 AND w.day BETWEEN ?2 AND ?3) ORDER BY b.begun_on DESC, b.id" LATEST },
  { WORK " WHERE w.id = ?1",
    WORK " WHERE w.person_id = ?1 AND w.day BETWEEN ?2 AND ?3"
    " AND NOT EXISTS (SELECT 1 FROM work_span c WHERE c.corrects_id = w.id) ORDER BY w.day DESC, w.id" LATEST },
  { SHOT " WHERE s.id = ?1",
    SHOT " WHERE s.day BETWEEN ?2 AND ?3 AND s.person_id = ?1 ORDER BY s.day DESC, s.id" LATEST },
};

void
stead_evidence_free (SteadEvidence *evidence)
{
  if (evidence == NULL)
    return;
  g_free (evidence->name);
  g_free (evidence->detail);
  g_free (evidence);
}

static gpointer
evidence_from_row (SteadStmt *stmt)
{
  SteadEvidence *evidence = g_new0 (SteadEvidence, 1);

  evidence->row_id = sqlite3_column_int64 (stmt, 0);
  evidence->day = stead_stmt_day (stmt, 1);
  evidence->name = stead_stmt_text (stmt, 2);
  evidence->detail = stead_stmt_text (stmt, 3);
  evidence->a = stead_stmt_real (stmt, 4);
  evidence->b = stead_stmt_real (stmt, 5);
  evidence->target_id = sqlite3_column_int64 (stmt, 6);
  return evidence;
}

/* Fills in what the row says; one that is gone is no error. */
static SteadEvidence *
read_one (SteadStore         *store,
          SteadEvidenceKind   what,
          gint64              row_id,
          GError            **error)
{
  g_autoptr(SteadStmt) stmt = stead_store_prepare (store, queries[what].one, error);
  g_autoptr(GError) problem = NULL;
  SteadEvidence *evidence;

  if (stmt == NULL)
    return NULL;
  sqlite3_bind_int64 (stmt, 1, row_id);
  evidence = stead_repo_row (store, stmt, evidence_from_row, &problem);
  if (evidence == NULL && !g_error_matches (problem, STEAD_STORE_ERROR, STEAD_STORE_ERROR_NOT_FOUND))
    {
      g_propagate_error (error, g_steal_pointer (&problem));
      return NULL;
    }
  if (evidence == NULL)
    {
      evidence = g_new0 (SteadEvidence, 1);
      evidence->is_gone = TRUE;
      evidence->day = STEAD_DAY_NONE;
      evidence->a = evidence->b = NAN;
    }
  evidence->what = what;
  evidence->row_id = row_id;
  return evidence;
}

SteadEvidence *
stead_skill_repo_row (SteadStore         *store,
                      SteadEvidenceKind   what,
                      gint64              row_id,
                      GError            **error)
{
  g_return_val_if_fail (STEAD_IS_STORE (store) && (guint) what < STEAD_N_EVIDENCE_KINDS, NULL);
  return read_one (store, what, row_id, error);
}

static gpointer
name_from_row (SteadStmt *stmt)
{
  SteadEvidence *evidence = g_new0 (SteadEvidence, 1);

  evidence->try_id = sqlite3_column_int64 (stmt, 0);
  evidence->what = (SteadEvidenceKind) stead_repo_word (stmt, 1, kind_words);
  evidence->row_id = sqlite3_column_int64 (stmt, 2);
  return evidence;
}

GPtrArray *
stead_skill_repo_evidence (SteadStore  *store,
                           gint64       person_id,
                           GError     **error)
{
  static const char sql[] =
    "SELECT v.try_id, v.what, v.row_id FROM skill_try t JOIN skill_evidence v ON v.try_id = t.id"
    " WHERE t.person_id = ?1 ORDER BY v.try_id, v.what, v.row_id";
  g_autoptr(GPtrArray) all = g_ptr_array_new_with_free_func ((GDestroyNotify) stead_evidence_free);
  g_autoptr(GPtrArray) names = NULL;
  g_autoptr(SteadStmt) stmt = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  stmt = stead_store_prepare (store, sql, error);
  if (stmt == NULL)
    return NULL;
  sqlite3_bind_int64 (stmt, 1, person_id);
  names = stead_repo_rows (store, stmt, name_from_row, (GDestroyNotify) stead_evidence_free, error);
  for (guint i = 0; names != NULL && i < names->len; i++)
    {
      const SteadEvidence *name = names->pdata[i];
      SteadEvidence *evidence = read_one (store, name->what, name->row_id, error);

      if (evidence == NULL)
        return NULL;
      evidence->try_id = name->try_id;
      g_ptr_array_add (all, evidence);
    }
  return names != NULL ? g_steal_pointer (&all) : NULL;
}

static gboolean
check_open (SteadStore  *store,
            gint64       try_id,
            GError     **error)
{
  static const char sql[] = "SELECT 1 + (checked_on IS NOT NULL) FROM skill_try WHERE id = ?1";
  gint64 state = stead_repo_count_id (store, sql, try_id, error);

  if (state <= 0)
    return state == 0 && stead_repo_missing (error);
  return state == 1 || stead_repo_refuse (error, _("An advisor has checked this. What shows it stays as it is."));
}

static gboolean
run_evidence (SteadStore         *store,
              const char         *sql,
              gint64              try_id,
              SteadEvidenceKind   what,
              gint64              row_id,
              GError            **error)
{
  g_autoptr(SteadStmt) stmt = stead_store_prepare (store, sql, error);

  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, try_id);
  stead_stmt_bind_text (stmt, 2, kind_words[what]);
  sqlite3_bind_int64 (stmt, 3, row_id);
  return stead_store_run (store, stmt, error);
}

gboolean
stead_skill_repo_add_evidence (SteadStore         *store,
                               gint64              try_id,
                               SteadEvidenceKind   what,
                               gint64              row_id,
                               GError            **error)
{
  static const char sql[] = "INSERT OR IGNORE INTO skill_evidence (try_id, what, row_id) VALUES (?1, ?2, ?3)";
  g_autoptr(SteadEvidence) row = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store) && (guint) what < STEAD_N_EVIDENCE_KINDS, FALSE);
  g_return_val_if_fail (stead_store_in_action (store), FALSE);
  if (!check_open (store, try_id, error) || (row = read_one (store, what, row_id, error)) == NULL)
    return FALSE;
  if (row->is_gone)
    return stead_repo_missing (error);
  return run_evidence (store, sql, try_id, what, row_id, error);
}

gboolean
stead_skill_repo_drop_evidence (SteadStore         *store,
                                gint64              try_id,
                                SteadEvidenceKind   what,
                                gint64              row_id,
                                GError            **error)
{
  static const char sql[] = "DELETE FROM skill_evidence WHERE try_id = ?1 AND what = ?2 AND row_id = ?3";

  g_return_val_if_fail (STEAD_IS_STORE (store) && (guint) what < STEAD_N_EVIDENCE_KINDS, FALSE);
  g_return_val_if_fail (stead_store_in_action (store), FALSE);
  return check_open (store, try_id, error) && run_evidence (store, sql, try_id, what, row_id, error);
}

static int
compare_latest (gconstpointer one,
                gconstpointer two)
{
  const SteadEvidence *a = *(SteadEvidence * const *) one;
  const SteadEvidence *b = *(SteadEvidence * const *) two;

  if (a->day != b->day)
    return a->day > b->day ? -1 : 1;
  if (a->what != b->what)
    return a->what < b->what ? -1 : 1;
  return (a->row_id < b->row_id) - (a->row_id > b->row_id);
}

GPtrArray *
stead_skill_repo_offer (SteadStore  *store,
                        gint64       person_id,
                        SteadDay     from,
                        SteadDay     to,
                        GError     **error)
{
  g_autoptr(GPtrArray) all = g_ptr_array_new_with_free_func ((GDestroyNotify) stead_evidence_free);

  g_return_val_if_fail (STEAD_IS_STORE (store) && from <= to, NULL);
  for (int what = 0; what < STEAD_N_EVIDENCE_KINDS; what++)
    {
      g_autoptr(SteadStmt) stmt = stead_store_prepare (store, queries[what].offer, error);
      g_autoptr(GPtrArray) rows = NULL;

      if (stmt == NULL)
        return NULL;
      sqlite3_bind_int64 (stmt, 1, person_id);
      stead_stmt_bind_day (stmt, 2, from);
      stead_stmt_bind_day (stmt, 3, to);
      rows = stead_repo_rows (store, stmt, evidence_from_row, NULL, error);
      if (rows == NULL)
        return NULL;
      for (guint i = 0; i < rows->len; i++)
        ((SteadEvidence *) rows->pdata[i])->what = (SteadEvidenceKind) what;
      g_ptr_array_extend_and_steal (all, g_steal_pointer (&rows));
    }
  g_ptr_array_sort (all, compare_latest);
  return g_steal_pointer (&all);
}
