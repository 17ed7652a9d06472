/* stead-batch-card-private.h - the parts of a card. */
#pragma once

#include "answer/stead-batch-card.h"

G_BEGIN_DECLS

SteadCardTable *stead_card_table_new  (void) G_GNUC_WARN_UNUSED_RESULT;
void            stead_card_table_free (SteadCardTable *table);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadCardTable, stead_card_table_free)

void            stead_card_table_add_column (SteadCardTable *table,
                                             const char     *title,
                                             gboolean        is_figure);
/* Its cells are to be filled in with texts that it then owns. */
SteadCardRow   *stead_card_table_add_row    (SteadCardTable *table);

/* The log by week: eggs, feed and losses; growth and warmth; or what was picked and done. */
SteadCardTable *stead_batch_card_weeks (SteadStore              *store,
                                        const SteadBatchAnswer  *batch,
                                        GError                 **error) G_GNUC_WARN_UNUSED_RESULT;

/* What it is, in names and values. */
SteadCardTable *stead_batch_card_facts (SteadStore              *store,
                                        const SteadBatchAnswer  *batch,
                                        GError                 **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
