/* stead-lumber.c - boards: their true size, and the measure that they are sold by. */
#include "config.h"

#include "core/stead-core-error.h"
#include "core/stead-count.h"
#include "core/stead-lumber.h"
#include "core/stead-us-units.h"

#include <glib/gi18n-lib.h>
#include <math.h>

/* Dressed and dry, inches; 0: no such size. */
static double
dressed_thickness (int name_in)
{
  static const double sizes[] = { 0, 0.75, 1.5, 2.5, 3.5 };

  return name_in >= 1 && name_in <= 4 ? sizes[name_in] : 0;
}

static double
dressed_width (int name_in)
{
  static const double sizes[] = { 0, 0, 1.5, 2.5, 3.5, 4.5, 5.5, 0, 7.25, 0, 9.25, 0, 11.25 };

  return name_in >= 2 && name_in <= 12 ? sizes[name_in] : 0;
}

gboolean
stead_lumber_dressed_m (int      thickness_in,
                        int      width_in,
                        double  *out_thickness_m,
                        double  *out_width_m,
                        GError **error)
{
  double thick;
  double wide;

  g_return_val_if_fail (out_thickness_m != NULL && out_width_m != NULL, FALSE);

  thick = thickness_in == 6 && width_in == 6 ? 5.5 : dressed_thickness (thickness_in);
  wide = dressed_width (width_in);
  if (thick == 0 || wide == 0 || thickness_in > width_in)
    {
      g_set_error (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_RANGE,
                   _("The true size of a %dx%d is not known here. Measure it."), thickness_in, width_in);
      return FALSE;
    }
  *out_thickness_m = thick * STEAD_INCH_M;
  *out_width_m = wide * STEAD_INCH_M;
  return TRUE;
}

double
stead_board_feet (double pieces,
                  double thickness_in,
                  double width_in,
                  double length_m)
{
  return pieces >= 0 && thickness_in >= 0 && width_in >= 0 && length_m >= 0
         ? pieces * thickness_in * width_in * (length_m / STEAD_FOOT_M) / 12 : NAN;
}

gint64
stead_fence_boards (double run_m,
                    gint64 rails,
                    double board_m,
                    double waste_frac)
{
  return stead_count_up (stead_with_waste (run_m * (double) rails, waste_frac), board_m);
}
