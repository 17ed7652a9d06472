/* stead-goods.c - the schedule from materials to goods sold. */
#include "config.h"

#include "core/stead-goods.h"

void
stead_goods_from_made (const SteadGoods  *goods,
                       double             made_cents,
                       SteadGoodsFigures *out)
{
  g_return_if_fail (goods != NULL && out != NULL);

  out->made = made_cents;
  out->available = goods->begin_finished + made_cents;
  out->sold = out->available - goods->end_finished;
  out->gross_margin = goods->sales - out->sold;
  out->profit = out->gross_margin - goods->selling;
}

void
stead_goods_figures (const SteadGoods  *goods,
                     SteadGoodsFigures *out)
{
  double made;

  g_return_if_fail (goods != NULL && out != NULL);

  out->materials_used = goods->begin_materials + goods->purchases - goods->end_materials;
  out->direct_materials = out->materials_used - goods->indirect_materials;
  made = out->direct_materials + goods->labor + goods->overhead
         + goods->begin_in_process - goods->end_in_process;
  stead_goods_from_made (goods, made, out);
}
