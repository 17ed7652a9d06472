/* stead-hoop.c - the parts of a half-round hoop house. */
#include "config.h"

#include "core/stead-core-error.h"
#include "core/stead-count.h"
#include "core/stead-hoop.h"

#include <glib/gi18n-lib.h>
#include <math.h>

/* No house of a school is longer. */
#define LONGEST_M 1e4

double
stead_hoop_arc_m (double width_m)
{
  return width_m > 0 ? G_PI * width_m / 2 : NAN;
}

static gboolean
is_length (double length_m)
{
  return length_m > 0 && length_m <= LONGEST_M;
}

gboolean
stead_hoop_take_off (const SteadHoop   *hoop,
                     SteadHoopTakeoff  *out,
                     GError           **error)
{
  gint64 bows;
  double arc_m;
  double height_m;

  g_return_val_if_fail (hoop != NULL && out != NULL, FALSE);

  bows = stead_count_members (hoop->length_m, hoop->spacing_m);
  arc_m = hoop->arc_m == 0 ? stead_hoop_arc_m (hoop->width_m) : hoop->arc_m;
  height_m = hoop->height_m == 0 ? hoop->width_m / 2 : hoop->height_m;
  if (!is_length (hoop->width_m) || !is_length (hoop->length_m) || !is_length (height_m) || !is_length (arc_m)
      || !(hoop->extra_m >= 0 && hoop->extra_m <= LONGEST_M) || bows == STEAD_COUNT_NONE)
    {
      g_set_error_literal (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_RANGE,
                           _("A hoop house needs a width, a length and a distance between bows above 0. "
                             "Check its measures."));
      return FALSE;
    }
  /* A straight line over the ground is the shortest way from side to side. */
  if (arc_m < hoop->width_m)
    {
      g_set_error_literal (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_RANGE,
                           _("The measure over the top is shorter than the house is wide. Measure from ground "
                             "to ground over a bow."));
      return FALSE;
    }
  *out = (SteadHoopTakeoff) {
    .bows = bows,
    .ground_posts = 2 * bows,
    .bow_m = arc_m,
    .cover_width_m = arc_m + hoop->extra_m,
    .cover_length_m = hoop->length_m + hoop->extra_m,
    .end_pieces = 2,
    .end_width_m = hoop->width_m + hoop->extra_m,
    .end_height_m = height_m + hoop->extra_m,
    .base_board_m = 2 * (hoop->width_m + hoop->length_m),
  };
  return TRUE;
}
