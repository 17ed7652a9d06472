/* stead-month-words.h - names of months in the window's language, whatever the locale. */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* @month: 0 to 11. Returns: (transfer none): "March" */
const char *stead_month_words (int month);

G_END_DECLS
