/* stead-store-room-answer.h - "What is where, what must be bought, what must be used soon, what was wasted?" */
#pragma once

#include "answer/stead-stock-answer.h"
#include "store/stead-count-repo.h"

G_BEGIN_DECLS

/* Best-by days this near are told (common practice, no source). */
#define STEAD_SOON_DAYS 7

/* Buy for so many days of the present use (common practice, no source). */
#define STEAD_REORDER_DAYS 28

/* A lot whose best-by day is over, or near. */
typedef struct
{
  SteadLot *lot;         /* (unowned) */
  int       days;        /* until its best-by day; below 0: past */
  char     *text;        /* "Flour, lot I26040-1, 12 lb: 3 days" */
} SteadSoonLine;

/* What to buy. */
typedef struct
{
  const SteadStockLine *line;
  double                base;   /* that brings it to its reorder mark, or to 28 days of use, whichever is more */
  char                 *text;   /* "Layer feed: 150 lb" */
} SteadReorderLine;

typedef struct
{
  char     *name;        /* of the place; "No place given" */
  gint64    place_id;    /* 0: none */
  guint     n_lots;
  gint64    cents;
} SteadPlaceLine;

/* What left the store room unsold, over the last 12 weeks, one reason a row. */
typedef struct
{
  SteadMoveKind  kind;      /* lost, given, counted, corrected */
  char          *reason;    /* as it was written down first */
  guint          n;
  gint64         cents;     /* 0 or more but for goods found */
} SteadWasteLine;

typedef struct
{
  SteadStockAnswer *stock;
  GPtrArray        *lots;       /* of SteadLot, on hand */
  GPtrArray        *soon;       /* of SteadSoonLine, the nearest first */
  GPtrArray        *reorder;    /* of SteadReorderLine */
  GPtrArray        *places;     /* of SteadPlaceLine, by name, those without a place last */
  GPtrArray        *waste;      /* of SteadWasteLine, the dearest first */
  gint64            lost_cents, given_cents, counted_cents;   /* over the same weeks */
  SteadDay          counted_on; /* the last count; STEAD_DAY_NONE: never */
  char             *sentence;   /* markup */
  char             *caution;    /* (nullable): something is past its best-by day */
} SteadStoreRoomAnswer;

void stead_store_room_answer_free (SteadStoreRoomAnswer *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadStoreRoomAnswer, stead_store_room_answer_free)

SteadStoreRoomAnswer *stead_store_room_answer_new (SteadStore  *store,
                                                   GError     **error) G_GNUC_WARN_UNUSED_RESULT;

/**
 * stead_lots_places:
 * @lots: (element-type SteadLot)
 *
 * Returns: (transfer full): of SteadPlaceLine: where they lie, by name, those without a place last
 */
GPtrArray *stead_lots_places (const GPtrArray *lots) G_GNUC_WARN_UNUSED_RESULT;

/* (transfer full) (nullable): how long a thing lasts and how much to buy, worked out for one
 * that shows it; %NULL while nothing is used */
SteadWhy *stead_store_room_answer_why (const SteadStoreRoomAnswer *self) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
