/* stead-best-use-handles.h - what can be turned of the best use: what there is of each scarce
 * thing, the least and the most of each product, and one more thing that somebody names. */
#pragma once

#include <gtk/gtk.h>

#include "answer/stead-best-use.h"

G_BEGIN_DECLS

#define STEAD_TYPE_BEST_USE_HANDLES (stead_best_use_handles_get_type ())
G_DECLARE_FINAL_TYPE (SteadBestUseHandles, stead_best_use_handles, STEAD, BEST_USE_HANDLES, GtkWidget)

/* Signal "turned": the answer holds new limits, and is to be settled. */

GtkWidget *stead_best_use_handles_new  (void);
/* @answer: (transfer none) (nullable): outlives the handles, or is taken away by NULL first.  Adds
 * what somebody named before. */
void       stead_best_use_handles_show (SteadBestUseHandles *self, SteadBestUse *answer);

G_END_DECLS
