/* stead-flock-words.c - the flock answer's sentence, and names of entries. */
#include "config.h"

#include "answer/stead-flock-private.h"
#include "answer/stead-words-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>

static gboolean
are_hens (const SteadFlockAnswer *self)
{
  return self->flock->species == STEAD_SPECIES_HEN;
}

/* "30 hens", or "30 birds" for others */
static char *
birds_text (const SteadFlockAnswer *self,
            gint64                  n)
{
  return stead_words_flock (self->flock->species, n);
}

/* How the week was against what is expected at this age. */
static char *
compare_hens (gulong      n,
              const char *hens,
              const char *rate,
              gint64      more,
              const char *gap)
{
  /* Translators: in these three: hens, then eggs a day for every 100 hens. */
  if (more == 0)
    return g_strdup_printf (g_dngettext (GETTEXT_PACKAGE,
                                         "%s hen laid <b>%s in 100</b> last week, as expected at this age.",
                                         "%s hens laid <b>%s in 100</b> last week, as expected at this age.", n),
                            hens, rate);
  if (more > 0)
    return g_strdup_printf (g_dngettext (GETTEXT_PACKAGE,
                                         "%s hen laid <b>%s in 100</b> last week, %s more than expected at this age.",
                                         "%s hens laid <b>%s in 100</b> last week, %s more than expected at this age.",
                                         n), hens, rate, gap);
  return g_strdup_printf (g_dngettext (GETTEXT_PACKAGE,
                                       "%s hen laid <b>%s in 100</b> last week, %s fewer than expected at this age.",
                                       "%s hens laid <b>%s in 100</b> last week, %s fewer than expected at this age.",
                                       n), hens, rate, gap);
}

static char *
compare_birds (gulong      n,
               const char *birds,
               const char *rate,
               gint64      more,
               const char *gap)
{
  /* Translators: in these three: birds, then eggs a day for every 100 birds. */
  if (more == 0)
    return g_strdup_printf (g_dngettext (GETTEXT_PACKAGE,
                                         "%s bird laid <b>%s in 100</b> last week, as expected at this age.",
                                         "%s birds laid <b>%s in 100</b> last week, as expected at this age.", n),
                            birds, rate);
  if (more > 0)
    return g_strdup_printf (g_dngettext (GETTEXT_PACKAGE,
                                         "%s bird laid <b>%s in 100</b> last week, %s more than expected at this age.",
                                         "%s birds laid <b>%s in 100</b> last week, %s more than expected at this age.",
                                         n), birds, rate, gap);
  return g_strdup_printf (g_dngettext (GETTEXT_PACKAGE,
                                       "%s bird laid <b>%s in 100</b> last week, %s fewer than expected at this age.",
                                       "%s birds laid <b>%s in 100</b> last week, %s fewer than expected at this age.",
                                       n), birds, rate, gap);
}

/* What is said of the last complete week, against the curve. */
static char *
week_sentence (const SteadFlockAnswer *self)
{
  gulong n = stead_words_plural (self->alive);
  gint64 laid = (gint64) round (self->week_frac * 100);
  gint64 expected = isnan (self->expected_frac) ? 0 : (gint64) round (self->expected_frac * 100);
  g_autofree char *alive = stead_number_format ((double) self->alive, 0);
  g_autofree char *rate = stead_number_format ((double) laid, 0);
  g_autofree char *gap = stead_number_format (fabs ((double) (laid - expected)), 0);

  if (expected >= 1)
    return are_hens (self) ? compare_hens (n, alive, rate, laid - expected, gap)
                           : compare_birds (n, alive, rate, laid - expected, gap);
  if (are_hens (self))
    /* Translators: hens, then eggs a day for every 100 hens. */
    return g_strdup_printf (g_dngettext (GETTEXT_PACKAGE,
                                         "%s hen laid <b>%s in 100</b> last week.",
                                         "%s hens laid <b>%s in 100</b> last week.", n), alive, rate);
  /* Translators: birds, then eggs a day for every 100 birds. */
  return g_strdup_printf (g_dngettext (GETTEXT_PACKAGE,
                                       "%s bird laid <b>%s in 100</b> last week.",
                                       "%s birds laid <b>%s in 100</b> last week.", n), alive, rate);
}

static char *
laying_sentence (const SteadFlockAnswer *self)
{
  g_autofree char *hens = birds_text (self, self->alive);

  if (!isnan (self->week_frac))
    return week_sentence (self);
  if (self->so_far.days_logged > 0)
    return g_strdup (_("No eggs were entered in the last seven days. Enter the missing days."));
  if (self->age_weeks < self->flock->curve.onset_age_weeks)
    {
      g_autofree char *age = stead_number_format (floor (self->age_weeks), 0);
      g_autofree char *onset = stead_number_format (self->flock->curve.onset_age_weeks, 0);

      /* Translators: "30 hens", their age in weeks, and the age at which laying begins. */
      return g_strdup_printf (_("%s are %s weeks old. The first eggs are expected at about <b>%s weeks</b>."),
                              hens, age, onset);
    }
  /* Translators: "30 hens". */
  return g_strdup_printf (_("%s are housed, and no eggs are entered yet. Enter the first day."), hens);
}

static char *
ended_sentence (const SteadFlockAnswer *self)
{
  g_autofree char *day = stead_day_format (self->flock->ended_on, STEAD_DAY_STYLE_MEDIUM);
  g_autofree char *eggs = stead_words_eggs (self->so_far.eggs);
  g_autofree char *hens = birds_text (self, self->flock->birds);

  /* Translators: a day, "8,120 eggs", "30 hens". */
  return g_strdup_printf (_("This flock ended on %s. It gave <b>%s</b> from %s."), day, eggs, hens);
}

char *
stead_flock_sentence (const SteadFlockAnswer *self,
                      SteadDay                today)
{
  GString *text;
  g_autofree char *laying = NULL, *expect = NULL;
  g_autofree char *feed = NULL;

  if (self->flock->ended_on != STEAD_DAY_NONE)
    return ended_sentence (self);
  if (self->alive < 1)
    return g_strdup (are_hens (self) ? _("No hen of this flock is alive. Enter the day on which the flock ended.")
                                     : _("No bird of this flock is alive. Enter the day on which the flock ended."));
  laying = laying_sentence (self);
  expect = stead_flock_expect_sentence (self, today);
  feed = self->flock->feed_item_id != 0 ? stead_words_feed_lasts (self->feed_on_hand_kg, self->feed_days) : NULL;
  text = g_string_new (NULL);
  stead_words_add (text, laying);
  stead_words_add (text, expect);
  stead_words_add (text, feed);
  return stead_words_end (text);
}

char *
stead_flock_answer_entry_name (const SteadFlockEntry *entry,
                               const SteadFarm       *farm)
{
  g_autofree char *day = NULL;

  g_return_val_if_fail (entry != NULL && farm != NULL, NULL);

  day = stead_day_format (entry->day, STEAD_DAY_STYLE_SHORT);
  if (entry->eggs != STEAD_COUNT_NONE)
    {
      g_autofree char *eggs = stead_words_eggs (entry->eggs);

      /* Translators: in each of these the last %s is a day: "22 eggs on Mar 3". */
      return g_strdup_printf (_("%s on %s"), eggs, day);
    }
  if (!isnan (entry->feed_kg))
    {
      const SteadUnit *unit = stead_unit_default (STEAD_DIMENSION_MASS, farm->units);
      g_autofree char *feed = stead_quantity_format (entry->feed_kg, unit);

      return g_strdup_printf (_("Feed, %s, on %s"), feed, day);
    }
  if (entry->deaths + entry->culled > 0)
    {
      g_autofree char *birds = stead_words_birds (entry->deaths + entry->culled);

      return g_strdup_printf (_("%s lost on %s"), birds, day);
    }
  return g_strdup_printf (_("Note on %s"), day);
}
