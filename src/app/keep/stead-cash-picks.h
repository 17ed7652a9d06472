/* stead-cash-picks.h - what a person can choose from in the dialogs of the cash book. */
#pragma once

#include "app/keep/stead-pick.h"
#include "app/stead-field.h"
#include "store/stead-cash-repo.h"

G_BEGIN_DECLS

/* Each fills @pick anew and chooses @id, or the first choice; what cannot be read offers
 * nothing.  Accounts and funds that are closed are offered if they are chosen. */
void stead_cash_picks_accounts    (SteadPick *pick, SteadStore *store, gint64 id);
void stead_cash_picks_funds       (SteadPick *pick, SteadStore *store, gint64 id);
void stead_cash_picks_enterprises (SteadPick *pick, SteadStore *store, gint64 id);
void stead_cash_picks_people      (SteadPick *pick, SteadStore *store, gint64 id);
void stead_cash_picks_batches     (SteadPick *pick, SteadStore *store, gint64 id);
void stead_cash_picks_products    (SteadPick *pick, SteadStore *store, gint64 id);
void stead_cash_picks_assets      (SteadPick *pick, SteadStore *store, gint64 id);
/* @sign: 1: what brings money in; -1: what takes it out.  Ids are categories. */
void stead_cash_picks_categories  (SteadPick *pick, int sign, SteadCashCategory category);
/* Those that are not paid, or not all, newest first; @id too, if it is paid. */
void stead_cash_picks_receipts    (SteadPick *pick, SteadStore *store, const char *currency, gint64 id);

/* What is typed in @field as a day, without a word if it is none yet; FALSE then. */
gboolean stead_cash_picks_peek_day  (SteadField *field, SteadStore *store, SteadDay *day);
/* Tells at the field if the books are closed for @day; FALSE then. */
gboolean stead_cash_picks_check_day (SteadField *field, SteadStore *store, SteadDay day);

/* A field for the number of one coin or note, at the end of a column: fields go down one column after
 * the other, and so does the Tab key. */
void stead_cash_picks_put_face (GtkGrid *grid, GtkWidget *field, int column);

G_END_DECLS
