/* stead-weekday.h - the names of the days of the week. */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* @weekday: 1 for Monday to 7 */
const char *stead_weekday_words (int weekday);

G_END_DECLS
