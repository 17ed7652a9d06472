/* stead-fish-private.h - what the parts of the fish answer share. */
#pragma once

#include "answer/stead-fish-answer.h"
#include "core/stead-growth-fit.h"
#include "store/stead-harvest-repo.h"
#include "store/stead-lot-repo.h"

G_BEGIN_DECLS

/* "100 + 20 − 3 − 10 = 107 fish" */
SteadWhy *stead_fish_alive_why (gint64                 stocked,
                                const SteadFishTotals *so_far,
                                gint64                 alive) G_GNUC_WARN_UNUSED_RESULT;

/* --- how warm the water was, and will be -------------------------------------- */

/* Days over which the present warmth, and the present use of feed, are measured. */
#define STEAD_FISH_RECENT_DAYS 14

/* A reading older than this says nothing of the days to come. */
#define STEAD_FISH_OLD_READING_DAYS 60

/* Days ahead that a forecast looks at. */
#define STEAD_FISH_AHEAD_DAYS (52 * 7)

typedef enum
{
  STEAD_FISH_WARMTH_NONE,     /* nothing is known of the coming days */
  STEAD_FISH_WARMTH_RECENT,   /* as in the last two weeks */
  STEAD_FISH_WARMTH_LAST,     /* as at the last reading, some weeks ago */
} SteadFishWarmthKind;

typedef struct
{
  SteadDay             from;
  gsize                n;             /* days, the last one today or the group's end */
  double              *known_c;       /* (array length=n): as read; NAN: a gap */
  double              *filled_c;      /* (array length=n) (nullable): without gaps; NULL: nothing was read at all */
  gsize                n_known;
  SteadDay             last_known;    /* STEAD_DAY_NONE */
  double               last_c;        /* of that day; NAN */
  SteadFishWarmthKind  kind;
  double               ahead_c;       /* mean of the coming days; NAN */
  double               ahead_sd_c;    /* of one day about it */
  double               ahead_days;    /* readings that this mean rests on */
} SteadFishWarmth;

void stead_fish_warmth_clear (SteadFishWarmth *warmth);
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (SteadFishWarmth, stead_fish_warmth_clear)

gboolean stead_fish_warmth_read (SteadStore       *store,
                                 const SteadFish  *group,
                                 SteadDay          to,
                                 SteadFishWarmth  *out,
                                 GError          **error) G_GNUC_WARN_UNUSED_RESULT;

/* Degree-days from @from up to, not including, @to; gaps are filled between readings. */
double stead_fish_warmth_sum (const SteadFishWarmth *warmth,
                              const SteadFishKind   *kind,
                              SteadDay               from,
                              SteadDay               to);

/* Degree-days of @days coming days, and how unsure they are. */
void stead_fish_warmth_ahead (const SteadFishWarmth *warmth,
                              const SteadFishKind   *kind,
                              double                 days,
                              double                *out_sum,
                              double                *out_sd);

/* --- what the weighings say ------------------------------------------------------ */

typedef struct
{
  SteadFishKind       kind;          /* core's data with the group's own coefficient */
  gboolean        is_known;      /* core knows this kind of fish */
  SteadFishSpecies species;      /* if it does */
  GArray         *marks;         /* of SteadGrowthMark: every weighing */
  GArray         *steps;         /* of SteadGrowthStep: up to the last day */
  SteadGrowthFit  fit;           /* since fish last came or went that changed the mean */
  SteadDay        base_day;      /* that its degree-days count from */
  gsize           n_learned;     /* weighings behind it, the stocking not among them */
  double          since_base;    /* degree-days from then to the last day */
  SteadBand       mean_g;        /* mean weight on the last day */
  SteadDay        last_weighed;  /* STEAD_DAY_NONE: never */
} SteadFishLearned;

void stead_fish_learned_clear (SteadFishLearned *learned);
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (SteadFishLearned, stead_fish_learned_clear)

/**
 * stead_fish_learn:
 * @warmth: up to the day that is asked about
 * @out: (out): a group to which no fish came yet has no mean weight (NAN)
 */
gboolean stead_fish_learn (SteadStore             *store,
                           const SteadFish        *group,
                           const SteadFishWarmth  *warmth,
                           SteadFishLearned       *out,
                           GError                **error) G_GNUC_WARN_UNUSED_RESULT;

/* Mean weight on a day up to the last, by what was learned; NAN before the first. */
double stead_fish_learned_mean_g (const SteadFishLearned *learned,
                                  SteadDay                day);

/* --- the parts of the answer ------------------------------------------------------- */

/* Mean weight, number, sale day and harvest of the coming weeks. */
gboolean stead_fish_look_ahead (SteadFishAnswer         *self,
                                const SteadFishWarmth   *warmth,
                                const SteadFishLearned  *learned,
                                const GArray            *counts,
                                GError                 **error) G_GNUC_WARN_UNUSED_RESULT;

/* Week by week from stocking on. */
gboolean stead_fish_fill_weeks (SteadStore              *store,
                                SteadFishAnswer         *self,
                                const SteadFishWarmth   *warmth,
                                const SteadFishLearned  *learned,
                                const GArray            *counts,
                                GError                 **error) G_GNUC_WARN_UNUSED_RESULT;

/* What is wrong, the worst first; %NULL if nothing is. */
gboolean stead_fish_find_cautions (SteadStore       *store,
                                   SteadFishAnswer  *self,
                                   GError          **error) G_GNUC_WARN_UNUSED_RESULT;

/* More lost in the last seven days than chance would bring at the usual rate (Poisson). */
gboolean stead_fish_losses_are_high (const SteadFishAnswer *self);
/* Lost at the usual rate in so many days; @out_chance: (out): that at least as many as were lost are. */
double   stead_fish_losses_usual    (const SteadFishAnswer *self,
                                     double                *out_chance);
/* "4 fish lost; 0.32 in 7 days are usual; the chance of 4 or more is under 1 %" */
char    *stead_fish_losses_worked   (const SteadFishAnswer *self) G_GNUC_WARN_UNUSED_RESULT;
/* "55 lb × 2.2 % = 1.21 lb, for fish of 15.6 oz in water of 75 °F" */
char    *stead_fish_feed_worked     (const SteadFishAnswer *self) G_GNUC_WARN_UNUSED_RESULT;
/* "Mean 15.6 oz, spread 18 %, sale weight 15.9 oz: 42 % have it." */
char    *stead_fish_ready_worked    (const SteadFishAnswer *self) G_GNUC_WARN_UNUSED_RESULT;

gboolean stead_fish_refused_twice (SteadStore       *store,
                                   const SteadFish  *group,
                                   SteadDay          today,
                                   gboolean         *out,
                                   GError          **error) G_GNUC_WARN_UNUSED_RESULT;

/* "100 × 45 g ÷ (15.2 cm)³ = 1.28", or of how many single fish it is the mean. */
char *stead_fish_condition_worked (const SteadWeighing *weighing,
                                   double               condition) G_GNUC_WARN_UNUSED_RESULT;

char *stead_fish_sentence (const SteadFishAnswer *self) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
