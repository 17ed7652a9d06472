/* stead-bank-private.h - what the files of the bank's statements share. */
#pragma once

#include "store/stead-bank-repo.h"

G_BEGIN_DECLS

/* (transfer full): one line of a statement; not found is an error. */
SteadBankLine *stead_bank_get_line (SteadStore  *store,
                                    gint64       id,
                                    GError     **error) G_GNUC_WARN_UNUSED_RESULT;

/* Refuses @day where an agreed sheet covers it. */
gboolean stead_bank_check_open (SteadStore  *store,
                                gint64       account_id,
                                SteadDay     day,
                                GError     **error) G_GNUC_WARN_UNUSED_RESULT;

/* Says that @sheet agrees and stays; always %FALSE. */
gboolean stead_bank_refuse_agreed (const SteadBankSheet  *sheet,
                                   GError               **error);

G_END_DECLS
