/* stead-hand-why.c - how much of something is on hand, lot by lot. */
#include "config.h"

#include "answer/stead-hand-why-private.h"

#include "answer/stead-sum-private.h"
#include "answer/stead-words-private.h"

#include <glib/gi18n-lib.h>

GPtrArray *
stead_hand_lots (SteadStore  *store,
                 gint64       item_id,
                 GError     **error)
{
  g_autoptr(GPtrArray) lots = stead_lot_repo_list (store, FALSE, error);

  for (guint i = lots != NULL ? lots->len : 0; i > 0; i--)
    if (((const SteadLot *) lots->pdata[i - 1])->item_id != item_id)
      g_ptr_array_remove_index (lots, i - 1);
  return g_steal_pointer (&lots);
}

SteadWhy *
stead_hand_why (const char      *title,
                const GPtrArray *lots,
                double           base,
                const SteadUnit *unit)
{
  g_autofree char *all = stead_quantity_format (base, unit);
  GString *sum;

  if (lots == NULL || lots->len == 0)
    return NULL;
  sum = g_string_new (NULL);
  for (guint i = 0; i < lots->len; i++)
    {
      const SteadLot *lot = lots->pdata[i];
      g_autofree char *part = stead_quantity_format (lot->on_hand_base, unit);

      stead_sum_add_named (sum, lot->code, part);
    }
  stead_sum_end (sum, all);
  return stead_why_new (g_strdup (title),
                        _("Of each lot what came in − what was used, sold, given away or lost, and what a count put right; all "
                          "lots added up."),
                        g_string_free (sum, FALSE), _("Common practice, no source."));
}
