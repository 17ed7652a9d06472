/* stead-new-farm.h - from nothing to a first price: three short steps, of which
 * only the first is needed.
 */
#pragma once

#include <gtk/gtk.h>

#include "store/stead-store.h"

G_BEGIN_DECLS

#define STEAD_TYPE_NEW_FARM (stead_new_farm_get_type ())
G_DECLARE_FINAL_TYPE (SteadNewFarm, stead_new_farm, STEAD, NEW_FARM, GtkWidget)

/* Signals: "made" (SteadStore): the file is there; "done" (SteadStore): the steps are over. */

GtkWidget *stead_new_farm_new (void);

G_END_DECLS
