/* test-line.c - the one-line entry: what is understood, what is told, what is recorded. */
#include "farm.h"

#include "answer/stead-line-answer.h"

#include <math.h>
#include <string.h>

#define POUND_KG 0.45359237   /* NIST SP 811, appendix B */
#define NONE STEAD_COUNT_NONE

typedef struct
{
  Farm             farm;
  gint64           second;   /* the flock "Hens 2" */
  gint64           ana;
  gint64           grit;
  SteadLineReader *reader;
} Line;

static SteadLineReader *
reader_of (Farm *farm)
{
  g_autoptr(GError) error = NULL;
  SteadLineReader *reader = stead_line_reader_new (farm->store, &error);

  g_assert_no_error (error);
  return reader;
}

static gint64
add_person (Farm       *farm,
            const char *name)
{
  SteadPerson person = { .name = g_strdup (name), .role = STEAD_PERSON_STUDENT, .left_on = STEAD_DAY_NONE };

  FARM_DO (farm, stead_person_repo_save (farm->store, &person, &farm_error));
  g_free (person.name);
  return person.id;
}

static void
set_up_one (Line          *line,
            gconstpointer  data)
{
  g_autoptr(SteadFlock) flock = NULL;

  farm_set_up (&line->farm, data);
  flock = stead_flock_repo_get (line->farm.store, line->farm.flock, NULL);
  flock->birds = 30;
  FARM_DO (&line->farm, stead_flock_repo_save (line->farm.store, flock, &farm_error));
  line->ana = add_person (&line->farm, "Ana Ruiz");
  add_person (&line->farm, "Ben");
  add_person (&line->farm, "Benno");
  line->reader = reader_of (&line->farm);
}

static void
set_up_two (Line          *line,
            gconstpointer  data)
{
  g_autoptr(SteadFlock) flock = NULL;
  SteadItem grit = { .name = g_strdup ("Insoluble grit"), .kind = STEAD_ITEM_SUPPLY,
                     .unit = stead_unit_by_id ("lb"), .reorder_base = NAN };

  set_up_one (line, data);
  flock = stead_flock_repo_get (line->farm.store, line->farm.flock, NULL);
  g_free (flock->name);
  flock->name = g_strdup ("Hens 2");
  flock->id = 0;
  flock->birds = 30;
  FARM_DO (&line->farm, stead_flock_repo_save (line->farm.store, flock, &farm_error));
  line->second = flock->id;
  FARM_DO (&line->farm, stead_item_repo_save (line->farm.store, &grit, &farm_error));
  line->grit = grit.id;
  g_free (grit.name);
  stead_line_reader_free (line->reader);
  line->reader = reader_of (&line->farm);
}

static void
tear_down (Line          *line,
           gconstpointer  data)
{
  stead_line_reader_free (line->reader);
  farm_tear_down (&line->farm, data);
}

/* --- what is understood ------------------------------------------------------- */

static const struct
{
  const char *line;
  int         eggs, cracked, deaths, culled;
  double      feed_kg;    /* NAN: none */
  int         days_ago;
  const char *note;       /* NULL: none */
  gboolean    by_ana;
} good[] = {
  { "22 eggs", 22, 0, 0, 0, NAN, 0, NULL, FALSE },
  { "0 eggs", 0, 0, 0, 0, NAN, 0, NULL, FALSE },
  { "no eggs", 0, 0, 0, 0, NAN, 0, NULL, FALSE },
  { "22 eggs, 1 cracked, 6.8 lb feed", 22, 1, 0, 0, 6.8 * POUND_KG, 0, NULL, FALSE },
  { "6,8 kg feed, 22 eggs", 22, 0, 0, 0, 6.8, 0, NULL, FALSE },
  { "6.8lb feed 22 eggs 1 cracked", 22, 1, 0, 0, 6.8 * POUND_KG, 0, NULL, FALSE },
  { "1 dead, 22 eggs", 22, 0, 1, 0, NAN, 0, NULL, FALSE },
  { "22 eggs, 1 of them cracked", 22, 1, 0, 0, NAN, 0, NULL, FALSE },
  { "1 hen died", NONE, 0, 1, 0, NAN, 0, NULL, FALSE },
  { "2 hens culled yesterday", NONE, 0, 0, 2, NAN, 1, NULL, FALSE },
  { "eggs 22 cracked 1", 22, 1, 0, 0, NAN, 0, NULL, FALSE },
  { "eggs: 22, cracked: 1, feed: 3 lb", 22, 1, 0, 0, 3 * POUND_KG, 0, NULL, FALSE },
  { "2 lb 4 oz feed", NONE, 0, 0, 0, 2.25 * POUND_KG, 0, NULL, FALSE },
  { "6 1/2 lb of feed", NONE, 0, 0, 0, 6.5 * POUND_KG, 0, NULL, FALSE },
  { "6½ lb feed", NONE, 0, 0, 0, 6.5 * POUND_KG, 0, NULL, FALSE },
  { "5 lb", NONE, 0, 0, 0, 5 * POUND_KG, 0, NULL, FALSE },
  { "5 feed", NONE, 0, 0, 0, 5 * POUND_KG, 0, NULL, FALSE },
  { "1 doz eggs", 12, 0, 0, 0, NAN, 0, NULL, FALSE },
  { "Brown hens: 18 eggs", 18, 0, 0, 0, NAN, 0, NULL, FALSE },
  { "brown HENS 18 eggs", 18, 0, 0, 0, NAN, 0, NULL, FALSE },
  { "br: 18 eggs", 18, 0, 0, 0, NAN, 0, NULL, FALSE },
  { "18 eggs yesterday by Ana note: windy, two feeders", 18, 0, 0, 0, NAN, 1, "windy, two feeders", TRUE },
  { "by ana ruiz 18 eggs", 18, 0, 0, 0, NAN, 0, NULL, TRUE },
  { "18 eggs Mar 30", 18, 0, 0, 0, NAN, 1, NULL, FALSE },
  { "18 eggs on 29 March 2026", 18, 0, 0, 0, NAN, 2, NULL, FALSE },
  { "2026-03-29 18 eggs", 18, 0, 0, 0, NAN, 2, NULL, FALSE },
  { "3/29 18 eggs", 18, 0, 0, 0, NAN, 2, NULL, FALSE },
  { "3/29/26: 18 eggs", 18, 0, 0, 0, NAN, 2, NULL, FALSE },
  { "Mar 3 18 eggs", 18, 0, 0, 0, NAN, 28, NULL, FALSE },
  { "today 18 eggs", 18, 0, 0, 0, NAN, 0, NULL, FALSE },
  { "note: quiet day", NONE, 0, 0, 0, NAN, 0, "quiet day", FALSE },
  { "18 huevos, 1 roto, 3 kg de alimento ayer por Ana", 18, 1, 0, 0, 3, 1, NULL, TRUE },
  { "sin huevos", 0, 0, 0, 0, NAN, 0, NULL, FALSE },
  { "1 gallina muerta el 29 de marzo nota: fría", NONE, 0, 1, 0, NAN, 2, "fría", FALSE },
  { "18 EGGS", 18, 0, 0, 0, NAN, 0, NULL, FALSE },
  { "  18   eggs ,, 1 cracked ;", 18, 1, 0, 0, NAN, 0, NULL, FALSE },
};

static void
test_good (Line          *line,
           gconstpointer  data)
{
  for (gsize i = 0; i < G_N_ELEMENTS (good); i++)
    {
      g_autoptr(SteadLineReading) reading = stead_line_reader_read (line->reader, good[i].line, line->farm.today);
      const SteadFlockEntry *entry = &reading->entry;

      g_test_message ("%s → %s", good[i].line, reading->understood);
      g_assert_true (reading->complete);
      g_assert_cmpint (reading->error_start, ==, -1);
      g_assert_cmpint (entry->flock_id, ==, line->farm.flock);
      g_assert_cmpint (entry->eggs, ==, good[i].eggs);
      g_assert_cmpint (entry->cracked, ==, good[i].cracked);
      g_assert_cmpint (entry->deaths, ==, good[i].deaths);
      g_assert_cmpint (entry->culled, ==, good[i].culled);
      g_assert_cmpint (entry->day, ==, line->farm.today - good[i].days_ago);
      g_assert_cmpstr (entry->note, ==, good[i].note);
      g_assert_true ((entry->person_id == line->ana) == good[i].by_ana);
      g_assert_true (isnan (entry->feed_kg) == isnan (good[i].feed_kg));
      if (!isnan (good[i].feed_kg))
        g_assert_cmpfloat_with_epsilon (entry->feed_kg, good[i].feed_kg, 1e-9);
    }
}

/* --- what is not --------------------------------------------------------------- */

static const struct
{
  const char *line;
  const char *fault;   /* the word that is marked; NULL: none */
  const char *says;    /* a word of the message */
} bad[] = {
  { "", NULL, "22 eggs" },
  { "   ", NULL, "22 eggs" },
  { "22", "22", "22" },
  { "22 brix", "brix", "brix" },
  { "22 eggs, brix", "brix", "brix" },
  { "22 eggs 3 eggs", "3", "already" },
  { "eggs", "eggs", "eggs" },
  { "2.5 eggs", "2.5", "whole" },
  { "-3 eggs", "-3", "0" },
  { "99 eggs", NULL, "99" },
  { "3 cracked", NULL, "how many" },
  { "3 eggs, 5 cracked", NULL, "5" },
  { "22 lb eggs", "22 lb", NULL },
  { "3 gal feed", "3 gal", NULL },
  { "18 eggs by Zoe", "Zoe", "Zoe" },
  { "18 eggs by", "by", "whom" },
  { "18 eggs tomorrow", "tomorrow", "tomorrow" },
  { "18 eggs on 2027-01-01", NULL, NULL },
  { "18 eggs on 2026-02-30", "2026-02-30", NULL },
  { "18 eggs on 2025-01-01", NULL, NULL },
  { "18 eggs on 3/2", "3/2", "two ways" },
  { "18 eggs yesterday today", "today", "second" },
  { "40 dead", NULL, "30" },
  { "Geese: 18 eggs", "Geese", "Geese" },
  { "18 eggs @home", "@", "@" },
  { "3000000000 eggs", "3000000000", "digits" },
  { "18 eggs by Be", "Be", "Several" },
  { "2 bedding", "2", NULL },
};

static void
test_bad (Line          *line,
          gconstpointer  data)
{
  for (gsize i = 0; i < G_N_ELEMENTS (bad); i++)
    {
      const char *text = bad[i].line;
      g_autoptr(SteadLineReading) reading = stead_line_reader_read (line->reader, text, line->farm.today);

      g_test_message ("%s → %s", text, reading->understood);
      if (g_str_equal (text, "2 bedding"))
        {
          /* the only bedding of the farm is straw */
          g_assert_true (reading->complete);
          g_assert_cmpint (reading->use_item_id, ==, line->farm.straw);
          continue;
        }
      g_assert_false (reading->complete);
      g_assert_nonnull (reading->understood);
      g_assert_cmpuint (strlen (reading->understood), >, 10);
      if (bad[i].says != NULL && farm_in_english ())
        g_assert_nonnull (strstr (reading->understood, bad[i].says));
      if (bad[i].fault == NULL)
        g_assert_cmpint (reading->error_start, ==, -1);
      else
        {
          g_autofree char *marked = g_strndup (text + reading->error_start,
                                               (gsize) (reading->error_end - reading->error_start));

          g_assert_cmpstr (marked, ==, bad[i].fault);
        }
    }
}

/* Typed signs must never become markup. */
static void
test_markup_is_escaped (Line          *line,
                        gconstpointer  data)
{
  static const char * const lines[] = { "22 <b>", "<i>: 2 eggs", "2 eggs note: a < b & c", "2 eggs by &amp" };

  for (gsize i = 0; i < G_N_ELEMENTS (lines); i++)
    {
      g_autoptr(SteadLineReading) reading = stead_line_reader_read (line->reader, lines[i], line->farm.today);
      g_autofree char *wrapped = g_strdup_printf ("<x>%s</x>", reading->understood);
      GMarkupParser parser = { 0 };
      g_autoptr(GMarkupParseContext) context = g_markup_parse_context_new (&parser, 0, NULL, NULL);
      g_autoptr(GError) error = NULL;

      g_assert_true (g_markup_parse_context_parse (context, wrapped, -1, &error));
      g_assert_no_error (error);
    }
}

static void
test_two_flocks (Line          *line,
                 gconstpointer  data)
{
  static const struct { const char *line; int flock; int eggs; } lines[] = {
    { "Hens 2: 22 eggs", 2, 22 }, { "hens 2 22 eggs", 2, 22 }, { "Hens 2 2 eggs", 2, 2 },
    { "brown 12 eggs", 1, 12 }, { "12 eggs Brown hens", 1, 12 }, { "12 eggs, hens 2", 2, 12 },
    { "12 eggs", 0, 12 }, { "hens: 12 eggs", 0, NONE }, { "ducks: 12 eggs", 0, NONE },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (lines); i++)
    {
      g_autoptr(SteadLineReading) reading = stead_line_reader_read (line->reader, lines[i].line, line->farm.today);
      gint64 wanted = lines[i].flock == 2 ? line->second : line->farm.flock;

      g_test_message ("%s → %s", lines[i].line, reading->understood);
      g_assert_true (reading->complete == (lines[i].flock != 0));
      if (g_str_has_prefix (lines[i].line, "hens:") && farm_in_english ())
        g_assert_nonnull (strstr (reading->understood, "Several"));
      if (lines[i].flock == 0)
        continue;
      g_assert_cmpint (reading->entry.flock_id, ==, wanted);
      g_assert_cmpint (reading->entry.eggs, ==, lines[i].eggs);
    }
}

static void
test_store_room (Line          *line,
                 gconstpointer  data)
{
  g_autoptr(SteadLineReading) grit = stead_line_reader_read (line->reader, "Hens 2: 3 lb grit", line->farm.today);
  g_autoptr(SteadLineReading) straw = stead_line_reader_read (line->reader, "hens 2 straw 2 and 22 eggs",
                                                              line->farm.today);
  g_autoptr(SteadLineReading) feed = stead_line_reader_read (line->reader, "Hens 2: 3 kg layer feed", line->farm.today);
  g_autoptr(SteadLineReading) two = stead_line_reader_read (line->reader, "Hens 2: 3 lb grit, 1 straw",
                                                            line->farm.today);

  g_assert_true (grit->complete);
  g_assert_cmpint (grit->use_item_id, ==, line->grit);
  g_assert_cmpfloat_with_epsilon (grit->use_base, 3 * POUND_KG, 1e-9);
  g_assert_cmpint (grit->entry.eggs, ==, NONE);
  g_assert_true (straw->complete);
  g_assert_cmpint (straw->use_item_id, ==, line->farm.straw);
  g_assert_cmpfloat (straw->use_base, ==, 2);
  g_assert_cmpint (straw->entry.eggs, ==, 22);
  /* the flock's own feed belongs into its log */
  g_assert_true (feed->complete);
  g_assert_cmpint (feed->use_item_id, ==, 0);
  g_assert_cmpfloat (feed->entry.feed_kg, ==, 3);
  g_assert_false (two->complete);
}

/* --- completion -------------------------------------------------------------------- */

static void
assert_offers (SteadLineReader *reader,
               const char      *line,
               const char      *offered)
{
  g_auto(GStrv) lines = stead_line_reader_complete (reader, line);

  g_assert_cmpuint (g_strv_length (lines), <=, 8);
  for (int i = 0; lines[i] != NULL; i++)
    g_assert_true (g_str_has_prefix (lines[i], "") && strlen (lines[i]) > strlen (line));
  if (offered == NULL)
    g_assert_cmpuint (g_strv_length (lines), ==, 0);
  else if (!g_strv_contains ((const char * const *) lines, offered))
    {
      for (int i = 0; lines[i] != NULL; i++)
        g_test_message ("offered: %s", lines[i]);
      g_error ("“%s” is not offered for “%s”", offered, line);
    }
}

static void
test_completion (Line          *line,
                 gconstpointer  data)
{
  assert_offers (line->reader, "", "Hens 2: ");
  assert_offers (line->reader, "he", "Hens 2: ");
  assert_offers (line->reader, "Hens 2: 3 ins", "Hens 2: 3 Insoluble grit");
  assert_offers (line->reader, "Hens 2: 22 eggs qqq", NULL);
  if (!farm_in_english ())
    return;
  assert_offers (line->reader, "Hens 2: 22 ", "Hens 2: 22 eggs");
  assert_offers (line->reader, "Hens 2: 22 e", "Hens 2: 22 eggs");
  assert_offers (line->reader, "Hens 2: 22 eggs, 1 c", "Hens 2: 22 eggs, 1 cracked");
  assert_offers (line->reader, "Hens 2: 6.8 ", "Hens 2: 6.8 lb feed");
  assert_offers (line->reader, "Hens 2: 22 eggs by A", "Hens 2: 22 eggs by Ana Ruiz");
  assert_offers (line->reader, "Hens 2: 22 eggs y", "Hens 2: 22 eggs yesterday");
}

/* What is offered must be understood once it is whole. */
static void
test_offers_are_understood (Line          *line,
                            gconstpointer  data)
{
  static const char * const starts[] = { "Hens 2: 22 ", "Hens 2: 22 eggs, 1 ", "Hens 2: 22 eggs " };

  for (gsize i = 0; i < G_N_ELEMENTS (starts); i++)
    {
      g_auto(GStrv) lines = stead_line_reader_complete (line->reader, starts[i]);

      g_assert_cmpuint (g_strv_length (lines), >, 0);
      for (int k = 0; lines[k] != NULL; k++)
        {
          g_autoptr(SteadLineReading) reading = stead_line_reader_read (line->reader, lines[k], line->farm.today);
          gboolean open = g_str_has_suffix (lines[k], " ");   /* a name or a note follows */

          g_test_message ("%s → %s", lines[k], reading->understood);
          /* It may still lack something ("how many eggs in all?"), but no word of it is wrong. */
          g_assert_true (reading->complete || open || reading->error_start == -1);
        }
    }
}

/* --- recording ----------------------------------------------------------------------- */

static void
record (Line       *line,
        const char *text)
{
  g_autoptr(SteadLineReading) reading = stead_line_reader_read (line->reader, text, line->farm.today);
  g_autoptr(GError) error = NULL;

  g_assert_true (reading->complete);
  g_assert_true (stead_line_reading_record (reading, line->farm.store, &error));
  g_assert_no_error (error);
}

static void
test_record (Line          *line,
             gconstpointer  data)
{
  Farm *farm = &line->farm;
  g_autoptr(GError) error = NULL;
  g_autofree char *undo = NULL;
  SteadFlockTotals totals;

  farm_stock (farm);
  record (line, "9 eggs, 1 cracked, 1 kg feed, 2 straw yesterday by Ana");
  g_assert_true (stead_flock_repo_totals (farm->store, farm->flock, farm->today - 1, farm->today - 1, &totals, &error));
  g_assert_cmpint (totals.eggs, ==, 9);
  g_assert_cmpint (totals.cracked, ==, 1);
  g_assert_cmpfloat (totals.feed_kg, ==, 1);
  g_assert_cmpint (stead_flock_repo_last_bedding (farm->store, farm->flock, &error), ==, farm->today - 1);
  undo = stead_store_get_undo_name (farm->store);
  g_assert_nonnull (strchr (undo, '9'));
  /* one action: undone as a whole */
  g_assert_true (stead_store_undo (farm->store, &error));
  g_assert_cmpint (stead_flock_repo_count_entries (farm->store, farm->flock, &error), ==, 0);
  g_assert_cmpint (stead_flock_repo_last_bedding (farm->store, farm->flock, &error), ==, STEAD_DAY_NONE);
}

/* Eggs would do, but there is not so much straw: nothing is recorded. */
static void
test_record_all_or_nothing (Line          *line,
                            gconstpointer  data)
{
  g_autoptr(SteadLineReading) reading = stead_line_reader_read (line->reader, "9 eggs, 99 straw", line->farm.today);
  g_autoptr(GError) error = NULL;

  g_assert_true (reading->complete);
  g_assert_false (stead_line_reading_record (reading, line->farm.store, &error));
  g_assert_nonnull (error);
  g_assert_cmpint (stead_flock_repo_count_entries (line->farm.store, line->farm.flock, NULL), ==, 0);
}

static void
test_no_flock (void)
{
  g_autoptr(GError) error = NULL;
  g_autoptr(SteadStore) store = stead_store_create_memory ("Empty", &error);
  g_autoptr(SteadLineReader) reader = stead_line_reader_new (store, &error);
  g_autoptr(SteadLineReading) reading = stead_line_reader_read (reader, "22 eggs", 20000);

  g_assert_no_error (error);
  g_assert_false (reading->complete);
  g_assert_cmpuint (strlen (reading->understood), >, 10);
}

/* The hint names a flock where there are two, and what it shows can be typed. */
static void
test_hint (Line          *line,
           gconstpointer  data)
{
  g_autofree char *hint = stead_line_reader_hint (line->reader);
  const char *start = strstr (hint, "<b>"), *end = strstr (hint, "</b>");
  g_autofree char *example = g_strndup (start + 3, (gsize) (end - start - 3));
  g_autoptr(SteadLineReading) reading = stead_line_reader_read (line->reader, example, line->farm.today);

  g_assert_true (reading->complete);
  g_assert_cmpint (reading->entry.eggs, ==, 22);
  g_assert_cmpint (reading->entry.cracked, ==, 1);
  g_assert_true ((strstr (example, ":") != NULL) == GPOINTER_TO_INT (data));
}

int
main (int    argc,
      char **argv)
{
  farm_start (&argc, &argv);
#define ONE(name, test) g_test_add ("/answer/line/" name, Line, NULL, set_up_one, test, tear_down)
#define TWO(name, test) g_test_add ("/answer/line/" name, Line, NULL, set_up_two, test, tear_down)
  ONE ("good", test_good);
  ONE ("bad", test_bad);
  ONE ("markup-is-escaped", test_markup_is_escaped);
  TWO ("two-flocks", test_two_flocks);
  g_test_add ("/answer/line/hint-of-two", Line, GINT_TO_POINTER (TRUE), set_up_two, test_hint, tear_down);
  TWO ("store-room", test_store_room);
  TWO ("completion", test_completion);
  TWO ("offers-are-understood", test_offers_are_understood);
  ONE ("record", test_record);
  ONE ("record-all-or-nothing", test_record_all_or_nothing);
  ONE ("hint", test_hint);
#undef ONE
#undef TWO
  g_test_add_func ("/answer/line/no-flock", test_no_flock);
  return g_test_run ();
}
