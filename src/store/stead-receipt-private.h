/* stead-receipt-private.h - what the files of receipts share: a line's lot and movement, and corrections. */
#pragma once

#include "store/stead-receipt-repo.h"
#include "store/stead-store-private.h"

G_BEGIN_DECLS

/* Makes lot and movement of a new line; fills in its lot_id. */
gboolean stead_receipt_lot_insert (SteadStore        *store,
                                   SteadDay           day,
                                   SteadReceiptLine  *line,
                                   GError           **error) G_GNUC_WARN_UNUSED_RESULT;

/* Brings lot and movement in line with a changed line; the logs' feed must have
 * been taken out of the lot.  Refused if less would be there than was taken by hand. */
gboolean stead_receipt_lot_update (SteadStore              *store,
                                   SteadDay                 day,
                                   const SteadReceiptLine  *line,
                                   GError                 **error) G_GNUC_WARN_UNUSED_RESULT;

/* Refuses, naming the lot, if anything was done with it by hand. */
gboolean stead_receipt_lot_check_free (SteadStore  *store,
                                       gint64       lot_id,
                                       GError     **error) G_GNUC_WARN_UNUSED_RESULT;

/* Moves what was taken by hand out of @lot_id to the lot of @line, at its cost; the logs'
 * feed must have been taken out of both.  Refused if @line does not reach for it. */
gboolean stead_receipt_lot_take_over (SteadStore              *store,
                                      gint64                   lot_id,
                                      SteadDay                 day,
                                      const SteadReceiptLine  *line,
                                      GError                 **error) G_GNUC_WARN_UNUSED_RESULT;

/* Takes off the lot of @right, on @day, what was taken out of the lot of the closed
 * @line that it replaces.  Refused if @right does not reach for it. */
gboolean stead_receipt_lot_take_off (SteadStore              *store,
                                     const SteadReceiptLine  *line,
                                     SteadDay                 day,
                                     const SteadReceiptLine  *right,
                                     const char              *reason,
                                     gint64                   person_id,
                                     GError                 **error) G_GNUC_WARN_UNUSED_RESULT;

/* Takes all that is left out of a lot, as a correction, on @day or that of its last movement. */
gboolean stead_receipt_lot_empty (SteadStore  *store,
                                  gint64       lot_id,
                                  SteadDay     day,
                                  const char  *reason,
                                  gint64       person_id,
                                  GError     **error) G_GNUC_WARN_UNUSED_RESULT;

/* Refuses to correct a receipt that is not signed, or was corrected before. */
gboolean stead_receipt_check_corrects (SteadStore          *store,
                                       const SteadReceipt  *wrong,
                                       GError             **error) G_GNUC_WARN_UNUSED_RESULT;

/* @receipt, whose lines are written, takes over what came out of the lots of @wrong. */
gboolean stead_receipt_take_over (SteadStore          *store,
                                  const SteadReceipt  *wrong,
                                  const SteadReceipt  *receipt,
                                  GError             **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
