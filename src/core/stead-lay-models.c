/* stead-lay-models.c - published laying curves. */
#include "config.h"

#include "core/stead-lay-models.h"

#include <math.h>

/* ln (e^a + e^b) without overflow. */
static double
log_sum_exp (double a,
             double b)
{
  return MAX (a, b) + log1p (exp (-fabs (a - b)));
}

/* ln cosh (x) without overflow. */
static double
log_cosh (double x)
{
  return log_sum_exp (x, -x) - G_LN2;
}

double
stead_lay_individual (const SteadLayIndividual *model,
                      double                    t)
{
  double rise;
  double fall;

  g_return_val_if_fail (model != NULL, NAN);

  rise = (1 - exp (-t)) / (1 + exp (-t));
  fall = (1 - exp (-t)) / (1 + exp (-(t - model->c2_week)));
  return model->max_eggs_week * (model->k1 * rise - (model->k1 - model->k2) * fall);
}

double
stead_lay_individual_sum (const SteadLayIndividual *model,
                          double                    t)
{
  double c;
  double step;

  g_return_val_if_fail (model != NULL, NAN);

  c = model->c2_week;
  step = log_sum_exp (t, c) - log_sum_exp (0, c);
  return model->max_eggs_week * (2 * model->k1 * log_cosh (t / 2)
                                 - (model->k1 - model->k2) * ((1 + exp (-c)) * step - t * exp (-c)));
}

/* F(a) of the persistency model. */
static double
corner (const SteadLayPersistency *model,
        double                     a,
        double                     t)
{
  double r = model->rounding_week;

  return log_sum_exp (t / r, a / r) - log_sum_exp (0, a / r);
}

double
stead_lay_persistency (const SteadLayPersistency *model,
                       double                     t)
{
  double r;
  double rise;

  g_return_val_if_fail (model != NULL, NAN);

  if (!(model->rounding_week > 0) || !(model->top_week > model->start_week))
    return NAN;
  r = model->rounding_week;
  rise = model->plateau_eggs_week / (model->top_week - model->start_week);
  return r * rise * (corner (model, model->start_week, t) - corner (model, model->top_week, t))
         + r * model->slope_eggs_week2 * corner (model, model->top_week + model->persistency_week, t);
}

double
stead_lay_gamma (double a,
                 double b,
                 double c,
                 double t)
{
  return stead_lay_gamma_root (a, b, c, 0, t);
}

double
stead_lay_gamma_root (double a,
                      double b,
                      double c,
                      double d,
                      double t)
{
  return t >= 0 ? a * pow (t, b) * exp (-c * t + d * sqrt (t)) : NAN;
}

double
stead_lay_decline (double a,
                   double r,
                   double c,
                   double d,
                   double t)
{
  return 1 / (0.01 + a * pow (r, t)) - c * (t - d);
}

double
stead_lay_compartment (double a,
                       double x,
                       double c,
                       double d,
                       double t)
{
  return a * exp (-x * t) / (1 + exp (-c * (t - d)));
}
