/* stead-place-air-private.h - what the parts of the answer about a cooler share. */
#pragma once

#include "answer/stead-check-days-answer.h"

G_BEGIN_DECLS

/* The row that food in the cold is held to; its air has to be no warmer. */
#define STEAD_PLACE_COLD_ROW "hold-cold-41"

/* Whether a reading is above what the place may have. */
gboolean   stead_place_is_warm   (const SteadPlaceAirAnswer *self,
                                  const SteadShown          *shown);

/**
 * stead_place_warm_spells:
 * @dones: of SteadDone, what was done about the readings of the place
 * @people: of SteadPerson
 *
 * Returns: (transfer full): of SteadWarmSpell, the oldest first
 */
GPtrArray *stead_place_warm_spells (const SteadPlaceAirAnswer *self,
                                    const GPtrArray           *dones,
                                    const GPtrArray           *people) G_GNUC_WARN_UNUSED_RESULT;

/* "By the line through 12 readings …", and how many days that leaves; with a trend alone. */
char      *stead_place_air_worked  (const SteadPlaceAirAnswer *self) G_GNUC_WARN_UNUSED_RESULT;

/* (nullable): the initials of one of @people */
char      *stead_place_initials    (const GPtrArray           *people,
                                    gint64                     person_id) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
