/* stead-statement-figures.c - what stands beside the lines of the statements: where the cost
 * is, how income comes from cash, and what is not paid. */
#include "config.h"

#include "answer/stead-statement-private.h"

static void
add_cost (SteadStatementAnswer *answer,
          const SteadPosting   *posting)
{
  gint64 *parts[STEAD_N_HEADS] = {
    [STEAD_HEAD_STOCK] = &answer->cost.stock, [STEAD_HEAD_GROWING] = &answer->cost.growing,
    [STEAD_HEAD_SOLD] = &answer->cost.sold, [STEAD_HEAD_EGGS] = &answer->cost.eggs,
    [STEAD_HEAD_LOST] = &answer->cost.lost, [STEAD_HEAD_GIVEN] = &answer->cost.given,
    [STEAD_HEAD_COUNTED] = &answer->cost.counted, [STEAD_HEAD_LEFT] = &answer->cost.left,
  };

  if (parts[posting->head] == NULL)
    return;
  *parts[posting->head] += posting->cents;
  answer->cost.put += posting->cents;
}

static void
add_accrual (SteadStatementAnswer *answer,
             const SteadPosting   *posting)
{
  SteadAccrual *accrual = &answer->accrual;
  gboolean is_inside = posting->day >= answer->from;
  gboolean is_goods = posting->head == STEAD_HEAD_STOCK || posting->head == STEAD_HEAD_GROWING;
  gboolean is_owed = posting->head == STEAD_HEAD_OWED_RECEIPT || posting->head == STEAD_HEAD_OWED_BATCH;
  double cents = (double) posting->cents;

  accrual->inventory_end += is_goods ? cents : 0;
  accrual->inventory_begin += is_goods && !is_inside ? cents : 0;
  if (!is_inside)
    return;
  accrual->payable_change -= is_owed ? cents : 0;
  if (posting->head == STEAD_HEAD_SALES || posting->head == STEAD_HEAD_OTHER_IN
      || posting->head == STEAD_HEAD_OVER_SHORT)
    accrual->sales -= cents;
  if (posting->head == STEAD_HEAD_COSTS || (is_owed && posting->fact == STEAD_FACT_CASH_LINE))
    accrual->cash_costs += cents;
  if (posting->head == STEAD_HEAD_IN_KIND && posting->fact != STEAD_FACT_ASSET)
    accrual->cash_costs -= cents;
  if (posting->head == STEAD_HEAD_WEAR || (posting->head == STEAD_HEAD_GROWING && posting->fact == STEAD_FACT_ASSET))
    accrual->depreciation += cents;
}

static void
add_unpaid (SteadStatementMaker *self)
{
  g_autoptr(GHashTable) sums = stead_maker_sums (self, STEAD_HEAD_OWED_RECEIPT);
  GHashTableIter iter;
  gpointer value;

  g_hash_table_iter_init (&iter, sums);
  while (g_hash_table_iter_next (&iter, NULL, &value))
    if (((const SteadSumPair *) value)->end < 0)
      {
        self->answer->n_unpaid++;
        self->answer->unpaid_cents -= ((const SteadSumPair *) value)->end;
      }
}

void
stead_statement_add_figures (SteadStatementMaker *self)
{
  for (guint i = 0; i < self->postings->len; i++)
    {
      add_cost (self->answer, &g_array_index (self->postings, SteadPosting, i));
      add_accrual (self->answer, &g_array_index (self->postings, SteadPosting, i));
    }
  add_unpaid (self);
}
