/* stead-cvp-labels.h - the words on the break-even chart, on screen and on paper. */
#pragma once

#include "answer/stead-price-answer.h"

G_BEGIN_DECLS

/* In the order of SteadCvpWords, which points to them. */
typedef struct
{
  char *axis;         /* "dozens sold on the sale day" */
  char *even;         /* "break-even 46 dozen"; (nullable): the lines never meet */
  char *lasting;      /* (nullable): with steps, "no loss from 61 dozen on" */
  char *plan;         /* "plan 72"; (nullable): nothing planned */
  char *plan_gap;     /* "$54.48 left"; (nullable): nothing planned */
  char *money_in;
  char *all_costs;
  char *fixed_costs;
} SteadCvpLabels;

/* Returns: (transfer full): for the numbers under the handles */
SteadCvpLabels *stead_cvp_labels_new  (const SteadPriceAnswer *answer) G_GNUC_WARN_UNUSED_RESULT;
void            stead_cvp_labels_free (SteadCvpLabels *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadCvpLabels, stead_cvp_labels_free)

/* Returns: (transfer full): what a point of the chart means: at @units,
 * "60 dozen: $270.00 in, $240.60 of costs, $29.40 left" */
char *stead_cvp_labels_point (const SteadPriceAnswer *answer,
                              gint64                  units) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
