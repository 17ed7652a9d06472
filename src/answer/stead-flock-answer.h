/* stead-flock-answer.h - "How is this flock doing, and what will it give?" */
#pragma once

#include "answer/stead-words.h"
#include "store/stead-farm-repo.h"
#include "store/stead-flock-repo.h"
#include "store/stead-lot-repo.h"

G_BEGIN_DECLS

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
  double            feed_use_kg_day;   /* of that feed, by all flocks, over the last fourteen days */
  gint64            cost_in_cents;     /* what went in so far: feed, litter, birds, share of assets */
  double            next_dozens;       /* expected in the next seven days */
  GArray           *weeks;             /* of SteadLayWeek */
  GArray           *curve_age;         /* of double */
  GArray           *curve_frac;        /* of double */
  SteadLaySeries    series;            /* points into the three arrays */
  char             *sentence;          /* markup */
  char             *caution;           /* (nullable) plain: what to look at first, and to ask a veterinarian */
} SteadFlockAnswer;

void stead_flock_answer_free (SteadFlockAnswer *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadFlockAnswer, stead_flock_answer_free)

SteadFlockAnswer *stead_flock_answer_new (SteadStore  *store,
                                          gint64       flock_id,
                                          GError     **error) G_GNUC_WARN_UNUSED_RESULT;

/* (transfer full) (element-type SteadWhy): rate, feed per dozen, days of feed */
GPtrArray *stead_flock_answer_whys (const SteadFlockAnswer *self) G_GNUC_WARN_UNUSED_RESULT;

/* What an entry was, for the undo menu: "22 eggs on March 3", "Feed, 6.8 lb, on March 3". */
char *stead_flock_answer_entry_name (const SteadFlockEntry *entry,
                                     const SteadFarm       *farm) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
