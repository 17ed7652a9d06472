/* stead-work-repo.h - who worked when, and at what.
 *
 * Minutes are stored, never rounded hours.  What an advisor checked stays as it is.
 */
#pragma once

#include "store/stead-store.h"

G_BEGIN_DECLS

typedef struct
{
  gint64    id;             /* 0: not saved yet */
  gint64    person_id;
  SteadDay  day;
  gint64    from_at;        /* seconds since 1970; G_MININT64: only how long is known */
  gint64    to_at;
  double    minutes;        /* worked, without the break */
  double    break_minutes;
  char     *duty;           /* not empty */
  gboolean  paid;
  gint64    batch_id;       /* 0: none */
  gint64    sale_id;        /* 0: none */
  gint64    phase_id;       /* of a build; 0: none */
  gint64    event_id;       /* 0: none */
  char     *note;           /* (nullable) */
  char     *known_by;       /* (nullable): the draft that it was taken over from */
  gint64    corrects_id;    /* the checked entry in whose place it stands; 0: none */
  SteadDay  entered_on;     /* filled in when saved */
  gint64    checked_by;     /* 0: not yet */
  SteadDay  checked_on;     /* filled in when read, like all below */
  char     *person_name;
  char     *checker_name;   /* (nullable) */
  char     *about;          /* (nullable): name of the batch, the sale day, the build or the event */
  double    was_minutes;    /* of the entry that it corrects; NAN: none */
} SteadWorkSpan;

/* The field that stands in the way. */
typedef enum
{
  STEAD_WORK_FAULT_NONE,      /* none of them: the file itself */
  STEAD_WORK_FAULT_PERSON,
  STEAD_WORK_FAULT_DAY,
  STEAD_WORK_FAULT_TIME,      /* start, end, or how long */
  STEAD_WORK_FAULT_BREAK,
  STEAD_WORK_FAULT_DUTY,
} SteadWorkFault;

void stead_work_span_free (SteadWorkSpan *span);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadWorkSpan, stead_work_span_free)

/* Adds one; fills in its id. */
gboolean   stead_work_repo_add     (SteadStore *store, SteadWorkSpan *span, GError **error) G_GNUC_WARN_UNUSED_RESULT;
/* The hours of one sale day, by person. */
GPtrArray *stead_work_repo_of_sale (SteadStore *store, gint64 sale_id, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/**
 * stead_work_repo_enter:
 * @span: an id of 0 adds; another one changes an entry that is not checked yet.  With
 *   corrects_id it is appended beside the checked entry and stands in its place; 0 minutes
 *   then say that the work was not done
 * @out_fault: (out) (optional): the field at fault
 *
 * Refuses, besides what stead_work_repo_add() does: times that overlap another entry of
 * this person, more than 24 hours on one day, and an end that is not after the start.
 *
 * Returns: %TRUE, or %FALSE with a message for the field
 */
gboolean   stead_work_repo_enter   (SteadStore *store, SteadWorkSpan *span, SteadWorkFault *out_fault,
                                    GError **error) G_GNUC_WARN_UNUSED_RESULT;
/**
 * stead_work_repo_enter_all:
 * @span: the entry, without a person
 * @person_ids: (element-type gint64): "everyone on the Saturday list"
 *
 * Enters the same for each person; the first refusal names the person and leaves all out.
 */
gboolean   stead_work_repo_enter_all (SteadStore *store, const SteadWorkSpan *span, const GArray *person_ids,
                                      SteadWorkFault *out_fault, GError **error) G_GNUC_WARN_UNUSED_RESULT;
/* Refused once it is checked: then it is corrected. */
gboolean   stead_work_repo_remove  (SteadStore *store, gint64 id, GError **error) G_GNUC_WARN_UNUSED_RESULT;
/**
 * stead_work_repo_check:
 * @from, @to: days, both included
 * @person_id: 0 for everybody
 * @checked_by: an advisor
 * @out_n: (out): how many entries are checked now that were not
 *
 * What is checked is frozen: neither undone nor changed, only corrected.
 */
gboolean   stead_work_repo_check   (SteadStore *store, SteadDay from, SteadDay to, gint64 person_id, gint64 checked_by,
                                    int *out_n, GError **error) G_GNUC_WARN_UNUSED_RESULT;
/* What holds, without entries that were corrected, by day and person; @person_id: 0 for everybody */
GPtrArray *stead_work_repo_list    (SteadStore *store, SteadDay from, SteadDay to, gint64 person_id,
                                    GError **error) G_GNUC_WARN_UNUSED_RESULT;
SteadWorkSpan *stead_work_repo_get (SteadStore *store, gint64 id, GError **error) G_GNUC_WARN_UNUSED_RESULT;
/* (element-type utf8): duties that were worked before, the most used first; at most 30 */
GPtrArray *stead_work_repo_duties  (SteadStore *store, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* What hours can belong to. */
typedef enum
{
  STEAD_WORK_LINK_BATCH,
  STEAD_WORK_LINK_SALE,
  STEAD_WORK_LINK_PHASE,   /* of a build */
  STEAD_WORK_LINK_EVENT,
} SteadWorkLinkKind;

typedef struct
{
  SteadWorkLinkKind kind;
  gint64            id;
  char             *name;
} SteadWorkLink;

void stead_work_link_free (SteadWorkLink *link);

/* Batches under way, sale days and events from two months ago to a month from now, phases of
 * builds; and what @span (nullable) belongs to. */
GPtrArray *stead_work_repo_links   (SteadStore *store, const SteadWorkSpan *span, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* --- the timer -------------------------------------------------------------------- */

/* Work that is being done; it survives the program's end. */
typedef struct
{
  gint64   person_id;
  gint64   started_at;      /* seconds since 1970 */
  char    *duty;
  gint64   paused_at;       /* G_MININT64: no break now */
  double   break_minutes;   /* of breaks that are over */
  char    *person_name;     /* filled in when read */
} SteadWorkTimer;

void stead_work_timer_free (SteadWorkTimer *timer);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadWorkTimer, stead_work_timer_free)

/* Minutes worked up to @now, without breaks; 0 if the clock went back. */
double     stead_work_timer_minutes (const SteadWorkTimer *timer, gint64 now);

GPtrArray *stead_work_timer_list   (SteadStore *store, GError **error) G_GNUC_WARN_UNUSED_RESULT;
/* One a person: refused while one runs. */
gboolean   stead_work_timer_start  (SteadStore *store, gint64 person_id, const char *duty, gint64 now,
                                    GError **error) G_GNUC_WARN_UNUSED_RESULT;
/* Begins a break, or ends it. */
gboolean   stead_work_timer_pause  (SteadStore *store, gint64 person_id, gint64 now, GError **error) G_GNUC_WARN_UNUSED_RESULT;
/**
 * stead_work_timer_stop:
 * @day: on which the work began, by the clock on the wall
 *
 * Takes the timer away and enters what it counted.  Refused beyond 16 hours: somebody
 * forgot it; then it is dropped, and the hours are entered by hand.
 */
gboolean   stead_work_timer_stop   (SteadStore *store, gint64 person_id, SteadDay day, gint64 now,
                                    GError **error) G_GNUC_WARN_UNUSED_RESULT;
gboolean   stead_work_timer_drop   (SteadStore *store, gint64 person_id, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* --- work that the farm knows of --------------------------------------------------- */

typedef enum
{
  STEAD_DRAFT_LOG,        /* wrote into the day's log of a flock, a tank or a crop */
  STEAD_DRAFT_READINGS,   /* took readings of a checklist */
  STEAD_DRAFT_STALL,      /* has a shift at a sale day that is not cashed up */
} SteadDraftKind;

/* Hours to be taken over, or not: never added by themselves. */
typedef struct
{
  SteadDraftKind  kind;
  gint64          person_id;
  SteadDay        day;
  char           *known_by;     /* says what it is of, once and for all */
  gint64          batch_id;     /* 0: none */
  gint64          sale_id;      /* 0: none */
  double          minutes;      /* a guess to be mended; NAN: none */
  double          break_minutes;
  char           *about;        /* name of the batch, the list or the sale day */
  char           *person_name;
} SteadWorkDraft;

void stead_work_draft_free (SteadWorkDraft *draft);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadWorkDraft, stead_work_draft_free)

/* What was done on days @from to @to, and of which there are no hours yet. */
GPtrArray *stead_work_repo_drafts  (SteadStore *store, SteadDay from, SteadDay to,
                                    GError **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
