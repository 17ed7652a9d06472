/* stead-product-clash.c - which limits of a plan cannot all be kept.
 *
 * Each round knows some sets of limits whose lifting leaves a plan.  Whatever clashes touches
 * each of them, so the fewest limits that touch them all are as few as any that clash: clash
 * these too, they are the smallest.  If not, a plan that keeps them breaks others, one more set.
 */
#include "config.h"

#include "core/stead-glpk-private.h"
#include "core/stead-product-clash.h"

#include <math.h>

/* Farm plans take fewer than ten. */
#define MOST_ROUNDS 60
#define MOST_STEPS 20000
#define MOST_TOUCH_MS 200

/* A limit is broken if by more than so much of its largest coefficient; GLPK keeps 1e-7. */
#define BROKEN 1e-6

typedef struct
{
  const SteadMixLimit *limits;
  int               n_limits;
  int               n_products;
  const gboolean   *hard;        /* limits that must be kept */
  gboolean         *broken;      /* (out): of the others */
  int               n_broken;
  gboolean          kept;        /* a plan keeps all that are hard */
} Elastic;

static double
largest_use (const SteadMixLimit *limit,
             int                  n_products)
{
  double largest = 0;

  for (int i = 0; i < n_products; i++)
    largest = MAX (largest, fabs (limit->use[i]));
  return largest > 0 ? largest : 1;
}

/* A row of one limit, its largest coefficient 1; the last column is by how much it is broken. */
static void
set_row (glp_prob      *problem,
         const Elastic *work,
         int            at,
         int           *places,
         double        *values)
{
  const SteadMixLimit *limit = &work->limits[at];
  gboolean at_most = limit->sense == STEAD_MIX_AT_MOST;
  double scale = largest_use (limit, work->n_products);
  int slack = work->n_products + at + 1, filled = 1;

  places[1] = slack;
  values[1] = at_most ? -1 : 1;
  for (int i = 0; i < work->n_products; i++)
    if (limit->use[i] != 0)
      {
        filled++;
        places[filled] = i + 1;
        values[filled] = limit->use[i] / scale;
      }
  glp_set_mat_row (problem, at + 1, filled, places, values);
  glp_set_row_bnds (problem, at + 1, at_most ? GLP_UP : GLP_LO, limit->amount / scale, limit->amount / scale);
  glp_set_obj_coef (problem, slack, 1);
  glp_set_col_bnds (problem, slack, work->hard[at] ? GLP_FX : GLP_LO, 0, 0);
}

static glp_prob *
elastic_new (const Elastic *work)
{
  glp_prob *problem = glp_create_prob ();
  g_autofree int *places = g_new (int, work->n_products + 2);
  g_autofree double *values = g_new (double, work->n_products + 2);

  glp_set_obj_dir (problem, GLP_MIN);
  glp_add_cols (problem, work->n_products + work->n_limits);
  glp_add_rows (problem, work->n_limits);
  for (int i = 1; i <= work->n_products; i++)
    glp_set_col_bnds (problem, i, GLP_LO, 0, 0);
  for (int k = 0; k < work->n_limits; k++)
    set_row (problem, work, k, places, values);
  return problem;
}

static gboolean
solve_elastic (glp_prob *problem,
               gpointer  data)
{
  Elastic *work = data;
  glp_smcp settings;
  int status;

  glp_init_smcp (&settings);
  settings.msg_lev = GLP_MSG_OFF;
  settings.it_lim = MOST_STEPS;
  if (glp_simplex (problem, &settings) != 0)
    return FALSE;
  status = glp_get_status (problem);
  work->kept = status == GLP_OPT;
  work->n_broken = 0;
  for (int k = 0; work->kept && k < work->n_limits; k++)
    {
      work->broken[k] = !work->hard[k] && glp_get_col_prim (problem, work->n_products + k + 1) > BROKEN;
      work->n_broken += work->broken[k];
    }
  return status == GLP_OPT || status == GLP_NOFEAS;
}

/* A plan that keeps all that are hard and breaks the others as little as it can. */
static gboolean
run_elastic (Elastic *work)
{
  glp_prob *problem = elastic_new (work);
  gboolean done = stead_glpk_call (&problem, solve_elastic, work);

  if (problem != NULL)
    glp_delete_prob (problem);
  return done;
}

/* --- the fewest that touch all sets ------------------------------------------------------- */

typedef struct
{
  gboolean *touch;     /* (out) (array length=n_limits) */
  int       n_limits;
} Touch;

static gboolean
solve_touch (glp_prob *problem,
             gpointer  data)
{
  Touch *work = data;
  glp_iocp settings;

  glp_init_iocp (&settings);
  settings.msg_lev = GLP_MSG_OFF;
  settings.presolve = GLP_ON;
  settings.tm_lim = MOST_TOUCH_MS;
  if (glp_intopt (problem, &settings) != 0 || glp_mip_status (problem) != GLP_OPT)
    return FALSE;
  for (int k = 0; k < work->n_limits; k++)
    work->touch[k] = glp_mip_col_val (problem, k + 1) > 0.5;
  return TRUE;
}

static glp_prob *
touch_new (GPtrArray *sets,
           int        n_limits)
{
  glp_prob *problem = glp_create_prob ();
  g_autofree int *places = g_new (int, n_limits + 1);
  g_autofree double *values = g_new (double, n_limits + 1);

  glp_set_obj_dir (problem, GLP_MIN);
  glp_add_cols (problem, n_limits);
  glp_add_rows (problem, (int) sets->len);
  for (int k = 1; k <= n_limits; k++)
    {
      glp_set_col_kind (problem, k, GLP_BV);
      glp_set_obj_coef (problem, k, 1);
    }
  for (guint s = 0; s < sets->len; s++)
    {
      const gboolean *set = sets->pdata[s];
      int filled = 0;

      for (int k = 0; k < n_limits; k++)
        if (set[k])
          {
            filled++;
            places[filled] = k + 1;
            values[filled] = 1;
          }
      glp_set_mat_row (problem, (int) s + 1, filled, places, values);
      glp_set_row_bnds (problem, (int) s + 1, GLP_LO, 1, 0);
    }
  return problem;
}

static gboolean
find_touch (GPtrArray *sets,
            int        n_limits,
            gboolean  *out_touch)
{
  Touch work = { out_touch, n_limits };
  glp_prob *problem = touch_new (sets, n_limits);
  gboolean done = stead_glpk_call (&problem, solve_touch, &work);

  if (problem != NULL)
    glp_delete_prob (problem);
  return done;
}

/* --- the clash ------------------------------------------------------------------------------ */

/* TRUE when @hard is the smallest clash, or (with none hard) no clash is there. */
static gboolean
find_smallest (Elastic  *work,
               gboolean *hard)
{
  g_autoptr(GPtrArray) sets = g_ptr_array_new_with_free_func (g_free);

  for (int round = 0; round < MOST_ROUNDS; round++)
    {
      if (!run_elastic (work))
        return FALSE;
      if (!work->kept)
        return TRUE;
      if (work->n_broken == 0)
        {
          for (int k = 0; k < work->n_limits; k++)
            hard[k] = FALSE;
          return TRUE;
        }
      g_ptr_array_add (sets, g_memdup2 (work->broken, (gsize) work->n_limits * sizeof *work->broken));
      if (!find_touch (sets, work->n_limits, hard))
        return FALSE;
    }
  return FALSE;
}

/* Lifts one after the other for good, as long as the others still clash. */
static gboolean
lift_all_but_few (Elastic  *work,
                  gboolean *hard)
{
  for (int k = 0; k < work->n_limits; k++)
    hard[k] = TRUE;
  if (!run_elastic (work) || work->kept)
    return FALSE;
  for (int k = 0; k < work->n_limits; k++)
    {
      hard[k] = FALSE;
      if (!run_elastic (work))
        return FALSE;
      hard[k] = work->kept;
    }
  return TRUE;
}

gsize
stead_product_clash_find (const SteadMixLimit *limits,
                          gsize                n_limits,
                          gsize                n_products,
                          gboolean            *out_clash)
{
  g_autofree gboolean *hard = g_new0 (gboolean, n_limits + 1);
  g_autofree gboolean *broken = g_new0 (gboolean, n_limits + 1);
  Elastic work = { limits, (int) n_limits, (int) n_products, hard, broken, 0, FALSE };
  gsize n = 0;

  g_return_val_if_fail (n_products > 0 && n_products < 1000 && n_limits < 10000, 0);
  g_return_val_if_fail ((limits != NULL && out_clash != NULL) || n_limits == 0, 0);

  if (n_limits == 0)
    return 0;
  if (!find_smallest (&work, hard) && !lift_all_but_few (&work, hard))
    for (gsize k = 0; k < n_limits; k++)
      hard[k] = FALSE;
  for (gsize k = 0; k < n_limits; k++)
    {
      out_clash[k] = hard[k];
      n += hard[k];
    }
  return n;
}
