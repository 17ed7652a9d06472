/* stead-best-use-private.h - the parts of the best use: reading, solving, words. */
#pragma once

#include "answer/stead-best-use.h"

G_BEGIN_DECLS

/* Sentence, advice and the worth of each, out of what is settled. */
void stead_best_use_put_in_words (SteadBestUse *self);

static inline SteadScarce *
scarce_at (const SteadBestUse *self,
           guint               i)
{
  return self->scarce->pdata[i];
}

static inline SteadBestUseLine *
line_at (const SteadBestUse *self,
         guint               i)
{
  return self->lines->pdata[i];
}

G_END_DECLS
