/* stead-more-seasons.h - many more seasons, drawn beside the window: progress, and a stop. */
#pragma once

#include <gtk/gtk.h>

#include "answer/stead-how-sure-answer.h"

G_BEGIN_DECLS

#define STEAD_TYPE_MORE_SEASONS (stead_more_seasons_get_type ())
G_DECLARE_FINAL_TYPE (SteadMoreSeasons, stead_more_seasons, STEAD, MORE_SEASONS, GtkWidget)

/* Signal "drawn": the answer has its figures out of more seasons. */

GtkWidget *stead_more_seasons_new  (void);
/* @answer: (transfer none) (nullable): outlives this, or is taken away by NULL first.  Stops what
 * is being drawn: it was of former ranges. */
void       stead_more_seasons_show (SteadMoreSeasons *self, SteadHowSure *answer);

G_END_DECLS
