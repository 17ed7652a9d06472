/* stead-routine-answer.h - "What of the routine is due?" */
#pragma once

#include "answer/stead-due-answer.h"
#include "store/stead-routine-repo.h"

G_BEGIN_DECLS

/* Adds the tasks that are due, and those that were done today, to @dues (of SteadDue). */
gboolean stead_routine_find_dues (SteadStore  *store,
                                  GPtrArray   *dues,
                                  GError     **error) G_GNUC_WARN_UNUSED_RESULT;

/**
 * stead_routine_due_on:
 * @routine: a task
 * @began_on: the day its batch began (hatch, for a flock)
 * @sum_c: degree days of its crop up to today; NAN: not known
 * @today: the present day
 *
 * A task that recurs is due so many days after it was last done, the first time on its
 * first day.  What is done once is due no more.
 *
 * Returns: the day; %STEAD_DAY_NONE: not due any more, or not to be told yet
 */
SteadDay stead_routine_due_on (const SteadRoutine *routine,
                               SteadDay            began_on,
                               double              sum_c,
                               SteadDay            today);

/* Whose task it is, and when it is due next; see stead_routine_due_on(). */
gboolean stead_routine_next (SteadStore          *store,
                             const SteadRoutine  *routine,
                             char               **out_owner,
                             SteadDay            *out_due_on,
                             GError             **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
