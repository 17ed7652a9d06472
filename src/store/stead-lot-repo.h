/* stead-lot-repo.h - traceable quantities and the ledger of movements.
 *
 * The ledger is the only thing that changes a lot; a lot is never below zero
 * (a trigger in the file holds this, whoever writes).  The cents that leave a
 * lot are whole, and the last movement takes what is left: nothing is lost or
 * made by rounding.  A farm that averages holds this for all lots of an item
 * together (stead-recost.h).
 */
#pragma once

#include "store/stead-item-repo.h"
#include "store/stead-store.h"

G_BEGIN_DECLS

typedef enum
{
  STEAD_MOVE_RECEIVED,
  STEAD_MOVE_USED,       /* by a batch */
  STEAD_MOVE_SOLD,
  STEAD_MOVE_GIVEN,
  STEAD_MOVE_LOST,       /* spoiled, spilled, eaten by mice */
  STEAD_MOVE_COUNTED,    /* a count found more or less */
  STEAD_MOVE_CORRECTED,
  STEAD_MOVE_MADE,       /* by a batch */
} SteadMoveKind;

typedef struct
{
  gint64         id;
  char          *code;            /* unique: "F26062-1" */
  gint64         item_id;
  char          *item_name;
  SteadItemKind  item_kind;
  const SteadUnit *unit;
  SteadDay       day;             /* received or made */
  SteadDay       best_by;
  gint64         receipt_id;      /* 0: made by a batch */
  char          *supplier;        /* (nullable) */
  gint64         batch_id;        /* that made it; 0: bought */
  char          *batch_name;      /* (nullable) */
  gint64         place_id;        /* where it lies; 0: not said */
  char          *place_name;      /* (nullable) */
  gboolean       is_gift;
  double         received_base;   /* or made */
  gint64         received_cents;
  double         on_hand_base;
  gint64         on_hand_cents;   /* its share of the item, if the farm averages */
} SteadLot;

void stead_lot_free (SteadLot *lot);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadLot, stead_lot_free)

typedef struct
{
  gint64         id;
  gint64         lot_id;
  char          *lot_code;
  char          *item_name;
  SteadItemKind  item_kind;
  const SteadUnit *unit;
  SteadDay       day;
  SteadMoveKind  kind;
  double         quantity_base;   /* signed: out of the lot is negative */
  gint64         cost_cents;      /* signed the same way */
  gboolean       is_gift;
  gint64         batch_id;        /* 0: none */
  gint64         receipt_id;      /* of the lot; 0: none */
  char          *reason;          /* (nullable) */
  gint64         person_id;       /* 0: not said */
} SteadMove;

void stead_move_free (SteadMove *move);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadMove, stead_move_free)

/* Lots with something on hand (@all: every lot), by item name, then oldest first. */
GPtrArray *stead_lot_repo_list (SteadStore *store, gboolean all, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* Returns: (transfer full): or %NULL with @error NOT_FOUND */
SteadLot  *stead_lot_repo_get (SteadStore *store, gint64 id, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* The movements of one lot, oldest first. */
GPtrArray *stead_lot_repo_moves (SteadStore *store, gint64 lot_id, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* Returns: (transfer full): or %NULL with @error NOT_FOUND */
SteadMove *stead_lot_repo_get_move (SteadStore *store, gint64 id, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/**
 * stead_lot_repo_use:
 * @item_id: what is taken
 * @batch_id: by which batch
 * @quantity_base: how much, above 0
 *
 * First in, first out over the lots that were there on @day.  Refused, naming
 * what is on hand, if there is not enough.
 */
gboolean stead_lot_repo_use (SteadStore *store, gint64 item_id, gint64 batch_id, SteadDay day,
                             double quantity_base, gint64 person_id, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* The same out of one lot; @reason (nullable).  Refused, naming what it holds, if that is less. */
gboolean stead_lot_repo_use_lot (SteadStore *store, gint64 lot_id, gint64 batch_id, SteadDay day, double quantity_base,
                                 const char *reason, gint64 person_id, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* The same for what goes out with something sold, by no batch: cartons, labels.
 * @reason (nullable): "Market of March 7". */
gboolean stead_lot_repo_sell (SteadStore *store, gint64 item_id, SteadDay day, double quantity_base,
                              const char *reason, gint64 person_id, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* Lost, given, counted, corrected: @quantity_base is signed; a reason is needed.  A
 * count is of the end of the day: what was fed on it stays where it was taken from. */
gboolean stead_lot_repo_adjust (SteadStore *store, gint64 lot_id, SteadMoveKind kind, SteadDay day,
                                double quantity_base, const char *reason, gint64 person_id,
                                GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* All of a lot lies at @place_id now; 0: nowhere in particular. */
gboolean stead_lot_repo_put (SteadStore *store, gint64 lot_id, gint64 place_id, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* What was lost, given away, counted and corrected in a span of days, oldest first. */
GPtrArray *stead_lot_repo_unsold (SteadStore *store, SteadDay from, SteadDay to, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* What one batch took, an item a row, for a span of days. */
typedef struct
{
  gint64         item_id;
  char          *item_name;
  SteadItemKind  kind;
  const SteadUnit *unit;
  double         quantity_base;     /* covered by receipts */
  gint64         cost_cents;
  gint64         gift_cents;        /* of which out of gifts */
  double         uncovered_base;    /* feed in the log that no receipt covers yet */
  double         uncovered_cents;   /* the same at the nearest known price; NAN: no price known */
} SteadUse;

void stead_use_free (SteadUse *use);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadUse, stead_use_free)

GPtrArray *stead_lot_repo_uses (SteadStore *store, gint64 batch_id, SteadDay from, SteadDay to,
                                GError **error) G_GNUC_WARN_UNUSED_RESULT;
/* The movements behind one row of the above, oldest first. */
GPtrArray *stead_lot_repo_use_moves (SteadStore *store, gint64 batch_id, gint64 item_id, SteadDay from,
                                     SteadDay to, GError **error) G_GNUC_WARN_UNUSED_RESULT;
/* All that a batch used, whatever it is, oldest first: of SteadMove. */
GPtrArray *stead_lot_repo_batch_moves (SteadStore *store, gint64 batch_id, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* On hand of one item, and its use a day over the last @days days. */
typedef struct
{
  double         on_hand_base;
  gint64         on_hand_cents;
  double         use_per_day_base;
  double         next_unit_cents;   /* cents for one base unit of the next lot to be used, or the
                                       average of what is on hand if the farm averages;
                                       the last known price when none is on hand; NAN: never bought */
  gint64         next_cost_cents;   /* of that whole lot as it came; 0: never bought */
  double         next_base;         /* base units that came in it; 0: never bought */
  gboolean       next_is_gift;
} SteadStock;

gboolean stead_lot_repo_stock (SteadStore *store, gint64 item_id, SteadDay today, int days,
                               SteadStock *out, GError **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
