/* stead-demo-chicks.c - the demo farm's young hens, reared from chicks: their feed, their
 * weights, and their first eggs.
 *
 * They lay by the core's own curve, give or take a day's chance.  Chance comes from a
 * generator of its own, so that what happens here leaves the other hens as they are.
 */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <gsl/gsl_randist.h>
#include <math.h>

#include "core/stead-us-units.h"
#include "store/stead-demo-writer-private.h"
#include "store/stead-fish-repo.h"

/* A pullet eats as a hen does at this age, in weeks. */
#define GROWN_WEEKS 20

/* Pullets are weighed every so many days, until they lay. */
#define WEIGHED_DAYS 21

struct _SteadDemoChicks
{
  gsl_rng *rng;
  gint64   id;           /* 0: not come yet */
  int      came_at;
  gint64   alive;
  double   hen_feed_kg;  /* of a grown hen, a day */
  double   lay;          /* how well they lay, to the curve */
};

/**
 * stead_demo_chicks_new:
 *
 * Returns: (transfer full): the chicks before they come; the reader keeps faults
 */
SteadDemoChicks *
stead_demo_chicks_new (SteadDemoWriter *writer)
{
  SteadDemoChicks *chicks = g_new0 (SteadDemoChicks, 1);
  SteadDemoReader *reader = &writer->story->reader;

  chicks->rng = gsl_rng_alloc (gsl_rng_mt19937);
  gsl_rng_set (chicks->rng, 2 + (unsigned long) stead_demo_number (reader, "farm", "seed"));
  chicks->came_at = stead_demo_days_back (writer, "chicks", "hatched", -1);
  chicks->alive = (gint64) stead_demo_number (reader, "chicks", "number");
  chicks->hen_feed_kg = STEAD_POUND_KG * stead_demo_number (reader, "chicks", "lb_hen");
  chicks->lay = stead_demo_number (reader, "chicks", "true_lay");
  return chicks;
}

void
stead_demo_chicks_free (SteadDemoChicks *chicks)
{
  if (chicks == NULL)
    return;
  gsl_rng_free (chicks->rng);
  g_free (chicks);
}

static double
age_weeks (SteadDemoWriter *writer)
{
  return (writer->at - writer->chicks->came_at) / 7.0;
}

/* --- they come -------------------------------------------------------------------- */

static gboolean
write_chicks (SteadDemoWriter  *writer,
              gconstpointer     what,
              GError          **error)
{
  SteadDemoChicks *chicks = writer->chicks;
  SteadDemoReader *reader = &writer->story->reader;
  g_autoptr(SteadFlock) flock = stead_flock_new ();
  g_autofree char *place = stead_demo_text (reader, "chicks", "place");
  g_autofree char *feed = stead_demo_text (reader, "chicks", "feed");

  flock->name = stead_demo_text (reader, "chicks", "name");
  flock->strain = stead_demo_text (reader, "chicks", "strain");
  flock->note = stead_demo_text_if (reader, "chicks", "note");
  flock->place_id = stead_demo_id_of (writer, "place", place);
  flock->housed_on = flock->hatched_on = stead_demo_day_at (writer, writer->at);
  flock->birds = chicks->alive;
  flock->reared = TRUE;
  flock->birds_cost_cents = chicks->alive * stead_demo_cents (reader, "chicks", "chick_cost");
  flock->salvage_cents = chicks->alive * stead_demo_cents (reader, "chicks", "hen_salvage");
  flock->eggs_expected = stead_demo_number (reader, "chicks", "eggs_expected");
  flock->care_minutes_day = stead_demo_number (reader, "chicks", "care_minutes");
  flock->feed_item_id = stead_demo_id_of (writer, "item", feed);
  flock->nests = (int) stead_demo_number (reader, "chicks", "nests");
  flock->roost_m = stead_demo_number (reader, "chicks", "roost_m");
  flock->run_m2 = stead_demo_number (reader, "chicks", "run_m2");
  flock->light_hours = stead_demo_number (reader, "chicks", "light_hours");
  if (!stead_demo_sound (writer, error) || !stead_flock_repo_save (writer->store, flock, error))
    return FALSE;
  chicks->id = flock->id;
  return stead_demo_cash_begin_batch (writer, "chicks", flock->id, flock->birds_cost_cents, error);
}

/* --- their days --------------------------------------------------------------------- */

static double
feed_kg (SteadDemoWriter *writer)
{
  double share = CLAMP (0.06 + 0.94 * age_weeks (writer) / GROWN_WEEKS, 0, 1);

  return (double) writer->chicks->alive * writer->chicks->hen_feed_kg * share;
}

/* "6:A weak chick": on which day of their life one died, and of what. */
static char *
death_today (SteadDemoWriter *writer)
{
  g_auto(GStrv) deaths = stead_demo_list (&writer->story->reader, "chicks", "deaths");

  for (char **text = deaths; *text != NULL; text++)
    {
      g_auto(GStrv) parts = g_strsplit (*text, ":", 2);

      if (g_strv_length (parts) == 2 &&
          (int) stead_demo_number_of (&writer->story->reader, parts[0]) == writer->at - writer->chicks->came_at)
        return g_strdup (g_strstrip (parts[1]));
    }
  return NULL;
}

static gboolean
write_chicks_day (SteadDemoWriter  *writer,
                  gconstpointer     what,
                  GError          **error)
{
  SteadDemoChicks *chicks = writer->chicks;
  gsl_rng *rng = chicks->rng;
  g_autofree char *death = death_today (writer);
  double lb = feed_kg (writer) / STEAD_POUND_KG * (1 + gsl_ran_gaussian (rng, 0.05));
  SteadFlockEntry entry = { .flock_id = chicks->id, .day = stead_demo_day_at (writer, writer->at),
                            .eggs = STEAD_COUNT_NONE, .deaths = death != NULL, .reason = death,
                            .feed_kg = MAX (0.05, round (20 * lb) / 20) * STEAD_POUND_KG,
                            .person_id = stead_demo_person_on (writer, writer->at) };
  SteadLayCurve curve;
  double frac;

  stead_lay_curve_default (&curve);
  frac = CLAMP (chicks->lay * stead_lay_curve_frac (&curve, age_weeks (writer)), 0, 1);
  if (age_weeks (writer) >= curve.onset_age_weeks)
    {
      entry.eggs = (gint32) gsl_ran_binomial (rng, frac, (unsigned int) chicks->alive);
      entry.cracked = entry.eggs > 0 && gsl_rng_uniform (rng) < 0.1 ? 1 : 0;
    }
  if (entry.eggs > 0)
    stead_demo_eggs_laid (writer, chicks->id, entry.eggs, entry.cracked);
  chicks->alive -= entry.deaths;
  return stead_demo_sound (writer, error) && stead_flock_repo_save_entry (writer->store, &entry, error);
}

/* "7:70": the weight in grams, days after hatching; a straight line between. */
static double
pullet_g (SteadDemoWriter *writer)
{
  SteadDemoReader *reader = &writer->story->reader;
  g_auto(GStrv) points = stead_demo_list (reader, "chicks", "weights");
  double age = writer->at - writer->chicks->came_at, before_day = 0, before_g = 40;

  for (char **text = points; *text != NULL; text++)
    {
      g_auto(GStrv) parts = g_strsplit (*text, ":", 2);
      double day, g;

      if (g_strv_length (parts) != 2)
        {
          stead_demo_fault (reader, "chicks", "weights");
          return before_g;
        }
      day = stead_demo_number_of (reader, parts[0]);
      g = stead_demo_number_of (reader, parts[1]);
      if (age <= day)
        return before_g + (g - before_g) * (age - before_day) / (day - before_day);
      before_day = day;
      before_g = g;
    }
  return before_g;
}

static gboolean
write_pullets_weighed (SteadDemoWriter  *writer,
                       gconstpointer     what,
                       GError          **error)
{
  SteadDemoChicks *chicks = writer->chicks;
  g_autoptr(SteadWeighing) weighing = stead_weighing_new ();
  double mean_g = pullet_g (writer);

  weighing->batch_id = chicks->id;
  weighing->day = stead_demo_day_at (writer, writer->at);
  weighing->person_id = stead_demo_person_on (writer, writer->at);
  weighing->single = g_array_new (FALSE, FALSE, sizeof (SteadWeighed));
  for (gint64 i = 0; i < chicks->alive; i++)
    {
      SteadWeighed one = { round (mean_g * (1 + gsl_ran_gaussian (chicks->rng, 0.07)) / 5) * 5, NAN };

      g_array_append_val (weighing->single, one);
    }
  return stead_demo_sound (writer, error) && stead_weighing_repo_save (writer->store, weighing, error);
}

/**
 * stead_demo_live_chicks:
 *
 * One day of the young hens, who come on their first.
 *
 * Returns: %TRUE, or %FALSE with @error
 */
gboolean
stead_demo_live_chicks (SteadDemoWriter  *writer,
                        GError          **error)
{
  SteadDemoChicks *chicks = writer->chicks;
  g_autofree char *name = stead_demo_text (&writer->story->reader, "chicks", "name");
  g_autofree char *feed = stead_demo_text (&writer->story->reader, "chicks", "feed");
  g_autofree char *day = g_strdup_printf (_("Day of %s"), name);
  g_autofree char *weighed = g_strdup_printf (_("Weighing of %s"), name);
  int age = writer->at - chicks->came_at;

  if (chicks->came_at < 0 || age < 0)
    return TRUE;
  if (age == 0 && !stead_demo_act (writer, name, write_chicks, NULL, error))
    return FALSE;
  return stead_demo_buy_for (writer, feed, 4 * feed_kg (writer), error) &&
         stead_demo_act (writer, day, write_chicks_day, NULL, error) &&
         (age % WEIGHED_DAYS != WEIGHED_DAYS - 1 || age > 7 * GROWN_WEEKS ||
          stead_demo_act (writer, weighed, write_pullets_weighed, NULL, error));
}
