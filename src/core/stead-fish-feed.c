/* stead-fish-feed.c - how much feed, by species, size and warmth of the water. */
#include "config.h"

#include "core/stead-core-error.h"
#include "core/stead-feed.h"
#include "core/stead-fish-feed.h"
#include "core/stead-fish-growth.h"
#include "core/stead-round.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#define F(fahrenheit) (((fahrenheit) - 32) * (5.0 / 9))

/* One row; the ends belong to it, and of two rows that touch the first counts. */
typedef struct
{
  SteadFishSpecies species;
  double           min_g, max_g;
  double           min_c, max_c;
  double           light_pct;       /* at min_g, percent of the body weight */
  double           heavy_pct;       /* at max_g */
  double           interval_days;
  SteadSource      source;
} Row;

/* The range of warm fish in FAO 589, table 3.1, is 22 to 32 °C. */
#define TILAPIA(light_g, heavy_g, light, heavy, source)                                  \
  { STEAD_FISH_TILAPIA, light_g, heavy_g, 22, 32, light, heavy, 1, source },             \
  { STEAD_FISH_TILAPIA, light_g, heavy_g, 15, 22, (light) / 2.0, (heavy) / 2.0, 1,       \
    STEAD_SOURCE_PRACTICE }

static const Row rows[] = {
  TILAPIA (0.02, 1, 20, 15, STEAD_SOURCE_SRAC_282),
  TILAPIA (1, 5, 15, 10, STEAD_SOURCE_SRAC_282_RATES),
  TILAPIA (5, 20, 10, 7, STEAD_SOURCE_SRAC_282_RATES),
  TILAPIA (20, 50, 7, 4, STEAD_SOURCE_SRAC_282_RATES),
  TILAPIA (50, 100, 4, 3.5, STEAD_SOURCE_SRAC_282_RATES),
  TILAPIA (100, 250, 3.5, 1.5, STEAD_SOURCE_SRAC_282_RATES),
  TILAPIA (250, 900, 1.5, 1, STEAD_SOURCE_TANK_CULTURE),
  /* Winter: the colder band is printed as 45 to 54 °F, the warmer as 55 to 65. */
  { STEAD_FISH_CHANNEL_CATFISH, 0, HUGE_VAL, F (55), F (65), 1, 1, 2, STEAD_SOURCE_CATFISH_WINTER },
  { STEAD_FISH_CHANNEL_CATFISH, 0, HUGE_VAL, F (45), F (55), 1, 1, 3.5, STEAD_SOURCE_CATFISH_WINTER },
  { STEAD_FISH_CHANNEL_CATFISH, 10, 1000, F (70), 32, 3, 2, 1, STEAD_SOURCE_CATFISH_HATCHERY },
  /* Between winter and the warm season they feed as they like: watch them. */
  { STEAD_FISH_CHANNEL_CATFISH, 10, 1000, F (65), F (70), 2, 1, 1, STEAD_SOURCE_PRACTICE },
};

/* Trout are fed by their growth; above the range of cold fish in FAO 589 they
 * are not. */
#define TROUT_MIN_G 1
#define TROUT_MAX_G 1000
#define TROUT_MAX_C 18

static gboolean
lies_in (double value,
         double least,
         double most)
{
  return value >= least - STEAD_ROUND_NOISE && value <= most + STEAD_ROUND_NOISE;
}

/* Straight in the logarithm of the weight. */
static double
between (const Row *row,
         double     weight_g)
{
  double share;

  if (row->light_pct == row->heavy_pct)
    return row->light_pct;
  share = log (weight_g / row->min_g) / log (row->max_g / row->min_g);
  return row->light_pct + CLAMP (share, 0, 1) * (row->heavy_pct - row->light_pct);
}

static void
take_row (const Row         *row,
          double             weight_g,
          SteadFishFeedRate *out_rate)
{
  *out_rate = (SteadFishFeedRate) {
    .frac = between (row, weight_g) / 100,
    .min_frac = MIN (row->light_pct, row->heavy_pct) / 100,
    .max_frac = MAX (row->light_pct, row->heavy_pct) / 100,
    .interval_days = row->interval_days,
    .source = row->source,
  };
}

static void
trout_rate (double             weight_g,
            double             temp_c,
            SteadFishFeedRate *out_rate)
{
  const SteadFishKind *trout = stead_fish_kind (STEAD_FISH_RAINBOW_TROUT);
  double frac = stead_fish_feed_for_growth_frac (weight_g, trout->tgc_x100,
                                                 stead_fish_degree_day (trout, temp_c), trout->fcr);

  *out_rate = (SteadFishFeedRate) {
    .frac = frac, .min_frac = frac, .max_frac = frac, .interval_days = 1,
    .source = STEAD_SOURCE_PRACTICE,
  };
}

static gboolean
refuse_cold (GError **error)
{
  g_set_error_literal (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_RANGE,
                       _("The feeding table has no row for water this cold. These fish hardly "
                         "feed: give none, and look at them each day."));
  return FALSE;
}

static gboolean
refuse_warm (GError **error)
{
  g_set_error_literal (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_RANGE,
                       _("The feeding table has no row for water this warm. Hold the feed, add "
                         "air, and cool the water."));
  return FALSE;
}

static gboolean
refuse_weight (GError **error)
{
  g_set_error_literal (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_RANGE,
                       _("The feeding table has no row for fish of this weight. Follow the "
                         "chart of the feed's maker."));
  return FALSE;
}

/* Says why no row fits: too cold and too warm come before the weight. */
static gboolean
refuse (SteadFishSpecies   species,
        double             temp_c,
        GError           **error)
{
  double least = HUGE_VAL;
  double most = -HUGE_VAL;

  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    if (rows[i].species == species)
      {
        least = MIN (least, rows[i].min_c);
        most = MAX (most, rows[i].max_c);
      }
  if (!(temp_c >= least))
    return refuse_cold (error);
  return temp_c > most ? refuse_warm (error) : refuse_weight (error);
}

static gboolean
trout_feed_rate (double              weight_g,
                 double              temp_c,
                 SteadFishFeedRate  *out_rate,
                 GError            **error)
{
  if (!(temp_c >= stead_fish_kind (STEAD_FISH_RAINBOW_TROUT)->growth_min_c))
    return refuse_cold (error);
  if (temp_c > TROUT_MAX_C)
    return refuse_warm (error);
  if (!lies_in (weight_g, TROUT_MIN_G, TROUT_MAX_G))
    return refuse_weight (error);
  trout_rate (weight_g, temp_c, out_rate);
  return TRUE;
}

gboolean
stead_fish_feed_rate (SteadFishSpecies    species,
                      double              weight_g,
                      double              temp_c,
                      SteadFishFeedRate  *out_rate,
                      GError            **error)
{
  g_return_val_if_fail (out_rate != NULL, FALSE);

  if (!(weight_g > 0 && isfinite (weight_g)))
    return refuse_weight (error);
  if (species == STEAD_FISH_RAINBOW_TROUT)
    return trout_feed_rate (weight_g, temp_c, out_rate, error);
  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    if (rows[i].species == species && lies_in (temp_c, rows[i].min_c, rows[i].max_c)
        && lies_in (weight_g, rows[i].min_g, rows[i].max_g))
      {
        take_row (&rows[i], weight_g, out_rate);
        return TRUE;
      }
  return refuse (species, temp_c, error);
}

gboolean
stead_fish_winter_feed (SteadFishSpecies    species,
                        double              temp_c,
                        SteadFishFeedRate  *out_rate,
                        GError            **error)
{
  g_return_val_if_fail (out_rate != NULL, FALSE);

  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    if (rows[i].species == species && rows[i].source == STEAD_SOURCE_CATFISH_WINTER
        && lies_in (temp_c, rows[i].min_c, rows[i].max_c))
      {
        take_row (&rows[i], 1, out_rate);
        return TRUE;
      }
  g_set_error_literal (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_RANGE,
                       _("Winter feeding is known for channel catfish in water of 45 to 65 °F "
                         "(7 to 18 °C)."));
  return FALSE;
}

double
stead_fish_feed_frac_per_day (const SteadFishFeedRate *rate)
{
  g_return_val_if_fail (rate != NULL, NAN);
  return rate->interval_days > 0 ? rate->frac / rate->interval_days : NAN;
}

double
stead_fish_daily_feed_kg (double biomass_kg,
                          double frac)
{
  return biomass_kg * frac;
}

double
stead_fish_feed_biomass_kg (double feed_kg,
                            double frac)
{
  return frac > 0 ? feed_kg / frac : NAN;
}

double
stead_fish_feed_for_growth_frac (double weight_g,
                                 double tgc_x100,
                                 double degree_day,
                                 double fcr)
{
  double gain_g = stead_fish_weight_g (weight_g, tgc_x100, degree_day) - weight_g;

  return fcr > 0 ? stead_feed_for_gain (gain_g, fcr) / weight_g : NAN;
}

double
stead_fish_fcr (double feed_kg,
                double start_kg,
                double end_kg,
                double dead_kg)
{
  return stead_feed_conversion (feed_kg, end_kg - start_kg + dead_kg);
}

gboolean
stead_fish_winter_change_frac (SteadFishSpecies   species,
                               gboolean           fed,
                               double             days,
                               double            *out_min_frac,
                               double            *out_max_frac,
                               GError           **error)
{
  g_return_val_if_fail (out_min_frac != NULL && out_max_frac != NULL, FALSE);

  if (species != STEAD_FISH_CHANNEL_CATFISH || days != 100)
    {
      g_set_error_literal (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_RANGE,
                           _("What fish lose or gain over winter is published for channel "
                             "catfish and 100 days. Weigh your own in fall and spring."));
      return FALSE;
    }
  *out_min_frac = fed ? 0.19 : -0.09;
  *out_max_frac = fed ? 0.23 : -0.09;
  return TRUE;
}
