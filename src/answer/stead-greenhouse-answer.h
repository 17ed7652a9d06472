/* stead-greenhouse-answer.h - "What does it cost to keep this bay warm?" */
#pragma once

#include "answer/stead-words.h"
#include "store/stead-crop-repo.h"
#include "store/stead-farm-repo.h"

G_BEGIN_DECLS

typedef struct
{
  double hdd_c;      /* heating °C-days over the house's base */
  double heat_kwh;
  double fuel;       /* liters, m³ or kWh */
  double cents;
} SteadGreenhouseMonth;

typedef struct
{
  SteadFarm            *farm;
  char                 *place;        /* its name */
  SteadGlasshouse      *house;        /* (nullable): nothing is entered */
  gboolean              has_year;     /* the usual year outdoors is entered */
  double                ua_w_c;       /* of cover and leaks */
  double                leak_frac;    /* share of the leaks in it */
  double                base_c;       /* of the heating degree days */
  SteadGreenhouseMonth  months[12];   /* January first; filled with a house and a year */
  SteadGreenhouseMonth  all;          /* the whole year */
  double                coldest_c;    /* usual lowest of the coldest month; NAN */
  double                loss_w;       /* in such a night; NAN */
  double                heater_min_w, heater_max_w;
  double                fan_m3_h;     /* one change of air a minute */
  double                inlet_m2;
  char                 *sentence;     /* markup */
  const char           *caution;      /* fire, fuel, carbon monoxide */
} SteadGreenhouseAnswer;

void stead_greenhouse_answer_free (SteadGreenhouseAnswer *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadGreenhouseAnswer, stead_greenhouse_answer_free)

/* @place_id: a bay */
SteadGreenhouseAnswer *stead_greenhouse_answer_new (SteadStore  *store,
                                                    gint64       place_id,
                                                    GError     **error) G_GNUC_WARN_UNUSED_RESULT;

/* (transfer full) (element-type SteadWhy) */
GPtrArray *stead_greenhouse_answer_whys (const SteadGreenhouseAnswer *self) G_GNUC_WARN_UNUSED_RESULT;

/* How a fuel is bought: "gallon" or "liter", "100 cubic feet" or "m³", "kWh". */
const char *stead_greenhouse_fuel_unit (SteadFuel       fuel,
                                        SteadUnitSystem units);

/* How many of the base units (liters, m³, kWh) one such unit holds. */
double stead_greenhouse_fuel_factor (SteadFuel       fuel,
                                     SteadUnitSystem units);

G_END_DECLS
