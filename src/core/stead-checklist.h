/* stead-checklist.h - which process a food goes through, and what must be checked on the way.
 *
 * The list names limits and their sources.  It never calls food safe: that some
 * limits were met, by which readings, is all that can be said.
 */
#pragma once

#include "core/stead-limit.h"

G_BEGIN_DECLS

typedef enum
{
  STEAD_STEP_RECEIVE,
  STEAD_STEP_STORE,
  STEAD_STEP_PREPARE,
  STEAD_STEP_COOK,
  STEAD_STEP_COOL,
  STEAD_STEP_REHEAT,
  STEAD_STEP_COLD_HOLD,
  STEAD_STEP_HOT_HOLD,
  STEAD_STEP_SERVE,
} SteadStep;

#define STEAD_N_STEPS (STEAD_STEP_SERVE + 1)

/**
 * stead_step_id:
 * Returns: (transfer none): stable, for files: "cold_hold"
 */
const char *stead_step_id (SteadStep step);

/**
 * stead_step_by_id:
 * @out: (out): the step
 *
 * Returns: whether there is one with that id
 */
gboolean stead_step_by_id (const char *id,
                           SteadStep  *out);

typedef enum
{
  STEAD_PROCESS_NO_COOK,     /* never cooked: no trip through 41 to 135 °F */
  STEAD_PROCESS_SAME_DAY,    /* cooked and served: one trip */
  STEAD_PROCESS_COMPLEX,     /* cooked, cooled, perhaps reheated: two or more */
} SteadProcessKind;

/**
 * stead_process_trips:
 * @steps: (array length=n): in order
 *
 * Complete trips through 41 to 135 °F: up in cooking, down in cooling, up again
 * in reheating; none without a step of cooking.
 * Source: process approach of an overview of the Food Code for local boards of
 * health (read); USDA guidance for school food authorities, 2005 (from memory).
 */
guint stead_process_trips (const SteadStep *steps,
                           gsize            n);

/**
 * stead_process_kind:
 * Returns: the kind of process
 */
SteadProcessKind stead_process_kind (const SteadStep *steps,
                                     gsize            n);

/* A food that is made, in the words of the tables. */
typedef struct
{
  const char           *received;    /* (nullable): "cold_tcs", "raw_shell_eggs" */
  const char           *cooked;      /* (nullable): "poultry", "raw_egg" */
  const char           *held;        /* (nullable): "tcs", "whole_roast" */
  const char           *reheated;    /* (nullable): "cooked_on_site" */
  const SteadLimitFact *facts;       /* (nullable) (array zero-terminated=1): "use", "rule", … */
} SteadChecklistFood;

/* One line of the list. */
typedef struct
{
  SteadStep         step;
  gsize             place;    /* of the step in the process */
  const SteadLimit *limit;    /* belongs to the table */
} SteadChecklistItem;

/**
 * stead_checklist_new:
 * @steps: (array length=n): in order
 * @food: what goes through them; a step whose word is %NULL is left out
 *
 * All rows that compare, step by step, in the order of the table: of steps like
 * 150 °F for 60 s and 155 °F for 17 s any one is enough.
 *
 * Returns: (transfer full) (element-type SteadChecklistItem): the list
 */
GArray *stead_checklist_new (const SteadLimitTable    *table,
                             const SteadStep          *steps,
                             gsize                     n,
                             const SteadChecklistFood *food) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
