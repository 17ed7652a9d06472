/* stead-joint-answer.h - "One flock gives eggs and hens: what does each of them cost?"
 *
 * What comes of one batch, and the cost that cannot be told apart:
 *  - a flock: eggs, and the hens at the end; all that goes into the flock;
 *  - fish whose water feeds plants: fish and those crops; the feed of the fish;
 *  - a crop: its grades as they were picked, and waste, which carries nothing.
 * Quantities are the log's, with what is still expected; prices are those of the products; the
 * further cost of a grade that is cooked is the cost of the product that it goes into, without
 * the grade itself.  A person may put figures of their own in the place of each, and keep them.
 * The farm is read once; while a handle is dragged only stead_joint_answer_settle() runs.
 */
#pragma once

#include "answer/stead-cost-answer.h"
#include "core/stead-joint-cost.h"
#include "store/stead-joint-repo.h"

G_BEGIN_DECLS

/* What is known of each product. */
typedef enum
{
  STEAD_JOINT_QUANTITY,  /* units told */
  STEAD_JOINT_WEIGHT,    /* kg of one; 0: not known */
  STEAD_JOINT_SPLIT,     /* cents for one as it comes */
  STEAD_JOINT_FINAL,     /* cents for one after further work; 0: sold as it comes */
  STEAD_JOINT_FURTHER,   /* cents of that work for one */
} SteadJointField;

#define STEAD_N_JOINT_FIELDS (STEAD_JOINT_FURTHER + 1)

typedef struct
{
  char      *id;              /* "eggs", "hens", "fish", "crop-6", "grade-second", "waste" */
  char      *name;            /* "Eggs" */
  char      *made;            /* (nullable): the product that further work makes of it */
  SteadPack  pack;            /* what it is told in … */
  double     base_per_unit;   /* … and how much base that is */
  gboolean   carries;         /* FALSE: waste */
  gboolean   own;             /* the further cost is its own anyway and is no choice */
  double     log[STEAD_N_JOINT_FIELDS];    /* as the log and the products have it */
  double     value[STEAD_N_JOINT_FIELDS];  /* as it stands under the handles */
  /* Settled: */
  gint64     share_cents[STEAD_N_JOINT_METHODS];  /* 0 where the method cannot be used */
  double     more_cents;      /* what further work adds; NAN: there is none to decide on */
} SteadJointPart;

typedef struct
{
  SteadFarm        *farm;
  SteadBatch       *batch;
  gboolean          feed_only;     /* what is shared is the feed */
  gint64            joint_cents;   /* what is shared, with what is still to come */
  GPtrArray        *parts;         /* of SteadJointPart */
  SteadJointMethod  method;        /* chosen */
  /* Settled: */
  gboolean          usable[STEAD_N_JOINT_METHODS];
  char             *sentence;      /* markup */
  char             *advice;        /* (nullable) markup: further work, by what it adds */
  char             *caution;       /* (nullable) plain: what is missing */
} SteadJointAnswer;

void stead_joint_answer_free (SteadJointAnswer *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadJointAnswer, stead_joint_answer_free)

/* (transfer full) (element-type SteadBatch): those whose cost several products share; those under
 * way first. */
GPtrArray *stead_joint_batches (SteadStore *store, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/**
 * stead_joint_answer_new:
 * @batch_id: one of stead_joint_batches()
 * @error: %STEAD_ANSWER_ERROR_MISSING says that only one thing comes of it
 */
SteadJointAnswer *stead_joint_answer_new (SteadStore  *store,
                                          gint64       batch_id,
                                          GError     **error) G_GNUC_WARN_UNUSED_RESULT;

/* Shares and sentences of the values as they stand. */
void stead_joint_answer_settle (SteadJointAnswer *self);
/* All values as the log has them. */
void stead_joint_answer_reset  (SteadJointAnswer *self);
/* What is to be kept: the method, and each value that is not the log's. */
SteadJointPlan *stead_joint_answer_plan (const SteadJointAnswer *self) G_GNUC_WARN_UNUSED_RESULT;

/* "By weight", … for a list, a chart and a sentence. */
const char *stead_joint_method_name (SteadJointMethod method);
/* "physical", …: for programs. */
const char *stead_joint_method_id   (SteadJointMethod method);

/* Cost of one by a method: its share and its own further cost; NAN with none of it. */
double stead_joint_unit_cents (const SteadJointPart *part,
                               SteadJointMethod      method);

/* (transfer full) (element-type SteadWhy): each method that can be used, worked out, and the
 * further work */
GPtrArray *stead_joint_answer_whys (const SteadJointAnswer *self) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
