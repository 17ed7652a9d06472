/* test-sum.c - sums of money as they are worked out in a "Why?". */
#include <glib.h>

#include "answer/stead-sum-private.h"

static void
test_signs (void)
{
  g_autoptr(GString) sum = g_string_new (NULL);

  stead_sum_add (sum, 51020, "USD");
  stead_sum_take (sum, 3300, "USD");
  stead_sum_take (sum, 0, "USD");
  stead_sum_add (sum, 0, "USD");
  stead_sum_add (sum, -1000, "USD");
  stead_sum_take (sum, -250, "USD");
  stead_sum_total (sum, 46970, "USD");
  g_assert_cmpstr (sum->str, ==, "$510.20 − $33.00 − $0.00 + $0.00 − $10.00 + $2.50 = $469.70");
}

static void
test_first (void)
{
  g_autoptr(GString) owed = g_string_new (NULL);
  g_autoptr(GString) taken = g_string_new (NULL);

  stead_sum_add (owed, -500, "USD");
  stead_sum_take (taken, 500, "USD");
  g_assert_cmpstr (owed->str, ==, "−$5.00");
  g_assert_cmpstr (taken->str, ==, owed->str);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/answer/sum/signs", test_signs);
  g_test_add_func ("/answer/sum/first", test_first);
  return g_test_run ();
}
