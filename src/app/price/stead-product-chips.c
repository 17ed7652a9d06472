/* stead-product-chips.c - the products side by side, for one of them to be chosen. */
#include "config.h"

#include "app/price/stead-product-chips.h"

#include <glib/gi18n-lib.h>

#include "store/stead-product-repo.h"

static char *
chip_text (const SteadProduct *product)
{
  if (product->retired_on == STEAD_DAY_NONE)
    return g_strdup (product->name);
  /* Translators: a product that is not sold any more. */
  return g_strdup_printf (_("%s (no longer sold)"), product->name);
}

gboolean
stead_product_chips_same (GPtrArray *a,
                          GPtrArray *b)
{
  g_return_val_if_fail (b != NULL, FALSE);

  if (a == NULL || a->len != b->len)
    return FALSE;
  for (guint i = 0; i < a->len; i++)
    {
      const SteadProduct *x = a->pdata[i], *y = b->pdata[i];

      if (x->id != y->id || g_strcmp0 (x->name, y->name) != 0 || x->retired_on != y->retired_on)
        return FALSE;
    }
  return TRUE;
}

void
stead_product_chips_fill (SteadChips *chips,
                          GPtrArray  *products)
{
  g_return_if_fail (STEAD_IS_CHIPS (chips) && products != NULL);

  stead_chips_clear (chips);
  for (guint i = 0; i < products->len; i++)
    {
      const SteadProduct *product = products->pdata[i];
      g_autofree char *text = chip_text (product);

      stead_chips_append (chips, product->id, text);
    }
}
