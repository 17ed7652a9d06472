/* stead-joint-cost.c - one cost shared by products that come together. */
#include "config.h"

#include "core/stead-joint-cost.h"

#include <math.h>

#include "core/stead-money.h"

double
stead_joint_basis (const SteadJointProduct *product,
                   SteadJointMethod         method)
{
  g_return_val_if_fail (product != NULL, NAN);

  switch (method)
    {
    case STEAD_JOINT_PHYSICAL:
      return product->quantity;
    case STEAD_JOINT_SPLIT_OFF_VALUE:
      return product->split_cents;
    case STEAD_JOINT_NRV:
      return product->final_cents - product->further_cents;
    case STEAD_JOINT_CONSTANT_MARGIN:
    default:
      return product->final_cents;
    }
}

double
stead_joint_overall_margin (const SteadJointProduct *products,
                            gsize                    n,
                            double                   joint_cents)
{
  double value = 0;
  double further = 0;

  g_return_val_if_fail (products != NULL || n == 0, NAN);

  for (gsize i = 0; i < n; i++)
    {
      value += products[i].final_cents;
      further += products[i].further_cents;
    }
  return value > 0 ? 1 - (joint_cents + further) / value : NAN;
}

void
stead_joint_allocate (const SteadJointProduct *products,
                      gsize                    n,
                      SteadJointMethod         method,
                      double                   joint_cents,
                      double                  *out_cents)
{
  double margin = stead_joint_overall_margin (products, n, joint_cents);
  double basis = 0;

  g_return_if_fail ((products != NULL && out_cents != NULL) || n == 0);

  for (gsize i = 0; i < n; i++)
    basis += stead_joint_basis (&products[i], method);
  for (gsize i = 0; i < n; i++)
    if (method == STEAD_JOINT_CONSTANT_MARGIN)
      out_cents[i] = products[i].final_cents * (1 - margin) - products[i].further_cents;
    else
      out_cents[i] = basis > 0 ? joint_cents * stead_joint_basis (&products[i], method) / basis
                               : NAN;
}

/* Whole cents below each share; what is missing to the total goes by what was cut off. */
static void
split_shares (const double *shares,
              gsize         n,
              gint64        total,
              gint64       *out)
{
  g_autofree double *rest = g_new (double, n);
  g_autofree gint64 *more = g_new0 (gint64, n);
  gint64 left = total;
  double sum = 0;

  for (gsize i = 0; i < n; i++)
    {
      out[i] = (gint64) floor (shares[i] + 1e-6);
      rest[i] = MAX (shares[i] - (double) out[i], 0);
      sum += rest[i];
      left -= out[i];
    }
  if (left == 0)
    return;
  if (sum <= 0)
    rest[0] = 1;
  stead_money_split (left, rest, n, more);
  for (gsize i = 0; i < n; i++)
    out[i] += more[i];
}

gboolean
stead_joint_split (const SteadJointProduct *products,
                   gsize                    n,
                   SteadJointMethod         method,
                   gint64                   joint_cents,
                   gint64                  *out_cents)
{
  g_autofree double *weights = NULL;
  double sum = 0;

  g_return_val_if_fail (products != NULL && out_cents != NULL && n > 0 && joint_cents >= 0, FALSE);
  weights = g_new (double, n);
  for (gsize i = 0; i < n; i++)
    {
      weights[i] = MAX (stead_joint_basis (&products[i], method), 0);
      sum += weights[i];
    }
  if (!(sum > 0 && isfinite (sum)))
    return FALSE;
  if (method != STEAD_JOINT_CONSTANT_MARGIN)
    {
      stead_money_split (joint_cents, weights, n, out_cents);
      return TRUE;
    }
  stead_joint_allocate (products, n, method, (double) joint_cents, weights);
  split_shares (weights, n, joint_cents, out_cents);
  return TRUE;
}

double
stead_joint_further_cents (const SteadJointProduct *product)
{
  g_return_val_if_fail (product != NULL, NAN);

  return product->final_cents - product->split_cents - product->further_cents;
}
