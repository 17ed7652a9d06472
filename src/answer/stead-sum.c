/* stead-sum.c - sums of money as they are worked out in a "Why?". */
#include "config.h"

#include "answer/stead-sum-private.h"

#include "core/stead-money.h"

static void
append (GString    *sum,
        gint64      cents,
        gboolean    off,
        const char *currency)
{
  g_autofree char *text = stead_money_format (ABS (cents), currency);

  if (sum->len == 0)
    g_string_append_printf (sum, "%s%s", off ? "−" : "", text);
  else
    g_string_append_printf (sum, " %s %s", off ? "−" : "+", text);
}

void
stead_sum_add (GString    *sum,
               gint64      cents,
               const char *currency)
{
  append (sum, cents, cents < 0, currency);
}

void
stead_sum_take (GString    *sum,
                gint64      cents,
                const char *currency)
{
  append (sum, cents, cents >= 0, currency);
}

void
stead_sum_total (GString    *sum,
                 gint64      cents,
                 const char *currency)
{
  g_autofree char *text = stead_money_format (cents, currency);

  g_string_append_printf (sum, " = %s", text);
}
