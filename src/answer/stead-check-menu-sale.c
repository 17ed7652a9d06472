/* stead-check-menu-sale.c - what is sold, out of products and the plan of a sale day. */
#include "config.h"

#include "answer/stead-answer-error.h"
#include "answer/stead-check-menu-private.h"
#include "store/stead-batch-repo.h"
#include "store/stead-sale-repo.h"

#include <glib/gi18n-lib.h>
#include <math.h>

/* --- products ------------------------------------------------------------------------------ */

/* What comes out of a batch as it is. */
static gboolean
read_batch (SteadStore          *store,
            const SteadProduct  *product,
            SteadCheckFood      *out,
            GError             **error)
{
  static const char * const egg[] = { "egg", NULL };
  static const char * const fish[] = { "fish", NULL };
  g_autoptr(SteadBatch) batch = stead_batch_repo_get (store, product->batch_id, error);

  if (batch == NULL)
    return FALSE;
  if (batch->kind == STEAD_BATCH_FLOCK)
    {
      out->form = STEAD_CHECK_FORM_SHELL_EGGS;
      out->allergens = egg;
    }
  else if (batch->kind == STEAD_BATCH_FISH)
    {
      out->form = STEAD_CHECK_FORM_RAW_ANIMAL;
      out->allergens = fish;
    }
  else if (batch->kind == STEAD_BATCH_CROP)
    out->form = STEAD_CHECK_FORM_WHOLE_PRODUCE;
  return TRUE;
}

static gboolean
read_item_food (SteadCheckMenu  *menu,
                SteadStore      *store,
                gint64           item_id,
                SteadCheckFood  *out,
                GError         **error)
{
  g_autoptr(SteadItem) item = stead_item_repo_get (store, item_id, error);
  g_autoptr(GPtrArray) allergens = g_ptr_array_new ();

  if (item == NULL)
    return FALSE;
  if (g_strcmp0 (item->food, "raw_shell_eggs") == 0)
    out->form = STEAD_CHECK_FORM_SHELL_EGGS;
  stead_check_menu_add_allergens (allergens, item->allergens);
  if (allergens->len > 0)
    out->allergens = stead_check_menu_keep_words (menu, allergens);
  return TRUE;
}

static void
set_lots (SteadCheckMenu  *menu,
          const GPtrArray *lots,
          gint64           item_id,
          SteadCheckFood  *food)
{
  g_autoptr(GArray) found = g_array_new (FALSE, FALSE, sizeof (SteadCheckLot));

  for (guint i = 0; i < lots->len; i++)
    {
      const SteadLot *lot = lots->pdata[i];
      /* Of what was bought only its own date is known. */
      SteadCheckLot known = { NULL, lot->receipt_id == 0 ? lot->day : STEAD_DAY_NONE, lot->best_by };

      if (lot->item_id != item_id)
        continue;
      known.code = stead_check_menu_keep (menu, lot->code);
      g_array_append_val (found, known);
    }
  if (found->len == 0)
    return;
  food->n_lots = found->len;
  food->lots = g_memdup2 (found->data, found->len * sizeof (SteadCheckLot));
  g_ptr_array_add (menu->blocks, (gpointer) food->lots);
}

gboolean
stead_check_menu_read_product (SteadCheckMenu      *menu,
                               SteadStore          *store,
                               const SteadProduct  *product,
                               const GPtrArray     *lots,
                               SteadCheckFood      *out,
                               GError             **error)
{
  gint64 recipe_id = product->item_id != 0 ? stead_recipe_repo_of_item (store, product->item_id, error) : 0;

  *out = (SteadCheckFood) { .form = STEAD_CHECK_FORM_UNKNOWN, .kept = STEAD_CHECK_KEPT_UNKNOWN, .ph = NAN, .aw = NAN };
  if (recipe_id < 0)
    return FALSE;
  if (recipe_id > 0)
    {
      if (!stead_check_menu_read_recipe (menu, store, recipe_id, out, error))
        return FALSE;
    }
  else if (product->batch_id != 0)
    {
      if (!read_batch (store, product, out, error))
        return FALSE;
    }
  else if (product->item_id != 0 && !read_item_food (menu, store, product->item_id, out, error))
    return FALSE;
  if (out->form == STEAD_CHECK_FORM_UNKNOWN)
    {
      SteadCheckFood common;

      if (stead_check_common_find (product->name, &common))
        *out = common;
    }
  if (product->item_id != 0)
    set_lots (menu, lots, product->item_id, out);
  return TRUE;
}

static const SteadProduct *
product_of (const GPtrArray *products,
            gint64           id)
{
  for (guint i = 0; i < products->len; i++)
    if (((const SteadProduct *) products->pdata[i])->id == id)
      return products->pdata[i];
  return NULL;
}

/* Of the lots on hand those that go along; all of the item if none was named. */
static GPtrArray *
lots_along (const SteadSaleGood *good,
            const GPtrArray     *lots)
{
  GPtrArray *along = g_ptr_array_new ();

  for (guint i = 0; i < lots->len; i++)
    {
      const SteadLot *lot = lots->pdata[i];
      gboolean named = good->lots->len == 0;

      for (guint n = 0; n < good->lots->len; n++)
        named |= g_array_index (good->lots, SteadSaleLot, n).lot_id == lot->id;
      if (named)
        g_ptr_array_add (along, lots->pdata[i]);
    }
  return along;
}

/* What the plan of a sale day brings along. */
static gboolean
read_sale (SteadCheckMenu   *menu,
           SteadStore       *store,
           gint64            sale_id,
           const GPtrArray  *products,
           const GPtrArray  *lots,
           GError          **error)
{
  g_autoptr(SteadSale) sale = stead_sale_repo_get (store, sale_id, error);

  for (guint i = 0; sale != NULL && i < sale->goods->len; i++)
    {
      const SteadSaleGood *good = sale->goods->pdata[i];
      const SteadProduct *product = product_of (products, good->product_id);
      g_autoptr(GPtrArray) along = lots_along (good, lots);
      SteadCheckFood food;

      if (product == NULL)
        continue;
      if (!stead_check_menu_read_product (menu, store, product, along, &food, error))
        return FALSE;
      stead_check_menu_add (menu, food, product->name);
    }
  if (sale != NULL && menu->foods->len > 0)
    return TRUE;
  if (sale != NULL)
    g_set_error_literal (error, STEAD_ANSWER_ERROR, STEAD_ANSWER_ERROR_MISSING,
                         _("Nothing is planned to be sold on that day yet. Plan it in Sell first."));
  return FALSE;
}

SteadCheckMenu *
stead_check_menu_new_sale_day (SteadStore  *store,
                               gint64       sale_id,
                               GError     **error)
{
  g_autoptr(SteadCheckMenu) menu = stead_check_menu_new_empty ();
  g_autoptr(GPtrArray) products = NULL;
  g_autoptr(GPtrArray) lots = NULL;
  gboolean planned = FALSE;

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  products = stead_product_repo_list (store, sale_id != 0, error);
  lots = products != NULL ? stead_lot_repo_list (store, FALSE, error) : NULL;
  if (lots == NULL)
    return NULL;
  if (sale_id != 0)
    return read_sale (menu, store, sale_id, products, lots, error) ? g_steal_pointer (&menu) : NULL;
  for (guint i = 0; i < products->len; i++)
    planned |= ((const SteadProduct *) products->pdata[i])->planned_units > 0;
  for (guint i = 0; i < products->len; i++)
    {
      const SteadProduct *product = products->pdata[i];
      SteadCheckFood food;

      if (planned && product->planned_units <= 0)
        continue;
      if (!stead_check_menu_read_product (menu, store, product, lots, &food, error))
        return NULL;
      stead_check_menu_add (menu, food, product->name);
    }
  return g_steal_pointer (&menu);
}
