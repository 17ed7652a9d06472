/* stead-build-path.h - "When will it be paid for, how surely, and what helps most?"
 *
 * Read from the file by stead_build_path_new(); run, which takes a while, in any thread
 * and without the file.  The same farm gives the same figures.
 */
#pragma once

#include "answer/stead-build-answer.h"
#include "answer/stead-words.h"
#include "core/stead-outlook.h"

G_BEGIN_DECLS

#define STEAD_BUILD_N_SURETIES 3   /* 50, 80 and 95 of 100 */

/* One band of the fan at the end of a day. */
typedef struct
{
  SteadDay  day;
  SteadBand wide;     /* 95 of 100 paths */
  SteadBand narrow;   /* 50 of 100 */
  double    chance;   /* that the goal was reached by then */
} SteadBuildFan;

typedef enum
{
  STEAD_TRY_SALE,      /* one more sale day, the next week after today */
  STEAD_TRY_PRODUCT,   /* one more of a product is sold at each planned sale */
  STEAD_TRY_PRICE,     /* everything that is sold brings 10 % more */
  STEAD_TRY_GIVEN,     /* the dearest thing is given */
  STEAD_TRY_PLEDGES,   /* all pledges come */
  STEAD_TRY_LEAN,      /* all that was left for surprises is not needed */
} SteadTryKind;

typedef struct
{
  SteadTryKind  kind;
  char         *text;      /* "One more Winter market" */
  SteadDay      day;       /* reached with 80 of 100; STEAD_DAY_NONE: not by the plan */
  int           days;      /* earlier than now; 0 if not known */
  double        chance;    /* by the wanted day, or the last one */
  char         *effect;    /* "9 days earlier" */
} SteadBuildTry;

/* In the order in which they are done; money, permit and call wait for nothing. */
typedef enum
{
  STEAD_STEP_MONEY,     /* what is missing comes */
  STEAD_STEP_PERMIT,
  STEAD_STEP_CALL,      /* buried lines are marked */
  STEAD_STEP_BUY,
  STEAD_STEP_WORK,      /* a stretch of it */
} SteadStepKind;

/* One step on the way to the wanted day; weekends count as days. */
typedef struct
{
  SteadStepKind kind;
  char     *name;
  int       days;        /* that it takes, 1 or more */
  SteadDay  can_begin;   /* if all begins now; STEAD_DAY_NONE: it cannot be told */
  SteadDay  begin_by;    /* at the latest */
  SteadDay  done_by;     /* its last day then */
  int       spare;       /* begin_by less can_begin; below 0: too late */
  gboolean  decides;     /* on the critical path: none has fewer days to spare */
} SteadBuildStep;

/* A product of the best planned sale. */
typedef struct
{
  gint64     product_id;
  char      *name;
  SteadPack  pack;
  double     sold;         /* expected on such a day */
  double     more_cents;   /* that one more clears for the build; NAN: its cost is not known */
} SteadBuildGood;

typedef struct
{
  GArray    *events;        /* of SteadOutlookEvent */
  double     start_cents;
  double     goal_cents;
  double     together;
  SteadDay   today;
  SteadDay   goal_on;       /* STEAD_DAY_NONE: not said */
  char      *currency;
  char      *sale_name;     /* (nullable): of the best planned sale */
  double     sale_mean, sale_sd;
  gint64     dearest_cents; /* of the line that costs most; 0: none */
  char      *dearest;       /* (nullable) */
  gint64     spare_cents;   /* contingency */
  double     pledges_cents;
  GPtrArray *goods;         /* of SteadBuildGood: what the best planned sale sells; empty without one */
  GArray    *mores;         /* of SteadBuildMore: what one more sold adds, sale by sale */
  GPtrArray *steps;         /* of SteadBuildStep; empty without a wanted day to come */
  int        notice_days;   /* business days from the call about buried lines to digging */
  /* After the run: */
  GArray    *fans;          /* of SteadBuildFan, by day; the first is today */
  SteadDay   days[STEAD_BUILD_N_SURETIES];   /* STEAD_DAY_NONE: not by what is planned */
  double     chance_goal;   /* by the wanted day; NAN: none is said */
  double     chance_end;    /* by the last planned day */
  int        sales_needed;  /* sale days for the wanted day with 80 of 100; -1: no such number, or nothing to tell */
  int        sales_planned; /* until then */
  SteadDay   next_on;       /* next planned sale until the wanted day; STEAD_DAY_NONE: none */
  double     next_cents;    /* that it has to clear if the rest brings what is expected; 0: nothing */
  double     next_mean;     /* that it is expected to clear */
  SteadDay   money_by;      /* latest day for the money, so that it stands on the wanted day; STEAD_DAY_NONE */
  SteadDay   work_by;       /* latest day for the work to begin; STEAD_DAY_NONE */
  double     chance_money;  /* to have the money by then; NAN */
  GPtrArray *tries;         /* of SteadBuildTry, what helps most first */
  char      *sentence;      /* markup */
  char      *back_sentence; /* (nullable): the plan backwards; markup */
  char      *next_sentence; /* (nullable): what the next sale must clear; markup */
  char      *more_sentence; /* (nullable): what one more product sold clears; markup */
  char      *goods_sentence; /* (nullable): which products, how many of each; plain */
  char      *steps_sentence; /* (nullable): what must be done by when; markup */
} SteadBuildPath;

/* What one more of a product adds to one sale. */
typedef struct
{
  guint  event;        /* index in events */
  gint64 product_id;
  double cents;
} SteadBuildMore;

void stead_build_path_free (SteadBuildPath *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadBuildPath, stead_build_path_free)

/* (transfer full): what a row of the table of steps says: name, days, can begin, begin by, done by, days to
 * spare; what cannot be told is a dash.  Its heads: What, Days, Can begin, Begin by, Done by, Days to spare. */
char **stead_build_step_cells (const SteadBuildStep *step) G_GNUC_WARN_UNUSED_RESULT;

extern const double stead_build_sureties[STEAD_BUILD_N_SURETIES];

SteadBuildPath *stead_build_path_new (SteadStore              *store,
                                      const SteadBuildAnswer  *answer,
                                      GError                 **error) G_GNUC_WARN_UNUSED_RESULT;

/**
 * stead_build_path_run:
 * @n_paths: 20000 for what is shown
 * @cancellable: (nullable): asked again and again
 *
 * Returns: %TRUE; %FALSE if it was stopped, with @self only good for freeing
 */
gboolean stead_build_path_run (SteadBuildPath  *self,
                               gsize            n_paths,
                               GCancellable    *cancellable,
                               GError         **error) G_GNUC_WARN_UNUSED_RESULT;

/* (transfer full): the same money, but each sale clears @sales_frac of what is planned, 0 or
 * more; 1: as planned.  It is run by stead_build_path_run_dates(). */
SteadBuildPath *stead_build_path_what_if (const SteadBuildPath *base,
                                          double                sales_frac) G_GNUC_WARN_UNUSED_RESULT;

/* (transfer full): of SteadWhy: of a path that was run: the days, the next sale, how many sales, days to spare */
GPtrArray *stead_build_path_whys (const SteadBuildPath *self) G_GNUC_WARN_UNUSED_RESULT;

/* As stead_build_path_run(), but for the fan, the days, the chances and the sentence only: so
 * quick that it can follow a handle. */
gboolean stead_build_path_run_dates (SteadBuildPath  *self,
                                     gsize            n_paths,
                                     GCancellable    *cancellable,
                                     GError         **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
