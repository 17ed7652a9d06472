/* fuzz-line.c - whatever is typed into the one-line entry ends in a sound reading.
 *
 * Built with -DSTEAD_LIBFUZZER and clang -fsanitize=fuzzer this is a target for
 * the fuzzer; built plainly it runs over the lines of the files named on its
 * command line and over mixtures of them, which the ordinary tests do with the seeds.
 */
#include "answer/shoal.h"
#include "answer/stead-line-answer.h"

#include <math.h>
#include <stdio.h>
#include <string.h>

int LLVMFuzzerTestOneInput (const guint8 *data,
                            size_t        size);

static Shoal shoal;
static SteadLineReader *reader;

static void
make_reader (void)
{
  shoal_set_up (&shoal, NULL);
  reader = stead_line_reader_new (shoal.farm.store, NULL);
  g_assert_nonnull (reader);
}

/* The words are markup that can be shown. */
static void
check_markup (const char *markup)
{
  static const GMarkupParser parser = { NULL };
  g_autofree char *wrapped = g_strdup_printf ("<x>%s</x>", markup);
  g_autoptr(GMarkupParseContext) context = g_markup_parse_context_new (&parser, 0, NULL, NULL);

  g_assert_true (g_utf8_validate (markup, -1, NULL));
  g_assert_true (g_markup_parse_context_parse (context, wrapped, -1, NULL));
}

static void
check_complete (const SteadLineReading *reading)
{
  const SteadFlockEntry *entry = &reading->entry;

  g_assert_cmpint (entry->flock_id, ==, reading->is_fish ? shoal.fish : shoal.farm.flock);
  g_assert_true (isnan (reading->water_c) || (reading->is_fish && reading->water_c >= -5 && reading->water_c <= 60));
  g_assert_true (!reading->refused || reading->is_fish);
  g_assert_cmpint (entry->day, <=, shoal.farm.today);
  g_assert_true (entry->eggs == STEAD_COUNT_NONE || (entry->eggs >= 0 && entry->eggs <= 20));
  g_assert_cmpint (entry->cracked, <=, MAX (0, entry->eggs));
  g_assert_true (isnan (entry->feed_kg) || entry->feed_kg >= 0);
  g_assert_true (reading->use_item_id == 0 || reading->use_base > 0);
  g_assert_cmpint (reading->error_start, ==, -1);
}

int
LLVMFuzzerTestOneInput (const guint8 *data,
                        size_t        size)
{
  g_autofree char *line = g_strndup ((const char *) data, size);
  g_autoptr(SteadLineReading) reading = NULL;
  g_auto(GStrv) offers = NULL;

  if (reader == NULL)
    make_reader ();
  reading = stead_line_reader_read (reader, line, shoal.farm.today);
  check_markup (reading->understood);
  if (reading->complete)
    check_complete (reading);
  else if (reading->error_start >= 0)
    {
      g_assert_cmpint (reading->error_start, <, reading->error_end);
      g_assert_cmpint (reading->error_end, <=, (int) strlen (line));
    }
  offers = stead_line_reader_complete (reader, line);
  for (int i = 0; offers[i] != NULL; i++)
    g_assert_true (g_utf8_validate (offers[i], -1, NULL));
  return 0;
}

#ifndef STEAD_LIBFUZZER
static void
try_lines (char  **lines,
           GRand  *rand)
{
  gsize n = g_strv_length (lines);

  for (gsize i = 0; i < n; i++)
    LLVMFuzzerTestOneInput ((const guint8 *) lines[i], strlen (lines[i]));
  for (int round = 0; round < 6000 && n > 0; round++)
    {
      const char *a = lines[g_rand_int_range (rand, 0, (gint32) n)];
      const char *b = lines[g_rand_int_range (rand, 0, (gint32) n)];
      gsize cut_a = (gsize) g_rand_int_range (rand, 0, (gint32) strlen (a) + 1);
      gsize cut_b = (gsize) g_rand_int_range (rand, 0, (gint32) strlen (b) + 1);
      g_autofree char *mixed = g_strdup_printf ("%.*s%s", (int) cut_a, a, b + cut_b);

      if (*mixed != '\0' && g_rand_boolean (rand))
        mixed[(gsize) g_rand_int_range (rand, 0, (gint32) strlen (mixed))] = (char) g_rand_int_range (rand, 1, 256);
      LLVMFuzzerTestOneInput ((const guint8 *) mixed, strlen (mixed));
    }
}

int
main (int   argc,
      char *argv[])
{
  g_autoptr(GRand) rand = g_rand_new_with_seed (20260303);

  printf ("1..%d\n", argc - 1);
  for (int i = 1; i < argc; i++)
    {
      g_autofree char *contents = NULL;
      g_auto(GStrv) lines = NULL;

      if (!g_file_get_contents (argv[i], &contents, NULL, NULL))
        {
          printf ("Bail out! %s cannot be read\n", argv[i]);
          return 1;
        }
      lines = g_strsplit (contents, "\n", -1);
      g_assert_cmpuint (g_strv_length (lines), >, 3);
      try_lines (lines, rand);
      printf ("ok %d %s\n", i, argv[i]);
    }
  stead_line_reader_free (reader);
  shoal_tear_down (&shoal, NULL);
  return argc < 2;
}
#endif
