/* stead-egg-kitchen.c - eggs in a recipe: other sizes, and what is in the shell. */
#include "config.h"

#include "core/stead-core-error.h"
#include "core/stead-egg-kitchen.h"

#include <glib/gi18n-lib.h>

/* Iowa State University Extension, All about eggs: instead of 1 to 6 large eggs. */
static const int chart[STEAD_N_EGG_CLASSES][STEAD_EGG_CHART_MOST] = {
  [STEAD_EGG_CLASS_SMALL] = { 1, 3, 4, 5, 6, 8 },
  [STEAD_EGG_CLASS_MEDIUM] = { 1, 2, 3, 5, 6, 7 },
  [STEAD_EGG_CLASS_LARGE] = { 1, 2, 3, 4, 5, 6 },
  [STEAD_EGG_CLASS_EXTRA_LARGE] = { 1, 2, 3, 4, 4, 5 },
  [STEAD_EGG_CLASS_JUMBO] = { 1, 2, 2, 3, 4, 5 },
};

gboolean
stead_egg_substitute (int             large_eggs,
                      SteadEggClass   class,
                      int            *out_eggs,
                      GError        **error)
{
  g_return_val_if_fail ((gsize) class < STEAD_N_EGG_CLASSES, FALSE);
  g_return_val_if_fail (out_eggs != NULL, FALSE);

  if (large_eggs < 1 || large_eggs > STEAD_EGG_CHART_MOST || chart[class][0] == 0)
    {
      g_set_error (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_RANGE,
                   _("The chart covers recipes of 1 to %d large eggs, and eggs from small to jumbo. "
                     "Weigh the eggs without their shells instead."),
                   STEAD_EGG_CHART_MOST);
      return FALSE;
    }
  *out_eggs = chart[class][large_eggs - 1];
  return TRUE;
}

double
stead_egg_per_cups (double cups)
{
  return cups * STEAD_EGG_CUP_G / STEAD_EGG_LARGE_LIQUID_G;
}
