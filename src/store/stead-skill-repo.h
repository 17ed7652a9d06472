/* stead-skill-repo.h - skills in the school's words, tries of a person, and the rows of
 * the log that show them.
 *
 * Of a content standard only the code is kept, beside the school's own short wording.
 */
#pragma once

#include "store/stead-store.h"

G_BEGIN_DECLS

typedef struct
{
  gint64    id;           /* 0: not saved yet */
  char     *code;         /* (nullable): of an open content standard, unique */
  char     *words;
  char     *area;         /* (nullable): "Animals" */
  SteadDay  retired_on;   /* STEAD_DAY_NONE: in use */
} SteadSkill;

void stead_skill_free (SteadSkill *skill);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadSkill, stead_skill_free)

typedef enum
{
  STEAD_SKILL_SAW = 1,     /* saw it */
  STEAD_SKILL_HELPED,      /* did it with help */
  STEAD_SKILL_ALONE,       /* does it alone */
  STEAD_SKILL_SHOWS,       /* shows it to others */
} SteadSkillLevel;

typedef struct
{
  gint64           id;            /* 0: not saved yet */
  gint64           skill_id;
  gint64           person_id;
  SteadDay         day;
  SteadSkillLevel  level;
  char            *note;          /* (nullable) */
  gint64           checked_by;    /* 0: no advisor looked at it yet */
  SteadDay         checked_on;
  char            *checker_name;  /* (nullable): filled in when read */
} SteadSkillTry;

void stead_skill_try_free (SteadSkillTry *try_);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadSkillTry, stead_skill_try_free)

/* What a row of the log can be; the order is that of the file's words. */
typedef enum
{
  STEAD_EVIDENCE_ENTRY,       /* a day of a batch: a is eggs, b is feed in kg */
  STEAD_EVIDENCE_HARVEST,     /* a is pieces, b is live weight in kg */
  STEAD_EVIDENCE_WEIGHING,    /* a is how many, b is kg in all */
  STEAD_EVIDENCE_WATER,       /* a is pH, b is °C */
  STEAD_EVIDENCE_KITCHEN,     /* a is minutes; its row is the batch */
  STEAD_EVIDENCE_CHECKLIST,
  STEAD_EVIDENCE_READING,     /* a is the value in °C or pH */
  STEAD_EVIDENCE_RECEIPT,     /* a is cents of its lines */
  STEAD_EVIDENCE_PRODUCT,     /* its cost sheet */
  STEAD_EVIDENCE_SALE,
  STEAD_EVIDENCE_BUILD,
  STEAD_EVIDENCE_WORK,        /* a is minutes */
  STEAD_EVIDENCE_SHOT,
} SteadEvidenceKind;

#define STEAD_N_EVIDENCE_KINDS (STEAD_EVIDENCE_SHOT + 1)

typedef struct
{
  SteadEvidenceKind  what;
  gint64             row_id;
  gint64             try_id;      /* 0: offered, not chosen yet */
  gboolean           is_gone;     /* the row is no longer in the log; all below is unset */
  SteadDay           day;         /* STEAD_DAY_NONE: of a product */
  char              *name;        /* of the batch, list, supplier, duty, …; the caption of a picture */
  char              *detail;      /* (nullable): kind of a reading, kind of a batch */
  double             a, b;        /* NAN: not known; @b of a reading: 1 if it is of a kitchen batch and in no list */
  gint64             target_id;   /* of what a jump leads to: batch, water, list, … */
} SteadEvidence;

void stead_evidence_free (SteadEvidence *evidence);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadEvidence, stead_evidence_free)

/* Lists: (transfer full), empty if none; %NULL only with @error.
 * Saving: an id of 0 inserts and fills in the id. */

/* By area, code and words; without @with_retired only those in use. */
GPtrArray *stead_skill_repo_list     (SteadStore *store, gboolean with_retired, GError **error) G_GNUC_WARN_UNUSED_RESULT;
gboolean   stead_skill_repo_save     (SteadStore *store, SteadSkill *skill, GError **error) G_GNUC_WARN_UNUSED_RESULT;
/* Removes one that nobody tried; else it is retired, and its tries stay. */
gboolean   stead_skill_repo_remove   (SteadStore *store, gint64 skill_id, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* Of a person, by skill and day. */
GPtrArray *stead_skill_repo_tries    (SteadStore *store, gint64 person_id, GError **error) G_GNUC_WARN_UNUSED_RESULT;
/* One that was checked stays as it is; a later try is a new one. */
gboolean   stead_skill_repo_save_try (SteadStore *store, SteadSkillTry *try_, GError **error) G_GNUC_WARN_UNUSED_RESULT;
gboolean   stead_skill_repo_drop_try (SteadStore *store, gint64 try_id, GError **error) G_GNUC_WARN_UNUSED_RESULT;
/* @advisor_id: an advisor who is still here */
gboolean   stead_skill_repo_check    (SteadStore *store, gint64 try_id, gint64 advisor_id, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* Every piece of evidence of a person's tries; rows that are gone are told as such. */
GPtrArray *stead_skill_repo_evidence (SteadStore *store, gint64 person_id, GError **error) G_GNUC_WARN_UNUSED_RESULT;
/* One row of the log; (transfer full), told to be gone if it is. */
SteadEvidence *stead_skill_repo_row  (SteadStore *store, SteadEvidenceKind what, gint64 row_id, GError **error) G_GNUC_WARN_UNUSED_RESULT;
/* Refused if there is no such row, and once the try is checked. */
gboolean   stead_skill_repo_add_evidence  (SteadStore *store, gint64 try_id, SteadEvidenceKind what, gint64 row_id, GError **error) G_GNUC_WARN_UNUSED_RESULT;
gboolean   stead_skill_repo_drop_evidence (SteadStore *store, gint64 try_id, SteadEvidenceKind what, gint64 row_id, GError **error) G_GNUC_WARN_UNUSED_RESULT;
/* Rows of the log that the person wrote or took part in from @from to @to, the latest
 * first, at most 40 of a kind. */
GPtrArray *stead_skill_repo_offer    (SteadStore *store, gint64 person_id, SteadDay from, SteadDay to, GError **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
