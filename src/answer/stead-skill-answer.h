/* stead-skill-answer.h - "What can this person do, and what shows it?" */
#pragma once

#include "answer/stead-due-answer.h"
#include "store/stead-farm-repo.h"
#include "store/stead-skill-repo.h"

G_BEGIN_DECLS

typedef struct
{
  SteadSkill     *skill;
  GPtrArray      *tries;       /* of SteadSkillTry, oldest first */
  GPtrArray      *evidence;    /* of SteadEvidence, of all its tries */
  int             best;        /* a SteadSkillLevel; 0: not tried yet */
  SteadDay        last_on;     /* of the last try; STEAD_DAY_NONE */
  gboolean        is_checked;  /* an advisor saw the best one */
} SteadSkillRow;

typedef struct
{
  SteadFarm *farm;
  gint64     person_id;
  char      *name;
  GPtrArray *rows;             /* of SteadSkillRow, in the order of the list */
  int        n_tried, n_alone, n_shown, n_checked;   /* skills; alone: level 3 or more; shown: with evidence that is there */
  double     covered_frac;     /* tried of all; NAN without a list */
  char      *sentence;         /* markup */
} SteadSkillAnswer;

void stead_skill_answer_free (SteadSkillAnswer *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadSkillAnswer, stead_skill_answer_free)

/* A skill that is no longer in the list is told if the person tried it. */
SteadSkillAnswer *stead_skill_answer_new (SteadStore  *store,
                                          gint64       person_id,
                                          GError     **error) G_GNUC_WARN_UNUSED_RESULT;

/* How the skills are counted: (transfer full) (element-type SteadWhy); empty without a try */
GPtrArray *stead_skill_answer_whys (const SteadSkillAnswer *self) G_GNUC_WARN_UNUSED_RESULT;

/* (transfer none): "does it alone"; "not tried yet" of 0. */
const char *stead_skill_level_text   (int level);
/* "22 eggs in the log of Brown hens on Mar 3, 2026"; of one that is gone, that it is. */
char       *stead_evidence_text      (const SteadEvidence *evidence, const SteadFarm *farm) G_GNUC_WARN_UNUSED_RESULT;
/* Where the window shows it; STEAD_TARGET_NONE if nowhere. */
SteadTarget stead_evidence_target    (const SteadEvidence *evidence);
/* (transfer none): a kind in words, for a choice: "Receipt". */
const char *stead_evidence_kind_name (SteadEvidenceKind what);

G_END_DECLS
