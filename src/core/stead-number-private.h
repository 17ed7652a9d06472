/* stead-number-private.h - the parts of number text that money and amounts share. */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* Longest text that is looked at, bytes. */
#define STEAD_TEXT_MAX 200

/* Numbers beyond this are typing errors on any farm. */
#define STEAD_NUMBER_MAX 1e12

/* A decimal number as digits, so that money needs no double on its way. */
typedef struct
{
  char whole[STEAD_TEXT_MAX + 1];  /* ASCII digits without leading zeros, "0" for none */
  char part[STEAD_TEXT_MAX + 1];   /* ASCII digits after the point, as typed */
} SteadDecimal;

/* What the locale of this moment writes; the strings are the C library's. */
typedef struct
{
  const char *point;      /* "." or "," */
  const char *separator;  /* "," or "." or a space; "" for none */
  const char *grouping;   /* sizes of groups from the point on, as localeconv() has them */
} SteadNumberStyle;

SteadNumberStyle stead_number_style (void);

/* Digits with the style's grouping. */
void stead_number_append_grouped (GString    *text,
                                  const char *digits);

/* One plain form of what was typed: ASCII digits, '-', '/', single spaces,
 * vulgar fractions as " n/d"; other letters stay.  NULL with @error set if it
 * is no text, is empty, or is too long. */
char *stead_text_plain (const char  *text,
                        GError     **error) G_GNUC_WARN_UNUSED_RESULT;

/* Reads a decimal number at *@cursor and moves it on; FALSE leaves it alone. */
gboolean stead_decimal_scan (const char   **cursor,
                             SteadDecimal  *out) G_GNUC_WARN_UNUSED_RESULT;

/* As above, with fractions: "4.5", "1/2", "1 1/2"; no sign. */
gboolean stead_number_scan (const char **cursor,
                            double      *out_value,
                            GError     **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
