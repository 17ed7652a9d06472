/* stead-harvest.c - how much will be picked in which week. */
#include "config.h"

#include "core/stead-harvest.h"

#include <math.h>

/* Parts of the span in which a plateau rises and falls. */
#define RISE 0.25
#define FALL 0.125

static double
plateau_share (double part)
{
  const double height = 1 / (1 - RISE / 2 - FALL / 2);

  if (part < RISE)
    return height * part * part / (2 * RISE);
  if (part < 1 - FALL)
    return height * (part - RISE / 2);
  return 1 - height * (1 - part) * (1 - part) / (2 * FALL);
}

double
stead_harvest_share (SteadHarvestShape shape,
                     double            part)
{
  part = CLAMP (part, 0, 1);
  switch (shape)
    {
    case STEAD_HARVEST_BELL:
      /* The sum under 30 u² (1 - u)², the beta curve of 3 and 3. */
      return part * part * part * (10 - 15 * part + 6 * part * part);
    case STEAD_HARVEST_PLATEAU:
      return plateau_share (part);
    case STEAD_HARVEST_EVEN:
    default:
      return part;
    }
}

/* Degree days of the days from @first to @last, both included. */
static double
warmth_between (const SteadHarvestPlan *plan,
                SteadDay                first,
                SteadDay                last)
{
  double sum_c = 0;

  for (SteadDay day = MAX (first, plan->daily_day);
       day <= last && (gsize) (day - plan->daily_day) < plan->n_daily; day++)
    sum_c += plan->daily_c[day - plan->daily_day];
  return sum_c;
}

/* Share of the crop picked by the end of @day, if picking begins on @start. */
static double
share_by (const SteadHarvestPlan *plan,
          SteadDay                start,
          SteadDay                day)
{
  double gone;

  day = MIN (day, plan->last_day);
  if (start == STEAD_DAY_NONE || day < start)
    return 0;
  gone = plan->daily_c != NULL ? warmth_between (plan, start, day) : day - start + 1;
  return stead_harvest_share (plan->shape, gone / plan->span);
}

void
stead_harvest_between (const SteadHarvestPlan *plan,
                       SteadDay                first_day,
                       SteadDay                last_day,
                       SteadHarvestSpan       *out_span)
{
  double least;
  double most;
  double likely = 0;

  g_return_if_fail (plan != NULL && out_span != NULL);
  g_return_if_fail (plan->span > 0);
  g_return_if_fail (plan->plant_low_kg <= plan->plant_kg && plan->plant_kg <= plan->plant_high_kg);
  g_return_if_fail (stead_day_is_valid (first_day) && stead_day_is_valid (last_day));
  g_return_if_fail (first_day <= last_day);

  const SteadDay starts[] = { plan->start, plan->start_early, plan->start_late };

  least = INFINITY;
  most = 0;
  for (gsize i = 0; i < G_N_ELEMENTS (starts); i++)
    {
      double share = share_by (plan, starts[i], last_day) - share_by (plan, starts[i], first_day - 1);

      if (i == 0)
        likely = share;
      least = MIN (least, share);
      most = MAX (most, share);
    }
  *out_span = (SteadHarvestSpan) {
    .first_day = first_day,
    .kg = plan->plants * plan->plant_kg * likely,
    .low_kg = plan->plants * plan->plant_low_kg * least,
    .high_kg = plan->plants * plan->plant_high_kg * most,
  };
}

void
stead_harvest_weeks (const SteadHarvestPlan *plan,
                     SteadDay                first_day,
                     SteadHarvestSpan       *weeks,
                     gsize                   n_weeks)
{
  g_return_if_fail (weeks != NULL || n_weeks == 0);

  for (gsize i = 0; i < n_weeks; i++)
    {
      SteadDay day = first_day + 7 * (SteadDay) i;

      stead_harvest_between (plan, day, day + 6, &weeks[i]);
    }
}
