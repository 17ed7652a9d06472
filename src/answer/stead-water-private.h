/* stead-water-private.h - what the files of the water answer share. */
#pragma once

#include "answer/stead-due-answer.h"
#include "answer/stead-water-answer.h"

G_BEGIN_DECLS

/* Fills in the trends of all measures from the tests. */
void stead_water_trends_fill (SteadWaterAnswer *self);

/* Sums the feed of the last days and follows its nitrogen. */
gboolean stead_water_budget_read (SteadStore        *store,
                                  SteadWaterAnswer  *self,
                                  GError           **error) G_GNUC_WARN_UNUSED_RESULT;

/* Fills in sentence, what to do, and caution. */
void stead_water_answer_say (SteadWaterAnswer *self);

/* Adds what waters ask for today to @dues (of SteadDue): tests, and readings out of limits. */
gboolean stead_water_find_dues (SteadStore  *store,
                                GPtrArray   *dues,
                                GError     **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
