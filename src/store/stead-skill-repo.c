/* stead-skill-repo.c - skills and tries; what shows them is in stead-skill-evidence.c. */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "store/stead-skill-repo.h"
#include "store/stead-show-private.h"

#define MOST_WORDS 400
#define MOST_CODE 40

void
stead_skill_free (SteadSkill *skill)
{
  if (skill == NULL)
    return;
  g_free (skill->code);
  g_free (skill->words);
  g_free (skill->area);
  g_free (skill);
}

void
stead_skill_try_free (SteadSkillTry *try_)
{
  if (try_ == NULL)
    return;
  g_free (try_->note);
  g_free (try_->checker_name);
  g_free (try_);
}

/* --- the list ------------------------------------------------------------------- */

static gpointer
skill_from_row (SteadStmt *stmt)
{
  SteadSkill *skill = g_new0 (SteadSkill, 1);

  skill->id = sqlite3_column_int64 (stmt, 0);
  skill->code = stead_stmt_text (stmt, 1);
  skill->words = stead_stmt_text (stmt, 2);
  skill->area = stead_stmt_text (stmt, 3);
  skill->retired_on = stead_stmt_day (stmt, 4);
  return skill;
}

GPtrArray *
stead_skill_repo_list (SteadStore  *store,
                       gboolean     with_retired,
                       GError     **error)
{
  static const char sql[] = "SELECT id, code, words, area, retired_on FROM skill WHERE ?1 OR retired_on IS NULL"
                            " ORDER BY area IS NULL, area, code IS NULL, code, words, id";

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  return stead_repo_rows_of (store, sql, with_retired != FALSE, skill_from_row,
                             (GDestroyNotify) stead_skill_free, error);
}

static gboolean
check_code (SteadStore        *store,
            const SteadSkill  *skill,
            GError           **error)
{
  static const char sql[] = "SELECT id FROM skill WHERE code = ?1 AND id <> ?2";
  g_autofree char *code = stead_repo_tidy (skill->code);
  g_autoptr(SteadStmt) stmt = NULL;
  gint64 other;

  if (code == NULL)
    return TRUE;
  if (!stead_show_check_words (code, MOST_CODE, "", error))
    return FALSE;
  stmt = stead_store_prepare (store, sql, error);
  if (stmt == NULL)
    return FALSE;
  stead_stmt_bind_text (stmt, 1, code);
  sqlite3_bind_int64 (stmt, 2, skill->id);
  if (!stead_repo_number (store, stmt, 0, &other, error))
    return FALSE;
  /* Translators: %s is the code of a skill in a list: "AS.06". */
  return other == 0 || stead_repo_refuse (error, _("Another skill has the code “%s”. Give each its own."), code);
}

gboolean
stead_skill_repo_save (SteadStore  *store,
                       SteadSkill  *skill,
                       GError     **error)
{
  static const char insert_sql[] = "INSERT INTO skill (code, words, area, retired_on) VALUES (?1, ?2, ?3, ?4)";
  static const char update_sql[] = "UPDATE skill SET code = ?1, words = ?2, area = ?3, retired_on = ?4 WHERE id = ?5";
  g_autoptr(SteadStmt) stmt = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store) && skill != NULL, FALSE);
  g_return_val_if_fail (stead_store_in_action (store), FALSE);
  if (!stead_show_check_words (skill->words, MOST_WORDS, _("Write what the skill is, in the school's own words."),
                               error)
      || !stead_repo_check_note (skill->area, error) || !check_code (store, skill, error))
    return FALSE;
  stmt = stead_store_prepare (store, skill->id == 0 ? insert_sql : update_sql, error);
  if (stmt == NULL)
    return FALSE;
  stead_repo_bind_tidy (stmt, 1, skill->code);
  stead_repo_bind_tidy (stmt, 2, skill->words);
  stead_repo_bind_tidy (stmt, 3, skill->area);
  stead_stmt_bind_day (stmt, 4, skill->retired_on);
  return stead_repo_save_row (store, stmt, &skill->id, error);
}

gboolean
stead_skill_repo_remove (SteadStore  *store,
                         gint64       skill_id,
                         GError     **error)
{
  static const char tried_sql[] = "SELECT count (*) FROM skill_try WHERE skill_id = ?1";
  static const char delete_sql[] = "DELETE FROM skill WHERE id = ?1";
  static const char retire_sql[] = "UPDATE skill SET retired_on = ?2 WHERE id = ?1";
  g_autoptr(SteadStmt) stmt = NULL;
  gint64 tried;

  g_return_val_if_fail (STEAD_IS_STORE (store), FALSE);
  g_return_val_if_fail (stead_store_in_action (store), FALSE);
  tried = stead_repo_count_id (store, tried_sql, skill_id, error);
  if (tried < 0)
    return FALSE;
  if (tried == 0)
    return stead_show_delete (store, delete_sql, skill_id, error);
  stmt = stead_store_prepare (store, retire_sql, error);
  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, skill_id);
  stead_stmt_bind_day (stmt, 2, stead_store_get_today (store));
  return stead_store_run (store, stmt, error);
}

/* --- tries ---------------------------------------------------------------------- */

static gpointer
try_from_row (SteadStmt *stmt)
{
  SteadSkillTry *try_ = g_new0 (SteadSkillTry, 1);

  try_->id = sqlite3_column_int64 (stmt, 0);
  try_->skill_id = sqlite3_column_int64 (stmt, 1);
  try_->person_id = sqlite3_column_int64 (stmt, 2);
  try_->day = stead_stmt_day (stmt, 3);
  try_->level = (SteadSkillLevel) sqlite3_column_int (stmt, 4);
  try_->note = stead_stmt_text (stmt, 5);
  try_->checked_by = sqlite3_column_int64 (stmt, 6);
  try_->checked_on = stead_stmt_day (stmt, 7);
  try_->checker_name = stead_stmt_text (stmt, 8);
  return try_;
}

GPtrArray *
stead_skill_repo_tries (SteadStore  *store,
                        gint64       person_id,
                        GError     **error)
{
  static const char sql[] =
    "SELECT t.id, t.skill_id, t.person_id, t.day, t.level, t.note, t.checked_by, t.checked_on, p.name"
    " FROM skill_try t LEFT JOIN person p ON p.id = t.checked_by WHERE t.person_id = ?1"
    " ORDER BY t.skill_id, t.day, t.id";

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  return stead_repo_rows_of (store, sql, person_id, try_from_row, (GDestroyNotify) stead_skill_try_free,
                             error);
}

/* What an advisor saw is not changed behind the advisor's back. */
static gboolean
check_open (SteadStore  *store,
            gint64       try_id,
            GError     **error)
{
  static const char sql[] = "SELECT 1 + (checked_on IS NOT NULL) FROM skill_try WHERE id = ?1";
  gint64 state = stead_repo_count_id (store, sql, try_id, error);

  if (state < 0)
    return FALSE;
  if (state == 0)
    return stead_repo_missing (error);
  return state == 1 || stead_repo_refuse (error, _("An advisor has checked this. It stays as it is; enter what came "
                                                   "later as a new try."));
}

static gboolean
check_try (SteadStore           *store,
           const SteadSkillTry  *try_,
           GError              **error)
{
  static const char sql[] = "SELECT count (*) FROM skill WHERE id = ?1";
  gint64 n;

  if (try_->skill_id == 0)
    return stead_repo_refuse (error, _("Choose a skill."));
  if (try_->level < STEAD_SKILL_SAW || try_->level > STEAD_SKILL_SHOWS)
    return stead_repo_refuse (error, _("Choose how well it went."));
  n = stead_repo_count_id (store, sql, try_->skill_id, error);
  if (n <= 0)
    return n == 0 && stead_repo_missing (error);
  return stead_show_check_person (store, try_->person_id, error) && stead_show_check_past (store, try_->day, error) &&
         stead_repo_check_note (try_->note, error) && (try_->id == 0 || check_open (store, try_->id, error));
}

gboolean
stead_skill_repo_save_try (SteadStore     *store,
                           SteadSkillTry  *try_,
                           GError        **error)
{
  static const char insert_sql[] =
    "INSERT INTO skill_try (skill_id, person_id, day, level, note) VALUES (?1, ?2, ?3, ?4, ?5)";
  static const char update_sql[] =
    "UPDATE skill_try SET skill_id = ?1, person_id = ?2, day = ?3, level = ?4, note = ?5 WHERE id = ?6";
  g_autoptr(SteadStmt) stmt = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store) && try_ != NULL, FALSE);
  g_return_val_if_fail (stead_store_in_action (store), FALSE);
  if (!check_try (store, try_, error))
    return FALSE;
  stmt = stead_store_prepare (store, try_->id == 0 ? insert_sql : update_sql, error);
  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, try_->skill_id);
  sqlite3_bind_int64 (stmt, 2, try_->person_id);
  stead_stmt_bind_day (stmt, 3, try_->day);
  sqlite3_bind_int (stmt, 4, (int) try_->level);
  stead_repo_bind_tidy (stmt, 5, try_->note);
  return stead_repo_save_row (store, stmt, &try_->id, error);
}

gboolean
stead_skill_repo_drop_try (SteadStore  *store,
                           gint64       try_id,
                           GError     **error)
{
  static const char sql[] = "DELETE FROM skill_try WHERE id = ?1";

  g_return_val_if_fail (STEAD_IS_STORE (store), FALSE);
  g_return_val_if_fail (stead_store_in_action (store), FALSE);
  return check_open (store, try_id, error) && stead_show_delete (store, sql, try_id, error);
}

gboolean
stead_skill_repo_check (SteadStore  *store,
                        gint64       try_id,
                        gint64       advisor_id,
                        GError     **error)
{
  static const char advisor_sql[] =
    "SELECT count (*) FROM person WHERE id = ?1 AND role = 'advisor' AND left_on IS NULL";
  static const char sql[] = "UPDATE skill_try SET checked_by = ?2, checked_on = max (day, ?3) WHERE id = ?1";
  g_autoptr(SteadStmt) stmt = NULL;
  gint64 n;

  g_return_val_if_fail (STEAD_IS_STORE (store), FALSE);
  g_return_val_if_fail (stead_store_in_action (store), FALSE);
  n = stead_repo_count_id (store, advisor_sql, advisor_id, error);
  if (n < 0 || (n > 0 && !check_open (store, try_id, error)))
    return FALSE;
  if (n == 0)
    return stead_repo_refuse (error, _("An advisor checks a skill. Choose one."));
  stmt = stead_store_prepare (store, sql, error);
  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, try_id);
  sqlite3_bind_int64 (stmt, 2, advisor_id);
  stead_stmt_bind_day (stmt, 3, stead_store_get_today (store));
  return stead_store_run (store, stmt, error);
}
