/* Bills and coins: counted, and given as change. */
#include "core/stead-coins.h"
#include "core/stead-core-error.h"

#include <string.h>

static void
test_sum (void)
{
  gsize n;
  const gint64 *faces = stead_coins_faces ("USD", &n);
  const gint64 counted[] = { 0, 1, 9, 4, 11, 37, 52, 30, 18, 44 };
  gint64 odd[10];

  /* By hand: 50 + 180 + 40 + 55 + 37 + 13 + 3 + 0.90 + 0.44. */
  g_assert_cmpuint (n, ==, 10);
  g_assert_cmpint (stead_coins_sum (faces, counted, n), ==, 37934);
  memcpy (odd, counted, sizeof odd);
  odd[3] = -1;
  g_assert_cmpint (stead_coins_sum (faces, odd, n), ==, -1);
  odd[3] = G_MAXINT64;
  g_assert_cmpint (stead_coins_sum (faces, odd, n), ==, -1);
  g_assert_nonnull (stead_coins_faces ("EUR", &n));
  g_assert_null (stead_coins_faces ("JPY", &n));
  g_assert_cmpuint (n, ==, 0);
}

static gint64
count_of (const gint64 *pieces,
          gsize         n)
{
  gint64 sum = 0;

  for (gsize i = 0; i < n; i++)
    sum += pieces[i];
  return sum;
}

/* With enough of all, taking the highest first is best for these coins: a fact of dollars
 * and euros, not of all coins. */
static void
test_change_full (void)
{
  static const char * const currencies[] = { "USD", "EUR" };

  for (gsize c = 0; c < G_N_ELEMENTS (currencies); c++)
    for (gint64 amount = 0; amount < 3000; amount += 7)
      {
        gsize n;
        const gint64 *faces = stead_coins_faces (currencies[c], &n);
        gint64 pieces[STEAD_COINS_MOST_FACES];
        gint64 left = amount, greedy = 0;

        for (gsize i = 0; i < n; i++)
          {
            greedy += left / faces[i];
            left %= faces[i];
          }
        g_assert_true (stead_coins_change (amount, faces, NULL, n, pieces, NULL));
        g_assert_cmpint (stead_coins_sum (faces, pieces, n), ==, amount);
        g_assert_cmpint (count_of (pieces, n), ==, greedy);
      }
}

/* 30 cents out of one quarter and three dimes: the highest first gets stuck. */
static void
test_change_drawer (void)
{
  const gint64 faces[] = { 25, 10, 5, 1 };
  const gint64 drawer[] = { 1, 3, 0, 4 };
  gint64 pieces[] = { 77, 77, 77, 77 };
  g_autoptr(GError) error = NULL;

  g_assert_true (stead_coins_change (30, faces, drawer, 4, pieces, &error));
  g_assert_cmpint (pieces[0], ==, 0);
  g_assert_cmpint (pieces[1], ==, 3);
  g_assert_false (stead_coins_change (40, faces, drawer, 4, pieces, &error));
  g_assert_error (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_NONE);
  g_assert_cmpint (pieces[1], ==, 3);
  g_clear_error (&error);
  g_assert_false (stead_coins_change (-1, faces, NULL, 4, pieces, &error));
  g_assert_error (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_RANGE);
  g_assert_false (stead_coins_change (STEAD_COINS_MOST_CHANGE + 1, faces, NULL, 4, pieces, NULL));
  g_assert_false (stead_coins_change (5, faces, (const gint64[]) { 1, 1, -1, 1 }, 4, pieces, NULL));
  g_assert_true (stead_coins_change (STEAD_COINS_MOST_CHANGE, faces, NULL, 4, pieces, NULL));
  g_assert_cmpint (pieces[0], ==, STEAD_COINS_MOST_CHANGE / 25);
  g_assert_true (stead_coins_change (0, faces, drawer, 4, pieces, NULL));
  g_assert_cmpint (count_of (pieces, 4), ==, 0);
}

/* The fewest pieces by trying everything; -1 for none. */
static gint64
try_all (gint64        amount,
         const gint64 *faces,
         const gint64 *drawer,
         gsize         n)
{
  gint64 best = -1;

  if (n == 0)
    return amount == 0 ? 0 : -1;
  for (gint64 k = 0; k <= drawer[0] && k * faces[0] <= amount; k++)
    {
      gint64 rest = try_all (amount - k * faces[0], faces + 1, drawer + 1, n - 1);

      if (rest >= 0 && (best < 0 || rest + k < best))
        best = rest + k;
    }
  return best;
}

static void
test_change_against_all (void)
{
  g_autoptr(GRand) rand = g_rand_new_with_seed (4);

  for (int i = 0; i < 3000; i++)
    {
      gint64 faces[4], drawer[4], pieces[4];
      gint64 amount = g_rand_int_range (rand, 0, 150);
      gint64 best;

      for (gsize k = 0; k < 4; k++)
        {
          faces[k] = g_rand_int_range (rand, 1, 40);
          drawer[k] = g_rand_int_range (rand, 0, 6);
        }
      best = try_all (amount, faces, drawer, 4);
      g_assert_true (stead_coins_change (amount, faces, drawer, 4, pieces, NULL) == (best >= 0));
      if (best < 0)
        continue;
      g_assert_cmpint (count_of (pieces, 4), ==, best);
      g_assert_cmpint (stead_coins_sum (faces, pieces, 4), ==, amount);
      for (gsize k = 0; k < 4; k++)
        g_assert_true (pieces[k] >= 0 && pieces[k] <= drawer[k]);
    }
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/core/coins/sum", test_sum);
  g_test_add_func ("/core/coins/change-full", test_change_full);
  g_test_add_func ("/core/coins/change-drawer", test_change_drawer);
  g_test_add_func ("/core/coins/change-against-all", test_change_against_all);
  return g_test_run ();
}
