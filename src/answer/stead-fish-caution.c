/* stead-fish-caution.c - what is wrong with a group of fish, and what to look at first. */
#include "config.h"

#include "answer/stead-fish-private.h"
#include "answer/stead-words-private.h"

#include <glib/gi18n-lib.h>
#include <gsl/gsl_cdf.h>
#include <math.h>

/* Losses at the usual rate stay under this chance in 97.5 of 100 weeks. */
#define LOSS_CHANCE 0.025
#define LOSS_DAYS 7

/* A reading of the water is the present one for so many days. */
#define FRESH_DAYS 3

/* Over the best band by this much it is warm enough to say so: common practice, no source. */
#define WARM_BY_C 2

#define LOOK_BACK_DAYS 28

double
stead_fish_losses_usual (const SteadFishAnswer *self,
                         double                *out_chance)
{
  gint64 lost = self->week.deaths + self->week.culled;
  double year = CLAMP (self->group->deaths_year, 0.0001, 0.9999);
  double usual = -log1p (-year) / 365 * LOSS_DAYS * (double) (self->alive + lost);

  *out_chance = lost > 0 ? gsl_cdf_poisson_Q ((unsigned int) (lost - 1), usual) : 1;
  return usual;
}

gboolean
stead_fish_losses_are_high (const SteadFishAnswer *self)
{
  double chance;

  stead_fish_losses_usual (self, &chance);
  return self->week.deaths + self->week.culled >= 2 && chance < LOSS_CHANCE;
}

char *
stead_fish_losses_worked (const SteadFishAnswer *self)
{
  gint64 lost = self->week.deaths + self->week.culled;
  double chance;
  g_autofree char *usual = stead_number_format (stead_fish_losses_usual (self, &chance), 2);
  g_autofree char *number = stead_number_format ((double) lost, 0), *likely = stead_words_chance (chance);

  /* Translators: a number of fish, a number that is usual, the first number, a percentage. */
  return g_strdup_printf (_("Lost in 7 days: %1$s. Usual: %2$s. Chance of %1$s or more: %3$s."), number, usual, likely);
}

/* The last two feedings: was feed left both times? */
gboolean
stead_fish_refused_twice (SteadStore       *store,
                          const SteadFish  *group,
                          SteadDay          today,
                          gboolean         *out,
                          GError          **error)
{
  g_autoptr(GPtrArray) entries = stead_fish_repo_entries (store, group->batch.id, today - LOOK_BACK_DAYS, today, error);
  int seen = 0, refused = 0;

  *out = FALSE;
  for (guint i = entries != NULL ? entries->len : 0; i > 0 && seen < 2; i--)
    {
      const SteadFishEntry *entry = entries->pdata[i - 1];

      if (!(entry->feed_kg > 0) && !entry->refused)
        continue;
      seen++;
      refused += entry->refused;
    }
  *out = refused == 2;
  return entries != NULL;
}

/* --- one after the other ------------------------------------------------------------------ */

static gboolean
add_wait (SteadStore       *store,
          SteadFishAnswer  *self,
          GString          *text,
          GError          **error)
{
  g_autoptr(GError) problem = NULL;
  SteadDay until = stead_treatment_repo_wait (store, self->group->batch.id, stead_store_get_today (store), &problem);
  g_autofree char *day = NULL;
  g_autofree char *sentence = NULL;

  if (problem != NULL)
    {
      g_propagate_error (error, g_steal_pointer (&problem));
      return FALSE;
    }
  if (until == STEAD_DAY_NONE)
    return TRUE;
  day = stead_day_format (until, STEAD_DAY_STYLE_MEDIUM);
  /* Translators: a day. */
  sentence = g_strdup_printf (_("These fish were treated: none may be sold or eaten up to and including %s."), day);
  stead_words_add (text, sentence);
  return TRUE;
}

static void
add_losses (const SteadFishAnswer *self,
            GString               *text)
{
  gint64 lost = self->week.deaths + self->week.culled;
  g_autofree char *number = stead_number_format ((double) lost, 0);
  g_autofree char *sentence = NULL;

  if (!stead_fish_losses_are_high (self))
    return;
  sentence = g_strdup_printf (g_dngettext (GETTEXT_PACKAGE,
                                           "%s fish was lost in 7 days, more than is usual.",
                                           "%s fish were lost in 7 days, more than is usual.",
                                           stead_words_plural (lost)), number);
  stead_words_add (text, sentence);
  stead_words_add (text, _("Test the water first: oxygen, ammonia, nitrite, temperature."));
  stead_words_add (text, _("Sick or dying fish are for a veterinarian; give no medicine without one."));
}

static gboolean
add_refused (SteadStore       *store,
             SteadFishAnswer  *self,
             GString          *text,
             GError          **error)
{
  gboolean refused = FALSE;

  if (!stead_fish_refused_twice (store, self->group, stead_store_get_today (store), &refused, error))
    return FALSE;
  if (refused)
    stead_words_add (text, _("They left their feed twice. Give none, take out what lies there, and test the water first."));
  return TRUE;
}

static void
add_temperature (const SteadFishAnswer *self,
                 SteadDay               today,
                 GString               *text)
{
  const SteadFishKind *kind = stead_fish_kind (self->species);
  const SteadUnit *unit = stead_unit_default (STEAD_DIMENSION_TEMPERATURE, self->farm->units);
  g_autofree char *now = NULL;
  g_autofree char *low = NULL;
  g_autofree char *high = NULL;
  g_autofree char *sentence = NULL;

  if (!self->is_known || isnan (self->water_c) || today - self->water_day > FRESH_DAYS)
    return;
  if (self->water_c >= kind->growth_min_c && self->water_c <= kind->best_max_c + WARM_BY_C)
    return;
  now = stead_quantity_format (self->water_c, unit);
  low = stead_quantity_format (kind->best_min_c, unit);
  high = stead_quantity_format (kind->best_max_c, unit);
  if (self->water_c < kind->growth_min_c)
    /* Translators: in both: the temperature of the water, then the ends of the best band, then a source. */
    sentence = g_strdup_printf (_("Water of %s is too cold for these fish to grow; best is %s to %s (%s)."),
                                now, low, high, stead_source_title (kind->temperature_source));
  else
    sentence = g_strdup_printf (_("Water of %s is too warm for these fish; best is %s to %s (%s). "
                                  "Add air, feed less, cool it slowly."),
                                now, low, high, stead_source_title (kind->temperature_source));
  stead_words_add (text, sentence);
}

static void
add_density (const SteadFishAnswer *self,
             GString               *text)
{
  g_autofree char *words = NULL;

  if (isnan (self->density_kg_m3) || self->density_class < STEAD_FISH_DENSITY_OXYGEN)
    return;
  words = stead_fish_density_words (self->density_class, self->farm->units);
  stead_words_add (text, words);
}

/* The newest weighing that the curve does not follow. */
static void
add_far_off (const SteadFishAnswer *self,
             GString               *text)
{
  for (guint i = self->marks->len; i > 0; i--)
    {
      const SteadGrowthMark *mark = &g_array_index (self->marks, SteadGrowthMark, i - 1);
      g_autofree char *day = NULL;
      g_autofree char *sentence = NULL;

      if (!mark->far_off)
        continue;
      day = stead_day_format (mark->day, STEAD_DAY_STYLE_MEDIUM);
      /* Translators: a day. */
      sentence = g_strdup_printf (_("The weighing of %s lies far off the others and does not count. "
                                    "Look for a slip of the pen, or weigh again."), day);
      stead_words_add (text, sentence);
      return;
    }
}

gboolean
stead_fish_find_cautions (SteadStore       *store,
                          SteadFishAnswer  *self,
                          GError          **error)
{
  g_autoptr(GString) text = g_string_new (NULL);
  SteadDay today = stead_store_get_today (store);

  if (self->group->batch.ended_on != STEAD_DAY_NONE)
    return TRUE;
  if (!add_wait (store, self, text, error))
    return FALSE;
  add_losses (self, text);
  if (!add_refused (store, self, text, error))
    return FALSE;
  add_temperature (self, today, text);
  add_density (self, text);
  add_far_off (self, text);
  self->caution = stead_words_end (g_steal_pointer (&text));
  return TRUE;
}
