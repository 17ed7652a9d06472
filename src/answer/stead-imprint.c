/* stead-imprint.c - what every paper says about where it comes from. */
#include "config.h"

#include "answer/stead-imprint.h"
#include "store/stead-farm-repo.h"

#include <glib/gi18n-lib.h>

void
stead_imprint_free (SteadImprint *self)
{
  if (self == NULL)
    return;
  g_free (self->farm_name);
  g_free (self->currency);
  g_free (self);
}

SteadImprint *
stead_imprint_new (SteadStore  *store,
                   GError     **error)
{
  g_autoptr(SteadFarm) farm = NULL;
  SteadImprint *self;

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  farm = stead_farm_repo_get (store, error);
  if (farm == NULL)
    return NULL;
  self = g_new0 (SteadImprint, 1);
  self->farm_name = g_strdup (farm->name);
  self->currency = g_strdup (farm->currency);
  self->metric = farm->units == STEAD_UNITS_METRIC;
  self->today = stead_store_get_today (store);
  self->change_no = stead_store_get_change_no (store);
  return self;
}

const char *
stead_imprint_language (void)
{
  /* Translators: the tag of your own language (BCP 47), such as "es" or "de".  Screen
   * readers choose by it the voice that reads a printed page. */
  return C_("language tag", "en-US");
}
