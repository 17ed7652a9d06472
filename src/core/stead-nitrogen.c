/* stead-nitrogen.c - where the nitrogen of the feed goes. */
#include "config.h"

#include "core/stead-core-error.h"
#include "core/stead-nitrogen.h"
#include "core/stead-us-units.h"
#include "core/stead-water.h"

#include <glib/gi18n-lib.h>
#include <math.h>

double
stead_nitrogen_tan_g (double feed_g,
                      double protein_frac)
{
  if (!(feed_g >= 0 && protein_frac >= 0 && protein_frac <= 1))
    return NAN;
  return feed_g * protein_frac * STEAD_NITROGEN_TAN_PER_PROTEIN;
}

double
stead_nitrogen_tan_of_fish_g (double fish_kg)
{
  return fish_kg * 10 / (100 * STEAD_POUND_KG);
}

double
stead_biofilter_area_m2 (double tan_g_day,
                         double removal_g_m2_day)
{
  return removal_g_m2_day > 0 ? tan_g_day / removal_g_m2_day : NAN;
}

double
stead_biofilter_removal_g_m3 (double media_m2_m3,
                              double removal_g_m2_day)
{
  return media_m2_m3 * removal_g_m2_day;
}

double
stead_biofilter_volume_l (double area_m2,
                          double media_m2_m3)
{
  return media_m2_m3 > 0 ? 1000 * area_m2 / media_m2_m3 : NAN;
}

double
stead_biofilter_flow_l_day (double tan_g_day,
                            double limit_mgl,
                            double removed_frac)
{
  if (!(limit_mgl > 0 && removed_frac > 0 && removed_frac <= 1))
    return NAN;
  return 1000 * tan_g_day / (limit_mgl * removed_frac);
}

double
stead_nitrogen_alkalinity_g (double tan_g)
{
  return 7.14 * tan_g;
}

double
stead_nitrogen_oxygen_g (double tan_g)
{
  return 4.57 * tan_g;
}

gboolean
stead_nitrogen_day (double             feed_g,
                    double             protein_frac,
                    double             gain_g,
                    double             plants_g,
                    SteadNitrogenDay  *out_day,
                    GError           **error)
{
  SteadNitrogenDay day;

  g_return_val_if_fail (out_day != NULL, FALSE);

  if (!(feed_g >= 0 && protein_frac >= 0 && protein_frac <= 1 && gain_g >= 0 && plants_g >= 0))
    {
      g_set_error_literal (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_RANGE,
                           _("Feed, gain and what plants take up cannot be below 0, and protein "
                             "is a part of the feed. Look at the bag again."));
      return FALSE;
    }
  day.feed_g = feed_g * protein_frac * STEAD_NITROGEN_PER_PROTEIN;
  day.fish_g = gain_g * STEAD_NITROGEN_PER_FISH;
  day.tan_g = stead_nitrogen_tan_g (feed_g, protein_frac);
  day.rest_g = day.feed_g - day.fish_g - day.tan_g;
  day.plants_g = MIN (plants_g, day.tan_g);
  day.nitrate_g = day.tan_g - day.plants_g;
  if (day.rest_g < 0)
    {
      g_set_error_literal (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_NONE,
                           _("So much gain cannot come from this feed. Check the weights, the "
                             "feed and its protein."));
      return FALSE;
    }
  *out_day = day;
  return TRUE;
}

double
stead_nitrogen_nitrate_rise_mgl (double nitrate_g,
                                 double volume_l)
{
  return volume_l > 0 ? stead_water_no3_from_n (1000 * nitrate_g / volume_l) : NAN;
}

double
stead_nitrogen_exchange_l_day (double nitrate_g_day,
                               double hold_mgl,
                               double source_mgl)
{
  double room_mgl = hold_mgl - source_mgl;

  return room_mgl > 0 ? stead_water_no3_from_n (1000 * nitrate_g_day) / room_mgl : NAN;
}
