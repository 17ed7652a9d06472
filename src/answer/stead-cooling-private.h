/* stead-cooling-private.h - the forecast of a pot in words. */
#pragma once

#include "answer/stead-cooling-answer.h"

G_BEGIN_DECLS

/* Puts all figures into words. */
void stead_cooling_put_words (SteadCoolingAnswer    *self,
                              const SteadPot        *pot,
                              const SteadLimitTable *table);

G_END_DECLS
