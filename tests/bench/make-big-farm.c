/* make-big-farm.c - a farm with a million entries: ten years of eight flocks.
 *
 * usage: make-big-farm FILE [ENTRIES [YEARS]]
 *
 * For measuring only.  Every fact goes through the repositories, a year at a
 * time, so the ledger is a real one.  Prints what each part took.
 */
#include "config.h"

#include <gio/gio.h>
#include <math.h>
#include <stdlib.h>

#include "store/stead-farm-repo.h"
#include "store/stead-flock-repo.h"
#include "store/stead-item-repo.h"
#include "store/stead-receipt-repo.h"
#include "store/stead-store.h"

#define FLOCKS 8
#define YEARS 10     /* of these where none is asked for */
#define DAYS_A_YEAR 365
#define HENS 2000
#define FEED_KG_ENTRY 20.0
#define WEEK_KG 120000.0
#define WEEK_CENTS 5000000

typedef struct
{
  SteadStore *store;
  gint64      feed;
  gint64      flocks[FLOCKS];
  SteadDay    today;
  int         years;
  int         entries_a_day;   /* of one flock */
} Big;

static void
must (gboolean  done,
      GError   *error)
{
  if (!done)
    g_error ("%s", error != NULL ? error->message : "?");
}

static void
begin (Big *big)
{
  GError *error = NULL;

  must (stead_store_begin (big->store, "big", &error), error);
}

static void
commit (Big *big)
{
  GError *error = NULL;

  must (stead_store_commit (big->store, &error), error);
}

static void
make_flock (Big *big,
            int  at)
{
  g_autoptr(SteadFlock) flock = stead_flock_new ();
  GError *error = NULL;

  flock->name = g_strdup_printf ("House %d", at + 1);
  flock->housed_on = big->today - big->years * DAYS_A_YEAR;
  flock->hatched_on = flock->housed_on - 119;
  flock->birds = HENS;
  flock->birds_cost_cents = HENS * 1200;
  flock->eggs_expected = 400;
  flock->feed_item_id = big->feed;
  must (stead_flock_repo_save (big->store, flock, &error), error);
  big->flocks[at] = flock->id;
}

static void
make_start (Big *big)
{
  SteadItem item = { .name = (char *) "Layer feed", .kind = STEAD_ITEM_FEED, .unit = stead_unit_by_id ("lb"),
                     .reorder_base = NAN };
  GError *error = NULL;

  begin (big);
  must (stead_item_repo_save (big->store, &item, &error), error);
  big->feed = item.id;
  for (int i = 0; i < FLOCKS; i++)
    make_flock (big, i);
  commit (big);
}

static void
make_receipt (Big      *big,
              SteadDay  day)
{
  g_autoptr(SteadReceipt) receipt = stead_receipt_new ();
  SteadReceiptLine line = { .item_id = big->feed, .quantity_base = WEEK_KG, .cost_cents = WEEK_CENTS,
                            .best_by = STEAD_DAY_NONE };
  GError *error = NULL;

  receipt->day = day;
  receipt->supplier = g_strdup ("Lakeside Feed & Seed");
  g_array_append_val (receipt->lines, line);
  must (stead_receipt_repo_save (big->store, receipt, &error), error);
}

static void
add_day (Big       *big,
         GPtrArray *entries,
         SteadDay   day)
{
  for (int flock = 0; flock < FLOCKS; flock++)
    for (int i = 0; i < big->entries_a_day; i++)
      {
        SteadFlockEntry *entry = g_new0 (SteadFlockEntry, 1);

        *entry = (SteadFlockEntry) { .flock_id = big->flocks[flock], .day = day, .eggs = 20 + (i + day) % 20,
                                     .cracked = i % 10 == 0, .feed_kg = i % 4 == 0 ? FEED_KG_ENTRY : NAN };
        g_ptr_array_add (entries, entry);
      }
}

static void
make_year (Big *big,
           int  year)
{
  g_autoptr(GPtrArray) entries = g_ptr_array_new_with_free_func ((GDestroyNotify) stead_flock_entry_free);
  SteadDay first = big->today - (big->years - year) * DAYS_A_YEAR;
  gint64 start = g_get_monotonic_time ();
  GError *error = NULL;

  for (int day = 0; day < DAYS_A_YEAR; day++)
    add_day (big, entries, first + day);
  begin (big);
  for (int day = 0; day < DAYS_A_YEAR; day += 7)
    make_receipt (big, first + day);
  must (stead_flock_repo_add_entries (big->store, entries, NULL, NULL, NULL, &error), error);
  commit (big);
  g_print ("year %d: %u entries in %.2f s\n", year + 1, entries->len,
           (double) (g_get_monotonic_time () - start) / G_USEC_PER_SEC);
}

/* Forgetting a person drops all steps of undo: they are not what is measured. */
static void
drop_steps (Big *big)
{
  SteadPerson person = { .name = (char *) "Nobody", .left_on = STEAD_DAY_NONE };
  GError *error = NULL;

  begin (big);
  must (stead_person_repo_save (big->store, &person, &error), error);
  must (stead_person_repo_forget (big->store, person.id, &error), error);
  commit (big);
}

int
main (int    argc,
      char **argv)
{
  Big big = { 0 };
  GError *error = NULL;
  int wanted;

  if (argc < 2)
    g_error ("usage: make-big-farm FILE [ENTRIES [YEARS]]");
  wanted = argc > 2 ? atoi (argv[2]) : 1000000;
  big.years = argc > 3 ? atoi (argv[3]) : YEARS;
  big.entries_a_day = MAX (1, (wanted + FLOCKS * big.years * DAYS_A_YEAR - 1) / (FLOCKS * big.years * DAYS_A_YEAR));
  big.store = stead_store_create (argv[1], "Big Farm", &error);
  must (big.store != NULL, error);
  big.today = stead_store_get_today (big.store);
  make_start (&big);
  for (int year = 0; year < big.years; year++)
    make_year (&big, year);
  drop_steps (&big);
  g_object_unref (big.store);
  return EXIT_SUCCESS;
}
