/* stead-new-farm-facts.h - what the steps of a new farm write, each as one change. */
#pragma once

#include "store/stead-farm-repo.h"
#include "store/stead-product-repo.h"

G_BEGIN_DECLS

typedef struct
{
  const char      *name;
  SteadUnitSystem  units;
  const char      *currency;
  int              month, mday;   /* first day of the school year */
} SteadNewFarmFacts;

typedef struct
{
  const char *name;
  gint64      birds;
  SteadDay    came_on;
  int         age_weeks;          /* on that day */
  gint64      bird_cents;         /* for one bird */
  gint64      eggs_today;         /* -1: not counted */
} SteadNewFlockFacts;

typedef struct
{
  gint64      flock_id;           /* 0: none yet */
  const char *supplier;           /* not empty if something was bought */
  double      feed_kg;            /* 0: none bought */
  gint64      feed_cents;         /* all of it */
  gint64      cartons;            /* 0: none bought */
  gint64      carton_cents;       /* all of them */
  SteadPack   pack;
  gint64      price_cents;        /* -1: not set */
} SteadNewProductFacts;

gboolean stead_new_farm_save_settings (SteadStore *store, const SteadNewFarmFacts *facts, GError **error) G_GNUC_WARN_UNUSED_RESULT;
gboolean stead_new_farm_save_flock    (SteadStore *store, const SteadNewFlockFacts *facts, gint64 *out_flock_id,
                                       GError **error) G_GNUC_WARN_UNUSED_RESULT;
gboolean stead_new_farm_save_product  (SteadStore *store, const SteadNewProductFacts *facts, GError **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
