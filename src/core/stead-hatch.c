/* stead-hatch.c - days of incubation and the heat of the brooder. */
#include "config.h"

#include "core/stead-core-error.h"
#include "core/stead-hatch.h"

#include <glib/gi18n-lib.h>

#define LAST_BROODER_WEEK 8

static const struct { double least, most; } days[STEAD_N_HATCH_SPECIES] = {
  [STEAD_HATCH_CHICKEN] = { 21, 21 },
  [STEAD_HATCH_DUCK] = { 28, 28 },
  [STEAD_HATCH_MUSCOVY_DUCK] = { 33, 35 },
  [STEAD_HATCH_TURKEY] = { 28, 28 },
  [STEAD_HATCH_GOOSE] = { 29, 31 },
  [STEAD_HATCH_GUINEA] = { 26, 28 },
  [STEAD_HATCH_PEAFOWL] = { 28, 28 },
  [STEAD_HATCH_RINGNECK_PHEASANT] = { 23, 24 },
  [STEAD_HATCH_JAPANESE_QUAIL] = { 17, 18 },
};

void
stead_hatch_days (SteadHatchSpecies  species,
                  double            *out_least,
                  double            *out_most)
{
  g_return_if_fail ((gsize) species < G_N_ELEMENTS (days));

  if (out_least != NULL)
    *out_least = days[species].least;
  if (out_most != NULL)
    *out_most = days[species].most;
}

double
stead_hatch_set_before_chicken_days (SteadHatchSpecies species)
{
  g_return_val_if_fail ((gsize) species < G_N_ELEMENTS (days), 0);
  return (days[species].least + days[species].most) / 2 - days[STEAD_HATCH_CHICKEN].least;
}

gboolean
stead_brooder_temperature_c (int      week,
                             double  *out_temp_c,
                             GError **error)
{
  g_return_val_if_fail (out_temp_c != NULL, FALSE);

  if (week < 1 || week > LAST_BROODER_WEEK)
    {
      g_set_error (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_RANGE,
                   _("The brooder's heat is known for weeks 1 to %d. Older birds have their feathers."),
                   LAST_BROODER_WEEK);
      return FALSE;
    }
  *out_temp_c = (95 - 5 * (week - 1) - 32) / 1.8;
  return TRUE;
}
