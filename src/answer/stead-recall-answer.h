/* stead-recall-answer.h - "If this lot were bad: what is touched, who must be called, and where is all of it?" */
#pragma once

#include "answer/stead-trace-answer.h"
#include "store/stead-shown-repo.h"

G_BEGIN_DECLS

/* One thing that the bad lot got into, or the lot itself. */
typedef struct
{
  const SteadTraceLot *lot;
  char     *name;         /* "Tomato sauce, K26062-1" */
  char     *left;         /* (nullable): still on the farm, and where: "3 jars in the cold room" */
  char     *out;          /* (nullable): sold and given away: "21 jars" */
  char     *gone;         /* (nullable): lost or thrown away */
  double    known_frac;   /* of what came in: used, sold, given, lost or still there, 0 to 1 */
  gboolean  is_held;
} SteadRecallRow;

/* Someone to call, once. */
typedef struct
{
  char      *who;    /* "Lakeside Feed & Seed", "Market of March 7", "The health department" */
  GPtrArray *whys;   /* of char *: "21 jars went there on March 7."; what came from there by the item, with its lots */
} SteadRecallCall;

typedef struct
{
  SteadTraceAnswer *trace;
  GPtrArray        *rows;         /* of SteadRecallRow: the lot first, then what was made of it */
  GPtrArray        *calls;        /* of SteadRecallCall: who decides, then who has it, then who it came from */
  double            known_frac;   /* of all rows: the worst of them */
  double            out_base;     /* of the lot itself: in other hands, base units */
  char             *share;        /* "100 %" */
  SteadDrill       *drill;        /* (nullable): the one asked about, or the last of this lot */
  double            minutes;      /* that the drill took, NAN: none, or under way */
  char             *sentence;     /* markup */
  char             *caution;
} SteadRecallAnswer;

void stead_recall_answer_free (SteadRecallAnswer *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadRecallAnswer, stead_recall_answer_free)

/* @drill_id: 0: the last drill of the lot, if any */
SteadRecallAnswer *stead_recall_answer_new (SteadStore  *store,
                                            gint64       lot_id,
                                            gint64       drill_id,
                                            GError     **error) G_GNUC_WARN_UNUSED_RESULT;

/* (transfer full): of SteadWhy: the share that is accounted for, row by row */
GPtrArray *stead_recall_answer_whys (const SteadRecallAnswer *self) G_GNUC_WARN_UNUSED_RESULT;

/* "98.5 %", rounded down, so that only all of it is 100 %. */
char *stead_recall_share_text (double frac) G_GNUC_WARN_UNUSED_RESULT;

/* Whole minutes that a drill took; NAN while it is under way. */
double stead_drill_minutes (const SteadDrill *drill);

/* @drills: (element-type SteadDrill)
 * Returns: (transfer full): of SteadWhy: how long those took that are over; empty where none is */
GPtrArray *stead_drills_whys (const GPtrArray *drills) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
