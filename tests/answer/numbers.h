/* numbers.h - the numbers that stand in a text, for holding words against figures. */
#pragma once

#include <glib.h>

/* (transfer full): of double, in the order in which they stand; "$1,234.50" is one,
 * a minus sign in front counts.  For texts of the C locale. */
GArray *numbers_in (const char *text);

/* Every number of @text is one of @allowed (up to half a unit of its last digit). */
void    numbers_assert_among (const char   *text,
                              const double *allowed,
                              gsize         n_allowed);

/* The numbers of @text are exactly these, in any order. */
void    numbers_assert_are (const char   *text,
                            const double *expected,
                            gsize         n_expected);

#define NUMBERS_ARE(text, ...) G_STMT_START { \
    const double numbers_expected[] = { __VA_ARGS__ }; \
    numbers_assert_are (text, numbers_expected, G_N_ELEMENTS (numbers_expected)); \
  } G_STMT_END
