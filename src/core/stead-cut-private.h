/* stead-cut-private.h - patterns of cutting, and the linear program over them. */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* A thousandth of a millimeter too long still fits. */
#define CUT_SLACK_M 1e-6

/* Steps of searching for one plan: a part of a second.  A count, no clock: the same
 * numbers give the same plan on every machine. */
#define CUT_MOST_STEPS 10000000

/* What is to be cut.  Each piece takes its saw cut along; the stock has one more of
 * them, since the last piece needs none. */
typedef struct
{
  gsize         n;
  const double *size;    /* of a kind, with its cut */
  const guint  *need;
  gsize         n_stocks;
  const double *room;    /* of a stock, with one cut */
  const double *cost;    /* of a stock: money, or length */
  guint        *steps;   /* of searching that are left for the whole plan */
} CutJob;

/* One way to cut one piece of stock. */
typedef struct
{
  gsize stock;
  guint times;           /* in a plan */
  guint counts[];        /* of each kind */
} CutPattern;

CutPattern *cut_pattern_new (const CutJob *job,
                             gsize         stock);

/* Fills one stock so that the sum of @value is largest, no more of a kind than
 * @need; FALSE if the search was given up and @counts is only good. */
gboolean cut_fill (const CutJob *job,
                   gsize         stock,
                   const double *value,
                   const guint  *need,
                   guint        *counts,
                   double       *out_sum);

/* All ways to fill each stock to which nothing can be added; NULL if there are more
 * than @most. */
GPtrArray *cut_all_patterns (const CutJob *job,
                             guint         most);

/* The patterns that the linear program finds, begun with those of @start; *@out_bound
 * is a cost that no plan is below. */
GPtrArray *cut_generate (const CutJob    *job,
                         const GPtrArray *start,
                         double          *out_bound);

/* The best plan of whole numbers out of @patterns, as their times; stops at a cost of
 * @enough.  Returns its cost, INFINITY for none; *@out_best whether there is no better
 * one of these patterns. */
double cut_whole (const CutJob *job,
                  GPtrArray    *patterns,
                  double        enough,
                  gboolean     *out_best);

G_END_DECLS
