/* stead-results-private.h - how the results of an enterprise come about. */
#pragma once

#include "answer/stead-results-answer.h"
#include "answer/stead-statement-answer.h"

G_BEGIN_DECLS

/* Fills @self->whys, out of its figures and the @statement that they were read from. */
void stead_results_put_whys (SteadResultsAnswer         *self,
                             const SteadStatementAnswer *statement);

G_END_DECLS
