/* stead-check-private.h - what the parts of the checklist repository share. */
#pragma once

#include "store/stead-check-repo.h"
#include "store/stead-repo-private.h"

G_BEGIN_DECLS

/* The words of the file, in the order of their enums. */
extern const char * const stead_check_process_words[];
extern const char * const stead_direction_words[];

void   stead_stmt_bind_time (SteadStmt *stmt, int at, gint64 time);
gint64 stead_stmt_time      (SteadStmt *stmt, int at);

/* Text of a column, kept by the list; the second is of one that is never NULL in a sound file. */
const char *stead_check_keep      (SteadCheckList *list, SteadStmt *stmt, int at);
const char *stead_check_keep_some (SteadCheckList *list, SteadStmt *stmt, int at);

/* The columns of a list in @l's table, with or without its counts, and a row of them. */
#define CHECK_HEAD_COLUMNS \
  "l.id, l.name, l.day, l.batch_id, l.sale_id, l.made_at, l.edition, l.note, l.signed_by, l.signed_at, l.seal_reading"
#define CHECK_COUNT_COLUMNS \
  " (SELECT count (*) FROM check_line c WHERE c.list_id = l.id AND c.left_out IS NULL)," \
  " (SELECT count (*) FROM check_line c WHERE c.list_id = l.id AND c.left_out IS NULL" \
  "   AND NOT EXISTS (SELECT 1 FROM reading r WHERE r.line_id = c.id))," \
  " (SELECT count (*) FROM check_line c JOIN reading r ON r.line_id = c.id WHERE c.list_id = l.id)," \
  " (SELECT count (*) FROM check_stop s WHERE s.list_id = l.id AND s.settled_at IS NULL)," \
  " (SELECT count (*) FROM safety_hold h JOIN reading r ON r.id = h.reading_id JOIN check_line c ON c.id = r.line_id" \
  "   WHERE h.ended_at IS NULL AND c.list_id = l.id)"
gpointer stead_check_head_from_row (SteadStmt *stmt);

/* The columns of a reading in @r's table, and a row of them. */
#define SHOWN_COLUMNS \
  "r.id, r.at, r.kind, r.value, r.batch_id, r.step_id, r.person_id, r.note, r.corrects_id, r.line_id, r.pot_id," \
  " r.instrument_id, r.place_id, r.held_s, r.scale," \
  " EXISTS (SELECT 1 FROM reading c WHERE c.corrects_id = r.id)," \
  " (SELECT count (*) FROM check_action a WHERE a.reading_id = r.id), r.noted_at"
gpointer stead_shown_from_row (SteadStmt *stmt);
/* (transfer full) (nullable): %NULL also if there is none */
SteadShown *stead_shown_by_id (SteadStore *store, gint64 id, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* The columns of a limit that was kept, from @at on, and a row of them. */
#define LIMIT_COLUMNS \
  "limit_id, process, subject, conditions, measure, direction, value, unit, word, time_direction, time_s, hazard, source," \
  " source_where, version, status, note, replaces"
#define LIMIT_N_COLUMNS 18
/* Its strings belong to @list. */
SteadLimit *stead_check_limit_from_row (SteadCheckList *list, SteadStmt *stmt, int at);
void        stead_check_bind_limit     (SteadStmt *stmt, int at, const SteadLimit *limit);
/* A copy that belongs to @list. */
SteadLimit *stead_check_limit_copy     (SteadCheckList *list, const SteadLimit *limit);

/* Refuses a time to come. */
gboolean stead_shown_check_time (SteadStore *store, gint64 at, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* Holds what the food of a line was made into, as far as it is known: the batch, or what
 * the sale day takes along of it. */
gboolean stead_hold_begin_for_reading (SteadStore *store, const SteadShown *shown, const SteadCheckList *list,
                                       const SteadListLine *line, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* Where water boils on this farm, for the lines that ask for it. */
gboolean stead_check_find_boiling (SteadStore *store, SteadCheckList *list, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* The head of a list that is not signed; NULL with a reason. */
SteadCheckList *stead_check_open_list (SteadStore *store, gint64 list_id, GError **error) G_GNUC_WARN_UNUSED_RESULT;
SteadCheckList *stead_check_open_line (SteadStore *store, gint64 line_id, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* A sum over what a list was made from: the run sheet of its batch; a recipe with those
 * inside; the local limits in force on @day.  NULL with or without @error: of nothing. */
gboolean stead_check_from_batch  (SteadStore *store, gint64 batch_id, char **out, GError **error) G_GNUC_WARN_UNUSED_RESULT;
gboolean stead_check_from_recipe (SteadStore *store, gint64 recipe_id, char **out, GError **error) G_GNUC_WARN_UNUSED_RESULT;
gboolean stead_check_from_limits (SteadStore *store, SteadDay day, char **out, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* Writes foods, answers, lines with their limits, and stops of @list, whose rows are gone or
 * never were. */
gboolean stead_check_write_parts (SteadStore *store, SteadCheckList *list, GError **error) G_GNUC_WARN_UNUSED_RESULT;
gboolean stead_check_write_line  (SteadStore *store, const SteadCheckList *list, SteadListLine *line, guint position,
                                  GError **error) G_GNUC_WARN_UNUSED_RESULT;
gboolean stead_check_write_foods (SteadStore *store, SteadCheckList *list, GError **error) G_GNUC_WARN_UNUSED_RESULT;
gboolean stead_check_write_rest  (SteadStore *store, SteadCheckList *list, GError **error) G_GNUC_WARN_UNUSED_RESULT;
/* What was read on the run sheet counts for the lines that name its steps. */
gboolean stead_check_claim_steps (SteadStore *store, gint64 list_id, GError **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
