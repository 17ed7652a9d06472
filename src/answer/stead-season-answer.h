/* stead-season-answer.h - "Which sales, products and places do best?"
 *
 * All sale days of the farm, those to come among them.
 */
#pragma once

#include "answer/stead-sale-answer.h"
#include "core/stead-run-chart.h"

G_BEGIN_DECLS

typedef enum
{
  STEAD_SALE_PLANNED,
  STEAD_SALE_TODAY,      /* its day has come, or something is tallied */
  STEAD_SALE_OPEN,       /* its day is over, but it is not cashed up */
  STEAD_SALE_DONE,
} SteadSaleStage;

typedef struct
{
  SteadSale      *sale;          /* without its goods */
  SteadSaleStage  stage;
  gint64          takings_cents;
  gint64          per_hour_cents; /* of the hours that it was planned for */
  gint64          over_cents;     /* at the cash-up */
  double          units;
} SteadSeasonDay;

/* Takings of one product, or at one place. */
typedef struct
{
  gint64  id;           /* of the product; 0 for a place */
  char   *name;
  guint   n_days;
  double  units;
  gint64  takings_cents;
  double  hours;        /* that its sales were planned for */
  gint64  per_hour_cents;
} SteadSeasonSum;

typedef struct
{
  SteadFarm     *farm;
  SteadDay       today;
  GPtrArray     *days;       /* of SteadSeasonDay, newest first */
  GPtrArray     *products;   /* of SteadSeasonSum, best first */
  GPtrArray     *places;     /* of SteadSeasonSum, best first */
  guint          n_done;
  gint64         takings_cents;
  gint64         over_cents;
  GArray        *overs;      /* of double: over and short by cash-up, in the order of time */
  GArray        *over_days;  /* of SteadDay: the days of these */
  SteadRunChart  run;        /* of it; only with n_done > 0 */
  gint64         next_id;    /* 0: none */
  char          *sentence;   /* markup */
  char          *run_text;   /* (nullable) plain: over and short */
} SteadSeasonAnswer;

void stead_season_answer_free (SteadSeasonAnswer *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadSeasonAnswer, stead_season_answer_free)

SteadSeasonAnswer *stead_season_answer_new (SteadStore  *store,
                                            GError     **error) G_GNUC_WARN_UNUSED_RESULT;

/* Sale days from @from to @to alone, both included. */
SteadSeasonAnswer *stead_season_answer_between (SteadStore  *store,
                                                SteadDay     from,
                                                SteadDay     to,
                                                GError     **error) G_GNUC_WARN_UNUSED_RESULT;

/* (transfer full) (element-type SteadWhy): what was taken, in all and in an hour, and whether the box agrees. */
GPtrArray *stead_season_answer_whys (const SteadSeasonAnswer *self) G_GNUC_WARN_UNUSED_RESULT;

/* "planned", "today", "to be cashed up", "done" */
const char *stead_sale_stage_name (SteadSaleStage stage);

/* For the strip: "next: Dec 5", "sale today", "no sale planned".
 * @out_brief: (out) (transfer full) (nullable): the same where there is little room; %NULL: it is short already */
char *stead_season_figure (SteadStore  *store,
                           char       **out_brief,
                           GError     **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
