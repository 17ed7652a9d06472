/* stead-together-private.h - the words for products sold together. */
#pragma once

#include "answer/stead-together-answer.h"

G_BEGIN_DECLS

/* Sentence and advice, from settled figures. */
void stead_together_put_in_words (SteadTogether *self);

G_END_DECLS
