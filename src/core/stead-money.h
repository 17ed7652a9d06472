/* stead-money.h - money in whole minor units, and the text of it.
 *
 * Invariants:
 *  1. A sum of money is a gint64 of minor units (cents); only a unit cost on
 *     its way to a sum may be a double, and its name then ends in _cents too.
 *  2. Rounding happens once, at a named place, half away from zero.
 *  3. Parts that were split from a sum add up to that sum, always.
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/**
 * stead_money_round:
 * @cents: an unrounded sum in minor units, |@cents| below 9e15
 *
 * Rounds half away from zero, after clearing binary noise (1e-9 relative), so
 * that 0.5 reached as 0.49999999999 still goes up.
 *
 * Returns: whole minor units
 */
gint64 stead_money_round (double cents);

/**
 * stead_money_split:
 * @total_cents: the sum to hand out; may be negative
 * @weights: (array length=n): shares, each 0 or more, not all 0
 * @n: how many, 1 or more
 * @shares_cents: (out) (array length=n): the parts; their sum is @total_cents
 *
 * Largest remainder: every part is floored, the missing units go one each to
 * the largest remainders, equal remainders to the earlier part.  A negative sum
 * is split as its opposite is.  Weights with up to six decimals are compared
 * exactly, not in floating point.
 * Source: OpenStax Contemporary Mathematics, section 11.4.
 */
void stead_money_split (gint64        total_cents,
                        const double *weights,
                        gsize         n,
                        gint64       *shares_cents);

/**
 * stead_currency_is_known:
 * @currency: (nullable): three letters of ISO 4217
 *
 * Returns: whether the program knows its symbol and its number of digits
 */
gboolean stead_currency_is_known (const char *currency);

/**
 * stead_currency_digits:
 * @currency: a known currency
 *
 * Returns: digits after the point: 2 for USD, 0 for JPY
 */
int stead_currency_digits (const char *currency);

/**
 * stead_currency_symbol:
 * @currency: a known currency
 *
 * Returns: (transfer none): "$", "€"
 */
const char *stead_currency_symbol (const char *currency);

/**
 * stead_currency_list:
 *
 * Returns: (transfer none) (array zero-terminated=1): the known codes, US dollar first
 */
const char * const *stead_currency_list (void);

/**
 * stead_money_format:
 * @cents: minor units
 * @currency: a known currency
 *
 * The text that a person reads: the currency's symbol, the locale's grouping
 * and decimal point, a true minus sign in front: "$4.50", "−$1,203.00".
 *
 * Returns: (transfer full): the text
 */
char *stead_money_format (gint64      cents,
                          const char *currency) G_GNUC_WARN_UNUSED_RESULT;

/**
 * stead_money_format_short:
 * @cents: minor units
 * @currency: a known currency
 *
 * As stead_money_format(), without the decimals where they are all zero:
 * "$480", but "$4.50".  For the axis of a chart.
 *
 * Returns: (transfer full): the text
 */
char *stead_money_format_short (gint64      cents,
                                const char *currency) G_GNUC_WARN_UNUSED_RESULT;

/**
 * stead_money_format_entry:
 * @cents: minor units
 * @currency: a known currency
 *
 * The text put into a field for editing: no symbol, no grouping, the locale's
 * decimal point and a plain hyphen: "4.50".
 *
 * Returns: (transfer full): the text
 */
char *stead_money_format_entry (gint64      cents,
                                const char *currency) G_GNUC_WARN_UNUSED_RESULT;

/**
 * stead_money_format_stored:
 * @cents: minor units
 * @currency: a known currency
 *
 * The text for files and programs, whatever the locale: "-1203.00".
 *
 * Returns: (transfer full): the text
 */
char *stead_money_format_stored (gint64      cents,
                                 const char *currency) G_GNUC_WARN_UNUSED_RESULT;

/**
 * stead_money_parse:
 * @text: what a person typed: "4.50", "$4.50", "4,50", "1,234.50", "1.234,50",
 *   "(12.00)", "−3", "3 USD"
 * @currency: a known currency
 * @out_cents: (out): minor units
 * @error: return location for a #GError in %STEAD_CORE_ERROR
 *
 * A comma or a point with exactly three digits after it and none of the other
 * kind is taken as the locale takes it.  More decimals than the currency has
 * are refused, not rounded.
 *
 * Returns: %TRUE, or %FALSE with @error set and @out_cents left alone
 */
gboolean stead_money_parse (const char  *text,
                            const char  *currency,
                            gint64      *out_cents,
                            GError     **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
