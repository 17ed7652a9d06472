/* stead-fish.c - the fish that a school farm keeps, as data. */
#include "config.h"

#include "core/stead-core-error.h"
#include "core/stead-fish.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#define F(fahrenheit) (((fahrenheit) - 32) * (5.0 / 9))

/* Stages without a read survival follow tilapia, as practice has it. */
static const SteadFishKind species_table[STEAD_N_FISH_SPECIES] = {
  [STEAD_FISH_TILAPIA] = {
    .id = "tilapia",
    .best_min_c = 26, .best_max_c = 30, .optimum_c = 28, .growth_min_c = 15,
    .temperature_source = STEAD_SOURCE_TILAPIA_TEMPERATURES,
    /* 50 to 900 g in 24 weeks, at 27 °C as assumed: 0.1316. */
    .tgc_x100 = 0.13, .tgc_source = STEAD_SOURCE_UVI_SYSTEM,
    /* 1.7 of the Nile strain, 1.8 of the red one. */
    .fcr = 1.7, .fcr_source = STEAD_SOURCE_UVI_TRIAL,
    /* Part 3 feeds fish of this size as those of the market. */
    .market_g = 680,
    .stages = {
      [STEAD_FISH_FRY] = { 0.02, 1, 0.80, STEAD_SOURCE_SRAC_282 },
      [STEAD_FISH_FINGERLING] = { 1, 50, 0.90, STEAD_SOURCE_PRACTICE },
      /* The weaker of the two strains: 89.9 %, the other 98.3 %. */
      [STEAD_FISH_GROWOUT] = { 50, 900, 0.90, STEAD_SOURCE_UVI_TRIAL },
    },
  },
  [STEAD_FISH_CHANNEL_CATFISH] = {
    .id = "channel_catfish",
    .best_min_c = F (80), .best_max_c = F (86), .optimum_c = 28, .growth_min_c = F (70),
    .temperature_source = STEAD_SOURCE_CATFISH_HATCHERY,
    /* 45 g to about 500 g in some 200 warm days of 26 °C. */
    .tgc_x100 = 0.08, .tgc_source = STEAD_SOURCE_PRACTICE,
    .fcr = 2, .fcr_source = STEAD_SOURCE_PRACTICE,
    .market_g = 600,
    .stages = {
      [STEAD_FISH_FRY] = { 0.02, 1, 0.80, STEAD_SOURCE_PRACTICE },
      [STEAD_FISH_FINGERLING] = { 1, 50, 0.90, STEAD_SOURCE_PRACTICE },
      [STEAD_FISH_GROWOUT] = { 50, 1000, 0.90, STEAD_SOURCE_PRACTICE },
    },
  },
  [STEAD_FISH_RAINBOW_TROUT] = {
    .id = "rainbow_trout", .cold = TRUE,
    .best_min_c = 14, .best_max_c = 16, .optimum_c = 16, .growth_min_c = 5,
    .temperature_source = STEAD_SOURCE_FAO_589_SPECIES,
    /* The middle of 0.13 to 0.20. */
    .tgc_x100 = 0.165, .tgc_source = STEAD_SOURCE_FISH_FARMERS_PAGE,
    .fcr = 1.2, .fcr_source = STEAD_SOURCE_PRACTICE,
    .market_g = 350,
    .stages = {
      [STEAD_FISH_FRY] = { 0.1, 2, 0.80, STEAD_SOURCE_PRACTICE },
      [STEAD_FISH_FINGERLING] = { 2, 50, 0.90, STEAD_SOURCE_PRACTICE },
      [STEAD_FISH_GROWOUT] = { 50, 1000, 0.90, STEAD_SOURCE_PRACTICE },
    },
  },
};

static const SteadFishYield yields[] = {
  { STEAD_FISH_TILAPIA, STEAD_FISH_CUT_HEADED, 0.510, 600, 600, STEAD_SOURCE_YIELD_1994 },
  { STEAD_FISH_TILAPIA, STEAD_FISH_CUT_FILLET, 0.254, 600, 600, STEAD_SOURCE_YIELD_1994 },
  /* 36.5 to 36.8 %. */
  { STEAD_FISH_TILAPIA, STEAD_FISH_CUT_HAND_FILLET, 0.3665, 300, 500, STEAD_SOURCE_TILAPIA_CARCASS },
  { STEAD_FISH_CHANNEL_CATFISH, STEAD_FISH_CUT_HEADED, 0.606, 600, 600, STEAD_SOURCE_YIELD_1994 },
  { STEAD_FISH_CHANNEL_CATFISH, STEAD_FISH_CUT_FILLET, 0.309, 600, 600, STEAD_SOURCE_YIELD_1994 },
  { STEAD_FISH_RAINBOW_TROUT, STEAD_FISH_CUT_GUTTED, 0.830, 300, 370, STEAD_SOURCE_YIELD_TROUT },
};

static gboolean
is_species (SteadFishSpecies species)
{
  return (gsize) species < G_N_ELEMENTS (species_table);
}

const SteadFishKind *
stead_fish_kind (SteadFishSpecies species)
{
  g_return_val_if_fail (is_species (species), &species_table[STEAD_FISH_TILAPIA]);
  return &species_table[species];
}

gboolean
stead_fish_species_from_id (const char       *id,
                            SteadFishSpecies *out_species)
{
  g_return_val_if_fail (out_species != NULL, FALSE);

  for (gsize i = 0; id != NULL && i < G_N_ELEMENTS (species_table); i++)
    if (g_str_equal (species_table[i].id, id))
      {
        *out_species = (SteadFishSpecies) i;
        return TRUE;
      }
  return FALSE;
}

const char *
stead_fish_name (SteadFishSpecies species)
{
  static const char * const names[STEAD_N_FISH_SPECIES] = {
    [STEAD_FISH_TILAPIA] = NC_("fish", "tilapia"),
    [STEAD_FISH_CHANNEL_CATFISH] = NC_("fish", "channel catfish"),
    [STEAD_FISH_RAINBOW_TROUT] = NC_("fish", "rainbow trout"),
  };

  g_return_val_if_fail (is_species (species), "");
  return g_dpgettext2 (GETTEXT_PACKAGE, "fish", names[species]);
}

const char *
stead_fish_stage_name (SteadFishStage stage)
{
  static const char * const names[STEAD_N_FISH_STAGES] = {
    [STEAD_FISH_FRY] = NC_("stage of fish", "fry"),
    [STEAD_FISH_FINGERLING] = NC_("stage of fish", "fingerlings"),
    [STEAD_FISH_GROWOUT] = NC_("stage of fish", "growing fish"),
  };

  g_return_val_if_fail ((gsize) stage < G_N_ELEMENTS (names), "");
  return g_dpgettext2 (GETTEXT_PACKAGE, "stage of fish", names[stage]);
}

SteadFishStage
stead_fish_stage_of (const SteadFishKind *fish,
                     double               weight_g)
{
  int stage = STEAD_FISH_FRY;

  g_return_val_if_fail (fish != NULL, STEAD_FISH_GROWOUT);

  while (stage < STEAD_FISH_GROWOUT && weight_g >= fish->stages[stage].max_g)
    stage++;
  return (SteadFishStage) stage;
}

gboolean
stead_tilapia_state (double              temp_c,
                     SteadTilapiaState  *out_state,
                     GError            **error)
{
  g_return_val_if_fail (out_state != NULL, FALSE);

  if (!(temp_c >= 0 && temp_c <= 36))
    {
      g_set_error_literal (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_RANGE,
                           _("What tilapia bear is known from 0 to 36 °C (32 to 97 °F). "
                             "Read the thermometer again; in water hotter than this, "
                             "add air and cooler water at once."));
      return FALSE;
    }
  if (temp_c <= 12)
    *out_state = STEAD_TILAPIA_DEATH;
  else if (temp_c <= 13)
    *out_state = STEAD_TILAPIA_SEVERE_STRESS;
  else if (temp_c < 15)
    *out_state = STEAD_TILAPIA_NO_FEEDING;
  else if (temp_c < 20)
    *out_state = STEAD_TILAPIA_NO_SPAWNING;
  else if (temp_c >= 26 && temp_c <= 30)
    *out_state = STEAD_TILAPIA_BEST;
  else
    *out_state = STEAD_TILAPIA_SUITABLE;
  return TRUE;
}

const SteadFishYield *
stead_fish_yield (SteadFishSpecies   species,
                  SteadFishCut       cut,
                  GError           **error)
{
  for (gsize i = 0; i < G_N_ELEMENTS (yields); i++)
    if (yields[i].species == species && yields[i].cut == cut)
      return &yields[i];
  g_set_error_literal (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_NONE,
                       _("No yield is known for this fish and cut. "
                         "Weigh some of your own before and after."));
  return NULL;
}

double
stead_fish_fasted_kg (double live_kg,
                      double loss_frac)
{
  return live_kg >= 0 && loss_frac >= 0 && loss_frac < 1 ? live_kg * (1 - loss_frac) : NAN;
}
