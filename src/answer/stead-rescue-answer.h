/* stead-rescue-answer.h - what came of a damaged farm, in words. */
#pragma once

#include "store/stead-rescue.h"

G_BEGIN_DECLS

/* How much was read and what was left out, a few sentences. */
char *stead_rescue_answer_sentence (const SteadRescue *rescue) G_GNUC_WARN_UNUSED_RESULT;

/* The same with what is lost and what --verify finds, a line each, @most lines of each. */
char *stead_rescue_answer_text     (const SteadRescue *rescue,
                                    guint              most) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
