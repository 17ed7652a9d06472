/* stead-seal.c - what is signed carries a sum over its facts and the seal before it.
 *
 * A structure check does not notice a changed number, and a trigger does not
 * stop a damaged disk.  The chain of seals shows both, and a signed receipt
 * that is missing from the middle.  A person is sealed by id: replacing the
 * name by a role breaks nothing.
 *
 * The text that is summed is part of the file format: never edit it.
 */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "store/stead-connection.h"
#include "store/stead-message.h"
#include "store/stead-seal.h"

/* Each value with its type and length, so that no two rows give the same text.
 * Returns: %FALSE without memory */
static gboolean
append_value (GString      *text,
              sqlite3_stmt *stmt,
              int           at)
{
  char number[G_ASCII_DTOSTR_BUF_SIZE];
  const char *value;

  switch (sqlite3_column_type (stmt, at))
    {
    case SQLITE_NULL:
      g_string_append (text, "n;");
      break;
    case SQLITE_INTEGER:
      g_string_append_printf (text, "i%" G_GINT64_FORMAT ";", (gint64) sqlite3_column_int64 (stmt, at));
      break;
    case SQLITE_FLOAT:
      g_string_append_printf (text, "r%s;",
                              g_ascii_formatd (number, sizeof number, "%.17g", sqlite3_column_double (stmt, at)));
      break;
    default:
      value = (const char *) sqlite3_column_text (stmt, at);
      if (value == NULL)
        return FALSE;
      g_string_append_printf (text, "t%d:%s;", sqlite3_column_bytes (stmt, at), value);
    }
  return TRUE;
}

/* @upto: the second parameter, where there is one. */
static gboolean
append_rows (GString     *text,
             sqlite3     *db,
             const char  *sql,
             gint64       id,
             gint64       upto,
             int         *out_rows,
             GError     **error)
{
  g_autoptr(sqlite3_stmt) stmt = NULL;
  int rows = 0;
  int rc = sqlite3_prepare_v2 (db, sql, -1, &stmt, NULL);

  if (rc == SQLITE_OK)
    rc = sqlite3_bind_int64 (stmt, 1, id);
  if (rc == SQLITE_OK && sqlite3_bind_parameter_count (stmt) > 1)
    rc = sqlite3_bind_int64 (stmt, 2, upto);
  while (rc == SQLITE_OK && (rc = sqlite3_step (stmt)) == SQLITE_ROW)
    {
      rows++;
      rc = SQLITE_OK;
      for (int i = 0; i < sqlite3_column_count (stmt); i++)
        if (!append_value (text, stmt, i))
          rc = SQLITE_NOMEM;
      g_string_append_c (text, '\n');
    }
  *out_rows = rows;
  if (rc == SQLITE_DONE)
    return TRUE;
  stead_message_set (db, rc, error);
  return FALSE;
}

char *
stead_seal_compute (sqlite3     *db,
                    gint64       receipt_id,
                    gint64       seal_no,
                    const char  *previous,
                    gint64       advisor_id,
                    SteadDay     day,
                    GError     **error)
{
  g_autoptr(GString) text = g_string_new (NULL);
  int rows;

  g_string_append_printf (text, "receipt %" G_GINT64_FORMAT " after %s by %" G_GINT64_FORMAT " on %d\n",
                          seal_no, previous != NULL ? previous : "nothing", advisor_id, day);
  if (!append_rows (text, db,
                    "SELECT id, day, supplier, is_gift, reference, note, person_id, corrects_id"
                    " FROM receipt WHERE id = ?1", receipt_id, 0, &rows, error))
    return NULL;
  if (rows == 0)
    {
      g_set_error_literal (error, STEAD_STORE_ERROR, STEAD_STORE_ERROR_NOT_FOUND,
                           _("This receipt is no longer there."));
      return NULL;
    }
  if (!append_rows (text, db,
                    "SELECT id, item_id, quantity_base, cost_cents FROM receipt_line"
                    " WHERE receipt_id = ?1 ORDER BY id", receipt_id, 0, &rows, error))
    return NULL;
  return g_compute_checksum_for_string (G_CHECKSUM_SHA256, text->str, (gssize) text->len);
}

/* @sql: the number and the seal of the last one signed of its kind */
static gboolean
last_seal (SteadStore  *store,
           const char  *sql,
           gint64      *out_no,
           char       **out_seal,
           GError     **error)
{
  g_autoptr(SteadStmt) stmt = stead_store_prepare (store, sql, error);
  int got;

  if (stmt == NULL)
    return FALSE;
  got = stead_store_step (store, stmt, error);
  if (got < 0)
    return FALSE;
  *out_no = got == 1 ? sqlite3_column_int64 (stmt, 0) : 0;
  *out_seal = got == 1 ? stead_stmt_text (stmt, 1) : NULL;
  return TRUE;
}

gboolean
stead_seal_receipt (SteadStore  *store,
                    gint64       receipt_id,
                    gint64       advisor_id,
                    SteadDay     day,
                    GError     **error)
{
  static const char last_sql[] =
    "SELECT seal_no, seal FROM receipt WHERE seal_no IS NOT NULL ORDER BY seal_no DESC LIMIT 1";
  g_autoptr(SteadStmt) stmt = NULL;
  g_autofree char *previous = NULL;
  g_autofree char *seal = NULL;
  gint64 no;

  g_return_val_if_fail (stead_store_in_action (store), FALSE);
  g_return_val_if_fail (day != STEAD_DAY_NONE, FALSE);

  if (!last_seal (store, last_sql, &no, &previous, error))
    return FALSE;
  seal = stead_seal_compute (stead_store_get_db (store), receipt_id, no + 1, previous, advisor_id, day, error);
  if (seal == NULL)
    return FALSE;
  stmt = stead_store_prepare (store, "UPDATE receipt SET signed_by = ?2, signed_on = ?3, seal_no = ?4, seal = ?5"
                                     " WHERE id = ?1", error);
  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, receipt_id);
  sqlite3_bind_int64 (stmt, 2, advisor_id);
  sqlite3_bind_int (stmt, 3, day);
  sqlite3_bind_int64 (stmt, 4, no + 1);
  sqlite3_bind_text (stmt, 5, seal, -1, SQLITE_STATIC);
  return stead_store_run (store, stmt, error);
}

/* --- checklists --------------------------------------------------------------- */

#define LIMIT_COLUMNS \
  "limit_id, process, subject, conditions, measure, direction, value, unit, word, time_direction, time_s, hazard, source, source_where," \
  " version, status, note, replaces"
#define LINES "(SELECT id FROM check_line WHERE list_id = ?1)"

char *
stead_seal_compute_list (sqlite3              *db,
                         const SteadListSeal  *signature,
                         GError              **error)
{
  static const char head_sql[] =
    "SELECT id, name, day, batch_id, sale_id, made_at, edition, made_from, local_from, note FROM checklist WHERE id = ?1";
  static const char * const parts[] = {
    "SELECT id, position, name, recipe_id, product_id, process, made_from FROM check_food WHERE list_id = ?1 ORDER BY id",
    "SELECT id, food_id, question, answer FROM check_answer WHERE list_id = ?1 ORDER BY id",
    "SELECT id, food_id, position, topic, stage, subject, variant, measure, unit, needs_all, tool, often, who,"
    " own_least_c, own_most_c, own_hold_s, step_id, person_id, instrument_id, due_at, every_s, left_out"
    " FROM check_line WHERE list_id = ?1 ORDER BY id",
    "SELECT line_id, position, role, " LIMIT_COLUMNS " FROM check_limit WHERE line_id IN " LINES
    " ORDER BY line_id, position",
    "SELECT id, food_id, kind, way, lot_code, told, settled, settled_by, settled_at, " LIMIT_COLUMNS
    " FROM check_stop WHERE list_id = ?1 ORDER BY id",
    "SELECT id, line_id, name, method, depth_m FROM check_pot WHERE line_id IN " LINES " ORDER BY id",
  };
  static const char readings_sql[] =
    "SELECT id, at, kind, value, batch_id, step_id, person_id, note, corrects_id, line_id, pot_id, instrument_id,"
    " place_id, held_s, scale FROM reading WHERE line_id IN " LINES " AND id <= ?2 ORDER BY id";
  /* When a reading was typed in later than it was taken.  A list that was signed before this
   * was kept holds none, and its text is as it was. */
  static const char noted_sql[] =
    "SELECT id, noted_at FROM reading WHERE line_id IN " LINES " AND id <= ?2 AND noted_at IS NOT NULL ORDER BY id";
  static const char actions_sql[] =
    "SELECT id, reading_id, at, action, text, person_id FROM check_action"
    " WHERE reading_id IN (SELECT id FROM reading WHERE line_id IN " LINES ") AND id <= ?2 ORDER BY id";
  g_autoptr(GString) text = g_string_new (NULL);
  int rows;

  g_string_append_printf (text, "list %" G_GINT64_FORMAT " after %s by %" G_GINT64_FORMAT " at %" G_GINT64_FORMAT
                          " through %" G_GINT64_FORMAT " and %" G_GINT64_FORMAT "\n",
                          signature->no, signature->previous != NULL ? signature->previous : "nothing",
                          signature->person_id, signature->at, signature->last_reading, signature->last_action);
  if (!append_rows (text, db, head_sql, signature->list_id, 0, &rows, error))
    return NULL;
  if (rows == 0)
    {
      g_set_error_literal (error, STEAD_STORE_ERROR, STEAD_STORE_ERROR_NOT_FOUND,
                           _("This checklist is no longer there."));
      return NULL;
    }
  for (gsize i = 0; i < G_N_ELEMENTS (parts); i++)
    if (!append_rows (text, db, parts[i], signature->list_id, 0, &rows, error))
      return NULL;
  if (!append_rows (text, db, readings_sql, signature->list_id, signature->last_reading, &rows, error) ||
      !append_rows (text, db, noted_sql, signature->list_id, signature->last_reading, &rows, error) ||
      !append_rows (text, db, actions_sql, signature->list_id, signature->last_action, &rows, error))
    return NULL;
  return g_compute_checksum_for_string (G_CHECKSUM_SHA256, text->str, (gssize) text->len);
}

static gboolean
write_list_seal (SteadStore           *store,
                 const SteadListSeal  *signature,
                 const char           *seal,
                 GError              **error)
{
  static const char sql[] =
    "UPDATE checklist SET signed_by = ?2, signed_at = ?3, seal_no = ?4, seal = ?5, seal_reading = ?6, seal_action = ?7"
    " WHERE id = ?1";
  g_autoptr(SteadStmt) stmt = stead_store_prepare (store, sql, error);

  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, signature->list_id);
  sqlite3_bind_int64 (stmt, 2, signature->person_id);
  sqlite3_bind_int64 (stmt, 3, signature->at);
  sqlite3_bind_int64 (stmt, 4, signature->no);
  sqlite3_bind_text (stmt, 5, seal, -1, SQLITE_STATIC);
  sqlite3_bind_int64 (stmt, 6, signature->last_reading);
  sqlite3_bind_int64 (stmt, 7, signature->last_action);
  return stead_store_run (store, stmt, error);
}

/* Ids only grow, so what has a higher one came later. */
static gboolean
last_ids (SteadStore     *store,
          SteadListSeal  *signature,
          GError        **error)
{
  static const char sql[] = "SELECT coalesce ((SELECT max (id) FROM reading), 0),"
                            " coalesce ((SELECT max (id) FROM check_action), 0)";
  g_autoptr(SteadStmt) stmt = stead_store_prepare (store, sql, error);

  if (stmt == NULL || stead_store_step (store, stmt, error) != 1)
    return FALSE;
  signature->last_reading = sqlite3_column_int64 (stmt, 0);
  signature->last_action = sqlite3_column_int64 (stmt, 1);
  return TRUE;
}

gboolean
stead_seal_list (SteadStore  *store,
                 gint64       list_id,
                 gint64       person_id,
                 gint64       at,
                 GError     **error)
{
  static const char last_sql[] =
    "SELECT seal_no, seal FROM checklist WHERE seal_no IS NOT NULL ORDER BY seal_no DESC LIMIT 1";
  SteadListSeal signature = { .list_id = list_id, .person_id = person_id, .at = at };
  g_autofree char *previous = NULL;
  g_autofree char *seal = NULL;

  g_return_val_if_fail (stead_store_in_action (store), FALSE);
  if (!last_seal (store, last_sql, &signature.no, &previous, error) || !last_ids (store, &signature, error))
    return FALSE;
  signature.no++;
  signature.previous = previous;
  seal = stead_seal_compute_list (stead_store_get_db (store), &signature, error);
  return seal != NULL && write_list_seal (store, &signature, seal, error);
}
