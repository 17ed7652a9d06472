/* stead-water-answer.h - "How is this water, where is it going, and what does it need?" */
#pragma once

#include "answer/stead-water-scene.h"
#include "core/stead-reading-series.h"

G_BEGIN_DECLS

/* Where one measure is going, by the last tests of it. */
typedef struct
{
  gboolean             fitted;      /* two tests or more read it */
  gboolean             told;        /* up or down can be told from them */
  SteadTrend           line;
  SteadDay             last_day;    /* of the last test that read it */
  gboolean             meets;       /* a limit is met if it goes on so */
  SteadWaterJudgement  there;       /* the verdict where it is met */
  SteadDay             met_on;      /* by the line; */
  SteadDay             met_early;   /* in the band of 80 %: not before this day, */
  SteadDay             met_late;    /* and by this one; STEAD_DAY_NONE: perhaps never */
} SteadWaterTrend;

/* What the feed of the fish does to the water. */
typedef struct
{
  int     days;                /* that the feed was summed over; 0: no fish */
  double  feed_kg_day;
  double  protein_frac;
  gboolean protein_assumed;    /* the feed's protein is not said everywhere */
  double  tan_g_day;           /* ammonia as N from it */
  double  alkalinity_g_day;    /* CaCO3 that the filter uses for it */
  double  filter_min_m2;       /* filter surface that it needs */
  double  filter_max_m2;
  double  bed_min_m2;          /* bed that it keeps */
  double  bed_max_m2;
  double  bed_m2;              /* bed that stands in this water; NAN: no size is entered */
  double  nitrate_mgl_day;     /* rise if no plant takes it up; NAN: volume not known */
} SteadWaterBudget;

typedef struct
{
  SteadFarm        *farm;
  SteadWater       *water;
  double            volume_l;     /* of all that goes round; NAN */
  GPtrArray        *tanks;        /* (nullable) of SteadTank: it is the sum of theirs; %NULL: it was entered */
  SteadWaterScene   scene;
  SteadDay          today;
  GPtrArray        *tests;        /* of SteadWaterTest: all, oldest first */
  SteadWaterTest   *last;         /* (nullable) (transfer none): the newest test */
  SteadWaterLine    lines[STEAD_N_WATER_MEASURES];   /* of the last test; gaps where nothing was read */
  SteadWaterTrend   trends[STEAD_N_WATER_MEASURES];
  SteadWaterBudget  budget;
  SteadDay          due_on;       /* the next test; today if there is none yet; STEAD_DAY_NONE: no longer in use */
  int               n_act;        /* measures of the last test by verdict */
  int               n_watch;
  char             *sentence;     /* markup */
  char             *todo;         /* (nullable) plain: what to do first */
  char             *caution;      /* (nullable) plain */
} SteadWaterAnswer;

void stead_water_answer_free (SteadWaterAnswer *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadWaterAnswer, stead_water_answer_free)

SteadWaterAnswer *stead_water_answer_new (SteadStore  *store,
                                          gint64       water_id,
                                          GError     **error) G_GNUC_WARN_UNUSED_RESULT;

/* (transfer none) (nullable): the newest test that tells @measure, and what it tells; the
 * dose sheets start from it. */
const SteadWaterTest *stead_water_answer_last_of (const SteadWaterAnswer *self,
                                                  SteadWaterMeasure       measure,
                                                  double                 *out_value);

/* The worst lines of the last test first: (transfer full) (element-type SteadWaterLine). */
GPtrArray *stead_water_answer_worst (const SteadWaterAnswer *self) G_GNUC_WARN_UNUSED_RESULT;

/* (transfer full): "Nitrate rises by 3.2 mg/L a day (4 tests). …"; %NULL if there are no two tests. */
char *stead_water_answer_trend_sentence (const SteadWaterAnswer *self,
                                         SteadWaterMeasure       measure) G_GNUC_WARN_UNUSED_RESULT;
/* (transfer full): plain; what the feed makes, and what takes it up; %NULL without fish */
char *stead_water_answer_budget_sentence (const SteadWaterAnswer *self) G_GNUC_WARN_UNUSED_RESULT;
/* (transfer full): "The next test is due on March 10." */
char *stead_water_answer_due_sentence (const SteadWaterAnswer *self) G_GNUC_WARN_UNUSED_RESULT;

/**
 * stead_water_answer_series:
 * @measure: what is to be drawn
 * @from: first day
 * @out: (out): points into @out_points
 *
 * Temperatures are in the farm's unit, shares in percent; all others as they are kept.
 *
 * Returns: (transfer full) (element-type SteadReadingPoint): what @out points into
 */
GArray *stead_water_answer_series (const SteadWaterAnswer *self,
                                   SteadWaterMeasure       measure,
                                   SteadDay                from,
                                   SteadReadingSeries     *out) G_GNUC_WARN_UNUSED_RESULT;

/* What a chart of @measure is labelled with. */
typedef struct
{
  char *unit;         /* "mg/L as NO₂" */
  char *most;         /* "most 1 mg/L, fish and plants together"; NULL where there is no such end */
  char *least;
  char *harm_above;
  char *harm_below;
} SteadWaterEnds;

void stead_water_ends_clear (SteadWaterEnds *ends);
/* @out: cleared before, or all zero */
void stead_water_answer_ends (const SteadWaterAnswer *self,
                              SteadWaterMeasure       measure,
                              SteadWaterEnds         *out);

/* (transfer full): plain; what was done about the water from @from on, by the last @most tests
 * that say so, a line each and oldest first: "Oct 8: Spare pump on."; %NULL: nothing */
char *stead_water_answer_done_text (const SteadWaterAnswer *self,
                                    SteadDay                from,
                                    guint                   most) G_GNUC_WARN_UNUSED_RESULT;

/* (transfer full): plain; one point of a series of @measure: its day, what it says, and what was done then */
char *stead_water_answer_point_text (const SteadWaterAnswer  *self,
                                     SteadWaterMeasure        measure,
                                     const SteadReadingPoint *point) G_GNUC_WARN_UNUSED_RESULT;

/* (transfer full) (element-type SteadWhy): how much it holds, un-ionized ammonia, oxygen, nitrite and
 * chloride, trends, feed, when it is tested: those that the last tests can tell */
GPtrArray *stead_water_answer_whys (const SteadWaterAnswer *self) G_GNUC_WARN_UNUSED_RESULT;

/* What a test was, for the undo menu: "water test of Catfish loop on March 3". */
char *stead_water_answer_test_name (const SteadWaterTest *test,
                                    const char           *water_name) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
