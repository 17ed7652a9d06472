/* test-batch-card.c - the tables of a batch's card, against the pond's sums by hand. */
#include "numbers.h"
#include "pond.h"

#include <math.h>
#include <string.h>

#include "answer/stead-batch-card.h"

static SteadBatchCard *
card_of (Pond   *pond,
         gint64  batch)
{
  g_autoptr(GError) error = NULL;
  SteadBatchCard *card = stead_batch_card_new (pond->farm.store, batch, &error);

  g_assert_no_error (error);
  g_assert_nonnull (card);
  return card;
}

static const char *
cell (const SteadCardTable *table,
      guint                 row,
      int                   column)
{
  g_assert_cmpuint (row, <, table->rows->len);
  g_assert_cmpint (column, <, table->n_columns);
  return ((const SteadCardRow *) table->rows->pdata[row])->cells[column];
}

static void
add_deaths (Pond       *pond,
            int         days_ago,
            int         n,
            const char *reason)
{
  SteadFishEntry entry = { .fish_id = pond->fish, .day = pond->farm.today - days_ago, .feed_kg = NAN, .deaths = n,
                           .water_c = NAN, .reason = (char *) reason };

  FARM_DO (&pond->farm, stead_fish_repo_save_entry (pond->farm.store, &entry, &farm_error));
}

/* --- costs ------------------------------------------------------------------------ */

/* So far $50 of fish and $147 of feed; 30 days of 1 kg at $1.80 to come: $54. */
static void
test_costs (Pond          *pond,
            gconstpointer  data)
{
  g_autoptr(SteadBatchCard) card = NULL;

  pond_feed (pond);
  card = card_of (pond, pond->fish);
  g_assert_cmpuint (card->costs->rows->len, ==, 3);
  g_assert_true (card->costs->has_total);
  NUMBERS_ARE (cell (card->costs, 0, 1), 50);
  g_assert_null (cell (card->costs, 0, 2));
  NUMBERS_ARE (cell (card->costs, 1, 1), 147);
  NUMBERS_ARE (cell (card->costs, 1, 2), 54);
  NUMBERS_ARE (cell (card->costs, 1, 3), 201);
  NUMBERS_ARE (cell (card->costs, 2, 1), 197);
  NUMBERS_ARE (cell (card->costs, 2, 2), 54);
  NUMBERS_ARE (cell (card->costs, 2, 3), 251);
}

/* Over: one column, and nothing to come. */
static void
test_costs_when_over (Pond          *pond,
                      gconstpointer  data)
{
  g_autoptr(SteadBatchCard) card = NULL;

  pond_feed (pond);
  pond_harvest (pond, pond->farm.today, 55, 200, 19700, TRUE);
  card = card_of (pond, pond->fish);
  g_assert_cmpint (card->costs->n_columns, ==, 2);
  NUMBERS_ARE (cell (card->costs, card->costs->rows->len - 1, 1), 197);
  g_assert_cmpuint (card->harvests->rows->len, ==, 1);
  NUMBERS_ARE (cell (card->harvests, 0, 1), 55);
  NUMBERS_ARE (cell (card->harvests, 0, 3), 197);
}

/* --- the log by week ----------------------------------------------------------------- */

/* Ninety days are twelve weeks and six days; seven days eat 7 kg, 15.43 lb. */
static void
test_weeks_of_fish (Pond          *pond,
                    gconstpointer  data)
{
  g_autoptr(SteadBatchCard) card = NULL;

  pond_feed (pond);
  add_deaths (pond, 0, 4, "Low oxygen");
  card = card_of (pond, pond->fish);
  g_assert_cmpuint (card->weeks->rows->len, ==, 13);
  for (guint i = 0; i < 12; i++)
    {
      NUMBERS_ARE (cell (card->weeks, i, 1), 200);
      NUMBERS_ARE (cell (card->weeks, i, 3), 15.43);
      g_assert_null (cell (card->weeks, i, 5));
    }
  NUMBERS_ARE (cell (card->weeks, 12, 1), 196);
  NUMBERS_ARE (cell (card->weeks, 12, 3), 13.23);
  NUMBERS_ARE (cell (card->weeks, 12, 5), 4);
  if (farm_in_english ())
    g_assert_cmpstr (cell (card->weeks, 1, 0), ==, "Jan 8, 2026");
}

/* Ten hens lay 8 eggs a day: 56 a week, 80 in 100; in 90 days 9 are cracked. */
static void
test_weeks_of_hens (Pond          *pond,
                    gconstpointer  data)
{
  g_autoptr(SteadBatchCard) card = NULL;
  int cracked = 0;

  farm_log (&pond->farm);
  card = card_of (pond, pond->farm.flock);
  g_assert_cmpuint (card->weeks->rows->len, ==, 13);
  NUMBERS_ARE (cell (card->weeks, 0, 1), 56);
  NUMBERS_ARE (cell (card->weeks, 0, 3), 80);
  NUMBERS_ARE (cell (card->weeks, 12, 1), 48);
  for (guint i = 0; i < 13; i++)
    {
      const char *text = cell (card->weeks, i, 2);

      cracked += text != NULL ? atoi (text) : 0;
    }
  g_assert_cmpint (cracked, ==, 9);
}

/* --- what else happened --------------------------------------------------------------- */

static void
test_losses (Pond          *pond,
             gconstpointer  data)
{
  g_autoptr(SteadBatchCard) card = NULL;

  add_deaths (pond, 5, 6, "Heron");
  add_deaths (pond, 4, 2, NULL);
  card = card_of (pond, pond->fish);
  g_assert_cmpuint (card->losses->rows->len, ==, 3);
  g_assert_true (card->losses->has_total);
  g_assert_cmpstr (cell (card->losses, 0, 0), ==, "Heron");
  NUMBERS_ARE (cell (card->losses, 0, 1), 6);
  NUMBERS_ARE (cell (card->losses, 0, 2), 3);
  NUMBERS_ARE (cell (card->losses, 2, 1), 8);
  NUMBERS_ARE (cell (card->losses, 2, 2), 4);
}

static void
treat (Pond       *pond,
       int         days_ago,
       const char *what,
       const char *dose)
{
  SteadDay day = pond->farm.today - days_ago;
  SteadTreatment treatment = { .batch_id = pond->fish, .day = day, .last_day = day + 4, .wait_until = day + 28,
                               .what = (char *) what, .dose = (char *) dose, .ordered_by = (char *) "Dr. Vale" };

  FARM_DO (&pond->farm, stead_treatment_repo_save (pond->farm.store, &treatment, &farm_error));
}

/* Oldest first; the one that is waited for stands in the caution too. */
static void
test_treatments (Pond          *pond,
                 gconstpointer  data)
{
  g_autoptr(SteadBatchCard) card = NULL;

  treat (pond, 10, "Medicated feed", "2 g a kg");
  treat (pond, 60, "Salt bath", NULL);
  card = card_of (pond, pond->fish);
  g_assert_cmpuint (card->treatments->rows->len, ==, 2);
  g_assert_cmpstr (cell (card->treatments, 0, 0), ==, "Salt bath");
  g_assert_cmpstr (cell (card->treatments, 1, 2), ==, "Dr. Vale");
  g_assert_nonnull (card->batch->caution);
  if (!farm_in_english ())
    return;
  g_assert_cmpstr (cell (card->treatments, 1, 0), ==, "Medicated feed (2 g a kg)");
  g_assert_cmpstr (cell (card->treatments, 1, 1), ==, "Mar 21, 2026 to Mar 25, 2026");
  g_assert_cmpstr (cell (card->treatments, 1, 3), ==, "Apr 18, 2026");
  g_assert_nonnull (strstr (card->batch->caution, "Apr 18, 2026"));
}

static void
note (Pond       *pond,
      int         days_ago,
      const char *text,
      gint64      picture)
{
  SteadBatchNote its = { .batch_id = pond->fish, .day = pond->farm.today - days_ago, .text = (char *) text,
                         .picture_id = picture };

  FARM_DO (&pond->farm, stead_batch_repo_save_note (pond->farm.store, &its, &farm_error));
}

static void
test_notes (Pond          *pond,
            gconstpointer  data)
{
  g_autoptr(SteadBatchCard) card = NULL;
  g_autoptr(GBytes) jpeg = g_bytes_new_static ("a picture", 9);
  const SteadCardNote *first, *second;
  gint64 picture = 0;

  FARM_DO (&pond->farm, (picture = stead_picture_repo_add (pond->farm.store, jpeg, 4, 3, &farm_error)) != 0);
  note (pond, 2, NULL, picture);
  note (pond, 7, "The net tore", 0);
  card = card_of (pond, pond->fish);
  g_assert_cmpuint (card->notes->len, ==, 2);
  first = card->notes->pdata[0];
  second = card->notes->pdata[1];
  g_assert_cmpstr (first->text, ==, "The net tore");
  g_assert_null (first->jpeg);
  g_assert_null (second->text);
  g_assert_true (g_bytes_equal (second->jpeg, jpeg));
}

static void
test_facts (Pond          *pond,
            gconstpointer  data)
{
  g_autoptr(SteadBatchCard) card = card_of (pond, pond->fish);
  g_autoptr(GString) all = g_string_new (NULL);

  for (guint i = 0; i < card->facts->rows->len; i++)
    g_string_append_printf (all, "%s: %s\n", cell (card->facts, i, 0), cell (card->facts, i, 1));
  if (!farm_in_english ())
    return;
  g_assert_nonnull (strstr (all->str, "Put in: 200 fish of 20 g each\n"));
  g_assert_nonnull (strstr (all->str, "Price of all of them: $50.00\n"));
  g_assert_nonnull (strstr (all->str, "Where: Tank 1\n"));
  g_assert_nonnull (strstr (all->str, "First day: Jan 1, 2026\n"));
  g_assert_nonnull (strstr (all->str, "Days: 90\n"));
  g_assert_nonnull (strstr (all->str, "Feed: Fish feed\n"));
  g_assert_nonnull (strstr (all->str, "Work: 12 minutes a day, unpaid\n"));
}

#define ADD(name, test) g_test_add ("/answer/batch-card/" name, Pond, NULL, pond_set_up, test, pond_tear_down)

int
main (int    argc,
      char **argv)
{
  farm_start (&argc, &argv);
  ADD ("costs", test_costs);
  ADD ("costs-when-over", test_costs_when_over);
  ADD ("weeks-of-fish", test_weeks_of_fish);
  ADD ("weeks-of-hens", test_weeks_of_hens);
  ADD ("losses", test_losses);
  ADD ("treatments", test_treatments);
  ADD ("notes", test_notes);
  ADD ("facts", test_facts);
  return g_test_run ();
}
