/* stead-light.c - the light that a plant gets in a day. */
#include "config.h"

#include "core/stead-light.h"

#include <math.h>

#define SECONDS_PER_HOUR 3600
#define UMOL_PER_MOL 1e6

double
stead_light_daily_mol (double ppfd_umol,
                       double hours)
{
  if (!(ppfd_umol >= 0 && hours >= 0 && hours <= 24))
    return NAN;
  return ppfd_umol * SECONDS_PER_HOUR * hours / UMOL_PER_MOL;
}

double
stead_light_ppfd_umol (double daily_mol,
                       double hours)
{
  if (!(daily_mol >= 0 && hours > 0 && hours <= 24))
    return NAN;
  return daily_mol * UMOL_PER_MOL / (SECONDS_PER_HOUR * hours);
}

double
stead_light_daily_sum_mol (const double *ppfd_umol,
                           gsize         n_readings,
                           double        step_hours)
{
  double sum = 0;

  g_return_val_if_fail (ppfd_umol != NULL || n_readings == 0, NAN);

  if (!(step_hours > 0 && step_hours * (double) n_readings <= 24 + 1e-9))
    return NAN;
  for (gsize i = 0; i < n_readings; i++)
    sum += stead_light_daily_mol (ppfd_umol[i], step_hours);
  return sum;
}

double
stead_light_inside_mol (double outside_mol,
                        double cover_frac,
                        double shade_frac)
{
  if (!(outside_mol >= 0 && cover_frac >= 0 && cover_frac <= 1 && shade_frac >= 0 && shade_frac <= 1))
    return NAN;
  return outside_mol * cover_frac * (1 - shade_frac);
}
