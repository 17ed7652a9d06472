/* stead-egg-repo.h - grading sheets and broken-out eggs. */
#pragma once

#include "core/stead-egg.h"
#include "store/stead-store.h"

G_BEGIN_DECLS

typedef struct
{
  gint64    id;                             /* 0: not saved yet */
  gint64    flock_id;
  SteadDay  day;
  gint32    counts[STEAD_N_EGG_CLASSES];    /* by SteadEggClass */
  gint32    blood, checked, dirty;          /* found with the light: blood spots, cracks, dirt */
  char     *note;                           /* (nullable) */
  gint64    person_id;
} SteadEggGrading;

void stead_egg_grading_free (SteadEggGrading *grading);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadEggGrading, stead_egg_grading_free)

typedef struct
{
  gint64    id;            /* 0: not saved yet */
  gint64    flock_id;
  SteadDay  day;
  double    egg_g;         /* whole, with its shell */
  double    albumen_mm;    /* height of the thick white */
  double    egg_c;         /* NAN: not measured */
  gint64    person_id;
} SteadEggSample;

/* Newest first, of a span of days. */
GPtrArray *stead_egg_repo_gradings       (SteadStore *store, gint64 flock_id, SteadDay from, SteadDay to, GError **error) G_GNUC_WARN_UNUSED_RESULT;
gboolean   stead_egg_repo_save_grading   (SteadStore *store, SteadEggGrading *grading, GError **error) G_GNUC_WARN_UNUSED_RESULT;
gboolean   stead_egg_repo_delete_grading (SteadStore *store, gint64 id, GError **error) G_GNUC_WARN_UNUSED_RESULT;
GArray    *stead_egg_repo_samples        (SteadStore *store, gint64 flock_id, SteadDay from, SteadDay to, GError **error) G_GNUC_WARN_UNUSED_RESULT;
gboolean   stead_egg_repo_save_sample    (SteadStore *store, SteadEggSample *sample, GError **error) G_GNUC_WARN_UNUSED_RESULT;
gboolean   stead_egg_repo_delete_sample  (SteadStore *store, gint64 id, GError **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
