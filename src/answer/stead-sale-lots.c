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
chosen_base (const GArray *chosen,
             gint64        lot_id)
{
  for (guint i = 0; i < chosen->len; i++)
    if (g_array_index (chosen, SteadSaleLot, i).lot_id == lot_id)
      return g_array_index (chosen, SteadSaleLot, i).base;
  return 0;
}

GPtrArray *
stead_sale_lots_new (SteadStore          *store,
                     const SteadProduct  *product,
                     SteadDay             day,
                     double               units,
                     const GArray        *chosen,
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
      SteadSaleLotChoice *choice;

      if (lot->past)
        continue;
      choice = g_new0 (SteadSaleLotChoice, 1);
      choice->lot_id = lot->lot_id;
      choice->code = g_strdup (lot->lot_code);
      choice->best_by = lot->best_by;
      choice->there_units = lot->base / product->base_per_unit;
      if (chosen != NULL && chosen->len > 0)
        choice->units = chosen_base (chosen, lot->lot_id) / product->base_per_unit;
      else
        choice->units = CLAMP (units, 0, choice->there_units);
      units -= choice->units;
      g_ptr_array_add (choices, choice);
    }
  return lots != NULL ? g_steal_pointer (&choices) : NULL;
}

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
