/* stead-assumption.c - what becomes of a sale day when its assumptions change. */
#include "config.h"

#include "core/stead-assumption.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

/* A swing below half a cent is none. */
#define LEAST_SWING_CENTS 0.5
#define MOST_UNSOLD 0.9

double
stead_assume_unit_cents (const SteadUnitParts *parts,
                         const double          values[STEAD_N_ASSUMPTIONS])
{
  double yield, kept, alive, warmth;

  g_return_val_if_fail (parts != NULL && values != NULL, NAN);
  yield = values[STEAD_ASSUME_YIELD];
  kept = 1 - values[STEAD_ASSUME_UNSOLD];
  alive = 1 - values[STEAD_ASSUME_DEATHS];
  warmth = values[STEAD_ASSUME_WARMTH];
  if (!(yield > 0) || !(kept > 0) || !(alive > 0) || !(warmth > 0))
    return NAN;
  return ((parts->input_cents * values[STEAD_ASSUME_INPUT] + parts->shared_cents / warmth / alive) / yield
          + parts->good_cents / alive)
         * (1 - parts->unsold_frac) / kept
         + parts->pack_cents * values[STEAD_ASSUME_PACKAGING] + parts->rounding_cents
         + parts->work_cents * values[STEAD_ASSUME_WORK];
}

void
stead_assume_cvp (const SteadUnitParts *parts,
                  const SteadCvp       *base,
                  const double          values[STEAD_N_ASSUMPTIONS],
                  SteadCvp             *out)
{
  g_return_if_fail (base != NULL && out != NULL);

  *out = *base;
  out->price_cents = values[STEAD_ASSUME_PRICE];
  out->planned_units = values[STEAD_ASSUME_PLANNED];
  out->fixed_cents = values[STEAD_ASSUME_FIXED];
  out->variable_cents = MAX (0, stead_assume_unit_cents (parts, values));
}

static double
profit_with (const SteadUnitParts *parts,
             const SteadCvp       *base,
             const double          values[STEAD_N_ASSUMPTIONS],
             SteadAssumption       which,
             double                value)
{
  double moved[STEAD_N_ASSUMPTIONS];
  SteadCvp cvp;

  memcpy (moved, values, sizeof moved);
  moved[which] = value;
  stead_assume_cvp (parts, base, moved, &cvp);
  return stead_cvp_profit_cents (&cvp, cvp.planned_units);
}

static int
compare_swings (const void *a,
                const void *b)
{
  const SteadSwing *x = a, *y = b;
  double left = fabs (x->high_cents - x->low_cents), right = fabs (y->high_cents - y->low_cents);

  if (left != right)
    return left < right ? 1 : -1;
  return (int) x->assumption - (int) y->assumption;
}

int
stead_assume_tornado (const SteadUnitParts *parts,
                      const SteadCvp       *base,
                      const double          values[STEAD_N_ASSUMPTIONS],
                      double                frac,
                      SteadSwing            out[STEAD_N_ASSUMPTIONS])
{
  int n = 0;

  g_return_val_if_fail (parts != NULL && base != NULL && values != NULL && out != NULL, 0);
  g_return_val_if_fail (frac > 0 && frac < 1, 0);
  for (int i = 0; i < STEAD_N_ASSUMPTIONS; i++)
    {
      SteadSwing swing = { .assumption = (SteadAssumption) i, .low = values[i] * (1 - frac),
                           .high = values[i] * (1 + frac) };

      if (i == STEAD_ASSUME_UNSOLD)
        swing.high = MIN (swing.high, MOST_UNSOLD);
      swing.low_cents = profit_with (parts, base, values, swing.assumption, swing.low);
      swing.high_cents = profit_with (parts, base, values, swing.assumption, swing.high);
      if (fabs (swing.high_cents - swing.low_cents) >= LEAST_SWING_CENTS)
        out[n++] = swing;
    }
  qsort (out, (size_t) n, sizeof *out, compare_swings);
  return n;
}
