/* stead-husbandry.h - what the program assumes until a farm's own records say more.
 *
 * Each value lies inside the range of a handbook; a handbook's range is a
 * planning value, never a promise.
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

typedef enum
{
  STEAD_DEFAULT_LAY_ONSET_AGE,        /* weeks */
  STEAD_DEFAULT_LAY_ONSET_TO_PEAK,    /* weeks */
  STEAD_DEFAULT_LAY_PEAK,             /* percent hen-day */
  STEAD_DEFAULT_LAY_AFTER_YEAR,       /* percent hen-day */
  STEAD_DEFAULT_LAY_DECLINE,          /* points a week after the peak */
  STEAD_DEFAULT_LAYER_FEED,           /* g a hen and day */
  STEAD_DEFAULT_LAYER_FEED_PER_DOZEN, /* kg, a year from the onset of lay */
  STEAD_DEFAULT_HEN_WATER,            /* mL a hen and day */
  STEAD_DEFAULT_HEN_LIGHT,            /* hours a day */
  STEAD_DEFAULT_HEN_FLOOR,            /* m² a hen */
  STEAD_DEFAULT_HENS_PER_BOX,         /* count */
  STEAD_DEFAULT_LAYING_DUCK_EGGS,     /* a year */
  STEAD_DEFAULT_EGG_SHELL,            /* percent of the egg */
  STEAD_DEFAULT_TOMATO_PLANTS,        /* plants on a m² of bed in a greenhouse */
  STEAD_DEFAULT_TOMATO_RIPE,          /* °C-days over 10 °C, transplant to first ripe fruit */
  STEAD_DEFAULT_TOMATO_DEFICIT,       /* kPa, vapor pressure deficit aimed at */
  STEAD_DEFAULT_TOMATO_LIGHT,         /* mol/m² a day */
  STEAD_DEFAULT_TOMATO_NITROGEN,      /* ppm until the first clusters */
  STEAD_DEFAULT_TOMATO_YIELD,         /* kg a plant and year, two crops in a greenhouse */
  STEAD_DEFAULT_EWE_HAY,              /* percent of the body weight a day */
  STEAD_DEFAULT_PEN_SHELTER,          /* m² for a grown sheep or goat */
  STEAD_DEFAULT_TROUT_TGC,            /* growth coefficient, 100-fold */
  STEAD_DEFAULT_TILAPIA_FRY_FEED,     /* percent of the body weight a day, fry of 30 days */
  STEAD_DEFAULT_TILAPIA_MARKET_FEED,  /* percent of the body weight a day */
  STEAD_DEFAULT_CATFISH_SUMMER_FEED,  /* percent of the body weight a day, 100 g fish */
  STEAD_DEFAULT_TILAPIA_FCR,          /* feed for one of gain */
  STEAD_DEFAULT_TILAPIA_SURVIVAL,     /* percent, of the stage of growth */
  STEAD_DEFAULT_TILAPIA_TEMPERATURE,  /* °C of the water */
  STEAD_DEFAULT_TILAPIA_FILLET,       /* percent of the live weight */
  STEAD_DEFAULT_FISH_FASTING,         /* days without feed before sale */
  STEAD_DEFAULT_TANK_DENSITY,         /* kg/m³ in a tank without pure oxygen */
  STEAD_DEFAULT_STANDING_CHLORIDE,    /* mg/L kept against nitrite */
} SteadHusbandryDefault;

/**
 * stead_husbandry_default:
 *
 * The values about lay follow from the default curve (stead-lay.h), those about
 * fish from the species and the feeding table (stead-fish.h, stead-fish-feed.h),
 * so that a sentence and a chart never disagree.
 *
 * Returns: the setting, in the unit beside its name above
 */
double stead_husbandry_default (SteadHusbandryDefault which);

G_END_DECLS
