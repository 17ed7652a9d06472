/* stead-sale-private.h - what the answers on sale days share. */
#pragma once

#include "answer/stead-sale-answer.h"

G_BEGIN_DECLS

/**
 * stead_sale_learn:
 * @line: its good is read; demand, n_days and what follows are filled in
 * @sales: (element-type SteadSale): all sale days
 * @sums: what became of them
 */
gboolean stead_sale_learn (SteadStore           *store,
                           const SteadSale      *sale,
                           SteadSaleLineAnswer  *line,
                           GPtrArray            *sales,
                           const GArray         *sums,
                           GError              **error) G_GNUC_WARN_UNUSED_RESULT;

/**
 * stead_sale_read_ready:
 * @self: its lines before @line are read
 * @claims: (element-type SteadSaleLot): what is spoken for in lots; this line's is added
 *
 * What is on hand for a product on the day, out of which lots, and what is still to come.
 */
gboolean stead_sale_read_ready (SteadStore             *store,
                                const SteadSaleAnswer  *self,
                                SteadSaleLineAnswer    *line,
                                GArray                 *claims,
                                GError                **error) G_GNUC_WARN_UNUSED_RESULT;

/* Fills in the sentences. */
void stead_sale_answer_say (SteadSaleAnswer *self);

G_END_DECLS
