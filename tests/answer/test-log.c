/* test-log.c - the rows of an export, and finding what a paper is about. */
#include "farm.h"

#include <locale.h>
#include <math.h>

#include "answer/stead-answer-error.h"
#include "answer/stead-imprint.h"
#include "answer/stead-log-answer.h"
#include "answer/stead-subject.h"

static guint
column_of (const SteadLogAnswer *log,
           const char           *title)
{
  for (guint i = 0; i < log->columns->len; i++)
    if (g_str_equal (stead_log_answer_column (log, i)->title, title))
      return i;
  g_test_message ("no column %s", title);
  g_assert_not_reached ();
}

static void
test_flock_log (Farm          *farm,
                gconstpointer  data)
{
  g_autoptr(GError) error = NULL;
  g_autoptr(SteadLogAnswer) log = NULL;
  gint64 eggs = 0, cracked = 0;
  double feed = 0;

  farm_log (farm);
  log = stead_log_answer_flock (farm->store, farm->flock, &error);
  g_assert_no_error (error);
  g_assert_cmpuint (log->rows->len, ==, 90);
  g_assert_cmpint (stead_log_answer_cell (log, 0, column_of (log, "Date"))->whole, ==, stead_day_new (2026, 1, 1));
  g_assert_cmpint (stead_log_answer_cell (log, 89, column_of (log, "Date"))->whole, ==, farm->today);
  g_assert_cmpfloat_with_epsilon (stead_log_answer_cell (log, 14, column_of (log, "Age (weeks)"))->number, 32, 1e-9);
  for (guint row = 0; row < 90; row++)
    {
      eggs += stead_log_answer_cell (log, row, column_of (log, "Eggs"))->whole;
      cracked += stead_log_answer_cell (log, row, column_of (log, "Cracked"))->whole;
      feed += stead_log_answer_cell (log, row, column_of (log, "Feed (lb)"))->number;
      g_assert_cmpint (stead_log_answer_cell (log, row, column_of (log, "Hens"))->whole, ==, 10);
      g_assert_false (stead_log_answer_cell (log, row, column_of (log, "Note"))->filled);
    }
  g_assert_cmpint (eggs, ==, 720);
  g_assert_cmpint (cracked, ==, 9);
  g_assert_cmpfloat_with_epsilon (feed, 90 / 0.45359237, 1e-6);   /* NIST SP 811: 1 lb is 0.45359237 kg */
}

/* Hens are those that the day began with, in every entry of that day. */
static void
test_hens_fall_the_day_after (Farm          *farm,
                              gconstpointer  data)
{
  static const gint64 hens[] = { 10, 10, 8, 8 };
  SteadDay first = stead_day_new (2026, 2, 1);
  g_autoptr(GError) error = NULL;
  g_autoptr(SteadLogAnswer) log = NULL;

  farm_entry (farm, first, 8, 0, NAN, 1);
  farm_entry (farm, first, STEAD_COUNT_NONE, 0, 1.5, 1);
  farm_entry (farm, first + 3, 0, 0, NAN, 0);
  farm_entry (farm, first + 4, 7, 0, NAN, 0);
  log = stead_log_answer_flock (farm->store, farm->flock, &error);
  g_assert_no_error (error);
  g_assert_cmpuint (log->rows->len, ==, 4);
  for (guint row = 0; row < 4; row++)
    g_assert_cmpint (stead_log_answer_cell (log, row, column_of (log, "Hens"))->whole, ==, hens[row]);
  /* Not entered is not 0. */
  g_assert_false (stead_log_answer_cell (log, 1, column_of (log, "Eggs"))->filled);
  g_assert_true (stead_log_answer_cell (log, 2, column_of (log, "Eggs"))->filled);
  g_assert_false (stead_log_answer_cell (log, 0, column_of (log, "Feed (lb)"))->filled);
}

/* The amounts of each part sum to its total on the sheet. */
static void
test_cost_lines_sum (Farm          *farm,
                     gconstpointer  data)
{
  g_autoptr(GError) error = NULL;
  g_autoptr(SteadCostAnswer) cost = NULL;
  g_autoptr(SteadLogAnswer) log = NULL;

  farm_log (farm);
  farm_stock (farm);
  cost = stead_cost_answer_new (farm->store, farm->product, STEAD_PERIOD_12_WEEKS, &error);
  g_assert_no_error (error);
  log = stead_log_answer_cost (farm->store, cost, &error);
  g_assert_no_error (error);
  g_assert_cmpuint (log->rows->len, >, 0);
  for (int kind = 0; kind < STEAD_N_COST_KINDS; kind++)
    {
      gint64 sum = 0;

      for (guint row = 0; row < log->rows->len; row++)
        if (g_str_equal (stead_log_answer_cell (log, row, 0)->text, cost->labels[kind]))
          sum += stead_log_answer_cell (log, row, column_of (log, "Amount (USD)"))->whole;
      g_test_message ("%s: %" G_GINT64_FORMAT " of %g", cost->labels[kind], sum, cost->sheet.parts[kind].total_cents);
      g_assert_cmpfloat_with_epsilon ((double) sum, cost->sheet.parts[kind].total_cents, 0.5 + 1e-6);
    }
}

static void
test_subject (Farm          *farm,
              gconstpointer  data)
{
  g_autoptr(GError) error = NULL;
  gint64 id = -7;

  g_assert_true (stead_subject_product (farm->store, NULL, &id, &error));
  g_assert_cmpint (id, ==, farm->product);
  id = -7;
  g_assert_true (stead_subject_product (farm->store, " eggs ", &id, &error));
  g_assert_cmpint (id, ==, farm->product);
  g_assert_true (stead_subject_flock (farm->store, "BROWN HENS", &id, &error));
  g_assert_cmpint (id, ==, farm->flock);
  id = -7;
  g_assert_false (stead_subject_product (farm->store, "Milk", &id, &error));
  g_assert_error (error, STEAD_ANSWER_ERROR, STEAD_ANSWER_ERROR_UNKNOWN);
  g_assert_nonnull (strstr (error->message, "Milk"));
  g_assert_nonnull (strstr (error->message, "Eggs"));
  g_assert_cmpint (id, ==, -7);
}

static void
test_subject_of_a_bare_farm (void)
{
  g_autoptr(GError) error = NULL;
  SteadStore *store = stead_store_create_memory ("Bare", &error);
  gint64 id = -7;

  g_assert_no_error (error);
  g_assert_false (stead_subject_product (store, NULL, &id, &error));
  g_assert_error (error, STEAD_ANSWER_ERROR, STEAD_ANSWER_ERROR_MISSING);
  g_clear_error (&error);
  g_assert_false (stead_subject_flock (store, NULL, &id, &error));
  g_assert_error (error, STEAD_ANSWER_ERROR, STEAD_ANSWER_ERROR_MISSING);
  g_assert_finalize_object (store);
}

static void
test_imprint (Farm          *farm,
              gconstpointer  data)
{
  g_autoptr(GError) error = NULL;
  g_autoptr(SteadImprint) imprint = stead_imprint_new (farm->store, &error);

  g_assert_no_error (error);
  g_assert_cmpstr (imprint->farm_name, ==, "Test farm");
  g_assert_cmpstr (imprint->currency, ==, "USD");
  g_assert_false (imprint->metric);
  g_assert_cmpint (imprint->today, ==, farm->today);
  g_assert_cmpint (imprint->change_no, ==, stead_store_get_change_no (farm->store));
  g_assert_cmpstr (stead_imprint_language (), ==, "en-US");
}

#define ADD(path, test) g_test_add (path, Farm, NULL, farm_set_up, test, farm_tear_down)

int
main (int    argc,
      char **argv)
{
  setlocale (LC_ALL, "");
  g_test_init (&argc, &argv, NULL);
  ADD ("/answer/log/of-a-flock", test_flock_log);
  ADD ("/answer/log/hens-fall-the-day-after", test_hens_fall_the_day_after);
  ADD ("/answer/log/cost-lines-sum", test_cost_lines_sum);
  ADD ("/answer/subject/by-name", test_subject);
  g_test_add_func ("/answer/subject/of-a-bare-farm", test_subject_of_a_bare_farm);
  ADD ("/answer/imprint/of-the-farm", test_imprint);
  return g_test_run ();
}
