/* stead-bank-why.h - a statement beside the cash book, worked out. */
#pragma once

#include "answer/stead-words.h"
#include "core/stead-cash.h"

G_BEGIN_DECLS

/* Returns: (transfer full): of SteadWhy: what either side comes to, and how far they are apart */
GPtrArray *stead_bank_check_whys (const SteadBankCheck *check,
                                  const char           *currency) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
