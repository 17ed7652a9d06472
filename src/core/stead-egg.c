/* stead-egg.c - weight classes of eggs. */
#include "config.h"

#include "core/stead-core-error.h"
#include "core/stead-flock.h"
#include "core/stead-round.h"

#include <glib/gi18n-lib.h>

/* Least net weight of a dozen, ounces avoirdupois, lightest class first. */
static const double dozen_oz_of_class[] = {
  [STEAD_EGG_CLASS_PEEWEE] = 15,
  [STEAD_EGG_CLASS_SMALL] = 18,
  [STEAD_EGG_CLASS_MEDIUM] = 21,
  [STEAD_EGG_CLASS_LARGE] = 24,
  [STEAD_EGG_CLASS_EXTRA_LARGE] = 27,
  [STEAD_EGG_CLASS_JUMBO] = 30,
};

gboolean
stead_egg_class_of_dozen (double          dozen_oz,
                          SteadEggClass  *out_class,
                          GError        **error)
{
  g_return_val_if_fail (out_class != NULL, FALSE);

  /* NaN is below every class. */
  for (int i = STEAD_EGG_CLASS_JUMBO; i >= STEAD_EGG_CLASS_PEEWEE; i--)
    if (dozen_oz >= dozen_oz_of_class[i] - STEAD_ROUND_NOISE)
      {
        *out_class = i;
        return TRUE;
      }
  g_set_error (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_RANGE,
               _("A dozen must weigh at least %d ounces to have a weight class. "
                 "Weigh twelve eggs without the carton."),
               (int) dozen_oz_of_class[STEAD_EGG_CLASS_PEEWEE]);
  return FALSE;
}
