/* stead-receipt-repo.h - purchases and gifts in kind, with their lines.
 *
 * Each line makes one lot and one movement "received".  Receipts may be entered
 * in any order: feed that was given before its receipt came is covered by the
 * receipt when it is saved (oldest feed first), in the same transaction.
 */
#pragma once

#include "store/stead-store.h"

G_BEGIN_DECLS

typedef struct
{
  gint64    id;             /* 0: not saved yet */
  gint64    item_id;
  double    quantity_base;  /* above 0, base units of the item's dimension */
  gint64    cost_cents;     /* for the whole line; fair value of a gift; 0 or more */
  SteadDay  best_by;        /* STEAD_DAY_NONE: not given */
  gint64    lot_id;         /* filled in when saved */
} SteadReceiptLine;

typedef struct
{
  gint64    id;             /* 0: not saved yet */
  SteadDay  day;
  char     *supplier;       /* who it came from; not empty */
  gboolean  is_gift;
  char     *reference;      /* (nullable): number on the paper */
  char     *note;           /* (nullable) */
  gint64    person_id;      /* who bought; 0: not said */
  gint64    signed_by;      /* advisor; 0: not signed */
  SteadDay  signed_on;
  gint64    corrects_id;    /* the signed receipt that this one corrects; 0: none */
  gint64    corrected_by;   /* the receipt that corrects this one; 0: none.  Read only */
  GArray   *lines;          /* of SteadReceiptLine */
} SteadReceipt;

SteadReceipt *stead_receipt_new  (void) G_GNUC_WARN_UNUSED_RESULT;
void          stead_receipt_free (SteadReceipt *receipt);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadReceipt, stead_receipt_free)

gint64 stead_receipt_total_cents (const SteadReceipt *receipt);

/* What receipts come to: each paper once, so one that was corrected does not count. */
typedef struct
{
  guint  n;              /* that count */
  guint  n_corrected;    /* that do not */
  gint64 paid_cents;
  gint64 gift_cents;     /* fair value */
} SteadReceiptSums;

/* @receipts: (element-type SteadReceipt) */
SteadReceiptSums stead_receipt_sums (GPtrArray *receipts);

/* Newest first. */
GPtrArray    *stead_receipt_repo_list   (SteadStore *store, GError **error) G_GNUC_WARN_UNUSED_RESULT;
SteadReceipt *stead_receipt_repo_get    (SteadStore *store, gint64 id, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/**
 * stead_receipt_repo_save:
 * @receipt: checked here: a day not after today, a supplier, one line or more,
 *   each above zero; refused if a lot would fall below what was already taken
 *
 * A correction takes the place of the receipt that it corrects: what was taken by
 * hand out of a lot of the wrong receipt goes over to the lot of the same item, at
 * its cost, and what the wrong lots still hold leaves them.  What was taken of an
 * item that the right receipt does not have stays with the wrong lot.
 *
 * Returns: %TRUE with ids filled in, or %FALSE with nothing changed
 */
gboolean      stead_receipt_repo_save   (SteadStore *store, SteadReceipt *receipt, GError **error) G_GNUC_WARN_UNUSED_RESULT;
gboolean      stead_receipt_repo_delete (SteadStore *store, gint64 id, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* Freezes the receipt: a SHA-256 over its facts and the seal before it. */
gboolean      stead_receipt_repo_sign   (SteadStore *store, gint64 id, gint64 advisor_id, GError **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
