/* stead-kitchen-private.h - what the parts of the kitchen answer share. */
#pragma once

#include "answer/stead-kitchen-answer.h"

G_BEGIN_DECLS

/* Returns: (transfer full): the line of a step with its limit and what was read of it */
SteadRunLine *stead_kitchen_run_line (const SteadKitchenStep *step,
                                      int                     number,
                                      const GPtrArray        *readings,
                                      SteadUnitSystem         units) G_GNUC_WARN_UNUSED_RESULT;

/* Cents of one unit as it is shown: of a piece, of a quart. */
char *stead_kitchen_unit_money (const SteadKitchenAnswer *self,
                                double                    unit_cents) G_GNUC_WARN_UNUSED_RESULT;

/* Puts all figures into words. */
void stead_kitchen_put_words (SteadKitchenAnswer *self,
                              SteadDay            today);

G_END_DECLS
