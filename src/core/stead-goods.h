/* stead-goods.h - the schedule from materials to goods sold.
 *
 * Source: OpenStax Principles of Accounting vol. 2, section 4.5; Saylor
 * Financial Accounting, section 8.3.
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* All in cents. */
typedef struct
{
  double begin_materials;
  double purchases;
  double end_materials;
  double indirect_materials;  /* of those used: part of overhead instead */
  double labor;               /* direct */
  double overhead;
  double begin_in_process;
  double end_in_process;
  double begin_finished;
  double end_finished;
  double sales;
  double selling;             /* cost of selling */
} SteadGoods;

typedef struct
{
  double materials_used;      /* begin + bought - end */
  double direct_materials;    /* less the indirect ones */
  double made;                /* + labor + overhead + begin - end in process */
  double available;           /* + begin finished */
  double sold;                /* - end finished */
  double gross_margin;        /* sales - sold */
  double profit;              /* - selling */
} SteadGoodsFigures;

void stead_goods_figures (const SteadGoods  *goods,
                          SteadGoodsFigures *out);

/**
 * stead_goods_from_made:
 * @made_cents: what the finished goods cost that were made or bought
 *
 * The lower half of the schedule, for goods whose making is known as one sum.
 */
void stead_goods_from_made (const SteadGoods  *goods,
                            double             made_cents,
                            SteadGoodsFigures *out);

G_END_DECLS
