/* stead-lay-text.h - a flock's weeks in words, for a pointer or a screen reader on the chart. */
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

G_END_DECLS
