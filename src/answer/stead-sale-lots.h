/* stead-sale-lots.h - out of which lots a product is brought to a sale.
 *
 * Until somebody chooses, what expires first goes first, and nothing goes that is past
 * its best-by day on the day of the sale.
 */
#pragma once

#include "answer/stead-words.h"
#include "store/stead-sale-repo.h"

G_BEGIN_DECLS

/* One lot that can be sold from; amounts in units of the product. */
typedef struct
{
  gint64    lot_id;
  char     *code;
  SteadDay  best_by;       /* STEAD_DAY_NONE: it keeps */
  double    there_units;   /* can be taken */
  double    units;         /* proposed, or chosen */
} SteadSaleLotChoice;

void stead_sale_lot_choice_free (SteadSaleLotChoice *choice);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadSaleLotChoice, stead_sale_lot_choice_free)

/**
 * stead_sale_lots_new:
 * @day: of the sale
 * @units: to bring, 0 or more
 * @chosen: (nullable) (element-type SteadSaleLot): chosen by hand; empty or %NULL: proposed
 *
 * Returns: (transfer full) (element-type SteadSaleLotChoice): lots that can be sold from,
 *   first-expiring-first; empty for a product that is in no lot; %NULL with @error
 */
GPtrArray *stead_sale_lots_new (SteadStore          *store,
                                const SteadProduct  *product,
                                SteadDay             day,
                                double               units,
                                const GArray        *chosen,
                                GError             **error) G_GNUC_WARN_UNUSED_RESULT;

/* What is to be brought and is in none of @choices; below 0: they are more than is brought. */
double     stead_sale_lots_rest (GPtrArray *choices,
                                 double     units);

/* (transfer full) (element-type utf8): plain, one a lot: "48 dozen out of lot E26333-1, best by Dec 20";
 * then what is in no lot yet, or too much.  @units: to bring; empty if nothing is to be brought */
GPtrArray *stead_sale_lots_texts (GPtrArray *choices,
                                  SteadPack  pack,
                                  double     units) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
