/* test-best-use.c - the best use of what is scarce. */
#include "farm.h"
#include "numbers.h"

#include "answer/stead-best-use.h"

#include <math.h>

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
 * into a dozen: $4. */
static SteadBestUse *
eggs (void)
{
  SteadBestUse *self = stead_best_use_new_empty ("USD");

  stead_best_use_add_scarce (self, &(SteadScarce) { .name = (char *) "Hens", .pack = STEAD_PACK_DOZEN, .base_per_pack = 12,
                                                    .amount = 120, .planned = 120 });
  stead_best_use_add_line (self, &(SteadBestUseLine) { .name = (char *) "Dozen", .pack = STEAD_PACK_DOZEN, .base_per_unit = 12,
                                                       .price_cents = 430, .own_cents = 30, .planned = 5 });
  stead_best_use_add_line (self, &(SteadBestUseLine) { .name = (char *) "Six", .pack = STEAD_PACK_HALF_DOZEN,
                                                       .base_per_unit = 6, .price_cents = 250, .own_cents = 25,
                                                       .planned = 10 });
  stead_best_use_settle (self);
  return self;
}

static void
test_by_hand (void)
{
  g_autoptr(SteadBestUse) self = eggs ();

  g_assert_true (self->solved);
  g_assert_cmpfloat_with_epsilon (line (self, 0)->best, 2.5, 1e-6);
  g_assert_cmpfloat_with_epsilon (line (self, 1)->best, 15, 1e-6);
  g_assert_cmpfloat_with_epsilon (self->plan_cents, 5 * 400 + 10 * 225, 1e-6);
  g_assert_cmpfloat_with_epsilon (self->best_cents, 2.5 * 400 + 15 * 225, 1e-6);
  g_assert_cmpfloat_with_epsilon (scarce (self, 0)->worth_cents, 400, 1e-6);
  g_assert_cmpfloat_with_epsilon (scarce (self, 0)->high, 7.5 * 12 + 90, 1e-6);
  NUMBERS_ARE (self->sentence, 43.75, 1.25, 42.50);
  NUMBERS_ARE (self->scarce_text, 1, 4, 15);
}

/* By hand: 120 eggs in whole units: ten dozen leave $40.00, 7 dozen at most sell (5 planned and half as
 * much again), so 15 of six and 2 dozen ($41.75) or 14 of six and 3 dozen ($43.50): the latter. */
static void
test_whole (void)
{
  g_autoptr(SteadBestUse) self = eggs ();

  self->whole = TRUE;
  stead_best_use_settle (self);
  g_assert_true (self->solved);
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
  stead_best_use_settle (self);
  g_assert_cmpfloat_with_epsilon (scarce (self, 0)->worth_cents, 0, 1e-9);
  g_assert_cmpfloat_with_epsilon (scarce (self, 0)->unused, 1200 - 7.5 * 12 - 90, 1e-6);
}

/* Two quarters of the time, and nothing at all. */
static void
test_minutes (void)
{
  g_autoptr(SteadBestUse) self = eggs ();

  for (guint i = 0; i < 2; i++)
    ((SteadBestUseLine *) self->lines->pdata[i])->minutes = 1;
  stead_best_use_add_scarce (self, &(SteadScarce) { .name = (char *) "Time", .amount = 10, .planned = 15 });
  stead_best_use_settle (self);
  g_assert_true (self->solved);
  g_assert_cmpfloat_with_epsilon (line (self, 0)->best + line (self, 1)->best, 10, 1e-6);
  g_assert_cmpfloat (scarce (self, 1)->worth_cents, >, 0);
  ((SteadScarce *) self->scarce->pdata[1])->amount = 0;
  stead_best_use_settle (self);
  g_assert_cmpfloat_with_epsilon (self->best_cents, 0, 1e-9);
}

static void
test_empty (void)
{
  g_autoptr(SteadBestUse) self = stead_best_use_new_empty ("USD");

  stead_best_use_settle (self);
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
  g_test_add_func ("/answer/best-use/enough", test_enough);
  g_test_add_func ("/answer/best-use/minutes", test_minutes);
  g_test_add_func ("/answer/best-use/empty", test_empty);
  return g_test_run ();
}
