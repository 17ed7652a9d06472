/* stead-draw-private.h - streams of random numbers that hang on what they are for.
 *
 * A stream belongs to a seed, a block of draws and a thing that is drawn.  So blocks can
 * be drawn in any order and on any thread with the same result, and one thing more or
 * less leaves all others as they were: what a change does is not lost in the noise.
 */
#pragma once

#include <glib.h>
#include <gsl/gsl_rng.h>

G_BEGIN_DECLS

/* Draws in a block. */
#define DRAW_BLOCK 500

static inline guint64
draw_mix (guint64 x)
{
  /* The finisher of splitmix64 (Steele, Lea and Flood 2014): every bit of x moves
   * every bit of the result. */
  x += G_GUINT64_CONSTANT (0x9e3779b97f4a7c15);
  x = (x ^ (x >> 30)) * G_GUINT64_CONSTANT (0xbf58476d1ce4e5b9);
  x = (x ^ (x >> 27)) * G_GUINT64_CONSTANT (0x94d049bb133111eb);
  return x ^ (x >> 31);
}

static inline void
draw_stream (gsl_rng *rng,
             guint32  seed,
             guint32  block,
             guint32  thing)
{
  guint64 mixed = draw_mix (draw_mix (((guint64) seed << 32) | block) ^ thing);

  /* A seed of 0 would be the generator's own default. */
  gsl_rng_set (rng, (unsigned long) (mixed & 0xffffffff) | 1);
}

G_END_DECLS
