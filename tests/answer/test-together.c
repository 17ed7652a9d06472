/* test-together.c - several products on one sale day.
 *
 * Figures of the books stand in dollars there; here they are dollars in cents.
 */
#include "farm.h"
#include "numbers.h"

#include "answer/stead-together-answer.h"

#include <math.h>
#include <string.h>

static void
add (SteadTogether *self,
     const char    *name,
     double         price,
     double         cost,
     double         units)
{
  SteadTogetherLine *line = g_new0 (SteadTogetherLine, 1);

  line->name = g_strdup (name);
  line->pack = STEAD_PACK_PIECE;
  line->price_cents = price * 100;
  line->unit_cents = cost * 100;
  line->planned = units;
  g_ptr_array_add (self->lines, line);
}

static const SteadTogetherLine *
line (const SteadTogether *self,
      guint                i)
{
  return self->lines->pdata[i];
}

/* OpenStax Principles of Accounting vol. 2, section 3.4: 4,715.45 baskets of 5, 3 and 2;
 * $344,228 of sales, to which its text rounds. */
static void
test_basket (void)
{
  g_autoptr(SteadTogether) self = stead_together_new_empty ("USD");

  add (self, "A", 6.25, 3.25, 5);
  add (self, "B", 7.75, 4.50, 3);
  add (self, "C", 9.25, 6.25, 2);
  self->extra_cents = 14500000;
  /* A plan large enough that the break-even lies within it. */
  for (guint i = 0; i < 3; i++)
    ((SteadTogetherLine *) self->lines->pdata[i])->planned *= 6000;
  stead_together_settle (self);
  g_assert_cmpfloat_with_epsilon (self->even_frac * 6000, 4715.45, 0.005);
  g_assert_cmpfloat_with_epsilon (line (self, 0)->even_units, 23577, 0.5);
  g_assert_cmpfloat_with_epsilon (line (self, 1)->even_units, 14146, 0.5);
  g_assert_cmpfloat_with_epsilon (line (self, 2)->even_units, 9431, 0.5);
  g_assert_cmpfloat_with_epsilon (self->even_sales_cents / 100, 344228, 2);
}

/* Saylor Managerial Accounting, section 6.2: weighted margin $245; 20,408 units, 24,490 for $1,000,000. */
static void
test_shares (void)
{
  g_autoptr(SteadTogether) self = stead_together_new_empty ("USD");

  add (self, "A", 250, 100, 18000);
  add (self, "B", 400, 150, 9000);
  add (self, "C", 1600, 800, 3000);
  self->extra_cents = 500000000;
  self->target_cents = 100000000;
  stead_together_settle (self);
  g_assert_cmpfloat_with_epsilon (self->margin_frac * self->sales_cents / 30000, 24500, 1e-6);
  g_assert_cmpfloat_with_epsilon (self->even_frac * 30000, 20408, 0.5);
  g_assert_cmpfloat_with_epsilon (self->target_frac * 30000, 24490, 0.5);
  g_assert_cmpfloat_with_epsilon (line (self, 0)->even_units, 12245, 1);
}

/* OpenStax, section 2.2, wages in steps: the first break-even is 1,847 units; profit for
 * good from 2,462.  The path dips at 2,000. */
static void
test_steps (void)
{
  g_autoptr(SteadTogether) self = stead_together_new_empty ("USD");
  SteadTogetherLine *only;
  double dip = INFINITY;

  add (self, "A", 4, 0.75, 4000);
  only = self->lines->pdata[0];
  only->step_cents = 200000;
  only->step_units = 2000;
  self->extra_cents = 400000;
  stead_together_settle (self);
  g_assert_cmpfloat (ceil (self->even_frac * 4000), ==, 1847);
  for (guint i = 0; i < self->path->len; i++)
    {
      const SteadTogetherPoint *point = &g_array_index (self->path, SteadTogetherPoint, i);

      if (point->units == 2000)
        dip = MIN (dip, point->profit_cents);
    }
  g_assert_cmpfloat (dip, ==, 2000 * 325 - 800000);
  g_assert_cmpfloat (stead_together_profit (self, 1), ==, 4000 * 325 - 800000);
  g_assert_cmpfloat (g_array_index (self->path, SteadTogetherPoint, self->path->len - 1).profit_cents, ==,
                     self->profit_cents);
  g_assert_cmpfloat (g_array_index (self->mix, SteadTogetherPoint, self->mix->len - 1).profit_cents, ==,
                     self->profit_cents);
}

/* Every order ends at the same profit; the best first crosses zero earliest. */
static void
test_orders (void)
{
  double even[STEAD_N_TOGETHER_ORDERS];

  for (int order = 0; order < STEAD_N_TOGETHER_ORDERS; order++)
    {
      g_autoptr(SteadTogether) self = stead_together_new_empty ("USD");

      add (self, "Poor", 5, 4, 100);
      add (self, "Good", 5, 1, 100);
      add (self, "Loss", 5, 6, 10);
      self->extra_cents = 20000;
      self->order = order;
      stead_together_settle (self);
      even[order] = self->path_even_cents;
      g_assert_cmpfloat_with_epsilon (g_array_index (self->path, SteadTogetherPoint, self->path->len - 1).profit_cents,
                                      10000 + 40000 - 1000 - 20000, 1e-6);
    }
  /* $200 of costs at $4 left of each $5: $250 of sales. */
  g_assert_cmpfloat_with_epsilon (even[STEAD_TOGETHER_BEST_FIRST], 25000, 1e-6);
  g_assert_cmpfloat (even[STEAD_TOGETHER_WORST_FIRST], >, even[STEAD_TOGETHER_AS_LISTED]);
}

static void
test_words (void)
{
  g_autoptr(SteadTogether) self = stead_together_new_empty ("USD");
  g_autofree char *plain = NULL;
  g_autoptr(GPtrArray) whys = NULL;

  add (self, "Eggs", 5, 3, 100);
  add (self, "Sauce", 5, 3, 20);
  self->extra_cents = 12000;
  self->target_cents = 24000;
  self->fund_frac = 0.5;
  stead_together_settle (self);
  plain = stead_words_plain (self->sentence);
  /* 120 a day at 40 % left: $300 of $600 cover it; $120 are left, half of it for the fund. */
  NUMBERS_ARE (plain, 300, 50, 120, 300);
  NUMBERS_ARE (self->advice, 240, 150, 50, 60);
  whys = stead_together_whys (self);
  g_assert_cmpuint (whys->len, ==, 4);
}

static void
test_bad (void)
{
  g_autoptr(SteadTogether) self = stead_together_new_empty ("USD");

  stead_together_settle (self);
  g_assert_true (isnan (self->even_frac));
  g_assert_nonnull (self->sentence);
  add (self, "Loss <b>", 5, 6, 10);
  stead_together_settle (self);
  g_assert_true (isnan (self->even_frac));
  g_assert_nonnull (strstr (self->advice, "Loss &lt;b&gt;"));
}

static void
test_farm (void)
{
  Farm farm;
  g_autoptr(SteadTogether) self = NULL;
  g_autoptr(GError) error = NULL;

  farm_set_up (&farm, NULL);
  farm_stock (&farm);
  farm_log (&farm);
  self = stead_together_new (farm.store, STEAD_PERIOD_12_WEEKS, &error);
  g_assert_no_error (error);
  g_assert_cmpuint (self->lines->len + self->missing->len, ==, 1);
  farm_tear_down (&farm, NULL);
}

int
main (int    argc,
      char **argv)
{
  farm_start (&argc, &argv);
  g_test_add_func ("/answer/together/basket", test_basket);
  g_test_add_func ("/answer/together/shares", test_shares);
  g_test_add_func ("/answer/together/steps", test_steps);
  g_test_add_func ("/answer/together/orders", test_orders);
  g_test_add_func ("/answer/together/words", test_words);
  g_test_add_func ("/answer/together/bad", test_bad);
  g_test_add_func ("/answer/together/farm", test_farm);
  return g_test_run ();
}
