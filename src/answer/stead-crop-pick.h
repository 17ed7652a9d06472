/* stead-crop-pick.h - writes down what was picked of a crop, with the cost that its lot carries. */
#pragma once

#include "answer/stead-crop-answer.h"

G_BEGIN_DECLS

/* What a person says of a pick. */
typedef struct
{
  gint64      crop_id;
  SteadDay    day;
  double      good_kg;     /* into the store room; 0: all was thrown out */
  double      lost_kg;     /* thrown out, 0 or more */
  const char *reason;      /* (nullable): of the loss; needed with one */
  const char *grade;       /* (nullable) */
  const char *note;        /* (nullable) */
  gint64      person_id;   /* 0: not said */
} SteadPick;

/**
 * stead_crop_pick_save:
 * @store: in an action
 * @error: for the person
 *
 * The good part becomes a lot of the crop's item: that of its last pick, or one of
 * the crop's name, which is made if the farm has none.  The lot carries its share
 * of the crop's cost by the rule of all batches (core/stead-batch-cost.h).
 *
 * Returns: %TRUE, or %FALSE with nothing written that the caller will not roll back
 */
gboolean stead_crop_pick_save (SteadStore       *store,
                               const SteadPick  *pick,
                               GError          **error) G_GNUC_WARN_UNUSED_RESULT;

/* For the undo menu: "12 lb picked on Mar 3". */
char *stead_crop_pick_name (const SteadPick *pick,
                            SteadUnitSystem  units) G_GNUC_WARN_UNUSED_RESULT;

/* Whole cents that went into the crop so far, without unpaid work. -1 with @error.
 * @out_why: (out) (nullable) (transfer full): the same, part by part; %NULL where nothing went in */
gint64 stead_crop_cost_in (SteadStore       *store,
                           const SteadCrop  *crop,
                           SteadWhy        **out_why,
                           GError          **error);

G_END_DECLS
