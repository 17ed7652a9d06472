/* stead-cooling-answer.h - "Will the pot be cold in time, how surely, and what is enough if not?" */
#pragma once

#include "core/stead-cooling-series.h"
#include "core/stead-quantity.h"

G_BEGIN_DECLS

typedef struct
{
  gint64   at;        /* seconds since 1970, UTC */
  double   temp_c;
  gboolean changed;   /* something was done since the reading before: moved, split, stirred */
} SteadPotReading;

typedef struct
{
  const SteadPotReading *readings;   /* by time, not two at one */
  gsize                  n_readings;
  gint64                 now;        /* seconds since 1970, UTC */
  const char            *start;      /* (nullable): "cooked" (usual), "ambient_ingredients", "received_warm" */
  const char            *wording;    /* (nullable): "food_code" (usual), "additional_4h" */
  double                 air_low_c, air_high_c;  /* what the cooler's air is known to lie between; NAN: any cooler */
  double                 step_c;     /* the smallest step of the thermometer, °C; 0: one tenth of a °F */
  gboolean               reheated;   /* heated again once already */
  SteadUnitSystem        units;
  const SteadLimitTable *table;      /* (nullable): the limits in force; NULL for those of the program */
} SteadPot;

typedef enum
{
  STEAD_POT_WAITING,    /* too few readings to foretell */
  STEAD_POT_ON_TRACK,
  STEAD_POT_ACT,        /* an action is enough, if it is not too late for it */
  STEAD_POT_TOO_LATE,   /* none is surely enough */
  STEAD_POT_LOOK,       /* a time is over, and nobody looked */
  STEAD_POT_MET,
  STEAD_POT_FAILED,
} SteadPotState;

typedef struct
{
  const char       *id;     /* "shallow_pan"; belongs to the table */
  SteadCoolingPlan  plan;   /* minutes count from the first reading */
} SteadPotAction;

/* The texts of its chart. */
typedef struct
{
  char *unit;                          /* "°F in the middle of the pot" */
  char *expected;
  char *too_warm;
  char *now;
  char *act;                           /* (nullable): "act by 11:50 AM" */
  char *marks[STEAD_COOLING_MARKS];    /* (nullable): "70 °F by 12:00 PM" */
} SteadCoolingNames;

typedef struct
{
  SteadPotState        state;
  SteadCoolingRule     rule;
  gboolean             clock_known;    /* the readings show when the clock started */
  gboolean             has_fit;
  SteadCoolingFigures  figures;
  SteadCoolingArrival  arrivals[STEAD_COOLING_MARKS];
  double               chances[STEAD_COOLING_MARKS];
  double               chance;         /* of all marks in time if nothing is done; NAN without a fit */
  GArray              *actions;        /* of SteadPotAction, mildest first; empty without a fit */
  int                  best;           /* the mildest that is enough; else that with the best chance; -1: none needed */
  SteadCoolingSeries   series;         /* to draw; its arrays are the answer's */
  GArray              *kept_readings;  /* of SteadCoolingReading */
  GArray              *kept_steps;     /* of SteadCoolingStep */
  SteadCoolingNames    names;
  const SteadLimit    *correction;     /* (nullable): what to do once it failed */
  char                *sentence;       /* plain */
  char                *action;         /* (nullable): what to do, and until when */
  char                *source;         /* of the rule */
  GPtrArray           *notes;          /* of char *: gaps, a jump, a start that nobody saw; may be empty */
  GPtrArray       *whys;           /* of SteadWhy: when each mark is due, the curve, the band; may be empty */
  char                *caution;
} SteadCoolingAnswer;

void stead_cooling_answer_free (SteadCoolingAnswer *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadCoolingAnswer, stead_cooling_answer_free)

/**
 * stead_cooling_answer_new:
 *
 * Returns: (transfer full): the forecast; or %NULL with @error: the readings are not in the
 *   order of their times, or there is no such rule
 */
SteadCoolingAnswer *stead_cooling_answer_new (const SteadPot  *pot,
                                              GError         **error) G_GNUC_WARN_UNUSED_RESULT;

/* "Spread it in shallow pans": what can be done with a pot. */
const char *stead_cooling_action_name (const char *id);

G_END_DECLS
