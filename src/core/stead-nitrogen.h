/* stead-nitrogen.h - where the nitrogen of the feed goes.
 *
 * Feed carries nitrogen in its protein.  Part stays in the fish, part leaves
 * them as ammonia, which the biofilter makes into nitrate, and the rest are
 * solids.  Grams and litres a day.
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* Ammonia as N from one gram of protein fed (from memory; 0.092 = 0.16 x 0.8 x
 * 0.8 x 0.9).  Shrimp without water exchange make 0.144 (a research code, read). */
#define STEAD_NITROGEN_TAN_PER_PROTEIN 0.092

/* Nitrogen in protein; 1 / 6.25, the usual figure of feed analysis (from memory). */
#define STEAD_NITROGEN_PER_PROTEIN 0.16

/* Nitrogen in a whole fish, of its weight: 16 % protein x 0.16 (from memory). */
#define STEAD_NITROGEN_PER_FISH 0.0256

/**
 * stead_nitrogen_tan_g:
 * @feed_g: feed of a day
 * @protein_frac: protein in the feed, 0 to 1
 *
 * Returns: g of total ammonia as N, spread over the day; NAN outside the range
 */
double stead_nitrogen_tan_g (double feed_g,
                             double protein_frac);

/**
 * stead_nitrogen_tan_of_fish_g:
 * @fish_kg: weight of all fish
 *
 * Source: SRAC 282, tank culture of tilapia (read): 10 g a day for 100 lb, in
 * practice 4 to 21.  A rule for when the feed is not known.
 *
 * Returns: g of total ammonia as N a day
 */
double stead_nitrogen_tan_of_fish_g (double fish_kg);

/* Removal of a biofilter by its surface, g of TAN for a square meter and day:
 * 0.02 to 0.10 g a square foot, SRAC 282 (read). */
#define STEAD_BIOFILTER_LEAST_G_M2 (0.02 / 0.09290304)
#define STEAD_BIOFILTER_MOST_G_M2 (0.10 / 0.09290304)

/**
 * stead_biofilter_area_m2:
 * @tan_g_day: to be removed
 * @removal_g_m2_day: by a square meter of surface, above 0
 *
 * A new biofilter takes 4 to 8 weeks to ripen (common practice): feed little.
 *
 * Returns: m² of surface; NAN without a removal
 */
double stead_biofilter_area_m2 (double tan_g_day,
                                double removal_g_m2_day);

/**
 * stead_biofilter_removal_g_m3: what a cubic meter of material removes a day, surface x removal
 */
double stead_biofilter_removal_g_m3 (double media_m2_m3,
                                     double removal_g_m2_day);

/**
 * stead_biofilter_volume_l:
 * @area_m2: surface needed
 * @media_m2_m3: surface in a cubic meter of the material, above 0
 *
 * Returns: litres of material; NAN without surface
 */
double stead_biofilter_volume_l (double area_m2,
                                 double media_m2_m3);

/**
 * stead_biofilter_flow_l_day:
 * @tan_g_day: to be carried to the filter
 * @limit_mgl: total ammonia as N that the tank may have, above 0
 * @removed_frac: share that one pass removes, above 0 to 1
 *
 * Returns: litres a day, TAN / (limit x share); NAN for what cannot be
 */
double stead_biofilter_flow_l_day (double tan_g_day,
                                   double limit_mgl,
                                   double removed_frac);

/**
 * stead_nitrogen_alkalinity_g: g of CaCO3 that nitrifying @tan_g uses, 7.14 a gram
 *   (stoichiometry; SRAC 282 says about 7)
 * stead_nitrogen_oxygen_g: g of oxygen that it uses, 4.57 a gram (from memory)
 */
double stead_nitrogen_alkalinity_g (double tan_g);
double stead_nitrogen_oxygen_g (double tan_g);

/* The nitrogen of a day, g of N. */
typedef struct
{
  double feed_g;      /* in the feed */
  double fish_g;      /* kept in the fish that grew */
  double tan_g;       /* left them as ammonia */
  double rest_g;      /* solids and what else is dissolved */
  double plants_g;    /* taken up by plants, as far as there is */
  double nitrate_g;   /* of the ammonia, what is left as nitrate */
} SteadNitrogenDay;

/**
 * stead_nitrogen_day:
 * @feed_g: feed of the day, 0 or more
 * @protein_frac: protein in it, 0 to 1
 * @gain_g: weight that the fish gained, 0 or more
 * @plants_g: nitrogen that plants take up, 0 or more; more than there is counts as all
 * @out_day: (out): the budget; feed = fish + ammonia + rest, ammonia = plants + nitrate
 * @error: return location for a #GError in %STEAD_CORE_ERROR
 *
 * Returns: %TRUE, or %FALSE for what cannot be, or if the gain is more than the
 *   feed can have made
 */
gboolean stead_nitrogen_day (double             feed_g,
                             double             protein_frac,
                             double             gain_g,
                             double             plants_g,
                             SteadNitrogenDay  *out_day,
                             GError           **error) G_GNUC_WARN_UNUSED_RESULT;

/**
 * stead_nitrogen_nitrate_rise_mgl:
 * @nitrate_g: nitrogen that became nitrate, g of N
 * @volume_l: water of the whole system, above 0
 *
 * Returns: rise of nitrate, mg/L as NO3; NAN without water
 */
double stead_nitrogen_nitrate_rise_mgl (double nitrate_g,
                                        double volume_l);

/**
 * stead_nitrogen_exchange_l_day:
 * @nitrate_g_day: nitrogen that becomes nitrate, g of N a day
 * @hold_mgl: nitrate to hold, mg/L as NO3
 * @source_mgl: nitrate of the water that is added, below @hold_mgl
 *
 * Returns: litres to change each day, once the level is steady; NAN if the
 *   source has as much
 */
double stead_nitrogen_exchange_l_day (double nitrate_g_day,
                                      double hold_mgl,
                                      double source_mgl);

G_END_DECLS
