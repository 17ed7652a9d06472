/* stead-fish-why.c - how each figure of a group of fish is worked out. */
#include "config.h"

#include "answer/stead-fish-private.h"
#include "answer/stead-hand-why-private.h"
#include "answer/stead-sum-private.h"
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

/* Of those weighed one by one whose length was taken. */
static gsize
count_measured (const SteadWeighing *weighing)
{
  gsize n = 0;

  for (guint i = 0; weighing->single != NULL && i < weighing->single->len; i++)
    n += g_array_index (weighing->single, SteadWeighed, i).length_cm > 0;
  return n;
}

char *
stead_fish_condition_worked (const SteadWeighing *weighing,
                             double               condition)
{
  gsize n = count_measured (weighing);
  g_autofree char *value = stead_number_format (condition, 2);
  g_autofree char *day = stead_day_format (weighing->day, STEAD_DAY_STYLE_MEDIUM);
  g_autofree char *fish = NULL, *weight = NULL, *length = NULL;

  if (n > 0)
    {
      fish = stead_words_fish ((gint64) n);
      /* Translators: "12 fish", a day, a factor. */
      return g_strdup_printf (_("Mean of the %1$s measured on %2$s: %3$s"), fish, day, value);
    }
  weight = stead_number_format (stead_weighing_mean_g (weighing), 1);
  length = stead_number_format (weighing->length_cm, 1);
  /* Translators: mean weight, mean length, a factor, a day. */
  return g_strdup_printf (_("100 × %1$s g ÷ (%2$s cm)³ = %3$s, weighed on %4$s"), weight, length, value, day);
}

SteadWhy *
stead_fish_alive_why (gint64                 stocked,
                      const SteadFishTotals *so_far,
                      gint64                 alive)
{
  const gint64 off[] = { so_far->deaths, so_far->culled, so_far->moved_out, so_far->harvested };
  g_autofree char *fish = stead_words_fish (alive);
  GString *sum = g_string_new (NULL);

  stead_sum_add_count (sum, stocked);
  if (so_far->moved_in > 0)
    stead_sum_add_count (sum, so_far->moved_in);
  for (gsize i = 0; i < G_N_ELEMENTS (off); i++)
    if (off[i] > 0)
      stead_sum_take_count (sum, off[i]);
  stead_sum_end (sum, fish);
  return stead_why_new (g_strdup (_("Fish alive")),
                        _("Put in + moved in − died − taken out − moved out − harvested, by the log. What is 0 is left out."),
                        g_string_free (sum, FALSE), _("Common practice, no source."));
}

static SteadWhy *
spread_why (const SteadFishAnswer *self)
{
  g_autofree char *planned = stead_words_percent (self->group->spread_frac, 0);
  g_autofree char *spread = stead_words_percent (self->cv_frac, 0);
  g_autofree char *mean = stead_fish_weight_text (self->mean_g.likely, self->farm->units);
  g_autofree char *apart = stead_fish_weight_text (self->mean_g.likely * self->cv_frac, self->farm->units);

  return stead_why_new (g_strdup (_("Spread of single fish")),
                        _("Standard deviation of the weights ÷ mean weight. It is learned from the fish that were weighed one by "
                          "one; until then it is what the plan says. About 2 of 3 fish are within it of the mean."),
                        /* Translators: two percentages, two weights. */
                        g_strdup_printf (_("Planned %1$s, by now %2$s: of fish of %3$s on average that is %4$s more or less."),
                                         planned, spread, mean, apart),
                        _("Coefficient of variation. That it stays while they grow: common practice, no source."));
}

char *
stead_fish_ready_worked (const SteadFishAnswer *self)
{
  g_autofree char *ready = stead_words_percent (self->share_ready, 0);
  g_autofree char *sale = stead_fish_weight_text (self->group->sale_g, self->farm->units);
  g_autofree char *mean = stead_fish_weight_text (self->mean_g.likely, self->farm->units);
  g_autofree char *spread = stead_words_percent (self->cv_frac, 0);

  /* Translators: two weights, two percentages. */
  return g_strdup_printf (_("Mean %1$s, spread %2$s, sale weight %3$s: %4$s have it."), mean, spread, sale, ready);
}

static SteadWhy *
ready_why (const SteadFishAnswer *self)
{
  return stead_why_new (g_strdup (_("Ready for sale today")),
                        _("Share of a lognormal distribution that lies above the sale weight: as wide as single fish differ, about "
                          "the mean of today."),
                        stead_fish_ready_worked (self),
                        _("That the weights of a tank are lognormal: common practice, no source."));
}

static SteadWhy *
lasts_why (const SteadFishAnswer *self)
{
  g_autofree char *hand = stead_quantity_format (self->feed_on_hand_kg, mass_unit (self));
  g_autofree char *use = stead_quantity_format (self->feed_use_kg_day, mass_unit (self));
  g_autofree char *days = stead_number_format (self->feed_days, 1);

  return stead_why_new (g_strdup (_("How long the feed lasts")),
                        _("Feed on hand ÷ feed used a day in the last two weeks, by all that eat it."),
                        /* Translators: feed on hand ÷ feed a day = days. */
                        g_strdup_printf (_("%s ÷ %s a day = %s days"), hand, use, days),
                        _("Common practice, no source."));
}

/* Number and weight on the sale day, and what is left of it after the knife. */
static SteadWhy *
harvest_why (const SteadFishAnswer *self)
{
  g_autofree char *now = stead_words_fish (self->alive);
  g_autofree char *then = stead_words_fish ((gint64) llround (self->harvest_fish.likely));
  g_autofree char *day = stead_day_format (self->sale_day, STEAD_DAY_STYLE_MEDIUM);
  g_autofree char *alive = stead_quantity_format (self->harvest_kg.likely, mass_unit (self));
  g_autofree char *purged = stead_quantity_format (self->purged_kg, mass_unit (self));
  GString *worked = g_string_new (NULL);

  /* Translators: "97 fish", "95 fish", a day, two weights. */
  g_string_append_printf (worked, _("Of %1$s about %2$s are alive on %3$s. They weigh %4$s then, after the purge %5$s."),
                          now, then, day, alive, purged);
  for (guint i = 0; i < self->dressed->len; i++)
    {
      const SteadFishDressed *dressed = &g_array_index (self->dressed, SteadFishDressed, i);
      g_autofree char *frac = stead_words_percent (dressed->frac, 1);
      g_autofree char *kg = stead_quantity_format (dressed->kg, mass_unit (self));

      /* Translators: on a line of its own: how it is cut, weight × a percentage = weight, where the percentage is from. */
      g_string_append_printf (worked, _("\n%1$s: %2$s × %3$s = %4$s (%5$s)"), stead_fish_cut_name (dressed->cut), purged, frac, kg,
                              stead_source_title (dressed->source));
    }
  return stead_why_new (g_strdup (_("What the harvest will give")),
                        _("Fish alive, less those that die by then at the group's own rate × their mean weight on that day. "
                          "Dressed: weight after the purge × what the knife leaves of it."),
                        g_string_free (worked, FALSE),
                        self->dressed->len > 0 ? _("What the knife leaves: trials, named beside each. Weight that goes in the purge: "
                                                   "salmon, 3.8 percent in 5 days (a review for hatcheries, 2024).")
                                               : _("Weight that goes in the purge: salmon, 3.8 percent in 5 days (a review for "
                                                   "hatcheries, 2024)."));
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

char *
stead_fish_feed_worked (const SteadFishAnswer *self)
{
  const SteadUnit *degrees = stead_unit_default (STEAD_DIMENSION_TEMPERATURE, self->farm->units);
  g_autofree char *all = stead_quantity_format (self->biomass_kg, mass_unit (self));
  g_autofree char *rate = stead_words_percent (self->rate.frac, 2);
  g_autofree char *feed = stead_quantity_format (self->feed_kg, mass_unit (self));
  g_autofree char *each = stead_fish_weight_text (self->mean_g.likely, self->farm->units);
  g_autofree char *water = stead_quantity_format (self->water_c, degrees);
  g_autofree char *days = stead_number_format (self->rate.interval_days, 1);

  if (self->rate.interval_days > 1)
    /* Translators: weight of all × percent = feed; then weight of one, a temperature, days. */
    return g_strdup_printf (_("%s × %s = %s, for fish of %s in water of %s, each %s days"), all, rate, feed, each, water, days);
  /* Translators: weight of all × percent = feed; then weight of one, a temperature. */
  return g_strdup_printf (_("%s × %s = %s, for fish of %s in water of %s"), all, rate, feed, each, water);
}

static SteadWhy *
feed_why (const SteadFishAnswer *self)
{
  return stead_why_new (g_strdup (_("How much to feed")),
                        _("Weight of all fish × share of the feeding table for their size and the warmth of the water. "
                          "Feed only what they take in 15 to 30 minutes: the fish say when to stop."),
                        stead_fish_feed_worked (self), stead_source_title (self->rate.source));
}

static SteadWhy *
losses_why (const SteadFishAnswer *self)
{
  return stead_why_new (g_strdup (_("More lost than is usual")),
                        _("Usual: fish × the losses of a year that are entered for the group, for 7 days. So many or more by chance "
                          "must be rarer than 2.5 in 100, and 2 at least, to call for a look."),
                        stead_fish_losses_worked (self), _("Poisson distribution. When to look: common practice, no source."));
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
  g_autofree char *feed = stead_quantity_format (self->fcr_feed_kg, mass_unit (self));
  g_autofree char *start = stead_quantity_format (self->fcr_start_kg, mass_unit (self));
  g_autofree char *end = stead_quantity_format (self->fcr_end_kg, mass_unit (self));
  g_autofree char *dead = stead_quantity_format (self->fcr_dead_kg, mass_unit (self));

  return stead_why_new (g_strdup (_("Feed for the weight they gained")),
                        _("Feed given ÷ (weight now, with what was taken out − weight put in + weight of those that died)."),
                        /* Translators: a day; feed ÷ (weight − weight + weight) = a ratio. */
                        g_strdup_printf (_("Up to the weighing of %1$s: %2$s ÷ (%3$s − %4$s + %5$s) = %6$s"), day, feed, end, start,
                                         dead, fcr),
                        _("Feed conversion ratio: update on tilapia and vegetable production in the UVI aquaponic "
                          "system (1.7 to 1.8 for tilapia); other fish: common practice, no source."));
}

static SteadWhy *
condition_why (const SteadFishAnswer *self)
{
  return stead_why_new (g_strdup (_("Condition of the fish")),
                        _("100 × weight in grams ÷ length in centimeters, cubed. Take lengths always in the same way, "
                          "and compare with your own fish of before."),
                        g_strdup (self->condition_worked), _("Fulton's condition factor, a river research trust's page."));
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

/* Number and weight. */
static void
add_size (const SteadFishAnswer *self,
          GPtrArray             *whys)
{
  if (self->group->stocked + self->so_far.moved_in > 0)
    g_ptr_array_add (whys, stead_fish_alive_why (self->group->stocked, &self->so_far, self->alive));
  if (stead_fish_losses_are_high (self))
    g_ptr_array_add (whys, losses_why (self));
  if (!isnan (self->biomass_kg) && self->alive > 0)
    {
      g_ptr_array_add (whys, biomass_why (self));
      g_ptr_array_add (whys, growth_why (self));
      if (!isnan (self->cv_frac))
        g_ptr_array_add (whys, spread_why (self));
    }
  if (!isnan (self->density_kg_m3))
    g_ptr_array_add (whys, density_why (self));
}

static void
add_feed (const SteadFishAnswer *self,
          GPtrArray             *whys)
{
  if (self->has_rate)
    g_ptr_array_add (whys, feed_why (self));
  stead_whys_add (whys, stead_hand_why (_("Feed on hand"), self->feed_lots, self->feed_on_hand_kg, mass_unit (self)));
  if (!isnan (self->feed_days))
    g_ptr_array_add (whys, lasts_why (self));
  if (!isnan (self->fcr))
    g_ptr_array_add (whys, fcr_why (self));
}

static void
add_sale (const SteadFishAnswer *self,
          GPtrArray             *whys)
{
  if (!isnan (self->share_ready))
    g_ptr_array_add (whys, ready_why (self));
  if (self->sale_day != STEAD_DAY_NONE)
    {
      g_ptr_array_add (whys, sale_why (self));
      g_ptr_array_add (whys, harvest_why (self));
    }
  if (self->purge_day != STEAD_DAY_NONE)
    g_ptr_array_add (whys, purge_why (self));
}

GPtrArray *
stead_fish_answer_whys (const SteadFishAnswer *self)
{
  GPtrArray *whys;

  g_return_val_if_fail (self != NULL, NULL);

  whys = stead_whys_new ();
  add_size (self, whys);
  add_feed (self, whys);
  if (!isnan (self->condition))
    g_ptr_array_add (whys, condition_why (self));
  add_sale (self, whys);
  stead_whys_add (whys, stead_why_copy (self->cost_why));
  return whys;
}
