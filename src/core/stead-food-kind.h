/* stead-food-kind.h - what kind of food it is by pH and water activity, and its jars.
 *
 * Jars for sale need a process authority; the tables of home canning are for class
 * and family, not for sale.
 */
#pragma once

#include "core/stead-limit.h"

G_BEGIN_DECLS

typedef enum
{
  STEAD_TCS_NO,            /* needs no control of time and temperature */
  STEAD_TCS_ASSESS,        /* product assessment required: treat as TCS until it is done */
} SteadTcsClass;

/**
 * stead_tcs_class:
 * @heated_and_packaged: heated to kill, then packaged so that nothing gets in
 *   (table A); else table B
 * @aw: water activity, 0 to 1; NAN: not measured
 * @ph: NAN: not measured
 * @out: (out): the class
 *
 * Source: FDA Food Code 2022, §1-201.10(B), interaction tables A and B.
 *
 * Returns: %TRUE, or %FALSE with @error set: a measurement that decides is missing
 */
gboolean stead_tcs_class (const SteadLimitTable  *table,
                          gboolean                heated_and_packaged,
                          double                  aw,
                          double                  ph,
                          SteadTcsClass          *out,
                          GError                **error) G_GNUC_WARN_UNUSED_RESULT;

typedef enum
{
  STEAD_ACID_ACIDIFIED,       /* acid was added to low-acid food: 21 CFR 114 */
  STEAD_ACID_NOT_LOW_ACID,    /* acid by nature */
  STEAD_ACID_LOW_ACID,        /* stop: low-acid canning */
  STEAD_ACID_OUTSIDE,         /* cold all the way, or too dry: outside part 114 */
} SteadAcidKind;

typedef struct
{
  gboolean tomato;          /* tomatoes have a rule of their own */
  gboolean acid_added;
  gboolean refrigerated;    /* from making to sale */
  double   ph;              /* finished equilibrium pH; NAN: not measured */
  double   aw;              /* NAN: not measured, taken as wet */
} SteadAcidFood;

/**
 * stead_acid_kind:
 * @out: (out): the kind
 *
 * Source: 21 CFR 114.3.
 *
 * Returns: %TRUE, or %FALSE with @error set: the pH decides and is missing
 */
gboolean stead_acid_kind (const SteadLimitTable  *table,
                          const SteadAcidFood    *food,
                          SteadAcidKind          *out,
                          GError                **error) G_GNUC_WARN_UNUSED_RESULT;

/**
 * stead_acid_ph_in_order:
 * Returns: whether a finished equilibrium pH meets 21 CFR 114.80(a)(1): 4.6 or
 *   lower, not rounded
 */
gboolean stead_acid_ph_in_order (const SteadLimitTable *table,
                                 double                 ph);

/* Jars.  Source: USDA Complete Guide to Home Canning. */

/**
 * stead_jar_acid:
 * @acid: "bottled_lemon_juice", "citric_acid", "vinegar_5pct"
 * @jar: "pint" or "quart"
 * @jars: how many
 * @out_amount: (out): spoons for tomatoes in all jars
 * @out_unit: (out) (transfer none): "tbsp" or "tsp"
 *
 * Returns: %TRUE, or %FALSE with @error set
 */
gboolean stead_jar_acid (const SteadLimitTable  *table,
                         const char             *acid,
                         const char             *jar,
                         double                  jars,
                         double                 *out_amount,
                         const char            **out_unit,
                         GError                **error) G_GNUC_WARN_UNUSED_RESULT;

/**
 * stead_jar_process_min:
 * @product: "standard_tomato_sauce" …
 * @jar: "pint" or "quart"
 * @elevation_ft: above the sea; a band includes its upper end
 * @out_min: (out): minutes in boiling water
 *
 * Returns: %TRUE, or %FALSE with @error set: no time is published, so there is none
 */
gboolean stead_jar_process_min (const SteadLimitTable  *table,
                                const char             *product,
                                const char             *jar,
                                double                  elevation_ft,
                                double                 *out_min,
                                GError                **error) G_GNUC_WARN_UNUSED_RESULT;

/**
 * stead_jar_pressure:
 * @gauge: "dial" or "weighted"
 * @out_min: (out): minutes at pressure
 * @out_psi: (out): pounds of pressure
 *
 * Returns: %TRUE, or %FALSE with @error set
 */
gboolean stead_jar_pressure (const SteadLimitTable  *table,
                             const char             *product,
                             const char             *jar,
                             const char             *gauge,
                             double                  elevation_ft,
                             double                 *out_min,
                             double                 *out_psi,
                             GError                **error) G_GNUC_WARN_UNUSED_RESULT;

/**
 * stead_tomato_quarts:
 * @product: "thin_sauce", "thick_sauce", "tomato_juice", "crushed_tomatoes", "whole_tomatoes"
 * @tomatoes_lb: as picked
 * @out_quarts: (out): what they give
 *
 * Returns: %TRUE, or %FALSE with @error set
 */
gboolean stead_tomato_quarts (const SteadLimitTable  *table,
                              const char             *product,
                              double                  tomatoes_lb,
                              double                 *out_quarts,
                              GError                **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
