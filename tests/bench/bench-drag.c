/* bench-drag.c - one step of dragging a handle of the break-even chart: the answer
 * anew, its sentences and labels, the layout, and the picture.
 *
 * usage: bench-drag [STEPS]    times so many steps (default 100,000), prints the
 *                              median, the 99th percentile, and the ratio to a fixed
 *                              loop of drawing on the same machine in the same run;
 *                              "at best" is each price at the best of its rounds,
 *                              which tells slow prices from a busy machine
 *        bench-drag --short    a test: memory must not grow; no limit of time
 *
 * The picture has the size that the chart has in a window of 1366 x 768.
 */
#include "config.h"

#include <locale.h>
#include <malloc.h>
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <time.h>

#include "answer/stead-cvp-labels.h"
#include "draw/stead-cvp-chart.h"

#define WIDTH 906
#define HEIGHT 430
#define CYCLE 500             /* different prices; after one round every text was seen once */
#define TURN (2 * CYCLE)      /* steps up and down again */
#define WARM_STEPS 2000       /* glyphs at every place between two pixels are kept from then on */
#define SHORT_STEPS 3000
#define LONG_STEPS 100000
#define GROWTH_BYTES 16384    /* of caches, after that; a leak of one text a step is ten times as much */

/* A sanitizer brings its own malloc, of which mallinfo2() knows nothing: it always says 0. */
#ifdef __has_feature
#define FEATURE(name) __has_feature (name)
#else
#define FEATURE(name) 0
#endif
#if defined __SANITIZE_ADDRESS__ || defined __SANITIZE_THREAD__ \
    || FEATURE (address_sanitizer) || FEATURE (memory_sanitizer) || FEATURE (thread_sanitizer)
#define BYTES_ARE_COUNTED 0
#else
#define BYTES_ARE_COUNTED 1
#endif

typedef struct
{
  SteadFarm        farm;
  SteadProduct     product;
  SteadCostAnswer  cost;
  SteadPriceAnswer price;
  cairo_surface_t *surface;
  cairo_t         *cr;
  double           max_units, max_cents;
} Bench;

/* A dozen eggs with a second table from 90 dozen on, labor and a target: each
 * kind of sentence that a drag can bring is brought. */
static void
bench_init (Bench *bench)
{
  SteadCvp cvp = { .price_cents = 450, .variable_cents = 264, .fixed_cents = 7200, .step_cents = 2400,
                   .step_units = 90, .planned_units = 72, .target_cents = 5000 };

  *bench = (Bench) { .farm = { .currency = (char *) "USD", .labor_cents_hour = 900 },
                     .product = { .pack = STEAD_PACK_DOZEN, .name = (char *) "Eggs" } };
  bench->cost.farm = &bench->farm;
  bench->cost.product = &bench->product;
  bench->cost.sheet.parts[STEAD_COST_LABOR].shown_cents = 208;
  bench->price.cost = &bench->cost;
  bench->price.plan = cvp;
  bench->price.price_on_file = 450;
  stead_price_answer_set (&bench->price, &cvp);
  stead_cvp_chart_range (&cvp, &bench->max_units, &bench->max_cents);
  bench->surface = cairo_image_surface_create (CAIRO_FORMAT_ARGB32, WIDTH, HEIGHT);
  bench->cr = cairo_create (bench->surface);
}

static void
bench_clear (Bench *bench)
{
  g_free (bench->price.sentence);
  g_free (bench->price.advice);
  cairo_destroy (bench->cr);
  cairo_surface_destroy (bench->surface);
}

static void
paint (Bench                *bench,
       const SteadCvpLabels *labels)
{
  const SteadCvpWords words = { labels->axis, labels->even, labels->lasting, labels->plan, labels->plan_gap,
                                labels->money_in, labels->all_costs, labels->fixed_costs };
  const SteadDrawStyle style = { .scheme = STEAD_SCHEME_LIGHT, .font_size = 12.3, .currency = "USD" };
  SteadCvpLayout layout;

  stead_palette_set_source (bench->cr, style.scheme, STEAD_ROLE_CARD, 1);
  cairo_paint (bench->cr);
  stead_cvp_chart_layout (bench->cr, &bench->price.cvp, &words, &style, bench->max_units, bench->max_cents,
                          WIDTH, HEIGHT, &layout);
  stead_cvp_chart_paint (bench->cr, &bench->price.cvp, &words, &style, &layout);
  cairo_surface_flush (bench->surface);
}

/* The price goes up and down over all its values, from below the cost to far above. */
static void
step (Bench *bench,
      int    i)
{
  int turn = i % TURN;
  SteadCvp cvp = bench->price.cvp;
  g_autoptr(SteadCvpLabels) labels = NULL;
  g_autofree char *plain = NULL;

  cvp.price_cents = 200 + (turn < CYCLE ? turn : TURN - turn);
  stead_price_answer_set (&bench->price, &cvp);
  labels = stead_cvp_labels_new (&bench->price);
  plain = stead_words_plain (bench->price.sentence);
  paint (bench, labels);
}

static size_t
bytes_in_use (void)
{
  return mallinfo2 ().uordblks;
}

/* Growth over @steps steps, once every text was seen. */
static gint64
measure_growth (Bench *bench,
                int    steps)
{
  size_t before;

  for (int i = 0; i < WARM_STEPS; i++)
    step (bench, i);
  before = bytes_in_use ();
  for (int i = 0; i < steps; i++)
    step (bench, i);
  return (gint64) bytes_in_use () - (gint64) before;
}

/* Times ------------------------------------------------------------------------------ */

/* A fixed amount of drawing, to compare with: about what a chart of lines takes. */
static void
calibrate (Bench *bench)
{
  cairo_set_source_rgb (bench->cr, 1, 1, 1);
  cairo_paint (bench->cr);
  cairo_set_source_rgb (bench->cr, 0, 0, 0);
  for (int i = 0; i < 100; i++)
    {
      cairo_move_to (bench->cr, 0, i * HEIGHT / 100.0);
      cairo_line_to (bench->cr, WIDTH, (100 - i) * HEIGHT / 100.0);
      cairo_stroke (bench->cr);
    }
  cairo_surface_flush (bench->surface);
}

/* Time that the processor spent on this thread: other programs do not count. */
static gint64
own_us (void)
{
  struct timespec t;

  clock_gettime (CLOCK_THREAD_CPUTIME_ID, &t);
  return (gint64) t.tv_sec * 1000000 + t.tv_nsec / 1000;
}

static int
compare (const void *a,
         const void *b)
{
  const gint64 x = *(const gint64 *) a, y = *(const gint64 *) b;

  return (x > y) - (x < y);
}

/* @out_best_us: TURN of them, one a price.
 * Returns: growth of memory over the second half of the steps */
static gint64
time_steps (Bench  *bench,
            int     steps,
            gint64 *out_own_us,
            gint64 *out_wall_us,
            gint64 *out_best_us)
{
  size_t before = 0;
  gint64 growth;

  for (int i = 0; i < TURN; i++)
    out_best_us[i] = G_MAXINT64;

  for (int i = 0; i < steps; i++)
    {
      gint64 own, wall;

      if (i == steps / 2)
        before = bytes_in_use ();
      own = own_us ();
      wall = g_get_monotonic_time ();
      step (bench, i);
      out_own_us[i] = own_us () - own;
      out_wall_us[i] = g_get_monotonic_time () - wall;
      out_best_us[i % TURN] = MIN (out_best_us[i % TURN], out_own_us[i]);
    }
  growth = (gint64) bytes_in_use () - (gint64) before;
  qsort (out_own_us, (size_t) steps, sizeof *out_own_us, compare);
  qsort (out_wall_us, (size_t) steps, sizeof *out_wall_us, compare);
  qsort (out_best_us, TURN, sizeof *out_best_us, compare);
  return growth;
}

static double
time_calibration (Bench *bench)
{
  gint64 times[51];

  for (gsize i = 0; i < G_N_ELEMENTS (times); i++)
    {
      gint64 start = own_us ();

      calibrate (bench);
      times[i] = own_us () - start;
    }
  qsort (times, G_N_ELEMENTS (times), sizeof *times, compare);
  return (double) times[G_N_ELEMENTS (times) / 2];
}

static int
run_benchmark (int steps)
{
  g_autofree gint64 *own = g_new (gint64, steps);
  g_autofree gint64 *wall = g_new (gint64, steps);
  gint64 best[TURN];
  double fixed;
  gint64 growth;
  Bench bench;

  bench_init (&bench);
  for (int i = 0; i < WARM_STEPS; i++)
    step (&bench, i);
  fixed = time_calibration (&bench);
  growth = time_steps (&bench, steps, own, wall, best);
  printf ("one step of a drag, %d × %d, %d steps\n", WIDTH, HEIGHT, steps);
  printf ("                     own time      as passed     at best\n");
  printf ("  median           %8.3f ms    %8.3f ms %8.3f ms\n", (double) own[steps / 2] / 1000,
          (double) wall[steps / 2] / 1000, (double) best[TURN / 2] / 1000);
  printf ("  99th percentile  %8.3f ms    %8.3f ms %8.3f ms   (aim: at most 4)\n",
          (double) own[steps - 1 - steps / 100] / 1000, (double) wall[steps - 1 - steps / 100] / 1000,
          (double) best[TURN - 1 - TURN / 100] / 1000);
  printf ("  calibration      %8.3f ms                               (100 long lines)\n", fixed / 1000);
  printf ("  ratio            %8.2f                                  (median to calibration)\n",
          (double) own[steps / 2] / fixed);
  printf ("  memory grew by   %8" G_GINT64_FORMAT " bytes in the second half\n", growth);
  bench_clear (&bench);
  return growth > GROWTH_BYTES;
}

static void
test_memory (void)
{
  Bench bench;
  gint64 growth;

  bench_init (&bench);
  growth = measure_growth (&bench, SHORT_STEPS);
  bench_clear (&bench);
  if (!BYTES_ARE_COUNTED)
    {
      g_test_skip ("this build counts no bytes; the steps were taken for the sanitizer to look for leaks");
      return;
    }
  g_test_message ("grew by %" G_GINT64_FORMAT " bytes in %d steps", growth, SHORT_STEPS);
  g_assert_cmpint (growth, <=, GROWTH_BYTES);
}

/* The measure itself must see one text a step. */
static void
test_measure_sees_a_leak (void)
{
  g_autoptr(GPtrArray) leaks = g_ptr_array_new_with_free_func (g_free);
  size_t before = bytes_in_use ();

  if (!BYTES_ARE_COUNTED)
    {
      g_test_skip ("this build counts no bytes: a sanitizer brings a malloc of its own");
      return;
    }
  for (int i = 0; i < SHORT_STEPS; i++)
    g_ptr_array_add (leaks, g_strdup ("a sentence that nobody freed"));
  g_assert_cmpint ((gint64) bytes_in_use () - (gint64) before, >, GROWTH_BYTES);
}

int
main (int    argc,
      char **argv)
{
  setlocale (LC_ALL, "");
  if (argc < 2 || !g_str_equal (argv[1], "--short"))
    return run_benchmark (argc > 1 ? MAX (TURN, atoi (argv[1])) : LONG_STEPS);

  argv[1] = argv[0];
  argc--;
  argv++;
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/bench/drag/measure-sees-a-leak", test_measure_sees_a_leak);
  g_test_add_func ("/bench/drag/memory-holds-still", test_memory);
  return g_test_run ();
}
