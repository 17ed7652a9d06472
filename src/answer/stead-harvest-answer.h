/* stead-harvest-answer.h - "What does this harvest make, and what does it carry?"
 *
 * While a person types, stead_harvest_answer_set() works out what the lot will be:
 * its code, its best-by day, its cost, and whether the batch has to wait.
 */
#pragma once

#include "answer/stead-batch-money.h"
#include "store/stead-item-repo.h"

G_BEGIN_DECLS

typedef struct
{
  SteadFarm       *farm;
  SteadBatch      *batch;
  SteadBatchMoney  money;         /* without the harvest that is being changed */
  gint64           harvest_id;    /* being changed; 0: a new one */
  gint64           last_item_id;  /* to propose; 0: nothing was harvested yet */
  gint64           alive;         /* fish that can be taken out on the day; -1: not fish */
  const SteadUnit *unit;          /* of the output, as it is shown */
  double           unit_cents;    /* cost of one base unit; NAN: nothing is known of the output */
  SteadDay         day;           /* of the harvest, as it was typed last */
  double           quantity_base; /* good */
  const SteadUnit *lot_unit;      /* that the lot is told in */
  gboolean         takes_rest;    /* the lot carries all that is left */
  gboolean         keeps;         /* @best_by is what the item keeps, not a day that was typed */
  SteadDay         wait_until;    /* on the day of the harvest; STEAD_DAY_NONE */
  SteadDay         best_by;       /* STEAD_DAY_NONE: it keeps */
  gint64           cost_cents;    /* that the lot carries */
  gint64           each_cents;    /* of one @lot_unit of it; 0 for nothing */
  char            *lot_code;      /* (nullable): of the lot to come */
  char            *sentence;      /* (nullable) markup: what will be made */
  char            *caution;       /* (nullable) plain: why it must wait, and what is uncertain */
} SteadHarvestAnswer;

void stead_harvest_answer_free (SteadHarvestAnswer *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadHarvestAnswer, stead_harvest_answer_free)

/* @harvest_id: the one that is changed, or 0 */
SteadHarvestAnswer *stead_harvest_answer_new (SteadStore  *store,
                                              gint64       batch_id,
                                              gint64       harvest_id,
                                              GError     **error) G_GNUC_WARN_UNUSED_RESULT;

/* As typed so far; texts and costs follow.  Only the wait, the code and the item are read. */
gboolean stead_harvest_answer_set (SteadHarvestAnswer  *self,
                                   SteadStore          *store,
                                   const SteadHarvest  *harvest,
                                   GError             **error) G_GNUC_WARN_UNUSED_RESULT;

/* (transfer full) (element-type SteadWhy): what the lot carries, what one costs, what went in, the best-by day; empty
 * while nothing good is typed */
GPtrArray *stead_harvest_answer_whys (const SteadHarvestAnswer *self) G_GNUC_WARN_UNUSED_RESULT;

/* The cents that the lot of @harvest is to carry, new or changed; 0 without anything good. */
gboolean stead_harvest_cost (SteadStore          *store,
                             const SteadHarvest  *harvest,
                             gint64              *out_cents,
                             GError             **error) G_GNUC_WARN_UNUSED_RESULT;

/* What a harvest was, for the undo menu: "20 kg of Catfish, dressed, harvested on Mar 3". */
char *stead_harvest_name (const SteadHarvest *harvest,
                          const SteadItem    *item,
                          const char         *batch_name) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
