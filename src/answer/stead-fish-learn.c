/* stead-fish-learn.c - the growth of a group, learned from its weighings.
 *
 * Where fish come or go whose weight differs from the others', the mean jumps and
 * no growth curve passes through.  There a new stretch begins, with the mean that
 * follows from the numbers; the coefficient learned so far goes along.
 */
#include "config.h"

#include "answer/stead-fish-private.h"
#include "core/stead-fish-growth.h"
#include "core/stead-fish-sample.h"

#include <math.h>

/* A mean that moves by less than this is no jump. */
#define JUMP_FRAC 0.03

/* A mean worked out from numbers and weights is as sure as this many weighed fish. */
#define SURE_AS_FISH 30.0

/* Days between two points of a line. */
#define STEP_DAYS 7

/* A fish that the program does not know grows by every degree above freezing. */
#define PLAIN_OPTIMUM_C STEAD_FISH_MOST_C
#define PLAIN_LEAST_C 0

/* What happened to the mean on one day. */
typedef enum { CAME, WENT, WEIGHED } EventKind;

typedef struct
{
  EventKind            kind;
  SteadDay             day;
  gint64               n;
  double               mean_g;
  const SteadWeighing *weighing;
  guint                mark;       /* of a weighing */
} Event;

/* One stretch without a jump. */
typedef struct
{
  const SteadFishWarmth *warmth;
  SteadFishLearned      *learned;
  GArray                *weighed;  /* of SteadGrowthWeighing: what the fit takes */
  GArray                *marks;    /* of guint: the mark of each, or G_MAXUINT */
  SteadDay               first_day, last_day;
  double                 tgc;      /* to start from */
  gboolean               is_fit;
} Stretch;

void
stead_fish_learned_clear (SteadFishLearned *learned)
{
  g_clear_pointer (&learned->marks, g_array_unref);
  g_clear_pointer (&learned->steps, g_array_unref);
}

/* --- what happened ----------------------------------------------------------------- */

static int
compare_events (gconstpointer a,
                gconstpointer b)
{
  const Event *first = a, *second = b;

  if (first->day != second->day)
    return first->day < second->day ? -1 : 1;
  return (int) first->kind - (int) second->kind;
}

static gboolean
add_moves (SteadStore       *store,
           const SteadFish  *group,
           GArray           *events,
           GError          **error)
{
  g_autoptr(GPtrArray) moves = stead_fish_repo_moves (store, group->batch.id, error);

  for (guint i = 0; moves != NULL && i < moves->len; i++)
    {
      const SteadFishMove *move = moves->pdata[i];
      Event event = { move->to_id == group->batch.id ? CAME : WENT, move->day, move->n, move->mean_g, NULL, 0 };

      g_array_append_val (events, event);
    }
  return moves != NULL;
}

/* A harvest tells what its fish weighed only where they were weighed alive. */
static gboolean
add_harvests (SteadStore       *store,
              const SteadFish  *group,
              SteadDay          to,
              GArray           *events,
              GError          **error)
{
  g_autoptr(GPtrArray) harvests = stead_harvest_repo_list (store, group->batch.id, group->batch.started_on, to, error);

  for (guint i = 0; harvests != NULL && i < harvests->len; i++)
    {
      const SteadHarvest *harvest = harvests->pdata[i];

      if (harvest->pieces > 0 && harvest->live_kg > 0)
        {
          Event event = { WENT, harvest->day, harvest->pieces, 1000 * harvest->live_kg / (double) harvest->pieces,
                          NULL, 0 };

          g_array_append_val (events, event);
        }
    }
  return harvests != NULL;
}

static void
add_weighings (GPtrArray        *weighings,
               SteadDay          to,
               SteadFishLearned *learned,
               GArray           *events)
{
  for (guint i = 0; i < weighings->len; i++)
    {
      const SteadWeighing *weighing = weighings->pdata[i];
      Event event = { WEIGHED, weighing->day, weighing->n, stead_weighing_mean_g (weighing), weighing,
                      learned->marks->len };
      SteadGrowthMark mark = { .day = weighing->day, .n = weighing->n, .mean_g = event.mean_g,
                               .sd_g = weighing->sd_g, .left_out = weighing->left_out };

      if (weighing->day > to)
        continue;
      g_array_append_val (learned->marks, mark);
      learned->last_weighed = weighing->day;
      if (!weighing->left_out)
        g_array_append_val (events, event);
    }
}

/* --- one stretch ---------------------------------------------------------------------- */

static void
stretch_begin (Stretch  *stretch,
               SteadDay  day,
               double    fish,
               double    mean_g)
{
  SteadGrowthWeighing first = { .fish = fish, .mean_g = mean_g, .sd_g = NAN };
  guint no_mark = G_MAXUINT;

  g_array_set_size (stretch->weighed, 0);
  g_array_set_size (stretch->marks, 0);
  g_array_append_val (stretch->weighed, first);
  g_array_append_val (stretch->marks, no_mark);
  stretch->first_day = stretch->last_day = day;
  stretch->is_fit = FALSE;
}

static void
stretch_add (Stretch     *stretch,
             const Event *event)
{
  SteadGrowthWeighing next = {
    .fish = (double) event->n, .mean_g = event->mean_g, .sd_g = event->weighing->sd_g,
    .degree_days = stead_fish_warmth_sum (stretch->warmth, &stretch->learned->kind, stretch->last_day, event->day),
  };

  /* Without any temperature nothing tells how the two belong together. */
  if (stretch->warmth->filled_c == NULL || stretch->weighed->len >= STEAD_GROWTH_FIT_MAX_WEIGHINGS)
    {
      stretch_begin (stretch, event->day, next.fish, next.mean_g);
      return;
    }
  g_array_append_val (stretch->weighed, next);
  g_array_append_val (stretch->marks, event->mark);
  stretch->last_day = event->day;
  stretch->is_fit = FALSE;
}

static gboolean
stretch_fit (Stretch  *stretch,
             GError  **error)
{
  if (stretch->is_fit || stretch->weighed->len == 0)
    return TRUE;
  stretch->is_fit = stead_growth_fit ((const SteadGrowthWeighing *) (gpointer) stretch->weighed->data,
                                      stretch->weighed->len, stretch->tgc, &stretch->learned->fit, error);
  return stretch->is_fit;
}

/* Until single fish were weighed, they differ as much as the group's plan says. */
static void
take_spread (const SteadFish *group,
             SteadGrowthFit  *fit)
{
  double planned = pow (group->spread_frac, 2) - pow (STEAD_GROWTH_USUAL_CV_FRAC, 2);

  if (fit->cv_df > 0)
    fit->cv_frac = sqrt (MAX (0, pow (fit->cv_frac, 2) + STEAD_GROWTH_USUAL_CV_FISH * planned / fit->cv_df));
}

static double
mean_on (const Stretch *stretch,
         SteadDay       day)
{
  const SteadFishLearned *learned = stretch->learned;
  double sum = day >= stretch->last_day
               ? stead_fish_warmth_sum (stretch->warmth, &learned->kind, stretch->last_day, day)
               : -stead_fish_warmth_sum (stretch->warmth, &learned->kind, day, stretch->last_day);
  double root = learned->fit.root_g13 + learned->fit.tgc_x100 * sum / 100;

  return pow (MAX (0, root), 3);
}

static void
add_step (Stretch  *stretch,
          SteadDay  day)
{
  double mean_g = mean_on (stretch, day);
  SteadGrowthStep step = { day, mean_g, mean_g, mean_g };

  g_array_append_val (stretch->learned->steps, step);
}

/* The learned line of a stretch, and the weighings that it does not follow. */
static void
stretch_close (Stretch  *stretch,
               SteadDay  end)
{
  const SteadGrowthFit *fit = &stretch->learned->fit;

  for (SteadDay day = stretch->first_day; day < end; day += STEP_DAYS)
    add_step (stretch, day);
  add_step (stretch, end);
  for (gsize i = 0; i < MIN (fit->n_outliers, STEAD_GROWTH_FIT_MAX_OUTLIERS); i++)
    {
      guint mark = g_array_index (stretch->marks, guint, fit->outliers[i]);

      if (mark != G_MAXUINT)
        g_array_index (stretch->learned->marks, SteadGrowthMark, mark).far_off = TRUE;
    }
  stretch->tgc = fit->tgc_x100 > 0 ? fit->tgc_x100 : stretch->tgc;
}

/* --- from event to event ----------------------------------------------------------------- */

/* The mean of those that are there after some came or went. */
static double
mixed_mean_g (double mean_g,
              gint64 there,
              gint64 change,
              double change_mean_g)
{
  double after = (double) (there + change);

  return after > 0 ? ((double) there * mean_g + (double) change * change_mean_g) / after : NAN;
}

static gboolean
take_change (Stretch      *stretch,
             const Event  *event,
             gint64       *there,
             GError      **error)
{
  gint64 change = event->kind == CAME ? event->n : -event->n;
  double before_g, after_g;

  if (stretch->weighed->len == 0)
    {
      if (change > 0)
        stretch_begin (stretch, event->day, SURE_AS_FISH, event->mean_g);
      *there += change;
      return TRUE;
    }
  if (!stretch_fit (stretch, error))
    return FALSE;
  before_g = mean_on (stretch, event->day);
  after_g = mixed_mean_g (before_g, *there, change, event->mean_g);
  *there += change;
  /* More weight went than was there: the scale or the count is off, so nothing is learned of it. */
  if (!(after_g > 0) || fabs (after_g / before_g - 1) < JUMP_FRAC)
    return TRUE;
  stretch_close (stretch, event->day);
  stretch_begin (stretch, event->day, SURE_AS_FISH, after_g);
  return TRUE;
}

/* How many there were before anything happened on @day. */
static gint64
number_before (const GArray *counts,
               SteadDay      day)
{
  gint64 before = 0;

  for (guint i = 0; i < counts->len; i++)
    {
      const SteadFishCount *count = &g_array_index (counts, SteadFishCount, i);

      if (count->day < day)
        before = count->n;
    }
  return before;
}

static gboolean
walk_events (Stretch       *stretch,
             const GArray  *events,
             const GArray  *counts,
             SteadDay       to,
             GError       **error)
{
  SteadDay day = STEAD_DAY_NONE;
  gint64 there = 0;

  for (guint i = 0; i < events->len; i++)
    {
      const Event *event = &g_array_index (events, Event, i);

      if (event->day > to)
        break;
      if (event->day != day && i > 0)
        there = number_before (counts, event->day);
      day = event->day;
      if (event->kind != WEIGHED)
        {
          if (!take_change (stretch, event, &there, error))
            return FALSE;
        }
      else if (stretch->weighed->len == 0)
        stretch_begin (stretch, event->day, (double) event->n, event->mean_g);
      else
        stretch_add (stretch, event);
    }
  if (stretch->weighed->len == 0 || !stretch_fit (stretch, error))
    return stretch->weighed->len == 0;
  stretch_close (stretch, MAX (to, stretch->first_day));
  return TRUE;
}

static void
take_kind (const SteadFish  *group,
           SteadFishLearned *learned)
{
  learned->is_known = stead_fish_species_from_id (group->species, &learned->species);
  learned->kind = learned->is_known ? *stead_fish_kind (learned->species)
                  : (SteadFishKind) { .optimum_c = PLAIN_OPTIMUM_C, .growth_min_c = PLAIN_LEAST_C };
  learned->kind.tgc_x100 = group->tgc;
}

static gboolean
read_events (SteadStore        *store,
             const SteadFish   *group,
             GPtrArray         *weighings,
             SteadDay           to,
             SteadFishLearned  *learned,
             GArray            *events,
             GError           **error)
{
  Event stocked = { CAME, group->batch.started_on, group->stocked, group->stocked_g, NULL, 0 };

  if (group->stocked > 0)
    g_array_append_val (events, stocked);
  add_weighings (weighings, to, learned, events);
  if (!add_moves (store, group, events, error) || !add_harvests (store, group, to, events, error))
    return FALSE;
  g_array_sort (events, compare_events);
  return TRUE;
}

/* Where the last stretch stands on the last day. */
static void
take_last (const Stretch    *stretch,
           SteadDay          to,
           SteadFishLearned *learned)
{
  learned->mean_g = (SteadBand) { NAN, NAN, NAN };
  if (stretch->weighed->len == 0)
    return;
  learned->base_day = stretch->last_day;
  learned->n_learned = stretch->weighed->len - 1;
  learned->since_base = stead_fish_warmth_sum (stretch->warmth, &learned->kind, stretch->last_day, to);
  stead_growth_fit_weight (&learned->fit, learned->since_base, 0, STEAD_BAND_LEVEL, &learned->mean_g);
}

gboolean
stead_fish_learn (SteadStore             *store,
                  const SteadFish        *group,
                  const SteadFishWarmth  *warmth,
                  SteadFishLearned       *out,
                  GError                **error)
{
  SteadDay to = warmth->from + (SteadDay) warmth->n - 1;
  g_autoptr(GPtrArray) weighings = stead_weighing_repo_list (store, group->batch.id, error);
  g_autoptr(GArray) counts = weighings != NULL ? stead_fish_repo_counts (store, group->batch.id, error) : NULL;
  g_autoptr(GArray) events = g_array_new (FALSE, FALSE, sizeof (Event));
  g_autoptr(GArray) weighed = g_array_new (FALSE, FALSE, sizeof (SteadGrowthWeighing));
  g_autoptr(GArray) marks = g_array_new (FALSE, FALSE, sizeof (guint));
  g_auto(SteadFishLearned) learned = { .last_weighed = STEAD_DAY_NONE };
  Stretch stretch = { .warmth = warmth, .learned = &learned, .weighed = weighed, .marks = marks, .tgc = group->tgc };

  if (counts == NULL)
    return FALSE;
  learned.marks = g_array_new (FALSE, FALSE, sizeof (SteadGrowthMark));
  learned.steps = g_array_new (FALSE, FALSE, sizeof (SteadGrowthStep));
  take_kind (group, &learned);
  if (!read_events (store, group, weighings, to, &learned, events, error) ||
      !walk_events (&stretch, events, counts, to, error))
    return FALSE;
  take_last (&stretch, to, &learned);
  take_spread (group, &learned.fit);
  *out = learned;
  learned = (SteadFishLearned) { 0 };
  return TRUE;
}

double
stead_fish_learned_mean_g (const SteadFishLearned *learned,
                           SteadDay                day)
{
  const GArray *steps = learned->steps;

  for (guint i = steps->len; i > 0; i--)
    {
      const SteadGrowthStep *step = &g_array_index (steps, SteadGrowthStep, i - 1), *next = step + 1;

      if (step->day > day)
        continue;
      if (step->day == day || i == steps->len)
        return step->likely_g;
      return step->likely_g + (next->likely_g - step->likely_g) * (day - step->day) / (double) (next->day - step->day);
    }
  return NAN;
}
