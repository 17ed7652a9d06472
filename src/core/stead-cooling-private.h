/* stead-cooling-private.h - the curves that a fit weighs. */
#pragma once

#include "core/stead-cooling.h"

G_BEGIN_DECLS

/* One curve: ambient + excess x e^(-rate x (minute - start)). */
typedef struct
{
  double ambient_f;
  double excess_f;
  double rate;
  double weight;      /* all of a fit sum to 1 */
} CoolingCurve;

struct _SteadCoolingFit
{
  SteadCoolingFigures  figures;
  double               start_min;   /* minute of the first reading used */
  GArray              *curves;      /* of CoolingCurve */
  GArray              *past;        /* of SteadCoolingReading: up to and with that first one */
};

/* All curves of @readings that count, of CoolingCurve. */
GArray *cooling_weigh_curves (const SteadCoolingReading *readings,
                              gsize                      n,
                              const SteadCoolingSetting *setting);

/* The least misfit that one curve has within the bounds: the sum of squared
 * residuals over the noise. */
double cooling_least_misfit (const SteadCoolingReading *readings,
                             gsize                      n,
                             const SteadCoolingSetting *setting);

/* A number with a weight. */
typedef struct
{
  double value;
  double weight;
} Weighed;

/* Sorts @values (of Weighed); HUGE_VAL goes last. */
void cooling_sort (GArray *values);

/* The value that a share of the weight lies below; NAN of nothing. */
double cooling_quantile (const GArray *sorted,
                         double        share);

G_END_DECLS
