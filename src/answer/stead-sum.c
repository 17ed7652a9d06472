/* stead-sum.c - sums as they are worked out in a "Why?": of money, and of whatever is put in words. */
#include "config.h"

#include "answer/stead-sum-private.h"

#include "core/stead-money.h"
#include "core/stead-quantity.h"

#include <glib/gi18n-lib.h>

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

  stead_sum_end (sum, text);
}

void
stead_sum_add_term (GString    *sum,
                    const char *term)
{
  g_string_append_printf (sum, "%s%s", sum->len > 0 ? " + " : "", term);
}

/* A name may run from right to left; what stands after it does not. */
void
stead_sum_add_named (GString    *sum,
                     const char *name,
                     const char *part)
{
  g_autofree char *isolated = g_strdup_printf ("\u2068%s\u2069", name);
  /* Translators: a place, a shop, a reason or a person, and money or hours: "Feed room $30.00". */
  g_autofree char *term = g_strdup_printf (C_("part of a sum", "%1$s %2$s"), isolated, part);

  stead_sum_add_term (sum, term);
}

void
stead_sum_add_count (GString *sum,
                     gint64   n)
{
  g_autofree char *text = stead_number_format ((double) n, 0);

  stead_sum_add_term (sum, text);
}

void
stead_sum_take_count (GString *sum,
                      gint64   n)
{
  g_autofree char *text = stead_number_format ((double) n, 0);

  g_string_append_printf (sum, " − %s", text);
}

void
stead_sum_end (GString    *sum,
               const char *total)
{
  g_string_append_printf (sum, " = %s", total);
}

void
stead_sum_end_count (GString *sum,
                     gint64   n)
{
  g_autofree char *text = stead_number_format ((double) n, 0);

  stead_sum_end (sum, text);
}
