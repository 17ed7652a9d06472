/* stead-build-answer.h - "What does this build take, what does it cost, and who pays?"
 *
 * When it will be paid for is in stead-build-path.h.
 */
#pragma once

#include "answer/stead-build-takeoff.h"
#include "answer/stead-words.h"
#include "core/stead-bill.h"
#include "core/stead-limit.h"
#include "core/stead-work-rules.h"
#include "store/stead-build-buy-repo.h"
#include "store/stead-build-money-repo.h"
#include "store/stead-farm-repo.h"

G_BEGIN_DECLS

/* One row of the bill: something that the drawing takes, or a line of the farm's own. */
typedef struct
{
  gint64          line_id;      /* 0: nobody said anything about it yet */
  char           *key;          /* (nullable): of the drawing */
  SteadBuildPart  part;
  char           *name;
  char           *how;          /* (nullable): how it was worked out */
  double          drawn;        /* by the drawing; NAN: a line of the farm's own */
  double          quantity;     /* that is bought */
  char           *unit;         /* (nullable): pieces */
  double          pack;
  double          packs;        /* quantity ÷ pack, rounded up */
  gint64          price_cents;  /* of a pack; -1: not known */
  double          came;         /* packs that were bought, or given and are there */
  double          open;         /* packs still to come */
  gint64          planned_cents; /* packs x price; 0 without one */
  gint64          paid_cents;   /* for what was bought, without tax; fair value of what was given */
  gint64          cents;        /* paid, and what is still to be paid */
  gboolean        given, taxed, left_out;
  char           *giver;        /* (nullable) */
  gboolean        is_bought;    /* all of it came */
  char           *supplier;     /* (nullable): who it is to be bought from */
  guint           n_quotes;
  gint64          best_cents;   /* lowest quote; -1: none */
  char           *best_supplier;
} SteadBuildRow;

/* Whether the animals have room. */
typedef struct
{
  char     *what;       /* "Floor under a roof" */
  char     *need;       /* "90 sq ft" */
  char     *has;        /* (nullable): "96 sq ft"; NULL: nothing to compare with */
  gboolean  is_short;
  char     *source;     /* of the allowance */
} SteadBuildRoom;

typedef struct
{
  gint64  fund_id;
  char   *name;
  int     part;          /* a SteadBuildPart, or STEAD_BUILD_PART_ANY */
  gint64  cents;         /* in it */
  gint64  usable_cents;  /* of it, for what is still to be bought */
  char   *purpose;       /* (nullable): what the giver said it is for */
  SteadDay use_by;       /* STEAD_DAY_NONE: not said */
} SteadBuildBound;

typedef struct
{
  SteadBuildPhase  *phase;   /* (transfer none) */
  SteadToolFlag     flag;
  const SteadLimit *row;     /* (nullable): the rule that set an age */
  char             *text;    /* (nullable): what it means; NULL: nothing to say */
} SteadBuildWork;

typedef struct
{
  SteadFarm         *farm;
  SteadDay           day;
  SteadBuild        *build;
  SteadBuildTakeoff *takeoff;      /* NULL with @trouble */
  char              *trouble;      /* (nullable): why the drawing cannot be built */
  GPtrArray         *rows;         /* of SteadBuildRow, by part */
  GPtrArray         *rooms;        /* of SteadBuildRoom */
  GPtrArray         *phases;       /* of SteadBuildPhase */
  GPtrArray         *works;        /* of SteadBuildWork, one a phase */
  GPtrArray         *pledges;      /* of SteadBuildPledge */
  GPtrArray         *incomes;      /* of SteadBuildIncome */
  GPtrArray         *upkeeps;      /* of SteadBuildUpkeep */
  GPtrArray         *bounds;       /* of SteadBuildBound */
  GPtrArray         *buys;         /* of SteadBuildBuy, by day */
  SteadBill          bill;         /* of what is still to be bought, and of what was given */
  gint64             spent_cents;  /* paid already, with tax */
  gint64             spent_tax_cents;
  gint64             came_planned_cents; /* what all that came was planned to cost, without tax */
  gint64             came_paid_cents;    /* and what it did cost */
  gint64             goal_cents;   /* spent + still to be raised */
  gint64             part_cents[STEAD_N_BUILD_PARTS];  /* to be bought, without tax */
  guint              n_unpriced;
  gint64             free_cents;   /* in the build's own fund */
  gint64             bound_cents;  /* usable, of grants */
  gint64             have_cents;   /* spent + free + bound, at most the goal */
  gint64             over_cents;   /* beyond the goal */
  gint64             pledged_cents, expected_cents;   /* open pledges; x their chance */
  double             share;        /* funded, 0 to 1; NAN: there is no price yet */
  double             hours, worked_h;
  gint64             yearly_cents; /* afterwards */
  gint64             wear_cents;   /* a year, over the life of a pen */
  SteadDay           call_by;      /* latest day to ask about buried lines; STEAD_DAY_NONE */
  char              *sentence;     /* markup */
  char              *money_sentence;
  char              *bought_sentence;   /* planned against bought; markup */
  char              *yearly_sentence;   /* what it costs afterwards; markup */
  GPtrArray         *cautions;     /* of char* */
} SteadBuildAnswer;

/* Life of a pen (build-and-records, record rule 7: 20 years). */
#define STEAD_BUILD_LIFE_YEARS 20

void stead_build_answer_free (SteadBuildAnswer *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadBuildAnswer, stead_build_answer_free)

/* A drawing that cannot be built gives an answer with @trouble, not an error. */
SteadBuildAnswer *stead_build_answer_new (SteadStore  *store,
                                          gint64       build_id,
                                          GError     **error) G_GNUC_WARN_UNUSED_RESULT;

/**
 * stead_build_answer_draw:
 * @build: as it is being drawn; copied
 *
 * The same answer for a drawing that is not saved.
 */
SteadBuildAnswer *stead_build_answer_draw (SteadStore        *store,
                                           const SteadBuild  *build,
                                           GError           **error) G_GNUC_WARN_UNUSED_RESULT;

/* (transfer full) (element-type SteadWhy) */
GPtrArray *stead_build_answer_whys (const SteadBuildAnswer *self) G_GNUC_WARN_UNUSED_RESULT;

/* (transfer full) (nullable): open pledges by their chances; apart, since givers read the proposal */
SteadWhy *stead_build_answer_pledge_why (const SteadBuildAnswer *self) G_GNUC_WARN_UNUSED_RESULT;

/* So many packs of a row: "19", "1 × 500", "10.7 cu yd". */
char   *stead_build_row_amount (const SteadBuildRow *row, double packs) G_GNUC_WARN_UNUSED_RESULT;
/* When some work was done, or is to be: "Nov 3 to Nov 5". */
char   *stead_build_phase_days (const SteadBuildPhase *phase) G_GNUC_WARN_UNUSED_RESULT;
/* What one thing of the upkeep comes to in a year: "9 bales", and its cents. */
char   *stead_build_upkeep_amount (const SteadBuildAnswer *self, const SteadBuildUpkeep *upkeep) G_GNUC_WARN_UNUSED_RESULT;
gint64  stead_build_upkeep_cents  (const SteadBuildAnswer *self, const SteadBuildUpkeep *upkeep);

/* The row with that key, or NULL. */
const SteadBuildRow *stead_build_answer_find (const SteadBuildAnswer *self, const char *key);

/* The animals of a build by word: "sheep" gives "Sheep"; NULL-terminated list of words. */
const char * const *stead_build_animals (void);
const char *stead_build_animal_name (const char *animal);

/* The tasks of data/rules/work.csv that a build may have, by word, with their names. */
const char * const *stead_build_tasks (void);
const char *stead_build_task_name (const char *task);

G_END_DECLS
