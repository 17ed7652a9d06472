/* stead-weekday.h - the names of the days of the week. */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* @weekday: 1 for Monday to 7 */
const char *stead_weekday_words (int weekday);
/* The same over the column of a calendar, where there is little room. */
const char *stead_weekday_short (int weekday);

G_END_DECLS
