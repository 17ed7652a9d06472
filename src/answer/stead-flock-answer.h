/* stead-flock-answer.h - "How is this flock doing, and what will it give?" */
#pragma once

#include "answer/stead-words.h"
#include "core/stead-lay-fit.h"
#include "store/stead-farm-repo.h"
#include "store/stead-flock-repo.h"
#include "store/stead-lot-repo.h"

G_BEGIN_DECLS

/* How many days are looked back at for clearly few eggs. */
#define STEAD_FLOCK_LOOK_BACK_DAYS 7

/* A day with clearly fewer eggs than expected. */
typedef struct
{
  SteadDay day;
  gint64   eggs;
  gint64   alive;    /* birds */
  double   likely;   /* eggs expected, by the log before the look back */
  double   least;    /* the lower end of the band that 19 of 20 days lie in */
} SteadFlockLowDay;

typedef struct
{
  int              run;          /* complete days on end, up to the last one, with clearly few eggs */
  int              of_seven;     /* such days among the last seven */
  SteadFlockLowDay days[STEAD_FLOCK_LOOK_BACK_DAYS];   /* the first @of_seven: those days, oldest first */
} SteadFlockLow;

typedef struct
{
  SteadFarm        *farm;
  SteadFlock       *flock;
  gint64            alive;
  double            age_weeks;
  SteadFlockTotals  week;              /* the last seven days that are complete */
  SteadFlockTotals  recent;            /* the last twelve weeks */
  SteadFlockTotals  so_far;
  double            week_frac;         /* eggs per hen and day; NAN: nothing logged */
  double            expected_frac;     /* the curve in the middle of that week; NAN: past its range */
  double            feed_per_dozen_kg; /* last 12 weeks; NAN */
  double            feed_days;         /* days that the feed on hand lasts; NAN: no use known */
  double            feed_on_hand_kg;
  GPtrArray        *feed_lots;         /* (nullable) of SteadLot: that feed, lot by lot */
  double            feed_use_kg_day;   /* of that feed, by all flocks, over the last fourteen days */
  gint64            cost_in_cents;     /* what went in so far: feed, litter, birds, share of assets */
  SteadFlockLow     low;
  SteadWhy         *cost_why;          /* (nullable): the same, part by part */
  double            next_dozens;       /* expected in the next seven days */
  gboolean          has_forecast;      /* FALSE: ended, no hen alive, or past what a curve is good for */
  gboolean          is_learned;        /* the level is this log's own; FALSE: the expected curve */
  SteadLayFit       fit;               /* if there is a forecast */
  GArray           *ahead;             /* of SteadLayAhead: coming weeks, the first one begins today */
  SteadBand         expect_eggs;       /* holds the bands of the first @expect_weeks weeks */
  gsize             expect_weeks;      /* 0: nothing to expect yet */
  GArray           *weeks;             /* of SteadLayWeek */
  GArray           *curve_age;         /* of double: of the learned curve, if there is one */
  GArray           *curve_frac;        /* of double */
  GArray           *ahead_age;         /* of double */
  GArray           *ahead_frac;        /* of SteadBand */
  GArray           *notes;             /* of SteadLayNote */
  SteadLaySeries    series;            /* points into these arrays */
  char             *fit_note;          /* (nullable) plain: which weeks were not learned from, and why */
  char             *sentence;          /* markup */
  char             *caution;           /* (nullable) plain: what to look at first, and to ask a veterinarian */
} SteadFlockAnswer;

void stead_flock_answer_free (SteadFlockAnswer *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadFlockAnswer, stead_flock_answer_free)

SteadFlockAnswer *stead_flock_answer_new (SteadStore  *store,
                                          gint64       flock_id,
                                          GError     **error) G_GNUC_WARN_UNUSED_RESULT;

/**
 * stead_flock_answer_until:
 * @last: the last day that counts
 * @out: (out): eggs from today to then; whole weeks, to the nearest
 *
 * Returns: whether the forecast reaches so far; it ends with the curve
 */
gboolean stead_flock_answer_until (const SteadFlockAnswer *self,
                                   SteadDay                last,
                                   SteadBand              *out);

/* (transfer full) (element-type SteadWhy): birds, eggs, rate, what is to come, feed and cost */
GPtrArray *stead_flock_answer_whys (const SteadFlockAnswer *self) G_GNUC_WARN_UNUSED_RESULT;

/* What an entry was, for the undo menu: "22 eggs on March 3", "Feed, 6.8 lb, on March 3". */
char *stead_flock_answer_entry_name (const SteadFlockEntry *entry,
                                     const SteadFarm       *farm) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
