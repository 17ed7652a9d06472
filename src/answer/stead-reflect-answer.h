/* stead-reflect-answer.h - "What happened that is worth a thought?"
 *
 * Questions come from the farm's own records of the last weeks, never from a list that
 * fits everybody: a week in which hens laid less, a reading that had to be put right, a
 * sale day whose cash was over or short, a batch that ended under its plan.
 */
#pragma once

#include "answer/stead-due-answer.h"
#include "store/stead-reflection-repo.h"

G_BEGIN_DECLS

/* Lay that falls by this much from one week to the next is worth a question (own rule). */
#define STEAD_REFLECT_FALL_FRAC 0.08

/* Nights colder by this much than in the week before make a week a cold one (own rule). */
#define STEAD_REFLECT_COLD_C 2.0

typedef struct
{
  char        *text;         /* plain: what happened, and what is asked */
  SteadDay     day;          /* on which it happened */
  gint64       batch_id;     /* 0: none; so the one below */
  gint64       sale_id;
  SteadTarget  target;       /* where the records are seen */
  gint64       target_id;
  gboolean     is_answered;  /* the person wrote about it already */
} SteadReflectQuestion;

void stead_reflect_question_free (SteadReflectQuestion *question);

typedef struct
{
  GPtrArray *questions;      /* of SteadReflectQuestion, the latest first */
  GPtrArray *thoughts;       /* of SteadReflection of the person, oldest first */
  int        n_open;
  char      *sentence;       /* markup */
} SteadReflectAnswer;

void stead_reflect_answer_free (SteadReflectAnswer *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadReflectAnswer, stead_reflect_answer_free)

/* Of the days from @from to @to. */
SteadReflectAnswer *stead_reflect_answer_new (SteadStore  *store,
                                              gint64       person_id,
                                              SteadDay     from,
                                              SteadDay     to,
                                              GError     **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
