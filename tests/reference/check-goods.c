/* check-goods.c - the topics on cost of goods, losses, overhead and stock. */
#include "check.h"

#include "core/stead-batch-loss.h"
#include "core/stead-depreciation.h"
#include "core/stead-goods.h"
#include "core/stead-overhead.h"
#include "core/stead-process-cost.h"
#include "core/stead-stock-cost.h"

#include <math.h>
#include <string.h>

/* process costing */

static SteadProcessFigures
process_of (CheckRow *row)
{
  static const char * const methods[] = { "weighted_average", "fifo", NULL };
  SteadProcess process = {
    .method = (SteadProcessMethod) check_word (row, "method", methods, -1),
    .begin_units = check_number_or (row, "begin_units", 0),
    .completed_units = check_number (row, "completed_units"),
    .end_units = check_number_or (row, "end_units", 0),
    .normal_lost_units = check_number_or (row, "normal_lost_units", 0),
    .abnormal_lost_units = check_number_or (row, "abnormal_lost_units", 0),
    .elements = {
      [STEAD_ELEMENT_MATERIALS] = { check_frac_or (row, "begin_materials_pct", 0),
                                    check_frac_or (row, "end_materials_pct", 0),
                                    check_frac_or (row, "lost_materials_pct", 0),
                                    check_cents_or (row, "begin_materials_usd", 0),
                                    check_cents_or (row, "added_materials_usd", 0) },
      [STEAD_ELEMENT_CONVERSION] = { check_frac_or (row, "begin_conversion_pct", 0),
                                     check_frac_or (row, "end_conversion_pct", 0),
                                     check_frac_or (row, "lost_conversion_pct", 0),
                                     check_cents_or (row, "begin_conversion_usd", 0),
                                     check_cents_or (row, "added_conversion_usd", 0) },
      [STEAD_ELEMENT_TRANSFERRED] = { .begin_cents = check_cents_or (row, "begin_transferred_usd", 0),
                                      .added_cents = check_cents_or (row, "added_transferred_usd", 0) },
    },
  };
  SteadProcessFigures figures;

  stead_process_figures (&process, &figures);
  return figures;
}

static double
process_eu_materials (CheckRow *row)
{
  return process_of (row).equivalent_units[STEAD_ELEMENT_MATERIALS];
}

static double
process_eu_conversion (CheckRow *row)
{
  return process_of (row).equivalent_units[STEAD_ELEMENT_CONVERSION];
}

static double
process_unit_materials (CheckRow *row)
{
  return process_of (row).unit_cents[STEAD_ELEMENT_MATERIALS];
}

static double
process_unit_conversion (CheckRow *row)
{
  return process_of (row).unit_cents[STEAD_ELEMENT_CONVERSION];
}

static double
process_unit_transferred (CheckRow *row)
{
  return process_of (row).unit_cents[STEAD_ELEMENT_TRANSFERRED];
}

static double
process_unit_total (CheckRow *row)
{
  return process_of (row).unit_total_cents;
}

static double
process_good (CheckRow *row)
{
  return process_of (row).good_before_loss_cents;
}

static double
process_normal (CheckRow *row)
{
  return process_of (row).normal_loss_cents;
}

static double
process_out (CheckRow *row)
{
  return process_of (row).transferred_out_cents;
}

static double
process_abnormal (CheckRow *row)
{
  return process_of (row).abnormal_loss_cents;
}

static double
process_end (CheckRow *row)
{
  return process_of (row).end_in_process_cents;
}

static double
process_total (CheckRow *row)
{
  return process_of (row).total_cents;
}

static const CheckAsk process_asks[] = {
  { "equivalent_units_materials", "EU", process_eu_materials },
  { "equivalent_units_conversion", "EU", process_eu_conversion },
  { "unit_cost_materials", "USD/EU", process_unit_materials },
  { "unit_cost_conversion", "USD/EU", process_unit_conversion },
  { "unit_cost_transferred", "USD/EU", process_unit_transferred },
  { "unit_cost_total", "USD/EU", process_unit_total },
  { "good_before_loss", "USD", process_good },
  { "normal_loss", "USD", process_normal },
  { "transferred_out", "USD", process_out },
  { "abnormal_loss", "USD", process_abnormal },
  { "end_in_process", "USD", process_end },
  { "total_to_account", "USD", process_total },
  { NULL }
};

/* units check: any one of begin + started = completed + lost + end */

static double
units_lost (CheckRow *row)
{
  if (check_has (row, "lost_units"))
    return check_number (row, "lost_units");
  return stead_units_lost (check_number_or (row, "begin_units", 0),
                           check_number (row, "started_units"),
                           check_number (row, "completed_units"),
                           check_number_or (row, "end_units", 0));
}

static double
units_abnormal (CheckRow *row)
{
  return units_lost (row)
         - check_frac (row, "normal_loss_pct") * check_number (row, "completed_units");
}

static double
units_completed (CheckRow *row)
{
  /* What is not unfinished and not lost is completed. */
  return stead_units_lost (check_number_or (row, "begin_units", 0),
                           check_number (row, "started_units"),
                           check_number_or (row, "lost_units", 0),
                           check_number_or (row, "end_units", 0));
}

static double
units_started (CheckRow *row)
{
  return -stead_units_lost (check_number_or (row, "begin_units", 0), 0,
                            check_number (row, "completed_units")
                            + check_number_or (row, "lost_units", 0),
                            check_number_or (row, "end_units", 0));
}

static const CheckAsk units_asks[] = {
  { "lost_units", "units", units_lost },
  { "abnormal_lost_units", "units", units_abnormal },
  { "completed_units", "units", units_completed },
  { "started_units", "units", units_started },
  { NULL }
};

/* batch loss */

static SteadBatchLossFigures
loss_of (CheckRow *row,
         gboolean  needs_output)
{
  static const char * const rules[] = { "expected_output", "all_units", NULL };
  SteadBatchLoss batch = {
    .rule = (SteadLossRule) check_word (row, "abnormal_loss_rule", rules, STEAD_LOSS_EXPECTED_OUTPUT),
    .input_units = check_number (row, "input_units"),
    .input_cents = check_cents_or (row, "input_cost_usd", 0),
    .normal_loss_frac = check_frac_or (row, "normal_loss_pct", 0),
    .scrap_price_cents = check_cents_or (row, "scrap_price_usd", 0),
    .output_units = needs_output ? check_number (row, "output_units") : 0,
  };
  SteadBatchLossFigures figures;

  if (batch.rule == STEAD_LOSS_EXPECTED_OUTPUT || needs_output)
    check_need (row, "normal_loss_pct");
  stead_batch_loss_figures (&batch, &figures);
  return figures;
}

static double
loss_unit (CheckRow *row)
{
  check_need (row, "input_cost_usd");
  return loss_of (row, FALSE).unit_cents;
}

static double
loss_output (CheckRow *row)
{
  check_need (row, "input_cost_usd");
  return loss_of (row, TRUE).output_cents;
}

static double
loss_units (CheckRow *row)
{
  return loss_of (row, TRUE).abnormal_loss_units;
}

static double
loss_money (CheckRow *row)
{
  check_need (row, "input_cost_usd");
  return loss_of (row, TRUE).abnormal_loss_cents;
}

static double
gain_units (CheckRow *row)
{
  return loss_of (row, TRUE).abnormal_gain_units;
}

static double
gain_money (CheckRow *row)
{
  check_need (row, "input_cost_usd");
  return loss_of (row, TRUE).abnormal_gain_cents;
}

static const CheckAsk loss_asks[] = {
  { "unit_cost", "USD/unit", loss_unit },
  { "output_cost", "USD", loss_output },
  { "abnormal_loss_units", "units", loss_units },
  { "abnormal_loss", "USD", loss_money },
  { "abnormal_gain_units", "units", gain_units },
  { "abnormal_gain", "USD", gain_money },
  { NULL }
};

/* cost of goods */

static SteadGoodsFigures
goods_of (CheckRow *row)
{
  SteadGoods goods = {
    .begin_materials = check_cents_or (row, "begin_materials_usd", 0),
    .purchases = check_cents_or (row, "purchases_usd", 0),
    .end_materials = check_cents_or (row, "end_materials_usd", 0),
    .indirect_materials = check_cents_or (row, "indirect_materials_usd", 0),
    .labor = check_cents_or (row, "labor_usd", 0),
    .overhead = check_cents_or (row, "overhead_usd", 0),
    .begin_in_process = check_cents_or (row, "begin_in_process_usd", 0),
    .end_in_process = check_cents_or (row, "end_in_process_usd", 0),
    .begin_finished = check_cents_or (row, "begin_finished_usd", 0),
    .end_finished = check_cents_or (row, "end_finished_usd", 0),
    .sales = check_cents_or (row, "sales_usd", 0),
    .selling = check_cents_or (row, "selling_usd", 0),
  };
  SteadGoodsFigures figures;

  stead_goods_figures (&goods, &figures);
  if (check_has (row, "made_usd"))
    stead_goods_from_made (&goods, check_cents (row, "made_usd"), &figures);
  return figures;
}

static double
goods_used (CheckRow *row)
{
  return goods_of (row).materials_used;
}

static double
goods_direct (CheckRow *row)
{
  return goods_of (row).direct_materials;
}

static double
goods_made (CheckRow *row)
{
  return goods_of (row).made;
}

static double
goods_available (CheckRow *row)
{
  return goods_of (row).available;
}

static double
goods_sold (CheckRow *row)
{
  return goods_of (row).sold;
}

static double
goods_margin (CheckRow *row)
{
  return goods_of (row).gross_margin;
}

static double
goods_profit (CheckRow *row)
{
  return goods_of (row).profit;
}

static const CheckAsk goods_asks[] = {
  { "materials_used", "USD", goods_used },
  { "direct_materials", "USD", goods_direct },
  { "made", "USD", goods_made },
  { "available", "USD", goods_available },
  { "sold", "USD", goods_sold },
  { "gross_margin", "USD", goods_margin },
  { "profit", "USD", goods_profit },
  { NULL }
};

/* overhead rate */

static double
overhead_rate (CheckRow *row)
{
  if (check_has (row, "rate_usd"))
    return check_cents (row, "rate_usd");
  return stead_overhead_rate (check_cents (row, "planned_overhead_usd"),
                              check_number (row, "planned_base"));
}

static double
overhead_applied (CheckRow *row)
{
  return stead_overhead_over_cents (overhead_rate (row), check_number (row, "actual_base"), 0);
}

static double
overhead_over (CheckRow *row)
{
  return stead_overhead_over_cents (overhead_rate (row), check_number (row, "actual_base"),
                                    check_cents (row, "actual_overhead_usd"));
}

static double
overhead_job (CheckRow *row)
{
  return check_cents (row, "materials_usd") + check_cents (row, "labor_usd") + overhead_applied (row);
}

static const CheckAsk overhead_asks[] = {
  { "rate", "USD/unit", overhead_rate },
  { "applied", "USD", overhead_applied },
  { "over_applied", "USD", overhead_over },
  { "job_cost", "USD", overhead_job },
  { NULL }
};

/* activity costing */

static double
activity_rate (CheckRow *row)
{
  gsize n = 0;
  const double *pools = check_cents_list (row, "pools_usd", &n);
  const double *totals = check_list (row, "driver_totals", &n);
  gsize item = check_item (row, n);

  return stead_overhead_rate (pools[item], totals[item]);
}

static double
activity_total (CheckRow *row)
{
  gsize n = 0;
  const double *pools = check_cents_list (row, "pools_usd", &n);
  const double *totals = check_list (row, "driver_totals", &n);
  const double *use = check_list (row, "driver_use", &n);

  return stead_activity_total_cents (pools, totals, use, n);
}

static double
activity_unit (CheckRow *row)
{
  return stead_overhead_rate (activity_total (row), check_number (row, "units"));
}

static const CheckAsk activity_asks[] = {
  { "rate", "USD/unit", activity_rate },
  { "total", "USD", activity_total },
  { "unit_overhead", "USD/unit", activity_unit },
  { NULL }
};

/* standard cost */

static double
price_variance (CheckRow *row)
{
  return stead_price_variance_cents (check_cents (row, "standard_price_usd"),
                                     check_cents (row, "actual_price_usd"),
                                     check_number (row, "actual_qty"));
}

static double
quantity_variance (CheckRow *row)
{
  return stead_quantity_variance_cents (check_cents (row, "standard_price_usd"),
                                        check_number (row, "standard_qty"),
                                        check_number (row, "actual_qty"));
}

static double
total_variance (CheckRow *row)
{
  return price_variance (row) + quantity_variance (row);
}

static const CheckAsk standard_asks[] = {
  { "price_variance", "USD", price_variance },
  { "quantity_variance", "USD", quantity_variance },
  { "total_variance", "USD", total_variance },
  { NULL }
};

/* depreciation */

static double
depreciation_basis (CheckRow *row)
{
  return check_cents (row, "cost_usd") + check_cents_sum_or (row, "extra_costs_usd");
}

static SteadDepreciable
thing_of (CheckRow *row)
{
  static const char * const methods[] = { "straight_line", "double_declining", "units", NULL };
  SteadDepreciable thing = {
    .method = (SteadDepreciationMethod) check_word (row, "method", methods, 0),
    .basis_cents = depreciation_basis (row),
    .salvage_cents = check_cents_or (row, "salvage_usd", 0),
  };

  if (check_has (row, "life_y"))
    thing.life_years = check_number (row, "life_y");
  if (check_has (row, "life_units"))
    thing.life_units = check_number (row, "life_units");
  if (thing.salvage_cents < 0 || thing.salvage_cents > thing.basis_cents)
    check_bad_input (row, "salvage_usd");
  return thing;
}

/* Years since buying at the end of year @year; by straight line the first year
 * may be short. */
static double
end_of_year (CheckRow               *row,
             const SteadDepreciable *thing,
             double                  year)
{
  double first = thing->method == STEAD_DEPRECIATION_STRAIGHT_LINE
                 ? check_number_or (row, "first_year_months", 12) / 12 : 1;

  return year > 0 ? year - 1 + first : 0;
}

/* A thing written down by time, or an error on the row. */
static gboolean
by_time (CheckRow         *row,
         SteadDepreciable *thing)
{
  *thing = thing_of (row);
  if (thing->method == STEAD_DEPRECIATION_UNITS)
    check_bad_input (row, "method");
  else if (thing->salvage_cents >= 0 && thing->salvage_cents <= thing->basis_cents
           && thing->life_years > 0)
    return TRUE;
  else if (!(thing->life_years > 0))
    check_bad_input (row, "life_y");
  return FALSE;
}

static gboolean
by_use (CheckRow         *row,
        SteadDepreciable *thing)
{
  *thing = thing_of (row);
  thing->method = STEAD_DEPRECIATION_UNITS;
  if (!(thing->life_units > 0))
    check_bad_input (row, "life_units");
  else if (thing->salvage_cents >= 0 && thing->salvage_cents <= thing->basis_cents)
    return TRUE;
  return FALSE;
}

static double
depreciation_charge (CheckRow *row)
{
  SteadDepreciable thing = thing_of (row);
  double year;

  if (thing.method == STEAD_DEPRECIATION_UNITS)
    {
      double use = check_number (row, "use_units");

      return by_use (row, &thing) && use >= 0 ? stead_depreciation_for_use (&thing, 0, use) : NAN;
    }
  if (!by_time (row, &thing))
    return NAN;
  /* Without a year, a full one: the first. */
  year = check_number_or (row, "year", 1);
  if (!check_has (row, "year"))
    return stead_depreciation_between (&thing, 0, 1);
  if (year < 1)
    return check_bad_input (row, "year");
  return stead_depreciation_between (&thing, end_of_year (row, &thing, year - 1),
                                     end_of_year (row, &thing, year));
}

static double
depreciation_book (CheckRow *row)
{
  SteadDepreciable thing;

  if (!by_time (row, &thing))
    return NAN;
  return stead_depreciation_book_value (&thing, end_of_year (row, &thing, check_number (row, "year")));
}

static double
depreciation_rate (CheckRow *row)
{
  SteadDepreciable thing;

  return by_use (row, &thing) ? stead_depreciation_unit_rate (&thing) : NAN;
}

static double
depreciation_per_year (CheckRow *row)
{
  SteadDepreciable thing;

  if (!by_time (row, &thing))
    return NAN;
  return stead_depreciation_between (&thing, 0, 1);
}

static const CheckAsk depreciation_asks[] = {
  { "basis", "USD", depreciation_basis },
  { "charge", "USD", depreciation_charge },
  { "book_value", "USD", depreciation_book },
  { "unit_rate", "USD/unit", depreciation_rate },
  { "per_year", "USD/y", depreciation_per_year },
  { NULL }
};

/* depreciable item */

static double
item_depreciated (CheckRow *row)
{
  static const char * const things[] = {
    "fence", "building", "equipment", "breeding_stock", "supplies", "market_stock", NULL,
  };
  int thing = check_word (row, "item", things, -1);

  return check_answer_word (row, stead_thing_is_depreciated ((SteadThing) thing) ? "yes" : "no");
}

static const CheckAsk item_asks[] = {
  { "depreciated", "text", item_depreciated },
  { NULL }
};

/* stock cost: 150@21|-120 */

static SteadMovement *
movements_of (CheckRow *row,
              gsize    *n)
{
  g_auto(GStrv) parts = g_strsplit (check_text (row, "movements"), "|", -1);
  SteadMovement *movements;

  *n = g_strv_length (parts);
  movements = g_new0 (SteadMovement, *n + 1);
  for (gsize i = 0; i < *n; i++)
    {
      g_auto(GStrv) sides = g_strsplit (parts[i], "@", 2);
      char *end = NULL;

      movements[i].quantity = g_ascii_strtod (sides[0] != NULL ? sides[0] : "", &end);
      if (end == NULL || *end != '\0' || end == sides[0] || !isfinite (movements[i].quantity)
          || (movements[i].quantity > 0) != (sides[0] != NULL && sides[1] != NULL))
        check_bad_input (row, "movements");
      if (sides[0] == NULL || sides[1] == NULL)
        continue;
      movements[i].unit_cents = 100 * g_ascii_strtod (sides[1], &end);
      if (*end != '\0' || end == sides[1] || !isfinite (movements[i].unit_cents))
        check_bad_input (row, "movements");
    }
  return movements;
}

static gboolean
stock_of (CheckRow          *row,
          SteadStockFigures *figures)
{
  static const char * const methods[] = {
    "fifo", "lifo", "lifo_periodic", "average_periodic", "average_moving", NULL,
  };
  g_autoptr(GError) error = NULL;
  gsize n = 0;
  g_autofree SteadMovement *movements = movements_of (row, &n);
  int method = check_word (row, "method", methods, -1);

  if (stead_stock_figures (movements, n, (SteadStockMethod) method, figures, &error))
    return TRUE;
  check_answer_none (row, error);
  return FALSE;
}

static double
stock_sold (CheckRow *row)
{
  SteadStockFigures figures;

  return stock_of (row, &figures) ? figures.sold_cents : NAN;
}

static double
stock_left (CheckRow *row)
{
  SteadStockFigures figures;

  return stock_of (row, &figures) ? figures.stock_cents : NAN;
}

static double
stock_unit (CheckRow *row)
{
  SteadStockFigures figures;

  return stock_of (row, &figures) ? figures.unit_cents : NAN;
}

static const CheckAsk stock_asks[] = {
  { "cost_sold", "USD", stock_sold },
  { "stock", "USD", stock_left },
  { "unit_cost", "USD/unit", stock_unit },
  { NULL }
};

/* stock count */

static double
count_units (CheckRow *row)
{
  return stead_stock_on_record (check_number (row, "begin_units"), check_number_or (row, "in_units", 0),
                                check_number_or (row, "out_units", 0));
}

static double
count_value (CheckRow *row)
{
  return count_units (row) * check_cents (row, "unit_cost_usd");
}

static double
count_shrink (CheckRow *row)
{
  return stead_stock_shrink (count_units (row), check_number (row, "counted_units"));
}

static const CheckAsk count_asks[] = {
  { "units", "units", count_units },
  { "value", "USD", count_value },
  { "shrink_units", "units", count_shrink },
  { NULL }
};

const CheckTopic check_goods_topics[] = {
  { "process costing",
    "method begin_units completed_units end_units normal_lost_units abnormal_lost_units "
    "begin_materials_pct begin_conversion_pct end_materials_pct end_conversion_pct "
    "lost_materials_pct lost_conversion_pct begin_materials_usd begin_conversion_usd "
    "begin_transferred_usd added_materials_usd added_conversion_usd added_transferred_usd",
    process_asks },
  { "units check",
    "begin_units started_units completed_units end_units lost_units normal_loss_pct", units_asks },
  { "batch loss",
    "input_units input_cost_usd normal_loss_pct scrap_price_usd output_units abnormal_loss_rule",
    loss_asks },
  { "cost of goods",
    "begin_materials_usd purchases_usd end_materials_usd indirect_materials_usd labor_usd "
    "overhead_usd begin_in_process_usd end_in_process_usd begin_finished_usd end_finished_usd "
    "made_usd sales_usd selling_usd", goods_asks },
  { "overhead rate",
    "planned_overhead_usd planned_base rate_usd actual_base actual_overhead_usd materials_usd "
    "labor_usd", overhead_asks },
  { "activity costing", "pools_usd driver_totals driver_use units item", activity_asks },
  { "standard cost", "standard_price_usd actual_price_usd standard_qty actual_qty", standard_asks },
  { "depreciation",
    "method cost_usd extra_costs_usd salvage_usd life_y year first_year_months life_units use_units",
    depreciation_asks },
  { "depreciable item", "item", item_asks },
  { "stock cost", "method movements", stock_asks },
  { "stock count", "begin_units in_units out_units unit_cost_usd counted_units", count_asks },
  { NULL }
};
