/* stead-lay-text.h - a flock's weeks in words, for the chart and for who points at it. */
#pragma once

#include "answer/stead-flock-answer.h"

G_BEGIN_DECLS

/**
 * stead_lay_text_week:
 * @answer: a flock
 * @week: index into its weeks
 *
 * Returns: (transfer full): plain text: when, how old, how many eggs, hens lost, feed
 */
char *stead_lay_text_week (const SteadFlockAnswer *answer,
                           gsize                   week) G_GNUC_WARN_UNUSED_RESULT;

/**
 * stead_lay_text_ahead:
 * @answer: a flock
 * @age_weeks: age of the birds, at the middle of what is asked for
 *
 * Returns: (transfer full) (nullable): plain text on the coming week with that age;
 *   %NULL if none is forecast there
 */
char *stead_lay_text_ahead (const SteadFlockAnswer *answer,
                            double                  age_weeks) G_GNUC_WARN_UNUSED_RESULT;

/* First day of a coming week, counted from today on. */
SteadDay stead_lay_text_ahead_day (const SteadFlockAnswer *answer,
                                   const SteadLayAhead    *week);

/* Names at the end of the forecast: the line, the upper side of the band, the lower
 * one, and both in one; all NULL without a forecast. */
typedef struct
{
  char *forecast, *band_high, *band_low, *band;
} SteadLayEnds;

void stead_lay_ends_clear (SteadLayEnds *ends);
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (SteadLayEnds, stead_lay_ends_clear)

void stead_lay_text_ends (const SteadFlockAnswer *answer,
                          SteadLayEnds           *out);

G_END_DECLS
