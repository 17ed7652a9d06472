/* test-best-use.c - the best use of what is scarce. */
#include "farm.h"
#include "numbers.h"

#include "answer/stead-best-use.h"

#include <math.h>
#include <string.h>

static const SteadScarce *
scarce (const SteadBestUse *self,
        guint               i)
{
  return self->scarce->pdata[i];
}

static const SteadBestUseLine *
line (const SteadBestUse *self,
      guint               i)
{
  return self->lines->pdata[i];
}

/* By hand: 120 eggs; a dozen leaves $4 (33.3 c an egg), six leave $2.25 (37.5 c an egg) and at most
 * 15 of them sell: 15 of six take 90 eggs, 30 are left for 2.5 dozen.  One more dozen eggs goes
 * into a dozen: $4, until 7 dozen are made.  One more of six brings $2.25 less half a dozen: 25 c. */
static SteadBestUse *
eggs (void)
{
  SteadBestUse *self = stead_best_use_new_empty ("USD");
  SteadScarce hens = { .kind = STEAD_SCARCE_PACKS, .name = (char *) "Hens", .pack = STEAD_PACK_DOZEN, .base_per_pack = 12,
                       .amount = 120 };

  stead_best_use_add_scarce (self, &hens);
  stead_best_use_add_line (self, &(SteadBestUseLine) { .name = (char *) "Dozen", .pack = STEAD_PACK_DOZEN,
                                                       .price_cents = 430, .own_cents = 30, .planned = 5, .most = 7 });
  stead_best_use_add_line (self, &(SteadBestUseLine) { .name = (char *) "Six", .pack = STEAD_PACK_HALF_DOZEN,
                                                       .price_cents = 250, .own_cents = 25, .planned = 10, .most = 15 });
  stead_best_use_take (self, 0, 0, 12);
  stead_best_use_take (self, 1, 0, 6);
  stead_best_use_settle (self, FALSE);
  return self;
}

static void
test_by_hand (void)
{
  g_autoptr(SteadBestUse) self = eggs ();

  g_assert_true (self->solved);
  g_assert_cmpfloat_with_epsilon (line (self, 0)->best, 2.5, 1e-6);
  g_assert_cmpfloat_with_epsilon (line (self, 1)->best, 15, 1e-6);
  g_assert_cmpfloat_with_epsilon (scarce (self, 0)->planned, 120, 1e-9);
  g_assert_cmpfloat_with_epsilon (self->plan_cents, 5 * 400 + 10 * 225, 1e-6);
  g_assert_cmpfloat_with_epsilon (self->best_cents, 2.5 * 400 + 15 * 225, 1e-6);
  g_assert_cmpfloat_with_epsilon (scarce (self, 0)->worth_cents, 400, 1e-6);
  g_assert_cmpfloat_with_epsilon (scarce (self, 0)->low, 90, 1e-6);
  g_assert_cmpfloat_with_epsilon (scarce (self, 0)->high, 7 * 12 + 90, 1e-6);
  g_assert_cmpfloat_with_epsilon (line (self, 1)->most_cents, 25, 1e-6);
  NUMBERS_ARE (self->sentence, 43.75, 1.25, 42.50);
  NUMBERS_ARE (self->scarce_text, 1, 4, 7.5, 14.5, 1, 0.25);
  g_assert_nonnull (strstr (self->advice, "Hens"));
  g_assert_nonnull (strstr (self->advice, "Six"));
  g_assert_null (strstr (self->advice, "Dozen"));
}

/* By hand: the same $43.75 from both sides, of what is made and of what is scarce. */
static void
test_whys (void)
{
  g_autoptr(SteadBestUse) self = eggs ();
  g_autoptr(GPtrArray) whys = stead_best_use_whys (self);
  const SteadWhy *brings, *limits, *worth, *prices;

  g_assert_cmpuint (whys->len, ==, 4);
  brings = whys->pdata[0];
  limits = whys->pdata[1];
  worth = whys->pdata[2];
  prices = whys->pdata[3];
  NUMBERS_ARE (brings->worked, 4.30, 0.30, 2.5, 2.50, 0.25, 15, 43.75);
  NUMBERS_ARE (limits->worked, 2.5, 7.5, 10, 15);
  NUMBERS_ARE (worth->worked, 10, 4, 15, 0.25, 43.75);
  NUMBERS_ARE (prices->worked, 4.30, 0.30, 4.80, 2.50, 2.25);
  g_assert_nonnull (strstr (limits->worked, "Hens"));
}

/* What is promised takes from the sum: 120 eggs at 37.5 c, less 50 c for each of 5 dozen, $42.50. */
static void
test_whys_promised (void)
{
  g_autoptr(SteadBestUse) self = eggs ();
  g_autoptr(GPtrArray) whys = NULL;

  ((SteadBestUseLine *) self->lines->pdata[0])->least = 5;
  stead_best_use_settle (self, FALSE);
  whys = stead_best_use_whys (self);
  g_assert_cmpuint (whys->len, ==, 4);
  NUMBERS_ARE (((SteadWhy *) whys->pdata[2])->worked, 10, 4.50, 5, 0.50, 42.50);
  ((SteadBestUseLine *) self->lines->pdata[0])->least = 11;
  stead_best_use_settle (self, FALSE);
  g_clear_pointer (&whys, g_ptr_array_unref);
  whys = stead_best_use_whys (self);
  g_assert_cmpuint (whys->len, ==, 0);
}

/* By hand: a dozen may go down to nothing, and up to 2 x $2.25 = $4.50 and its carton, $4.80, until
 * it takes the eggs of the six. */
static void
test_same_plan_prices (void)
{
  g_autoptr(SteadBestUse) self = eggs ();
  g_autofree char *text = stead_best_use_prices (self, line (self, 0));

  g_assert_cmpfloat_with_epsilon (line (self, 0)->price_low, 30, 1e-6);
  g_assert_cmpfloat_with_epsilon (line (self, 0)->price_high, 480, 1e-6);
  NUMBERS_ARE (text, 0.30, 4.80);
}

/* By hand, 120 eggs in whole units: 15 of six and 2 dozen are $41.75, 14 of six and 3 dozen
 * $43.50: the latter. */
static void
test_whole (void)
{
  g_autoptr(SteadBestUse) self = eggs ();

  self->whole = TRUE;
  stead_best_use_settle (self, FALSE);
  g_assert_true (self->solved);
  g_assert_true (self->proven);
  g_assert_cmpfloat (line (self, 0)->best, ==, 3);
  g_assert_cmpfloat (line (self, 1)->best, ==, 14);
  g_assert_cmpfloat_with_epsilon (self->best_cents, 4350, 1e-6);
  g_assert_cmpfloat_with_epsilon (scarce (self, 0)->unused, 0, 1e-6);
}

/* Enough of it: one more is worth nothing. */
static void
test_enough (void)
{
  g_autoptr(SteadBestUse) self = eggs ();

  ((SteadScarce *) self->scarce->pdata[0])->amount = 1200;
  stead_best_use_settle (self, FALSE);
  g_assert_cmpfloat_with_epsilon (scarce (self, 0)->worth_cents, 0, 1e-9);
  g_assert_cmpfloat_with_epsilon (scarce (self, 0)->unused, 1200 - 7 * 12 - 90, 1e-6);
}

/* By hand: 5 dozen promised take 60 eggs, the other 60 are 10 of six.  Each dozen promised takes
 * two of six: $4.50 for $4. */
static void
test_promised (void)
{
  g_autoptr(SteadBestUse) self = eggs ();

  ((SteadBestUseLine *) self->lines->pdata[0])->least = 5;
  stead_best_use_settle (self, FALSE);
  g_assert_true (self->solved);
  g_assert_cmpfloat_with_epsilon (line (self, 0)->best, 5, 1e-6);
  g_assert_cmpfloat_with_epsilon (line (self, 1)->best, 10, 1e-6);
  g_assert_cmpfloat_with_epsilon (line (self, 0)->least_cents, 50, 1e-6);
}

/* 7 dozen and 8 of six are 132 eggs, 12 more than there are; a third product has no part in it. */
static void
test_clash (void)
{
  g_autoptr(SteadBestUse) self = eggs ();

  stead_best_use_add_line (self, &(SteadBestUseLine) { .name = (char *) "Jam", .pack = STEAD_PACK_JAR, .price_cents = 500,
                                                       .planned = 4, .least = 3, .most = 6 });
  ((SteadBestUseLine *) self->lines->pdata[0])->least = 7;
  ((SteadBestUseLine *) self->lines->pdata[1])->least = 8;
  stead_best_use_settle (self, FALSE);
  g_assert_false (self->solved);
  g_assert_cmpuint (self->n_clashing, ==, 3);
  g_assert_true (line (self, 0)->least_clashes && line (self, 1)->least_clashes && scarce (self, 0)->clashes);
  g_assert_false (line (self, 2)->least_clashes);
  NUMBERS_ARE (self->sentence, 7, 8, 10, 11, 1);
  g_assert_null (strstr (self->sentence, "Jam"));

  /* A least above its most is a smaller clash, and the first to be told. */
  ((SteadBestUseLine *) self->lines->pdata[2])->most = 2;
  stead_best_use_settle (self, FALSE);
  g_assert_cmpuint (self->n_clashing, ==, 2);
  NUMBERS_ARE (self->sentence, 3, 2);
  g_assert_nonnull (strstr (self->sentence, "Jam"));

  ((SteadBestUseLine *) self->lines->pdata[2])->least = 0;
  ((SteadBestUseLine *) self->lines->pdata[1])->least = 6;     /* 84 + 36 = 120 */
  stead_best_use_settle (self, FALSE);
  g_assert_true (self->solved);
  g_assert_cmpuint (self->n_clashing, ==, 0);
}

/* Two thirds of the time, and nothing at all. */
static void
test_minutes (void)
{
  g_autoptr(SteadBestUse) self = eggs ();
  guint time = stead_best_use_add_scarce (self, &(SteadScarce) { .kind = STEAD_SCARCE_MINUTES, .name = (char *) "Time",
                                                                 .amount = 10 });

  for (guint i = 0; i < 2; i++)
    stead_best_use_take (self, i, time, 1);
  stead_best_use_settle (self, FALSE);
  g_assert_true (self->solved);
  g_assert_cmpfloat_with_epsilon (scarce (self, time)->planned, 15, 1e-9);
  g_assert_cmpfloat_with_epsilon (line (self, 0)->best + line (self, 1)->best, 10, 1e-6);
  g_assert_cmpfloat (scarce (self, time)->worth_cents, >, 0);
  ((SteadScarce *) self->scarce->pdata[time])->amount = 0;
  stead_best_use_settle (self, FALSE);
  g_assert_cmpfloat_with_epsilon (self->best_cents, 0, 1e-9);
}

static void
test_empty (void)
{
  g_autoptr(SteadBestUse) self = stead_best_use_new_empty ("USD");

  stead_best_use_settle (self, FALSE);
  g_assert_false (self->solved);
  g_assert_nonnull (self->sentence);
}

int
main (int    argc,
      char **argv)
{
  farm_start (&argc, &argv);
  g_test_add_func ("/answer/best-use/whole", test_whole);
  g_test_add_func ("/answer/best-use/by-hand", test_by_hand);
  g_test_add_func ("/answer/best-use/whys", test_whys);
  g_test_add_func ("/answer/best-use/whys-promised", test_whys_promised);
  g_test_add_func ("/answer/best-use/enough", test_enough);
  g_test_add_func ("/answer/best-use/minutes", test_minutes);
  g_test_add_func ("/answer/best-use/same-plan-prices", test_same_plan_prices);
  g_test_add_func ("/answer/best-use/promised", test_promised);
  g_test_add_func ("/answer/best-use/clash", test_clash);
  g_test_add_func ("/answer/best-use/empty", test_empty);
  return g_test_run ();
}
