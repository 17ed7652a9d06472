/* stead-cut.h - cutting pieces from boards, pipes or rolls with the least to buy.
 *
 * Least money where the stock has prices, else least length.  A plan is proven best
 * where what it costs meets a lower bound; where it is not, the bound tells how much
 * better a plan could be at most.
 * Method: patterns and their linear program (Gilmore and Gomory, 1961 and 1963), whole
 * numbers by branch and bound; solved with GLPK.
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

#define STEAD_CUT_MOST_KINDS 60
#define STEAD_CUT_MOST_STOCKS 20
#define STEAD_CUT_MOST_PIECES 2000

/* Pieces of one length that are needed. */
typedef struct
{
  double length_m;   /* above 0 */
  guint  count;      /* 0 or more */
} SteadCutPiece;

/* A length that can be bought, as many as one likes. */
typedef struct
{
  double length_m;     /* above 0 */
  double price_cents;  /* of one, above 0; 0 for all stock: least length */
} SteadCutStock;

/* Stock of one length that is cut in one way. */
typedef struct
{
  gsize  stock;    /* which, from 0 */
  guint  times;    /* so many are cut like this */
  guint *pieces;   /* (array length=n_kinds): out of one of them */
  double left_m;   /* of one of them, saw cuts taken off */
} SteadCutBar;

typedef struct
{
  GPtrArray *bars;          /* (element-type SteadCutBar): the shortest rest first */
  gsize      n_kinds;
  guint      n_bars;        /* in all */
  double     bought_m;
  double     used_m;        /* in the pieces */
  double     cost_cents;    /* 0 without prices */
  double     bound;         /* no plan costs less: cents; without prices, meters */
  gboolean   proven;        /* there is no better plan */
} SteadCutPlan;

/**
 * stead_cut_plan_new:
 * @pieces: (array length=n_kinds): what is needed
 * @n_kinds: up to %STEAD_CUT_MOST_KINDS
 * @stocks: (array length=n_stocks): what can be bought
 * @n_stocks: 1 to %STEAD_CUT_MOST_STOCKS
 * @kerf_m: lost in each cut, 0 or more; 1/8 in for a circular saw is usual (common
 *   practice, no source)
 * @error: return location for a #GError in %STEAD_CORE_ERROR
 *
 * The same numbers always give the same plan.  Some hundred pieces of usual lengths take
 * a tenth of a second and are proven; odd ones up to a second, and may not be.
 *
 * Returns: (transfer full): how to cut; %NULL if a piece is longer than all stock, or a
 *   number cannot be
 */
SteadCutPlan *stead_cut_plan_new (const SteadCutPiece  *pieces,
                                  gsize                 n_kinds,
                                  const SteadCutStock  *stocks,
                                  gsize                 n_stocks,
                                  double                kerf_m,
                                  GError              **error) G_GNUC_WARN_UNUSED_RESULT;

void stead_cut_plan_free (SteadCutPlan *plan);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadCutPlan, stead_cut_plan_free)

/**
 * stead_cut_spliced:
 * @runs_m: (array length=n): stretches of wire, each above 0
 * @n: how many
 * @roll_m: length of a roll, above 0
 *
 * Wire can be spliced: a run longer than a roll takes whole rolls and a rest.
 *
 * Returns: (transfer full) (element-type double): pieces, none longer than a roll;
 *   %NULL for a number that cannot be or for more than %STEAD_CUT_MOST_PIECES
 */
GArray *stead_cut_spliced (const double *runs_m,
                           gsize         n,
                           double        roll_m) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
