/* stead-hours-answer.h - "Who worked how long, and at what?"
 *
 * Minutes are added; only a sum becomes hours.  A late entry is one that was made more than
 * STEAD_HOURS_LATE_DAYS after the work.
 */
#pragma once

#include "answer/stead-words.h"
#include "store/stead-farm-repo.h"
#include "store/stead-work-repo.h"

G_BEGIN_DECLS

typedef struct
{
  char  *duty;
  gint64 paid_min, unpaid_min;
} SteadHoursDuty;

typedef struct
{
  gint64   person_id;
  char    *name;
  gint64   day_min[7];    /* of a week from its Monday; of any other period 0 */
  gint64   minutes;
  int      n_late, n_unchecked;
} SteadHoursPerson;

typedef struct
{
  SteadFarm *farm;
  SteadDay   from, to;
  gint64     person_id;      /* 0: everybody */
  GPtrArray *spans;          /* of SteadWorkSpan, by day and person */
  GPtrArray *duties;         /* of SteadHoursDuty, most hours first */
  GPtrArray *people;         /* of SteadHoursPerson, by name */
  gint64     paid_min, unpaid_min;
  gint64     value_cents;    /* of the unpaid hours at the farm's rate: a memo, never income */
  int        n_late, n_unchecked, n_corrections;
  char      *sentence;       /* markup */
} SteadHoursAnswer;

void stead_hours_answer_free (SteadHoursAnswer *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadHoursAnswer, stead_hours_answer_free)

/**
 * stead_hours_answer_new:
 * @from, @to: days, both included
 * @person_id: 0 for everybody
 */
SteadHoursAnswer *stead_hours_answer_new (SteadStore  *store,
                                          SteadDay     from,
                                          SteadDay     to,
                                          gint64       person_id,
                                          GError     **error) G_GNUC_WARN_UNUSED_RESULT;

/* (transfer full): of SteadWhy; empty without hours */
GPtrArray *stead_hours_answer_whys (const SteadHoursAnswer *self) G_GNUC_WARN_UNUSED_RESULT;

/* (transfer full): hours of @spans (element-type SteadWorkSpan), added up entry by entry with who worked them */
SteadWhy *stead_hours_spans_why (const GPtrArray *spans, const char *title) G_GNUC_WARN_UNUSED_RESULT;
/* "A. Alder 3 h 25 min", one term more of a sum */
void stead_hours_why_add (GString *sum, const char *name, gint64 minutes);
/* @sum: (transfer full); " = 12 h" ends it */
char *stead_hours_why_end (GString *sum, gint64 minutes) G_GNUC_WARN_UNUSED_RESULT;

/* The Monday of the week of @day. */
SteadDay stead_hours_week (SteadDay day);

/* "3 h 25 min", "45 min", "2 h". */
char *stead_hours_words (gint64 minutes) G_GNUC_WARN_UNUSED_RESULT;
/* "3.50": to the quarter hour, for papers that ask for it. */
char *stead_hours_quarter (gint64 minutes) G_GNUC_WARN_UNUSED_RESULT;
/* "14:05" in the place's time; "" for G_MININT64. */
char *stead_hours_clock (gint64 at) G_GNUC_WARN_UNUSED_RESULT;

gboolean stead_hours_is_late (const SteadWorkSpan *span);
/* "not checked", "checked by Ms. Alder", with "9 days late" and "was 2 h" before it. */
char *stead_hours_state (const SteadWorkSpan *span) G_GNUC_WARN_UNUSED_RESULT;

/* What a draft is of: "Log of Brown hens". */
char *stead_hours_draft_text (const SteadWorkDraft *draft) G_GNUC_WARN_UNUSED_RESULT;
/* What it would be called as a duty: "Looking after Brown hens". */
char *stead_hours_draft_duty (const SteadWorkDraft *draft) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
