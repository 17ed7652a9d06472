/* stead-tank-why.c - what a tank holds and how fast it is changed, worked out. */
#include "config.h"

#include "answer/stead-tank-text.h"
#include "answer/stead-words-private.h"
#include "core/stead-tank.h"

#include <glib/gi18n-lib.h>
#include <math.h>

static char *
length (double          base_m,
        SteadUnitSystem units)
{
  return stead_quantity_format (base_m, stead_unit_default (STEAD_DIMENSION_LENGTH, units));
}

/* What one cubic foot or one cubic meter holds: "7.48 gal", "1,000 L". */
static char *
cube (SteadUnitSystem units)
{
  return stead_quantity_format (units == STEAD_UNITS_US ? STEAD_TANK_CUFT_L : 1000,
                                stead_unit_default (STEAD_DIMENSION_VOLUME, units));
}

static char *
worked_of (const SteadTank *tank,
           SteadUnitSystem  units)
{
  g_autofree char *depth = length (tank->depth_m, units), *one = cube (units);
  g_autofree char *holds = stead_tank_text_volume (stead_tank_volume_l (tank), units);
  g_autofree char *across = NULL, *other = NULL;

  switch (tank->shape)
    {
    case STEAD_TANK_BOX:
      across = length (tank->length_m, units);
      other = length (tank->width_m, units);
      return g_strdup_printf ("%s × %s × %s × %s = %s", across, other, depth, one, holds);
    case STEAD_TANK_ROUND:
      across = length (tank->diameter_m, units);
      return g_strdup_printf ("π × (%s ÷ 2)² × %s × %s = %s", across, depth, one, holds);
    case STEAD_TANK_CONE:
      across = length (tank->diameter_m, units);
      other = length (tank->cone_m, units);
      return g_strdup_printf ("π × (%s ÷ 2)² × (%s + %s ÷ 3) × %s = %s", across, depth, other, one, holds);
    case STEAD_TANK_OTHER:
    default:
      return NULL;
    }
}

static const char *
formula_of (SteadTankShape shape)
{
  switch (shape)
    {
    case STEAD_TANK_BOX:
      return _("Length × width × depth of the water × what one cube holds.");
    case STEAD_TANK_CONE:
      return _("π × the square of half the diameter × (depth along the wall + depth of the cone ÷ 3) × what one cube holds.");
    case STEAD_TANK_ROUND:
    case STEAD_TANK_OTHER:
    default:
      return _("π × the square of half the diameter × depth of the water × what one cube holds.");
    }
}

static SteadWhy *
turnover_why (const SteadTank *tank,
              SteadUnitSystem  units)
{
  double volume_l = stead_tank_volume_l (tank);
  g_autofree char *minutes = stead_number_format (stead_tank_turnover_min (volume_l, tank->flow_l_min), 0);
  g_autofree char *volume = stead_tank_text_volume (volume_l, units);
  g_autofree char *flow = stead_quantity_format (tank->flow_l_min, stead_unit_default (STEAD_DIMENSION_VOLUME, units));

  return stead_why_new (g_strdup (_("How fast the water is changed")), _("Water in the tank ÷ flow through it in a minute."),
                        /* Translators: two volumes, a number of minutes. */
                        g_strdup_printf (_("%1$s ÷ %2$s = %3$s min"), volume, flow, minutes),
                        _("That once an hour is usual: University of the Virgin Islands, aquaponic system."));
}

GPtrArray *
stead_tank_text_whys (const SteadTank *tank,
                      SteadUnitSystem  units)
{
  GPtrArray *whys = stead_whys_new ();
  gboolean is_known;

  g_return_val_if_fail (tank != NULL, whys);

  is_known = stead_tank_volume_l (tank) > 0;
  if (tank->shape != STEAD_TANK_OTHER)
    g_ptr_array_add (whys, stead_why_new (
      g_strdup (_("What the tank holds")), formula_of (tank->shape),
      is_known ? worked_of (tank, units) : stead_tank_text_holds (tank, units),
      _("Formulae to calculate tank volumes: a veterinary manual. The depth is that of the water, not of the wall.")));
  if (is_known && tank->flow_l_min > 0)
    g_ptr_array_add (whys, turnover_why (tank, units));
  return whys;
}
