/* stead-event-repo.h - events that students prepare for: the team, what the packet needs,
 * practice scores.
 */
#pragma once

#include "store/stead-store.h"

G_BEGIN_DECLS

typedef struct
{
  gint64    id;         /* 0: not saved yet */
  char     *name;
  char     *kind;       /* a key of answer/stead-event-answer.h, or the farm's own words */
  SteadDay  day;        /* may lie ahead */
  char     *place;      /* (nullable) */
  char     *result;     /* (nullable): known afterwards */
  char     *learned;    /* (nullable): in the team's own words */
} SteadEvent;

void stead_event_free (SteadEvent *event);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadEvent, stead_event_free)

typedef struct
{
  gint64  person_id;
  char   *name;         /* filled in when read */
  char   *role;         /* (nullable): "Speaker" */
} SteadEventPerson;

void stead_event_person_free (SteadEventPerson *person);

typedef enum
{
  STEAD_NEED_SECTION,   /* a section of the packet, by its key */
  STEAD_NEED_OWN,       /* a section of the farm's own: a title, with its text */
  STEAD_NEED_MATERIAL,  /* something to bring */
} SteadNeedKind;

typedef struct
{
  gint64         id;         /* 0: not saved yet */
  gint64         event_id;
  int            position;   /* from 1; filled in when saved */
  SteadNeedKind  what;
  char          *words;
  char          *text;       /* (nullable): of a section of its own */
  SteadDay       done_on;    /* STEAD_DAY_NONE: not yet */
} SteadEventNeed;

void stead_event_need_free (SteadEventNeed *need);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadEventNeed, stead_event_need_free)

typedef struct
{
  gint64    id;            /* 0: not saved yet */
  gint64    event_id;
  gint64    person_id;     /* 0: of the whole team */
  char     *person_name;   /* (nullable): filled in when read */
  SteadDay  day;
  char     *part;          /* (nullable): "Written test" */
  double    score;         /* 0 to out_of */
  double    out_of;        /* above 0 */
  gboolean  is_final;      /* of the event itself, not of practice */
  char     *note;          /* (nullable) */
} SteadEventScore;

void stead_event_score_free (SteadEventScore *score);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadEventScore, stead_event_score_free)

/* Lists: (transfer full), empty if none; %NULL only with @error.
 * Saving: an id of 0 inserts and fills in the id. */

/* The latest first. */
GPtrArray  *stead_event_repo_list      (SteadStore *store, GError **error) G_GNUC_WARN_UNUSED_RESULT;
SteadEvent *stead_event_repo_get       (SteadStore *store, gint64 id, GError **error) G_GNUC_WARN_UNUSED_RESULT;
gboolean    stead_event_repo_save      (SteadStore *store, SteadEvent *event, GError **error) G_GNUC_WARN_UNUSED_RESULT;
/* With its team, needs, scores and packets.  Refused while hours, pictures or thoughts name it. */
gboolean    stead_event_repo_delete    (SteadStore *store, gint64 id, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* By name. */
GPtrArray  *stead_event_repo_team      (SteadStore *store, gint64 event_id, GError **error) G_GNUC_WARN_UNUSED_RESULT;
/* Puts @person_id into the team, or changes the role. */
gboolean    stead_event_repo_join      (SteadStore *store, gint64 event_id, gint64 person_id, const char *role, GError **error) G_GNUC_WARN_UNUSED_RESULT;
gboolean    stead_event_repo_leave     (SteadStore *store, gint64 event_id, gint64 person_id, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* In their order. */
GPtrArray  *stead_event_repo_needs     (SteadStore *store, gint64 event_id, GError **error) G_GNUC_WARN_UNUSED_RESULT;
/* A new one goes to the end. */
gboolean    stead_event_repo_save_need (SteadStore *store, SteadEventNeed *need, GError **error) G_GNUC_WARN_UNUSED_RESULT;
gboolean    stead_event_repo_drop_need (SteadStore *store, gint64 need_id, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* By day. */
GPtrArray  *stead_event_repo_scores    (SteadStore *store, gint64 event_id, GError **error) G_GNUC_WARN_UNUSED_RESULT;
gboolean    stead_event_repo_save_score (SteadStore *store, SteadEventScore *score, GError **error) G_GNUC_WARN_UNUSED_RESULT;
gboolean    stead_event_repo_drop_score (SteadStore *store, gint64 score_id, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* Minutes of preparation that are in the hours, corrected ones once; @person_id 0: of all. */
gboolean    stead_event_repo_minutes   (SteadStore *store, gint64 event_id, gint64 person_id, double *out_minutes, GError **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
