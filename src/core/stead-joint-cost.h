/* stead-joint-cost.h - one cost shared by products that come together.
 *
 * An allocated joint cost never decides whether to process further or to drop a
 * product: compare what is added (stead-choice.h).
 * Sources: Saylor Managerial Accounting, appendix 7.10 (physical, sales value);
 * cost accounting solution sheet, problems 9.36 and 9.38 (constant margin,
 * by-product); a question with answer on three products (net value).
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

typedef enum
{
  STEAD_JOINT_PHYSICAL,         /* by weight or count */
  STEAD_JOINT_SPLIT_OFF_VALUE,  /* by sales value where they part */
  STEAD_JOINT_NRV,              /* by final value less own further cost */
  STEAD_JOINT_CONSTANT_MARGIN,  /* so that each has the margin of all together */
} SteadJointMethod;

#define STEAD_N_JOINT_METHODS (STEAD_JOINT_CONSTANT_MARGIN + 1)

/* One product, for all of it; 0 where a method does not look. */
typedef struct
{
  double quantity;        /* made, not sold */
  double split_cents;     /* value where the products part */
  double final_cents;     /* value after further work */
  double further_cents;   /* cost of that work */
} SteadJointProduct;

/**
 * stead_joint_basis:
 * Returns: what the method counts of @product; for the constant margin its final value
 */
double stead_joint_basis (const SteadJointProduct *product,
                          SteadJointMethod         method);

/**
 * stead_joint_overall_margin:
 * @joint_cents: joint cost, by-products taken off
 *
 * Returns: 1 - (joint + all further cost) / all final value; NAN without value
 */
double stead_joint_overall_margin (const SteadJointProduct *products,
                                   gsize                    n,
                                   double                   joint_cents);

/**
 * stead_joint_allocate:
 * @products: (array length=n): what came of the joint cost
 * @joint_cents: joint cost, by-products taken off
 * @out_cents: (out) (array length=n): unrounded shares; NAN without a basis
 *
 * For shares that are posted, round with stead_money_split().
 */
void stead_joint_allocate (const SteadJointProduct *products,
                           gsize                    n,
                           SteadJointMethod         method,
                           double                   joint_cents,
                           double                  *out_cents);

/**
 * stead_joint_split:
 * @products: (array length=n): what came of the joint cost
 * @n: 1 or more
 * @joint_cents: joint cost, whole cents, 0 or more
 * @out_cents: (out) (array length=n): the parts; their sum is @joint_cents
 *
 * The same in whole cents, by largest remainder.  A product whose further work costs more
 * than it brings bears nothing by its net value, as one that is given away.
 *
 * Returns: %FALSE, with @out_cents left alone, if the method has nothing to go by
 */
gboolean stead_joint_split (const SteadJointProduct *products,
                            gsize                    n,
                            SteadJointMethod         method,
                            gint64                   joint_cents,
                            gint64                  *out_cents) G_GNUC_WARN_UNUSED_RESULT;

/**
 * stead_joint_further_cents:
 *
 * What further work adds, whichever way the joint cost is shared.  Source: Saylor
 * Managerial Accounting, appendix 7.10; OpenStax Principles of Accounting vol. 2, section 10.5.
 *
 * Returns: final value - value where the products part - cost of the further work
 */
double stead_joint_further_cents (const SteadJointProduct *product);

G_END_DECLS
