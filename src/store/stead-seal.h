/* stead-seal.h - what is signed carries a sum over its facts and the seal before it. */
#pragma once

#include "store/stead-store-private.h"

G_BEGIN_DECLS

/**
 * stead_seal_receipt:
 * @receipt_id: a receipt that is there and not signed yet
 * @advisor_id: the person who signs
 * @day: the day of signing
 *
 * Signs it: fills in signed_by, signed_on, seal_no and seal.  Between begin and
 * commit.  That the person may sign is checked by the caller.
 *
 * Returns: %TRUE, or %FALSE with NOT_FOUND, SIGNED or what the file says
 */
gboolean stead_seal_receipt (SteadStore  *store,
                             gint64       receipt_id,
                             gint64       advisor_id,
                             SteadDay     day,
                             GError     **error) G_GNUC_WARN_UNUSED_RESULT;

/**
 * stead_seal_compute:
 * @receipt_id: a receipt
 * @seal_no: its place among the signed ones, 1 for the first
 * @previous: (nullable): the seal before it; %NULL for the first
 *
 * SHA-256 over the facts of the receipt as signed, its lines in order of id,
 * and @previous.
 *
 * Returns: (transfer full): 64 hexadecimal digits, or %NULL with @error
 */
char    *stead_seal_compute (sqlite3     *db,
                             gint64       receipt_id,
                             gint64       seal_no,
                             const char  *previous,
                             gint64       advisor_id,
                             SteadDay     day,
                             GError     **error) G_GNUC_WARN_UNUSED_RESULT;

/* What a signature says of a checklist. */
typedef struct
{
  gint64      list_id;
  gint64      no;            /* its place among the signed lists, 1 for the first */
  const char *previous;      /* (nullable): the seal before it */
  gint64      person_id;
  gint64      at;            /* seconds since 1970 */
  gint64      last_reading;  /* what came after these is a correction beside it */
  gint64      last_action;
} SteadListSeal;

/* SHA-256 over the list as signed: its foods, answers, lines, limits, stops, pots, the readings
 * and what was done.  Returns: (transfer full): 64 hexadecimal digits, or %NULL with @error */
char    *stead_seal_compute_list (sqlite3              *db,
                                  const SteadListSeal  *signature,
                                  GError              **error) G_GNUC_WARN_UNUSED_RESULT;

/* Signs a list that is there and not signed yet; between begin and commit. */
gboolean stead_seal_list         (SteadStore  *store,
                                  gint64       list_id,
                                  gint64       person_id,
                                  gint64       at,
                                  GError     **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
