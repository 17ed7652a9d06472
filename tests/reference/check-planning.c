/* check-planning.c - the topics on planning under limits and chance. */
#include "check.h"

#include "core/stead-chance.h"
#include "core/stead-order.h"
#include "core/stead-product-mix.h"
#include "core/stead-round.h"

#include <math.h>

/* product mix */

#define MAX_LIMITS 50

typedef struct
{
  gsize             n_products;
  gsize             n_limits;
  SteadMixLimit     limits[MAX_LIMITS];
  double           *uses[MAX_LIMITS];
  SteadProductPlan *products;
  SteadLimitPlan    plans[MAX_LIMITS];
  double            best;
  gboolean          solved;
} Mix;

static void
mix_clear (Mix *mix)
{
  for (gsize i = 0; i < mix->n_limits; i++)
    g_free (mix->uses[i]);
  g_free (mix->products);
}

G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Mix, mix_clear)

/* 1|2|le|100: a use by each product, the sense, the amount. */
static void
read_limit (CheckRow   *row,
            const char *name,
            Mix        *mix)
{
  g_auto(GStrv) parts = g_strsplit (check_text (row, name), "|", -1);
  gsize n = g_strv_length (parts);
  SteadMixLimit *limit = &mix->limits[mix->n_limits];
  double *use = g_new0 (double, mix->n_products);

  mix->uses[mix->n_limits++] = use;
  limit->use = use;
  if (n != mix->n_products + 2)
    {
      check_bad_input (row, name);
      return;
    }
  for (gsize i = 0; i < n; i++)
    {
      char *end = NULL;
      double value = g_ascii_strtod (parts[i], &end);
      gboolean number = end != parts[i] && *end == '\0' && isfinite (value);

      if (i < mix->n_products)
        use[i] = value;
      else if (i == n - 1)
        limit->amount = value;
      else if (g_str_equal (parts[i], "ge"))
        limit->sense = STEAD_MIX_AT_LEAST;
      else if (!g_str_equal (parts[i], "le"))
        check_bad_input (row, name);
      if (i != mix->n_products && !number)
        check_bad_input (row, name);
    }
}

static Mix
mix_of (CheckRow *row)
{
  Mix mix = { 0 };
  g_autoptr(GError) error = NULL;
  const double *margins = check_cents_list (row, "objective", &mix.n_products);

  for (int i = 1; i <= MAX_LIMITS; i++)
    {
      g_autofree char *name = g_strdup_printf ("c%d", i);

      if (!check_has (row, name))
        break;
      read_limit (row, name, &mix);
    }
  mix.products = g_new0 (SteadProductPlan, mix.n_products);
  mix.solved = stead_product_mix_solve (margins, mix.n_products, mix.limits, mix.n_limits, mix.products,
                                        mix.plans, &mix.best, &error);
  if (!mix.solved)
    check_answer_none (row, error);
  return mix;
}

/* An end that is not there is no number. */
static double
end_or_none (double value)
{
  return isfinite (value) ? value : NAN;
}

static double
mix_objective (CheckRow *row)
{
  g_auto(Mix) mix = mix_of (row);

  return mix.solved ? mix.best : NAN;
}

static double
mix_quantity (CheckRow *row)
{
  g_auto(Mix) mix = mix_of (row);

  return mix.solved ? mix.products[check_item (row, mix.n_products)].quantity : NAN;
}

static double
mix_unused (CheckRow *row)
{
  g_auto(Mix) mix = mix_of (row);

  return mix.solved ? mix.plans[check_item (row, mix.n_limits)].unused : NAN;
}

static double
mix_shadow (CheckRow *row)
{
  g_auto(Mix) mix = mix_of (row);

  return mix.solved ? mix.plans[check_item (row, mix.n_limits)].shadow_price : NAN;
}

static double
mix_limit_low (CheckRow *row)
{
  g_auto(Mix) mix = mix_of (row);

  return mix.solved ? end_or_none (mix.plans[check_item (row, mix.n_limits)].low) : NAN;
}

static double
mix_limit_high (CheckRow *row)
{
  g_auto(Mix) mix = mix_of (row);

  return mix.solved ? end_or_none (mix.plans[check_item (row, mix.n_limits)].high) : NAN;
}

static double
mix_limit_bounded (CheckRow *row)
{
  g_auto(Mix) mix = mix_of (row);

  if (!mix.solved)
    return NAN;
  return check_answer_word (row, isfinite (mix.plans[check_item (row, mix.n_limits)].high) ? "yes" : "no");
}

static double
mix_margin_low (CheckRow *row)
{
  g_auto(Mix) mix = mix_of (row);

  return mix.solved ? end_or_none (mix.products[check_item (row, mix.n_products)].margin_low) : NAN;
}

static double
mix_margin_high (CheckRow *row)
{
  g_auto(Mix) mix = mix_of (row);

  return mix.solved ? end_or_none (mix.products[check_item (row, mix.n_products)].margin_high) : NAN;
}

static double
mix_margin_bounded (CheckRow *row)
{
  g_auto(Mix) mix = mix_of (row);

  if (!mix.solved)
    return NAN;
  return check_answer_word (row, isfinite (mix.products[check_item (row, mix.n_products)].margin_high)
                                 ? "yes" : "no");
}

static const CheckAsk product_mix_asks[] = {
  { "objective", "USD", mix_objective },
  { "quantity", "units", mix_quantity },
  { "unused", "units", mix_unused },
  { "shadow_price", "USD/unit", mix_shadow },
  { "limit_low", "units", mix_limit_low },
  { "limit_high", "units", mix_limit_high },
  { "limit_high_bounded", "text", mix_limit_bounded },
  { "margin_low", "USD/unit", mix_margin_low },
  { "margin_high", "USD/unit", mix_margin_high },
  { "margin_high_bounded", "text", mix_margin_bounded },
  { NULL }
};

/* scarce resource */

static const double *
scarce_uses (CheckRow *row,
             gsize    *n)
{
  const double *use = check_list (row, "use_per_unit", n);

  for (gsize i = 0; i < *n; i++)
    if (!(use[i] > 0))
      check_bad_input (row, "use_per_unit");
  return use;
}

static double
scarce_margin (CheckRow *row)
{
  gsize n = 0;
  const double *use = scarce_uses (row, &n);
  const double *margins = check_cents_list (row, "margins_usd", &n);
  gsize item = check_item (row, n);

  return margins[item] / use[item];
}

static double
scarce_best (CheckRow *row)
{
  gsize n = 0;
  const double *use = scarce_uses (row, &n);
  const double *margins = check_cents_list (row, "margins_usd", &n);

  return (double) (stead_scarce_best (margins, use, n) + 1);
}

static double
scarce_quantity (CheckRow *row)
{
  gsize n = 0;
  const double *use = scarce_uses (row, &n);
  const double *margins = check_cents_list (row, "margins_usd", &n);
  const double *demand = check_list (row, "demand", &n);
  g_autofree double *quantities = g_new0 (double, n);

  for (gsize i = 0; i < n; i++)
    if (demand[i] < 0)
      return check_bad_input (row, "demand");
  stead_scarce_fill (margins, use, demand, n, check_number (row, "capacity"), quantities);
  return quantities[check_item (row, n)];
}

static const CheckAsk scarce_asks[] = {
  { "margin_per_resource", "USD/unit", scarce_margin },
  { "best_item", "item", scarce_best },
  { "quantity", "units", scarce_quantity },
  { NULL }
};

/* order once */

static void
read_costs (CheckRow       *row,
            SteadOrderOnce *order)
{
  if (check_has (row, "short_cost_usd"))
    {
      order->short_cents = check_cents (row, "short_cost_usd");
      order->over_cents = check_cents (row, "over_cost_usd");
      return;
    }
  order->short_cents = check_cents (row, "price_usd") - check_cents (row, "cost_usd");
  order->over_cents = check_cents (row, "cost_usd") - check_cents_or (row, "salvage_usd", 0);
}

static SteadDemand
demand_of (CheckRow *row)
{
  static const char * const shapes[] = { "normal", "uniform", "discrete", "poisson", "triangle", NULL };
  SteadDemand demand = { .shape = (SteadDemandShape) check_word (row, "demand_shape", shapes, -1) };
  const double *chances;
  double *shares;

  switch (demand.shape)
    {
    case STEAD_DEMAND_UNIFORM:
      demand.low = check_number (row, "demand_low");
      demand.high = check_number (row, "demand_high");
      break;
    case STEAD_DEMAND_DISCRETE:
      demand.values = check_list (row, "demand_values", &demand.n);
      /* The list is the row's own copy: percents become shares in place. */
      chances = check_list (row, "demand_chances_pct", &demand.n);
      shares = (double *) chances;
      for (gsize i = 0; i < demand.n; i++)
        shares[i] /= 100;
      demand.chances = shares;
      break;
    case STEAD_DEMAND_POISSON:
      demand.mean = check_number (row, "demand_mean");
      break;
    case STEAD_DEMAND_TRIANGLE:
      demand.low = check_number (row, "demand_low");
      demand.likely = check_number (row, "demand_likely");
      demand.high = check_number (row, "demand_high");
      break;
    case STEAD_DEMAND_NORMAL:
    default:
      demand.mean = check_number (row, "demand_mean");
      demand.sd = check_number (row, "demand_sd");
      if (!(demand.sd > 0))
        check_bad_input (row, "demand_sd");
      break;
    }
  return demand;
}

static SteadOrderOnce
order_of (CheckRow *row)
{
  SteadOrderOnce order = { .demand = demand_of (row) };

  read_costs (row, &order);
  return order;
}

static double
order_units (CheckRow             *row,
             const SteadOrderOnce *order)
{
  return check_has (row, "order_units") ? check_number (row, "order_units")
                                        : stead_order_once_quantity (order);
}

static double
once_ratio (CheckRow *row)
{
  SteadOrderOnce order = { 0 };

  read_costs (row, &order);
  return stead_order_once_ratio (&order);
}

static double
once_quantity (CheckRow *row)
{
  SteadOrderOnce order = order_of (row);

  return stead_order_once_quantity (&order);
}

static double
once_chance (CheckRow *row)
{
  SteadOrderOnce order = { .demand = demand_of (row) };

  if (!check_has (row, "order_units"))
    read_costs (row, &order);
  return 100 * stead_demand_chance_at_most (&order.demand, order_units (row, &order));
}

static double
once_cost (CheckRow *row)
{
  SteadOrderOnce order = order_of (row);

  return stead_order_once_cost_cents (&order, order_units (row, &order));
}

static double
once_profit (CheckRow *row)
{
  SteadOrderOnce order = order_of (row);

  return stead_order_once_profit_cents (&order, order_units (row, &order));
}

/* What the costs say, or the quantity that is given. */
static double
units_of (CheckRow       *row,
          SteadOrderOnce *order)
{
  order->demand = demand_of (row);
  if (!check_has (row, "order_units"))
    read_costs (row, order);
  return order_units (row, order);
}

static double
once_missed (CheckRow *row)
{
  SteadOrderOnce order = { 0 };
  double units = units_of (row, &order);

  return stead_demand_expected_short (&order.demand, units);
}

static double
once_left (CheckRow *row)
{
  SteadOrderOnce order = { 0 };
  double units = units_of (row, &order);

  return stead_demand_expected_left (&order.demand, units);
}

static double
once_sold_out (CheckRow *row)
{
  SteadOrderOnce order = { 0 };
  double units = units_of (row, &order);

  return 100 * stead_demand_chance_sold_out (&order.demand, units);
}

static const CheckAsk once_asks[] = {
  { "critical_ratio", "ratio", once_ratio },
  { "quantity", "units", once_quantity },
  { "chance_enough", "%", once_chance },
  { "expected_cost", "USD", once_cost },
  { "expected_profit", "USD", once_profit },
  { "expected_short", "units", once_missed },
  { "expected_left", "units", once_left },
  { "chance_sold_out", "%", once_sold_out },
  { NULL }
};

/* order size */

static double
holding_of (CheckRow *row)
{
  if (check_has (row, "holding_usd"))
    return check_cents (row, "holding_usd");
  return check_cents (row, "unit_cost_usd") * check_frac (row, "holding_pct");
}

static double
size_quantity (CheckRow *row)
{
  return stead_order_size (check_number (row, "demand_per_year"), check_cents (row, "order_cost_usd"),
                           holding_of (row));
}

static double
size_orders (CheckRow *row)
{
  return check_number (row, "demand_per_year") / size_quantity (row);
}

static double
size_days (CheckRow *row)
{
  return check_number_or (row, "working_days", 365) / size_orders (row);
}

static double
size_cost (CheckRow *row)
{
  return stead_order_size_cost_cents (check_number (row, "demand_per_year"),
                                      check_cents (row, "order_cost_usd"), holding_of (row),
                                      size_quantity (row));
}

static const CheckAsk size_asks[] = {
  { "quantity", "units", size_quantity },
  { "orders_per_year", "orders/y", size_orders },
  { "days_between", "days", size_days },
  { "yearly_cost", "USD/y", size_cost },
  { NULL }
};

/* three-point */

static SteadThreePoint
guess_of (CheckRow *row,
          gboolean *out_pert)
{
  static const char * const shapes[] = { "pert", "triangular", NULL };
  SteadThreePoint guess = { check_number (row, "low"), check_number (row, "likely"),
                            check_number (row, "high") };

  *out_pert = check_word (row, "shape", shapes, -1) == 0;
  if (guess.likely < guess.low || guess.high < guess.likely)
    check_bad_input (row, "likely");
  return guess;
}

static double
point_mean (CheckRow *row)
{
  gboolean pert;
  SteadThreePoint guess = guess_of (row, &pert);

  return pert ? stead_pert_mean (&guess) : stead_triangle_mean (&guess);
}

static double
point_variance (CheckRow *row)
{
  gboolean pert;
  SteadThreePoint guess = guess_of (row, &pert);

  return pert ? stead_pert_variance (&guess) : stead_triangle_variance (&guess);
}

static double
point_density (CheckRow *row)
{
  gboolean pert;
  SteadThreePoint guess = guess_of (row, &pert);

  return pert ? check_bad_input (row, "shape")
              : stead_triangle_density (&guess, check_number (row, "x"));
}

static double
point_chance (CheckRow *row)
{
  gboolean pert;
  SteadThreePoint guess = guess_of (row, &pert);

  return pert ? check_bad_input (row, "shape")
              : 100 * stead_triangle_chance_at_most (&guess, check_number (row, "x"));
}

static const CheckAsk point_asks[] = {
  { "mean", "units", point_mean },
  { "variance", "units2", point_variance },
  { "density", "1/unit", point_density },
  { "chance_at_most", "%", point_chance },
  { NULL }
};

/* sum of parts */

static double
sum_mean (CheckRow *row)
{
  gsize n = 0;
  const double *means = check_list (row, "means", &n);
  double sum = 0;

  for (gsize i = 0; i < n; i++)
    sum += means[i];
  return sum;
}

static double
sum_sd (CheckRow *row)
{
  gboolean squared = check_has (row, "variances");
  gsize n = 0;
  const double *spreads = check_list (row, squared ? "variances" : "sds", &n);
  double sum = 0;

  if (check_has (row, "means"))
    check_list (row, "means", &n);
  for (gsize i = 0; i < n; i++)
    sum += squared ? spreads[i] : spreads[i] * spreads[i];
  return sqrt (sum);
}

static double
sum_chance (CheckRow *row)
{
  return 100 * stead_normal_chance_at_most (sum_mean (row), sum_sd (row), check_number (row, "x"));
}

static double
sum_above (CheckRow *row)
{
  return 100 - sum_chance (row);
}

static double
sum_quantile (CheckRow *row)
{
  return stead_normal_quantile (sum_mean (row), sum_sd (row), check_frac (row, "chance_pct"));
}

static const CheckAsk sum_asks[] = {
  { "mean", "units", sum_mean },
  { "sd", "units", sum_sd },
  { "chance_at_most", "%", sum_chance },
  { "chance_above", "%", sum_above },
  { "quantile", "units", sum_quantile },
  { NULL }
};

/* reach before broke and reach by date */

static double
reach_chance (CheckRow *row)
{
  return 100 * stead_ruin_chance_reach (check_frac (row, "win_chance_pct"), check_number (row, "start"),
                                        check_number (row, "target"));
}

static double
reach_steps (CheckRow *row)
{
  return stead_ruin_expected_steps (check_frac (row, "win_chance_pct"), check_number (row, "start"),
                                    check_number (row, "target"));
}

static const CheckAsk reach_asks[] = {
  { "chance_reach", "%", reach_chance },
  { "expected_steps", "steps", reach_steps },
  { NULL }
};

static SteadSaving
goal_of (CheckRow *row,
         gboolean  with_sd)
{
  return (SteadSaving) { check_cents (row, "goal_usd") - check_cents_or (row, "have_usd", 0),
                       check_cents (row, "weekly_mean_usd"),
                       with_sd ? check_cents (row, "weekly_sd_usd") : 0 };
}

static double
date_total (CheckRow *row)
{
  SteadSaving goal = goal_of (row, TRUE);

  return 100 * stead_saving_chance_after (&goal, check_number (row, "weeks"));
}

static double
date_ever (CheckRow *row)
{
  SteadSaving goal = goal_of (row, TRUE);

  return 100 * stead_saving_chance_ever_by (&goal, check_number (row, "weeks"));
}

static double
date_mean (CheckRow *row)
{
  SteadSaving goal = goal_of (row, FALSE);

  return stead_saving_mean_weeks (&goal);
}

static double
date_variance (CheckRow *row)
{
  SteadSaving goal = goal_of (row, TRUE);

  return stead_saving_variance_weeks2 (&goal);
}

static const CheckAsk date_asks[] = {
  { "chance_total", "%", date_total },
  { "chance_ever_by", "%", date_ever },
  { "mean_weeks", "weeks", date_mean },
  { "variance_weeks", "weeks2", date_variance },
  { NULL }
};

const CheckTopic check_planning_topics[] = {
  { "product mix", "objective c# item", product_mix_asks },
  { "scarce resource", "margins_usd use_per_unit capacity demand item", scarce_asks },
  { "order once",
    "demand_shape demand_mean demand_sd demand_low demand_likely demand_high demand_values demand_chances_pct "
    "short_cost_usd over_cost_usd price_usd cost_usd salvage_usd order_units", once_asks },
  { "order size",
    "demand_per_year order_cost_usd holding_usd unit_cost_usd holding_pct working_days", size_asks },
  { "three-point", "shape low likely high x", point_asks },
  { "sum of parts", "means sds variances x chance_pct", sum_asks },
  { "reach before broke", "win_chance_pct start target", reach_asks },
  { "reach by date", "goal_usd have_usd weekly_mean_usd weekly_sd_usd weeks", date_asks },
  { NULL }
};
