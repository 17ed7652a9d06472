/* stead-source.c - where the numbers of fish and water come from. */
#include "config.h"

#include "core/stead-source.h"

#include <glib/gi18n-lib.h>

#define FAO_589 "FAO Technical Paper 589, Small-scale aquaponic food production"

static const struct
{
  const char        *id;
  const char        *title;
  const char        *where;
  SteadSourceStatus  status;
} sources[STEAD_N_SOURCES] = {
  [STEAD_SOURCE_PRACTICE] =
    { "practice", NC_("source", "common practice, no published source"), NULL, STEAD_SOURCE_UNKNOWN },
  [STEAD_SOURCE_FAO_589_RANGES] =
    { "fao-589-ranges", FAO_589, "tables 3.1, 3.2", STEAD_SOURCE_READ },
  [STEAD_SOURCE_FAO_589_SPECIES] =
    { "fao-589-species", FAO_589, "table 7.1", STEAD_SOURCE_REMEMBERED },
  [STEAD_SOURCE_FAO_589_SALTS] =
    { "fao-589-salts", FAO_589, "3.5", STEAD_SOURCE_REMEMBERED },
  [STEAD_SOURCE_FAO_589_BEDS] =
    { "fao-589-beds", FAO_589, "component calculations", STEAD_SOURCE_READ },
  [STEAD_SOURCE_FAO_29] =
    { "fao-29", "FAO Irrigation and Drainage Paper 29", "table 1", STEAD_SOURCE_REMEMBERED },
  [STEAD_SOURCE_EPA_CHLORINE] =
    { "epa-chlorine", "US EPA, Ambient Water Quality Criteria for Chlorine (1984)", NULL,
      STEAD_SOURCE_REMEMBERED },
  [STEAD_SOURCE_FLORIDA_FA16] =
    { "florida-fa16", "University of Florida FA16, Ammonia in Aquatic Systems", "table 1",
      STEAD_SOURCE_READ },
  [STEAD_SOURCE_SRAC_282] =
    { "srac-282", "SRAC 282, Tank Culture of Tilapia", NULL, STEAD_SOURCE_READ },
  [STEAD_SOURCE_SRAC_282_RATES] =
    { "srac-282-rates", "SRAC 282, Tank Culture of Tilapia", "table 1", STEAD_SOURCE_REMEMBERED },
  [STEAD_SOURCE_SRAC_462] =
    { "srac-462", "SRAC 462, Nitrite in Fish Ponds", NULL, STEAD_SOURCE_READ },
  [STEAD_SOURCE_TANK_CULTURE] =
    { "tank-culture", "Tank culture of tilapia", "parts 3, 5", STEAD_SOURCE_READ },
  [STEAD_SOURCE_TILAPIA_TEMPERATURES] =
    { "tilapia-temperatures", "Temperature and low oxygen tolerances for tilapia", NULL,
      STEAD_SOURCE_READ },
  [STEAD_SOURCE_TILAPIA_CARCASS] =
    { "tilapia-carcass", "Carcass and fillet yield of Nile tilapia by body weight", NULL,
      STEAD_SOURCE_READ },
  [STEAD_SOURCE_CATFISH_HATCHERY] =
    { "catfish-hatchery", "Hatchery guide, feeding channel catfish", NULL, STEAD_SOURCE_READ },
  [STEAD_SOURCE_CATFISH_WINTER] =
    { "catfish-winter", "Texas A&M AgriLife Extension, winter feeding of channel catfish (2018)",
      NULL, STEAD_SOURCE_READ },
  [STEAD_SOURCE_CATFISH_WINTER_TRIAL] =
    { "catfish-winter-trial", "Winter feeding of channel catfish (1974)", NULL, STEAD_SOURCE_READ },
  [STEAD_SOURCE_FISH_FARMERS_PAGE] =
    { "fish-farmers-page", "Fish farmers' calculations (SGR, TGC)", NULL, STEAD_SOURCE_READ },
  [STEAD_SOURCE_UVI_SYSTEM] =
    { "uvi-system", "University of the Virgin Islands, aquaponic system", "system components",
      STEAD_SOURCE_READ },
  [STEAD_SOURCE_UVI_TRIAL] =
    { "uvi-trial", "Update on tilapia and vegetable production in the UVI aquaponic system",
      "abstract", STEAD_SOURCE_READ },
  [STEAD_SOURCE_YIELD_1994] =
    { "yield-1994", "Aquaculture 119 (1994) 299-310, processing yield of tilapia and catfish",
      "abstract", STEAD_SOURCE_READ },
  [STEAD_SOURCE_YIELD_TROUT] =
    { "yield-trout", "Processing yield of rainbow trout (2015)", "abstract", STEAD_SOURCE_READ },
};

static gboolean
is_source (SteadSource source)
{
  return (gsize) source < G_N_ELEMENTS (sources);
}

const char *
stead_source_id (SteadSource source)
{
  g_return_val_if_fail (is_source (source), "");
  return sources[source].id;
}

const char *
stead_source_title (SteadSource source)
{
  g_return_val_if_fail (is_source (source), "");
  if (sources[source].status == STEAD_SOURCE_UNKNOWN)
    return g_dpgettext2 (GETTEXT_PACKAGE, "source", sources[source].title);
  return sources[source].title;
}

const char *
stead_source_where (SteadSource source)
{
  g_return_val_if_fail (is_source (source), NULL);
  return sources[source].where;
}

SteadSourceStatus
stead_source_status (SteadSource source)
{
  g_return_val_if_fail (is_source (source), STEAD_SOURCE_UNKNOWN);
  return sources[source].status;
}
