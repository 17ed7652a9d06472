/* stead-demo-bay-private.h - the tomatoes of the demo farm: the house and the crops as they really are.
 *
 * stead-demo-bay.c reads them, lives through their days and burns the fuel;
 * stead-demo-house.c has the thermometer, stead-demo-crop.c what is done to a crop.
 */
#pragma once

#include "core/stead-typical-year.h"
#include "store/stead-crop-repo.h"
#include "store/stead-demo-writer-private.h"

G_BEGIN_DECLS

/* The last days are quiet, so that only what the description wants is out of place. */
#define STEAD_DEMO_CALM_DAYS 10

/* One crop as it really is. */
typedef struct
{
  char     *group;        /* of the description */
  gint64    id;           /* 0: not sown yet */
  gint64    routine_id;
  int       sown_at, set_out_at;
  int       ends_at;      /* -1: under way today */
  gint64    plants;
  double    need_c;       /* the true one */
  double    plant_kg;     /* the true one */
  int       pick_days;
  double    sum_c;
  int       ripe_at;      /* -1: not yet */
  int       picked_at;
  gint64    cost_cents;   /* of seed and fuel, not carried away by a lot yet */
} SteadDemoCrop;

struct _SteadDemoBay
{
  gsl_rng          *rng;
  GPtrArray        *crops;        /* of SteadDemoCrop */
  gint64            place_id;     /* of the thermometer; 0: the house is not built yet */
  int               begins_at;
  SteadTypicalYear  outdoors, inside;
  SteadGlasshouse   house;
  double            off_c;        /* what today's spell is off the usual day */
};

/* What the house was like on the writer's day; each day once. */
SteadDayTemps  stead_demo_live_house       (SteadDemoWriter *writer);
/* Reads the thermometer, as on most days. */
gboolean       stead_demo_live_thermometer (SteadDemoWriter *writer, const SteadDayTemps *temps, GError **error);

/* Each is an act of the writer's day. */
gboolean       stead_demo_sow              (SteadDemoWriter *writer, SteadDemoCrop *crop, GError **error);
gboolean       stead_demo_live_log         (SteadDemoWriter *writer, SteadDemoCrop *crop, GError **error);
gboolean       stead_demo_live_pick        (SteadDemoWriter *writer, SteadDemoCrop *crop, GError **error);
gboolean       stead_demo_live_sale        (SteadDemoWriter *writer, const SteadDemoCrop *crop, GError **error);

G_END_DECLS
