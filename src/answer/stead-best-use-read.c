/* stead-best-use-read.c - what is scarce on a sale day, as the farm file has it.
 *
 * What a batch gives is one thing, by the item of the store room that it becomes: so the eggs of
 * the carton and the eggs of the breakfast bowl are the same.  What the kitchen buys is a cost of
 * the product; what it takes of the farm's own is scarce.
 */
#include "config.h"

#include "answer/stead-best-use-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "answer/stead-answer-error.h"
#include "answer/stead-price-answer.h"
#include "store/stead-item-repo.h"
#include "store/stead-lot-repo.h"

#define FIRST_MORE_FRAC 0.5
/* Packaging is told of where the store room has less than so many times what the plan uses;
 * what is not there at all has to be bought anyway. */
#define PLENTY 2.5

/* Hues of what comes out of the kitchen go after those of three batches. */
#define KITCHEN_LOOK 3
#define N_LOOKS 5

typedef struct
{
  SteadBestUse *self;
  SteadStore   *store;
  GHashTable   *items;       /* batch to item, both as pointers */
  GPtrArray    *packed;      /* of SteadProductPart: packaging of a line … */
  GArray       *packed_line; /* … of guint: which */
  GArray       *minutes;     /* of double: of packing one, by line */
  guint         n_cooked;
} Reading;

static gint64
item_of_batch (Reading *reading,
               gint64   batch_id)
{
  return GPOINTER_TO_INT (g_hash_table_lookup (reading->items, GINT_TO_POINTER ((int) batch_id)));
}

static gboolean
read_items (Reading  *reading,
            GError  **error)
{
  g_autoptr(GPtrArray) lots = stead_lot_repo_list (reading->store, TRUE, error);

  for (guint i = 0; lots != NULL && i < lots->len; i++)
    {
      const SteadLot *lot = lots->pdata[i];

      if (lot->batch_id != 0)
        g_hash_table_insert (reading->items, GINT_TO_POINTER ((int) lot->batch_id), GINT_TO_POINTER ((int) lot->item_id));
    }
  return lots != NULL;
}

/* The thing of this item, or without one of this name; made if it is new. */
static guint
find_scarce (Reading           *reading,
             const SteadScarce *wanted)
{
  for (guint k = 0; k < reading->self->scarce->len; k++)
    {
      const SteadScarce *scarce = scarce_at (reading->self, k);

      if (wanted->item_id != 0 ? scarce->item_id == wanted->item_id : g_str_equal (scarce->name, wanted->name))
        return k;
    }
  return stead_best_use_add_scarce (reading->self, wanted);
}

static void
take_minutes (Reading    *reading,
              guint       line,
              const char *name,
              double      minutes)
{
  SteadScarce scarce = { .kind = STEAD_SCARCE_MINUTES, .name = (char *) name };

  if (minutes > 0)
    stead_best_use_take (reading->self, line, find_scarce (reading, &scarce), minutes);
}

/* --- what it is made of ---------------------------------------------------------------------- */

static void
take_source (Reading               *reading,
             guint                  line,
             const SteadCostAnswer *cost)
{
  SteadScarce scarce = { .kind = STEAD_SCARCE_PACKS, .name = (char *) stead_cost_answer_source (cost),
                         .pack = cost->product->pack, .base_per_pack = cost->product->base_per_unit,
                         .item_id = cost->batch != NULL ? item_of_batch (reading, cost->batch->id) : cost->product->item_id };
  guint k = find_scarce (reading, &scarce);

  stead_best_use_take (reading->self, line, k, cost->product->base_per_unit);
  line_at (reading->self, line)->look = k % N_LOOKS;
}

static double
stove_minutes (const SteadRecipe *recipe)
{
  double minutes = 0;

  for (guint i = 0; recipe != NULL && i < recipe->steps->len; i++)
    {
      const SteadRecipeStep *step = recipe->steps->pdata[i];

      if (g_strcmp0 (step->step, "cook") == 0 && isfinite (step->minutes))
        minutes += step->minutes;
    }
  return minutes;
}

static void
take_ingredient (Reading        *reading,
                 guint           line,
                 const SteadUse *use,
                 double          share)
{
  double base = (use->quantity_base + use->uncovered_base) * share;
  SteadScarce scarce = { .kind = STEAD_SCARCE_PLAIN, .name = use->item_name, .item_id = use->item_id };

  if (use->kind == STEAD_ITEM_PRODUCE)
    {
      stead_best_use_take (reading->self, line, find_scarce (reading, &scarce), base);
      return;
    }
  line_at (reading->self, line)->own_cents +=
    ((double) use->cost_cents + (use->uncovered_base > 0 && isfinite (use->uncovered_cents) ? use->uncovered_cents : 0)) * share;
}

/* Each unit takes its share of what the kitchen used for all that came of it. */
static void
take_cooked (Reading               *reading,
             guint                  line,
             const SteadCostAnswer *cost)
{
  const SteadKitchenSheet *kitchen = cost->kitchen;
  double share = cost->product->base_per_unit / kitchen->good_base;

  for (guint i = 0; i < cost->uses->len; i++)
    take_ingredient (reading, line, cost->uses->pdata[i], share);
  if (kitchen->recipe != NULL)
    take_minutes (reading, line, _("Oven and stove"),
                  stove_minutes (kitchen->recipe) * cost->product->base_per_unit / kitchen->recipe->yield_base);
  take_minutes (reading, line, _("Work in the kitchen"), kitchen->minutes * share);
  line_at (reading->self, line)->look = (KITCHEN_LOOK + reading->n_cooked++ % 2) % N_LOOKS;
}

static void
note_packaging (Reading            *reading,
                guint               line,
                const SteadProduct *product)
{
  for (guint i = 0; i < product->parts->len; i++)
    {
      g_ptr_array_add (reading->packed, g_memdup2 (&g_array_index (product->parts, SteadProductPart, i),
                                                   sizeof (SteadProductPart)));
      g_array_append_val (reading->packed_line, line);
    }
}

/* Fish, eggs and fruit first, for the kitchen takes of them. */
static void
add_product (Reading                *reading,
             const SteadPriceAnswer *price,
             gboolean                cooked)
{
  const SteadCostAnswer *cost = price->cost;
  SteadBestUseLine line = { .name = cost->product->name, .pack = cost->product->pack, .price_cents = price->plan.price_cents,
                            .own_cents = (double) cost->sheet.parts[STEAD_COST_PACKAGING].shown_cents,
                            .planned = price->plan.planned_units };
  guint at;

  if (cooked != (cost->kitchen != NULL && cost->kitchen->basis != STEAD_KITCHEN_STORE))
    return;
  at = stead_best_use_add_line (reading->self, &line);
  if (cooked)
    take_cooked (reading, at, cost);
  else
    take_source (reading, at, cost);
  note_packaging (reading, at, cost->product);
  g_array_append_val (reading->minutes, cost->product->pack_minutes);
}

/* --- what it is packed in, and by whom --------------------------------------------------------- */

static gboolean
take_packaging (Reading  *reading,
                gint64    item_id,
                GError  **error)
{
  g_autoptr(SteadItem) item = NULL;
  SteadScarce scarce = { .kind = STEAD_SCARCE_PLAIN, .item_id = item_id };
  SteadStock stock;
  double planned = 0;
  guint k;

  if (!stead_lot_repo_stock (reading->store, item_id, stead_store_get_today (reading->store), 1, &stock, error))
    return FALSE;
  for (guint i = 0; i < reading->packed->len; i++)
    {
      const SteadProductPart *part = reading->packed->pdata[i];

      if (part->item_id == item_id)
        planned += part->quantity_base * line_at (reading->self, g_array_index (reading->packed_line, guint, i))->planned;
    }
  if (!(stock.on_hand_base > 0) || stock.on_hand_base > PLENTY * planned)
    return TRUE;
  item = stead_item_repo_get (reading->store, item_id, error);
  if (item == NULL)
    return FALSE;
  scarce.name = item->name;
  scarce.amount = stock.on_hand_base;
  k = stead_best_use_add_scarce (reading->self, &scarce);
  for (guint i = 0; i < reading->packed->len; i++)
    {
      const SteadProductPart *part = reading->packed->pdata[i];

      if (part->item_id == item_id)
        stead_best_use_take (reading->self, g_array_index (reading->packed_line, guint, i), k, part->quantity_base);
    }
  return TRUE;
}

static gboolean
read_packaging (Reading  *reading,
                GError  **error)
{
  g_autoptr(GHashTable) seen = g_hash_table_new (NULL, NULL);

  for (guint i = 0; i < reading->packed->len; i++)
    {
      const SteadProductPart *part = reading->packed->pdata[i];

      if (g_hash_table_add (seen, GINT_TO_POINTER ((int) part->item_id))
          && !take_packaging (reading, part->item_id, error))
        return FALSE;
    }
  return TRUE;
}

/* --- all of it ----------------------------------------------------------------------------------- */

static gboolean
read_prices (SteadStore   *store,
             SteadPeriod   period,
             GPtrArray    *out_prices,
             GPtrArray    *out_missing,
             GError      **error)
{
  g_autoptr(GPtrArray) products = stead_product_repo_list (store, FALSE, error);

  for (guint i = 0; products != NULL && i < products->len; i++)
    {
      g_autoptr(GError) local_error = NULL;
      g_autoptr(SteadPriceAnswer) price = stead_price_answer_new (store, ((SteadProduct *) products->pdata[i])->id, period,
                                                                  &local_error);

      if (price == NULL && !g_error_matches (local_error, STEAD_ANSWER_ERROR, STEAD_ANSWER_ERROR_MISSING))
        {
          g_propagate_error (error, g_steal_pointer (&local_error));
          return FALSE;
        }
      if (price != NULL && price->price_on_file >= 0 && price->plan.planned_units > 0)
        g_ptr_array_add (out_prices, g_steal_pointer (&price));
      else
        g_ptr_array_add (out_missing, g_strdup (((SteadProduct *) products->pdata[i])->name));
    }
  return products != NULL;
}

static gboolean
read_all (Reading      *reading,
          SteadPeriod   period,
          GError      **error)
{
  g_autoptr(GPtrArray) prices = g_ptr_array_new_with_free_func ((GDestroyNotify) stead_price_answer_free);
  SteadBestUse *self = reading->self;

  if (!read_items (reading, error) || !read_prices (reading->store, period, prices, self->missing, error))
    return FALSE;
  for (int cooked = FALSE; cooked <= TRUE; cooked++)
    for (guint i = 0; i < prices->len; i++)
      add_product (reading, prices->pdata[i], cooked);
  for (guint line = 0; line < self->lines->len; line++)
    take_minutes (reading, line, _("Time for packing"), g_array_index (reading->minutes, double, line));
  if (!read_packaging (reading, error))
    return FALSE;
  for (guint k = 0; k < self->scarce->len; k++)
    scarce_at (self, k)->amount = MAX (scarce_at (self, k)->amount, scarce_at (self, k)->planned);
  return TRUE;
}

SteadBestUse *
stead_best_use_new (SteadStore   *store,
                    SteadPeriod   period,
                    GError      **error)
{
  g_autoptr(SteadFarm) farm = stead_farm_repo_get (store, error);
  g_autoptr(SteadBestUse) self = NULL;
  g_autoptr(GHashTable) items = g_hash_table_new (NULL, NULL);
  g_autoptr(GPtrArray) packed = g_ptr_array_new_with_free_func (g_free);
  g_autoptr(GArray) packed_line = g_array_new (FALSE, FALSE, sizeof (guint));
  g_autoptr(GArray) minutes = g_array_new (FALSE, FALSE, sizeof (double));
  Reading reading = { NULL, store, items, packed, packed_line, minutes, 0 };

  if (farm == NULL)
    return NULL;
  self = reading.self = stead_best_use_new_empty (farm->currency);
  if (!read_all (&reading, period, error))
    return NULL;
  stead_best_use_set_more (self, FIRST_MORE_FRAC);
  self->whole = TRUE;
  stead_best_use_settle (self, FALSE);
  return g_steal_pointer (&self);
}
