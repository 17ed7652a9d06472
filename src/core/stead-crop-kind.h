/* stead-crop-kind.h - crops that the program knows, and what is usual for them.
 *
 * Only tomatoes rest on sources (stead-husbandry.h); the figures of the others are
 * common practice without a source, to start from.  A seed packet, local extension
 * advice and the farm's own years go first.
 */
#pragma once

#include "core/stead-crop.h"
#include "core/stead-harvest.h"

G_BEGIN_DECLS

typedef struct
{
  const char         *id;          /* stable, for files: "tomato" */
  SteadCropKind       kind;
  SteadHarvestShape   shape;
  double              base_c;
  double              upper_c;
  double              ripe_need;   /* °C-days from setting out to the first pick, plain average */
  double              yield_kg;    /* of a plant over the picking span */
  double              pick_weeks;
  double              density_m2;  /* plants on a m² */
  gboolean            has_source;
} SteadCropDefaults;

/**
 * stead_crop_known:
 * @n_crops: (out): how many
 *
 * Returns: (transfer none) (array length=n_crops): tomatoes first
 */
const SteadCropDefaults *stead_crop_known (gsize *n_crops);

/* (transfer none) (nullable): what is usual of a crop by its id; %NULL for a word of the farm's own */
const SteadCropDefaults *stead_crop_defaults (const char *id);

/* (transfer none): in the person's language: "tomatoes"; the farm's own word as it is */
const char *stead_crop_word (const char *id);

G_END_DECLS
