/* stead-flock-low.c - whether a flock lays clearly less than it should. */
#include "config.h"

#include "answer/stead-flock-private.h"
#include "answer/stead-words-private.h"

#include <glib/gi18n-lib.h>
#include <gsl/gsl_cdf.h>
#include <math.h>

#define LOOK_BACK_DAYS STEAD_FLOCK_LOOK_BACK_DAYS

/* A flock that lays as expected stays above this chance on 97.5 of 100 days, and
 * within this band on 95. */
#define LOW_CHANCE 0.025
#define LOW_BAND 0.95

/* What lies further back says nothing more about the rate now. */
#define LEARN_DAYS (60 * 7)

/* Warn after so many days on end, or among the last seven: husbandry practice. */
#define WARN_RUN 2
#define WARN_OF_SEVEN 3

/* One day of the look back, its entries summed. */
typedef struct
{
  gint64   eggs;      /* -1: none entered */
  gboolean left_out;
} DayEggs;

static void
sum_days (GPtrArray *entries,
          SteadDay   first,
          DayEggs   *days)
{
  for (int i = 0; i < LOOK_BACK_DAYS; i++)
    days[i] = (DayEggs) { .eggs = -1 };
  for (guint i = 0; i < entries->len; i++)
    {
      const SteadFlockEntry *entry = entries->pdata[i];
      int at = entry->day - first;

      if (at < 0 || at >= LOOK_BACK_DAYS)
        continue;
      days[at].left_out = days[at].left_out || entry->left_out;
      if (entry->eggs != STEAD_COUNT_NONE)
        days[at].eggs = MAX (0, days[at].eggs) + entry->eggs;
    }
}

/* The band of each day of the look back, by the log before it: learned from these days
 * too, it would follow them down.  NAN past the range of the curve. */
static gboolean
expect_days (SteadStore        *store,
             const SteadFlock  *flock,
             SteadDay           first,
             double             alive,
             SteadBand         *out,
             GError           **error)
{
  g_autoptr(GArray) weeks = stead_flock_repo_weeks (store, flock->id, MAX (flock->housed_on, first - LEARN_DAYS),
                                                    first - 1, error);
  double ages[LOOK_BACK_DAYS];
  SteadLayFit fit;

  if (weeks == NULL)
    return FALSE;
  for (int i = 0; i < LOOK_BACK_DAYS; i++)
    {
      ages[i] = stead_age_weeks (flock->hatched_on, first + i);
      out[i] = (SteadBand) { NAN, NAN, NAN };
    }
  if (!stead_lay_fit ((const SteadLayWeek *) (gpointer) weeks->data, weeks->len, &flock->curve, &fit, NULL, NULL)
      && !stead_lay_fit (NULL, 0, &flock->curve, &fit, NULL, NULL))
    return TRUE;
  /* Eggs found a day late even out over a week, but not over a day. */
  fit.phi = MAX (fit.phi, 1);
  if (alive > 0 && !stead_lay_fit_bands (&fit, ages, LOOK_BACK_DAYS, alive, LOW_BAND, out, NULL))
    for (int i = 0; i < LOOK_BACK_DAYS; i++)
      out[i] = (SteadBand) { NAN, NAN, NAN };
  return TRUE;
}

static gboolean
is_low (const DayEggs   *day,
        const SteadBand *expected,
        gint64           alive)
{
  if (day->eggs < 0 || day->left_out || alive < 1 || isnan (expected->likely)
      || (double) day->eggs >= expected->low * (double) alive)
    return FALSE;
  return gsl_cdf_binomial_P ((unsigned int) MIN (day->eggs, G_MAXINT), CLAMP (expected->likely, 0, 1),
                             (unsigned int) MIN (alive, G_MAXINT)) < LOW_CHANCE;
}

static void
add_low (SteadFlockLow   *low,
         SteadDay         day,
         const DayEggs   *eggs,
         const SteadBand *expected,
         gint64           alive)
{
  low->run++;
  low->days[low->of_seven++] = (SteadFlockLowDay) {
    day, eggs->eggs, alive, expected->likely * (double) alive, expected->low * (double) alive,
  };
}

gboolean
stead_flock_low_days (SteadStore        *store,
                      const SteadFlock  *flock,
                      SteadDay           today,
                      SteadFlockLow     *out,
                      GError           **error)
{
  SteadDay first = today - LOOK_BACK_DAYS;
  g_autoptr(GPtrArray) entries = NULL;
  DayEggs days[LOOK_BACK_DAYS];
  SteadBand expected[LOOK_BACK_DAYS];
  gint64 alive;

  *out = (SteadFlockLow) { .run = 0 };
  if (flock->ended_on != STEAD_DAY_NONE && flock->ended_on < today)
    return TRUE;
  entries = stead_flock_repo_entries (store, flock->id, first, today - 1, error);
  if (entries == NULL)
    return FALSE;
  sum_days (entries, first, days);
  alive = stead_flock_repo_alive (store, flock->id, MAX (first, flock->housed_on), error);
  if (alive < 0 || !expect_days (store, flock, first, (double) alive, expected, error))
    return FALSE;
  for (int i = 0; i < LOOK_BACK_DAYS; i++)
    {
      if (first + i < flock->housed_on)
        continue;
      alive = stead_flock_repo_alive (store, flock->id, first + i, error);
      if (alive < 0)
        return FALSE;
      if (is_low (&days[i], &expected[i], alive))
        add_low (out, first + i, &days[i], &expected[i], alive);
      else
        out->run = 0;
    }
  return TRUE;
}

char *
stead_flock_low_worked (const SteadFlockLow *low,
                        SteadSpecies         species)
{
  GString *worked = g_string_new (NULL);

  for (int i = 0; i < low->of_seven; i++)
    {
      const SteadFlockLowDay *at = &low->days[i];
      g_autofree char *day = stead_day_format (at->day, STEAD_DAY_STYLE_SHORT);
      g_autofree char *eggs = stead_words_eggs (at->eggs), *birds = stead_words_flock (species, at->alive);
      g_autofree char *likely = stead_number_format (at->likely, 1), *least = stead_number_format (at->least, 1);

      /* Translators: a day, "10 eggs", "27 hens", two numbers of eggs. */
      g_string_append_printf (worked, _("%1$s%2$s: %3$s of %4$s; %5$s expected, at least %6$s"), i > 0 ? "\n" : "", day, eggs,
                              birds, likely, least);
    }
  return g_string_free (worked, FALSE);
}

char *
stead_flock_low_caution (const SteadFlockLow *low)
{
  int run = low->run, of_seven = low->of_seven;
  GString *text;
  g_autofree char *what = NULL;

  if (run < WARN_RUN && of_seven < WARN_OF_SEVEN)
    return NULL;
  if (run >= WARN_RUN)
    what = g_strdup_printf (g_dngettext (GETTEXT_PACKAGE,
                                         "Eggs were clearly fewer than expected for %d day running.",
                                         "Eggs were clearly fewer than expected for %d days running.",
                                         (gulong) run), run);
  else
    what = g_strdup_printf (g_dngettext (GETTEXT_PACKAGE,
                                         "Eggs were clearly fewer than expected on %d of the last 7 days.",
                                         "Eggs were clearly fewer than expected on %d of the last 7 days.",
                                         (gulong) of_seven), of_seven);
  text = g_string_new (NULL);
  stead_words_add (text, what);
  /* The order of the checks is husbandry practice, as extension leaflets give it. */
  stead_words_add (text, _("First check water and feed, then light, heat and hidden nests."));
  stead_words_add (text, _("Sick or dying birds are for a veterinarian."));
  return stead_words_end (text);
}
