/* stead-check-sign.c - what keeps a list from being signed, and its signature. */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "store/stead-check-private.h"
#include "store/stead-seal.h"

void
stead_list_holes_free (SteadListHoles *holes)
{
  if (holes == NULL)
    return;
  g_ptr_array_unref (holes->lines);
  g_ptr_array_unref (holes->readings);
  g_ptr_array_unref (holes->stops);
  g_free (holes);
}

/* --- holes ---------------------------------------------------------------------- */

/* Hot enough, but nobody timed how long. */
static gboolean
is_untimed (const SteadListLine *line,
            const SteadShown    *shown)
{
  SteadJudgement judgement;

  return stead_list_line_judge (line, shown, NULL, &judgement, NULL) &&
         judgement.verdict != STEAD_LIMIT_NOT_MET && judgement.short_s > 0;
}

static gboolean
is_read (const SteadListLine *line)
{
  for (guint i = 0; i < line->readings->len; i++)
    {
      const SteadShown *shown = line->readings->pdata[i];

      if (!shown->corrected && !is_untimed (line, shown))
        return TRUE;
    }
  return FALSE;
}

static gboolean
is_failed (const SteadListLine *line,
           const SteadShown    *shown)
{
  SteadJudgement judgement;

  return !shown->corrected && stead_list_line_judge (line, shown, NULL, &judgement, NULL) &&
         judgement.verdict == STEAD_LIMIT_NOT_MET;
}

static void
look_at_line (SteadListHoles *holes,
              SteadListLine  *line)
{
  if (line->left_out == NULL && !is_read (line))
    g_ptr_array_add (holes->lines, line);
  for (guint i = 0; i < line->readings->len; i++)
    {
      SteadShown *shown = line->readings->pdata[i];

      if (shown->n_actions == 0 && is_failed (line, shown))
        g_ptr_array_add (holes->readings, shown);
    }
}

SteadListHoles *
stead_check_repo_holes (SteadStore            *store,
                        const SteadCheckList  *list,
                        GError               **error)
{
  g_autoptr(SteadListHoles) holes = NULL;
  g_autoptr(GPtrArray) holds = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store) && list != NULL, NULL);
  holds = stead_hold_repo_of_list (store, list->id, error);
  if (holds == NULL)
    return NULL;
  holes = g_new0 (SteadListHoles, 1);
  holes->lines = g_ptr_array_new ();
  holes->readings = g_ptr_array_new ();
  holes->stops = g_ptr_array_new ();
  for (guint i = 0; i < list->lines->len; i++)
    look_at_line (holes, list->lines->pdata[i]);
  for (guint i = 0; i < list->stops->len; i++)
    if (((const SteadListStop *) list->stops->pdata[i])->settled_at == STEAD_TIME_NONE)
      g_ptr_array_add (holes->stops, list->stops->pdata[i]);
  for (guint i = 0; i < holds->len; i++)
    holes->n_holds += ((const SteadHold *) holds->pdata[i])->ended_at == STEAD_TIME_NONE ? 1 : 0;
  return g_steal_pointer (&holes);
}

/* --- signing ----------------------------------------------------------------------- */

/* The first thing that is missing, with how many. */
static gboolean
check_whole (const SteadListHoles  *holes,
             const SteadCheckList  *list,
             GError               **error)
{
  if (holes->lines->len > 0)
    return stead_repo_refuse (error, ngettext ("“%s” cannot be signed yet: %u line has no reading. Read it, or leave "
                                               "it out with a reason.",
                                               "“%s” cannot be signed yet: %u lines have no reading. Read them, or "
                                               "leave them out with a reason.", holes->lines->len),
                              list->name, holes->lines->len);
  if (holes->readings->len > 0)
    return stead_repo_refuse (error, ngettext ("“%s” cannot be signed yet: %u reading did not meet its limit, and "
                                               "nothing says what was done.",
                                               "“%s” cannot be signed yet: %u readings did not meet their limits, and "
                                               "nothing says what was done.", holes->readings->len),
                              list->name, holes->readings->len);
  if (holes->stops->len > 0)
    return stead_repo_refuse (error, ngettext ("“%s” cannot be signed yet: %u thing cannot be sold as planned, and "
                                               "nothing says what was done instead.",
                                               "“%s” cannot be signed yet: %u things cannot be sold as planned, and "
                                               "nothing says what was done instead.", holes->stops->len),
                              list->name, holes->stops->len);
  if (holes->n_holds > 0)
    return stead_repo_refuse (error, _("“%s” cannot be signed yet: food is still held back by one of its readings. "
                                       "Settle that first."), list->name);
  return TRUE;
}

static gboolean
check_person (SteadStore  *store,
              gint64       person_id,
              GError     **error)
{
  static const char sql[] = "SELECT count (*) FROM person WHERE id = ?1 AND left_on IS NULL";
  gint64 n = stead_repo_count_id (store, sql, person_id, error);

  if (n == 0)
    return stead_repo_refuse (error, _("Choose who signs."));
  return n > 0;
}

gboolean
stead_check_repo_sign (SteadStore  *store,
                       gint64       id,
                       gint64       person_id,
                       GError     **error)
{
  g_autoptr(SteadCheckList) open = NULL;
  g_autoptr(SteadCheckList) list = NULL;
  g_autoptr(SteadListHoles) holes = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store), FALSE);
  g_return_val_if_fail (stead_store_in_action (store), FALSE);
  open = stead_check_open_list (store, id, error);
  list = open != NULL && check_person (store, person_id, error) ? stead_check_repo_get (store, id, error) : NULL;
  holes = list != NULL ? stead_check_repo_holes (store, list, error) : NULL;
  return holes != NULL && check_whole (holes, list, error) &&
         stead_seal_list (store, id, person_id, stead_time_now (store), error);
}
