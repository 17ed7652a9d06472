/* stead-sale-put-away.c - the end of a sale day: its goods. */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "store/stead-kitchen-repo.h"
#include "store/stead-lot-private.h"
#include "store/stead-sale-cash-up-private.h"

static const char * const place_words[] = { "store", "kitchen", "given", "waste", NULL };

void
stead_sale_left_free (SteadSaleLeft *left)
{
  if (left == NULL)
    return;
  g_free (left->reason);
  g_free (left);
}

static gpointer
left_from_row (SteadStmt *stmt)
{
  SteadSaleLeft *left = g_new0 (SteadSaleLeft, 1);

  left->line_id = sqlite3_column_int64 (stmt, 0);
  left->goes_to = (SteadLeftPlace) stead_repo_word (stmt, 1, place_words);
  left->units = sqlite3_column_double (stmt, 2);
  left->reason = stead_stmt_text (stmt, 3);
  return left;
}

GPtrArray *
stead_sale_left_list (SteadStore  *store,
                      gint64       sale_id,
                      GError     **error)
{
  static const char sql[] =
    "SELECT f.line_id, f.goes_to, f.units, f.reason FROM sale_line l CROSS JOIN sale_left f ON f.line_id = l.id"
    " WHERE l.sale_id = ?1 ORDER BY l.position, l.id, f.id";

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  return stead_repo_rows_of (store, sql, sale_id, left_from_row, (GDestroyNotify) stead_sale_left_free,
                             error);
}

/* --- what was left over ----------------------------------------------------------------- */

static double
left_of (const SteadSaleCashUp *self,
         gint64                 line_id,
         int                    goes_to)
{
  double sum = 0;

  for (guint i = 0; i < self->lefts->len; i++)
    {
      const SteadSaleLeft *left = self->lefts->pdata[i];

      if (left->line_id == line_id && (goes_to < 0 || left->goes_to == (SteadLeftPlace) goes_to))
        sum += left->units;
    }
  return sum;
}

static gboolean
check_left (const SteadSale      *sale,
            const SteadSaleLeft  *left,
            GError              **error)
{
  g_autofree char *reason = stead_repo_tidy (left->reason);
  const SteadSaleGood *good = stead_sale_find_good (sale, left->line_id);

  if (good == NULL)
    return stead_repo_missing (error);
  if (!(left->units > STEAD_AMOUNT_EPSILON && left->units <= STEAD_SALE_MOST_UNITS))
    return stead_repo_refuse (error, _("%s: what is left over must be above zero, or stay empty."), good->name);
  if (left->goes_to == STEAD_LEFT_WASTE && reason == NULL)
    return stead_repo_refuse (error, _("%s: write down why it is thrown away or missing."), good->name);
  return stead_repo_check_note (left->reason, error);
}

/* Brought = tallied + left over. */
static gboolean
check_units (const SteadSaleCashUp  *self,
             const SteadSaleGood    *good,
             const SteadSaleSum     *sum,
             GError                **error)
{
  double open = stead_sale_good_brought (good) - stead_sale_sum_tallied (sum) - left_of (self, good->id, -1);

  if (fabs (open) < 1e-6)
    return TRUE;
  if (open > 0)
    return stead_repo_refuse (error, _("%s: %g are neither tallied nor left over. Say where they went; "
                                       "what is missing is waste, with a reason."), good->name, open);
  return stead_repo_refuse (error, _("%s: %g more are tallied and left over than were brought. "
                                     "Count what is left, or change “Brought”."), good->name, -open);
}

static gboolean
write_left (SteadStore           *store,
            const SteadSaleLeft  *left,
            GError              **error)
{
  static const char sql[] = "INSERT INTO sale_left (line_id, goes_to, units, reason) VALUES (?1, ?2, ?3, ?4)";
  g_autoptr(SteadStmt) stmt = stead_store_prepare (store, sql, error);

  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, left->line_id);
  stead_stmt_bind_text (stmt, 2, place_words[left->goes_to]);
  sqlite3_bind_double (stmt, 3, left->units);
  stead_repo_bind_tidy (stmt, 4, left->reason);
  return stead_store_run (store, stmt, error);
}

/* --- out of the lots ---------------------------------------------------------------------- */

/* A lot that goods of one line may come out of; @left: how much of it the plan has, or all. */
typedef struct
{
  gint64 lot_id;
  double base;
} Source;

/* The lots of the plan first, then what expires first. */
static GArray *
list_sources (SteadStore           *store,
              const SteadSale      *sale,
              const SteadSaleGood  *good,
              GError              **error)
{
  g_autoptr(GPtrArray) lots = stead_kitchen_repo_lots (store, good->item_id, sale->day, error);
  GArray *sources = g_array_new (FALSE, FALSE, sizeof (Source));

  for (guint i = 0; lots != NULL && i < good->lots->len; i++)
    {
      const SteadSaleLot *planned = &g_array_index (good->lots, SteadSaleLot, i);
      Source source = { planned->lot_id, planned->base };

      g_array_append_val (sources, source);
    }
  for (guint i = 0; lots != NULL && i < lots->len; i++)
    {
      const SteadKitchenTake *lot = lots->pdata[i];
      Source source = { lot->lot_id, STEAD_AMOUNT_MAX };

      g_array_append_val (sources, source);
    }
  if (lots != NULL)
    return sources;
  g_array_unref (sources);
  return NULL;
}

/* What can be taken of a lot now; 0 also for one of animals that had to wait. */
static gboolean
read_available (SteadStore  *store,
                gint64       item_id,
                gint64       lot_id,
                SteadDay     day,
                double      *out,
                GError     **error)
{
  g_autoptr(SteadLedger) ledger = stead_ledger_load (store, item_id, day + 1, error);
  g_autoptr(GError) problem = NULL;
  SteadDay wait;

  if (ledger == NULL)
    return FALSE;
  wait = stead_harvest_repo_lot_wait (store, lot_id, &problem);
  if (problem != NULL)
    {
      g_propagate_error (error, g_steal_pointer (&problem));
      return FALSE;
    }
  *out = wait != STEAD_DAY_NONE ? 0 : stead_ledger_lot_available (ledger, lot_id, day);
  return TRUE;
}

static gboolean
refuse_short (SteadStore           *store,
              const SteadSaleGood  *good,
              double                base,
              GError              **error)
{
  g_autoptr(SteadItem) item = stead_item_repo_get (store, good->item_id, error);
  g_autofree char *text = NULL;

  if (item == NULL)
    return FALSE;
  text = stead_quantity_format (base, item->unit);
  return stead_repo_refuse (error, _("%s: the store room lacks %s of what left it. "
                                     "Enter the missing harvest or count first."), good->name, text);
}

/* Takes @base of a good out of its sources, as @facts say; adds to *@lacking what they
 * do not hold. */
static gboolean
take_good (SteadStore           *store,
           const SteadSale      *sale,
           const SteadSaleGood  *good,
           GArray               *sources,
           double                base,
           SteadMoveFacts        facts,
           double               *lacking,
           GError              **error)
{
  for (guint i = 0; i < sources->len && base > STEAD_AMOUNT_EPSILON; i++)
    {
      Source *source = &g_array_index (sources, Source, i);
      double available;

      if (!(source->base > STEAD_AMOUNT_EPSILON))
        continue;
      if (!read_available (store, good->item_id, source->lot_id, sale->day, &available, error))
        return FALSE;
      available = MIN (MIN (available, source->base), base);
      if (!(available > STEAD_AMOUNT_EPSILON))
        continue;
      facts.lot_id = source->lot_id;
      facts.quantity = -available;
      if (!stead_lot_take (store, &facts, error))
        return FALSE;
      source->base -= available;
      base -= available;
    }
  *lacking += base;
  return TRUE;
}

/* Cartons and labels go with what was sold and given; as far as the store room has them. */
static gboolean
take_packaging (SteadStore            *store,
                const SteadSale       *sale,
                const SteadSaleGood   *good,
                double                 units,
                const SteadMoveFacts  *facts,
                GError               **error)
{
  g_autoptr(SteadProduct) product = stead_product_repo_get (store, good->product_id, error);

  for (guint i = 0; product != NULL && i < product->parts->len; i++)
    {
      const SteadProductPart *part = &g_array_index (product->parts, SteadProductPart, i);
      g_autoptr(GPtrArray) lots = stead_kitchen_repo_lots (store, part->item_id, sale->day, error);
      double need = part->quantity_base * units;

      if (lots == NULL)
        return FALSE;
      for (guint j = 0; j < lots->len && need > STEAD_AMOUNT_EPSILON; j++)
        {
          const SteadKitchenTake *lot = lots->pdata[j];
          SteadMoveFacts move = *facts;

          move.lot_id = lot->lot_id;
          move.quantity = -MIN (lot->base, need);
          need += move.quantity;
          if (!stead_lot_take (store, &move, error))
            return FALSE;
        }
    }
  return product != NULL;
}

static gboolean
take_line (SteadStore             *store,
           const SteadSaleCashUp  *self,
           const SteadSale        *sale,
           const SteadSaleGood    *good,
           const SteadSaleSum     *sum,
           GError                **error)
{
  g_autofree char *sample = g_strdup_printf (_("Sample at %s"), sale->name);
  g_autofree char *given = g_strdup_printf (_("Given away at %s"), sale->name);
  g_autofree char *spoiled = g_strdup_printf (_("Spoiled at %s"), sale->name);
  g_autofree char *wasted = g_strdup_printf (_("Left over at %s, thrown away"), sale->name);
  const struct { const char *kind; double units; const char *reason; } outs[] = {
    { "sold", sum->sold, sale->name },
    { "given", sum->samples, sample },
    { "given", sum->given + left_of (self, good->id, STEAD_LEFT_GIVEN), given },
    { "lost", sum->spoiled, spoiled },
    { "lost", left_of (self, good->id, STEAD_LEFT_WASTE), wasted },
  };
  SteadMoveFacts facts = { .day = sale->day, .person_id = self->first_id, .sale_id = sale->id,
                           .sale_line_id = good->id };
  g_autoptr(GArray) sources = good->item_id != 0 ? list_sources (store, sale, good, error) : NULL;
  double lacking = 0;

  if (good->item_id != 0 && sources == NULL)
    return FALSE;
  for (gsize i = 0; sources != NULL && i < G_N_ELEMENTS (outs); i++)
    {
      facts.kind = outs[i].kind;
      facts.reason = outs[i].reason;
      if (!take_good (store, sale, good, sources, outs[i].units * good->base_per_unit, facts, &lacking, error))
        return FALSE;
    }
  /* Less than this is the rounding of sums. */
  if (lacking > 1e-6 * MAX (1, good->base_per_unit))
    return refuse_short (store, good, lacking, error);
  facts.kind = "sold";
  facts.reason = sale->name;
  return take_packaging (store, sale, good, sum->sold + sum->given + left_of (self, good->id, STEAD_LEFT_GIVEN), &facts,
                         error);
}

gboolean
stead_sale_put_away (SteadStore             *store,
                     const SteadSaleCashUp  *self,
                     const SteadSale        *sale,
                     const GArray           *sums,
                     SteadCashUpFault       *fault,
                     GError                **error)
{
  for (guint i = 0; i < self->lefts->len; i++)
    {
      const SteadSaleLeft *left = self->lefts->pdata[i];

      fault->line_id = left->line_id;
      if (!check_left (sale, left, error) || !write_left (store, left, error))
        return FALSE;
    }
  for (guint i = 0; i < sale->goods->len; i++)
    {
      const SteadSaleGood *good = sale->goods->pdata[i];
      const SteadSaleSum *sum = stead_sale_sums_find (sums, good->id);

      fault->line_id = good->id;
      if (sum == NULL)
        return stead_repo_missing (error);
      if (!check_units (self, good, sum, error) || !take_line (store, self, sale, good, sum, error))
        return FALSE;
    }
  return TRUE;
}
