/* stead-cooling-private.h - the forecast of a pot in words. */
#pragma once

#include "answer/stead-cooling-answer.h"

G_BEGIN_DECLS

/* Puts all figures into words. */
void stead_cooling_put_words (SteadCoolingAnswer    *self,
                              const SteadPot        *pot,
                              const SteadLimitTable *table);
/* And how they come about. */
void stead_cooling_put_whys (SteadCoolingAnswer    *self,
                             const SteadPot        *pot,
                             const SteadLimitTable *table);

/* The smallest step of the thermometer, °C. */
double stead_cooling_step_c (const SteadPot *pot);

/* The clock on the wall; early of what must be done, @late of what is foretold. */
char *stead_cooling_clock_text (const SteadCoolingAnswer *self,
                                double                    minute,
                                gboolean                  late) G_GNUC_WARN_UNUSED_RESULT;
/* A chance as a number out of 100, from 1 to 99. */
char *stead_cooling_hundred_text (double chance) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
