/* stead-mix.c - break-even of several products that sell in a fixed mix. */
#include "config.h"

#include "core/stead-mix.h"

#include <math.h>

double
stead_mix_price_cents (const SteadMix *mix)
{
  double sum = 0;

  g_return_val_if_fail (mix != NULL, NAN);
  for (gsize i = 0; i < mix->n; i++)
    sum += mix->price_cents[i] * mix->units[i];
  return sum;
}

double
stead_mix_variable_cents (const SteadMix *mix)
{
  double sum = 0;

  g_return_val_if_fail (mix != NULL, NAN);
  for (gsize i = 0; mix->variable_cents != NULL && i < mix->n; i++)
    sum += mix->variable_cents[i] * mix->units[i];
  return sum;
}

double
stead_mix_margin_cents (const SteadMix *mix)
{
  return stead_mix_price_cents (mix) - stead_mix_variable_cents (mix);
}

double
stead_mix_basket_units (const SteadMix *mix)
{
  double sum = 0;

  g_return_val_if_fail (mix != NULL, NAN);
  for (gsize i = 0; i < mix->n; i++)
    sum += mix->units[i];
  return sum;
}

double
stead_mix_even_baskets (const SteadMix *mix,
                        double          target_cents)
{
  double margin = stead_mix_margin_cents (mix);

  return margin > 0 ? (mix->fixed_cents + target_cents) / margin : NAN;
}

double
stead_ratio_even_cents (double margin_frac,
                        double fixed_cents,
                        double target_cents)
{
  return margin_frac > 0 ? (fixed_cents + target_cents) / margin_frac : NAN;
}
