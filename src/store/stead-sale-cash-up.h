/* stead-sale-cash-up.h - the end of a sale day: counted by two, left-overs put away, posted once.
 *
 * Invariants:
 *  1. Float + takings - paid out = counted +/- over or short; all of it stands in the cash
 *     book, and a difference has a reason.
 *  2. What was brought = what was tallied + what was left over; what left the store room
 *     with the sale is what was sold, given away, spoiled or wasted, to the unit.
 *  3. It is one transaction, and a sale has one.
 */
#pragma once

#include "store/stead-sale-repo.h"
#include "store/stead-work-repo.h"

G_BEGIN_DECLS

/* Where a left-over goes.  Not to be changed in order: the file holds their words. */
typedef enum
{
  STEAD_LEFT_STORE,     /* back into the store room: it stays in its lot */
  STEAD_LEFT_KITCHEN,   /* to be cooked with: it stays in its lot until it is taken */
  STEAD_LEFT_GIVEN,     /* donated */
  STEAD_LEFT_WASTE,     /* spoiled, or missing */
} SteadLeftPlace;
#define STEAD_N_LEFT_PLACES (STEAD_LEFT_WASTE + 1)

typedef struct
{
  gint64          line_id;
  SteadLeftPlace  goes_to;
  double          units;     /* above 0 */
  char           *reason;    /* (nullable): needed for waste */
} SteadSaleLeft;

void stead_sale_left_free (SteadSaleLeft *left);

/* (element-type SteadSaleLeft): what was put away after a sale. */
GPtrArray *stead_sale_left_list (SteadStore *store, gint64 sale_id, GError **error) G_GNUC_WARN_UNUSED_RESULT;

typedef struct
{
  gint64     sale_id;
  GArray    *pieces;          /* of SteadCashPiece: all that lies in the box, the float with it */
  gint64     first_id;        /* two people count */
  gint64     second_id;
  char      *reason;          /* (nullable): of an over or short */
  char      *note;            /* (nullable) */
  gint64     float_account;   /* where the float came from, if the cash book does not have it in
                                 the box; 0: it must be there */
  gint64     keep_cents;      /* stays in the box for change */
  gint64     deposit_account; /* where the rest goes; 0: it stays in the box */
  char      *deposit_slip;    /* (nullable): number of the slip */
  GPtrArray *costs;           /* (nullable): of SteadSaleCost: what they came to; NULL: as planned */
  GPtrArray *lefts;           /* of SteadSaleLeft */
  GArray    *shift_ids;       /* of gint64: shifts that become hours */
  char      *change_next;     /* (nullable) */
  gint64     at;              /* seconds since 1970 */
} SteadSaleCashUp;

SteadSaleCashUp *stead_sale_cash_up_new  (void) G_GNUC_WARN_UNUSED_RESULT;
void             stead_sale_cash_up_free (SteadSaleCashUp *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadSaleCashUp, stead_sale_cash_up_free)

/* What must lie in the box, and what does. */
typedef struct
{
  gint64 float_cents;
  gint64 takings_cents;    /* of the tally, without what was paid before the day */
  gint64 ahead_cents;      /* paid before the day */
  gint64 paid_out_cents;   /* out of the box, with slips */
  gint64 expected_cents;   /* float + takings - paid out */
  gint64 counted_cents;
  gint64 over_cents;       /* below 0: short */
} SteadSaleTill;

/* @costs: (nullable): as in a cash-up; @pieces: (nullable): nothing is counted yet. */
gboolean stead_sale_till (SteadStore *store, const SteadSale *sale, const GPtrArray *costs, const GArray *pieces,
                          SteadSaleTill *out, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* Which part of a cash-up is wrong. */
typedef enum
{
  STEAD_CASH_UP_PART_NONE,
  STEAD_CASH_UP_PART_COUNT,
  STEAD_CASH_UP_PART_PEOPLE,
  STEAD_CASH_UP_PART_REASON,
  STEAD_CASH_UP_PART_FLOAT,
  STEAD_CASH_UP_PART_COSTS,
  STEAD_CASH_UP_PART_LEFTS,    /* @line_id: of which good */
  STEAD_CASH_UP_PART_DEPOSIT,
} SteadCashUpPart;

typedef struct
{
  SteadCashUpPart part;
  gint64          line_id;
} SteadCashUpFault;

/**
 * stead_sale_cash_up_post:
 * @out_fault: (out) (optional): where @error lies
 *
 * Writes the count, the lines of the cash book, the movements out of the lots, the
 * left-overs and the hours that were accepted.  Goods go out of the planned lots first,
 * then out of what expires first; packaging goes as far as the store room has it.
 * Refused: a sale that is cashed up, one without a box, a difference without a reason,
 * units that do not add up, and more than the lots hold.
 */
gboolean stead_sale_cash_up_post (SteadStore *store, SteadSaleCashUp *self, SteadCashUpFault *out_fault,
                                  GError **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
