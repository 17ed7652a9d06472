/* stead-how-sure-private.h - the words of how sure a season is. */
#pragma once

#include "answer/stead-how-sure-answer.h"

G_BEGIN_DECLS

/* Sentence and advice of what was settled. */
void stead_how_sure_put_in_words (SteadHowSure *self);

G_END_DECLS
