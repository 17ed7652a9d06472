/* stead-quantity.c - the text of amounts. */
#include "config.h"

#include "core/stead-core-error.h"
#include "core/stead-number-private.h"
#include "core/stead-quantity.h"
#include "core/stead-round.h"
#include "core/stead-unit-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

/* What to type instead, by dimension. */
static const char * const wanted[] = {
  [STEAD_DIMENSION_COUNT] = N_("Type a count, such as 22 or 3 doz."),
  [STEAD_DIMENSION_MASS] = N_("Type a weight, such as 2 lb 4 oz or 1.5 kg."),
  [STEAD_DIMENSION_VOLUME] = N_("Type a volume, such as 1 1/2 cups, 5 gal or 2 L."),
  [STEAD_DIMENSION_AREA] = N_("Type an area, such as 40 sq ft or 4 m2."),
  [STEAD_DIMENSION_LENGTH] = N_("Type a length, such as 6 ft 3 in or 2 m."),
  [STEAD_DIMENSION_TEMPERATURE] = N_("Type a temperature, such as 72 F or 22 C."),
};

static gboolean
set_unit_error (const char      *word,
                const SteadUnit *found,
                SteadDimension   dimension,
                GError         **error)
{
  if (found == NULL)
    g_set_error (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_UNIT,
                 /* Translators: what was typed, then a whole sentence on what to type. */
                 _("“%s” is not a unit that is known here. %s"), word, _(wanted[dimension]));
  else
    g_set_error (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_UNIT,
                 _("“%s” measures another kind of thing. %s"), word, _(wanted[dimension]));
  return FALSE;
}

/* The unit's word at *@cursor: up to the next number; "" if there is none. */
static char *
scan_word (const char **cursor)
{
  const char *start = *cursor + strspn (*cursor, " ");
  const char *p = start;
  char *word;

  while (*p != '\0' && !g_ascii_isdigit (*p))
    p++;
  /* "m2" and "ft2" end in a digit. */
  if (p > start && *p == '2' && (p[1] == '\0' || p[1] == ' ') && g_ascii_isalpha (p[-1]))
    p++;
  *cursor = p;
  word = g_strndup (start, (gsize) (p - start));
  return g_strstrip (word);
}

/* The unit of one part; a bare number takes @fallback. */
static const SteadUnit *
scan_unit (const char      **cursor,
           SteadDimension    dimension,
           const SteadUnit  *fallback,
           GError          **error)
{
  g_autofree char *word = scan_word (cursor);
  const SteadUnit *unit = fallback;

  if (*word != '\0')
    unit = stead_unit_from_text_for (word, (int) dimension);
  if (unit == NULL || unit->dimension != dimension)
    {
      set_unit_error (word, unit, dimension, error);
      return NULL;
    }
  return unit;
}

/* What a bare number after a part in @unit counts: "3 doz 4", "6 ft 3". */
static const SteadUnit *
unit_below (const SteadUnit *unit)
{
  static const char * const below[][2] = { { "doz", "ea" }, { "lb", "oz" }, { "ft", "in" } };

  for (gsize i = 0; i < G_N_ELEMENTS (below); i++)
    if (g_str_equal (unit->id, below[i][0]))
      return stead_unit_by_id (below[i][1]);
  return NULL;
}

static gboolean
set_unclear (const char     *text,
             SteadDimension  dimension,
             GError        **error)
{
  g_set_error (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_PARSE,
               _("“%s” cannot be read as one amount. %s"), text, _(wanted[dimension]));
  return FALSE;
}

/* All parts of an amount, each in a smaller unit than the one before. */
static gboolean
scan_parts (const char       *text,
            SteadDimension    dimension,
            const SteadUnit  *fallback,
            double           *out_base,
            const SteadUnit **out_unit,
            GError          **error)
{
  const char *cursor = text;
  const SteadUnit *before = NULL;

  *out_base = 0;
  while (*cursor != '\0')
    {
      const SteadUnit *bare = before == NULL ? fallback : unit_below (before);
      const SteadUnit *unit;
      double value;

      if (!stead_number_scan (&cursor, &value, error))
        return FALSE;
      if (bare == NULL && *cursor == '\0')
        return set_unclear (text, dimension, error);
      unit = scan_unit (&cursor, dimension, bare, error);
      if (unit == NULL)
        return FALSE;
      if (before != NULL && (dimension == STEAD_DIMENSION_TEMPERATURE
                             || unit->factor >= before->factor))
        return set_unclear (text, dimension, error);
      if (before == NULL)
        *out_unit = unit;
      *out_base += stead_quantity_to_base (value, unit);
      before = unit;
    }
  return TRUE;
}

gboolean
stead_quantity_parse (const char       *text,
                      SteadDimension    dimension,
                      const SteadUnit  *fallback,
                      double           *out_base,
                      const SteadUnit **out_unit,
                      GError          **error)
{
  g_autofree char *plain = NULL;
  const char *start;
  gboolean negative;
  const SteadUnit *unit = NULL;
  double base;

  g_return_val_if_fail (text != NULL, FALSE);
  g_return_val_if_fail ((gsize) dimension < G_N_ELEMENTS (wanted), FALSE);
  g_return_val_if_fail (fallback != NULL && fallback->dimension == dimension, FALSE);
  g_return_val_if_fail (out_base != NULL, FALSE);

  plain = stead_text_plain (text, error);
  if (plain == NULL)
    return FALSE;
  negative = *plain == '-';
  start = plain + strspn (plain, negative ? "- " : "+ ");
  if (negative && dimension != STEAD_DIMENSION_TEMPERATURE)
    {
      g_set_error_literal (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_RANGE,
                           _("An amount cannot be below 0. Type it without the minus sign."));
      return FALSE;
    }
  if (*start == '\0')
    return set_unclear (plain, dimension, error);
  if (!scan_parts (start, dimension, fallback, &base, &unit, error))
    return FALSE;
  if (negative)
    base = stead_quantity_to_base (-stead_quantity_from_base (base, unit), unit);
  if (!(fabs (base) <= STEAD_NUMBER_MAX))
    {
      g_set_error_literal (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_RANGE,
                           _("This number is too large. Check how many digits you typed."));
      return FALSE;
    }
  *out_base = base;
  if (out_unit != NULL)
    *out_unit = unit;
  return TRUE;
}

/* Digits that a farm's scale, jug or tape can tell apart. */
static int
digits_of (const SteadUnit *unit)
{
  static const char * const whole[] = { "g", "ml" };
  static const char * const tenths[] = { "oz", "floz", "sqft", "m2", "in", "degF", "degC" };

  for (gsize i = 0; i < G_N_ELEMENTS (whole); i++)
    if (g_str_equal (unit->id, whole[i]))
      return 0;
  for (gsize i = 0; i < G_N_ELEMENTS (tenths); i++)
    if (g_str_equal (unit->id, tenths[i]))
      return 1;
  return 2;
}

/* A little is never shown as nothing: two digits that count. */
static int
digits_for (double           value,
            const SteadUnit *unit)
{
  int digits = digits_of (unit);

  if (unit->dimension == STEAD_DIMENSION_TEMPERATURE || value == 0)
    return digits;
  while (digits < 6 && fabs (value) < pow (10, 1 - digits))
    digits++;
  return digits;
}

const char *
stead_unit_symbol_for (double           value,
                       const SteadUnit *unit)
{
  unsigned long n = value == 1 ? 1 : 2;

  g_return_val_if_fail (unit != NULL, NULL);

  if (g_str_equal (unit->id, "cup"))
    return g_dngettext (GETTEXT_PACKAGE, "cup", "cups", n);
  if (g_str_equal (unit->id, "ton"))
    return g_dngettext (GETTEXT_PACKAGE, "ton", "tons", n);
  return stead_unit_symbol (unit);
}

char *
stead_quantity_format (double           base,
                       const SteadUnit *unit)
{
  double value;
  int digits;
  g_autofree char *number = NULL;

  g_return_val_if_fail (unit != NULL, NULL);
  g_return_val_if_fail (isfinite (base), NULL);

  value = stead_quantity_from_base (base, unit);
  digits = digits_for (value, unit);
  number = stead_number_format (value, digits);
  if (g_str_equal (unit->id, "ea"))
    return g_steal_pointer (&number);
  return g_strconcat (number, " ", stead_unit_symbol_for (stead_round_digits (value, digits), unit), NULL);
}

char *
stead_quantity_format_mixed (double           base,
                             const SteadUnit *unit)
{
  const SteadUnit *small;
  g_autofree char *large_text = NULL;
  g_autofree char *small_text = NULL;
  double per_large;
  double all;
  double large;
  double rest;

  g_return_val_if_fail (unit != NULL, NULL);
  g_return_val_if_fail (isfinite (base), NULL);

  small = unit_below (unit);
  if (small == NULL || base < 0)
    return stead_quantity_format (base, unit);

  /* Round in the small unit first, or 15.96 oz would become "0 lb 16 oz". */
  per_large = round (unit->factor / small->factor);
  all = stead_round_digits (stead_quantity_from_base (base, small), digits_of (small));
  large = stead_round_down (all / per_large);
  rest = stead_round_digits (all - large * per_large, digits_of (small));
  large_text = stead_quantity_format (large * unit->factor, unit);
  small_text = stead_quantity_format (rest * small->factor, small);
  if (rest <= 0)
    return g_steal_pointer (&large_text);
  /* "4" beside "3 doz 4" would be read as dozens. */
  if (large <= 0 && unit->dimension != STEAD_DIMENSION_COUNT)
    return g_steal_pointer (&small_text);
  return g_strconcat (large_text, " ", small_text, NULL);
}
