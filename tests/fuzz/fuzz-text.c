/* fuzz-text.c - whatever is typed, parsing ends in a sound value or a message.
 *
 * Built with -DSTEAD_LIBFUZZER and clang -fsanitize=fuzzer this is a target for
 * the fuzzer; built plainly it runs over the files named on its command line,
 * which the ordinary tests do with the seeds.
 */
#include "core/stead-calendar.h"
#include "core/stead-core-error.h"
#include "core/stead-money.h"
#include "core/stead-quantity.h"

#include <math.h>
#include <stdio.h>
#include <string.h>

int LLVMFuzzerTestOneInput (const guint8 *data,
                            size_t        size);

/* A refusal says why, and leaves what it was to fill alone. */
static void
check_refusal (GError   *error,
               gboolean  untouched)
{
  g_assert_nonnull (error);
  g_assert_true (error->domain == STEAD_CORE_ERROR);
  g_assert_true (g_utf8_validate (error->message, -1, NULL));
  g_assert_cmpuint (strlen (error->message), >, 10);
  g_assert_true (untouched);
  g_error_free (error);
}

static void
try_money (const char *text,
           const char *currency)
{
  GError *error = NULL;
  gint64 cents = G_MININT64;
  gint64 again = 0;
  g_autofree char *shown = NULL;

  if (!stead_money_parse (text, currency, &cents, &error))
    {
      check_refusal (error, cents == G_MININT64);
      return;
    }
  g_assert_true (ABS (cents) < G_GINT64_CONSTANT (1000000000000000));
  /* Three digits behind the point are read as the locale reads them. */
  shown = stead_money_format (cents, currency);
  g_assert_true (stead_money_parse (shown, currency, &again, NULL));
  g_assert_cmpint (again, ==, cents);
}

static void
try_number (const char *text)
{
  GError *error = NULL;
  double value = -4711;
  double again = 0;
  g_autofree char *shown = NULL;

  if (!stead_number_parse (text, &value, &error))
    {
      check_refusal (error, value == -4711);
      return;
    }
  g_assert_true (isfinite (value) && fabs (value) <= 1e12);
  shown = stead_number_format (value, 6);
  g_assert_true (stead_number_parse (shown, &again, NULL));
  g_assert_true (fabs (again - value) <= 1e-6 + 1e-12 * fabs (value));
}

static void
try_quantity (const char     *text,
              SteadDimension  dimension)
{
  GError *error = NULL;
  const SteadUnit *fallback = stead_unit_default (dimension, STEAD_UNITS_US);
  const SteadUnit *unit = NULL;
  double base = -4711;
  g_autofree char *shown = NULL;
  g_autofree char *mixed = NULL;

  if (!stead_quantity_parse (text, dimension, fallback, &base, &unit, &error))
    {
      check_refusal (error, base == -4711 && unit == NULL);
      return;
    }
  g_assert_true (isfinite (base) && fabs (base) <= 1e12);
  g_assert_true (base >= 0 || dimension == STEAD_DIMENSION_TEMPERATURE);
  g_assert_nonnull (unit);
  g_assert_true (unit->dimension == dimension);
  shown = stead_quantity_format (base, unit);
  mixed = stead_quantity_format_mixed (base, unit);
  g_assert_nonnull (shown);
  g_assert_nonnull (mixed);
}

static void
try_day (const char     *text,
         SteadDateOrder  order)
{
  GError *error = NULL;
  SteadDay today = stead_day_new (2026, 3, 3);
  SteadDay day = STEAD_DAY_NONE;
  SteadDay again = STEAD_DAY_NONE;
  g_autofree char *shown = NULL;

  if (!stead_day_parse (text, today, order, &day, &error))
    {
      check_refusal (error, day == STEAD_DAY_NONE);
      return;
    }
  g_assert_true (stead_day_is_valid (day));
  shown = stead_day_format (day, STEAD_DAY_STYLE_MEDIUM);
  g_assert_true (stead_day_parse (shown, today, STEAD_DATE_ORDER_UNKNOWN, &again, NULL));
  g_assert_cmpint (again, ==, day);
}

int
LLVMFuzzerTestOneInput (const guint8 *data,
                        size_t        size)
{
  g_autofree char *text = g_strndup ((const char *) data, size);

  try_money (text, "USD");
  try_money (text, "JPY");
  try_number (text);
  for (SteadDimension d = STEAD_DIMENSION_COUNT; d <= STEAD_DIMENSION_TEMPERATURE; d++)
    try_quantity (text, d);
  for (SteadDateOrder order = STEAD_DATE_ORDER_UNKNOWN; order <= STEAD_DATE_ORDER_YMD; order++)
    try_day (text, order);
  return 0;
}

#ifndef STEAD_LIBFUZZER
/* Each line of a file is one text; so are its pieces, cut and mixed by chance. */
static void
try_lines (char  **lines,
           GRand  *rand)
{
  gsize n = g_strv_length (lines);

  for (gsize i = 0; i < n; i++)
    LLVMFuzzerTestOneInput ((const guint8 *) lines[i], strlen (lines[i]));
  for (int round = 0; round < 4000 && n > 0; round++)
    {
      const char *a = lines[g_rand_int_range (rand, 0, (gint32) n)];
      const char *b = lines[g_rand_int_range (rand, 0, (gint32) n)];
      gsize cut_a = (gsize) g_rand_int_range (rand, 0, (gint32) strlen (a) + 1);
      gsize cut_b = (gsize) g_rand_int_range (rand, 0, (gint32) strlen (b) + 1);
      g_autofree char *mixed = g_strdup_printf ("%.*s%s", (int) cut_a, a, b + cut_b);

      if (*mixed != '\0' && g_rand_boolean (rand))
        mixed[(gsize) g_rand_int_range (rand, 0, (gint32) strlen (mixed))] =
          (char) g_rand_int_range (rand, 1, 256);
      LLVMFuzzerTestOneInput ((const guint8 *) mixed, strlen (mixed));
    }
}

int
main (int   argc,
      char *argv[])
{
  g_autoptr(GRand) rand = g_rand_new_with_seed (20260303);

  if (argc < 2)
    {
      printf ("1..0\n");
      return 1;
    }
  printf ("1..%d\n", argc - 1);
  for (int i = 1; i < argc; i++)
    {
      g_autofree char *contents = NULL;
      g_auto(GStrv) lines = NULL;
      g_autoptr(GError) error = NULL;

      if (!g_file_get_contents (argv[i], &contents, NULL, &error))
        {
          printf ("Bail out! %s\n", error->message);
          return 1;
        }
      lines = g_strsplit (contents, "\n", -1);
      g_assert_cmpuint (g_strv_length (lines), >, 3);
      try_lines (lines, rand);
      printf ("ok %d %s\n", i, argv[i]);
    }
  return 0;
}
#endif
