/* stead-joint-cost.c - one cost shared by products that come together. */
#include "config.h"

#include "core/stead-joint-cost.h"

#include <math.h>

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
