/* stead-sale-lots.c - out of which lots a product is brought to a sale. */
#include "config.h"

#include "answer/stead-sale-lots.h"

#include "answer/stead-words-private.h"
#include "store/stead-kitchen-repo.h"

#include <glib/gi18n-lib.h>
#include <math.h>

/* Less of a unit than this is noise. */
#define NOISE_UNITS 1e-6

void
stead_sale_lot_choice_free (SteadSaleLotChoice *choice)
{
  if (choice == NULL)
    return;
  g_free (choice->code);
  g_free (choice);
}

static double
base_of (const GArray *lots,
         gint64        lot_id)
{
  for (guint i = 0; lots != NULL && i < lots->len; i++)
    if (g_array_index (lots, SteadSaleLot, i).lot_id == lot_id)
      return g_array_index (lots, SteadSaleLot, i).base;
  return 0;
}

void
stead_sale_lots_claim (GArray *claims,
                       gint64  lot_id,
                       double  base)
{
  SteadSaleLot lot = { lot_id, base };

  g_return_if_fail (claims != NULL);
  for (guint i = 0; i < claims->len; i++)
    if (g_array_index (claims, SteadSaleLot, i).lot_id == lot_id)
      {
        g_array_index (claims, SteadSaleLot, i).base += base;
        return;
      }
  g_array_append_val (claims, lot);
}

GPtrArray *
stead_sale_lots_new (SteadStore          *store,
                     const SteadProduct  *product,
                     SteadDay             day,
                     double               units,
                     const GArray        *chosen,
                     const GArray        *claims,
                     GError             **error)
{
  g_autoptr(GPtrArray) choices = g_ptr_array_new_with_free_func ((GDestroyNotify) stead_sale_lot_choice_free);
  g_autoptr(GPtrArray) lots = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store) && product != NULL, NULL);
  if (product->item_id == 0 || !(product->base_per_unit > 0))
    return g_steal_pointer (&choices);
  lots = stead_kitchen_repo_lots (store, product->item_id, day, error);
  for (guint i = 0; lots != NULL && i < lots->len; i++)
    {
      const SteadKitchenTake *lot = lots->pdata[i];
      double there = MAX (0, lot->base - base_of (claims, lot->lot_id));
      SteadSaleLotChoice *choice;

      if (lot->past)
        continue;
      choice = g_new0 (SteadSaleLotChoice, 1);
      choice->lot_id = lot->lot_id;
      choice->code = g_strdup (lot->lot_code);
      choice->best_by = lot->best_by;
      choice->there_units = there / product->base_per_unit;
      if (chosen != NULL && chosen->len > 0)
        choice->units = base_of (chosen, lot->lot_id) / product->base_per_unit;
      else
        choice->units = CLAMP (units, 0, choice->there_units);
      units -= choice->units;
      g_ptr_array_add (choices, choice);
    }
  return lots != NULL ? g_steal_pointer (&choices) : NULL;
}

/* --- shared by all ------------------------------------------------------------------------ */

/* What was chosen by hand is claimed before anything is proposed. */
static void
claim_chosen (GArray          *claims,
              const SteadSale *sale)
{
  for (guint i = 0; i < sale->goods->len; i++)
    {
      const GArray *lots = ((const SteadSaleGood *) sale->goods->pdata[i])->lots;

      for (guint j = 0; j < lots->len; j++)
        stead_sale_lots_claim (claims, g_array_index (lots, SteadSaleLot, j).lot_id,
                               g_array_index (lots, SteadSaleLot, j).base);
    }
}

void
stead_sale_lots_claim_all (GArray          *claims,
                           const GPtrArray *choices,
                           double           base_per_unit)
{
  g_return_if_fail (claims != NULL && choices != NULL);

  for (guint i = 0; i < choices->len; i++)
    {
      const SteadSaleLotChoice *choice = choices->pdata[i];

      if (choice->units > NOISE_UNITS)
        stead_sale_lots_claim (claims, choice->lot_id, choice->units * base_per_unit);
    }
}

GPtrArray *
stead_sale_lots_share (SteadStore           *store,
                       SteadDay              day,
                       const SteadSaleGood  *good,
                       const SteadProduct   *product,
                       GArray               *claims,
                       GError              **error)
{
  g_autoptr(GPtrArray) choices = NULL;

  g_return_val_if_fail (good != NULL && product != NULL && claims != NULL, NULL);
  for (guint i = 0; i < good->lots->len; i++)
    {
      const SteadSaleLot *lot = &g_array_index (good->lots, SteadSaleLot, i);

      stead_sale_lots_claim (claims, lot->lot_id, -lot->base);
    }
  choices = stead_sale_lots_new (store, product, day, good->planned, good->lots, claims, error);
  if (choices != NULL)
    stead_sale_lots_claim_all (claims, choices, product->base_per_unit);
  return g_steal_pointer (&choices);
}

/* Will it take something, and before the sale @sale_id of @day does? */
static gboolean
is_before (const SteadSale *other,
           gint64           sale_id,
           SteadDay         day,
           SteadDay         today)
{
  if (other->count_id != 0 || other->id == sale_id)
    return FALSE;
  if (other->day < today && other->opened_at == STEAD_SALE_NO_TIME)
    return FALSE;
  return other->day < day || (other->day == day && (sale_id == 0 || other->id < sale_id));
}

static gboolean
claim_sale (SteadStore  *store,
            gint64       sale_id,
            GArray      *claims,
            GError     **error)
{
  g_autoptr(SteadSale) sale = stead_sale_repo_get (store, sale_id, error);

  if (sale == NULL)
    return FALSE;
  claim_chosen (claims, sale);
  for (guint i = 0; i < sale->goods->len; i++)
    {
      const SteadSaleGood *good = sale->goods->pdata[i];
      g_autoptr(SteadProduct) product = stead_product_repo_get (store, good->product_id, error);
      g_autoptr(GPtrArray) choices = product != NULL ? stead_sale_lots_share (store, sale->day, good, product, claims, error)
                                                     : NULL;

      if (choices == NULL)
        return FALSE;
    }
  return TRUE;
}

GArray *
stead_sale_lots_others (SteadStore  *store,
                        gint64       sale_id,
                        SteadDay     day,
                        GError     **error)
{
  g_autoptr(GArray) claims = g_array_new (FALSE, FALSE, sizeof (SteadSaleLot));
  g_autoptr(GPtrArray) sales = NULL;
  SteadDay today;

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  today = stead_store_get_today (store);
  sales = stead_sale_repo_list (store, error);
  /* The list has the newest first, and who comes first is served first. */
  for (guint i = sales != NULL ? sales->len : 0; i-- > 0;)
    {
      const SteadSale *other = sales->pdata[i];

      if (is_before (other, sale_id, day, today) && !claim_sale (store, other->id, claims, error))
        return NULL;
    }
  return sales != NULL ? g_steal_pointer (&claims) : NULL;
}

GArray *
stead_sale_lots_begin (SteadStore       *store,
                       const SteadSale  *sale,
                       GError          **error)
{
  GArray *claims;

  g_return_val_if_fail (sale != NULL, NULL);
  claims = stead_sale_lots_others (store, sale->id, sale->day, error);
  if (claims != NULL)
    claim_chosen (claims, sale);
  return claims;
}

/* --- in words ----------------------------------------------------------------------------- */

static char *
choice_text (const SteadSaleLotChoice *choice,
             SteadPack                 pack)
{
  g_autofree char *amount = stead_words_units (pack, choice->units);
  g_autofree char *day = NULL;

  if (choice->best_by == STEAD_DAY_NONE)
    /* Translators: an amount, and the code of a lot. */
    return g_strdup_printf (_("%1$s out of lot %2$s"), amount, choice->code);
  day = stead_day_format (choice->best_by, STEAD_DAY_STYLE_SHORT);
  /* Translators: an amount, the code of a lot, and its best-by day. */
  return g_strdup_printf (_("%1$s out of lot %2$s, best by %3$s"), amount, choice->code, day);
}

double
stead_sale_lots_rest (GPtrArray *choices,
                      double     units)
{
  double rest = units;

  g_return_val_if_fail (choices != NULL, 0);
  for (guint i = 0; i < choices->len; i++)
    rest -= ((const SteadSaleLotChoice *) choices->pdata[i])->units;
  return fabs (rest) > NOISE_UNITS ? rest : 0;
}

/* NULL: just what is brought is in the lots. */
static char *
rest_text (SteadPack pack,
           double    rest)
{
  g_autofree char *amount = stead_words_units (pack, fabs (rest));

  if (rest > 0)
    /* Translators: an amount that is in no lot of the store room. */
    return g_strdup_printf (_("%s out of what is made or harvested until then"), amount);
  /* Translators: an amount. */
  return rest < 0 ? g_strdup_printf (_("That is %s more than is to be brought."), amount) : NULL;
}

GPtrArray *
stead_sale_lots_texts (GPtrArray *choices,
                       SteadPack  pack,
                       double     units)
{
  GPtrArray *texts = g_ptr_array_new_with_free_func (g_free);
  char *rest;

  g_return_val_if_fail (choices != NULL, texts);
  if (!(units > 0))
    return texts;
  for (guint i = 0; i < choices->len; i++)
    if (((const SteadSaleLotChoice *) choices->pdata[i])->units > NOISE_UNITS)
      g_ptr_array_add (texts, choice_text (choices->pdata[i], pack));
  rest = rest_text (pack, stead_sale_lots_rest (choices, units));
  if (rest != NULL)
    g_ptr_array_add (texts, rest);
  return texts;
}
