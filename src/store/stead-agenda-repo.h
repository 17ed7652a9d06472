/* stead-agenda-repo.h - days that the farm's tables already know of, in one list. */
#pragma once

#include "store/stead-store.h"

G_BEGIN_DECLS

typedef enum
{
  STEAD_AGENDA_EVENT,        /* an event that students prepare for */
  STEAD_AGENDA_PHASE,        /* planned work on a build */
  STEAD_AGENDA_BEST_BY,      /* a lot with something left reaches its day */
  STEAD_AGENDA_WAIT_ENDS,    /* the last day of a wait after a medicine */
} SteadAgendaKind;

typedef struct
{
  SteadAgendaKind  kind;
  gint64           id;       /* of the row that it is about */
  SteadDay         day;
  char            *name;     /* of the event, the phase, the item or the batch */
  char            *detail;   /* (nullable): the place, the build, the lot's code, the medicine */
} SteadAgendaDay;

void stead_agenda_day_free (SteadAgendaDay *day);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadAgendaDay, stead_agenda_day_free)

/* Returns: (transfer full): those from @from to @to, by day; empty if none */
GPtrArray *stead_agenda_repo_list (SteadStore  *store,
                                   SteadDay     from,
                                   SteadDay     to,
                                   GError     **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
