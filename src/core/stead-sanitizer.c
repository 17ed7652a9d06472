/* stead-sanitizer.c - a sanitizing solution, and the thermometer that is used beside it. */
#include "config.h"

#include "core/stead-core-error.h"
#include "core/stead-sanitizer.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#define MG_PER_KG 1e6   /* a litre of bleach is taken as a kilogram */

/* What is known of a solution; room for all of it and the end. */
static void
facts_of (const SteadSolution *solution,
          SteadLimitFact      *facts)
{
  const SteadLimitFact all[] = {
    { "strength_mgl", NULL, solution->strength_mgl },
    { "ph", NULL, solution->ph },
    { "temp_f", NULL, solution->temp_f },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (all); i++)
    if (!isnan (all[i].number))
      *facts++ = all[i];
  *facts = (SteadLimitFact) { NULL };
}

#define N_FACTS 4

static const SteadLimit *
limit_of (const SteadLimitTable  *table,
          const SteadSolution    *solution,
          const char             *measure,
          GError                **error)
{
  SteadLimitFact facts[N_FACTS];

  facts_of (solution, facts);
  return stead_limit_table_find (table, "sanitizer", solution->kind, measure, facts, error);
}

/* The fault, if there is a limit and the measurement breaks it. */
static SteadSolutionFaults
fault_of (const SteadLimitTable *table,
          const SteadSolution   *solution,
          const char            *measure,
          double                 value,
          SteadSolutionFaults    fault)
{
  const SteadLimit *limit = limit_of (table, solution, measure, NULL);
  SteadLimitReading reading = { value, "", 0, 0, NAN };
  SteadJudgement judgement;

  if (limit == NULL || isnan (value))
    return STEAD_SOLUTION_GOOD;
  reading.unit = limit->unit;
  return stead_limit_judge (limit, &reading, &judgement, NULL)
         && judgement.verdict == STEAD_LIMIT_NOT_MET ? fault : STEAD_SOLUTION_GOOD;
}

static gboolean
check_measured (const SteadLimitTable  *table,
                const SteadSolution    *solution,
                GError                **error)
{
  gboolean asks_strength = limit_of (table, solution, "strength", NULL) != NULL;
  gboolean asks_ph = limit_of (table, solution, "ph", NULL) != NULL;

  if (limit_of (table, solution, "contact", error) == NULL)
    return FALSE;
  if (!isnan (solution->temp_f) && !(asks_strength && isnan (solution->strength_mgl))
      && !(asks_ph && isnan (solution->ph)))
    return TRUE;
  g_set_error_literal (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_NONE,
                       _("Measure the strength, the pH and the temperature of the solution first."));
  return FALSE;
}

gboolean
stead_sanitizer_judge (const SteadLimitTable  *table,
                       const SteadSolution    *solution,
                       SteadSolutionFaults    *out,
                       GError                **error)
{
  SteadSolutionFaults faults = STEAD_SOLUTION_GOOD;

  g_return_val_if_fail (table != NULL && solution != NULL && solution->kind != NULL && out != NULL, FALSE);

  if (!check_measured (table, solution, error))
    return FALSE;
  faults |= fault_of (table, solution, "strength", solution->strength_mgl, STEAD_SOLUTION_WEAK);
  faults |= fault_of (table, solution, "strength_most", solution->strength_mgl, STEAD_SOLUTION_STRONG);
  faults |= fault_of (table, solution, "ph", solution->ph, STEAD_SOLUTION_PH);
  faults |= fault_of (table, solution, "hardness", solution->hardness_mgl, STEAD_SOLUTION_HARD);
  /* Where it is too weak or its pH too high, no row of warmth fits. */
  faults |= fault_of (table, solution, "solution_temp", solution->temp_f, STEAD_SOLUTION_COLD);
  *out = faults;
  return TRUE;
}

gboolean
stead_sanitizer_least_temp_f (const SteadLimitTable  *table,
                              const SteadSolution    *solution,
                              double                 *out_temp_f,
                              GError                **error)
{
  const SteadLimit *limit;

  g_return_val_if_fail (table != NULL && solution != NULL && solution->kind != NULL && out_temp_f != NULL,
                        FALSE);

  limit = limit_of (table, solution, "solution_temp", error);
  if (limit == NULL)
    return FALSE;
  *out_temp_f = limit->value;
  return TRUE;
}

/* Strengths that the rows of a kind name, from which the warmth changes. */
static gboolean
enough (const SteadLimitTable *table,
        const SteadSolution   *solution,
        double                 strength_mgl)
{
  SteadSolution tried = *solution;
  const SteadLimit *heat;

  tried.strength_mgl = strength_mgl;
  if (isnan (tried.ph))
    tried.ph = 0;   /* as good as a pH can be */
  heat = limit_of (table, &tried, "solution_temp", NULL);
  return heat != NULL
         && (isnan (tried.temp_f) || stead_limit_compare (tried.temp_f, heat->value) >= 0);
}

gboolean
stead_sanitizer_least_strength_mgl (const SteadLimitTable  *table,
                                    const SteadSolution    *solution,
                                    double                 *out_mgl,
                                    GError                **error)
{
  const SteadLimit *least;

  g_return_val_if_fail (table != NULL && solution != NULL && solution->kind != NULL && out_mgl != NULL, FALSE);

  least = limit_of (table, solution, "strength", error);
  if (least == NULL)
    return FALSE;
  /* The charts go by whole steps, none of them beyond a thousand. */
  for (double mgl = least->value; mgl <= 1000; mgl++)
    if (enough (table, solution, mgl))
      {
        *out_mgl = mgl;
        return TRUE;
      }
  g_set_error_literal (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_NONE,
                       _("No strength is enough at this temperature and pH. Warm the water."));
  return FALSE;
}

gboolean
stead_sanitizer_contact_s (const SteadLimitTable  *table,
                           const SteadSolution    *solution,
                           double                 *out_s,
                           GError                **error)
{
  const SteadLimit *limit;

  g_return_val_if_fail (table != NULL && solution != NULL && solution->kind != NULL && out_s != NULL, FALSE);

  limit = limit_of (table, solution, "contact", error);
  if (limit == NULL)
    return FALSE;
  *out_s = stead_limit_value_in (limit, "s");
  return TRUE;
}

double
stead_bleach_mgl (double bleach_frac,
                  double bleach_l,
                  double water_l)
{
  return bleach_frac >= 0 && bleach_l >= 0 && water_l > 0
         ? bleach_frac * MG_PER_KG * bleach_l / water_l : NAN;
}

double
stead_bleach_l (double bleach_frac,
                double mgl,
                double water_l)
{
  return bleach_frac > 0 && mgl >= 0 && water_l >= 0 ? mgl * water_l / (bleach_frac * MG_PER_KG) : NAN;
}

/* The thermometer */

static const SteadLimit *
thermometer_row (const SteadLimitTable   *table,
                 const SteadThermometer  *thermometer,
                 const char              *measure,
                 GError                 **error)
{
  const SteadLimitFact facts[] = { { "scale", thermometer->scale, 0 }, { NULL } };

  return stead_limit_table_find (table, "thermometer", thermometer->measures, measure, facts, error);
}

gboolean
stead_thermometer_limit (const SteadLimitTable   *table,
                         const SteadThermometer  *thermometer,
                         const char              *measure,
                         const char              *unit,
                         double                  *out,
                         GError                 **error)
{
  const SteadLimit *row;

  g_return_val_if_fail (table != NULL && thermometer != NULL && measure != NULL && unit != NULL && out != NULL,
                        FALSE);

  row = thermometer_row (table, thermometer, measure, error);
  if (row == NULL)
    return FALSE;
  *out = stead_limit_value_in (row, unit);
  return TRUE;
}

gboolean
stead_thermometer_judge (const SteadLimitTable   *table,
                         const SteadThermometer  *thermometer,
                         double                   reading_f,
                         double                   true_f,
                         double                  *out_error_f,
                         gboolean                *out_good,
                         GError                 **error)
{
  double most = 0;

  g_return_val_if_fail (out_good != NULL, FALSE);

  if (!stead_thermometer_limit (table, thermometer, "error", "Fdiff", &most, error))
    return FALSE;
  if (out_error_f != NULL)
    *out_error_f = reading_f - true_f;
  *out_good = stead_limit_compare (fabs (reading_f - true_f), most) <= 0;
  return TRUE;
}

static double
figure (const SteadLimitTable *table,
        const char            *process,
        const char            *subject,
        const char            *measure)
{
  const SteadLimit *row = stead_limit_table_find (table, process, subject, measure, NULL, NULL);

  return row != NULL ? row->value : NAN;
}

double
stead_ice_point_f (const SteadLimitTable *table)
{
  g_return_val_if_fail (table != NULL, NAN);
  return figure (table, "thermometer", "ice_bath", "true_temp");
}

double
stead_boiling_point_f (const SteadLimitTable *table,
                       double                 elevation_ft)
{
  g_return_val_if_fail (table != NULL, NAN);
  return figure (table, "boiling", "water", "sea_level")
         - figure (table, "boiling", "water", "drop_per_1000_ft") * elevation_ft / 1000;
}
