/* stead-house-answer.h - "Is there room and light enough for this flock?" */
#pragma once

#include "answer/stead-words.h"
#include "store/stead-flock-repo.h"

G_BEGIN_DECLS

typedef enum
{
  STEAD_HOUSE_ENOUGH,
  STEAD_HOUSE_SHORT,     /* less than what is needed at the least */
  STEAD_HOUSE_NOT_SAID,  /* nothing is entered to hold against what is needed */
  STEAD_HOUSE_TO_KNOW,   /* what is needed, without a field to hold it against */
} SteadHouseState;

typedef struct
{
  char            *name;    /* "Nests" */
  char            *text;    /* "5 of 6", "6 needed" */
  char            *what;    /* (nullable): what to do, if short */
  double           have;    /* in the base unit; NAN: not said */
  double           need;    /* at the least */
  SteadHouseState  state;
  char            *worked;  /* (nullable): "27 × 1.5 sq ft = 40.5 sq ft" */
} SteadHouseLine;

void stead_house_line_free (SteadHouseLine *line);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadHouseLine, stead_house_line_free)

typedef struct
{
  GPtrArray *lines;     /* of SteadHouseLine; none for birds that no rule is known for */
  int        n_short;
  char      *caution;   /* plain */
  char      *source;    /* plain: where the rules are from */
} SteadHouseAnswer;

/* (transfer full) (nullable): what is needed, worked out, and the sources */
SteadWhy *stead_house_answer_why (const SteadHouseAnswer *self) G_GNUC_WARN_UNUSED_RESULT;

void stead_house_answer_free (SteadHouseAnswer *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadHouseAnswer, stead_house_answer_free)

/**
 * stead_house_answer_new:
 * @flock: a flock of the store
 * @alive: its birds alive
 * @age_weeks: their age; chicks have a brooder, pullets no long days
 * @units: in which lengths and areas are told
 */
SteadHouseAnswer *stead_house_answer_new (SteadStore        *store,
                                          const SteadFlock  *flock,
                                          gint64             alive,
                                          double             age_weeks,
                                          SteadUnitSystem    units,
                                          GError           **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
