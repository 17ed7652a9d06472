/* check-shared.c - the topics on the shared cost of a school farm. */
#include "check.h"

#include "core/stead-bird-value.h"
#include "core/stead-choice.h"
#include "core/stead-feed.h"
#include "core/stead-flock.h"
#include "core/stead-joint-cost.h"
#include "core/stead-money.h"
#include "core/stead-round.h"
#include "core/stead-space.h"

#include <math.h>

/* joint cost */

typedef struct
{
  SteadJointMethod   method;
  SteadJointProduct *products;
  gsize              n;
  double             net_cents;
  gboolean           has_final;
} Joint;

static void
joint_clear (Joint *joint)
{
  g_clear_pointer (&joint->products, g_free);
}

G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Joint, joint_clear)

/* The names under which one thing stands by the unit or in all. */
static const double *
joint_list (CheckRow   *row,
            const char *each,
            const char *all,
            gboolean   *out_each,
            gsize      *n)
{
  *out_each = check_has (row, each);
  if (*out_each)
    return check_cents_list (row, each, n);
  return check_has (row, all) ? check_cents_list (row, all, n) : NULL;
}

static double
joint_net (CheckRow *row)
{
  return check_cents (row, "joint_cost_usd") - check_cents_or (row, "by_product_value_usd", 0);
}

static Joint
joint_of (CheckRow *row)
{
  static const char * const methods[] = {
    "physical", "split_off_value", "nrv", "constant_margin", NULL,
  };
  Joint joint = { .method = (SteadJointMethod) check_word (row, "method", methods, -1),
                  .net_cents = joint_net (row) };
  gboolean split_each, final_each, further_each;
  const double *quantity = check_has (row, "quantities")
                           ? check_list (row, "quantities", &joint.n) : NULL;
  const double *split = joint_list (row, "split_prices_usd", "split_values_usd", &split_each, &joint.n);
  const double *final = joint_list (row, "final_prices_usd", "final_values_usd", &final_each, &joint.n);
  const double *further = joint_list (row, "further_unit_costs_usd", "further_costs_usd",
                                      &further_each, &joint.n);

  if (quantity == NULL && (split_each || final_each || further_each
                           || joint.method == STEAD_JOINT_PHYSICAL))
    check_bad_input (row, "quantities");
  if (split == NULL && joint.method == STEAD_JOINT_SPLIT_OFF_VALUE)
    check_bad_input (row, "split_values_usd");
  if (final == NULL && joint.method >= STEAD_JOINT_NRV)
    check_bad_input (row, "final_values_usd");
  joint.has_final = final != NULL;
  joint.n = MAX (joint.n, 1);
  joint.products = g_new0 (SteadJointProduct, joint.n);
  for (gsize i = 0; i < joint.n; i++)
    {
      double made = quantity != NULL ? quantity[i] : NAN;

      joint.products[i] = (SteadJointProduct) {
        .quantity = made,
        .split_cents = split == NULL ? NAN : split[i] * (split_each ? made : 1),
        .final_cents = final == NULL ? NAN : final[i] * (final_each ? made : 1),
        .further_cents = further == NULL ? 0 : further[i] * (further_each ? made : 1),
      };
    }
  return joint;
}

static double
joint_basis (CheckRow *row)
{
  g_auto(Joint) joint = joint_of (row);

  return stead_joint_basis (&joint.products[check_item (row, joint.n)], joint.method);
}

static double
share_of (CheckRow    *row,
          const Joint *joint)
{
  g_autofree double *shares = g_new0 (double, joint->n);

  stead_joint_allocate (joint->products, joint->n, joint->method, joint->net_cents, shares);
  return shares[check_item (row, joint->n)];
}

static double
joint_allocated (CheckRow *row)
{
  g_auto(Joint) joint = joint_of (row);

  return share_of (row, &joint);
}

static double
joint_unit (CheckRow *row)
{
  g_auto(Joint) joint = joint_of (row);

  check_need (row, "quantities");
  return share_of (row, &joint) / joint.products[check_item (row, joint.n)].quantity;
}

static double
joint_unit_full (CheckRow *row)
{
  g_auto(Joint) joint = joint_of (row);
  const SteadJointProduct *product = &joint.products[check_item (row, joint.n)];

  check_need (row, "quantities");
  return (share_of (row, &joint) + product->further_cents) / product->quantity;
}

static double
joint_margin (CheckRow *row)
{
  g_auto(Joint) joint = joint_of (row);
  const SteadJointProduct *product = &joint.products[check_item (row, joint.n)];
  double share = share_of (row, &joint);

  return joint.has_final ? product->final_cents - product->further_cents - share
                         : product->split_cents - share;
}

static double
joint_margin_pct (CheckRow *row)
{
  g_auto(Joint) joint = joint_of (row);
  const SteadJointProduct *product = &joint.products[check_item (row, joint.n)];

  return 100 * joint_margin (row) / (joint.has_final ? product->final_cents : product->split_cents);
}

static double
joint_overall (CheckRow *row)
{
  g_auto(Joint) joint = joint_of (row);

  return 100 * stead_joint_overall_margin (joint.products, joint.n, joint.net_cents);
}

static const CheckAsk joint_asks[] = {
  { "net_joint_cost", "USD", joint_net },
  { "basis", "USD", joint_basis },
  { "allocated", "USD", joint_allocated },
  { "unit_cost", "USD/unit", joint_unit },
  { "unit_cost_full", "USD/unit", joint_unit_full },
  { "gross_margin", "USD", joint_margin },
  { "gross_margin_pct", "%", joint_margin_pct },
  { "overall_margin_pct", "%", joint_overall },
  { NULL }
};

/* by-product */

static double
by_net (CheckRow *row)
{
  SteadWay way = { .quantity = 1 };

  if (check_has (row, "by_product_value_usd"))
    {
      way.price_cents = check_cents (row, "by_product_value_usd");
      way.cost_cents = check_cents_or (row, "further_cost_usd", 0);
    }
  else
    {
      way.quantity = check_number (row, "quantity");
      way.price_cents = check_cents (row, "price_usd");
      way.cost_cents = check_cents_or (row, "further_unit_cost_usd", 0);
    }
  return stead_way_value_cents (&way);
}

static double
by_cost (CheckRow *row)
{
  return check_cents (row, "joint_cost_usd") - by_net (row);
}

static double
by_margin (CheckRow *row)
{
  return check_cents (row, "main_sales_usd") - check_cents (row, "main_cost_usd") + by_net (row);
}

static const CheckAsk by_asks[] = {
  { "net_value", "USD", by_net },
  { "main_cost", "USD", by_cost },
  { "main_margin", "USD", by_margin },
  { NULL }
};

/* sell or process */

static double
value_now (CheckRow *row)
{
  SteadWay way = { .quantity = check_number (row, "quantity_now"),
                   .price_cents = check_cents (row, "price_now_usd"),
                   .cost_cents = check_cents_or (row, "cost_now_usd", 0) };

  return stead_way_value_cents (&way);
}

static double
value_after (CheckRow *row)
{
  SteadWay way = { .quantity = check_number (row, "quantity_after"),
                   .price_cents = check_cents (row, "price_after_usd"),
                   .cost_cents = check_cents_or (row, "cost_after_usd", 0),
                   .fixed_cents = check_cents_or (row, "fixed_after_usd", 0) };

  return stead_way_value_cents (&way);
}

static double
value_gain (CheckRow *row)
{
  return value_after (row) - value_now (row);
}

static const CheckAsk further_asks[] = {
  { "value_now", "USD", value_now },
  { "value_after", "USD", value_after },
  { "gain", "USD", value_gain },
  { NULL }
};

/* compare options */

static double
option_total (CheckRow   *row,
              const char *name)
{
  gsize n = 0;
  const double *parts = check_cents_list (row, name, &n);

  return stead_avoidable_cents (parts, n, check_number (row, "units"));
}

static double
option_a (CheckRow *row)
{
  return option_total (row, "option_a_unit_costs_usd");
}

static double
option_difference (CheckRow *row)
{
  return option_a (row) - option_total (row, "option_b_unit_costs_usd");
}

static const CheckAsk option_asks[] = {
  { "a_total", "USD", option_a },
  { "a_minus_b", "USD", option_difference },
  { NULL }
};

/* split and split whole items */

/* Fills @shares, of which there are *@n; FALSE leaves an error on the row. */
static gboolean
split_of (CheckRow   *row,
          const char *total_name,
          double      scale,
          GArray     *shares,
          gsize      *n)
{
  const double *weights = check_list (row, "weights", n);
  double total = stead_round_half_away (check_number (row, total_name) * scale);
  double sum = 0;

  g_array_set_size (shares, (guint) *n);
  for (gsize i = 0; i < *n; i++)
    {
      if (weights[i] < 0)
        check_bad_input (row, "weights");
      sum += MAX (0, weights[i]);
    }
  if (!(sum > 0) || fabs (total) > 9e15)
    {
      check_bad_input (row, sum > 0 ? total_name : "weights");
      return FALSE;
    }
  for (gsize i = 0; i < *n; i++)
    if (weights[i] < 0)
      return FALSE;
  stead_money_split ((gint64) total, weights, *n, (gint64 *) (void *) shares->data);
  return TRUE;
}

static double
split_share (CheckRow   *row,
             const char *total_name,
             double      scale)
{
  g_autoptr(GArray) shares = g_array_new (FALSE, TRUE, sizeof (gint64));
  gsize n = 0;

  if (!split_of (row, total_name, scale, shares, &n))
    return NAN;
  return (double) g_array_index (shares, gint64, check_item (row, n));
}

static double
split_sum (CheckRow   *row,
           const char *total_name,
           double      scale)
{
  g_autoptr(GArray) shares = g_array_new (FALSE, TRUE, sizeof (gint64));
  gsize n = 0;
  gint64 sum = 0;

  if (!split_of (row, total_name, scale, shares, &n))
    return NAN;
  for (gsize i = 0; i < n; i++)
    sum += g_array_index (shares, gint64, i);
  return (double) sum;
}

static double
money_share (CheckRow *row)
{
  return split_share (row, "total_usd", 100);
}

static double
money_sum (CheckRow *row)
{
  return split_sum (row, "total_usd", 100);
}

static const CheckAsk split_asks[] = {
  { "share", "USD", money_share },
  { "shares_sum", "USD", money_sum },
  { NULL }
};

static double
items_share (CheckRow *row)
{
  return split_share (row, "total_items", 1);
}

static double
items_sum (CheckRow *row)
{
  return split_sum (row, "total_items", 1);
}

static double
items_exact_at (CheckRow *row,
                gsize     item)
{
  gsize n = 0;
  const double *weights = check_list (row, "weights", &n);
  double sum = 0;

  for (gsize i = 0; i < n; i++)
    sum += weights[i];
  return check_number (row, "total_items") * weights[item] / sum;
}

static double
items_exact (CheckRow *row)
{
  gsize n = 0;

  check_list (row, "weights", &n);
  return items_exact_at (row, check_item (row, n));
}

static double
items_naive_sum (CheckRow *row)
{
  gsize n = 0;
  double sum = 0;

  check_list (row, "weights", &n);
  for (gsize i = 0; i < n; i++)
    sum += stead_round_half_away (items_exact_at (row, i));
  return sum;
}

static const CheckAsk items_asks[] = {
  { "exact_share", "items", items_exact },
  { "share", "items", items_share },
  { "shares_sum", "items", items_sum },
  { "naive_sum", "items", items_naive_sum },
  { NULL }
};

/* bird value */

static SteadBirdValue
bird_of (CheckRow   *row,
         const char *needed)
{
  check_need (row, needed);
  return (SteadBirdValue) {
    .pullet_cents = check_cents (row, "pullet_usd"),
    .placing_cents = check_cents_or (row, "placing_usd", 0),
    .salvage_cents = check_cents_or (row, "salvage_usd", 0),
    .start_week = check_number_or (row, "start_week", 0),
    .end_week = check_number_or (row, "end_week", 0),
  };
}

static double
bird_start (CheckRow *row)
{
  SteadBirdValue bird = bird_of (row, "pullet_usd");

  return stead_bird_start_cents (&bird);
}

static double
bird_weekly (CheckRow *row)
{
  SteadBirdValue bird = bird_of (row, "start_week end_week");

  return stead_bird_weekly_cents (&bird);
}

static double
bird_at (CheckRow *row)
{
  SteadBirdValue bird = bird_of (row, "start_week end_week");

  return stead_bird_value_at_cents (&bird, check_number (row, "week"));
}

static double
bird_per_dozen (CheckRow *row)
{
  SteadBirdValue bird = bird_of (row, "pullet_usd");
  double eggs = check_number (row, "eggs_per_hen");
  double start = stead_bird_start_cents (&bird);

  if (!(eggs > 0) || bird.salvage_cents < 0 || bird.salvage_cents > start)
    return NAN;
  return 12 * stead_flock_bird_cents_per_egg (start, bird.salvage_cents, eggs);
}

static const CheckAsk bird_asks[] = {
  { "start_value", "USD/hen", bird_start },
  { "weekly_charge", "USD/hen-week", bird_weekly },
  { "value_at", "USD/hen", bird_at },
  { "charge_per_dozen", "USD/dozen", bird_per_dozen },
  { NULL }
};

/* egg count */

static double
egg_count (CheckRow *row)
{
  gsize n = 0;
  const double *eggs = check_list (row, "eggs_per_day", &n);
  const double *days = check_list (row, "days", &n);
  double sum = 0;

  for (gsize i = 0; i < n; i++)
    sum += eggs[i] * days[i];
  return sum;
}

static double
egg_dozens (CheckRow *row)
{
  return egg_count (row) / 12;
}

static const CheckAsk egg_asks[] = {
  { "eggs", "eggs", egg_count },
  { "dozens", "dozen", egg_dozens },
  { NULL }
};

/* feed cost */

#define TON_LB 2000

static double
feed_lb (CheckRow *row)
{
  return stead_feed_for_gain (check_number (row, "gain_lb"), check_number (row, "fcr"));
}

static double
feed_cost (CheckRow *row)
{
  return stead_feed_cents (feed_lb (row), check_cents (row, "feed_usd_ton"), TON_LB);
}

static double
feed_cost_per_gain (CheckRow *row)
{
  return stead_feed_cents (stead_feed_for_gain (1, check_number (row, "fcr")),
                           check_cents (row, "feed_usd_ton"), TON_LB);
}

static double
feed_cost_per_dozen (CheckRow *row)
{
  double feed = stead_feed_per_dozen (check_number (row, "feed_lb_hen_day"),
                                      check_frac (row, "hen_day_pct"));

  return stead_feed_cents (feed, check_cents (row, "feed_usd_lb"), 1);
}

static const CheckAsk feed_asks[] = {
  { "feed_lb", "lb", feed_lb },
  { "cost", "USD", feed_cost },
  { "cost_per_lb_gain", "USD/lb", feed_cost_per_gain },
  { "cost_per_dozen", "USD/dozen", feed_cost_per_dozen },
  { NULL }
};

/* space return and area overhead */

static double
space_income (CheckRow *row)
{
  return check_number (row, "plants") * check_cents (row, "price_usd");
}

static double
space_per_week (CheckRow *row)
{
  return stead_space_rate_cents (space_income (row), 1, check_number (row, "weeks"), 1);
}

static const CheckAsk space_asks[] = {
  { "income", "USD", space_income },
  { "per_week", "USD/week", space_per_week },
  { NULL }
};

static double
area_total (CheckRow *row)
{
  check_need (row, "overhead_usd");
  return check_cents_sum_or (row, "overhead_usd");
}

static double
area_rate (CheckRow *row)
{
  return stead_space_rate_cents (area_total (row), check_number (row, "area_sqft"),
                                 check_number (row, "use_weeks"),
                                 check_frac_or (row, "fill_pct", 1));
}

static double
area_weeks (CheckRow *row)
{
  return stead_space_charge_cents (1, check_number (row, "crop_sqft"),
                                   check_number (row, "crop_weeks"));
}

static double
area_charge (CheckRow *row)
{
  return stead_space_charge_cents (area_rate (row), check_number (row, "crop_sqft"),
                                   check_number (row, "crop_weeks"));
}

static const CheckAsk area_asks[] = {
  { "total", "USD", area_total },
  { "rate", "USD/sq ft-week", area_rate },
  { "crop_area_weeks", "sq ft-weeks", area_weeks },
  { "crop_charge", "USD", area_charge },
  { NULL }
};

const CheckTopic check_shared_topics[] = {
  { "joint cost",
    "method joint_cost_usd quantities split_prices_usd split_values_usd final_prices_usd "
    "final_values_usd further_unit_costs_usd further_costs_usd by_product_value_usd item",
    joint_asks },
  { "by-product",
    "by_product_value_usd further_cost_usd quantity price_usd further_unit_cost_usd "
    "joint_cost_usd main_sales_usd main_cost_usd", by_asks },
  { "sell or process",
    "quantity_now price_now_usd cost_now_usd quantity_after price_after_usd cost_after_usd "
    "fixed_after_usd", further_asks },
  { "compare options", "option_a_unit_costs_usd option_b_unit_costs_usd units", option_asks },
  { "split", "total_usd weights item", split_asks },
  { "split whole items", "total_items weights item", items_asks },
  { "bird value",
    "pullet_usd placing_usd salvage_usd start_week end_week week eggs_per_hen", bird_asks },
  { "egg count", "eggs_per_day days", egg_asks },
  { "feed cost",
    "gain_lb fcr feed_usd_ton feed_lb_hen_day feed_usd_lb hen_day_pct", feed_asks },
  { "space return", "plants price_usd weeks", space_asks },
  { "area overhead",
    "overhead_usd area_sqft use_weeks fill_pct crop_sqft crop_weeks", area_asks },
  { NULL }
};
