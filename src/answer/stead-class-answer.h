/* stead-class-answer.h - "Who works on the farm?" */
#pragma once

#include "store/stead-farm-repo.h"

G_BEGIN_DECLS

typedef struct
{
  GPtrArray *people;      /* of SteadPerson, still here, by name */
  int        n_students;
  char      *sentence;    /* markup: "14 students and 2 grown-ups work on the farm." */
} SteadClassAnswer;

void stead_class_answer_free (SteadClassAnswer *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadClassAnswer, stead_class_answer_free)

/* Returns: (transfer full): those who have not left, or %NULL with @error */
SteadClassAnswer *stead_class_answer_new (SteadStore  *store,
                                          GError     **error) G_GNUC_WARN_UNUSED_RESULT;

/* "Student", "Advisor", "Helper". */
const char *stead_words_role (SteadPersonRole role);

G_END_DECLS
