/* stead-cash-head.h - over the lines of the cash book: the accounts with what they hold,
 * the funds, how far back to look, words to find, and what needs a look.
 */
#pragma once

#include <gtk/gtk.h>

#include "answer/stead-cash-answer.h"
#include "app/stead-desk.h"

G_BEGIN_DECLS

#define STEAD_TYPE_CASH_HEAD (stead_cash_head_get_type ())
G_DECLARE_FINAL_TYPE (SteadCashHead, stead_cash_head, STEAD, CASH_HEAD, GtkWidget)

/* Signals: "chosen" (): another account or time; "sought" (): other words. */

GtkWidget  *stead_cash_head_new         (void);
void        stead_cash_head_set         (SteadCashHead *self, SteadDesk *desk, const SteadCashAnswer *answer);
gint64      stead_cash_head_get_account (SteadCashHead *self);   /* 0: all */
SteadDay    stead_cash_head_get_from    (SteadCashHead *self, SteadDesk *desk);
const char *stead_cash_head_get_words   (SteadCashHead *self);

G_END_DECLS
