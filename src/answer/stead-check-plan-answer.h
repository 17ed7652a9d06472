/* stead-check-plan-answer.h - "What must be checked, against what, and what must not be sold?"
 *
 * The plan of core/stead-check-plan.h in sentences.  A limit that the tables keep in
 * °F is shown in °F, and before it in °C on a metric farm, rounded to the strict side:
 * it is compared in °F.
 */
#pragma once

#include "answer/stead-check-menu.h"
#include "store/stead-farm-repo.h"

G_BEGIN_DECLS

typedef enum
{
  STEAD_CHECK_ORDER_MENU,       /* @text */
  STEAD_CHECK_ORDER_RECIPE,     /* @id */
  STEAD_CHECK_ORDER_KITCHEN,    /* @id: a kitchen batch */
  STEAD_CHECK_ORDER_SALE_DAY,   /* @id: of that sale day; 0: of what is planned to be sold next */
} SteadCheckOrderKind;

/* What a list is wanted for, and what was answered so far. */
typedef struct
{
  SteadCheckOrderKind       kind;
  gint64                    id;
  const char               *text;       /* (nullable) */
  SteadDay                  day;        /* STEAD_DAY_NONE: today */
  const SteadCheckAnswered *answers;
  gsize                     n_answers;
  const SteadLimitLocal    *local;      /* the farm's own stricter rows */
  gsize                     n_local;
  int                       edition;    /* 0: 2022 */
  const char               *cooling;    /* (nullable): as in SteadCheckCase */
  const char               *state;      /* (nullable) */
} SteadCheckOrder;

typedef struct
{
  const SteadCheckLine *line;
  char *key;       /* the same for the same check in each plan: "cook:raw_egg:Breakfast bowls" */
  char *food;      /* (nullable): its name */
  char *text;      /* "Cook the pooled eggs to at least 155 °F for 17 seconds, or 158 °F." */
  char *limit;     /* (nullable): the limit alone: "at least 155 °F for 17 seconds, or 158 °F" */
  char *own;       /* (nullable): "The recipe asks for at least 160 °F." */
  char *reason;    /* "Salmonella can live through less heat." */
  char *source;    /* "FDA Food Code 2022, §3-401.11(A)(2)" */
  char *tool;      /* (nullable): "a thin probe, in the thickest part" */
  char *often;     /* "each pot, pan or order" */
  char *who;       /* "the cook" */
} SteadCheckSaid;

typedef struct
{
  const SteadCheckQuestion *question;
  char      *food;      /* (nullable): its name */
  char      *text;      /* "How is it kept until it is eaten?" */
  GPtrArray *answers;   /* of char *, in the order of the question's words */
} SteadCheckAsked;

typedef struct
{
  const SteadCheckStop *stop;
  char *food;      /* (nullable) */
  char *text;      /* why it cannot be sold as planned */
  char *way;       /* the legal way round */
  char *source;
} SteadCheckStopped;

typedef struct
{
  SteadFarm       *farm;
  SteadLimitTable *table;       /* the limits in force, with the farm's own */
  SteadCheckMenu  *menu;
  SteadCheckPlan  *plan;
  GPtrArray       *questions;   /* of SteadCheckAsked, as in the plan */
  GPtrArray       *lines;       /* of SteadCheckSaid, as in the plan */
  GPtrArray       *stops;       /* of SteadCheckStopped, as in the plan */
  GPtrArray       *processes;   /* of char *: of each food, what way it goes; "" of what is not made here */
  char            *sentence;    /* plain */
  char            *caution;     /* plain */
} SteadCheckPlanAnswer;

void stead_check_plan_answer_free (SteadCheckPlanAnswer *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadCheckPlanAnswer, stead_check_plan_answer_free)

/**
 * stead_check_plan_answer_new:
 *
 * Returns: (transfer full): the list; or %NULL with @error: there is no such batch, nothing
 *   was typed, a local row is looser than the shipped one
 */
SteadCheckPlanAnswer *stead_check_plan_answer_new (SteadStore             *store,
                                                   const SteadCheckOrder  *order,
                                                   GError                **error) G_GNUC_WARN_UNUSED_RESULT;

/* "Before the work", "Cooking": head of a part of the list. */
const char *stead_check_stage_name (SteadCheckStage stage);

/**
 * stead_check_limit_text:
 * @rows: of const SteadLimit, alternatives or (with @all) all to be met
 *
 * Returns: (transfer full) (nullable): "at least 155 °F for 17 seconds, or 158 °F"; %NULL
 *   for rows that do not compare
 */
char *stead_check_limit_text (const GPtrArray *rows,
                              gboolean         all,
                              SteadUnitSystem  units) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
