/* stead-sale-lots.h - out of which lots a product is brought to a sale.
 *
 * Until somebody chooses, what expires first goes first, and nothing goes that is past
 * its best-by day on the day of the sale.  Nothing is promised twice: what is claimed by
 * another product of the same item, or by an earlier sale, is not there for this one.
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
  double    there_units;   /* can be taken, and is not claimed by others */
  double    units;         /* proposed, or chosen */
} SteadSaleLotChoice;

void stead_sale_lot_choice_free (SteadSaleLotChoice *choice);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadSaleLotChoice, stead_sale_lot_choice_free)

/**
 * stead_sale_lots_others:
 * @sale_id: 0: a sale that is not saved yet
 * @day: of that sale
 *
 * What sales before that one are going to take out of the lots.  A sale of a day that is
 * over takes nothing any more, unless its tally was begun.
 *
 * Returns: (transfer full) (element-type SteadSaleLot): claims; %NULL with @error
 */
GArray    *stead_sale_lots_others (SteadStore  *store,
                                   gint64       sale_id,
                                   SteadDay     day,
                                   GError     **error) G_GNUC_WARN_UNUSED_RESULT;

/* Adds @base of a lot to @claims, in the base unit of its item; below 0: takes it off. */
void       stead_sale_lots_claim (GArray *claims,
                                  gint64  lot_id,
                                  double  base);

/**
 * stead_sale_lots_new:
 * @day: of the sale
 * @units: to bring, 0 or more
 * @chosen: (nullable) (element-type SteadSaleLot): chosen by hand; empty or %NULL: proposed
 * @claims: (nullable) (element-type SteadSaleLot): what others take
 *
 * Returns: (transfer full) (element-type SteadSaleLotChoice): lots that can be sold from,
 *   first-expiring-first; empty for a product that is in no lot; %NULL with @error
 */
GPtrArray *stead_sale_lots_new (SteadStore          *store,
                                const SteadProduct  *product,
                                SteadDay             day,
                                double               units,
                                const GArray        *chosen,
                                const GArray        *claims,
                                GError             **error) G_GNUC_WARN_UNUSED_RESULT;

/* Adds what @choices take to @claims. */
void       stead_sale_lots_claim_all (GArray          *claims,
                                      const GPtrArray *choices,
                                      double           base_per_unit);

/* What is claimed before the first product of a sale is served: by sales before it, and by
 * what was chosen by hand for its own products.  (transfer full); %NULL with @error */
GArray    *stead_sale_lots_begin (SteadStore       *store,
                                  const SteadSale  *sale,
                                  GError          **error) G_GNUC_WARN_UNUSED_RESULT;

/* The lots of one product of a sale, as stead_sale_lots_new() gives them.  Products are
 * served in their order: what this one takes is added to @claims, which begin as
 * stead_sale_lots_begin() gives them. */
GPtrArray *stead_sale_lots_share (SteadStore           *store,
                                  SteadDay              day,
                                  const SteadSaleGood  *good,
                                  const SteadProduct   *product,
                                  GArray               *claims,
                                  GError              **error) G_GNUC_WARN_UNUSED_RESULT;

/* What is to be brought and is in none of @choices; below 0: they are more than is brought. */
double     stead_sale_lots_rest (GPtrArray *choices,
                                 double     units);

/* (transfer full) (element-type utf8): plain, one a lot: "48 dozen out of lot E26333-1, best by Dec 20";
 * then what is in no lot yet, or too much.  @units: to bring; empty if nothing is to be brought */
GPtrArray *stead_sale_lots_texts (GPtrArray *choices,
                                  SteadPack  pack,
                                  double     units) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
