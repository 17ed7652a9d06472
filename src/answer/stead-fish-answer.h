/* stead-fish-answer.h - "How are these fish doing, and when can they be sold?" */
#pragma once

#include "answer/stead-words.h"
#include "core/stead-band.h"
#include "core/stead-fish-feed.h"
#include "core/stead-fish-stock.h"
#include "core/stead-growth-series.h"
#include "store/stead-farm-repo.h"
#include "store/stead-fish-repo.h"
#include "store/stead-water-repo.h"

G_BEGIN_DECLS

/* Seven days from the day of stocking on. */
typedef struct
{
  SteadDay first_day;
  gint64   alive;       /* at its end */
  gint64   deaths;      /* died or taken out */
  gint64   harvested;
  double   feed_kg;     /* NAN: none entered */
  double   water_c;     /* mean of the days that were read; NAN: none was */
  double   mean_g;      /* of a fish at its end; NAN: not known */
} SteadFishWeek;

/* Seven days to come, in step with those above. */
typedef struct
{
  SteadDay  first_day;
  SteadBand mean_g;       /* of a fish at its end */
} SteadFishWeekAhead;

/* A weight of the harvest, by how it is cut. */
typedef struct
{
  SteadFishCut cut;
  double       frac;
  double       kg;
  SteadSource  source;
} SteadFishDressed;

typedef struct
{
  SteadFarm          *farm;
  SteadFish     *group;
  SteadTank          *tank;             /* (nullable) */
  gboolean            is_known;         /* the program knows this kind of fish */
  SteadFishSpecies    species;          /* if it does */
  char               *species_name;     /* "channel catfish", or the farm's own word */

  gint64              alive;
  SteadBand           mean_g;           /* of a fish, today; NAN: no fish came yet */
  SteadDay            last_weighed;     /* STEAD_DAY_NONE: never weighed */
  gsize               n_learned;        /* weighings that the growth is learned from */
  double              tgc_x100;         /* growth coefficient as learned, 100-fold */
  double              biomass_kg;
  double              tank_biomass_kg;  /* with the other groups of the tank */
  double              density_kg_m3;    /* of all fish in the tank; NAN: volume not known */
  SteadFishDensity    density_class;    /* if it is known */
  double              water_c;          /* now: the last reading, or NAN */
  SteadDay            water_day;        /* of that reading */
  double              ahead_c;          /* that the forecast reckons with; NAN: no forecast */

  gboolean            has_rate;         /* the feeding table has a row */
  SteadFishFeedRate   rate;             /* what it says */
  char               *no_rate;          /* (nullable): why not, for the person */
  double              feed_kg;          /* to give on a feeding day; NAN: not known */
  SteadDay            feed_on;          /* the next feeding day, today or later; STEAD_DAY_NONE */
  gboolean            feeds_today;      /* entered already */
  double              feed_on_hand_kg;
  GPtrArray          *feed_lots;        /* (nullable) of SteadLot: that feed, lot by lot */
  double              feed_days;        /* that it lasts; NAN */
  double              feed_use_kg_day;

  SteadFishTotals     so_far;
  SteadFishTotals     week;             /* the last seven days with today */
  double              survival_frac;    /* of all that came; NAN: none came */
  double              fcr;              /* up to the last weighing; NAN */
  double              fcr_feed_kg, fcr_start_kg, fcr_end_kg, fcr_dead_kg;   /* behind it, if it is known */
  double              condition;        /* of the last fish whose length was taken; NAN */
  char               *condition_worked; /* (nullable): how it comes about */
  gint64              cost_in_cents;    /* what went in so far */
  SteadWhy           *cost_why;         /* (nullable): the same, part by part */

  double              cv_frac;          /* spread of single fish, sd / mean */
  double              share_ready;      /* of the fish that have the sale weight today; NAN */
  SteadDay            sale_day;         /* the chosen share has it; STEAD_DAY_NONE: not within the forecast */
  SteadDay            sale_soonest, sale_latest;   /* STEAD_DAY_NONE: beyond */
  gboolean            latest_past_table;  /* no latest day: the growth table ends before it */
  char               *no_sale;          /* (nullable): why no day is named */
  SteadBand           harvest_fish;     /* alive on that day */
  SteadBand           harvest_kg;       /* what they weigh alive then, before the purge */
  double              purged_kg;        /* likely, after the purge; NAN */
  GArray             *dressed;          /* of SteadFishDressed: likely */
  SteadDay            purge_day;        /* no feed from then on, for that sale day; STEAD_DAY_NONE */
  SteadDay            purged_on;        /* the purge under way is long enough; STEAD_DAY_NONE: none */

  GArray             *weeks;            /* of SteadFishWeek, oldest first */
  GArray             *marks;            /* of SteadGrowthMark */
  GArray             *steps;            /* of SteadGrowthStep */
  GArray             *losses;           /* of SteadGrowthLoss */
  SteadGrowthSeries   series;           /* points into the three */

  char               *sentence;         /* markup */
  char               *caution;          /* (nullable) plain */
  const char         *rule;             /* what always holds: permits, release, local advice */
} SteadFishAnswer;

void stead_fish_answer_free (SteadFishAnswer *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadFishAnswer, stead_fish_answer_free)

SteadFishAnswer *stead_fish_answer_new (SteadStore  *store,
                                        gint64       fish_id,
                                        GError     **error) G_GNUC_WARN_UNUSED_RESULT;

/* The same without what lies ahead and without the weeks, for a quick look: no day of
 * sale, no harvest, no words. */
SteadFishAnswer *stead_fish_answer_new_now (SteadStore  *store,
                                            gint64       fish_id,
                                            GError     **error) G_GNUC_WARN_UNUSED_RESULT;

/* Whole weeks that come after the present one, oldest first, as far as the forecast goes
 * and at most @most.  (transfer full) (element-type SteadFishWeekAhead) */
GArray *stead_fish_answer_weeks_ahead (const SteadFishAnswer *self,
                                       guint                  most) G_GNUC_WARN_UNUSED_RESULT;

/* (transfer full) (element-type SteadWhy) */
GPtrArray *stead_fish_answer_whys (const SteadFishAnswer *self) G_GNUC_WARN_UNUSED_RESULT;

/* What an entry was, for the undo menu: "Feed, 1.1 lb, on Mar 3". */
char *stead_fish_entry_name (const SteadFishEntry *entry,
                             const SteadFarm      *farm) G_GNUC_WARN_UNUSED_RESULT;

/* What a person reads of the weight of one fish: "1.6 oz", "1.3 lb", "45 g". */
char *stead_fish_weight_text (double          weight_g,
                              SteadUnitSystem units) G_GNUC_WARN_UNUSED_RESULT;

/* "0.25 lb a gallon", "30 kg/m³" */
char *stead_fish_density_text (double          density_kg_m3,
                               SteadUnitSystem units) G_GNUC_WARN_UNUSED_RESULT;

/* What a density asks of the keeper, with its end and its source. */
char *stead_fish_density_words (SteadFishDensity density,
                                SteadUnitSystem  units) G_GNUC_WARN_UNUSED_RESULT;

/* The species of core, or the farm's own word. (transfer full) */
char *stead_fish_species_name (const SteadFish *group) G_GNUC_WARN_UNUSED_RESULT;

/* Mean condition of the fish whose length was taken, else of their mean weight and length; NAN without. */
double stead_fish_weighing_condition (const SteadWeighing *weighing);

/* "headed and skinned", "fillets" */
const char *stead_fish_cut_name (SteadFishCut cut);

G_END_DECLS
