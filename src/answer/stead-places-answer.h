/* stead-places-answer.h - "What places does the farm have, and what is there?" */
#pragma once

#include "answer/stead-words.h"
#include "store/stead-place-repo.h"

G_BEGIN_DECLS

typedef struct
{
  SteadPlaceFacts *place;
  char            *floor;   /* "120 sq ft"; empty: not said */
  char            *there;   /* "Brown hens and 3 lots"; empty: nothing */
} SteadPlaceRow;

typedef struct
{
  GPtrArray *rows;          /* of SteadPlaceRow, by name */
  gboolean   keeps_food;    /* one of them does */
  char      *sentence;      /* markup */
} SteadPlacesAnswer;

void stead_place_row_free     (SteadPlaceRow *row);
void stead_places_answer_free (SteadPlacesAnswer *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadPlacesAnswer, stead_places_answer_free)

/**
 * stead_places_answer_new:
 * @store: an open farm
 *
 * Batches under way, lots on hand and instruments in use are said to be there.
 *
 * Returns: (transfer full): the answer, or %NULL
 */
SteadPlacesAnswer *stead_places_answer_new (SteadStore  *store,
                                            GError     **error) G_GNUC_WARN_UNUSED_RESULT;

/* The kind as a person reads it: "Kitchen".  (transfer none) */
const char *stead_place_kind_label (SteadPlaceKind kind);

/* Whether food is kept, made or sold there, so that its air is to be watched. */
gboolean    stead_place_keeps_food (const SteadPlaceFacts *place);

G_END_DECLS
