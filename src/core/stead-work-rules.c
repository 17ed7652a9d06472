/* stead-work-rules.c - who may use which tool, by age. */
#include "config.h"

#include "core/stead-core-error.h"
#include "core/stead-work-rules.h"

#include <glib/gi18n-lib.h>
#include <math.h>

/* Under this age somebody watches in any case. */
#define WATCHED_UNDER_Y 16

/* What is not said is taken at its worst. */
#define WORST 1e6

static gboolean
can_say (double value)
{
  return isnan (value) || value >= 0;
}

/* The row that sets an age for the task in one kind of work; NULL for none. */
static const SteadLimit *
find_age (const SteadLimitTable *rules,
          const SteadToolUse    *use,
          const char            *work)
{
  const SteadLimitFact facts[] = {
    { "work", work, 0 },
    { "height_ft", NULL, isnan (use->height_ft) ? WORST : use->height_ft },
    { "power_hp", NULL, isnan (use->power_hp) ? WORST : use->power_hp },
    { NULL },
  };

  return stead_limit_table_find (rules, "age", use->task, "min_age", facts, NULL);
}

/* Whether a list of this kind of work has the task at all, listed as hazardous or not. */
static gboolean
is_known (const SteadLimitTable *rules,
          const char            *task,
          const char            *work)
{
  const SteadLimitFact facts[] = { { "work", work, 0 }, { "height_ft", NULL, WORST }, { "power_hp", NULL, WORST },
                                   { NULL } };
  g_autoptr(GPtrArray) rows = stead_limit_table_list (rules, "age", task, NULL, facts);

  return rows->len > 0;
}

static gboolean
is_exempt (const SteadLimitTable *rules,
           const SteadToolUse    *use,
           const char            *work)
{
  const SteadLimitFact facts[] = { { "work", work, 0 }, { NULL } };
  const SteadLimit *from;

  if (!use->exemption)
    return FALSE;
  from = stead_limit_table_find (rules, "age", "student_learner", "min_age", facts, NULL);
  return from == NULL || use->age_y >= from->value;
}

static SteadToolFlag
judge (const SteadLimitTable  *rules,
       const SteadToolUse     *use,
       const char             *work,
       const SteadLimit      **out_row)
{
  const SteadLimit *age = find_age (rules, use, work);

  *out_row = age;
  if (age != NULL && use->age_y < age->value)
    return is_exempt (rules, use, work) ? STEAD_TOOL_ALLOW_SUPERVISED : STEAD_TOOL_BLOCK;
  return use->age_y < WATCHED_UNDER_Y ? STEAD_TOOL_ALLOW_SUPERVISED : STEAD_TOOL_ALLOW;
}

gboolean
stead_tool_judge (const SteadLimitTable  *rules,
                  const SteadToolUse     *use,
                  const SteadLimit      **out_row,
                  SteadToolFlag          *out,
                  GError                **error)
{
  static const char * const works[] = { "farm", "non_farm" };
  gboolean known = FALSE;
  SteadToolFlag worst = STEAD_TOOL_ALLOW;
  const SteadLimit *worst_row = NULL;

  g_return_val_if_fail (rules != NULL && use != NULL && use->task != NULL && out != NULL, FALSE);

  if (!(use->age_y >= 0 && use->age_y <= 130) || !can_say (use->height_ft) || !can_say (use->power_hp))
    {
      g_set_error_literal (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_RANGE,
                           _("An age, a height or a power cannot be. Check them."));
      return FALSE;
    }
  for (gsize i = 0; i < G_N_ELEMENTS (works); i++)
    {
      const SteadLimit *row;
      SteadToolFlag flag;

      if (use->kind != STEAD_WORK_BUILDING && (gsize) use->kind != i)
        continue;
      known |= is_known (rules, use->task, works[i]);
      flag = judge (rules, use, works[i], &row);
      if (flag > worst || worst_row == NULL)
        worst_row = row;
      worst = MAX (worst, flag);
    }
  if (!known)
    {
      g_set_error (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_NONE,
                   _("No list of ages knows the task “%s”. Ask the advisor."), use->task);
      return FALSE;
    }
  if (out_row != NULL)
    *out_row = worst_row;
  *out = worst;
  return TRUE;
}
