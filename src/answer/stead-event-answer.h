/* stead-event-answer.h - "How far is the team, and what does the packet still lack?" */
#pragma once

#include "answer/stead-event-scores.h"
#include "answer/stead-packet-answer.h"

G_BEGIN_DECLS

/* A kind of event in general words, with what its packet usually needs (the list of the
 * event itself counts; sources in stead-event-answer.c). */
typedef struct
{
  const char *key;              /* "poultry" */
  const char *name;             /* untranslated, context "kind of event" */
  const char *sections;         /* keys, split by blanks */
  const char * const *own;      /* titles of sections of its own, untranslated, NULL-terminated */
  const char * const *material; /* likewise */
} SteadEventKind;

const SteadEventKind *stead_event_kinds (gsize *n_kinds);
/* A key in words; any other text as it is.  (transfer none) */
const char           *stead_event_kind_name (const char *kind);
/* Writes what the kind usually needs; inside an action. */
gboolean              stead_event_fill_needs (SteadStore *store, gint64 event_id, const char *kind, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* One line of the checklist. */
typedef struct
{
  char        *text;
  gboolean     is_done;
  char        *lack;        /* (nullable): what to do about it */
  SteadTarget  target;      /* where; STEAD_TARGET_NONE: here */
  gint64       target_id;
  gint64       need_id;     /* 0: no need of the list */
} SteadEventItem;

typedef struct
{
  SteadFarm  *farm;
  SteadEvent *event;
  GPtrArray  *team;         /* of SteadEventPerson */
  GArray     *minutes;      /* of double: preparation of each of the team */
  GPtrArray  *needs;        /* of SteadEventNeed */
  GPtrArray  *scores;       /* of SteadEventScore, by day */
  gint64      packet_id;    /* 0: none yet */
  GPtrArray  *items;        /* of SteadEventItem */
  int         n_lacking;
  double      prepared_minutes;
  char       *sentence;     /* markup */
  char       *when;         /* plain: "Wednesday, December 16, Fairground hall" */
  SteadEventScores *lines;  /* the same scores, as the chart draws them */
} SteadEventAnswer;

void stead_event_answer_free (SteadEventAnswer *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadEventAnswer, stead_event_answer_free)

SteadEventAnswer *stead_event_answer_new (SteadStore  *store,
                                          gint64       event_id,
                                          GError     **error) G_GNUC_WARN_UNUSED_RESULT;

/* (transfer full): of SteadWhy: shares of the points, hours of preparation */
GPtrArray *stead_event_answer_whys (const SteadEventAnswer *self) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
