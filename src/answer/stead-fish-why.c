/* stead-fish-why.c - how each figure of a group of fish is worked out. */
#include "config.h"

#include "answer/stead-fish-private.h"
#include "answer/stead-words-private.h"
#include "core/stead-fish-growth.h"
#include "core/stead-fish-sample.h"

#include <glib/gi18n-lib.h>
#include <math.h>

static const SteadUnit *
mass_unit (const SteadFishAnswer *self)
{
  return stead_unit_default (STEAD_DIMENSION_MASS, self->farm->units);
}

double
stead_fish_weighing_condition (const SteadWeighing *weighing)
{
  g_autofree double *weights = NULL;
  g_autofree double *lengths = NULL;
  SteadFishSample sample;
  gsize n = 0;

  g_return_val_if_fail (weighing != NULL, NAN);

  if (weighing->single == NULL || weighing->single->len == 0)
    return stead_fish_condition (stead_weighing_mean_g (weighing), weighing->length_cm);
  weights = g_new (double, weighing->single->len);
  lengths = g_new (double, weighing->single->len);
  for (guint i = 0; i < weighing->single->len; i++)
    {
      const SteadWeighed *one = &g_array_index (weighing->single, SteadWeighed, i);

      if (!(one->length_cm > 0))
        continue;
      weights[n] = one->weight_g;
      lengths[n++] = one->length_cm;
    }
  return n > 0 && stead_fish_sample (weights, lengths, n, &sample, NULL) ? sample.condition : NAN;
}

static SteadWhy *
biomass_why (const SteadFishAnswer *self)
{
  g_autofree char *fish = stead_words_fish (self->alive);
  g_autofree char *each = stead_fish_weight_text (self->mean_g.likely, self->farm->units);
  g_autofree char *all = stead_quantity_format (self->biomass_kg, mass_unit (self));

  return stead_why_new (g_strdup (_("What they weigh together")),
                        _("Fish alive × mean weight of one."),
                        /* Translators: "97 fish" × weight of one = weight of all. */
                        g_strdup_printf (_("%s × %s = %s"), fish, each, all),
                        _("Fish put in and moved in, less those dead, taken out, moved out and harvested. "
                          "The mean weight follows from the weighings and the warmth of the water."));
}

static SteadWhy *
growth_why (const SteadFishAnswer *self)
{
  g_autofree char *tgc = stead_number_format (self->tgc_x100, 3);
  g_autofree char *plan = stead_number_format (self->group->tgc, 3);
  g_autofree char *n = stead_number_format ((double) self->n_learned, 0);
  g_autofree char *low = stead_fish_weight_text (self->mean_g.low, self->farm->units);
  g_autofree char *high = stead_fish_weight_text (self->mean_g.high, self->farm->units);

  return stead_why_new (g_strdup (_("How fast they grow")),
                        _("The cube root of the weight in grams grows by the growth coefficient ÷ 100 for each degree-day. "
                          "A day counts its mean temperature in °C, at most the optimum of the fish, and nothing "
                          "where it hardly feeds."),
                        /* Translators: number of weighings, coefficient learned, coefficient before, two weights. */
                        g_strdup_printf (g_dngettext (GETTEXT_PACKAGE,
                                                      "%s weighing: coefficient %s (%s before any). Mean weight today: "
                                                      "8 chances in 10 from %s to %s.",
                                                      "%s weighings: coefficient %s (%s before any). Mean weight today: "
                                                      "8 chances in 10 from %s to %s.",
                                                      stead_words_plural ((gint64) self->n_learned)),
                                         n, tgc, plan, low, high),
                        _("Thermal growth coefficient: fish farmers' calculations page (SGR, TGC); its limits: "
                          "Jobling 2003, a cautionary note. Weighings count by one over their variance."));
}

static SteadWhy *
feed_why (const SteadFishAnswer *self)
{
  const SteadUnit *degrees = stead_unit_default (STEAD_DIMENSION_TEMPERATURE, self->farm->units);
  g_autofree char *all = stead_quantity_format (self->biomass_kg, mass_unit (self));
  g_autofree char *rate = stead_words_percent (self->rate.frac, 2);
  g_autofree char *feed = stead_quantity_format (self->feed_kg, mass_unit (self));
  g_autofree char *each = stead_fish_weight_text (self->mean_g.likely, self->farm->units);
  g_autofree char *water = stead_quantity_format (self->water_c, degrees);
  g_autofree char *days = stead_number_format (self->rate.interval_days, 1);
  char *worked = self->rate.interval_days > 1
                 /* Translators: weight of all × percent = feed; then weight of one, a temperature, days. */
                 ? g_strdup_printf (_("%s × %s = %s, for fish of %s in water of %s, each %s days"),
                                    all, rate, feed, each, water, days)
                 /* Translators: weight of all × percent = feed; then weight of one, a temperature. */
                 : g_strdup_printf (_("%s × %s = %s, for fish of %s in water of %s"), all, rate, feed, each, water);

  return stead_why_new (g_strdup (_("How much to feed")),
                        _("Weight of all fish × share of the feeding table for their size and the warmth of the water. "
                          "Feed only what they take in 15 to 30 minutes: the fish say when to stop."),
                        worked, stead_source_title (self->rate.source));
}

static SteadWhy *
density_why (const SteadFishAnswer *self)
{
  const SteadUnit *volume = stead_unit_default (STEAD_DIMENSION_VOLUME, self->farm->units);
  g_autofree char *all = stead_quantity_format (self->tank_biomass_kg, mass_unit (self));
  g_autofree char *water = stead_quantity_format (self->tank->volume_l, volume);
  g_autofree char *density = stead_fish_density_text (self->density_kg_m3, self->farm->units);
  g_autofree char *words = stead_fish_density_words (self->density_class, self->farm->units);

  return stead_why_new (g_strdup (_("How crowded the tank is")),
                        _("Weight of all fish in the tank ÷ water in it."),
                        /* Translators: weight ÷ volume = density. */
                        g_strdup_printf (_("%s ÷ %s = %s"), all, water, density), words);
}

static SteadWhy *
fcr_why (const SteadFishAnswer *self)
{
  g_autofree char *fcr = stead_number_format (self->fcr, 2);
  g_autofree char *day = stead_day_format (self->last_weighed, STEAD_DAY_STYLE_MEDIUM);

  return stead_why_new (g_strdup (_("Feed for the weight they gained")),
                        _("Feed given ÷ (weight now, with what was taken out − weight put in + weight of those that died)."),
                        /* Translators: a day, a ratio. */
                        g_strdup_printf (_("Up to the weighing of %s: %s"), day, fcr),
                        _("Feed conversion ratio: update on tilapia and vegetable production in the UVI aquaponic "
                          "system (1.7 to 1.8 for tilapia); other fish: common practice, no source."));
}

static SteadWhy *
condition_why (const SteadFishAnswer *self)
{
  g_autofree char *condition = stead_number_format (self->condition, 2);

  return stead_why_new (g_strdup (_("Condition of the fish")),
                        _("100 × weight in grams ÷ length in centimeters, cubed. Take lengths always in the same way, "
                          "and compare with your own fish of before."),
                        g_strdup_printf (_("Mean of the fish measured last: %s"), condition),
                        _("Fulton's condition factor, a river research trust's page."));
}

static SteadWhy *
sale_why (const SteadFishAnswer *self)
{
  double mean_g = stead_fish_mean_for_share_g (self->cv_frac, self->group->sale_g, self->group->sale_frac);
  g_autofree char *share = stead_words_percent (self->group->sale_frac, 0);
  g_autofree char *ready = stead_words_percent (self->share_ready, 0);
  g_autofree char *sale = stead_fish_weight_text (self->group->sale_g, self->farm->units);
  g_autofree char *mean = stead_fish_weight_text (mean_g, self->farm->units);

  return stead_why_new (g_strdup (_("When they can be sold")),
                        _("Fish of one tank differ: their weights are taken as lognormal. The mean grows with the "
                          "degree-days to come, as warm as the last two weeks were."),
                        /* Translators: share wanted, sale weight, mean weight needed, share that has it now. */
                        g_strdup_printf (_("For %s to have %s, the mean must be about %s. Today %s have it."),
                                         share, sale, mean, ready),
                        _("Drawn 1,000 times: growth as unsure as the weighings leave it, deaths at the group's own "
                          "rate, the spread of single fish. The band holds 8 of 10."));
}

static SteadWhy *
purge_why (const SteadFishAnswer *self)
{
  g_autofree char *days = stead_words_days (self->group->purge_days);
  g_autofree char *from = stead_day_format (self->purge_day, STEAD_DAY_STYLE_MEDIUM);
  g_autofree char *before = stead_quantity_format (self->harvest_kg.likely, mass_unit (self));
  g_autofree char *after = stead_quantity_format (self->purged_kg, mass_unit (self));

  return stead_why_new (g_strdup (_("When the feed goes off")),
                        _("Some days before the sale fish get clean water and no feed, so that they keep and taste well."),
                        /* Translators: "4 days", a day, weight before, weight after. */
                        g_strdup_printf (_("%s: no feed from %s on; %s alive become about %s."), days, from, before, after),
                        _("3 to 5 days: Tank culture of tilapia, part 5, and FAO 589, section 7.7. "
                          "Weight that goes: salmon, 3.8 percent in 5 days (a review for hatcheries, 2024)."));
}

GPtrArray *
stead_fish_answer_whys (const SteadFishAnswer *self)
{
  GPtrArray *whys;

  g_return_val_if_fail (self != NULL, NULL);

  whys = g_ptr_array_new_with_free_func ((GDestroyNotify) stead_why_free);
  if (!isnan (self->biomass_kg) && self->alive > 0)
    {
      g_ptr_array_add (whys, biomass_why (self));
      g_ptr_array_add (whys, growth_why (self));
    }
  if (self->has_rate)
    g_ptr_array_add (whys, feed_why (self));
  if (!isnan (self->density_kg_m3))
    g_ptr_array_add (whys, density_why (self));
  if (!isnan (self->fcr))
    g_ptr_array_add (whys, fcr_why (self));
  if (!isnan (self->condition))
    g_ptr_array_add (whys, condition_why (self));
  if (self->sale_day != STEAD_DAY_NONE)
    g_ptr_array_add (whys, sale_why (self));
  if (self->purge_day != STEAD_DAY_NONE)
    g_ptr_array_add (whys, purge_why (self));
  return whys;
}
