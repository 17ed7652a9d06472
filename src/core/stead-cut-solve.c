/* stead-cut-solve.c - which ways to cut, and how often: the linear program. */
#include "config.h"

#include "core/stead-cut-private.h"
#include "core/stead-glpk-private.h"

#include <math.h>
#include <string.h>

/* Rounds of finding new patterns; a few dozen are usual. */
#define MOST_ROUNDS 400

/* Steps of the simplex method, and work of the search for whole numbers: its nodes, each
 * with all its patterns. */
#define MOST_STEPS 20000
#define MOST_NODES 1500
#define MOST_WORK 100000

/* A pattern that is worth so little more than it costs changes nothing. */
#define NOTHING 1e-9

static void
add_column (const CutJob     *job,
            glp_prob         *problem,
            const CutPattern *pattern)
{
  g_autofree int *places = g_new (int, job->n + 1);
  g_autofree double *values = g_new (double, job->n + 1);
  int column = glp_add_cols (problem, 1);
  int filled = 0;

  for (gsize i = 0; i < job->n; i++)
    if (pattern->counts[i] > 0)
      {
        filled++;
        places[filled] = (int) i + 1;
        values[filled] = pattern->counts[i];
      }
  glp_set_obj_coef (problem, column, job->cost[pattern->stock]);
  glp_set_col_bnds (problem, column, GLP_LO, 0, 0);
  glp_set_mat_col (problem, column, filled, places, values);
}

static glp_prob *
build (const CutJob    *job,
       const GPtrArray *patterns)
{
  glp_prob *problem = glp_create_prob ();

  glp_set_obj_dir (problem, GLP_MIN);
  glp_add_rows (problem, (int) job->n);
  for (gsize i = 0; i < job->n; i++)
    glp_set_row_bnds (problem, (int) i + 1, GLP_LO, job->need[i], 0);
  for (guint i = 0; i < patterns->len; i++)
    add_column (job, problem, patterns->pdata[i]);
  return problem;
}

static gboolean
call_simplex (glp_prob *problem,
              gpointer  data)
{
  glp_smcp settings;

  glp_init_smcp (&settings);
  settings.msg_lev = GLP_MSG_OFF;
  settings.it_lim = MOST_STEPS;
  return glp_simplex (problem, &settings) == 0 && glp_get_status (problem) == GLP_OPT;
}

/* Adds the best new pattern of each stock.  *@out_ratio: the worth of the best pattern
 * for what it costs; by it all worths must shrink to be a bound. */
static gboolean
add_patterns (const CutJob *job,
              glp_prob     *problem,
              GPtrArray    *patterns,
              const double *worth,
              gboolean     *exact,
              double       *out_ratio)
{
  gboolean added = FALSE;

  *out_ratio = 1;
  for (gsize s = 0; s < job->n_stocks; s++)
    {
      CutPattern *pattern = cut_pattern_new (job, s);
      double sum;

      *exact &= cut_fill (job, s, worth, job->need, pattern->counts, &sum);
      *out_ratio = MAX (*out_ratio, sum / job->cost[s]);
      if (sum <= job->cost[s] * (1 + NOTHING))
        {
          g_free (pattern);
          continue;
        }
      add_column (job, problem, pattern);
      g_ptr_array_add (patterns, pattern);
      added = TRUE;
    }
  return added;
}

/* Worths of the pieces at which no pattern is worth more than it costs bound every
 * plan from below (duality). */
static double
bound_of (const CutJob *job,
          const double *worth,
          double        ratio)
{
  double sum = 0;

  for (gsize i = 0; i < job->n; i++)
    sum += worth[i] * job->need[i];
  return sum / ratio;
}

GPtrArray *
cut_generate (const CutJob    *job,
              const GPtrArray *start,
              double          *out_bound)
{
  GPtrArray *patterns = g_ptr_array_new_with_free_func (g_free);
  g_autofree double *worth = g_new0 (double, job->n + 1);
  glp_prob *problem;
  gboolean going = TRUE;

  for (guint i = 0; i < start->len; i++)
    {
      const CutPattern *from = start->pdata[i];
      CutPattern *copy = cut_pattern_new (job, from->stock);

      memcpy (copy->counts, from->counts, job->n * sizeof (guint));
      g_ptr_array_add (patterns, copy);
    }
  *out_bound = 0;
  problem = build (job, patterns);
  for (int round = 0; going && round < MOST_ROUNDS; round++)
    {
      gboolean exact = TRUE;
      double ratio;

      if (!stead_glpk_call (&problem, call_simplex, NULL))
        break;
      for (gsize i = 0; i < job->n; i++)
        worth[i] = MAX (glp_get_row_dual (problem, (int) i + 1), 0);
      going = add_patterns (job, problem, patterns, worth, &exact, &ratio);
      if (exact)
        *out_bound = MAX (*out_bound, bound_of (job, worth, ratio));
    }
  if (problem != NULL)
    glp_delete_prob (problem);
  return patterns;
}

/* Whole numbers */

typedef struct
{
  double   enough;
  int      nodes;
  int      most_nodes;
  gboolean given_up;
} Whole;

static void
watch (glp_tree *tree,
       void     *data)
{
  Whole *whole = data;
  int reason = glp_ios_reason (tree);

  if (reason == GLP_ISELECT && ++whole->nodes > whole->most_nodes)
    {
      whole->given_up = TRUE;
      glp_ios_terminate (tree);
    }
  else if (reason == GLP_IBINGO && glp_mip_obj_val (glp_ios_get_prob (tree)) <= whole->enough)
    glp_ios_terminate (tree);
}

static gboolean
call_whole (glp_prob *problem,
            gpointer  data)
{
  glp_iocp settings;
  int status;

  if (!call_simplex (problem, NULL))
    return FALSE;
  glp_init_iocp (&settings);
  settings.msg_lev = GLP_MSG_OFF;
  settings.cb_func = watch;
  settings.cb_info = data;
  glp_intopt (problem, &settings);
  status = glp_mip_status (problem);
  return status == GLP_OPT || status == GLP_FEAS;
}

double
cut_whole (const CutJob *job,
           GPtrArray    *patterns,
           double        enough,
           gboolean     *out_best)
{
  glp_prob *problem = build (job, patterns);
  Whole whole = { .enough = enough * (1 + NOTHING),
                  .most_nodes = MIN (MOST_NODES, MOST_WORK / (int) MAX (1, patterns->len)) };
  double cost = INFINITY;

  for (guint i = 0; i < patterns->len; i++)
    glp_set_col_kind (problem, (int) i + 1, GLP_IV);
  *out_best = FALSE;
  if (stead_glpk_call (&problem, call_whole, &whole))
    {
      cost = 0;
      for (guint i = 0; i < patterns->len; i++)
        {
          CutPattern *pattern = patterns->pdata[i];

          pattern->times = (guint) floor (glp_mip_col_val (problem, (int) i + 1) + 0.5);
          cost += pattern->times * job->cost[pattern->stock];
        }
      *out_best = !whole.given_up;
    }
  if (problem != NULL)
    glp_delete_prob (problem);
  return cost;
}
