/* stead-limit-card-answer.h - "Which limits hold for our own foods?", in one language or in two. */
#pragma once

#include "answer/stead-check-plan-answer.h"

G_BEGIN_DECLS

/* One limit, in the order of the languages. */
typedef struct
{
  GPtrArray *works;    /* of char *: "Cook" */
  GPtrArray *limits;   /* of char *: "at least 155 °F for 17 seconds"; the same text stands once */
  GPtrArray *foods;    /* of char *, as the kitchen calls them; none: all of them */
  char      *source;   /* with its version */
} SteadLimitCardEntry;

typedef struct
{
  SteadUnitSystem  units;
  GPtrArray       *titles;     /* of char *, one a language */
  GPtrArray       *cautions;   /* likewise */
  GPtrArray       *entries;    /* of SteadLimitCardEntry, in the order of a day's work */
} SteadLimitCardAnswer;

void stead_limit_card_answer_free (SteadLimitCardAnswer *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadLimitCardAnswer, stead_limit_card_answer_free)

/**
 * stead_limit_card_answer_new:
 * @languages: (nullable) (array zero-terminated=1): of stead_language_list(), the first one
 *   first; %NULL: that of the program
 *
 * Only what a thermometer or a clock shows at the stove, at the counter and in the cooler.
 * The farm's own stricter limits stand with their source.
 *
 * Returns: (transfer full): or %NULL with @error: there are no recipes and no products yet
 */
SteadLimitCardAnswer *stead_limit_card_answer_new (SteadStore          *store,
                                                   const char * const  *languages,
                                                   GError             **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
