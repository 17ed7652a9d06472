/* stead-place-repo.h - the places of the farm: where animals and crops live, where food is made, kept and sold. */
#pragma once

#include "store/stead-store.h"

G_BEGIN_DECLS

typedef enum
{
  STEAD_PLACE_COOP,
  STEAD_PLACE_TANK,
  STEAD_PLACE_BAY,
  STEAD_PLACE_KITCHEN,
  STEAD_PLACE_STALL,
  STEAD_PLACE_STORE_ROOM,
} SteadPlaceKind;

typedef struct
{
  gint64          id;
  char           *name;
  SteadPlaceKind  kind;
  double          area_m2;   /* NAN: not given */
} SteadPlaceFacts;

void stead_place_facts_free (SteadPlaceFacts *place);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadPlaceFacts, stead_place_facts_free)

/* (transfer full): by name, empty if none; NULL only with @error */
GPtrArray *stead_place_repo_list   (SteadStore *store, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/**
 * stead_place_repo_save:
 * @place: an id of 0 inserts and fills in the id
 *
 * Names are unique and not empty.  Where a batch lives or lived, the kind stays what it is.
 */
gboolean   stead_place_repo_save   (SteadStore *store, SteadPlaceFacts *place, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* Refuses a place of which anything is written down: a batch, a lot, an instrument, a
 * reading, the climate.  What describes the place itself goes with it. */
gboolean   stead_place_repo_delete (SteadStore *store, gint64 place_id, GError **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
