/* stead-step-words.h - the steps of a recipe that have a limit of food safety, in words.
 *
 * The words in the file are those of the limit tables (data/limits).
 */
#pragma once

#include "store/stead-recipe-repo.h"

G_BEGIN_DECLS

typedef struct
{
  const char *word;    /* NULL: none */
  const char *label;   /* untranslated */
} SteadStepWord;

/* Kinds of step; the first one has no limit. */
const SteadStepWord *stead_step_kinds (gsize *n);
/* Foods for a kind of step; none for a kind whose limit is the same for all. */
const SteadStepWord *stead_step_foods (const char *kind, gsize *n);
/* TRUE: the food must be at least so warm; FALSE: at most. */
gboolean             stead_step_is_hot (const char *kind);

const char          *stead_kept_label  (SteadKept kept);
/* Published processes that the tables hold; the first one is none. */
const SteadStepWord *stead_process_words (gsize *n);
const SteadStepWord *stead_jar_words     (gsize *n);

G_END_DECLS
