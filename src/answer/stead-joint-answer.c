/* stead-joint-answer.c - one cost shared by what comes of it, three ways side by side. */
#include "config.h"

#include "answer/stead-joint-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>

static const char * const field_words[STEAD_N_JOINT_FIELDS] = { "quantity", "weight", "split", "final", "further" };

/* Two figures that are told alike; prices and weights below a thousandth are told as nothing. */
#define SAME 1e-6

static SteadJointPart *
part_at (const SteadJointAnswer *self,
         guint                   i)
{
  return self->parts->pdata[i];
}

void
stead_joint_answer_free (SteadJointAnswer *self)
{
  if (self == NULL)
    return;
  stead_farm_free (self->farm);
  stead_batch_free (self->batch);
  g_clear_pointer (&self->parts, g_ptr_array_unref);
  g_free (self->sentence);
  g_free (self->advice);
  g_free (self->caution);
  g_free (self);
}

const char *
stead_joint_method_id (SteadJointMethod method)
{
  static const char * const ids[STEAD_N_JOINT_METHODS] = { "physical", "split_off", "net_value", "same_margin" };

  g_return_val_if_fail ((int) method >= 0 && method < STEAD_N_JOINT_METHODS, "");
  return ids[method];
}

/* --- settling -------------------------------------------------------------------------- */

/* Sold as it comes, its final value is the value where the products part. */
SteadJointProduct
stead_joint_product_of (const SteadJointPart *part)
{
  double quantity = part->carries ? part->value[STEAD_JOINT_QUANTITY] : 0;
  gboolean works = part->value[STEAD_JOINT_FINAL] > 0;

  return (SteadJointProduct) {
    .quantity = quantity * part->value[STEAD_JOINT_WEIGHT],
    .split_cents = quantity * part->value[STEAD_JOINT_SPLIT],
    .final_cents = quantity * part->value[works ? STEAD_JOINT_FINAL : STEAD_JOINT_SPLIT],
    .further_cents = works ? quantity * part->value[STEAD_JOINT_FURTHER] : 0,
  };
}

/* By weight every part that there is must have one. */
static gboolean
is_weighed (const SteadJointAnswer *self)
{
  for (guint i = 0; i < self->parts->len; i++)
    if (part_at (self, i)->carries && part_at (self, i)->value[STEAD_JOINT_QUANTITY] > 0
        && !(part_at (self, i)->value[STEAD_JOINT_WEIGHT] > 0))
      return FALSE;
  return TRUE;
}

static void
settle_method (SteadJointAnswer        *self,
               const SteadJointProduct *products,
               SteadJointMethod         method)
{
  g_autofree gint64 *shares = g_new0 (gint64, self->parts->len);

  self->usable[method] = (method != STEAD_JOINT_PHYSICAL || is_weighed (self))
                         && stead_joint_split (products, self->parts->len, method, self->joint_cents, shares);
  for (guint i = 0; i < self->parts->len; i++)
    part_at (self, i)->share_cents[method] = shares[i];
}

void
stead_joint_answer_settle (SteadJointAnswer *self)
{
  g_autofree SteadJointProduct *products = NULL;

  g_return_if_fail (self != NULL);
  products = g_new0 (SteadJointProduct, self->parts->len);
  for (guint i = 0; i < self->parts->len; i++)
    {
      SteadJointPart *part = part_at (self, i);

      products[i] = stead_joint_product_of (part);
      part->more_cents = !part->own && part->carries && part->value[STEAD_JOINT_FINAL] > 0
                         ? stead_joint_further_cents (&products[i]) : NAN;
    }
  for (SteadJointMethod method = 0; method < STEAD_N_JOINT_METHODS; method++)
    settle_method (self, products, method);
  stead_joint_put_in_words (self);
}

double
stead_joint_unit_cents (const SteadJointPart *part,
                        SteadJointMethod      method)
{
  SteadJointProduct product;

  g_return_val_if_fail (part != NULL && method < STEAD_N_JOINT_METHODS, NAN);
  if (!part->carries || !(part->value[STEAD_JOINT_QUANTITY] > 0))
    return NAN;
  product = stead_joint_product_of (part);
  return ((double) part->share_cents[method] + product.further_cents) / part->value[STEAD_JOINT_QUANTITY];
}

/* --- what is kept -------------------------------------------------------------------------- */

void
stead_joint_answer_reset (SteadJointAnswer *self)
{
  g_return_if_fail (self != NULL);

  for (guint i = 0; i < self->parts->len; i++)
    for (int field = 0; field < STEAD_N_JOINT_FIELDS; field++)
      part_at (self, i)->value[field] = part_at (self, i)->log[field];
  stead_joint_answer_settle (self);
}

SteadJointPlan *
stead_joint_answer_plan (const SteadJointAnswer *self)
{
  SteadJointPlan *plan = stead_joint_plan_new ();

  plan->method = self->method;
  for (guint i = 0; i < self->parts->len; i++)
    for (int field = 0; field < STEAD_N_JOINT_FIELDS; field++)
      {
        const SteadJointPart *part = part_at (self, i);

        if (fabs (part->value[field] - part->log[field]) > SAME)
          stead_joint_plan_set (plan, part->id, field_words[field], part->value[field]);
      }
  return plan;
}

static gboolean
read_plan (SteadStore        *store,
           SteadJointAnswer  *self,
           GError           **error)
{
  g_autoptr(SteadJointPlan) plan = stead_joint_repo_get (store, self->batch->id, error);

  if (plan == NULL)
    return FALSE;
  self->method = plan->method;
  for (guint i = 0; i < self->parts->len; i++)
    for (int field = 0; field < STEAD_N_JOINT_FIELDS; field++)
      {
        SteadJointPart *part = part_at (self, i);

        part->value[field] = stead_joint_plan_get (plan, part->id, field_words[field], part->log[field]);
      }
  return TRUE;
}

SteadJointAnswer *
stead_joint_answer_new (SteadStore  *store,
                        gint64       batch_id,
                        GError     **error)
{
  g_autoptr(SteadJointAnswer) self = g_new0 (SteadJointAnswer, 1);

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  if (!stead_joint_read (store, self, batch_id, error) || !read_plan (store, self, error))
    return NULL;
  stead_joint_answer_settle (self);
  return g_steal_pointer (&self);
}
