/* stead-unit-private.h - units as the parser of amounts needs them. */
#pragma once

#include "core/stead-quantity.h"

G_BEGIN_DECLS

/* As stead_unit_from_text(), but a spelling of several meanings ("oz", "c")
 * goes to @dimension; -1 for none in mind.  A unit of another dimension is
 * still found, so that the caller can say what is wrong with it. */
const SteadUnit *stead_unit_from_text_for (const char *text,
                                           int         dimension);

/* (transfer none): the translated symbol beside @value: two units are words, not signs, and
 * take a plural, "1 cup", "3 cups". */
const char *stead_unit_symbol_for (double           value,
                                   const SteadUnit *unit);

G_END_DECLS
