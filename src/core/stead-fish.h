/* stead-fish.h - the fish that a school farm keeps, as data.
 *
 * Planning values, never promises: they stand until the farm's own weighings
 * say more, and local extension advice goes first.  Fish may need a permit of
 * the state; never release fish or their water.
 *
 * Weights are grams a fish, temperatures degrees Celsius of the water.
 */
#pragma once

#include <glib.h>

#include "core/stead-source.h"

G_BEGIN_DECLS

typedef enum
{
  STEAD_FISH_TILAPIA,
  STEAD_FISH_CHANNEL_CATFISH,
  STEAD_FISH_RAINBOW_TROUT,
} SteadFishSpecies;

#define STEAD_N_FISH_SPECIES (STEAD_FISH_RAINBOW_TROUT + 1)

typedef enum
{
  STEAD_FISH_FRY,
  STEAD_FISH_FINGERLING,
  STEAD_FISH_GROWOUT,
} SteadFishStage;

#define STEAD_N_FISH_STAGES (STEAD_FISH_GROWOUT + 1)

/* One stage of life: its weights, and how many come through it. */
typedef struct
{
  double      min_g;
  double      max_g;
  double      survival_frac;    /* of the fish that began the stage */
  SteadSource source;           /* of the survival */
} SteadFishStageRange;

/* One species.  A farm that knows its own fish better copies the struct and
 * changes it: growth and degree-days read the copy. */
typedef struct
{
  const char          *id;             /* "tilapia", stored in a file */
  gboolean             cold;           /* lives by the limits of cold water */
  double               best_min_c;     /* the band in which it does best */
  double               best_max_c;
  double               optimum_c;      /* warmer days count no more than this one */
  double               growth_min_c;   /* colder days count nothing: it hardly feeds */
  SteadSource          temperature_source;
  double               tgc_x100;       /* growth coefficient, 100 times the plain one */
  SteadSource          tgc_source;
  double               fcr;            /* feed for one of gain */
  SteadSource          fcr_source;
  double               market_g;       /* a usual weight at sale */
  SteadFishStageRange  stages[STEAD_N_FISH_STAGES];
} SteadFishKind;

/**
 * stead_fish_kind:
 * @species: which one
 *
 * Returns: (transfer none): the species as the program assumes it
 */
const SteadFishKind *stead_fish_kind (SteadFishSpecies species);

/**
 * stead_fish_species_from_id:
 * @id: (nullable): a stored id
 * @out_species: (out): the species
 *
 * Returns: %TRUE, or %FALSE for an id that is not known
 */
gboolean stead_fish_species_from_id (const char       *id,
                                     SteadFishSpecies *out_species);

/**
 * stead_fish_name: (transfer none): the species in the person's language, "channel catfish"
 * stead_fish_stage_name: (transfer none): the stage, "fingerlings"
 */
const char *stead_fish_name (SteadFishSpecies species);
const char *stead_fish_stage_name (SteadFishStage stage);

/**
 * stead_fish_stage_of:
 * @fish: the species
 * @weight_g: mean weight of a fish, above 0
 *
 * Returns: the stage; what is lighter than the first or heavier than the last
 *   belongs to the nearest
 */
SteadFishStage stead_fish_stage_of (const SteadFishKind *fish,
                                    double               weight_g);

/* What a reading of the water means for tilapia, coldest first. */
typedef enum
{
  STEAD_TILAPIA_DEATH,
  STEAD_TILAPIA_SEVERE_STRESS,
  STEAD_TILAPIA_NO_FEEDING,
  STEAD_TILAPIA_NO_SPAWNING,
  STEAD_TILAPIA_SUITABLE,
  STEAD_TILAPIA_BEST,
} SteadTilapiaState;

/**
 * stead_tilapia_state:
 * @temp_c: temperature of the water, 0 to 36
 * @out_state: (out): 12 or less death, to 13 severe stress, under 15 no feeding,
 *   under 20 no spawning, 26 to 30 best, else suitable
 * @error: return location for a #GError in %STEAD_CORE_ERROR
 *
 * Source: temperature and low oxygen tolerances for tilapia (read), which says
 * nothing of heat; 36 is the upper end in FAO 589, table 7.1 (from memory).
 *
 * Returns: %TRUE, or %FALSE outside the range
 */
gboolean stead_tilapia_state (double              temp_c,
                              SteadTilapiaState  *out_state,
                              GError            **error) G_GNUC_WARN_UNUSED_RESULT;

/* How a piece of fish is cut. */
typedef enum
{
  STEAD_FISH_CUT_HEADED,      /* head, skin and guts off */
  STEAD_FISH_CUT_FILLET,      /* lean trim */
  STEAD_FISH_CUT_HAND_FILLET, /* as a filleting line cuts by hand */
  STEAD_FISH_CUT_GUTTED,
} SteadFishCut;

/* Product over live weight, as one trial found it. */
typedef struct
{
  SteadFishSpecies species;
  SteadFishCut     cut;
  double           frac;
  double           min_g;     /* live weight of the fish that were cut, or near it */
  double           max_g;
  SteadSource      source;
} SteadFishYield;

/**
 * stead_fish_yield:
 * @species: which fish
 * @cut: how it is cut; fillets differ by trim, so ask which
 * @error: return location for a #GError in %STEAD_CORE_ERROR
 *
 * Sources: Aquaculture 119 (1994) 299-310 (tilapia, catfish); carcass and
 * fillet yield of Nile tilapia by body weight (36.5 to 36.8 % by hand); processing
 * yield of rainbow trout (2015).
 *
 * Returns: (transfer none) (nullable): the yield, or %NULL with @error set where
 *   no trial is known
 */
const SteadFishYield *stead_fish_yield (SteadFishSpecies   species,
                                        SteadFishCut       cut,
                                        GError           **error) G_GNUC_WARN_UNUSED_RESULT;

/* Days without feed, in clean water, before fish are sold: 3 to 5 in tank
 * culture of tilapia, part 5, and in FAO 589, section 7.7. */
#define STEAD_FISH_FASTING_DAYS 4

/* Weight that goes meanwhile: salmon 3.8 % in 5 days, review for hatcheries (2024). */
#define STEAD_FISH_FASTING_LOSS_FRAC 0.038

/**
 * stead_fish_fasted_kg:
 * @live_kg: weight before
 * @loss_frac: share that is lost, 0 to below 1
 *
 * Returns: weight after; NAN outside the range
 */
double stead_fish_fasted_kg (double live_kg,
                             double loss_frac);

G_END_DECLS
