/* stead-check-answer-private.h - what the parts of the answer about one checklist share. */
#pragma once

#include "answer/stead-check-answer.h"

G_BEGIN_DECLS

/* Fills in the sentences, once all else is there. */
void        stead_check_answer_say  (SteadCheckAnswer *self);
/* (nullable): the name of a person. */
const char *stead_check_person_name (const SteadCheckAnswer *self, gint64 id);

/* A reading of @line as it is told; @dones: of SteadDone, what was done about all of the list. */
SteadCheckRead *stead_check_read_new  (const SteadCheckAnswer *self,
                                       const SteadCheckedLine *line,
                                       const SteadShown       *shown,
                                       const GPtrArray        *dones) G_GNUC_WARN_UNUSED_RESULT;
void            stead_check_read_free (gpointer data);

G_END_DECLS
