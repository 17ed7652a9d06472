/* stead-question-private.h - questions that are answered in other files. */
#pragma once

#include "answer/stead-question.h"

G_BEGIN_DECLS

/* Each returns the sentence as plain text, with the figures put into @out; NULL with @error. */
char *stead_question_recipe  (SteadStore *store, gint64 id, JsonBuilder *out, GError **error) G_GNUC_WARN_UNUSED_RESULT;
char *stead_question_kitchen (SteadStore *store, gint64 id, JsonBuilder *out, GError **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
