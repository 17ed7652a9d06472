/* stead-sale-repo.h - a sale day as it is planned: what is sold, at what price, by whom.
 *
 * What happens on the day is in stead-sale-tally.h, and how it ends in
 * stead-sale-cash-up.h.  Hours are minutes since the farm's midnight; an hour past
 * midnight is more than 1440.  Units are of the product: dozens, pounds, jars.
 */
#pragma once

#include "store/stead-cash-count-repo.h"
#include "store/stead-product-repo.h"

G_BEGIN_DECLS

/* Most of what one sale day can have; more is a slip of the pen. */
#define STEAD_SALE_MOST_GOODS 40
#define STEAD_SALE_MOST_ROWS 200
#define STEAD_SALE_MOST_UNITS 100000.0

typedef struct
{
  gint64  lot_id;
  double  base;          /* of it to bring, above 0, in the base unit of its item */
} SteadSaleLot;

/* One product on one sale day. */
typedef struct
{
  gint64   id;           /* 0: not saved yet */
  gint64   product_id;
  gint64   price_cents;  /* planned */
  double   planned;      /* units, 0 or more */
  double   brought;      /* units that came to the stall; NAN: as planned */
  double   low;          /* what people may ask for; NAN: not guessed.  All three or none */
  double   likely;
  double   high;
  double   cost_cents;   /* what one was thought to cost when it was planned; NAN: not known */
  gint64   left_cents;   /* what one left over is still worth; below 0: it costs */
  gint64   missed_cents; /* goodwill lost with one customer who goes without */
  char     key;          /* of the tally: a digit or a small letter; 0: one is chosen when saved */
  GArray  *lots;         /* of SteadSaleLot */
  /* Filled in when read: */
  char    *name;
  SteadPack pack;
  double   base_per_unit;
  gint64   item_id;      /* of the store room; 0: it is in no lot */
} SteadSaleGood;

typedef struct
{
  gint64   id;
  char    *name;         /* "Table", "Permit", "Ice" */
  gint64   cents;        /* planned, 0 or more */
  gint64   paid_cents;   /* what it came to; -1: as planned */
  gboolean from_till;    /* paid with money out of the box, with a slip */
} SteadSaleCost;

typedef struct
{
  gint64  id;
  gint64  person_id;
  int     from_min;
  int     to_min;
  int     break_min;
  char   *duty;          /* (nullable) */
  char   *person_name;   /* filled in when read */
} SteadSaleShift;

typedef struct
{
  gint64    id;
  char     *text;
  gboolean  packed;
} SteadSaleBring;

/* A time that is not known, and seconds since 1970 (UTC) else. */
#define STEAD_SALE_NO_TIME G_MININT64

typedef struct
{
  gint64     id;           /* 0: not saved yet */
  char      *name;         /* "Winter market"; unique on its day */
  SteadDay   day;
  char      *location;     /* (nullable) */
  int        opens_min;
  int        closes_min;
  char      *weather;      /* (nullable): as foreseen, or as it was */
  gint64     account_id;   /* the box that the money goes into; 0: not said yet */
  char      *note;         /* (nullable) */
  gint64     opened_at;    /* first tap; STEAD_SALE_NO_TIME: not yet */
  gint64     closed_at;    /* cashed up; STEAD_SALE_NO_TIME: not yet */
  char      *change_next;  /* (nullable): what to do otherwise next time */
  GPtrArray *goods;        /* of SteadSaleGood */
  GPtrArray *costs;        /* of SteadSaleCost */
  GPtrArray *shifts;       /* of SteadSaleShift, by hour */
  GArray    *float_pieces; /* of SteadCashPiece, highest face first */
  GPtrArray *bring;        /* of SteadSaleBring */
  gint64     count_id;     /* of the cash-up; 0: not yet.  Filled in when read */
} SteadSale;

SteadSale      *stead_sale_new       (void) G_GNUC_WARN_UNUSED_RESULT;
void            stead_sale_free      (SteadSale *sale);
SteadSaleGood  *stead_sale_good_new  (void) G_GNUC_WARN_UNUSED_RESULT;
void            stead_sale_good_free (SteadSaleGood *good);
void            stead_sale_cost_free (SteadSaleCost *cost);
void            stead_sale_shift_free (SteadSaleShift *shift);
void            stead_sale_bring_free (SteadSaleBring *bring);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadSale, stead_sale_free)
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadSaleGood, stead_sale_good_free)

/* What is brought: as planned, until something else is said. */
double stead_sale_good_brought (const SteadSaleGood *good);
/* The float in minor units. */
gint64 stead_sale_float_cents  (const SteadSale *sale);
/* What a cost came to, or is planned at. */
gint64 stead_sale_cost_paid    (const SteadSaleCost *cost);
/* (nullable) (transfer none): the good with this id. */
SteadSaleGood *stead_sale_find_good (const SteadSale *sale, gint64 line_id);
/* Seconds since 1970 of an hour of @day on the clock of the wall. */
gint64 stead_sale_time (SteadDay day, int minute);

/* Newest day first; goods, costs and the rest are left empty. */
GPtrArray *stead_sale_repo_list (SteadStore *store, GError **error) G_GNUC_WARN_UNUSED_RESULT;
SteadSale *stead_sale_repo_get  (SteadStore *store, gint64 id, GError **error) G_GNUC_WARN_UNUSED_RESULT;
/* The next one that is not cashed up, today or later, else the last one that is still
 * open; 0: none.  -1 with @error. */
gint64     stead_sale_repo_next (SteadStore *store, GError **error);

/* Where a plan is wrong, so that it can be said beside the field. */
typedef enum
{
  STEAD_SALE_PART_NONE,
  STEAD_SALE_PART_NAME,
  STEAD_SALE_PART_DAY,
  STEAD_SALE_PART_HOURS,
  STEAD_SALE_PART_ACCOUNT,
  STEAD_SALE_PART_GOODS,     /* @row: which good */
  STEAD_SALE_PART_COSTS,
  STEAD_SALE_PART_SHIFTS,
  STEAD_SALE_PART_FLOAT,
  STEAD_SALE_PART_BRING,
} SteadSalePart;

typedef struct
{
  SteadSalePart part;
  guint         row;
} SteadSaleFault;

/**
 * stead_sale_repo_save:
 * @out_fault: (out) (optional): where @error lies, %STEAD_SALE_PART_NONE if nowhere
 *
 * Saves the whole plan; an id of 0 inserts and fills in the id.  Refused: hours that end
 * before they begin, shifts of one person that overlap, a lot of which more is planned
 * than it holds, one product twice, and a change of goods, float or account of a sale
 * that is cashed up.
 */
gboolean   stead_sale_repo_save   (SteadStore *store, SteadSale *sale, SteadSaleFault *out_fault,
                                   GError **error) G_GNUC_WARN_UNUSED_RESULT;
/* Refused once something was tapped. */
gboolean   stead_sale_repo_delete (SteadStore *store, gint64 id, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/**
 * stead_sale_repo_again:
 * @id: the sale day that is taken as a pattern
 * @day: of the new one
 * @out_id: (out): the new one
 *
 * Copies all but the lots, the orders, and what is over: products that are not sold any
 * more, people who left.  Prices are those in force on @day.
 */
gboolean   stead_sale_repo_again  (SteadStore *store, gint64 id, SteadDay day, gint64 *out_id,
                                   GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* What people did over all sale days, one product on one day a row, oldest first. */
typedef struct
{
  gint64    sale_id;
  gint64    line_id;
  gint64    product_id;
  double    sold, samples, given, spoiled;           /* by the tally */
  gint64    takings_cents;                           /* of what was sold, paid ahead or not */
  gint64    ahead_cents;                             /* of it, paid before the day */
  double    to_store, to_kitchen, to_given, to_waste;  /* left over */
  gint64    sold_cents;                              /* cost that left the store room with what was sold */
  gint64    lost_cents;                              /* … with what was given, spoiled, wasted */
  gboolean  has_cost;                                /* movements tell it */
} SteadSaleSum;

/* @sale_id: 0: of all sale days.  (element-type SteadSaleSum) */
GArray    *stead_sale_repo_sums (SteadStore *store, gint64 sale_id, GError **error) G_GNUC_WARN_UNUSED_RESULT;
/* (nullable) (transfer none): the row of a line. */
const SteadSaleSum *stead_sale_sums_find (const GArray *sums, gint64 line_id);
/* Units that the tally and what was left over tell of. */
double stead_sale_sum_tallied (const SteadSaleSum *sum);
double stead_sale_sum_left    (const SteadSaleSum *sum);

G_END_DECLS
