/* stead-best-use.h - "What is the best use of what is scarce?"
 *
 * All products of a sale day as a linear programme: what each batch or item of the store
 * room gives, minutes of packing, and the most of each that sells.  What goes in has been
 * spent either way, so what counts is the price less the product's own packaging.
 * The farm is read once; while a handle is dragged only stead_best_use_settle() runs.
 * Source of the method: OpenStax Contemporary Mathematics, section 5.11.
 */
#pragma once

#include "answer/stead-cost-answer.h"

G_BEGIN_DECLS

/* Something that several products are made of. */
typedef struct
{
  char      *name;           /* of the batch, recipe or item; "Minutes of packing" */
  SteadPack  pack;           /* what its amounts are told in … */
  double     base_per_pack;  /* … and how much base goes into one; 0: minutes */
  double     amount;         /* that is there, base units or minutes */
  double     planned;        /* that the plan uses */
  /* Settled: */
  double     unused;
  double     worth_cents;    /* of one more pack of it, or of one more hour; 0: enough is there */
  double     low, high;      /* the worth holds for amounts from … to; may be infinite */
} SteadScarce;

typedef struct
{
  char      *name;
  SteadPack  pack;
  double     base_per_unit;
  double     minutes;        /* of packing one */
  int        source;         /* which scarce thing it is made of */
  double     price_cents;
  double     own_cents;      /* its packaging */
  double     planned;
  double     most;           /* that sells */
  double     best;           /* settled */
} SteadBestUseLine;

typedef struct
{
  char      *currency;
  GPtrArray *lines;          /* of SteadBestUseLine */
  GPtrArray *scarce;         /* of SteadScarce; the last are the minutes, if any are needed */
  double     more_frac;      /* that could sell beyond the plan: 0.5 is half as much again */
  gboolean   whole;          /* no unit is made in part; worth and ranges are those of the plan with parts */
  /* Settled: */
  gboolean   solved;
  double     plan_cents;     /* what the plan leaves, before the day's costs */
  double     best_cents;
  char      *sentence;       /* markup */
  char      *scarce_text;    /* markup: the worth of one more of each, a line each */
} SteadBestUse;

void stead_best_use_free (SteadBestUse *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadBestUse, stead_best_use_free)

SteadBestUse *stead_best_use_new_empty (const char *currency) G_GNUC_WARN_UNUSED_RESULT;
/* Adds copies. */
void          stead_best_use_add_scarce (SteadBestUse *self, const SteadScarce *scarce);
void          stead_best_use_add_line   (SteadBestUse *self, const SteadBestUseLine *line);

/* As much of everything as the plan uses; half as much again could sell. */
SteadBestUse *stead_best_use_new        (SteadStore *store, SteadPeriod period, GError **error) G_GNUC_WARN_UNUSED_RESULT;
void          stead_best_use_settle     (SteadBestUse *self);
/* "72 dozen", "3 h": an amount of it. */
char         *stead_scarce_amount       (const SteadScarce *scarce, double amount) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
