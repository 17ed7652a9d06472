/* stead-nutrient-answer.c - "How much fertilizer for this water?" */
#include "config.h"

#include "answer/stead-answer-error.h"
#include "answer/stead-nutrient-answer.h"
#include "answer/stead-words-private.h"
#include "core/stead-nutrient.h"
#include "core/stead-water-limit.h"

#include <glib/gi18n-lib.h>
#include <math.h>

/* An injector or a label beyond this is a slip: 1:2,000 is the finest that is sold. */
#define PARTS_MOST 10000.0

/* Nutrient, mg/L, beyond which the number typed is a slip, not a feed. */
#define PPM_MOST 5000.0

void
stead_nutrient_dose_free (SteadNutrientDose *dose)
{
  if (dose == NULL)
    return;
  g_free (dose->sentence);
  g_free (dose->caution);
  stead_why_free (dose->why);
  g_free (dose);
}

static gboolean
refuse (GError     **error,
        const char  *message)
{
  g_set_error_literal (error, STEAD_ANSWER_ERROR, STEAD_ANSWER_ERROR_INPUT, message);
  return FALSE;
}

/* "500 mL (16.9 fl oz)": a measuring cup shows mL, a pail gallons. */
static char *
volume_text (double          volume_l,
             SteadUnitSystem units)
{
  gboolean small = volume_l < 1;
  const SteadUnit *metric_unit = stead_unit_by_id (small ? "ml" : "l");
  const SteadUnit *us_unit = stead_unit_by_id (volume_l < 2 ? "floz" : "gal");
  g_autofree char *metric = stead_words_number (stead_quantity_from_base (volume_l, metric_unit));
  g_autofree char *us = stead_words_number (stead_quantity_from_base (volume_l, us_unit));

  if (units == STEAD_UNITS_METRIC)
    /* Translators: a volume. */
    return small ? g_strdup_printf (_("%s mL"), metric) : g_strdup_printf (_("%s L"), metric);
  if (small)
    return g_strdup_printf (_("%s mL (%s fl oz)"), metric, us);
  /* Translators: the same volume in two units. */
  return volume_l < 2 ? g_strdup_printf (_("%s L (%s fl oz)"), metric, us) : g_strdup_printf (_("%s L (%s gal)"), metric, us);
}

/* "510 g (18 oz)" */
static char *
mass_text (double          g,
           SteadUnitSystem units)
{
  gboolean small = g < 1000;
  gboolean ounces = g < 2000;
  g_autofree char *metric = stead_words_number (small ? g : g / 1000);
  g_autofree char *us = stead_words_number (stead_quantity_from_base (g / 1000, stead_unit_by_id (ounces ? "oz" : "lb")));

  if (units == STEAD_UNITS_METRIC)
    /* Translators: a mass. */
    return small ? g_strdup_printf (_("%s g"), metric) : g_strdup_printf (_("%s kg"), metric);
  if (small)
    return g_strdup_printf (_("%s g (%s oz)"), metric, us);
  /* Translators: the same mass in two units. */
  return ounces ? g_strdup_printf (_("%s kg (%s oz)"), metric, us) : g_strdup_printf (_("%s kg (%s lb)"), metric, us);
}

/* --- two stocks ------------------------------------------------------------------ */

static gboolean
check_conductivity (double       value,
                    const char  *missing,
                    GError     **error)
{
  if (isnan (value))
    return refuse (error, missing);
  return stead_water_reason (STEAD_WATER_CONDUCTIVITY, value) == STEAD_WATER_POSSIBLE
         || refuse (error, _("No nutrient solution has such a conductivity. Type it in µS/cm: 2.0 mS/cm is 2,000."));
}

static gboolean
check_stocks (const SteadStockNumbers  *numbers,
              GError                  **error)
{
  if (!(numbers->water_l > 0))
    return refuse (error, _("Enter how much nutrient solution is wanted."));
  if (!check_conductivity (numbers->now_us, _("Measure the conductivity of the water before anything goes in, "
                                                 "and enter it."), error)
      || !check_conductivity (numbers->target_us, _("Enter the conductivity that is wanted. The label or your grower's "
                                                    "sheet says it for the crop and its age."), error))
    return FALSE;
  if (!(numbers->label_parts >= 1 && numbers->label_parts <= PARTS_MOST))
    return refuse (error, _("Enter what the label says: one part of each stock in how many parts of water?"));
  if (!(numbers->label_us > 0))
    return refuse (error, _("Enter by how much that mix raises the conductivity. If the label does not say it, mix a "
                            "liter and measure."));
  return TRUE;
}

static SteadNutrientDose *
none_needed (void)
{
  SteadNutrientDose *dose = g_new0 (SteadNutrientDose, 1);

  dose->parts = NAN;
  dose->sentence = g_strdup (_("The water is <b>as strong as wanted</b> already. Add nothing; plain water thins it."));
  return dose;
}

static SteadWhy *
thin_why (const SteadStockNumbers *numbers,
          double                   stock_l)
{
  g_autofree char *water = stead_words_number (numbers->water_l);
  g_autofree char *target = stead_number_format (numbers->target_us, 0);
  g_autofree char *now = stead_number_format (numbers->now_us, 0);
  g_autofree char *parts = stead_number_format (numbers->label_parts, 0);
  g_autofree char *adds = stead_number_format (numbers->label_us, 0);
  g_autofree char *stock = stead_words_number (stock_l);

  return stead_why_new (g_strdup (_("How much of each stock")),
                        _("Water × (conductivity wanted − now) ÷ (parts on the label × what that mix adds)"),
                        /* Translators: liters, µS/cm, µS/cm, parts, µS/cm, liters. */
                        g_strdup_printf (_("%s L × (%s − %s) ÷ (%s × %s) = %s L"), water, target, now, parts, adds, stock),
                        _("How to mix a concentrate for an injector, a grower's newsletter: C1 V1 = C2 V2. That "
                          "conductivity grows evenly with the strength is a rule of growers, from memory: measure "
                          "the solution."));
}

SteadNutrientDose *
stead_nutrient_thin (const SteadStockNumbers  *numbers,
                     SteadUnitSystem           units,
                     GError                  **error)
{
  g_autoptr(SteadNutrientDose) dose = NULL;
  g_autofree char *amount = NULL, *parts = NULL, *target = NULL;
  double rise_us, stock_l;

  g_return_val_if_fail (numbers != NULL, NULL);

  if (!check_stocks (numbers, error))
    return NULL;
  rise_us = numbers->target_us - numbers->now_us;
  if (rise_us <= 0)
    return none_needed ();
  stock_l = stead_nutrient_stock_l (numbers->label_parts * numbers->label_us, rise_us, numbers->water_l);
  if (isnan (stock_l))
    {
      refuse (error, _("The stocks are weaker than the solution that is wanted. Check the parts and the conductivity "
                       "on the label."));
      return NULL;
    }
  dose = g_new0 (SteadNutrientDose, 1);
  dose->amount = stock_l;
  dose->parts = numbers->water_l / stock_l;
  amount = volume_text (stock_l, units);
  parts = stead_words_number (dose->parts);
  target = stead_number_format (numbers->target_us, 0);
  /* Translators: "500 mL (16.9 fl oz)", "200", "2,000". */
  dose->sentence = g_strdup_printf (_("Stir <b>%s of stock A</b> into the water, then <b>as much of stock B</b>: one part "
                                      "of each in %s. Stir, wait a quarter of an hour, and measure: %s µS/cm is wanted."),
                                    amount, parts, target);
  dose->caution = g_strdup (_("Never mix stock A and stock B undiluted: they clump, and the plants get nothing of it. "
                              "Wear gloves and goggles; stocks burn skin and eyes. Keep them locked up, labeled, and away "
                              "from food, children and animals. Follow the label."));
  dose->why = thin_why (numbers, stock_l);
  return g_steal_pointer (&dose);
}

/* --- a bag ----------------------------------------------------------------------- */

static gboolean
check_bag (const SteadBagNumbers  *numbers,
           GError                **error)
{
  if (!(numbers->water_l > 0))
    return refuse (error, _("Enter how much water the tank holds, that the fertilizer is stirred into."));
  if (!(numbers->target_ppm > 0 && numbers->target_ppm <= PPM_MOST))
    return refuse (error, _("Enter how many ppm (mg/L) of the nutrient are wanted."));
  if (!(numbers->share_frac > 0 && numbers->share_frac <= 1))
    return refuse (error, _("Enter the percentage on the bag: 20 for the nitrogen of 20-10-20."));
  return (numbers->ratio >= 1 && numbers->ratio <= PARTS_MOST)
         || refuse (error, _("Enter the ratio of the injector: 100 for 1:100. Without one enter 1."));
}

static SteadWhy *
weigh_why (const SteadBagNumbers *numbers,
           double                 product_g)
{
  g_autofree char *ppm = stead_words_number (numbers->target_ppm);
  g_autofree char *water = stead_words_number (numbers->water_l);
  g_autofree char *ratio = stead_number_format (numbers->ratio, 0);
  g_autofree char *share = stead_words_percent (numbers->share_frac, 1);
  g_autofree char *product = stead_words_number (product_g);

  return stead_why_new (g_strdup (_("How much of the bag")),
                        _("ppm × liters × injector ratio ÷ 1,000 ÷ share in the bag"),
                        /* Translators: ppm, liters, a ratio, a percentage, grams. */
                        g_strdup_printf (_("%s × %s × %s ÷ 1,000 ÷ %s = %s g"), ppm, water, ratio, share, product),
                        _("University of Massachusetts, Fertilizer calculations for greenhouse crops: ounces = ppm × "
                          "gallons × 3.785 ÷ (share × 28,350); How to mix a concentrate for an injector, a grower's "
                          "newsletter. Tomatoes: 60 to 70 ppm of nitrogen until the first clusters, University of "
                          "Florida CV216."));
}

SteadNutrientDose *
stead_nutrient_weigh (const SteadBagNumbers  *numbers,
                      SteadUnitSystem         units,
                      GError                **error)
{
  g_autoptr(SteadNutrientDose) dose = NULL;
  g_autofree char *amount = NULL, *ppm = NULL, *ratio = NULL;

  g_return_val_if_fail (numbers != NULL, NULL);

  if (!check_bag (numbers, error))
    return NULL;
  dose = g_new0 (SteadNutrientDose, 1);
  dose->parts = NAN;
  dose->amount = stead_nutrient_product_g (numbers->target_ppm, numbers->share_frac, numbers->water_l * numbers->ratio);
  amount = mass_text (dose->amount, units);
  ppm = stead_words_number (numbers->target_ppm);
  ratio = stead_number_format (numbers->ratio, 0);
  if (numbers->ratio > 1)
    /* Translators: "510 g (18 oz)", "100", "200". */
    dose->sentence = g_strdup_printf (_("Stir <b>%s</b> into the stock tank. Behind an injector of 1:%s the plants get "
                                        "%s ppm. Measure what comes out before it runs."), amount, ratio, ppm);
  else
    /* Translators: "510 g (18 oz)", "200". */
    dose->sentence = g_strdup_printf (_("Stir <b>%s</b> into the water: the plants get %s ppm. Measure it before it runs."),
                                      amount, ppm);
  dose->caution = g_strdup (_("Wear gloves and goggles, and do not breathe the dust. What holds calcium goes into another "
                              "stock tank than sulfate or phosphate. Keep bags dry, locked up, away from fuel, food, "
                              "children and animals. Too strong a solution burns roots. Follow the label."));
  dose->why = weigh_why (numbers, dose->amount);
  return g_steal_pointer (&dose);
}
