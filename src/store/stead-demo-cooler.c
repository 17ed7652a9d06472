/* stead-demo-cooler.c - a term of readings of the demo farm's refrigerators.
 *
 * Who works on a school day reads them in the morning.  One creeps up over some days
 * until it is too warm: what was done is written down, and it is read once more.  Chance
 * comes from a generator of its own, so that what happens here leaves the rest as it is.
 */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <gsl/gsl_randist.h>
#include <math.h>

#include "store/stead-demo-writer-private.h"
#include "store/stead-shown-repo.h"

/* When the readings begin, days back from today: a term. */
#define TERM_DAYS 84

#define MORNING_MIN (7 * 60 + 40)
#define AGAIN_MIN (9 * 60 + 10)
#define SPREAD_MIN 12

/* One refrigerator on one day. */
typedef struct
{
  const char *group;
  gint64      place_id;
  int         back;          /* days before today */
  double      usual_f;
  int         from, to;      /* it creeps up between these days back; both 0: it does not */
  double      peak_f;        /* what it reaches on the last of them */
  char       *done;          /* (nullable): what was done on that day */
} Cooler;

static gint64
clock_at (SteadDemoWriter *writer,
          int              minute)
{
  return stead_time_midnight (stead_demo_day_at (writer, writer->at)) + 60 * minute;
}

/* An air thermometer shows whole °F; a door that was open is a degree. */
static double
shown_f (const Cooler *cooler,
         gsl_rng      *rng)
{
  double noise = gsl_rng_uniform (rng) * 1.6 - 0.8, value = cooler->usual_f;

  if (cooler->from > 0 && cooler->back <= cooler->from && cooler->back >= cooler->to)
    {
      double share = (double) (cooler->from - cooler->back) / (cooler->from - cooler->to);

      value += share * (cooler->peak_f - cooler->usual_f);
      noise *= 0.5;
      /* The peak itself is seen once: on the day on which something is done. */
      if (cooler->done != NULL && cooler->back > cooler->to)
        return MIN (round (value + noise), cooler->peak_f - 1);
      if (cooler->done != NULL)
        return cooler->peak_f;
    }
  return round (value + noise);
}

static gboolean
add_reading (SteadDemoWriter  *writer,
             const Cooler     *cooler,
             double            value_f,
             int               minute,
             gint64           *out_id,
             GError          **error)
{
  SteadShown shown = { .at = clock_at (writer, minute), .kind = (char *) "air_temp", .value = (value_f - 32) / 1.8,
                       .scale = 'F', .held_s = NAN, .place_id = cooler->place_id,
                       .person_id = stead_demo_person_on (writer, writer->at) };

  if (!stead_shown_repo_add (writer->store, &shown, error))
    return FALSE;
  *out_id = shown.id;
  return TRUE;
}

static gboolean
see_to_it (SteadDemoWriter  *writer,
           const Cooler     *cooler,
           gint64            reading_id,
           GError          **error)
{
  SteadDone done = { .reading_id = reading_id, .at = clock_at (writer, MORNING_MIN + SPREAD_MIN + 5), .text = cooler->done,
                     .person_id = stead_demo_person_on (writer, writer->at) };
  gint64 again;

  return stead_done_repo_add (writer->store, &done, error)
         && add_reading (writer, cooler, cooler->usual_f, AGAIN_MIN, &again, error);
}

/* "33-19": creeps up from 33 to 19 days back. */
static void
read_span (SteadDemoReader *reader,
           Cooler          *cooler)
{
  g_autofree char *text = stead_demo_text_if (reader, cooler->group, "creeps");
  g_auto(GStrv) ends = text != NULL ? g_strsplit (text, "-", 2) : NULL;

  if (ends == NULL)
    return;
  if (g_strv_length (ends) != 2)
    {
      stead_demo_fault (reader, cooler->group, "creeps");
      return;
    }
  cooler->from = (int) stead_demo_number_of (reader, ends[0]);
  cooler->to = (int) stead_demo_number_of (reader, ends[1]);
  cooler->peak_f = stead_demo_number (reader, cooler->group, "peak");
  if (cooler->from <= cooler->to)
    stead_demo_fault (reader, cooler->group, "creeps");
}

static gboolean
read_cooler (SteadDemoWriter  *writer,
             const char       *group,
             gsl_rng          *rng,
             GError          **error)
{
  SteadDemoReader *reader = &writer->story->reader;
  Cooler cooler = { .group = group, .back = writer->story->n_days - writer->at };
  g_autofree char *done = NULL;
  gint64 id = 0;

  cooler.place_id = stead_demo_id_of (writer, "place", stead_demo_group_name (group));
  cooler.usual_f = stead_demo_number (reader, group, "usual");
  done = stead_demo_text_if (reader, group, "done");
  cooler.done = done;
  read_span (reader, &cooler);
  if (!stead_demo_sound (writer, error)
      || !add_reading (writer, &cooler, shown_f (&cooler, rng), MORNING_MIN + (int) gsl_rng_uniform_int (rng, SPREAD_MIN), &id,
                       error))
    return FALSE;
  return cooler.done == NULL || cooler.back != cooler.to || see_to_it (writer, &cooler, id, error);
}

static gboolean
read_all (SteadDemoWriter  *writer,
          gconstpointer     what,
          GError          **error)
{
  SteadDemoReader *reader = &writer->story->reader;
  g_auto(GStrv) groups = stead_demo_groups (reader, "cooler");
  gsl_rng *rng = gsl_rng_alloc (gsl_rng_mt19937);
  gboolean good = TRUE;

  gsl_rng_set (rng, (unsigned long) (stead_demo_number (reader, "farm", "seed") + 7919.0 * writer->at));
  for (char **group = groups; good && *group != NULL; group++)
    good = read_cooler (writer, *group, rng, error);
  gsl_rng_free (rng);
  return good;
}

/* On a day on which something was done about one of them, somebody came in even at a weekend. */
static gboolean
is_read_on (SteadDemoWriter *writer)
{
  SteadDemoReader *reader = &writer->story->reader;
  g_auto(GStrv) groups = stead_demo_groups (reader, "cooler");
  int back = writer->story->n_days - writer->at;

  if (back > TERM_DAYS)
    return FALSE;
  if (stead_day_weekday (stead_demo_day_at (writer, writer->at)) <= 5)
    return TRUE;
  for (char **group = groups; *group != NULL; group++)
    {
      Cooler cooler = { .group = *group };

      read_span (reader, &cooler);
      if (cooler.from > 0 && cooler.to == back)
        return TRUE;
    }
  return FALSE;
}

/**
 * stead_demo_live_coolers:
 *
 * Reads the refrigerators, if it is a school day of the last term.
 *
 * Returns: %TRUE, or %FALSE with @error
 */
gboolean
stead_demo_live_coolers (SteadDemoWriter  *writer,
                         GError          **error)
{
  g_autofree char *date = NULL;
  g_autofree char *name = NULL;

  if (!is_read_on (writer))
    return stead_demo_sound (writer, error);
  date = stead_day_format (stead_demo_day_at (writer, writer->at), STEAD_DAY_STYLE_SHORT);
  /* Translators: a step of undo; a day follows. */
  name = g_strdup_printf (_("Readings of the refrigerators on %s"), date);
  return stead_demo_act (writer, name, read_all, NULL, error);
}
