/* stead-sale-tally.h - what happens at the stall: taps, prices, orders.
 *
 * Invariants:
 *  1. Each tap is a row of its own, with its time and the price of that moment; one that
 *     was wrong is not deleted but taken back by another.
 *  2. Never more of a product is tallied than was brought.
 *  3. Nothing changes at a sale that is cashed up.
 */
#pragma once

#include "store/stead-sale-repo.h"

G_BEGIN_DECLS

/* Not to be changed in order: the file holds their words. */
typedef enum
{
  STEAD_TAP_SOLD,
  STEAD_TAP_SAMPLE,     /* tasted at the stall */
  STEAD_TAP_GIVEN,      /* donated */
  STEAD_TAP_SPOILED,    /* broken, melted, dropped */
} SteadTapKind;
#define STEAD_N_TAP_KINDS (STEAD_TAP_SPOILED + 1)

typedef struct
{
  gint64        id;
  gint64        line_id;
  gint64        at;           /* seconds since 1970 */
  SteadTapKind  kind;
  double        units;        /* below 0: takes another back */
  gint64        price_cents;  /* of one */
  gint64        back_id;      /* the tap that it takes back; 0: none */
  gboolean      taken_back;   /* by a later one; filled in when read */
} SteadSaleTap;

/* (element-type SteadSaleTap): oldest first. */
GArray   *stead_sale_tally_list (SteadStore *store, gint64 sale_id, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/**
 * stead_sale_tally_add:
 * @units: above 0
 * @at: seconds since 1970
 * @out_id: (out) (optional): the tap
 *
 * The first tap opens the sale.  Refused before its day, beyond what was brought, and
 * once it is cashed up.
 */
gboolean  stead_sale_tally_add (SteadStore *store, gint64 line_id, SteadTapKind kind, double units, gint64 at,
                                gint64 *out_id, GError **error) G_GNUC_WARN_UNUSED_RESULT;
/* A collected order that the tap came from waits again. */
gboolean  stead_sale_tally_take_back (SteadStore *store, gint64 tap_id, gint64 at,
                                      GError **error) G_GNUC_WARN_UNUSED_RESULT;
/* The last tap of a sale that still stands; 0: none.  -1 with @error. */
gint64    stead_sale_tally_last (SteadStore *store, gint64 sale_id, GError **error);

/* From @at on; what was sold before keeps its price. */
gboolean  stead_sale_tally_set_price (SteadStore *store, gint64 line_id, gint64 cents, gint64 at,
                                      GError **error) G_GNUC_WARN_UNUSED_RESULT;
/* The price now; -1 with @error. */
gint64    stead_sale_tally_price (SteadStore *store, gint64 line_id, GError **error);

typedef struct
{
  gint64  id;
  gint64  line_id;
  gint64  at;
  gint64  price_cents;
} SteadSalePrice;

/* (element-type SteadSalePrice): changes of one sale, oldest first. */
GArray   *stead_sale_tally_prices (SteadStore *store, gint64 sale_id, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* What really came to the stall; not below what is tallied. */
gboolean  stead_sale_tally_set_brought (SteadStore *store, gint64 line_id, double units,
                                        GError **error) G_GNUC_WARN_UNUSED_RESULT;

typedef struct
{
  gint64    id;          /* 0: not saved yet */
  gint64    sale_id;
  gint64    line_id;
  char     *who;         /* (nullable) */
  double    units;       /* above 0 */
  gboolean  paid;        /* before the day: its money stands in the cash book of that day */
  gint64    tap_id;      /* 0: not collected yet.  Filled in when read */
  char     *note;        /* (nullable) */
} SteadSaleOrder;

void stead_sale_order_free (SteadSaleOrder *order);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadSaleOrder, stead_sale_order_free)

/* Waiting ones first, then by name. */
GPtrArray *stead_sale_order_list    (SteadStore *store, gint64 sale_id, GError **error) G_GNUC_WARN_UNUSED_RESULT;
/* One that was collected stays as it is. */
gboolean   stead_sale_order_save    (SteadStore *store, SteadSaleOrder *order, GError **error) G_GNUC_WARN_UNUSED_RESULT;
gboolean   stead_sale_order_delete  (SteadStore *store, gint64 id, GError **error) G_GNUC_WARN_UNUSED_RESULT;
/* Becomes a tap "sold". */
gboolean   stead_sale_order_collect (SteadStore *store, gint64 id, gint64 at, GError **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
