/* stead-demo-house.c - the house that the demo farm's tomatoes stand in, and its thermometer.
 *
 * The house has days of its own, which scatter about a usual year in runs; most of
 * them are read.
 */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <gsl/gsl_randist.h>
#include <math.h>

#include "store/stead-demo-bay-private.h"

/* How long a warm or cold spell holds on: what is left of it the next day. */
#define SPELL 0.6

/* In cold weeks the heater falls short. */
static double
cold_c (SteadDemoWriter *writer)
{
  SteadDemoReader *reader = &writer->story->reader;
  g_autofree char *on = stead_demo_text (reader, "event cold snap", "on");
  int from = stead_demo_day_of_year (writer->story, "event cold snap", on, 30) - writer->story->first;
  int days = (int) stead_demo_number (reader, "event cold snap", "days");

  return writer->at >= from && writer->at < from + days ? 5 : 0;
}

/* What the house was like today. */
SteadDayTemps
stead_demo_live_house (SteadDemoWriter *writer)
{
  SteadDemoBay *bay = writer->bay;
  double cold = cold_c (writer);
  SteadDayTemps temps;

  stead_typical_year_day (&bay->inside, stead_demo_day_at (writer, writer->at), &temps);
  bay->off_c = SPELL * bay->off_c + gsl_ran_gaussian (bay->rng, 1.6 * sqrt (1 - SPELL * SPELL));
  temps.max_c += bay->off_c + gsl_ran_gaussian (bay->rng, 0.8) - cold / 2;
  temps.min_c += 0.4 * bay->off_c + gsl_ran_gaussian (bay->rng, 0.5) - cold;
  temps.max_c = MAX (temps.max_c, temps.min_c + 1);
  return temps;
}

/* A thermometer is read to the degree. */
static double
read_degree (double temp_c)
{
  return (round (temp_c * 1.8 + 32) - 32) / 1.8;
}

/* Sun on the bench: most in June, least in December, from memory. */
static double
light_mol (SteadDemoWriter *writer)
{
  int doy = stead_day_of_year (stead_demo_day_at (writer, writer->at));
  double usual = 15 + 8 * cos (2 * G_PI * (doy - 172) / 365.25);
  double today = usual + gsl_ran_gaussian (writer->bay->rng, 2.5);

  return round (10 * MAX (3, today)) / 10;
}

static gboolean
write_reading (SteadDemoWriter  *writer,
               gconstpointer     what,
               GError          **error)
{
  const SteadDayTemps *temps = what;
  gsl_rng *rng = writer->bay->rng;
  SteadClimateDay day = { .place_id = writer->bay->place_id, .day = stead_demo_day_at (writer, writer->at),
                          .min_c = read_degree (temps->min_c), .max_c = read_degree (temps->max_c),
                          .person_id = stead_demo_person_on (writer, writer->at) };
  double rh_frac = 0.66 + gsl_ran_gaussian (rng, 0.03);

  day.rh_frac = round (100 * CLAMP (rh_frac, 0.5, 0.75)) / 100;
  day.light_mol = light_mol (writer);
  if (gsl_rng_uniform (rng) < 0.3)
    day.light_mol = NAN;
  return stead_climate_repo_save (writer->store, &day, FALSE, error);
}

gboolean
stead_demo_live_thermometer (SteadDemoWriter      *writer,
                             const SteadDayTemps  *temps,
                             GError              **error)
{
  gboolean missed = gsl_rng_uniform (writer->bay->rng) < 0.04 &&
                    writer->at < writer->story->n_days - STEAD_DEMO_CALM_DAYS;

  return missed || stead_demo_act (writer, _("Temperatures of the bay"), write_reading, temps, error);
}
