/* stead-sale-private.h - what the answers on sale days share. */
#pragma once

#include "answer/stead-sale-answer.h"
#include "store/stead-sale-cash-up.h"

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

/* --- "Why?" of a stall, while it sells and after --------------------------------------- */

/* A line more: "Eggs: 3 dozen × $4.50 on average = $13.50". */
void stead_sale_why_add_taken (GString             *text,
                               const SteadSaleGood *good,
                               const SteadSaleSum  *sum,
                               double               price_cents,
                               const char          *currency);
/* A line more: "Eggs: 20 − 16 = 4 dozen"; @tallied: sold, tasted, given away, spoiled */
void stead_sale_why_add_left  (GString             *text,
                               const SteadSaleGood *good,
                               double               tallied,
                               double               left);
/* "$20.00 + $72.00 − $5.00 = $87.00": money for change, taken at the stall, paid out. */
char *stead_sale_why_box      (const SteadSaleTill *till,
                               const char          *currency) G_GNUC_WARN_UNUSED_RESULT;
/* (transfer full): what must be in the box; with what was paid before the day, which is not in it */
SteadWhy *stead_sale_box_why  (const SteadSaleTill *till,
                               const char          *currency) G_GNUC_WARN_UNUSED_RESULT;
/* (transfer full): @worked: (transfer full): lines of stead_sale_why_add_left() */
SteadWhy *stead_sale_left_why (GString             *worked) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
