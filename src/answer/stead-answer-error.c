/* stead-answer-error.c - the quark of the layer's error domain. */
#include "config.h"

#include "answer/stead-answer-error.h"

G_DEFINE_QUARK (stead-answer-error-quark, stead_answer_error)
