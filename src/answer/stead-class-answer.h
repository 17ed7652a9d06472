/* stead-class-answer.h - "Who works on the farm, and what does each still need?"
 *
 * The class at a glance, of the school year: hours, late entries, what is not checked, receipts
 * that lack their paper, skills, trainings that are over.
 */
#pragma once

#include "answer/stead-words.h"
#include "store/stead-farm-repo.h"
#include "store/stead-people-repo.h"

G_BEGIN_DECLS

typedef struct
{
  SteadPerson    *person;
  SteadClassSums *sums;
  int             packet_there, packet_all;   /* sections of a student's packet; 0 of 0: not read here, since
                              * it takes time: stead_packet_state_of() */
  char           *needs;     /* in words, "" for nothing: "2 hours entries to check, 1 training is over" */
} SteadClassRow;

void stead_class_row_free (SteadClassRow *row);

typedef struct
{
  SteadDay   from, to;    /* the school year, up to today */
  GPtrArray *rows;        /* of SteadClassRow: who is still here, by name */
  int        n_students;
  gint64     minutes;     /* of all */
  gint64     n_skills;    /* on the school's list */
  int        n_late, n_unchecked, n_receipts_bare, n_trainings_over;
  char      *sentence;    /* markup */
} SteadClassAnswer;

void stead_class_answer_free (SteadClassAnswer *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadClassAnswer, stead_class_answer_free)

/* Returns: (transfer full): those who have not left, or %NULL with @error */
SteadClassAnswer *stead_class_answer_new (SteadStore  *store,
                                          GError     **error) G_GNUC_WARN_UNUSED_RESULT;

/* (transfer full): of SteadWhy: hours, late entries, skills */
GPtrArray *stead_class_answer_whys (const SteadClassAnswer *self) G_GNUC_WARN_UNUSED_RESULT;

/* "Student", "Advisor", "Helper". */
const char *stead_words_role (SteadPersonRole role);

G_END_DECLS
