/* stead-water-judge.c - the verdict on a reading, by the table of limits. */
#include "config.h"

#include "core/stead-round.h"
#include "core/stead-water-dose.h"
#include "core/stead-water-limit.h"
#include "core/stead-water.h"

#include <math.h>

#define FISH (STEAD_WATER_WARM_FISH | STEAD_WATER_COLD_FISH | STEAD_WATER_TILAPIA \
              | STEAD_WATER_CHANNEL_CATFISH | STEAD_WATER_RAINBOW_TROUT)

/* Nitrite below this is the noise of a kit, whatever the chloride. */
#define NITRITE_NOISE_MGL 0.1

static SteadWaterSharers
kind_of (SteadWaterSharers species)
{
  switch (species)
    {
    case STEAD_WATER_TILAPIA:
    case STEAD_WATER_CHANNEL_CATFISH:
      return STEAD_WATER_WARM_FISH;
    case STEAD_WATER_RAINBOW_TROUT:
      return STEAD_WATER_COLD_FISH;
    default:
      return 0;
    }
}

/* Species stand for their kind; fish with plants are aquaponics. */
static SteadWaterSharers
complete (SteadWaterSharers sharers)
{
  for (guint flag = 1; flag <= STEAD_WATER_RAINBOW_TROUT; flag <<= 1)
    if ((sharers & flag) != 0)
      sharers |= kind_of ((SteadWaterSharers) flag);
  if ((sharers & FISH) != 0 && (sharers & STEAD_WATER_PLANTS) != 0)
    sharers |= STEAD_WATER_TOGETHER;
  return sharers;
}

/* Whether a species among the sharers has a row of its own that judges in the
 * place of its kind's; if a farm names only the kind, the kind's row judges. */
static gboolean
species_judges (SteadWaterSharers sharers,
                SteadWaterSharers kind,
                SteadWaterMeasure measure)
{
  gsize n;
  const SteadWaterLimit *limits = stead_water_limits (&n);

  for (gsize i = 0; i < n; i++)
    if (limits[i].measure == measure && (limits[i].whose & sharers) != 0
        && kind_of (limits[i].whose) == kind
        && (limits[i].traits & STEAD_WATER_LIMIT_SHOWN_ONLY) == 0)
      return TRUE;
  return FALSE;
}

static gboolean
row_judges (const SteadWaterLimit *limit,
            SteadWaterSharers      sharers,
            SteadWaterMeasure      measure)
{
  if (limit->measure != measure || (limit->whose & sharers) == 0
      || (limit->traits & STEAD_WATER_LIMIT_SHOWN_ONLY) != 0)
    return FALSE;
  if (limit->whose == STEAD_WATER_WARM_FISH || limit->whose == STEAD_WATER_COLD_FISH)
    return !species_judges (sharers, limit->whose, measure);
  return TRUE;
}

static SteadWaterJudgement
judge_row (const SteadWaterLimit *limit,
           double                 value)
{
  SteadWaterJudgement judgement = {
    .verdict = STEAD_WATER_OK, .limit = limit, .measure = limit->measure, .value = value,
  };

  if (!stead_water_outside (limit, value, &judgement.low))
    return judgement;
  judgement.verdict = STEAD_WATER_WATCH;
  if (value < limit->act_below - STEAD_ROUND_NOISE || value > limit->act_above + STEAD_ROUND_NOISE)
    judgement.verdict = STEAD_WATER_ACT;
  judgement.action = judgement.low ? limit->low_action : limit->high_action;
  return judgement;
}

/* The worst of the rows that judge; the first of equals. */
static SteadWaterJudgement
judge_rows (SteadWaterSharers sharers,
            SteadWaterMeasure measure,
            double            value)
{
  SteadWaterJudgement worst = {
    .verdict = STEAD_WATER_UNKNOWN, .measure = measure, .value = value,
  };
  gsize n;
  const SteadWaterLimit *limits = stead_water_limits (&n);

  for (gsize i = 0; i < n; i++)
    if (row_judges (&limits[i], sharers, measure))
      {
        SteadWaterJudgement judgement = judge_row (&limits[i], value);

        if (judgement.verdict > worst.verdict)
          worst = judgement;
      }
  return worst;
}

/* The toxic part decides, if it is worse than the whole. */
static void
judge_toxic_part (SteadWaterSharers        sharers,
                  double                   tan_mgl,
                  const SteadWaterContext *context,
                  SteadWaterJudgement     *judgement)
{
  SteadWaterJudgement toxic;
  double nh3n_mgl = 0;

  if (!stead_water_nh3n_mgl (tan_mgl, context->temp_c, context->ph, &nh3n_mgl, NULL))
    return;
  toxic = judge_rows (sharers, STEAD_WATER_NH3N, nh3n_mgl);
  if (toxic.verdict > judgement->verdict)
    *judgement = toxic;
}

/* Chloride keeps nitrite out of the gills: with less than 10 parts to 1 the
 * verdict is one step graver. */
static void
judge_chloride (double                   nitrite_mgl,
                const SteadWaterContext *context,
                SteadWaterJudgement     *judgement)
{
  double need_mgl = stead_water_chloride_need_mgl (nitrite_mgl, STEAD_WATER_CHLORIDE_RATIO);

  if (nitrite_mgl < NITRITE_NOISE_MGL || !(context->chloride_mgl < need_mgl - STEAD_ROUND_NOISE))
    return;
  judgement->chloride_short = TRUE;
  judgement->action = STEAD_WATER_ACTION_NITRITE;
  if (judgement->verdict == STEAD_WATER_OK || judgement->verdict == STEAD_WATER_WATCH)
    judgement->verdict++;
}

void
stead_water_judge (SteadWaterSharers        sharers,
                   SteadWaterMeasure        measure,
                   double                   value,
                   const SteadWaterContext *context,
                   SteadWaterJudgement     *out_judgement)
{
  SteadWaterSharers all = complete (sharers);
  SteadWaterReason reason;

  g_return_if_fail (out_judgement != NULL);
  g_return_if_fail ((guint) measure < STEAD_N_WATER_MEASURES);

  *out_judgement = (SteadWaterJudgement) {
    .verdict = STEAD_WATER_UNKNOWN, .measure = measure, .value = value,
  };
  if (isnan (value))
    return;
  reason = stead_water_reason (measure, value);
  if (reason != STEAD_WATER_POSSIBLE)
    {
      out_judgement->verdict = STEAD_WATER_IMPOSSIBLE;
      out_judgement->reason = reason;
      out_judgement->action = STEAD_WATER_ACTION_TEST_AGAIN;
      return;
    }
  *out_judgement = judge_rows (all, measure, value);
  if (context == NULL)
    return;
  if (measure == STEAD_WATER_TAN)
    judge_toxic_part (all, value, context, out_judgement);
  if (measure == STEAD_WATER_NITRITE && (all & FISH) != 0)
    judge_chloride (value, context, out_judgement);
}

/* Takes over @end where it is stricter than what stands there. */
static void
narrow (double                  end,
        gboolean                from_below,
        const SteadWaterLimit  *limit,
        double                 *value,
        const SteadWaterLimit **row)
{
  if (isnan (end) || (*row != NULL && (from_below ? end <= *value : end >= *value)))
    return;
  *value = end;
  *row = limit;
}

void
stead_water_band (SteadWaterSharers  sharers,
                  SteadWaterMeasure  measure,
                  SteadWaterBand    *out_band)
{
  SteadWaterSharers all = complete (sharers);
  SteadWaterBand band = { NAN, NAN, NAN, NAN, NULL, NULL, NULL, NULL };
  gsize n;
  const SteadWaterLimit *limits = stead_water_limits (&n);

  g_return_if_fail (out_band != NULL);
  for (gsize i = 0; i < n; i++)
    if (row_judges (&limits[i], all, measure))
      {
        narrow (limits[i].min, TRUE, &limits[i], &band.min, &band.min_row);
        if ((limits[i].traits & STEAD_WATER_LIMIT_LOW_ONLY) == 0)
          narrow (limits[i].max, FALSE, &limits[i], &band.max, &band.max_row);
        narrow (limits[i].act_below, TRUE, &limits[i], &band.act_below, &band.below_row);
        narrow (limits[i].act_above, FALSE, &limits[i], &band.act_above, &band.above_row);
      }
  *out_band = band;
}
