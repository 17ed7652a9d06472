/* stead-show-picks.c - what a person can choose from in the dialogs of Show. */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "app/show/stead-show-picks.h"

#include "store/stead-farm-repo.h"
#include "store/stead-reflection-repo.h"

SteadDay
stead_show_day_of (gint64 at)
{
  g_autoptr(GDateTime) time = g_date_time_new_from_unix_local (at);

  return stead_day_new (g_date_time_get_year (time), g_date_time_get_month (time), g_date_time_get_day_of_month (time));
}

/* Whoever wrote last; else a student, who is more often looked for than an advisor. */
static gint64
proposed (SteadStore *store)
{
  g_autoptr(GPtrArray) people = stead_person_repo_list (store, NULL);
  gint64 writer = 0;

  if (stead_reflection_repo_last_writer (store, &writer, NULL) && writer != 0)
    return writer;
  for (guint i = 0; people != NULL && i < people->len; i++)
    {
      const SteadPerson *person = people->pdata[i];

      if (person->role == STEAD_PERSON_STUDENT && person->left_on == STEAD_DAY_NONE)
        return person->id;
    }
  return 0;
}

void
stead_show_picks_people (SteadPick       *pick,
                         SteadStore      *store,
                         const GPtrArray *groups,
                         gint64           person_id)
{
  g_autoptr(GPtrArray) people = stead_person_repo_list (store, NULL);

  stead_pick_clear (pick);
  if (person_id == 0)
    stead_pick_append (pick, 0, _("Choose…"));
  for (guint i = 0; people != NULL && i < people->len; i++)
    {
      const SteadPerson *person = people->pdata[i];

      if (person->left_on == STEAD_DAY_NONE || person->id == person_id)
        stead_pick_append (pick, person->id, person->name);
    }
  for (guint i = 0; groups != NULL && i < groups->len; i++)
    {
      const SteadGroup *group = groups->pdata[i];
      /* Translators: the name of a group. */
      g_autofree char *text = g_strdup_printf (_("Everyone: %s"), group->name);

      stead_pick_append (pick, -group->id, text);
    }
  stead_pick_show (pick, person_id);
}

const SteadGroup *
stead_show_picks_group (const GPtrArray *groups,
                        gint64           id)
{
  for (guint i = 0; groups != NULL && i < groups->len; i++)
    if (((const SteadGroup *) groups->pdata[i])->id == -id)
      return groups->pdata[i];
  return NULL;
}

void
stead_show_picks_advisors (SteadPick  *pick,
                           SteadStore *store)
{
  g_autoptr(GPtrArray) people = stead_person_repo_list (store, NULL);

  stead_pick_clear (pick);
  for (guint i = 0; people != NULL && i < people->len; i++)
    {
      const SteadPerson *person = people->pdata[i];

      if (person->role == STEAD_PERSON_ADVISOR && person->left_on == STEAD_DAY_NONE)
        stead_pick_append (pick, person->id, person->name);
    }
  stead_pick_show (pick, 0);
}

/* One number for what and which: rows of a farm never come near to 10^15. */
#define KIND_STEP G_GINT64_CONSTANT (1000000000000000)

static gint64
link_of (const SteadWorkSpan *span)
{
  if (span->event_id != 0)
    return STEAD_WORK_LINK_EVENT * KIND_STEP + span->event_id;
  if (span->phase_id != 0)
    return STEAD_WORK_LINK_PHASE * KIND_STEP + span->phase_id;
  if (span->sale_id != 0)
    return STEAD_WORK_LINK_SALE * KIND_STEP + span->sale_id;
  return span->batch_id != 0 ? STEAD_WORK_LINK_BATCH * KIND_STEP + span->batch_id : 0;
}

void
stead_show_picks_links (SteadPick           *pick,
                        SteadStore          *store,
                        const SteadWorkSpan *span)
{
  g_autoptr(GPtrArray) links = stead_work_repo_links (store, span, NULL);

  stead_pick_clear (pick);
  stead_pick_append (pick, 0, _("The farm as a whole"));
  for (guint i = 0; links != NULL && i < links->len; i++)
    {
      const SteadWorkLink *link = links->pdata[i];

      stead_pick_append (pick, link->kind * KIND_STEP + link->id, link->name);
    }
  stead_pick_show (pick, link_of (span));
}

void
stead_show_picks_read_link (SteadPick     *pick,
                            SteadWorkSpan *span)
{
  gint64 chosen = stead_pick_get (pick), id = chosen % KIND_STEP;
  int kind = (int) (chosen / KIND_STEP);

  span->batch_id = chosen != 0 && kind == STEAD_WORK_LINK_BATCH ? id : 0;
  span->sale_id = kind == STEAD_WORK_LINK_SALE ? id : 0;
  span->phase_id = kind == STEAD_WORK_LINK_PHASE ? id : 0;
  span->event_id = kind == STEAD_WORK_LINK_EVENT ? id : 0;
}

static void
add_once (GPtrArray  *texts,
          const char *text)
{
  if (!g_ptr_array_find_with_equal_func (texts, text, g_str_equal, NULL))
    g_ptr_array_add (texts, g_strdup (text));
}

GPtrArray *
stead_show_picks_duties (SteadStore *store)
{
  g_autoptr(GPtrArray) texts = g_ptr_array_new_with_free_func (g_free);
  g_autoptr(GPtrArray) duties = stead_duty_repo_list (store, NULL);
  g_autoptr(GPtrArray) worked = stead_work_repo_duties (store, NULL);

  for (guint i = 0; duties != NULL && i < duties->len; i++)
    if (((const SteadDuty *) duties->pdata[i])->retired_on == STEAD_DAY_NONE)
      add_once (texts, ((const SteadDuty *) duties->pdata[i])->name);
  for (guint i = 0; worked != NULL && i < worked->len; i++)
    add_once (texts, worked->pdata[i]);
  return g_steal_pointer (&texts);
}

gboolean
stead_show_picks_list (SteadPickPane  *pane,
                       SteadPick      *pick,
                       GError        **error)
{
  SteadStore *store = stead_pane_get_store (STEAD_PANE (pane));
  gint64 id;

  stead_pick_pane_prefer (pane, proposed (store));
  id = stead_pick_pane_get (pane);
  if (id != 0)
    stead_show_picks_people (pick, store, NULL, id);
  return TRUE;
}
