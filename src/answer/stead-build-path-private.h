/* stead-build-path-private.h - what the files of the path share. */
#pragma once

#include "answer/stead-build-path.h"

G_BEGIN_DECLS

/* Nothing is known yet. */
SteadBuildPath *stead_build_path_begin (void) G_GNUC_WARN_UNUSED_RESULT;
/* Simulates, and fills in fans, days and chances; once. */
gboolean stead_build_path_run_fans (SteadBuildPath *self, gsize n_paths, GCancellable *cancellable, GError **error);
/* Only the dates and the chance by the wanted day. */
void     stead_build_path_say_dates (SteadBuildPath *self);

/* With all blocks run; NULL with @error if it was stopped. */
SteadOutlookRun *stead_build_path_simulate (const GArray *events, double start_cents, double goal_cents,
                                            double together, gsize n_paths, GCancellable *cancellable,
                                            GError **error);
/* The day by which the goal is reached so surely; today if it is there. */
SteadDay stead_build_path_day (SteadOutlookRun *run, SteadDay today, double surety);
/* Chance by the end of @day. */
double   stead_build_path_chance (SteadOutlookRun *run, SteadDay day);

gboolean stead_build_path_try (SteadBuildPath *self, gsize n_paths, GCancellable *cancellable, GError **error);
void     stead_build_path_say (SteadBuildPath *self);

/* The product of which one more brings most over all planned sales; NULL: none is known. */
const SteadBuildGood *stead_build_path_best_good (const SteadBuildPath *self);

/* What has to be done until the wanted day, from the answer; dates come with the run. */
void     stead_build_back_read (SteadBuildPath *self, const SteadBuildAnswer *answer);
void     stead_build_back_run  (SteadBuildPath *self);
void     stead_build_back_say  (SteadBuildPath *self);
void     stead_build_step_free (gpointer step);

G_END_DECLS
