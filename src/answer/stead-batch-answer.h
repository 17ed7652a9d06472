/* stead-batch-answer.h - "How does this batch stand beside its plan, and why did it end so?"
 *
 * For any batch: plan beside actual, cost so far and to finish, losses with their
 * reasons, harvests, and, once it is over, the review: what was planned, what came,
 * and why the difference in money.
 */
#pragma once

#include "answer/stead-batch-money.h"
#include "answer/stead-words.h"
#include "core/stead-batch-variance.h"
#include "store/stead-item-repo.h"

G_BEGIN_DECLS

typedef enum
{
  STEAD_TONE_PLAIN,
  STEAD_TONE_GOOD,    /* better than planned */
  STEAD_TONE_POOR,
} SteadTone;

/* Which line of the table it is; each is there at most once. */
typedef enum
{
  STEAD_BATCH_LINE_OUTPUT,
  STEAD_BATCH_LINE_PRICE,
  STEAD_BATCH_LINE_WORTH,
  STEAD_BATCH_LINE_FEED,
  STEAD_BATCH_LINE_FEED_PRICE,
  STEAD_BATCH_LINE_FEED_COST,
  STEAD_BATCH_LINE_START,
  STEAD_BATCH_LINE_SALVAGE,
  STEAD_BATCH_LINE_OTHER,
  STEAD_BATCH_LINE_ALL,
  STEAD_BATCH_LINE_LEFT,
  STEAD_BATCH_LINE_UNIT,
  STEAD_BATCH_LINE_CARE,
  STEAD_BATCH_LINE_LOST,
  STEAD_BATCH_LINE_END,
} SteadBatchLine;

#define STEAD_N_BATCH_LINES (STEAD_BATCH_LINE_END + 1)

/* One line of the table; a text that is not there is NULL. */
typedef struct
{
  SteadBatchLine line;
  char      *what;      /* "Feed" */
  char      *planned;
  char      *actual;    /* so far */
  char      *end;       /* expected at the end; once it is over, the difference */
  SteadTone  tone;      /* of the actual or the end against the plan */
} SteadBatchRow;

void stead_batch_row_free (SteadBatchRow *row);

typedef struct
{
  SteadFarm          *farm;
  SteadBatchMoney     money;          /* batch, plan, outlook, costs */
  SteadPack           pack;           /* what money is told for: a dozen, a pound, a kilogram, a piece */
  double              pack_base;      /* base units in it */
  SteadProduct       *product;        /* (nullable): whose price the output is valued at */
  double              price_cents;    /* of one base unit of what came, on its days; NAN: no price known */
  double              price_now_cents;/* of what is still to come; NAN */
  gint64              started;        /* hens, fish or plants at the start, with those that came later */
  gint64              lost;           /* of them, dead or taken out without a sale */
  GPtrArray          *losses;         /* of SteadLoss */
  GPtrArray          *harvests;       /* of SteadHarvest, oldest first */
  GPtrArray          *treatments;     /* of SteadTreatment, newest first */
  SteadDay            wait_until;     /* STEAD_DAY_NONE: nothing waits */
  gboolean            is_over;
  gboolean            has_plan;       /* anything at all is planned */
  gboolean            has_variance;
  SteadBatchResult    planned, came;  /* behind the variance; @came is expected while it is under way */
  SteadBatchVariance  variance;
  double              unit_cents;     /* cost of one base unit, whole batch; NAN */
  GPtrArray          *rows;           /* of SteadBatchRow */
  char               *sentence;       /* markup: how it stands */
  char               *caution;        /* (nullable) plain */
  GPtrArray          *review;         /* of char: sentences, markup; empty while it is under way */
  SteadWhy           *why;            /* (nullable): how the difference is taken apart */
} SteadBatchAnswer;

void stead_batch_answer_free (SteadBatchAnswer *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadBatchAnswer, stead_batch_answer_free)

SteadBatchAnswer *stead_batch_answer_new (SteadStore  *store,
                                          gint64       batch_id,
                                          GError     **error) G_GNUC_WARN_UNUSED_RESULT;

/* (transfer full) (element-type SteadWhy): cost so far and to come, worth, what is left over, cost of one, work,
 * losses, and how the difference from the plan is taken apart */
GPtrArray *stead_batch_answer_whys (const SteadBatchAnswer *self) G_GNUC_WARN_UNUSED_RESULT;

/* Title of the last column: "Expected at the end", or "Difference" once it is over. */
const char *stead_batch_answer_end_title (const SteadBatchAnswer *self);

/* An amount of output in the words of the batch: "132 pounds", "46 dozen". */
char *stead_batch_answer_output (const SteadBatchAnswer *self,
                                 double                  base) G_GNUC_WARN_UNUSED_RESULT;

/* "Fox: 3", "no reason given: 1", for a list. */
char *stead_batch_loss_text (const SteadLoss *loss) G_GNUC_WARN_UNUSED_RESULT;

/* "Antibiotic feed (2 g a kg), Mar 1 to Mar 9, ordered by Dr. Vale; waits up to and including Mar 30" */
char *stead_batch_treatment_text (const SteadTreatment *treatment) G_GNUC_WARN_UNUSED_RESULT;

/* "20 kg of Catfish, dressed; 2 kg lost: cut badly"
 * @item: (nullable): what it is in the store room, if anything good came */
char *stead_batch_harvest_text (const SteadBatchAnswer *self,
                                const SteadHarvest     *harvest,
                                const SteadItem        *item) G_GNUC_WARN_UNUSED_RESULT;

/* "Hens", "Fish", "Plants": what is lost, for a label. */
const char *stead_batch_started_name (SteadBatchKind kind);

G_END_DECLS
