/* stead-cost-private.h - the facts behind a cost sheet, and the words for it. */
#pragma once

#include "answer/stead-cost-answer.h"
#include "store/stead-asset-repo.h"
#include "store/stead-lot-repo.h"

G_BEGIN_DECLS

/* Common practice, no source: a year of depreciation has 365 days, so that a
 * student can work the charge of a span out on paper. */
#define STEAD_DAYS_A_YEAR 365.0

/* What one asset charges to one batch in a span of days. */
typedef struct
{
  SteadAsset *asset;
  double      frac;         /* share that the batch bears of the span; 1 by units, where each use names its batch */
  double      from_years;   /* span in use, years since it was bought; by time only */
  double      to_years;
  int         days;         /* the same span in days */
  double      units;        /* used by the batch in the span; by units only */
  double      units_before; /* used by all before it */
  double      cents;        /* unrounded */
} SteadAssetCharge;

void stead_asset_charge_free (SteadAssetCharge *charge);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadAssetCharge, stead_asset_charge_free)

/* @asset as the core's formulas take it. */
SteadDepreciable stead_asset_depreciable (const SteadAsset *asset);

/**
 * stead_asset_share_cents:
 * @asset: that wears by time, not by units
 * @first: not before it was bought
 * @last: not after it was gone; nothing is charged if before @first
 *
 * What @batch_id bears of the charge of these days, by the rule of the asset; unrounded.
 * The charges of two spans that meet are that of both together.
 */
gboolean stead_asset_share_cents (SteadStore        *store,
                                  const SteadAsset  *asset,
                                  gint64             batch_id,
                                  SteadDay           first,
                                  SteadDay           last,
                                  double            *out_cents,
                                  GError           **error) G_GNUC_WARN_UNUSED_RESULT;

/* (transfer full) (element-type SteadAssetCharge): those that charge something */
GPtrArray *stead_asset_charges (SteadStore  *store,
                                gint64       batch_id,
                                SteadDay     from,
                                SteadDay     to,
                                GError     **error) G_GNUC_WARN_UNUSED_RESULT;

/* What one packaging item costs in one unit sold. */
typedef struct
{
  SteadItem *item;
  double     quantity_base;  /* in one unit sold */
  gint64     lot_cents;      /* what the lot cost that it comes out of */
  double     lot_base;       /* base units that came in that lot; 0: no price known */
  double     unit_cents;     /* for quantity_base, unrounded; NAN: no price known */
  gboolean   is_gift;
} SteadPackCost;

void stead_pack_cost_free (SteadPackCost *pack);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadPackCost, stead_pack_cost_free)

/* All that a sheet is made of and the answer itself does not hold. */
typedef struct
{
  GPtrArray *charges;        /* of SteadAssetCharge */
  GPtrArray *packs;          /* of SteadPackCost */
  int        days;           /* of the period */
  int        laying_days;    /* of them, days at an age at which eggs are expected */
  gint64     eggs_before;    /* that the flock laid before the period */
  gboolean   birds_spread;   /* all of the birds' cost has been spread: what is left is charged */
  double     bird_cents;     /* to be spread, with what they are worth at the end: their price, or their rearing */
  double     bird_gift_cents; /* of it given */
  double     reared_feed_cents;   /* of a flock raised here, until lay: feed … */
  double     reared_other_cents;  /* … and everything else but the chicks */
  gint64     hens;           /* that it is spread over */
} SteadCostFacts;

void stead_cost_facts_clear (SteadCostFacts *facts);
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (SteadCostFacts, stead_cost_facts_clear)

/* Which line of the sheet something that a batch used up belongs to. */
SteadCostKind stead_cost_kind_of_use (SteadBatchKind batch,
                                      SteadItemKind  item);

/* Reads @facts for the product, batch and days of @answer. */
gboolean stead_cost_facts_read (SteadStore             *store,
                                const SteadCostAnswer  *answer,
                                SteadCostFacts         *facts,
                                GError                **error);

/* Makes the sheet out of @facts and the answer's totals and uses; of a batch that is
 * harvested at its end, out of its money. */
void stead_cost_facts_settle (SteadCostAnswer *answer,
                              SteadCostFacts  *facts);
void stead_cost_money_settle (SteadCostAnswer *answer,
                              SteadCostFacts  *facts);

void stead_cost_kitchen_settle (SteadCostAnswer *answer,
                                SteadCostFacts  *facts);

/* The sheet of 28 days: the last ones (@back 0), the 28 before them (1) … */
SteadCostAnswer *stead_cost_answer_new_span (SteadStore  *store,
                                             gint64       product_id,
                                             int          back,
                                             GError     **error) G_GNUC_WARN_UNUSED_RESULT;

/* Reads what the kitchen used and made; the days, uses and "kitchen" of @answer. */
gboolean stead_cost_kitchen_read (SteadStore       *store,
                                  SteadCostAnswer  *answer,
                                  GError          **error) G_GNUC_WARN_UNUSED_RESULT;
/* What equipment charges to its batches: fills @facts->charges. */
gboolean stead_cost_kitchen_charges (SteadStore             *store,
                                     const SteadCostAnswer  *answer,
                                     SteadCostFacts         *facts,
                                     GError                **error) G_GNUC_WARN_UNUSED_RESULT;
char *stead_cost_kitchen_good     (const SteadCostAnswer *answer) G_GNUC_WARN_UNUSED_RESULT;
char *stead_cost_kitchen_work     (const SteadCostAnswer *answer) G_GNUC_WARN_UNUSED_RESULT;
char *stead_cost_kitchen_sentence (const SteadCostAnswer *answer) G_GNUC_WARN_UNUSED_RESULT;

/* What kind of batch it comes from; kitchen without one. */
SteadBatchKind stead_cost_batch_kind (const SteadCostAnswer *answer);

/* The things used up, and what is used for years: of @answer's uses and @facts' charges. */
void stead_cost_add_uses    (SteadCostAnswer      *answer);
void stead_cost_add_charges (SteadCostAnswer      *answer,
                             const SteadCostFacts *facts);

/* The packaging of one unit, and the work on it; shared by all of the above. */
void stead_cost_add_packaging (SteadCostAnswer      *answer,
                               const SteadCostFacts *facts);

/* Of the Why of a line: its title, (transfer full); its formula and its source. */
char       *stead_cost_title   (const SteadCostAnswer *answer,
                                SteadCostKind          kind) G_GNUC_WARN_UNUSED_RESULT;
const char *stead_cost_formula (const SteadCostAnswer *answer,
                                SteadCostKind          kind) G_GNUC_WARN_UNUSED_RESULT;
const char *stead_cost_source  (const SteadCostAnswer *answer,
                                SteadCostKind          kind) G_GNUC_WARN_UNUSED_RESULT;

/* The lines of a Why of a batch that is harvested at its end: what is still to come of
 * @kind (nullable), and what can be sold of it. */
char *stead_cost_money_to_come (const SteadCostAnswer *answer,
                                SteadCostKind          kind) G_GNUC_WARN_UNUSED_RESULT;
char *stead_cost_money_good (const SteadCostAnswer *answer) G_GNUC_WARN_UNUSED_RESULT;
/* "Spent so far: $1.20.  Still to come: …" for the sentence; and what is uncertain in it. */
char *stead_cost_money_sentence (const SteadCostAnswer *answer) G_GNUC_WARN_UNUSED_RESULT;
void  stead_cost_money_caution (const SteadCostAnswer *answer,
                                GString               *text);

/* Reads the farm's rate and adds its line to the settled sheet; and how that line came about. */
gboolean  stead_cost_overhead_settle (SteadStore       *store,
                                      SteadCostAnswer  *answer,
                                      GError          **error) G_GNUC_WARN_UNUSED_RESULT;
char     *stead_cost_overhead_amount (const SteadCostAnswer *answer,
                                      double                 base) G_GNUC_WARN_UNUSED_RESULT;
SteadWhy *stead_cost_overhead_why    (const SteadCostAnswer *answer) G_GNUC_WARN_UNUSED_RESULT;

/* Labels, whys, sentence and caution. */
void stead_cost_answer_put_in_words (SteadCostAnswer      *answer,
                                     const SteadCostFacts *facts);

/* The Why of one part that is there; in stead-cost-why.c. */
SteadWhy *stead_cost_why (const SteadCostAnswer *answer,
                          const SteadCostFacts  *facts,
                          SteadCostKind          kind) G_GNUC_WARN_UNUSED_RESULT;
SteadWhy *stead_cost_total_why (const SteadCostAnswer *answer) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
