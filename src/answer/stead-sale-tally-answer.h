/* stead-sale-tally-answer.h - "How is the stall doing, and what runs out next?"
 *
 * Read after each tap: it asks for sums only, no costs and no forecasts.
 */
#pragma once

#include "answer/stead-sale-answer.h"

G_BEGIN_DECLS

typedef struct
{
  SteadSaleGood *good;          /* of the sale */
  SteadSaleSum   sum;
  gint64         price_cents;   /* now */
  double         left_units;    /* brought less tallied */
  double         ordered_units; /* of it, waiting to be collected */
  char          *left;          /* "4 dozen left", "sold out" */
} SteadTallyLine;

typedef struct
{
  SteadFarm     *farm;
  SteadSale     *sale;
  GPtrArray     *lines;         /* of SteadTallyLine */
  GPtrArray     *orders;        /* of SteadSaleOrder */
  SteadSaleTill  till;
  gint64         last_tap;      /* 0: none */
  char          *last;          /* (nullable): "1 dozen Eggs, sold" */
  char          *sentence;      /* markup */
} SteadTallyAnswer;

void stead_tally_answer_free (SteadTallyAnswer *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadTallyAnswer, stead_tally_answer_free)

SteadTallyAnswer *stead_tally_answer_new (SteadStore  *store,
                                          gint64       sale_id,
                                          GError     **error) G_GNUC_WARN_UNUSED_RESULT;

/**
 * stead_tally_change:
 * @due_cents: what has to be paid
 * @given_cents: what the customer gave
 *
 * Returns: (transfer full): "Give back $3.50: 3 × $1.00, 2 × $0.25", or that it is not enough
 */
char *stead_tally_change (const SteadFarm *farm,
                          gint64           due_cents,
                          gint64           given_cents) G_GNUC_WARN_UNUSED_RESULT;

/* (transfer full): of SteadWhy: what was taken, what must be in the box, what is left. */
GPtrArray *stead_tally_answer_whys (const SteadTallyAnswer *self) G_GNUC_WARN_UNUSED_RESULT;

/**
 * stead_tally_due_why:
 * @prices: (element-type gint64): of what the customer takes; below 0: taken back
 * @due_cents: their sum
 * @given_cents: 0: nothing yet
 */
SteadWhy *stead_tally_due_why (const SteadFarm *farm,
                               const GArray    *prices,
                               gint64           due_cents,
                               gint64           given_cents) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
