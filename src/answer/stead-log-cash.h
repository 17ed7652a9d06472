/* stead-log-cash.h - the cash book, and statements with their entries, as rows for a spreadsheet. */
#pragma once

#include "answer/stead-log-answer.h"
#include "answer/stead-statement-answer.h"

G_BEGIN_DECLS

/**
 * stead_log_answer_cash:
 * @account_id: 0: all
 * @from: STEAD_DAY_NONE: from the beginning
 * @to: STEAD_DAY_NONE: up to now
 *
 * A row a line, oldest first; the balance is that of the account, or of all.
 */
SteadLogAnswer *stead_log_answer_cash (SteadStore  *store,
                                       gint64       account_id,
                                       SteadDay     from,
                                       SteadDay     to,
                                       GError     **error) G_GNUC_WARN_UNUSED_RESULT;

/* Leaves out who it was with, who entered it, and what was noted. */
void            stead_log_answer_cash_hide_names (SteadLogAnswer *self);

/* Every entry behind every line of @statement; those of one line sum to it. */
SteadLogAnswer *stead_log_answer_statement (SteadStore                  *store,
                                            const SteadStatementAnswer  *statement,
                                            GError                     **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
