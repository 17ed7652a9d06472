/* stead-flock-why.c - how each figure of a flock is worked out, with its own numbers. */
#include "config.h"

#include "answer/stead-flock-private.h"
#include "answer/stead-hand-why-private.h"
#include "answer/stead-words-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>

static SteadWhy *
alive_why (const SteadFlockAnswer *self)
{
  gboolean hens = self->flock->species == STEAD_SPECIES_HEN;
  g_autofree char *birds = stead_number_format ((double) self->flock->birds, 0);
  g_autofree char *lost = stead_number_format ((double) self->so_far.deaths, 0);
  g_autofree char *alive = stead_words_flock (self->flock->species, self->alive);

  return stead_why_new (g_strdup (hens ? _("Hens alive") : _("Birds alive")),
                        _("Moved in − found dead or taken out, by the log."),
                        /* Translators: moved in − lost = "27 hens". */
                        g_strdup_printf (_("%1$s − %2$s = %3$s"), birds, lost, alive), _("Common practice, no source."));
}

static SteadWhy *
dozens_why (const SteadFlockAnswer *self)
{
  g_autofree char *eggs = stead_words_eggs (self->so_far.eggs);
  g_autofree char *dozens = stead_words_units_exact (STEAD_PACK_DOZEN, (double) self->so_far.eggs / 12, 1);

  return stead_why_new (g_strdup (_("Dozens collected")),
                        _("All eggs of the log ÷ 12, cracked ones too."),
                        /* Translators: "1,187 eggs", "98.9 dozen". */
                        g_strdup_printf (_("%1$s ÷ 12 = %2$s"), eggs, dozens), _("Common practice, no source."));
}

static SteadWhy *
rate_why (const SteadFlockAnswer *self)
{
  g_autofree char *eggs = stead_words_eggs (self->week.eggs);
  g_autofree char *hen_days = stead_number_format (self->week.hen_days, 0);
  g_autofree char *rate = stead_words_percent (self->week_frac, 1);

  return stead_why_new (g_strdup (_("Eggs for each 100 hens a day")),
                        _("Eggs of the week ÷ hen-days. Each hen alive on a day that was entered is one hen-day."),
                        /* Translators: "163 eggs" ÷ hen-days = percent. */
                        g_strdup_printf (_("%s ÷ %s hen-days = %s"), eggs, hen_days, rate),
                        _("Hen-day production: Calculating Agriculture (a student textbook), chapter 12, p. 12-11."));
}

static SteadWhy *
expected_why (const SteadFlockAnswer *self)
{
  const SteadLayCurve *curve = &self->flock->curve;
  g_autofree char *level = stead_number_format (curve->level_frac, 3);
  g_autofree char *decline = stead_number_format (curve->decline_week, 4);
  g_autofree char *steepness = stead_number_format (curve->steepness_week, 2);
  g_autofree char *half = stead_number_format (curve->half_week, 2);
  g_autofree char *onset = stead_number_format (curve->onset_age_weeks, 1);
  g_autofree char *rate = stead_words_percent (self->expected_frac, 1);

  return stead_why_new (g_strdup (_("What is expected at this age")),
                        _("Level × e^(−decline × t) ÷ (1 + e^(−steepness × (t − half))). "
                          "t is the age in weeks less the age at the first eggs."),
                        g_strdup_printf (_("level %s, decline %s, steepness %s, half %s weeks, first eggs at %s weeks: %s"),
                                         level, decline, steepness, half, onset, rate),
                        _("Compartment curve of lay with usual values for brown hens: from memory, no source at hand. "
                          "Trust your own log more."));
}

static SteadWhy *
low_why (const SteadFlockAnswer *self)
{
  return stead_why_new (g_strdup (_("Days with clearly fewer eggs")),
                        _("Of the last seven days that are complete: below the band in which 19 of 20 days lie, by the curve learned "
                          "from the log before them, and fewer than all but 2.5 in 100 days of hens that lay at that rate. Two such "
                          "days on end, or three of seven, call for a look."),
                        stead_flock_low_worked (&self->low, self->flock->species),
                        _("Binomial distribution. The chances and when to look: common practice, no source."));
}

static SteadWhy *
next_why (const SteadFlockAnswer *self)
{
  const SteadLayAhead *week = &g_array_index (self->ahead, SteadLayAhead, 0);
  g_autofree char *hens = stead_number_format (week->hens, 1);
  g_autofree char *rate = stead_words_percent (week->hens > 0 ? week->eggs.likely / (7 * week->hens) : 0, 1);
  g_autofree char *dozens = stead_words_units_exact (STEAD_PACK_DOZEN, self->next_dozens, 1);
  g_autofree char *range = stead_flock_eggs_range (&week->eggs);

  return stead_why_new (g_strdup (_("Dozens to expect in 7 days")),
                        self->is_learned
                        ? _("Hens alive in the middle of the week × 7 days × the rate of the curve at that age ÷ 12. The curve is "
                            "learned from the weeks of this log. Some hens are taken to die as they did so far.")
                        : _("Hens alive in the middle of the week × 7 days × the rate of the usual curve at that age ÷ 12. "
                            "The log is too short to learn from. Some hens are taken to die as is usual."),
                        /* Translators: hens, a percentage, "13.3 dozen", "12 to 14 dozen". */
                        g_strdup_printf (_("%1$s × 7 × %2$s ÷ 12 = %3$s; 8 chances in 10: %4$s."), hens, rate, dozens, range),
                        _("Weighted least squares of a compartment curve of lay. How unsure the curve is beforehand and how "
                          "many hens die: common practice, no source."));
}

static SteadWhy *
feed_why (const SteadFlockAnswer *self)
{
  const SteadUnit *unit = stead_unit_default (STEAD_DIMENSION_MASS, self->farm->units);
  g_autofree char *feed = stead_quantity_format (self->recent.feed_kg, unit);
  g_autofree char *eggs = stead_words_eggs (self->recent.eggs);
  g_autofree char *dozen = stead_quantity_format (self->feed_per_dozen_kg, unit);

  return stead_why_new (g_strdup (_("Feed for one dozen eggs")),
                        _("Feed of the last 12 weeks ÷ dozens laid in them."),
                        /* Translators: feed ÷ ("1,187 eggs" ÷ 12) = feed for a dozen. */
                        g_strdup_printf (_("%s ÷ (%s ÷ 12) = %s"), feed, eggs, dozen),
                        _("Feed per dozen from totals: the ratio that trials of layers report "
                          "(3.0 to 4.5 lb is usual for brown hens)."));
}

static SteadWhy *
days_why (const SteadFlockAnswer *self)
{
  const SteadUnit *unit = stead_unit_default (STEAD_DIMENSION_MASS, self->farm->units);
  g_autofree char *hand = stead_quantity_format (self->feed_on_hand_kg, unit);
  g_autofree char *use = stead_quantity_format (self->feed_use_kg_day, unit);
  g_autofree char *days = stead_number_format (self->feed_days, 1);

  return stead_why_new (g_strdup (_("How long the feed lasts")),
                        _("Feed on hand ÷ feed used a day in the last two weeks, by all that eat it."),
                        /* Translators: feed on hand ÷ feed a day = days. */
                        g_strdup_printf (_("%s ÷ %s a day = %s days"), hand, use, days),
                        _("Common practice, no source."));
}

GPtrArray *
stead_flock_answer_whys (const SteadFlockAnswer *self)
{
  GPtrArray *whys;

  g_return_val_if_fail (self != NULL, NULL);

  whys = stead_whys_new ();
  g_ptr_array_add (whys, alive_why (self));
  if (self->so_far.eggs > 0)
    g_ptr_array_add (whys, dozens_why (self));
  if (!isnan (self->week_frac))
    g_ptr_array_add (whys, rate_why (self));
  if (!isnan (self->expected_frac))
    g_ptr_array_add (whys, expected_why (self));
  if (self->low.of_seven > 0)
    g_ptr_array_add (whys, low_why (self));
  if (self->has_forecast)
    g_ptr_array_add (whys, next_why (self));
  if (!isnan (self->feed_per_dozen_kg))
    g_ptr_array_add (whys, feed_why (self));
  stead_whys_add (whys, stead_hand_why (_("Feed on hand"), self->feed_lots, self->feed_on_hand_kg,
                                        stead_unit_default (STEAD_DIMENSION_MASS, self->farm->units)));
  if (!isnan (self->feed_days))
    g_ptr_array_add (whys, days_why (self));
  stead_whys_add (whys, stead_why_copy (self->cost_why));
  return whys;
}
