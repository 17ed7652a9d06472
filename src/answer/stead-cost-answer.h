/* stead-cost-answer.h - "What does one dozen really cost us?"
 *
 * A flock gives from week to week: what it cost in a period, over the eggs of that
 * period.  A tank or a bed is harvested at its end: all that it cost and will cost,
 * over all that it gave and will give (core/stead-batch-cost.h), whatever the period.  What the
 * kitchen makes: what it used in the period over what came of it, or, if nothing was
 * made, the recipe at today's prices.
 */
#pragma once

#include "answer/stead-batch-money.h"
#include "answer/stead-words.h"
#include "core/stead-cost.h"
#include "store/stead-farm-repo.h"
#include "store/stead-flock-repo.h"
#include "store/stead-overhead-repo.h"
#include "store/stead-product-repo.h"
#include "store/stead-recipe-repo.h"

G_BEGIN_DECLS

typedef enum
{
  STEAD_PERIOD_12_WEEKS,      /* the last 84 days: the default */
  STEAD_PERIOD_4_WEEKS,
  STEAD_PERIOD_SCHOOL_YEAR,   /* from the start of this school year */
  STEAD_PERIOD_WHOLE_BATCH,
} SteadPeriod;

#define STEAD_N_PERIODS (STEAD_PERIOD_WHOLE_BATCH + 1)

/* "Last 12 weeks", … for a list of choices. */
const char *stead_period_name (SteadPeriod period);

/* "12-weeks", "4-weeks", "school-year", "whole-batch": for the command line and for programs. */
const char *stead_period_id      (SteadPeriod   period);
gboolean    stead_period_from_id (const char   *id,
                                  SteadPeriod  *out_period);

/* The first day of lay of a flock that was raised here, or the day it was housed. */
SteadDay stead_flock_first_lay (const SteadFlock *flock);

/* The days of a period of @flock, both included; never before its first day of lay or
 * after it ended.  The weeks of a flock that is over count back from its end. */
void stead_period_days (SteadPeriod        period,
                        const SteadFarm   *farm,
                        const SteadFlock  *flock,
                        SteadDay           today,
                        SteadDay          *out_from,
                        SteadDay          *out_to);

/* One finished kitchen batch. */
typedef struct
{
  gint64    batch_id;
  char     *name;
  SteadDay  started_on;
  SteadDay  day;         /* finished */
  double    good_base;
  gint64    cents;       /* of all that it used */
  double    minutes;     /* of work: as people's were written down, else as planned */
} SteadKitchenRun;

void stead_kitchen_run_free (SteadKitchenRun *run);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadKitchenRun, stead_kitchen_run_free)

typedef enum
{
  STEAD_KITCHEN_COOKED,   /* what the batches of the period used and gave */
  STEAD_KITCHEN_RECIPE,   /* none in the period: one making, at today's prices */
  STEAD_KITCHEN_STORE,    /* no recipe makes it: the item as it came, a hundred units */
} SteadKitchenBasis;

/* Where a product comes from that is packed from an item and not from a batch. */
typedef struct
{
  SteadKitchenBasis  basis;
  SteadItem         *item;
  SteadRecipe       *recipe;       /* (nullable): the one in use that makes the item */
  GPtrArray         *runs;         /* of SteadKitchenRun, oldest first; empty unless cooked */
  double             made_base;    /* lost ones included */
  double             good_base;
  double             minutes;      /* of work in the kitchen */
} SteadKitchenSheet;

void stead_kitchen_sheet_free (SteadKitchenSheet *sheet);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadKitchenSheet, stead_kitchen_sheet_free)

typedef struct
{
  SteadFarm       *farm;
  SteadProduct    *product;
  SteadBatch      *batch;                      /* (nullable): it comes out of the kitchen or the store room */
  SteadKitchenSheet *kitchen;                  /* (nullable): it comes out of a batch */
  SteadFlock      *flock;                      /* (nullable): of a batch of hens */
  SteadBatchMoney *money;                      /* (nullable): of a batch of fish or a crop */
  SteadPeriod      period;                     /* the whole batch, if it is harvested at its end */
  SteadDay         from, to;
  int              spans_back;                 /* periods before the one up to today; 0: that one */
  SteadDay         wait_until;                 /* nothing of it is sold up to this day; STEAD_DAY_NONE */
  SteadFlockTotals totals;                     /* of a flock's log in the period */
  SteadCostSheet   sheet;
  SteadOverhead    overhead;                   /* the farm's rate … */
  double           overhead_used;              /* … and how much of its base this used */
  char            *labels[STEAD_N_COST_KINDS]; /* "Feed", "Pullets, spread over lay"; the packaging's by its items */
  SteadWhy        *whys[STEAD_N_COST_KINDS];   /* (nullable): a part that is not there */
  SteadWhy        *total_why;
  GPtrArray       *uses;                       /* of SteadUse: what stands behind feed, bedding, supplies */
  char            *sentence;                   /* markup */
  char            *caution;                    /* (nullable): what is estimated or missing, plain */
} SteadCostAnswer;

void stead_cost_answer_free (SteadCostAnswer *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadCostAnswer, stead_cost_answer_free)

/**
 * stead_cost_answer_new:
 * @product_id: a product of a batch, or of an item
 * @period: over which days, of a flock or of the kitchen
 * @error: %STEAD_ANSWER_ERROR_MISSING says what to enter first
 */
SteadCostAnswer *stead_cost_answer_new (SteadStore   *store,
                                        gint64        product_id,
                                        SteadPeriod   period,
                                        GError      **error) G_GNUC_WARN_UNUSED_RESULT;

/* What it is made of, by name: the batch, the recipe, or the item. */
const char *stead_cost_answer_source (const SteadCostAnswer *self);

/* One entry behind a part of the sheet, for the list that opens under it. */
typedef struct
{
  SteadDay  day;
  char     *what;        /* "Layer feed, lot F26062-1, Lakeside Feed & Seed" */
  char     *quantity;    /* "6.8 lb" */
  const SteadUnit *unit; /* (nullable): of the amount, where it can be added up with others */
  double    base;        /* the same amount, base units; NAN without a unit */
  gint64    cents;
  gint64    receipt_id;  /* to jump to; 0: none */
  gint64    asset_id;    /* to jump to; 0: none */
} SteadCostEntry;

void stead_cost_entry_free (SteadCostEntry *entry);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadCostEntry, stead_cost_entry_free)

/* Returns: (transfer full) (element-type SteadCostEntry): they sum to the part's total */
GPtrArray *stead_cost_answer_entries (SteadStore             *store,
                                      const SteadCostAnswer  *self,
                                      SteadCostKind           kind,
                                      GError                **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
