/* Money: splitting that sums exactly, and text both ways. */
#include "core/stead-core-error.h"
#include "core/stead-money.h"

#include <locale.h>
#include <string.h>

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

/* What a currency's own rules make of the same text. */
static void
test_currencies (void)
{
  static const struct { const char *text, *currency; gint64 minor; int code; } cases[] = {
    { "1,234", "JPY", 1234, -1 }, { "12.5", "JPY", 0, STEAD_CORE_ERROR_PARSE },
    { "¥500", "JPY", 500, -1 }, { "12,345.678", "TND", 12345678, -1 }, { "1.5", "TND", 1500, -1 },
    { "€4.50", "EUR", 450, -1 }, { "4,50 €", "EUR", 450, -1 }, { "4.50 eur", "EUR", 450, -1 },
    { "US$4.50", "USD", 450, -1 }, { "$4.50", "EUR", 0, STEAD_CORE_ERROR_UNIT },
    { "£4", "USD", 0, STEAD_CORE_ERROR_UNIT }, { "4 CAD", "USD", 0, STEAD_CORE_ERROR_UNIT },
    { "$4 CAD", "CAD", 400, -1 }, { "999999999999.99", "USD", 99999999999999, -1 },
    { "(4.50", "USD", 0, STEAD_CORE_ERROR_PARSE }, { "()", "USD", 0, STEAD_CORE_ERROR_PARSE },
    { "(-4)", "USD", 0, STEAD_CORE_ERROR_PARSE }, { "4.50 each", "USD", 0, STEAD_CORE_ERROR_PARSE },
    { "1 1/2", "USD", 0, STEAD_CORE_ERROR_PARSE }, { "-0.05", "USD", -5, -1 },
    { "99999999999999999999999999", "USD", 0, STEAD_CORE_ERROR_RANGE },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr(GError) error = NULL;
      gint64 minor = 77;
      gboolean read = stead_money_parse (cases[i].text, cases[i].currency, &minor, &error);

      g_test_message ("%s %s", cases[i].text, cases[i].currency);
      if (cases[i].code < 0)
        g_assert_no_error (error);
      else
        g_assert_error (error, STEAD_CORE_ERROR, cases[i].code);
      g_assert_cmpint (read, ==, cases[i].code < 0);
      g_assert_cmpint (minor, ==, read ? cases[i].minor : 77);
    }
  g_assert_cmpstr (stead_currency_list ()[0], ==, "USD");
  g_assert_false (stead_currency_is_known ("usd"));
  g_assert_false (stead_currency_is_known (NULL));
  for (const char * const *code = stead_currency_list (); *code != NULL; code++)
    {
      g_assert_true (stead_currency_is_known (*code));
      g_assert_cmpint (stead_currency_digits (*code), >=, 0);
      g_assert_cmpuint (strlen (stead_currency_symbol (*code)), >, 0);
    }
}

static void
test_messages (void)
{
  g_autoptr(GError) decimals = NULL;
  g_autoptr(GError) other = NULL;
  gint64 cents;

  g_assert_false (stead_money_parse ("4.505", "USD", &cents, &decimals));
  g_assert_cmpstr (decimals->message, ==, "Type at most 2 digits after the decimal point.");
  g_assert_false (stead_money_parse ("€3", "USD", &cents, &other));
  g_assert_cmpstr (other->message, ==, "This farm counts its money in USD. Type the amount in USD.");
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
  /* The same section: 70 officers by 15, 9, 10; rounding each would give 71. */
  stead_money_split (70, (const double[]) { 15, 9, 10 }, 3, shares);
  g_assert_cmpint (shares[0], ==, 31);
  g_assert_cmpint (shares[1], ==, 18);
  g_assert_cmpint (shares[2], ==, 21);
}

/* Where doubles would tie or fall apart, the exact remainders decide. */
static void
test_split_exact (void)
{
  gint64 shares[6];

  /* Tenths have no exact binary form, and 0.1 + 0.2 is not 0.3. */
  stead_money_split (10, (const double[]) { 0.1, 0.2, 0.3 }, 3, shares);
  g_assert_cmpint (shares[0], ==, 2);
  g_assert_cmpint (shares[1], ==, 3);
  g_assert_cmpint (shares[2], ==, 5);
  /* A large sum: 10^15 cents by thirds. */
  stead_money_split (G_GINT64_CONSTANT (1000000000000000), (const double[]) { 1, 1, 1 }, 3, shares);
  g_assert_cmpint (shares[0], ==, G_GINT64_CONSTANT (333333333333334));
  g_assert_cmpint (shares[2], ==, G_GINT64_CONSTANT (333333333333333));
  /* A part of weight 0 gets nothing, and less than nothing is split alike. */
  stead_money_split (-100, (const double[]) { 0, 1, 1, 1 }, 4, shares);
  g_assert_cmpint (shares[0], ==, 0);
  g_assert_cmpint (shares[1], ==, -34);
  g_assert_cmpint (shares[3], ==, -33);
  stead_money_split (5, (const double[]) { 7 }, 1, shares);
  g_assert_cmpint (shares[0], ==, 5);
}

static void
test_misuse (void)
{
  gint64 share = 0;
  const double none[] = { 0 };

  if (g_test_subprocess ())
    {
      stead_money_split (100, none, 1, &share);
      return;
    }
  g_test_trap_subprocess (NULL, 0, G_TEST_SUBPROCESS_DEFAULT);
  g_test_trap_assert_failed ();
  g_test_trap_assert_stderr ("*CRITICAL*sum > 0*");
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
      double weights_sum = 0;

      for (gsize i = 0; i < n; i++)
        {
          weights[i] = round % 2 ? g_rand_double_range (rand, 0, 50) : g_rand_int_range (rand, 0, 50);
          weights_sum += weights[i];
        }
      weights[0] += 1;
      weights_sum += 1;
      stead_money_split (total, weights, n, shares);
      for (gsize i = 0; i < n; i++)
        {
          double exact = (double) total * weights[i] / weights_sum;

          sum += shares[i];
          /* No part is a whole unit away from its exact share. */
          g_assert_cmpfloat (ABS ((double) shares[i] - exact), <, 1 + 1e-6);
        }
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
  g_test_add_func ("/core/money/split-exact", test_split_exact);
  g_test_add_func ("/core/money/currencies", test_currencies);
  g_test_add_func ("/core/money/messages", test_messages);
  g_test_add_func ("/core/money/misuse", test_misuse);
  return g_test_run ();
}
