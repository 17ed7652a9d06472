/* stead-sum.c - sums of money as they are worked out in a "Why?". */
#include "config.h"

#include "answer/stead-sum-private.h"

#include "core/stead-money.h"

void
stead_sum_add (GString    *sum,
               gint64      cents,
               const char *currency)
{
  g_autofree char *text = stead_money_format (ABS (cents), currency);

  if (sum->len == 0)
    g_string_append_printf (sum, "%s%s", cents < 0 ? "−" : "", text);
  else
    g_string_append_printf (sum, " %s %s", cents < 0 ? "−" : "+", text);
}

void
stead_sum_total (GString    *sum,
                 gint64      cents,
                 const char *currency)
{
  g_autofree char *text = stead_money_format (cents, currency);

  g_string_append_printf (sum, " = %s", text);
}
