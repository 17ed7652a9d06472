/* stead-kitchen-answer.h - "What has to be done, which limits were met, and what came of it?"
 *
 * Limits are those of the tables (data/limits) and the recipe's own where it asks
 * for more; the nearest source stands with each.  A reading is judged as
 * core/stead-check-judge.h judges it.  Times are seconds since 1970, UTC.
 */
#pragma once

#include "store/stead-farm-repo.h"
#include "store/stead-kitchen-repo.h"

G_BEGIN_DECLS

typedef enum
{
  STEAD_RUN_NO_LIMIT,   /* nothing to measure */
  STEAD_RUN_OPEN,       /* not measured yet */
  STEAD_RUN_MET,
  STEAD_RUN_IF_HELD,    /* hot enough, if it stayed so for the time of the limit */
  STEAD_RUN_NOT_MET,
} SteadRunVerdict;

/* One step on the run sheet. */
typedef struct
{
  const SteadKitchenStep *step;     /* of the answer's kitchen */
  int              number;          /* from 1 */
  char            *limit;           /* (nullable): "at least 155 °F for 17 s, or at least 158 °F" */
  char            *source;          /* (nullable): of the limit */
  char            *own;             /* (nullable): the recipe's own limit */
  char            *measure;         /* (nullable): what to measure, as a reading's kind: "food_temp" */
  const SteadShown *shown;          /* (nullable): the last reading that was not corrected */
  char            *reading;         /* (nullable): "158 °F" */
  SteadRunVerdict  verdict;
  char            *verdict_text;    /* (nullable): "met", "not met: 4 °F short" */
  char            *who;             /* (nullable): who did the step */
} SteadRunLine;

typedef struct
{
  SteadFarm    *farm;
  SteadKitchen *kitchen;
  SteadHarvest *harvest;        /* (nullable): what came out */
  GPtrArray    *lines;          /* of SteadRunLine */
  GPtrArray    *readings;       /* of SteadShown, of the whole batch */
  GPtrArray    *people;         /* of SteadBatchPerson */
  GPtrArray    *taken;          /* of SteadMove: out of which lots, oldest first */
  int           n_done;         /* steps that are done */
  int           n_open;         /* limits that were not measured */
  int           n_not_met;
  double        planned_cents;  /* of what the parts need, at today's prices; NAN: one is not known */
  gint64        used_cents;     /* of what was taken out */
  double        planned_unit_cents, unit_cents;  /* of one base unit made; NAN */
  double        yield_frac;     /* good / planned; NAN: not finished */
  double        worked_minutes; /* by all people */
  gboolean      all_taken;      /* the parts' needs are covered */
  char         *sentence;       /* markup */
  char         *cost_text;      /* (nullable) plain: settled against planned */
  char         *caution;        /* (nullable) plain */
} SteadKitchenAnswer;

/**
 * stead_run_line_of_recipe:
 * @number: of the step, from 1
 *
 * Returns: (transfer full): the limits of a step that nobody cooks yet; its @step is %NULL
 */
SteadRunLine *stead_run_line_of_recipe (const SteadRecipeStep *step,
                                        int                    number,
                                        SteadUnitSystem        units) G_GNUC_WARN_UNUSED_RESULT;

/* "158 °F", "pH 4.2": a reading of a run sheet. */
char *stead_run_value_text (const SteadShown *shown, SteadUnitSystem units) G_GNUC_WARN_UNUSED_RESULT;

void stead_run_line_free       (SteadRunLine *line);
void stead_kitchen_answer_free (SteadKitchenAnswer *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadKitchenAnswer, stead_kitchen_answer_free)

SteadKitchenAnswer *stead_kitchen_answer_new (SteadStore  *store,
                                              gint64       batch_id,
                                              GError     **error) G_GNUC_WARN_UNUSED_RESULT;

/* (transfer full) (element-type SteadWhy): what went in, what one costs, by the plan too, and the yield. */
GPtrArray *stead_kitchen_answer_whys (const SteadKitchenAnswer *self) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
