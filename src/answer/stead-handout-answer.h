/* stead-handout-answer.h - "Whom does this document tell of, once it is handed out?" */
#pragma once

#include "store/stead-store.h"

G_BEGIN_DECLS

typedef struct
{
  char   *what;       /* plain, as it goes into the log: "Packet “Kitchen team”. It shows pictures." */
  char   *sentence;   /* (nullable): markup: whom it tells of; of nobody: none */
  GArray *people;     /* of gint64: each once; empty: of nobody by name, and nothing is to be written down */
} SteadHandoutAnswer;

void stead_handout_answer_free (SteadHandoutAnswer *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadHandoutAnswer, stead_handout_answer_free)

/* Whether the document @paper tells of students by name, so that it is asked who gets it. */
gboolean stead_handout_is_personal (const char *paper);

/**
 * stead_handout_answer_new:
 * @paper: a document of which stead_handout_is_personal() is true
 * @of: (nullable): the packet or the person it is of; the first one if not given
 * @from, @to: days of the hours of a week, both included
 */
SteadHandoutAnswer *stead_handout_answer_new (SteadStore  *store,
                                              const char  *paper,
                                              const char  *of,
                                              SteadDay     from,
                                              SteadDay     to,
                                              GError     **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
