/* stead-fish-words.c - the fish answer's sentence, and names that fish need. */
#include "config.h"

#include "answer/stead-fish-private.h"
#include "answer/stead-fish-text.h"
#include "answer/stead-words-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>

/* --- units ------------------------------------------------------------------------------ */

char *
stead_fish_weight_text (double          weight_g,
                        SteadUnitSystem units)
{
  return stead_quantity_format (weight_g / 1000, stead_fish_weight_unit (weight_g, units));
}

char *
stead_fish_density_text (double          density_kg_m3,
                         SteadUnitSystem units)
{
  g_autofree char *number = NULL;

  if (units == STEAD_UNITS_METRIC)
    {
      number = stead_number_format (density_kg_m3, density_kg_m3 < 10 ? 1 : 0);
      /* Translators: kilograms of fish in a cubic meter of water. */
      return g_strdup_printf (_("%s kg/m³"), number);
    }
  number = stead_number_format (density_kg_m3 / STEAD_FISH_KG_M3_PER_LB_GAL, 2);
  /* Translators: pounds of fish in a gallon of water. */
  return g_strdup_printf (_("%s lb a gallon"), number);
}

/* Ends of the classes, as core has them (tank culture of tilapia, part 3). */
#define SCHOOL_KG_M3 20
#define AERATED_KG_M3 30
#define OXYGEN_KG_M3 120

char *
stead_fish_density_words (SteadFishDensity density,
                          SteadUnitSystem  units)
{
  static const int ends[] = { SCHOOL_KG_M3, AERATED_KG_M3, OXYGEN_KG_M3, OXYGEN_KG_M3 };
  g_autofree char *end = NULL;

  g_return_val_if_fail ((gsize) density < G_N_ELEMENTS (ends), NULL);
  end = stead_fish_density_text (ends[density], units);
  switch (density)
    {
    /* Translators: in these four: a density, as in "0.17 lb a gallon". */
    case STEAD_FISH_DENSITY_SCHOOL:
      return g_strdup_printf (_("A school tank holds up to %s: common practice, no source."), end);
    case STEAD_FISH_DENSITY_AERATED:
      return g_strdup_printf (_("So many fish, up to %s, need much air and practiced hands "
                                "(Tank culture of tilapia, part 3)."), end);
    case STEAD_FISH_DENSITY_OXYGEN:
      return g_strdup_printf (_("So many fish, up to %s, live only with pure oxygen: take some out "
                                "(Tank culture of tilapia, part 3)."), end);
    case STEAD_FISH_DENSITY_BEYOND:
    default:
      return g_strdup_printf (_("No tank is known to hold more than %s: take fish out today "
                                "(Tank culture of tilapia, part 3)."), end);
    }
}

/* --- names --------------------------------------------------------------------------------- */

char *
stead_fish_species_name (const SteadFish *group)
{
  SteadFishSpecies species;

  g_return_val_if_fail (group != NULL, NULL);
  return g_strdup (stead_fish_species_from_id (group->species, &species) ? stead_fish_name (species) : group->species);
}

const char *
stead_fish_cut_name (SteadFishCut cut)
{
  switch (cut)
    {
    case STEAD_FISH_CUT_HEADED: return C_("cut of fish", "headed, skinned and gutted");
    case STEAD_FISH_CUT_FILLET: return C_("cut of fish", "lean fillets");
    case STEAD_FISH_CUT_HAND_FILLET: return C_("cut of fish", "fillets cut by hand");
    case STEAD_FISH_CUT_GUTTED: return C_("cut of fish", "gutted");
    default: g_return_val_if_reached ("");
    }
}

/* --- the sentence ----------------------------------------------------------------------------- */

static char *
weight_sentence (const SteadFishAnswer *self)
{
  gulong n = stead_words_plural (self->alive);
  g_autofree char *fish = stead_number_format ((double) self->alive, 0);
  g_autofree char *each = stead_fish_weight_text (self->mean_g.likely, self->farm->units);
  g_autofree char *all = stead_quantity_format (self->biomass_kg,
                                                stead_unit_default (STEAD_DIMENSION_MASS, self->farm->units));

  if (self->last_weighed == STEAD_DAY_NONE)
    /* Translators: in both: a number of fish, the weight of one, the weight of all. */
    return g_strdup_printf (g_dngettext (GETTEXT_PACKAGE,
                                         "%s fish should weigh about <b>%s</b> (%s in all); it was never weighed here.",
                                         "%s fish should weigh about <b>%s</b> each, %s in all; none was weighed here yet.",
                                         n), fish, each, all);
  return g_strdup_printf (g_dngettext (GETTEXT_PACKAGE,
                                       "%s fish weighs about <b>%s</b> (%s in all).",
                                       "%s fish weigh about <b>%s</b> each, %s in all.", n), fish, each, all);
}

/* "80 in 100 reach 1.3 lb about June 12 (May 30 to July 2)." */
static char *
sale_sentence (const SteadFishAnswer *self)
{
  g_autofree char *share = stead_number_format (self->group->sale_frac * 100, 0);
  g_autofree char *sale = stead_fish_weight_text (self->group->sale_g, self->farm->units);
  g_autofree char *at = NULL;
  g_autofree char *day = NULL;
  g_autofree char *soonest = NULL;
  g_autofree char *latest = NULL;

  if (self->sale_day == STEAD_DAY_NONE)
    return g_strdup (self->no_sale);
  if (self->share_ready >= self->group->sale_frac)
    /* Translators: so many of 100 fish, a weight. */
    return g_strdup_printf (_("<b>%s in 100</b> have %s or more: they can be sold."), share, sale);
  at = stead_quantity_format (self->ahead_c, stead_unit_default (STEAD_DIMENSION_TEMPERATURE, self->farm->units));
  day = stead_day_format (self->sale_day, STEAD_DAY_STYLE_MEDIUM);
  soonest = stead_day_format (self->sale_soonest, STEAD_DAY_STYLE_SHORT);
  if (self->sale_latest == STEAD_DAY_NONE && self->latest_past_table)
    /* Translators: a temperature, so many of 100 fish, a weight, a day, the earliest day. */
    return g_strdup_printf (_("At %s, %s in 100 reach %s about <b>%s</b> (%s at the earliest)."),
                            at, share, sale, day, soonest);
  if (self->sale_latest == STEAD_DAY_NONE)
    /* Translators: a temperature, so many of 100 fish, a weight, a day, the earliest day. */
    return g_strdup_printf (_("At %s, %s in 100 reach %s about <b>%s</b> (%s at the earliest, and it may take "
                              "more than a year)."), at, share, sale, day, soonest);
  latest = stead_day_format (self->sale_latest, STEAD_DAY_STYLE_SHORT);
  /* Translators: a temperature, so many of 100 fish, a weight, a day, the earliest and the latest day. */
  return g_strdup_printf (_("At %s, %s in 100 reach %s about <b>%s</b> (%s to %s)."),
                          at, share, sale, day, soonest, latest);
}

static char *
purge_sentence (const SteadFishAnswer *self)
{
  g_autofree char *from = stead_day_format (self->group->purge_from, STEAD_DAY_STYLE_SHORT);
  g_autofree char *on = stead_day_format (self->purged_on, STEAD_DAY_STYLE_SHORT);

  /* Translators: two days. */
  return g_strdup_printf (_("They are purged without feed since %s and can be harvested from <b>%s</b> on."), from, on);
}

char *
stead_fish_text_feed (const SteadFishAnswer *self)
{
  SteadDay today = self->series.today;
  g_autofree char *feed = NULL;
  g_autofree char *day = NULL;

  if (self->purged_on != STEAD_DAY_NONE)
    return purge_sentence (self);
  if (!self->has_rate)
    return g_strdup (self->no_rate);
  feed = stead_quantity_format (self->feed_kg, stead_unit_default (STEAD_DIMENSION_MASS, self->farm->units));
  if (self->feed_on <= today)
    /* Translators: an amount of feed. */
    return g_strdup_printf (_("Feed <b>%s</b> today."), feed);
  day = stead_day_format (self->feed_on, STEAD_DAY_STYLE_SHORT);
  /* Translators: an amount of feed, a day. */
  return g_strdup_printf (_("Feed <b>%s</b> on %s."), feed, day);
}

static char *
ended_sentence (const SteadFishAnswer *self)
{
  g_autofree char *day = stead_day_format (self->group->batch.ended_on, STEAD_DAY_STYLE_MEDIUM);
  g_autofree char *fish = stead_words_fish (self->so_far.harvested);
  g_autofree char *came = stead_words_fish (self->group->stocked + self->so_far.moved_in);
  g_autofree char *kg = stead_quantity_format (self->so_far.harvested_kg,
                                               stead_unit_default (STEAD_DIMENSION_MASS, self->farm->units));

  /* Translators: a day, a weight, fish harvested, fish that came. */
  return g_strdup_printf (_("This group ended on %s. It gave <b>%s</b>, %s out of %s."), day, kg, fish, came);
}

char *
stead_fish_sentence (const SteadFishAnswer *self)
{
  GString *text;
  g_autofree char *weight = NULL;
  g_autofree char *sale = NULL;
  g_autofree char *feed = NULL;
  g_autofree char *lasts = NULL;

  if (self->group->batch.ended_on != STEAD_DAY_NONE)
    return ended_sentence (self);
  if (self->alive < 1)
    return g_strdup (isnan (self->mean_g.likely)
                     ? _("No fish came yet. Move fish here from another group, or enter how many were put in.")
                     : _("No fish of this group is left. Enter the day on which it ended."));
  weight = weight_sentence (self);
  sale = sale_sentence (self);
  feed = stead_fish_text_feed (self);
  lasts = self->purged_on != STEAD_DAY_NONE || self->group->batch.feed_item_id == 0
          ? NULL : stead_words_feed_lasts (self->feed_on_hand_kg, self->feed_days);
  text = g_string_new (NULL);
  stead_words_add (text, weight);
  stead_words_add (text, sale);
  stead_words_add (text, feed);
  stead_words_add (text, lasts);
  return stead_words_end (text);
}

char *
stead_fish_entry_name (const SteadFishEntry *entry,
                       const SteadFarm      *farm)
{
  g_autofree char *day = NULL;
  g_autofree char *what = NULL;

  g_return_val_if_fail (entry != NULL && farm != NULL, NULL);

  day = stead_day_format (entry->day, STEAD_DAY_STYLE_SHORT);
  if (!isnan (entry->feed_kg))
    {
      what = stead_quantity_format (entry->feed_kg, stead_unit_default (STEAD_DIMENSION_MASS, farm->units));
      return g_strdup_printf (_("Feed, %s, on %s"), what, day);
    }
  if (entry->deaths + entry->culled > 0)
    {
      what = stead_words_fish ((gint64) entry->deaths + entry->culled);
      /* Translators: "3 fish", a day. */
      return g_strdup_printf (_("%s lost on %s"), what, day);
    }
  if (!isnan (entry->water_c))
    {
      what = stead_quantity_format (entry->water_c, stead_unit_default (STEAD_DIMENSION_TEMPERATURE, farm->units));
      /* Translators: a temperature, a day. */
      return g_strdup_printf (_("Water of %s on %s"), what, day);
    }
  if (entry->refused)
    /* Translators: a day. */
    return g_strdup_printf (_("Feed left on %s"), day);
  return g_strdup_printf (_("Note on %s"), day);
}
