/* stead-best-use.h - "What is the best use of what is scarce?"
 *
 * All products of a sale day as a linear programme: what the farm's own produce gives, time in
 * the kitchen and at packing, packaging that is in the store room, whatever else somebody names;
 * and the least and the most of each product.  The farm's own produce and work are spent either
 * way, so what counts is the price less what is bought for it: packaging, and what the kitchen
 * adds.  Where no plan keeps it all, the fewest demands that clash are named.
 * The farm is read once; while a handle is dragged only stead_best_use_settle() runs.
 * Source of the method: OpenStax Contemporary Mathematics, section 5.11.
 */
#pragma once

#include "answer/stead-cost-answer.h"

G_BEGIN_DECLS

typedef enum
{
  STEAD_SCARCE_PACKS,     /* told in packs of a product */
  STEAD_SCARCE_MINUTES,   /* told in hours */
  STEAD_SCARCE_PLAIN,     /* a number of what its name says */
} SteadScarceKind;

/* Something that several products take of. */
typedef struct
{
  SteadScarceKind  kind;
  char            *name;           /* of the batch or item; "Time for packing" */
  SteadPack        pack;           /* what its amounts are told in … */
  double           base_per_pack;  /* … and how much base goes into one */
  gint64           item_id;        /* of the store room; 0: none */
  double           amount;         /* that is there, base units or minutes */
  double           planned;        /* that the plan uses */
  /* Settled: */
  double           unused;
  double           worth_cents;    /* of one more pack of it, or of one more hour; 0: enough is there */
  double           low, high;      /* the worth holds for amounts from … to; may be infinite */
  gboolean         clashes;        /* there is too little of it for what is promised */
} SteadScarce;

typedef struct
{
  char      *name;
  SteadPack  pack;
  guint      look;           /* which hue and pattern: the same for products of one source */
  double     price_cents;
  double     own_cents;      /* what is bought for one */
  double     planned;
  double     least, most;    /* that can be sold: promised, and asked for */
  /* Settled: */
  double     best;
  double     least_cents;    /* what the last one promised costs the plan; 0: it would be made anyway */
  double     most_cents;     /* what it would bring if one more could be sold; 0: no more would be made */
  double     price_low;      /* the plan stays the same from this price …; -INFINITY: no end */
  double     price_high;     /* … to this one; INFINITY: no end */
  gboolean   least_clashes, most_clashes;
  GArray    *uses;           /* of double: of each scarce thing by one unit */
} SteadBestUseLine;

typedef struct
{
  char      *currency;
  GPtrArray *lines;          /* of SteadBestUseLine */
  GPtrArray *scarce;         /* of SteadScarce */
  GPtrArray *missing;        /* of char *: products whose cost, price or plan is not known */
  gboolean   whole;          /* no unit is made in part; worth and ranges are those of the plan with parts */
  /* Settled: */
  gboolean   solved;
  gboolean   proven;         /* no better plan is possible; FALSE: none was found in the time */
  guint      n_clashing;     /* demands that no plan keeps together; each is marked where it stands */
  double     plan_cents;     /* what the plan leaves, before the day's costs */
  double     best_cents;
  char      *sentence;       /* markup */
  char      *advice;         /* (nullable) markup: what holds the plan back */
  char      *scarce_text;    /* markup: the worth of one more of each, a line each, and of what there is enough */
} SteadBestUse;

void stead_best_use_free (SteadBestUse *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadBestUse, stead_best_use_free)

SteadBestUse *stead_best_use_new_empty (const char *currency) G_GNUC_WARN_UNUSED_RESULT;
/* Adds copies; return their places, from 0.  Twice as much as planned could sell, unless @line says. */
guint         stead_best_use_add_scarce (SteadBestUse *self, const SteadScarce *scarce);
guint         stead_best_use_add_line   (SteadBestUse *self, const SteadBestUseLine *line);
/* One unit of @line takes @amount more of @scarce. */
void          stead_best_use_take       (SteadBestUse *self, guint line, guint scarce, double amount);
/* How much one unit of @line takes of @scarce. */
double        stead_best_use_taken      (const SteadBestUse *self, guint line, guint scarce);
void          stead_best_use_set_taken  (SteadBestUse *self, guint line, guint scarce, double amount);
/* @frac: more than planned that could sell of every product: 0.5 is half as much again. */
void          stead_best_use_set_more   (SteadBestUse *self, double frac);

/* As much of everything as the plan uses; half as much again could sell, nothing is promised. */
SteadBestUse *stead_best_use_new        (SteadStore *store, SteadPeriod period, GError **error) G_GNUC_WARN_UNUSED_RESULT;
/* @quick: within a frame, however many whole units there are; "proven" tells whether that did. */
void          stead_best_use_settle     (SteadBestUse *self, gboolean quick);
/* "72 dozen", "3 h", "12": an amount of it. */
char         *stead_scarce_amount       (const SteadScarce *scarce, double amount) G_GNUC_WARN_UNUSED_RESULT;
/* Base units or minutes in what it is told by: of a pack, of an hour, 1. */
double        stead_scarce_telling      (const SteadScarce *scarce);
/* "$4.10 to $5.20": the prices of one at which the plan stays as it is. */
char         *stead_best_use_prices     (const SteadBestUse *self, const SteadBestUseLine *line) G_GNUC_WARN_UNUSED_RESULT;
/* (element-type SteadWhy): what it brings, what limits it, what one more is worth; empty unless solved. */
GPtrArray    *stead_best_use_whys       (const SteadBestUse *self) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
