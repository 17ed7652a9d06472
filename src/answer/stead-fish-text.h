/* stead-fish-text.h - a group of fish in words, for its chart, its forms and its dialogs. */
#pragma once

#include "answer/stead-fish-answer.h"

G_BEGIN_DECLS

/* What a weighing gave: "Mar 3: 20 fish weighed 3.5 oz in the mean, spread 18 %." (plain) */
char *stead_fish_text_mark (const SteadFishAnswer *answer,
                            const SteadGrowthMark *mark) G_GNUC_WARN_UNUSED_RESULT;

/* What was learned of a day that is past, or is expected of one to come (plain). */
char *stead_fish_text_step (const SteadFishAnswer *answer,
                            const SteadGrowthStep *step) G_GNUC_WARN_UNUSED_RESULT;

/* Over the day of sale: "80 in 100: Jun 12"; (nullable) without one. */
char *stead_fish_text_sale_day (const SteadFishAnswer *answer) G_GNUC_WARN_UNUSED_RESULT;

/* What to feed, or why not (markup). */
char *stead_fish_text_feed (const SteadFishAnswer *answer) G_GNUC_WARN_UNUSED_RESULT;

/* Weight of a fish from the lowest to the highest: "15.2 oz to 16 oz"; one weight where nothing
 * is unsure; (nullable) where it is not known (plain). */
char *stead_fish_text_range (const SteadBand *mean_g,
                             const SteadUnit *unit) G_GNUC_WARN_UNUSED_RESULT;

/* A sample as it stands, saved or not: "20 fish, 3.5 oz each in the mean, spread 18 %." (plain) */
char *stead_fish_text_sample (const SteadWeighing *weighing,
                              SteadUnitSystem      units) G_GNUC_WARN_UNUSED_RESULT;

/* (transfer full) (element-type SteadWhy): how its mean, spread and condition come about; of none the rule alone */
GPtrArray *stead_fish_text_sample_whys (const SteadWeighing *weighing,
                                        SteadUnitSystem      units) G_GNUC_WARN_UNUSED_RESULT;

/* For the undo menu: "Weighing of 20 fish on Mar 3", "3 fish moved on Mar 3". */
char *stead_fish_weighing_name (const SteadWeighing *weighing) G_GNUC_WARN_UNUSED_RESULT;
char *stead_fish_move_name     (const SteadFishMove *move) G_GNUC_WARN_UNUSED_RESULT;

/* What the program knows of a kind of fish: its warmth, its weight for sale, whence (plain). */
char *stead_fish_kind_words (SteadFishSpecies species,
                             SteadUnitSystem  units) G_GNUC_WARN_UNUSED_RESULT;

/* Small weights in the unit that @weight_g is shown in: oz or lb, g or kg. */
const SteadUnit *stead_fish_weight_unit (double          weight_g,
                                         SteadUnitSystem units);

/* The bare number of a weight in @unit, for a field: two places, which is as good as a scale. */
char *stead_fish_weight_number (double           weight_g,
                                const SteadUnit *unit) G_GNUC_WARN_UNUSED_RESULT;

/* How long fish are shown: inches or centimeters. */
const SteadUnit *stead_fish_length_unit (SteadUnitSystem units);

/* Share of what the group cost so far that @n of its living fish carry along; 0 to all of it. */
gint64 stead_fish_share_cents (const SteadFishAnswer *answer,
                               gint64                 n);

G_END_DECLS
