/* stead-alive-private.h - one world of a flock's deaths, for bands that are drawn. */
#pragma once

#include "core/stead-alive.h"

#include <gsl/gsl_rng.h>

G_BEGIN_DECLS

/* A rate that the deaths so far allow. */
double stead_alive_draw_rate (const SteadAlive *flock,
                              gsl_rng          *rng);

/* Of so many alive, who are after so much more time. */
unsigned int stead_alive_draw_left (unsigned int  alive,
                                    double        rate,
                                    double        time,
                                    gsl_rng      *rng);

/* Random numbers from the fixed seed; free with gsl_rng_free(). */
gsl_rng *stead_alive_rng_new (void);

typedef gsl_rng SteadRng;

G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadRng, gsl_rng_free)

G_END_DECLS
