/* Money: splitting that sums exactly, and text both ways. */
#include "core/stead-core-error.h"
#include "core/stead-money.h"

#include <locale.h>

static void
test_format (void)
{
  static const struct { gint64 cents; const char *currency, *text, *brief, *entry, *stored; } cases[] = {
    { 450, "USD", "$4.50", "$4.50", "4.50", "4.50" },
    { 48000, "USD", "$480.00", "$480", "480.00", "480.00" },
    { -120300, "USD", "−$1,203.00", "−$1,203", "-1203.00", "-1203.00" },
    { 5, "EUR", "€0.05", "€0.05", "0.05", "0.05" },
    { -1234567, "JPY", "−¥1,234,567", "−¥1,234,567", "-1234567", "-1234567" },
    { 0, "USD", "$0.00", "$0", "0.00", "0.00" },
    { 12345, "TND", "DT\u00a012.345", "DT\u00a012.345", "12.345", "12.345" },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autofree char *text = stead_money_format (cases[i].cents, cases[i].currency);
      g_autofree char *brief = stead_money_format_short (cases[i].cents, cases[i].currency);
      g_autofree char *entry = stead_money_format_entry (cases[i].cents, cases[i].currency);
      g_autofree char *stored = stead_money_format_stored (cases[i].cents, cases[i].currency);

      g_assert_cmpstr (text, ==, cases[i].text);
      g_assert_cmpstr (brief, ==, cases[i].brief);
      g_assert_cmpstr (entry, ==, cases[i].entry);
      g_assert_cmpstr (stored, ==, cases[i].stored);
    }
}

static void
test_parse (void)
{
  static const struct { const char *text; gint64 cents; } cases[] = {
    { "4.50", 450 }, { "$4.50", 450 }, { "4,50", 450 }, { "1,234.50", 123450 },
    { "1.234,50", 123450 }, { "(12.00)", -1200 }, { "\u22123", -300 }, { "3 USD", 300 },
    { "1,234", 123400 }, { "-$3", -300 }, { "$-3", -300 }, { ".5", 50 }, { "7", 700 },
    { "1\u00a0234,50", 123450 }, { "12,345,678.9", 1234567890 }, { "usd 2", 200 },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr(GError) error = NULL;
      gint64 cents = 1;

      g_test_message ("%s", cases[i].text);
      g_assert_true (stead_money_parse (cases[i].text, "USD", &cents, &error));
      g_assert_no_error (error);
      g_assert_cmpint (cents, ==, cases[i].cents);
    }
}

static void
test_refused (void)
{
  static const struct { const char *text; SteadCoreError code; } cases[] = {
    { "", STEAD_CORE_ERROR_PARSE }, { "abc", STEAD_CORE_ERROR_PARSE },
    { "4.505", STEAD_CORE_ERROR_PARSE }, { "nan", STEAD_CORE_ERROR_PARSE },
    { "inf", STEAD_CORE_ERROR_PARSE }, { "1e5", STEAD_CORE_ERROR_PARSE },
    { "1000000000000", STEAD_CORE_ERROR_RANGE }, { "3 EUR", STEAD_CORE_ERROR_UNIT },
    { "1,23,4", STEAD_CORE_ERROR_PARSE }, { "--3", STEAD_CORE_ERROR_PARSE },
    { "\xff\xfe", STEAD_CORE_ERROR_PARSE }, { "$", STEAD_CORE_ERROR_PARSE },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr(GError) error = NULL;
      gint64 cents = 77;

      g_test_message ("case %zu", i);
      g_assert_false (stead_money_parse (cases[i].text, "USD", &cents, &error));
      g_assert_error (error, STEAD_CORE_ERROR, (int) cases[i].code);
      g_assert_cmpint (cents, ==, 77);
    }
}

static void
test_split (void)
{
  /* OpenStax Contemporary Mathematics, section 11.4 (largest remainder). */
  const double thirds[] = { 1, 1, 1 };
  const double uneven[] = { 7, 12, 31, 2 };
  gint64 shares[4];

  stead_money_split (10000, thirds, 3, shares);
  g_assert_cmpint (shares[0], ==, 3334);
  g_assert_cmpint (shares[1], ==, 3333);
  stead_money_split (1000, uneven, 4, shares);
  g_assert_cmpint (shares[0], ==, 135);
  g_assert_cmpint (shares[1], ==, 231);
  g_assert_cmpint (shares[2], ==, 596);
  g_assert_cmpint (shares[3], ==, 38);
}

static void
test_split_sums (void)
{
  g_autoptr(GRand) rand = g_rand_new_with_seed (20260303);

  for (int round = 0; round < 20000; round++)
    {
      double weights[12];
      gint64 shares[12];
      gsize n = (gsize) g_rand_int_range (rand, 1, 13);
      gint64 total = g_rand_int_range (rand, -1000000, 1000000);
      gint64 sum = 0;

      for (gsize i = 0; i < n; i++)
        weights[i] = round % 2 ? g_rand_double_range (rand, 0, 50) : g_rand_int_range (rand, 0, 50);
      weights[0] += 1;
      stead_money_split (total, weights, n, shares);
      for (gsize i = 0; i < n; i++)
        sum += shares[i];
      g_assert_cmpint (sum, ==, total);
    }
}

static void
test_round (void)
{
  g_assert_cmpint (stead_money_round (0.5), ==, 1);
  g_assert_cmpint (stead_money_round (-0.5), ==, -1);
  g_assert_cmpint (stead_money_round (0.49999999999), ==, 1);
  g_assert_cmpint (stead_money_round (0.499), ==, 0);
  g_assert_cmpint (stead_money_round (100 * 1.005), ==, 101);
  g_assert_cmpint (stead_money_round (5000000.4), ==, 5000000);
}

int
main (int   argc,
      char *argv[])
{
  setlocale (LC_ALL, "");
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/core/money/round", test_round);
  g_test_add_func ("/core/money/format", test_format);
  g_test_add_func ("/core/money/parse", test_parse);
  g_test_add_func ("/core/money/refused", test_refused);
  g_test_add_func ("/core/money/split-published", test_split);
  g_test_add_func ("/core/money/split-sums", test_split_sums);
  return g_test_run ();
}
