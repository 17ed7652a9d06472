/* stead-hen-house.c - room, feed and water for hens by rule of thumb. */
#include "config.h"

#include "core/stead-core-error.h"
#include "core/stead-hen-house.h"
#include "core/stead-round.h"
#include "core/stead-us-units.h"

#include <glib/gi18n-lib.h>

#define SQFT_M2 0.09290304

double
stead_hen_floor_least_m2 (gint64 hens)
{
  return 1.5 * SQFT_M2 * (double) hens;
}

double
stead_hen_floor_usual_m2 (gint64 hens)
{
  return 2 * SQFT_M2 * (double) hens;
}

gint64
stead_hen_nest_boxes (gint64 hens,
                      double hens_per_box)
{
  g_return_val_if_fail (hens_per_box > 0, 0);
  return (gint64) stead_round_up ((double) hens / hens_per_box);
}

gint64
stead_hen_troughs (gint64 birds,
                   double each_m,
                   double rim_m)
{
  g_return_val_if_fail (rim_m > 0, 0);
  return (gint64) stead_round_up ((double) birds * each_m / rim_m);
}

double
stead_hen_water_least_l (gint64 hens)
{
  return 5 * STEAD_GALLON_L / 100 * (double) hens;
}

double
stead_hen_feed_kg (gint64 hens)
{
  return 25 * STEAD_POUND_KG / 100 * (double) hens;
}

gboolean
stead_pullet_feed_kg (gint64   birds,
                      int      to_age_weeks,
                      double  *out_kg,
                      GError **error)
{
  g_return_val_if_fail (out_kg != NULL, FALSE);

  if (to_age_weeks != 6 && to_age_weeks != 16)
    {
      g_set_error_literal (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_RANGE,
                           _("Feed for pullets is known to the end of week 6 and of week 16. "
                             "Choose one of them."));
      return FALSE;
    }
  *out_kg = (to_age_weeks == 6 ? 2 : 2 + 11) * STEAD_POUND_KG * (double) birds;
  return TRUE;
}
