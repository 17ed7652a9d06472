/* stead-money.c - money in whole minor units, and the text of it. */
#include "config.h"

#include "core/stead-core-error.h"
#include "core/stead-money.h"
#include "core/stead-number-private.h"
#include "core/stead-round.h"

#include <glib/gi18n-lib.h>
#include <locale.h>
#include <math.h>
#include <stdlib.h>
#include <string.h>

/* One currency of ISO 4217.  A farm has one, so its own sign is enough: a
 * Canadian farm reads "$" and knows whose. */
typedef struct
{
  const char *code;
  const char *symbol;
  int         digits;
} Currency;

/* Source: ISO 4217, list one (codes and minor units). */
static const Currency currencies[] = {
  { "USD", "$", 2 },
  { "AUD", "$", 2 },
  { "BRL", "R$", 2 },
  { "CAD", "$", 2 },
  { "CHF", "CHF", 2 },
  { "CLP", "$", 0 },
  { "COP", "$", 2 },
  { "CRC", "₡", 2 },
  { "CZK", "Kč", 2 },
  { "DKK", "kr", 2 },
  { "DOP", "RD$", 2 },
  { "EUR", "€", 2 },
  { "GBP", "£", 2 },
  { "GTQ", "Q", 2 },
  { "HNL", "L", 2 },
  { "INR", "₹", 2 },
  { "JPY", "¥", 0 },
  { "KES", "KSh", 2 },
  { "KRW", "₩", 0 },
  { "MXN", "$", 2 },
  { "NOK", "kr", 2 },
  { "NZD", "$", 2 },
  { "PEN", "S/", 2 },
  { "PHP", "₱", 2 },
  { "PLN", "zł", 2 },
  { "SEK", "kr", 2 },
  { "TND", "DT", 3 },
  { "UGX", "USh", 0 },
  { "ZAR", "R", 2 },
};

static const char *currency_codes[G_N_ELEMENTS (currencies) + 1];

static const Currency *
currency_by_code (const char *code)
{
  for (gsize i = 0; code != NULL && i < G_N_ELEMENTS (currencies); i++)
    if (g_str_equal (currencies[i].code, code))
      return &currencies[i];
  return NULL;
}

gboolean
stead_currency_is_known (const char *currency)
{
  return currency_by_code (currency) != NULL;
}

int
stead_currency_digits (const char *currency)
{
  const Currency *known = currency_by_code (currency);

  g_return_val_if_fail (known != NULL, 2);
  return known->digits;
}

const char *
stead_currency_symbol (const char *currency)
{
  const Currency *known = currency_by_code (currency);

  g_return_val_if_fail (known != NULL, "");
  return known->symbol;
}

const char * const *
stead_currency_list (void)
{
  static gsize ready = 0;

  if (g_once_init_enter (&ready))
    {
      for (gsize i = 0; i < G_N_ELEMENTS (currencies); i++)
        currency_codes[i] = currencies[i].code;
      g_once_init_leave (&ready, 1);
    }
  return currency_codes;
}

gint64
stead_money_round (double cents)
{
  g_return_val_if_fail (isfinite (cents) && fabs (cents) < 9e15, 0);
  return (gint64) stead_round_half_away (cents);
}

/* What is left of one part after flooring, and whose it is. */
typedef struct
{
  long double remainder;
  gsize       index;
} Remainder;

static int
compare_remainders (gconstpointer a,
                    gconstpointer b)
{
  const Remainder *left = a;
  const Remainder *right = b;

  if (left->remainder != right->remainder)
    return left->remainder > right->remainder ? -1 : 1;
  return left->index < right->index ? -1 : 1;
}

/* A power of ten that makes each weight a whole number, so that remainders can
 * be compared exactly; 0: there is none. */
static double
whole_scale (const double *weights,
             gsize         n)
{
  for (double scale = 1; scale <= 1e6; scale *= 10)
    {
      gboolean whole = TRUE;
      double sum = 0;

      for (gsize i = 0; i < n && whole; i++)
        {
          double scaled = weights[i] * scale;

          sum += scaled;
          whole = fabs (scaled - round (scaled)) <= STEAD_ROUND_NOISE * MAX (1, scaled)
                  && sum < 9e15;
        }
      if (whole)
        return scale;
    }
  return 0;
}

/* Floors part @i and tells its remainder, exact where the weights allow it. */
static guint64
floor_share (guint64       total,
             double        weight,
             double        sum,
             double        scale,
             long double  *out_remainder)
{
  if (scale > 0)
    {
      unsigned __int128 product = (unsigned __int128) total * (guint64) llround (weight * scale);
      guint64 divisor = (guint64) llround (sum * scale);

      /* Both lie below 2^63, which a long double holds whole. */
      *out_remainder = (long double) (guint64) (product % divisor);
      return (guint64) (product / divisor);
    }
  else
    {
      long double share = (long double) total * weight / sum;
      long double whole = floorl (share + 1e-12L * MAX (1, share));

      *out_remainder = share - whole;
      return (guint64) whole;
    }
}

void
stead_money_split (gint64        total_cents,
                   const double *weights,
                   gsize         n,
                   gint64       *shares_cents)
{
  g_autofree Remainder *remainders = NULL;
  guint64 total = total_cents < 0 ? -(guint64) total_cents : (guint64) total_cents;
  gint64 left = (gint64) total;
  double sum = 0;
  double scale;

  g_return_if_fail (weights != NULL && shares_cents != NULL && n > 0);
  g_return_if_fail (total_cents > G_MININT64);
  for (gsize i = 0; i < n; i++)
    {
      g_return_if_fail (weights[i] >= 0 && isfinite (weights[i]));
      sum += weights[i];
    }
  g_return_if_fail (sum > 0 && isfinite (sum));

  scale = whole_scale (weights, n);
  if (scale > 0)
    {
      /* Sum what is divided, not its binary shadow. */
      sum = 0;
      for (gsize i = 0; i < n; i++)
        sum += round (weights[i] * scale);
      sum /= scale;
    }
  remainders = g_new (Remainder, n);
  for (gsize i = 0; i < n; i++)
    {
      shares_cents[i] = (gint64) floor_share (total, weights[i], sum, scale,
                                              &remainders[i].remainder);
      remainders[i].index = i;
      left -= shares_cents[i];
    }
  qsort (remainders, n, sizeof *remainders, compare_remainders);
  for (gsize i = 0; left != 0; i = (i + 1) % n)
    {
      gint64 step = left > 0 ? 1 : -1;

      shares_cents[remainders[i].index] += step;
      left -= step;
    }
  if (total_cents < 0)
    for (gsize i = 0; i < n; i++)
      shares_cents[i] = -shares_cents[i];
}

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
  const Currency *known = currency_by_code (currency);
  const struct lconv *conv = localeconv ();
  gboolean after = conv->p_cs_precedes == 0;
  gboolean letters;
  GString *text;
  char whole[24];
  char part[24];

  g_return_val_if_fail (known != NULL, NULL);

  split_digits (cents, known->digits, whole, part);
  letters = g_unichar_isalpha (g_utf8_get_char (g_utf8_find_prev_char (
    known->symbol, known->symbol + strlen (known->symbol))));
  text = g_string_new (cents < 0 ? "\xe2\x88\x92" : "");
  if (!after)
    {
      g_string_append (text, known->symbol);
      if (letters)
        g_string_append (text, "\xc2\xa0");
    }
  stead_number_append_grouped (text, whole);
  if (part[0] != '\0' && !(shorten && strspn (part, "0") == strlen (part)))
    g_string_append_printf (text, "%s%s", stead_number_style ().point, part);
  if (after)
    g_string_append_printf (text, "\xc2\xa0%s", known->symbol);
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
strip_currency (char            *text,
                const Currency  *known,
                GError         **error)
{
  gboolean named = strip_word (text, known->code);

  /* "$4 CAD" and "US$4" name it twice. */
  if (g_str_equal (known->code, "USD") && strip_word (text, "US$"))
    return TRUE;
  if (strip_word (text, known->symbol) || named)
    return TRUE;
  for (gsize i = 0; i < G_N_ELEMENTS (currencies); i++)
    if (strip_word (text, currencies[i].code)
        || (!g_ascii_isalpha (*currencies[i].symbol) && strip_word (text, currencies[i].symbol)))
      {
        g_set_error (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_UNIT,
                     _("This farm counts its money in %s. Type the amount in %s."),
                     known->code, known->code);
        return FALSE;
      }
  return TRUE;
}

static gboolean
check_decimals (const SteadDecimal *decimal,
                const Currency     *known,
                GError            **error)
{
  if (strlen (decimal->whole) > 12)
    {
      g_set_error_literal (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_RANGE,
                           _("This amount is too large. Check how many digits you typed."));
      return FALSE;
    }
  if ((int) strlen (decimal->part) <= known->digits)
    return TRUE;
  if (known->digits == 0)
    g_set_error (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_PARSE,
                 _("An amount in %s has no decimals. Type a whole number."), known->code);
  else
    g_set_error (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_PARSE,
                 ngettext ("Type at most %d digit after the decimal point.",
                           "Type at most %d digits after the decimal point.", known->digits),
                 known->digits);
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
  const Currency *known = currency_by_code (currency);
  g_autofree char *plain = NULL;
  g_autofree char *shown = NULL;
  const char *cursor;
  SteadDecimal decimal;
  gboolean negative;
  gint64 cents;

  g_return_val_if_fail (text != NULL, FALSE);
  g_return_val_if_fail (known != NULL, FALSE);
  g_return_val_if_fail (out_cents != NULL, FALSE);

  plain = stead_text_plain (text, error);
  if (plain == NULL)
    return FALSE;
  shown = g_strdup (plain);
  negative = strip_sign (plain);
  if (!strip_currency (plain, known, error))
    return FALSE;
  if (!negative)
    negative = strip_sign (plain);
  cursor = plain;
  if (!stead_decimal_scan (&cursor, &decimal) || *cursor != '\0')
    return set_not_money (shown, error);
  if (!check_decimals (&decimal, known, error))
    return FALSE;
  cents = decimal_cents (&decimal, known->digits);
  *out_cents = negative ? -cents : cents;
  return TRUE;
}
