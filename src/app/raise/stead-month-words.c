/* stead-month-words.c - names of months in the window's language, whatever the locale. */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "app/raise/stead-month-words.h"

const char *
stead_month_words (int month)
{
  const char *names[] = {
    _("January"), _("February"), _("March"), _("April"), C_("month", "May"), _("June"), _("July"), _("August"),
    _("September"), _("October"), _("November"), _("December"),
  };

  g_return_val_if_fail (month >= 0 && (gsize) month < G_N_ELEMENTS (names), "");
  return names[month];
}
