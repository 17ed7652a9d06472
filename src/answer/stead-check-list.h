/* stead-check-list.h - a plan of checks as a checklist to be kept, and its lines as the plan's again. */
#pragma once

#include "answer/stead-check-plan-answer.h"
#include "store/stead-check-repo.h"

G_BEGIN_DECLS

/**
 * stead_check_list_from_plan:
 * @order: what the plan was made for, with the answers
 * @name: (nullable): %NULL for the foods' names
 *
 * Each line takes the step of the run sheet that it is about, so that nothing is asked
 * twice, and the instrument in use if there is one of its kind alone.
 *
 * Returns: (transfer full): a list to be saved, or %NULL with @error
 */
SteadCheckList *stead_check_list_from_plan (SteadStore                  *store,
                                            const SteadCheckPlanAnswer  *plan,
                                            const SteadCheckOrder       *order,
                                            const char                  *name,
                                            GError                     **error) G_GNUC_WARN_UNUSED_RESULT;

/**
 * stead_check_line_of_list:
 * @out: (out): points into @line
 *
 * Returns: whether this program knows such a line
 */
gboolean stead_check_line_of_list (const SteadListLine *line,
                                   SteadCheckLine      *out);

/* A plan is made anew with these: the answers that a list was made from.  Of SteadCheckAnswered,
 * pointing into @list. */
GArray *stead_check_list_answers (const SteadCheckList *list) G_GNUC_WARN_UNUSED_RESULT;

/* The stricter rows of the farm that hold on @day: of SteadLimitLocal, pointing into @limits,
 * which are of SteadLocalLimit. */
GArray *stead_check_local_rows (const GPtrArray *limits) G_GNUC_WARN_UNUSED_RESULT;

/* The limits in force on @day, with the farm's own. */
SteadLimitTable *stead_check_table_on (SteadStore *store, SteadDay day, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* The recipes in use and what is sold, a line each: a menu of the kitchen's own foods.
 * Returns: (transfer full): or %NULL with @error if there are none */
char *stead_check_own_foods (SteadStore *store, GError **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
