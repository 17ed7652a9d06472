/* stead-batch-private.h - what the parts of the batch answer share. */
#pragma once

#include "answer/stead-batch-answer.h"

G_BEGIN_DECLS

/* Good output and its value, cents: planned, so far, and at the end as it is expected. */
typedef struct
{
  double output;
  double value_cents;     /* NAN: no price known */
  double feed_kg;
  double feed_cents;
  double other_cents;     /* animals or seed, bedding, supplies, equipment; less what is left worth */
  double cost_cents;
  double care_minutes;
} SteadBatchFigures;

void stead_batch_figures_so_far (const SteadBatchAnswer *self,
                                 SteadBatchFigures      *out);
void stead_batch_figures_at_end (const SteadBatchAnswer *self,
                                 SteadBatchFigures      *out);
/* What is not planned is NAN. */
void stead_batch_figures_planned (const SteadBatchAnswer *self,
                                  SteadBatchFigures      *out);

/* Reads product and prices, and values the output that came. */
gboolean stead_batch_value_read (SteadStore        *store,
                                 SteadBatchAnswer  *self,
                                 GError           **error) G_GNUC_WARN_UNUSED_RESULT;

/* Fills in @planned, @came and @variance, if enough is planned. */
void stead_batch_answer_vary (SteadBatchAnswer *self);

/* Rows, sentence, caution, review and why. */
void stead_batch_answer_put_in_rows (SteadBatchAnswer *self);
void stead_batch_answer_put_in_words (SteadBatchAnswer *self);
void stead_batch_answer_review (SteadBatchAnswer *self);

/* Money of whole cents, and money for one pack: "$4.18 a pound". */
char *stead_batch_money_text (const SteadBatchAnswer *self,
                              double                  cents) G_GNUC_WARN_UNUSED_RESULT;
char *stead_batch_unit_text (const SteadBatchAnswer *self,
                             double                  base_cents) G_GNUC_WARN_UNUSED_RESULT;
/* "Birds", "Fingerlings", "Seed and plants": what a batch begins with, as a cost. */
const char *stead_batch_start_name (SteadBatchKind kind);

/* Feed in the farm's unit. */
char *stead_batch_feed_text (const SteadBatchAnswer *self,
                             double                  kg) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
