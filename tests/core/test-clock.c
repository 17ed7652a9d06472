/* test-clock.c - times of the day and their text. */
#include "config.h"

#include "core/stead-clock.h"
#include "core/stead-core-error.h"

/* What each means to anyone who reads a clock. */
static const struct { const char *text; int minute; } good[] = {
  { "7:30", 450 }, { "07:30", 450 }, { "7.30", 450 }, { "0730", 450 }, { "730", 450 }, { "19:30", 1170 },
  { "7:30 pm", 1170 }, { "7:30PM", 1170 }, { "7:30 p.m.", 1170 }, { "7 am", 420 }, { "7", 420 }, { "12 am", 0 },
  { "12:15 pm", 735 }, { "0:00", 0 }, { "23:59", 1439 }, { " 6:05 ", 365 }, { "", -1 }, { "  ", -1 }, { "19h30", 1170 },
};

static const char * const bad[] = { "24:00", "7:60", "13 pm", "0 am", "noon", "7:3", "-1", "7:30:15", "12345", "am" };

static void
test_parse (void)
{
  for (gsize i = 0; i < G_N_ELEMENTS (good); i++)
    {
      g_autoptr(GError) error = NULL;
      int minute = -2;

      g_test_message ("%s", good[i].text);
      g_assert_true (stead_minute_parse (good[i].text, &minute, &error));
      g_assert_no_error (error);
      g_assert_cmpint (minute, ==, good[i].minute);
    }
}

static void
test_refused (void)
{
  for (gsize i = 0; i < G_N_ELEMENTS (bad); i++)
    {
      g_autoptr(GError) error = NULL;
      int minute = -2;

      g_test_message ("%s", bad[i]);
      g_assert_false (stead_minute_parse (bad[i], &minute, &error));
      g_assert_error (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_PARSE);
      g_assert_cmpint (minute, ==, -2);
    }
}

/* What is written can be read again, minute by minute. */
static void
test_round_trip (void)
{
  for (int i = 0; i < 24 * 60; i++)
    {
      g_autofree char *text = stead_minute_format (i);
      int minute = -2;

      g_assert_true (stead_minute_parse (text, &minute, NULL));
      g_assert_cmpint (minute, ==, i);
    }
  {
    g_autofree char *none = stead_minute_format (-1);
    g_autofree char *noon = stead_minute_format (735);

    g_assert_cmpstr (none, ==, "");
    g_assert_cmpstr (noon, ==, "12:15 PM");   /* the C locale has AM and PM */
  }
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/core/clock/parse", test_parse);
  g_test_add_func ("/core/clock/refused", test_refused);
  g_test_add_func ("/core/clock/round-trip", test_round_trip);
  return g_test_run ();
}
