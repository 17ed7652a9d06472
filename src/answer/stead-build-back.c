/* stead-build-back.c - a build backwards from its wanted day: what must be done by when.
 *
 * First the money, the question about permits, and the call about buried lines; then all is
 * bought; then the stretches of work, one after the other in their order.  Weekends count
 * as days, since students may work on them; days off are for the people to see.
 */
#include "config.h"

#include "answer/stead-build-path-private.h"
#include "answer/stead-words-private.h"
#include "core/stead-dig.h"
#include "core/stead-schedule.h"

#include <glib/gi18n-lib.h>
#include <math.h>

/* Hours that all who work together do in a day, for work without days of its own.  Common
 * practice, no source: four students for two hours after school. */
#define DAY_HOURS 8

/* Buying, and asking about permits: a day each.  Own rule; what is ordered takes longer. */
#define BUY_DAYS 1
#define ASK_DAYS 1

void
stead_build_step_free (gpointer data)
{
  SteadBuildStep *step = data;

  g_free (step->name);
  g_free (step);
}

/* --- what there is to do ------------------------------------------------------------------ */

static void
add_step (SteadBuildPath *self,
          SteadStepKind   kind,
          const char     *name,
          int             days)
{
  SteadBuildStep *step = g_new0 (SteadBuildStep, 1);

  step->kind = kind;
  step->name = g_strdup (name);
  step->days = CLAMP (days, 1, STEAD_SCHEDULE_MOST_DAYS);
  step->can_begin = step->begin_by = step->done_by = STEAD_DAY_NONE;
  g_ptr_array_add (self->steps, step);
}

static int
phase_days (const SteadBuildPhase *phase)
{
  if (phase->from_day != STEAD_DAY_NONE && phase->to_day >= phase->from_day)
    return phase->to_day - phase->from_day + 1;
  return (int) MIN (ceil (phase->hours / DAY_HOURS), STEAD_SCHEDULE_MOST_DAYS);
}

void
stead_build_back_read (SteadBuildPath         *self,
                       const SteadBuildAnswer *answer)
{
  const SteadBuild *build = answer->build;
  gboolean drawn = build->kind != STEAD_BUILD_LIST;

  if (self->goal_on == STEAD_DAY_NONE || self->goal_on <= self->today || build->finished_on != STEAD_DAY_NONE)
    return;
  self->notice_days = build->notice_days;
  if (self->goal_cents > self->start_cents)
    add_step (self, STEAD_STEP_MONEY, _("The money comes in"), 1);
  if (drawn && build->permit_on == STEAD_DAY_NONE)
    add_step (self, STEAD_STEP_PERMIT, _("Ask about permits"), ASK_DAYS);
  if (drawn && build->called_on == STEAD_DAY_NONE && answer->phases->len > 0)
    add_step (self, STEAD_STEP_CALL, _("Have buried lines marked (811)"), 1);
  if (answer->bill.bought_cents > 0)
    add_step (self, STEAD_STEP_BUY, _("Buy what is still open"), BUY_DAYS);
  for (guint i = 0; i < answer->phases->len; i++)
    {
      const SteadBuildPhase *phase = answer->phases->pdata[i];

      if (phase->done_on == STEAD_DAY_NONE)
        add_step (self, STEAD_STEP_WORK, phase->name, phase_days (phase));
    }
}

/* --- when ------------------------------------------------------------------------------------ */

static SteadBuildStep *
find_step (const SteadBuildPath *self,
           SteadStepKind         kind)
{
  for (guint i = 0; i < self->steps->len; i++)
    if (((SteadBuildStep *) self->steps->pdata[i])->kind == kind)
      return self->steps->pdata[i];
  return NULL;
}

/* Work waits for the work before it, the first for the call and for what is bought; buying
 * waits for the money and the permit. */
static gboolean
waits_for (SteadStepKind step,
           SteadStepKind before,
           gboolean      first_work)
{
  switch (step)
    {
    case STEAD_STEP_BUY: return before == STEAD_STEP_MONEY || before == STEAD_STEP_PERMIT;
    case STEAD_STEP_WORK: return first_work && before != STEAD_STEP_WORK;
    case STEAD_STEP_MONEY:
    case STEAD_STEP_PERMIT:
    case STEAD_STEP_CALL:
    default: return FALSE;
    }
}

static void
link_step (const SteadBuildPath *self,
           guint                 i,
           SteadScheduleStep    *out)
{
  const SteadBuildStep *step = self->steps->pdata[i];
  const SteadBuildStep *last = i > 0 ? self->steps->pdata[i - 1] : NULL;
  gboolean first_work = last == NULL || last->kind != STEAD_STEP_WORK;

  *out = (SteadScheduleStep) { .days = step->days };
  if (step->kind == STEAD_STEP_WORK && !first_work)
    out->after[out->n_after++] = i - 1;
  for (guint k = 0; k < i && out->n_after < STEAD_SCHEDULE_MOST_AFTER; k++)
    if (waits_for (step->kind, ((SteadBuildStep *) self->steps->pdata[k])->kind, first_work))
      out->after[out->n_after++] = k;
}

static void
lay_out (SteadBuildPath *self)
{
  g_autofree SteadScheduleStep *steps = g_new0 (SteadScheduleStep, self->steps->len);
  g_autofree SteadScheduleTime *times = g_new0 (SteadScheduleTime, self->steps->len);
  int all, shift;

  for (guint i = 0; i < self->steps->len; i++)
    link_step (self, i, &steps[i]);
  all = stead_schedule (steps, self->steps->len, times);
  shift = self->goal_on - self->today + 1 - all;     /* all of it may begin so many days later */
  for (guint i = 0; i < self->steps->len; i++)
    {
      SteadBuildStep *step = self->steps->pdata[i];

      step->can_begin = self->today + times[i].earliest;
      step->begin_by = self->today + shift + times[i].latest;
      step->done_by = step->begin_by + step->days - 1;
      step->spare = step->begin_by - step->can_begin;
      step->decides = times[i].latest == times[i].earliest;
    }
}

/* How long the money takes, by the path: until it is there with 80 of 100. */
static void
time_money (SteadBuildPath *self)
{
  SteadBuildStep *money = find_step (self, STEAD_STEP_MONEY);

  if (money != NULL && self->days[1] != STEAD_DAY_NONE)
    money->days = CLAMP (self->days[1] - self->today + 1, 1, STEAD_SCHEDULE_MOST_DAYS);
}

/* Business days: told backwards from the latest day on which the work begins. */
static void
time_call (SteadBuildPath *self)
{
  SteadBuildStep *call = find_step (self, STEAD_STEP_CALL);
  SteadDay latest;

  if (call == NULL || self->work_by == STEAD_DAY_NONE)
    return;
  latest = stead_dig_latest_call (self->work_by, self->notice_days, NULL, 0);
  if (latest != STEAD_DAY_NONE)
    call->days = self->work_by - latest;
}

/* Money that what is planned does not bring: no day can be told, and it alone decides. */
static void
mark_hopeless (SteadBuildPath *self)
{
  const SteadBuildStep *money = find_step (self, STEAD_STEP_MONEY);

  if (money == NULL || self->days[1] != STEAD_DAY_NONE)
    return;
  for (guint i = 0; i < self->steps->len; i++)
    {
      SteadBuildStep *step = self->steps->pdata[i];

      step->decides = step == money;
      if (step == money || step->kind == STEAD_STEP_BUY || step->kind == STEAD_STEP_WORK)
        step->can_begin = STEAD_DAY_NONE;
    }
}

static double
chance_by (const SteadBuildPath *self,
           SteadDay              day)
{
  double chance = NAN;

  for (guint i = 0; i < self->fans->len && g_array_index (self->fans, SteadBuildFan, i).day <= day; i++)
    chance = g_array_index (self->fans, SteadBuildFan, i).chance;
  return isnan (chance) ? 0 : chance;
}

void
stead_build_back_run (SteadBuildPath *self)
{
  const SteadBuildStep *money = find_step (self, STEAD_STEP_MONEY);
  const SteadBuildStep *work = find_step (self, STEAD_STEP_WORK);

  if (self->steps->len == 0)
    return;
  time_money (self);
  lay_out (self);
  if (work != NULL)
    self->work_by = work->begin_by;
  time_call (self);
  lay_out (self);
  mark_hopeless (self);
  if (money == NULL)
    return;
  self->money_by = money->done_by;
  self->chance_money = chance_by (self, self->money_by);
}

/* --- words ------------------------------------------------------------------------------------ */

static char *
need_sentence (const SteadBuildPath *self)
{
  g_autofree char *goal = stead_day_format (self->goal_on, STEAD_DAY_STYLE_MEDIUM);
  g_autofree char *money = self->money_by != STEAD_DAY_NONE ? stead_day_format (self->money_by, STEAD_DAY_STYLE_MEDIUM) : NULL;
  g_autofree char *work = self->work_by != STEAD_DAY_NONE ? stead_day_format (self->work_by, STEAD_DAY_STYLE_MEDIUM) : NULL;
  g_autofree char *chance = stead_words_chance (isnan (self->chance_money) ? 0 : self->chance_money);

  if (money != NULL && work != NULL)
    /* Translators: the wanted day, a day, a chance, a day. */
    return g_strdup_printf (_("To stand by %1$s, its money has to be there by <b>%2$s</b> (the chance is %3$s), and the work has to begin by <b>%4$s</b>."),
                            goal, money, chance, work);
  if (money != NULL)
    /* Translators: the wanted day, a day, a chance. */
    return g_strdup_printf (_("To stand by %1$s, its money has to be there by <b>%2$s</b>: the chance is %3$s."), goal, money, chance);
  if (work != NULL)
    return g_strdup_printf (_("To stand by %1$s, the work has to begin by <b>%2$s</b>."), goal, work);
  return NULL;
}

static char *
decides_sentence (const SteadBuildPath *self)
{
  const SteadBuildStep *first = NULL;
  g_autofree char *name = NULL;

  for (guint i = 0; i < self->steps->len && first == NULL; i++)
    if (((SteadBuildStep *) self->steps->pdata[i])->decides)
      first = self->steps->pdata[i];
  if (first == NULL)
    return NULL;
  if (first->can_begin == STEAD_DAY_NONE)
    return g_strdup (_("What is planned does not bring its money: plan more sales, look for gifts, or choose a later day."));
  name = g_markup_escape_text (first->name, -1);
  if (first->spare > 0)
    /* Translators: a step of the work, and days. */
    return g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "“%s” decides the day: there is %d day to spare.",
                                         "“%s” decides the day: there are %d days to spare.", (gulong) first->spare),
                            name, first->spare);
  if (first->spare == 0)
    return g_strdup_printf (_("“%s” decides the day: there is no day to spare."), name);
  return g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "“%s” decides the day, and it is %d day too late: choose a later day, or do it faster.",
                                       "“%s” decides the day, and it is %d days too late: choose a later day, or do it faster.",
                                       (gulong) -first->spare), name, -first->spare);
}

static char *
day_or_dash (SteadDay day)
{
  return day != STEAD_DAY_NONE ? stead_day_format (day, STEAD_DAY_STYLE_MEDIUM) : g_strdup ("–");
}

char **
stead_build_step_cells (const SteadBuildStep *step)
{
  char **cells = g_new0 (char *, 7);
  gboolean told = step->can_begin != STEAD_DAY_NONE;

  cells[0] = g_strdup (step->name);
  cells[1] = told || step->kind != STEAD_STEP_MONEY ? g_strdup_printf ("%d", step->days) : g_strdup ("–");
  cells[2] = day_or_dash (step->can_begin);
  cells[3] = step->kind == STEAD_STEP_MONEY ? g_strdup ("–") : day_or_dash (step->begin_by);
  cells[4] = day_or_dash (step->done_by);
  cells[5] = told ? g_strdup_printf ("%d", step->spare) : g_strdup ("–");
  return cells;
}

void
stead_build_back_say (SteadBuildPath *self)
{
  g_autofree char *need = NULL;
  g_autofree char *decides = NULL;
  GString *text;

  if (self->steps->len == 0)
    return;
  need = need_sentence (self);
  decides = decides_sentence (self);
  text = g_string_new (NULL);
  stead_words_add (text, need);
  stead_words_add (text, decides);
  self->steps_sentence = stead_words_end (text);
}
