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

G_END_DECLS
