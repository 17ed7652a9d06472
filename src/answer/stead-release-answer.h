/* stead-release-answer.h - "What left the farm, and who should be removed from it?" */
#pragma once

#include "store/stead-release-repo.h"

G_BEGIN_DECLS

typedef struct
{
  GPtrArray *releases;   /* (element-type SteadRelease): newest first */
  guint      due;        /* people whose day for removing has come */
  char      *sentence;   /* markup */
} SteadReleaseAnswer;

void stead_release_answer_free (SteadReleaseAnswer *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadReleaseAnswer, stead_release_answer_free)

/* (transfer none): why records may leave, as they are chosen; %NULL-terminated, to be translated. */
const char * const *stead_release_grounds (void);

SteadReleaseAnswer *stead_release_answer_new (SteadStore  *store,
                                              GError     **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
