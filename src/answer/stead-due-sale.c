/* stead-due-sale.c - sale days that come soon, that are today, and that nobody cashed up. */
#include "config.h"

#include "answer/stead-due-private.h"
#include "answer/stead-sale-answer.h"

#include <glib/gi18n-lib.h>

/* So many days ahead there is still time to pack, to get change and to print.  Own rule. */
#define SOON_DAYS 2

static guint
n_unpacked (const SteadSale *sale)
{
  guint n = 0;

  for (guint i = 0; i < sale->bring->len; i++)
    n += ((const SteadSaleBring *) sale->bring->pdata[i])->packed ? 0 : 1;
  return n;
}

/* What is still to be packed, if anything is listed. */
static char *
packing (const SteadSale *sale)
{
  guint n = n_unpacked (sale);

  if (sale->bring->len == 0)
    return NULL;
  if (n == 0)
    return g_strdup (_("All that was listed is packed."));
  return g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "%u thing is still to be packed.",
                                       "%u things are still to be packed.", n), n);
}

static gboolean
look_at_coming (SteadDueLook    *look,
                const SteadSale *head)
{
  g_autoptr(SteadSale) sale = stead_sale_repo_get (look->store, head->id, look->error);
  g_autofree char *day = NULL, *opens = NULL;
  char *text;

  if (sale == NULL)
    return FALSE;
  day = stead_day_format (sale->day, STEAD_DAY_STYLE_SHORT);
  opens = stead_sale_clock (sale->opens_min);
  if (sale->day == look->today)
    /* Translators: a sale, and an hour. */
    text = g_strdup_printf (_("%1$s is today: it opens at %2$s."), sale->name, opens);
  else if (sale->day == look->today + 1)
    /* Translators: a sale. */
    text = g_strdup_printf (_("%s is tomorrow: pack, print and get change."), sale->name);
  else
    /* Translators: a sale, and a day. */
    text = g_strdup_printf (_("%1$s is on %2$s: see that all is made and who helps."), sale->name, day);
  stead_due_add (look, STEAD_DUE_TASK, STEAD_TARGET_SALE, sale->id, text, packing (sale));
  return TRUE;
}

gboolean
stead_due_look_at_sales (SteadDueLook *look)
{
  g_autoptr(GPtrArray) sales = stead_sale_repo_list (look->store, look->error);

  for (guint i = 0; sales != NULL && i < sales->len; i++)
    {
      const SteadSale *sale = sales->pdata[i];
      g_autofree char *day = NULL;

      if (sale->count_id != 0 || sale->day > look->today + SOON_DAYS)
        continue;
      if (sale->day >= look->today)
        {
          if (!look_at_coming (look, sale))
            return FALSE;
          continue;
        }
      day = stead_day_format (sale->day, STEAD_DAY_STYLE_SHORT);
      stead_due_add (look, STEAD_DUE_WARNING, STEAD_TARGET_SALE, sale->id,
                     /* Translators: a sale, and a day. */
                     g_strdup_printf (_("%1$s of %2$s is not cashed up."), sale->name, day),
                     g_strdup (_("Two people count the box, and what is left over is put away.")));
    }
  return sales != NULL;
}
