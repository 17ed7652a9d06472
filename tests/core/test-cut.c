/* Cutting: plans that hold, and that are as good as they say. */
#include "core/stead-core-error.h"
#include "core/stead-cut.h"

#include <math.h>

#define FT 0.3048
#define IN 0.0254

/* Everything that a plan promises. */
static void
assert_holds (const SteadCutPlan  *plan,
              const SteadCutPiece *pieces,
              const SteadCutStock *stocks,
              double               kerf_m)
{
  g_autofree guint *cut = g_new0 (guint, plan->n_kinds + 1);
  double bought_m = 0, cost_cents = 0;
  guint n_bars = 0;

  for (guint b = 0; b < plan->bars->len; b++)
    {
      const SteadCutBar *bar = plan->bars->pdata[b];
      double used_m = 0;
      guint n = 0;

      for (gsize i = 0; i < plan->n_kinds; i++)
        {
          cut[i] += bar->times * bar->pieces[i];
          used_m += bar->pieces[i] * pieces[i].length_m;
          n += bar->pieces[i];
        }
      g_assert_cmpuint (n, >, 0);
      /* A cut between two pieces, and one before the rest if there is one. */
      g_assert_cmpfloat (used_m + (n - 1) * kerf_m, <=, stocks[bar->stock].length_m + 2e-6);
      g_assert_cmpfloat (bar->left_m, >=, 0);
      g_assert_cmpfloat (used_m + bar->left_m, <=, stocks[bar->stock].length_m + 2e-6);
      n_bars += bar->times;
      bought_m += bar->times * stocks[bar->stock].length_m;
      cost_cents += bar->times * stocks[bar->stock].price_cents;
    }
  for (gsize i = 0; i < plan->n_kinds; i++)
    g_assert_cmpuint (cut[i], ==, pieces[i].count);
  g_assert_cmpuint (n_bars, ==, plan->n_bars);
  g_assert_cmpfloat_with_epsilon (bought_m, plan->bought_m, 1e-6);
  g_assert_cmpfloat_with_epsilon (cost_cents, plan->cost_cents, 1e-6);
  g_assert_cmpfloat (plan->bound, <=, (cost_cents > 0 ? cost_cents : bought_m) * (1 + 1e-9));
}

static SteadCutPlan *
plan_of (const SteadCutPiece *pieces,
         gsize                n_kinds,
         const SteadCutStock *stocks,
         gsize                n_stocks,
         double               kerf_m)
{
  g_autoptr(GError) error = NULL;
  SteadCutPlan *plan = stead_cut_plan_new (pieces, n_kinds, stocks, n_stocks, kerf_m, &error);

  g_assert_no_error (error);
  assert_holds (plan, pieces, stocks, kerf_m);
  return plan;
}

/* An example of paper rolls that texts on cutting stock print: 219 pieces out of rolls
 * of 5600 mm; the least is 73 rolls (memory).  The pieces alone fill 72.7, so that no
 * plan can have fewer. */
static void
test_paper_rolls (void)
{
  const SteadCutPiece pieces[] = { { 1.380, 22 }, { 1.520, 25 }, { 1.560, 12 }, { 1.710, 14 }, { 1.820, 18 },
                                   { 1.880, 18 }, { 1.930, 20 }, { 2.000, 10 }, { 2.050, 12 }, { 2.100, 14 },
                                   { 2.140, 16 }, { 2.150, 18 }, { 2.200, 20 } };
  const SteadCutStock roll = { 5.600, 0 };
  g_autoptr(SteadCutPlan) plan = plan_of (pieces, G_N_ELEMENTS (pieces), &roll, 1, 0);

  g_assert_cmpuint (plan->n_bars, ==, 73);
  g_assert_true (plan->proven);
}

/* Bounds that one can prove by hand. */
static void
test_by_hand (void)
{
  const SteadCutStock sixteen = { 16 * FT, 0 };
  const SteadCutPiece over_half[] = { { 8.5 * FT, 9 } };
  const SteadCutPiece eighths[] = { { 2 * FT, 64 } };
  /* More than a third: two in a bar at most, so 5 of them need 3 bars.  */
  const SteadCutPiece thirds[] = { { 5.5 * FT, 5 } };
  /* 9 + 7 and 8 + 8 leave nothing; the longest that fits first would too. */
  const SteadCutPiece pairs[] = { { 9 * FT, 3 }, { 7 * FT, 3 }, { 8 * FT, 4 } };
  /* The longest first gives 4 + 4 + 4 and 3 + 3 + 3 + 3: three bars; 4 + 3 + 3 fill two. */
  const SteadCutStock ten = { 10, 0 };
  const SteadCutPiece greedy[] = { { 4, 2 }, { 3, 4 } };
  g_autoptr(SteadCutPlan) halves = plan_of (over_half, 1, &sixteen, 1, 0);
  g_autoptr(SteadCutPlan) full = plan_of (eighths, 1, &sixteen, 1, 0);
  g_autoptr(SteadCutPlan) sawn = plan_of (eighths, 1, &sixteen, 1, 1 * IN / 8);
  g_autoptr(SteadCutPlan) three = plan_of (thirds, 1, &sixteen, 1, 0);
  g_autoptr(SteadCutPlan) paired = plan_of (pairs, 3, &sixteen, 1, 0);
  /* Two pieces need one cut between them; one as long as the stock needs none. */
  const SteadCutStock exact = { 8 * FT + IN / 8, 0 };
  const SteadCutPiece couple[] = { { 4 * FT, 2 }, { 8 * FT + IN / 8, 1 } };
  g_autoptr(SteadCutPlan) coupled = plan_of (couple, 2, &exact, 1, IN / 8);
  g_autoptr(SteadCutPlan) two = plan_of (greedy, 2, &ten, 1, 0);

  g_assert_cmpuint (halves->n_bars, ==, 9);
  g_assert_cmpuint (full->n_bars, ==, 8);
  /* With a saw cut only seven of 2 ft come out of 16 ft: 64 / 7 is 10. */
  g_assert_cmpuint (sawn->n_bars, ==, 10);
  g_assert_cmpuint (three->n_bars, ==, 3);
  g_assert_cmpuint (paired->n_bars, ==, 5);
  g_assert_cmpuint (two->n_bars, ==, 2);
  g_assert_cmpuint (coupled->n_bars, ==, 2);
  g_assert_true (halves->proven && full->proven && sawn->proven && three->proven && paired->proven && two->proven);
}

/* Lengths and prices: the dear long board is not worth it, until it is. */
static void
test_prices (void)
{
  const SteadCutPiece pieces[] = { { 4 * FT, 4 } };
  const SteadCutStock dear[] = { { 8 * FT, 500 }, { 16 * FT, 1100 } };
  const SteadCutStock cheap[] = { { 8 * FT, 500 }, { 16 * FT, 900 } };
  const SteadCutStock lengths[] = { { 8 * FT, 0 }, { 10 * FT, 0 } };
  const SteadCutPiece fives[] = { { 5 * FT, 2 }, { 4 * FT, 2 } };
  g_autoptr(SteadCutPlan) short_ones = plan_of (pieces, 1, dear, 2, 0);
  g_autoptr(SteadCutPlan) long_one = plan_of (pieces, 1, cheap, 2, 0);
  g_autoptr(SteadCutPlan) both = plan_of (fives, 2, lengths, 2, 0);

  g_assert_cmpfloat (short_ones->cost_cents, ==, 1000);
  g_assert_cmpuint (short_ones->n_bars, ==, 2);
  g_assert_cmpfloat (long_one->cost_cents, ==, 900);
  g_assert_cmpfloat_with_epsilon (both->bought_m, 18 * FT, 1e-9);
  g_assert_true (short_ones->proven && long_one->proven && both->proven);
}

/* The least cost, by trying everything: each piece into each open bar or a new one. */
static void
try_all (const double        *sizes,
         gsize                n,
         gsize                i,
         double              *rooms,
         gsize                n_bars,
         double               cost,
         const SteadCutStock *stocks,
         gsize                n_stocks,
         double              *best)
{
  if (cost >= *best - 1e-9)
    return;
  if (i == n)
    {
      *best = cost;
      return;
    }
  for (gsize b = 0; b < n_bars; b++)
    if (sizes[i] <= rooms[b] + 1e-9)
      {
        rooms[b] -= sizes[i];
        try_all (sizes, n, i + 1, rooms, n_bars, cost, stocks, n_stocks, best);
        rooms[b] += sizes[i];
      }
  for (gsize s = 0; s < n_stocks; s++)
    if (sizes[i] <= stocks[s].length_m + 1e-9)
      {
        rooms[n_bars] = stocks[s].length_m - sizes[i];
        try_all (sizes, n, i + 1, rooms, n_bars + 1, cost + stocks[s].price_cents, stocks, n_stocks, best);
      }
}

static void
test_against_all (void)
{
  g_autoptr(GRand) rand = g_rand_new_with_seed (7);
  guint proven = 0;

  for (int round = 0; round < 150; round++)
    {
      const SteadCutStock stocks[] = { { 10, 1000 }, { 6, 700 }, { 14, g_rand_int_range (rand, 1300, 1500) } };
      gsize n_stocks = (gsize) g_rand_int_range (rand, 1, 4);
      SteadCutPiece pieces[4];
      double sizes[8], rooms[8];
      double best = INFINITY;
      gsize n = 0;
      g_autoptr(SteadCutPlan) plan = NULL;

      for (gsize i = 0; i < 4; i++)
        {
          pieces[i] = (SteadCutPiece) { g_rand_int_range (rand, 2, 20) / 2.0, (guint) g_rand_int_range (rand, 0, 3) };
          for (guint k = 0; k < pieces[i].count; k++)
            sizes[n++] = pieces[i].length_m;
        }
      plan = plan_of (pieces, 4, stocks, n_stocks, 0);
      try_all (sizes, n, 0, rooms, 0, 0, stocks, n_stocks, &best);
      g_assert_cmpfloat_with_epsilon (plan->cost_cents, n > 0 ? best : 0, 1e-6);
      proven += plan->proven;
    }
  g_assert_cmpuint (proven, ==, 150);
}

/* Some hundred pieces of many lengths: a plan that holds, proven or within one bar of
 * its bound, in a moment; and the same one again. */
static void
test_many (void)
{
  g_autoptr(GRand) rand = g_rand_new_with_seed (42);
  gint64 begin = g_get_monotonic_time ();

  for (int round = 0; round < 4; round++)
    {
      const SteadCutStock stocks[] = { { 8 * FT, 0 }, { 12 * FT, 0 }, { 16 * FT, 0 } };
      gsize n_stocks = round % 2 == 0 ? 1 : 3;
      const SteadCutStock *from = n_stocks == 1 ? &stocks[2] : stocks;
      SteadCutPiece pieces[20];
      g_autoptr(SteadCutPlan) plan = NULL;
      g_autoptr(SteadCutPlan) again = NULL;

      for (gsize i = 0; i < 20; i++)
        pieces[i] = (SteadCutPiece) { g_rand_int_range (rand, 12, 90) * IN, (guint) g_rand_int_range (rand, 5, 30) };
      plan = plan_of (pieces, 20, from, n_stocks, IN / 8);
      again = plan_of (pieces, 20, from, n_stocks, IN / 8);
      g_test_message ("%u bars, %.2f m bought, bound %.2f, proven %d", plan->n_bars, plan->bought_m, plan->bound,
                      plan->proven);
      g_assert_cmpfloat (plan->bought_m, ==, again->bought_m);
      g_assert_cmpuint (plan->bars->len, ==, again->bars->len);
      g_assert_cmpfloat (plan->bought_m - plan->bound, <=, 16 * FT + 1e-6);
    }
  g_test_message ("%.0f ms", (double) (g_get_monotonic_time () - begin) / 1000);
}

static void
assert_refused (const SteadCutPiece *pieces,
                gsize                n_kinds,
                const SteadCutStock *stocks,
                gsize                n_stocks,
                double               kerf_m)
{
  g_autoptr(GError) error = NULL;

  g_assert_null (stead_cut_plan_new (pieces, n_kinds, stocks, n_stocks, kerf_m, &error));
  g_assert_error (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_RANGE);
}

static void
test_refused (void)
{
  const double odd[] = { NAN, INFINITY, -INFINITY, -1, 0, 1e-300, 1e300 };
  const SteadCutStock stock = { 5, 0 };
  const SteadCutStock half_priced[] = { { 5, 100 }, { 6, 0 } };
  const SteadCutPiece piece = { 1, 3 };
  const SteadCutPiece too_long = { 5.01, 1 };
  const SteadCutPiece none_needed = { 50, 0 };
  const SteadCutPiece too_many = { 1, STEAD_CUT_MOST_PIECES + 1 };
  g_autoptr(SteadCutPlan) empty = plan_of (NULL, 0, &stock, 1, 0);
  g_autoptr(SteadCutPlan) none = plan_of (&none_needed, 1, &stock, 1, 0);

  g_assert_cmpuint (empty->n_bars, ==, 0);
  g_assert_cmpuint (none->n_bars, ==, 0);
  assert_refused (&too_long, 1, &stock, 1, 0);
  assert_refused (&too_many, 1, &stock, 1, 0);
  assert_refused (&piece, 1, half_priced, 2, 0);
  for (gsize i = 0; i < G_N_ELEMENTS (odd); i++)
    {
      const SteadCutPiece bad_piece = { odd[i], 1 };
      const SteadCutStock bad_stock = { odd[i], 0 };

      assert_refused (&bad_piece, 1, &stock, 1, 0);
      assert_refused (&piece, 1, &bad_stock, 1, 0);
      if (!(odd[i] >= 0 && odd[i] < 1))
        assert_refused (&piece, 1, &stock, 1, odd[i]);
      if (!(odd[i] >= 0 && odd[i] < 1))
        assert_refused (&piece, 1, &(SteadCutStock) { 5, odd[i] }, 1, 0);
    }
}

static void
test_spliced (void)
{
  const double runs_m[] = { 25, 10, 4 };
  const double bad[] = { 3, NAN };
  g_autoptr(GArray) parts = stead_cut_spliced (runs_m, 3, 10);

  g_assert_cmpuint (parts->len, ==, 5);
  g_assert_cmpfloat_with_epsilon (g_array_index (parts, double, 2), 5, 1e-12);
  g_assert_cmpfloat_with_epsilon (g_array_index (parts, double, 3), 10, 1e-12);
  g_assert_null (stead_cut_spliced (bad, 2, 10));
  g_assert_null (stead_cut_spliced (runs_m, 3, 0));
  g_assert_null (stead_cut_spliced (&(double) { 1e9 }, 1, 1));
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/core/cut/paper-rolls", test_paper_rolls);
  g_test_add_func ("/core/cut/by-hand", test_by_hand);
  g_test_add_func ("/core/cut/prices", test_prices);
  g_test_add_func ("/core/cut/against-all", test_against_all);
  g_test_add_func ("/core/cut/many", test_many);
  g_test_add_func ("/core/cut/refused", test_refused);
  g_test_add_func ("/core/cut/spliced", test_spliced);
  return g_test_run ();
}
