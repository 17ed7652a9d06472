/* stead-water-repo.h - waters (a tank, a hydroponic or an aquaponic loop), the tanks
 * in them, and the test sheets.
 *
 * A water is tested as one.  Concentrations are mg/L (= ppm): total ammonia as
 * nitrogen; nitrite as NO2 and nitrate as NO3, as kits print them; alkalinity and
 * hardness as CaCO3.  Temperatures are °C.
 */
#pragma once

#include "core/stead-water-limit.h"
#include "store/stead-place-repo.h"
#include "store/stead-store.h"

G_BEGIN_DECLS

typedef enum
{
  STEAD_WATER_TANK,
  STEAD_WATER_HYDROPONIC,
  STEAD_WATER_AQUAPONIC,
} SteadWaterKind;

typedef struct
{
  gint64          id;             /* 0: not saved yet */
  char           *name;           /* unique among waters, not empty */
  SteadWaterKind  kind;
  double          volume_l;       /* of all that goes round; NAN: the sum of its tanks */
  double          salinity_g_l;   /* 0: fresh */
  int             test_days;      /* days from test to test, 1 to 365 */
  SteadDay        ended_on;       /* STEAD_DAY_NONE: in use */
  char           *note;           /* (nullable) */
} SteadWater;

SteadWater *stead_water_new  (void) G_GNUC_WARN_UNUSED_RESULT;  /* fresh, tested weekly */
void        stead_water_free (SteadWater *water);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadWater, stead_water_free)

/* @ended: also those no longer in use.  In use first, then by name. */
GPtrArray  *stead_water_repo_list   (SteadStore *store, gboolean ended, GError **error) G_GNUC_WARN_UNUSED_RESULT;
SteadWater *stead_water_repo_get    (SteadStore *store, gint64 id, GError **error) G_GNUC_WARN_UNUSED_RESULT;
/* An id of 0 inserts and fills in the id. */
gboolean    stead_water_repo_save   (SteadStore *store, SteadWater *water, GError **error) G_GNUC_WARN_UNUSED_RESULT;
/* Takes its tests and routines along; places in it stand in no water afterward. */
gboolean    stead_water_repo_delete (SteadStore *store, gint64 id, GError **error) G_GNUC_WARN_UNUSED_RESULT;
/* Litres that go round: as entered, else the sum of its tanks; NAN if neither is known. */
gboolean    stead_water_repo_volume (SteadStore *store, const SteadWater *water, double *out_l,
                                     GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* Places and what they stand in; 0: none. */
gint64      stead_water_repo_of_place  (SteadStore *store, gint64 place_id, GError **error);  /* -1 with @error */
gboolean    stead_water_repo_set_place (SteadStore *store, gint64 place_id, gint64 water_id, GError **error) G_GNUC_WARN_UNUSED_RESULT;
/* (element-type SteadPlaceFacts): tanks, bays and beds that stand in it, by name. */
GPtrArray  *stead_water_repo_places    (SteadStore *store, gint64 water_id, GError **error) G_GNUC_WARN_UNUSED_RESULT;
/* (element-type SteadBatch): batches under way in places of this water, fish first. */
GPtrArray  *stead_water_repo_batches   (SteadStore *store, gint64 water_id, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* One group of fish that swims in a water. */
typedef struct
{
  gint64  batch_id;
  char   *species;        /* an id of core's table, or the farm's own word */
  double  mean_g;         /* of one fish at the last weighing, else when stocked */
  double  protein_frac;   /* of its feed; NAN: not said */
  double  feed_kg;        /* given in the days that were asked for */
} SteadWaterFish;

void        stead_water_fish_free  (SteadWaterFish *fish);
/* (element-type SteadWaterFish): groups under way, with their feed from @from to @to. */
GPtrArray  *stead_water_repo_fish  (SteadStore *store, gint64 water_id, SteadDay from, SteadDay to,
                                    GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* --- tanks --------------------------------------------------------------------- */

typedef enum
{
  STEAD_TANK_ROUND,
  STEAD_TANK_BOX,
  STEAD_TANK_CONE,    /* a cylinder over a cone */
  STEAD_TANK_OTHER,   /* only its volume is known */
} SteadTankShape;

/* Measures are of the water, not of the wall; those that the shape does not have are NAN. */
typedef struct
{
  gint64          place_id;     /* 0: not saved yet */
  char           *name;         /* of the place: unique, not empty */
  SteadTankShape  shape;
  double          length_m, width_m, diameter_m, depth_m, cone_m;
  double          volume_l;     /* typed for STEAD_TANK_OTHER, else worked out when read */
  double          flow_l_min;   /* through the tank; NAN: not known */
  gint64          water_id;     /* 0: none */
} SteadTank;

SteadTank *stead_tank_new  (void) G_GNUC_WARN_UNUSED_RESULT;   /* round, measures NAN */
void       stead_tank_free (SteadTank *tank);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadTank, stead_tank_free)

/* Litres by its shape and measures; NAN while one is missing. */
double     stead_tank_volume_l  (const SteadTank *tank);

GPtrArray *stead_tank_repo_list   (SteadStore *store, GError **error) G_GNUC_WARN_UNUSED_RESULT;
/* Those that stand in one water. */
GPtrArray *stead_tank_repo_list_of (SteadStore *store, gint64 water_id, GError **error) G_GNUC_WARN_UNUSED_RESULT;
SteadTank *stead_tank_repo_get    (SteadStore *store, gint64 place_id, GError **error) G_GNUC_WARN_UNUSED_RESULT;
/* Saves the place, the tank and its water in one.  With the id of a place that is no
 * tank yet it becomes one. */
gboolean   stead_tank_repo_save   (SteadStore *store, SteadTank *tank, GError **error) G_GNUC_WARN_UNUSED_RESULT;
/* Takes the place along; refused while a batch lives or lived there. */
gboolean   stead_tank_repo_delete (SteadStore *store, gint64 place_id, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* --- tests ----------------------------------------------------------------------- */

/* In the order of the columns of the file. */
typedef enum
{
  STEAD_READING_TEMPERATURE,
  STEAD_READING_PH,
  STEAD_READING_TAN,            /* as N */
  STEAD_READING_NITRITE,        /* as NO2 */
  STEAD_READING_NITRATE,        /* as NO3 */
  STEAD_READING_OXYGEN,
  STEAD_READING_ALKALINITY,     /* as CaCO3 */
  STEAD_READING_HARDNESS,       /* as CaCO3 */
  STEAD_READING_CONDUCTIVITY,   /* µS/cm */
  STEAD_READING_CHLORINE,
  STEAD_READING_CHLORIDE,
} SteadReading;

#define STEAD_N_READINGS (STEAD_READING_CHLORIDE + 1)

typedef struct
{
  gint64    id;                         /* 0: not saved yet */
  gint64    water_id;
  SteadDay  day;
  int       minute;                     /* after midnight; -1: not said */
  double    values[STEAD_N_READINGS];   /* NAN: not measured */
  char     *action;                     /* (nullable): what was done about it */
  char     *note;                       /* (nullable) */
  gint64    person_id;
} SteadWaterTest;

SteadWaterTest *stead_water_test_new  (void) G_GNUC_WARN_UNUSED_RESULT;  /* nothing measured */
SteadWaterTest *stead_water_test_copy (const SteadWaterTest *test) G_GNUC_WARN_UNUSED_RESULT;
void            stead_water_test_free (SteadWaterTest *test);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadWaterTest, stead_water_test_free)

/* What core calls the reading. */
SteadWaterMeasure stead_reading_measure (SteadReading reading);
/* (transfer none): "Temperature", "Ammonia (TAN)"; in the person's language. */
const char *stead_reading_name          (SteadReading reading);
/* The range that a reading can have at all. */
void       stead_reading_range          (SteadReading reading, double *out_min, double *out_max);
/* Refuses a reading that no water has, with the range and its reason; NAN is none. */
gboolean   stead_reading_check          (SteadReading reading, double value, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/**
 * stead_water_test_check:
 * @test: what was measured
 * @today: no test is of a later day
 * @out_reading: (out) (optional): the reading at fault, %STEAD_N_READINGS if it is none of them
 *
 * Refused, with the range and its reason: what no water can read (pH outside 0 to
 * 14, below 0, oxygen over three times saturation, a meter's end of scale).  What is
 * only unsafe is kept.  Also a test of a day to come, and one that measured nothing.
 */
gboolean   stead_water_test_check      (const SteadWaterTest *test, SteadDay today, SteadReading *out_reading,
                                        GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* Of a span of days, oldest first; for the chart and the table. */
GPtrArray *stead_water_test_repo_list   (SteadStore *store, gint64 water_id, SteadDay from, SteadDay to,
                                         GError **error) G_GNUC_WARN_UNUSED_RESULT;
SteadWaterTest *stead_water_test_repo_get (SteadStore *store, gint64 id, GError **error) G_GNUC_WARN_UNUSED_RESULT;
/* The newest test, or the newest that measured @reading; NULL without @error if there is none. */
SteadWaterTest *stead_water_test_repo_last (SteadStore *store, gint64 water_id, GError **error) G_GNUC_WARN_UNUSED_RESULT;
SteadWaterTest *stead_water_test_repo_last_of (SteadStore *store, gint64 water_id, SteadReading reading,
                                               GError **error) G_GNUC_WARN_UNUSED_RESULT;
/* An id of 0 inserts and fills in the id. */
gboolean   stead_water_test_repo_save   (SteadStore *store, SteadWaterTest *test, GError **error) G_GNUC_WARN_UNUSED_RESULT;
gboolean   stead_water_test_repo_delete (SteadStore *store, gint64 id, GError **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
