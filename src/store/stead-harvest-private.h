/* stead-harvest-private.h - what the parts of the harvest repository share. */
#pragma once

#include "store/stead-harvest-repo.h"
#include "store/stead-lot-private.h"
#include "store/stead-lot-repo.h"

G_BEGIN_DECLS

/* Refuses what cannot have been harvested; fills in the best-by day from the item's
 * shelf life, and clears what belongs to a lot where nothing good came. */
gboolean stead_harvest_check (SteadStore        *store,
                              const SteadBatch  *batch,
                              SteadHarvest      *harvest,
                              GError           **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
