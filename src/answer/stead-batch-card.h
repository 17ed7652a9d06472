/* stead-batch-card.h - all that the farm knows of one batch, as the tables of a card.
 *
 * What it is, what it cost, what came, what was lost, what it was treated with, its
 * log by week, its notes with their pictures.  Plan and review stand in @batch.
 */
#pragma once

#include "answer/stead-batch-answer.h"

G_BEGIN_DECLS

#define STEAD_CARD_COLUMNS 6

/* Texts, or NULL where nothing is known. */
typedef struct
{
  char *cells[STEAD_CARD_COLUMNS];
} SteadCardRow;

typedef struct
{
  int         n_columns;
  const char *titles[STEAD_CARD_COLUMNS];       /* (nullable): all of them, if there is no head */
  gboolean    is_figure[STEAD_CARD_COLUMNS];    /* a number, to be set at the right */
  GPtrArray  *rows;                             /* of SteadCardRow */
  gboolean    has_total;                        /* the last row is one */
} SteadCardTable;

typedef struct
{
  char   *day;
  char   *text;      /* (nullable) */
  GBytes *jpeg;      /* (nullable) */
} SteadCardNote;

typedef struct
{
  SteadBatchAnswer *batch;
  SteadCardTable   *facts;        /* name, value; no head */
  SteadCardTable   *costs;
  SteadCardTable   *harvests;     /* oldest first; each of these may have no row */
  SteadCardTable   *losses;
  SteadCardTable   *treatments;   /* oldest first */
  SteadCardTable   *weeks;        /* from the first day of the batch on */
  GPtrArray        *notes;        /* of SteadCardNote, oldest first */
} SteadBatchCard;

void stead_batch_card_free (SteadBatchCard *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadBatchCard, stead_batch_card_free)

SteadBatchCard *stead_batch_card_new (SteadStore  *store,
                                      gint64       batch_id,
                                      GError     **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
