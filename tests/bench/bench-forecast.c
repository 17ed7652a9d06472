/* bench-forecast.c - how long all forecasts of a farm of forty batches take.
 *
 * usage: bench-forecast [ROUNDS]   medians (default 7 rounds), each also as a share of the second that
 *                                  all forty together may take; exit status 1 where they take longer
 *        bench-forecast --short    a test: each batch has a forecast; no limit of time
 *
 * Sixteen flocks with a year of days, sixteen groups of fish with half a year of days and a weighing
 * every three weeks, eight crops with two months of temperatures.
 */
#include "config.h"

#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <time.h>

#include "answer/stead-crop-answer.h"
#include "answer/stead-due-answer.h"
#include "answer/stead-fish-answer.h"
#include "answer/stead-flock-answer.h"
#include "store/stead-crop-repo.h"
#include "store/stead-farm-repo.h"
#include "store/stead-fish-repo.h"
#include "store/stead-flock-repo.h"
#include "store/stead-place-repo.h"
#include "store/stead-water-repo.h"

#define ROUNDS 7
#define MAX_ROUNDS 1000
#define LIMIT_MS 1000

#define FLOCKS 16
#define FLOCK_DAYS 365
#define FISH 16
#define FISH_DAYS 180
#define WEIGHED_EVERY 21
#define CROPS 8
#define CROP_DAYS 60

typedef struct
{
  SteadStore *store;
  SteadDay    today;
  gint64      flocks[FLOCKS], fish[FISH], crops[CROPS];
} Many;

static void
must (gboolean  done,
      GError   *error)
{
  if (!done)
    g_error ("%s", error != NULL ? error->message : "?");
}

/* --- the farm ------------------------------------------------------------------------- */

static void
make_flock (Many *many,
            int   at)
{
  g_autoptr(SteadFlock) flock = stead_flock_new ();
  g_autoptr(GPtrArray) entries = g_ptr_array_new_with_free_func ((GDestroyNotify) stead_flock_entry_free);
  g_autoptr(GError) error = NULL;

  flock->name = g_strdup_printf ("House %d", at + 1);
  flock->housed_on = many->today - FLOCK_DAYS;
  flock->hatched_on = flock->housed_on - 119;
  flock->birds = 100;
  flock->eggs_expected = 300;
  must (stead_flock_repo_save (many->store, flock, &error), error);
  for (int day = 0; day < FLOCK_DAYS; day++)
    {
      SteadFlockEntry *entry = g_new0 (SteadFlockEntry, 1);

      entry->flock_id = flock->id;
      entry->day = flock->housed_on + day;
      entry->eggs = day < 20 ? day * 4 : 88 - day / 15 + (day + at) % 5;
      entry->feed_kg = NAN;
      g_ptr_array_add (entries, entry);
    }
  must (stead_flock_repo_add_entries (many->store, entries, NULL, NULL, NULL, &error), error);
  many->flocks[at] = flock->id;
}

static void
weigh (Many     *many,
       gint64    fish,
       SteadDay  day,
       double    mean_g)
{
  g_autoptr(SteadWeighing) weighing = stead_weighing_new ();
  g_autoptr(GError) error = NULL;

  weighing->batch_id = fish;
  weighing->day = day;
  weighing->n = 20;
  weighing->total_kg = 20 * mean_g / 1000;
  weighing->sd_g = 0.18 * mean_g;
  must (stead_weighing_repo_save (many->store, weighing, &error), error);
}

static void
make_fish (Many *many,
           int   at)
{
  g_autoptr(SteadFish) group = stead_fish_new ();
  g_autoptr(SteadTank) tank = stead_tank_new ();
  g_autoptr(GPtrArray) entries = g_ptr_array_new_with_free_func ((GDestroyNotify) stead_fish_entry_free);
  g_autoptr(GError) error = NULL;

  tank->name = g_strdup_printf ("Tank %d", at + 1);
  tank->shape = STEAD_TANK_OTHER;
  tank->volume_l = 4000;
  must (stead_tank_repo_save (many->store, tank, &error), error);
  group->batch.name = g_strdup_printf ("Tilapia %d", at + 1);
  group->batch.place_id = tank->place_id;
  group->batch.started_on = many->today - FISH_DAYS;
  group->stocked = 200;
  group->stocked_g = 20;
  must (stead_fish_repo_save (many->store, group, &error), error);
  for (int day = 0; day < FISH_DAYS; day++)
    {
      SteadFishEntry *entry = g_new0 (SteadFishEntry, 1);

      entry->fish_id = group->batch.id;
      entry->day = group->batch.started_on + day;
      entry->feed_kg = 0.05 + 0.01 * day;
      entry->water_c = 25 + (day + at) % 3;
      g_ptr_array_add (entries, entry);
    }
  must (stead_fish_repo_add_entries (many->store, entries, NULL, NULL, NULL, &error), error);
  for (int day = WEIGHED_EVERY; day < FISH_DAYS; day += WEIGHED_EVERY)
    weigh (many, group->batch.id, group->batch.started_on + day, pow (cbrt (20) + 0.02 * day, 3));
  many->fish[at] = group->batch.id;
}

static void
make_crop (Many *many,
           int   at)
{
  g_autoptr(SteadCrop) crop = stead_crop_new ();
  g_autoptr(GError) error = NULL;
  SteadPlaceFacts place = { .kind = STEAD_PLACE_BAY, .area_m2 = 50 };

  place.name = g_strdup_printf ("Bay %d", at + 1);
  must (stead_place_repo_save (many->store, &place, &error), error);
  g_free (place.name);
  crop->batch.name = g_strdup_printf ("Tomatoes %d", at + 1);
  crop->batch.place_id = place.id;
  crop->batch.started_on = many->today - CROP_DAYS;
  crop->set_out_on = crop->batch.started_on;
  crop->plants = 120;
  crop->climate_id = place.id;
  must (stead_crop_repo_save (many->store, crop, &error), error);
  for (int day = 0; day < CROP_DAYS; day++)
    {
      SteadClimateDay climate = { .place_id = place.id, .day = crop->set_out_on + day, .min_c = 14,
                                  .max_c = 24 + (day + at) % 4, .rh_frac = NAN, .light_mol = NAN };

      must (stead_climate_repo_save (many->store, &climate, TRUE, &error), error);
    }
  many->crops[at] = crop->batch.id;
}

static void
make_farm (Many *many)
{
  g_autoptr(GError) error = NULL;

  many->store = stead_store_create_memory ("Forty batches", &error);
  must (many->store != NULL, error);
  many->today = stead_day_new (2026, 6, 30);
  stead_store_set_today (many->store, many->today);
  must (stead_store_begin (many->store, "forty", &error), error);
  for (int i = 0; i < FLOCKS; i++)
    make_flock (many, i);
  for (int i = 0; i < FISH; i++)
    make_fish (many, i);
  for (int i = 0; i < CROPS; i++)
    make_crop (many, i);
  must (stead_store_commit (many->store, &error), error);
}

/* --- the questions ----------------------------------------------------------------------- */

static int
ask_flocks (const Many *many)
{
  int foretold = 0;

  for (int i = 0; i < FLOCKS; i++)
    {
      g_autoptr(GError) error = NULL;
      g_autoptr(SteadFlockAnswer) answer = stead_flock_answer_new (many->store, many->flocks[i], &error);

      must (answer != NULL, error);
      foretold += answer->ahead->len > 0;
    }
  return foretold;
}

static int
ask_fish (const Many *many)
{
  int foretold = 0;

  for (int i = 0; i < FISH; i++)
    {
      g_autoptr(GError) error = NULL;
      g_autoptr(SteadFishAnswer) answer = stead_fish_answer_new (many->store, many->fish[i], &error);

      must (answer != NULL, error);
      foretold += answer->n_learned > 2 && !isnan (answer->ahead_c);
    }
  return foretold;
}

static int
ask_crops (const Many *many)
{
  int foretold = 0;

  for (int i = 0; i < CROPS; i++)
    {
      g_autoptr(GError) error = NULL;
      g_autoptr(SteadCropAnswer) answer = stead_crop_answer_new (many->store, many->crops[i], &error);

      must (answer != NULL, error);
      foretold += answer->weeks->len > 0;
    }
  return foretold;
}

static int
ask_due (const Many *many)
{
  g_autoptr(GError) error = NULL;
  g_autoptr(SteadDueAnswer) answer = stead_due_answer_new (many->store, &error);

  must (answer != NULL, error);
  return 1;
}

static const struct { const char *name; int n; int (*ask) (const Many *many); } parts[] = {
  { "flocks", FLOCKS, ask_flocks }, { "groups of fish", FISH, ask_fish }, { "crops", CROPS, ask_crops },
  { "list of what is due", 1, ask_due },
};

/* The last of the parts is no forecast. */
#define N_FORECASTS (G_N_ELEMENTS (parts) - 1)

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
median_ms (const Many *many,
           gsize       part,
           guint       rounds)
{
  g_autofree double *ms = g_new (double, rounds);

  parts[part].ask (many);      /* the first turn fills what libraries keep */
  for (guint i = 0; i < rounds; i++)
    {
      double began = own_ms ();

      parts[part].ask (many);
      ms[i] = own_ms () - began;
    }
  qsort (ms, rounds, sizeof *ms, compare);
  return ms[rounds / 2];
}

static int
run_benchmark (guint rounds)
{
  Many many;
  double all = 0;

  make_farm (&many);
  for (gsize i = 0; i < G_N_ELEMENTS (parts); i++)
    {
      double ms = median_ms (&many, i, rounds);

      all += i < N_FORECASTS ? ms : 0;
      printf ("%2d %-20s %8.1f ms   %.3f of a second\n", parts[i].n, parts[i].name, ms, ms / LIMIT_MS);
    }
  printf ("%2d %-20s %8.1f ms   %.3f of a second\n", FLOCKS + FISH + CROPS, "forecasts", all, all / LIMIT_MS);
  g_object_unref (many.store);
  return all > LIMIT_MS ? EXIT_FAILURE : EXIT_SUCCESS;
}

static void
test_each_is_foretold (void)
{
  Many many;

  make_farm (&many);
  for (gsize i = 0; i < G_N_ELEMENTS (parts); i++)
    g_assert_cmpint (parts[i].ask (&many), ==, parts[i].n);
  g_object_unref (many.store);
}

int
main (int   argc,
      char *argv[])
{
  if (argc < 2 || !g_str_equal (argv[1], "--short"))
    return run_benchmark (argc > 1 ? (guint) CLAMP (atoi (argv[1]), 1, MAX_ROUNDS) : ROUNDS);

  argv[1] = argv[0];
  argc--;
  argv++;
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/bench/forecast/each-batch-is-foretold", test_each_is_foretold);
  return g_test_run ();
}
