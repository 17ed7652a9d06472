/* stead-wait.c - what must wait after a treatment, in words. */
#include "config.h"

#include "answer/stead-wait.h"

#include <glib/gi18n-lib.h>

#include "store/stead-harvest-repo.h"

gboolean
stead_wait_read (SteadStore  *store,
                 gint64       batch_id,
                 SteadDay     day,
                 SteadDay    *out_until,
                 GError     **error)
{
  g_autoptr(GError) problem = NULL;
  SteadDay until;

  g_return_val_if_fail (STEAD_IS_STORE (store) && out_until != NULL, FALSE);
  until = stead_treatment_repo_wait (store, batch_id, day, &problem);
  if (problem != NULL)
    {
      g_propagate_error (error, g_steal_pointer (&problem));
      return FALSE;
    }
  *out_until = until;
  return TRUE;
}

char *
stead_wait_batch_caution (const char *batch_name,
                          SteadDay    until)
{
  g_autofree char *day = NULL;

  g_return_val_if_fail (batch_name != NULL, NULL);
  if (until == STEAD_DAY_NONE)
    return NULL;
  day = stead_day_format (until, STEAD_DAY_STYLE_MEDIUM);
  /* Translators: the name of a batch, and the last day of its wait. */
  return g_strdup_printf (_("“%s” waits after a treatment, up to and including %s: nothing that comes of it may be "
                            "sold or eaten before then. Follow the veterinarian's order."), batch_name, day);
}

gboolean
stead_wait_lot_caution (SteadStore      *store,
                        const SteadLot  *lot,
                        char           **out,
                        GError         **error)
{
  g_autoptr(GError) problem = NULL;
  g_autofree char *day = NULL;
  SteadDay until;

  g_return_val_if_fail (STEAD_IS_STORE (store) && lot != NULL && out != NULL, FALSE);
  *out = NULL;
  if (lot->batch_id == 0)
    return TRUE;
  until = stead_harvest_repo_lot_wait (store, lot->id, &problem);
  if (problem != NULL)
    {
      g_propagate_error (error, g_steal_pointer (&problem));
      return FALSE;
    }
  if (until == STEAD_DAY_NONE)
    return TRUE;
  day = stead_day_format (until, STEAD_DAY_STYLE_MEDIUM);
  /* Translators: the name of a batch, and the last day of its wait. */
  *out = g_strdup_printf (_("Harvested while “%s” waited after a treatment, up to and including %s. Waiting in the store "
                            "room does not help: do not sell or eat it, and ask the veterinarian."),
                          lot->batch_name, day);
  return TRUE;
}
