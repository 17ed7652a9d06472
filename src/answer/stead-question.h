/* stead-question.h - every question by name, for programs and for the command line. */
#pragma once

#include <json-glib/json-glib.h>

#include "store/stead-store.h"

G_BEGIN_DECLS

typedef struct
{
  const char *name;     /* "cost", "price", "flock", "recipe", "kitchen", "batch", "water", "due", "stock" */
  const char *asks;     /* the question in words, untranslated; show with _() */
  const char *of;       /* (nullable): "product", "flock", "recipe", "kitchen", "water" */
} SteadQuestion;

const SteadQuestion *stead_question_list (gsize *n_questions);

/**
 * stead_question_ask:
 * @name: a question's name
 * @of: (nullable): name of the product, flock or water; the first one if not given
 * @out_sentence: (out): plain text
 * @out_figures: (out): an object of numbers and texts; money in minor units, SI units in the names
 */
gboolean stead_question_ask (SteadStore  *store,
                             const char  *name,
                             const char  *of,
                             char       **out_sentence,
                             JsonNode   **out_figures,
                             GError     **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
