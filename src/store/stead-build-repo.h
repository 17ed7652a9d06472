/* stead-build-repo.h - builds: a pen, a poultry run, a hoop house, or a list of things.
 *
 * Invariants:
 *  1. The outline of a pen does not cross itself, and a gate lies within its side.
 *  2. A run and a hoop house have four square corners.
 *  3. What the drawing takes is never stored: see answer/stead-build-answer.h.
 * Its bill and its work are in stead-build-bill-repo.h, its money in
 * stead-build-money-repo.h.
 */
#pragma once

#include "core/stead-fence.h"
#include "core/stead-outline.h"
#include "store/stead-store.h"

G_BEGIN_DECLS

/* Not to be changed in order: the file holds their words. */
typedef enum
{
  STEAD_BUILD_PEN,
  STEAD_BUILD_RUN,      /* for poultry, with a roof of mesh */
  STEAD_BUILD_HOOP,
  STEAD_BUILD_LIST,     /* things to buy, without a drawing */
} SteadBuildKind;

typedef enum
{
  STEAD_BUILD_FENCE_WOVEN,
  STEAD_BUILD_FENCE_BOARDS,
  STEAD_BUILD_FENCE_ELECTRIC,
  STEAD_BUILD_FENCE_NONE,
} SteadBuildFence;

/* What a line stands under, and what a sum may be bound to. */
typedef enum
{
  STEAD_BUILD_PART_FENCE,
  STEAD_BUILD_PART_GATE,
  STEAD_BUILD_PART_SHELTER,
  STEAD_BUILD_PART_GROUND,
  STEAD_BUILD_PART_COVER,
  STEAD_BUILD_PART_ANIMALS,
  STEAD_BUILD_PART_OTHER,
} SteadBuildPart;

#define STEAD_N_BUILD_PARTS (STEAD_BUILD_PART_OTHER + 1)
/* In place of a part: bound to none. */
#define STEAD_BUILD_PART_ANY (-1)

/* A corner, and the side from it to the next. */
typedef struct
{
  double x_m;      /* to the right on the plan */
  double y_m;      /* down the plan */
  double rise_m;   /* of the ground along the side, up or down */
  int    steps;    /* level steps of the fence on it; 0: it follows the ground */
} SteadBuildCorner;

/* A shed with one slope, open in front; see #SteadShed. */
typedef struct
{
  double x_m, y_m;          /* the corner of its floor up and left on the plan */
  int    turn;              /* its open side: 0 down the plan, then quarter turns to the left */
  double wall_m;
  double depth_m;
  double front_m;
  double rear_m;
  double overhang_front_m;
  double overhang_rear_m;
  double end_m;
  double cover_m;
  double rafter_spacing_m;
  double post_spacing_m;
  double post_depth_m;
} SteadBuildShelter;

/* A length in which boards or posts of a size are sold. */
typedef struct
{
  char    size[41];         /* "2x4" */
  double  length_m;
  gint64  price_cents;      /* of one; 0: not known */
} SteadBuildStock;

typedef struct
{
  gint64           id;              /* 0: not saved yet */
  char            *name;            /* unique, not empty */
  SteadBuildKind   kind;
  SteadDay         begun_on;
  SteadDay         goal_on;         /* wanted by; STEAD_DAY_NONE: not said */
  SteadDay         finished_on;     /* STEAD_DAY_NONE: not yet */
  char            *animal;          /* (nullable): a word of data/rules: "goat" */
  int              head;            /* 0 without animals */
  char            *housing;         /* (nullable): id of the row whose allowance was chosen */
  double           housed_each_m2;  /* the farm's own; NAN: of the row */
  double           yard_each_m2;
  SteadBuildFence  fence;
  double           height_m;        /* of the fence or run; of a hoop house in its middle, 0: half its width */
  double           spacing_m;       /* most, of line posts or bows */
  int              rows;            /* wires of the fabric, or boards above each other */
  double           roll_m;
  double           roll_width_m;    /* of mesh */
  double           apron_m;         /* of mesh round a run; 0: none */
  double           hole_m;          /* width of a post hole */
  double           post_m;          /* of a corner or gate post */
  double           depth_m;         /* of the hole */
  double           frost_m;         /* to which the ground freezes; NAN: not asked */
  int              bag_lb;          /* 40, 60 or 80 */
  double           wire_waste, wood_waste, mix_waste;
  double           bed_m;           /* of bedding in the shelter; 0: none */
  double           tax_frac;
  double           contingency_frac;
  double           sale_frac;       /* of what sale days clear, the share put aside for it */
  double           season_frac;     /* of the spread, what the season moves together */
  gint64           fund_id;         /* free money for it; 0: none */
  SteadDay         dig_on;          /* first day of digging; STEAD_DAY_NONE: not said */
  int              notice_days;     /* business days ahead */
  SteadDay         called_on;       /* when buried lines were asked about */
  SteadDay         permit_on;       /* when the building office answered */
  gint64           asset_id;        /* the thing that it became; 0: none yet */
  char            *note;            /* (nullable) */
  GArray          *corners;         /* of SteadBuildCorner; empty for a list */
  GArray          *gates;           /* of SteadFenceGate */
  gboolean         has_shelter;
  SteadBuildShelter shelter;
  GArray          *stocks;          /* of SteadBuildStock */
} SteadBuild;

/* Returns: (transfer full): with the usual figures for its kind (build-and-records) */
SteadBuild *stead_build_new  (SteadBuildKind kind) G_GNUC_WARN_UNUSED_RESULT;
SteadBuild *stead_build_copy (const SteadBuild *build) G_GNUC_WARN_UNUSED_RESULT;
void        stead_build_free (SteadBuild *build);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadBuild, stead_build_free)

/* Sets four square corners, the first at the origin; gates are taken away. */
void        stead_build_set_rectangle (SteadBuild *build, double length_m, double width_m);

/**
 * stead_build_check:
 *
 * What can be told without the file: an outline that crosses itself, corners of a run or a
 * hoop house that are not square, a gate wider than its side or over another one, a
 * figure that cannot be.
 */
gboolean    stead_build_check       (const SteadBuild *build, GError **error);

/* (transfer full) (element-type SteadBuild): not finished first, then by name */
GPtrArray  *stead_build_repo_list   (SteadStore *store, GError **error) G_GNUC_WARN_UNUSED_RESULT;
SteadBuild *stead_build_repo_get    (SteadStore *store, gint64 id, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/**
 * stead_build_repo_save:
 *
 * Refused besides: a goal in the past that was not there before, a name that is taken.
 */
gboolean    stead_build_repo_save   (SteadStore *store, SteadBuild *build, GError **error) G_GNUC_WARN_UNUSED_RESULT;
/* With its bill, work and pledges; money that came in stays in the cash book. */
gboolean    stead_build_repo_delete (SteadStore *store, gint64 id, GError **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
