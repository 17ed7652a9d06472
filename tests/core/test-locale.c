/* Text in other locales: what people read changes, what is stored does not.
 *
 * The locales are made for the test, in the folder that $STEAD_TEST_LOCALES names
 * or in one that goes away again; where they cannot be made the cases are
 * skipped, and say so. */
#include "core/stead-calendar.h"
#include "core/stead-core-error.h"
#include "core/stead-money.h"
#include "core/stead-quantity.h"

#include <glib/gstdio.h>
#include <locale.h>
#include <math.h>
#include <string.h>

static const char * const names[] = { "en_US", "en_GB", "en_IN", "es_ES", "es_US", "de_DE", "de_CH", "fr_FR" };

static char *folder;

/* Made beside its place and then moved there: half a locale is never used. */
static gboolean
make_locale (const char *name)
{
  g_autofree char *path = g_strdup_printf ("%s/%s.UTF-8", folder, name);
  g_autofree char *half = g_strconcat (path, ".half", NULL);
  const char *argv[] = { "localedef", "-i", name, "-f", "UTF-8", half, NULL };

  if (g_file_test (path, G_FILE_TEST_IS_DIR))
    return TRUE;
  g_spawn_sync (NULL, (char **) argv, NULL,
                G_SPAWN_SEARCH_PATH | G_SPAWN_STDOUT_TO_DEV_NULL | G_SPAWN_STDERR_TO_DEV_NULL,
                NULL, NULL, NULL, NULL, NULL, NULL);
  return g_rename (half, path) == 0;
}

/* FALSE, with the case skipped, where the locale cannot be had. */
static gboolean
use_locale (const char *name)
{
  g_autofree char *full = g_strconcat (name, ".UTF-8", NULL);

  if (make_locale (name) && setlocale (LC_ALL, full) != NULL)
    return TRUE;
  g_test_skip ("this machine cannot make locales (package locales)");
  return FALSE;
}

static void
test_money (void)
{
  static const struct { const char *locale; gint64 cents; const char *currency, *text, *entry; } cases[] = {
    { "en_US", -120300, "USD", "−$1,203.00", "-1203.00" },
    { "es_US", 123450, "USD", "$1,234.50", "1234.50" },
    { "es_ES", 123450, "EUR", "1.234,50\u00a0€", "1234,50" },
    { "es_ES", -450, "USD", "−4,50\u00a0$", "-4,50" },
    { "de_DE", 123456789, "EUR", "1.234.567,89\u00a0€", "1234567,89" },
    { "en_IN", 123456789, "INR", "₹12,34,567.89", "1234567.89" },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autofree char *text = NULL;
      g_autofree char *entry = NULL;

      if (!use_locale (cases[i].locale))
        return;
      text = stead_money_format (cases[i].cents, cases[i].currency);
      entry = stead_money_format_entry (cases[i].cents, cases[i].currency);
      g_assert_cmpstr (text, ==, cases[i].text);
      g_assert_cmpstr (entry, ==, cases[i].entry);
    }
}

/* Exactly three digits behind one separator: the locale decides. */
static void
test_three_digits (void)
{
  static const struct { const char *locale, *text; double value; } cases[] = {
    { "en_US", "1,234", 1234 }, { "en_US", "1.234", 1.234 },
    { "es_ES", "1.234", 1234 }, { "es_ES", "1,234", 1.234 },
    { "de_DE", "1.234", 1234 }, { "de_DE", "0,250", 0.25 }, { "en_US", "0,250", 0.25 },
    { "de_DE", "1.234,5", 1234.5 }, { "de_DE", "1,234.5", 1234.5 }, { "fr_FR", "1 234,5", 1234.5 },
    { "de_CH", "1’234.50", 1234.5 }, { "en_IN", "12,34,567", 1234567 },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      double value = NAN;

      if (!use_locale (cases[i].locale))
        return;
      g_test_message ("%s in %s", cases[i].text, cases[i].locale);
      g_assert_true (stead_number_parse (cases[i].text, &value, NULL));
      g_assert_cmpfloat_with_epsilon (value, cases[i].value, 1e-12);
    }
}

/* Files read the same whatever the locale of the one who wrote them. */
static void
test_stored (void)
{
  for (gsize i = 0; i < G_N_ELEMENTS (names); i++)
    {
      g_autofree char *money = NULL;
      g_autofree char *day = NULL;

      if (!use_locale (names[i]))
        return;
      money = stead_money_format_stored (-123456789, "USD");
      day = stead_day_format (stead_day_new (2026, 3, 3), STEAD_DAY_STYLE_ISO);
      g_assert_cmpstr (money, ==, "-1234567.89");
      g_assert_cmpstr (day, ==, "2026-03-03");
    }
}

static void
assert_money_returns (gint64      cents,
                      const char *currency)
{
  char *texts[] = { stead_money_format (cents, currency),
                               stead_money_format_short (cents, currency),
                               stead_money_format_entry (cents, currency),
                               stead_money_format_stored (cents, currency) };

  for (gsize i = 0; i < G_N_ELEMENTS (texts); i++)
    {
      g_autoptr(GError) error = NULL;
      gint64 back = G_MININT64;

      if (!stead_money_parse (texts[i], currency, &back, &error))
        g_error ("%s %s: %s", currency, texts[i], error->message);
      if (back != cents)
        g_error ("%s %s came back as %" G_GINT64_FORMAT, currency, texts[i], back);
      g_free (texts[i]);
    }
}

static void
test_money_round_trip (void)
{
  static const gint64 limits[] = { 0, 1, -1, 9, 10, 99, 100, 999, 1000, -99999, 100000, 99999999999999 };

  for (gsize l = 0; l < G_N_ELEMENTS (names); l++)
    {
      g_autoptr(GRand) rand = g_rand_new_with_seed (11);

      if (!use_locale (names[l]))
        return;
      for (const char * const *code = stead_currency_list (); *code != NULL; code++)
        {
          /* Stored text has a point: three digits behind it are the locale's own. */
          gboolean thousandths = stead_currency_digits (*code) == 3;

          for (gsize i = 0; !thousandths && i < G_N_ELEMENTS (limits); i++)
            if (stead_currency_digits (*code) == 2 || limits[i] < 1000000)
              assert_money_returns (limits[i], *code);
          for (int i = 0; !thousandths && i < 200; i++)
            assert_money_returns (g_rand_int (rand) - (gint64) G_MAXINT32, *code);
        }
    }
}

static void
test_number_round_trip (void)
{
  for (gsize l = 0; l < G_N_ELEMENTS (names); l++)
    {
      g_autoptr(GRand) rand = g_rand_new_with_seed (12);

      if (!use_locale (names[l]))
        return;
      for (int i = 0; i < 3000; i++)
        {
          int digits = g_rand_int_range (rand, 0, 7);
          double whole = g_rand_int_range (rand, -9999999, 9999999);
          double value = whole / pow (10, g_rand_int_range (rand, 0, digits + 1));
          g_autofree char *text = stead_number_format (value, digits);
          double back = NAN;

          if (!stead_number_parse (text, &back, NULL) || fabs (back - value) > 1e-9 * fabs (value))
            g_error ("%s: %.17g came back from %s as %.17g", names[l], value, text, back);
        }
    }
}

static void
test_quantity_round_trip (void)
{
  for (gsize l = 0; l < G_N_ELEMENTS (names); l++)
    {
      if (!use_locale (names[l]))
        return;
      for (SteadDimension d = STEAD_DIMENSION_COUNT; d <= STEAD_DIMENSION_TEMPERATURE; d++)
        {
          gsize n = 0;
          const SteadUnit * const *units = stead_unit_list (d, &n);

          for (gsize u = 0; u < n; u++)
            for (int tenths = 0; tenths < 40000; tenths = tenths * 3 + 1)
              {
                double base = stead_quantity_to_base (tenths / 10.0, units[u]);
                g_autofree char *text = stead_quantity_format (base, units[u]);
                const SteadUnit *unit = NULL;
                double back = NAN;
                double shown;

                if (!stead_quantity_parse (text, d, units[u], &back, &unit, NULL))
                  g_error ("%s: %s is not read", names[l], text);
                shown = stead_quantity_from_base (back, units[u]);
                /* Grams and milliliters are shown whole. */
                if (unit != units[u] || fabs (shown - tenths / 10.0) > 0.5001)
                  g_error ("%s: %s came back as %g", names[l], text, shown);
              }
        }
    }
}

static void
test_day_round_trip (void)
{
  SteadDay today = stead_day_new (2026, 3, 3);

  for (gsize l = 0; l < G_N_ELEMENTS (names); l++)
    {
      SteadDateOrder order;

      if (!use_locale (names[l]))
        return;
      order = stead_date_order_from_locale ();
      for (SteadDay day = today - 350; day <= today + 7; day++)
        for (SteadDayStyle style = STEAD_DAY_STYLE_ISO; style <= STEAD_DAY_STYLE_ENGLISH; style++)
          {
            g_autofree char *text = stead_day_format (day, style);
            SteadDay back = STEAD_DAY_NONE;

            if (!stead_day_parse (text, today, order, &back, NULL) || back != day)
              g_error ("%s: %s came back as %d, not %d", names[l], text, back, day);
          }
    }
}

static void
test_day_order (void)
{
  static const struct { const char *locale; SteadDateOrder order; const char *medium; } cases[] = {
    { "en_US", STEAD_DATE_ORDER_MDY, "Mar 3, 2026" },
    { "en_GB", STEAD_DATE_ORDER_DMY, "3 Mar 2026" },
    { "de_DE", STEAD_DATE_ORDER_DMY, "3 Mar 2026" },
    { "es_US", STEAD_DATE_ORDER_DMY, "3 Mar 2026" },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autofree char *text = NULL;

      if (!use_locale (cases[i].locale))
        return;
      g_assert_cmpint (stead_date_order_from_locale (), ==, cases[i].order);
      text = stead_day_format (stead_day_new (2026, 3, 3), STEAD_DAY_STYLE_MEDIUM);
      g_assert_cmpstr (text, ==, cases[i].medium);
    }
}

int
main (int   argc,
      char *argv[])
{
  gboolean keep = g_getenv ("STEAD_TEST_LOCALES") != NULL;
  int status;

  folder = keep ? g_strdup (g_getenv ("STEAD_TEST_LOCALES"))
                : g_dir_make_tmp ("stead-locale-XXXXXX", NULL);
  g_assert_nonnull (folder);
  g_assert_cmpint (g_mkdir_with_parents (folder, 0700), ==, 0);
  g_setenv ("LOCPATH", folder, TRUE);
  g_unsetenv ("LC_ALL");
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/core/locale/money", test_money);
  g_test_add_func ("/core/locale/three-digits", test_three_digits);
  g_test_add_func ("/core/locale/stored", test_stored);
  g_test_add_func ("/core/locale/money-round-trip", test_money_round_trip);
  g_test_add_func ("/core/locale/number-round-trip", test_number_round_trip);
  g_test_add_func ("/core/locale/quantity-round-trip", test_quantity_round_trip);
  g_test_add_func ("/core/locale/day-round-trip", test_day_round_trip);
  g_test_add_func ("/core/locale/day-order", test_day_order);
  status = g_test_run ();
  if (!keep)
    {
      const char *remove[] = { "rm", "-rf", folder, NULL };

      g_spawn_sync (NULL, (char **) remove, NULL, G_SPAWN_SEARCH_PATH, NULL, NULL, NULL, NULL, NULL,
                    NULL);
    }
  g_free (folder);
  return status;
}
