/* stead-together-answer.h - "Sold together, how much must they bring?"
 *
 * All products of a sale day in the mix of its plan: how much of the plan covers the
 * costs, the path of profit as sales grow in a chosen order, the target, the fund's share.
 * The farm is read once; while a handle is dragged only stead_together_settle() runs.
 * Sources: OpenStax Principles of Accounting vol. 2, sections 2.2 (steps), 3.4 (mix) and
 * 3.5 (safety, leverage).
 */
#pragma once

#include "answer/stead-cost-answer.h"

G_BEGIN_DECLS

typedef struct
{
  gint64     product_id;
  char      *name;
  SteadPack  pack;
  double     price_cents;
  double     unit_cents;      /* without unpaid labor */
  double     planned;         /* whole units */
  double     fixed_cents;     /* its own costs of the day, whatever is sold */
  double     step_cents;      /* again for each step_units; 0: no steps */
  double     step_units;
  /* Settled: */
  double     margin_cents;    /* of one */
  double     margin_frac;     /* of its price; NAN at a price of 0 */
  double     even_units;      /* exact, at the break-even of the mix; NAN: never */
} SteadTogetherLine;

void stead_together_line_free (SteadTogetherLine *line);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadTogetherLine, stead_together_line_free)

typedef enum
{
  STEAD_TOGETHER_BEST_FIRST,    /* the largest share of its price left, first */
  STEAD_TOGETHER_WORST_FIRST,
  STEAD_TOGETHER_AS_LISTED,
} SteadTogetherOrder;

#define STEAD_N_TOGETHER_ORDERS (STEAD_TOGETHER_AS_LISTED + 1)

const char *stead_together_order_name (SteadTogetherOrder order);

/* A corner of the path. */
typedef struct
{
  double sales_cents;
  double profit_cents;
  int    line;            /* whose sales led here; -1: the start */
  double units;           /* of it, so far */
} SteadTogetherPoint;

typedef struct
{
  char                *currency;
  GPtrArray           *lines;          /* of SteadTogetherLine, as listed */
  GPtrArray           *missing;        /* of char *: products whose cost or price is not known */
  double               extra_cents;    /* fixed costs of the day beside those of the products */
  double               target_cents;   /* profit wanted of the whole day */
  double               fund_frac;      /* share of the profit that goes to the fund */
  SteadTogetherOrder   order;

  /* Settled: */
  double               fixed_cents;    /* of the day, without steps */
  double               sales_cents;    /* of the plan */
  double               profit_cents;   /* of the plan */
  double               margin_frac;    /* weighted: left of each unit of money taken in; NAN without sales */
  double               even_frac;      /* of the plan, first; NAN: never */
  double               even_sales_cents;
  double               target_frac;    /* of the plan, at which the target is reached; NAN: never */
  double               safety_cents;   /* sales that may be missing; below 0: that are missing */
  double               safety_frac;
  double               leverage;       /* NAN at break-even */
  double               fund_cents;     /* 0 without profit */
  GArray              *path;           /* of SteadTogetherPoint: product after product */
  GArray              *mix;            /* of SteadTogetherPoint: all at once, up to the plan */
  double               path_even_cents;  /* sales at which the path first reaches 0; NAN: never */
  char                *sentence;       /* markup */
  char                *advice;         /* (nullable) markup */
} SteadTogether;

void stead_together_free (SteadTogether *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadTogether, stead_together_free)

/* Without lines; they are added to it by the caller. */
SteadTogether *stead_together_new_empty (const char *currency) G_GNUC_WARN_UNUSED_RESULT;

/* All products in sale that have a plan, a price and a cost; the rest is in "missing". */
SteadTogether *stead_together_new (SteadStore   *store,
                                   SteadPeriod   period,
                                   GError      **error) G_GNUC_WARN_UNUSED_RESULT;

/* Figures, path and sentences, from the lines and the handles.  No query. */
void       stead_together_settle (SteadTogether *self);
/* (transfer full) (element-type SteadWhy) */
GPtrArray *stead_together_whys   (const SteadTogether *self) G_GNUC_WARN_UNUSED_RESULT;

/* Profit at @frac of the plan, every product alike; cents. */
double     stead_together_profit (const SteadTogether *self,
                                  double               frac);

G_END_DECLS
