/* stead-fish-private.h - what the parts of the fish repository share. */
#pragma once

#include "store/stead-batch-private.h"
#include "store/stead-fish-repo.h"

G_BEGIN_DECLS

/* Most fish that the file takes in one group, and the heaviest fish, in grams. */
#define STEAD_FISH_MOST G_GINT64_CONSTANT (100000000)
#define STEAD_FISH_HEAVIEST_G 100000.0

/* What is not to be counted, since it is about to change; 0: nothing. */
typedef struct
{
  gint64 entry_id;
  gint64 harvest_id;
  gint64 move_id;
} SteadFishWithout;

/**
 * stead_fish_changes:
 * @without: (nullable): rows to leave out
 *
 * Returns: (transfer full) (element-type SteadFishCount): for each day on which fish
 *   came or went, by how many the number changed; by day, without the stocking
 */
GArray *stead_fish_changes (SteadStore              *store,
                            gint64                   fish_id,
                            const SteadFishWithout  *without,
                            GError                 **error) G_GNUC_WARN_UNUSED_RESULT;

/* Adds what is about to be written to the changes of a day. */
void stead_fish_changes_add (GArray   *changes,
                             SteadDay  day,
                             gint64    n);

/* The least number at the end of any day from @from on; below 0 if more go than are there. */
gint64 stead_fish_changes_least (const GArray *changes,
                                 gint64        stocked,
                                 SteadDay      from);

/**
 * stead_fish_can_go:
 * @out_n: (out): fish that can die or leave on @day, so that no later day is short
 */
gboolean stead_fish_can_go (SteadStore              *store,
                            gint64                   fish_id,
                            SteadDay                 day,
                            const SteadFishWithout  *without,
                            gint64                  *out_n,
                            GError                 **error) G_GNUC_WARN_UNUSED_RESULT;

/* stead_fish_repo_stand() for a group that is at hand. */
gboolean stead_fish_read_stand (SteadStore       *store,
                                const SteadFish  *group,
                                SteadDay          day,
                                gint64            entry_id,
                                SteadFishStand   *out,
                                GError          **error) G_GNUC_WARN_UNUSED_RESULT;

/* Fish that are there at some time of @day, those that came on it among them. */
gboolean stead_fish_on_day (SteadStore  *store,
                            gint64       fish_id,
                            SteadDay     day,
                            gint64      *out_n,
                            GError     **error) G_GNUC_WARN_UNUSED_RESULT;

/* Refuses, in words, that @n fish go where only @can_go can. */
gboolean stead_fish_refuse_gone (const char  *group_name,
                                 gint64       can_go,
                                 gint64       n,
                                 GError     **error);

/* The rule of the days of an entry, a weighing or a move. */
gboolean stead_fish_check_day (const SteadBatch  *batch,
                               SteadDay           day,
                               SteadDay           today,
                               GError           **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
