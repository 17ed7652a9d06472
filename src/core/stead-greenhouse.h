/* stead-greenhouse.h - what a greenhouse loses in heat, and the heater for it.
 *
 * A house is its skin: areas, each with what a square meter lets through for a
 * degree (U), and the air that leaks in and out.  UA is the sum over all, watts
 * for a degree of difference between inside and outside.
 *
 * Fuel burned in a house takes oxygen and gives carbon monoxide: vent it outdoors,
 * and follow the fire and fuel rules of the place.
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* Watts in a Btu per hour; the Btu of the international table. */
#define STEAD_W_PER_BTU_H (1055.05585262 / 3600)

typedef enum
{
  STEAD_COVER_SINGLE_FILM,
  STEAD_COVER_DOUBLE_FILM,   /* with air between */
  STEAD_COVER_TWIN_WALL,     /* 8 mm polycarbonate */
  STEAD_COVER_GLASS,         /* single */
} SteadCover;

#define STEAD_N_COVERS (STEAD_COVER_GLASS + 1)

/**
 * stead_cover_u_w_m2_c:
 * Double film 0.7 and twin wall 0.53 Btu/h/sq ft/°F: a greenhouse maker's how-to on
 * sizing a heating system, 22 x 96 ft example.  Single film 1.2 and glass 1.13:
 * from memory.
 *
 * Returns: U of a cover, W/m²/°C
 */
double stead_cover_u_w_m2_c (SteadCover cover);

/* A part of the skin. */
typedef struct
{
  double area_m2;
  double u_w_m2_c;
} SteadGreenhouseSkin;

/**
 * stead_greenhouse_ua_w_c:
 * @skin: (array length=n_parts): all that touches the outside air
 *
 * Source: the same how-to.
 *
 * Returns: sum of area x U, W/°C
 */
double stead_greenhouse_ua_w_c (const SteadGreenhouseSkin *skin,
                                gsize                      n_parts);

/* Changes of air in an hour by leaks: 0.5 to 1 in a tight house, 1 to 2 in an old
 * one (from memory). */
#define STEAD_AIR_CHANGES_TIGHT 0.75
#define STEAD_AIR_CHANGES_OLD 1.5

/**
 * stead_greenhouse_leak_ua_w_c:
 * @volume_m3: of the house
 * @changes_h: times that its air changes in an hour
 *
 * 0.018 Btu warm a cubic foot of air by a °F: from memory; sheets for greenhouses
 * round to 0.02.
 *
 * Returns: what leaks add to UA, W/°C
 */
double stead_greenhouse_leak_ua_w_c (double volume_m3,
                                     double changes_h);

/**
 * stead_greenhouse_loss_w:
 * @ua_w_c: of skin and leaks
 * @difference_c: inside less outside
 *
 * Returns: heat lost, watts; 0 if it is not warmer inside
 */
double stead_greenhouse_loss_w (double ua_w_c,
                                double difference_c);

/* What a heater has over the loss on the coldest usual night. */
#define STEAD_HEATER_MARGIN_LEAST 0.10
#define STEAD_HEATER_MARGIN_MOST 0.25

/**
 * stead_greenhouse_heater_w:
 * @loss_w: at the usual winter minimum, 0 or more
 * @margin_frac: to have over, 0.10 to 0.25
 * @out_w: (out): output that the heater needs
 * @error: return location for a #GError in %STEAD_CORE_ERROR
 *
 * The margin is common practice, no source.
 *
 * Returns: %TRUE, or %FALSE for another margin
 */
gboolean stead_greenhouse_heater_w (double   loss_w,
                                    double   margin_frac,
                                    double  *out_w,
                                    GError **error) G_GNUC_WARN_UNUSED_RESULT;

/**
 * stead_hoop_skin_m2: arch and both ends of a half-round house
 * stead_hoop_volume_m3: what it holds
 *
 * A half circle over @width_m, @length_m long.
 */
double stead_hoop_skin_m2 (double width_m,
                           double length_m);
double stead_hoop_volume_m3 (double width_m,
                             double length_m);

G_END_DECLS
