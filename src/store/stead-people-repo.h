/* stead-people-repo.h - groups, duties and turns, trainings, and what may be shown of whom.
 *
 * Lists are (transfer full), in a total order, empty for none; %NULL only with @error.
 * Saving: an id of 0 inserts and fills it in.
 */
#pragma once

#include "store/stead-farm-repo.h"

G_BEGIN_DECLS

/* "The Saturday list". */
typedef struct
{
  gint64   id;
  char    *name;         /* unique */
  GArray  *person_ids;   /* of gint64, by name */
} SteadGroup;

SteadGroup *stead_group_new  (void) G_GNUC_WARN_UNUSED_RESULT;
void        stead_group_free (SteadGroup *group);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadGroup, stead_group_free)

GPtrArray *stead_group_repo_list   (SteadStore *store, GError **error) G_GNUC_WARN_UNUSED_RESULT;
gboolean   stead_group_repo_save   (SteadStore *store, SteadGroup *group, GError **error) G_GNUC_WARN_UNUSED_RESULT;
/* Refused while turns of the rota are its. */
gboolean   stead_group_repo_remove (SteadStore *store, gint64 id, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* What is done again and again: "Feed the hens". */
typedef struct
{
  gint64   id;
  char    *name;         /* unique */
  char    *needs;        /* (nullable): what one must be trained for */
  SteadDay retired_on;   /* STEAD_DAY_NONE: still done */
} SteadDuty;

void stead_duty_free (SteadDuty *duty);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadDuty, stead_duty_free)

GPtrArray *stead_duty_repo_list   (SteadStore *store, GError **error) G_GNUC_WARN_UNUSED_RESULT;
gboolean   stead_duty_repo_save   (SteadStore *store, SteadDuty *duty, GError **error) G_GNUC_WARN_UNUSED_RESULT;
/* With its turns. */
gboolean   stead_duty_repo_remove (SteadStore *store, gint64 id, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* A duty that falls to a person, or to a whole group, each week on a weekday. */
typedef struct
{
  gint64   id;
  gint64   duty_id;
  int      weekday;      /* 1: Monday */
  gint64   person_id;    /* 0: a group's */
  gint64   group_id;     /* 0: a person's */
  int      at_minute;    /* since midnight; -1: any time */
  SteadDay from_on;
  SteadDay to_on;        /* STEAD_DAY_NONE: goes on */
  char    *duty_name;    /* filled in when read, like those below */
  char    *needs;        /* (nullable) */
  char    *who;          /* of the person or the group */
} SteadTurn;

void stead_turn_free (SteadTurn *turn);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadTurn, stead_turn_free)

/* Turns that are in force on @day, Monday first. */
GPtrArray *stead_turn_repo_list   (SteadStore *store, SteadDay day, GError **error) G_GNUC_WARN_UNUSED_RESULT;
gboolean   stead_turn_repo_save   (SteadStore *store, SteadTurn *turn, GError **error) G_GNUC_WARN_UNUSED_RESULT;
gboolean   stead_turn_repo_remove (SteadStore *store, gint64 id, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* Who was shown how to use a tool or do a task, and until when that holds. */
typedef struct
{
  gint64   id;
  gint64   person_id;
  char    *subject;
  SteadDay given_on;
  SteadDay until_on;       /* STEAD_DAY_NONE: no end */
  gint64   given_by;       /* 0: not said */
  char    *note;           /* (nullable) */
  char    *person_name;    /* filled in when read */
  char    *given_by_name;  /* (nullable), filled in when read */
} SteadTraining;

void stead_training_free (SteadTraining *training);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadTraining, stead_training_free)

/* @person_id: 0 for everybody's; by person, subject, day */
GPtrArray *stead_training_repo_list   (SteadStore *store, gint64 person_id, GError **error) G_GNUC_WARN_UNUSED_RESULT;
gboolean   stead_training_repo_save   (SteadStore *store, SteadTraining *training, GError **error) G_GNUC_WARN_UNUSED_RESULT;
gboolean   stead_training_repo_remove (SteadStore *store, gint64 id, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* Whether @person_id has a training of @subject that holds on @day; case does not matter. */
gboolean   stead_training_holds (const GPtrArray *trainings, gint64 person_id, const char *subject, SteadDay day);

typedef enum
{
  STEAD_CONSENT_NAME,      /* the name in what goes out */
  STEAD_CONSENT_PICTURE,
  STEAD_CONSENT_WORK,      /* own work: reflections, results */
} SteadConsentWhat;

/* What a signed paper at the school allows to be shown. */
typedef struct
{
  gint64            id;
  gint64            person_id;
  SteadConsentWhat  what;
  SteadDay          given_on;
  SteadDay          ended_on;   /* STEAD_DAY_NONE: holds; the first day on which it does not */
  char             *note;       /* (nullable): where the paper is */
} SteadConsent;

void stead_consent_free (SteadConsent *consent);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadConsent, stead_consent_free)

/* @person_id: 0 for everybody's */
GPtrArray *stead_consent_repo_list (SteadStore *store, gint64 person_id, GError **error) G_GNUC_WARN_UNUSED_RESULT;
gboolean   stead_consent_repo_save (SteadStore *store, SteadConsent *consent, GError **error) G_GNUC_WARN_UNUSED_RESULT;
gboolean   stead_consent_holds     (const GPtrArray *consents, gint64 person_id, SteadConsentWhat what, SteadDay day);

/* --- the class at a glance --------------------------------------------------------- */

/* What of one person the log of a period holds. */
typedef struct
{
  gint64  person_id;
  gint64  minutes;
  int     n_late;             /* hours entered more than so many days later */
  int     n_unchecked;
  int     n_receipts_bare;    /* receipts that this person entered, without a picture and a reference */
  int     n_skills;           /* done alone, or shown to others; of all time */
  int     n_trainings_over;   /* that ended and were not given again */
  char   *groups;             /* (nullable): their names */
} SteadClassSums;

void stead_class_sums_free (SteadClassSums *sums);

/* Of everybody who is still here on @to, by id. */
GPtrArray *stead_class_repo_sums   (SteadStore *store, SteadDay from, SteadDay to, int late_days,
                                    GError **error) G_GNUC_WARN_UNUSED_RESULT;
/* How many skills are on the school's list; -1 with @error. */
gint64     stead_class_repo_skills (SteadStore *store, GError **error);

/* --- how a result is shared --------------------------------------------------------- */

typedef enum
{
  STEAD_SHARE_HOURS,   /* by hours worked, each times its weight */
  STEAD_SHARE_ROLE,    /* by the weight of what somebody is */
  STEAD_SHARE_FIXED,   /* by agreed parts */
} SteadShareBasis;

typedef struct
{
  gint64 person_id;
  double weight;       /* 0 or more */
} SteadSharePart;

typedef struct
{
  gint64           id;              /* 0: nothing was agreed */
  gint64           enterprise_id;   /* 0: of the whole farm */
  SteadDay         from_on;
  SteadShareBasis  basis;
  gint64           agreed_by;       /* 0: not said */
  GArray          *parts;           /* of SteadSharePart; for hours those whose weight is not 1 */
} SteadShareRule;

void stead_share_rule_free (SteadShareRule *rule);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadShareRule, stead_share_rule_free)

/* What holds on @day; by hours with an id of 0 if nothing was agreed. */
SteadShareRule *stead_share_repo_get (SteadStore *store, gint64 enterprise_id, SteadDay day,
                                      GError **error) G_GNUC_WARN_UNUSED_RESULT;
/* A new agreement; former ones stay, for the days before it. */
gboolean        stead_share_repo_add (SteadStore *store, SteadShareRule *rule, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* Minutes that one person worked. */
typedef struct
{
  gint64  person_id;
  char   *name;
  gint64  minutes;
  gint64  unpaid_min;   /* of them */
  SteadPersonRole role;
} SteadPersonMinutes;

void stead_person_minutes_free (SteadPersonMinutes *minutes);

/* By name.  @enterprise_id: 0 for all work; else only what belongs to its batches. */
GPtrArray *stead_class_repo_minutes (SteadStore *store, SteadDay from, SteadDay to, gint64 enterprise_id,
                                     GError **error) G_GNUC_WARN_UNUSED_RESULT;
/* Ids of batches of the enterprise, or all, that were under way in the period */
GArray    *stead_class_repo_batches (SteadStore *store, SteadDay from, SteadDay to, gint64 enterprise_id,
                                     GError **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
