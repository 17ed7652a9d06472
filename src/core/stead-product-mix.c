/* stead-product-mix.c - how much of each product, under several limits. */
#include "config.h"

#include "core/stead-core-error.h"
#include "core/stead-glpk-private.h"
#include "core/stead-product-mix.h"

#include <float.h>
#include <glib/gi18n-lib.h>
#include <math.h>

/* Farm plans take a few dozen steps; numbers of wildly different size can make
 * the method walk in circles. */
#define MOST_STEPS 20000

typedef glp_prob Problem;

G_DEFINE_AUTOPTR_CLEANUP_FUNC (Problem, glp_delete_prob)

static void
set_limit (Problem             *problem,
           int                  row,
           const SteadMixLimit *limit,
           int                  n_products)
{
  g_autofree int *places = g_new (int, n_products + 1);
  g_autofree double *values = g_new (double, n_products + 1);
  int filled = 0;

  for (int i = 0; i < n_products; i++)
    if (limit->use[i] != 0)
      {
        filled++;
        places[filled] = i + 1;
        values[filled] = limit->use[i];
      }
  glp_set_mat_row (problem, row, filled, places, values);
  if (limit->sense == STEAD_MIX_AT_MOST)
    glp_set_row_bnds (problem, row, GLP_UP, 0, limit->amount);
  else
    glp_set_row_bnds (problem, row, GLP_LO, limit->amount, 0);
}

static Problem *
build (const double        *margins,
       gsize                n_products,
       const SteadMixLimit *limits,
       gsize                n_limits)
{
  Problem *problem = glp_create_prob ();

  glp_set_obj_dir (problem, GLP_MAX);
  glp_add_cols (problem, (int) n_products);
  for (gsize i = 0; i < n_products; i++)
    {
      glp_set_obj_coef (problem, (int) i + 1, margins[i]);
      glp_set_col_bnds (problem, (int) i + 1, GLP_LO, 0, 0);
    }
  if (n_limits > 0)
    glp_add_rows (problem, (int) n_limits);
  for (gsize i = 0; i < n_limits; i++)
    set_limit (problem, (int) i + 1, &limits[i], (int) n_products);
  return problem;
}

/* GLPK writes "no end" as the largest double. */
static double
open_end (double value)
{
  if (value <= -DBL_MAX)
    return -INFINITY;
  return value >= DBL_MAX ? INFINITY : value;
}

static void
read_product (Problem          *problem,
              int               column,
              SteadProductPlan *out)
{
  double margin = glp_get_obj_coef (problem, column);

  out->quantity = glp_get_col_prim (problem, column);
  if (glp_get_col_stat (problem, column) == GLP_BS)
    {
      double low = -DBL_MAX;
      double high = DBL_MAX;

      glp_analyze_coef (problem, glp_get_num_rows (problem) + column, &low, NULL, NULL, &high, NULL,
                        NULL);
      out->margin_low = open_end (low);
      out->margin_high = open_end (high);
      return;
    }
  /* Not made: any lower margin, and so much more as would make it worth while. */
  out->margin_low = -INFINITY;
  out->margin_high = margin - glp_get_col_dual (problem, column);
}

static void
read_limit (Problem             *problem,
            int                  row,
            const SteadMixLimit *limit,
            SteadLimitPlan      *out)
{
  double used = glp_get_row_prim (problem, row);
  gboolean at_most = limit->sense == STEAD_MIX_AT_MOST;

  out->unused = limit->amount - used;
  if (glp_get_row_stat (problem, row) == GLP_BS)
    {
      out->shadow_price = 0;
      out->low = at_most ? used : -INFINITY;
      out->high = at_most ? INFINITY : used;
      return;
    }
  out->shadow_price = glp_get_row_dual (problem, row);
  out->low = -DBL_MAX;
  out->high = DBL_MAX;
  glp_analyze_bound (problem, row, &out->low, NULL, &out->high, NULL);
  out->low = open_end (out->low);
  out->high = open_end (out->high);
}

typedef struct
{
  const SteadMixLimit *limits;
  SteadProductPlan *products;
  SteadLimitPlan   *plans;
  int               status;
} Work;

/* The simplex method and the ranges of its result. */
static gboolean
solve (glp_prob *problem,
       gpointer  data)
{
  Work *work = data;
  glp_smcp settings;

  glp_init_smcp (&settings);
  settings.msg_lev = GLP_MSG_OFF;
  settings.it_lim = MOST_STEPS;
  settings.presolve = GLP_OFF;   /* the ranges need the basis */
  glp_scale_prob (problem, GLP_SF_AUTO);
  if (glp_simplex (problem, &settings) != 0
      || (!glp_bf_exists (problem) && glp_factorize (problem) != 0))
    return FALSE;
  work->status = glp_get_status (problem);
  for (int i = 1; work->status == GLP_OPT && i <= glp_get_num_cols (problem); i++)
    read_product (problem, i, &work->products[i - 1]);
  for (int i = 1; work->status == GLP_OPT && i <= glp_get_num_rows (problem); i++)
    read_limit (problem, i, &work->limits[i - 1], &work->plans[i - 1]);
  return isfinite (glp_get_obj_val (problem));
}

static gboolean
set_no_plan (gboolean   solved,
             int        status,
             GError   **error)
{
  if (!solved)
    g_set_error_literal (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_RANGE,
                         _("The numbers of this plan lie too far apart to be solved. Check the "
                           "largest and the smallest of them."));
  else if (status == GLP_UNBND)
    g_set_error_literal (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_NONE,
                         _("Nothing limits this plan. Add what is scarce: room, hours, feed or what "
                           "people buy."));
  else
    g_set_error_literal (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_NONE,
                         _("No plan keeps all these limits at once. Lower a promise or raise a "
                           "limit."));
  return FALSE;
}

gboolean
stead_product_mix_solve (const double        *margins,
                         gsize                n_products,
                         const SteadMixLimit *limits,
                         gsize                n_limits,
                         SteadProductPlan    *out_products,
                         SteadLimitPlan      *out_limits,
                         double              *out_best,
                         GError             **error)
{
  g_autoptr(Problem) problem = NULL;
  g_autofree SteadProductPlan *products = NULL;
  g_autofree SteadLimitPlan *plans = NULL;
  gboolean solved;
  Work work = { limits, NULL, NULL, GLP_UNDEF };

  g_return_val_if_fail (margins != NULL && n_products > 0 && n_products < 1000, FALSE);
  g_return_val_if_fail ((limits != NULL && out_limits != NULL) || n_limits == 0, FALSE);
  g_return_val_if_fail (out_products != NULL && out_best != NULL, FALSE);

  problem = build (margins, n_products, limits, n_limits);
  products = g_new0 (SteadProductPlan, n_products);
  plans = g_new0 (SteadLimitPlan, n_limits + 1);
  work.products = products;
  work.plans = plans;
  solved = stead_glpk_call (&problem, solve, &work);
  if (!solved || work.status != GLP_OPT)
    return set_no_plan (solved, work.status, error);

  *out_best = glp_get_obj_val (problem);
  for (gsize i = 0; i < n_products; i++)
    out_products[i] = products[i];
  for (gsize i = 0; i < n_limits; i++)
    out_limits[i] = plans[i];
  return TRUE;
}

typedef struct
{
  int     most_ms;
  double *quantities;    /* (out) */
  double  best;
  int     status;
  int     whole_status;
} WholeWork;

static void
read_whole (glp_prob  *problem,
            WholeWork *work)
{
  for (int i = 1; i <= glp_get_num_cols (problem); i++)
    work->quantities[i - 1] = round (glp_mip_col_val (problem, i));
  work->best = glp_mip_obj_val (problem);
}

/* Without the parts of units: a plan too, unless something is promised that it then lacks. */
static void
round_down (glp_prob  *problem,
            WholeWork *work)
{
  work->best = 0;
  for (int i = 1; i <= glp_get_num_cols (problem); i++)
    {
      work->quantities[i - 1] = floor (glp_get_col_prim (problem, i) + 1e-9);
      work->best += work->quantities[i - 1] * glp_get_obj_coef (problem, i);
    }
}

/* The simplex method, and from its result the whole numbers. */
static gboolean
solve_whole (glp_prob *problem,
             gpointer  data)
{
  WholeWork *work = data;
  glp_smcp simplex;
  glp_iocp whole;

  glp_init_smcp (&simplex);
  simplex.msg_lev = GLP_MSG_OFF;
  simplex.it_lim = MOST_STEPS;
  if (glp_simplex (problem, &simplex) != 0)
    return FALSE;
  work->status = glp_get_status (problem);
  if (work->status != GLP_OPT)
    return TRUE;
  glp_init_iocp (&whole);
  whole.msg_lev = GLP_MSG_OFF;
  whole.tm_lim = work->most_ms;
  glp_intopt (problem, &whole);
  work->whole_status = glp_mip_status (problem);
  if (work->whole_status == GLP_OPT || work->whole_status == GLP_FEAS)
    read_whole (problem, work);
  else if (work->whole_status == GLP_UNDEF)
    round_down (problem, work);
  return isfinite (work->best);
}

static gboolean
keeps (const double        *quantities,
       gsize                n_products,
       const SteadMixLimit *limits,
       gsize                n_limits)
{
  for (gsize k = 0; k < n_limits; k++)
    {
      double used = 0;

      for (gsize i = 0; i < n_products; i++)
        used += limits[k].use[i] * quantities[i];
      if (limits[k].sense == STEAD_MIX_AT_MOST ? used > limits[k].amount + 1e-6 : used < limits[k].amount - 1e-6)
        return FALSE;
    }
  return TRUE;
}

static gboolean
set_no_whole (int      status,
              GError **error)
{
  if (status == GLP_UNDEF)
    g_set_error_literal (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_RANGE,
                         _("No plan in whole units was found in the time. Look at the plan that may make a part of a "
                           "unit."));
  else
    g_set_error_literal (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_NONE,
                         _("No plan in whole units keeps all these limits at once. Lower a promise or raise a limit."));
  return FALSE;
}

gboolean
stead_product_mix_solve_whole (const double        *margins,
                               gsize                n_products,
                               const SteadMixLimit *limits,
                               gsize                n_limits,
                               int                  most_ms,
                               double              *out_quantities,
                               double              *out_best,
                               gboolean            *out_proven,
                               GError             **error)
{
  g_autoptr(Problem) problem = NULL;
  g_autofree double *quantities = NULL;
  WholeWork work = { most_ms, NULL, 0, GLP_UNDEF, GLP_UNDEF };
  gboolean solved;

  g_return_val_if_fail (margins != NULL && n_products > 0 && n_products < 1000, FALSE);
  g_return_val_if_fail (limits != NULL || n_limits == 0, FALSE);
  g_return_val_if_fail (out_quantities != NULL && out_best != NULL && out_proven != NULL && most_ms > 0, FALSE);

  problem = build (margins, n_products, limits, n_limits);
  for (int i = 1; i <= (int) n_products; i++)
    glp_set_col_kind (problem, i, GLP_IV);
  quantities = g_new0 (double, n_products);
  work.quantities = quantities;
  solved = stead_glpk_call (&problem, solve_whole, &work);
  if (!solved || work.status != GLP_OPT)
    return set_no_plan (solved, work.status, error);
  if (work.whole_status == GLP_NOFEAS
      || (work.whole_status == GLP_UNDEF && !keeps (quantities, n_products, limits, n_limits)))
    return set_no_whole (work.whole_status, error);
  *out_best = work.best;
  *out_proven = work.whole_status == GLP_OPT;
  for (gsize i = 0; i < n_products; i++)
    out_quantities[i] = quantities[i];
  return TRUE;
}

gsize
stead_scarce_best (const double *margins,
                   const double *use,
                   gsize         n)
{
  gsize best = 0;

  g_return_val_if_fail (margins != NULL && use != NULL && n > 0, 0);
  for (gsize i = 1; i < n; i++)
    if (margins[i] / use[i] > margins[best] / use[best])
      best = i;
  return best;
}

void
stead_scarce_fill (const double *margins,
                   const double *use,
                   const double *demand,
                   gsize         n,
                   double        capacity,
                   double       *out_quantity)
{
  double left = capacity;

  g_return_if_fail (margins != NULL && use != NULL && demand != NULL && out_quantity != NULL);

  for (gsize i = 0; i < n; i++)
    out_quantity[i] = -1;
  for (gsize round = 0; round < n; round++)
    {
      gsize best = n;

      for (gsize i = 0; i < n; i++)
        if (out_quantity[i] < 0 && (best == n || margins[i] / use[i] > margins[best] / use[best]))
          best = i;
      /* A product that loses money is not made to fill the room. */
      out_quantity[best] = margins[best] > 0 ? MIN (demand[best], MAX (0, left / use[best])) : 0;
      left -= out_quantity[best] * use[best];
    }
}
