/* stead-shown-act.c - the act that keeps what a thermometer showed. */
#include "config.h"

#include "app/check/stead-shown-act.h"

gboolean
stead_shown_act (SteadStore  *store,
                 gpointer     shown,
                 GError     **error)
{
  SteadShown right = *(const SteadShown *) shown;
  gint64 wrong_id = right.corrects_id;
  gboolean corrected;

  if (wrong_id == 0)
    return stead_shown_repo_add (store, shown, error);
  right.corrects_id = 0;
  right.kind = NULL;
  corrected = stead_shown_repo_correct (store, wrong_id, &right, error);
  g_free (right.kind);
  return corrected;
}
