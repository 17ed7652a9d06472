/* stead-agenda-answer.h - "What comes, and when?" as a calendar that other programs read. */
#pragma once

#include "core/stead-ics.h"
#include "store/stead-store.h"

G_BEGIN_DECLS

#define STEAD_AGENDA_DAYS 84   /* how far it looks ahead, and work that comes again is repeated */

typedef struct
{
  GPtrArray *things;      /* (element-type SteadIcsThing): nobody is named in them */
  char      *sentence;    /* markup */
  char      *ics;         /* the file */
} SteadAgendaAnswer;

void stead_agenda_answer_free (SteadAgendaAnswer *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadAgendaAnswer, stead_agenda_answer_free)

/* Sale days, events, work that is due, work on builds, lots and waits that end: from
 * today on, for twelve weeks.  Times are the farm's own, written in universal time. */
SteadAgendaAnswer *stead_agenda_answer_new (SteadStore  *store,
                                            GError     **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
