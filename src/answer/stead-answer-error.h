/* stead-answer-error.h - the error domain of the layer answer.
 *
 * Every message in this domain is meant for the person at the screen: a whole
 * translated sentence that says what to do.  A bug in our own code is never
 * reported here; that is what g_return_if_fail() is for.
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

#define STEAD_ANSWER_ERROR (stead_answer_error_quark ())

/**
 * SteadAnswerError:
 * @STEAD_ANSWER_ERROR_MISSING: a fact that the question needs is not there yet
 * @STEAD_ANSWER_ERROR_UNKNOWN: there is no such question, or nothing of that name
 * @STEAD_ANSWER_ERROR_INPUT: what was typed or imported cannot be taken
 */
typedef enum
{
  STEAD_ANSWER_ERROR_MISSING,
  STEAD_ANSWER_ERROR_UNKNOWN,
  STEAD_ANSWER_ERROR_INPUT,
} SteadAnswerError;

GQuark stead_answer_error_quark (void);

G_END_DECLS
