/* stead-joint-repo.h - how the cost of one batch is shared by what comes of it.
 *
 * Only what the log cannot tell is kept: the way that was chosen, and figures that a
 * person put in the place of those of the log and of the price list.
 */
#pragma once

#include "core/stead-joint-cost.h"
#include "store/stead-store.h"

G_BEGIN_DECLS

/* One figure put in by a person. */
typedef struct
{
  char   *part;    /* "eggs", "hens", "second": the answer layer knows them */
  char   *field;   /* "quantity", "split", …: likewise */
  double  value;   /* 0 or more, in the measure of the field */
} SteadJointFigure;

typedef struct
{
  SteadJointMethod  method;
  GPtrArray        *figures;   /* of SteadJointFigure; by part, then field */
} SteadJointPlan;

SteadJointPlan *stead_joint_plan_new  (void) G_GNUC_WARN_UNUSED_RESULT;   /* by net value, without figures */
void            stead_joint_plan_free (SteadJointPlan *plan);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadJointPlan, stead_joint_plan_free)

/* Sets one figure, instead of the one of the same part and field. */
void            stead_joint_plan_set (SteadJointPlan *plan,
                                      const char     *part,
                                      const char     *field,
                                      double          value);
/* The figure; @none if there is no such one. */
double          stead_joint_plan_get (const SteadJointPlan *plan,
                                      const char           *part,
                                      const char           *field,
                                      double                none);

/* A batch of which nothing was kept gives a new plan. */
SteadJointPlan *stead_joint_repo_get  (SteadStore  *store,
                                       gint64       batch_id,
                                       GError     **error) G_GNUC_WARN_UNUSED_RESULT;
/* Instead of what was kept of the batch.  Refused: a figure below 0 or beyond all sense. */
gboolean        stead_joint_repo_save (SteadStore            *store,
                                       gint64                 batch_id,
                                       const SteadJointPlan  *plan,
                                       GError               **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
