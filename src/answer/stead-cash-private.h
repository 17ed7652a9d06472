/* stead-cash-private.h - what the files of the cash book's answer share. */
#pragma once

#include "answer/stead-cash-answer.h"

G_BEGIN_DECLS

/* (nullable) (transfer none): how that account stands */
SteadAccountState *stead_cash_answer_state (const SteadCashAnswer *self,
                                            gint64                 account_id);

/* (transfer full): markup; of an answer whose lines are read. */
char              *stead_cash_answer_say   (const SteadCashAnswer *self) G_GNUC_WARN_UNUSED_RESULT;
/* (transfer full): plain */
char              *stead_cash_answer_warn  (const SteadCashAnswer *self) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
