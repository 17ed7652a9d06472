/* test-line-fish.c - the one-line entry beside a tank: what is understood, told, offered, recorded. */
#include "shoal.h"

#include "answer/stead-line-answer.h"

#include <math.h>
#include <string.h>

#define POUND_KG 0.45359237   /* NIST SP 811, appendix B */

static SteadLineReader *
reader_of (Shoal *shoal)
{
  g_autoptr(GError) error = NULL;
  SteadLineReader *reader = stead_line_reader_new (shoal->farm.store, &error);

  g_assert_no_error (error);
  return reader;
}

static double
celsius (double fahrenheit)
{
  return (fahrenheit - 32) / 1.8;
}

static const struct
{
  const char *line;
  double      feed_kg, water_f;   /* NAN: none */
  int         deaths, culled, refused, days_ago;
  const char *note;
} good[] = {
  { "Tank A: 1.2 lb feed, 1 dead, 78 F", 1.2 * POUND_KG, 78, 1, 0, 0, 0, NULL },
  { "Tilapia: 1.2 lb feed", 1.2 * POUND_KG, NAN, 0, 0, 0, 0, NULL },
  { "tank a 1.2 lb", 1.2 * POUND_KG, NAN, 0, 0, 0, 0, NULL },
  { "tilapia 78 °F", NAN, 78, 0, 0, 0, 0, NULL },
  { "tilapia 78°F", NAN, 78, 0, 0, 0, 0, NULL },
  { "tilapia 25.5 C", NAN, 77.9, 0, 0, 0, 0, NULL },
  { "tilapia water 78", NAN, 78, 0, 0, 0, 0, NULL },
  { "tilapia: temp 78 F, feed 8 oz", 0.5 * POUND_KG, 78, 0, 0, 0, 0, NULL },
  { "78 F", NAN, 78, 0, 0, 0, 0, NULL },
  { "Tank A: 1 lb feed, feed left", POUND_KG, NAN, 0, 0, 1, 0, NULL },
  { "Tank A: feed left", NAN, NAN, 0, 0, 1, 0, NULL },
  { "feed refused yesterday", NAN, NAN, 0, 0, 1, 1, NULL },
  { "Tank A: 2 fish died yesterday", NAN, NAN, 2, 0, 0, 1, NULL },
  { "Tilapia 3 culled Mar 28 note: lost scales", NAN, NAN, 0, 3, 0, 3, "lost scales" },
  { "Tank A note: murky", NAN, NAN, 0, 0, 0, 0, "murky" },
  /* Spanish, in every language. */
  { "Tank A: 1.2 lb de alimento, 1 muerto, agua 26 C", 1.2 * POUND_KG, 78.8, 1, 0, 0, 0, NULL },
  { "tilapia sobró alimento", NAN, NAN, 0, 0, 1, 0, NULL },
  { "tilapia: 2 peces muertos ayer", NAN, NAN, 2, 0, 0, 1, NULL },
  { "tilapia: 0,5 kg alimento, 1 retirado", 0.5, NAN, 0, 1, 0, 0, NULL },
  { "Tank A: temperatura 80 F", NAN, 80, 0, 0, 0, 0, NULL },
};

static void
assert_number (double a,
               double b,
               double off)
{
  g_assert_cmpint (isnan (a), ==, isnan (b));
  if (!isnan (a))
    g_assert_cmpfloat_with_epsilon (a, b, off);
}

static void
test_good (Shoal          *shoal,
           gconstpointer  data)
{
  g_autoptr(SteadLineReader) reader = reader_of (shoal);

  for (gsize i = 0; i < G_N_ELEMENTS (good); i++)
    {
      g_autoptr(SteadLineReading) reading = stead_line_reader_read (reader, good[i].line, shoal->farm.today);

      g_test_message ("%s → %s", good[i].line, reading->understood);
      g_assert_true (reading->complete);
      g_assert_true (reading->is_fish);
      g_assert_cmpint (reading->entry.flock_id, ==, shoal->fish);
      g_assert_cmpint (reading->entry.day, ==, shoal->farm.today - good[i].days_ago);
      assert_number (reading->entry.feed_kg, good[i].feed_kg, 1e-9);
      assert_number (reading->water_c, celsius (good[i].water_f), 1e-9);
      g_assert_cmpint (reading->entry.deaths, ==, good[i].deaths);
      g_assert_cmpint (reading->entry.culled, ==, good[i].culled);
      g_assert_cmpint (reading->refused, ==, good[i].refused);
      g_assert_cmpstr (reading->entry.note, ==, good[i].note);
    }
}

static void
test_bad (Shoal          *shoal,
          gconstpointer  data)
{
  static const struct { const char *line, *says; } lines[] = {
    { "Tank A: 22 eggs", "“Tank A” are fish: say for example “1.2 lb feed, 1 dead, 78 F”" },
    { "Brown hens: 78 F", "“Brown hens” is a flock" },
    { "5 lb feed", "Begin the line with its name: Brown hens and Tilapia" },
    { "Pool Z: 5 lb feed", "Nothing here is called “Pool Z”" },
    { "Tank A: 101 dead", "only 100 fish that can go" },
    { "Tank A: 90 lb feed", "a third" },
    { "Tank A: 200 F", "−5 to 60 °C" },
    { "Tank A: 78 F, 79 F", "already in the line" },
    { "Tank A: 2.5 dead", "counted whole" },
    { "Tank A: 5 blorp", "“78 F”, a remark such as “feed left”" },
    { "Tank A: blorp", "such as" },
    { "Tank A:", "such as “1.2 lb feed, 1 dead, 78 F”" },
  };
  g_autoptr(SteadLineReader) reader = reader_of (shoal);

  for (gsize i = 0; i < G_N_ELEMENTS (lines); i++)
    {
      g_autoptr(SteadLineReading) reading = stead_line_reader_read (reader, lines[i].line, shoal->farm.today);

      g_test_message ("%s → %s", lines[i].line, reading->understood);
      g_assert_false (reading->complete);
      if (farm_in_english () && i != 10)
        g_assert_nonnull (strstr (reading->understood, lines[i].says));
    }
}

/* Fish beside hens change nothing in how hens are entered. */
static void
test_hens_too (Shoal          *shoal,
               gconstpointer  data)
{
  g_autoptr(SteadLineReader) reader = reader_of (shoal);
  g_autoptr(SteadLineReading) eggs = stead_line_reader_read (reader, "8 eggs, 1 cracked", shoal->farm.today);
  g_autoptr(SteadLineReading) named = stead_line_reader_read (reader, "hens 8 eggs", shoal->farm.today);

  g_assert_true (eggs->complete);
  g_assert_false (eggs->is_fish);
  g_assert_cmpint (eggs->entry.flock_id, ==, shoal->farm.flock);
  g_assert_true (named->complete);
}

/* Two groups in one tank: its name no longer says which. */
static void
test_tank_of_two (Shoal          *shoal,
                  gconstpointer  data)
{
  gint64 second = shoal_group (shoal, "Perch", shoal->tank, 10, 50, 3);
  g_autoptr(SteadLineReader) reader = reader_of (shoal);
  g_autoptr(SteadLineReading) tank = stead_line_reader_read (reader, "Tank A: 1 dead", shoal->farm.today);
  g_autoptr(SteadLineReading) perch = stead_line_reader_read (reader, "perch 1 dead", shoal->farm.today);

  g_assert_false (tank->complete);
  g_assert_true (perch->complete);
  g_assert_cmpint (perch->entry.flock_id, ==, second);
}

static void
test_words (Shoal          *shoal,
            gconstpointer  data)
{
  g_autoptr(SteadLineReader) reader = reader_of (shoal);
  g_autoptr(SteadLineReading) reading = NULL;

  if (!farm_in_english ())
    return;
  reading = stead_line_reader_read (reader, "tank a 1.2 lb feed, feed left, 1 dead, 78 F", shoal->farm.today);
  g_assert_cmpstr (reading->understood, ==,
                   "Tilapia, <b>today</b>: 1.2 lb of feed; feed left; water of 78 °F; 1 fish found dead.");
}

static gboolean
offers (SteadLineReader *reader,
        const char      *line,
        const char      *wanted)
{
  g_auto(GStrv) lines = stead_line_reader_complete (reader, line);

  for (int i = 0; lines[i] != NULL; i++)
    g_test_message ("%s → %s", line, lines[i]);
  return g_strv_contains ((const char * const *) lines, wanted);
}

static void
test_offers (Shoal          *shoal,
             gconstpointer  data)
{
  g_autoptr(SteadLineReader) reader = reader_of (shoal);

  g_assert_true (offers (reader, "t", "Tilapia: "));
  g_assert_true (offers (reader, "t", "Tank A: "));
  if (!farm_in_english ())
    return;
  g_assert_true (offers (reader, "Tank A: 1.2 ", "Tank A: 1.2 lb feed"));
  g_assert_true (offers (reader, "Tank A: 78 ", "Tank A: 78 °F"));
  g_assert_false (offers (reader, "Tank A: 78 ", "Tank A: 78 eggs"));
  g_assert_true (offers (reader, "Tank A: 1 lb feed, ", "Tank A: 1 lb feed, feed left"));
  g_assert_true (offers (reader, "Brown hens: 7 ", "Brown hens: 7 eggs"));
  g_assert_false (offers (reader, "Brown hens: 7 ", "Brown hens: 7 °F"));
}

/* What is offered is understood, each word of it; 1 °F is then no water of fish. */
static void
test_offers_are_understood (Shoal          *shoal,
                            gconstpointer  data)
{
  static const char * const starts[] = { "Tank A: 1 ", "Tilapia: 1 lb feed ", "Tank A: 1 dead, " };
  g_autoptr(SteadLineReader) reader = reader_of (shoal);

  for (gsize i = 0; i < G_N_ELEMENTS (starts); i++)
    {
      g_auto(GStrv) lines = stead_line_reader_complete (reader, starts[i]);

      for (int k = 0; lines[k] != NULL; k++)
        {
          g_autoptr(SteadLineReading) reading = stead_line_reader_read (reader, lines[k], shoal->farm.today);

          g_test_message ("%s → %s", lines[k], reading->understood);
          g_assert_true (reading->error_start < 0 || g_str_has_suffix (lines[k], " "));
        }
    }
}

static void
test_record (Shoal          *shoal,
             gconstpointer  data)
{
  g_autoptr(SteadLineReader) reader = reader_of (shoal);
  g_autoptr(SteadLineReading) reading = stead_line_reader_read (reader, "Tank A: 8 oz feed, 1 dead, 78 F yesterday note: calm",
                                                                shoal->farm.today);
  g_autoptr(GPtrArray) entries = NULL;
  g_autoptr(GError) error = NULL;
  g_autofree char *name = NULL;
  const SteadFishEntry *entry;

  g_assert_true (stead_line_reading_record (reading, shoal->farm.store, &error));
  g_assert_no_error (error);
  entries = stead_fish_repo_entries (shoal->farm.store, shoal->fish, shoal->farm.today - 3, shoal->farm.today, &error);
  g_assert_cmpuint (entries->len, ==, 1);
  entry = entries->pdata[0];
  g_assert_cmpint (entry->day, ==, shoal->farm.today - 1);
  g_assert_cmpfloat_with_epsilon (entry->feed_kg, POUND_KG / 2, 1e-9);
  g_assert_cmpfloat_with_epsilon (entry->water_c, celsius (78), 1e-9);
  g_assert_cmpint (entry->deaths, ==, 1);
  g_assert_cmpstr (entry->note, ==, "calm");
  name = stead_store_get_undo_name (shoal->farm.store);
  if (farm_in_english ())
    g_assert_cmpstr (name, ==, "Feed, 0.5 lb, on Mar 30");
  g_assert_true (stead_store_undo (shoal->farm.store, &error));
  g_assert_no_error (error);
}

/* On an earlier day more may have swum there: the store has the last word. */
static void
test_record_refused (Shoal          *shoal,
                     gconstpointer  data)
{
  g_autoptr(SteadLineReader) reader = reader_of (shoal);
  g_autoptr(SteadLineReading) reading = stead_line_reader_read (reader, "Tank A: 150 dead yesterday", shoal->farm.today);
  g_autoptr(GError) error = NULL;

  g_assert_true (reading->complete);
  g_assert_false (stead_line_reading_record (reading, shoal->farm.store, &error));
  g_assert_nonnull (error);
  g_assert_cmpint (stead_fish_repo_count_entries (shoal->farm.store, shoal->fish, NULL), ==, 0);
}

#define TEST(path, func) g_test_add ("/answer/line-fish/" path, Shoal, NULL, shoal_set_up, func, shoal_tear_down)

int
main (int   argc,
      char *argv[])
{
  farm_start (&argc, &argv);
  TEST ("good", test_good);
  TEST ("bad", test_bad);
  TEST ("hens-too", test_hens_too);
  TEST ("tank-of-two", test_tank_of_two);
  TEST ("words", test_words);
  TEST ("offers", test_offers);
  TEST ("offers-are-understood", test_offers_are_understood);
  TEST ("record", test_record);
  TEST ("record-refused", test_record_refused);
  return g_test_run ();
}
