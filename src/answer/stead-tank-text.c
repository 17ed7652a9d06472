/* stead-tank-text.c - what a tank holds, in words. */
#include "config.h"

#include "answer/stead-tank-text.h"
#include "core/stead-round.h"
#include "core/stead-tank.h"

#include <glib/gi18n-lib.h>
#include <math.h>

char *
stead_tank_text_round (double           base,
                       const SteadUnit *unit)
{
  double value = stead_quantity_from_base (base, unit);
  int digits = value >= 100 ? 0 : value >= 10 ? 1 : 2;

  return stead_quantity_format (stead_quantity_to_base (stead_round_digits (value, digits), unit), unit);
}

char *
stead_tank_text_volume (double          volume_l,
                        SteadUnitSystem units)
{
  return stead_tank_text_round (volume_l, stead_unit_default (STEAD_DIMENSION_VOLUME, units));
}

char *
stead_tank_text_holds (const SteadTank *tank,
                       SteadUnitSystem  units)
{
  double volume_l;
  g_autofree char *volume = NULL;
  g_autofree char *minutes = NULL;

  g_return_val_if_fail (tank != NULL, NULL);

  volume_l = stead_tank_volume_l (tank);
  if (!(volume_l > 0))
    return g_strdup (tank->shape == STEAD_TANK_OTHER ? _("Enter how much water the tank holds.")
                                                     : _("Enter the measures, and what it holds is shown here."));
  volume = stead_tank_text_volume (volume_l, units);
  if (!(tank->flow_l_min > 0))
    /* Translators: a volume. */
    return g_strdup_printf (_("It holds <b>%s</b>."), volume);
  minutes = stead_number_format (stead_tank_turnover_min (volume_l, tank->flow_l_min), 0);
  /* Translators: a volume, and a number of minutes.  Once an hour is usual. */
  return g_strdup_printf (_("It holds <b>%s</b>; the flow changes that in %s minutes. Once an hour is usual."), volume,
                          minutes);
}
