/* stead-hoop.h - the parts of a half-round hoop house.
 *
 * Heat and volume are in stead-greenhouse.h.  Snow and wind on a hoop house are a
 * matter for its maker or the building office.
 * Sources: Rutgers University high tunnel construction page, foundation posts (bows);
 * a greenhouse covering seller's sizing note (plastic).
 */
#pragma once

#include "core/stead-us-units.h"

#include <glib.h>

G_BEGIN_DECLS

/* Plastic to hold on to, added to each measure: 2 ft, the seller's sizing note. */
#define STEAD_HOOP_EXTRA_M (2 * STEAD_FOOT_M)

typedef struct
{
  double width_m;      /* at the ground */
  double length_m;
  double spacing_m;    /* of bows */
  double arc_m;        /* measured over the top, ground to ground; 0: half a circle */
  double height_m;     /* in the middle; 0: half the width */
  double extra_m;      /* plastic added to each measure */
} SteadHoop;

typedef struct
{
  gint64 bows;
  gint64 ground_posts;    /* two a bow */
  double bow_m;           /* without the part in the ground */
  double cover_width_m;
  double cover_length_m;
  gint64 end_pieces;
  double end_width_m;
  double end_height_m;
  double base_board_m;    /* round the house */
} SteadHoopTakeoff;

/**
 * stead_hoop_take_off:
 * @hoop: the house
 * @out: (out): what it takes
 * @error: return location for a #GError in %STEAD_CORE_ERROR
 *
 * Returns: %TRUE; or %FALSE with @out left alone for a measure that cannot be
 */
gboolean stead_hoop_take_off (const SteadHoop   *hoop,
                              SteadHoopTakeoff  *out,
                              GError           **error) G_GNUC_WARN_UNUSED_RESULT;

/**
 * stead_hoop_arc_m: over the top of half a circle: pi x width / 2
 */
double stead_hoop_arc_m (double width_m);

G_END_DECLS
