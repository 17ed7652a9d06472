/* bench-check-plan.c - the plan of checks of a large sale day: 40 foods with 25 lots each.
 *
 * usage: bench-check-plan [RUNS]    times so many plans of 40 foods and of 10 (default 200),
 *                                   prints the medians and their ratio; exit status 1 where 40
 *                                   take longer than the limit, or more than the ratio
 *        bench-check-plan --short   a test: the ratio, and memory must not grow
 */
#include "answer/stead-limits.h"
#include "core/stead-check-plan.h"

#include <malloc.h>
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <time.h>

#define LONG_RUNS 200
#define SHORT_RUNS 60
#define GROWTH_BYTES 16384

#define FOODS 40
#define FEW 10
#define LOTS 25
#define DAY 20000

#define LIMIT_MS 50
/* Four times as many foods may take so many times as long: more would not be straight. */
#define RATIO_MOST 8

#define STEP(step, food) { step, food, NAN, NAN, NAN }

static const SteadCheckStep steps[] = { STEP ("cook", "raw_egg"), STEP ("cook", "plant_food"), STEP ("cool", NULL),
                                        STEP ("reheat", NULL), STEP ("hold_hot", NULL) };
static const char * const parts[] = { "raw_shell_eggs", "poultry", NULL };
static const char * const allergens[] = { "egg", "milk", "wheat", NULL };

static char names[FOODS][16];
static SteadCheckLot lots[LOTS];
static SteadCheckFood foods[FOODS];
static SteadCheckAnswered answers[FOODS * 2];

static void
make_foods (void)
{
  for (int i = 0; i < LOTS; i++)
    lots[i] = (SteadCheckLot) { "K26062-1", DAY - i % 9, DAY + 3 };
  for (int i = 0; i < FOODS; i++)
    {
      g_snprintf (names[i], sizeof names[i], "Food %d", i);
      foods[i] = (SteadCheckFood) {
        .name = names[i], .form = STEAD_CHECK_FORM_DISH, .recipe = i % 2 == 0, .steps = steps, .n_steps = G_N_ELEMENTS (steps),
        .parts = parts, .allergens = allergens, .kept = i % 3 == 0 ? STEAD_CHECK_KEPT_UNKNOWN : STEAD_CHECK_KEPT_HOT,
        .ph = NAN, .aw = NAN, .lots = lots, .n_lots = LOTS,
      };
      answers[2 * i] = (SteadCheckAnswered) { STEAD_CHECK_KEY_HELD, names[i], "cold" };
      answers[2 * i + 1] = (SteadCheckAnswered) { STEAD_CHECK_KEY_KEPT_LONG, names[i], "yes" };
    }
}

static guint
make_plan (gsize n)
{
  const SteadCheckCase given = { foods, n, answers, 2 * n, DAY, NULL, NULL };
  g_autoptr(SteadCheckPlan) plan = stead_check_plan_new (stead_limits_get (), &given);

  return plan->lines->len + plan->stops->len;
}

/* Time that the processor spent on this thread: other programs do not count. */
static double
own_ms (void)
{
  struct timespec t;

  clock_gettime (CLOCK_THREAD_CPUTIME_ID, &t);
  return (double) t.tv_sec * 1e3 + (double) t.tv_nsec / 1e6;
}

static int
compare (const void *a,
         const void *b)
{
  const double x = *(const double *) a, y = *(const double *) b;

  return (x > y) - (x < y);
}

static double
median_ms (gsize n,
           guint runs)
{
  g_autofree double *ms = g_new (double, runs);

  for (guint run = 0; run < runs; run++)
    {
      double began = own_ms ();

      g_assert_cmpuint (make_plan (n), >, 10 * n);
      ms[run] = own_ms () - began;
    }
  qsort (ms, runs, sizeof *ms, compare);
  return ms[runs / 2];
}

static int
run_benchmark (guint runs)
{
  double few = median_ms (FEW, runs), all = median_ms (FOODS, runs);

  printf ("%d foods %8.2f ms median\n%d foods %8.2f ms median   ratio %.1f\n", FEW, few, FOODS, all, all / few);
  return all > LIMIT_MS || all > RATIO_MOST * few ? EXIT_FAILURE : EXIT_SUCCESS;
}

static void
test_ratio (void)
{
  double few = median_ms (FEW, SHORT_RUNS), all = median_ms (FOODS, SHORT_RUNS);

  g_test_message ("%.2f ms and %.2f ms", few, all);
  g_assert_cmpfloat (all / few, <=, RATIO_MOST);
}

static void
test_memory (void)
{
  size_t before = 0;

  for (guint run = 0; run < SHORT_RUNS; run++)
    {
      /* The first turns fill what libraries keep. */
      if (run == SHORT_RUNS / 2)
        before = mallinfo2 ().uordblks;
      make_plan (FOODS);
    }
  g_test_message ("grew by %" G_GINT64_FORMAT " bytes", (gint64) mallinfo2 ().uordblks - (gint64) before);
  g_assert_cmpint ((gint64) mallinfo2 ().uordblks - (gint64) before, <=, GROWTH_BYTES);
}

int
main (int   argc,
      char *argv[])
{
  make_foods ();
  if (argc < 2 || !g_str_equal (argv[1], "--short"))
    return run_benchmark (argc > 1 ? (guint) CLAMP (atoi (argv[1]), 1, 10000) : LONG_RUNS);

  argv[1] = argv[0];
  argc--;
  argv++;
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/bench/check-plan/ratio", test_ratio);
  g_test_add_func ("/bench/check-plan/memory-holds-still", test_memory);
  return g_test_run ();
}
