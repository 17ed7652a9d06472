/* stead-source.h - where the numbers of fish and water come from.
 *
 * A table of the trade carries the source of each row, so that a warning can
 * say whose limit was passed.  Titles are those of the publications and stay as
 * they are; only the words for "no source" are translated.
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

typedef enum
{
  STEAD_SOURCE_PRACTICE,             /* what growers do; nothing could be read */
  STEAD_SOURCE_FAO_589_RANGES,       /* tables 3.1 and 3.2, ranges of water */
  STEAD_SOURCE_FAO_589_SPECIES,      /* table 7.1, fish by species */
  STEAD_SOURCE_FAO_589_SALTS,        /* water sources, salinity */
  STEAD_SOURCE_FAO_589_BEDS,         /* component calculations */
  STEAD_SOURCE_FAO_29,               /* table 1, salts in irrigation water */
  STEAD_SOURCE_EPA_CHLORINE,         /* water quality criteria for chlorine */
  STEAD_SOURCE_FLORIDA_FA16,         /* ammonia in aquatic systems */
  STEAD_SOURCE_SRAC_282,             /* tank culture of tilapia */
  STEAD_SOURCE_SRAC_282_RATES,       /* its table of rates by size */
  STEAD_SOURCE_SRAC_462,             /* nitrite in fish ponds */
  STEAD_SOURCE_TANK_CULTURE,         /* tank culture of tilapia, parts 3 and 5 */
  STEAD_SOURCE_TILAPIA_TEMPERATURES, /* temperature tolerances of tilapia */
  STEAD_SOURCE_TILAPIA_CARCASS,      /* carcass and fillet yield of Nile tilapia */
  STEAD_SOURCE_CATFISH_HATCHERY,     /* hatchery guide, feeding channel catfish */
  STEAD_SOURCE_CATFISH_WINTER,       /* extension text, winter feeding */
  STEAD_SOURCE_CATFISH_WINTER_TRIAL, /* winter feeding of channel catfish, 1974 */
  STEAD_SOURCE_FISH_FARMERS_PAGE,    /* fish farmers' calculations: SGR, TGC */
  STEAD_SOURCE_UVI_SYSTEM,           /* aquaponic system, components */
  STEAD_SOURCE_UVI_TRIAL,            /* tilapia and vegetable production, update */
  STEAD_SOURCE_YIELD_1994,           /* processing yield of tilapia and catfish */
  STEAD_SOURCE_YIELD_TROUT,          /* processing yield of rainbow trout */
} SteadSource;

#define STEAD_N_SOURCES (STEAD_SOURCE_YIELD_TROUT + 1)

/* How well a number stands. */
typedef enum
{
  STEAD_SOURCE_READ,       /* it stood in a text that was read */
  STEAD_SOURCE_REMEMBERED, /* the publication is known, its text was not at hand */
  STEAD_SOURCE_UNKNOWN,    /* common practice */
} SteadSourceStatus;

/**
 * stead_source_id: stable, for a file or a test: "fao-589-ranges"
 * stead_source_title: what a person reads; translated where it is no title
 * stead_source_where: (nullable): part of the publication, or %NULL
 * stead_source_status: how well it stands
 */
const char *stead_source_id (SteadSource source);
const char *stead_source_title (SteadSource source);
const char *stead_source_where (SteadSource source);
SteadSourceStatus stead_source_status (SteadSource source);

G_END_DECLS
