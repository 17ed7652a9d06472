/* stead-build-takeoff.h - what the drawing of a build takes, thing by thing.
 *
 * Counts come from core (fence, mesh, roof, hoop, concrete, cut); here they get a name, a
 * length in which they are bought, and how they were worked out.
 */
#pragma once

#include "core/stead-cut.h"
#include "core/stead-quantity.h"
#include "store/stead-build-repo.h"

G_BEGIN_DECLS

/* One thing that is needed.  @key names it for ever: prices hang on it. */
typedef struct
{
  char           *key;        /* "line_post", "gate_3658": a gate for 3658 mm */
  SteadBuildPart  part;
  char           *name;       /* "Line post, 6 ft" */
  double          quantity;   /* in @unit, 0 or more */
  const char     *unit;       /* (nullable): pieces; translated: "cu yd" */
  char           *how;        /* "5 sides: 3 + 2 + 1 + 1 + 2 + 1" */
} SteadBuildNeed;

/* Pieces of one size, cut out of the lengths in which it is sold. */
typedef struct
{
  char         *size;        /* "2x4" */
  GArray       *pieces;      /* of SteadCutPiece */
  GArray       *stocks;      /* of SteadCutStock */
  SteadCutPlan *plan;
} SteadBuildCut;

typedef struct
{
  GPtrArray *needs;          /* of SteadBuildNeed, in the order of building */
  GPtrArray *cuts;           /* of SteadBuildCut */
  GArray    *sides_m;        /* of double: along the ground, or level where it is stepped */
  double     perimeter_m;
  double     area_m2;        /* inside, level */
  double     shelter_m2;     /* floor under a roof: shelter, run or house */
  double     net_wire_m;
  int        braces;         /* spans of each corner's assembly on the longest side */
  double     hole_depth_m;   /* by the rule or the frost, the deeper */
  gint64     bags_by_hole;   /* of concrete, rounded up for each hole: beside the job's */
} SteadBuildTakeoff;

void stead_build_takeoff_free (SteadBuildTakeoff *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadBuildTakeoff, stead_build_takeoff_free)

/**
 * stead_build_takeoff_new:
 * @build: the build
 * @units: in which lengths are bought and told
 *
 * Returns: (transfer full): what it takes; nothing for a list.  %NULL with @error if the
 *   drawing cannot be built
 */
SteadBuildTakeoff *stead_build_takeoff_new (const SteadBuild  *build,
                                            SteadUnitSystem         units,
                                            GError           **error) G_GNUC_WARN_UNUSED_RESULT;

/* "Fence", "Shelter": head of a group of the bill. */
const char *stead_build_part_name (SteadBuildPart part);

/* "6 ft", "1.83 m" */
char *stead_build_length_text (double     m,
                               SteadUnitSystem units) G_GNUC_WARN_UNUSED_RESULT;
/* "1,152 sq ft", "107 m²" */
char *stead_build_area_text   (double     m2,
                               SteadUnitSystem units) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
