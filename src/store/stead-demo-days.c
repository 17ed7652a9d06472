/* stead-demo-days.c - makes up what happened at the hen house, day by day.
 *
 * Eggs are binomial about the flock's own expected curve, which seasons, good
 * and bad days, and what happened push a little up or down.
 */
#include "config.h"

#include <gsl/gsl_randist.h>
#include <math.h>
#include <stdio.h>

#include "store/stead-demo-private.h"

/* Things that happened lie at least so many days back, clear of the last weeks. */
#define CLEAR_DAYS 35

/* In the last week only what the description wants shows: no day is missing,
 * and eggs stay inside what such a flock lays on 9 of 10 days. */
#define CALM_DAYS 7

SteadDay
stead_demo_day_of_year (SteadDemoStory *story,
                        const char     *group,
                        const char     *text,
                        int             back)
{
  int year, month = 0, mday = 0;

  stead_day_split (story->today - back, &year, NULL, NULL);
  if (sscanf (text, "%2d-%2d", &month, &mday) == 2)
    for (int i = 0; i < 8; i++)
      {
        SteadDay day = stead_day_new (year - i, month, mday);

        if (day != STEAD_DAY_NONE && day <= story->today - back)
          return day;
      }
  stead_demo_fault (&story->reader, group, text);
  return STEAD_DAY_NONE;
}

/* --- what is expected ------------------------------------------------------------ */

typedef struct
{
  double        season;
  double        wander;
  double        cracked;
  double        twice;
  double        noted;
  double        lb_hen;
  double        feed_noise;
  double        feed_entered;
  double        age_weeks;
  SteadLayCurve curve;
  char        **notes;
  guint         last_note;
  double        drift;   /* good and bad days hang together */
} Habits;

static void
read_habits (SteadDemoStory *story,
             Habits         *habits)
{
  SteadDemoReader *reader = &story->reader;

  habits->season = stead_demo_number (reader, "lay", "season");
  habits->wander = stead_demo_number (reader, "lay", "wander");
  habits->cracked = stead_demo_number (reader, "lay", "cracked");
  habits->twice = stead_demo_number (reader, "lay", "twice");
  habits->noted = stead_demo_number (reader, "lay", "noted");
  habits->lb_hen = stead_demo_number (reader, "feed", "lb_hen");
  habits->feed_noise = stead_demo_number (reader, "feed", "noise");
  habits->feed_entered = stead_demo_number (reader, "feed", "entered");
  habits->age_weeks = stead_demo_number (reader, "flock", "age_weeks");
  habits->notes = stead_demo_list (reader, "notes", "any");
  habits->last_note = 0;
  habits->drift = 0;
  stead_lay_curve_default (&habits->curve);
}

/* Chance of an egg from one hen, before what happened. */
static double
chance_of_egg (SteadDemoStory *story,
               Habits         *habits,
               int             at)
{
  double age = habits->age_weeks + at / 7.0;
  /* Longest day about June 21, the 172nd of the year. */
  double season = cos (2 * G_PI * (stead_day_of_year (story->first + at) - 172) / 365.25);

  habits->drift = 0.7 * habits->drift + gsl_ran_gaussian (story->rng, habits->wander);
  return stead_lay_curve_frac (&habits->curve, age) * (1 + habits->season * season + habits->drift);
}

/* --- an ordinary day --------------------------------------------------------------- */

/* No note twice in a row. */
static void
make_notes (SteadDemoStory *story,
            Habits         *habits,
            SteadDemoDay   *day)
{
  guint n = g_strv_length (habits->notes);

  if (!(gsl_rng_uniform (story->rng) < habits->noted) || n < 2)
    return;
  habits->last_note = (habits->last_note + 1 + (guint) gsl_rng_uniform_int (story->rng, n - 1)) % n;
  day->note = g_strdup (habits->notes[habits->last_note]);
}

/* Feed is scooped by the quarter pound. */
static void
make_feed (SteadDemoStory *story,
           const Habits   *habits,
           int             alive,
           SteadDemoDay   *day)
{
  double lb = habits->lb_hen * alive * (1 + gsl_ran_gaussian (story->rng, habits->feed_noise));

  day->feed_lb = gsl_rng_uniform (story->rng) < habits->feed_entered ? round (4 * lb) / 4 : 0;
}

static void
make_eggs (SteadDemoStory *story,
           const Habits   *habits,
           double          chance,
           int             alive,
           SteadDemoDay   *day)
{
  day->eggs = (int) gsl_ran_binomial (story->rng, CLAMP (chance, 0, 0.99), (unsigned int) alive);
  if (day->eggs > 4 && gsl_rng_uniform (story->rng) < habits->twice)
    day->later_eggs = 1 + (int) gsl_rng_uniform_int (story->rng, 4);
  day->cracked = (int) gsl_ran_binomial (story->rng, habits->cracked, (unsigned int) day->eggs);
}

/* --- what happened ------------------------------------------------------------------ */

typedef struct
{
  int      from;
  int      days;
  double   lay;
  int      deaths;
  gboolean left_out;
  char   **notes;
} Event;

static void
event_clear (gpointer data)
{
  g_strfreev (((Event *) data)->notes);
}

static GArray *
read_events (SteadDemoStory *story)
{
  SteadDemoReader *reader = &story->reader;
  g_auto(GStrv) groups = stead_demo_groups (reader, "event");
  GArray *events = g_array_new (FALSE, FALSE, sizeof (Event));

  g_array_set_clear_func (events, event_clear);
  for (char **group = groups; *group != NULL; group++)
    {
      g_autofree char *on = stead_demo_text (reader, *group, "on");
      Event event = { .from = stead_demo_day_of_year (story, *group, on, CLEAR_DAYS) - story->first,
                      .days = (int) stead_demo_number (reader, *group, "days"),
                      .lay = stead_demo_number_if (reader, *group, "lay", 1),
                      .deaths = (int) stead_demo_number_if (reader, *group, "deaths", 0),
                      .left_out = g_key_file_get_boolean (reader->keys, *group, "left_out", NULL),
                      .notes = stead_demo_list (reader, *group, "notes") };

      g_array_append_val (events, event);
    }
  return events;
}

/* Notes are spread evenly over the days that it took. */
static void
note_event (const Event  *event,
            int           at,
            SteadDemoDay *day)
{
  int n = (int) g_strv_length (event->notes);
  int step = MAX (1, event->days / MAX (1, n));

  if (n == 0 || at % step != 0 || at / step >= n)
    return;
  g_free (day->note);
  day->note = g_strdup (event->notes[at / step]);
}

/* Returns: by what the chance of an egg is multiplied */
static double
happen (const GArray *events,
        int           at,
        SteadDemoDay *day)
{
  double lay = 1;

  for (guint i = 0; i < events->len; i++)
    {
      const Event *event = &g_array_index (events, Event, i);

      if (at < event->from || at >= event->from + event->days)
        continue;
      lay *= event->lay;
      day->left_out |= event->left_out;
      day->deaths += at == event->from ? event->deaths : 0;
      day->kept |= at == event->from;
      note_event (event, at - event->from, day);
    }
  return lay;
}

static void
forget_day (SteadDemoDay *day)
{
  g_free (day->note);
  *day = (SteadDemoDay) { .eggs = -1 };
}

static void
take_days_off (SteadDemoStory *story)
{
  g_auto(GStrv) days = stead_demo_list (&story->reader, "days off", "days");

  for (char **text = days; *text != NULL; text++)
    for (int back = CALM_DAYS + 1; back < story->n_days; back += 366)
      {
        int at = stead_demo_day_of_year (story, "days off", *text, back) - story->first;

        if (at >= 0 && at < story->n_days && !story->days[at].kept)
          forget_day (&story->days[at]);
      }
}

/* --- the last days -------------------------------------------------------------------- */

/* Nothing else looks wrong in the last week. */
static void
calm (const Habits *habits,
      double        chance,
      int           alive,
      SteadDemoDay *day)
{
  double mean = alive * chance;
  double spread = 1.6 * sqrt (mean * (1 - chance));

  day->eggs = CLAMP (day->eggs, (int) ceil (mean - spread), (int) floor (mean + spread));
  day->later_eggs = MIN (day->later_eggs, day->eggs);
  day->cracked = MIN (day->cracked, day->eggs);
  if (!(day->feed_lb > 0))
    day->feed_lb = round (4 * habits->lb_hen * alive) / 4;
}

static void
set_last_days (SteadDemoStory *story)
{
  g_auto(GStrv) eggs = stead_demo_list (&story->reader, "lay", "last");
  int n = (int) g_strv_length (eggs);

  for (int i = 0; i < n && i < story->n_days; i++)
    {
      SteadDemoDay *day = &story->days[story->n_days - n + i];

      day->eggs = (int) stead_demo_number_of (&story->reader, eggs[i]);
      day->later_eggs = 0;
      day->cracked = 0;
      g_clear_pointer (&day->note, g_free);
    }
}

gboolean
stead_demo_make_days (SteadDemoStory *story)
{
  g_autoptr(GArray) events = read_events (story);
  int alive = (int) stead_demo_number (&story->reader, "flock", "hens");
  Habits habits;

  read_habits (story, &habits);
  for (int at = 0; at < story->n_days && story->reader.error == NULL; at++)
    {
      SteadDemoDay *day = &story->days[at];
      double chance = chance_of_egg (story, &habits, at);

      make_notes (story, &habits, day);
      chance *= happen (events, at, day);
      alive -= day->deaths;
      make_eggs (story, &habits, chance, alive, day);
      make_feed (story, &habits, alive, day);
      if (at >= story->n_days - CALM_DAYS)
        calm (&habits, stead_lay_curve_frac (&habits.curve, habits.age_weeks + at / 7.0), alive, day);
    }
  g_strfreev (habits.notes);
  if (story->reader.error != NULL)
    return FALSE;
  take_days_off (story);
  set_last_days (story);
  return story->reader.error == NULL;
}
