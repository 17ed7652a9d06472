/* stead-water-dose.c - what to add to the water, or how much of it to change. */
#include "config.h"

#include "core/stead-core-error.h"
#include "core/stead-round.h"
#include "core/stead-water-dose.h"
#include "core/stead-water.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#define CHLORIDE_OF_SALT (35.45 / 58.44)

/* g of CaCO3 that carries one equivalent. */
#define CACO3_EQ_G (100.087 / 2)

static const struct
{
  const char      *id;
  const char      *name;
  double           mol_g;
  double           equivalents;
  double           feed_g;       /* for a kilogram of feed in planted water; NAN: not in the table */
  SteadBaseTraits  traits;
} bases[STEAD_N_BASES] = {
  [STEAD_BASE_NAHCO3] =
    { "nahco3", NC_("base", "sodium bicarbonate (baking soda)"), 84.007, 1, NAN, STEAD_BASE_SODIUM },
  [STEAD_BASE_KHCO3] =
    { "khco3", NC_("base", "potassium bicarbonate"), 100.115, 1, NAN, STEAD_BASE_POTASSIUM },
  [STEAD_BASE_CACO3] =
    { "caco3", NC_("base", "calcium carbonate (limestone flour)"), 100.087, 2, 70,
      STEAD_BASE_CALCIUM | STEAD_BASE_SLOW },
  [STEAD_BASE_CA_OH_2] =
    { "ca_oh_2", NC_("base", "calcium hydroxide (hydrated lime)"), 74.093, 2, 55,
      STEAD_BASE_CALCIUM | STEAD_BASE_CAUSTIC },
  [STEAD_BASE_CAO] =
    { "cao", NC_("base", "calcium oxide (quicklime)"), 56.077, 2, 40,
      STEAD_BASE_CALCIUM | STEAD_BASE_CAUSTIC },
  [STEAD_BASE_KOH] =
    { "koh", NC_("base", "potassium hydroxide"), 56.106, 1, 80,
      STEAD_BASE_POTASSIUM | STEAD_BASE_CAUSTIC },
  [STEAD_BASE_DOLOMITE] =
    { "dolomite", NC_("base", "dolomite"), 184.401, 4, 70,
      STEAD_BASE_CALCIUM | STEAD_BASE_MAGNESIUM | STEAD_BASE_SLOW },
  [STEAD_BASE_MGCO3] =
    { "mgco3", NC_("base", "magnesium carbonate"), 84.314, 2, 60,
      STEAD_BASE_MAGNESIUM | STEAD_BASE_SLOW },
  [STEAD_BASE_MG_OH_2] =
    { "mg_oh_2", NC_("base", "magnesium hydroxide"), 58.320, 2, 45,
      STEAD_BASE_MAGNESIUM | STEAD_BASE_SLOW },
};

static gboolean
is_base (SteadBase base)
{
  return (gsize) base < G_N_ELEMENTS (bases);
}

const char *
stead_base_id (SteadBase base)
{
  g_return_val_if_fail (is_base (base), "");
  return bases[base].id;
}

gboolean
stead_base_from_id (const char *id,
                    SteadBase  *out_base)
{
  g_return_val_if_fail (out_base != NULL, FALSE);

  for (gsize i = 0; id != NULL && i < G_N_ELEMENTS (bases); i++)
    if (g_str_equal (bases[i].id, id))
      {
        *out_base = (SteadBase) i;
        return TRUE;
      }
  return FALSE;
}

const char *
stead_base_name (SteadBase base)
{
  g_return_val_if_fail (is_base (base), "");
  return g_dpgettext2 (GETTEXT_PACKAGE, "base", bases[base].name);
}

SteadBaseTraits
stead_base_traits (SteadBase base)
{
  g_return_val_if_fail (is_base (base), 0);
  return bases[base].traits;
}

double
stead_base_g_per_caco3 (SteadBase base)
{
  g_return_val_if_fail (is_base (base), NAN);
  return bases[base].mol_g / bases[base].equivalents / CACO3_EQ_G;
}

double
stead_base_dose_g (SteadBase base,
                   double    volume_l,
                   double    raise_mgl)
{
  if (!(volume_l >= 0 && raise_mgl >= 0))
    return NAN;
  return volume_l * raise_mgl / 1000 * stead_base_g_per_caco3 (base);
}

double
stead_base_raise_mgl (SteadBase base,
                      double    volume_l,
                      double    dose_g)
{
  if (!(volume_l > 0 && dose_g >= 0))
    return NAN;
  return 1000 * dose_g / (volume_l * stead_base_g_per_caco3 (base));
}

double
stead_base_for_feed_g (SteadBase base,
                       double    feed_kg,
                       gboolean  planted)
{
  g_return_val_if_fail (is_base (base), NAN);
  if (!(feed_kg >= 0))
    return NAN;
  return (planted ? 1 : 2) * bases[base].feed_g * feed_kg;
}

double
stead_water_chloride_need_mgl (double nitrite_mgl,
                               double ratio)
{
  return nitrite_mgl >= 0 && ratio >= 0 ? nitrite_mgl * ratio : NAN;
}

double
stead_water_salt_mgl (double chloride_mgl)
{
  return chloride_mgl / CHLORIDE_OF_SALT;
}

double
stead_water_salt_dose_g (double nitrite_mgl,
                         double ratio,
                         double chloride_mgl,
                         double volume_l)
{
  double missing_mgl = stead_water_chloride_need_mgl (nitrite_mgl, ratio) - chloride_mgl;

  if (!(chloride_mgl >= 0 && volume_l >= 0) || isnan (missing_mgl))
    return NAN;
  return stead_water_salt_mgl (MAX (missing_mgl, 0)) * volume_l / 1000;
}

gboolean
stead_water_change_frac (double    now,
                         double    target,
                         double    source,
                         double   *out_frac,
                         GError  **error)
{
  double frac;

  g_return_val_if_fail (out_frac != NULL, FALSE);

  if (now == target)
    {
      *out_frac = 0;
      return TRUE;
    }
  frac = (now - target) / (now - source);
  if (!(frac >= 0 && frac <= 1))
    {
      g_set_error_literal (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_NONE,
                           _("Changing water cannot lead there: the water that you add does not "
                             "lie beyond the target. Look for other water, or treat the cause."));
      return FALSE;
    }
  *out_frac = frac;
  return TRUE;
}

double
stead_water_after_change (double now,
                          double source,
                          double frac)
{
  return now + frac * (source - now);
}

double
stead_water_changes (double total_frac,
                     double each_frac)
{
  if (!(total_frac >= 0 && total_frac < 1 && each_frac > 0 && each_frac < 1))
    return NAN;
  return stead_round_up (log1p (-total_frac) / log1p (-each_frac));
}

gboolean
stead_water_ph_move (double        now,
                     double        target,
                     double        tan_mgl,
                     double        temp_c,
                     SteadPhMove  *out_move,
                     GError      **error)
{
  SteadPhMove move;

  g_return_val_if_fail (out_move != NULL, FALSE);

  move.next_ph = now + CLAMP (target - now, -STEAD_WATER_PH_STEP, STEAD_WATER_PH_STEP);
  if (!stead_water_nh3n_mgl (tan_mgl, temp_c, now, &move.nh3n_mgl, error)
      || !stead_water_nh3n_mgl (tan_mgl, temp_c, target, &move.nh3n_end_mgl, error)
      || !stead_water_nh3n_mgl (tan_mgl, temp_c, move.next_ph, &move.nh3n_next_mgl, error))
    return FALSE;
  move.steps = (int) stead_round_up (fabs (target - now) / STEAD_WATER_PH_STEP);
  *out_move = move;
  return TRUE;
}

double
stead_water_ph_target (gboolean  planted,
                       double   *out_min,
                       double   *out_max)
{
  if (out_min != NULL)
    *out_min = planted ? 6.4 : 7.0;
  if (out_max != NULL)
    *out_max = planted ? 7.4 : 8.0;
  return planted ? 7.0 : 7.5;
}
