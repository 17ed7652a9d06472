/* stead-fish-feed.h - how much feed, by species, size and warmth of the water.
 *
 * Feed only what is taken in 15 to 30 minutes: the table says what to weigh out,
 * the fish say when to stop.  Change it weekly with the weight, and at once when
 * fish have died.  Each row has its source; outside the rows there is no number.
 */
#pragma once

#include "core/stead-fish.h"

G_BEGIN_DECLS

/* What one row of the table says for fish of one weight. */
typedef struct
{
  double      frac;            /* share of the body weight at each feeding day */
  double      min_frac;        /* the ends that are printed */
  double      max_frac;
  double      interval_days;   /* 1 daily, 2 every other day, 3.5 twice a week */
  SteadSource source;
} SteadFishFeedRate;

/**
 * stead_fish_feed_rate:
 * @species: which fish
 * @weight_g: mean weight of a fish, above 0
 * @temp_c: temperature of the water
 * @out_rate: (out): what the table says
 * @error: return location for a #GError in %STEAD_CORE_ERROR
 *
 * Tilapia: SRAC 282, table 1 (from memory) up to 450 g, and tank culture of
 * tilapia, part 3 (read) for the market size; between the ends of a row the rate
 * falls with the logarithm of the weight, which is our own choice.  At 15 to
 * 22 °C half of it, by practice.  Channel catfish: a hatchery guide (2 to 3 % in
 * the warm season, read), and extension advice for winter (read).  Rainbow trout:
 * no table could be read; the rate follows from the growth that the coefficient
 * foretells, times the feed for one of gain.
 *
 * Returns: %TRUE, or %FALSE outside the table with @out_rate left alone
 */
gboolean stead_fish_feed_rate (SteadFishSpecies    species,
                               double              weight_g,
                               double              temp_c,
                               SteadFishFeedRate  *out_rate,
                               GError            **error) G_GNUC_WARN_UNUSED_RESULT;

/**
 * stead_fish_winter_feed:
 *
 * The rows for cold water alone, which hold for fish of any size.
 * Source: Texas A&M AgriLife Extension, winter feeding of channel catfish (2018).
 *
 * Returns: %TRUE, or %FALSE for another species or outside 45 to 65 °F
 */
gboolean stead_fish_winter_feed (SteadFishSpecies    species,
                                 double              temp_c,
                                 SteadFishFeedRate  *out_rate,
                                 GError            **error) G_GNUC_WARN_UNUSED_RESULT;

/**
 * stead_fish_feed_frac_per_day: the share of a feeding day spread over its interval
 */
double stead_fish_feed_frac_per_day (const SteadFishFeedRate *rate);

/**
 * stead_fish_daily_feed_kg: biomass x share
 * stead_fish_feed_biomass_kg: the biomass that this feed is for; NAN without a share
 */
double stead_fish_daily_feed_kg (double biomass_kg,
                                 double frac);
double stead_fish_feed_biomass_kg (double feed_kg,
                                   double frac);

/**
 * stead_fish_feed_for_growth_frac:
 * @weight_g: weight of a fish today, above 0
 * @tgc_x100: growth coefficient, 100-fold
 * @degree_day: what today counts
 * @fcr: feed for one of gain, above 0
 *
 * Feed that today's growth needs, as a share of today's weight: gain / weight x
 * feed for one of gain.  The old hatchery rule for trout feed rests on the same
 * thought (from memory).
 *
 * Returns: the share; NAN for a weight or ratio that is not above 0
 */
double stead_fish_feed_for_growth_frac (double weight_g,
                                        double tgc_x100,
                                        double degree_day,
                                        double fcr);

/**
 * stead_fish_fcr:
 * @feed_kg: feed given
 * @start_kg: weight of all fish at the start
 * @end_kg: weight of all that live, with what was taken out alive
 * @dead_kg: weight of those that died: they ate too
 *
 * Returns: feed / (gain + weight of the dead); NAN without gain
 */
double stead_fish_fcr (double feed_kg,
                       double start_kg,
                       double end_kg,
                       double dead_kg);

/**
 * stead_fish_winter_change_frac:
 * @fed: whether they are fed in winter
 * @days: length of the winter; only 100 is published
 * @out_min_frac: (out): change of weight, below 0 is loss
 * @out_max_frac: (out): the same end where one number is printed
 *
 * Source: winter feeding of channel catfish (1974): unfed fish lost 9 %, fed ones
 * gained 19 to 23 % in 100 days.
 *
 * Returns: %TRUE, or %FALSE for another species or number of days
 */
gboolean stead_fish_winter_change_frac (SteadFishSpecies   species,
                                        gboolean           fed,
                                        double             days,
                                        double            *out_min_frac,
                                        double            *out_max_frac,
                                        GError           **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
