/* The words on the break-even chart agree with the figures that stand beside it. */
#include "config.h"

#include <locale.h>

#include "answer/stead-cvp-labels.h"

/* One dozen at a price of 4.50 and a cost of 2.41, a day of 96.00, a plan of 72:
 * 96 / 2.09 = 45.93, so 46; 72 x 2.09 - 96 = 54.48 (worked by hand). */
static const SteadCvp plain = { .price_cents = 450, .variable_cents = 241, .fixed_cents = 9600,
                                .planned_units = 72 };

typedef struct
{
  SteadFarm        farm;
  SteadProduct     product;
  SteadCostAnswer  cost;
  SteadPriceAnswer price;
} Case;

static const SteadPriceAnswer *
fill (Case           *c,
      const SteadCvp *cvp)
{
  *c = (Case) { .farm = { .currency = (char *) "USD" },
                .product = { .pack = STEAD_PACK_DOZEN } };
  c->cost.farm = &c->farm;
  c->cost.product = &c->product;
  c->price.cost = &c->cost;
  c->price.cvp = *cvp;
  stead_cvp_figures (&c->price.cvp, &c->price.figures);
  return &c->price;
}

static void
test_plain (void)
{
  Case c;
  g_autoptr(SteadCvpLabels) labels = stead_cvp_labels_new (fill (&c, &plain));

  g_assert_cmpstr (labels->axis, ==, "dozens sold on the sale day");
  g_assert_cmpstr (labels->even, ==, "break-even 46 dozen");
  g_assert_null (labels->lasting);
  g_assert_cmpstr (labels->plan, ==, "plan 72");
  g_assert_cmpstr (labels->plan_gap, ==, "$54.48 left");
}

static void
test_loss (void)
{
  Case c;
  SteadCvp cvp = plain;
  g_autoptr(SteadCvpLabels) labels = NULL;

  cvp.planned_units = 40;   /* 40 x 2.09 = 83.60 */
  labels = stead_cvp_labels_new (fill (&c, &cvp));
  g_assert_cmpstr (labels->plan_gap, ==, "$12.40 short");
}

static void
test_never (void)
{
  Case c;
  SteadCvp cvp = plain;
  g_autoptr(SteadCvpLabels) labels = NULL;

  cvp.price_cents = 200;
  cvp.planned_units = 0;
  labels = stead_cvp_labels_new (fill (&c, &cvp));
  g_assert_null (labels->even);
  g_assert_null (labels->lasting);
  g_assert_null (labels->plan);
  g_assert_null (labels->plan_gap);
}

/* Each 40 dozen cost a table of 50.00.  The first 80.00 are paid from 39 on
 * (38.28); the 41st dozen brings 130.00, paid from 63 on (62.20); the 81st 180.00,
 * paid from 87 on (86.12); the 121st 230.00, which 121 pay at once (worked by hand). */
static void
test_steps (void)
{
  Case c;
  SteadCvp cvp = plain;
  g_autoptr(SteadCvpLabels) labels = NULL;

  cvp.fixed_cents = 3000;
  cvp.step_cents = 5000;
  cvp.step_units = 40;
  labels = stead_cvp_labels_new (fill (&c, &cvp));
  g_assert_cmpstr (labels->even, ==, "break-even 39 dozen");
  g_assert_cmpstr (labels->lasting, ==, "no loss from 87 dozen on");
}

static void
test_point (void)
{
  Case c;
  g_autofree char *gain = stead_cvp_labels_point (fill (&c, &plain), 60);
  g_autofree char *loss = stead_cvp_labels_point (fill (&c, &plain), 0);

  g_assert_cmpstr (gain, ==, "60 dozen: $270.00 in, $240.60 of costs, $29.40 left");
  g_assert_cmpstr (loss, ==, "0 dozen: $0.00 in, $96.00 of costs, $96.00 short");
}

int
main (int    argc,
      char **argv)
{
  setlocale (LC_ALL, "");
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/answer/cvp-labels/plain", test_plain);
  g_test_add_func ("/answer/cvp-labels/loss", test_loss);
  g_test_add_func ("/answer/cvp-labels/never", test_never);
  g_test_add_func ("/answer/cvp-labels/steps", test_steps);
  g_test_add_func ("/answer/cvp-labels/point", test_point);
  return g_test_run ();
}
