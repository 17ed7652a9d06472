/* stead-money-text.c - money as people write it, and as files keep it. */
#include "config.h"

#include "core/stead-core-error.h"
#include "core/stead-money.h"
#include "core/stead-number-private.h"

#include <glib/gi18n-lib.h>
#include <locale.h>
#include <string.h>

/* The digits before and after the point, each in its own buffer. */
static void
split_digits (gint64  cents,
              int     digits,
              char   *whole,
              char   *part)
{
  guint64 value = cents < 0 ? -(guint64) cents : (guint64) cents;
  guint64 unit = 1;

  for (int i = 0; i < digits; i++)
    unit *= 10;
  g_snprintf (whole, 24, "%" G_GUINT64_FORMAT, value / unit);
  g_snprintf (part, 24, "%0*" G_GINT64_MODIFIER "u", MAX (digits, 1), value % unit);
  if (digits == 0)
    part[0] = '\0';
}

static char *
format_with_symbol (gint64      cents,
                    const char *currency,
                    gboolean    shorten)
{
  const char *symbol;
  const struct lconv *conv = localeconv ();
  gboolean after = conv->p_cs_precedes == 0;
  gboolean letters;
  GString *text;
  char whole[24];
  char part[24];

  g_return_val_if_fail (stead_currency_is_known (currency), NULL);

  symbol = stead_currency_symbol (currency);
  split_digits (cents, stead_currency_digits (currency), whole, part);
  letters = g_unichar_isalpha (g_utf8_get_char (g_utf8_find_prev_char (
    symbol, symbol + strlen (symbol))));
  text = g_string_new (cents < 0 ? "\xe2\x88\x92" : "");
  if (!after)
    {
      g_string_append (text, symbol);
      if (letters)
        g_string_append (text, "\xc2\xa0");
    }
  stead_number_append_grouped (text, whole);
  if (part[0] != '\0' && !(shorten && strspn (part, "0") == strlen (part)))
    g_string_append_printf (text, "%s%s", stead_number_style ().point, part);
  if (after)
    g_string_append_printf (text, "\xc2\xa0%s", symbol);
  return g_string_free (text, FALSE);
}

char *
stead_money_format (gint64      cents,
                    const char *currency)
{
  return format_with_symbol (cents, currency, FALSE);
}

char *
stead_money_format_short (gint64      cents,
                          const char *currency)
{
  return format_with_symbol (cents, currency, TRUE);
}

static char *
format_bare (gint64      cents,
             const char *currency,
             const char *point)
{
  char whole[24];
  char part[24];

  split_digits (cents, stead_currency_digits (currency), whole, part);
  return g_strconcat (cents < 0 ? "-" : "", whole, part[0] != '\0' ? point : "", part, NULL);
}

char *
stead_money_format_entry (gint64      cents,
                          const char *currency)
{
  g_return_val_if_fail (stead_currency_is_known (currency), NULL);
  return format_bare (cents, currency, stead_number_style ().point);
}

char *
stead_money_format_stored (gint64      cents,
                           const char *currency)
{
  g_return_val_if_fail (stead_currency_is_known (currency), NULL);
  return format_bare (cents, currency, ".");
}

static gboolean
set_not_money (const char  *text,
               GError     **error)
{
  g_set_error (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_PARSE,
               _("“%s” is not an amount of money. Type one such as 4.50."), text);
  return FALSE;
}

/* Takes @word off the front or the end of @text, whatever its case. */
static gboolean
strip_word (char       *text,
            const char *word)
{
  gsize n = strlen (text);
  gsize m = strlen (word);

  if (m == 0 || m > n)
    return FALSE;
  if (g_ascii_strncasecmp (text, word, m) == 0)
    {
      memmove (text, text + m, n - m + 1);
      g_strstrip (text);
      return TRUE;
    }
  if (g_ascii_strcasecmp (text + n - m, word) == 0)
    {
      text[n - m] = '\0';
      g_strstrip (text);
      return TRUE;
    }
  return FALSE;
}

/* Takes off a minus, a plus, or the parentheses of bookkeepers. */
static gboolean
strip_sign (char *text)
{
  gsize n = strlen (text);

  if (n > 2 && text[0] == '(' && text[n - 1] == ')')
    {
      text[n - 1] = '\0';
      memmove (text, text + 1, n - 1);
      g_strstrip (text);
      return TRUE;
    }
  if (*text == '-' || *text == '+')
    {
      gboolean negative = *text == '-';

      memmove (text, text + 1, n);
      g_strstrip (text);
      return negative;
    }
  return FALSE;
}

/* FALSE with @error set if the text names another currency than the farm's. */
static gboolean
strip_currency (char        *text,
                const char  *currency,
                GError     **error)
{
  gboolean named = strip_word (text, currency);

  /* "$4 CAD" and "US$4" name it twice. */
  if (g_str_equal (currency, "USD") && strip_word (text, "US$"))
    return TRUE;
  if (strip_word (text, stead_currency_symbol (currency)) || named)
    return TRUE;
  for (const char * const *other = stead_currency_list (); *other != NULL; other++)
    {
      const char *symbol = stead_currency_symbol (*other);

      if (!strip_word (text, *other) && (g_ascii_isalpha (*symbol) || !strip_word (text, symbol)))
        continue;
      g_set_error (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_UNIT,
                   _("This farm counts its money in %s. Type the amount in %s."), currency, currency);
      return FALSE;
    }
  return TRUE;
}

static gboolean
check_decimals (const SteadDecimal *decimal,
                const char         *currency,
                GError            **error)
{
  int digits = stead_currency_digits (currency);

  if (strlen (decimal->whole) > 12)
    {
      g_set_error_literal (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_RANGE,
                           _("This amount is too large. Check how many digits you typed."));
      return FALSE;
    }
  if ((int) strlen (decimal->part) <= digits)
    return TRUE;
  if (digits == 0)
    g_set_error (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_PARSE,
                 _("An amount in %s has no decimals. Type a whole number."), currency);
  else
    g_set_error (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_PARSE,
                 ngettext ("Type at most %d digit after the decimal point.",
                           "Type at most %d digits after the decimal point.", digits),
                 digits);
  return FALSE;
}

static gint64
decimal_cents (const SteadDecimal *decimal,
               int                 digits)
{
  g_autofree char *text = g_strconcat (decimal->whole, decimal->part, NULL);
  gint64 cents = g_ascii_strtoll (text, NULL, 10);

  for (int i = (int) strlen (decimal->part); i < digits; i++)
    cents *= 10;
  return cents;
}

gboolean
stead_money_parse (const char  *text,
                   const char  *currency,
                   gint64      *out_cents,
                   GError     **error)
{
  g_autofree char *plain = NULL;
  g_autofree char *shown = NULL;
  const char *cursor;
  SteadDecimal decimal;
  gboolean negative;
  gint64 cents;

  g_return_val_if_fail (text != NULL, FALSE);
  g_return_val_if_fail (stead_currency_is_known (currency), FALSE);
  g_return_val_if_fail (out_cents != NULL, FALSE);

  plain = stead_text_plain (text, error);
  if (plain == NULL)
    return FALSE;
  shown = g_strdup (plain);
  negative = strip_sign (plain);
  if (!strip_currency (plain, currency, error))
    return FALSE;
  if (!negative)
    negative = strip_sign (plain);
  cursor = plain;
  if (!stead_decimal_scan (&cursor, &decimal) || *cursor != '\0')
    return set_not_money (shown, error);
  if (!check_decimals (&decimal, currency, error))
    return FALSE;
  cents = decimal_cents (&decimal, stead_currency_digits (currency));
  *out_cents = negative ? -cents : cents;
  return TRUE;
}
