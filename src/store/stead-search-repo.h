/* stead-search-repo.h - the jump field's look through the farm. */
#pragma once

#include "store/stead-store.h"

G_BEGIN_DECLS

typedef enum
{
  STEAD_HIT_FLOCK,
  STEAD_HIT_PRODUCT,
  STEAD_HIT_ITEM,
  STEAD_HIT_LOT,
  STEAD_HIT_RECEIPT,
  STEAD_HIT_ASSET,
  STEAD_HIT_PERSON,
  STEAD_HIT_RECIPE,
  STEAD_HIT_KITCHEN,   /* a batch of the kitchen */
  STEAD_HIT_SALE,      /* a sale day */
  STEAD_HIT_CHECKLIST,
} SteadHitKind;

typedef struct
{
  SteadHitKind  kind;
  gint64        id;
  char         *title;
} SteadHit;

void stead_hit_free (SteadHit *hit);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadHit, stead_hit_free)

/* Names that contain @text, case and accents aside; best first, at most @limit. */
GPtrArray *stead_search_repo_find (SteadStore *store, const char *text, guint limit, GError **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
