/* stead-sale-private.h - what the files of the sale days share. */
#pragma once

#include "store/stead-repo-private.h"
#include "store/stead-sale-repo.h"

G_BEGIN_DECLS

/* Refuses a plan that cannot be, and says where. */
gboolean stead_sale_check (SteadStore       *store,
                           SteadSale        *sale,
                           SteadSaleFault   *fault,
                           GError          **error) G_GNUC_WARN_UNUSED_RESULT;

/* Refuses, with its day, a sale that is cashed up. */
gboolean stead_sale_check_open (SteadStore  *store,
                                gint64       sale_id,
                                GError     **error) G_GNUC_WARN_UNUSED_RESULT;

/* Writes the costs of a sale as they stand. */
gboolean stead_sale_write_costs (SteadStore  *store,
                                 SteadSale   *sale,
                                 GError     **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
