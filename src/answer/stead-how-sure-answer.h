/* stead-how-sure-answer.h - "How sure is it that the season pays?"
 *
 * What is not known is a range: how many of each product a sale day sells, what its batch gives,
 * the price of what is bought, the costs of a day.  Thousands of seasons are drawn from them.
 * Ranges begin with what the farm knows: what was sold before, the band of the forecast in Raise.
 * The farm is read once; while a handle is dragged only stead_how_sure_settle() runs.
 * Sources: the shape of a range and the closed forms that hold it are in core/stead-season.h.
 */
#pragma once

#include "answer/stead-cost-answer.h"
#include "core/stead-season.h"

G_BEGIN_DECLS

/* Drawn anew while a handle moves; and with patience. */
#define STEAD_HOW_SURE_DRAWS 20000
#define STEAD_HOW_SURE_MANY_DRAWS 1000000
#define STEAD_HOW_SURE_MOST_BINS 48
/* Share of the seasons that the band holds. */
#define STEAD_HOW_SURE_LEVEL 0.8

typedef enum
{
  STEAD_RANGE_SOLD,     /* units of a product on one sale day */
  STEAD_RANGE_YIELD,    /* what a batch gives, as a multiple of the log's */
  STEAD_RANGE_INPUT,    /* price of what is bought, as a multiple of today's */
  STEAD_RANGE_DAY,      /* cents: costs of one sale day */
} SteadRangeKind;

typedef struct
{
  SteadRangeKind   kind;
  char            *name;      /* "Eggs sold", "Brown hens: what comes of it" */
  SteadPack        pack;      /* of a product */
  guint            line;      /* of a product, or the first of a batch */
  guint32          stream;    /* of the batch */
  SteadThreePoint  farm;      /* as the farm knows it */
  SteadThreePoint  value;     /* as it stands under the handles */
  char            *from;      /* where it is from: "as sold on 11 days" */
  /* Settled: */
  double           low_cents, high_cents;   /* profit of the season at its two ends, all else as likely as can be */
} SteadRange;

typedef struct
{
  char               *currency;
  GPtrArray          *ranges;       /* of SteadRange */
  GPtrArray          *missing;      /* of char *: products whose cost, price or plan is not known */
  SteadSeasonProduct *products;     /* (array length=n_products) */
  guint               n_products;
  int                 n_days;
  double              together;     /* share of seasons that are good or bad for all */
  double              target_cents; /* wanted of the season */

  /* Settled: */
  gboolean            solved;
  gboolean            upside_down;  /* a range is: the sentence names it */
  guint               n_draws;      /* seasons behind the figures */
  double              likely_cents; /* profit with everything as likely as can be */
  double              mean_cents, sd_cents;
  SteadBand           band;
  double              loss_frac, target_frac;
  double              low, step;    /* where what is counted begins, and how wide each count is; cents */
  guint               n_bins;
  guint               counts[STEAD_HOW_SURE_MOST_BINS];
  char               *sentence;     /* markup */
  char               *advice;       /* (nullable) markup */
} SteadHowSure;

void stead_how_sure_free (SteadHowSure *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadHowSure, stead_how_sure_free)

/* All products in sale that have a plan, a price and a cost; the rest is in "missing". */
SteadHowSure *stead_how_sure_new    (SteadStore *store, SteadPeriod period, GError **error) G_GNUC_WARN_UNUSED_RESULT;
void          stead_how_sure_settle (SteadHowSure *self);
/* The figures out of more seasons: room for %STEAD_HOW_SURE_MANY_DRAWS of them, to be run in any
 * thread and then taken.  (transfer full) (nullable): a range is upside down. */
SteadSeasonDraws *stead_how_sure_many_new  (SteadHowSure *self) G_GNUC_WARN_UNUSED_RESULT;
void              stead_how_sure_take_many (SteadHowSure *self, SteadSeasonDraws *draws);
/* All ranges as the farm knows them. */
void          stead_how_sure_reset  (SteadHowSure *self);
/* "72 dozen", "+10%", "$70.00": a value of a range. */
char         *stead_range_text      (const SteadHowSure *self, const SteadRange *range, double value) G_GNUC_WARN_UNUSED_RESULT;
/* Ends and step of its handles. */
void          stead_range_ends      (const SteadRange *range, double *low, double *high, double *step);
/* "6%"; "less than 1%" where that is so, for a drawn chance is never none and never sure. */
char         *stead_how_sure_chance (double frac) G_GNUC_WARN_UNUSED_RESULT;
/* (transfer full) (element-type SteadWhy) */
GPtrArray    *stead_how_sure_whys   (const SteadHowSure *self) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
