/* stead-crop-repo.h - crops, and the thermometers that they follow.
 *
 * A crop is a batch of kind "crop" in a bay, a bed or a field.  Its log tells
 * plants lost, work and notes; what is picked stands in stead-harvest-repo.h.
 */
#pragma once

#include "core/stead-fuel.h"
#include "store/stead-batch-repo.h"

G_BEGIN_DECLS

typedef enum
{
  STEAD_GROW_SOIL,
  STEAD_GROW_HYDROPONIC,
  STEAD_GROW_AQUAPONIC,
} SteadGrowSystem;

/* How a day's warmth is counted; the words of the file. */
typedef enum
{
  STEAD_CROP_AVERAGE,
  STEAD_CROP_SUBSTITUTE,
  STEAD_CROP_CEILING,
} SteadCropMethod;

typedef struct
{
  SteadBatch       batch;
  char            *crop;            /* "tomato", or the farm's own word */
  char            *variety;         /* (nullable) */
  SteadGrowSystem  system;
  SteadDay         sown_on;         /* STEAD_DAY_NONE: plants were bought */
  SteadDay         set_out_on;      /* STEAD_DAY_NONE: not yet, or sown in place */
  SteadDay         first_ripe_on;   /* STEAD_DAY_NONE: not yet */
  gint64           plants;
  double           area_m2;         /* NAN: not said */
  gint64           cost_cents;      /* of seed or plants bought for it, outside the store room */
  gboolean         is_gift;
  double           base_c, upper_c; /* of degree days; @upper_c NAN: none */
  SteadCropMethod  method;
  double           ripe_need;       /* degree days (C) from setting out to the first ripe fruit */
  double           yield_kg;        /* expected of one plant over the crop */
  double           pick_weeks;      /* from the first ripe fruit to the last */
  gint64           climate_id;      /* place of the thermometer it follows; 0: outdoors */
} SteadCrop;

SteadCrop *stead_crop_new  (void) G_GNUC_WARN_UNUSED_RESULT;   /* tomatoes in soil */
void       stead_crop_free (SteadCrop *crop);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadCrop, stead_crop_free)

GPtrArray *stead_crop_repo_list   (SteadStore *store, gboolean ended, GError **error) G_GNUC_WARN_UNUSED_RESULT;
SteadCrop *stead_crop_repo_get    (SteadStore *store, gint64 id, GError **error) G_GNUC_WARN_UNUSED_RESULT;
gboolean   stead_crop_repo_save   (SteadStore *store, SteadCrop *crop, GError **error) G_GNUC_WARN_UNUSED_RESULT;
gboolean   stead_crop_repo_delete (SteadStore *store, gint64 id, GError **error) G_GNUC_WARN_UNUSED_RESULT;

typedef struct
{
  gint64    id;          /* 0: not saved yet */
  gint64    crop_id;
  SteadDay  day;
  gint32    lost;        /* plants */
  char     *reason;      /* (nullable) */
  char     *note;        /* (nullable): what was done */
  gint64    person_id;
  gboolean  left_out;
} SteadCropEntry;

void stead_crop_entry_free (SteadCropEntry *entry);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadCropEntry, stead_crop_entry_free)

gboolean   stead_crop_repo_save_entry   (SteadStore *store, SteadCropEntry *entry, GError **error) G_GNUC_WARN_UNUSED_RESULT;
gboolean   stead_crop_repo_delete_entry (SteadStore *store, gint64 entry_id, GError **error) G_GNUC_WARN_UNUSED_RESULT;
GPtrArray *stead_crop_repo_entries      (SteadStore *store, gint64 crop_id, SteadDay from, SteadDay to,
                                         GError **error) G_GNUC_WARN_UNUSED_RESULT;
/* Plants that stand at the start of @day; -1 with @error. */
gint64     stead_crop_repo_plants       (SteadStore *store, gint64 crop_id, SteadDay day, GError **error);
/* Feed, kg, that fish on the crop's own water were given from @from to @to; 0 without such
 * fish.  Without a water of its own: *out NAN. */
gboolean   stead_crop_repo_fish_feed    (SteadStore *store, gint64 crop_id, SteadDay from, SteadDay to, double *out,
                                         GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* --- thermometers ------------------------------------------------------------------- */

typedef struct
{
  gint64    id;         /* 0: not saved yet */
  gint64    place_id;   /* 0: outdoors */
  SteadDay  day;
  double    min_c, max_c;
  double    rh_frac;    /* mean of the day, 0 to 1; NAN */
  double    light_mol;  /* daily light integral, mol/m2; NAN */
  char     *note;
  gint64    person_id;
} SteadClimateDay;

void stead_climate_day_free (SteadClimateDay *day);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadClimateDay, stead_climate_day_free)

/* Oldest first; a day without a reading is not there. */
GPtrArray *stead_climate_repo_list   (SteadStore *store, gint64 place_id, SteadDay from, SteadDay to,
                                      GError **error) G_GNUC_WARN_UNUSED_RESULT;
/* One row a day and place: a second one of that day widens it (min of mins, max of
 * maxes) if @merge, else replaces it.  Refused beyond -60 to 70 °C, min above max, days to come. */
gboolean   stead_climate_day_check   (const SteadClimateDay *day, SteadDay today, GError **error) G_GNUC_WARN_UNUSED_RESULT;
gboolean   stead_climate_repo_save   (SteadStore *store, SteadClimateDay *day, gboolean merge,
                                      GError **error) G_GNUC_WARN_UNUSED_RESULT;
gboolean   stead_climate_repo_delete (SteadStore *store, gint64 id, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* The usual year: 12 months from January; NAN where not entered. */
typedef struct
{
  double min_c[12], max_c[12];
} SteadUsualYear;

gboolean   stead_climate_repo_usual     (SteadStore *store, gint64 place_id, SteadUsualYear *out,
                                         GError **error) G_GNUC_WARN_UNUSED_RESULT;
gboolean   stead_climate_repo_set_usual (SteadStore *store, gint64 place_id, const SteadUsualYear *year,
                                         GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* --- what keeps a bay warm -------------------------------------------------------------- */

typedef struct
{
  gint64         place_id;
  double         cover_m2;         /* outer skin */
  double         u_w_m2_k;
  double         volume_m3;
  double         changes_hour;
  double         inside_c;         /* at night */
  double         sun_lift_c;       /* by which the sun alone warms it, mean of day and night */
  SteadFuel      fuel;
  double         efficiency_frac;
  double         fuel_cents;       /* for a liter, m³ or kWh, as stead_fuel_content_kwh() counts */
} SteadGlasshouse;

/* NULL without @error if nothing is entered for the place. */
SteadGlasshouse *stead_glasshouse_repo_get  (SteadStore *store, gint64 place_id, GError **error) G_GNUC_WARN_UNUSED_RESULT;
gboolean         stead_glasshouse_repo_save (SteadStore *store, const SteadGlasshouse *house, GError **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
