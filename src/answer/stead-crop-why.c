/* stead-crop-why.c - how the figures of a crop come about, with its own numbers. */
#include "config.h"

#include "answer/stead-crop-private.h"
#include "answer/stead-sum-private.h"
#include "answer/stead-words-private.h"
#include "core/stead-pick.h"

#include <glib/gi18n-lib.h>
#include <math.h>

static char *
degrees (double          temp_c,
         SteadUnitSystem units)
{
  return stead_quantity_format (temp_c, stead_unit_default (STEAD_DIMENSION_TEMPERATURE, units));
}

static const char *
method_words (SteadCropMethod method)
{
  switch (method)
    {
    case STEAD_CROP_SUBSTITUTE:
      return _("(highest + lowest) ÷ 2 − base, with both readings first moved to between base and upper limit. "
               "Summed from setting out.");
    case STEAD_CROP_CEILING:
      return _("(highest + lowest) ÷ 2 − base. What the highest has above the upper limit is taken off the limit. "
               "Summed from setting out.");
    case STEAD_CROP_AVERAGE:
    default:
      return _("(highest + lowest) ÷ 2 − base, never below 0. Summed from setting out.");
    }
}

#define NO_SOURCE N_("Common practice, no source.")

static SteadWhy *
plants_why (const SteadCropAnswer *self)
{
  g_autofree char *all = stead_number_format ((double) self->crop->plants, 0);
  g_autofree char *lost = stead_number_format ((double) self->lost, 0);
  g_autofree char *stand = stead_number_format ((double) self->plants, 0);

  return stead_why_new (g_strdup (_("Plants standing")), _("Plants set out − plants lost, by the log."),
                        /* Translators: plants − plants = plants. */
                        g_strdup_printf (_("%1$s − %2$s = %3$s"), all, lost, stand), _(NO_SOURCE));
}

static SteadWhy *
sum_why (const SteadCropAnswer *self)
{
  SteadUnitSystem units = self->farm->units;
  g_autofree char *base = degrees (self->rule.base_c, units);
  g_autofree char *read = stead_number_format ((double) self->n_read, 0);
  g_autofree char *gaps = stead_number_format ((double) self->n_gaps, 0);
  g_autofree char *sum = stead_crop_warmth_text (self->sum_c, units);
  g_autofree char *filled = stead_crop_warmth_number (self->assumed_c, units);

  return stead_why_new (g_strdup (_("Degree days so far")), method_words (self->crop->method),
                        /* Translators: a place, a temperature, days, "512 degree days (°F)", days, a number. */
                        g_strdup_printf (_("Thermometer: %s. Base %s. Days read: %s, together %s. Days without a "
                                           "reading: %s, filled in with %s."),
                                         self->thermometer, base, read, sum, gaps, filled),
                        _("Worked days in garden answers on ripening of tomatoes; Iowa State University, Agronomy "
                          "541, lesson 2b; table of methods in Heliyon 6(10) e05114, table 3. Methods differ: "
                          "compare only sums of one method."));
}

static SteadWhy *
need_why (const SteadCropAnswer *self)
{
  SteadUnitSystem units = self->farm->units;
  g_autofree char *need = stead_crop_warmth_text (self->need_c.likely, units);
  g_autofree char *low = stead_crop_warmth_number (self->need_c.low, units);
  g_autofree char *high = stead_crop_warmth_number (self->need_c.high, units);
  g_autofree char *daily = stead_crop_warmth_number (self->ripe.coming_c, units);
  g_autofree char *years = stead_number_format ((double) self->learned.n_years, 0);

  return stead_why_new (g_strdup (_("Day of the first pick")),
                        self->ripe.outlook == STEAD_RIPE_BY_NORMALS
                        ? _("Day on which the sum reaches what is needed. Coming days are taken from the usual year. In 8 "
                            "of 10 cases the day lies in the band: varieties, years and weather differ.")
                        : _("Day on which the sum reaches what is needed. Coming days are taken to be like the last 14. In "
                            "8 of 10 cases the day lies in the band: varieties, years and weather differ."),
                        /* Translators: "1,300 degree days (°F)", low, high, of the next day, years. */
                        g_strdup_printf (_("Needed: %s, between %s and %s. Of the next day: %s. Own years: %s."),
                                         need, low, high, daily, years),
                        self->usual != NULL && self->usual->has_source
                        ? _("Weather report on degree days of tomatoes, Rochester 2025: 1,000 to 1,800 in °F. Band of "
                            "15 percent until own years say more: common practice, no source. The book counts as one "
                            "own year.")
                        : _("Common practice, no source. Change it to what the seed packet or your own years say."));
}

/* What is needed, where no day follows from it any more, or not yet. */
static SteadWhy *
needed_why (const SteadCropAnswer *self)
{
  SteadUnitSystem units = self->farm->units;
  g_autofree char *before = stead_crop_warmth_text (self->crop->ripe_need, units);
  g_autofree char *years = stead_number_format ((double) self->learned.n_years, 0);
  g_autofree char *need = stead_crop_warmth_text (self->need_c.likely, units);
  g_autofree char *low = stead_crop_warmth_number (self->need_c.low, units);
  g_autofree char *high = stead_crop_warmth_number (self->need_c.high, units);

  return stead_why_new (g_strdup (_("Degree days to the first ripe fruit")),
                        _("Mean of what is entered for the crop, which counts as one year, and of what own years of the same "
                          "variety needed. In 8 of 10 cases it lies in the band."),
                        /* Translators: "1,300 degree days (°F)", years, "1,315 degree days (°F)", low, high. */
                        g_strdup_printf (_("Entered: %1$s. Own years: %2$s. Together: %3$s, between %4$s and %5$s."), before, years,
                                         need, low, high),
                        _("Common practice, no source. Change it to what the seed packet or your own years say."));
}

static SteadWhy *
plan_why (const SteadCropAnswer *self)
{
  SteadUnitSystem units = self->farm->units;
  g_autofree char *plan = stead_crop_kg_text (self->plan_kg, units);
  g_autofree char *plants = stead_number_format ((double) self->crop->plants, 0);
  g_autofree char *each = stead_quantity_format (self->crop->yield_kg, stead_unit_default (STEAD_DIMENSION_MASS, units));

  if (self->plan_entered)
    return stead_why_new (g_strdup (_("Planned in all")), _("As it is entered in the plan of this crop."), g_strdup (plan),
                          _(NO_SOURCE));
  return stead_why_new (g_strdup (_("Planned in all")),
                        _("Plants set out × what one is expected to give. It is not entered in the plan."),
                        /* Translators: plants × an amount = an amount. */
                        g_strdup_printf (_("%1$s × %2$s = %3$s"), plants, each, plan), _(NO_SOURCE));
}

static SteadWhy *
picked_why (const SteadCropAnswer *self)
{
  SteadUnitSystem units = self->farm->units;
  g_autofree char *picks = stead_number_format (self->n_picks, 0);
  g_autofree char *first = stead_day_format (self->first_pick, STEAD_DAY_STYLE_SHORT);
  g_autofree char *last = stead_day_format (self->last_pick, STEAD_DAY_STYLE_SHORT);
  g_autofree char *good = stead_crop_kg_text (self->picked.good_base, units);
  g_autofree char *lost = stead_crop_kg_text (self->picked.lost_base, units);

  return stead_why_new (g_strdup (_("Picked so far")),
                        _("What came into the store room at each pick, added up. What was thrown out is not in it."),
                        /* Translators: a count, two days, two amounts. */
                        g_strdup_printf (_("Picks: %1$s, from %2$s to %3$s: %4$s. Thrown out besides: %5$s."), picks, first, last,
                                         good, lost), _(NO_SOURCE));
}

static SteadWhy *
rest_why (const SteadCropAnswer *self)
{
  SteadUnitSystem units = self->farm->units;
  g_autofree char *plan = stead_crop_kg_text (self->plan_kg, units);
  g_autofree char *due = stead_crop_kg_text (self->due_kg, units);
  g_autofree char *picked = stead_crop_kg_text (self->picked.good_base + self->picked.lost_base, units);
  g_autofree char *factor = stead_words_percent (self->factor.likely, 0);
  g_autofree char *good = stead_crop_kg_text (self->picked.good_base, units);
  g_autofree char *rest = stead_crop_kg_text (self->rest_kg.likely, units);
  g_autofree char *total = stead_crop_kg_text (self->total_kg.likely, units);

  return stead_why_new (g_strdup (_("Harvest to come")),
                        _("Crop planned × its share that falls into those days × what the pickings so far say × "
                          "share of plants that stand. The factor is (¼ plan + picked) ÷ (¼ plan + due). "
                          "In all: picked so far + what is to come."),
                        /* Translators: three amounts, a percentage, three amounts. */
                        g_strdup_printf (_("Planned %1$s, due up to today %2$s, picked with loss %3$s: factor %4$s. "
                                           "In all: %5$s + %6$s = %7$s."), plan, due, picked, factor, good, rest, total),
                        _("Shape over the picking weeks, band of 30 percent and weight of the plan: common practice, no "
                          "source. The band narrows as you pick."));
}

static SteadWhy *
yield_why (const SteadCropAnswer *self)
{
  SteadUnitSystem units = self->farm->units;
  g_autofree char *picked = stead_crop_kg_text (self->picked.good_base, units);
  g_autofree char *plants = stead_number_format ((double) self->crop->plants, 0);
  g_autofree char *plant = stead_crop_kg_text (self->plant_kg, units);

  return stead_why_new (g_strdup (_("Picked of one plant")), _("Picked ÷ plants set out, also those that were lost."),
                        /* Translators: an amount ÷ plants = an amount. */
                        g_strdup_printf (_("%s ÷ %s = %s"), picked, plants, plant),
                        _("Oregon greenhouse tomato questions and answers: 20 to 25 lb a plant and year with two crops."));
}

static SteadWhy *
area_why (const SteadCropAnswer *self)
{
  SteadUnitSystem units = self->farm->units;
  const SteadUnit *area = stead_unit_default (STEAD_DIMENSION_AREA, units);
  g_autofree char *picked = stead_crop_kg_text (self->picked.good_base, units);
  g_autofree char *bed = stead_quantity_format (self->crop->area_m2, area);
  g_autofree char *each = stead_quantity_format (self->m2_kg * area->factor, stead_unit_default (STEAD_DIMENSION_MASS, units));

  return stead_why_new (g_strdup (units == STEAD_UNITS_US ? _("Picked of a square foot") : _("Picked of a m²")),
                        _("Picked ÷ area of the bed."),
                        /* Translators: an amount ÷ an area = an amount. */
                        g_strdup_printf (_("%1$s ÷ %2$s = %3$s"), picked, bed, each), _(NO_SOURCE));
}

static SteadWhy *
light_why (const SteadCropAnswer *self)
{
  GString *sum = g_string_new (NULL);
  g_autofree char *n = stead_number_format (self->n_light, 0);
  g_autofree char *mean = stead_number_format (self->light_mol, 1);

  for (int i = 0; i < self->n_light; i++)
    {
      g_autofree char *mol = stead_number_format (self->light_read[i], 1);

      stead_sum_add_term (sum, mol);
    }
  if (self->n_light > 1)
    {
      g_string_prepend_c (sum, '(');
      /* Translators: after a sum: ") ÷ 7 days". */
      g_string_append_printf (sum, _(") ÷ %s days"), n);
    }
  stead_sum_end (sum, mean);
  return stead_why_new (g_strdup (_("Light a day")),
                        _("Mean of the days of the last week that were read, in mol on a square meter."),
                        g_string_free (sum, FALSE), _("Daily light integral, as the meter reads it. The mean of a week: common "
                                                      "practice, no source."));
}

static SteadWhy *
feed_why (const SteadCropAnswer *self)
{
  g_autofree char *feed = stead_number_format (self->feed_g_day, 0);
  const SteadUnit *area = stead_unit_default (STEAD_DIMENSION_AREA, self->farm->units);
  g_autofree char *least = stead_quantity_format (self->bed_min_m2, area);
  g_autofree char *most = stead_quantity_format (self->bed_max_m2, area);
  g_autofree char *few = stead_number_format (floor (self->feed_plants_min), 0);
  g_autofree char *many = stead_number_format (floor (self->feed_plants_max), 0);

  return stead_why_new (g_strdup (_("Bed that the fish feed supports")),
                        _("Feed a day ÷ feed that a square meter of bed needs a day."),
                        /* Translators: g of feed a day, two areas, plants. */
                        g_strdup_printf (_("%1$s g of feed a day: %2$s to %3$s of bed, %4$s to %5$s plants."),
                                         feed, least, most, few, many),
                        _("FAO Technical Paper 589, component calculations: 40 to 50 g for leafy, 50 to 80 g for "
                          "fruiting plants, with feed of 32 percent protein."));
}

static SteadWhy *
deficit_why (const SteadCropAnswer *self)
{
  g_autofree char *kpa = stead_number_format (self->deficit_kpa, 2);
  g_autofree char *temp = stead_number_format (self->deficit_c, 1);
  g_autofree char *humidity = stead_words_percent (self->deficit_rh_frac, 0);
  g_autofree char *day = stead_day_format (self->deficit_day, STEAD_DAY_STYLE_SHORT);

  return stead_why_new (g_strdup (_("How dry the air is")),
                        _("What air at the day's mean temperature can hold, less what it holds: "
                          "0.6108 × e^(17.27 T ÷ (T + 237.3)) × (1 − humidity)."),
                        /* Translators: a day, °C, a percentage, a pressure in kPa. */
                        g_strdup_printf (_("%1$s: %2$s °C, humidity %3$s. Vapor pressure deficit %4$s kPa; 0.4 to 1.2 suits "
                                           "tomatoes."), day, temp, humidity, kpa),
                        _("FAO Irrigation and Drainage Paper 56, equation 11. The band is from memory."));
}

static SteadWhy *
set_why (const SteadCropAnswer *self)
{
  return stead_why_new (g_strdup (_("Days on which flowers set fruit badly")),
                        _("Night under 55 or over 75 °F (13, 24 °C), or day over 95 °F (35 °C)."),
                        /* Translators: two counts of days. */
                        g_strdup_printf (_("%d of %d days that were read."), self->set_poor, self->set_days),
                        _("News report on extreme heat and tomato flowers, University of Maryland; county extension "
                          "column on tomato blossom drop, Oklahoma 2021."));
}

/* What was picked, and what is to come. */
static void
add_picks (const SteadCropAnswer *self,
           GPtrArray             *whys)
{
  if (self->plan_kg > 0)
    g_ptr_array_add (whys, plan_why (self));
  if (self->n_picks > 0)
    g_ptr_array_add (whys, picked_why (self));
  if (!isnan (self->rest_kg.likely))
    g_ptr_array_add (whys, rest_why (self));
  if (!(self->picked.good_base > 0))
    return;
  g_ptr_array_add (whys, yield_why (self));
  if (!isnan (self->m2_kg))
    g_ptr_array_add (whys, area_why (self));
}

static void
add_air (const SteadCropAnswer *self,
         GPtrArray             *whys)
{
  if (!isnan (self->light_mol))
    g_ptr_array_add (whys, light_why (self));
  if (!isnan (self->deficit_kpa))
    g_ptr_array_add (whys, deficit_why (self));
  if (self->set_days > 0)
    g_ptr_array_add (whys, set_why (self));
}

GPtrArray *
stead_crop_answer_whys (const SteadCropAnswer *self)
{
  GPtrArray *whys;

  g_return_val_if_fail (self != NULL, NULL);

  whys = stead_whys_new ();
  g_ptr_array_add (whys, plants_why (self));
  if (self->n_read > 0)
    g_ptr_array_add (whys, sum_why (self));
  if (self->has_ripe)
    g_ptr_array_add (whys, need_why (self));
  else if (self->from != STEAD_DAY_NONE)
    g_ptr_array_add (whys, needed_why (self));
  add_picks (self, whys);
  if (self->feed_g_day > 0)
    g_ptr_array_add (whys, feed_why (self));
  add_air (self, whys);
  return whys;
}
