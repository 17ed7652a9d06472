/* stead-cut-patterns.c - ways to cut one piece of stock. */
#include "config.h"

#include "core/stead-cut-private.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

/* A search that takes longer is given up; what it found is still a good way to cut.  The
 * least is left to every search, however much the others took. */
#define MOST_STEPS 200000
#define LEAST_STEPS 2000

CutPattern *
cut_pattern_new (const CutJob *job,
                 gsize         stock)
{
  CutPattern *pattern = g_malloc0 (sizeof (CutPattern) + job->n * sizeof (guint));

  pattern->stock = stock;
  return pattern;
}

/* A kind with its worth for a meter. */
typedef struct
{
  gsize  kind;
  double size;
  double value;
  guint  need;
} Item;

typedef struct
{
  Item   *items;        /* the best for a meter first */
  gsize   n;
  guint  *now;          /* of each item */
  guint  *best;
  double  best_sum;
  guint   steps;
  guint   most_steps;
} Search;

static int
compare_items (const void *a,
               const void *b)
{
  const Item *left = a;
  const Item *right = b;
  double difference = right->value / right->size - left->value / left->size;

  if (difference != 0)
    return difference > 0 ? 1 : -1;
  if (left->size != right->size)
    return left->size < right->size ? 1 : -1;
  return left->kind > right->kind ? 1 : -1;
}

/* From item @i on, with @room left and @sum so far.  All that is left, filled with the
 * best that is left, is the most that this branch can reach. */
static void
search (Search *self,
        gsize   i,
        double  room,
        double  sum)
{
  guint most;

  if (sum > self->best_sum)
    {
      self->best_sum = sum;
      memcpy (self->best, self->now, self->n * sizeof (guint));
    }
  if (i == self->n || self->steps++ > self->most_steps
      || sum + (room + CUT_SLACK_M) * self->items[i].value / self->items[i].size <= self->best_sum + 1e-12)
    return;
  most = (guint) MIN (floor ((room + CUT_SLACK_M) / self->items[i].size), self->items[i].need);
  for (guint count = most + 1; count-- > 0;)
    {
      self->now[i] = count;
      search (self, i + 1, room - count * self->items[i].size, sum + count * self->items[i].value);
    }
  self->now[i] = 0;
}

gboolean
cut_fill (const CutJob *job,
          gsize         stock,
          const double *value,
          const guint  *need,
          guint        *counts,
          double       *out_sum)
{
  g_autofree Item *items = g_new (Item, job->n + 1);
  g_autofree guint *now = g_new0 (guint, job->n + 1);
  g_autofree guint *best = g_new0 (guint, job->n + 1);
  Search self = { items, 0, now, best, 0, 0, CLAMP (*job->steps, LEAST_STEPS, MOST_STEPS) };

  for (gsize i = 0; i < job->n; i++)
    if (value[i] > 0 && need[i] > 0)
      items[self.n++] = (Item) { i, job->size[i], value[i], need[i] };
  qsort (items, self.n, sizeof *items, compare_items);
  search (&self, 0, job->room[stock], 0);
  memset (counts, 0, job->n * sizeof (guint));
  for (gsize i = 0; i < self.n; i++)
    counts[items[i].kind] = best[i];
  *out_sum = self.best_sum;
  *job->steps -= MIN (*job->steps, self.steps);
  return self.steps <= self.most_steps;
}

/* All patterns */

typedef struct
{
  const CutJob *job;
  gsize         stock;
  guint        *now;
  GPtrArray    *patterns;
  guint         most;
} Listing;

/* Whether no further piece that is needed fits in. */
static gboolean
is_full (const Listing *self,
         double         room)
{
  for (gsize i = 0; i < self->job->n; i++)
    if (self->now[i] < self->job->need[i] && self->job->size[i] <= room + CUT_SLACK_M)
      return FALSE;
  return TRUE;
}

static void
list_from (Listing *self,
           gsize    kind,
           double   room)
{
  const CutJob *job = self->job;
  guint most;

  if (self->patterns->len > self->most)
    return;
  if (kind == job->n)
    {
      CutPattern *pattern;

      if (!is_full (self, room))
        return;
      pattern = cut_pattern_new (job, self->stock);
      memcpy (pattern->counts, self->now, job->n * sizeof (guint));
      g_ptr_array_add (self->patterns, pattern);
      return;
    }
  most = (guint) MIN (floor ((room + CUT_SLACK_M) / job->size[kind]), job->need[kind]);
  for (guint count = most + 1; count-- > 0 && self->patterns->len <= self->most;)
    {
      self->now[kind] = count;
      list_from (self, kind + 1, room - count * job->size[kind]);
    }
  self->now[kind] = 0;
}

/* How many leaves the listing may visit, at most: where pieces are small there are far
 * too many ways, and most of them not full. */
static gboolean
is_small (const CutJob *job,
          guint         most)
{
  double ways = 0;

  for (gsize s = 0; s < job->n_stocks; s++)
    {
      double product = 1;

      for (gsize i = 0; i < job->n; i++)
        product *= 1 + MIN (floor (job->room[s] / job->size[i]), job->need[i]);
      ways += product;
    }
  return ways <= 2000.0 * most;
}

GPtrArray *
cut_all_patterns (const CutJob *job,
                  guint         most)
{
  g_autoptr(GPtrArray) patterns = g_ptr_array_new_with_free_func (g_free);
  g_autofree guint *now = g_new0 (guint, job->n + 1);
  Listing self = { job, 0, now, patterns, most };

  if (!is_small (job, most))
    return NULL;
  for (self.stock = 0; self.stock < job->n_stocks; self.stock++)
    list_from (&self, 0, job->room[self.stock]);
  return patterns->len <= most ? g_steal_pointer (&patterns) : NULL;
}
