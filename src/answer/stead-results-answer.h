/* stead-results-answer.h - "What did we earn together, and what is each one's share?"
 *
 * The result is the net of the income statement (stead-statement-answer.h) of the school year.
 * It is shared as agreed: by hours, by role, or by fixed parts; to the cent, by largest remainder
 * (stead_money_split()).  A share tells what one took part in; no money moves by it.
 */
#pragma once

#include "store/stead-farm-repo.h"
#include "store/stead-people-repo.h"

#include "answer/stead-words.h"

G_BEGIN_DECLS

typedef struct
{
  gint64  person_id;
  char   *name;
  gint64  minutes;
  double  weight;      /* what it counts by: minutes times factor, or parts */
  gint64  cents;
} SteadResultShare;

/* "Brown hens", "Eggs", "4,320", "4,105". */
typedef struct
{
  char *batch, *what, *planned, *actual, *end;
} SteadResultsLine;

/* "Dozen eggs", "$2.41 a dozen". */
typedef struct
{
  char  *product;
  gint64 unit_cents;
  char  *text;
} SteadResultUnit;

typedef struct
{
  SteadFarm      *farm;
  SteadDay        from, to;            /* the school year, up to today */
  gint64          enterprise_id;       /* 0: the whole farm */
  char           *enterprise_name;     /* (nullable) */
  SteadShareRule *rule;
  gint64          sales_cents, net_cents;
  gint64          worth_change_cents;  /* of the net worth, over the period */
  gint64          minutes, unpaid_min;
  double          per_hour_cents;      /* net for an hour that was not paid; NAN without such hours */
  GPtrArray      *shares;              /* of SteadResultShare, by name; students only */
  GPtrArray      *lines;               /* of SteadResultsLine: production against plan */
  GPtrArray      *units;               /* of SteadResultUnit: cost of one unit */
  char           *sentence;            /* markup */
  char           *how;                 /* how it is shared */
  GPtrArray      *whys;                /* of SteadWhy: the figures and the shares, worked */
} SteadResultsAnswer;

void stead_results_answer_free (SteadResultsAnswer *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadResultsAnswer, stead_results_answer_free)

/* @enterprise_id: 0: the whole farm; hours are then those of its batches only */
SteadResultsAnswer *stead_results_answer_new (SteadStore  *store,
                                              gint64       enterprise_id,
                                              GError     **error) G_GNUC_WARN_UNUSED_RESULT;

/* "by hours", "by role", "by fixed parts" */
const char *stead_words_share_basis (SteadShareBasis basis);

G_END_DECLS
