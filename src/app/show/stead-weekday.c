/* stead-weekday.c - the names of the days of the week. */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "app/show/stead-weekday.h"

const char *
stead_weekday_words (int weekday)
{
  static const char * const names[] = {
    N_("Monday"), N_("Tuesday"), N_("Wednesday"), N_("Thursday"), N_("Friday"), N_("Saturday"), N_("Sunday"),
  };

  g_return_val_if_fail (weekday >= 1 && weekday <= 7, "");
  return _(names[weekday - 1]);
}

const char *
stead_weekday_short (int weekday)
{
  static const char * const names[] = {
    NC_("day of the week, short", "Mon"), NC_("day of the week, short", "Tue"), NC_("day of the week, short", "Wed"),
    NC_("day of the week, short", "Thu"), NC_("day of the week, short", "Fri"), NC_("day of the week, short", "Sat"),
    NC_("day of the week, short", "Sun"),
  };

  g_return_val_if_fail (weekday >= 1 && weekday <= 7, "");
  return g_dpgettext2 (GETTEXT_PACKAGE, "day of the week, short", names[weekday - 1]);
}
