/* stead-crop-answer.h - "How is this crop doing, when can it be picked, and how much?" */
#pragma once

#include "answer/stead-words.h"
#include "core/stead-band.h"
#include "core/stead-crop-kind.h"
#include "core/stead-harvest-series.h"
#include "core/stead-ripening.h"
#include "core/stead-vapor.h"
#include "store/stead-crop-repo.h"
#include "store/stead-farm-repo.h"
#include "store/stead-harvest-repo.h"

G_BEGIN_DECLS

/* Days of readings that fruit set, air and light are judged by. */
#define STEAD_CROP_RECENT_DAYS 7

typedef struct
{
  SteadFarm               *farm;
  SteadCrop               *crop;
  const SteadCropDefaults *usual;        /* (nullable): a crop that the program knows */
  char                    *thermometer;  /* where it hangs; "outdoors" */
  gint64                   plants;       /* that stand today */
  gint64                   lost;         /* since the start */
  double                   density_m2;   /* plants on a m²; NAN: area not known */

  /* Warmth */
  SteadDegreeDayRule       rule;
  SteadDay                 from;         /* degree days count from here; STEAD_DAY_NONE: not set out */
  double                   sum_c;        /* °C-days that were read */
  double                   assumed_c;    /* put in for gaps */
  gsize                    n_read, n_gaps;
  SteadDay                 last_read;    /* STEAD_DAY_NONE: never */
  SteadLearned             learned;      /* °C-days to the first ripe fruit */
  SteadBand                need_c;       /* the same with its band */
  gboolean                 has_ripe;     /* a day can be named */
  SteadRipeDate            ripe;         /* if so */
  char                    *no_ripe;      /* (nullable): why not, and what to enter */
  SteadDay                 began_on;     /* first ripe fruit or first pick; STEAD_DAY_NONE: not yet */
  double                   began_need_c; /* °C-days up to then; NAN */

  /* Pickings, kg */
  SteadHarvestTotals       picked;
  guint                    n_picks;
  SteadDay                 first_pick;   /* STEAD_DAY_NONE: none */
  SteadDay                 last_pick;    /* STEAD_DAY_NONE: none */
  double                   plan_kg;      /* the whole crop: the plan, or plants × yield */
  gboolean                 plan_entered; /* it is the plan's */
  double                   due_kg;       /* of that, expected up to today; NAN: no start known */
  double                   plant_kg;     /* picked of one plant set out */
  double                   m2_kg;        /* picked of a m²; NAN */
  SteadBand                factor;       /* what the pickings so far say of the rest */
  SteadBand                next_week;    /* the seven days from tomorrow; NAN: not known */
  SteadBand                rest_kg;      /* from tomorrow to the end; NAN */
  SteadBand                total_kg;     /* picked and rest */
  SteadDay                 ends_on;      /* last day of picking expected; STEAD_DAY_NONE */

  /* Air and light of the last days */
  int                      set_days;     /* with both readings; 0 for other crops than tomatoes */
  int                      set_poor;     /* of them, too hot or too cold */
  int                      set_hot;      /* of the poor ones, too hot */
  double                   deficit_kpa;  /* vapor pressure deficit, last day that tells; NAN */
  SteadDay                 deficit_day;
  double                   deficit_c, deficit_rh_frac;         /* mean temperature and humidity of that day */
  double                   light_mol;    /* mean of the days that were read; NAN */
  double                   light_read[STEAD_CROP_RECENT_DAYS]; /* those days, oldest first */
  int                      n_light;

  /* Aquaponics */
  double                   feed_g_day;   /* that fish on the same water got, mean of two weeks; NAN */
  double                   bed_min_m2, bed_max_m2;       /* that it feeds */
  double                   feed_plants_min, feed_plants_max;
  char                    *feeding;      /* (nullable) markup: what that means for this crop */

  GArray                  *weeks;        /* of SteadPickWeek */
  SteadHarvestSeries       series;       /* points into it */

  char                    *sentence;     /* markup */
  char                    *caution;      /* (nullable) plain */
  const char              *rule_text;    /* what always holds */
} SteadCropAnswer;

void stead_crop_answer_free (SteadCropAnswer *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadCropAnswer, stead_crop_answer_free)

SteadCropAnswer *stead_crop_answer_new (SteadStore  *store,
                                        gint64       crop_id,
                                        GError     **error) G_GNUC_WARN_UNUSED_RESULT;

/* (transfer full) (element-type SteadWhy) */
GPtrArray *stead_crop_answer_whys (const SteadCropAnswer *self) G_GNUC_WARN_UNUSED_RESULT;

/* "512 °F-days": degree days as the farm reads them. */
char *stead_crop_warmth_text (double          sum_c,
                              SteadUnitSystem units) G_GNUC_WARN_UNUSED_RESULT;

/* "12 lb": kg as the farm reads them. */
char *stead_crop_kg_text (double          kg,
                          SteadUnitSystem units) G_GNUC_WARN_UNUSED_RESULT;

/* For the undo menu: "2 plants lost on Mar 3". */
char *stead_crop_entry_name (const SteadCropEntry *entry) G_GNUC_WARN_UNUSED_RESULT;

/* For the undo menu: "Temperatures of Mar 3". */
char *stead_crop_climate_name (const SteadClimateDay *day) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
