/* stead-show-picks.h - what a person can choose from in the dialogs of Show. */
#pragma once

#include "app/keep/stead-pick.h"
#include "app/show/stead-pick-pane.h"
#include "store/stead-people-repo.h"
#include "store/stead-work-repo.h"

G_BEGIN_DECLS

/* Those who are still here, and @person_id; after them each of @groups (nullable), with ids below 0. */
void              stead_show_picks_people    (SteadPick *pick, SteadStore *store, const GPtrArray *groups, gint64 person_id);
/* The list of a pane that shows one person: who wrote last is proposed, else a student. */
gboolean          stead_show_picks_list      (SteadPickPane *pane, SteadPick *pick, GError **error);
/* (nullable): the group that an id of stead_show_picks_people() stands for */
const SteadGroup *stead_show_picks_group     (const GPtrArray *groups, gint64 id);
void              stead_show_picks_advisors  (SteadPick *pick, SteadStore *store);
/* Nothing, batches, sale days, phases of builds and events of the last months; what @span names is chosen. */
void              stead_show_picks_links     (SteadPick *pick, SteadStore *store, const SteadWorkSpan *span);
void              stead_show_picks_read_link (SteadPick *pick, SteadWorkSpan *span);
/* (transfer full) (element-type utf8): duties of the rota, then what was worked before, each once */
GPtrArray        *stead_show_picks_duties    (SteadStore *store);
/* The day of the place's calendar at seconds since 1970. */
SteadDay          stead_show_day_of          (gint64 at);

G_END_DECLS
