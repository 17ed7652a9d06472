/* stead-alive.c - how many animals will be alive, by the deaths so far. */
#include "config.h"

#include "core/stead-alive-private.h"

#include <gsl/gsl_randist.h>
#include <math.h>

#define SEED 20231

static double
shape_of (const SteadAlive *flock)
{
  return flock->usual_deaths + flock->deaths;
}

static double
exposure_of (const SteadAlive *flock)
{
  return flock->usual_deaths / flock->usual_rate + flock->exposure;
}

static gboolean
is_flock (const SteadAlive *flock)
{
  return flock != NULL && flock->alive >= 0 && flock->alive <= 1e6 && flock->deaths >= 0
         && flock->exposure >= 0 && flock->usual_rate > 0 && flock->usual_deaths > 0;
}

double
stead_alive_rate (const SteadAlive *flock)
{
  g_return_val_if_fail (is_flock (flock), NAN);
  return shape_of (flock) / exposure_of (flock);
}

double
stead_alive_after (const SteadAlive *flock,
                   double            time)
{
  double exposure;

  g_return_val_if_fail (is_flock (flock), NAN);
  g_return_val_if_fail (time >= 0, NAN);
  exposure = exposure_of (flock);
  return flock->alive * pow (exposure / (exposure + time), shape_of (flock));
}

gsl_rng *
stead_alive_rng_new (void)
{
  gsl_rng *rng = gsl_rng_alloc (gsl_rng_taus2);

  gsl_rng_set (rng, SEED);
  return rng;
}

double
stead_alive_draw_rate (const SteadAlive *flock,
                       gsl_rng          *rng)
{
  return gsl_ran_gamma (rng, shape_of (flock), 1 / exposure_of (flock));
}

unsigned int
stead_alive_draw_left (unsigned int  alive,
                       double        rate,
                       double        time,
                       gsl_rng      *rng)
{
  return alive - gsl_ran_binomial (rng, -expm1 (-rate * time), alive);
}

void
stead_alive_band (const SteadAlive *flock,
                  double            time,
                  double            level,
                  SteadBand        *out)
{
  g_autoptr(SteadRng) rng = NULL;
  double draws[STEAD_BAND_DRAWS];

  g_return_if_fail (is_flock (flock));
  g_return_if_fail (time >= 0);
  g_return_if_fail (level > 0 && level < 1);
  g_return_if_fail (out != NULL);

  rng = stead_alive_rng_new ();
  for (gsize i = 0; i < STEAD_BAND_DRAWS; i++)
    draws[i] = stead_alive_draw_left ((unsigned int) lround (flock->alive),
                                      stead_alive_draw_rate (flock, rng), time, rng);
  stead_band_of_draws (draws, STEAD_BAND_DRAWS, level, out);
  out->likely = CLAMP (stead_alive_after (flock, time), out->low, out->high);
}
